// Busy times from somebody's calendar file (RFC 5545): when the crew, or one of it, is taken. Only
// read, never written back. Hostile or broken files are refused in words, and never hang.
#pragma once

#include "models/domain/records/books.h"
#include "models/exchange/refusal.h"
#include "models/exchange/weather_import.h" // Progress

namespace rickyard::exchange {

struct CalendarReadOptions {
    QString source;       // whose calendar; every busy time carries it
    QString timeZone;     // IANA; of days, and of times without a zone
    domain::Instant from; // busy times that end at or before this are left out
    domain::Instant to;   // and those that begin at or after this
    bool strict = true;   // one refused appointment refuses the file; false: it is left out
};

struct CalendarReadReport {
    qint64 events = 0;        // appointments in the file
    qint64 free = 0;          // marked as not taking time
    qint64 calledOff = 0;     // cancelled
    qint64 noLength = 0;      // a moment only
    qint64 outside = 0;       // nothing of them between `from` and `to`
    qint64 replaced = 0;      // older versions of an appointment in the same file
    qint64 others = 0;        // to-dos, journals and the like
    qint64 floating = 0;      // times without a zone, read by the yard's clock
    QStringList unknownZones; // likewise
    QStringList notes;
    [[nodiscard]] QStringList lines() const;
};

struct CalendarRead {
    QVector<domain::BusyTime> busy; // by start, ids 0; empty when refused
    CalendarReadReport report;
    Refusals refused;
    bool cancelled = false;
    bool ok = false;
};

// At most 32 MB, 20,000 appointments and as many busy times; more is refused.
CalendarRead readCalendar(const QByteArray &bytes, const CalendarReadOptions &options,
                          const QString &fileName = {}, const Progress &progress = {},
                          const std::atomic_bool *cancel = nullptr);

// What the busy times change in a yard. They are the same when source and uid agree.
struct BusyMerge {
    QVector<domain::BusyTime> fresh;   // ids 0
    QVector<domain::BusyTime> updated; // with the ids of those they replace
    QVector<domain::RecordId> gone;    // of that source and window, and no longer in the file
    qint64 identical = 0;
};
BusyMerge mergeBusyTimes(const domain::Books &books, const QVector<domain::BusyTime> &busy,
                         const CalendarReadOptions &options);

} // namespace rickyard::exchange
