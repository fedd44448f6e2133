// Stretches in which a probe did not measure what it should.
#include "models/domain/fire/trace_facts.h"

#include "models/domain/quantities/units.h"

#include <algorithm>
#include <deque>

namespace rickyard::domain {

namespace {

// Smallest step between neighbours that differ; nothing for a probe that never moves.
std::optional<qint64> smallestStep(const ProbePoints &probe)
{
    std::optional<qint64> step;
    for (qsizetype i = 1; i < probe.size(); ++i) {
        const qint64 d = std::abs((probe.at(i).temperature - probe.at(i - 1).temperature).base());
        if (d > 0 && (!step || d < *step))
            step = d;
    }
    return step;
}

bool movesBetween(const ProbePoints &probe, qint64 from, qint64 to, Temperature by)
{
    auto it = std::lower_bound(probe.begin(), probe.end(), from,
                               [](const TracePoint &p, qint64 time) { return p.offset < time; });
    std::optional<Temperature> low;
    std::optional<Temperature> high;
    for (; it != probe.end() && it->offset <= to; ++it) {
        low = low ? std::min(*low, it->temperature) : it->temperature;
        high = high ? std::max(*high, it->temperature) : it->temperature;
        if (*high - *low >= by)
            return true;
    }
    return false;
}

QVector<ProbeFault> flatStretches(const ProbePoints &probe, const QVector<ProbePoints> &others,
                                  const ProbeFaultRules &rules)
{
    QVector<ProbeFault> faults;
    const auto step = smallestStep(probe);
    const bool coarse = !step || *step >= rules.coarseStep.base();
    const Duration limit = coarse ? rules.flatForCoarse : rules.flatFor;
    for (qsizetype i = 0; i < probe.size();) {
        qsizetype j = i;
        while (j + 1 < probe.size() && probe.at(j + 1).temperature == probe.at(i).temperature)
            ++j;
        const qint64 from = probe.at(i).offset;
        const qint64 to = probe.at(j).offset;
        if (to - from > limit.base() &&
            std::any_of(others.begin(), others.end(), [&](const ProbePoints &other) {
                return movesBetween(other, from, to, rules.othersMove);
            }))
            faults.append({ProbeFaultKind::Flat, from, to});
        i = j + 1;
    }
    return faults;
}

class DetachedSearch
{
public:
    DetachedSearch(const ProbePoints &probe, const ProbePoints &outside,
                   const ProbeFaultRules &rules)
        : m_probe(probe), m_outside(outside), m_rules(rules)
    {
    }
    QVector<ProbeFault> find();

private:
    // What the reading is above the outside air, thousandths of a kelvin.
    [[nodiscard]] double above(qsizetype i) const
    {
        return (m_probe.at(i).temperature - outsideAt(m_probe.at(i).offset)).toDouble();
    }
    [[nodiscard]] Temperature outsideAt(qint64 t) const;
    void push(qsizetype i);
    [[nodiscard]] std::optional<qsizetype> lastOfFall(qsizetype from, double before) const;

    const ProbePoints &m_probe;
    const ProbePoints &m_outside;
    const ProbeFaultRules &m_rules;
    std::deque<qsizetype> m_window; // falling maxima of the readings within the fall's time
};

// The nearest outside reading: the air changes slowly against a probe that falls.
Temperature DetachedSearch::outsideAt(qint64 t) const
{
    if (m_outside.isEmpty())
        return m_rules.outsideUnknown;
    const auto after =
        std::lower_bound(m_outside.begin(), m_outside.end(), t,
                         [](const TracePoint &p, qint64 time) { return p.offset < time; });
    if (after == m_outside.end())
        return m_outside.last().temperature;
    if (after == m_outside.begin() || after->offset - t <= t - (after - 1)->offset)
        return after->temperature;
    return (after - 1)->temperature;
}

void DetachedSearch::push(qsizetype i)
{
    while (!m_window.empty() &&
           m_probe.at(m_window.back()).temperature <= m_probe.at(i).temperature)
        m_window.pop_back();
    m_window.push_back(i);
    while (m_probe.at(m_window.front()).offset < m_probe.at(i).offset - m_rules.fallWithin.base())
        m_window.pop_front();
}

// The last reading before the probe is in its place again, if that takes long enough.
std::optional<qsizetype> DetachedSearch::lastOfFall(qsizetype from, double before) const
{
    qsizetype i = from;
    while (i + 1 < m_probe.size() && above(i + 1) <= before * m_rules.backShare)
        ++i;
    const bool stayed = m_probe.at(i).offset - m_probe.at(from).offset >= m_rules.staysFor.base();
    return stayed ? std::optional(i) : std::nullopt;
}

QVector<ProbeFault> DetachedSearch::find()
{
    QVector<ProbeFault> faults;
    for (qsizetype i = 0; i < m_probe.size(); ++i) {
        push(i);
        const qsizetype top = m_window.front();
        const double before = above(top);
        if (before < m_rules.hotEnough.toDouble() || above(i) > before * (1 - m_rules.fallShare))
            continue;
        const auto last = lastOfFall(i, before);
        if (!last)
            continue;
        faults.append(
            {ProbeFaultKind::Detached, m_probe.at(top + 1).offset, m_probe.at(*last).offset});
        i = *last;
        m_window.clear();
    }
    return faults;
}

} // namespace

QString ProbeFault::words() const
{
    const QString length = formatDuration(Duration::ofBase(to - from));
    return kind == ProbeFaultKind::Flat
               ? QStringLiteral("the same value for %1 while other probes moved").arg(length)
               : QStringLiteral("fell towards the outside air at once and stayed there for %1")
                     .arg(length);
}

QVector<ProbeFault> probeFaults(const ProbePoints &probe, const QVector<ProbePoints> &others,
                                const ProbePoints &outside, const ProbeFaultRules &rules)
{
    QVector<ProbeFault> faults = flatStretches(probe, others, rules);
    faults += DetachedSearch(probe, outside, rules).find();
    std::sort(faults.begin(), faults.end(),
              [](const ProbeFault &a, const ProbeFault &b) { return a.from < b.from; });
    return faults;
}

} // namespace rickyard::domain
