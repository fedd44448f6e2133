#include "models/domain/fire/diagnosis_case.h"

#include <QHash>

#include <algorithm>
#include <cmath>

namespace rickyard::domain::diagnosing {
namespace {

// Earlier cooks of a pit that are looked at.
constexpr int kEarlierCooks = 25;
constexpr double kMovesByItself = 0.1;
// What a pit takes more for every kelvin that it is hotter than its dial says: the balance at 110 C
// inside, 12 C outside, 4 m/s.
constexpr double kHeatPerKelvin = 0.013;

// m/s. What a stand that loses its shelter adds to the heat grows nearly in proportion to the
// wind above it (the balance, from half sheltered to open, 4 to 10 m/s: within 15 %).
constexpr double kCalm = 1.0;

struct Level {
    double mean = 0.0;
    int known = 0;
};

// A warm start says nothing about how long this pit takes from cold.
std::optional<double> recordOf(const EvidenceCook &cook, const Covariate &covariate)
{
    if (covariate.kind == CauseKind::Preheat && !cook.startCold)
        return {};
    return cook.*covariate.field;
}

Level levelOf(const Rows &rows, RecordId pit, bool since, const Covariate &covariate)
{
    Level level;
    for (const EvidenceRow &row : rows) {
        const auto record = recordOf(*row.cook, covariate);
        if (row.cook->pit == pit && row.since == since && record) {
            level.mean += *record;
            ++level.known;
        }
    }
    if (level.known > 0)
        level.mean /= level.known;
    return level;
}

// Standard deviation of a cook about its own pit's mean, of earlier cooks.
double spreadOf(const Rows &rows, const Covariate &covariate)
{
    QHash<RecordId, Level> levels;
    double squares = 0.0;
    int known = 0;
    for (const EvidenceRow &row : rows) {
        const auto record = recordOf(*row.cook, covariate);
        if (row.since || !record)
            continue;
        const RecordId pit = row.cook->pit;
        if (!levels.contains(pit))
            levels.insert(pit, levelOf(rows, pit, false, covariate));
        const double off = *record - levels.value(pit).mean;
        squares += off * off;
        ++known;
    }
    const auto free = known - levels.size();
    return free > 0 ? std::max(covariate.least, std::sqrt(squares / double(free)))
                    : covariate.least;
}

// Earlier cooks of each pit, and those since the moment.
Rows rowsAround(const QVector<const EvidenceCook *> &cooks, Instant from, double sign)
{
    Rows rows;
    QHash<RecordId, int> earlier;
    for (auto it = cooks.crbegin(); it != cooks.crend(); ++it) {
        const EvidenceCook &cook = **it;
        const bool since = cook.lit >= from;
        if (!since && ++earlier[cook.pit] > kEarlierCooks)
            continue;
        const double v = std::log1p(cook.sd * cook.sd);
        const double reach = kDiagnosisCut * std::sqrt(v);
        rows.push_back(
            {&cook, sign * std::clamp(cook.logRatio + 0.5 * v, -reach, reach), v, since});
    }
    return rows;
}

std::optional<double> excessMean(const Rows &rows, double sign, int &count, auto chosen)
{
    double sum = 0.0;
    count = 0;
    for (const EvidenceRow &row : rows)
        if (row.since && chosen(*row.cook)) {
            sum += sign * row.y;
            ++count;
        }
    if (count == 0)
        return {};
    return std::expm1(sum / count);
}

} // namespace

Case::Case(const QVector<const EvidenceCook *> &cooks, Instant from, RecordId pit, double sign)
    : m_rows(rowsAround(cooks, from, sign)), m_pit(pit), m_sign(sign), m_work(workOf())
{
}

statistics::EffectEvidence Case::workOf() const
{
    std::vector<double> y;
    std::vector<double> variance;
    for (const EvidenceRow &row : m_rows) {
        y.push_back(row.y);
        variance.push_back(row.variance);
    }
    return {y, variance, nuisances()};
}

// Of each cook from its pit's usual before the change; 0 where that is not known.
std::vector<double> Case::deviations(const Covariate &covariate) const
{
    std::vector<double> off(m_rows.size(), 0.0);
    QHash<RecordId, std::array<Level, 2>> levels;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const EvidenceCook &cook = *m_rows[i].cook;
        if (!levels.contains(cook.pit))
            levels.insert(cook.pit, {levelOf(m_rows, cook.pit, false, covariate),
                                     levelOf(m_rows, cook.pit, true, covariate)});
        const auto &[before, since] = *levels.constFind(cook.pit);
        if (before.known < 3)
            continue;
        // Not recorded: as the pit's others of that time.
        const double usual = m_rows[i].since && since.known > 0 ? since.mean : before.mean;
        off[i] = m_sign * (recordOf(cook, covariate).value_or(usual) - before.mean);
    }
    return off;
}

