// What wood to pull for one fire or several: which lot, how many splits and pounds, by phase. Lots
// are taken in the order in which they should burn (wood/burn_first.h), dry ones only, and what one
// fire takes is gone for the next.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/wood/burn_first.h"

namespace rickyard::domain {

// Lighting: warming the steel and the coal bed. Hold: the rest of what is expected. Reserve: up to
// the upper bound of the 90 % interval, which 19 such cooks of 20 stay under.
enum class LoadPhase { Lighting, Hold, Reserve };

struct LoadLine {
    RecordId lot = 0;
    LoadPhase phase = LoadPhase::Hold;
    Heat heat;
    Mass asIs;      // with its water
    int splits = 0; // whole ones, rounded up where a phase ends
    bool splitsWeighed = false;
};

struct LoadList {
    RecordId pit = 0;
    QVector<LoadLine> lines; // lighting, hold, reserve; lots in burning order within a phase
    Heat missing;            // that no dry lot can give
    Mass asIs;               // of all lines
    int splits = 0;
    QString basis; // where the expectation comes from

    [[nodiscard]] Mass asIsOf(LoadPhase phase) const;
    [[nodiscard]] int splitsOf(LoadPhase phase) const;
};

// One list a fire, in the order given.
QVector<LoadList> loadLists(const Books &books, const FuelAnswer &fuel, const Stock &stock,
                            const QVector<BurnChoice> &order, const QVector<PlannedFire> &fires);

// "Pull 41 splits (214 lb) of Oak, spring: 6 to light, 27 to hold, 8 in reserve."
QString pullWords(const Books &books, const LoadList &list, const Wording &wording);

} // namespace rickyard::domain
