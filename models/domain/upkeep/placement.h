// First-fit placement of upkeep work into free windows. A first honest method: it does not undo a
// choice to make room for a later task, so a task it leaves over may still have a place.
#pragma once

#include "models/domain/upkeep/meters.h"
#include "models/domain/upkeep/windows.h"

namespace rickyard::domain
{

// How far ahead work is placed.
constexpr int kPlacementDays = 42;
// Work is not proposed before this share of an interval has run: earlier, it would be wasted.
// Our own rule, no source.
constexpr double kReleaseShare = 0.75;

// One piece of work to place.
struct Work {
    RecordId task = 0;
    RecordId pit = 0; // 0: trailer or kit, no fire to wait for
    Duration length;  // one person
    Duration coldBefore;
    Duration cureAfter;
    Instant release;               // not before, unless it cannot be had later
    bool earlierHelps = true;      // false: nothing has run up yet that doing it would reset
    std::optional<Instant> before; // to be over by: the end of the due day or the next lighting
    bool required = false;         // it blocks that lighting: never placed after it
    bool overdue = false;
    QDate due;
    int priority = 1;
    RecordId blockedCook = 0; // planned cook at `before`
};

// Work that is already agreed: it takes one person and its pit.
struct Agreed {
    RecordId task = 0;
    RecordId pit = 0;
    Instant start;
    Instant end;
};

// What the crew has to offer.
struct Yardtime {
    QVector<WorkWindow> windows;
    QMap<RecordId, QVector<Burn>> fires; // by pit
};

// The tasks to be done within kPlacementDays that have no visit agreed, in the order of placing:
// due date, then higher priority, then id.
QVector<Work> workToPlace(const Books &books, const FuelAnswer &fuel, const QVector<TaskDue> &dues,
                          Instant now, const LocalTime &local);
// Visits placed or started whose end is still to come.
QVector<Agreed> agreedVisits(const Books &books, Instant now);
Yardtime yardtimeOf(const Books &books, Instant now, const LocalTime &local);

// Earliest start at which the work fits between `from` and `until`: inside one free window, a
// person to spare at every moment, no other work on its pit. Nothing when there is none.
std::optional<Instant> earliestStart(const Work &work, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant from, Instant until);

struct PlacementResult {
    QVector<Placement> placements; // agreed and proposed, by start
    QVector<Unplaced> unplaced;
};
PlacementResult placeWork(const Books &books, const QVector<Work> &work,
                          const QVector<Agreed> &agreed, const Yardtime &time, Instant now,
                          const LocalTime &local);

// Why a piece of work has no place before its limit, and the smallest change that would help.
Unplaced explainUnplaced(const Books &books, const Work &work, const Yardtime &time,
                         const QVector<Agreed> &taken, Instant now, const LocalTime &local);
// A visit already agreed for a time when its pit burns, is not cold enough or could not cure.
std::optional<Unplaced> explainClash(const Books &books, const Agreed &agreed, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant now,
                                     const LocalTime &local);

} // namespace rickyard::domain
