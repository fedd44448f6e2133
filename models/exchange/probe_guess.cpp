// What the columns of a probe log are, from its first lines.
#include "models/exchange/csv_reader.h"
#include "models/exchange/foreign_text.h"
#include "models/exchange/probe_rows.h"

#include <QRegularExpression>

#include <array>
#include <functional>

namespace rickyard::exchange {

namespace {

constexpr qsizetype kRowsLooked = 200;

struct ProbeTable {
    QStringList header;
    QVector<QStringList> rows;

    [[nodiscard]] QStringList column(qsizetype at) const
    {
        QStringList cells;
        for (const QStringList &row : rows)
            if (!row.value(at).trimmed().isEmpty())
                cells << row.value(at).trimmed();
        return cells;
    }
};

QStringList splitText(const QString &line, QChar separator)
{
    const std::string bytes = line.toStdString();
    std::vector<std::string_view> cells;
    splitCells(bytes, separator.toLatin1(), cells);
    QStringList texts;
    for (const std::string_view cell : cells)
        texts << QString::fromUtf8(cell.data(), static_cast<qsizetype>(cell.size())).trimmed();
    return texts;
}

ProbeTable probeTable(const QString &text, QChar separator, int headerLine)
{
    ProbeTable table;
    for (const TextLine &line : linesOf(text)) {
        if (line.number < headerLine || line.text.trimmed().isEmpty())
            continue;
        if (headerLine == 0 && table.header.isEmpty()) {
            const qsizetype width = splitText(line.text, separator).size();
            for (qsizetype i = 1; i <= width; ++i)
                table.header << QString::number(i);
        }
        if (line.number == headerLine)
            table.header = splitText(line.text, separator);
        else
            table.rows << splitText(line.text, separator);
        if (table.rows.size() >= kRowsLooked)
            break;
    }
    if (table.rows.size() > 1)
        table.rows.removeLast(); // it may be cut where the looked-at part ends
    return table;
}

bool allFit(const QStringList &cells, const std::function<bool(const std::string &)> &fits)
{
    return !cells.isEmpty() && std::all_of(cells.begin(), cells.end(), [&fits](const QString &c) {
        return fits(c.toStdString());
    });
}

bool fitsStyle(const QStringList &cells, const QString &style)
{
    const TimePattern pattern(style);
    return allFit(cells, [&pattern](const std::string &c) { return pattern.read(c).has_value(); });
}

const std::array<const char *, 12> kDateStyles = {"",
                                                  "M/d/yyyy H:m:s",
                                                  "M/d/yyyy H:m",
                                                  "M/d/yyyy h:m:s AP",
                                                  "M/d/yyyy h:m AP",
                                                  "d.M.yyyy H:m:s",
                                                  "d.M.yyyy H:m",
                                                  "yyyy/M/d H:m:s",
                                                  "yyyy/M/d H:m",
                                                  "M/d/yy H:m:s",
                                                  "d/M/yyyy H:m:s",
                                                  "M-d-yyyy H:m:s"};
const std::array<const char *, 4> kDayTimeStyles = {"h:m:s AP", "h:m AP", "H:m:s", "H:m"};

bool saysElapsed(const QString &header)
{
    static const QRegularExpression words(
        QStringLiteral("elapsed|since|runtime|duration|\\b(sec|secs|seconds|min|minutes|hours)\\b"),
        QRegularExpression::CaseInsensitiveOption);
    return words.match(header).hasMatch();
}

// Loggers write their own state beside the temperatures.
bool saysOther(const QString &header)
{
    static const QRegularExpression words(
        QStringLiteral("batt|volt|signal|rssi|humid|\\bfan\\b|%|\\bV$"),
        QRegularExpression::CaseInsensitiveOption);
    return words.match(header).hasMatch();
}

bool takeClock(const ProbeTable &table, ProbeLogMapping &m)
{
    for (const char *style : kDateStyles)
        for (qsizetype i = 0; i < table.header.size(); ++i)
            if (fitsStyle(table.column(i), QLatin1String(style))) {
                m.timeColumn = table.header.at(i);
                m.timeFormat = QLatin1String(style);
                return true;
            }
    // A date beside a time of day.
    for (qsizetype i = 0; i + 1 < table.header.size(); ++i) {
        QStringList joined;
        for (const QStringList &row : table.rows)
            joined << QString(row.value(i) + QLatin1Char(' ') + row.value(i + 1));
        for (const char *style : kDateStyles)
            if (fitsStyle(joined, QLatin1String(style))) {
                m.dateColumn = table.header.at(i);
                m.timeColumn = table.header.at(i + 1);
                m.timeFormat = QLatin1String(style);
                return true;
            }
    }
    return false;
}

bool takeElapsed(const ProbeTable &table, ProbeLogMapping &m)
{
    for (qsizetype i = 0; i < table.header.size(); ++i) {
        const QString &name = table.header.at(i);
        const QChar decimal = m.decimal;
        const bool fits = allFit(table.column(i), [decimal](const std::string &c) {
            return readElapsed(c, decimal.toLatin1(), 1).has_value();
        });
        if (!saysElapsed(name) || !fits)
            continue;
        m.time = ProbeTime::Elapsed;
        m.timeColumn = name;
        if (name.contains(QLatin1String("min"), Qt::CaseInsensitive))
            m.elapsedScale = 60;
        else if (name.contains(QLatin1String("hour"), Qt::CaseInsensitive))
            m.elapsedScale = 3600;
        return true;
    }
    return false;
}

bool takeTimeOfDay(const ProbeTable &table, ProbeLogMapping &m)
{
    for (const char *style : kDayTimeStyles)
        for (qsizetype i = 0; i < table.header.size(); ++i)
            if (fitsStyle(table.column(i), QLatin1String(style))) {
                m.time = ProbeTime::TimeOfDay;
                m.timeColumn = table.header.at(i);
                m.timeFormat = QLatin1String(style);
                return true;
            }
    return false;
}

// A header that says °C is Celsius; otherwise a pit above 180 is in °F.
void takeUnit(const ProbeTable &table, ProbeLogGuess &guess)
{
    static const QRegularExpression celsius(
        QStringLiteral("°\\s*C|deg\\s*C|\\[C\\]|\\(C\\)|_c$|celsius"),
        QRegularExpression::CaseInsensitiveOption | QRegularExpression::MultilineOption);
    static const QRegularExpression fahrenheit(
        QStringLiteral("°\\s*F|deg\\s*F|\\[F\\]|\\(F\\)|_f$|fahrenheit"),
        QRegularExpression::CaseInsensitiveOption | QRegularExpression::MultilineOption);
    // "Grate F", "Meat F": a bare letter counts when it ends the name of every probe; probes are
    // also called A, B, C.
    for (const bool inFahrenheit : {true, false}) {
        const QString letter = inFahrenheit ? QStringLiteral(" F") : QStringLiteral(" C");
        const auto &probes = guess.mapping.probes;
        if (!probes.isEmpty() &&
            std::all_of(probes.begin(), probes.end(), [&letter](const ProbeColumn &probe) {
                return probe.column.endsWith(letter);
            })) {
            guess.mapping.fahrenheit = inFahrenheit;
            return;
        }
    }
    const QString header = table.header.join(QLatin1Char('\n'));
    if (header.contains(celsius) != header.contains(fahrenheit)) {
        guess.mapping.fahrenheit = header.contains(fahrenheit);
        return;
    }
    double highest = 0;
    for (const ProbeColumn &probe : guess.mapping.probes)
        for (const QString &cell : table.column(table.header.indexOf(probe.column)))
            highest = std::max(
                highest,
                readPlainNumber(cell.toStdString(), guess.mapping.decimal.toLatin1()).value_or(0));
    guess.mapping.fahrenheit = highest > 180;
    guess.unitNote =
        QStringLiteral("The file does not say its unit; %1 is taken, as the highest of "
                       "the first readings is %2.")
            .arg(guess.mapping.fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C"))
            .arg(highest);
}

void takeProbes(const ProbeTable &table, ProbeLogMapping &m)
{
    for (qsizetype i = 0; i < table.header.size(); ++i) {
        const QString &name = table.header.at(i);
        if (name.isEmpty() || name == m.timeColumn || name == m.dateColumn || saysElapsed(name) ||
            saysOther(name))
            continue;
        int numbers = 0;
        int others = 0; // a torn cell among many numbers makes no column of words
        for (const QString &cell : table.column(i)) {
            const bool number =
                readPlainNumber(cell.toStdString(), m.decimal.toLatin1()).has_value();
            numbers += number ? 1 : 0;
            others += !number && !m.missing.contains(cell, Qt::CaseInsensitive) ? 1 : 0;
        }
        if (numbers > 0 && others * 10 <= numbers)
            m.probes.append({name, name});
    }
}

} // namespace

ProbeLogGuess guessProbeLog(const QByteArray &head, const QString &zone, int headerLine)
{
    ProbeLogGuess guess;
    ProbeLogMapping &m = guess.mapping;
    const QString text = decodeForeignText(head).text;
    m.headerLine = headerLine;
    // Lines above the headers are words, and say nothing of how the table is split.
    m.separator = detectSeparator(text.section(QLatin1Char('\n'), std::max(0, headerLine - 1)));
    static const QRegularExpression comma(QStringLiteral("^-?\\d+,\\d+$"));
    const ProbeTable table = probeTable(text, m.separator, headerLine);
    guess.header = table.header;
    if (m.separator != QLatin1Char(','))
        for (const QStringList &row : table.rows)
            for (const QString &cell : row)
                if (comma.match(cell).hasMatch())
                    m.decimal = QLatin1Char(',');
    m.zone = zone;
    m.zoneKind = zone.isEmpty() ? TimeZoneKind::Utc : TimeZoneKind::Zone;
    if (!takeClock(table, m) && !takeElapsed(table, m) && !takeTimeOfDay(table, m))
        guess.notes << QStringLiteral("No column of times was recognised; choose it.");
    if (m.timeFormat.startsWith(QLatin1String("M/d")))
        guess.notes << QStringLiteral("Dates are read with the month first.");
    takeProbes(table, m);
    takeUnit(table, guess);
    return guess;
}

} // namespace rickyard::exchange
