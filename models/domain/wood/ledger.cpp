#include "models/domain/wood/ledger.h"

#include "models/domain/quantities/units.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/sale.h"
#include "models/domain/wood/stacks.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// A reading this long after a delivery still tells of the wood that came; later the wood has dried.
constexpr qint64 kLaterReadingDays = 30;

// A split of no known weight: 4 in thick and 16 in long (common practice, no source), its section
// filling three quarters of the square of its thickness (our own).
constexpr double kUsualSplitMetres = 0.1016;
constexpr double kUsualStickMetres = 0.4064;
constexpr double kSplitFill = 0.75;

QString percent(Moisture moisture)
{
    return QString::number(moisture.toDouble() / 1000.0, 'f', 0);
}

struct KnownMoisture {
    std::optional<Moisture> moisture;
    bool assumed = false;
    QString words;
};

KnownMoisture read(const MoistureSample &sample, const QString &when)
{
    if (sample.unreliable)
        return {sample.mean(), true,
                QString(QStringLiteral("moisture ") + percent(sample.mean()) +
                        QStringLiteral(" % dry basis, ") + sample.note + when)};
    return {sample.mean(), !when.isEmpty(),
            when.isEmpty() ? QString()
                           : QString(QStringLiteral("moisture ") + percent(sample.mean()) +
                                     QStringLiteral(" % dry basis") + when)};
}

// The lot comes as a value: it may be one that is just being entered or changed.
KnownMoisture moistureFor(const Books &books, const Lot &lot, Instant time)
{
    if (const auto sample = latestMoisture(books, lot.id, time))
        return read(*sample, {});
    if (const auto sample = firstMoistureAfter(books, lot.id, time)) {
        const qint64 days = ((sample->time - time).base() + 43200) / 86400;
        if (days <= kLaterReadingDays)
            return read(*sample, days == 0
                                     ? QString(QStringLiteral(", read the same day"))
                                     : QString(QStringLiteral(", read ") + QString::number(days) +
                                               QStringLiteral(" days later")));
    }
    if (lot.promisedMoisture)
        return {lot.promisedMoisture, true,
                QString(QStringLiteral("no reading: moisture as promised, ") +
                        percent(*lot.promisedMoisture) + QStringLiteral(" % dry basis"))};
    const Species species = books.species.value(lot.species);
    if (species.green)
        return {species.green, true,
                QString(QStringLiteral("no reading and no promise: taken as green ") +
                        species.name + QStringLiteral(", ") + percent(*species.green) +
                        QStringLiteral(" % dry basis"))};
    return {std::nullopt, true, QStringLiteral("no reading, promise or green moisture is known")};
}

QString sentence(const QStringList &parts)
{
    QStringList said = parts;
    said.removeAll(QString());
    if (said.isEmpty())
        return {};
    QString text = said.join(QStringLiteral("; "));
    text[0] = text.at(0).toUpper();
    return QString(text + QLatin1Char('.'));
}

struct SolidMeasure {
    Volume solid;
    QString words;
};

Outcome<SolidMeasure> solidReceived(const Lot &lot)
{
    const QString stacked = QStringLiteral("85 of 128 ft³ of a stack taken as solid wood");
    if (lot.measuredBy == Measure::Stack) {
        if (lot.stacks.isEmpty())
            return Problem{QStringLiteral("stacks"),
                           QStringLiteral("Measure the stack: length × height × depth. In a single "
                                          "row the depth is the length of the sticks.")};
        return SolidMeasure{solidFromStacked(stackedVolume(lot.stacks)), stacked};
    }
    if (lot.measuredBy == Measure::Loose) {
        if (!lot.looseVolume || lot.looseVolume->base() <= 0)
            return Problem{QStringLiteral("loose_volume"),
                           QStringLiteral("Enter the loose volume of the load.")};
        return SolidMeasure{solidFromLoose(*lot.looseVolume),
                            QStringLiteral("85 of 180 ft³ of a loose load taken as solid wood")};
    }
    const auto claimed = paidFor(lot);
    const auto volume = claimed ? stackedOf(*claimed) : std::nullopt;
    if (!volume)
        return Problem{QStringLiteral("paid_count"),
                       claimed ? QStringLiteral("What was paid for has no volume: measure the "
                                                "stack, or give the weight.")
                               : QStringLiteral("Enter the amount paid for, or measure the "
                                                "stack.")};
    return SolidMeasure{
        solidFromStacked(*volume),
        QString(QStringLiteral("not measured: the amount paid for is taken as true; ") + stacked)};
}

Outcome<DryMassResult> weighedReceived(const Books &books, const Lot &lot)
{
    if (!lot.weight || lot.weight->base() <= 0)
        return Problem{QStringLiteral("weight"), QStringLiteral("Enter the weight as received.")};
    const KnownMoisture known = moistureFor(books, lot, lot.received);
    if (!known.moisture)
        return Problem{QStringLiteral("promised_moisture"),
                       QStringLiteral("A weight needs a moisture to tell wood from water: enter "
                                      "the moisture promised, or the green moisture of the "
                                      "species.")};
    return DryMassResult{dryFromAsIs(*lot.weight, *known.moisture), known.moisture, known.assumed,
                         sentence({known.words})};
}

Movement entry(const DryMassResult &result, RecordId existing)
{
    Movement movement;
    movement.id = existing;
    movement.dryMass = result.dryMass;
    movement.moisture = result.moisture;
    movement.assumed = result.assumed;
    movement.note = result.assumption;
    return movement;
}

} // namespace

