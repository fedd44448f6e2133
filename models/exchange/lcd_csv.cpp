#include "models/exchange/lcd_csv.h"

#include "models/exchange/csv_reader.h"
#include "models/exchange/foreign_values.h"

#include <QFileInfo>

#include <array>

namespace rickyard::exchange {

using domain::Weather;

namespace {

struct LcdColumn {
    const char *quantity;
    const char *header;
    const char *unit;   // of the older edition
    const char *metric; // of the second
};
constexpr std::array<LcdColumn, 9> kLcdColumns = {
    {{"temperature", "HourlyDryBulbTemperature", "degF", "degC"},
     {"dew_point", "HourlyDewPointTemperature", "degF", "degC"},
     {"humidity", "HourlyRelativeHumidity", "pct", "pct"},
     {"wind", "HourlyWindSpeed", "mph", "m/s"},
     {"gust", "HourlyWindGustSpeed", "mph", "m/s"},
     {"wind_from", "HourlyWindDirection", "deg", "deg"},
     {"rain", "HourlyPrecipitation", "in", "mm"},
     {"pressure", "HourlySeaLevelPressure", "inHg", "hPa"},
     {"pressure", "HourlyAltimeterSetting", "inHg", "hPa"}}};
// No air presses 60 inches of mercury, and none as little as 60 hPa.
constexpr double kLcdPressureDivide = 60.0;

struct LcdValue {
    enum Kind { Missing, Number, Trace, Variable, Unreadable } kind = Missing;
    double number = 0;
    bool suspect = false;
};

LcdValue lcdValue(const QString &cell)
{
    QString text = cell.trimmed();
    LcdValue value;
    if (text.isEmpty() || text == QLatin1String("*") || text == QLatin1String("M"))
        return value;
    if (text == QLatin1String("VRB"))
        return {LcdValue::Variable, 0, false};
    if (text.endsWith(QLatin1Char('s'))) {
        value.suspect = true;
        text.chop(1);
    } else if (text.size() > 1 && (text.back().isLetter() || text.back() == QLatin1Char('*'))) {
        text.chop(1);
    }
    if (text == QLatin1String("T")) {
        value.kind = LcdValue::Trace;
        return value;
    }
    const auto number = readNumber(text, QLatin1Char('.'));
    value.kind = number ? LcdValue::Number : LcdValue::Unreadable;
    value.number = number.value_or(0);
    return value;
}

class LcdRun
{
public:
    explicit LcdRun(WeatherGather &gather)
        : m_gather(gather), m_clock(gather.options().zone.toLatin1())
    {
    }
    bool bind(const CsvRow &header);
    void findUnits(const QByteArray &bytes);
    void readRow(const CsvRow &row);
    void conclude();

private:
    [[nodiscard]] ForeignCell cellOf(const CsvRow &row, qsizetype index) const
    {
        return {row.line, static_cast<int>(index) + 1, m_header.value(index),
                row.cells.value(index)};
    }
    std::optional<domain::Instant> momentOf(const CsvRow &row);
    bool readColumn(const CsvRow &row, std::size_t which, Weather &w);

