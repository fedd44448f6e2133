// What the yard plans as an iCalendar file (RFC 5545), for any calendar program: appointments
// (VEVENT), things to do (VTODO), reminders (VALARM), and the rules of the yard's time zone
// (VTIMEZONE).
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/schema.h"

#include <QDate>

namespace rickyard::exchange {

struct CalendarEntry {
    enum class Kind { Appointment, ToDo };
    enum class State { Confirmed, Tentative, Cancelled };

    // Who it is: the same record gives the same UID at every export.
    domain::TableId table = domain::TableId::Event;
    domain::RecordId record = 0;
    QString part; // of a record that has several entries, such as "drive-out"; else empty

    Kind kind = Kind::Appointment;
    State state = State::Confirmed; // of appointments; a cancelled one is not reminded of
    QString summary;
    QString description; // may have several lines
    QString place;
    QStringList categories;
    domain::Instant start; // of appointments
    domain::Instant end;   // not after the start: it is a moment, and takes no time
    QDate due;             // of a thing to do
    int priority = 0;      // of a thing to do: 1 first to 9 last, 0 none
    // A reminder so long before the start, or before the midnight that begins the day it is due.
    std::optional<domain::Duration> remind;
};

struct Calendar {
    QString yard;            // its name: the calendar's
    QString mark;            // the yard's: part of every UID
    QString timeZone;        // IANA; of the times as they are shown
    domain::Instant written; // DTSTAMP
    QVector<CalendarEntry> entries;
};

// "visit-12@MARK.rickyard": from the yard's mark, the table and the record's id alone.
QString calendarUid(const QString &mark, const CalendarEntry &entry);

// CRLF line ends, no line over 75 octets. Refused when the zone is unknown, when two entries have
// one UID, or when an entry lacks its summary or its time.
domain::Outcome<QByteArray> writeCalendar(const Calendar &calendar);

} // namespace rickyard::exchange
