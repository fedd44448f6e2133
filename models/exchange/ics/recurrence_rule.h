// A recurrence rule read and checked against RFC 5545 section 3.3.10. Inside models/exchange/ics
// only: it shows libical's types.
#pragma once

#include "models/domain/outcome.h"
#include "models/exchange/ics/ical_handles.h"

#include <QDateTime>

namespace rickyard::exchange {

struct RecurrenceRule {
    icalrecurrencetype rule =
        ICALRECURRENCETYPE_INITIALIZER; // without COUNT and UNTIL, which the caller keeps
    int count = 0;                      // 0: none
    QDate untilDate;                    // UNTIL as a bare date
    QDateTime until;                    // UNTIL as a time; digits as written
    bool untilIsUtc = false;
};

// libical takes much that means nothing (two FREQ, BYDAY=XX, INTERVAL=0); the sentence says which
// part is at fault.
domain::Outcome<RecurrenceRule> readRule(const QString &rrule);

} // namespace rickyard::exchange
