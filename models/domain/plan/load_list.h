// What wood to pull for one fire or several: which lot, how many splits and pounds, by phase. Lots
// are taken in the order in which they should burn (wood/burn_first.h), dry ones only, and what one
// fire takes is gone for the next.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/wood/burn_first.h"

namespace rickyard::domain {

// Lighting: warming the steel and the coal bed. Hold: the rest of what is expected. Reserve: from
// there up to what such a fire stays under with the chosen chance.
enum class LoadPhase { Lighting, Hold, Reserve };

// The chance that the wood pulled is enough, unless another is chosen: 19 such fires of 20, which
// is the upper bound of the 90 % interval.
constexpr double kUsualLoadChance = 0.95;

// What such a fire needs no more than, with that chance (0 to 1): the quantile of the predictive
// distribution, a Student t on the logarithm (fire/watch.h). Never below the expectation. Missing
// when nothing is expected of the pit.
std::optional<Heat> enoughFor(const ExpectedUse &use, double chance);

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
    Heat missingExpected;    // the part of it that is not reserve
    Heat wanted;             // of all phases
    Mass asIs;               // of all lines
    int splits = 0;
    QString basis; // where the expectation comes from

    [[nodiscard]] Mass asIsOf(LoadPhase phase) const;
    [[nodiscard]] int splitsOf(LoadPhase phase) const;
};

// The dry wood on hand, from which fires take in turn.
class DryWood
{
public:
    DryWood(const Books &books, const Stock &stock);

    // What a fire of an event (0: of none) pulls, lots in this order. Wood kept for another event
    // stays where it is; wood kept for this one is taken first.
    LoadList pull(const ExpectedUse &use, RecordId pit, const QVector<BurnChoice> &order,
                  RecordId event, double chance);
    // An earlier fire burns what is expected of it.
    void burn(Heat heat, const QVector<BurnChoice> &order, RecordId event);

private:
    // A lot on the way out: what is left of its heat, and what a joule of it weighs.
    struct Pile {
        RecordId lot = 0;
        RecordId keptFor = 0; // event
        double joules = 0;
        double asIsPerJoule = 0;
        double joulesPerSplit = 0;
        bool weighed = false;
    };
    [[nodiscard]] QVector<int> inOrder(const QVector<BurnChoice> &order, RecordId event) const;
    // Takes heat from piles in turn; what they lack is returned.
    double take(const QVector<int> &piles, LoadPhase phase, double joules, LoadList *list);

    QVector<Pile> m_piles;
};

// One list a fire, in the order given.
QVector<LoadList> loadLists(const Books &books, const FuelAnswer &fuel, const Stock &stock,
                            const QVector<BurnChoice> &order, const QVector<PlannedFire> &fires,
                            double chance = kUsualLoadChance);

// "Pull 41 splits (214 lb) of Oak, spring: 6 to light, 27 to hold, 8 in reserve."
QString pullWords(const Books &books, const LoadList &list, const Wording &wording);

} // namespace rickyard::domain
