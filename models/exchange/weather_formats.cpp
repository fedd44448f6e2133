#include "models/exchange/weather_formats.h"

#include "models/exchange/epw.h"
#include "models/exchange/isd_lite.h"
#include "models/exchange/lcd_csv.h"
#include "models/exchange/metar.h"

#include <array>

namespace rickyard::exchange {

namespace {

// Enough for 20 lines of the widest format (LCD has 124 columns).
constexpr qsizetype kLookedAt = 64 * 1024;

struct FormatName {
    WeatherFormat format;
    const char *key;
    const char *name; // for a person
    const char *one;
    const char *many;
};
constexpr std::array<FormatName, 5> kFormatNames = {
    {{WeatherFormat::Metar, "metar", "a METAR file", "report", "reports"},
     {WeatherFormat::IsdLite, "isd-lite", "an ISD-Lite file", "hour", "hours"},
     {WeatherFormat::Lcd, "lcd", "a file of local climatological data", "report", "reports"},
     {WeatherFormat::Epw, "epw", "an EPW file", "hour", "hours"},
     {WeatherFormat::Mapped, "csv", "a table", "row", "rows"}}};

const FormatName &nameOf(WeatherFormat format)
{
    for (const FormatName &name : kFormatNames)
        if (name.format == format)
            return name;
    return kFormatNames.back();
}

} // namespace

WeatherFormat recogniseWeather(const QByteArray &bytes)
{
    // Not cut inside a character of two bytes.
    const QByteArray head = bytes.left(kLookedAt);
    if (looksLikeEpw(head))
        return WeatherFormat::Epw;
    if (looksLikeLcd(head))
        return WeatherFormat::Lcd;
    if (looksLikeIsdLite(head))
        return WeatherFormat::IsdLite;
    return looksLikeMetar(head) ? WeatherFormat::Metar : WeatherFormat::Mapped;
}

QString keyOf(WeatherFormat format)
{
    return QLatin1String(nameOf(format).key);
}

std::optional<WeatherFormat> weatherFormatFromKey(const QString &key)
{
    for (const FormatName &name : kFormatNames)
        if (key == QLatin1String(name.key))
            return name.format;
    return std::nullopt;
}

QStringList weatherFormatKeys()
{
    QStringList keys;
    for (const FormatName &name : kFormatNames)
        keys << QLatin1String(name.key);
    return keys;
}

QString introduction(WeatherFormat format, const WeatherImport &read)
{
    const FormatName &name = nameOf(format);
    const qint64 count = read.report.rowsRead;
    return QStringLiteral("This is %1: %2 %3.")
        .arg(QLatin1String(name.name), QLocale(QLocale::English).toString(count),
             QLatin1String(count == 1 ? name.one : name.many));
}

WeatherImport readWeatherAs(WeatherFormat format, const QByteArray &bytes,
                            const WeatherReadOptions &options, const QString &fileName,
                            const Progress &progress, const std::atomic_bool *cancel)
{
    switch (format) {
    case WeatherFormat::Metar:
        return readMetars(bytes, options, fileName, progress, cancel);
    case WeatherFormat::IsdLite:
        return readIsdLite(bytes, options, fileName, progress, cancel);
    case WeatherFormat::Lcd:
        return readLcd(bytes, options, fileName, progress, cancel);
    case WeatherFormat::Epw:
        return readEpw(bytes, options, fileName, progress, cancel);
    case WeatherFormat::Mapped:
        break;
    }
    WeatherImport none;
    none.refused.add({fileName, 0, 0, {}, {}, QStringLiteral("a mapping of its columns"), {}});
    return none;
}

} // namespace rickyard::exchange
