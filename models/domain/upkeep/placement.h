// Upkeep work placed into crew time. The rules (fire, cold, cure, crew, trips, daylight, order) are
// written here as start points; placement_solver.h finds the best plan.
#pragma once

#include "models/domain/upkeep/meters.h"
#include "models/domain/upkeep/placement_solver.h"
#include "models/domain/upkeep/windows.h"

namespace rickyard::domain {

// How far ahead work is placed.
constexpr int kPlacementDays = 56;
// Work starts on the quarter hour, or when it first can: what people say to each other ("half past
// six"), and fine enough that a short job costs little more than its length.
constexpr Duration kPlacementGrid = Duration::ofBase(900);
// Being left out counts as this many days late, times the weight: more than any place within
// kPlacementDays, so that work is left out only where it cannot be had, or where its place would
// delay others by as much.
constexpr int kLeftOutDays = 1000;

// Share of the interval run at and after a moment, in thousandths.
struct IntervalRun {
    Instant from;
    int permille = 0;
};

// One piece of work to place.
struct Work {
    RecordId task = 0;
    RecordId pit = 0; // 0: trailer or kit, no fire to wait for
    Duration length;
    int people = 1;
    Duration coldBefore;
    Duration cureAfter;
    Instant release;               // not before
    std::optional<Instant> before; // to be over by: the end of the due day or the next lighting
    bool required = false;         // it blocks that lighting or towing: never placed after it
    bool overdue = false;          // every day from today is late
    QDate due;
    int priority = 1;         // weight of a day late
    QVector<IntervalRun> run; // by time; done earlier, the rest of the interval is thrown away
    RecordId after = 0;       // task to be done before it
    bool daylight = false;
    bool dryWeather = false;
    QDate snoozedUntil;
    RecordId blockedCook = 0;  // planned cook at `before`
    RecordId blockedEvent = 0; // event whose departure is at `before`
};

// Work that is already agreed: it takes its people and its pit.
struct Agreed {
    RecordId task = 0;
    RecordId pit = 0;
    Instant start;
    Instant end;
    int people = 1;
};

// What the crew has to offer.
struct Yardtime {
    QVector<WorkWindow> windows;
    QMap<RecordId, QVector<Burn>> fires;        // by pit
    QVector<WorkWindow> daylight;               // for work that needs it
    std::optional<QVector<WorkWindow>> dryDays; // for work that needs dry weather; missing: not
                                                // known, and no bar
};

// The tasks to be done within kPlacementDays that have no visit agreed, in the order that decides
// between equals: due date, then higher priority, then id.
QVector<Work> workToPlace(const Books &books, const FuelAnswer &fuel, const QVector<TaskDue> &dues,
                          Instant now, const LocalTime &local);
// Visits placed or started whose end is still to come. They stay where they are.
QVector<Agreed> agreedVisits(const Books &books, Instant now);
Yardtime yardtimeOf(const Books &books, Instant now, const LocalTime &local);

// The stretches of time in which the work may start and end, whoever else is at work: crew hours
// without fire, cold and cure hours, other agreed work on its pit, and what it wants of the day.
QVector<WorkWindow> openFor(const Work &work, const Yardtime &time, const QVector<Agreed> &taken);
// People there less those of the work agreed, from step to step.
QVector<CrewStep> crewSteps(const Yardtime &time, const QVector<Agreed> &taken);
// The first start between `from` and `until` (its end) with the other work where it is.
std::optional<Instant> earliestStart(const Work &work, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant from, Instant until);

struct PlacementResult {
    QVector<Placement> placements; // agreed and proposed, by start
    QVector<Unplaced> unplaced;
    qint64 weightedDays = 0; // days late times weight, from today on, what is left out included
    double wasted = 0;       // intervals thrown away by doing early, summed
    double provenGap = 0; // the plan may be this share above the best possible; 0: it is the best
    int nodes = 0;
};

// "within 3 % of the best possible"; empty when the plan is the best.
QString gapWords(double provenGap);

PlacementResult placeWork(const Books &books, const QVector<Work> &work,
                          const QVector<Agreed> &agreed, const Yardtime &time, Instant now,
                          const LocalTime &local, const SolverLimits &limits = {});

// --- parts of placeWork that the explanations share

// The work as pieces for the solver, one each in the same order. `barred`: given no start at all.
PlacementProblem placementProblem(const QVector<Work> &work, const QVector<RecordId> &barred,
                                  const QVector<Agreed> &agreed, const Yardtime &time, Instant now,
                                  const LocalTime &local);
Instant placementHorizon(Instant now, const LocalTime &local);

// Work that contradicts itself or its records, by task: these get no place.
QMap<RecordId, Unplaced> placementFaults(const Books &books, const QVector<Work> &work, Instant now,
                                         const LocalTime &local);
// Why the left-out work has no place, and the smallest change found that gives it one. Each change
// offered was solved again and the work then has its place.
QVector<Unplaced> explainLeftOut(const Books &books, const QVector<Work> &work,
                                 const QVector<RecordId> &leftOut, const QVector<RecordId> &barred,
                                 const QVector<Agreed> &agreed, const QVector<Agreed> &taken,
                                 const Yardtime &time, Instant now, const LocalTime &local,
                                 const SolverLimits &limits);
// A visit already agreed for a time when its pit burns, is not cold enough or could not cure.
std::optional<Unplaced> explainClash(const Books &books, const Agreed &agreed, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant now,
                                     const LocalTime &local);

} // namespace rickyard::domain
