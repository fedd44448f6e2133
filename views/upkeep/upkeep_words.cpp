#include "views/upkeep/upkeep_words.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/blocks.h"
#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/items/wording.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kSoonDays = 7;

QString tr(const char *text)
{
    return QCoreApplication::translate("Upkeep", text);
}

QLocale english()
{
    return QLocale(QStringLiteral("en_US"));
}

QString dayText(const QDate &day)
{
    return english().toString(day, QStringLiteral("ddd d MMM"));
}

QString clock(const QDateTime &time)
{
    return english().toString(time, time.time().minute() == 0 ? QStringLiteral("h AP")
                                                              : QStringLiteral("h:mm AP"));
}

} // namespace

namespace {

QString ordinal(int day)
{
    const int last = day % 10;
    const bool teen = day / 10 == 1;
    return QString(QString::number(day) + (teen || last == 0 || last > 3 ? QStringLiteral("th")
                                           : last == 1                   ? QStringLiteral("st")
                                           : last == 2                   ? QStringLiteral("nd")
                                                                         : QStringLiteral("rd")));
}

QString shortDay(QDate day)
{
    return english().toString(day, QStringLiteral("d MMM"));
}

// The spread of a due day, where the answer has one.
QString spreadText(const TaskDue &task, bool brief)
{
    if (task.certain || !task.dueEarly.isValid() || task.dueLate == task.dueEarly)
        return {};
    const QString text = task.dueLate.isValid() ? betweenText(task.dueEarly, task.dueLate, brief)
                                                : tr("not before %1").arg(shortDay(task.dueEarly));
    return brief ? tr(" (%1)").arg(text) : tr(", %1").arg(text);
}

// Of the acts that a task blocks, the first that is planned, with who went on all the same.
TaskBlock taskBlockOf(const Books &books, const BlockedAct &act, const Block &block)
{
    TaskBlock found;
    found.plannedCook = act.plannedCook;
    found.event = act.towing ? act.event : 0;
    const QString at = items::timeText(books, act.at, english());
    const QString day = dayText(items::toLocal(books, act.at).date());
    const QString pit = books.pits.value(act.pit).name;
    if (act.towing) {
        found.words = tr("Blocks the trip to %1, %2").arg(books.events.value(act.event).name, at);
        found.shortWords = tr("blocks towing %1").arg(day);
    } else if (act.plannedCook != 0) {
        found.words = tr("Blocks the lighting of %1, %2").arg(pit, at);
        found.shortWords = tr("blocks lighting %1").arg(day);
    } else {
        found.words = tr("Blocks the lighting of %1; no cook is planned").arg(pit);
    }
    found.words += tr(": %1").arg(block.why);
    const Override record = books.overrides.value(block.overriddenBy);
    if (record.id != 0)
        found.overridden = record.who.isEmpty()
                               ? tr("Going on all the same: %1").arg(record.reason)
                               : tr("%1 goes on all the same: %2").arg(record.who, record.reason);
    return found;
}

} // namespace

DueState dueStateOf(const Books &books, const TaskDue &task, Instant now)
{
    if (task.snoozed)
        return {Role::Info, tr("Put off")};
    if (task.overdue)
        return {Role::Act, tr("Overdue")};
    if (!task.due.isValid())
        return {Role::Info, tr("Nothing runs it up")};
    const QDate today = items::toLocal(books, now).date();
    if (task.blocksNextCook || today.daysTo(task.due) <= kSoonDays)
        return {Role::Watch, tr("Due soon")};
    return {Role::Info, tr("Not yet due")};
}

QString betweenText(QDate early, QDate late, bool brief)
{
    const bool sameMonth = early.month() == late.month() && early.year() == late.year();
    if (brief)
        return tr("%1 to %2")
            .arg(sameMonth ? QString::number(early.day()) : shortDay(early), shortDay(late));
    return sameMonth
               ? tr("between the %1 and the %2").arg(ordinal(early.day()), ordinal(late.day()))
               : tr("between %1 and %2").arg(shortDay(early), shortDay(late));
}

QString dueText(const Books &books, const TaskDue &task, Instant now, bool brief)
{
    if (!task.due.isValid())
        return tr("no day in sight");
    const QDate today = items::toLocal(books, now).date();
    if (task.overdue)
        return task.due >= today ? tr("today") : tr("since %1").arg(dayText(task.due));
    QString text = task.due == today ? tr("today") : tr("about %1").arg(dayText(task.due));
    text += spreadText(task, brief);
    if (task.beforeEvent != 0)
        text += tr(", before %1").arg(books.events.value(task.beforeEvent).name);
    else if (task.beforeCook != 0)
        text +=
            tr(", before the cook of %1")
                .arg(dayText(
                    items::toLocal(books, books.plannedCooks.value(task.beforeCook).light).date()));
    return text;
}

