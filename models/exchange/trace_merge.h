// What a probe log changes in a yard's traces.
#pragma once

#include "models/domain/records/books.h"
#include "models/exchange/probe_log.h"

namespace rickyard::exchange {

// Keeps of a longer log the hours of one cook, from two before lighting to six after the fire was
// out: what is outside is another cook's.
void keepHoursOf(const domain::Cook &cook, ProbeLogMapping &mapping);

struct TraceMerge {
    QVector<domain::Trace> fresh;   // ids 0
    QVector<domain::Trace> updated; // with the ids of those they replace
    qint64 identical = 0;
};

// A series joins the trace of that cook and probe whose time it overlaps: the new readings win
// second by second, the others stay. Without one it is a trace of its own. The same log again
// changes nothing. Refused when a trace would hold more readings than one can.
domain::Outcome<TraceMerge> mergeTraces(const domain::Books &books, domain::RecordId cook,
                                        const ProbeLog &log, const QString &source);

} // namespace rickyard::exchange