// What may always be at work a little: each pit's drift since the change, each lot's difference,
// each habit within its usual range (beyond it, it is a cause).
std::vector<std::vector<double>> Case::nuisances() const
{
    QMap<RecordId, std::vector<double>> drifts;
    QMap<RecordId, std::vector<double>> lots;
    const auto column = [&](auto &of, RecordId id) -> std::vector<double> & {
        if (!of.contains(id))
            of.insert(id, std::vector<double>(m_rows.size(), 0.0));
        return of[id];
    };
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const EvidenceCook &cook = *m_rows[i].cook;
        if (m_rows[i].since)
            column(drifts, cook.pit)[i] = kDiagnosisDrift;
        for (auto it = cook.lots.cbegin(); it != cook.lots.cend(); ++it)
            column(lots, it.key())[i] = kDiagnosisLots * it.value();
    }
    std::vector<std::vector<double>> all;
    for (const auto &drift : std::as_const(drifts))
        all.push_back(drift);
    for (const auto &lot : std::as_const(lots))
        all.push_back(lot);
    for (const Covariate &covariate : kCovariates) {
        if (covariate.kind == CauseKind::Wood || covariate.kind == CauseKind::Thermometer)
            continue;
        std::vector<double> off = deviations(covariate);
        for (double &o : off)
            o = kDiagnosisHabit * std::clamp(o / covariate.usualShift, -0.5, 0.5);
        all.push_back(off);
    }
    return all;
}

int Case::count() const
{
    int n = 0;
    for (std::size_t i = 0; i < m_rows.size(); ++i)
        n += sinceHere(i) ? 1 : 0;
    return n;
}

QVector<RecordId> Case::lotsSince() const
{
    QMap<RecordId, double> burned;
    for (std::size_t i = 0; i < m_rows.size(); ++i)
        if (sinceHere(i))
            for (auto it = m_rows[i].cook->lots.cbegin(); it != m_rows[i].cook->lots.cend(); ++it)
                burned[it.key()] += it.value();
    QVector<RecordId> lots;
    for (auto it = burned.cbegin(); it != burned.cend(); ++it)
        if (it.value() >= 0.5) // half a cook's wood
            lots << it.key();
    return lots;
}

bool Case::recorded(const Covariate &covariate) const
{
    return levelOf(m_rows, m_pit, false, covariate).known >= 3 &&
           levelOf(m_rows, m_pit, true, covariate).known >= 1;
}

// How much likelier the movement of the record is if it is the cause than if it is not.
double Case::logMoved(const Covariate &covariate) const
{
    const Level before = levelOf(m_rows, m_pit, false, covariate);
    const Level since = levelOf(m_rows, m_pit, true, covariate);
    const double spread = spreadOf(m_rows, covariate);
    const double shift = m_sign * (since.mean - before.mean);
    const double still = spread * spread * (1.0 / before.known + 1.0 / since.known);
    const double wide = covariate.usualShift * covariate.usualShift;
    // Log densities of the shift, N(0, still) and half-normal shift + N(0, still), but for a
    // constant that both have.
    const double atRest = -0.5 * std::log(still) - 0.5 * shift * shift / still;
    const double centre = shift * wide / (wide + still);
    const double sd = std::sqrt(wide * still / (wide + still));
    const double caused = -0.5 * std::log(still + wide) - 0.5 * shift * shift / (still + wide) +
                          std::log(2.0) + statistics::logCumulativeNormal(centre / sd);
    const std::array otherwise{std::log1p(-kMovesByItself) + atRest,
                               std::log(kMovesByItself) + caused};
    return caused - statistics::logSum(otherwise);
}