    WeatherGather &m_gather;
    ZoneClock m_clock;
    QStringList m_header;
    std::array<qsizetype, kLcdColumns.size()> m_at{};
    qsizetype m_date = -1;
    qsizetype m_type = -1;
    qsizetype m_name = -1;
    bool m_metric = false;
    qint64 m_suspect = 0;
    qint64 m_summaries = 0;
};

bool LcdRun::bind(const CsvRow &header)
{
    for (const QString &name : header.cells)
        m_header << name.trimmed();
    m_date = m_header.indexOf(QStringLiteral("DATE"));
    m_type = m_header.indexOf(QStringLiteral("REPORT_TYPE"));
    m_name = m_header.indexOf(QStringLiteral("NAME"));
    if (m_name < 0)
        m_name = m_header.indexOf(QStringLiteral("STATION"));
    bool any = false;
    for (std::size_t i = 0; i < kLcdColumns.size(); ++i) {
        m_at[i] = m_header.indexOf(QLatin1String(kLcdColumns[i].header));
        any = any || m_at[i] >= 0;
    }
    if (m_date < 0 || !any) {
        m_gather.refuse({header.line, 0, {}, header.cells.join(QLatin1Char(',')).left(60)},
                        QStringLiteral("headers with DATE and HourlyDryBulbTemperature"));
        return false;
    }
    // An empty zone would be valid: it is UTC.
    const bool zone = !m_gather.options().zone.isEmpty() && m_clock.isValid();
    if (m_gather.options().offsetSeconds || zone)
        return true;
    m_gather.refuse({header.line, static_cast<int>(m_date) + 1, QStringLiteral("DATE"), {}},
                    QStringLiteral("a time zone to be given: these times are the station's "
                                   "standard time and do not say which"),
                    QStringLiteral("time"));
    return false;
}

// The first pressure tells the edition.
void LcdRun::findUnits(const QByteArray &bytes)
{
    CsvReader reader(bytes);
    CsvRow row;
    reader.next(row);
    const qsizetype station = m_header.indexOf(QStringLiteral("HourlyStationPressure"));
    while (reader.next(row)) {
        for (const qsizetype at : {station, m_at[7], m_at[8]}) {
            const LcdValue value = at < 0 ? LcdValue() : lcdValue(row.cells.value(at));
            if (value.kind != LcdValue::Number)
                continue;
            m_metric = value.number > kLcdPressureDivide;
            m_gather.note(m_metric
                              ? QStringLiteral("Pressures are in hPa, so the file is taken as "
                                               "metric: °C, m/s, mm.")
                              : QStringLiteral("Pressures are in inches of mercury, so the file "
                                               "is taken as in °F, mph and inches."));
            return;
        }
    }
    m_gather.note(QStringLiteral("There is no pressure to tell the units by: °F, mph and inches "
                                 "are taken."));
}

std::optional<domain::Instant> LcdRun::momentOf(const CsvRow &row)
{
    const auto time = readIsoTime(row.cells.value(m_date));
    if (!time) {
        m_gather.refuse(cellOf(row, m_date), QStringLiteral("a time such as 2026-01-25T14:51:00"),
                        QStringLiteral("time"));
        return std::nullopt;
    }
    const qint64 naive = QDateTime(time->date, time->time, Qt::UTC).toSecsSinceEpoch();
    const int offset = time->offsetSeconds                ? *time->offsetSeconds
                       : m_gather.options().offsetSeconds ? *m_gather.options().offsetSeconds
                                                          : m_clock.standardOffset(time->date);
    return domain::Instant::ofSeconds(naive - offset);
}

bool LcdRun::readColumn(const CsvRow &row, std::size_t which, Weather &w)
{
    const LcdColumn &column = kLcdColumns[which];
    const qsizetype at = m_at[which];
    if (at < 0)
        return true;
    const bool pressure = qstrcmp(column.quantity, "pressure") == 0;
    if (pressure && w.pressure)
        return true;
    const bool direction = qstrcmp(column.quantity, "wind_from") == 0;
    if (direction && (!w.wind || w.wind->isZero()))
        return true; // calm has no direction
    const LcdValue value = lcdValue(row.cells.value(at));
    m_suspect += value.suspect ? 1 : 0;
    switch (value.kind) {
    case LcdValue::Variable:
        return direction ||
               m_gather.unreadable(column.quantity, cellOf(row, at), QStringLiteral("a number"));
    case LcdValue::Missing:
        if (!pressure || which + 1 == kLcdColumns.size())
            m_gather.missing(column.quantity);
        return true;
    case LcdValue::Unreadable:
        return m_gather.unreadable(column.quantity, cellOf(row, at), QStringLiteral("a number"));
    case LcdValue::Trace:
    case LcdValue::Number:
        break;
    }
    return m_gather.set(w, column.quantity, value.number, m_metric ? column.metric : column.unit,
                        cellOf(row, at));
}

void LcdRun::readRow(const CsvRow &row)
{
    const QString type = row.cells.value(m_type).trimmed();
    if (type == QLatin1String("SOD") || type == QLatin1String("SOM")) {
        ++m_summaries;
        return;
    }
    m_gather.rowRead();
    if (row.cells.size() != m_header.size()) {
        m_gather.refuse(
            {row.line, 0, {}, cellsInWords(row.cells.size())},
            QString(cellsInWords(m_header.size()) + QStringLiteral(", as in the header")));
        return;
    }
    const auto moment = momentOf(row);
    if (!moment)
        return;
    Weather w;
    w.time = *moment;
    w.place = m_gather.options().place;
    if (w.place.isEmpty())
        w.place = row.cells.value(m_name).trimmed();
    if (w.place.isEmpty())
        w.place = QFileInfo(m_gather.fileName()).completeBaseName();
    bool good = true;
    for (std::size_t i = 0; i < kLcdColumns.size(); ++i)
        good = readColumn(row, i, w) && good;
    // Reports between the hours repeat part of the hour's rain: summed up it would count twice.
    const bool routine = type.isEmpty() || type == QLatin1String("FM-15");
    if (!routine)
        w.rain.reset();
    if (good)
        m_gather.take(w, cellOf(row, m_date), routine ? 1 : 0);
}

void LcdRun::conclude()
{
    if (m_summaries > 0)
        m_gather.note(QStringLiteral("%1 summaries of days and months left out.").arg(m_summaries));
    if (m_suspect > 0)
        m_gather.note(QStringLiteral("%1 values are marked as suspect by the source; they are "
                                     "taken as they are.")
                          .arg(m_suspect));
}

} // namespace

WeatherImport readLcd(const QByteArray &bytes, const WeatherReadOptions &options,
                      const QString &fileName, const Progress &progress,
                      const std::atomic_bool *cancel)
{
    WeatherGather gather(options, fileName);
    CsvReader reader(bytes);
    CsvRow row;
    LcdRun run(gather);
    if (!reader.next(row)) {
        gather.refuse({1, 0, {}, {}}, reader.error() ? reader.error()->message
                                                     : QStringLiteral("a row of headers"));
        return gather.finish();
    }
    if (!run.bind(row))
        return gather.finish();
    run.findUnits(bytes);
    while (reader.next(row)) {
        if (gather.tick(reader.position(), reader.size(), progress, cancel))
            return gather.finish();
        run.readRow(row);
    }
    if (reader.error())
        gather.refuse(
            {reader.error()->line, 0, {}, {}},
            QString(QStringLiteral("well-formed text, but there is ") + reader.error()->message));
    run.conclude();
    return gather.finish();
}

bool looksLikeLcd(const QByteArray &head)
{
    CsvReader reader(head);
    CsvRow row;
    return reader.next(row) && row.cells.contains(QStringLiteral("DATE")) &&
           row.cells.contains(QStringLiteral("HourlyDryBulbTemperature"));
}

} // namespace rickyard::exchange
