// When the crew can work on a pit: crew hours, minus trips, minus fire, cold and cure hours.
#pragma once

#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain
{

struct WorkWindow {
    Instant start;
    Instant end;
    int people = 1;
};

// Nobody works on a pit in the hour before it is lit: it is being loaded and laid.
// Common practice, no source.
constexpr Duration kBeforeLighting = Duration::ofBase(3600);

// Stands in when no crew hours are recorded, and must be shown as an assumption: Tuesday to
// Thursday, 18:00 to 21:00, one person.
QVector<CrewTime> crewTimesOrAssumed(const Books &books, bool *assumed = nullptr);

// Crew hours between two instants, by start; cut where the crew is away at an event (from the
// start less the way there to the end plus the way back; cancelled ones do not count). The start
// is wall-clock time, the length true elapsed time.
QVector<WorkWindow> crewWindows(const Books &books, Instant from, Instant until,
                                const LocalTime &local);

// The latest that work must be over before a lighting.
inline Duration clearBeforeLighting(Duration cure)
{
    return std::max(kBeforeLighting, cure);
}

// The parts of the windows in which work with these needs may lie, start to end. `fires` are the
// burns of the pit (none for the trailer and the kit).
QVector<WorkWindow> freeWindows(const QVector<WorkWindow> &windows, const QVector<Burn> &fires,
                                Duration coldBefore, Duration cureAfter);

} // namespace rickyard::domain
