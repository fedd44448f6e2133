// How long a pit takes from the match to its temperature, from its own preheats.
//
// The time is taken to grow with the difference it has to climb: minutes a kelvin of target minus
// outside, whose logarithm is normal for a pit and a kind of start (cold or warm steel). A prior
// that counts as two preheats, 60 minutes for 110 K from cold and half of it from warm (common
// practice, no source), with a scatter of 0.35, serves a pit without history; normal-inverse-gamma,
// so the prediction is a Student t (Gelman et al., Bayesian Data Analysis, section 3.3: from
// memory).
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/weather/series.h"

#include <optional>

namespace rickyard::domain {

struct Preheat {
    Duration middle;
    Duration early;      // one in ten is faster
    Duration late;       // one in ten is slower
    int learnedFrom = 0; // preheats of this pit and start
};

// Preheats count when the cook has a target, the time it was at temperature within six hours, and
// an outside temperature: typed, or of the weather record nearest to the lighting within 90
// minutes.
Preheat preheat(const Books &books, const WeatherSeries &weather, RecordId pit, StartKind start,
                Temperature target, Temperature outside, Instant now);

// When to light to be at temperature by a moment with nine chances in ten.
Instant lightBy(const Preheat &preheat, Instant atTemperature);

} // namespace rickyard::domain
