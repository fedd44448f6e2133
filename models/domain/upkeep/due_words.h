// The upkeep answer in words: one sentence, a figure and the reasons behind it.
#pragma once

#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

// "gasket test on Long Tom"; the trailer's and the kit's tasks stand alone.
QString taskPhrase(const Books &books, RecordId task);

// "8 in 10 between 3 Dec and 16 Dec": from the day with one chance in ten to that with nine. Empty
// where the due date has no spread.
QString dueBandText(const TaskDue &due, const LocalTime &local);
// "put off until 20 Dec: waiting for paint"; empty when it is not.
QString snoozeText(const Books &books, const TaskDue &due, const LocalTime &local);

// Reads the tasks (most urgent first), placements and leftovers of `answer`. It reports what the
// records say; it never calls a pit safe to light.
Headline upkeepHeadline(const Books &books, const FuelAnswer &fuel, const UpkeepAnswer &answer,
                        Instant now, const LocalTime &local);

} // namespace rickyard::domain
