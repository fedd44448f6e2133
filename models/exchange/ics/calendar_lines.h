// The frame of an iCalendar file: its unfolded lines, the appointments and time zones they make up,
// and what is wrong with them. No meaning of a line is looked at here. Inside models/exchange/ics
// only.
#pragma once

#include "models/exchange/refusal.h"

#include <QByteArray>
#include <QVector>

#include <atomic>

namespace rickyard::exchange {

constexpr qsizetype kLargestCalendar = 32 * 1024 * 1024; // bytes
constexpr qsizetype kMostAppointments = 20'000;
constexpr qsizetype kLongestCalendarLine = 64 * 1024; // bytes of a line that is looked at
constexpr qsizetype kMostLinesOfOne = 2'000;          // of one appointment or zone
constexpr int kDeepestNesting = 8;

struct CalendarLine {
    qint64 number = 0; // where it starts
    QByteArray name;   // in capitals, "DTSTART"
    QByteArray text;   // all of it, unfolded, UTF-8
};

struct CalendarBlock {
    qint64 number = 0; // of its BEGIN
    QVector<CalendarLine> lines;
};

struct CalendarFrame {
    QVector<CalendarBlock>
        events;                   // the lines that say when and what; parts such as alarms left out
    QVector<CalendarBlock> zones; // every line, with those of their parts
    qint64 others = 0;            // to-dos, journals and the like
    Refusals refused;
    bool whole = false; // read to its end, every BEGIN with its END
};

// Lines that do not tell when are not kept, nor checked. What stands in a file that is not whole
// (no BEGIN:VCALENDAR, a BEGIN without its END, a zero byte) is not to be trusted.
CalendarFrame frameOf(const QByteArray &bytes, const QString &fileName,
                      const std::atomic_bool *cancel = nullptr);

} // namespace rickyard::exchange
