#include "models/domain/upkeep/placement.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace rickyard::domain {

namespace {

constexpr Duration kShortest = Duration::ofBase(60); // work without a length still takes a moment

Duration lengthOf(const Work &work)
{
    return std::max(work.length, kShortest);
}

qint64 nextOnGrid(Instant at)
{
    const qint64 grid = kPlacementGrid.base();
    return (at.seconds() / grid + 1) * grid;
}

// Days late, times weight, of a start.
qint64 latenessOf(const Work &work, Instant start, Instant now, const LocalTime &local)
{
    const QDate day = local.dateOf(start);
    qint64 days = 0;
    if (work.overdue)
        days = local.dateOf(now).daysTo(day);
    else if (work.before && start + lengthOf(work) > *work.before)
        days = std::max<qint64>(1, local.dateOf(*work.before - Duration::ofBase(1)).daysTo(day));
    return work.priority * std::max<qint64>(0, days);
}

int wasteOf(const Work &work, Instant start)
{
    int run = work.run.isEmpty() ? 1000 : 0;
    for (const IntervalRun &r : work.run)
        if (r.from <= start)
            run = r.permille;
    return 1000 - run;
}

// Starts from `from` to `to`, cut where their cost changes: at midnight, at the limit, and where
// the interval runs on. A cut begins at the next start point, so that none is lost.
void addRanges(WorkPiece &piece, const Work &work, Instant from, Instant to, Instant now,
               const LocalTime &local)
{
    QVector<Instant> cuts; // last start of a cost
    for (QDate day = local.dateOf(from); local.startOf(day.addDays(1)) <= to; day = day.addDays(1))
        cuts << local.startOf(day.addDays(1)) - Duration::ofBase(1);
    if (work.before)
        cuts << *work.before - lengthOf(work);
    for (const IntervalRun &r : work.run)
        cuts << r.from - Duration::ofBase(1);
    cuts << to;
    std::sort(cuts.begin(), cuts.end());
    Instant start = from;
    for (const Instant cut : cuts) {
        const Instant last = std::min(cut, to);
        if (last < start)
            continue;
        piece.starts << StartRange{start.seconds(), last.seconds(),
                                   latenessOf(work, start, now, local), wasteOf(work, start)};
        start = Instant::ofSeconds(nextOnGrid(last));
    }
}

QVector<Agreed> withPlan(const QVector<Agreed> &agreed, const QVector<Work> &work,
                         const PlacementPlan &plan)
{
    QVector<Agreed> taken = agreed;
    for (qsizetype i = 0; i < work.size(); ++i)
        if (const auto start = plan.starts.at(i)) {
            const Instant at = Instant::ofSeconds(*start);
            const Work &w = work.at(i);
            taken << Agreed{w.task, w.pit, at, at + lengthOf(w), w.people};
        }
    return taken;
}

} // namespace

Instant placementHorizon(Instant now, const LocalTime &local)
{
    return local.startOf(local.dateOf(now).addDays(kPlacementDays));
}

QVector<WorkWindow> openFor(const Work &work, const Yardtime &time, const QVector<Agreed> &taken)
{
    QVector<WorkWindow> open = time.windows;
    if (work.pit != 0) {
        open = freeWindows(open, time.fires.value(work.pit), work.coldBefore, work.cureAfter);
        for (const Agreed &a : taken)
            if (a.pit == work.pit)
                open = cutOut(open, a.start, a.end);
    }
    if (work.daylight)
        open = within(open, time.daylight);
    if (work.dryWeather && time.dryDays)
        open = within(open, *time.dryDays);
    return open;
}

QVector<CrewStep> crewSteps(const Yardtime &time, const QVector<Agreed> &taken)
{
    QMap<qint64, int> changes;
    for (const WorkWindow &w : time.windows) {
        changes[w.start.seconds()] += w.people;
        changes[w.end.seconds()] -= w.people;
    }
    for (const Agreed &a : taken) {
        changes[a.start.seconds()] -= a.people;
        changes[a.end.seconds()] += a.people;
    }
    QVector<CrewStep> steps;
    int people = 0;
    for (auto it = changes.cbegin(); it != changes.cend(); ++it) {
        people += it.value();
        steps << CrewStep{it.key(), std::max(0, people)};
    }
    return steps;
}

std::optional<Instant> earliestStart(const Work &work, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant from, Instant until)
{
    const QVector<CrewStep> crew = crewSteps(time, taken);
    const auto enough = [&](Instant start, Instant end) {
        int people = 0;
        for (const CrewStep &step : crew) {
            if (step.from >= end.seconds())
                break;
            if (step.from > start.seconds() && people < work.people)
                return false;
            people = step.people;
        }
        return people >= work.people;
    };
    std::optional<Instant> best;
    const auto offer = [&](Instant start) {
        if ((!best || start < *best) && enough(start, start + lengthOf(work)))
            best = start;
    };
    for (const WorkWindow &w : openFor(work, time, taken)) {
        const Instant first = std::max(w.start, from);
        const Instant last = std::min(w.end, until) - lengthOf(work);
        for (Instant start = first; start <= last && (!best || start < *best);
             start = Instant::ofSeconds(nextOnGrid(start)))
            offer(start);
        for (const Agreed &a : taken)
            if (a.end > first && a.end <= last)
                offer(a.end);
    }
    return best;
}

