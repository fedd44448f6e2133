// Triggers, limits and put-offs of an upkeep task that cannot all be meant.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

namespace rickyard::domain {

// Each with the key of the field to change and a sentence that says which two things contradict
// each other and what to do. Needs no clock: what is ahead is what comes after the newest cook or
// done visit on the books. Empty when nothing contradicts.
Problems taskContradictions(const Books &books, const UpkeepTask &task);

} // namespace rickyard::domain
