// The reports in a text: where each begins, which date stands before it.
#include "models/exchange/foreign_text.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/metar.h"

#include <QRegularExpression>

namespace rickyard::exchange {

using domain::Instant;
using domain::Weather;

namespace {

struct FoundReport {
    qint64 line = 0;
    QString text;
    std::optional<Instant> date; // that stands before it, on its line or on one before
    bool dateIsNew = false;      // false: the date of an earlier report, carried on
};

// A date before a report: "2024/01/25 14:51", ISO, "202401251451", with or without a time.
std::optional<Instant> dateIn(const QString &text)
{
    static const QRegularExpression form(QStringLiteral(
        "(?:^|\\s)(\\d{4})[-/]?(\\d{2})[-/]?(\\d{2})(?:[T ]?(\\d{2}):?(\\d{2})(?::?\\d{2})?)?"
        "(?:Z|\\+00:?00)?(?:\\s|$)"));
    // Columns of their own: 2024 01 25 14 51.
    static const QRegularExpression parts(QStringLiteral(
        "(?:^|\\s)(\\d{4}) (\\d{1,2}) (\\d{1,2})(?: (\\d{1,2}) (\\d{1,2}))?(?:\\s|$)"));
    for (const QRegularExpression *expression : {&form, &parts}) {
        const QRegularExpressionMatch m = expression->match(text);
        if (!m.hasMatch())
            continue;
        const QDate date(m.captured(1).toInt(), m.captured(2).toInt(), m.captured(3).toInt());
        // A day alone: its middle is nearest to all of its hours.
        const QTime time = m.captured(4).isEmpty()
                               ? QTime(12, 0)
                               : QTime(m.captured(4).toInt(), m.captured(5).toInt());
        if (date.isValid() && time.isValid() && date.year() >= 1900 && date.year() <= 2200)
            return Instant::ofSeconds(QDateTime(date, time, Qt::UTC).toSecsSinceEpoch());
    }
    return std::nullopt;
}

const QRegularExpression &reportStart()
{
    static const QRegularExpression start(
        QStringLiteral("(?:^|(?<=\\s))((?:(?:METAR|SPECI)\\s+)?(?:COR\\s+)?[A-Z][A-Z0-9]{3}\\s+"
                       "(?:COR\\s+)?\\d{6}Z)(?=\\s|=|$)"));
    return start;
}

// Meant as the beginning of a report, but without a station and a time that can be read.
bool brokenStart(const QString &line)
{
    static const QRegularExpression form(QStringLiteral(
        "^(?:.*\\s)?(?:METAR|SPECI)(?:\\s|$)|^\\s*[A-Z][A-Z0-9]{3}\\s+\\d{3,8}Z?\\s"));
    return form.match(line).hasMatch();
}

class MetarText
{
public:
    explicit MetarText(WeatherGather &gather) : m_gather(gather) {}
    QVector<FoundReport> reports(const QString &text);

private:
    void takeLine(const TextLine &line);
    void takeStarts(const TextLine &line, const QString &text);
    void close() { m_open = false; }

    WeatherGather &m_gather;
    QVector<FoundReport> m_reports;
    std::optional<Instant> m_date;
    bool m_dateIsNew = false;
    bool m_open = false; // lines may still belong to the last report
    bool m_forecast = false;
    qint64 m_passed = 0;
};

void MetarText::takeStarts(const TextLine &line, const QString &text)
{
    auto it = reportStart().globalMatch(text);
    qsizetype before = 0;
    QVector<QPair<qsizetype, qsizetype>> spans;
    while (it.hasNext()) {
        const QRegularExpressionMatch m = it.next();
        if (!spans.isEmpty())
            spans.last().second = m.capturedStart(1);
        spans.append({m.capturedStart(1), text.size()});
    }
    for (const auto &span : std::as_const(spans)) {
        const QString prefix = text.mid(before, span.first - before);
        before = span.second;
        if (const auto date = dateIn(prefix)) {
            m_date = date;
            m_dateIsNew = true;
        }
        m_forecast = prefix.contains(QLatin1String("TAF"));
        QString body = text.mid(span.first, span.second - span.first);
        const qsizetype end = body.indexOf(QLatin1Char('='));
        if (end >= 0)
            before = span.first + end + 1;
        m_open = end < 0;
        if (m_forecast) {
            ++m_passed;
            continue;
        }
        m_reports.append({line.number, end < 0 ? body : body.left(end), m_date, m_dateIsNew});
        m_dateIsNew = false;
    }
}

void MetarText::takeLine(const TextLine &line)
{
    // Tables set the report and its date in columns.
    QString text = line.text;
    for (const char c : {',', ';', '\t', '"', '|'})
        text.replace(QLatin1Char(c), QLatin1Char(' '));
    const QString trimmed = text.trimmed();
    if (trimmed.isEmpty() || trimmed.startsWith(QLatin1Char('#'))) {
        close();
        return;
    }
    if (reportStart().match(text).hasMatch()) {
        takeStarts(line, text);
        return;
    }
    if (brokenStart(text)) {
        close();
        m_gather.rowRead();
        m_gather.refuse({line.number, 0, {}, trimmed.left(40)},
                        QStringLiteral("a station and a time such as KTOL 251451Z"),
                        QStringLiteral("time"));
        return;
    }
    static const QRegularExpression dateOnly(QStringLiteral("^[-/:0-9TZ +]+$"));
    if (const auto date = dateIn(trimmed); date && dateOnly.match(trimmed).hasMatch()) {
        close();
        m_date = date;
        m_dateIsNew = true;
        return;
    }
    if (!m_open) {
        ++m_passed;
        return;
    }
    const qsizetype end = trimmed.indexOf(QLatin1Char('='));
    if (!m_forecast)
        m_reports.last().text +=
            QString(QLatin1Char(' ') + (end < 0 ? trimmed : trimmed.left(end)));
    m_open = end < 0;
}

QVector<FoundReport> MetarText::reports(const QString &text)
{
    for (const TextLine &line : linesOf(text))
        takeLine(line);
    if (m_passed > 0)
        m_gather.note(
            QStringLiteral("%1 lines that are no reports were passed over.").arg(m_passed));
    return m_reports;
}

Weather weatherOf(const Metar &metar, const ForeignCell &cell, WeatherGather &gather, bool &good)
{
    Weather w;
    const auto set = [&](const char *quantity, std::optional<double> value, const char *unit) {
        if (value)
            good = gather.set(w, quantity, *value, unit, cell) && good;
        else
            gather.missing(quantity);
    };
    set("temperature", metar.temperature, "degC");
    set("dew_point", metar.dewPoint, "degC");
    set("wind", metar.wind, "m/s");
    set("wind_from", metar.windFrom ? std::optional<double>(*metar.windFrom) : std::nullopt, "deg");
    set("pressure", metar.pressure, "hPa");
    if (metar.gust)
        set("gust", metar.gust, "m/s");
    // A special report repeats part of the hour's rain: summed up it would count twice.
    if (metar.rain && !metar.special)
        set("rain", metar.rain, "in");
    for (const Metar::Fault &fault : metar.faults)
        good = gather.unreadable(qPrintable(fault.quantity),
                                 {cell.line, 0, metar.station, fault.group}, fault.expected) &&
               good;
    return w;
}

class MetarRun
{
public:
    explicit MetarRun(WeatherGather &gather) : m_gather(gather) {}
    void take(const FoundReport &found);
    void conclude();

private:
    std::optional<Instant> momentOf(const FoundReport &found, const Metar &metar);

