#include "models/domain/plan/planned_use.h"

#include "models/domain/fire/watch.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/weather/series.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// How far a cook's mean temperature strays from what is expected, in kelvin: of a forecast typed
// in, of the time of year when too little weather is on record to say, and of a guess (common
// practice, no source).
constexpr double kForecastStrays = 2;
constexpr double kDateStrays = 5;
constexpr double kGuessStrays = 10;
constexpr int kLeastDaysToTell = 20;

bool stillAhead(const Books &books, const PlannedCook &planned, Instant now)
{
    if (planned.cancelled || planned.light + planned.length < now)
        return false;
    const auto event = books.events.constFind(planned.event.value_or(0));
    if (event != books.events.cend() &&
        (event->state == EventState::Cancelled || event->state == EventState::Done))
        return false;
    // Once lit, its feeds are in the ledger.
    return std::none_of(books.cooks.cbegin(), books.cooks.cend(),
                        [&](const Cook &cook) { return cook.planned == planned.id; });
}

// The scatter of twelve hours about their time of year over the last year; missing with too few.
std::optional<double> dateStrays(const WeatherSeries &weather, Instant now)
{
    std::vector<double> off;
    const Duration half = durationFromHours(12);
    for (int day = 4; day <= 364; day += 4) {
        const Instant from = now - durationFromHours(24.0 * day);
        const WeatherMean was = weather.mean(from, from + half);
        if (!was.temperature || was.covered < 0.9)
            continue;
        const WeatherMean usual = weather.climatology(from, from + half);
        if (usual.temperature)
            off.push_back(celsius(*was.temperature) - celsius(*usual.temperature));
    }
    if (off.size() < kLeastDaysToTell)
        return std::nullopt;
    const auto sd = statistics::sampleSd(off);
    return sd ? std::optional(sd.value()) : std::nullopt;
}

struct Sky {
    const WeatherSeries &weather;
    std::optional<double> strays;
};

// Temperature, wind and how sure they are; says what stands in.
PlannedFire fireOf(const Books &books, const Sky &sky, const PlannedCook &planned, PlannedUse &use,
                   double &strays)
{
    const WeatherMean mean = sky.weather.climatology(planned.light, planned.light + planned.length);
    use.forecast = planned.outside.has_value();
    use.outside = planned.outside ? *planned.outside : mean.temperature.value_or(mildDay());
    strays = kForecastStrays;
    if (planned.outside) {
        use.weatherBasis = QStringLiteral("the forecast typed in for the cook");
    } else if (mean.temperature) {
        use.weatherBasis = mean.basis;
        strays = sky.strays.value_or(kDateStrays);
    } else {
        use.weatherBasis =
            QStringLiteral("no weather on record for the time of year: 60 °F (16 °C) assumed, give "
                           "or take 18 °F (10 °C)");
        use.standIns << use.weatherBasis;
        strays = kGuessStrays;
    }
    PlannedFire fire;
    fire.wind = planned.wind ? planned.wind : mean.wind;
    if (!fire.wind)
        use.standIns << QStringLiteral("no wind on record for the time of year: 5.6 mph (2.5 m/s) "
                                       "in the open assumed");
    const auto usual = books.pits.value(planned.pit).usualTemperature;
    fire.target = planned.target.value_or(usual.value_or(usualPit()));
    if (!planned.target && !usual)
        use.standIns << QStringLiteral("no temperature given for the cook or its pit: 250 °F "
                                       "(121 °C) assumed");
    fire.pit = planned.pit;
    fire.length = planned.length;
    fire.outside = use.outside;
    fire.food = planned.foodMass;
    return fire;
}

PlannedUse useOf(const Books &books, const FuelAnswer &fuel, const Sky &sky,
                 const PlannedCook &planned)
{
    PlannedUse use;
    use.plannedCook = planned.id;
    use.event = planned.event.value_or(0);
    use.pit = planned.pit;
    use.light = planned.light;
    double strays = 0;
    PlannedFire fire = fireOf(books, sky, planned, use, strays);
    const ExpectedUse expected = expectedUse(books, fuel, fire);
    // Less than nothing is not burned, and an interval holds its middle.
    use.middle = std::max(expected.middle, Heat());
    use.lower = std::clamp(expected.lower, Heat(), use.middle);
    use.upper = std::max(expected.upper, use.middle);
    use.useBasis = expected.basis;
    if (!expected.fromNorm)
        use.standIns << expected.basis;
    fire.outside = use.outside - Temperature::rounded(1000 * kColderKelvin);
    use.colder = std::max(expectedUse(books, fuel, fire).middle, use.middle);
    if (use.middle > Heat())
        use.weatherSd = (use.colder / use.middle - 1.0) * strays / kColderKelvin;
    const double sd = expected.relativeSd;
    if (fuel.watch && sd > 0)
        use.normShare = std::clamp(1.0 - std::pow(fuel.watch->norm().scale() / sd, 2), 0.0, 1.0);
    return use;
}

} // namespace

QVector<PlannedUse> plannedUses(const Books &books, const FuelAnswer &fuel, Instant now)
{
    const WeatherSeries weather(books);
    const Sky sky{weather, dateStrays(weather, now)};
    QVector<PlannedUse> uses;
    for (const PlannedCook &planned : books.plannedCooks)
        if (stillAhead(books, planned, now))
            uses << useOf(books, fuel, sky, planned);
    std::stable_sort(uses.begin(), uses.end(),
                     [](const PlannedUse &a, const PlannedUse &b) { return a.light < b.light; });
    return uses;
}

} // namespace rickyard::domain
