#include "models/domain/upkeep/occasions.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

bool takesAlong(const Books &books, const Event &event, RecordId pit)
{
    bool any = false;
    for (const PlannedCook &plan : books.plannedCooks) {
        if (plan.event != event.id || plan.cancelled)
            continue;
        if (plan.pit == pit)
            return true;
        any = true;
    }
    return !any;
}

// Lightings or departures of the task, whenever they are.
QVector<Instant> occasionsOf(const Books &books, const UpkeepTask &task, Instant now)
{
    QVector<Instant> times;
    if (task.occasion == Occasion::BeforeCook)
        for (const Burn &burn : burnsForTask(books, task, now))
            times << burn.start;
    else if (task.occasion == Occasion::BeforeTowing)
        for (const Departure &departure : departuresOf(books, task.pit.value_or(0)))
            times << departure.leaves;
    return times;
}

NextOccasion nextLighting(const Books &books, const UpkeepTask &task, Instant now,
                          const LocalTime &local)
{
    NextOccasion next;
    for (const Burn &burn : burnsForTask(books, task, now)) {
        if (burn.cook != 0 || burn.start < now || doneForOccasion(books, task, burn.start, now))
            continue;
        next.known = true;
        next.at = burn.start;
        next.day = local.dateOf(burn.start);
        next.plannedCook = burn.planned;
        next.event = books.plannedCooks.value(burn.planned).event.value_or(0);
        break;
    }
    return next;
}

NextOccasion nextDeparture(const Books &books, const UpkeepTask &task, Instant now,
                           const LocalTime &local)
{
    NextOccasion next;
    for (const Departure &departure : departuresOf(books, task.pit.value_or(0))) {
        const EventState state = books.events.value(departure.event).state;
        if (departure.leaves < now || state == EventState::Done ||
            doneForOccasion(books, task, departure.leaves, now))
            continue;
        next.known = true;
        next.at = departure.leaves;
        next.day = local.dateOf(departure.leaves);
        next.event = departure.event;
        break;
    }
    return next;
}

NextOccasion nextSeason(const Books &books, const UpkeepTask &task, Instant now,
                        const LocalTime &local)
{
    const std::optional<int> month = books.yard().seasonMonth;
    NextOccasion next;
    if (!month || *month < 1 || *month > 12)
        return next;
    const std::optional<Instant> done = lastDoneStart(books, task.id, now);
    const QDate after = done                   ? local.dateOf(*done).addDays(kSeasonLeadDays)
                        : task.since.isValid() ? task.since
                                               : local.dateOf(now);
    QDate first(after.year(), *month, 1);
    if (first <= after)
        first = QDate(after.year() + 1, *month, 1);
    next.known = true;
    next.at = local.startOf(first);
    next.day = first.addDays(-1);
    return next;
}

} // namespace

QVector<Departure> departuresOf(const Books &books, RecordId pit)
{
    QVector<Departure> departures;
    for (const Event &event : books.events)
        if (event.towed && event.state != EventState::Cancelled &&
            (pit == 0 || takesAlong(books, event, pit)))
            departures << Departure{event.id, event.start - event.travel.value_or(Duration())};
    std::stable_sort(departures.begin(), departures.end(),
                     [](const Departure &a, const Departure &b) { return a.leaves < b.leaves; });
    return departures;
}

std::optional<Instant> lastDoneStart(const Books &books, RecordId task, Instant now)
{
    std::optional<Instant> last;
    for (const Visit &visit : books.visits)
        if (visit.task == task && visit.state == VisitState::Done &&
            visit.end.value_or(visit.start) <= now && (!last || visit.start > *last))
            last = visit.start;
    return last;
}

bool doneForOccasion(const Books &books, const UpkeepTask &task, Instant at, Instant now)
{
    if (task.occasion != Occasion::BeforeCook && task.occasion != Occasion::BeforeTowing)
        return true;
    std::optional<Instant> last;
    for (const Visit &visit : books.visits)
        if (visit.task == task.id && visit.state == VisitState::Done && visit.start <= at &&
            visit.end.value_or(visit.start) <= now && (!last || visit.start > *last))
            last = visit.start;
    if (!last)
        return false;
    const QVector<Instant> times = occasionsOf(books, task, now);
    return std::none_of(times.begin(), times.end(),
                        [&](Instant time) { return time >= *last && time < at; });
}

NextOccasion nextOccasion(const Books &books, const UpkeepTask &task, Instant now,
                          const LocalTime &local)
{
    switch (task.occasion) {
    case Occasion::BeforeCook:
        return nextLighting(books, task, now, local);
    case Occasion::BeforeTowing:
        return nextDeparture(books, task, now, local);
    case Occasion::BeforeSeason:
        return nextSeason(books, task, now, local);
    case Occasion::None:
    case Occasion::AfterCook:
        break;
    }
    return {};
}

} // namespace rickyard::domain
