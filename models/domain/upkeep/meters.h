// The meters of an upkeep task: what has run up since it was last done, and when the first trigger
// will be reached over the planned cooks.
#pragma once

#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain
{

struct TaskMeters {
    std::optional<Instant> lastDone; // end of the last Done visit
    Instant from;                    // lastDone, else the start of the task's `since` day
    QVector<Meter> meters;           // one a trigger that is set, in the order of the record
    double worst = 0;                // highest used / limit
    int withoutHeat = 0;             // cooks that have no heat figure, when heat is metered
};

// Days are local calendar days. A cook counts when it was lit since then and its fire is out; fire
// hours and heat run while it burns (a burn that was under way counts in proportion to its time).
TaskMeters metersOf(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task, Instant now,
                    const LocalTime &local);

struct DueForecast {
    bool known = false; // false: no trigger is reached by anything planned
    QDate day;          // local day on which the first trigger is reached
    Instant at;         // a lighting at or after this finds the task overdue: the end of `day` for
                        // days, the fire out of the burn that reaches it for the others
    bool byDays = false;
    QString reason; // "after 10 cooks"
};

// When the first trigger reaches `fraction` of its limit, over burns past, running and planned.
// A planned burn takes the mean heat an hour of its pit's finished cooks, else of all pits.
DueForecast forecastDue(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task,
                        Instant now, const LocalTime &local, double fraction = 1.0);

// Heat an hour of the pit's finished cooks, else of all pits; nothing when none has a figure.
std::optional<double> meanHeatPerHour(const FuelAnswer &fuel, RecordId pit);

} // namespace rickyard::domain
