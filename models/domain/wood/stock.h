// Wood on hand: every lot's dry mass from the ledger, and the views derived from it.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// Why a lot may not be burned for food now.
enum class Readiness { Dry, Wet, NoReading, OnHold, NeverBurn, Empty };

struct LotStock {
    RecordId lot = 0;
    Mass dryMass;                     // sum of movements up to `now`; may be negative (see drift)
    std::optional<Moisture> moisture; // latest reading's mean or oven test
    std::optional<Moisture> moistureHalfWidth; // 95 % of the mean; missing with one piece
    std::optional<Instant> readAt;
    Readiness readiness = Readiness::NoReading;
    std::optional<Mass> asIs;     // dry mass with its water; missing without moisture
    std::optional<double> splits; // over the dry wood of a split; missing without a moisture
    Volume solid;                 // wood volume at that moisture
    Volume stacked;               // solid over the stacking fraction
    Heat netHeat;                 // at its moisture, or the assumed one
    bool moistureAssumed = false; // heat rests on an assumed moisture
    QString correction;           // of the meter's reading, in words; empty otherwise
    QString moistureNote;         // why the reading is unreliable, in words; empty otherwise
};

struct Stock {
    QVector<LotStock> lots; // every lot, oldest first
    Mass dryMass;           // of all lots with wood left
    Mass readyDryMass;      // of those Dry
    Heat readyHeat;
    Volume readyStacked;
    Heat waitingHeat; // wet, unread or on hold
};

// The moisture at and under which wood counts as dry: 20 % dry basis (common practice, no source).
constexpr Moisture kDryEnough = Moisture::ofBase(20000);
// Under half a pound a lot counts as empty: less than any split weighs.
constexpr Mass kLeastWood = Mass::ofBase(226796);
// Solid wood in a stacked volume: 85 of 128 cubic feet, the usual figure of published cord tables.
constexpr double kStackedSolidFraction = 85.0 / 128.0;
// Solid wood in a loose thrown volume: 85 cubic feet in 180.
constexpr double kLooseSolidFraction = 85.0 / 180.0;

Stock stockAt(const Books &books, Instant now);
LotStock lotStockAt(const Books &books, RecordId lot, Instant now);

} // namespace rickyard::domain
