// Upkeep in words: how far a task has run, when it is due, when it can be done.
#pragma once

#include "models/domain/answers/answers.h"
#include "views/theme/theme.h"

#include <QHash>

namespace rickyard::views {

struct DueState {
    Role role = Role::Info;
    QString word;
};
// "Overdue", "Due soon" (within a week or before the next event), "Not yet due", "Not counted".
DueState dueStateOf(const domain::Books &books, const domain::TaskDue &task, domain::Instant now);
// "about Wed 9 Dec, between the 3rd and the 16th, before Mill Field Supper", "since 20 Nov"; in
// brief "about Wed 9 Dec (3 to 16 Dec)".
QString dueText(const domain::Books &books, const domain::TaskDue &task, domain::Instant now,
                bool brief = false);
// "between the 3rd and the 16th", "between 28 Nov and 9 Dec"; in brief "3 to 16 Dec".
QString betweenText(QDate early, QDate late, bool brief);
// "4 of 5 cooks".
QString meterText(const domain::Meter &meter);
// "last done Tue 3 Nov 2026" or "never recorded as done".
QString lastDoneText(const domain::Books &books, const domain::TaskDue &task);
// "Big pit", or "Trailer and kit".
QString pitName(const domain::Books &books, domain::RecordId pit);
// "Tue 1 Dec, 6 PM to 7 PM"; without the day where a heading has it.
QString spanText(const domain::Books &books, domain::Instant start, domain::Instant end,
                 bool withDay = true);
// "fire out since Sun 29 Nov, 7 AM": the last fire on its pit before that; empty when there is
// none.
QString coldText(const domain::Books &books, const domain::Placement &placement,
                 domain::Instant now);
// What a task stands in the way of, first what is planned: "Blocks the lighting of Big pit, Sat 28
// Nov, 6 AM: 6 cooks since the last time, limit 5".
struct TaskBlock {
    QString words;
    QString shortWords; // "blocks lighting Sat 28 Nov"; empty when nothing is planned
    domain::RecordId plannedCook = 0;
    domain::RecordId event = 0;
    QString overridden; // by whom and why, when somebody decided to go on

    [[nodiscard]] bool planned() const { return plannedCook != 0 || event != 0; }
};
// By task, from what domain/upkeep/blocks.h says.
QHash<domain::RecordId, TaskBlock>
taskBlocks(const domain::Books &books, const domain::UpkeepAnswer &answer, domain::Instant now);
// The steps of a task: its lines, or the sentences of a single one.
QStringList stepsOf(const QString &steps);
// What to mind before the work, without the closing sentence.
QString cautionOf(const domain::UpkeepTask &task);
// What the last visit that did a task found, by whom, what it cost; empty when none did.
QString lastTimeText(const domain::Books &books, domain::RecordId task);
// A caution without its closing sentence, which the note adds itself.
QString cautionWithoutClosing(const QString &caution);

} // namespace rickyard::views
