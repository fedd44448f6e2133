// A real year of hourly weather for seasons: tests/data/weather/newark-2013-hours.csv (source line
// in the file). Missing hours and values hold the last one; a wind that no one can have measured is
// missing.
#pragma once

#include "tests/domain/watch_season.h"

#include <QByteArray>
#include <QDateTime>
#include <QFile>
#include <QString>

#include <optional>
#include <vector>

namespace rickyard::test {

// Empty when the file cannot be read: tests assert on it.
inline std::vector<WeatherHour> realWeather()
{
    constexpr double kMetresPerSecondPerMph = 0.44704; // exact
    constexpr double kMillimetresPerInch = 25.4;       // exact
    constexpr double kNoSuchWind = 60.0;               // m/s
    const auto number = [](const QByteArray &cell) -> std::optional<double> {
        bool ok = false;
        const double value = cell.trimmed().toDouble(&ok);
        return ok ? std::optional(value) : std::nullopt;
    };
    QFile file(QStringLiteral(RICKYARD_TEST_DATA "/weather/newark-2013-hours.csv"));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    std::vector<WeatherHour> hours;
    std::optional<qint64> last;
    WeatherHour now{10.0, 3.0, 0.0};
    while (!file.atEnd()) {
        const QList<QByteArray> cells = file.readLine().split(',');
        const auto time = QDateTime::fromString(QString::fromLatin1(cells.first()), Qt::ISODate);
        if (cells.size() < 4 || !time.isValid())
            continue;
        const qint64 hour = time.toSecsSinceEpoch() / 3600;
        for (qint64 gap = last.value_or(hour) + 1; gap < hour; ++gap)
            hours.push_back({now.temperature, now.wind, 0.0});
        last = hour;
        if (const auto f = number(cells.at(1)))
            now.temperature = (*f - 32.0) * 5.0 / 9.0;
        const auto mph = number(cells.at(2));
        if (mph && *mph * kMetresPerSecondPerMph < kNoSuchWind)
            now.wind = *mph * kMetresPerSecondPerMph;
        now.rain = number(cells.at(3)).value_or(0.0) * kMillimetresPerInch;
        hours.push_back(now);
    }
    return hours;
}

} // namespace rickyard::test
