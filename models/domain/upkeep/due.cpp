#include "models/domain/upkeep/due.h"

#include "models/domain/upkeep/due_paths.h"
#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/placement.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

bool doneOnce(const Books &books, const UpkeepTask &task)
{
    return task.once &&
           std::any_of(books.visits.cbegin(), books.visits.cend(), [&](const Visit &visit) {
               return visit.task == task.id && visit.state == VisitState::Done;
           });
}

bool inUse(const Books &books, const UpkeepTask &task)
{
    return !task.retired && !doneOnce(books, task) &&
           !(task.pit && books.pits.value(*task.pit).retired);
}

// First planned lighting at or after a moment, among the burns that the task goes with.
const Burn *lightingFrom(const QVector<Burn> &burns, Instant from)
{
    const auto it = std::find_if(burns.begin(), burns.end(),
                                 [from](const Burn &b) { return b.cook == 0 && b.start >= from; });
    return it != burns.end() ? &*it : nullptr;
}

// First event that the crew leaves for at or after a moment; only towed ones for a task that
// blocks towing.
RecordId departureFrom(const Books &books, const UpkeepTask &task, Instant from)
{
    RecordId first = 0;
    Instant earliest;
    for (const Event &e : books.events) {
        const bool coming = e.state == EventState::Booked || e.state == EventState::Proposed;
        const Instant leaves = e.start - e.travel.value_or(Duration());
        if (!coming || leaves < from || (task.blocksTowing && !e.towed))
            continue;
        if (first == 0 || leaves < earliest) {
            first = e.id;
            earliest = leaves;
        }
    }
    return first;
}

void setSpread(TaskDue &due, const DueForecast &plain, const DueSpread &spread)
{
    due.lightings = spread.lightings;
    due.dueEarly = spread.early;
    due.dueLate = spread.late;
    due.certain = spread.known ? spread.fixed : !spread.early.isValid();
    if (!spread.known)
        return;
    due.due = spread.middle;
    due.dueAt = spread.at;
    due.dueReason = spread.reason;
    due.byCalendar = plain.byDays && spread.at == plain.at;
}

void setSnooze(TaskDue &due, const UpkeepTask &task, QDate today)
{
    due.snoozed = task.snoozedUntil.isValid() && today < task.snoozedUntil;
    if (!due.snoozed)
        return;
    due.snoozedUntil = task.snoozedUntil;
    due.snoozeReason = task.snoozeReason;
}

// The fire or the departure that comes next once it is due.
void setBefore(TaskDue &due, const Books &books, const UpkeepTask &task, const DueForecast &plain,
               const QVector<Burn> &burns, Instant now)
{
    const Instant from = std::max(due.dueAt, now);
    if (const Burn *burn = lightingFrom(burns, from)) {
        due.beforeCook = burn->planned;
        due.beforeEvent = books.plannedCooks.value(burn->planned).event.value_or(0);
    }
    if (due.pit == 0)
        due.beforeEvent = departureFrom(books, task, from);
    if (plain.beforeEvent != 0 && due.dueAt == plain.at) {
        due.beforeEvent = plain.beforeEvent;
        due.beforeCook = plain.beforeCook;
    }
}

TaskDue dueOf(const Books &books, const FuelAnswer &fuel, DuePaths &paths, const UpkeepTask &task,
              Instant now, const LocalTime &local)
{
    const TaskMeters meters = metersOf(books, fuel, task, now, local);
    const DueForecast plain = forecastDue(books, fuel, task, now, local);
    const QVector<Burn> burns = burnsForTask(books, task, now);
    TaskDue due;
    due.task = task.id;
    due.pit = task.pit.value_or(0);
    due.lastDone = meters.lastDone;
    due.meters = meters.meters;
    due.worst = meters.worst;
    setSnooze(due, task, local.dateOf(now));
    setSpread(due, plain, paths.spreadOf(task));
    if (!due.due.isValid())
        return due;
    due.overdue = local.dateOf(now) > due.due;
    setBefore(due, books, task, plain, burns, now);
    const Burn *next = lightingFrom(burns, now);
    due.blocksNextCook = task.blocksLighting && due.dueAt <= (next != nullptr ? next->start : now);
    return due;
}

// Overdue first, then what blocks the next fire, then by due day; what nothing runs up comes after
// these, and what is put off last of all.
bool moreUrgent(const Books &books, const TaskDue &a, const TaskDue &b)
{
    if (a.snoozed != b.snoozed)
        return b.snoozed;
    if (a.overdue != b.overdue)
        return a.overdue;
    if (a.blocksNextCook != b.blocksNextCook)
        return a.blocksNextCook;
    if (a.due.isValid() != b.due.isValid())
        return a.due.isValid();
    if (a.due != b.due)
        return a.due < b.due;
    const int first = books.tasks.value(a.task).priority;
    const int second = books.tasks.value(b.task).priority;
    return first != second ? first > second : a.task < b.task;
}

} // namespace

UpkeepAnswer upkeepAnswer(const Books &books, const FuelAnswer &fuel, Instant now,
                          const Wording &wording)
{
    // Without the watch there is no forecast of a cook: the mean rates stand in.
    const QVector<PlannedUse> uses =
        fuel.watch ? plannedUses(books, fuel, now) : QVector<PlannedUse>();
    return upkeepAnswer(books, fuel, uses, now, wording);
}

UpkeepAnswer upkeepAnswer(const Books &books, const FuelAnswer &fuel,
                          const QVector<PlannedUse> &uses, Instant now, const Wording &wording,
                          const std::function<bool()> &stop)
{
    const LocalTime local(wording.timeZone, wording.locale);
    DuePaths paths(books, fuel, uses, now, local);
    UpkeepAnswer answer;
    for (const UpkeepTask &task : books.tasks)
        if (inUse(books, task))
            answer.tasks << dueOf(books, fuel, paths, task, now, local);
    std::stable_sort(
        answer.tasks.begin(), answer.tasks.end(),
        [&books](const TaskDue &a, const TaskDue &b) { return moreUrgent(books, a, b); });
    const QVector<Work> work = workToPlace(books, fuel, answer.tasks, now, local);
    SolverLimits limits;
    limits.stop = stop;
    const PlacementResult placed = placeWork(books, work, agreedVisits(books, now),
                                             yardtimeOf(books, now, local), now, local, limits);
    answer.placements = placed.placements;
    answer.unplaced = placed.unplaced;
    answer.provenGap = placed.provenGap;
    for (Placement &p : answer.placements) {
        const auto due = std::find_if(answer.tasks.begin(), answer.tasks.end(),
                                      [&p](const TaskDue &d) { return d.task == p.task; });
        if (p.booked && due != answer.tasks.end())
            p.late = due->due.isValid() && local.dateOf(p.start) > due->due;
    }
    answer.headline = upkeepHeadline(books, fuel, answer, now, local);
    return answer;
}

} // namespace rickyard::domain
