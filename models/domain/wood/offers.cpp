#include "models/domain/wood/offers.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/offer_draws.h"
#include "models/domain/wood/offer_words.h"
#include "models/domain/wood/sale.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rickyard::domain {

namespace {

constexpr double kGreenWithoutFigure = 0.70; // post oak 70.9 % in the US forest inventory's table
constexpr double kDriestOffered = 0.04;      // no wood under a roof gets drier than its air
constexpr double kWettestOffered = 1.80;

// What the draws need of one offer.
struct OfferCase {
    Offer offer;
    Species species;
    SoldAmount amount;
    HeatParts parts; // at the figures in use
    Expectation shortness;
    Expectation wetness;
};

double shareThatComes(double shortness)
{
    return std::clamp(1.0 - shortness, 0.05, 2.0);
}

double offeredMoisture(double fraction)
{
    return std::clamp(fraction, kDriestOffered, kWettestOffered);
}

QString whyNotPriced(const Species &species, const SoldAmount &amount, const Offer &offer)
{
    if (species.neverBurn)
        return QString(QStringLiteral("Never burn ") + species.name + QStringLiteral(" for food") +
                       (species.neverBurnReason.isEmpty()
                            ? QStringLiteral(".")
                            : QString(QStringLiteral(": ") + species.neverBurnReason)));
    if (species.id == 0)
        return QStringLiteral("Say which species it is.");
    if (amount.count <= 0)
        return QStringLiteral("Say how many are offered.");
    if (offer.price < Money() || offer.delivery.value_or(Money()) < Money())
        return QStringLiteral("The price is below nothing: correct it.");
    if (amount.unit == SellUnit::Pound)
        return {};
    const auto volume = stackedOf(amount);
    if (!volume || volume->base() <= 0)
        return QStringLiteral("Give the stacked volume of a bundle: without it there is no amount "
                              "to compare.");
    if (species.basicGravity.base() <= 0)
        return QString(QStringLiteral("Enter the basic specific gravity of ") + species.name +
                       QStringLiteral(": a volume needs it to become weight."));
    return {};
}

// The promise of the offer, else the supplier's usual one, moved by their record; without any
// promise the wood counts as green, and the record, which is about promises, is not applied.
void expectMoisture(OfferLine &line, OfferCase &one, const Supplier &supplier)
{
    line.promised = one.offer.promised;
    if (!line.promised && supplier.promised) {
        line.promised = supplier.promised;
        line.promiseOfSupplier = true;
        line.notes << QStringLiteral("no moisture in the offer: the supplier's usual promise");
    }
    if (line.promised) {
        one.parts.moisture =
            offeredMoisture(dryFraction(*line.promised) + one.wetness.mean / 100.0);
    } else {
        one.parts.moisture =
            one.species.green ? dryFraction(*one.species.green) : kGreenWithoutFigure;
        one.wetness = expectationOf({}, kDefaultWetScatter);
        line.moistureAssumed = true;
        line.notes << QStringLiteral("no moisture promised: taken as green");
    }
    line.expected = moistureFromDryFraction(one.parts.moisture);
}

void priceLine(OfferLine &line, const OfferCase &one, std::optional<Heat> typicalCook)
{
    const HeatParts &parts = one.parts;
    line.netHeat = Heat::rounded(netHeatOfParts(parts, one.species));
    line.dryMass =
        parts.asIsKilograms > 0
            ? massFromKilograms(parts.amount * parts.asIsKilograms / (1.0 + parts.moisture))
            : dryMassOfSolid(Volume::rounded(1000.0 * parts.amount * parts.solidLitres),
                             one.species, line.expected);
    line.stacked = stackedOf(one.amount);
    if (!line.stacked && one.species.basicGravity.base() > 0) {
        const Mass dry = massFromKilograms(parts.asIsKilograms / (1.0 + parts.moisture));
        line.stacked = stackedFromSolid(solidVolume(dry, one.species, line.expected));
        line.stackedDerived = true;
    }
    if (line.stacked && line.stacked->base() > 0)
        line.centsPerCord = line.cents / cords(*line.stacked);
    line.centsPerDryPound = line.cents / pounds(line.dryMass);
    line.centsPerMillionBtu = line.cents / (line.netHeat.toDouble() / kJoulesPerBtu / 1e6);
    if (typicalCook)
        line.centsPerCook = line.cents * (*typicalCook / line.netHeat);
}

struct Bench {
    QVector<OfferLine> lines;
    QVector<OfferCase> cases; // one a line; idle for a refused one
    QMap<RecordId, SupplierRecord> records;
};

void layOut(Bench &bench, const Books &books, const Offer &offer, std::optional<Heat> typicalCook,
            const Wording &wording)
{
    if (!bench.records.contains(offer.supplier))
        bench.records.insert(offer.supplier, supplierRecord(books, offer.supplier, wording));
    const SupplierRecord &record = bench.records[offer.supplier];
    OfferCase one;
    one.offer = offer;
    one.species = books.species.value(offer.species);
    one.amount = soldAmount(offer);
    one.shortness = expectedShort(record);
    one.wetness = expectedWetPoints(record);
    OfferLine line;
    line.offer = offer.id;
    line.supplier = books.suppliers.value(offer.supplier).name;
    line.wood = one.species.name;
    line.amount = soldWords(one.amount, wording.metric, localeOf(wording));
    line.recordWords = supplierRecordWords(record, wording);
    line.cents = (offer.price + offer.delivery.value_or(Money())).toDouble();
    line.refused = whyNotPriced(one.species, one.amount, offer);
    if (line.priced()) {
        if (const auto weight = weightOf(one.amount))
            one.parts.asIsKilograms = kilograms(*weight);
        else
            one.parts.solidLitres = solidFromStacked(*stackedOf(one.amount)).toDouble() / 1000.0;
        one.parts.amount = shareThatComes(one.shortness.mean);
        line.expectedShort = 1.0 - one.parts.amount;
        expectMoisture(line, one, books.suppliers.value(offer.supplier));
        priceLine(line, one, typicalCook);
        if (!one.species.grossHeat)
            line.notes << QStringLiteral("heat of the default hardwood");
        if (!offer.delivery)
            line.notes << QStringLiteral("delivery taken as free: none was given");
    }
    bench.lines << line;
    bench.cases << one;
}

// The factor on the solid wood that stacking makes; a weight needs none.
double stackingFactor(const OfferCase &one, const OfferSpread &spread, double p)
{
    if (one.amount.unit == SellUnit::Pound)
        return 1.0;
    if (one.amount.unit == SellUnit::LooseCubicFoot)
        return triangularQuantile(spread.leastLooseFraction, kLooseSolidFraction,
                                  spread.mostLooseFraction, p) /
               kLooseSolidFraction;
    const double usual = kStackedSolidFraction * kCubicFeetPerCord;
    return triangularQuantile(spread.leastSolidFeetPerCord, usual, spread.mostSolidFeetPerCord, p) /
           usual;
}

// Cents per million Btu in every draw.
std::vector<double> drawPrices(const OfferCase &one, double cents, const OfferTrial &trial,
                               int draws)
{
    const RecordId supplier = one.offer.supplier;
    DrawStream gross(trial.seed, DrawSubject::GrossHeat);
    DrawStream measure(trial.seed, DrawSubject::Measure, supplier);
    DrawStream stacking(trial.seed, DrawSubject::Stacking, supplier);
    DrawStream moisture(trial.seed, DrawSubject::Promise, supplier, one.offer.species);
    DrawStream density(trial.seed, DrawSubject::Density, supplier, one.offer.species);
    const OfferSpread &spread = trial.spread;
    std::vector<double> prices(static_cast<std::size_t>(draws));
    for (double &price : prices) {
        HeatParts parts = one.parts;
        parts.grossHeat = std::max(0.5, 1.0 + spread.grossHeatSd * gross.normal());
        parts.density = std::max(0.5, 1.0 + spread.densitySd * density.normal());
        parts.solidLitres *= stackingFactor(one, spread, stacking.uniform());
        parts.amount = shareThatComes(one.shortness.mean +
                                      spread.record * one.shortness.scale *
                                          measure.studentT(one.shortness.degreesOfFreedom));
        parts.moisture =
            offeredMoisture(parts.moisture + spread.record * one.wetness.scale / 100.0 *
                                                 moisture.studentT(one.wetness.degreesOfFreedom));
        price = cents / (netHeatOfParts(parts, one.species) / kJoulesPerBtu / 1e6);
    }
    return prices;
}

void tryOut(Bench &bench, const OfferTrial &trial, int draws)
{
    std::vector<std::vector<double>> prices;
    QVector<OfferLine *> lines;
    for (qsizetype i = 0; i < bench.lines.size(); ++i) {
        OfferLine &line = bench.lines[i];
        if (!line.priced())
            continue;
        prices.push_back(drawPrices(bench.cases.at(i), line.cents, trial, draws));
        line.low = statistics::quantileType7(prices.back(), 0.1).value();
        line.high = statistics::quantileType7(prices.back(), 0.9).value();
        lines << &line;
    }
    for (std::size_t draw = 0; draw < static_cast<std::size_t>(draws) && !prices.empty(); ++draw) {
        double best = prices.front().at(draw);
        for (const auto &of : prices)
            best = std::min(best, of.at(draw));
        // Equal to rounding: two offers of the same wood at the same price tie in every draw.
        const auto ties = [&](const std::vector<double> &of) {
            return of.at(draw) <= best * (1.0 + 1e-9);
        };
        const auto winners = std::count_if(prices.cbegin(), prices.cend(), ties);
        for (std::size_t i = 0; i < prices.size(); ++i)
            if (ties(prices.at(i)))
                lines[static_cast<qsizetype>(i)]->cheapest +=
                    1.0 / static_cast<double>(winners) / draws;
    }
}

bool ranksBefore(const OfferLine &a, const OfferLine &b)
{
    if (a.priced() != b.priced())
        return a.priced();
    return a.priced() && a.centsPerMillionBtu < b.centsPerMillionBtu;
}

} // namespace

