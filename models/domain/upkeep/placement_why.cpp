// The words for work that has no place: what stands in the way, and the least that would help.
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/placement.h"

#include <algorithm>

namespace rickyard::domain
{

namespace
{

// The window that lacks least, and what bounds it.
struct NearMiss {
    bool found = false;
    Duration lacking;
    WorkWindow window;
    const Burn *after = nullptr;  // fire that must have cooled
    const Burn *before = nullptr; // fire that comes too soon
};

NearMiss nearestMiss(const Work &work, const QVector<WorkWindow> &windows,
                     const QVector<Burn> &fires, Instant limit)
{
    NearMiss best;
    for (const WorkWindow &w : windows) {
        NearMiss miss;
        miss.window = w;
        Instant from = w.start;
        Instant to = std::min(w.end, limit);
        for (const Burn &b : fires) {
            if (b.start <= w.start && b.end + work.coldBefore > from) {
                from = b.end + work.coldBefore;
                miss.after = &b;
            }
            const Instant clear = b.start - clearBeforeLighting(work.cureAfter);
            if (b.start > w.start && clear < to) {
                to = clear;
                miss.before = &b;
            }
        }
        miss.lacking = work.length - (to - from);
        miss.found = true;
        if (w.start < limit && miss.lacking.base() > 0 &&
            (!best.found || miss.lacking < best.lacking))
            best = miss;
    }
    return best;
}

QString needs(const Work &work)
{
    QString text =
        QStringLiteral("needs ") % formatDuration(work.length) % QStringLiteral(" of work");
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
    if (work.blockedCook == 0)
        return QStringLiteral(" by ") % local.dayText(local.dateOf(limit));
    Burn burn;
    burn.planned = work.blockedCook;
    burn.start = limit;
    return QStringLiteral(" before the ") % burnName(books, burn) % QStringLiteral(" is lit (") %
           local.timeText(limit) % QLatin1Char(')');
}

Unplaced explainFires(const Books &books, const Work &work, const NearMiss &miss,
                      const QVector<Burn> &fires, const LocalTime &local)
{
    Unplaced answer;
    answer.task = work.task;
    answer.why = needs(work);
    const QString pit = books.pits.value(work.pit).name;
    const QString lacking = formatDuration(miss.lacking);
    const QString evening = local.timeText(miss.window.start);
    const Burn *next = miss.before;
    const Burn *last = miss.after;
    for (const Burn &b : fires) {
        if (last == nullptr && next != nullptr && b.end <= next->start && &b != next)
            last = &b; // the latest that ends before it: fires are in order
        else if (last != nullptr && next != nullptr && b.end <= next->start && b.end > last->end)
            last = &b;
    }
    if (last != nullptr && next != nullptr)
        answer.why += QStringLiteral(", but the fires of ") % pit % QStringLiteral(" are ") %
                      formatDuration(next->start - last->end) % QStringLiteral(" apart around ") %
                      evening;
    else if (last != nullptr)
        answer.why +=
            QStringLiteral(", but ") % pit % QStringLiteral(" is not cold enough by ") % evening;
    else if (next != nullptr)
        answer.why += QStringLiteral(", but ") % pit % QStringLiteral(" is lit at ") %
                      local.timeText(next->start);
    if (next != nullptr)
        answer.help = QStringLiteral("Light the ") % burnName(books, *next) % QLatin1Char(' ') %
                      lacking %
                      QStringLiteral(" later, or have the crew there earlier by as much.");
    else
        answer.help = QStringLiteral("Have the crew stay ") % lacking %
                      QStringLiteral(" longer on ") % evening % QLatin1Char('.');
    if (next != nullptr && last != nullptr && miss.after != nullptr)
        answer.help = QStringLiteral("Light the ") % burnName(books, *next) % QLatin1Char(' ') %
                      lacking % QStringLiteral(" later.");
    return answer;
}

} // namespace

Unplaced explainUnplaced(const Books &books, const Work &work, const Yardtime &time,
                         const QVector<Agreed> &taken, Instant now, const LocalTime &local)
{
    Instant limit = local.startOf(local.dateOf(now).addDays(kPlacementDays));
    if (work.before && *work.before > now)
        limit = std::min(limit, *work.before);
    const QString by = limitText(books, work, limit, local);
    Unplaced answer;
    answer.task = work.task;
    QVector<WorkWindow> windows;
    Duration longest;
    for (const WorkWindow &w : time.windows)
        if (w.start < limit) {
            windows << w;
            longest = std::max(longest, w.end - w.start);
        }
    if (windows.isEmpty()) {
        answer.why = needs(work) % QStringLiteral(", but there are no crew hours") % by;
        answer.help = QStringLiteral("Find ") % formatDuration(work.length) %
                      QStringLiteral(" for one person") % by % QLatin1Char('.');
        return answer;
    }
    if (longest < work.length) {
        answer.why = needs(work) % QStringLiteral(" in one go, but the longest crew hours") % by %
                     QStringLiteral(" are ") % formatDuration(longest);
        answer.help = QStringLiteral("Make one of them ") % formatDuration(work.length - longest) %
                      QStringLiteral(" longer.");
        return answer;
    }
    if (earliestStart(work, time, {}, now, limit)) {
        answer.why = needs(work) % QStringLiteral(", but the crew hours") % by %
                     QStringLiteral(" are taken by other work");
        const std::optional<Instant> free = earliestStart(work, time, {}, now, limit);
        answer.help = QStringLiteral("One more person on ") % local.timeText(*free) %
                      QStringLiteral(" would do, or move other work that can wait.");
        // Another pair of hands does not help when the pit itself is taken.
        const bool pitTaken =
            work.pit != 0 && std::any_of(taken.begin(), taken.end(), [&](const Agreed &a) {
                return a.pit == work.pit && a.start < *free + work.length && *free < a.end;
            });
        if (pitTaken)
            answer.help = QStringLiteral("Move other work on this pit that can wait, or make the "
                                         "crew hours of ") %
                          local.timeText(*free) % QLatin1Char(' ') % formatDuration(work.length) %
                          QStringLiteral(" longer.");
        return answer;
    }
    const QVector<Burn> fires = time.fires.value(work.pit);
    const NearMiss miss = nearestMiss(work, windows, fires, limit);
    answer = explainFires(books, work, miss, fires, local);
    answer.why += by;
    return answer;
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
        const Instant horizon = local.startOf(local.dateOf(now).addDays(kPlacementDays));
        const auto start = earliestStart(work, time, others, now, horizon);
        answer.help =
            start
                ? QString(QStringLiteral("Move it to ") % local.timeText(*start) % QLatin1Char('.'))
                : QStringLiteral("Move the cook, or add crew hours.");
        return answer;
    }
    return std::nullopt;
}

} // namespace rickyard::domain
