// Weather files of building simulation (EPW), such as the typical years TMY3 of the United States'
// National Renewable Energy Laboratory: eight header lines, the first LOCATION with the station's
// time zone, then a row an hour. Columns taken, from 1: year, month, day, hour (1 to 24, the hour's
// end), minute, 7 dry bulb °C, 8 dew point °C, 9 relative humidity %, 10 pressure Pa, 21 wind
// direction, 22 wind speed m/s. Missing: 99.9, 99.9, 999, 999999, 999, 999.
//
// A typical year is put together from months of different years, so it is taken as climate normals
// under one nominal year, 2001, unless the options say that it is a year as it was.
#pragma once

#include "models/exchange/weather_gather.h"

namespace rickyard::exchange {

constexpr int kTypicalYear = 2001; // 365 days, as typical years have

WeatherImport readEpw(const QByteArray &bytes, const WeatherReadOptions &options,
                      const QString &fileName = {}, const Progress &progress = {},
                      const std::atomic_bool *cancel = nullptr);
bool looksLikeEpw(const QByteArray &head);

} // namespace rickyard::exchange
