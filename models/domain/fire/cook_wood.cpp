#include "models/domain/fire/cook_wood.h"

#include "models/domain/fire/feedings.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/lot_price.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr Moisture kStandInMoisture = Moisture::ofBase(20000);

// Sums entries; what is missing of one is missing of the sum.
struct WoodSum {
    CookWoodLine line;
    double water = 0; // moisture times dry mass
    int unweighed = 0;
    int uncounted = 0;
    int unread = 0;

    void add(const Movement &m, const Species &species)
    {
        const Mass dry = -m.dryMass; // burned wood leaves the ledger
        const Moisture moisture = m.moisture.value_or(kStandInMoisture);
        line.dryMass += dry;
        line.netHeat += netHeatOf(dry, moisture, analysisOf(species));
        line.asIs = line.asIs.value_or(Mass()) + m.asIs.value_or(Mass());
        line.pieces = line.pieces.value_or(0) + m.pieces.value_or(0);
        line.assumed = line.assumed || m.assumed;
        water += moisture.toDouble() * dry.toDouble();
        unweighed += m.asIs ? 0 : 1;
        uncounted += m.pieces ? 0 : 1;
        unread += m.moisture ? 0 : 1;
    }
    [[nodiscard]] CookWoodLine result() const
    {
        CookWoodLine done = line;
        if (unweighed > 0)
            done.asIs.reset();
        if (uncounted > 0)
            done.pieces.reset();
        if (unread == 0 && done.dryMass > Mass())
            done.moisture = Moisture::rounded(water / done.dryMass.toDouble());
        return done;
    }
};

} // namespace

CookWood cookWood(const Books &books, RecordId cook, Instant now)
{
    QMap<RecordId, WoodSum> byLot;
    WoodSum all;
    for (const Movement &m : books.movements) {
        if (m.kind != MovementKind::Burned || m.cook != cook || m.time > now)
            continue;
        const Species species = books.species.value(books.lots.value(m.lot).species);
        byLot[m.lot].add(m, species);
        all.add(m, species);
    }
    CookWood wood;
    const QHash<RecordId, double> prices = centsPerDryMass(books);
    for (auto it = byLot.cbegin(); it != byLot.cend(); ++it) {
        CookWoodLine line = it->result();
        line.lot = it.key();
        if (const auto price = prices.constFind(line.lot); price != prices.cend()) {
            line.cents = *price * line.dryMass.toDouble();
            wood.cents += *line.cents;
        } else {
            ++wood.unpriced;
        }
        wood.lots << line;
    }
    std::stable_sort(
        wood.lots.begin(), wood.lots.end(),
        [](const CookWoodLine &a, const CookWoodLine &b) { return a.netHeat > b.netHeat; });
    wood.whole = all.result();
    if (!wood.lots.isEmpty() && wood.unpriced == 0)
        wood.whole.cents = wood.cents;
    return wood;
}

FeedRhythm feedRhythm(const Books &books, RecordId cook, Instant now)
{
    FeedRhythm rhythm;
    QVector<Instant> times;
    for (const Feed &feed : books.feeds) {
        if (feed.cook != cook || feed.time > now)
            continue;
        times << feed.time;
        rhythm.pieces += feed.pieces;
    }
    const QVector<Instant> feedings = feedingStarts(times);
    rhythm.feedings = static_cast<int>(feedings.size());
    for (qsizetype i = 1; i < feedings.size(); ++i) {
        const Duration gap = feedings.at(i) - feedings.at(i - 1);
        if (!rhythm.longestGap || gap > *rhythm.longestGap) {
            rhythm.longestGap = gap;
            rhythm.gapFrom = feedings.at(i - 1);
        }
    }
    if (rhythm.feedings >= 2)
        rhythm.meanInterval =
            (feedings.last() - feedings.first()) * (1.0 / static_cast<double>(rhythm.feedings - 1));
    return rhythm;
}

} // namespace rickyard::domain
