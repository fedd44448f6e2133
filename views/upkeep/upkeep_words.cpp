#include "views/upkeep/upkeep_words.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/items/wording.h"

#include <QCoreApplication>

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

DueState dueStateOf(const Books &books, const TaskDue &task, Instant now)
{
    if (task.overdue)
        return {Role::Act, tr("Overdue")};
    if (!task.due.isValid())
        return {Role::Info, tr("Nothing runs it up")};
    const QDate today = items::toLocal(books, now).date();
    if (task.blocksNextCook || today.daysTo(task.due) <= kSoonDays)
        return {Role::Watch, tr("Due soon")};
    return {Role::Info, tr("Not yet due")};
}

QString dueText(const Books &books, const TaskDue &task, Instant now)
{
    if (!task.due.isValid())
        return tr("no day in sight");
    const QDate today = items::toLocal(books, now).date();
    if (task.overdue)
        return task.due >= today ? tr("today") : tr("since %1").arg(dayText(task.due));
    QString text = task.due == today ? tr("today") : tr("about %1").arg(dayText(task.due));
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

QString cautionWithoutClosing(const QString &caution)
{
    QString text = caution.trimmed();
    if (text.endsWith(authorityCaution()))
        text.chop(authorityCaution().size());
    return text.trimmed();
}

} // namespace rickyard::views
