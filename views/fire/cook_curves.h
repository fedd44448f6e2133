// What a cook's timeline draws and its probe figures tell, in the form in which it is asked for
// fast: made on a thread, since a trace may hold a million readings.
#pragma once

#include "models/domain/fire/probe_summary.h"
#include "models/domain/statistics/min_max_tree.h"

#include <memory>

namespace rickyard::views {

// Times are seconds after lighting.
struct ProbeCurve {
    QString name;
    std::vector<double> x;
    domain::statistics::MinMaxTree y; // thousandths of a degree Celsius
    std::vector<std::size_t> breaks;  // first reading after each gap; no line is drawn across
    QVector<domain::ProbeFault> faults;
};

struct AirPoint {
    double at = 0;
    std::optional<double> value; // missing in a gap
};

struct CookCurves {
    domain::RecordId cook = 0;
    std::vector<ProbeCurve> probes;
    QVector<domain::ProbeSummary> summaries; // of the same probes
    QVector<AirPoint> outside;               // thousandths of a degree Celsius; empty without any
    QVector<AirPoint> wind;                  // millimetres a second; empty without any
    QStringList problems;                    // blocks that could not be read
};
using CookCurvesPtr = std::shared_ptr<const CookCurves>;

// `now` ends a cook that burns.
CookCurvesPtr readCurves(const domain::Books &books, domain::RecordId cook, domain::Instant now);

} // namespace rickyard::views
