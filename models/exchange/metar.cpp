// The groups of one report; metar_text.cpp finds the reports in a text.
#include "models/exchange/metar.h"

#include <QDateTime>
#include <QRegularExpression>

namespace rickyard::exchange {

namespace {

using Match = QRegularExpressionMatch;

constexpr double kMetresPerSecondAKnot = 1852.0 / 3600.0; // exact
constexpr double kHectopascalsAnInch = 33.86389;          // of mercury, at 0 °C
// Tenths in the remarks belong to the whole degrees of the body when they round to them, one way or
// the other; further apart one of the two is wrong.
constexpr double kTenthsTolerance = 1.0;

Match groupMatch(const QString &group, const char *pattern)
{
    // Compiled once a pattern: there are a few, and reports by the thousand.
    static thread_local QHash<const char *, QRegularExpression> compiled;
    auto it = compiled.find(pattern);
    if (it == compiled.end())
        it = compiled.insert(
            pattern, QRegularExpression(QStringLiteral("^(?:%1)$").arg(QLatin1String(pattern))));
    return it->match(group);
}

double speedIn(const QString &number, const QString &unit)
{
    const double value = QString(number).remove(QLatin1Char('P')).toDouble();
    if (unit == QLatin1String("MPS"))
        return value;
    return unit == QLatin1String("KMH") ? value / 3.6 : value * kMetresPerSecondAKnot;
}

double wholeDegrees(const QString &text)
{
    const double value = QString(text).remove(QLatin1Char('M')).toDouble();
    return text.startsWith(QLatin1Char('M')) ? -value : value;
}

class MetarGroups
{
public:
    explicit MetarGroups(Metar &report) : m_report(report) {}

    void take(const QString &group)
    {
        if (group == QLatin1String("RMK")) {
            m_part = Part::Remarks;
            return;
        }
        if (m_part == Part::Body)
            takeBody(group);
        else if (m_part == Part::Remarks)
            takeRemark(group);
    }
    void settleTenths();

private:
    enum class Part { Body, Trend, Remarks };

    void takeBody(const QString &group);
    bool takeFlag(const QString &group);
    bool takeWind(const QString &group);
    bool takeTemperature(const QString &group);
    bool takePressure(const QString &group);
    void takeRemark(const QString &group);
    void fault(const char *quantity, const QString &group, const QString &expected)
    {
        m_report.faults.append({QLatin1String(quantity), group, expected});
    }

