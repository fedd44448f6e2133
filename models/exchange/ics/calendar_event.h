// One appointment of a calendar file, its lines read by libical. Inside models/exchange/ics only.
#pragma once

#include "models/exchange/ics/calendar_clocks.h"

#include <optional>

namespace rickyard::exchange {

// A time as written, and the moment it stands for.
struct CalendarMoment {
    QDateTime digits; // what the clock of its zone shows, as UTC
    QDateTime utc;
    bool isDate = false;
    bool floating = false; // without a zone: by the yard's clock
};

// Days go by the calendar, the rest by the second (RFC 5545 section 3.3.6): over a clock change a
// day may have 23 hours.
struct CalendarLength {
    qint64 days = 0;
    qint64 seconds = 0;
};

struct CalendarExtra { // RDATE
    CalendarMoment start;
    std::optional<QDateTime> end; // UTC, of a period
};

struct CalendarEvent {
    qint64 line = 0; // of its BEGIN
    QByteArray uid;
    QString summary;
    CalendarMoment start;
    ClockToUtc clock;      // of its start
    CalendarLength length; // may be nothing
    std::optional<RecurrenceRule> rule;
    qint64 ruleLine = 0;
    QVector<CalendarMoment> without; // EXDATE
    QVector<CalendarExtra> extra;
    std::optional<CalendarMoment> replaces; // RECURRENCE-ID
    bool andLater = false;                  // RANGE=THISANDFUTURE
    int sequence = 0;
    bool free = false; // TRANSP:TRANSPARENT
    bool cancelled = false;
    bool oldExceptions = false; // EXRULE, which RFC 5545 no longer has: not looked at
};

// Nothing when a line is refused, which is then in `refused`.
std::optional<CalendarEvent> readCalendarEvent(const CalendarBlock &block, CalendarClocks &clocks,
                                               const QString &fileName, Refusals &refused);

} // namespace rickyard::exchange
