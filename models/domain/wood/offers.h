// Offers side by side: what the usable heat of each costs, and how sure the ranking is.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/fire/fuel.h"
#include "models/domain/records/books.h"
#include "models/domain/wood/supplier_record.h"

#include <optional>

namespace rickyard::domain {

// How far the inputs may lie from the figures in use. Solid and loose wood: triangular between the
// ends with the figure in use (85 ft³ a cord, 85 of 180 loose) as the likeliest. Density and gross
// heat: normal, the sd half of what is said (±5 % and ±3 %: published species figures agree within
// about that much). Supplier: the spread of their record, scaled by `record`.
struct OfferSpread {
    double leastSolidFeetPerCord = 70;
    double mostSolidFeetPerCord = 90;
    double leastLooseFraction = 0.40;
    double mostLooseFraction = 0.50;
    double densitySd = 0.025;
    double grossHeatSd = 0.015;
    double record = 1; // 0: the supplier's expectation is taken as certain

    static OfferSpread none(); // nothing varies
};

struct OfferTrial {
    quint64 seed = 1; // same seed, same answer
    int draws = 8000; // at least kLeastOfferDraws are taken
    OfferSpread spread;
};
constexpr int kLeastOfferDraws = 4000;

struct OfferLine {
    RecordId offer = 0;
    QString supplier;
    QString wood;    // species
    QString amount;  // "1 face cord (42.7 ft³)"
    QString refused; // why it has no price; empty otherwise
    // Price with delivery, in cents.
    double cents = 0;
    std::optional<Volume> stacked; // as offered; of a weight: what it makes at that moisture
    bool stackedDerived = false;   // from the weight
    double expectedShort = 0;      // by the supplier's record, as a fraction of the amount
    std::optional<Moisture> promised;
    bool promiseOfSupplier = false; // the offer promises nothing: the supplier's usual promise
    Moisture expected;              // the promise moved by the record
    bool moistureAssumed = false;   // nothing promised: taken as green
    Mass dryMass;                   // of the amount expected to come
    Heat netHeat;
    // Cents, not whole. A cord is one of the amount offered; dry pounds and heat are of what is
    // expected to come.
    std::optional<double> centsPerCord;
    double centsPerDryPound = 0;
    double centsPerMillionBtu = 0;
    std::optional<double> centsPerCook;
    double low = 0; // 80 % interval of centsPerMillionBtu
    double high = 0;
    double cheapest = 0; // share of the draws in which it is the cheapest; ties are shared
    QString recordWords; // the supplier's record
    QStringList notes;   // what was taken for granted

    [[nodiscard]] bool priced() const { return refused.isEmpty(); }
};

struct OfferComparison {
    QVector<OfferLine> lines; // priced first, cheapest heat first; then those refused
    Headline headline;
    int draws = 0;

    [[nodiscard]] int priced() const;
};

// Every offer that is not closed. Draws that offers share are common to them: the gross heat to
// all; the supplier's measure and stacking to the offers of one supplier; moisture and density to
// the same wood of one supplier. What is common cannot turn the ranking round.
OfferComparison compareOffers(const Books &books, std::optional<Heat> typicalCook,
                              const OfferTrial &trial, const Wording &wording);

// Median net heat of the cooks that are out; missing without one.
std::optional<Heat> typicalCookHeat(const QVector<CookFuel> &cooks);

// Net heat of one amount of wood, in joules, from its parts; what both the figure in use and every
// draw are reckoned by. `solidLitres` or `asIsKilograms` is what was offered (the other 0).
struct HeatParts {
    double solidLitres = 0;
    double asIsKilograms = 0;
    double moisture = 0; // dry basis, fraction
    double amount = 1;   // share of what was offered that comes
    double density = 1;  // factors on the species' figures
    double grossHeat = 1;
};
double netHeatOfParts(const HeatParts &parts, const Species &species);

} // namespace rickyard::domain
