#include "app/demo/purchases.h"

#include "app/demo/truth.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/heat_value.h"

#include <algorithm>

namespace rickyard::app::demo {

namespace {

// Moisture of the wood as it is burned, for reckoning ahead.
constexpr double kUsualPercent = 17.5;
// Wood in hand when the next delivery is asked for.
constexpr double kBufferKilograms = 230;

RecordId speciesNamed(const domain::Books &books, const char *name)
{
    for (const domain::Species &s : books.species)
        if (s.name == QLatin1String(name))
            return s.id;
    return books.species.firstKey();
}

Purchase drawPurchase(const domain::Books &books, Dice &dice)
{
    Purchase p;
    const double kind = dice.uniform();
    p.species = speciesNamed(books, kind < 0.68 ? "Post oak" : kind < 0.86 ? "Pecan" : "White oak");
    p.supplier = dice.chance(0.2) ? 1 : 3;
    p.paidCords = p.supplier == 1 ? 0.5 : 1.0 / 3.0;
    p.measuredCords = p.paidCords * dice.between(0.965, 1.02);
    p.promised = p.supplier == 1 ? 20 : 18;
    p.arrived = dice.between(16.4, 18.8);
    p.settles = p.arrived - dice.between(0.2, 1.2);
    return p;
}

double dryOf(const domain::Books &books, const Purchase &p)
{
    return p.measuredCords * dryKilogramsPerCord(books.species.value(p.species), p.arrived);
}

Instant deliveryBefore(const Draft &draft, Dice &dice, Instant needed, int days)
{
    QDate day = draft.local.dateOf(needed).addDays(-days);
    if (day.dayOfWeek() > 5)
        day = day.addDays(-2);
    const Instant afternoon = draft.at(day, dice.whole(13, 17));
    return std::max(afternoon, draft.begin + Duration::ofBase(86400));
}

// Walks through the cooks and dates each delivery by the day its predecessors run low.
void dateDeliveries(const Draft &draft, Dice &dice, QVector<Purchase> &burned)
{
    double brought = 0;
    double used = 0;
    qsizetype next = 0;
    for (Purchase &p : burned) {
        while (next < draft.needs.size() && used < brought - kBufferKilograms)
            used += dryKilogramsFor(draft.needs.at(next++).joules);
        const qsizetype at = std::clamp<qsizetype>(next - 1, 0, draft.needs.size() - 1);
        const Instant needed = draft.books.cooks.value(draft.needs.at(at).cook).lit;
        // Bought half dry and early, now and then, to season in the yard.
        const bool early = p.supplier == 1 && dice.chance(0.4) &&
                           needed - draft.begin > Duration::ofBase(200 * 86400LL);
        if (early) {
            p.promised = 25;
            p.arrived = dice.between(24, 27);
            p.settles = 16;
        }
        p.received = p.supplier == 0
                         ? draft.begin + Duration::ofBase(7200)
                         : deliveryBefore(draft, dice, needed, early ? 170 : dice.whole(8, 26));
        brought += dryOf(draft.books, p);
    }
}

Purchase shortDelivery(const domain::Books &books, Dice &dice)
{
    Purchase p;
    p.supplier = 2;
    p.species = speciesNamed(books, "Post oak");
    p.paidCords = 1;
    p.measuredCords = dice.between(0.735, 0.765);
    p.arrived = 18.4;
    p.settles = 17.4;
    return p;
}

Purchase wetDelivery(const Draft &draft, Dice &dice)
{
    Purchase p;
    p.supplier = 1;
    p.species = speciesNamed(draft.books, "Post oak");
    p.paidCords = 0.5;
    p.measuredCords = 0.5 * dice.between(0.98, 1.01);
    p.promised = 20;
    p.arrived = 31;
    p.settles = 24;
    p.received = deliveryBefore(draft, dice, draft.now, 37);
    return p;
}

} // namespace

double dryKilogramsPerCord(const domain::Species &species, double percent)
{
    const domain::Volume cord = domain::volumeFromCubicFeet(domain::kCubicFeetPerCord);
    return domain::kilograms(domain::dryMassOfSolid(domain::solidFromStacked(cord), species,
                                                    Moisture::rounded(percent * 1000)));
}

double dryKilogramsFor(double joules)
{
    return joules / domain::netHeatPerDryKilogram({}, Moisture::rounded(kUsualPercent * 1000));
}

double kilogramsToKeep(const Draft &draft)
{
    QMap<Instant, double> byEvent;
    for (const domain::PlannedCook &plan : draft.books.plannedCooks)
        if (plan.event && plan.light > draft.now)
            byEvent[draft.books.events.value(*plan.event).start] +=
                heatForeseen(draft.books.pits.value(plan.pit), plan);
    const QList<double> needs = byEvent.values();
    double keep = 0;
    for (qsizetype i = 0; i < std::min<qsizetype>(3, needs.size()); ++i)
        keep += 1.12 * needs.at(i);
    if (needs.size() > 3)
        keep += 0.25 * needs.at(3);
    return dryKilogramsFor(keep);
}

QVector<Purchase> planPurchases(Draft &draft, Dice &dice, double keepKilograms)
{
    double wanted = keepKilograms;
    for (const Need &need : draft.needs)
        wanted += dryKilogramsFor(need.joules);
    const Purchase last = shortDelivery(draft.books, dice);
    Purchase first;
    first.species = last.species;
    first.arrived = 17.6;
    first.settles = 17;
    const double perCord = dryKilogramsPerCord(draft.books.species.value(first.species), 17.6);
    wanted -= dryOf(draft.books, last);
    QVector<Purchase> burned{first};
    while (wanted > 0.6 * perCord) {
        burned << drawPurchase(draft.books, dice);
        wanted -= dryOf(draft.books, burned.last());
    }
    burned.first().measuredCords = std::max(0.1, wanted / perCord);
    burned << last;
    dateDeliveries(draft, dice, burned);
    burned << wetDelivery(draft, dice);
    return burned;
}

} // namespace rickyard::app::demo