PlacementProblem placementProblem(const QVector<Work> &work, const QVector<RecordId> &barred,
                                  const QVector<Agreed> &agreed, const Yardtime &time, Instant now,
                                  const LocalTime &local)
{
    const Instant horizon = placementHorizon(now, local);
    PlacementProblem problem;
    problem.grid = kPlacementGrid.base();
    problem.crew = crewSteps(time, agreed);
    QVector<qsizetype> order(work.size());
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(), [&](qsizetype i, qsizetype k) {
        const Work &a = work.at(i);
        const Work &b = work.at(k);
        return std::make_tuple(a.due, -a.priority, a.task) <
               std::make_tuple(b.due, -b.priority, b.task);
    });
    for (qsizetype i = 0; i < work.size(); ++i) {
        const Work &w = work.at(i);
        WorkPiece piece;
        piece.key = order.indexOf(i);
        piece.length = lengthOf(w).base();
        piece.people = std::max(1, w.people);
        piece.pit = w.pit;
        piece.leftOut = qint64(w.priority) * kLeftOutDays;
        Instant release = std::max(now, w.release);
        for (const Agreed &a : agreed)
            if (w.after != 0 && a.task == w.after)
                release = std::max(release, a.end);
        const Instant until = w.required && w.before ? std::min(*w.before, horizon) : horizon;
        if (!barred.contains(w.task)) {
            for (qsizetype k = 0; k < work.size(); ++k)
                if (w.after != 0 && work.at(k).task == w.after)
                    piece.after = static_cast<int>(k);
            for (const WorkWindow &open : openFor(w, time, agreed)) {
                const Instant from = std::max(open.start, release);
                const Instant to = std::min(open.end, until) - lengthOf(w);
                if (from <= to)
                    addRanges(piece, w, from, to, now, local);
                // As soon as agreed work sets somebody free.
                for (const Agreed &a : agreed)
                    if (a.end > from && a.end <= to)
                        addRanges(piece, w, a.end, a.end, now, local);
            }
        }
        problem.pieces << piece;
    }
    return problem;
}

QString gapWords(double provenGap)
{
    if (provenGap <= 0)
        return {};
    const double percent = std::ceil(100 * provenGap - 1e-9);
    return QStringLiteral("within ") % QString::number(percent, 'f', 0) %
           QStringLiteral(" % of the best possible");
}

PlacementResult placeWork(const Books &books, const QVector<Work> &work,
                          const QVector<Agreed> &agreed, const Yardtime &time, Instant now,
                          const LocalTime &local, const SolverLimits &limits)
{
    PlacementResult result;
    for (const Agreed &a : agreed) {
        const Instant free = a.end + books.tasks.value(a.task).cureAfter;
        result.placements << Placement{a.task, a.start, a.end, free, false, true};
        if (const auto clash = explainClash(books, a, time, agreed, now, local))
            result.unplaced << *clash;
    }
    const QMap<RecordId, Unplaced> against = placementFaults(books, work, now, local);
    const QVector<RecordId> barred = against.keys();
    const PlacementPlan plan =
        solvePlacement(placementProblem(work, barred, agreed, time, now, local), limits);
    QVector<RecordId> leftOut;
    for (qsizetype i = 0; i < work.size(); ++i) {
        const Work &w = work.at(i);
        if (const auto start = plan.starts.at(i)) {
            const Instant at = Instant::ofSeconds(*start);
            const Instant end = at + w.length;
            const bool late =
                (w.overdue && w.due < local.dateOf(at)) || (w.before && end > *w.before);
            result.placements << Placement{w.task, at, end, end + w.cureAfter, late, false};
        } else if (against.contains(w.task)) {
            result.unplaced << against.value(w.task);
        } else {
            leftOut << w.task;
        }
    }
    result.unplaced += explainLeftOut(books, work, leftOut, barred, agreed,
                                      withPlan(agreed, work, plan), time, now, local, limits);
    std::stable_sort(result.placements.begin(), result.placements.end(),
                     [](const Placement &a, const Placement &b) { return a.start < b.start; });
    result.weightedDays = plan.late;
    result.wasted = static_cast<double>(plan.waste) / 1000;
    result.provenGap = plan.gap();
    result.nodes = plan.nodes;
    return result;
}

} // namespace rickyard::domain
