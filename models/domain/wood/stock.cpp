#include "models/domain/wood/stock.h"

#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/moisture.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

Readiness readinessOf(const LotStock &stock, const Lot &lot, const Species &species)
{
    if (stock.dryMass < kLeastWood)
        return Readiness::Empty;
    if (species.neverBurn)
        return Readiness::NeverBurn;
    if (lot.hold)
        return Readiness::OnHold;
    if (!stock.moisture)
        return Readiness::NoReading;
    return *stock.moisture <= kDryEnough ? Readiness::Dry : Readiness::Wet;
}

// Views of the dry mass; an overdrawn lot has none.
void fillViews(LotStock &stock, const Books &books, const Lot &lot, Instant now)
{
    const Mass wood = std::max(stock.dryMass, Mass());
    const Species species = books.species.value(lot.species);
    const DryMassResult moisture = moistureOrAssumed(books, lot.id, now);
    stock.moistureAssumed = !stock.moisture;
    // Without any figure: green oak, 70 % (post oak 70.9 % in the US forest inventory's table).
    // Each point of moisture takes only 0.024 MJ from a dry kilogram's 18.4, so little hangs on it.
    const Moisture used = moisture.moisture.value_or(Moisture::ofBase(70000));
    stock.solid = solidVolume(wood, species, used);
    stock.stacked = stackedFromSolid(stock.solid);
    stock.netHeat = netHeatOf(wood, used, analysisOf(species));
    if (!stock.moisture)
        return;
    stock.asIs = asIsFromDry(wood, *stock.moisture);
    if (const Mass split = splitWeight(books, lot).dry; split.base() > 0)
        stock.splits = wood / split;
}

LotStock stockOf(const Books &books, const Lot &lot, Mass dryMass, Instant now)
{
    LotStock stock;
    stock.lot = lot.id;
    stock.dryMass = dryMass;
    if (const auto sample = latestMoisture(books, lot.id, now)) {
        stock.moisture = sample->mean();
        stock.moistureHalfWidth = sample->halfWidth();
        stock.readAt = sample->time;
        stock.moistureNote = sample->note;
        stock.correction = sample->correction;
    }
    stock.readiness = readinessOf(stock, lot, books.species.value(lot.species));
    fillViews(stock, books, lot, now);
    return stock;
}

void addUp(Stock &total, const LotStock &lot)
{
    if (lot.readiness == Readiness::Empty)
        return;
    total.dryMass += lot.dryMass;
    if (lot.readiness == Readiness::Dry) {
        total.readyDryMass += lot.dryMass;
        total.readyHeat += lot.netHeat;
        total.readyStacked += lot.stacked;
    } else if (lot.readiness != Readiness::NeverBurn) {
        total.waitingHeat += lot.netHeat;
    }
}

} // namespace

Stock stockAt(const Books &books, Instant now)
{
    QMap<RecordId, Mass> dryMass;
    for (const Movement &movement : books.movements)
        if (movement.time <= now)
            dryMass[movement.lot] += movement.dryMass;
    QVector<Lot> lots(books.lots.cbegin(), books.lots.cend());
    std::stable_sort(lots.begin(), lots.end(),
                     [](const Lot &a, const Lot &b) { return a.received < b.received; });
    Stock stock;
    for (const Lot &lot : lots) {
        stock.lots << stockOf(books, lot, dryMass.value(lot.id), now);
        addUp(stock, stock.lots.last());
    }
    return stock;
}

LotStock lotStockAt(const Books &books, RecordId lot, Instant now)
{
    Mass dryMass;
    for (const Movement &movement : books.movements)
        if (movement.lot == lot && movement.time <= now)
            dryMass += movement.dryMass;
    Lot record = books.lots.value(lot);
    record.id = lot;
    return stockOf(books, record, dryMass, now);
}

} // namespace rickyard::domain
