// The three answers of a yard, from its books alone.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/domain/upkeep/due.h"
#include "models/domain/wood/burn_first.h"
#include "models/domain/wood/seasoning.h"

#include <functional>

namespace rickyard::domain {

struct Answers {
    Instant asOf;
    WoodAnswer wood;
    FuelAnswer fuel;
    UpkeepAnswer upkeep;
    QMap<RecordId, SeasoningForecast> seasoning; // of every lot with wood
    QVector<BurnChoice> burn;                    // which rick first
};

// `stop` is asked often; once true the answers come at once and are not to be used.
using Stop = std::function<bool()>;
Answers answersOf(const Books &books, Instant now, const Stop &stop = {});
Wording wordingOf(const Books &books);

} // namespace rickyard::domain
