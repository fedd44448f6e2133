// Verbs on an event as a whole, with its planned cooks: held again, copied, moved, changed for all
// that follow. Each is one undo step. The days of a rule come in as values.
#pragma once

#include "models/domain/plan/event_series.h"
#include "models/workspace/commands/verbs.h"

namespace rickyard::commands {

// Makes a copy with its cooks at each serving time; the event and the copies become one series that
// keeps the rule. Refused: no days, a day before now, more than kMostRepeats.
// The ids of the new events.
constexpr int kMostRepeats = 200;
Outcome<QVector<RecordId>> repeatEvent(Verbs &verbs, RecordId event, const QVector<Instant> &starts,
                                       const QString &rule);
// A new event and its cooks. The event's id.
Outcome<RecordId> addEventCopy(Verbs &verbs, const domain::EventCopy &copy);

// The cooks go along with an event. Nothing happens when it stands on that day already.
Outcome<Done> moveEvent(Verbs &verbs, RecordId event, QDate day);
Outcome<Done> moveCook(Verbs &verbs, RecordId plannedCook, QDate day);

// What was changed on one event or cook of a series, made to the later ones as well. How many
// records changed.
Outcome<int> changeLater(Verbs &verbs, const std::optional<Row> &before, const Row &after);
// Takes the event and the later ones of its series away, with their planned cooks. Cooks that were
// lit stay in the log. How many events went.
Outcome<int> endSeriesAt(Verbs &verbs, RecordId event);

} // namespace rickyard::commands
