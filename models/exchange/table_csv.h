// Every table of the yard as CSV and back, bit for bit: quantities are whole numbers of the base
// unit named in the header ("weight [mg]"), times ISO 8601 in UTC, dates ISO 8601, choices by
// key, flags 0 or 1, references by id, blobs base64. On import another unit of the same dimension
// is taken too ("weight [lb]").
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/books.h"
#include "models/exchange/refusal.h"

#include <QPair>

namespace rickyard::exchange
{

// "mg", "mL", "um", "mdegC", "s", "cent", "mpct_dry", "ppm", "mm/s", "Pa", "J", "J/kg", "deg".
QString baseUnitKey(domain::Dimension dimension);
// The header of a field: its key, with the base unit where it has one.
QString headerOf(const domain::FieldSpec &field);

QByteArray exportTable(const domain::Books &books, domain::TableId table);

// Rows in file order; a row without an id has id 0. Required fields, ranges and choices are
// checked, references are not (the other records are elsewhere). All or nothing.
struct TableRead {
    QVector<domain::Row> rows;
    QVector<qint64> lines; // of each row
    Refusals refused;      // rows is empty when there are any
};
TableRead readTable(const QByteArray &bytes, domain::TableId table, const QString &fileName);
domain::Outcome<QVector<domain::Row>> importTable(const QByteArray &bytes, domain::TableId table,
                                                  const QString &fileName = {});

using NamedFile = QPair<QString, QByteArray>; // "lot.csv", its bytes
// One file a table, parents first.
QVector<NamedFile> exportBooks(const domain::Books &books);
// The rows of all files, parents before children, in any order of files. References must lead to
// a row of these files or to a record of `existing`.
domain::Outcome<QVector<domain::Row>> importBooks(const QVector<NamedFile> &files,
                                                  const domain::Books &existing = {});

} // namespace rickyard::exchange
