#include "models/exchange/epw.h"

#include "models/exchange/foreign_text.h"
#include "models/exchange/foreign_values.h"

#include <QDateTime>

#include <array>

namespace rickyard::exchange {

using domain::Weather;

namespace {

constexpr int kEpwHeaderLines = 8;
constexpr int kEpwColumns = 22; // as far as we read

struct EpwColumn {
    const char *quantity;
    int column; // from 1
    const char *name;
    const char *unit;
    double missing; // this and above
};
constexpr std::array<EpwColumn, 6> kEpwFields = {{{"temperature", 7, "dry bulb", "degC", 99.9},
                                                  {"dew_point", 8, "dew point", "degC", 99.9},
                                                  {"humidity", 9, "relative humidity", "pct", 999},
                                                  {"pressure", 10, "pressure", "Pa", 999999},
                                                  {"wind", 22, "wind speed", "m/s", 999},
                                                  {"wind_from", 21, "wind direction", "deg", 999}}};

class EpwRun
{
public:
    EpwRun(WeatherGather &gather, const QVector<TextLine> &lines) : m_gather(gather), m_lines(lines)
    {
    }
    bool readHeader();
    void readRow(const TextLine &line);

private:
    std::optional<domain::Instant> momentOf(const TextLine &line, const QStringList &cells);
    bool readValues(const TextLine &line, const QStringList &cells, Weather &w);

    WeatherGather &m_gather;
    const QVector<TextLine> &m_lines;
    QString m_place;
    qint64 m_offset = 0; // seconds east of UTC
    int m_anHour = 1;    // rows
};

bool EpwRun::readHeader()
{
    const QStringList cells =
        m_lines.isEmpty() ? QStringList() : m_lines.first().text.split(QLatin1Char(','));
    if (m_lines.size() < kEpwHeaderLines || cells.value(0).trimmed() != QLatin1String("LOCATION")) {
        m_gather.refuse({1, 1, {}, cells.value(0)},
                        QStringLiteral("eight header lines, the first with LOCATION"));
        return false;
    }
    const auto zone = readNumber(cells.value(8), QLatin1Char('.'));
    if (!zone || std::abs(*zone) > 14) {
        m_gather.refuse({1, 9, QStringLiteral("time zone"), cells.value(8)},
                        QStringLiteral("hours east of UTC"), QStringLiteral("time"));
        return false;
    }
    m_offset = qRound64(*zone * 3600);
    const QString &given = m_gather.options().place;
    m_place = given.isEmpty() ? cells.value(1).trimmed() : given;
    if (m_place.isEmpty())
        m_place = m_gather.fileName();
    const QStringList periods = m_lines.at(kEpwHeaderLines - 1).text.split(QLatin1Char(','));
    m_anHour = qBound(1, periods.value(2).trimmed().toInt(), 60);
    return true;
}

std::optional<domain::Instant> EpwRun::momentOf(const TextLine &line, const QStringList &cells)
{
    std::array<int, 5> parts{};
    for (int i = 0; i < 5; ++i) {
        bool ok = false;
        parts[static_cast<std::size_t>(i)] = cells.at(i).trimmed().toInt(&ok);
        if (!ok) {
            m_gather.refuse({line.number, i + 1, QStringLiteral("time"), cells.at(i)},
                            QStringLiteral("a whole number"), QStringLiteral("time"));
            return std::nullopt;
        }
    }
    const bool typical = m_gather.options().asNormals;
    const QDate date(typical ? kTypicalYear : parts[0], parts[1], parts[2]);
    if (!date.isValid() || parts[3] < 1 || parts[3] > 24 || parts[4] < 0 || parts[4] > 60) {
        // The 29th of February of a typical year has no place in a common one.
        m_gather.refuse(
            {line.number, 0, QStringLiteral("time"), line.text.section(QLatin1Char(','), 0, 4)},
            QStringLiteral("a day of the calendar, an hour from 1 to 24 and a minute"),
            QStringLiteral("time"));
        return std::nullopt;
    }
    // Rows of whole hours stand at the hour's end whatever their minute (0 and 60 are both seen).
    const int minutes = m_anHour > 1 ? (parts[3] - 1) * 60 + parts[4] : parts[3] * 60;
    return domain::Instant::ofSeconds(QDateTime(date, QTime(0, 0), Qt::UTC).toSecsSinceEpoch() +
                                      minutes * 60 - m_offset);
}

bool EpwRun::readValues(const TextLine &line, const QStringList &cells, Weather &w)
{
    bool good = true;
    for (const EpwColumn &field : kEpwFields) {
        const QString &text = cells.at(field.column - 1);
        const ForeignCell cell{line.number, field.column, QLatin1String(field.name), text};
        const auto value = readNumber(text, QLatin1Char('.'));
        if (!value)
            good = m_gather.unreadable(field.quantity, cell, QStringLiteral("a number")) && good;
        else if (*value >= field.missing)
            m_gather.missing(field.quantity);
        else if (field.column != 21 || (w.wind && w.wind->base() > 0)) // calm has no direction
            good = m_gather.set(w, field.quantity, *value, field.unit, cell) && good;
    }
    return good;
}

void EpwRun::readRow(const TextLine &line)
{
    m_gather.rowRead();
    const QStringList cells = line.text.split(QLatin1Char(','));
    if (cells.size() < kEpwColumns) {
        m_gather.refuse({line.number, 0, {}, cellsInWords(cells.size())},
                        QStringLiteral("at least %1 cells").arg(kEpwColumns));
        return;
    }
    const auto moment = momentOf(line, cells);
    if (!moment)
        return;
    Weather w;
    w.place = m_place;
    w.time = *moment;
    w.normal = m_gather.options().asNormals;
    if (readValues(line, cells, w))
        m_gather.take(w, {line.number, 0, {}, line.text.section(QLatin1Char(','), 0, 4)});
}

} // namespace

WeatherImport readEpw(const QByteArray &bytes, const WeatherReadOptions &options,
                      const QString &fileName, const Progress &progress,
                      const std::atomic_bool *cancel)
{
    WeatherGather gather(options, fileName);
    const std::optional<QString> text = gather.text(bytes);
    if (!text)
        return gather.finish();
    const QVector<TextLine> lines = linesOf(*text);
    EpwRun run(gather, lines);
    if (!run.readHeader())
        return gather.finish();
    if (options.asNormals)
        gather.note(QStringLiteral("A typical year: taken as climate normals, under the nominal "
                                   "year %1.")
                        .arg(kTypicalYear));
    for (qsizetype i = kEpwHeaderLines; i < lines.size(); ++i) {
        if (gather.tick(i, lines.size(), progress, cancel))
            return gather.finish();
        if (!lines.at(i).text.trimmed().isEmpty())
            run.readRow(lines.at(i));
    }
    return gather.finish();
}

bool looksLikeEpw(const QByteArray &head)
{
    const QString text = decodeForeignText(head).text;
    return text.startsWith(QLatin1String("LOCATION,")) &&
           text.contains(QLatin1String("\nDESIGN CONDITIONS"));
}

} // namespace rickyard::exchange
