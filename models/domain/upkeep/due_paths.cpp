#include "models/domain/upkeep/due_paths.h"

#include "models/domain/fire/watch.h"
#include "models/domain/plan/spread.h"
#include "models/domain/statistics/distributions.h"
#include "models/domain/upkeep/meters.h"

#include <boost/math/special_functions/gamma.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace rickyard::domain {

namespace {

// Not the seed of the stock's paths: luck of its own.
constexpr quint64 kDueSeed = 0x7570'6b65'6570ULL;
constexpr double kLevel = 0.90; // of PlannedUse
constexpr double kEarly = 0.10;
constexpr double kLate = 0.90;
constexpr size_t kTriggers = 5;

bool wasPlanned(const Books &books, const Cook &cook, Instant end)
{
    return cook.planned || std::any_of(books.plannedCooks.cbegin(), books.plannedCooks.cend(),
                                       [&](const PlannedCook &p) {
                                           return !p.cancelled && p.pit == cook.pit &&
                                                  p.light < end && cook.lit < p.light + p.length;
                                       });
}

// A normal with the use's upper half where its lower end touches zero.
Spread spreadOfUse(const PlannedUse &use)
{
    if (use.lower > Heat())
        return Spread::lognormal(use.middle.toDouble(), use.lower.toDouble(), use.upper.toDouble(),
                                 kLevel);
    const auto score = statistics::twoSided(statistics::Normal{}, kLevel);
    return Spread::normal(use.middle.toDouble(),
                          (use.upper - use.middle).toDouble() / (score ? score.value() : 1.0));
}

template <class Path>
void sortByEnd(Path &path)
{
    std::stable_sort(path.begin(), path.end(),
                     [](const auto &a, const auto &b) { return a.end < b.end; });
}

} // namespace

UnplannedRate unplannedRate(const Books &books, RecordId pit, Instant now)
{
    std::optional<Instant> first;
    for (const Cook &cook : books.cooks)
        if (cook.lit <= now && (!first || cook.lit < *first))
            first = cook.lit;
    UnplannedRate rate;
    if (!first)
        return rate;
    rate.days = hours(now - *first) / 24;
    rate.known = rate.days >= kUnplannedLogDays;
    for (const Cook &cook : books.cooks)
        if (cook.pit == pit && cook.lit > *first && cook.lit <= now &&
            !wasPlanned(books, cook, cook.fireOut.value_or(now)))
            ++rate.cooks;
    return rate;
}

std::vector<double> lengthRatios(const Books &books, Instant now)
{
    std::vector<double> ratios;
    for (const Cook &cook : books.cooks) {
        const auto plan = books.plannedCooks.constFind(cook.planned.value_or(0));
        if (plan == books.plannedCooks.cend() || !cook.fireOut || *cook.fireOut > now ||
            plan->length <= Duration() || *cook.fireOut <= cook.lit)
            continue;
        ratios.push_back(std::clamp((*cook.fireOut - cook.lit) / plan->length, 0.25, 4.0));
    }
    return ratios;
}

DuePaths::DuePaths(const Books &books, const FuelAnswer &fuel, const QVector<PlannedUse> &uses,
                   Instant now, const LocalTime &local, int paths)
    : m_books(books), m_fuel(fuel), m_now(now), m_local(local), m_ratios(lengthRatios(books, now))
{
    for (const PlannedUse &use : uses)
        m_uses.insert(use.plannedCook, use);
    m_count = uncertain() ? size_t(std::max(1, paths)) : 1;
}

bool DuePaths::uncertain() const
{
    return m_ratios.size() >= kPlannedLengths ||
           std::any_of(m_uses.cbegin(), m_uses.cend(),
                       [](const PlannedUse &use) { return use.lower < use.upper; }) ||
           std::any_of(m_books.pits.cbegin(), m_books.pits.cend(), [this](const Pit &pit) {
               return unplannedRate(m_books, pit.id, m_now).perDay() > 0;
           });
}

const std::vector<DuePaths::Path> &DuePaths::pathsOf(RecordId pit)
{
    const auto known = m_paths.constFind(pit);
    if (known != m_paths.constEnd())
        return *known;
    if (pit != 0)
        return *m_paths.insert(pit, drawPit(pit));
    std::vector<Path> all(m_count);
    for (const Pit &one : m_books.pits) {
        const std::vector<Path> &own = pathsOf(one.id);
        for (size_t i = 0; i < m_count; ++i)
            all[i].insert(all[i].end(), own[i].begin(), own[i].end());
    }
    for (Path &path : all)
        sortByEnd(path);
    return *m_paths.insert(0, std::move(all));
}

