// From what was measured to oven-dry mass: deliveries, feeds and counts become ledger entries.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

namespace rickyard::domain {

struct DryMassResult {
    Mass dryMass;
    std::optional<Moisture> moisture; // used, when one was needed
    bool assumed = false;
    QString assumption; // in words; empty when nothing was assumed
};

// Latest known moisture of a lot at `time` (readings and oven tests; the mean of the pieces).
std::optional<Moisture> moistureOfLot(const Books &books, RecordId lot, Instant time);
// The same, else the promised, else the species' green moisture; says which in `assumption`.
DryMassResult moistureOrAssumed(const Books &books, RecordId lot, Instant time);

// Oven-dry mass of a delivery from its own measurements (Lot::measuredBy).
Outcome<DryMassResult> dryMassReceived(const Books &books, const Lot &lot);
// The wood in one split: of those weighed, dried by the moisture they had then; else by size.
struct SplitWeight {
    Mass dry;
    double error = 0; // standard error of the mean, a fraction
    bool assumed = false;
    QString words; // of what it rests on; empty when weighed at a known moisture
};
SplitWeight splitWeight(const Books &books, const Lot &lot);
// Oven-dry mass of `weight` (as is) or else of `pieces` mean splits of a lot.
Outcome<DryMassResult> dryMassOfFeed(const Books &books, const Feed &feed);

// The ledger entries that follow from a lot and a feed. The caller gives the id of the entry that
// is replaced, or 0. Problems name the field at fault.
Outcome<Movement> movementOf(const Books &books, const Lot &lot, RecordId existing);
Outcome<Movement> movementOf(const Books &books, const Feed &feed, RecordId existing);

} // namespace rickyard::domain
