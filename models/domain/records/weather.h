// Weather as logged or imported: one record an observation.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

struct Weather {
    RecordId id = 0;
    QString place;
    Instant time;
    std::optional<Temperature> temperature;
    std::optional<Temperature> dewPoint;
    std::optional<Ratio> humidity; // relative; kept as reported, dew point wins when both are there
    std::optional<Speed> wind;
    std::optional<Speed> gust;
    std::optional<Angle> windFrom;
    std::optional<Length> rain; // depth in the hour before
    std::optional<Pressure> pressure;
    bool normal = false; // a climate normal, not an observation
    QString source;
    QString typed;
};

} // namespace rickyard::domain
