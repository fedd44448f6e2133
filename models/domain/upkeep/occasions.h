// Tasks that are due with an occasion: before a lighting, before a departure with the trailer,
// before the season. (What is due after each cook runs with the meters.)
#pragma once

#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

// Work for an occasion is not proposed earlier than this before it. Our own rule, no source.
constexpr int kOccasionLeadDays = 3;
// A visit this many days before the season's first day, or fewer, counts for that season. Our own
// rule, no source: half a year.
constexpr int kSeasonLeadDays = 182;

// The crew leaves for an event with the trailer.
struct Departure {
    RecordId event = 0;
    Instant leaves; // start of serving less the way there
};
// By time, without cancelled events. `pit` 0: every towed event; else those that have a cook
// planned on it, or none planned at all.
QVector<Departure> departuresOf(const Books &books, RecordId pit);

// Whether the task was done for the lighting or the departure at `at`: a done visit was begun
// before it, and none other lies between. True for a task that is due with no such occasion.
bool doneForOccasion(const Books &books, const UpkeepTask &task, Instant at, Instant now);

struct NextOccasion {
    bool known = false;
    Instant at; // a lighting or departure at or after this finds the task undone
    QDate day;  // to be done by
    RecordId plannedCook = 0;
    RecordId event = 0;
};
// The first occasion that the task has not been done for: a planned lighting or a departure still
// ahead (one that is over is missed, not overdue), or a season's start, past or to come. A season
// runs from the first of Yard::seasonMonth; without a month there is none.
NextOccasion nextOccasion(const Books &books, const UpkeepTask &task, Instant now,
                          const LocalTime &local);

// Start of the last done visit that was over by `now`.
std::optional<Instant> lastDoneStart(const Books &books, RecordId task, Instant now);

} // namespace rickyard::domain
