#include "models/exchange/ics/recurrence.h"

#include "models/exchange/ics/calendar_clocks.h"

#include <QTimeZone>

#include <algorithm>

namespace rickyard::exchange {

using domain::Outcome;
using Times = QVector<QDateTime>;

namespace {
constexpr int kMostYears = 50;
} // namespace

domain::Problems checkRule(const QString &rrule)
{
    return readRule(rrule).problems();
}

Outcome<Times> occurrences(const QString &rrule, const QDateTime &firstLocal, QDate until,
                           int limit)
{
    const auto rule = readRule(rrule);
    if (!rule)
        return rule.problems();
    if (!firstLocal.isValid() || firstLocal.date().year() < 1900 || firstLocal.date().year() > 2200)
        return Outcome<Times>::failed(
            QStringLiteral("A repeat needs a first day and time, between the years 1900 and "
                           "2200."));
    const QTimeZone zone = firstLocal.timeZone();
    OccurrenceQuery query;
    query.rule = rule.value();
    // To whole seconds: the rules know no parts of one.
    const QTime time = firstLocal.time();
    query.first = {firstLocal.date(), QTime(time.hour(), time.minute(), time.second()), Qt::UTC};
    query.last = std::min(until, firstLocal.date().addYears(kMostYears));
    query.limit = limit;
    query.toUtc = clockOf(zone.id());
    qint64 steps = 0;
    const auto found = findOccurrences(std::move(query), steps);
    if (!found)
        return found.problems();
    Times times;
    for (const Occurrence &occurrence : found.value())
        times << occurrence.utc.toTimeZone(zone);
    if (!times.isEmpty()) // which may be the second of an hour that comes twice
        times.first() = QDateTime::fromSecsSinceEpoch(firstLocal.toSecsSinceEpoch(), zone);
    return times;
}

} // namespace rickyard::exchange
