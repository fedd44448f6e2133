#include "models/exchange/json_values.h"

#include "models/exchange/foreign_values.h"

#include <cmath>

namespace rickyard::exchange
{

namespace
{

// Nine significant digits: more than any measurement holds, fewer than the noise of a double.
QJsonValue rounded(double value)
{
    if (!std::isfinite(value))
        return QJsonValue::Null;
    return QString::number(value, 'g', 9).toDouble();
}

template <class T, class F>
std::optional<double> in(const std::optional<T> &value, F convert)
{
    return value ? std::optional<double>(convert(*value)) : std::nullopt;
}

} // namespace

void JsonFields::set(const char *key, const QJsonValue &value)
{
    m_object.insert(QLatin1String(key), value.isDouble() ? rounded(value.toDouble()) : value);
}

void JsonFields::number(const char *key, std::optional<double> value)
{
    m_object.insert(QLatin1String(key), value ? rounded(*value) : QJsonValue(QJsonValue::Null));
}

void JsonFields::unit(const char *key, const char *suffix, std::optional<double> value)
{
    const QString name = QString(QLatin1String(key) + QLatin1String(suffix));
    m_object.insert(name, value ? rounded(*value) : QJsonValue(QJsonValue::Null));
}

void JsonFields::mass(const char *key, std::optional<domain::Mass> value)
{
    unit(key, "_kg", in(value, domain::kilograms));
    unit(key, "_lb", in(value, domain::pounds));
}

void JsonFields::volume(const char *key, std::optional<domain::Volume> value)
{
    unit(key, "_m3", in(value, [](domain::Volume v) { return v.toDouble() / 1e6; }));
    unit(key, "_ft3", in(value, domain::cubicFeet));
    unit(key, "_cord", in(value, domain::cords));
}

void JsonFields::heat(const char *key, std::optional<domain::Heat> value)
{
    unit(key, "_MJ", in(value, [](domain::Heat h) { return h.toDouble() / 1e6; }));
    unit(key, "_seasoned_lb", in(value, domain::seasonedPounds));
}

void JsonFields::temperature(const char *key, std::optional<domain::Temperature> value)
{
    unit(key, "_degC", in(value, domain::celsius));
    unit(key, "_degF", in(value, domain::fahrenheit));
}

void JsonFields::moisture(const char *key, std::optional<domain::Moisture> value)
{
    unit(key, "_pct_dry",
         in(value, [](domain::Moisture u) { return 100.0 * domain::dryFraction(u); }));
}

void JsonFields::speed(const char *key, std::optional<domain::Speed> value)
{
    unit(key, "_m_s", in(value, domain::metresPerSecond));
    unit(key, "_mph", in(value, domain::milesPerHour));
}

void JsonFields::time(const char *key, std::optional<domain::Instant> value)
{
    set(key, value ? QJsonValue(isoUtc(value->seconds())) : QJsonValue(QJsonValue::Null));
}

void JsonFields::day(const char *key, const QDate &value)
{
    set(key,
        value.isValid() ? QJsonValue(value.toString(Qt::ISODate)) : QJsonValue(QJsonValue::Null));
}

void JsonFields::record(const char *key, const domain::Books &books, domain::TableId table,
                        domain::RecordId id)
{
    const QString name = QString(QLatin1String(key) + QLatin1String("_name"));
    if (id == 0) {
        set(key, QJsonValue::Null);
        m_object.insert(name, QJsonValue::Null);
        return;
    }
    m_object.insert(QLatin1String(key), id);
    m_object.insert(name, domain::titleOf(books, table, id));
}

} // namespace rickyard::exchange