QString meterText(const Meter &meter)
{
    return tr("%1 of %2 %3")
        .arg(formatNumber(meter.used, 0, english()), formatNumber(meter.limit, 0, english()),
             meter.unitBy(meter.limit));
}

QString lastDoneText(const Books &books, const TaskDue &task)
{
    if (task.lastDone)
        return tr("last done %1")
            .arg(items::dayText(items::toLocal(books, *task.lastDone).date(), english()));
    return tr("never recorded as done; counted from %1")
        .arg(items::dayText(books.tasks.value(task.task).since, english()));
}

QString pitName(const Books &books, RecordId pit)
{
    return pit == 0 ? tr("Trailer and kit") : books.pits.value(pit).name;
}

QString spanText(const Books &books, Instant start, Instant end, bool withDay)
{
    const QDateTime from = items::toLocal(books, start);
    const QDateTime until = items::toLocal(books, end);
    const QString last = from.date() == until.date()
                             ? clock(until)
                             : QString(dayText(until.date()) + QLatin1Char(' ') + clock(until));
    const QString span = tr("%1 to %2").arg(clock(from), last);
    return withDay ? QString(dayText(from.date()) + QStringLiteral(", ") + span) : span;
}

QString coldText(const Books &books, const Placement &placement, Instant now)
{
    const RecordId pit = books.tasks.value(placement.task).pit.value_or(0);
    if (pit == 0)
        return {};
    std::optional<Instant> out;
    bool planned = false;
    for (const Burn &burn : burnsOf(books, pit, now)) {
        if (burn.end > placement.start || (out && burn.end <= *out))
            continue;
        out = burn.end;
        planned = burn.end > now;
    }
    if (!out)
        return {};
    const QDateTime local = items::toLocal(books, *out);
    return (planned ? tr("fire out %1, %2 by the plan") : tr("fire out since %1, %2"))
        .arg(dayText(local.date()), clock(local));
}

QHash<RecordId, TaskBlock> taskBlocks(const Books &books, const UpkeepAnswer &answer, Instant now)
{
    QHash<RecordId, TaskBlock> found;
    for (const BlockedAct &act : blockedActs(books, answer, now))
        for (const Block &block : act.blocks) {
            const auto known = found.constFind(block.task);
            const bool planned = act.plannedCook != 0 || act.towing;
            if (known == found.constEnd() || (planned && !known->planned()))
                found.insert(block.task, taskBlockOf(books, act, block));
        }
    return found;
}

QStringList stepsOf(const QString &steps)
{
    QStringList lines;
    for (const QString &line : steps.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
        if (!line.trimmed().isEmpty())
            lines << line.trimmed();
    if (lines.size() != 1)
        return lines;
    // A stop, a space and a capital end a sentence; "1/8 in. of ash" does not.
    static const QRegularExpression end(QStringLiteral("(?<=[.!?])\\s+(?=\\p{Lu})"));
    return lines.first().split(end, Qt::SkipEmptyParts);
}

QString cautionOf(const UpkeepTask &task)
{
    const QString own = cautionWithoutClosing(task.cautions);
    return own.isEmpty() ? tr("Before you start: the fire is out, the pit is cold, and ash is "
                              "treated as hot.")
                         : own;
}

QString lastTimeText(const Books &books, RecordId task)
{
    const Visit *last = nullptr;
    for (const Visit &visit : books.visits)
        if (visit.task == task && visit.state == VisitState::Done &&
            (last == nullptr || visit.start > last->start))
            last = &visit;
    if (last == nullptr)
        return {};
    QStringList parts{items::timeText(books, last->start, english())};
    if (!last->who.isEmpty())
        parts << last->who;
    if (last->cost)
        parts << formatQuantity(last->cost->base(),
                                defaultUnit(Dimension::Money, UnitSystem::UsCustomary), english());
    const QString head = parts.join(QStringLiteral(", "));
    return last->found.isEmpty() ? head : QString(head + QLatin1Char('\n') + last->found);
}

QString cautionWithoutClosing(const QString &caution)
{
    QString text = caution.trimmed();
    if (text.endsWith(authorityCaution()))
        text.chop(authorityCaution().size());
    return text.trimmed();
}

} // namespace rickyard::views
