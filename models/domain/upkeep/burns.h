// Every stretch of fire on a pit as seen at one moment: what burned, what burns, what is planned.
#pragma once

#include "models/domain/records/books.h"

namespace rickyard::domain
{

struct Burn {
    RecordId pit = 0;
    RecordId cook = 0;       // 0: only planned
    RecordId planned = 0;    // 0: not from a plan
    Instant start;           // lighting
    Instant end;             // fire out, recorded or expected
    bool running = false;    // burning at `now`; its end is expected
    bool endAssumed = false; // neither recorded nor planned: kAssumedBurn or the pit's mean
};

// Used for the end of a running cook without a plan on a pit that has no finished cook.
// Common practice, no source: a cook runs 8 to 16 hours.
constexpr Duration kAssumedBurn = Duration::ofBase(12 * 3600);

// By lighting time. `pit` 0: all pits. Cooks lit after `now` have not happened yet. A plan counts
// while it is not cancelled, nor its event, its end is still to come, and no cook fulfils it (by
// its reference, or by burning on that pit at the planned time).
QVector<Burn> burnsOf(const Books &books, RecordId pit, Instant now);
// The burns of a task: those of its pit; a task without a pit (trailer, safety kit) goes along
// with every cook and counts them all.
QVector<Burn> burnsForTask(const Books &books, const UpkeepTask &task, Instant now);
// "Mill Field Supper", or the planned cook's day when it has no event.
QString burnName(const Books &books, const Burn &burn);

} // namespace rickyard::domain
