#include "models/domain/plan/stock_run.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// What subtraction leaves of a need that was met, over the need.
constexpr double kMetWithin = 1e-9;

double greatest(const double *lanes)
{
    return Eigen::Map<const Eigen::Array<double, StockRun::kLanes, 1>>(lanes).maxCoeff();
}

double leastOf(const double *values, size_t count)
{
    return Eigen::Map<const Eigen::ArrayXd>(values, Eigen::Index(count)).minCoeff();
}

double mostOf(const double *values, size_t count)
{
    return Eigen::Map<const Eigen::ArrayXd>(values, Eigen::Index(count)).maxCoeff();
}

double sumOf(const double *values, qsizetype count)
{
    return Eigen::Map<const Eigen::ArrayXd>(values, count).sum();
}

} // namespace

StockRun::StockRun(const StockPaths &paths, const WhatIf &whatIf) : m_paths(paths), m_whatIf(whatIf)
{
    const StockPlan &plan = paths.m_plan;
    for (const PlacedOrder &order : whatIf.orders)
        paths.drawOrder(order, m_placed);
    const auto add = [this](const StockPaths::Source &source, int lot) {
        m_piles.emplace_back();
        m_piles.back().source = &source;
        m_piles.back().lot = lot;
    };
    for (size_t i = 0; i < plan.lots.size(); ++i)
        if (!plan.lots[i].held)
            add(paths.m_lots[i], static_cast<int>(i));
    for (const auto &source : paths.m_comings)
        add(source, -1);
    for (const auto &source : m_placed)
        add(source, -1);
    const auto size = static_cast<size_t>(paths.m_padded);
    m_missing.assign(static_cast<size_t>(plan.events), Row(size));
    m_missingUnplanned.assign(paths.m_firstFire.empty() ? 0 : size, 0.0);
    m_needShort.assign(plan.needs.size(), 0);
    m_left.assign(m_piles.size(), 0.0);
    if (whatIf.course) {
        const auto days = static_cast<size_t>(plan.days);
        m_change.resize(days);
        m_counts.resize(days);
        m_binsPerHeat = (kBins - 1) / std::max(1e-300, mostHeat());
        m_burned.assign(days, 0.0);
    }
}

// That any path can have on the ricks at one time.
double StockRun::mostHeat() const
{
    Eigen::ArrayXd all = Eigen::ArrayXd::Zero(m_paths.m_padded);
    for (const Pile &pile : m_piles)
        all += Eigen::Map<const Eigen::ArrayXd>(pile.source->heat.data(), m_paths.m_padded);
    return all.maxCoeff();
}

StockOutcome StockRun::run(const CancelCheck &cancel)
{
    const StockPlan &plan = m_paths.m_plan;
    const auto &order = m_paths.m_order;
    for (qsizetype begin = 0; begin < m_paths.m_padded; begin += kLanes) {
        if (cancel && cancel()) {
            StockOutcome stopped;
            stopped.cancelled = true;
            return stopped;
        }
        startBlock(begin);
        for (const size_t need : order) {
            unplanned(plan.needs[need].day, begin);
            planned(need, begin);
        }
        unplanned(plan.days, begin);
        endBlock(begin);
    }
    return finish();
}

void StockRun::startBlock(qsizetype begin)
{
    for (Pile &pile : m_piles) {
        pile.ready = pile.source->ready.data() + begin;
        std::copy_n(pile.source->heat.data() + begin, kLanes, pile.left.begin());
        const auto [first, last] = std::minmax_element(pile.ready, pile.ready + kLanes);
        pile.firstReady = *first;
        pile.lastReady = *last;
        pile.empty = false;
    }
    if (!m_missingUnplanned.empty())
        std::copy_n(m_paths.m_firstFire.begin() + begin, kLanes, m_nextFire.begin());
    if (m_whatIf.course)
        addArrivals();
}

// Says whether anything is still needed.
bool StockRun::takeFrom(Pile &pile, int day, Lanes &need)
{
    double *left = pile.left.data();
    double *wanted = need.data();
    const double *ready = pile.ready;
    const double today = day;
    if (pile.lastReady <= today) {
        for (qsizetype i = 0; i < kLanes; ++i) {
            const double taken = left[i] < wanted[i] ? left[i] : wanted[i];
            left[i] -= taken;
            wanted[i] -= taken;
        }
        pile.empty = greatest(left) <= 0.0;
    } else {
        for (qsizetype i = 0; i < kLanes; ++i) {
            const double there = left[i];
            const double usable = ready[i] <= today ? there : 0.0;
            const double taken = usable < wanted[i] ? usable : wanted[i];
            left[i] = there - taken;
            wanted[i] -= taken;
        }
    }
    return greatest(wanted) > 0.0;
}

