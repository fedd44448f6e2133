// What a file would change in a yard, worked out before anything is written: rows to put, or the
// reasons why nothing can be taken.
#pragma once

#include "models/exchange/table_csv.h"
#include "models/exchange/weather_formats.h"
#include "models/exchange/weather_import.h"

namespace rickyard::app {

struct ImportPlan {
    QVector<domain::Row> rows; // only those that are new or differ
    domain::Problems refused;  // file, line, column, value, what was expected
    QStringList said;          // how the file was read, for the person
    qint64 added = 0;
    qint64 changed = 0;
    qint64 same = 0;
};

// A file with this table's own headers, as exported.
bool isOwnTable(const QByteArray &bytes, domain::TableId table);
ImportPlan planTable(const domain::Books &books, domain::TableId table, const QByteArray &bytes,
                     const QString &fileName);
ImportPlan planBooks(const domain::Books &books, const QVector<exchange::NamedFile> &files);

struct WeatherRequest {
    std::optional<exchange::WeatherMapping> profile; // else guessed
    QString place;
    QString zone;                     // IANA
    bool impossibleIsMissing = false; // keep the rest of a row whose value cannot be true
    std::optional<exchange::WeatherFormat> format; // else recognised, when there is no profile
    std::optional<domain::Instant> about;          // METAR: when the reports are from
    bool realYear = false;                         // EPW: observations, not a typical year
};
ImportPlan planWeather(const domain::Books &books, const QByteArray &bytes, const QString &fileName,
                       const WeatherRequest &request);

} // namespace rickyard::app
