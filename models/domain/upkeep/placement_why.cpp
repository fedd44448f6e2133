// The words for work that has no place: what stands in the way, and the least that would help.
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/placement.h"
#include "models/domain/upkeep/placement_help.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

QString needs(const Work &work)
{
    QString text =
        QStringLiteral("needs ") % formatDuration(work.length) % QStringLiteral(" of work");
    if (work.people > 1)
        text += QStringLiteral(" by ") % QString::number(work.people) % QStringLiteral(" people");
    if (work.daylight)
        text += QStringLiteral(" in daylight");
    if (work.dryWeather)
        text += QStringLiteral(" in dry weather");
    if (work.coldBefore.base() > 0)
        text +=
            QStringLiteral(" after ") % formatDuration(work.coldBefore) % QStringLiteral(" cold");
    if (work.cureAfter.base() > 0)
        text +=
            QStringLiteral(" and ") % formatDuration(work.cureAfter) % QStringLiteral(" to cure");
    return text;
}

QString limitText(const Books &books, const Work &work, Instant limit, const LocalTime &local)
{
    if (work.blockedEvent != 0 && work.before == limit)
        return QStringLiteral(" before leaving for the ") %
               books.events.value(work.blockedEvent).name % QStringLiteral(" (") %
               local.timeText(limit) % QLatin1Char(')');
    if (work.blockedCook == 0 || work.before != limit)
        return QStringLiteral(" by ") % local.dayText(local.dateOf(limit));
    Burn burn;
    burn.planned = work.blockedCook;
    burn.start = limit;
    return QStringLiteral(" before the ") % burnName(books, burn) % QStringLiteral(" is lit (") %
           local.timeText(limit) % QLatin1Char(')');
}

QString whyFires(const Books &books, const PlacementGap &gap, const Work &work,
                 const LocalTime &local)
{
    const QString pit = books.pits.value(work.pit).name;
    if (gap.length() >= work.length)
        return QStringLiteral(", but no crew hours meet the time when ") % pit %
               QStringLiteral(" is cold (from ") % local.timeText(gap.from) % QStringLiteral(")");
    if (gap.last && gap.next)
        return QStringLiteral(", but the fires of ") % pit % QStringLiteral(" are ") %
               formatDuration(gap.next->start - gap.last->end) % QStringLiteral(" apart");
    if (gap.next)
        return QStringLiteral(", but ") % pit % QStringLiteral(" is lit at ") %
               local.timeText(gap.next->start);
    return QStringLiteral(", but ") % pit % QStringLiteral(" is not cold until ") %
           local.timeText(gap.from);
}

// What stands in the way, told by what would have to go first.
QString whyNot(const Books &books, const Work &work, const Yardtime &time, const LeftOutSpan &span,
               const LocalTime &local)
{
    const QString by = limitText(books, work, span.limit, local);
    Duration longest;
    for (const WorkWindow &w : time.windows)
        if (w.start < span.limit && w.end > span.from)
            longest = std::max(longest, std::min(w.end, span.limit) - std::max(w.start, span.from));
    if (longest.base() == 0)
        return needs(work) % QStringLiteral(", but there are no crew hours") % by;
    int people = 0;
    for (const CrewStep &step : crewSteps(time, {}))
        if (step.from < span.limit.seconds())
            people = std::max(people, step.people);
    if (people < work.people)
        return needs(work) % QStringLiteral(", but no more than ") % QString::number(people) %
               QStringLiteral(" are there at once") % by;
    if (longest < work.length)
        return needs(work) % QStringLiteral(" in one go, but the longest crew hours") % by %
               QStringLiteral(" are ") % formatDuration(longest);
    if (earliestStart(work, time, {}, span.from, span.limit))
        return needs(work) % QStringLiteral(", but the crew hours") % by %
               QStringLiteral(" are taken by other work");
    Work anyDay = work;
    anyDay.daylight = anyDay.dryWeather = false;
    if (earliestStart(anyDay, time, {}, span.from, span.limit))
        return needs(work) % QStringLiteral(", but no crew hours") % by % QStringLiteral(" are ") %
               (work.daylight ? QStringLiteral("long enough in daylight")
                              : QStringLiteral("expected to be dry for long enough"));
    if (work.pit == 0)
        return needs(work) % QStringLiteral(", but never are enough people there for so long") % by;
    const PlacementGap gap = longestGap(work, time.fires.value(work.pit), span.from, span.limit);
    return needs(work) % whyFires(books, gap, work, local) % by;
}

// Tasks that wait for each other in a circle, from `task` on; empty: none.
QVector<RecordId> circleFrom(const QVector<Work> &work, RecordId task)
{
    QVector<RecordId> seen;
    for (RecordId at = task; at != 0 && !seen.contains(at);) {
        seen << at;
        RecordId next = 0;
        for (const Work &w : work)
            if (w.task == at)
                next = w.after;
        if (next == task)
            return seen;
        at = next;
    }
    return {};
}

} // namespace

