// One quantity of the weather over a stretch of time, broken at its gaps and thinned for drawing.
#pragma once

#include "models/domain/records/books.h"

#include <QList>
#include <QPointF>

#include <functional>
#include <optional>
#include <vector>

namespace rickyard::views {

struct WeatherStretch {
    QString place; // null: all places
    domain::Instant from;
    domain::Instant to;
    bool normals = false; // climate normals instead of observations
};

struct WeatherSample {
    qint64 time; // seconds since 1970
    double value;
};

// By time; records without the quantity are left out.
using WeatherValue = std::function<std::optional<double>(const domain::Weather &)>;
std::vector<WeatherSample> weatherSamples(const domain::Books &books, const WeatherStretch &stretch,
                                          const WeatherValue &value);

// Unbroken pieces of at most `most` points in all (and four a piece): every peak and trough of the
// full series is in them. A silence is a gap when it is over three hours and wide enough to be
// seen, so that no line is drawn across it.
std::vector<std::vector<WeatherSample>> drawnPieces(const std::vector<WeatherSample> &samples,
                                                    std::size_t most);

} // namespace rickyard::views
