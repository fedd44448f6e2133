#include "models/exchange/weather_gather.h"

#include "models/domain/quantities/units.h"
#include "models/exchange/foreign_text.h"
#include "models/exchange/weather_row.h"

namespace rickyard::exchange {

using domain::Weather;

namespace {

// The yard refuses a record with a dew point further above its temperature than this.
constexpr qint64 kDewPointMargin = 1500; // thousandths of a kelvin

template <class T>
void fillFrom(std::optional<T> &to, const std::optional<T> &from)
{
    if (!to)
        to = from;
}

void fillGaps(Weather &to, const Weather &from)
{
    fillFrom(to.temperature, from.temperature);
    fillFrom(to.dewPoint, from.dewPoint);
    fillFrom(to.humidity, from.humidity);
    fillFrom(to.wind, from.wind);
    fillFrom(to.gust, from.gust);
    fillFrom(to.windFrom, from.windFrom);
    fillFrom(to.rain, from.rain);
    fillFrom(to.pressure, from.pressure);
}

void assign(Weather &record, const QString &quantity, qint64 base)
{
    if (quantity == QLatin1String("temperature"))
        record.temperature = domain::Temperature::ofBase(base);
    else if (quantity == QLatin1String("dew_point"))
        record.dewPoint = domain::Temperature::ofBase(base);
    else if (quantity == QLatin1String("humidity"))
        record.humidity = domain::Ratio::ofBase(base);
    else if (quantity == QLatin1String("wind"))
        record.wind = domain::Speed::ofBase(base);
    else if (quantity == QLatin1String("gust"))
        record.gust = domain::Speed::ofBase(base);
    else if (quantity == QLatin1String("wind_from"))
        record.windFrom = domain::Angle::ofBase(base);
    else if (quantity == QLatin1String("rain"))
        record.rain = domain::Length::ofBase(base);
    else if (quantity == QLatin1String("pressure"))
        record.pressure = domain::Pressure::ofBase(base);
}

QString allowedRange(const domain::FieldSpec &spec, const domain::Unit &unit)
{
    const QLocale locale = QLocale::c();
    return QStringLiteral("a value from %1 to %2")
        .arg(domain::formatQuantity(spec.minimum.value_or(0), unit, locale, 1),
             domain::formatQuantity(spec.maximum.value_or(0), unit, locale, 1));
}

} // namespace

WeatherGather::WeatherGather(WeatherReadOptions options, QString fileName)
    : m_options(std::move(options)), m_file(std::move(fileName))
{
}

bool WeatherGather::report(const char *quantity, const ForeignCell &cell, const QString &expected)
{
    const Refusal refusal{
        m_file, cell.line, cell.column, cell.name, cell.value, expected, QLatin1String(quantity)};
    if (m_options.outOfRange == OutOfRange::Refuse) {
        m_result.refused.add(refusal);
        return false;
    }
    m_result.report.setMissing.add(refusal);
    missing(quantity);
    return true;
}

bool WeatherGather::unreadable(const char *quantity, const ForeignCell &cell,
                               const QString &expected)
{
    return report(quantity, cell, expected);
}

bool WeatherGather::set(Weather &record, const char *quantity, double value, const char *unit,
                        const ForeignCell &cell)
{
    const QString key = QLatin1String(quantity);
    const domain::TableSpec &table = domain::specOf(domain::TableId::Weather);
    const domain::FieldSpec &spec = table.fields.at(table.indexOf(key));
    const domain::Unit *known = domain::findUnit(spec.dimension, QLatin1String(unit));
    Q_ASSERT(known != nullptr);
    const double base = value * known->scale + known->offset;
    const bool low = spec.minimum && base < static_cast<double>(*spec.minimum) - 0.5;
    const bool high = spec.maximum && base > static_cast<double>(*spec.maximum) + 0.5;
    if (low || high)
        return report(quantity, cell, allowedRange(spec, *known));
    assign(record, key, domain::fromUnit(value, *known));
    return true;
}

std::optional<QString> WeatherGather::text(const QByteArray &bytes)
{
    const ForeignText read = decodeForeignText(bytes);
    if (!read.problem.isEmpty()) {
        refuse({}, read.problem);
        return std::nullopt;
    }
    if (!read.note.isEmpty())
        note(read.note);
    return read.text;
}

void WeatherGather::refuse(const ForeignCell &cell, const QString &expected, const QString &field)
{
    m_result.refused.add({m_file, cell.line, cell.column, cell.name, cell.value, expected, field});
}

void WeatherGather::take(Weather record, const ForeignCell &cell, int rank)
{
    if (record.temperature && record.dewPoint &&
        (*record.dewPoint - *record.temperature).base() > kDewPointMargin) {
        const QString expected = QStringLiteral("a dew point no higher than the temperature");
        if (!report("dew_point", cell, expected))
            return;
        record.dewPoint.reset();
    }
    if (sameObservation(record, Weather{})) {
        ++m_result.report.empty;
        return;
    }
    record.source = m_options.source.isEmpty() ? m_file : m_options.source;
    const QPair<QString, qint64> key(record.place, record.time.seconds());
    const auto it = m_taken.find(key);
    if (it == m_taken.end()) {
        m_taken.insert(key, {record, cell.line, rank});
        return;
    }
    ++m_result.report.duplicates;
    if (!sameObservation(it->weather, record))
        ++m_settled;
    if (rank >= it->rank) {
        const Weather before = it->weather;
        *it = {record, cell.line, rank};
        fillGaps(it->weather, before);
    } else {
        fillGaps(it->weather, record);
    }
}

bool WeatherGather::tick(qint64 done, qint64 total, const Progress &progress,
                         const std::atomic_bool *cancel)
{
    constexpr qint64 stride = 256; // rows between two looks at the cancel flag
    if (m_ticks++ % stride != 0)
        return false;
    if (cancel != nullptr && cancel->load()) {
        m_result.cancelled = true;
        return true;
    }
    if (progress)
        progress(done, total);
    return false;
}

WeatherImport WeatherGather::finish()
{
    if (m_result.cancelled)
        return m_result;
    if (m_settled > 0)
        note(QStringLiteral("%1 records had other values for a time that was there already; a "
                            "correction wins, else the later one.")
                 .arg(m_settled));
    const bool refuse = m_options.strict && !m_result.refused.isEmpty();
    if (!refuse && m_taken.isEmpty() && m_result.refused.isEmpty())
        m_result.refused.add({m_file, 0, 0, {}, {}, QStringLiteral("at least one record"), {}});
    if (refuse || m_taken.isEmpty())
        return m_result;
    QVector<qint64> lines;
    for (const Taken &taken : std::as_const(m_taken)) {
        m_result.rows.append(taken.weather);
        lines.append(taken.line);
    }
    describe(m_result.rows, lines, m_result.report);
    m_result.ok = true;
    return m_result;
}

} // namespace rickyard::exchange
