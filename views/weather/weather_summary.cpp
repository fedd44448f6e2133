#include "views/weather/weather_summary.h"

#include <QCoreApplication>
#include <QSet>

#include <algorithm>
#include <vector>

namespace rickyard::views {

namespace {

constexpr qint64 kReach = 90 * 60; // seconds, either way

QString tr(const char *text)
{
    return QCoreApplication::translate("Weather", text);
}

} // namespace

WeatherSummary summarise(const domain::Books &books, const QString &place)
{
    WeatherSummary summary;
    QSet<QString> places;
    std::vector<qint64> times;
    times.reserve(static_cast<size_t>(books.weather.size()));
    for (const domain::Weather &record : books.weather) {
        places.insert(record.place);
        if (!place.isNull() && record.place != place)
            continue;
        if (record.normal) {
            ++summary.normals;
            continue;
        }
        ++summary.observations;
        times.push_back(record.time.seconds());
    }
    summary.places = QStringList(places.cbegin(), places.cend());
    summary.places.sort(Qt::CaseInsensitive);
    if (times.empty())
        return summary;
    std::sort(times.begin(), times.end());
    summary.first = domain::Instant::ofSeconds(times.front());
    summary.last = domain::Instant::ofSeconds(times.back());
    qint64 covered = 0;
    for (size_t i = 1; i < times.size(); ++i)
        covered += std::min(times[i] - times[i - 1], 2 * kReach);
    const qint64 span = times.back() - times.front();
    summary.covered = span > 0 ? static_cast<double>(covered) / static_cast<double>(span) : 1.0;
    return summary;
}

QString ageWords(domain::Duration age)
{
    const qint64 hours = age.base() / 3600;
    if (hours < 1)
        return tr("under an hour");
    if (hours < 48)
        return hours == 1 ? tr("1 hour") : tr("%1 hours").arg(hours);
    const qint64 days = hours / 24;
    if (days < 730)
        return tr("%1 days").arg(days);
    return tr("%1 years").arg(days / 365);
}

} // namespace rickyard::views
