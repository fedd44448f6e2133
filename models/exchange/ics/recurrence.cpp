#include "models/exchange/ics/recurrence.h"

#include "models/domain/upkeep/local_time.h"
#include "models/exchange/ics/ical_handles.h"
#include "models/exchange/ics/recurrence_rule.h"

#include <QTimeZone>

#include <algorithm>

namespace rickyard::exchange {

using domain::Outcome;
using Times = QVector<QDateTime>;

namespace {

// libical steps through every second of a FREQ=SECONDLY rule, whatever else narrows it, and cannot
// be stopped inside one step: the search ends after so many of the rule's own periods, which take
// it about a quarter of a second.
constexpr qint64 kMostSteps = 100'000;
constexpr int kMostYears = 50;

qint64 secondsOfPeriod(icalrecurrencetype_frequency frequency)
{
    switch (frequency) {
    case ICAL_SECONDLY_RECURRENCE:
        return 1;
    case ICAL_MINUTELY_RECURRENCE:
        return 60;
    case ICAL_HOURLY_RECURRENCE:
        return 3600;
    default:
        return 86400;
    }
}

icaltimetype wallClock(const QDateTime &local)
{
    icaltimetype time = icaltime_null_time();
    time.year = local.date().year();
    time.month = local.date().month();
    time.day = local.date().day();
    time.hour = local.time().hour();
    time.minute = local.time().minute();
    time.second = local.time().second();
    return time;
}

class OccurrenceSearch
{
public:
    OccurrenceSearch(const RecurrenceRule &rule, const QDateTime &first, QDate until)
        : m_rule(rule), m_first(first), m_clock(QString::fromLatin1(first.timeZone().id()))
    {
        m_last = until;
        if (rule.untilDate.isValid())
            m_last = std::min(m_last, rule.untilDate);
        if (rule.until.isValid())
            m_until =
                rule.untilIsUtc ? rule.until : toInstant(rule.until.date(), rule.until.time());
        if (m_until.isValid())
            m_last = std::min(m_last, m_until.toTimeZone(first.timeZone()).date());
        m_last = std::min(m_last, first.date().addYears(kMostYears));
        boundSearch();
    }

    Outcome<Times> run(int limit)
    {
        Times found{m_first};
        const qsizetype most = m_rule.count > 0 ? std::min(limit, m_rule.count) : limit;
        const IteratorHandle iterator(icalrecur_iterator_new(m_rule.rule, wallClock(m_first)));
        if (!iterator) // of a rule that was checked: it names no day at all, as 30 February
            return ended(found);
        while (found.size() < most) {
            const icaltimetype next = icalrecur_iterator_next(iterator.get());
            if (icaltime_is_null_time(next))
                return ended(found);
            const QDate day(next.year, next.month, next.day);
            const QDateTime at =
                toInstant(day, QTime(next.hour, next.minute, std::min(next.second, 59)))
                    .toTimeZone(m_first.timeZone());
            if (day > m_last || (m_until.isValid() && at > m_until))
                return found;
            if (at > found.last()) // the first comes again, and a skipped hour meets the next
                found << at;
        }
        return found;
    }

private:
    [[nodiscard]] QDateTime toInstant(QDate day, QTime time) const
    {
        const auto sinceMidnight = domain::Duration::ofBase(time.msecsSinceStartOfDay() / 1000);
        return QDateTime::fromSecsSinceEpoch(m_clock.at(day, sinceMidnight).seconds(), Qt::UTC);
    }

    void boundSearch()
    {
        const qint64 step = secondsOfPeriod(m_rule.rule.freq) * m_rule.rule.interval;
        QDateTime end(m_last, QTime(23, 59, 59), Qt::UTC);
        const QDateTime most =
            QDateTime(m_first.date(), m_first.time(), Qt::UTC)
                .addSecs(std::min(step * kMostSteps, qint64(kMostYears + 1) * 366 * 86400));
        m_bounded = most < end;
        m_rule.rule.until = wallClock(std::min(end, most));
    }

    [[nodiscard]] Outcome<Times> ended(const Times &found) const
    {
        if (!m_bounded)
            return found;
        return Outcome<Times>::failed(
            QStringLiteral("This rule repeats by the hour or oftener over a long time, which takes "
                           "too long to work out. Write it by day, as FREQ=DAILY with BYHOUR."));
    }

    RecurrenceRule m_rule;
    QDateTime m_first;
    domain::LocalTime m_clock;
    QDate m_last;
    QDateTime m_until; // UTC; invalid when the rule has none to the second
    bool m_bounded = false;
};

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
    // To whole seconds: the rules know no parts of one.
    const QDateTime first =
        QDateTime::fromSecsSinceEpoch(firstLocal.toSecsSinceEpoch(), firstLocal.timeZone());
    if (limit < 1 || !until.isValid() || until < first.date())
        return Times{};
    return OccurrenceSearch(rule.value(), first, until).run(limit);
}

} // namespace rickyard::exchange
