#include "models/exchange/weather_import.h"

#include "models/domain/quantities/units.h"
#include "models/exchange/csv_reader.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/weather_row.h"

namespace rickyard::exchange
{

using domain::Weather;

namespace
{

// One run over one file: the reader, the mapping resolved to column numbers, and what was found.
class Run
{
public:
    Run(const QByteArray &bytes, const WeatherMapping &mapping, const QString &fileName)
        : m_mapping(mapping), m_file(fileName), m_reader(bytes, optionsOf(mapping)),
          m_rows(mapping, fileName)
    {
    }

    WeatherImport result;

    void go(const Progress &progress, const std::atomic_bool *cancel);

private:
    static CsvOptions optionsOf(const WeatherMapping &mapping)
    {
        CsvOptions options;
        options.separator = mapping.separator;
        return options;
    }
    bool readHeader();
    void takeRow(const CsvRow &row);
    void take(const Weather &weather, qint64 line);
    void finish();

    const WeatherMapping &m_mapping;
    QString m_file;
    CsvReader m_reader;
    WeatherRowReader m_rows;
    struct Taken {
        Weather weather;
        qint64 line = 0;
    };
    QMap<QPair<QString, qint64>, Taken> m_taken; // by place and time
};

bool Run::readHeader()
{
    CsvRow row;
    for (int n = 0; n < m_mapping.headerLine; ++n) {
        if (!m_reader.next(row)) {
            result.refused.add({m_file, n + 1, 0, {}, {}, QStringLiteral("a row of headers"), {}});
            return false;
        }
    }
    return m_rows.bind(m_mapping.headerLine > 0 ? row.cells : QStringList(), row.line,
                       result.refused);
}

void Run::takeRow(const CsvRow &row)
{
    ++result.report.rowsRead;
    if (m_mapping.headerLine > 0 && row.cells.size() != m_rows.width()) {
        result.refused.add({m_file,
                            row.line,
                            0,
                            {},
                            QStringLiteral("%1 cells").arg(row.cells.size()),
                            QStringLiteral("%1 cells, as in the header").arg(m_rows.width()),
                            {}});
        return;
    }
    Refusals refused;
    const std::optional<Weather> weather = m_rows.read(row, refused, result.report);
    if (weather)
        take(*weather, row.line);
    else
        result.refused.add(refused);
}

void Run::take(const Weather &weather, qint64 line)
{
    const QPair<QString, qint64> key(weather.place, weather.time.seconds());
    const auto it = m_taken.constFind(key);
    if (it == m_taken.constEnd()) {
        m_taken.insert(key, {weather, line});
        return;
    }
    if (sameObservation(it->weather, weather)) {
        ++result.report.duplicates;
        return;
    }
    result.refused.add({m_file,
                        line,
                        0,
                        {},
                        isoUtc(weather.time.seconds()),
                        QStringLiteral("one row for each time; line %1 has other values for this "
                                       "one")
                            .arg(it->line),
                        QStringLiteral("time")});
}

void Run::finish()
{
    if (m_reader.error())
        result.refused.add(
            {m_file,
             m_reader.error()->line,
             0,
             {},
             {},
             QString(QStringLiteral("well-formed text, but at character %1 there is ")
                         .arg(m_reader.error()->column) +
                     m_reader.error()->message),
             {}});
    if (!m_reader.encodingNote().isEmpty())
        result.report.notes << m_reader.encodingNote();
    // An error in the text itself refuses the file even when single rows may be left out: what
    // stands behind it was never read.
    const bool refuse = m_reader.error() || (m_mapping.strict && !result.refused.isEmpty());
    if (!refuse && m_taken.isEmpty() && result.refused.isEmpty())
        result.refused.add({m_file, 0, 0, {}, {}, QStringLiteral("at least one row"), {}});
    if (refuse || m_taken.isEmpty())
        return;
    result.rows.reserve(m_taken.size());
    QVector<qint64> lines;
    for (const Taken &taken : std::as_const(m_taken)) {
        result.rows.append(taken.weather);
        lines.append(taken.line);
    }
    describe(result.rows, lines, result.report);
    result.ok = true;
}

void Run::go(const Progress &progress, const std::atomic_bool *cancel)
{
    constexpr int stride = 256; // rows between two looks at the cancel flag
    for (const domain::Problem &problem : m_mapping.check())
        result.refused.add({m_file, 0, 0, QStringLiteral("mapping"), problem.field,
                            problem.message.chopped(1), problem.field});
    if (!result.refused.isEmpty() || !readHeader()) {
        if (m_reader.error())
            result.refused.add(
                {m_file, m_reader.error()->line, 0, {}, {}, m_reader.error()->message, {}});
        return;
    }
    CsvRow row;
    while (m_reader.next(row)) {
        if (result.report.rowsRead % stride == 0) {
            if (cancel != nullptr && cancel->load()) {
                result.cancelled = true;
                return;
            }
            if (progress)
                progress(m_reader.position(), m_reader.size());
        }
        takeRow(row);
    }
    finish();
    if (progress)
        progress(m_reader.size(), m_reader.size());
}

} // namespace

WeatherImport readWeather(const QByteArray &bytes, const WeatherMapping &mapping,
                          const QString &fileName, const Progress &progress,
                          const std::atomic_bool *cancel)
{
    Run run(bytes, mapping, fileName);
    run.go(progress, cancel);
    return run.result;
}

} // namespace rickyard::exchange
