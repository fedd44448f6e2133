// The kind "calendar" of export and import: what the yard plans going out as an .ics file, and the
// busy times of somebody's calendar coming in. The window uses the same functions.
#pragma once

#include "models/exchange/ics/calendar_read.h"

namespace rickyard::app {

domain::Outcome<QByteArray> calendarBytes(const domain::Books &books, domain::Instant now);

struct CalendarRequest {
    QString source;        // whose calendar; empty: the file's name without its ending
    bool leaveOut = false; // appointments that cannot be read, instead of refusing the file
    domain::Instant now;   // busy times from here on, for kBusyDays
};
constexpr int kBusyDays = 400;

// What the file would change, for Verbs::replaceBusyTimes.
struct CalendarPlan {
    QString source;
    QVector<domain::BusyTime> put; // new ones with id 0
    QVector<domain::RecordId> gone;
    qint64 added = 0;
    qint64 same = 0;
    domain::Problems refused;
    QStringList said; // how it was read, for the person
};
CalendarPlan planCalendar(const domain::Books &books, const QByteArray &bytes,
                          const QString &fileName, const CalendarRequest &request);

} // namespace rickyard::app