QMap<RecordId, Unplaced> placementFaults(const Books &books, const QVector<Work> &work, Instant now,
                                         const LocalTime &local)
{
    QMap<RecordId, Unplaced> faults;
    for (const Work &w : work) {
        const QVector<RecordId> circle = circleFrom(work, w.task);
        const Pit pit = books.pits.value(w.pit);
        if (w.pit != 0 && pit.retired) {
            faults.insert(w.task, {w.task,
                                   QStringLiteral("is for ") % pit.name %
                                       QStringLiteral(", which is retired"),
                                   QStringLiteral("Retire the task too, or give it another pit.")});
        } else if (!circle.isEmpty()) {
            QStringList names;
            for (const RecordId task : circle)
                names << taskPhrase(books, task);
            faults.insert(
                w.task,
                {w.task,
                 circle.size() == 1 ? QStringLiteral("is to come after itself")
                                    : QString(QStringLiteral("waits for tasks that wait for it: ") %
                                              names.join(QStringLiteral(", "))),
                 QStringLiteral("Take one of them out of the order: choose no task to come before "
                                "it.")});
        } else if (w.required && w.before && std::max(now, w.release) + w.length > *w.before) {
            const QString by = limitText(books, w, *w.before, local);
            const bool putOff = w.snoozedUntil.isValid() && local.startOf(w.snoozedUntil) > now;
            faults.insert(
                w.task,
                {w.task,
                 putOff
                     ? QString(QStringLiteral("is put off until ") % local.dayText(w.snoozedUntil) %
                               QStringLiteral(", but has to be over") % by)
                     : QString(needs(w) % QStringLiteral(", and there is no time left for it") %
                               by),
                 putOff ? QStringLiteral("Put it off no longer, or light and leave later.")
                        : QStringLiteral("Light and leave later.")});
        }
    }
    return faults;
}

QVector<Unplaced> explainLeftOut(const Books &books, const QVector<Work> &work,
                                 const QVector<RecordId> &leftOut, const QVector<RecordId> &barred,
                                 const QVector<Agreed> &agreed, const QVector<Agreed> &taken,
                                 const Yardtime &time, Instant now, const LocalTime &local,
                                 const SolverLimits &limits)
{
    QVector<Unplaced> list;
    const PlacementHelp help(books, work, leftOut, barred, agreed, taken, time, now, local, limits);
    for (const Work &w : work) {
        if (!leftOut.contains(w.task))
            continue;
        Unplaced answer;
        answer.task = w.task;
        if (leftOut.contains(w.after) || barred.contains(w.after)) {
            const QString first = taskPhrase(books, w.after);
            answer.why = QStringLiteral("comes after the ") % first %
                         QStringLiteral(", which has no place itself");
            answer.help = QStringLiteral("Find a place for the ") % first % QLatin1Char('.');
        } else {
            const LeftOutSpan span = help.spanOf(w);
            answer.why = whyNot(books, w, time, span, local);
            answer.help = help.smallestChange(w, span);
        }
        list << answer;
    }
    return list;
}

std::optional<Unplaced> explainClash(const Books &books, const Agreed &agreed, const Yardtime &time,
                                     const QVector<Agreed> &taken, Instant now,
                                     const LocalTime &local)
{
    const UpkeepTask task = books.tasks.value(agreed.task);
    Work work;
    work.task = task.id;
    work.pit = agreed.pit;
    work.length = agreed.end - agreed.start;
    work.people = agreed.people;
    work.coldBefore = task.coldBefore;
    work.cureAfter = task.cureAfter;
    for (const Burn &b : time.fires.value(agreed.pit)) {
        const Instant clear = b.start - clearBeforeLighting(work.cureAfter);
        if (agreed.end <= clear || agreed.start >= b.end + work.coldBefore)
            continue;
        Unplaced answer;
        answer.task = task.id;
        answer.why = QStringLiteral("is placed on ") % local.timeText(agreed.start) %
                     QStringLiteral(", but it ") % needs(work) % QStringLiteral(" and ") %
                     books.pits.value(agreed.pit).name;
        if (b.start <= agreed.start)
            answer.why += QStringLiteral(" burns until ") % local.timeText(b.end);
        else
            answer.why += QStringLiteral(" is lit at ") % local.timeText(b.start);
        QVector<Agreed> others = taken;
        others.removeIf([&agreed](const Agreed &a) {
            return a.task == agreed.task && a.start == agreed.start;
        });
        const auto start = earliestStart(work, time, others, now, placementHorizon(now, local));
        answer.help =
            start
                ? QString(QStringLiteral("Move it to ") % local.timeText(*start) % QLatin1Char('.'))
                : QStringLiteral("Move the cook, or add crew hours.");
        return answer;
    }
    return std::nullopt;
}

} // namespace rickyard::domain
