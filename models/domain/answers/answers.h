// The three answers of a yard, from its books alone.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/domain/upkeep/due.h"

namespace rickyard::domain {

struct Answers {
    Instant asOf;
    WoodAnswer wood;
    FuelAnswer fuel;
    UpkeepAnswer upkeep;
};

Answers answersOf(const Books &books, Instant now);
Wording wordingOf(const Books &books);

} // namespace rickyard::domain
