// What a weather file held, beyond its rows, and what it changes in the yard.
#include "models/domain/quantities/units.h"
#include "models/domain/weather/humidity.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/weather_row.h"

#include <QHash>

#include <algorithm>

namespace rickyard::exchange
{

using domain::Duration;
using domain::Weather;

namespace
{

constexpr qsizetype kMostGaps = 100;
// Dew points are reported to a tenth of a degree or a whole degree Fahrenheit; beyond that a dew
// point above the temperature is a fault of the data.
constexpr qint64 kDewTolerance = 600; // thousandths of a kelvin

void describeHumidity(const QVector<Weather> &rows, const QVector<qint64> &lines,
                      WeatherReport &report)
{
    for (qsizetype i = 0; i < rows.size(); ++i) {
        const Weather &w = rows.at(i);
        if (w.temperature && w.dewPoint && (*w.dewPoint - *w.temperature).base() > kDewTolerance)
            ++report.dewAboveTemperature;
        const auto points = domain::humidityDisagreement(w);
        if (!points)
            continue;
        ++report.humidityChecked;
        if (std::abs(*points) <= domain::kHumidityTolerance)
            continue;
        ++report.humidityDisagrees;
        if (std::abs(*points) > report.worstHumidity) {
            report.worstHumidity = std::abs(*points);
            report.worstHumidityLine = lines.value(i);
        }
    }
}

void describeGaps(const QVector<Weather> &rows, WeatherReport &report)
{
    QHash<qint64, qint64> steps;
    for (qsizetype i = 1; i < rows.size(); ++i)
        if (rows.at(i).place == rows.at(i - 1).place)
            ++steps[(rows.at(i).time - rows.at(i - 1).time).base()];
    qint64 usual = 0;
    qint64 times = 0;
    for (auto it = steps.constBegin(); it != steps.constEnd(); ++it) {
        if (it.value() > times || (it.value() == times && it.key() < usual)) {
            usual = it.key();
            times = it.value();
        }
    }
    report.usualStep = Duration::ofBase(usual);
    for (qsizetype i = 1; i < rows.size(); ++i) {
        const Weather &before = rows.at(i - 1);
        const Weather &after = rows.at(i);
        // Half a step over is a late reading, not a missing one.
        if (before.place != after.place || (after.time - before.time).base() * 2 <= usual * 3)
            continue;
        report.gaps.append({before.time, after.time});
    }
    report.gapCount = report.gaps.size();
    std::stable_sort(
        report.gaps.begin(), report.gaps.end(),
        [](const WeatherGap &a, const WeatherGap &b) { return a.to - a.from > b.to - b.from; });
    if (report.gaps.size() > kMostGaps)
        report.gaps.resize(kMostGaps);
}

template <class T>
bool fill(std::optional<T> &to, const std::optional<T> &from)
{
    if (to || !from)
        return false;
    to = from;
    return true;
}

using Key = std::tuple<QString, qint64, bool>;
Key keyOf(const Weather &w)
{
    return {w.place, w.time.seconds(), w.normal};
}

QString plural(qint64 n, const QString &one, const QString &many)
{
    return QString(QString::number(n) + QLatin1Char(' ') + (n == 1 ? one : many));
}

} // namespace

bool sameObservation(const Weather &a, const Weather &b)
{
    return a.temperature == b.temperature && a.dewPoint == b.dewPoint && a.humidity == b.humidity &&
           a.wind == b.wind && a.gust == b.gust && a.windFrom == b.windFrom && a.rain == b.rain &&
           a.pressure == b.pressure;
}

void describe(const QVector<Weather> &rows, const QVector<qint64> &lines, WeatherReport &report)
{
    report.accepted = rows.size();
    for (const Weather &w : rows) {
        report.first = report.first ? std::min(*report.first, w.time) : w.time;
        report.last = report.last ? std::max(*report.last, w.time) : w.time;
    }
    describeHumidity(rows, lines, report);
    describeGaps(rows, report);
}

QStringList WeatherReport::lines() const
{
    QStringList text;
    text << QString(plural(rowsRead, QStringLiteral("row read"), QStringLiteral("rows read")) +
                    QStringLiteral(", ") + QString::number(accepted) +
                    QStringLiteral(" accepted, ") +
                    plural(duplicates, QStringLiteral("duplicate"), QStringLiteral("duplicates")) +
                    QStringLiteral(" left out."));
    if (first && last)
        text << QString(QStringLiteral("From ") + isoUtc(first->seconds()) +
                        QStringLiteral(" to ") + isoUtc(last->seconds()) + QLatin1Char('.'));
    if (humidityDisagrees > 0)
        text << QStringLiteral("In %1 of %2 rows the humidity disagrees with temperature and dew "
                               "point by more than 1 point (worst: %3 points, line %4). The dew "
                               "point is used; the humidity is kept as reported.")
                    .arg(humidityDisagrees)
                    .arg(humidityChecked)
                    .arg(QString::number(worstHumidity, 'f', 1))
                    .arg(worstHumidityLine);
    if (dewAboveTemperature > 0)
        text << QStringLiteral("In %1 rows the dew point is above the temperature.")
                    .arg(dewAboveTemperature);
    QStringList lacking;
    for (const WeatherQuantity &quantity : weatherQuantities())
        if (missing.value(quantity.key) > 0)
            lacking << QString(quantity.label + QLatin1Char(' ') +
                               QString::number(missing.value(quantity.key)));
    if (!lacking.isEmpty())
        text << QString(QStringLiteral("Missing values: ") + lacking.join(QStringLiteral(", ")) +
                        QLatin1Char('.'));
    if (!setMissing.isEmpty()) {
        text << QString(
            plural(setMissing.count, QStringLiteral("value"), QStringLiteral("values")) +
            QStringLiteral(" cannot be true and will be missing:"));
        for (const domain::Problem &problem : setMissing.problems())
            text << problem.message;
    }
    if (gapCount > 0)
        text << QString(plural(gapCount, QStringLiteral("gap"), QStringLiteral("gaps")) +
                        QStringLiteral(", the longest of ") +
                        domain::formatDuration(gaps.first().to - gaps.first().from) +
                        QStringLiteral(" after ") + isoUtc(gaps.first().from.seconds()) +
                        QLatin1Char('.'));
    if (ambiguousTimes > 0)
        text << QStringLiteral("%1 times lie in the hour that a clock change repeats; the order "
                               "of the rows tells first from second.")
                    .arg(ambiguousTimes);
    return text + notes;
}

WeatherMerge mergeWeather(const domain::Books &books, const QVector<Weather> &rows)
{
    QMap<Key, domain::RecordId> known;
    for (const Weather &w : books.weather)
        known.insert(keyOf(w), w.id);
    WeatherMerge merge;
    for (const Weather &row : rows) {
        const auto it = known.constFind(keyOf(row));
        if (it == known.constEnd()) {
            merge.fresh.append(row);
            merge.fresh.last().id = 0;
            continue;
        }
        const Weather old = books.weather.value(*it);
        Weather merged = row;
        merged.id = old.id;
        merged.typed = old.typed;
        fill(merged.temperature, old.temperature);
        fill(merged.dewPoint, old.dewPoint);
        fill(merged.humidity, old.humidity);
        fill(merged.wind, old.wind);
        fill(merged.gust, old.gust);
        fill(merged.windFrom, old.windFrom);
        fill(merged.rain, old.rain);
        fill(merged.pressure, old.pressure);
        if (sameObservation(merged, old))
            ++merge.identical;
        else
            merge.updated.append(merged);
    }
    return merge;
}

} // namespace rickyard::exchange
