// The words for work that has no place: what stands in the way, and the least that would help.
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/placement.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr Duration kStep = Duration::ofBase(1800); // changes are tried in half hours
constexpr int kSteps = 48;

// A stretch between two fires in which the work could lie, whether or not anybody is there.
struct Gap {
    Instant from; // cold
    Instant to;   // to be cleared for the next lighting
    const Burn *last = nullptr;
    const Burn *next = nullptr;
    [[nodiscard]] Duration length() const { return to - from; }
};

// The longest gap between now and the limit; its length may be negative.
Gap longestGap(const Work &work, const QVector<Burn> &fires, Instant now, Instant limit)
{
    std::optional<Gap> best;
    Gap gap;
    gap.from = now;
    const auto close = [&](Instant to, const Burn *next) {
        gap.to = to;
        gap.next = next;
        if (to > now && (!best || gap.length() > best->length()))
            best = gap;
    };
    for (const Burn &b : fires) {
        const Instant clear = b.start - clearBeforeLighting(work.cureAfter);
        if (b.start > now && b.start <= limit)
            close(clear, &b);
        if (b.start <= limit && b.end + work.coldBefore > gap.from) {
            gap.from = b.end + work.coldBefore;
            gap.last = &b;
        }
    }
    if (gap.from < limit && (fires.isEmpty() || fires.last().start < limit))
        close(limit, nullptr);
    if (!best)
        close(limit, nullptr);
    return best.value_or(gap);
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

// Crew hours stretched at one end: the least that makes the work fit.
QString stretchCrew(const Work &work, const Yardtime &time, const QVector<Agreed> &taken,
                    Instant now, Instant limit, Duration by, const LocalTime &local)
{
    for (const WorkWindow &w : time.windows) {
        if (w.start >= limit)
            break;
        Yardtime changed = time;
        changed.windows = {w};
        changed.windows.first().end = w.end + by;
        if (earliestStart(work, changed, taken, now, limit))
            return QStringLiteral("Have the crew stay ") % formatDuration(by) %
                   QStringLiteral(" longer on ") % local.timeText(w.start) % QLatin1Char('.');
        changed.windows.first().end = w.end;
        changed.windows.first().start = w.start - by;
        if (earliestStart(work, changed, taken, now, limit))
            return QStringLiteral("Have the crew start ") % formatDuration(by) %
                   QStringLiteral(" earlier on ") % local.timeText(w.start) % QLatin1Char('.');
    }
    return {};
}

// One planned cook lit later.
QString shiftCook(const Books &books, const Work &work, const Yardtime &time,
                  const QVector<Agreed> &taken, Instant now, Instant limit, Duration by)
{
    const QVector<Burn> fires = time.fires.value(work.pit);
    for (int i = 0; i < fires.size(); ++i) {
        const Burn &burn = fires.at(i);
        if (burn.cook != 0 || burn.start > limit)
            continue;
        QVector<Burn> moved = fires;
        moved[i].start = burn.start + by;
        moved[i].end = burn.end + by;
        if (i + 1 < fires.size() && moved.at(i).end > fires.at(i + 1).start)
            continue;
        Yardtime changed = time;
        changed.fires.insert(work.pit, moved);
        const Instant until = burn.start == limit ? limit + by : limit;
        if (earliestStart(work, changed, taken, now, until))
            return QStringLiteral("Light the ") % burnName(books, burn) % QLatin1Char(' ') %
                   formatDuration(by) % QStringLiteral(" later.");
    }
    return {};
}

QString smallestChange(const Books &books, const Work &work, const Yardtime &time,
                       const QVector<Agreed> &taken, Instant now, Instant limit,
                       const LocalTime &local)
{
    for (int step = 1; step <= kSteps; ++step) {
        const Duration by = Duration::ofBase(kStep.base() * step);
        QString help = stretchCrew(work, time, taken, now, limit, by, local);
        if (help.isEmpty())
            help = shiftCook(books, work, time, taken, now, limit, by);
        if (!help.isEmpty())
            return help;
    }
    return {};
}

Unplaced explainFires(const Books &books, const Work &work, const Yardtime &time,
                      const QVector<Agreed> &taken, Instant now, Instant limit,
                      const LocalTime &local)
{
    const Gap gap = longestGap(work, time.fires.value(work.pit), now, limit);
    const QString pit = books.pits.value(work.pit).name;
    Unplaced answer;
    answer.task = work.task;
    answer.why = needs(work);
    if (gap.length() >= work.length)
        answer.why += QStringLiteral(", but no crew hours meet the time when ") % pit %
                      QStringLiteral(" is cold (from ") % local.timeText(gap.from) %
                      QStringLiteral(")");
    else if (gap.last != nullptr && gap.next != nullptr)
        answer.why += QStringLiteral(", but the fires of ") % pit % QStringLiteral(" are ") %
                      formatDuration(gap.next->start - gap.last->end) % QStringLiteral(" apart");
    else if (gap.next != nullptr)
        answer.why += QStringLiteral(", but ") % pit % QStringLiteral(" is lit at ") %
                      local.timeText(gap.next->start);
    else
        answer.why += QStringLiteral(", but ") % pit % QStringLiteral(" is not cold until ") %
                      local.timeText(gap.from);
    answer.help = smallestChange(books, work, time, taken, now, limit, local);
    if (!answer.help.isEmpty())
        return answer;
    // No single change does: name the two that do together.
    if (gap.next != nullptr && gap.length() < work.length)
        answer.help = QStringLiteral("Light the ") % burnName(books, *gap.next) % QLatin1Char(' ') %
                      formatDuration(work.length - gap.length()) %
                      QStringLiteral(" later, and have one person there from ") %
                      local.timeText(gap.from) % QLatin1Char('.');
    else
        answer.help = QStringLiteral("Have one person there from ") % local.timeText(gap.from) %
                      QStringLiteral(" for ") % formatDuration(work.length) % QLatin1Char('.');
    return answer;
}

// There would be room on the pit and in the crew's hours, were it not for other work.
Unplaced explainTaken(const Work &work, const QVector<Agreed> &taken, Instant free,
                      const QString &by, const LocalTime &local)
{
    Unplaced answer;
    answer.task = work.task;
    answer.why = needs(work) % QStringLiteral(", but the crew hours") % by %
                 QStringLiteral(" are taken by other work");
    const bool pitTaken =
        work.pit != 0 && std::any_of(taken.begin(), taken.end(), [&](const Agreed &a) {
            return a.pit == work.pit && a.start < free + work.length && free < a.end;
        });
    // Another pair of hands does not help when the pit itself is taken.
    answer.help = pitTaken
                      ? QString(QStringLiteral("Move other work on this pit that can wait, or "
                                               "make the crew hours of ") %
                                local.timeText(free) % QLatin1Char(' ') %
                                formatDuration(work.length) % QStringLiteral(" longer."))
                      : QString(QStringLiteral("One more person on ") % local.timeText(free) %
                                QStringLiteral(" would do, or move other work that can wait."));
    return answer;
}

} // namespace

Unplaced explainUnplaced(const Books &books, const Work &work, const Yardtime &time,
                         const QVector<Agreed> &taken, Instant now, const LocalTime &local)
{
    Instant limit = local.startOf(local.dateOf(now).addDays(kPlacementDays));
    if (work.before && *work.before > now)
        limit = std::min(limit, *work.before);
    // Work that nothing has run up yet can only be done once its fire is out.
    const Instant from = work.earlierHelps ? now : std::max(now, work.release);
    const QString by = limitText(books, work, limit, local);
    Unplaced answer;
    answer.task = work.task;
    bool anyHours = false;
    Duration longest;
    for (const WorkWindow &w : time.windows)
        if (w.start < limit && w.end > from) {
            anyHours = true;
            longest = std::max(longest, w.end - w.start);
        }
    if (!anyHours) {
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
    if (const auto free = earliestStart(work, time, {}, from, limit))
        return explainTaken(work, taken, *free, by, local);
    answer = explainFires(books, work, time, taken, from, limit, local);
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
