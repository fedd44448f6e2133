// How hot a pit was over a cook: from a probe's log, else from readings that were typed, else its
// target, with words for whatever had to be assumed. Stretches in which a probe stood flat or had
// come off (trace_facts.h) are left out.
#pragma once

#include "models/domain/records/fire.h"

#include <optional>

namespace rickyard::domain {

struct PitReading {
    qint64 time;        // seconds since 1970
    double temperature; // thousandths of a degree Celsius
};

struct PitCourse {
    std::optional<Temperature> mean; // over the whole stretch; missing when nothing is known
    QStringList assumptions;
    QVector<PitReading> readings; // by time; empty when the target stands in for them
    double covered = 0;           // share of the cook that was measured

    // Mean of a stretch in degrees Celsius; NaN when nothing is known.
    [[nodiscard]] double celsiusOver(qint64 from, qint64 to) const;
};

// Only probes that read the pit count (grate, pit, chamber, cooker, door, gauge, dial, or a typed
// reading without a probe's name; the grate comes first): a probe in the meat says nothing here.
// Between readings the temperature runs straight; before the first and after the last it is theirs.
PitCourse pitCourse(const Cook &cook, Instant end, const QVector<const Trace *> &traces,
                    const QVector<const CookTemperature *> &typed);

} // namespace rickyard::domain
