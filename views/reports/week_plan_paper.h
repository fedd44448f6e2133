// The next seven days on paper, to hang up: fires, events, upkeep, deliveries, and what falls due.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/upkeep/due.h"
#include "views/reports/paper.h"

namespace rickyard::views {

constexpr int kWeekPlanDays = 7;

// From the day of `now` on, by the yard's clock. What is proposed but not booked is left out.
Paper weekPlanPaper(const domain::Books &books, const domain::UpkeepAnswer &upkeep,
                    domain::Instant now);

} // namespace rickyard::views