std::optional<Moisture> moistureOfLot(const Books &books, RecordId lot, Instant time)
{
    const auto sample = latestMoisture(books, lot, time);
    return sample ? std::optional(sample->mean()) : std::nullopt;
}

DryMassResult moistureOrAssumed(const Books &books, RecordId lot, Instant time)
{
    Lot record = books.lots.value(lot);
    record.id = lot;
    const KnownMoisture known = moistureFor(books, record, time);
    return {Mass(), known.moisture, known.assumed, sentence({known.words})};
}

Outcome<DryMassResult> dryMassReceived(const Books &books, const Lot &lot)
{
    if (!books.species.contains(lot.species))
        return Problem{QStringLiteral("species"),
                       QStringLiteral("Choose the species of the wood.")};
    if (lot.measuredBy == Measure::Weighed)
        return weighedReceived(books, lot);
    const Outcome<SolidMeasure> measure = solidReceived(lot);
    if (!measure)
        return measure.problems();
    const KnownMoisture known = moistureFor(books, lot, lot.received);
    // Without a moisture the wood is counted at its green volume, where it holds least in a cubic
    // foot: shrinkage can only add to it.
    const Moisture moisture = known.moisture.value_or(kFibreSaturation);
    const Mass dry = dryMassOfSolid(measure->solid, books.species.value(lot.species), moisture);
    return DryMassResult{dry, known.moisture, true, sentence({measure->words, known.words})};
}

SplitWeight splitWeight(const Books &books, const Lot &lot)
{
    const Species species = books.species.value(lot.species);
    if (lot.splitMass) {
        const KnownMoisture known =
            moistureFor(books, lot, lot.splitsWeighedAt.value_or(lot.received));
        if (known.moisture) {
            const double n = std::max(lot.splitsWeighed, 1);
            // Unweighed scatter: a quarter of the mean, as splits go (common practice, no source).
            const double spread = lot.splitSpread && lot.splitsWeighed > 1
                                      ? *lot.splitSpread / *lot.splitMass / std::sqrt(n)
                                      : 0.25 / std::sqrt(n);
            return {dryFromAsIs(*lot.splitMass, *known.moisture), spread, known.assumed,
                    known.words};
        }
    }
    const double thickness = lot.splitThickness ? metres(*lot.splitThickness) : kUsualSplitMetres;
    const double length = lot.stickLength ? metres(*lot.stickLength) : kUsualStickMetres;
    const double cubicMetres = kSplitFill * thickness * thickness * length;
    const Mass dry = dryMassOfSolid(Volume::rounded(cubicMetres * 1e6), species, kFibreSaturation);
    return {
        dry, 0.4, true,
        QString(
            QStringLiteral("no split was weighed: ") +
            formatNumber(inches(Length::rounded(thickness * 1e6)), 1, QLocale(QLocale::English)) +
            QStringLiteral(" in thick and ") +
            formatNumber(inches(Length::rounded(length * 1e6)), 0, QLocale(QLocale::English)) +
            QStringLiteral(" in long, ") + formatNumber(pounds(dry), 1, QLocale(QLocale::English)) +
            QStringLiteral(" lb of dry wood each, give or take 40 %"))};
}

Outcome<DryMassResult> dryMassOfFeed(const Books &books, const Feed &feed)
{
    if (!books.lots.contains(feed.lot))
        return Problem{QStringLiteral("lot"), QStringLiteral("Choose the lot that was burned.")};
    const Lot lot = books.lots.value(feed.lot);
    const KnownMoisture known = moistureFor(books, lot, feed.time);
    if (!known.moisture)
        return Problem{QStringLiteral("lot"),
                       QString(QStringLiteral("No moisture is known for ") + lot.name +
                               QStringLiteral(": read some splits with the meter, or enter the "
                                              "moisture promised."))};
    if (feed.weight)
        return DryMassResult{dryFromAsIs(*feed.weight, *known.moisture), known.moisture,
                             known.assumed, sentence({known.words})};
    if (lot.splitMass && !books.species.contains(lot.species))
        return Problem{QStringLiteral("lot"),
                       QStringLiteral("The lot has no species: choose one on it.")};
    const SplitWeight split = splitWeight(books, lot);
    const QString pieces =
        lot.splitMass ? QStringLiteral("weight from the number of splits and the lot's mean split")
                      : split.words;
    return DryMassResult{split.dry * static_cast<double>(feed.pieces), known.moisture,
                         known.assumed || split.assumed, sentence({pieces, known.words})};
}

Outcome<Movement> movementOf(const Books &books, const Lot &lot, RecordId existing)
{
    const Outcome<DryMassResult> dry = dryMassReceived(books, lot);
    if (!dry)
        return dry.problems();
    Movement movement = entry(dry.value(), existing);
    movement.kind = MovementKind::Received;
    movement.lot = lot.id;
    movement.time = lot.received;
    if (lot.measuredBy == Measure::Weighed)
        movement.asIs = lot.weight;
    return movement;
}

Outcome<Movement> movementOf(const Books &books, const Feed &feed, RecordId existing)
{
    const Outcome<DryMassResult> dry = dryMassOfFeed(books, feed);
    if (!dry)
        return dry.problems();
    Movement movement = entry(dry.value(), existing);
    movement.kind = MovementKind::Burned;
    movement.lot = feed.lot;
    movement.time = feed.time;
    movement.dryMass = -movement.dryMass;
    movement.pieces = feed.pieces;
    movement.asIs = feed.weight.value_or(asIsFromDry(dry->dryMass, *dry->moisture));
    movement.cook = feed.cook;
    movement.feed = feed.id;
    return movement;
}

} // namespace rickyard::domain
