#include "models/domain/upkeep/meter_use.h"

#include "models/domain/upkeep/meters.h"
#include "models/domain/wood/heat_value.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

const CookFuel *fuelOf(const FuelAnswer &fuel, RecordId cook)
{
    for (const CookFuel &c : fuel.cooks)
        if (c.cook == cook)
            return &c;
    return nullptr;
}

QString limitNumber(double limit)
{
    return QString::number(limit, 'f', limit < 10 && limit != std::floor(limit) ? 1 : 0);
}

} // namespace

void MeterSums::add(const BurnUse &use)
{
    cooks += use.cooks;
    fires += use.fires;
    hours += use.hours;
    heat += use.heat;
    ash += use.ash;
}

Mass ashOf(const Books &books, const CookFuel &cook)
{
    if (cook.lots.isEmpty())
        return ashOf(cook.dryMass, Species());
    Mass ash;
    for (auto lot = cook.lots.cbegin(); lot != cook.lots.cend(); ++lot)
        ash += ashOf(cook.dryMass * lot.value(),
                     books.species.value(books.lots.value(lot.key()).species));
    return ash;
}

UseRates ratesOf(const Books &books, const FuelAnswer &fuel, RecordId pit)
{
    double heat = 0, ash = 0, allHeat = 0, allAsh = 0;
    for (const CookFuel &c : fuel.cooks) {
        if (!c.finished || c.netHeat <= Heat() || c.dryMass <= Mass())
            continue;
        const double kg = kilograms(ashOf(books, c));
        allHeat += c.netHeat.toDouble();
        allAsh += kg;
        if (c.pit == pit) {
            heat += c.netHeat.toDouble();
            ash += kg;
        }
    }
    UseRates rates;
    rates.heatPerHour = meanHeatPerHour(fuel, pit);
    if (heat > 0) {
        rates.ashPerHeat = ash / heat;
    } else if (allHeat > 0) {
        rates.ashPerHeat = allAsh / allHeat;
    } else {
        rates.ashPerHeat =
            kDefaultAsh / netHeatPerDryKilogram(WoodAnalysis(), moistureFromDryFraction(0.2));
        rates.ashAssumed = true;
    }
    return rates;
}

double shareOf(Instant start, Instant end, Instant from, Instant to)
{
    const double whole = hours(end - start);
    const double part = hours(std::min(end, to) - std::max(start, from));
    return whole > 0 ? std::clamp(part / whole, 0.0, 1.0) : (start >= from ? 1.0 : 0.0);
}

BurnUse usedOf(const Books &books, const Burn &burn, const FuelAnswer &fuel, Instant from,
               Instant now)
{
    BurnUse use;
    use.start = burn.start;
    use.end = std::min(burn.end, now);
    const double part = shareOf(burn.start, use.end, from, now);
    use.cooks = burn.start >= from && !burn.running ? 1 : 0;
    use.fires = burn.end > from && !burn.running ? 1 : 0;
    use.hours = hours(use.end - burn.start) * part;
    const CookFuel *known = fuelOf(fuel, burn.cook);
    use.heatKnown = known != nullptr && !known->netHeat.isZero();
    if (use.heatKnown) {
        use.heat = known->netHeat.toDouble() * part;
        use.ash = known->dryMass > Mass() ? kilograms(ashOf(books, *known)) * part
                                          : use.heat * ratesOf(books, fuel, burn.pit).ashPerHeat;
    }
    return use;
}

BurnUse wholeOf(const Books &books, const Burn &burn, const FuelAnswer &fuel, const UseRates &rates,
                Instant from, Instant now)
{
    BurnUse use;
    if (burn.cook != 0)
        use = usedOf(books, burn, fuel, from, now);
    if (burn.cook != 0 && !burn.running)
        return use;
    const double rest = std::max(0.0, hours(burn.end - std::max({burn.start, from, now})));
    use.start = burn.start;
    use.end = burn.end;
    use.cooks = burn.start >= from ? 1 : 0;
    use.fires = burn.end > from ? 1 : 0;
    use.hours += rest;
    const double heat = rest * rates.heatPerHour.value_or(0.0);
    use.heat += heat;
    use.ash += heat * rates.ashPerHeat;
    return use;
}

std::optional<Trigger> reachedBy(const UpkeepTask &task, const MeterSums &sums, double fraction)
{
    // A hair's tolerance: hours are sums of whole seconds, but added as doubles.
    const auto reached = [fraction](double used, double limit) {
        return used >= fraction * limit * (1 - 1e-12);
    };
    if (task.everyCooks && reached(sums.cooks, *task.everyCooks))
        return Trigger::Cooks;
    if (task.everyFireHours && reached(sums.hours, hours(*task.everyFireHours)))
        return Trigger::FireHours;
    if (task.everySeasoned && reached(sums.heat, task.everySeasoned->toDouble()))
        return Trigger::Seasoned;
    if (task.everyAsh && reached(sums.ash, kilograms(*task.everyAsh)))
        return Trigger::Ash;
    if (task.occasion == Occasion::AfterCook && reached(sums.fires, 1))
        return Trigger::AfterCook;
    return std::nullopt;
}

QString triggerWords(const UpkeepTask &task, Trigger trigger, bool metric)
{
    const QString after = QStringLiteral("after ");
    switch (trigger) {
    case Trigger::Cooks:
        return after % limitWords(*task.everyCooks, "cook", "cooks");
    case Trigger::FireHours:
        return after % limitWords(hours(*task.everyFireHours), "fire hour", "fire hours");
    case Trigger::Seasoned:
        return after % limitNumber(std::round(seasonedPounds(*task.everySeasoned))) %
               QStringLiteral(" seasoned lb");
    case Trigger::Ash:
        return metric ? QString(after % limitNumber(kilograms(*task.everyAsh)) %
                                QStringLiteral(" kg of ash"))
                      : QString(after % limitNumber(pounds(*task.everyAsh)) %
                                QStringLiteral(" lb of ash"));
    case Trigger::AfterCook:
        return QStringLiteral("after each cook");
    }
    return {};
}

bool runsWithFire(const UpkeepTask &task)
{
    return task.everyCooks || task.everyFireHours || task.everySeasoned || task.everyAsh ||
           task.occasion == Occasion::AfterCook;
}

QString limitWords(double limit, const char *one, const char *many)
{
    return limitNumber(limit) % QLatin1Char(' ') % QString::fromUtf8(limit == 1.0 ? one : many);
}

} // namespace rickyard::domain
