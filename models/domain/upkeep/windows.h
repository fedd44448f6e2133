// When the crew can work on a pit: crew hours, minus trips, minus fire, cold and cure hours.
#pragma once

#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

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
// start less the way there to the end plus the way back; cancelled ones do not count) or busy by
// an imported calendar, which does not say who: nobody is there. The start is wall-clock time, the
// length true elapsed time.
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

// What is left of the windows outside [from, to).
QVector<WorkWindow> cutOut(const QVector<WorkWindow> &windows, Instant from, Instant to);
// The parts of the windows inside one of the allowed stretches, whose people do not count.
QVector<WorkWindow> within(const QVector<WorkWindow> &windows, const QVector<WorkWindow> &allowed);

// Daylight where it is not worked out from sun and place: 08:00 to 17:00, an assumption.
constexpr Duration kDaylightFrom = Duration::ofBase(8 * 3600);
constexpr Duration kDaylightTo = Duration::ofBase(17 * 3600);
QVector<WorkWindow> assumedDaylight(Instant from, Instant until, const LocalTime &local);

} // namespace rickyard::domain
