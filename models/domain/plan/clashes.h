// What the plan asks for at once and cannot have: found before anything is lit.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

enum class ClashKind {
    SamePit,      // two fires on one pit at the same time
    CrewAway,     // a fire burns while the crew is away at another event
    TwoEvents,    // two events want the crew at the same time
    LitTooLate,   // a cook for an event is lit when serving has begun
    RetiredPit,   // a cook is planned on a pit that is retired
    UpkeepAtFire, // a visit is placed for a time when its pit burns
};

struct Clash {
    ClashKind kind = ClashKind::SamePit;
    QString what; // a sentence
    QString help; // what to change
    Link first;   // the record to change first
    Link second;  // what it clashes with; id 0 when there is none
    Instant at;
};

// Clashes of what is still to come, by time. The crew is one crew: it is away at an event from the
// start less the way there to the end plus the way back. An event's own cooks do not clash with it.
QVector<Clash> clashesOf(const Books &books, Instant now, const LocalTime &local);

} // namespace rickyard::domain
