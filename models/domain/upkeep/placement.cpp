#include "models/domain/upkeep/placement.h"

#include <algorithm>

namespace rickyard::domain
{

namespace
{

Instant horizonOf(Instant now, const LocalTime &local)
{
    return local.startOf(local.dateOf(now).addDays(kPlacementDays));
}

bool overlaps(const Agreed &a, Instant start, Instant end)
{
    return a.start < end && start < a.end;
}

// People taken at one moment; every agreed visit takes one, wherever its hours came from.
int busyAt(const QVector<Agreed> &taken, Instant at)
{
    return static_cast<int>(std::count_if(
        taken.begin(), taken.end(), [at](const Agreed &a) { return a.start <= at && at < a.end; }));
}

// The people of all crew hours that cover a moment.
int peopleAt(const Yardtime &time, Instant at)
{
    int people = 0;
    for (const WorkWindow &w : time.windows)
        if (w.start <= at && at < w.end)
            people += w.people;
    return people;
}

bool someoneFree(const Yardtime &time, const QVector<Agreed> &taken, Instant start, Instant end)
{
    // The balance changes only where a visit begins or crew hours begin or end.
    QVector<Instant> moments{start};
    for (const Agreed &a : taken)
        if (a.start > start && a.start < end)
            moments << a.start;
    for (const WorkWindow &w : time.windows)
        for (const Instant edge : {w.start, w.end})
            if (edge > start && edge < end)
                moments << edge;
    return std::all_of(moments.begin(), moments.end(),
                       [&](Instant at) { return busyAt(taken, at) < peopleAt(time, at); });
}

bool pitFree(const QVector<Agreed> &taken, RecordId pit, Instant start, Instant end)
{
    return pit == 0 || std::none_of(taken.begin(), taken.end(), [&](const Agreed &a) {
               return a.pit == pit && overlaps(a, start, end);
           });
}

// First burn that is to be lit at or after a moment.
const Burn *nextLighting(const QVector<Burn> &burns, Instant from)
{
    for (const Burn &b : burns)
        if (b.cook == 0 && b.start >= from)
            return &b;
    return nullptr;
}

Work workOf(const UpkeepTask &task, const TaskDue &due)
{
    Work work;
    work.task = task.id;
    work.pit = task.pit.value_or(0);
    work.length = task.work;
    work.coldBefore = task.coldBefore;
    work.cureAfter = task.cureAfter;
    work.overdue = due.overdue;
    work.due = due.due;
    work.priority = task.priority;
    work.earlierHelps = due.worst > 0;
    return work;
}

// The limit: the next lighting for what runs up with fire or blocks it, else the due day's end.
void setLimit(Work &work, const UpkeepTask &task, const DueForecast &forecast,
              const QVector<Burn> &burns, Instant now)
{
    if (forecast.byDays && forecast.at > now)
        work.before = forecast.at;
    if (!forecast.byDays || task.blocksLighting) {
        const Burn *next = nextLighting(burns, std::max(forecast.at, now));
        if (next != nullptr && (task.blocksLighting || !work.before)) {
            work.before = next->start;
            work.blockedCook = next->planned;
            work.required = task.blocksLighting;
        }
    }
}

} // namespace

QVector<Work> workToPlace(const Books &books, const FuelAnswer &fuel, const QVector<TaskDue> &dues,
                          Instant now, const LocalTime &local)
{
    QVector<RecordId> booked;
    for (const Agreed &a : agreedVisits(books, now))
        booked << a.task;
    const Instant horizon = horizonOf(now, local);
    QVector<Work> list;
    for (const TaskDue &due : dues) {
        const UpkeepTask task = books.tasks.value(due.task);
        const DueForecast forecast = forecastDue(books, fuel, task, now, local);
        if (!forecast.known || forecast.at > horizon || booked.contains(due.task))
            continue;
        Work work = workOf(task, due);
        const DueForecast release = forecastDue(books, fuel, task, now, local, kReleaseShare);
        const Instant opens = release.byDays ? local.startOf(release.day) : release.at;
        work.release = std::max(now, release.known ? std::min(opens, forecast.at) : now);
        setLimit(work, task, forecast, burnsForTask(books, task, now), now);
        list << work;
    }
    std::sort(list.begin(), list.end(), [](const Work &a, const Work &b) {
        if (a.due != b.due)
            return a.due < b.due;
        return a.priority != b.priority ? a.priority > b.priority : a.task < b.task;
    });
    return list;
}

QVector<Agreed> agreedVisits(const Books &books, Instant now)
{
    QVector<Agreed> agreed;
    for (const Visit &v : books.visits) {
        const UpkeepTask task = books.tasks.value(v.task);
        const Instant end = v.end.value_or(v.start + task.work);
        if ((v.state == VisitState::Placed || v.state == VisitState::Started) && end > now)
            agreed << Agreed{v.task, task.pit.value_or(0), v.start, end};
    }
    return agreed;
}

Yardtime yardtimeOf(const Books &books, Instant now, const LocalTime &local)
{
    Yardtime time;
    time.windows = crewWindows(books, now, horizonOf(now, local), local);
    for (const Pit &pit : books.pits)
        time.fires.insert(pit.id, burnsOf(books, pit.id, now));
    return time;
}

std::optional<Instant> earliestStart(const Work &work, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant from, Instant until)
{
    const QVector<Burn> fires = work.pit != 0 ? time.fires.value(work.pit) : QVector<Burn>();
    std::optional<Instant> best;
    for (const WorkWindow &w : freeWindows(time.windows, fires, work.coldBefore, work.cureAfter)) {
        // A best start is a window's own, or the end of other work in it.
        QVector<Instant> starts{std::max(w.start, from)};
        for (const Agreed &a : taken)
            starts << a.end;
        for (const WorkWindow &other : time.windows)
            starts << other.start;
        for (const Instant start : starts) {
            const Instant end = start + work.length;
            if (start < from || start < w.start || end > std::min(w.end, until) ||
                (best && start >= *best))
                continue;
            if (someoneFree(time, taken, start, end) && pitFree(taken, work.pit, start, end))
                best = start;
        }
    }
    return best;
}

PlacementResult placeWork(const Books &books, const QVector<Work> &work,
                          const QVector<Agreed> &agreed, const Yardtime &time, Instant now,
                          const LocalTime &local)
{
    const Instant horizon = horizonOf(now, local);
    PlacementResult result;
    QVector<Agreed> taken = agreed;
    for (const Agreed &a : agreed) {
        const Instant free = a.end + books.tasks.value(a.task).cureAfter;
        result.placements << Placement{a.task, a.start, a.end, free, false, true};
        if (const auto clash = explainClash(books, a, time, agreed, now, local))
            result.unplaced << *clash;
    }
    for (const Work &w : work) {
        const Instant limit = w.before ? std::min(*w.before, horizon) : horizon;
        std::optional<Instant> start = earliestStart(w, time, taken, w.release, limit);
        if (!start && w.earlierHelps)
            start = earliestStart(w, time, taken, now, limit);
        bool late = w.overdue;
        if (!start && !w.required && w.before) {
            start = earliestStart(w, time, taken, *w.before, horizon);
            late = true;
        }
        if (!start) {
            result.unplaced << explainUnplaced(books, w, time, taken, now, local);
            continue;
        }
        const Instant end = *start + w.length;
        taken << Agreed{w.task, w.pit, *start, end};
        result.placements << Placement{w.task, *start, end, end + w.cureAfter, late, false};
    }
    std::stable_sort(result.placements.begin(), result.placements.end(),
                     [](const Placement &a, const Placement &b) { return a.start < b.start; });
    return result;
}

} // namespace rickyard::domain
