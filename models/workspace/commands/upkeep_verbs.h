// Upkeep as it is planned and done: visits moved, started, ticked and finished, values read,
// photographs, ash, tasks put off, blocks overridden. Each is one transaction and one undo step,
// durable when it returns. What is refused says why at its field; nothing changed then.
#pragma once

#include "models/workspace/commands/verbs.h"

namespace rickyard::commands {

// The plan. Visits put where a person wants them: pinned, so that re-planning leaves them. Id 0 is
// a proposal that becomes a visit; the times of the others are moved. Only start and end are read
// beside task and id. Refused for visits that are done.
Outcome<Done> pinVisits(Verbs &verbs, const QVector<domain::Visit> &visits);

// The work. Stamps `now` as the start of the task's earliest placed visit, or of a new one; a visit
// that has been started is given back as it is.
Outcome<RecordId> startVisit(Verbs &verbs, RecordId task);
// Steps are counted from 0 in the order of the task's steps.
Outcome<Done> tickStep(Verbs &verbs, RecordId visit, int step, bool ticked);
QVector<int> tickedSteps(const domain::Visit &visit);
// Reads a value on a visit, or changes it; nothing takes it away. In the task's unit.
Outcome<Done> noteReading(Verbs &verbs, RecordId visit, int point,
                          std::optional<domain::Plain> value);
// What was found, who and what it cost, kept while the visit goes on.
struct VisitReport {
    RecordId visit = 0;
    Instant start;
    Instant end; // of a finished visit
    QString who;
    QString found;
    std::optional<domain::Money> cost;
    QStringList findings;     // opened with it, on the task's pit
    QVector<RecordId> mended; // findings that the visit mended
};
Outcome<Done> keepReport(Verbs &verbs, const VisitReport &report);
// Done: the visit, the findings it opens and those it mended, as one step. The next due follows.
Outcome<Done> finishVisit(Verbs &verbs, const VisitReport &report);

// A task put off until a day, with the reason; a block stays a block. And taken up again.
Outcome<Done> snoozeTask(Verbs &verbs, RecordId task, QDate until, const QString &reason);
Outcome<Done> wakeTask(Verbs &verbs, RecordId task);
// Going on although a task blocks it, for one planned cook or one event, with the reason.
// `time` unset: now.
Outcome<RecordId> overrideBlock(Verbs &verbs, domain::Override record);

// A picture that lies in the yard's folder already (workspace/photos.h). `taken` unset: now.
Outcome<RecordId> addPhoto(Verbs &verbs, domain::Photo photo);

// Ash out of a pit into a can. `takenOut` unset: now.
Outcome<RecordId> takeOutAsh(Verbs &verbs, domain::AshLoad load);
// Everything in a can was tipped. Before the ash has stood kAshCooling it is refused at "tipped",
// unless `early` says that it was tipped all the same: the record then notes it.
Outcome<Done> tipAsh(Verbs &verbs, const QString &can, const QString &where, Instant at,
                     bool early = false);

} // namespace rickyard::commands
