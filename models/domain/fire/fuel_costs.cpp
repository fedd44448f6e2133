#include "models/domain/fire/fuel_costs.h"

#include "models/domain/answers/wording.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

void addCook(FireWork &work, const Books &books, const CookFuel &cook)
{
    ++work.cooks;
    work.hours += hours(cook.length);
    work.heat += cook.netHeat;
    work.dry += cook.dryMass;
    const auto food = books.cooks.value(cook.cook).foodMass;
    const bool fed = food && *food > Mass();
    if (fed) {
        work.food += *food;
        work.heatOfFood += cook.netHeat;
    }
    if (cook.degreeHours && *cook.degreeHours > 0) {
        work.degreeHours += *cook.degreeHours;
        work.heatOfDegreeHours += cook.netHeat;
        work.balance += totalHeat(cook.columns);
    }
    // A cook of which a part has no price would look cheap.
    constexpr double kNearlyAll = 0.95;
    if (cook.priced < kNearlyAll)
        return;
    ++work.pricedCooks;
    work.cents += cook.cost;
    if (fed) {
        work.pricedFood += *food;
        work.centsOfFood += cook.cost;
    }
}

template <class Key, class KeyOf>
QMap<Key, FireWork> gathered(const Books &books, const FuelAnswer &fuel, KeyOf keyOf)
{
    QMap<Key, FireWork> sums;
    for (const CookFuel &cook : fuel.cooks)
        if (cook.finished && cook.netHeat > Heat())
            addCook(sums[keyOf(cook)], books, cook);
    return sums;
}

std::optional<double> over(double sum, double by)
{
    return by > 0 && sum > 0 ? std::optional(sum / by) : std::nullopt;
}

} // namespace

std::optional<double> FireWork::efficiency() const
{
    return over(balance, heatOfDegreeHours.toDouble());
}

std::optional<double> FireWork::joulesPerDegreeHour() const
{
    return over(heatOfDegreeHours.toDouble(), degreeHours);
}

std::optional<double> FireWork::joulesPerHour() const
{
    return over(heat.toDouble(), hours);
}

std::optional<double> FireWork::joulesPerFood() const
{
    return over(heatOfFood.toDouble(), food.toDouble());
}

std::optional<double> FireWork::centsPerCook() const
{
    return over(cents, pricedCooks);
}

std::optional<double> FireWork::centsPerFood() const
{
    return over(centsOfFood, pricedFood.toDouble());
}

QVector<FireWork> workByPit(const Books &books, const FuelAnswer &fuel)
{
    auto sums = gathered<RecordId>(books, fuel, [](const CookFuel &cook) { return cook.pit; });
    for (auto it = sums.begin(); it != sums.end(); ++it)
        it->pit = it.key();
    return sums.values();
}

QVector<FireWork> workByEvent(const Books &books, const FuelAnswer &fuel)
{
    const auto eventOf = [&](const CookFuel &cook) {
        const auto planned =
            books.plannedCooks.constFind(books.cooks.value(cook.cook).planned.value_or(0));
        return planned == books.plannedCooks.cend() ? RecordId{0} : planned->event.value_or(0);
    };
    auto sums = gathered<RecordId>(books, fuel, eventOf);
    QVector<FireWork> works;
    for (auto it = sums.begin(); it != sums.end(); ++it) {
        it->event = it.key();
        works << *it;
    }
    std::stable_sort(works.begin(), works.end(), [&](const FireWork &a, const FireWork &b) {
        if ((a.event == 0) != (b.event == 0))
            return b.event == 0;
        return books.events.value(a.event).start > books.events.value(b.event).start;
    });
    return works;
}

QVector<FireWork> workByMonth(const Books &books, const FuelAnswer &fuel)
{
    const QTimeZone zone = zoneOf(Wording{.timeZone = books.yard().timeZone});
    auto sums = gathered<QDate>(books, fuel, [&](const CookFuel &cook) {
        const QDate day = dayOf(cook.lit, zone);
        return QDate(day.year(), day.month(), 1);
    });
    QVector<FireWork> works;
    for (auto it = sums.begin(); it != sums.end(); ++it) {
        it->month = it.key();
        works.prepend(*it);
    }
    return works;
}

} // namespace rickyard::domain
