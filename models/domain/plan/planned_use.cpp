#include "models/domain/plan/reorder.h"
#include "models/domain/weather/series.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

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

PlannedUse useOf(const Books &books, const FuelAnswer &fuel, const WeatherSeries &weather,
                 const PlannedCook &planned)
{
    PlannedUse use;
    use.plannedCook = planned.id;
    use.event = planned.event.value_or(0);
    use.pit = planned.pit;
    use.light = planned.light;
    const WeatherMean mean = weather.climatology(planned.light, planned.light + planned.length);
    use.outside = planned.outside ? *planned.outside : mean.temperature.value_or(mildDay());
    use.weatherBasis = planned.outside ? QStringLiteral("the forecast typed in for the cook")
                       : mean.temperature
                           ? mean.basis
                           : QStringLiteral("no weather on record for the time of year: 60 °F "
                                            "(16 °C) assumed");
    const auto usual = books.pits.value(planned.pit).usualTemperature;
    const Temperature target = planned.target.value_or(usual.value_or(usualPit()));
    PlannedFire fire;
    fire.pit = planned.pit;
    fire.length = planned.length;
    fire.target = target;
    fire.outside = use.outside;
    fire.wind = planned.wind ? planned.wind : mean.wind;
    fire.food = planned.foodMass;
    const ExpectedUse expected = expectedUse(books, fuel, fire);
    // Less than nothing is not burned, and an interval holds its middle.
    use.middle = std::max(expected.middle, Heat());
    use.lower = std::clamp(expected.lower, Heat(), use.middle);
    use.upper = std::max(expected.upper, use.middle);
    use.useBasis = expected.basis;
    use.assumed = !expected.fromNorm || (!planned.outside && !mean.temperature) ||
                  (!planned.target && !usual);
    return use;
}

} // namespace

QVector<PlannedUse> plannedUses(const Books &books, const FuelAnswer &fuel, Instant now)
{
    const WeatherSeries weather(books);
    QVector<PlannedUse> uses;
    for (const PlannedCook &planned : books.plannedCooks)
        if (stillAhead(books, planned, now))
            uses << useOf(books, fuel, weather, planned);
    std::stable_sort(uses.begin(), uses.end(),
                     [](const PlannedUse &a, const PlannedUse &b) { return a.light < b.light; });
    return uses;
}

} // namespace rickyard::domain
