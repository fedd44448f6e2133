#include "models/domain/wood/value.h"

#include "models/domain/wood/density.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/ledger.h"

#include <algorithm>

namespace rickyard::domain {

WoodValue woodValue(const Books &books, const Lot &lot, const LotStock &stock)
{
    const Species species = books.species.value(lot.species);
    // Without any figure wood is taken at the limit of dry.
    const Moisture moisture = stock.moisture.value_or(kDryEnough);
    WoodValue value;
    value.moistureAssumed = !stock.moisture;
    value.perDryKilogram = netHeatPerDryKilogram(analysisOf(species), moisture);
    value.perSplit = value.perDryKilogram * kilograms(splitWeight(books, lot).dry);
    const Volume solid = solidFromStacked(volumeFromCubicFeet(kCubicFeetPerCord));
    value.perCord = value.perDryKilogram * kilograms(dryMassOfSolid(solid, species, moisture));
    value.ash = ashOf(std::max(stock.dryMass, Mass()), species);
    return value;
}

} // namespace rickyard::domain
