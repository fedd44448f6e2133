// Guesses a mapping from the words of a header and the values below it. Every word list here is
// plain English or the usual abbreviation of an airport or climate file.
#include "models/domain/quantities/units.h"
#include "models/exchange/csv_reader.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/weather_mapping.h"

#include <QRegularExpression>

#include <algorithm>

namespace rickyard::exchange
{

namespace
{

struct HeaderWord {
    const char *word;     // header in lower case without its unit
    const char *quantity; // field key
    const char *usual;    // unit when nothing else tells
};
constexpr HeaderWord kWords[] = {
    {"temp", "temperature", "degF"},
    {"tmpf", "temperature", "degF"},
    {"tmpc", "temperature", "degC"},
    {"temperature", "temperature", "degC"},
    {"air_temperature", "temperature", "degC"},
    {"dry_bulb", "temperature", "degF"},
    {"dewp", "dew_point", "degF"},
    {"dwpf", "dew_point", "degF"},
    {"dwpc", "dew_point", "degC"},
    {"dew_point", "dew_point", "degC"},
    {"dewpoint", "dew_point", "degC"},
    {"dew_point_temperature", "dew_point", "degC"},
    {"humid", "humidity", "pct"},
    {"humidity", "humidity", "pct"},
    {"relative_humidity", "humidity", "pct"},
    {"rh", "humidity", "pct"},
    {"relh", "humidity", "pct"},
    {"wind", "wind", "m/s"},
    {"wind_speed", "wind", "mph"},
    {"windspeed", "wind", "mph"},
    {"sknt", "wind", "kn"},
    {"wind_gust", "gust", "mph"},
    {"gust", "gust", "mph"},
    {"gusts", "gust", "mph"},
    {"wind_dir", "wind_from", "deg"},
    {"wind_direction", "wind_from", "deg"},
    {"wind_from", "wind_from", "deg"},
    {"drct", "wind_from", "deg"},
    {"precip", "rain", "in"},
    {"precipitation", "rain", "mm"},
    {"rain", "rain", "mm"},
    {"rainfall", "rain", "mm"},
    {"pressure", "pressure", "hPa"},
    {"mslp", "pressure", "hPa"},
    {"slp", "pressure", "hPa"},
    {"sea_level_pressure", "pressure", "hPa"},
};
// Headers in customary abbreviation speak for US units in the whole file.
constexpr const char *kUsualInUs[] = {"temp",      "dewp",      "precip", "wind_speed",
                                      "wind_gust", "windspeed", "tmpf"};

// "Wind Speed (mph)" -> "wind_speed" and "mph"; "temp_f" -> "temp" and "f".
struct SplitHeader {
    QString word;
    QString unit;
};
SplitHeader splitHeader(const QString &header)
{
    static const QRegularExpression bracket(
        QStringLiteral("^(.*?)\\s*[\\(\\[]\\s*([^\\)\\]]*)\\s*[\\)\\]]\\s*$"));
    static const QRegularExpression suffix(
        QStringLiteral("^(.+)_(f|c|degf|degc|mph|ms|kmh|kt|kn|in|mm|hpa|mb|mbar|inhg|pct)$"));
    static const QRegularExpression gaps(QStringLiteral("[\\s\\-]+"));
    SplitHeader split{header.trimmed(), {}};
    const QRegularExpressionMatch b = bracket.match(split.word);
    if (b.hasMatch())
        split = {b.captured(1), b.captured(2)};
    split.word = split.word.toLower().replace(gaps, QStringLiteral("_"));
    const QRegularExpressionMatch s = suffix.match(split.word);
    if (split.unit.isEmpty() && s.hasMatch())
        split = {s.captured(1), s.captured(2)};
    return split;
}

const HeaderWord *wordFor(const QString &word)
{
    for (const HeaderWord &known : kWords)
        if (word == QLatin1String(known.word))
            return &known;
    return nullptr;
}

struct Sample {
    const QStringList &header;
    const QVector<QStringList> &rows;