// Wood kept for the event goes first, so that what anyone may burn lasts.
void StockRun::burn(int day, int event, Lanes &need)
{
    const auto pass = [&](int reservedFor) {
        for (Pile &pile : m_piles)
            if (pile.source->reservedFor == reservedFor && !pile.empty && pile.firstReady <= day &&
                !takeFrom(pile, day, need))
                return false;
        return true;
    };
    if (greatest(need.data()) <= 0.0 || (event >= 0 && !pass(event)))
        return;
    pass(-1);
}

void StockRun::planned(size_t index, qsizetype begin)
{
    const StockNeed &need = m_paths.m_plan.needs[index];
    const double factor = index < m_whatIf.needFactor.size() ? m_whatIf.needFactor[index] : 1.0;
    Lanes asked;
    const double *drawn = m_paths.m_needs[index].data() + begin;
    for (qsizetype i = 0; i < kLanes; ++i)
        asked[static_cast<size_t>(i)] = drawn[i] * factor;
    Lanes missing = asked;
    burn(need.day, need.event, missing);
    if (m_whatIf.course)
        noteTaken(need.day, begin, asked, missing);
    const qsizetype count = std::min(kLanes, m_paths.m_paths - begin);
    double *event =
        need.event < 0 ? nullptr : m_missing[static_cast<size_t>(need.event)].data() + begin;
    for (qsizetype i = 0; i < count; ++i) {
        const auto lane = static_cast<size_t>(i);
        if (missing[lane] > kMetWithin * asked[lane]) {
            ++m_needShort[index];
            if (event != nullptr)
                event[i] += missing[lane];
        }
    }
}

// The unplanned fires before a day. They are few: one path at a time.
void StockRun::unplanned(int before, qsizetype begin)
{
    if (m_missingUnplanned.empty())
        return;
    const auto &firstFire = m_paths.m_firstFire;
    for (size_t lane = 0; lane < size_t(kLanes); ++lane) {
        const size_t path = static_cast<size_t>(begin) + lane;
        size_t &fire = m_nextFire[lane];
        for (; fire < firstFire[path + 1] && m_paths.m_fireDay[fire] < before; ++fire) {
            const int day = m_paths.m_fireDay[fire];
            const double asked = m_paths.m_fireHeat[fire] * m_whatIf.unplannedFactor;
            const double missing = burnLane(day, lane, asked);
            if (missing > kMetWithin * asked)
                m_missingUnplanned[path] += missing;
            if (m_whatIf.course) {
                m_change[static_cast<size_t>(day)][lane] -= asked - missing;
                if (static_cast<qsizetype>(path) < m_paths.m_paths)
                    m_burned[static_cast<size_t>(day)] += asked - missing;
            }
        }
    }
}

double StockRun::burnLane(int day, size_t lane, double need)
{
    for (Pile &pile : m_piles) {
        if (pile.empty || pile.source->reservedFor >= 0 || pile.ready[lane] > day)
            continue;
        const double taken = std::min(pile.left[lane], need);
        pile.left[lane] -= taken;
        need -= taken;
        if (need <= 0.0)
            break;
    }
    return need;
}

// Dry wood at the end of a day is what the fires of the next day find.
void StockRun::addArrivals()
{
    const qsizetype days = m_paths.m_plan.days;
    for (Lanes &lanes : m_change)
        lanes.fill(0.0);
    for (const Pile &pile : m_piles)
        for (size_t i = 0; i < size_t(kLanes); ++i) {
            const double day = std::max(0.0, std::ceil(pile.ready[i]) - 1.0);
            if (day < static_cast<double>(days))
                m_change[static_cast<size_t>(day)][i] += pile.left[i];
        }
}

void StockRun::noteTaken(int day, qsizetype begin, const Lanes &asked, const Lanes &missing)
{
    Lanes &change = m_change[static_cast<size_t>(day)];
    const qsizetype count = std::min(kLanes, m_paths.m_paths - begin);
    Lanes taken;
    for (size_t i = 0; i < size_t(kLanes); ++i) {
        taken[i] = asked[i] - missing[i];
        change[i] -= taken[i];
    }
    m_burned[static_cast<size_t>(day)] += sumOf(taken.data(), count);
}

void StockRun::fillCourse(qsizetype begin)
{
    const auto count = static_cast<size_t>(std::min(kLanes, m_paths.m_paths - begin));
    Lanes dry{};
    std::array<int, kLanes> bin{};
    for (size_t day = 0; day < m_change.size(); ++day) {
        for (size_t i = 0; i < size_t(kLanes); ++i) {
            dry[i] += m_change[day][i];
            bin[i] = static_cast<int>(std::max(dry[i], 0.0) * m_binsPerHeat);
        }
        DayCount &counts = m_counts[day];
        for (size_t i = 0; i < count; ++i)
            ++counts.paths[static_cast<size_t>(bin[i])];
        counts.sum += sumOf(dry.data(), static_cast<qsizetype>(count));
        counts.least = std::min(counts.least, leastOf(dry.data(), count));
        counts.most = std::max(counts.most, mostOf(dry.data(), count));
    }
}

