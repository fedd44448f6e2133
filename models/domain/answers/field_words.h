// How a record's values read for a person, by their field's description: units, times in the yard's
// zone, names of referred records.
#pragma once

#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"

#include <QDateTime>

namespace rickyard::domain {

// The unit a field is shown and typed in.
const Unit &unitFor(const FieldSpec &field, bool metric);
// Empty for a missing value: lists show nothing rather than a zero.
QString displayText(const Books &books, const FieldSpec &field, const Value &value,
                    const QLocale &locale);
QString timeText(const Books &books, Instant time, const QLocale &locale);
QString dayText(const QDate &day, const QLocale &locale);
QDateTime toLocal(const Books &books, Instant time);

} // namespace rickyard::domain
