// How the columns of a foreign weather file become weather records: a plain value that a dialog
// edits, saved as JSON in an import profile (docs/file-formats.md).
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/quantities/quantity.h"

#include <QByteArray>
#include <QJsonObject>
#include <QString>
#include <QStringList>
#include <QVector>

namespace rickyard::exchange
{

// ImportProfile::kind of a saved weather mapping.
constexpr char kWeatherProfileKind[] = "weather";

enum class TimeColumns { One, Parts };
enum class TimeZoneKind { Utc, Zone, FixedOffset };
// What to do with a number that cannot be true (a wind of 1000 mph): refuse its row, or keep the
// row, count that one value as missing and list it in the report.
enum class OutOfRange { Refuse, Missing };

// One column of the file as one quantity of a weather record.
struct QuantityColumn {
    QString quantity; // field key of the weather table: "temperature", "dew_point", "humidity", ...
    QString column;   // header of the file, or its number from 1 in a file without headers
    QString unit;     // unit key of the quantity's dimension: "degF", "mph", "pct"
    bool operator==(const QuantityColumn &) const = default;
};

struct WeatherMapping {
    QChar separator = QLatin1Char(',');
    QChar decimal = QLatin1Char('.');
    int headerLine = 1; // row of the headers, from 1; 0: the file has none
    QStringList missing = {QString(), QStringLiteral("NA"), QStringLiteral("M"),
                           QStringLiteral("-9999")}; // compared without case; numbers by value

    TimeColumns timeColumns = TimeColumns::One;
    QString timeColumn;
    QString timeFormat; // Qt format such as "yyyy-MM-dd HH:mm"; empty: ISO 8601
    QString yearColumn; // TimeColumns::Parts
    QString monthColumn;
    QString dayColumn;
    QString hourColumn;
    QString minuteColumn; // may be empty
    // For times that do not carry their own offset (Z, +02:00).
    TimeZoneKind zoneKind = TimeZoneKind::Utc;
    QString zone;          // IANA, with TimeZoneKind::Zone
    int offsetSeconds = 0; // east of UTC, with TimeZoneKind::FixedOffset

    QVector<QuantityColumn> columns;
    QString place;       // of every row, unless placeColumn is given
    QString placeColumn; // may be empty
    bool asNormals = false;
    QString source;     // kept with every record
    bool strict = true; // one refused row refuses the file; false: refused rows are left out
    OutOfRange outOfRange = OutOfRange::Refuse;

    [[nodiscard]] const QuantityColumn *columnFor(const QString &quantity) const;
    // What is wrong with the mapping itself (no time column, unknown unit, ...); `field` is the
    // JSON key at fault, "columns.temperature" for a quantity.
    [[nodiscard]] domain::Problems check() const;
    bool operator==(const WeatherMapping &) const = default;
};

// The quantities that a column can be mapped to, in the order shown.
struct WeatherQuantity {
    QString key;
    QString label;
    domain::Dimension dimension = domain::Dimension::Plain;
};
const QVector<WeatherQuantity> &weatherQuantities();

QJsonObject toJson(const WeatherMapping &mapping);
QString toText(const WeatherMapping &mapping); // for ImportProfile::mapping
domain::Outcome<WeatherMapping> mappingFromJson(const QJsonObject &json);
domain::Outcome<WeatherMapping> mappingFromText(const QString &text);

struct MappingGuess {
    WeatherMapping mapping;
    QStringList notes; // what was taken for granted, in words
};
// From common header words and the values below them. Times without an offset are taken in
// `yardZone` (IANA), or in UTC when it is empty; of two time columns the one in UTC is taken.
MappingGuess guessMapping(const QStringList &header, const QVector<QStringList> &firstRows,
                          const QString &yardZone = {});
// The same with separator and decimal sign detected. Empty header: the file could not be read.
struct WeatherPreview {
    QStringList header;
    QVector<QStringList> rows;
    QString note; // encoding, or the reading error
};
WeatherPreview preview(const QByteArray &bytes, QChar separator = {}, int headerLine = 1,
                       int rows = 50);
MappingGuess guessMapping(const QByteArray &bytes, const QString &yardZone = {});

} // namespace rickyard::exchange
