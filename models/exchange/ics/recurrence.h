// The days and times of something that repeats, by a recurrence rule of RFC 5545 (section 3.3.10),
// worked out by libical.
#pragma once

#include "models/domain/outcome.h"

#include <QDateTime>

namespace rickyard::exchange {

// Reasons in words why a rule cannot be used; empty when it can. `rrule` is the value alone, such
// as "FREQ=WEEKLY;INTERVAL=2;BYDAY=SA": no "RRULE:" before it, no DTSTART. Letter case is free.
domain::Problems checkRule(const QString &rrule);

// The first occurrence is always `firstLocal` itself, whether the rule names its day or not (RFC
// 5545: DTSTART counts as the first), so COUNT counts it too. Then come those that the rule names,
// in order, up to and including the day `until` in the zone of `firstLocal`, and never more than
// `limit`: a longer list is cut there without a word, so a caller who must know asks for one more.
//
// Wall clock times stay over clock changes: an event at 10:00 stays at 10:00. A time that a clock
// change skips is read with the offset before it, one that comes twice is the first (section
// 3.3.5). UNTIL in UTC or local time holds to the second; as a bare date it includes that day.
//
// Refused, with a sentence: a rule that breaks RFC 5545, a missing first time, and a rule by the
// second, minute or hour whose search would not end in a moment. Nothing later than 50 years after
// the first is looked for.
domain::Outcome<QVector<QDateTime>> occurrences(const QString &rrule, const QDateTime &firstLocal,
                                                QDate until, int limit);

} // namespace rickyard::exchange
