#include "models/domain/upkeep/windows.h"

#include <algorithm>

namespace rickyard::domain {

QVector<WorkWindow> cutOut(const QVector<WorkWindow> &windows, Instant from, Instant to)
{
    QVector<WorkWindow> left;
    for (const WorkWindow &w : windows) {
        if (to <= w.start || from >= w.end) {
            left << w;
            continue;
        }
        WorkWindow head = w;
        head.end = from;
        if (head.start < head.end)
            left << head;
        WorkWindow tail = w;
        tail.start = to;
        if (tail.start < tail.end)
            left << tail;
    }
    return left;
}

QVector<WorkWindow> within(const QVector<WorkWindow> &windows, const QVector<WorkWindow> &allowed)
{
    QVector<WorkWindow> inside;
    for (const WorkWindow &w : windows)
        for (const WorkWindow &a : allowed) {
            WorkWindow part = w;
            part.start = std::max(w.start, a.start);
            part.end = std::min(w.end, a.end);
            if (part.start < part.end)
                inside << part;
        }
    return inside;
}

QVector<WorkWindow> assumedDaylight(Instant from, Instant until, const LocalTime &local)
{
    QVector<WorkWindow> days;
    for (QDate day = local.dateOf(from); local.startOf(day) < until; day = day.addDays(1))
        days << WorkWindow{local.at(day, kDaylightFrom), local.at(day, kDaylightTo), 1};
    return days;
}

QVector<CrewTime> crewTimesOrAssumed(const Books &books, bool *assumed)
{
    if (assumed != nullptr)
        *assumed = books.crewTimes.isEmpty();
    QVector<CrewTime> times = books.crewTimes.values();
    if (!times.isEmpty())
        return times;
    for (const Weekday day : {Weekday::Tuesday, Weekday::Wednesday, Weekday::Thursday}) {
        CrewTime time;
        time.weekday = day;
        time.start = Duration::ofBase(18 * 3600);
        time.length = Duration::ofBase(3 * 3600);
        times << time;
    }
    return times;
}

QVector<WorkWindow> crewWindows(const Books &books, Instant from, Instant until,
                                const LocalTime &local)
{
    QVector<WorkWindow> windows;
    const QVector<CrewTime> times = crewTimesOrAssumed(books);
    // A day earlier: hours that began yesterday may run past midnight.
    const QDate last = local.dateOf(until);
    for (QDate day = local.dateOf(from).addDays(-1); day <= last; day = day.addDays(1))
        for (const CrewTime &t : times) {
            if (static_cast<int>(t.weekday) + 1 != day.dayOfWeek() || t.people < 1)
                continue;
            WorkWindow w;
            w.start = local.at(day, t.start);
            w.end = std::min(w.start + t.length, until);
            w.start = std::max(w.start, from);
            w.people = t.people;
            if (w.start < w.end)
                windows << w;
        }
    std::stable_sort(windows.begin(), windows.end(),
                     [](const WorkWindow &a, const WorkWindow &b) { return a.start < b.start; });
    for (const Event &e : books.events)
        if (e.state != EventState::Cancelled) {
            const Duration way = e.travel.value_or(Duration());
            windows = cutOut(windows, e.start - way, e.end + way);
        }
    for (const BusyTime &busy : books.busyTimes)
        windows = cutOut(windows, busy.start, busy.end);
    return windows;
}

QVector<WorkWindow> freeWindows(const QVector<WorkWindow> &windows, const QVector<Burn> &fires,
                                Duration coldBefore, Duration cureAfter)
{
    QVector<WorkWindow> free = windows;
    for (const Burn &burn : fires)
        free = cutOut(free, burn.start - clearBeforeLighting(cureAfter), burn.end + coldBefore);
    return free;
}

} // namespace rickyard::domain
