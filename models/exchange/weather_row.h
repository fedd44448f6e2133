// One row of a foreign weather file as one record: the inner part of weather_import.h.
#pragma once

#include "models/exchange/csv_reader.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/weather_import.h"

#include <QSet>

namespace rickyard::domain
{
struct Unit;
}

namespace rickyard::exchange
{

class WeatherRowReader
{
public:
    WeatherRowReader(const WeatherMapping &mapping, const QString &fileName);

    // Finds the mapped columns; false when one is not there (said in `refused`). Without headers
    // columns are named by their number from 1.
    bool bind(const QStringList &header, qint64 line, Refusals &refused);
    [[nodiscard]] qsizetype width() const { return m_header.size(); }

    // Nothing when the row is refused. Counts missing values and repeated hours in `report`.
    std::optional<domain::Weather> read(const CsvRow &row, Refusals &refused,
                                        WeatherReport &report);

private:
    struct Column {
        qsizetype index = -1;
        QString name;
        QString quantity; // field key; "time" and "place" for those
        int field = -1;   // in the weather table
        const domain::Unit *unit = nullptr;
        domain::FieldSpec spec;
    };

    qsizetype find(const QString &name, const QString &field, qint64 line, Refusals &refused);
    [[nodiscard]] bool isMissing(const QString &cell) const;
    [[nodiscard]] Refusal refusal(const CsvRow &row, qsizetype index, const QString &field,
                                  const QString &expected) const;
    bool readQuantity(const CsvRow &row, const Column &column, domain::Row &record,
                      Refusals &refused, WeatherReport &report) const;
    std::optional<CivilTime> civilTime(const CsvRow &row, Refusals &refused) const;
    std::optional<CivilTime> timeFromParts(const CsvRow &row, Refusals &refused) const;
    std::optional<qint64> instant(const CsvRow &row, const QString &place, Refusals &refused,
                                  WeatherReport &report);

    const WeatherMapping &m_mapping;
    QString m_file;
    QStringList m_header;
    QSet<QString> m_missing; // lower case
    QVector<double> m_missingNumbers;
    QVector<Column> m_columns;
    qsizetype m_time = -1;
    QVector<qsizetype> m_parts; // year, month, day, hour and perhaps minute
    qsizetype m_place = -1;
    ZoneClock m_clock;
    // By place: the row before, to tell the two readings of a repeated hour.
    struct Before {
        qint64 seconds = 0;
        bool descending = false; // newest row first
    };
    QMap<QString, Before> m_before;
    [[nodiscard]] qint64 byOrder(const ResolvedTime &local, const QString &place) const;
    void remember(const QString &place, qint64 seconds);
};

// Every measured quantity is the same; where it came from is not looked at.
bool sameObservation(const domain::Weather &a, const domain::Weather &b);
// Fills the parts of the report that need all rows: span, gaps, humidity.
void describe(const QVector<domain::Weather> &rows, const QVector<qint64> &lines,
              WeatherReport &report);

} // namespace rickyard::exchange