bool Case::moved(const Covariate &covariate, Explanation &e) const
{
    if (!recorded(covariate))
        return false;
    e.logSupport = logMoved(covariate);
    const bool dial = covariate.kind == CauseKind::Thermometer;
    e.x = deviations(covariate);
    if (dial)
        for (std::size_t i = 0; i < m_rows.size(); ++i)
            e.x[i] = m_rows[i].cook->pit == m_pit ? e.x[i] : 0.0;
    const Level before = levelOf(m_rows, m_pit, false, covariate);
    const Level since = levelOf(m_rows, m_pit, true, covariate);
    const double shift = m_sign * (since.mean - before.mean);
    const double unit = std::max(shift, 0.5 * covariate.usualShift);
    for (double &x : e.x)
        x /= unit;
    e.scale = shift / unit;
    if (dial) {
        e.prior.mean = kHeatPerKelvin * unit;
        e.prior.sd = std::hypot(0.4 * e.prior.mean, 0.03);
    }
    return true;
}

void Case::windy(Explanation &e) const
{
    bool known = true;
    for (std::size_t i = 0; i < m_rows.size(); ++i)
        known = known && (!sinceHere(i) || m_rows[i].cook->wind.has_value());
    double sum = 0.0;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        if (!sinceHere(i))
            continue;
        const EvidenceCook &cook = *m_rows[i].cook;
        e.x[i] = known ? std::max(0.0, *cook.wind - kCalm) : std::sqrt(cook.windShare);
        sum += e.x[i];
    }
    const double mean = sum / std::max(1, count());
    for (double &x : e.x)
        x = mean > 0.0 ? x / mean : 0.0;
}

std::optional<Explanation> Case::explanation(CauseKind kind, RecordId lot) const
{
    Explanation e{kind, lot, std::vector<double>(m_rows.size(), 0.0)};
    e.logPrior = std::log(priorOf(kind));
    const bool step =
        kind == CauseKind::ThisPit || kind == CauseKind::WindShelter || kind == CauseKind::Wood;
    if (step)
        e.logPrior += std::log(kDiagnosisPicked);
    for (const Covariate &covariate : kCovariates) {
        if (covariate.kind != kind)
            continue;
        if (kind == CauseKind::Wood)
            e.logSupport = recorded(covariate) ? logMoved(covariate) : 0.0;
        else if (!moved(covariate, e))
            return {};
    }
    if (kind == CauseKind::WindShelter)
        windy(e);
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        if (kind == CauseKind::ThisPit)
            e.x[i] = sinceHere(i) ? 1.0 : 0.0;
        else if (kind == CauseKind::Wood)
            e.x[i] = m_rows[i].since ? 1.0 : 0.0;
        else if (kind == CauseKind::ThisLot)
            e.x[i] = share(i, lot);
    }
    return e;
}

CauseEvidence Case::evidence(CauseKind kind, RecordId lot) const
{
    CauseEvidence evidence;
    const auto split = [&](auto touched, auto others) {
        evidence.touchedMean = excessMean(m_rows, m_sign, evidence.touched, touched).value_or(0.0);
        evidence.othersMean = excessMean(m_rows, m_sign, evidence.others, others).value_or(0.0);
    };
    const auto here = [&](const EvidenceCook &c) { return c.pit == m_pit; };
    const auto elsewhere = [&](const EvidenceCook &c) { return c.pit != m_pit; };
    split(here, elsewhere);
    if (kind == CauseKind::ThisLot) {
        const auto with = [&](const EvidenceCook &c) { return c.lots.value(lot, 0.0) >= 0.5; };
        split(with, [&](const EvidenceCook &c) { return !with(c); });
    } else if (kind == CauseKind::WindShelter) {
        std::vector<double> shares;
        for (std::size_t i = 0; i < m_rows.size(); ++i)
            if (sinceHere(i))
                shares.push_back(m_rows[i].cook->windShare);
        std::sort(shares.begin(), shares.end());
        const double middle = shares[shares.size() / 2];
        split([&](const EvidenceCook &c) { return here(c) && c.windShare >= middle; },
              [&](const EvidenceCook &c) { return here(c) && c.windShare < middle; });
    }
    for (const Covariate &covariate : kCovariates)
        if (covariate.kind == kind && recorded(covariate)) {
            evidence.before = levelOf(m_rows, m_pit, false, covariate).mean;
            evidence.since = levelOf(m_rows, m_pit, true, covariate).mean;
        }
    return evidence;
}

} // namespace rickyard::domain::diagnosing
