// An event held again: on other days by a rule, or as the pattern of a new one. What goes along are
// its planned cooks with pit, food, hours and wood. Wall-clock times stay what they are when the
// clocks change between: a cook lit at 22:00 the evening before is lit at 22:00 again, and has an
// hour more or less until serving. Which days a rule falls on is not this file's business.
#pragma once

#include "models/domain/plan/clashes.h"

namespace rickyard::domain {

// Seconds between two instants as the yard's clock on the wall shows them.
qint64 wallSeconds(const Books &books, Instant from, Instant to);
// The instant at which the wall clock shows so much more than it does at `time`.
Instant wallShifted(const Books &books, Instant time, qint64 seconds);

// An event and its cooks as they would be at another time: ids 0, cooks without their event.
struct EventCopy {
    Event event;
    QVector<PlannedCook> cooks;
};

enum class CopyHours {
    AsPlanned,
    AsCooked, // where a cook fulfilled the plan: its lighting, its length and its food
};

// The event with serving from `start`. Everything is as long before or after serving as it was, by
// the wall clock; a cook keeps its length. It is booked when it was done or cancelled. Cancelled
// cooks stay behind, and so does what belongs to the day alone (a forecast typed in).
EventCopy copyOf(const Books &books, RecordId event, Instant start,
                 CopyHours hours = CopyHours::AsPlanned);

// One day of a series before it is written.
struct SeriesDay {
    Instant start; // serving
    bool past = false;
    bool there = false; // the series has an event on that day already
    QVector<Clash> clashes;
};
// The days of a series in order, without the event's own; each with what its event and its cooks
// clash with, the other days of the series among it. Writes nothing.
QVector<SeriesDay> seriesDays(const Books &books, RecordId event, const QVector<Instant> &starts,
                              Instant now, const UpkeepAnswer &upkeep = {});
// What a copy at its place would clash with.
QVector<Clash> clashesOfCopy(const Books &books, const EventCopy &copy, Instant now);

// Events of the same series that serve later and are neither done nor cancelled, by time.
QVector<RecordId> laterInSeries(const Books &books, RecordId event);

// The change of one event or planned cook (its row before and after), made to the later ones of its
// series too: the fields that changed, times moved by as much on the wall clock. A cook is the same
// one in another event when its pit and its lighting before serving are the same; a new cook
// (nothing before) comes to all.
struct LaterChange {
    QVector<Row> rows; // new ones with id 0
    int without = 0;   // later events that have no such cook and stay as they are
};
LaterChange sameOnLater(const Books &books, const std::optional<Row> &before, const Row &after);

} // namespace rickyard::domain
