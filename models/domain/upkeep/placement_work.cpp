// What is to be placed: tasks, agreed visits and the crew's time, from the records.
#include "models/domain/upkeep/dry_days.h"
#include "models/domain/upkeep/placement.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// First burn that is to be lit at or after a moment.
const Burn *nextLighting(const QVector<Burn> &burns, Instant from)
{
    for (const Burn &b : burns)
        if (b.cook == 0 && b.start >= from)
            return &b;
    return nullptr;
}

// First towed event that the crew leaves for at or after a moment.
const Event *nextTowing(const Books &books, Instant from)
{
    const Event *first = nullptr;
    const auto leaves = [](const Event &e) { return e.start - e.travel.value_or(Duration()); };
    for (const Event &e : books.events) {
        const bool coming = e.state == EventState::Booked || e.state == EventState::Proposed;
        if (coming && e.towed && leaves(e) >= from &&
            (first == nullptr || leaves(e) < leaves(*first)))
            first = &e;
    }
    return first;
}

Work workOf(const UpkeepTask &task, const TaskDue &due)
{
    Work work;
    work.task = task.id;
    work.pit = task.pit.value_or(0);
    work.length = task.work;
    work.people = task.people;
    work.coldBefore = task.coldBefore;
    work.cureAfter = task.cureAfter;
    work.due = due.due;
    work.priority = task.priority;
    work.after = task.after.value_or(0);
    work.daylight = task.daylight;
    work.dryWeather = task.dryWeather;
    work.snoozedUntil = task.snoozedUntil;
    return work;
}

void limitTo(Work &work, Instant limit, bool required)
{
    if (!work.before || (required && (limit < *work.before || !work.required)))
        work.before = limit;
    work.required = work.required || required;
}

// The limit: the next lighting or towing for what blocks it, the next lighting for what runs up
// with fire, else the due day's end.
void setLimit(Work &work, const UpkeepTask &task, const DueForecast &forecast, const Books &books,
              Instant now)
{
    const Instant from = std::max(forecast.at, now);
    if (forecast.byDays && forecast.at > now)
        work.before = forecast.at;
    if (!forecast.byDays || task.blocksLighting) {
        const QVector<Burn> burns = burnsForTask(books, task, now);
        const Burn *next = nextLighting(burns, from);
        if (next != nullptr) {
            limitTo(work, next->start, task.blocksLighting);
            if (*work.before == next->start)
                work.blockedCook = next->planned;
        }
    }
    if (task.blocksTowing)
        if (const Event *event = nextTowing(books, from)) {
            const Instant leaves = event->start - event->travel.value_or(Duration());
            limitTo(work, leaves, true);
            if (*work.before == leaves) {
                work.blockedCook = 0;
                work.blockedEvent = event->id;
            }
        }
}

// How much of the interval has run, from now to the due moment. Days run evenly; what fires run up
// jumps at the end of each, found by halving between two hundredths until they fall on one moment.
QVector<IntervalRun> runOf(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task,
                           const DueForecast &forecast, Instant now, const LocalTime &local)
{
    QVector<IntervalRun> run;
    if (forecast.byDays && task.everyDays) {
        for (QDate day = local.dateOf(now); day < forecast.day; day = day.addDays(1)) {
            const double rest = static_cast<double>(day.daysTo(forecast.day)) / *task.everyDays;
            run << IntervalRun{std::max(now, local.startOf(day)),
                               1000 - static_cast<int>(std::lround(1000 * std::min(1.0, rest)))};
        }
        run << IntervalRun{std::max(now, local.startOf(forecast.day)), 1000};
        return run;
    }
    QVector<Instant> reached(101, forecast.at);
    const auto reach = [&](int hundredth) {
        const DueForecast at = forecastDue(books, fuel, task, now, local, hundredth / 100.0);
        return at.known ? std::min(at.byDays ? local.startOf(at.day) : at.at, forecast.at)
                        : forecast.at;
    };
    const auto fill = [&](const auto &self, int low, int high) -> void {
        if (reached.at(low) == reached.at(high)) {
            std::fill(reached.begin() + low, reached.begin() + high, reached.at(low));
        } else if (high - low > 1) {
            const int middle = (low + high) / 2;
            reached[middle] = reach(middle);
            self(self, low, middle);
            self(self, middle, high);
        }
    };
    reached[1] = reach(1);
    fill(fill, 1, 100);
    for (int h = 1; h <= 100; ++h) {
        const Instant from = std::max(now, reached.at(h));
        if (!run.isEmpty() && run.last().from >= from)
            run.last().permille = 10 * h;
        else
            run << IntervalRun{from, 10 * h};
    }
    return run;
}

} // namespace

QVector<Work> workToPlace(const Books &books, const FuelAnswer &fuel, const QVector<TaskDue> &dues,
                          Instant now, const LocalTime &local)
{
    QVector<RecordId> booked;
    for (const Agreed &a : agreedVisits(books, now))
        booked << a.task;
    const Instant horizon = placementHorizon(now, local);
    QVector<Work> list;
    for (const TaskDue &due : dues) {
        const UpkeepTask task = books.tasks.value(due.task);
        const DueForecast forecast = forecastDue(books, fuel, task, now, local);
        if (!forecast.known || forecast.at > horizon || booked.contains(due.task))
            continue;
        Work work = workOf(task, due);
        work.overdue = due.overdue || forecast.at <= now;
        // Nothing has run up yet that doing it would reset: not before it has.
        const bool earlierHelps = due.worst > 0 || forecast.byDays || forecast.at <= now;
        work.release = earlierHelps ? now : forecast.at;
        if (task.snoozedUntil.isValid())
            work.release = std::max(work.release, local.startOf(task.snoozedUntil));
        setLimit(work, task, forecast, books, now);
        if (!work.overdue && earlierHelps)
            work.run = runOf(books, fuel, task, forecast, now, local);
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
            agreed << Agreed{v.task, task.pit.value_or(0), v.start, end, task.people};
    }
    return agreed;
}

Yardtime yardtimeOf(const Books &books, Instant now, const LocalTime &local)
{
    Yardtime time;
    const Instant horizon = placementHorizon(now, local);
    time.windows = crewWindows(books, now, horizon, local);
    time.daylight = assumedDaylight(now, horizon, local);
    if (std::any_of(books.tasks.cbegin(), books.tasks.cend(),
                    [](const UpkeepTask &task) { return task.dryWeather && !task.retired; }))
        time.dryDays = dryDays(books, now, horizon, local);
    Duration coldest; // a pit that has been out for longer is cold for every task
    for (const UpkeepTask &task : books.tasks)
        coldest = std::max(coldest, task.coldBefore);
    for (const Pit &pit : books.pits) {
        QVector<Burn> fires = burnsOf(books, pit.id, now);
        fires.removeIf([&](const Burn &b) { return b.end + coldest <= now; });
        time.fires.insert(pit.id, fires);
    }
    return time;
}

} // namespace rickyard::domain
