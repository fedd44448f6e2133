// Rules of RFC 5545 as the Repeat dialog makes them and says them. Which days a rule falls on is
// worked out by models/exchange/ics.
#pragma once

#include <QDate>
#include <QString>
#include <QTimeZone>

namespace rickyard::views {

enum class RepeatKind {
    Weekly,
    SecondWeek,
    MonthByWeekday,   // "the second Saturday of every month"
    MonthLastWeekday, // "the last Saturday of every month"
    Own,              // typed
};

struct RepeatChoice {
    RepeatKind kind = RepeatKind::Weekly;
    QString own; // of Own: an RRULE, with or without "RRULE:"
    bool byCount = true;
    int count = 6; // in all, the first one with them
    QDate until;   // the last day that may be one
};

// The kinds that fit a first day: only one in the last seven days of its month is its last.
QVector<RepeatKind> repeatKindsFor(QDate first);
// "Every second Saturday"; of Own: "Own rule".
QString repeatKindWords(RepeatKind kind, QDate first);
// The rule with its end: COUNT, or UNTIL at the end of the day, in UTC as RFC 5545 3.3.10 wants it
// beside a start with a time zone. A typed rule that has an end of its own keeps it.
QString repeatRule(const RepeatChoice &choice, QDate first, const QTimeZone &zone);
// Of a rule kept on an event: "every second Saturday, 6 times"; a rule that this program would not
// have made is quoted.
QString repeatRuleWords(const QString &rule, QDate first, const QTimeZone &zone);

} // namespace rickyard::views
