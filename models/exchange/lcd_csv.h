// Local Climatological Data as CSV, of the United States' National Centers for Environmental
// Information: one row a report, columns found by their headers (DATE, HourlyDryBulbTemperature,
// ...), summaries of days and months between them (left out).
//
// DATE is the station's local standard time all year, without an offset: the options say which.
// Values may carry "s" (suspect, taken and counted), "V" and other letters; T is a trace of rain,
// VRB a variable wind, * and an empty cell are missing. Files of the older edition are in °F,
// inches, miles an hour and inches of mercury, those of the second in °C, mm, m/s and hPa, under
// the same headers: the size of the pressures tells which.
#pragma once

#include "models/exchange/weather_gather.h"

namespace rickyard::exchange {

WeatherImport readLcd(const QByteArray &bytes, const WeatherReadOptions &options,
                      const QString &fileName = {}, const Progress &progress = {},
                      const std::atomic_bool *cancel = nullptr);
bool looksLikeLcd(const QByteArray &head);

} // namespace rickyard::exchange
