#include "models/domain/wood/count_drift.h"

#include "models/domain/wood/count_causes.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/stacks.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rickyard::domain {

namespace {

Problem lessThanNothing(const char *field)
{
    return {QString::fromLatin1(field),
            QStringLiteral("A rick cannot hold less than nothing. Count it again, or say that "
                           "nothing is left.")};
}

double normalDensity(double x, double mean, double sd)
{
    const double z = (x - mean) / sd;
    return std::exp(-0.5 * z * z) / (sd * std::sqrt(2 * std::numbers::pi));
}

double normalBelow(double z)
{
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

// Density of the drift seen under a cause with the error of the count on top. A cause of one
// direction alone is half a normal, which with a normal error is a skew normal (Azzalini 1985,
// Scandinavian Journal of Statistics 12:171; from memory).
double densityUnder(const SuspectedCause &cause, double drift, double countSd)
{
    const double sd = std::hypot(cause.sd, countSd);
    const double density = normalDensity(drift, cause.mean, sd);
    if (cause.sign == 0 || cause.mean != 0)
        return density;
    return 2 * density * normalBelow(cause.sign * drift * cause.sd / (countSd * sd));
}

Outcome<CountedWood> fromStacks(const Books &books, const Lot &lot, const RickCount &count,
                                Instant now)
{
    if (count.stacks.isEmpty())
        return Problem{QStringLiteral("stacks"),
                       QStringLiteral("Measure length and height of the stack.")};
    for (const StackSize &stack : count.stacks)
        if (stack.length.base() < 0 || stack.height.base() < 0 || stack.depth.base() < 0)
            return lessThanNothing("stacks");
    const DryMassResult known = moistureOrAssumed(books, lot.id, now);
    const Moisture moisture = known.moisture.value_or(kDryEnough);
    const Mass dry = dryMassOfSolid(solidFromStacked(stackedVolume(count.stacks)),
                                    books.species.value(lot.species), moisture);
    return CountedWood{dry, dry * kCountStackError, moisture, known.assumption};
}

Outcome<CountedWood> fromSplits(const Books &books, const Lot &lot, const RickCount &count)
{
    if (!count.splits)
        return Problem{QStringLiteral("splits"),
                       QStringLiteral("Enter how many splits there are.")};
    if (*count.splits < 0)
        return lessThanNothing("splits");
    const SplitWeight split = splitWeight(books, lot);
    const Mass dry = split.dry * static_cast<double>(*count.splits);
    return CountedWood{dry, std::max(dry * split.error, split.dry), {}, split.words};
}

Outcome<CountedWood> fromWeight(const Books &books, const Lot &lot, const RickCount &count,
                                Instant now)
{
    if (!count.weight)
        return Problem{QStringLiteral("weight"), QStringLiteral("Enter the weight as it is.")};
    if (count.weight->base() < 0)
        return lessThanNothing("weight");
    const DryMassResult known = moistureOrAssumed(books, lot.id, now);
    const Moisture moisture = known.moisture.value_or(kDryEnough);
    const Mass dry = dryFromAsIs(*count.weight, moisture);
    return CountedWood{dry, dry * kCountWeightError, moisture, known.assumption};
}

} // namespace

Outcome<CountedWood> countedWood(const Books &books, const RickCount &count, Instant now)
{
    const auto found = books.lots.constFind(count.lot);
    if (found == books.lots.constEnd())
        return Outcome<CountedWood>::failed(
            QStringLiteral("This lot was deleted meanwhile: there is nothing to correct."));
    switch (count.way) {
    case CountWay::Stack:
        return fromStacks(books, *found, count, now);
    case CountWay::Splits:
        return fromSplits(books, *found, count);
    case CountWay::Weight:
        return fromWeight(books, *found, count, now);
    case CountWay::Nothing:
        break;
    }
    return CountedWood{Mass(), splitWeight(books, *found).dry, {}, QString()};
}

CountDrift countDrift(const Books &books, RecordId lot, const CountedWood &counted, CountWay way,
                      Instant now, std::optional<Moisture> moistureNow, const Wording &wording)
{
    CountDrift result;
    result.book = lotStockAt(books, lot, now).dryMass;
    result.counted = counted.dry;
    result.error = counted.error;
    // A rick of nothing is still counted no better than to a split or so.
    const double countSd = std::max(kilograms(counted.error), kilograms(kLeastWood));
    const double drift = kilograms(result.drift());
    result.withinError = std::abs(drift) <= 2 * countSd;
    double sum = 0;
    for (const SuspectedCause &suspect :
         suspectedCauses({books, lot, counted, way, now, moistureNow, wording, result})) {
        if (suspect.sign * drift < 0) // its words would say the contrary of what is seen
            continue;
        const double weight = suspect.prior * densityUnder(suspect, drift, countSd);
        sum += weight;
        result.clues << DriftClue{suspect.cause, weight, suspect.words};
    }
    for (DriftClue &clue : result.clues)
        clue.share = sum > 0 ? clue.share / sum : 0;
    std::stable_sort(result.clues.begin(), result.clues.end(),
                     [](const DriftClue &a, const DriftClue &b) { return a.share > b.share; });
    result.clues.removeIf([](const DriftClue &clue) { return clue.share < kLeastShare; });
    return result;
}

QString shareWord(double share)
{
    if (share >= 0.5)
        return QStringLiteral("most likely");
    return share >= 0.2 ? QStringLiteral("may well be") : QStringLiteral("possible");
}

} // namespace rickyard::domain
