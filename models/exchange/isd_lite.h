// ISD-Lite: hourly weather, one file a station and year, of the United States' National Centers for
// Environmental Information (format document of June 20, 2006). Twelve whole numbers a line, split
// by blanks: year, month, day, hour (UTC, the top of the hour nearest to the observation), air
// temperature and dew point (tenths °C), sea-level pressure (tenths hPa), wind direction (degrees),
// wind speed (tenths m/s), sky code, rain of one and of six hours (tenths mm, -1 a trace);
// -9999 is missing. The sky code and the six hours' rain are not kept.
#pragma once

#include "models/exchange/weather_gather.h"

namespace rickyard::exchange {

// The place is that of the options, else the file's name without its ending (station numbers).
WeatherImport readIsdLite(const QByteArray &bytes, const WeatherReadOptions &options,
                          const QString &fileName = {}, const Progress &progress = {},
                          const std::atomic_bool *cancel = nullptr);
bool looksLikeIsdLite(const QByteArray &head);

} // namespace rickyard::exchange
