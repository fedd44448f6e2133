#include "models/domain/fire/use_words.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/heat_value.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

struct FireUseWords {
    Q_DECLARE_TR_FUNCTIONS(FireUse)
};

QString labelOf(HeatColumn column)
{
    switch (column) {
    case ShellColumn:
        return FireUseWords::tr("Shell");
    case WindColumn:
        return FireUseWords::tr("Wind");
    case LightingColumn:
        return FireUseWords::tr("Lighting");
    case FoodColumn:
        return FireUseWords::tr("Food");
    case RainColumn:
        break;
    }
    return FireUseWords::tr("Rain");
}

QString shelterOf(Shelter shelter)
{
    switch (shelter) {
    case Shelter::Open:
        return FireUseWords::tr("in the open");
    case Shelter::Half:
        return FireUseWords::tr("half sheltered");
    case Shelter::Sheltered:
        break;
    }
    return FireUseWords::tr("sheltered");
}

} // namespace

Mass woodFor(Heat heat, Moisture moisture)
{
    const double perDry = netHeatPerDryKilogram(WoodAnalysis(), moisture);
    if (!(perDry > 0))
        return {};
    return massFromKilograms(heat.toDouble() / perDry * (1.0 + moisture.toDouble() / 1e5));
}

QVector<UsePart> usePartsOf(const ExpectedUse &use)
{
    const double whole = totalHeat(use.parts);
    QVector<UsePart> parts;
    for (const HeatColumn c : {ShellColumn, WindColumn, LightingColumn, FoodColumn, RainColumn}) {
        const double share = whole > 0 ? use.parts[c] / whole : 0.0;
        if (share >= 0.005)
            parts.append({c, labelOf(c), share});
    }
    std::stable_sort(parts.begin(), parts.end(),
                     [](const UsePart &a, const UsePart &b) { return a.share > b.share; });
    return parts;
}

QString usePartsWords(const ExpectedUse &use, const Wording &wording)
{
    const QLocale locale = localeOf(wording);
    QStringList words;
    for (const UsePart &part : usePartsOf(use))
        words << QString((words.isEmpty() ? part.label : part.label.toLower()) + QLatin1Char(' ') +
                         formatNumber(100.0 * part.share, 0, locale) + QChar(0x202F) +
                         QLatin1Char('%'));
    return words.join(QStringLiteral(", "));
}

QString UseWords::sentence() const
{
    return FireUseWords::tr("%1 should take %2, likely %3. %4.").arg(fire, amount, likely, parts);
}

UseWords useWords(const Books &books, const PlannedFire &fire, const ExpectedUse &use,
                  Moisture moisture, const Wording &wording)
{
    const UnitSystem system = wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary;
    const QLocale locale = localeOf(wording);
    const Unit &unit = defaultUnit(Dimension::Mass, system);
    const auto number = [&](Heat heat) {
        return formatNumber(toUnit(woodFor(heat, moisture).base(), unit), 0, locale);
    };
    const auto withSymbol = [&](const QString &text) {
        return QString(text + QChar(0x00A0) + unit.symbol);
    };
    const double length = hours(fire.length);
    UseWords words;
    words.fire =
        FireUseWords::tr("A %1-hour cook at %2 (%3 outside, %4 of wind, %5)")
            .arg(formatNumber(length, length == std::round(length) ? 0 : 1, locale),
                 show(fire.target, system, locale, 0), show(fire.outside, system, locale, 0),
                 show(fire.wind.value_or(kUsualWind), system, locale, 0),
                 shelterOf(books.pits.value(fire.pit).shelter));
    words.amount = withSymbol(number(use.middle));
    words.likely =
        withSymbol(FireUseWords::tr("%1 to %2").arg(number(use.lower), number(use.upper)));
    words.parts = usePartsWords(use, wording);
    return words;
}

} // namespace rickyard::domain
