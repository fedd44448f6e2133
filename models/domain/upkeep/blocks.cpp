#include "models/domain/upkeep/blocks.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/meters.h"
#include "models/domain/upkeep/occasions.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

// What is asked about: which tasks block it, and what an override has to name.
struct Act {
    bool towing = false;
    QVector<RecordId> pits; // lit, or going along; tasks without a pit count always
    Instant at;
    Instant now;
    RecordId plannedCook = 0;
    RecordId event = 0;

    [[nodiscard]] bool blockedBy(const UpkeepTask &task) const
    {
        return (towing ? task.blocksTowing : task.blocksLighting) && concerns(task);
    }
    [[nodiscard]] bool concerns(const UpkeepTask &task) const
    {
        return !task.retired && (!task.pit || pits.contains(*task.pit));
    }
};

QString fullMeters(const TaskDue &due, const QLocale &locale)
{
    QStringList full;
    for (const Meter &meter : due.meters)
        if (meter.used >= meter.limit)
            full << QStringLiteral("%1 %2 since the last time, limit %3")
                        .arg(formatNumber(meter.used, 0, locale), meter.unitBy(meter.used),
                             formatNumber(meter.limit, 0, locale));
    return full.join(QStringLiteral("; "));
}

// Nothing when the task does not stand in the way at that moment.
QString whyDue(const Books &books, const TaskDue &due, const UpkeepTask &task, const Act &act,
               const LocalTime &local)
{
    const Occasion own = act.towing ? Occasion::BeforeTowing : Occasion::BeforeCook;
    // An occasion is at hand whenever it is: a fire that nobody planned counts too.
    if (task.occasion == own && !doneForOccasion(books, task, act.at, act.now))
        return act.towing ? QStringLiteral("to be done before towing, not done since the last time")
                          : QStringLiteral("to be done before each cook, not done since the last "
                                           "one");
    if (!due.due.isValid() || due.dueAt > act.at)
        return {};
    const QString full = fullMeters(due, local.locale());
    if (!full.isEmpty())
        return full;
    return (due.dueAt <= act.now ? QStringLiteral("due since ") : QStringLiteral("due by ")) %
           local.dayText(due.due) % QStringLiteral(", ") % due.dueReason;
}

void addOverdue(const Books &books, const UpkeepAnswer &upkeep, const Act &act,
                const LocalTime &local, QVector<Block> &blocks)
{
    for (const TaskDue &due : upkeep.tasks) {
        const UpkeepTask task = books.tasks.value(due.task);
        if (!act.blockedBy(task))
            continue;
        const QString why = whyDue(books, due, task, act, local);
        if (why.isEmpty())
            continue;
        Block block;
        block.task = due.task;
        block.pit = due.pit;
        block.name = task.name;
        block.why = why;
        blocks << block;
    }
}

// Work on the pit itself: a gasket that cures is no matter to the trailer's hitch, but neither is
// a pit towed with its door off.
void addVisits(const Books &books, const Act &act, const LocalTime &local, QVector<Block> &blocks)
{
    for (const Visit &visit : books.visits) {
        const UpkeepTask task = books.tasks.value(visit.task);
        if (visit.start > act.now || (!task.pit && !act.blockedBy(task)) || !act.concerns(task))
            continue;
        Block block;
        block.task = visit.task;
        block.visit = visit.id;
        block.pit = task.pit.value_or(0);
        block.name = task.name;
        const Instant end = visit.end.value_or(visit.start);
        if (visit.state == VisitState::Started) {
            block.kind = BlockKind::Underway;
            block.why = QStringLiteral("started ") % local.timeText(visit.start) %
                        QStringLiteral(", not finished");
        } else if (visit.state == VisitState::Done && !act.towing && end <= act.now &&
                   end + task.cureAfter > act.at) {
            block.kind = BlockKind::Curing;
            block.until = end + task.cureAfter;
            block.why = QStringLiteral("cures until ") % local.timeText(*block.until);
        } else {
            continue;
        }
        blocks << block;
    }
}

// A check that failed does not clear the way by having been made.
void addFindings(const Books &books, const Act &act, const LocalTime &local, QVector<Block> &blocks)
{
    for (const Finding &finding : books.findings) {
        if (finding.state != FindingState::Open || !finding.visit || finding.opened > act.now)
            continue;
        const UpkeepTask task = books.tasks.value(books.visits.value(*finding.visit).task);
        if (task.id == 0 || !act.blockedBy(task))
            continue;
        Block block;
        block.kind = BlockKind::OpenFinding;
        block.task = task.id;
        block.finding = finding.id;
        block.pit = task.pit.value_or(0);
        block.name = task.name;
        block.why = QStringLiteral("found ") % local.dayText(local.dateOf(finding.opened)) %
                    QStringLiteral(" and still open: ") % finding.text.trimmed();
        blocks << block;
    }
}

