// Days for work that wants dry weather.
#pragma once

#include "models/domain/upkeep/windows.h"

namespace rickyard::domain {

// A day with less rain than this is dry: the climatologists' wet day is 1 mm or more (WMO expert
// team on climate change indices, ETCCDI).
constexpr double kWetDayMillimetres = 1.0;
// A day of the past counts when so many of its hours say how much it rained.
constexpr int kKnownHours = 8;

// From `now` on, neighbouring dry days as one stretch. A day ahead whose rain has been entered (a
// forecast among the weather records) goes by that. Any other goes by the days on record within 15
// days of its date, of whatever year: it counts as dry when at least half of them were, or when
// there are none. Nothing: no rain is on record at all. Days are cut by the clock's offset at
// `now`: a day with a clock change is an hour off, which no rain gauge minds.
std::optional<QVector<WorkWindow>> dryDays(const Books &books, Instant now, Instant until,
                                           const LocalTime &local);

} // namespace rickyard::domain
