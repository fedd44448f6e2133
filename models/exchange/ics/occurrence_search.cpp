#include "models/exchange/ics/occurrence_search.h"

#include <algorithm>

namespace rickyard::exchange {

using Found = QVector<Occurrence>;

namespace {

// libical steps through every second of a FREQ=SECONDLY rule, whatever else narrows it, and cannot
// be stopped inside one step: the search ends after so many of the rule's own periods, which take
// it about a quarter of a second.
constexpr qint64 kMostPeriods = 100'000;
// Of a rule by the month or year that names no day at all: libical looks for one up to the year
// 2582 before it says so.
constexpr qint64 kStepsForNothing = 300'000;

struct Period {
    qint64 seconds = 0;
    qint64 steps = 1; // in libical, measured against one of a day
};

Period periodOf(icalrecurrencetype_frequency frequency)
{
    switch (frequency) {
    case ICAL_SECONDLY_RECURRENCE:
        return {1, 1};
    case ICAL_MINUTELY_RECURRENCE:
        return {60, 1};
    case ICAL_HOURLY_RECURRENCE:
        return {3600, 1};
    case ICAL_WEEKLY_RECURRENCE:
        return {7 * 86400, 1};
    case ICAL_MONTHLY_RECURRENCE:
        return {30 * 86400, 35};
    case ICAL_YEARLY_RECURRENCE:
        return {365 * 86400, 100};
    default:
        return {86400, 1};
    }
}

QDateTime endOf(QDate day)
{
    return {day, QTime(23, 59, 59), Qt::UTC};
}

class OccurrenceSearch
{
public:
    explicit OccurrenceSearch(OccurrenceQuery query) : m_query(std::move(query))
    {
        RecurrenceRule &rule = m_query.rule;
        m_last = m_query.last;
        if (rule.untilDate.isValid())
            m_last = std::min(m_last, rule.untilDate);
        if (rule.until.isValid()) {
            m_until = rule.untilIsUtc ? rule.until : m_query.toUtc(rule.until);
            m_last = std::min(m_last, m_until.date().addDays(1)); // whatever the zone
        }
        const Period period = periodOf(rule.rule.freq);
        const qint64 most = period.seconds * rule.rule.interval * kMostPeriods;
        const qint64 span = std::max<qint64>(0, m_query.first.secsTo(endOf(m_last)));
        m_bounded = most < span;
        m_steps = 1 + std::min(most, span) / (period.seconds * rule.rule.interval) * period.steps;
        const QDateTime end = m_query.first.addSecs(std::min(most, span));
        rule.rule.until = digitsOf(end);
    }

    domain::Outcome<Found> run(qint64 &steps)
    {
        steps += m_steps;
        RecurrenceRule &rule = m_query.rule;
        int counted = 0;
        take(m_query.first, counted);
        const IteratorHandle iterator(icalrecur_iterator_new(rule.rule, digitsOf(m_query.first)));
        if (!iterator) { // of a rule that was checked: it names no day at all, as 30 February
            steps += kStepsForNothing;
            return ended();
        }
        while (m_found.size() < m_query.limit && (rule.count == 0 || counted < rule.count)) {
            const icaltimetype next = icalrecur_iterator_next(iterator.get());
            if (icaltime_is_null_time(next))
                return ended();
            const QDateTime digits = timeOf(next);
            if (digits == m_query.first)
                continue;
            if (digits.date() > m_last || !take(digits, counted))
                break;
        }
        return sorted();
    }

private:
    // False behind the end.
    bool take(const QDateTime &digits, int &counted)
    {
        const QDateTime utc = m_query.toUtc(digits);
        if (counted > 0 && m_until.isValid() && utc > m_until)
            return false;
        ++counted;
        if (!m_query.from.isValid() || utc >= m_query.from)
            m_found << Occurrence{digits, utc};
        return true;
    }

    // Around a skipped hour two digits are one moment, or change places.
    [[nodiscard]] Found sorted()
    {
        std::stable_sort(m_found.begin(), m_found.end(),
                         [](const auto &a, const auto &b) { return a.utc < b.utc; });
        m_found.erase(std::unique(m_found.begin(), m_found.end(),
                                  [](const auto &a, const auto &b) { return a.utc == b.utc; }),
                      m_found.end());
        return m_found;
    }

    [[nodiscard]] domain::Outcome<Found> ended()
    {
        if (!m_bounded)
            return sorted();
        return domain::Outcome<Found>::failed(
            QStringLiteral("This rule repeats by the hour or oftener over a long time, which takes "
                           "too long to work out. Write it by day, as FREQ=DAILY with BYHOUR."));
    }

    OccurrenceQuery m_query;
    QDate m_last;
    QDateTime m_until; // UTC; invalid when the rule has none to the second
    bool m_bounded = false;
    qint64 m_steps = 0;
    Found m_found;
};

} // namespace

domain::Outcome<Found> findOccurrences(OccurrenceQuery query, qint64 &steps)
{
    if (query.limit < 1 || !query.last.isValid() || query.last < query.first.date())
        return Found{};
    return OccurrenceSearch(std::move(query)).run(steps);
}

} // namespace rickyard::exchange
