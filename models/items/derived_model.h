// A read-only table of computed rows (stock, fuel of each cook, due tasks): columns are described,
// rows are replaced as a whole when an answer arrives.
#pragma once

#include "models/domain/answers/headline.h"

#include <QAbstractTableModel>

namespace rickyard::items {

struct DerivedCell {
    QString text;
    QVariant sort;      // missing: the text
    QString accessible; // missing: header and text
};

struct DerivedRow {
    domain::Link link; // the record that the row is about
    QVector<DerivedCell> cells;
    domain::Standing standing = domain::Standing::Good;
};

class DerivedModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    struct Column {
        QString title;
        bool number = false;
    };
    explicit DerivedModel(QVector<Column> columns, QObject *parent = nullptr);
    void setRows(QVector<DerivedRow> rows);
    [[nodiscard]] domain::Link linkAt(int row) const;
    [[nodiscard]] domain::Standing standingAt(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    QVector<Column> m_columns;
    QVector<DerivedRow> m_rows;
};

} // namespace rickyard::items
