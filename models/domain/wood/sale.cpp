#include "models/domain/wood/sale.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/density.h"

namespace rickyard::domain {

namespace {

// "0.75", "2", "1,200".
QString countText(double count)
{
    QString text = QLocale(QLocale::English).toString(count, 'f', 2);
    while (text.contains(QLatin1Char('.')) &&
           (text.endsWith(QLatin1Char('0')) || text.endsWith(QLatin1Char('.'))))
        text.chop(1);
    return text;
}

} // namespace

SoldAmount soldAmount(const Offer &offer)
{
    return {offer.unit, number(offer.count), offer.stickLength, offer.bundleVolume};
}

std::optional<SoldAmount> paidFor(const Lot &lot)
{
    if (!lot.paidCount || lot.paidCount->base() <= 0)
        return std::nullopt;
    return SoldAmount{lot.paidUnit, number(*lot.paidCount), lot.stickLength, lot.bundleVolume};
}

std::optional<Volume> unitVolume(SellUnit unit, std::optional<Length> stickLength,
                                 std::optional<Volume> bundleVolume)
{
    const double stickFeet = stickLength ? inches(*stickLength) / 12.0 : 16.0 / 12.0;
    switch (unit) {
    case SellUnit::Cord:
        return volumeFromCubicFeet(kCubicFeetPerCord);
    case SellUnit::HalfCord:
        return volumeFromCubicFeet(kCubicFeetPerCord / 2);
    case SellUnit::QuarterCord:
        return volumeFromCubicFeet(kCubicFeetPerCord / 4);
    case SellUnit::EighthCord:
        return volumeFromCubicFeet(kCubicFeetPerCord / 8);
    case SellUnit::FaceCord:
        return volumeFromCubicFeet(4.0 * 8.0 * stickFeet);
    case SellUnit::CubicFoot:
        return volumeFromCubicFeet(1);
    case SellUnit::LooseCubicFoot:
        return stackedFromSolid(solidFromLoose(volumeFromCubicFeet(1)));
    case SellUnit::Bundle:
        return bundleVolume;
    case SellUnit::Pound:
        break;
    }
    return std::nullopt;
}

std::optional<Volume> stackedOf(const SoldAmount &amount)
{
    // The whole load at once: a single loose foot is rounded to the millilitre.
    if (amount.unit == SellUnit::LooseCubicFoot)
        return stackedFromSolid(solidFromLoose(volumeFromCubicFeet(amount.count)));
    const auto one = unitVolume(amount.unit, amount.stickLength, amount.bundleVolume);
    return one ? std::optional(*one * amount.count) : std::nullopt;
}

std::optional<Mass> weightOf(const SoldAmount &amount)
{
    return amount.unit == SellUnit::Pound ? std::optional(massFromPounds(amount.count))
                                          : std::nullopt;
}

QString unitName(SellUnit unit, bool one)
{
    switch (unit) {
    case SellUnit::Cord:
        return one ? QStringLiteral("cord") : QStringLiteral("cords");
    case SellUnit::HalfCord:
        return one ? QStringLiteral("half cord") : QStringLiteral("half cords");
    case SellUnit::QuarterCord:
        return one ? QStringLiteral("quarter cord") : QStringLiteral("quarter cords");
    case SellUnit::EighthCord:
        return one ? QStringLiteral("eighth of a cord") : QStringLiteral("eighths of a cord");
    case SellUnit::FaceCord:
        return one ? QStringLiteral("face cord") : QStringLiteral("face cords");
    case SellUnit::CubicFoot:
        return one ? QStringLiteral("cubic foot") : QStringLiteral("cubic feet");
    case SellUnit::LooseCubicFoot:
        return one ? QStringLiteral("loose cubic foot") : QStringLiteral("loose cubic feet");
    case SellUnit::Bundle:
        return one ? QStringLiteral("bundle") : QStringLiteral("bundles");
    case SellUnit::Pound:
        return one ? QStringLiteral("pound") : QStringLiteral("pounds");
    }
    return {};
}

QString unitWords(SellUnit unit, double count)
{
    return QString(countText(count) + QLatin1Char(' ') + unitName(unit, count == 1.0));
}

QString soldWords(const SoldAmount &amount, bool metric, const QLocale &locale)
{
    const QString words = unitWords(amount.unit, amount.count);
    const auto volume = stackedOf(amount);
    if (!volume || (amount.unit == SellUnit::CubicFoot && !metric))
        return words;
    // The cubic feet of a face cord need their tenth: 42.7.
    const double feet = cubicFeet(*volume);
    const int digits = metric ? 2 : (std::abs(feet - std::round(feet)) < 0.05 ? 0 : 1);
    return QString(
        words + QStringLiteral(" (") +
        show(*volume, metric ? UnitSystem::Metric : UnitSystem::UsCustomary, locale, digits) +
        (amount.unit == SellUnit::LooseCubicFoot ? QStringLiteral(" stacked)")
                                                 : QStringLiteral(")")));
}

} // namespace rickyard::domain
