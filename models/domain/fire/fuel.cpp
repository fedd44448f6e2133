#include "models/domain/fire/fuel.h"

#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/fuel_replay.h"
#include "models/domain/fire/fuel_words.h"

#include "models/domain/statistics/descriptive.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

HeatColumns columnsOf(const Books &books, const PlannedFire &fire)
{
    HeatStretch whole;
    whole.seconds = std::max(0.0, fire.length.toDouble());
    whole.pit = celsius(fire.target);
    whole.outside = celsius(fire.outside);
    whole.wind = fire.wind.value_or(kUsualWind).toDouble() / 1000.0;
    whole.rain = fire.rain;
    HeatCook cook;
    cook.course = {whole};
    cook.target = whole.pit;
    cook.outsideAtStart = whole.outside;
    cook.start = fire.start;
    cook.foodMass = fire.food ? kilograms(*fire.food) : 0.0;
    return heatColumns(heatShape(books.pits.value(fire.pit)), cook);
}

QString basisOf(const Books &books, const FuelAnswer &fuel, RecordId pit, bool &ofThisPit)
{
    int own = 0;
    int all = 0;
    for (const PitFuel &p : fuel.pits) {
        all += p.cooksEver;
        own += p.pit == pit ? p.cooksEver : 0;
    }
    QString name = books.pits.value(pit).name;
    if (name.isEmpty())
        name = QStringLiteral("this pit");
    ofThisPit = own > 0;
    if (own > 0)
        return QString(QStringLiteral("From ") + countOf(own, QStringLiteral("cook")) +
                       QStringLiteral(" of ") + name +
                       QStringLiteral(", its size and the crew's ") +
                       countOf(all, QStringLiteral("cook")) + QStringLiteral(" in all."));
    if (all > 0)
        return QString(QStringLiteral("Assumed: ") + name +
                       QStringLiteral(" has no cook to learn from, so its size and the crew's ") +
                       countOf(all, QStringLiteral("cook")) +
                       QStringLiteral(" on other pits stand in."));
    return QString(QStringLiteral("Assumed: no cook is logged yet, so the size of ") + name +
                   QStringLiteral(" stands in: calculated and not measured, and wide on purpose."));
}

// The fire that the pit's hourly figure is for.
PlannedFire usualFire(const Pit &pit, const WeatherSeries &weather, Instant now)
{
    const WeatherMean mean = weather.climatology(now, now + durationFromHours(12));
    PlannedFire fire;
    fire.pit = pit.id;
    fire.target = pit.usualTemperature.value_or(usualPit());
    fire.outside = mean.temperature.value_or(mildDay());
    fire.wind = mean.wind;
    return fire;
}

} // namespace

bool PitFuel::named() const
{
    constexpr double kStillStands = 2.0 / 3.0;
    return flag == WatchFlag::More && climb && climb->lower > 0.0 && nearness() >= kStillStands;
}

FuelAnswer fuelAnswer(const Books &books, Instant now, const Wording &wording)
{
    const WeatherSeries weather(books);
    const CookReader reader(books, weather, now);
    FuelAnswer answer;
    for (const Cook &cook : books.cooks)
        if (cook.lit <= now)
            answer.cooks << reader.read(cook);
    std::stable_sort(answer.cooks.begin(), answer.cooks.end(),
                     [](const CookFuel &a, const CookFuel &b) { return a.lit < b.lit; });
    FuelReplay replay = replayFuel(books, answer.cooks, now);
    answer.pits = replay.pits;
    answer.watch = replay.watch;
    for (PitFuel &pit : answer.pits) {
        pit.usual = usualFire(books.pits.value(pit.pit), weather, now);
        pit.hourly = hourlyUse(books, answer, pit.usual);
    }
    answer.headline = fuelHeadline(books, answer, now, wording);
    return answer;
}

ExpectedUse expectedUse(const Books &books, const FuelAnswer &fuel, const PlannedFire &fire)
{
    std::optional<FuelWatch> fresh;
    if (!fuel.watch)
        fresh.emplace(watchSettingsOf(books));
    const FuelWatch &watch = fuel.watch ? *fuel.watch : *fresh;
    const HeatColumns columns = columnsOf(books, fire);
    ExpectedUse use;
    use.basis = basisOf(books, fuel, fire.pit, use.fromNorm);
    const auto forecast = watch.expect(fire.pit, columns);
    const auto parts = watch.expectedParts(fire.pit, columns);
    if (!forecast || !parts)
        return use;
    use.middle = Heat::rounded(forecast->expected);
    use.lower = Heat::rounded(forecast->lower);
    use.upper = Heat::rounded(forecast->upper);
    use.relativeSd = forecast->relativeSd;
    use.dof = forecast->dof;
    use.parts = *parts;
    return use;
}

PlannedFire middleFire(const Books &books, const FuelAnswer &fuel, RecordId pit)
{
    PlannedFire fire;
    for (const PitFuel &one : fuel.pits)
        if (one.pit == pit)
            fire = one.usual;
    fire.length = durationFromHours(kUsualHours);
    std::vector<double> lengths;
    std::vector<double> inside;
    std::vector<double> outside;
    std::vector<double> wind;
    std::vector<double> food;
    for (const CookFuel &cook : fuel.cooks) {
        if (cook.pit != pit || !cook.verdict)
            continue;
        lengths.push_back(cook.length.toDouble());
        inside.push_back(cook.meanPit->toDouble());
        outside.push_back(cook.meanOutside->toDouble());
        if (cook.meanWind)
            wind.push_back(cook.meanWind->toDouble());
        food.push_back(books.cooks.value(cook.cook).foodMass.value_or(Mass()).toDouble());
    }
    if (const auto m = statistics::median(lengths))
        fire.length = Duration::rounded(m.value());
    if (const auto m = statistics::median(inside))
        fire.target = Temperature::rounded(m.value());
    if (const auto m = statistics::median(outside))
        fire.outside = Temperature::rounded(m.value());
    if (const auto m = statistics::median(wind))
        fire.wind = Speed::rounded(m.value());
    if (const auto m = statistics::median(food))
        fire.food = Mass::rounded(m.value());
    return fire;
}

Heat hourlyUse(const Books &books, const FuelAnswer &fuel, PlannedFire fire)
{
    constexpr double few = 6;
    constexpr double many = 12;
    fire.length = durationFromHours(few);
    const Heat less = expectedUse(books, fuel, fire).middle;
    fire.length = durationFromHours(many);
    return Heat::rounded((expectedUse(books, fuel, fire).middle - less).toDouble() / (many - few));
}

double centsPerJoule(const FuelAnswer &fuel, RecordId pit)
{
    constexpr int kPriced = 10; // last priced cooks that the price is taken from
    double cents = 0;
    double joules = 0;
    int taken = 0;
    for (auto cook = fuel.cooks.crbegin(); cook != fuel.cooks.crend() && taken < kPriced; ++cook) {
        if ((pit != 0 && cook->pit != pit) || cook->priced <= 0)
            continue;
        cents += cook->cost;
        joules += cook->netHeat.toDouble() * cook->priced;
        ++taken;
    }
    return joules > 0 ? cents / joules : 0.0;
}

} // namespace rickyard::domain
