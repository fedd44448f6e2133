// The sheet to load by, for an event or one planned cook: the wood of every fire by phase and rick,
// kindling, boxes, what the trailer then weighs, what bars lighting or towing, and what is short.
// It says what the records say; it never calls a load or a tow safe.
#pragma once

#include "models/domain/answers/answers.h"
#include "models/domain/outcome.h"
#include "models/domain/plan/load_list.h"
#include "models/domain/weather/series.h"

namespace rickyard::domain {

struct LoadFire {
    RecordId cook = 0; // planned
    Instant light;
    Duration length;
    LoadList list;
    std::optional<Mass> missing; // of dry wood, as it would be loaded; 0: none
    // Whole boxes, a phase its own; nothing without the mass that a box holds.
    std::optional<int> boxesOf(LoadPhase phase, std::optional<Mass> box) const;
};

// Upkeep that bars lighting a pit of the list, or towing.
struct LoadBar {
    RecordId task = 0;
    RecordId pit = 0;     // 0: trailer or kit
    bool towing = false;  // else lighting
    bool overdue = false; // now; else it will be by then
    QDate due;
    std::optional<Instant> placed; // agreed or proposed before, and over by then
    bool agreed = false;
};

// What is on the trailer; a part that is not known is missing and not counted.
struct LoadTrailer {
    std::optional<Mass> empty;
    Mass wood;
    std::optional<Mass> kindling;
    Mass food;                 // of the cooks whose food is known
    int foodUnknown = 0;       // cooks without a food weight
    std::optional<Mass> total; // missing without `empty`
    std::optional<Mass> limit;
    // Above zero: over the limit. Missing when either is not known.
    [[nodiscard]] std::optional<Mass> over() const
    {
        if (!total || !limit)
            return {};
        return *total - *limit;
    }
    [[nodiscard]] std::optional<double> woodShare() const
    {
        if (!total || total->base() <= 0)
            return {};
        return wood / *total;
    }
};

struct LoadSheet {
    Link about; // event or planned cook
    RecordId event = 0;
    double chance = kUsualLoadChance;
    QVector<LoadFire> fires; // by lighting time
    Mass wood;               // all that is pulled, with its water
    int splits = 0;
    Heat missing;                    // that no dry lot can give
    std::optional<Mass> missingWood; // as it would be loaded; missing without any dry lot to go by
    std::optional<Mass> box;         // what one holds
    std::optional<int> boxes;        // in all
    std::optional<Mass> kindling;    // for all fires
    QVector<LoadBar> bars;
    bool towed = false;
    LoadTrailer trailer;          // only looked at when towed
    QVector<RecordId> dryingLots; // not dry today, likely dry before the first lighting
    int earlierFires = 0;         // planned before, whose expected wood is left on the ricks
};

// Refused in words: no such record, no cook planned, all lit or over already. `weather` is of these
// books.
Outcome<LoadSheet> loadSheet(const Books &books, const Answers &answers,
                             const WeatherSeries &weather, Instant now, Link about,
                             double chance = kUsualLoadChance);

QString loadPhaseWord(LoadPhase phase);

} // namespace rickyard::domain
