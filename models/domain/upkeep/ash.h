// Ash: what stands in which can and since when, and how much lies in a pit. Ash is treated as hot;
// nothing here calls it cold or safe.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/upkeep/local_time.h"
#include "models/domain/upkeep/starter_tasks.h"

namespace rickyard::domain {

struct AshState {
    RecordId load = 0;
    RecordId pit = 0;
    QString can;
    bool tipped = false;
    bool waiting = false; // in the can, and its hours are not over
    Instant notBefore;    // not to be tipped before: kAshCooling after the can was last added to
    bool tippedEarly = false; // it was tipped before that
    QString words;
};
// Every load taken out by `now`, those still in a can first, newest first. A can that hot ash was
// added to starts its hours anew, for all that is in it.
QVector<AshState> ashStates(const Books &books, Instant now, const LocalTime &local);

// The mineral ash of the wood burned since the last load was taken out (else since the first cook):
// the ash share of each species times its oven-dry mass. Char and coals come on top.
struct AshInPit {
    RecordId pit = 0;
    Mass ash;
    std::optional<Instant> since; // last taken out
    int cooks = 0;                // finished or burning since
    int withoutWood = 0;          // of these, without a figure: counted as nothing
    bool burning = false;
    QString words;
};
AshInPit ashInPit(const Books &books, const FuelAnswer &fuel, RecordId pit, Instant now,
                  const LocalTime &local);

} // namespace rickyard::domain
