// Records of one weather file on their way into a WeatherImport: values are checked against the
// ranges of the weather table, and records of one place and time settle to one.
#pragma once

#include "models/exchange/weather_import.h"

namespace rickyard::exchange {

// How a file of a known format is read; see weather_formats.h.
struct WeatherReadOptions {
    QString place;  // empty: the station that the file names, else the file's name
    QString source; // kept with every record; empty: the file's name
    // METAR: a moment near the reports, which hold day and time only. Not needed where each report
    // stands behind a date.
    std::optional<domain::Instant> about;
    // Local climatological data: the station's standard time, as seconds east of UTC, or else the
    // IANA zone whose standard time it is.
    std::optional<int> offsetSeconds;
    QString zone;
    bool asNormals = true; // EPW: a typical year; false: a year as it was
    bool strict = true;    // one refused report or row refuses the file
    OutOfRange outOfRange = OutOfRange::Missing;
};

// Where a value stands in its file.
struct ForeignCell {
    qint64 line = 0;
    int column = 0; // from 1; 0: not in columns
    QString name;
    QString value;
};

class WeatherGather
{
public:
    WeatherGather(WeatherReadOptions options, QString fileName);

    // `value` in `unit` (a unit key of the quantity's dimension) into the record. A value that
    // cannot be true is refused (false) or left missing and listed, as the options say.
    bool set(domain::Weather &record, const char *quantity, double value, const char *unit,
             const ForeignCell &cell);
    // A value that cannot be read at all; handled as one that cannot be true.
    bool unreadable(const char *quantity, const ForeignCell &cell, const QString &expected);
    void missing(const char *quantity) { ++m_result.report.missing[QLatin1String(quantity)]; }
    // The row or report as a whole cannot be taken.
    void refuse(const ForeignCell &cell, const QString &expected, const QString &field = {});

    // The file as text, with what was odd about its encoding noted; refused, and nothing, when it
    // is no text.
    std::optional<QString> text(const QByteArray &bytes);
    void rowRead() { ++m_result.report.rowsRead; }
    // Of two records of one place and time the one of the higher rank stays, else the later in the
    // file; what it lacks is filled from the other one.
    void take(domain::Weather record, const ForeignCell &cell, int rank = 0);
    void note(const QString &sentence) { m_result.report.notes << sentence; }

    // True when the work was cancelled.
    bool tick(qint64 done, qint64 total, const Progress &progress, const std::atomic_bool *cancel);
    [[nodiscard]] const WeatherReadOptions &options() const { return m_options; }
    [[nodiscard]] const QString &fileName() const { return m_file; }
    WeatherImport finish(); // once

private:
    struct Taken {
        domain::Weather weather;
        qint64 line = 0;
        int rank = 0;
    };
    bool report(const char *quantity, const ForeignCell &cell, const QString &expected);

    WeatherReadOptions m_options;
    QString m_file;
    WeatherImport m_result;
    QMap<QPair<QString, qint64>, Taken> m_taken; // by place and time
    qint64 m_settled = 0;
    qint64 m_ticks = 0;
};

} // namespace rickyard::exchange
