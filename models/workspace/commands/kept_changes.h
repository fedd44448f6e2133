// What was changed on a cook after its fire was out, kept in words beside the change itself.
#pragma once

#include "models/workspace/commands/consequences.h"

namespace rickyard::commands {

// `changes` with a CookChange for every field that they move of a cook whose fire was out before,
// and for its feeds, typed temperatures, notes and traces that they add, move or take away (a trace
// that comes is no change: it is read after the fire as a rule). A cook that goes takes its kept
// changes along and gets no more. `now`: the time of the change.
workspace::ChangeSet withKeptChanges(const domain::Books &books,
                                     const workspace::ChangeSet &changes, domain::Instant now,
                                     const IdSource &nextId);

} // namespace rickyard::commands
