// Invented seasons for studying the watch: hourly weather from a seeded generator or from a real
// year (real_weather.h), a crew with pits whose true behaviour differs from the balance's figures,
// cooks that scatter lognormally, a fault that starts at a given cook. Everything follows from the
// seed.
#pragma once

#include "models/domain/fire/watch.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <optional>
#include <random>
#include <vector>

namespace rickyard::test {

class Dice
{
public:
    explicit Dice(std::uint64_t seed) : m_engine(seed * 0x9E3779B97F4A7C15ULL + 1) {}
    double uniform() { return (static_cast<double>(m_engine() >> 11U) + 0.5) * 0x1.0p-53; }
    double between(double low, double high) { return low + (high - low) * uniform(); }
    // Box and Muller; the library's own normal differs from one compiler to the next.
    double normal()
    {
        return std::sqrt(-2.0 * std::log(uniform())) * std::cos(2.0 * std::numbers::pi * uniform());
    }
    double lognormal(double sigma) { return std::exp(sigma * normal()); } // median 1

private:
    std::mt19937_64 m_engine;
};

struct WeatherHour {
    double temperature; // C
    double wind;        // m/s
    double rain;        // mm
};

// A yearly and a daily wave, weather systems of some three days, gusty wind, rain in spells.
inline std::vector<WeatherHour> inventedWeather(Dice &dice, int hours)
{
    std::vector<WeatherHour> weather(static_cast<std::size_t>(hours));
    const double phase = dice.between(0.0, 2.0 * std::numbers::pi);
    double system = 0.0;
    double air = 0.0;
    double wet = -1.0;
    for (int h = 0; h < hours; ++h) {
        system = 0.986 * system + 0.167 * dice.normal();
        air = 0.94 * air + 0.34 * dice.normal();
        wet = 0.9 * wet + 0.436 * dice.normal();
        const double year = std::cos(2.0 * std::numbers::pi * h / 8766.0 + phase);
        const double day = std::cos(2.0 * std::numbers::pi * (h % 24 - 15) / 24.0);
        auto &w = weather[static_cast<std::size_t>(h)];
        w.temperature = 17.0 + 11.0 * year + 5.0 * day + 4.5 * system;
        w.wind = std::max(0.0, 3.6 * std::exp(0.45 * air) + 0.8 * day - 0.3);
        w.rain = wet > 1.6 ? 2.0 * (wet - 1.6) : 0.0;
    }
    return weather;
}

struct SeasonPlan {
    double scatter = 0.08;
    int pits = 3;
    int cooksEach = 80;
    double fault = 1.0; // ratio of burned wood on pit 1, from its cook number `clean` + 1
    int clean = 20;
    std::uint64_t seed = 1;
    // A real year; the season starts at an hour of it that the seed picks and goes round. Null:
    // invented weather.
    const std::vector<WeatherHour> *year = nullptr;
};

// `hours` of the year from an hour that the dice pick, going round.
inline std::vector<WeatherHour> stretchOf(const std::vector<WeatherHour> &year, Dice &dice,
                                          int hours)
{
    std::vector<WeatherHour> weather;
    auto at = static_cast<std::size_t>(dice.uniform() * static_cast<double>(year.size()));
    for (int h = 0; h < hours; ++h)
        weather.push_back(year[at++ % year.size()]);
    return weather;
}

struct SeasonCook {
    domain::WatchCook cook;
    double hours = 0.0;
    int number = 0;     // of its pit, from 1
    double truth = 0.0; // expected heat without fault and scatter, joules
};

inline domain::Pit inventedPit(int which)
{
    domain::Pit pit;
    pit.id = which + 1;
    const double size = which % 3 == 0 ? 0.61 : which % 3 == 1 ? 0.76 : 0.91;
    pit.diameter = domain::Length::rounded(size * 1e6);
    pit.length = domain::Length::rounded(size * (2.0 + which % 3 * 0.5) * 1e6);
    pit.shelter = which % 3 == 2 ? domain::Shelter::Open : domain::Shelter::Half;
    return pit;
}

// What the balance does not know: how each pit really behaves.
struct PitTruth {
    domain::HeatShape shape;
    domain::HeatColumns factor{};
};

inline PitTruth inventedTruth(Dice &dice, int which, double crew, const domain::HeatColumns &terms)
{
    PitTruth truth;
    truth.shape = domain::heatShape(inventedPit(which));
    const double whole = crew * dice.lognormal(0.12);
    truth.factor = {whole, whole * terms[1] * dice.lognormal(0.2),
                    whole * terms[2] * dice.lognormal(0.15), whole * terms[3], whole * terms[4]};
    return truth;
}

inline domain::HeatCook inventedCook(Dice &dice, const std::vector<WeatherHour> &weather, int start,
                                     double usual)
{
    domain::HeatCook cook;
    const int hours = static_cast<int>(dice.between(8.0, 17.0));
    cook.target = usual + dice.between(-6.0, 6.0);
    cook.start = dice.uniform() < 0.2 ? domain::StartKind::Warm : domain::StartKind::Cold;
    cook.foodMass = dice.between(15.0, 70.0);
    cook.outsideAtStart = weather[static_cast<std::size_t>(start)].temperature;
    for (int h = 0; h < hours; ++h) {
        const auto &w = weather[static_cast<std::size_t>(start + h)];
        const double pit =
            h == 0 ? 0.5 * (cook.target + w.temperature) : cook.target + 4.0 * dice.normal();
        cook.course.push_back({3600.0, pit, w.temperature, w.wind, w.rain});
    }
    return cook;
}

// In time order, the pits taking turns.
inline std::vector<SeasonCook> inventedSeason(const SeasonPlan &plan)
{
    Dice dice(plan.seed);
    const int gap = 80; // hours between cooks of a pit, on average
    const int span = plan.cooksEach * gap + 400;
    const auto weather =
        plan.year ? stretchOf(*plan.year, dice, span) : inventedWeather(dice, span);
    const double crew = dice.lognormal(0.2);
    const domain::HeatColumns terms = {1.0, dice.lognormal(0.25), dice.lognormal(0.25),
                                       dice.lognormal(0.2), dice.lognormal(0.3)};
    std::vector<PitTruth> pits;
    for (int p = 0; p < plan.pits; ++p)
        pits.push_back(inventedTruth(dice, p, crew, terms));
    std::vector<SeasonCook> season;
    for (int n = 1; n <= plan.cooksEach; ++n) {
        for (int p = 0; p < plan.pits; ++p) {
            const int start = (n - 1) * gap + static_cast<int>(dice.between(0.0, 70.0));
            const auto raw = inventedCook(dice, weather, start, p == 1 ? 121.0 : 110.0);
            const auto &truth = pits[static_cast<std::size_t>(p)];
            SeasonCook cook;
            cook.number = n;
            cook.hours = static_cast<double>(raw.course.size());
            cook.cook.cook = static_cast<domain::RecordId>(season.size()) + 1;
            cook.cook.pit = p + 1;
            cook.cook.columns = domain::heatColumns(truth.shape, raw);
            for (std::size_t j = 0; j < truth.factor.size(); ++j)
                cook.truth += truth.factor[j] * cook.cook.columns[j] / domain::kEfficiency;
            const double fault = p == 0 && n > plan.clean ? plan.fault : 1.0;
            cook.cook.actual = cook.truth * fault * dice.lognormal(plan.scatter);
            season.push_back(cook);
        }
    }
    return season;
}

struct SeasonOutcome {
    int cleanCooks = 0; // judged while nothing was wrong
    int falseAlarms = 0;
    std::optional<int> caughtAfter; // cooks from the fault to the flag, on pit 1
    double percentAtFlag = 0.0;
};

// Replays a season; at a false alarm the crew looks and says "nothing found". Stops when the fault
// is caught. Only flags for burning more are counted, as the bars are set for them.
inline SeasonOutcome watchSeason(const SeasonPlan &plan, const domain::WatchSettings &settings,
                                 int countFrom = 1)
{
    SeasonOutcome outcome;
    domain::FuelWatch watch(settings);
    for (const SeasonCook &c : inventedSeason(plan)) {
        const bool faulty = plan.fault > 1.0 && c.cook.pit == 1 && c.number > plan.clean;
        const auto verdict = watch.add(c.cook);
        const bool more = verdict.raised && verdict.flag == domain::WatchFlag::More;
        if (faulty && more) {
            outcome.caughtAfter = c.number - plan.clean;
            outcome.percentAtFlag = watch.excess(1)->percent;
            return outcome;
        }
        if (!faulty && c.number >= countFrom) {
            ++outcome.cleanCooks;
            outcome.falseAlarms += more ? 1 : 0;
        }
        if (verdict.raised && !faulty)
            watch.nothingFound(c.cook.pit);
    }
    return outcome;
}

// The oracle: knows every true coefficient and the scatter.
inline SeasonOutcome oracleSeason(const SeasonPlan &plan, double limit)
{
    SeasonOutcome outcome;
    std::vector<domain::statistics::CusumSide> sums(static_cast<std::size_t>(plan.pits));
    for (const SeasonCook &c : inventedSeason(plan)) {
        const bool faulty = plan.fault > 1.0 && c.cook.pit == 1 && c.number > plan.clean;
        auto &sum = sums[static_cast<std::size_t>(c.cook.pit - 1)];
        sum.add(std::log(c.cook.actual / c.truth) / plan.scatter);
        if (!faulty)
            ++outcome.cleanCooks;
        if (sum.sum <= limit)
            continue;
        sum = {};
        if (faulty) {
            outcome.caughtAfter = c.number - plan.clean;
            return outcome;
        }
        ++outcome.falseAlarms;
    }
    return outcome;
}

// Rule of thumb: mean pounds an hour of the last three cooks more than 15 % above the pit's average
// of all before them. A stretch above the line is one alarm.
inline SeasonOutcome thumbSeason(const SeasonPlan &plan)
{
    struct Log {
        std::vector<double> hourly;
        bool above = false;
    };
    SeasonOutcome outcome;
    std::vector<Log> logs(static_cast<std::size_t>(plan.pits));
    for (const SeasonCook &c : inventedSeason(plan)) {
        const bool faulty = plan.fault > 1.0 && c.cook.pit == 1 && c.number > plan.clean;
        Log &log = logs[static_cast<std::size_t>(c.cook.pit - 1)];
        log.hourly.push_back(c.cook.actual / c.hours);
        outcome.cleanCooks += faulty ? 0 : 1;
        const auto n = log.hourly.size();
        if (n < 7)
            continue;
        double sum = 0.0;
        for (std::size_t i = 0; i + 3 < n; ++i)
            sum += log.hourly[i];
        const double average = sum / static_cast<double>(n - 3);
        const double last = (log.hourly[n - 1] + log.hourly[n - 2] + log.hourly[n - 3]) / 3.0;
        const bool above = last > 1.15 * average;
        const bool raised = above && !log.above;
        log.above = above;
        if (faulty && raised) {
            outcome.caughtAfter = c.number - plan.clean;
            return outcome;
        }
        outcome.falseAlarms += raised && !faulty ? 1 : 0;
    }
    return outcome;
}

struct StudyResult {
    double cooksPerFalseAlarm = 0.0;
    int falseAlarms = 0;
    double medianToCatch = 0.0; // over faulty seasons; infinite when half are missed
    double missed = 0.0;        // share of faulty seasons without a flag
    double meanPercent = 0.0;   // said at the flag
};

// `season` replays a plan. Clean and faulty seasons have different seeds.
template <class Replay>
StudyResult study(SeasonPlan plan, int seasons, double fault, Replay season)
{
    StudyResult result;
    int cooks = 0;
    std::vector<double> caught;
    for (int i = 0; i < seasons; ++i) {
        plan.seed = 1000U + static_cast<std::uint64_t>(i);
        plan.fault = fault;
        const SeasonOutcome o = season(plan);
        if (fault > 1.0) {
            caught.push_back(o.caughtAfter ? double(*o.caughtAfter) : double(INFINITY));
            result.missed += o.caughtAfter ? 0.0 : 1.0 / seasons;
            result.meanPercent += o.percentAtFlag / seasons;
        } else {
            cooks += o.cleanCooks;
            result.falseAlarms += o.falseAlarms;
        }
    }
    result.cooksPerFalseAlarm =
        result.falseAlarms > 0 ? double(cooks) / result.falseAlarms : double(INFINITY);
    if (!caught.empty()) {
        std::sort(caught.begin(), caught.end());
        result.medianToCatch = caught[caught.size() / 2];
    }
    return result;
}

} // namespace rickyard::test
