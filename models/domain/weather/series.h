// The weather records of a yard as a time series that can be asked for any stretch.
#pragma once

#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

struct WeatherMean {
    std::optional<Temperature> temperature;
    std::optional<Speed> wind;
    double covered = 0; // fraction of the stretch with a record no more than 90 minutes away
    QString basis;      // in words
};

class WeatherSeries
{
public:
    explicit WeatherSeries(const Books &books);
    // Observations only; gaps stay gaps.
    [[nodiscard]] WeatherMean mean(Instant from, Instant to) const;
    [[nodiscard]] std::optional<Temperature> temperatureAt(Instant t) const;
    [[nodiscard]] std::optional<Speed> windAt(Instant t) const;
    // What the yard's own records (or normals) say of this time of the year: records within 15 days
    // of the date in any year, between the same hours.
    [[nodiscard]] WeatherMean climatology(Instant from, Instant to) const;
    [[nodiscard]] bool isEmpty() const { return m_points.isEmpty(); }

private:
    struct Point {
        Instant time;
        std::optional<Temperature> temperature;
        std::optional<Speed> wind;
        bool normal = false;
    };
    QVector<Point> m_points; // by time
};

} // namespace rickyard::domain