    WeatherGather &m_gather;
    std::optional<Instant> m_before; // the report before, while a date is carried on
    qint64 m_byAbout = 0;
};

std::optional<Instant> MetarRun::momentOf(const FoundReport &found, const Metar &metar)
{
    std::optional<Instant> about = m_gather.options().about;
    if (found.date) {
        // One date at the top of many reports: each follows the one before it.
        about = found.dateIsNew || !m_before ? found.date : m_before;
    } else if (about) {
        ++m_byAbout;
    }
    if (!about) {
        m_gather.refuse({found.line, 0, metar.station, {}},
                        QStringLiteral("a date before the report such as 2026-01-25, or a word "
                                       "about when it was: it holds day and time only"),
                        QStringLiteral("time"));
        return std::nullopt;
    }
    const auto moment = nearestMoment(metar.day, metar.hour, metar.minute, *about);
    if (found.date)
        m_before = moment;
    return moment;
}

void MetarRun::take(const FoundReport &found)
{
    m_gather.rowRead();
    const auto metar = readMetar(found.text);
    if (!metar) {
        m_gather.refuse({found.line, 0, {}, found.text.left(24)},
                        QStringLiteral("a station and a time such as KTOL 251451Z, day 01 to 31, "
                                       "hour 00 to 23, minute 00 to 59"),
                        QStringLiteral("time"));
        return;
    }
    const auto moment = momentOf(found, *metar);
    if (!moment)
        return;
    const ForeignCell cell{found.line, 0, metar->station, found.text.left(60)};
    bool good = true;
    Weather w = weatherOf(*metar, cell, m_gather, good);
    if (!good)
        return;
    w.place = m_gather.options().place.isEmpty() ? metar->station : m_gather.options().place;
    w.time = *moment;
    m_gather.take(w, cell, metar->corrected ? 1 : 0);
}

void MetarRun::conclude()
{
    if (m_byAbout == 0)
        return;
    m_gather.note(QStringLiteral("%1 reports say only the day of the month; the month is the one "
                                 "that brings them nearest to %2.")
                      .arg(m_byAbout)
                      .arg(isoUtc(m_gather.options().about->seconds())));
}

} // namespace

WeatherImport readMetars(const QByteArray &bytes, const WeatherReadOptions &options,
                         const QString &fileName, const Progress &progress,
                         const std::atomic_bool *cancel)
{
    WeatherGather gather(options, fileName);
    const std::optional<QString> text = gather.text(bytes);
    if (!text)
        return gather.finish();
    const QVector<FoundReport> reports = MetarText(gather).reports(*text);
    MetarRun run(gather);
    for (qsizetype i = 0; i < reports.size(); ++i) {
        if (gather.tick(i, reports.size(), progress, cancel))
            return gather.finish();
        run.take(reports.at(i));
    }
    run.conclude();
    return gather.finish();
}

bool looksLikeMetar(const QByteArray &head)
{
    const QString text = decodeForeignText(head).text;
    int looked = 0;
    for (const TextLine &line : linesOf(text)) {
        QString plain = line.text;
        for (const char c : {',', ';', '\t', '"', '|'})
            plain.replace(QLatin1Char(c), QLatin1Char(' '));
        if (reportStart().match(plain).hasMatch())
            return true;
        if (!plain.trimmed().isEmpty() && ++looked > 20)
            return false;
    }
    return false;
}

} // namespace rickyard::exchange
