// The meters of an upkeep task: what has run up since it was last done, and when the first trigger
// will be reached over the planned cooks.
#pragma once

#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

struct TaskMeters {
    std::optional<Instant> lastDone; // end of the last Done visit
    Instant from;                    // lastDone, else the start of the task's `since` day
    QVector<Meter> meters;           // one a trigger that is set, in the order of the record
    double worst = 0;                // highest used / limit
    int withoutHeat = 0;             // cooks that have no heat figure, when heat or ash is metered
};

// Days are local calendar days. A cook counts when it was lit since then and its fire is out; fire
// hours, heat and ash run while it burns (a burn that was under way counts in proportion to its
// time). Due after each cook reads as one of one cook, and counts a fire that went out since,
// whenever it was lit: what was done in the middle of a cook is due again after it. Other occasions
// have no meter.
TaskMeters metersOf(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task, Instant now,
                    const LocalTime &local);

struct DueForecast {
    bool known = false;  // false: no trigger is reached by anything planned
    QDate day;           // local day on which the first trigger is reached
    Instant at;          // a lighting at or after this finds the task overdue: the end of `day` for
                         // days, the fire out of the burn that reaches it for meters, the lighting,
                         // the departure or the season's first instant for occasions
    bool byDays = false; // `at` is a moment of the calendar that the work has to be over by (days,
                         // departure, season), not one that a fire brings about
    QString reason;      // "after 10 cooks"
    RecordId beforeCook = 0;  // of an occasion: the planned cook
    RecordId beforeEvent = 0; // or the event
};

// When the first trigger reaches `fraction` of its limit, over burns past, running and planned.
// A planned burn takes the mean heat an hour of its pit's finished cooks, else of all pits. An
// occasion has no fraction: below 1 it is taken kOccasionLeadDays early. Nothing here is uncertain;
// due_paths.h has the spread.
DueForecast forecastDue(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task,
                        Instant now, const LocalTime &local, double fraction = 1.0);
// The same without what fires run up: days and occasions.
DueForecast forecastByCalendar(const Books &books, const UpkeepTask &task, Instant now,
                               const LocalTime &local, double fraction = 1.0);

// From when the meters of a task count.
Instant startOfCount(const Books &books, const UpkeepTask &task, Instant now,
                     const LocalTime &local);

// Heat an hour of the pit's finished cooks, else of all pits; nothing when none has a figure.
std::optional<double> meanHeatPerHour(const FuelAnswer &fuel, RecordId pit);

} // namespace rickyard::domain