    Metar &m_report;
    Part m_part = Part::Body;
    bool m_windSeen = false;
    bool m_temperatureSeen = false;
    std::optional<double> m_tenths;
    std::optional<double> m_dewTenths;
};

bool MetarGroups::takeFlag(const QString &group)
{
    if (group == QLatin1String("AUTO"))
        m_report.automatic = true;
    else if (group == QLatin1String("NIL"))
        m_report.nil = true;
    else if (group == QLatin1String("COR") || groupMatch(group, "CC[A-Z]").hasMatch())
        m_report.corrected = true;
    else
        return false;
    return true;
}

bool MetarGroups::takeWind(const QString &group)
{
    static const char *const units = ".*\\d(KT|MPS|KMH)";
    const Match vary = groupMatch(group, "(\\d{3})V(\\d{3})");
    if (vary.hasMatch()) {
        m_report.varyingFrom = vary.captured(1).toInt();
        m_report.varyingTo = vary.captured(2).toInt();
        return true;
    }
    if (m_windSeen)
        return false;
    const Match wind =
        groupMatch(group, "(\\d{3}|VRB|///)(P?\\d{2,3}|//)(?:G(P?\\d{2,3}|//))?(KT|MPS|KMH)");
    if (!wind.hasMatch()) {
        if (!groupMatch(group, units).hasMatch())
            return false;
        fault("wind", group, QStringLiteral("a wind such as 23016G22KT, VRB03KT or 00000KT"));
        m_windSeen = true;
        return true;
    }
    m_windSeen = true;
    const QString unit = wind.captured(4);
    if (wind.captured(2) != QLatin1String("//"))
        m_report.wind = speedIn(wind.captured(2), unit);
    if (!wind.captured(3).isEmpty() && wind.captured(3) != QLatin1String("//"))
        m_report.gust = speedIn(wind.captured(3), unit);
    bool number = false;
    const int from = wind.captured(1).toInt(&number);
    if (number && from > 360)
        fault("wind_from", group, QStringLiteral("a direction from 000 to 360"));
    else if (number && m_report.wind && *m_report.wind > 0) // calm has no direction
        m_report.windFrom = from;
    return true;
}

bool MetarGroups::takeTemperature(const QString &group)
{
    const Match m = groupMatch(group, "(M?\\d{2}|//|XX)/(M?\\d{2}|//|XX)?");
    if (!m.hasMatch() || m_temperatureSeen) {
        if (m_temperatureSeen || !groupMatch(group, "M?\\d{1,3}/M?\\d{0,3}").hasMatch())
            return false;
        fault("temperature", group, QStringLiteral("temperature and dew point such as 03/M01"));
        return true;
    }
    m_temperatureSeen = true;
    const auto degrees = [](const QString &text) {
        return text.isEmpty() || !text.at(text.size() - 1).isDigit()
                   ? std::optional<double>()
                   : std::optional<double>(wholeDegrees(text));
    };
    m_report.temperature = degrees(m.captured(1));
    m_report.dewPoint = degrees(m.captured(2));
    return true;
}

bool MetarGroups::takePressure(const QString &group)
{
    if (m_report.pressure)
        return false;
    const Match m = groupMatch(group, "([AQ])(\\d{4})");
    if (!m.hasMatch())
        return false;
    const double value = m.captured(2).toDouble();
    m_report.pressure =
        m.captured(1) == QLatin1String("A") ? value / 100.0 * kHectopascalsAnInch : value;
    return true;
}

void MetarGroups::takeBody(const QString &group)
{
    // What is expected to come is no observation.
    if (groupMatch(group, "TEMPO|BECMG|NOSIG|INTER|PROB\\d\\d|FCST|TREND").hasMatch()) {
        m_part = Part::Trend;
        return;
    }
    takeFlag(group) || takeWind(group) || takeTemperature(group) || takePressure(group);
}

void MetarGroups::takeRemark(const QString &group)
{
    const Match tenths = groupMatch(group, "T([01])(\\d{3})(?:([01])(\\d{3}))?");
    if (tenths.hasMatch()) {
        const auto value = [&tenths](int sign, int digits) {
            const double v = tenths.captured(digits).toDouble() / 10.0;
            return tenths.captured(sign) == QLatin1String("1") ? -v : v;
        };
        m_tenths = value(1, 2);
        if (!tenths.captured(4).isEmpty())
            m_dewTenths = value(3, 4);
        return;
    }
    const Match rain = groupMatch(group, "P(\\d{4})");
    if (rain.hasMatch() && !m_report.rain)
        m_report.rain = rain.captured(1).toDouble() / 100.0;
}

void MetarGroups::settleTenths()
{
    const auto settle = [this](std::optional<double> &whole, std::optional<double> tenths,
                               const char *quantity) {
        if (!tenths)
            return;
        if (whole && std::abs(*whole - *tenths) > kTenthsTolerance)
            fault(quantity, QString::number(*tenths, 'f', 1),
                  QStringLiteral("tenths that round to the %1 of the report's body")
                      .arg(QString::number(*whole)));
        else
            whole = tenths;
    };
    settle(m_report.temperature, m_tenths, "temperature");
    settle(m_report.dewPoint, m_dewTenths, "dew_point");
}

} // namespace

std::optional<Metar> readMetar(const QString &report)
{
    QStringList groups = QString(report)
                             .remove(QLatin1Char('='))
                             .split(QRegularExpression(QStringLiteral("\\s+")), Qt::SkipEmptyParts);
    Metar metar;
    while (!groups.isEmpty()) {
        const QString &first = groups.first();
        if (first == QLatin1String("SPECI"))
            metar.special = true;
        else if (first == QLatin1String("COR"))
            metar.corrected = true;
        else if (first != QLatin1String("METAR"))
            break;
        groups.removeFirst();
    }
    if (groups.size() < 2 || !groupMatch(groups.at(0), "[A-Z][A-Z0-9]{3}").hasMatch())
        return std::nullopt;
    const Match time = groupMatch(groups.at(1), "(\\d{2})(\\d{2})(\\d{2})Z");
    if (!time.hasMatch())
        return std::nullopt;
    metar.station = groups.at(0);
    metar.day = time.captured(1).toInt();
    metar.hour = time.captured(2).toInt();
    metar.minute = time.captured(3).toInt();
    if (metar.day < 1 || metar.day > 31 || metar.hour > 23 || metar.minute > 59)
        return std::nullopt;
    MetarGroups reader(metar);
    for (const QString &group : groups.mid(2))
        reader.take(group);
    reader.settleTenths();
    return metar;
}

std::optional<domain::Instant> nearestMoment(int day, int hour, int minute, domain::Instant about)
{
    const QDate month = QDateTime::fromSecsSinceEpoch(about.seconds(), Qt::UTC).date();
    std::optional<domain::Instant> best;
    for (int step : {-2, -1, 0, 1, 2}) { // a 31st is never more than two months away
        const QDate first = QDate(month.year(), month.month(), 1).addMonths(step);
        const QDate date(first.year(), first.month(), day);
        if (!date.isValid())
            continue;
        const auto moment = domain::Instant::ofSeconds(
            QDateTime(date, QTime(hour, minute), Qt::UTC).toSecsSinceEpoch());
        const auto away = [about](domain::Instant t) { return std::abs((t - about).base()); };
        if (!best || away(moment) < away(*best))
            best = moment;
    }
    return best;
}

} // namespace rickyard::exchange