bool lifts(const Override &record, const Act &act)
{
    if (record.time > act.now)
        return false;
    if (act.towing)
        return act.event != 0 && record.event == act.event;
    if (record.plannedCook)
        return act.plannedCook != 0 && *record.plannedCook == act.plannedCook;
    return !record.event && act.at >= record.time && act.at < record.time + kOverrideHolds;
}

void setOverrides(const Books &books, const Act &act, QVector<Block> &blocks)
{
    for (Block &block : blocks)
        for (const Override &record : books.overrides)
            if (record.task == block.task && lifts(record, act)) {
                block.overriddenBy = record.id;
                block.overrideReason = record.reason;
            }
}

QVector<Block> blocksOf(const Books &books, const UpkeepAnswer &upkeep, const Act &act)
{
    const LocalTime local(books.yard().timeZone);
    QVector<Block> blocks;
    addOverdue(books, upkeep, act, local, blocks);
    addVisits(books, act, local, blocks);
    addFindings(books, act, local, blocks);
    setOverrides(books, act, blocks);
    return blocks;
}

} // namespace

QVector<Block> lightingBlocks(const Books &books, const UpkeepAnswer &upkeep, RecordId pit,
                              Instant at, Instant now, RecordId plannedCook)
{
    Act act;
    act.pits = {pit};
    act.at = std::max(at, now);
    act.now = now;
    act.plannedCook = plannedCook;
    return blocksOf(books, upkeep, act);
}

QVector<Block> towingBlocks(const Books &books, const UpkeepAnswer &upkeep, RecordId event,
                            Instant at, Instant now)
{
    if (!books.events.value(event).towed)
        return {};
    Act act;
    act.towing = true;
    act.at = std::max(at, now);
    act.now = now;
    act.event = event;
    for (const Pit &pit : books.pits)
        for (const Departure &departure : departuresOf(books, pit.id))
            if (departure.event == event && !pit.retired)
                act.pits << pit.id;
    return blocksOf(books, upkeep, act);
}

QVector<BlockedAct> blockedActs(const Books &books, const UpkeepAnswer &upkeep, Instant now)
{
    QVector<BlockedAct> acts;
    QVector<BlockedAct> ahead;
    for (const Pit &pit : books.pits) {
        if (pit.retired)
            continue;
        bool burning = false;
        bool planned = false;
        for (const Burn &burn : burnsOf(books, pit.id, now)) {
            burning = burning || burn.running;
            if (burn.cook != 0 || planned)
                continue;
            planned = true;
            const RecordId event = books.plannedCooks.value(burn.planned).event.value_or(0);
            ahead << BlockedAct{
                false,        pit.id,
                burn.planned, event,
                burn.start,   lightingBlocks(books, upkeep, pit.id, burn.start, now, burn.planned)};
        }
        if (!burning)
            acts << BlockedAct{false, pit.id, 0,
                               0,     now,    lightingBlocks(books, upkeep, pit.id, now, now)};
    }
    for (const Departure &departure : departuresOf(books, 0)) {
        if (departure.leaves < now || books.events.value(departure.event).state == EventState::Done)
            continue;
        ahead << BlockedAct{true,
                            0,
                            0,
                            departure.event,
                            departure.leaves,
                            towingBlocks(books, upkeep, departure.event, departure.leaves, now)};
        break;
    }
    std::stable_sort(ahead.begin(), ahead.end(),
                     [](const BlockedAct &a, const BlockedAct &b) { return a.at < b.at; });
    acts << ahead;
    acts.removeIf([](const BlockedAct &act) { return act.blocks.isEmpty(); });
    return acts;
}

QVector<Override> litDespite(const Books &books, const Cook &cook)
{
    QVector<Override> found;
    for (const Override &record : books.overrides) {
        const RecordId pit = books.tasks.value(record.task).pit.value_or(cook.pit);
        Act act;
        act.at = cook.lit;
        act.now = cook.lit;
        act.plannedCook = cook.planned.value_or(0);
        if (pit == cook.pit && lifts(record, act))
            found << record;
    }
    return found;
}

QString despiteWords(const Books &books, const Override &record)
{
    return QStringLiteral("Lit all the same, without: ") % taskPhrase(books, record.task) %
           QStringLiteral(". ") % record.reason.trimmed();
}

QString blockWords(const Block &block)
{
    QString text = block.name % QStringLiteral(": ") % block.why;
    if (!block.stands())
        text += QStringLiteral("; gone on with all the same: ") % block.overrideReason.trimmed();
    return text;
}

} // namespace rickyard::domain
