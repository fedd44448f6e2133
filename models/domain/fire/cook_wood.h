// The wood of one cook, lot by lot, from the ledger: splits, weight, moisture, heat and money; and
// the rhythm in which it was fed.
#pragma once

#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

struct CookWoodLine {
    RecordId lot = 0;
    std::optional<int> pieces;        // missing where some of it was not counted in splits
    std::optional<Mass> asIs;         // as handled, water included
    std::optional<Moisture> moisture; // by dry mass; missing where that of some is not known
    Mass dryMass;
    Heat netHeat; // at 20 % dry basis where the moisture is not known
    // The lot's price, by the share of its received dry mass; missing without a price.
    std::optional<double> cents;
    bool assumed = false; // some of it rests on an assumed weight or moisture
};

struct CookWood {
    QVector<CookWoodLine> lots; // most heat first
    CookWoodLine whole;         // `cents` only when every lot has a price
    double cents = 0;           // of those lots that have one
    int unpriced = 0;           // lots
};

// Entries of kind burned that name the cook, up to `now`.
CookWood cookWood(const Books &books, RecordId cook, Instant now);

struct FeedRhythm {
    int feedings = 0; // feeds within two minutes of each other are one
    int pieces = 0;
    std::optional<Duration> meanInterval; // needs two feedings
    std::optional<Duration> longestGap;
    std::optional<Instant> gapFrom; // where the longest gap began
};
FeedRhythm feedRhythm(const Books &books, RecordId cook, Instant now);

} // namespace rickyard::domain
