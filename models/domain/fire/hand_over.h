// The hand-over to the next shift, which writes itself: what burns, what is next, how long the wood
// lasts, what was noted, and what to worry about. Plain lines, for the screen and for paper.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/upkeep/due.h"

namespace rickyard::domain {

struct HandOverSection {
    QString heading;
    QStringList lines;
};

struct HandOver {
    QString title;                     // "Long pit, Sat 28 Nov, 03:10"
    QVector<HandOverSection> sections; // none is empty
};

// `lot` is the lot that is being fed, 0 when not known: the last one fed then. Notes of the last
// twelve hours or since the last hand-over are in it, whichever is shorter.
HandOver handOver(const Books &books, const FuelAnswer &fuel, const UpkeepAnswer &upkeep,
                  const Cook &cook, RecordId lot, Instant now, const Wording &wording);

} // namespace rickyard::domain
