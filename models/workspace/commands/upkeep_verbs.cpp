#include "models/workspace/commands/upkeep_verbs.h"

#include "models/domain/answers/field_words.h"
#include "models/domain/upkeep/ash.h"
#include "models/domain/upkeep/due_words.h"

#include <algorithm>

namespace rickyard::commands {

using domain::AshLoad;
using domain::CheckReading;
using domain::Finding;
using domain::UpkeepTask;
using domain::Visit;
using domain::VisitState;

namespace {

constexpr int kMostSteps = 500;

Problems problemAt(const char *field, const QString &message)
{
    return {{QString::fromLatin1(field), message}};
}

QString gone()
{
    return Verbs::tr("This record was deleted meanwhile.");
}

Outcome<Done> put(Verbs &verbs, const QVector<Row> &rows, const QString &name)
{
    const auto done = verbs.putAll(rows, name, Verbs::Origin::ByHand);
    return done ? Outcome<Done>(Done{}) : Outcome<Done>(done.problems());
}

std::optional<Visit> openVisit(const Verbs &verbs, RecordId id, Problems &problems)
{
    const auto found = verbs.books().visits.constFind(id);
    if (found == verbs.books().visits.constEnd())
        problems = problemAt("", gone());
    else if (found->state == VisitState::Done || found->state == VisitState::Skipped)
        problems = problemAt("state", Verbs::tr("This visit is over. Change it in the list of "
                                                "visits."));
    else
        return *found;
    return std::nullopt;
}

QString stepsText(QVector<int> steps)
{
    std::sort(steps.begin(), steps.end());
    QStringList parts;
    for (int step : std::as_const(steps))
        parts << QString::number(step);
    return parts.join(QLatin1Char(','));
}

Visit reported(Visit visit, const VisitReport &report)
{
    visit.who = report.who;
    visit.found = report.found;
    visit.cost = report.cost;
    visit.start = report.start;
    return visit;
}

} // namespace

Outcome<Done> pinVisits(Verbs &verbs, const QVector<Visit> &visits)
{
    QVector<Row> rows;
    QString name;
    for (const Visit &wanted : visits) {
        Visit visit;
        if (wanted.id != 0) {
            Problems problems;
            const auto found = openVisit(verbs, wanted.id, problems);
            if (!found)
                return Outcome<Done>(problems);
            visit = *found;
        }
        visit.task = wanted.task;
        visit.start = wanted.start;
        visit.end = wanted.end;
        visit.pinned = true;
        rows << domain::toRow(visit);
        name = domain::taskPhrase(verbs.books(), visit.task);
    }
    if (rows.size() > 1)
        name = Verbs::tr("%1 visits").arg(rows.size());
    return put(verbs, rows, Verbs::tr("place %1").arg(name));
}

Outcome<RecordId> startVisit(Verbs &verbs, RecordId task)
{
    if (!verbs.books().tasks.contains(task))
        return Outcome<RecordId>::failed(gone());
    Visit visit;
    for (const Visit &v : verbs.books().visits) {
        if (v.task != task)
            continue;
        if (v.state == VisitState::Started)
            return v.id;
        if (v.state == VisitState::Placed && (visit.id == 0 || v.start < visit.start))
            visit = v;
    }
    visit.task = task;
    visit.state = VisitState::Started;
    visit.start = verbs.now();
    visit.end.reset();
    const QString name = Verbs::tr("start %1").arg(domain::taskPhrase(verbs.books(), task));
    if (visit.id == 0)
        return verbs.add(visit, name);
    const auto done = verbs.edit(visit, name);
    return done ? Outcome<RecordId>(visit.id) : Outcome<RecordId>(done.problems());
}

QVector<int> tickedSteps(const Visit &visit)
{
    QVector<int> steps;
    for (const QString &part : visit.stepsDone.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        bool number = false;
        const int step = part.trimmed().toInt(&number);
        if (number && step >= 0 && !steps.contains(step))
            steps << step;
    }
    return steps;
}

Outcome<Done> tickStep(Verbs &verbs, RecordId id, int step, bool ticked)
{
    Problems problems;
    auto visit = openVisit(verbs, id, problems);
    if (!visit)
        return Outcome<Done>(problems);
    if (step < 0 || step >= kMostSteps)
        return Outcome<Done>::failed(Verbs::tr("There is no such step."),
                                     QStringLiteral("steps_done"));
    QVector<int> steps = tickedSteps(*visit);
    steps.removeAll(step);
    if (ticked)
        steps << step;
    visit->stepsDone = stepsText(steps);
    return verbs.edit(
        *visit, (ticked ? Verbs::tr("tick step %1") : Verbs::tr("untick step %1")).arg(step + 1));
}

Outcome<Done> noteReading(Verbs &verbs, RecordId id, int point, std::optional<domain::Plain> value)
{
    const auto visit = verbs.books().visits.constFind(id);
    if (visit == verbs.books().visits.constEnd())
        return Outcome<Done>::failed(gone());
    CheckReading reading;
    for (const CheckReading &r : verbs.books().checkReadings)
        if (r.visit == id && r.point == point)
            reading = r;
    if (!value)
        return reading.id == 0 ? Outcome<Done>(Done{})
                               : verbs.remove(TableId::CheckReading, {reading.id});
    reading.task = visit->task;
    reading.visit = id;
    reading.point = point;
    if (reading.id == 0 || reading.value != *value)
        reading.time = verbs.now();
    reading.value = *value;
    const QString name = Verbs::tr("note reading");
    if (reading.id != 0)
        return verbs.edit(reading, name);
    const auto added = verbs.add(reading, name);
    return added ? Outcome<Done>(Done{}) : Outcome<Done>(added.problems());
}

Outcome<Done> keepReport(Verbs &verbs, const VisitReport &report)
{
    Problems problems;
    const auto visit = openVisit(verbs, report.visit, problems);
    if (!visit)
        return Outcome<Done>(problems);
    return verbs.edit(reported(*visit, report), Verbs::tr("note on the visit"));
}

Outcome<Done> finishVisit(Verbs &verbs, const VisitReport &report)
{
    Problems problems;
    auto visit = openVisit(verbs, report.visit, problems);
    if (!visit)
        return Outcome<Done>(problems);
    if (report.end > verbs.now() + domain::Duration::ofBase(60))
        return Outcome<Done>::failed(
            Verbs::tr("This lies ahead. Give the time at which it was done."),
            QStringLiteral("end"));
    const UpkeepTask task = verbs.books().tasks.value(visit->task);
    *visit = reported(*visit, report);
    visit->state = VisitState::Done;
    visit->end = report.end;
    QVector<Row> rows{domain::toRow(*visit)};
    for (const QString &text : report.findings) {
        Finding finding;
        finding.pit = task.pit;
        finding.visit = visit->id;
        finding.opened = report.end;
        finding.text = text.trimmed();
        rows << domain::toRow(finding);
    }
    for (RecordId id : report.mended) {
        const auto found = verbs.books().findings.constFind(id);
        if (found == verbs.books().findings.constEnd())
            continue;
        Finding finding = *found;
        finding.state = domain::FindingState::Mended;
        finding.mendedBy = visit->id;
        rows << domain::toRow(finding);
    }
    return put(verbs, rows,
               Verbs::tr("finish %1").arg(domain::taskPhrase(verbs.books(), visit->task)));
}

Outcome<Done> snoozeTask(Verbs &verbs, RecordId id, QDate until, const QString &reason)
{
    const auto found = verbs.books().tasks.constFind(id);
    if (found == verbs.books().tasks.constEnd())
        return Outcome<Done>::failed(gone());
    Problems problems;
    const QDate today = domain::toLocal(verbs.books(), verbs.now()).date();
    if (!until.isValid() || until <= today)
        problems += problemAt("snoozed_until", Verbs::tr("Give a day after today."));
    if (reason.trimmed().isEmpty())
        problems += problemAt("snooze_reason", Verbs::tr("Say why it can wait."));
    if (!problems.isEmpty())
        return Outcome<Done>(problems);
    UpkeepTask task = *found;
    task.snoozedUntil = until;
    task.snoozeReason = reason.trimmed();
    return verbs.edit(task, Verbs::tr("put off %1").arg(domain::taskPhrase(verbs.books(), id)));
}

Outcome<Done> wakeTask(Verbs &verbs, RecordId id)
{
    const auto found = verbs.books().tasks.constFind(id);
    if (found == verbs.books().tasks.constEnd())
        return Outcome<Done>::failed(gone());
    UpkeepTask task = *found;
    task.snoozedUntil = QDate();
    task.snoozeReason.clear();
    return verbs.edit(task, Verbs::tr("take up %1").arg(domain::taskPhrase(verbs.books(), id)));
}

Outcome<RecordId> overrideBlock(Verbs &verbs, domain::Override record)
{
    Problems problems;
    const UpkeepTask task = verbs.books().tasks.value(record.task);
    record.reason = record.reason.trimmed();
    if (record.reason.isEmpty())
        problems += problemAt("reason", Verbs::tr("Say why you go on all the same."));
    if (!record.plannedCook && !record.event)
        problems += problemAt("planned_cook",
                              Verbs::tr("Say for which cook or event; an override holds for one."));
    if (task.id != 0 && !task.blocksLighting && !task.blocksTowing)
        problems += problemAt("task", Verbs::tr("This task blocks nothing."));
    if (!problems.isEmpty())
        return Outcome<RecordId>(problems);
    if (record.time == Instant())
        record.time = verbs.now();
    return verbs.add(record,
                     Verbs::tr("override %1").arg(domain::taskPhrase(verbs.books(), record.task)));
}

Outcome<RecordId> addPhoto(Verbs &verbs, domain::Photo photo)
{
    if (photo.taken == Instant())
        photo.taken = verbs.now();
    return verbs.add(photo, Verbs::tr("attach photograph"));
}

Outcome<RecordId> takeOutAsh(Verbs &verbs, AshLoad load)
{
    load.can = load.can.simplified();
    if (load.takenOut == Instant())
        load.takenOut = verbs.now();
    Problems problems;
    if (load.can.isEmpty())
        problems += problemAt("can", Verbs::tr("Say which can, as it is marked."));
    if (load.takenOut > verbs.now() + domain::Duration::ofBase(60))
        problems += problemAt("taken_out", Verbs::tr("This lies ahead."));
    if (!problems.isEmpty())
        return Outcome<RecordId>(problems);
    return verbs.add(load, Verbs::tr("take out ash"));
}

Outcome<Done> tipAsh(Verbs &verbs, const QString &can, const QString &where, Instant at, bool early)
{
    QVector<AshLoad> loads;
    Instant earliest;
    const domain::LocalTime local(verbs.books().yard().timeZone);
    for (const domain::AshState &state : domain::ashStates(verbs.books(), verbs.now(), local))
        if (!state.tipped &&
            state.can.simplified().compare(can.simplified(), Qt::CaseInsensitive) == 0) {
            loads << verbs.books().ashLoads.value(state.load);
            earliest = std::max(earliest, state.notBefore);
        }
    if (loads.isEmpty())
        return Outcome<Done>::failed(Verbs::tr("This can is empty by the books."),
                                     QStringLiteral("can"));
    Problems problems;
    if (where.trimmed().isEmpty())
        problems += problemAt("tipped_where", Verbs::tr("Say where it was tipped."));
    if (at > verbs.now() + domain::Duration::ofBase(60))
        problems += problemAt("tipped", Verbs::tr("This lies ahead."));
    else if (at < earliest && !early)
        problems += problemAt(
            "tipped",
            Verbs::tr("Ash is treated as hot for 96 hours. By the books this can may be "
                      "tipped from %1 at the earliest.")
                .arg(domain::timeText(verbs.books(), earliest, QLocale(QStringLiteral("en_US")))));
    if (!problems.isEmpty())
        return Outcome<Done>(problems);
    QVector<Row> rows;
    for (AshLoad &load : loads) {
        load.tipped = at;
        load.where = where.trimmed();
        if (at < earliest) {
            const QString told = Verbs::tr("Tipped before 96 hours had gone by.");
            load.note = load.note.isEmpty() ? told : QString(load.note + QLatin1Char('\n') + told);
        }
        rows << domain::toRow(load);
    }
    return put(verbs, rows, Verbs::tr("tip ash"));
}

} // namespace rickyard::commands
