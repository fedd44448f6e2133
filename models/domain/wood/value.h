// What wood is worth in heat: per dry pound, per split, per cord at its stated solid fraction, and
// the ash it leaves.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/stock.h"

namespace rickyard::domain {

struct WoodValue {
    double perDryKilogram = 0; // J, net, at the lot's moisture or the assumed one
    double perSplit = 0;       // J
    double perCord = 0;        // J, of a cord with 85 ft³ of solid wood
    Mass ash;                  // of all that is left
    bool moistureAssumed = false;
};
WoodValue woodValue(const Books &books, const Lot &lot, const LotStock &stock);

} // namespace rickyard::domain
