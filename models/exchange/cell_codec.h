// One value of a record as one CSV cell and back: the inner part of table_csv.h.
#pragma once

#include "models/domain/records/schema.h"

#include <QString>

namespace rickyard::domain {
struct Unit;
}

namespace rickyard::exchange {

// "weight [mg]" -> "weight", "mg".
struct HeaderCell {
    QString key;
    QString unit;
};
HeaderCell parseHeader(const QString &header);
// "id" and the header of every field.
QStringList headersOf(const domain::TableSpec &spec);

QString writtenCell(const domain::FieldSpec &field, const domain::Value &value);

// Reads the cells of one column. `expected` texts are empty when all is well.
struct CellCodec {
    const domain::FieldSpec *field = nullptr;
    int index = -1; // of the field
    bool baseUnit = true;
    const domain::Unit *unit = nullptr; // when it is not the base unit

    QString bind(const domain::FieldSpec &spec, int fieldIndex, const QString &unitKey);
    QString read(const QString &cell, domain::Value &out) const;

private:
    QString readText(const QString &cell, domain::Value &out) const;
    QString readInteger(const QString &cell, domain::Value &out) const;
    QString readQuantity(const QString &cell, domain::Value &out) const;
    QString readPieces(const QString &cell, domain::Value &out) const;
    QString readStacks(const QString &cell, domain::Value &out) const;
    QString readTime(const QString &cell, domain::Value &out) const;
    QString readBlob(const QString &cell, domain::Value &out) const;
    [[nodiscard]] bool number(const QString &text, qint64 &base) const;
    [[nodiscard]] QString range(qint64 base) const;
};

} // namespace rickyard::exchange