// The share of a use's variance that all cooks of the pit have in common: what is not known of its
// norm, as against the scatter of one cook.
double DuePaths::sharedError(const PlannedUse &use) const
{
    if (!m_fuel.watch || use.lower <= Heat() || use.upper <= use.lower)
        return 0.0;
    const auto &norm = m_fuel.watch->norm();
    const auto quantile = statistics::twoSided(statistics::StudentT{norm.dof()}, kLevel);
    if (!quantile || !std::isfinite(norm.scale()))
        return 0.0;
    const double sd = std::log(use.upper / use.lower) / (2.0 * quantile.value());
    const double own = std::log1p(norm.scale() * norm.scale());
    return sd > 0 ? std::clamp(1.0 - own / (sd * sd), 0.0, 1.0) : 0.0;
}

std::vector<DuePaths::Path> DuePaths::drawPit(RecordId pit) const
{
    std::vector<Path> paths(m_count);
    const UseRates rates = ratesOf(m_books, m_fuel, pit);
    std::vector<double> common(m_count);
    DrawStream stream(kDueSeed, DrawSubject::SharedNeed, pit);
    Spread::normal(0, 1).fill(stream, common.data(), qsizetype(m_count));
    for (const Burn &burn : burnsOf(m_books, pit, m_now)) {
        if (burn.cook == 0) {
            drawPlanned(burn, rates, common, paths);
        } else if (burn.running) {
            // What it burned so far is on record; the rest goes at the mean rate.
            const double rest = std::max(0.0, hours(burn.end - std::max(burn.start, m_now)));
            const double heat = rest * rates.heatPerHour.value_or(0.0);
            for (Path &path : paths)
                path.push_back({burn.start, burn.end, rest, heat, heat * rates.ashPerHeat});
        }
    }
    drawUnplanned(pit, rates, paths);
    for (Path &path : paths)
        sortByEnd(path);
    return paths;
}

void DuePaths::drawPlanned(const Burn &burn, const UseRates &rates,
                           const std::vector<double> &common, std::vector<Path> &paths) const
{
    const auto count = qsizetype(m_count);
    std::vector<double> ratio(m_count, 1.0);
    if (m_ratios.size() >= kPlannedLengths) {
        std::vector<std::pair<double, double>> seen;
        for (const double r : m_ratios)
            seen.emplace_back(r, 1.0);
        DrawStream stream(kDueSeed, DrawSubject::Need, burn.planned, 1);
        Spread::sample(seen).fill(stream, ratio.data(), count);
    }
    const double planned = hours(burn.end - burn.start);
    std::vector<double> heat(m_count, planned * rates.heatPerHour.value_or(0.0));
    const auto use = m_uses.constFind(burn.planned);
    if (use != m_uses.constEnd()) {
        DrawStream stream(kDueSeed, DrawSubject::Need, burn.planned, 2);
        spreadOfUse(*use).fillShared(stream, common.data(), sharedError(*use), heat.data(), count);
    }
    for (size_t i = 0; i < m_count; ++i) {
        const double joules = std::max(0.0, heat[i]) * ratio[i];
        const double length = planned * ratio[i];
        paths[i].push_back({burn.start, burn.start + durationFromHours(length), length, joules,
                            joules * rates.ashPerHeat});
    }
}

// Cooks that nobody planned come as a Poisson stream. Its rate is not known better than the log
// tells it: Gamma(cooks, days), so that the mean is cooks / days and the number of cooks in a time
// to come is negative binomial. Each is like one of those of the log. One that would run into a
// burn that is planned, or into another, does not take place.
void DuePaths::drawUnplanned(RecordId pit, const UseRates &rates, std::vector<Path> &paths) const
{
    const UnplannedRate rate = unplannedRate(m_books, pit, m_now);
    if (rate.perDay() <= 0)
        return;
    std::vector<std::pair<double, double>> sizes; // hours, heat
    for (const CookFuel &cook : m_fuel.cooks)
        if (cook.pit == pit && cook.finished && cook.length > Duration())
            sizes.emplace_back(hours(cook.length),
                               cook.netHeat > Heat()
                                   ? cook.netHeat.toDouble()
                                   : hours(cook.length) * rates.heatPerHour.value_or(0.0));
    if (sizes.empty())
        sizes.emplace_back(hours(kAssumedBurn),
                           hours(kAssumedBurn) * rates.heatPerHour.value_or(0.0));
    DrawStream stream(kDueSeed, DrawSubject::Unplanned, pit);
    for (Path &path : paths) {
        const double perDay =
            boost::math::gamma_p_inv(double(rate.cooks), stream.uniform()) / rate.days;
        const Path booked = path;
        Instant free = m_now;
        for (double day = -std::log(stream.uniform()) / perDay; day < kDueDays;
             day -= std::log(stream.uniform()) / perDay) {
            const auto &[length, heat] =
                sizes[std::min(sizes.size() - 1, size_t(stream.uniform() * double(sizes.size())))];
            const Instant start = m_now + durationFromHours(day * 24);
            const Instant end = start + durationFromHours(length);
            const bool clash =
                start < free || std::any_of(booked.begin(), booked.end(), [&](const PathBurn &b) {
                    return b.start < end && start < b.end;
                });
            if (clash)
                continue;
            free = end;
            path.push_back({start, end, length, heat, heat * rates.ashPerHeat});
        }
    }
}

