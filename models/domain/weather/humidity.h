// Humidity of the air from its temperature and dew point, and back.
//
// Magnus form over water with the constants of WMO-No. 8 (Guide to Instruments and Methods of
// Observation, annex 4.B): e = 6.112 exp(17.62 T / (243.12 + T)) hPa, T in degrees Celsius, meant
// for -45 to +60.
#pragma once

#include "models/domain/records/weather.h"

#include <optional>

namespace rickyard::domain
{

// Saturation vapour pressure over water in hectopascals.
double saturationPressure(double celsius);

// Relative humidity in per cent; above 100 when the dew point is above the temperature, which
// a caller should treat as a fault of the data.
double relativeHumidityPercent(double celsius, double dewPointCelsius);
Ratio relativeHumidity(Temperature temperature, Temperature dewPoint);

// Nothing for a humidity of zero or less: dry air has no dew point.
std::optional<Temperature> dewPointFrom(Temperature temperature, Ratio humidity);

// The humidity to reckon with: from the dew point when there is one (instruments measure it, and
// files have been seen whose reported humidity contradicts it), else as reported, else missing.
std::optional<Ratio> humidityOf(const Weather &weather);

// Points of relative humidity by which the reported figure lies above the one from temperature and
// dew point. Missing when the record lacks one of the three.
std::optional<double> humidityDisagreement(const Weather &weather);

// Beyond this many points a row counts as contradicting itself. Readings kept to a tenth of a
// degree put 95 rows of 100 within 1.2 points (airport records of 2013); the limit is our own.
constexpr double kHumidityTolerance = 1.0;
bool humidityContradictsDewPoint(const Weather &weather);

} // namespace rickyard::domain
