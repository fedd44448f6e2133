// One door for weather files: tells what a file is from its first lines and reads it.
#pragma once

#include "models/exchange/weather_gather.h"

namespace rickyard::exchange {

enum class WeatherFormat { Metar, IsdLite, Lcd, Epw, Mapped };

// Mapped: none of the four; its columns want a mapping (weather_mapping.h).
WeatherFormat recogniseWeather(const QByteArray &bytes);
// "metar", "isd-lite", "lcd", "epw", "csv".
QString keyOf(WeatherFormat format);
std::optional<WeatherFormat> weatherFormatFromKey(const QString &key);
QStringList weatherFormatKeys();
// "This is a METAR file: 34 reports."
QString introduction(WeatherFormat format, const WeatherImport &read);

// Any format but Mapped, which is refused with a hint.
WeatherImport readWeatherAs(WeatherFormat format, const QByteArray &bytes,
                            const WeatherReadOptions &options, const QString &fileName = {},
                            const Progress &progress = {},
                            const std::atomic_bool *cancel = nullptr);

} // namespace rickyard::exchange