DuePaths::First DuePaths::firstOf(const Path &path, const UpkeepTask &task, const MeterSums &soFar,
                                  Instant from, Instant now)
{
    MeterSums sums = soFar;
    for (const PathBurn &burn : path) {
        BurnUse use;
        // The count may begin later than today.
        const double part = shareOf(std::max(burn.start, now), burn.end, from, burn.end);
        use.cooks = burn.start >= from ? 1 : 0;
        use.fires = burn.end > from ? 1 : 0;
        use.hours = burn.hours * part;
        use.heat = burn.heat * part;
        use.ash = burn.ash * part;
        sums.add(use);
        if (const auto trigger = reachedBy(task, sums, 1.0))
            return {burn.end, static_cast<int>(*trigger), true};
    }
    return {};
}

DueSpread DuePaths::spreadOf(const UpkeepTask &task)
{
    const DueForecast plain = forecastDue(m_books, m_fuel, task, m_now, m_local);
    const DueForecast calendar = forecastByCalendar(m_books, task, m_now, m_local);
    const Instant from = startOfCount(m_books, task, m_now, m_local);
    const bool drawn = runsWithFire(task) && !(plain.known && plain.at <= m_now);
    MeterSums soFar;
    if (drawn)
        for (const Burn &burn : burnsForTask(m_books, task, m_now))
            if (burn.cook != 0 && burn.end > from)
                soFar.add(usedOf(m_books, burn, m_fuel, from, m_now));

    std::vector<Instant> times; // of the paths on which it falls due
    std::array<size_t, kTriggers + 1> first{};
    const DueForecast &sure = drawn ? calendar : plain;
    const std::vector<Path> none;
    const std::vector<Path> &paths = drawn ? pathsOf(task.pit.value_or(0)) : none;
    for (size_t i = 0; i < m_count; ++i) {
        First path = drawn ? firstOf(paths[i], task, soFar, from, m_now) : First();
        if (sure.known && (!path.found || sure.at <= path.at))
            path = {sure.at, -1, true};
        if (!path.found)
            continue;
        times.push_back(path.at);
        ++first[size_t(path.trigger + 1)];
    }
    std::sort(times.begin(), times.end());

    DueSpread spread;
    spread.chance = double(times.size()) / double(m_count);
    const auto quantile = [&](double chance) -> std::optional<Instant> {
        const auto place = size_t(std::ceil(chance * double(m_count))) - 1;
        return place < times.size() ? std::optional<Instant>(times[place]) : std::nullopt;
    };
    // The end of a day is the first instant of the next.
    const auto dayOf = [&](Instant at) {
        return sure.known && at == sure.at ? sure.day : m_local.dateOf(at);
    };
    const auto middle = quantile(0.5);
    spread.known = middle.has_value();
    if (spread.known) {
        spread.at = *middle;
        spread.middle = dayOf(*middle);
        spread.fixed = times.size() == m_count && times.front() == times.back();
        const size_t most = size_t(std::max_element(first.begin(), first.end()) - first.begin());
        spread.reason =
            most == 0 ? sure.reason
                      : triggerWords(task, static_cast<Trigger>(most - 1), m_books.yard().metric);
    }
    if (const auto early = quantile(kEarly))
        spread.early = dayOf(*early);
    if (const auto late = quantile(kLate))
        spread.late = dayOf(*late);
    for (const Burn &burn : burnsForTask(m_books, task, m_now)) {
        if (burn.cook != 0)
            continue;
        const auto due = std::upper_bound(times.begin(), times.end(), burn.start);
        spread.lightings << LightingChance{burn.planned, burn.start,
                                           double(due - times.begin()) / double(m_count)};
    }
    return spread;
}

} // namespace rickyard::domain
