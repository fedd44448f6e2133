// What a yard's books and its upkeep answer put into a calendar.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/upkeep/due.h"
#include "models/exchange/ics/calendar_write.h"

namespace rickyard::exchange {

// From now on: events with their drives, planned cooks, visits booked or started, each as an
// appointment; and every task that falls due within kCalendarDays and has no visit booked, as a
// thing to do. What was called off goes along as such, so that a calendar that had it learns of it.
// Proposed visits do not: nobody has agreed to them.
Calendar calendarOf(const domain::Books &books, const domain::UpkeepAnswer &upkeep,
                    domain::Instant now);
constexpr int kCalendarDays = 60;

} // namespace rickyard::exchange
