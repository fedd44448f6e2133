// How a record's values read in lists and forms: units, times in the yard's zone, names of
// referred records.
#pragma once

#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"

namespace rickyard::items {

// The unit a field is shown and typed in.
const domain::Unit &unitFor(const domain::FieldSpec &field, bool metric);
// Empty for a missing value: lists show nothing rather than a zero.
QString displayText(const domain::Books &books, const domain::FieldSpec &field,
                    const domain::Value &value, const QLocale &locale);
// What sorts: numbers by size, choices by their order, references by name.
QVariant sortValue(const domain::Books &books, const domain::FieldSpec &field,
                   const domain::Value &value);
QString timeText(const domain::Books &books, domain::Instant time, const QLocale &locale);
QString dayText(const QDate &day, const QLocale &locale);
QDateTime toLocal(const domain::Books &books, domain::Instant time);

} // namespace rickyard::items
