// What the plan asks for at once and cannot have: found before anything is lit.
#pragma once

#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

enum class ClashKind {
    SamePit,      // two fires on one pit at the same time
    CrewAway,     // a fire burns while the crew is away at another event
    TwoEvents,    // two events want the crew at the same time
    LitTooLate,   // a cook for an event is lit when serving has begun
    RetiredPit,   // a cook is planned on a pit that is retired
    UpkeepAtFire, // a visit is placed for a time when its pit burns or is still hot
    PitBlocked,   // overdue upkeep or a cure bars a lighting
    NoTowing,     // overdue upkeep bars towing to an event
    CrewHours,    // a visit lies outside the crew's hours, or asks for more people than it has
    CrewBusy,     // somebody of the crew is busy elsewhere (imported calendar)
};

struct Clash {
    ClashKind kind = ClashKind::SamePit;
    QString what; // a sentence
    QString help; // what to change
    Link first;   // the record to change first
    Link second;  // what it clashes with; id 0 when there is none
    Instant at;
};

// The kind in two or three words: "One pit twice".
QString clashWord(ClashKind kind);

// Clashes of what is still to come, by time. The crew is one crew: it is away at an event from the
// start less the way there to the end plus the way back. An event's own cooks do not clash with it.
// A lighting or a tow is barred when a task that bars it is due before and neither agreed nor
// proposed in time: that is taken from `upkeep`, and not looked at when it is empty.
QVector<Clash> clashesOf(const Books &books, Instant now, const LocalTime &local,
                         const UpkeepAnswer &upkeep = {});

} // namespace rickyard::domain
