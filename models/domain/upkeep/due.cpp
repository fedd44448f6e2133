#include "models/domain/upkeep/due.h"

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

TaskDue dueOf(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task, Instant now,
              const LocalTime &local)
{
    const TaskMeters meters = metersOf(books, fuel, task, now, local);
    const DueForecast forecast = forecastDue(books, fuel, task, now, local);
    const QVector<Burn> burns = burnsForTask(books, task, now);
    TaskDue due;
    due.task = task.id;
    due.pit = task.pit.value_or(0);
    due.lastDone = meters.lastDone;
    due.meters = meters.meters;
    due.worst = meters.worst;
    if (!forecast.known)
        return due;
    due.due = forecast.day;
    due.dueReason = forecast.reason;
    due.overdue = local.dateOf(now) > forecast.day;
    const Instant from = std::max(forecast.at, now);
    if (const Burn *burn = lightingFrom(burns, from)) {
        due.beforeCook = burn->planned;
        due.beforeEvent = books.plannedCooks.value(burn->planned).event.value_or(0);
    }
    if (due.pit == 0)
        due.beforeEvent = departureFrom(books, task, from);
    const Burn *next = lightingFrom(burns, now);
    due.blocksNextCook =
        task.blocksLighting && forecast.at <= (next != nullptr ? next->start : now);
    return due;
}

// Overdue first, then what blocks the next fire, then by due day; what nothing runs up comes last.
bool moreUrgent(const Books &books, const TaskDue &a, const TaskDue &b)
{
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
    const LocalTime local(wording.timeZone, wording.locale);
    UpkeepAnswer answer;
    for (const UpkeepTask &task : books.tasks)
        if (inUse(books, task))
            answer.tasks << dueOf(books, fuel, task, now, local);
    std::stable_sort(
        answer.tasks.begin(), answer.tasks.end(),
        [&books](const TaskDue &a, const TaskDue &b) { return moreUrgent(books, a, b); });
    const QVector<Work> work = workToPlace(books, fuel, answer.tasks, now, local);
    const PlacementResult placed =
        placeWork(books, work, agreedVisits(books, now), yardtimeOf(books, now, local), now, local);
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
