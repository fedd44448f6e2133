#include "models/domain/quantities/units.h"

#include <QMap>

#include <cmath>

namespace rickyard::domain {

namespace {

QString s(const char *text)
{
    return QString::fromUtf8(text);
}

QVector<Unit> makeUnits(Dimension dimension)
{
    constexpr double lb = 453592.37;
    constexpr double ft3 = kMillilitresPerCubicFoot;
    switch (dimension) {
    case Dimension::Mass:
        return {{s("lb"), s("lb"), lb, 0, 1, {s("lbs"), s("pound"), s("pounds")}},
                {s("oz"), s("oz"), lb / 16, 0, 1, {s("ounce"), s("ounces")}},
                {s("ton"), s("short ton"), lb * 2000, 0, 3, {s("tons")}},
                {s("kg"), s("kg"), 1e6, 0, 1, {}},
                {s("g"), s("g"), 1e3, 0, 0, {}}};
    case Dimension::Volume:
        return {{s("ft3"), s("ft³"), ft3, 0, 1, {s("ft^3"), s("cu ft"), s("cubic feet")}},
                {s("cord"), s("cord"), ft3 * kCubicFeetPerCord, 0, 2, {s("cords")}},
                {s("face16"), s("face cord 16 in (42.7 ft³)"), ft3 * 128.0 / 3.0, 0, 2, {}},
                {s("half"), s("half cord (64 ft³)"), ft3 * 64, 0, 2, {}},
                {s("quarter"), s("quarter cord (32 ft³)"), ft3 * 32, 0, 2, {}},
                {s("m3"), s("m³"), 1e6, 0, 2, {s("m^3")}},
                {s("gal"), s("gal"), 3785.411784, 0, 1, {s("gallon"), s("gallons")}},
                {s("l"), s("L"), 1e3, 0, 1, {s("litre"), s("liter")}}};
    case Dimension::Length:
        return {{s("in"), s("in"), 25400, 0, 1, {s("inch"), s("inches"), s("\"")}},
                {s("ft"), s("ft"), 304800, 0, 2, {s("feet"), s("foot"), s("'")}},
                {s("cm"), s("cm"), 1e4, 0, 1, {}},
                {s("mm"), s("mm"), 1e3, 0, 1, {}},
                {s("m"), s("m"), 1e6, 0, 2, {}}};
    case Dimension::Temperature:
        return {{s("degF"), s("°F"), 5000.0 / 9.0, -160000.0 / 9.0, 0, {s("f"), s("°f")}},
                {s("degC"), s("°C"), 1000, 0, 1, {s("c"), s("°c")}},
                {s("K"), s("K"), 1000, -273150, 1, {}}};
    case Dimension::Duration:
        return {{s("h"), s("h"), 3600, 0, 1, {s("hr"), s("hrs"), s("hour"), s("hours")}},
                {s("min"), s("min"), 60, 0, 0, {s("minute"), s("minutes")}},
                {s("d"), s("days"), 86400, 0, 0, {s("day"), s("days")}},
                {s("s"), s("s"), 1, 0, 0, {}}};
    case Dimension::Money:
        return {{s("usd"), s("$"), 100, 0, 2, {s("$"), s("dollars")}}};
    case Dimension::Moisture:
        return {{s("pct_dry"), s("% dry"), 1000, 0, 1, {s("%"), s("dry"), s("% db")}},
                {s("pct_wet"), s("% wet"), 1000, 0, 1, {s("wet"), s("% wb")}, true}};
    case Dimension::Ratio:
        return {{s("pct"), s("%"), 1e4, 0, 1, {}}, {s("frac"), s(""), 1e6, 0, 3, {}}};
    case Dimension::Speed:
        return {{s("mph"), s("mph"), 447.04, 0, 0, {}},
                {s("m/s"), s("m/s"), 1000, 0, 1, {s("ms")}},
                {s("km/h"), s("km/h"), 1000.0 / 3.6, 0, 0, {s("kmh")}},
                {s("kn"), s("kn"), 514.444444, 0, 0, {s("kt"), s("knots")}}};
    case Dimension::Pressure:
        return {{s("hPa"), s("hPa"), 100, 0, 1, {s("mbar"), s("mb")}},
                {s("inHg"), s("inHg"), 3386.389, 0, 2, {}},
                {s("Pa"), s("Pa"), 1, 0, 0, {}},
                {s("kPa"), s("kPa"), 1000, 0, 2, {}}};
    case Dimension::Heat:
        return {{s("slb"), s("seasoned lb"), kJoulesPerSeasonedPound, 0, 0, {}},
                {s("Btu"), s("Btu"), kJoulesPerBtu, 0, 0, {}},
                {s("MMBtu"), s("million Btu"), kJoulesPerBtu * 1e6, 0, 2, {}},
                {s("MJ"), s("MJ"), 1e6, 0, 1, {}},
                {s("kWh"), s("kWh"), 3.6e6, 0, 1, {}}};
    case Dimension::HeatContent:
        return {{s("Btu/lb"), s("Btu/lb"), 2326, 0, 0, {}},
                {s("MJ/kg"), s("MJ/kg"), 1e6, 0, 2, {}}};
    case Dimension::Angle:
        return {{s("deg"), s("°"), 1, 0, 0, {}}};
    case Dimension::Plain:
        return {{s("one"), s(""), 1e6, 0, 2, {}}};
    }
    return {};
}

} // namespace

const QVector<Unit> &unitsOf(Dimension dimension)
{
    static const QMap<Dimension, QVector<Unit>> all = [] {
        QMap<Dimension, QVector<Unit>> map;
        for (int i = 0; i <= static_cast<int>(Dimension::Plain); ++i)
            map.insert(static_cast<Dimension>(i), makeUnits(static_cast<Dimension>(i)));
        return map;
    }();
    return *all.constFind(dimension);
}

const Unit *findUnit(Dimension dimension, const QString &keyOrAlias)
{
    const QString lower = keyOrAlias.trimmed().toLower();
    for (const Unit &unit : unitsOf(dimension)) {
        if (unit.key == keyOrAlias.trimmed() || unit.key.toLower() == lower ||
            unit.symbol.toLower() == lower || unit.aliases.contains(lower))
            return &unit;
    }
    return nullptr;
}

const Unit &defaultUnit(Dimension dimension, UnitSystem system)
{
    if (system == UnitSystem::UsCustomary)
        return unitsOf(dimension).first();
    QString key;
    switch (dimension) {
    case Dimension::Mass:
        key = s("kg");
        break;
    case Dimension::Volume:
        key = s("m3");
        break;
    case Dimension::Length:
        key = s("cm");
        break;
    case Dimension::Temperature:
        key = s("degC");
        break;
    case Dimension::Speed:
        key = s("m/s");
        break;
    case Dimension::Heat:
        key = s("MJ");
        break;
    case Dimension::HeatContent:
        key = s("MJ/kg");
        break;
    default:
        break;
    }
    const Unit *unit = key.isEmpty() ? nullptr : findUnit(dimension, key);
    return unit != nullptr ? *unit : unitsOf(dimension).first();
}

double toUnit(qint64 base, const Unit &unit)
{
    if (unit.wetBasis)
        return 100.0 * wetFraction(Moisture::ofBase(base));
    return (static_cast<double>(base) - unit.offset) / unit.scale;
}

qint64 fromUnit(double value, const Unit &unit)
{
    if (unit.wetBasis)
        return moistureFromWetFraction(value / 100.0).base();
    return std::llround(value * unit.scale + unit.offset);
}

QString formatNumber(double value, int decimals, const QLocale &locale)
{
    QString text = locale.toString(std::abs(value), 'f', decimals);
    // Nothing that rounds to zero is shown with a sign.
    const double rounded = std::round(std::abs(value) * std::pow(10.0, decimals));
    if (value < 0 && rounded > 0)
        text.prepend(QChar(0x2212));
    return text;
}

QString formatQuantity(qint64 base, const Unit &unit, const QLocale &locale, int decimals)
{
    const int digits = decimals < 0 ? unit.decimals : decimals;
    const QString text = formatNumber(toUnit(base, unit), digits, locale);
    if (unit.key == QLatin1String("usd")) {
        const bool negative = text.startsWith(QChar(0x2212));
        const QString amount = negative ? text.mid(1) : text;
        return QString((negative ? QString(QChar(0x2212)) : QString()) + QLatin1Char('$') + amount);
    }
    if (unit.symbol.isEmpty())
        return text;
    const bool tight = unit.symbol == QLatin1String("°");
    return QString(text + (tight ? QString() : QString(QChar(0x202F))) + unit.symbol);
}

std::optional<ParsedQuantity> parseQuantity(const QString &text, Dimension dimension,
                                            const Unit &assumed, const QLocale &locale)
{
    QString body = text.trimmed();
    body.replace(QChar(0x2212), QLatin1Char('-'));
    if (dimension == Dimension::Money && body.startsWith(QLatin1Char('$')))
        body = body.mid(1).trimmed();
    qsizetype split = 0;
    while (split < body.size()) {
        const QChar c = body.at(split);
        const bool numeric = c.isDigit() || c == QLatin1Char('.') || c == QLatin1Char(',') ||
                             ((c == QLatin1Char('-') || c == QLatin1Char('+')) && split == 0);
        if (!numeric)
            break;
        ++split;
    }
    bool ok = false;
    double value = locale.toDouble(body.left(split), &ok);
    if (!ok)
        value = QLocale::c().toDouble(body.left(split), &ok);
    if (!ok || !std::isfinite(value))
        return std::nullopt;
    const QString suffix = body.mid(split).trimmed();
    const Unit *unit = &assumed;
    if (!suffix.isEmpty()) {
        unit = findUnit(dimension, suffix);
        if (unit == nullptr)
            return std::nullopt;
    }
    if (unit->wetBasis && value >= 100.0)
        return std::nullopt;
    const double base = value * unit->scale + unit->offset;
    if (std::abs(base) > 9.0e18)
        return std::nullopt;
    return ParsedQuantity{fromUnit(value, *unit), unit, !suffix.isEmpty()};
}

QString formatDuration(Duration duration)
{
    const qint64 minutes = std::llabs(std::llround(duration.toDouble() / 60.0));
    const QString sign = duration.base() < 0 && minutes > 0 ? QString(QChar(0x2212)) : QString();
    if (minutes >= 48 * 60)
        return QString(sign + QString::number((minutes + 720) / 1440) + s(" days"));
    const QString h = QString::number(minutes / 60);
    const QString m = QString::number(minutes % 60);
    if (minutes < 60)
        return QString(sign + m + s(" min"));
    if (minutes % 60 == 0)
        return QString(sign + h + s(" h"));
    return QString(sign + h + s(" h ") + m + s(" min"));
}

} // namespace rickyard::domain
