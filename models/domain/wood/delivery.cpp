#include "models/domain/wood/delivery.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/sale.h"
#include "models/domain/wood/stacks.h"
#include "models/domain/wood/stock.h"

#include <cmath>

namespace rickyard::domain {

namespace {

QString percentWords(double part, const Wording &wording)
{
    return QString(formatNumber(100.0 * part, 0, localeOf(wording)) + QStringLiteral(" %"));
}

std::optional<Volume> stackedThatCame(const Books &books, const Lot &lot,
                                      const std::optional<DryMassResult> &dry)
{
    if (lot.measuredBy == Measure::Stack && !lot.stacks.isEmpty())
        return stackedVolume(lot.stacks);
    if (lot.measuredBy == Measure::Loose && lot.looseVolume)
        return stackedFromSolid(solidFromLoose(*lot.looseVolume));
    if (lot.measuredBy == Measure::Weighed && dry && dry->moisture)
        return stackedFromSolid(
            solidVolume(dry->dryMass, books.species.value(lot.species), *dry->moisture));
    return std::nullopt; // as claimed: nothing was measured
}

void compareMoisture(DeliveryCheck &check, const Books &books, const Lot &lot)
{
    check.promised = lot.promisedMoisture;
    if (!check.promised && lot.supplier)
        check.promised = books.suppliers.value(*lot.supplier).promised;
    auto sample = firstMoistureAfter(books, lot.id, lot.received - Duration::ofBase(1));
    if (!sample)
        sample = latestMoisture(books, lot.id, lot.received);
    if (!sample)
        return;
    check.moisture = sample->mean();
    check.moistureHalfWidth = sample->halfWidth();
    if (check.promised)
        check.wetter =
            *check.moisture - check.moistureHalfWidth.value_or(Moisture()) > *check.promised;
}

void weigh(DeliveryCheck &check, const Books &books, const Lot &lot, const DryMassResult &dry)
{
    check.dryMass = dry.dryMass;
    // The figure in use is 85 of 128; the band follows in proportion.
    const bool weighed = lot.measuredBy == Measure::Weighed;
    const double usual = kStackedSolidFraction * kCubicFeetPerCord;
    check.dryMassLow = dry.dryMass * (weighed ? 1.0 : kLeastSolidFeetPerCord / usual);
    check.dryMassHigh = dry.dryMass * (weighed ? 1.0 : kMostSolidFeetPerCord / usual);
    const std::optional<Moisture> moisture = dry.moisture ? dry.moisture : check.moisture;
    if (moisture)
        check.netHeat =
            netHeatOf(dry.dryMass, *moisture, analysisOf(books.species.value(lot.species)));
}

// Volumes where there are two to compare; weights when the wood was paid for and came by the scale.
void compareAmount(DeliveryCheck &check, const Lot &lot, const std::optional<SoldAmount> &paid)
{
    check.paidFor = paid ? stackedOf(*paid) : std::nullopt;
    check.paidWeight = paid ? weightOf(*paid) : std::nullopt;
    if (lot.measuredBy == Measure::Weighed && lot.weight && lot.weight->base() > 0)
        check.weight = lot.weight;
    if (check.paidWeight && check.weight && check.paidWeight->base() > 0) {
        check.byWeight = true;
        check.shortBy = 1.0 - *check.weight / *check.paidWeight;
    } else if (check.stacked && check.paidFor && check.paidFor->base() > 0) {
        check.shortBy = 1.0 - *check.stacked / *check.paidFor;
    }
}

void price(DeliveryCheck &check, const Lot &lot, std::optional<Heat> typicalCook)
{
    if (!lot.price)
        return;
    const double cents = lot.price->toDouble();
    const std::optional<Volume> volume = check.stacked ? check.stacked : check.paidFor;
    if (volume && volume->base() > 0)
        check.centsPerCord = cents / cords(*volume);
    if (check.dryMass && check.dryMass->base() > 0)
        check.centsPerDryPound = cents / pounds(*check.dryMass);
    if (check.netHeat && check.netHeat->base() > 0)
        check.centsPerMillionBtu = cents / (check.netHeat->toDouble() / kJoulesPerBtu / 1e6);
    if (typicalCook && check.netHeat && check.netHeat->base() > 0)
        check.centsPerCook = cents * (*typicalCook / *check.netHeat);
}

QString weightText(Mass mass, const Wording &wording)
{
    return show(mass, wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                localeOf(wording), 0);
}

// Nothing is kept of the shares of a mix, so this only tells that there is one.
bool isMixed(const Species &species, const Lot &lot)
{
    const QString mixed = QStringLiteral("mixed");
    return species.name.contains(mixed, Qt::CaseInsensitive) ||
           lot.name.contains(mixed, Qt::CaseInsensitive) ||
           lot.note.contains(mixed, Qt::CaseInsensitive);
}

double toleranceOf(const DeliveryCheck &check)
{
    return check.byWeight ? kShortWeight : kShortDelivery;
}

// "short by 22 %: 0.78 cord came, 1.00 cord was paid for".
QString volumeWords(const DeliveryCheck &check, const Wording &wording)
{
    if (!check.stacked && !check.byWeight)
        return check.paidWeight && !check.weight
                   ? QString(weightText(*check.paidWeight, wording) +
                             QStringLiteral(" was paid for: weigh the load before burning any"))
                   : QStringLiteral("nothing was measured: stack it and measure before burning "
                                    "any");
    if (!check.shortBy)
        return QString(
            stackedWords(*check.stacked, wording) +
            (check.paidWeight
                 ? QString(QStringLiteral(" came, ") + weightText(*check.paidWeight, wording) +
                           QStringLiteral(" was paid for; weigh it to compare"))
                 : QStringLiteral(" came; enter what was paid for to compare")));
    const QString both =
        check.byWeight
            ? QString(weightText(*check.weight, wording) + QStringLiteral(" came, ") +
                      weightText(*check.paidWeight, wording) +
                      QStringLiteral(" was paid for, water included"))
            : QString(stackedWords(*check.stacked, wording) + QStringLiteral(" came, ") +
                      stackedWords(*check.paidFor, wording) + QStringLiteral(" was paid for"));
    if (isShort(check))
        return QString(QStringLiteral("short by ") + percentWords(*check.shortBy, wording) +
                       QStringLiteral(": ") + both);
    if (*check.shortBy < -toleranceOf(check))
        return QString(QStringLiteral("over by ") + percentWords(-*check.shortBy, wording) +
                       QStringLiteral(": ") + both);
    return QString(QStringLiteral("as paid for: ") + both);
}

QString moistureFinding(const DeliveryCheck &check, const Wording &wording)
{
    if (!check.moisture)
        return QStringLiteral("not read: split some pieces and read the fresh faces");
    QString words = bothBases(*check.moisture, wording);
    if (check.moistureHalfWidth)
        words += QString(
            QStringLiteral(" ± ") +
            formatNumber(check.moistureHalfWidth->toDouble() / 1000.0, 1, localeOf(wording)));
    else
        words += QStringLiteral(" from one piece");
    if (!check.promised)
        return QString(words + QStringLiteral("; nothing was promised"));
    words += QString(QStringLiteral(", ") + bothBases(*check.promised, wording) +
                     QStringLiteral(" promised"));
    if (*check.wetter)
        return QString(words + QStringLiteral(": wetter than promised"));
    if (*check.moisture > *check.promised)
        return QString(words + QStringLiteral(": above it, but within the reading's error"));
    return QString(words + QStringLiteral(": as promised"));
}

QString dryMassWords(const DeliveryCheck &check, const Wording &wording)
{
    const UnitSystem system = wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary;
    const QLocale locale = localeOf(wording);
    const QString middle = show(*check.dryMass, system, locale, 0);
    if (check.dryMassLow == check.dryMassHigh)
        return middle;
    return QString(middle + QStringLiteral(", ") + show(*check.dryMassLow, system, locale, 0) +
                   QStringLiteral(" to ") + show(*check.dryMassHigh, system, locale, 0) +
                   QStringLiteral(", as a cord holds 70 to 90 ft³ of solid wood"));
}

QString priceWords(const DeliveryCheck &check, const Wording &wording)
{
    QStringList parts;
    if (check.centsPerCord)
        parts << QString(moneyWords(*check.centsPerCord, wording) + QStringLiteral(" a cord"));
    if (check.centsPerDryPound)
        parts << QString(moneyWords(*check.centsPerDryPound, wording, 3) +
                         QStringLiteral(" a dry pound"));
    if (check.centsPerMillionBtu)
        parts << QString(moneyWords(*check.centsPerMillionBtu, wording) +
                         QStringLiteral(" a million Btu net"));
    if (check.centsPerCook)
        parts << QString(moneyWords(*check.centsPerCook, wording) +
                         QStringLiteral(" a typical cook"));
    return parts.join(QStringLiteral(", "));
}

void verdict(Headline &headline, const DeliveryCheck &check, const Lot &lot, const Wording &wording)
{
    const bool wet = check.wetter.value_or(false);
    const bool tooWet = check.moisture && *check.moisture > kDryEnough;
    QStringList faults;
    if (isShort(check))
        faults << QString(QStringLiteral("short by ") + percentWords(*check.shortBy, wording));
    if (wet)
        faults << QStringLiteral("wetter than promised");
    headline.sentence << SentencePart{QString(lot.name + QStringLiteral(": ")), false};
    if (!faults.isEmpty()) {
        headline.standing = Standing::Act;
        headline.sentence << SentencePart{faults.join(QStringLiteral(" and ")), true}
                          << SentencePart{QStringLiteral(". Photograph the stack and tell the "
                                                         "supplier before any is burned."),
                                          false};
    } else if (!check.shortBy || !check.moisture) {
        headline.standing = Standing::Unknown;
        headline.sentence << SentencePart{
            !check.stacked && !check.byWeight ? QStringLiteral("not measured yet.")
            : !check.shortBy ? QStringLiteral("nothing on record to compare the amount with.")
                             : QStringLiteral("the amount is right, the moisture is not read yet."),
            false};
    } else {
        headline.standing = tooWet ? Standing::Watch : Standing::Good;
        headline.sentence << SentencePart{
            tooWet ? QStringLiteral("the amount is right; it is not dry enough to burn yet.")
                   : QStringLiteral("the amount is right and it is dry."),
            false};
    }
    if (check.shortBy) {
        headline.figure = formatNumber(100.0 * (1.0 - *check.shortBy), 0, localeOf(wording));
        headline.figureUnit = QStringLiteral("% of what was paid for");
    }
}

} // namespace

bool isShort(const DeliveryCheck &check)
{
    return check.shortBy && *check.shortBy > toleranceOf(check);
}

DeliveryCheck checkDelivery(const Books &books, const Lot &lot, const Wording &wording,
                            std::optional<Heat> typicalCook)
{
    DeliveryCheck check;
    compareMoisture(check, books, lot);
    const Outcome<DryMassResult> outcome = dryMassReceived(books, lot);
    const std::optional<DryMassResult> dry =
        outcome ? std::optional(outcome.value()) : std::nullopt;
    check.stacked = stackedThatCame(books, lot, dry);
    compareAmount(check, lot, paidFor(lot));
    if (dry)
        weigh(check, books, lot, *dry);
    price(check, lot, typicalCook);
    verdict(check.headline, check, lot, wording);
    const Link link{TableId::Lot, lot.id};
    QVector<Reason> &reasons = check.headline.reasons;
    reasons << Reason{QStringLiteral("Amount"), volumeWords(check, wording),
                      lot.measuredBy != Measure::Stack, link};
    reasons << Reason{QStringLiteral("Moisture"), moistureFinding(check, wording), false, link};
    if (check.dryMass)
        reasons << Reason{QStringLiteral("Dry wood"), dryMassWords(check, wording), dry->assumed,
                          link};
    if (check.centsPerCord || check.centsPerDryPound)
        reasons << Reason{QStringLiteral("Price"), priceWords(check, wording), false, link};
    if (isMixed(books.species.value(lot.species), lot))
        reasons << Reason{
            QStringLiteral("Mixed wood"),
            QStringLiteral("a claim of the shares of mixed woods holds when each lies "
                           "within 10 points of what was said (NIST Handbook 130, "
                           "section 2.4.2); count the pieces of each to know"),
            false, link};
    if (dry && !dry->assumption.isEmpty())
        reasons << Reason{QStringLiteral("Taken for granted"), dry->assumption, true, link};
    for (const Problem &problem : outcome.problems())
        reasons << Reason{QStringLiteral("Missing"), problem.message, false, link};
    return check;
}

} // namespace rickyard::domain