// The value at that place of the paths in order: even within its bin.
double StockRun::atPlace(const DayCount &counts, double chance) const
{
    const double place = chance * (m_paths.m_paths - 1);
    double before = 0;
    size_t bin = 0;
    while (before + counts.paths[bin] <= place)
        before += counts.paths[bin++];
    const double part = (place - before + 0.5) / counts.paths[bin];
    return std::clamp((double(bin) + part) / m_binsPerHeat, std::max(0.0, counts.least),
                      std::max(0.0, counts.most));
}

void StockRun::endBlock(qsizetype begin)
{
    const qsizetype count = std::min(kLanes, m_paths.m_paths - begin);
    for (size_t p = 0; p < m_piles.size(); ++p)
        m_left[p] += sumOf(m_piles[p].left.data(), count);
    if (m_whatIf.course)
        fillCourse(begin);
}

EventRisk StockRun::riskOf(const Row &missing) const
{
    qint64 count = 0;
    double sum = 0;
    for (qsizetype i = 0; i < m_paths.m_paths; ++i) {
        const double heat = missing[static_cast<size_t>(i)];
        count += heat > 0.0 ? 1 : 0;
        sum += heat;
    }
    const double n = m_paths.m_paths;
    EventRisk risk;
    risk.judged = true;
    risk.chance = double(count) / n;
    // With two cases more of either kind (Agresti and Coull 1998, The American Statistician 52:119,
    // from memory), so that no short path in ten thousand does not claim certainty.
    const double guarded = (double(count) + 2.0) / (n + 4.0);
    risk.error = std::sqrt(guarded * (1.0 - guarded) / (n + 4.0));
    risk.meanShort = sum / n;
    risk.shortWhenShort = count > 0 ? sum / double(count) : 0.0;
    return risk;
}

// Wood that stands on the yard, dry or not: what was there, what arrived, less what was burned.
void StockRun::fillMeans(StockOutcome &outcome)
{
    const double n = m_paths.m_paths;
    std::vector<double> arrived(m_counts.size(), 0.0);
    double onYard = 0;
    for (const auto &lot : m_paths.m_lots)
        onYard += sumOf(lot.heat.data(), m_paths.m_paths) / n;
    const auto come = [&](const StockPaths::Source &source) {
        for (qsizetype i = 0; i < m_paths.m_paths; ++i) {
            const auto path = static_cast<size_t>(i);
            if (source.arrival[path] < double(arrived.size()))
                arrived[static_cast<size_t>(source.arrival[path])] += source.heat[path] / n;
        }
    };
    for (const auto &source : m_paths.m_comings)
        come(source);
    for (const auto &source : m_placed)
        come(source);
    for (size_t day = 0; day < m_counts.size(); ++day) {
        outcome.meanDry.push_back(m_counts[day].sum / n);
        onYard += arrived[day] - m_burned[day] / n;
        outcome.meanOnYard.push_back(onYard);
    }
}

StockOutcome StockRun::finish()
{
    const StockPlan &plan = m_paths.m_plan;
    StockOutcome outcome;
    outcome.paths = m_paths.m_paths;
    outcome.events.resize(m_missing.size());
    std::vector<bool> judged(m_missing.size(), false);
    Row all(static_cast<size_t>(m_paths.m_padded), 0.0);
    for (const size_t need : m_paths.m_order)
        if (plan.needs[need].event >= 0)
            judged[static_cast<size_t>(plan.needs[need].event)] = true;
    for (size_t e = 0; e < m_missing.size(); ++e) {
        if (!judged[e])
            continue;
        outcome.events[e] = riskOf(m_missing[e]);
        for (size_t i = 0; i < all.size(); ++i)
            all[i] += m_missing[e][i];
    }
    outcome.any = riskOf(all);
    if (!m_missingUnplanned.empty())
        outcome.unplanned = riskOf(m_missingUnplanned);
    for (const qint64 count : m_needShort)
        outcome.needChance.push_back(double(count) / m_paths.m_paths);
    outcome.lotLeft.assign(plan.lots.size(), 0.0);
    for (size_t i = 0; i < plan.lots.size(); ++i) // held lots stay as they are
        outcome.lotLeft[i] =
            sumOf(m_paths.m_lots[i].heat.data(), m_paths.m_paths) / m_paths.m_paths;
    for (size_t p = 0; p < m_piles.size(); ++p) {
        const double left = m_left[p] / m_paths.m_paths;
        outcome.allLeft += left;
        if (m_piles[p].lot >= 0)
            outcome.lotLeft[static_cast<size_t>(m_piles[p].lot)] = left;
    }
    if (m_whatIf.course) {
        fillMeans(outcome);
        for (const DayCount &counts : m_counts)
            outcome.course.push_back(
                {atPlace(counts, 0.05), atPlace(counts, 0.5), atPlace(counts, 0.95)});
    }
    return outcome;
}

} // namespace rickyard::domain
