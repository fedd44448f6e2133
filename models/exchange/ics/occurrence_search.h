// The times that a recurrence rule names, by the wall clock of any zone. Inside
// models/exchange/ics only.
#pragma once

#include "models/exchange/ics/recurrence_rule.h"

#include <functional>

namespace rickyard::exchange {

// The moment (UTC) at which a zone's clocks show these digits (written as UTC).
using ClockToUtc = std::function<QDateTime(const QDateTime &digits)>;

struct Occurrence {
    QDateTime digits; // what the zone's clocks show, as UTC
    QDateTime utc;
};

struct OccurrenceQuery {
    RecurrenceRule rule;
    QDateTime first; // digits
    QDate last;      // day of the zone's clock, included
    QDateTime from;  // UTC: earlier ones are counted but not given back; invalid: all
    int limit = 0;
    ClockToUtc toUtc;
};

// By time, each moment once; the first is always among them. `steps` is raised by what the search
// takes of libical at worst: a step is some 2.5 µs.
domain::Outcome<QVector<Occurrence>> findOccurrences(OccurrenceQuery query, qint64 &steps);

} // namespace rickyard::exchange