OfferSpread OfferSpread::none()
{
    const double usual = kStackedSolidFraction * kCubicFeetPerCord;
    return {usual, usual, kLooseSolidFraction, kLooseSolidFraction, 0, 0, 0};
}

int OfferComparison::priced() const
{
    return static_cast<int>(std::count_if(lines.cbegin(), lines.cend(),
                                          [](const OfferLine &line) { return line.priced(); }));
}

double netHeatOfParts(const HeatParts &parts, const Species &species)
{
    const Moisture moisture = moistureFromDryFraction(parts.moisture);
    WoodAnalysis analysis = analysisOf(species);
    analysis.grossHeat *= parts.grossHeat;
    const double dryKilograms =
        parts.asIsKilograms > 0 ? parts.asIsKilograms / (1.0 + parts.moisture)
                                : parts.solidLitres * parts.density * gravityAt(species, moisture);
    return parts.amount * dryKilograms * netHeatPerDryKilogram(analysis, moisture);
}

std::optional<Heat> typicalCookHeat(const QVector<CookFuel> &cooks)
{
    std::vector<double> heats;
    for (const CookFuel &cook : cooks)
        if (cook.finished && cook.netHeat > Heat())
            heats.push_back(cook.netHeat.toDouble());
    const auto middle = statistics::median(heats);
    return middle ? std::optional(Heat::rounded(middle.value())) : std::nullopt;
}

OfferComparison compareOffers(const Books &books, std::optional<Heat> typicalCook,
                              const OfferTrial &trial, const Wording &wording)
{
    OfferComparison comparison;
    comparison.draws = std::max(trial.draws, kLeastOfferDraws);
    Bench bench;
    for (const Offer &offer : books.offers)
        if (!offer.closed)
            layOut(bench, books, offer, typicalCook, wording);
    tryOut(bench, trial, comparison.draws);
    comparison.lines = bench.lines;
    std::stable_sort(comparison.lines.begin(), comparison.lines.end(), ranksBefore);
    comparison.headline = offerHeadline(comparison, wording);
    return comparison;
}

} // namespace rickyard::domain
