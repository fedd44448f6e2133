#include "app/cli/report.h"
#include "app/cli/text_table.h"
#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/upkeep/ash.h"
#include "models/domain/upkeep/blocks.h"
#include "models/domain/upkeep/due_words.h"
#include "models/exchange/upkeep_json.h"

namespace rickyard::app {

namespace {

using domain::Books;
using domain::Instant;
using domain::LocalTime;

QString dueDayText(QDate day)
{
    return day.isValid() ? day.toString(Qt::ISODate) : QStringLiteral("–");
}

// The days with a chance of 10 and 90 % that it is due by then.
QString betweenText(const domain::TaskDue &due)
{
    if (due.certain || !due.dueEarly.isValid() || due.dueEarly == due.dueLate)
        return {};
    return dueDayText(due.dueEarly) + QStringLiteral(" to ") +
           (due.dueLate.isValid() ? dueDayText(due.dueLate) : QStringLiteral("later"));
}

QString stateText(const Books &books, const domain::TaskDue &due, const LocalTime &local)
{
    QStringList states;
    if (due.overdue)
        states << QStringLiteral("overdue");
    else if (due.blocksNextCook)
        states << QStringLiteral("before the next fire");
    const QString putOff = domain::snoozeText(books, due, local);
    if (!putOff.isEmpty())
        states << putOff;
    return states.join(QStringLiteral(", "));
}

TextTable dueTable(const Books &books, const domain::UpkeepAnswer &upkeep, const LocalTime &local)
{
    TextTable table;
    for (const domain::TaskDue &due : upkeep.tasks)
        table.row({dueDayText(due.due), betweenText(due),
                   due.pit != 0 ? books.pits.value(due.pit).name : QStringLiteral("Trailer or kit"),
                   books.tasks.value(due.task).name, due.dueReason, stateText(books, due, local)});
    if (!table.isEmpty())
        table.heading({QStringLiteral("Due"), QStringLiteral("10 to 90 % by"),
                       QStringLiteral("Pit"), QStringLiteral("Task"), QStringLiteral("Because"),
                       QString()});
    return table;
}

QString actText(const Books &books, const domain::BlockedAct &act, const LocalTime &local)
{
    if (act.towing)
        return QStringLiteral("Towing to %1, %2")
            .arg(books.events.value(act.event).name, local.timeText(act.at));
    const QString pit = books.pits.value(act.pit).name;
    if (act.plannedCook == 0)
        return QStringLiteral("Lighting %1 now").arg(pit);
    const QString event =
        act.event != 0 ? QString(QStringLiteral(" for ") + books.events.value(act.event).name)
                       : QString();
    return QStringLiteral("Lighting %1%2, %3").arg(pit, event, local.timeText(act.at));
}

void sayBlocks(QTextStream &out, const Books &books, const domain::UpkeepAnswer &upkeep,
               Instant now, const LocalTime &local)
{
    const auto acts = domain::blockedActs(books, upkeep, now);
    if (acts.isEmpty())
        return;
    out << "\nWhat stands in the way, when nothing is done before\n";
    for (const domain::BlockedAct &act : acts) {
        out << "  " << actText(books, act, local) << "\n";
        for (const domain::Block &block : act.blocks)
            out << wrapped(domain::blockWords(block), 4);
    }
}

void sayAsh(QTextStream &out, const Books &books, const domain::FuelAnswer &fuel, Instant now,
            const LocalTime &local)
{
    TextTable table;
    for (const domain::AshState &state : domain::ashStates(books, now, local))
        if (!state.tipped)
            table.row({books.pits.value(state.pit).name, state.words});
    for (const domain::Pit &pit : books.pits)
        if (!pit.retired)
            table.row({pit.name, domain::ashInPit(books, fuel, pit.id, now, local).words});
    if (!table.isEmpty())
        out << "\nAsh\n" << table.text(2);
}

void sayPlacements(QTextStream &out, const Books &books, const domain::UpkeepAnswer &upkeep)
{
    const QTimeZone zone = domain::zoneOf(domain::wordingOf(books));
    TextTable table;
    for (const domain::Placement &p : upkeep.placements) {
        const auto time = QDateTime::fromSecsSinceEpoch(p.start.seconds(), zone);
        const domain::UpkeepTask task = books.tasks.value(p.task);
        table.row({time.toString(QStringLiteral("yyyy-MM-dd HH:mm")), task.name,
                   task.pit ? books.pits.value(*task.pit).name : QString(),
                   p.booked ? QStringLiteral("booked") : QStringLiteral("proposed"),
                   p.late ? QStringLiteral("late") : QString()});
    }
    if (!table.isEmpty())
        out << "\nWhen it can be done\n" << table.text(2);
    for (const domain::Unplaced &u : upkeep.unplaced)
        out << wrapped(QString(books.tasks.value(u.task).name + QStringLiteral(": ") + u.why +
                               QLatin1Char(' ') + u.help),
                       2);
}

} // namespace

int runUpkeep(CliCall &call)
{
    Subject subject;
    if (const auto code = beginReport(call, subject))
        return *code;
    const Books &books = subject.books();
    const domain::Answers answers = domain::answersOf(books, subject.now);
    if (call.launch.has(QStringLiteral("json"))) {
        sayJson(call.out, exchange::upkeepReport(answers, books));
        return Finished;
    }
    const LocalTime local(books.yard().timeZone);
    call.out << yardLine(books, subject.now) << "\n\n";
    sayHeadline(call.out, QStringLiteral("Upkeep"), answers.upkeep.headline);
    call.out << dueTable(books, answers.upkeep, local).text();
    sayBlocks(call.out, books, answers.upkeep, subject.now, local);
    sayAsh(call.out, books, answers.fuel, subject.now, local);
    sayPlacements(call.out, books, answers.upkeep);
    call.out << "\nTreat ash as hot. Local code and the authority having jurisdiction decide.\n";
    return Finished;
}

} // namespace rickyard::app