    [[nodiscard]] QStringList column(qsizetype index) const
    {
        QStringList values;
        for (const QStringList &row : rows)
            if (index < row.size() && !row.at(index).trimmed().isEmpty())
                values << row.at(index).trimmed();
        return values;
    }
    [[nodiscard]] qsizetype indexOf(const QString &word) const
    {
        for (qsizetype i = 0; i < header.size(); ++i)
            if (header.at(i).trimmed().toLower() == word)
                return i;
        return -1;
    }
};

// Temperatures over 50 cannot be outside air in degrees Celsius.
bool lookLikeFahrenheit(const QStringList &values, QChar decimal)
{
    return std::any_of(values.begin(), values.end(), [decimal](const QString &text) {
        const auto value = readNumber(text, decimal);
        return value && *value > 50 && *value < 150;
    });
}

// Decimal commas only make sense beside another separator.
QChar guessDecimal(const Sample &sample, QChar separator)
{
    static const QRegularExpression comma(QStringLiteral("^[+-]?\\d+,\\d+$"));
    if (separator == QLatin1Char(','))
        return QLatin1Char('.');
    for (const QStringList &row : sample.rows)
        for (const QString &cell : row)
            if (comma.match(cell.trimmed()).hasMatch())
                return QLatin1Char(',');
    return QLatin1Char('.');
}

void guessColumns(const Sample &sample, MappingGuess &guess)
{
    bool us = false;
    for (const QString &header : sample.header)
        for (const char *word : kUsualInUs)
            us = us || splitHeader(header).word == QLatin1String(word);
    for (const QString &header : sample.header) {
        const SplitHeader split = splitHeader(header);
        const HeaderWord *known = wordFor(split.word);
        if (known == nullptr || guess.mapping.columnFor(QLatin1String(known->quantity)) != nullptr)
            continue;
        const QString quantity = QLatin1String(known->quantity);
        const auto &all = weatherQuantities();
        const auto it = std::find_if(all.begin(), all.end(),
                                     [&quantity](const auto &q) { return q.key == quantity; });
        if (it == all.end())
            continue;
        QString unit = QLatin1String(known->usual);
        const domain::Unit *said = domain::findUnit(it->dimension, split.unit);
        if (!split.unit.isEmpty() && said != nullptr) {
            unit = said->key;
        } else {
            if (it->dimension == domain::Dimension::Temperature &&
                lookLikeFahrenheit(sample.column(sample.header.indexOf(header)),
                                   guess.mapping.decimal))
                unit = QStringLiteral("degF");
            else if (us && it->dimension == domain::Dimension::Speed &&
                     known->usual != QLatin1String("kn"))
                unit = QStringLiteral("mph");
            if (unit != QLatin1String("pct") && unit != QLatin1String("deg"))
                guess.notes << QString(it->label + QStringLiteral(" is taken to be in ") +
                                       domain::findUnit(it->dimension, unit)->symbol +
                                       QStringLiteral("; the file does not say."));
        }
        guess.mapping.columns.append({quantity, header, unit});
    }
}

// -1: holds no ISO times; 0: times without an offset; 1: times in UTC or with an offset.
int timeRank(const QStringList &values)
{
    int rank = -1;
    for (const QString &value : values) {
        const auto time = readIsoTime(value);
        if (!time)
            return -1;
        rank = time->offsetSeconds ? 1 : 0;
    }
    return rank;
}

bool guessParts(const Sample &sample, WeatherMapping &mapping)
{
    const QStringList words = {QStringLiteral("year"), QStringLiteral("month"),
                               QStringLiteral("day"), QStringLiteral("hour")};
    QString *targets[] = {&mapping.yearColumn, &mapping.monthColumn, &mapping.dayColumn,
                          &mapping.hourColumn};
    for (qsizetype i = 0; i < words.size(); ++i) {
        const qsizetype column = sample.indexOf(words.at(i));
        if (column < 0)
            return false;
        *targets[i] = sample.header.at(column);
    }
    const qsizetype minute = sample.indexOf(QStringLiteral("minute"));
    if (minute >= 0)
        mapping.minuteColumn = sample.header.at(minute);
    return true;
}

// Common ways to write a local time that is not ISO 8601.
bool guessFormat(const Sample &sample, WeatherMapping &mapping)
{
    const QStringList formats = {
        QStringLiteral("M/d/yyyy H:mm"), QStringLiteral("M/d/yyyy H:mm:ss"),
        QStringLiteral("d.M.yyyy H:mm"), QStringLiteral("d.M.yyyy H:mm:ss"),
        QStringLiteral("yyyy/M/d H:mm"), QStringLiteral("yyyyMMddHH")};
    for (qsizetype i = 0; i < sample.header.size(); ++i) {
        const QStringList values = sample.column(i);
        for (const QString &format : formats) {
            const bool fits =
                !values.isEmpty() &&
                std::all_of(values.begin(), values.end(), [&format](const QString &v) {
                    return QDateTime::fromString(v, format).isValid();
                });
            if (!fits)
                continue;
            mapping.timeColumn = sample.header.at(i);
            mapping.timeFormat = format;
            return true;
        }
    }
    return false;
}

void guessTime(const Sample &sample, const QString &yardZone, MappingGuess &guess)
{
    WeatherMapping &m = guess.mapping;
    qsizetype best = -1;
    int bestRank = -1;
    int candidates = 0;
    for (qsizetype i = 0; i < sample.header.size(); ++i) {
        const int rank = timeRank(sample.column(i));
        candidates += rank >= 0 ? 1 : 0;
        if (rank > bestRank) {
            bestRank = rank;
            best = i;
        }
    }
    const bool parts = guessParts(sample, m);
    m.zone = yardZone;
    m.zoneKind = yardZone.isEmpty() ? TimeZoneKind::Utc : TimeZoneKind::Zone;
    if (best >= 0) {
        m.timeColumn = sample.header.at(best);
        if (bestRank == 1)
            m.zoneKind = TimeZoneKind::Utc;
        if (bestRank == 1 && (parts || candidates > 1))
            guess.notes << QString(QStringLiteral("The file has more than one time; “") +
                                   m.timeColumn + QStringLiteral("” is taken, it is in UTC."));
    } else if (parts) {
        m.timeColumns = TimeColumns::Parts;
    } else if (!guessFormat(sample, m)) {
        guess.notes << QStringLiteral("No column of times was recognised; choose it.");
        return;
    }
    if (bestRank == 1)
        return;
    guess.notes << (yardZone.isEmpty()
                        ? QStringLiteral("The times do not say their zone; UTC is taken.")
                        : QString(QStringLiteral("The times do not say their zone; ") + yardZone +
                                  QStringLiteral(" is taken.")));
}

// A file with a time that the zone's clocks skip was kept on standard time all year.
void noticeStandardTime(CsvReader &reader, const QStringList &header, MappingGuess &guess)
{
    WeatherMapping &m = guess.mapping;
    if (m.zoneKind != TimeZoneKind::Zone || m.timeColumns != TimeColumns::One ||
        !m.timeFormat.isEmpty())
        return;
    const qsizetype column = header.indexOf(m.timeColumn);
    ZoneClock clock(m.zone.toLatin1());
    if (column < 0 || !clock.isValid())
        return;
    CsvRow row;
    while (reader.next(row)) {
        const auto time = column < row.cells.size() ? readIsoTime(row.cells.at(column))
                                                    : std::optional<CivilTime>();
        if (!time || time->offsetSeconds ||
            clock.resolve(time->date, time->time).kind != LocalTime::Missing)
            continue;
        m.zoneKind = TimeZoneKind::FixedOffset;
        m.offsetSeconds = clock.standardOffset(time->date);
        guess.notes << QStringLiteral("Line %1 has a time that clocks in %2 skip, so the file "
                                      "keeps standard time all year; that offset is taken.")
                           .arg(row.line)
                           .arg(m.zone);
        return;
    }
}

} // namespace

MappingGuess guessMapping(const QStringList &header, const QVector<QStringList> &firstRows,
                          const QString &yardZone)
{
    MappingGuess guess;
    const Sample sample{header, firstRows};
    guessTime(sample, yardZone, guess);
    guessColumns(sample, guess);
    for (const char *word : {"station", "origin", "place", "site"}) {
        const qsizetype column = sample.indexOf(QLatin1String(word));
        if (column >= 0 && guess.mapping.placeColumn.isEmpty())
            guess.mapping.placeColumn = header.at(column);
    }
    return guess;
}

WeatherPreview preview(const QByteArray &bytes, QChar separator, int headerLine, int rows)
{
    CsvOptions options;
    options.separator = separator;
    CsvReader reader(bytes, options);
    WeatherPreview shown;
    shown.note = reader.encodingNote();
    CsvRow row;
    for (int n = 1; shown.rows.size() < rows && reader.next(row); ++n) {
        if (n == headerLine)
            shown.header = row.cells;
        else if (n > headerLine)
            shown.rows.append(row.cells);
    }
    if (headerLine == 0 && !shown.rows.isEmpty())
        for (qsizetype i = 1; i <= shown.rows.first().size(); ++i)
            shown.header << QString::number(i);
    if (reader.error())
        shown.note = reader.error()->sentence();
    return shown;
}

MappingGuess guessMapping(const QByteArray &bytes, const QString &yardZone)
{
    CsvReader reader(bytes);
    const WeatherPreview shown = preview(bytes, reader.separator());
    MappingGuess guess = guessMapping(shown.header, shown.rows, yardZone);
    guess.mapping.separator = reader.separator();
    const QChar decimal = guessDecimal({shown.header, shown.rows}, reader.separator());
    if (decimal != guess.mapping.decimal) {
        // The values tell Fahrenheit from Celsius only with the right decimal sign.
        guess.mapping.decimal = decimal;
        QStringList notes;
        std::swap(notes, guess.notes);
        guess.mapping.columns.clear();
        guessTime({shown.header, shown.rows}, yardZone, guess);
        guessColumns({shown.header, shown.rows}, guess);
    }
    CsvRow headerRow;
    reader.next(headerRow);
    noticeStandardTime(reader, shown.header, guess);
    if (!shown.note.isEmpty())
        guess.notes << shown.note;
    return guess;
}

} // namespace rickyard::exchange
