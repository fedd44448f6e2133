// Upkeep: tasks with their triggers, visits (placed or done), findings, known-good periods.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

enum class IntervalSource { CommonPractice, LocalCode, MakersManual, OwnRule };

// Due at whichever trigger comes first, counted from the last visit that did it (or `since`).
struct UpkeepTask {
    RecordId id = 0;
    QString name;
    std::optional<RecordId> pit; // missing: trailer or kit
    QString target;              // "door gasket", "extinguisher 1"
    QDate since;                 // start of the count before the first visit
    std::optional<int> everyDays;
    std::optional<int> everyCooks;
    std::optional<Duration> everyFireHours;
    std::optional<Heat> everySeasoned; // heat burned, shown as seasoned pounds
    Duration work;                     // one person
    Duration coldBefore;               // pit cold before the work
    Duration cureAfter;                // before the next fire
    bool blocksLighting = false;
    bool blocksTowing = false;
    int priority = 1; // weight of lateness, 1 to 9
    QString tools;
    QString steps;
    QString cautions;
    IntervalSource intervalFrom = IntervalSource::CommonPractice;
    bool once = false; // done once, it is due no more
    bool retired = false;
    QString typed;
};

enum class VisitState { Placed, Started, Done, Skipped };

struct Visit {
    RecordId id = 0;
    RecordId task = 0;
    VisitState state = VisitState::Placed;
    Instant start;
    std::optional<Instant> end;
    bool pinned = false; // moved by hand: re-planning leaves it
    QString who;
    std::optional<Money> cost;
    QString found;
    QString note;
    QString typed;
};

// Nothing: the pit was looked at and nothing was found, so its last cooks count as ordinary ones.
enum class FindingState { Open, Watched, Mended, Nothing };

struct Finding {
    RecordId id = 0;
    std::optional<RecordId> pit;
    std::optional<RecordId> cook;
    std::optional<RecordId> visit;    // where it was found
    std::optional<RecordId> mendedBy; // visit
    Instant opened;
    FindingState state = FindingState::Open;
    QString text;
    QString typed;
};

// A stretch in which a pit is declared in order: the norm may learn from it.
struct KnownGood {
    RecordId id = 0;
    RecordId pit = 0;
    QDate from;
    QDate to; // missing: open
    QString reason;
    QString typed;
};

} // namespace rickyard::domain
