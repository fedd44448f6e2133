// A foreign weather file to weather records, by a mapping. Strict: one row that cannot be taken
// refuses the file, and nothing comes back but the reasons.
#pragma once

#include "models/domain/records/books.h"
#include "models/exchange/refusal.h"
#include "models/exchange/weather_mapping.h"

#include <atomic>
#include <functional>
#include <optional>

namespace rickyard::exchange
{

struct WeatherGap {
    domain::Instant from; // last record before
    domain::Instant to;   // first record after
};

struct WeatherReport {
    qint64 rowsRead = 0;
    qint64 accepted = 0;
    qint64 duplicates = 0; // the same time and the same values again: left out
    // Rows whose humidity differs from that of temperature and dew point by more than 1 point.
    // The dew point is used; the humidity is kept as reported.
    qint64 humidityChecked = 0;
    qint64 humidityDisagrees = 0;
    double worstHumidity = 0; // points of relative humidity
    qint64 worstHumidityLine = 0;
    qint64 dewAboveTemperature = 0; // rows with a dew point more than 0.6 K over the temperature
    QMap<QString, qint64> missing;  // quantity key -> rows without it
    std::optional<domain::Instant> first;
    std::optional<domain::Instant> last;
    domain::Duration usualStep; // between records, the most frequent
    qint64 gapCount = 0;        // steps longer than the usual one
    QVector<WeatherGap> gaps;   // the longest hundred
    Refusals setMissing;        // impossible values taken as missing (OutOfRange::Missing)
    qint64 ambiguousTimes = 0;  // the hour that a clock change repeats; told apart by row order
    QStringList notes;          // sentences for a person

    [[nodiscard]] QStringList lines() const; // all of it, in sentences
};

struct WeatherImport {
    QVector<domain::Weather> rows; // by time, without ids; empty when refused
    WeatherReport report;
    Refusals refused;
    bool cancelled = false;
    bool ok = false; // rows may be taken
};

using Progress = std::function<void(qint64 done, qint64 total)>;

// `fileName` is used in messages and, when the mapping names no source, as the records' source.
WeatherImport readWeather(const QByteArray &bytes, const WeatherMapping &mapping,
                          const QString &fileName = {}, const Progress &progress = {},
                          const std::atomic_bool *cancel = nullptr);

// What the rows change in a yard. Rows are the same record when place, time and kind (observed or
// normal) agree; a value that the new row lacks keeps its old one.
struct WeatherMerge {
    QVector<domain::Weather> fresh;   // ids 0
    QVector<domain::Weather> updated; // with the ids of those they replace
    qint64 identical = 0;
};
WeatherMerge mergeWeather(const domain::Books &books, const QVector<domain::Weather> &rows);

} // namespace rickyard::exchange
