#include "models/exchange/weather_mapping.h"

#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QTimeZone>

namespace rickyard::exchange {

using domain::Outcome;
using domain::Problems;

namespace {

constexpr int kVersion = 1;

QString kindKey(TimeZoneKind kind)
{
    switch (kind) {
    case TimeZoneKind::Utc:
        return QStringLiteral("utc");
    case TimeZoneKind::Zone:
        return QStringLiteral("zone");
    case TimeZoneKind::FixedOffset:
        return QStringLiteral("offset");
    }
    return {};
}

const WeatherQuantity *quantityOf(const QString &key)
{
    for (const WeatherQuantity &quantity : weatherQuantities())
        if (quantity.key == key)
            return &quantity;
    return nullptr;
}

void checkTime(const WeatherMapping &m, Problems &found)
{
    if (m.timeColumns == TimeColumns::One && m.timeColumn.isEmpty())
        found.append({QStringLiteral("timeColumn"),
                      QStringLiteral("Choose the column that holds the time.")});
    if (m.timeColumns == TimeColumns::Parts && (m.yearColumn.isEmpty() || m.monthColumn.isEmpty() ||
                                                m.dayColumn.isEmpty() || m.hourColumn.isEmpty()))
        found.append({QStringLiteral("yearColumn"),
                      QStringLiteral("Choose the columns for year, month, day and hour.")});
    if (m.zoneKind == TimeZoneKind::Zone && !QTimeZone(m.zone.toLatin1()).isValid())
        found.append({QStringLiteral("zone"),
                      QString(QStringLiteral("“") + m.zone +
                              QStringLiteral("” is no time zone; expected a name such as "
                                             "America/Chicago."))});
    if (m.zoneKind == TimeZoneKind::FixedOffset && std::abs(m.offsetSeconds) > 14 * 3600)
        found.append({QStringLiteral("offsetSeconds"),
                      QStringLiteral("An offset from UTC is at most 14 hours.")});
}

void checkColumns(const WeatherMapping &m, Problems &found)
{
    if (m.columns.isEmpty())
        found.append(
            {QStringLiteral("columns"), QStringLiteral("Choose at least one column to import.")});
    QStringList seen;
    for (const QuantityColumn &c : m.columns) {
        const QString field = QString(QStringLiteral("columns.") + c.quantity);
        const WeatherQuantity *quantity = quantityOf(c.quantity);
        if (quantity == nullptr)
            found.append({field, QString(QStringLiteral("“") + c.quantity +
                                         QStringLiteral("” is no weather quantity."))});
        else if (domain::findUnit(quantity->dimension, c.unit) == nullptr)
            found.append({field, QString(quantity->label + QStringLiteral(": “") + c.unit +
                                         QStringLiteral("” is no unit of this quantity."))});
        if (seen.contains(c.quantity))
            found.append({field, QString(QStringLiteral("Two columns are chosen for ") +
                                         (quantity != nullptr ? quantity->label : c.quantity) +
                                         QLatin1Char('.'))});
        seen << c.quantity;
    }
}

QChar oneChar(const QJsonValue &value, QChar fallback)
{
    const QString text = value.toString();
    return text.size() == 1 ? text.front() : fallback;
}

// The JSON keys of the plain text members.
struct TextKey {
    const char *key;
    QString WeatherMapping::*member;
};
constexpr TextKey kTextKeys[] = {
    {"timeColumn", &WeatherMapping::timeColumn},
    {"timeFormat", &WeatherMapping::timeFormat},
    {"yearColumn", &WeatherMapping::yearColumn},
    {"monthColumn", &WeatherMapping::monthColumn},
    {"dayColumn", &WeatherMapping::dayColumn},
    {"hourColumn", &WeatherMapping::hourColumn},
    {"minuteColumn", &WeatherMapping::minuteColumn},
    {"zone", &WeatherMapping::zone},
    {"place", &WeatherMapping::place},
    {"placeColumn", &WeatherMapping::placeColumn},
    {"source", &WeatherMapping::source},
};

} // namespace

const QuantityColumn *WeatherMapping::columnFor(const QString &quantity) const
{
    for (const QuantityColumn &column : columns)
        if (column.quantity == quantity)
            return &column;
    return nullptr;
}

const QVector<WeatherQuantity> &weatherQuantities()
{
    static const QVector<WeatherQuantity> all = [] {
        QVector<WeatherQuantity> list;
        for (const domain::FieldSpec &f : domain::specOf(domain::TableId::Weather).fields)
            if (f.kind == domain::FieldKind::Quantity)
                list.append({f.key, f.label, f.dimension});
        return list;
    }();
    return all;
}

Problems WeatherMapping::check() const
{
    Problems found;
    if (headerLine < 0)
        found.append({QStringLiteral("headerLine"),
                      QStringLiteral("The row of the headers counts from 1; 0 means none.")});
    if (separator == decimal)
        found.append({QStringLiteral("decimal"),
                      QStringLiteral("The decimal sign and the separator cannot be the same.")});
    if (place.trimmed().isEmpty() && placeColumn.isEmpty())
        found.append({QStringLiteral("place"),
                      QStringLiteral("Name the place the weather was observed at.")});
    checkTime(*this, found);
    checkColumns(*this, found);
    return found;
}

QJsonObject toJson(const WeatherMapping &m)
{
    QJsonObject json;
    json.insert(QStringLiteral("format"), QStringLiteral("rickyard-weather-mapping"));
    json.insert(QStringLiteral("version"), kVersion);
    json.insert(QStringLiteral("separator"), QString(m.separator));
    json.insert(QStringLiteral("decimal"), QString(m.decimal));
    json.insert(QStringLiteral("headerLine"), m.headerLine);
    json.insert(QStringLiteral("missing"), QJsonArray::fromStringList(m.missing));
    json.insert(QStringLiteral("time"), m.timeColumns == TimeColumns::One
                                            ? QStringLiteral("one")
                                            : QStringLiteral("parts"));
    json.insert(QStringLiteral("zoneKind"), kindKey(m.zoneKind));
    json.insert(QStringLiteral("offsetSeconds"), m.offsetSeconds);
    json.insert(QStringLiteral("asNormals"), m.asNormals);
    json.insert(QStringLiteral("strict"), m.strict);
    json.insert(QStringLiteral("outOfRange"), m.outOfRange == OutOfRange::Refuse
                                                  ? QStringLiteral("refuse")
                                                  : QStringLiteral("missing"));
    for (const TextKey &text : kTextKeys)
        json.insert(QLatin1String(text.key), m.*text.member);
    QJsonArray columns;
    for (const QuantityColumn &c : m.columns)
        columns.append(QJsonObject{{QStringLiteral("quantity"), c.quantity},
                                   {QStringLiteral("column"), c.column},
                                   {QStringLiteral("unit"), c.unit}});
    json.insert(QStringLiteral("columns"), columns);
    return json;
}

QString toText(const WeatherMapping &mapping)
{
    return QString::fromUtf8(QJsonDocument(toJson(mapping)).toJson(QJsonDocument::Compact));
}

Outcome<WeatherMapping> mappingFromJson(const QJsonObject &json)
{
    using Result = Outcome<WeatherMapping>;
    if (json.value(QStringLiteral("format")).toString() !=
        QLatin1String("rickyard-weather-mapping"))
        return Result::failed(QStringLiteral("This is not a weather mapping."),
                              QStringLiteral("format"));
    if (json.value(QStringLiteral("version")).toInt() > kVersion)
        return Result::failed(QStringLiteral("This mapping was saved by a newer Rickyard."),
                              QStringLiteral("version"));
    WeatherMapping m;
    m.separator = oneChar(json.value(QStringLiteral("separator")), m.separator);
    m.decimal = oneChar(json.value(QStringLiteral("decimal")), m.decimal);
    m.headerLine = json.value(QStringLiteral("headerLine")).toInt(m.headerLine);
    if (json.contains(QStringLiteral("missing"))) {
        m.missing.clear();
        for (const auto &mark : json.value(QStringLiteral("missing")).toArray())
            m.missing << mark.toString();
    }
    m.timeColumns = json.value(QStringLiteral("time")).toString() == QLatin1String("parts")
                        ? TimeColumns::Parts
                        : TimeColumns::One;
    const QString zoneKind = json.value(QStringLiteral("zoneKind")).toString();
    bool known = false;
    for (const TimeZoneKind kind :
         {TimeZoneKind::Utc, TimeZoneKind::Zone, TimeZoneKind::FixedOffset}) {
        if (kindKey(kind) != zoneKind)
            continue;
        m.zoneKind = kind;
        known = true;
    }
    if (!known)
        return Result::failed(QString(QStringLiteral("“") + zoneKind +
                                      QStringLiteral("” is no kind of time zone; expected utc, "
                                                     "zone or offset.")),
                              QStringLiteral("zoneKind"));
    m.offsetSeconds = json.value(QStringLiteral("offsetSeconds")).toInt();
    m.asNormals = json.value(QStringLiteral("asNormals")).toBool();
    m.strict = json.value(QStringLiteral("strict")).toBool(true);
    m.outOfRange = json.value(QStringLiteral("outOfRange")).toString() == QLatin1String("missing")
                       ? OutOfRange::Missing
                       : OutOfRange::Refuse;
    for (const TextKey &text : kTextKeys)
        m.*text.member = json.value(QLatin1String(text.key)).toString();
    for (const auto &value : json.value(QStringLiteral("columns")).toArray()) {
        const QJsonObject c = value.toObject();
        m.columns.append({c.value(QStringLiteral("quantity")).toString(),
                          c.value(QStringLiteral("column")).toString(),
                          c.value(QStringLiteral("unit")).toString()});
    }
    return m;
}

Outcome<WeatherMapping> mappingFromText(const QString &text)
{
    QJsonParseError error;
    const QJsonDocument document = QJsonDocument::fromJson(text.toUtf8(), &error);
    if (!document.isObject())
        return Outcome<WeatherMapping>::failed(
            QString(QStringLiteral("The mapping is not JSON: ") + error.errorString()));
    return mappingFromJson(document.object());
}

} // namespace rickyard::exchange
