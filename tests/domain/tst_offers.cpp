#include "models/domain/quantities/units.h"
#include "models/domain/statistics/descriptive.h"
#include "models/domain/statistics/distributions.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/offer_draws.h"
#include "models/domain/wood/offers.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstOffers : public QObject
{
    Q_OBJECT
private slots:
    void legalVolumesOfHandbook130();
    void postOakCordByHand();
    void poundsByHand();
    void redOakHeatOfThePublishedAnalysis();
    void typicalCookIsTheMedian();
    void faceCordAlwaysSaysItsFeet();
    void refusedWithTheReason();
    void closedOffersStayOut();
    void recordMovesThePromise();
    void noPromiseIsGreen();
    void scalingChangesNothing();
    void theSameWoodInOtherUnits();
    void cheaperOfTheSameWoodIsCertain();
    void equalOffersWinHalf();
    void shareAgainstItsClosedForm();
    void intervalOfANormal();
    void intervalOfTheStacking();
    void intervalOfTheRecord();
    void drawsFollowTheirDistributions();
    void sameSeedSameAnswer();
    void anotherOfferMovesNoInterval();
    void sharesAddUpToOne();
    void sentenceInPlainWords();
};

namespace {

namespace stats = rickyard::domain::statistics;

// Post oak from two suppliers, 20 % dry basis promised.
Books twoSuppliers()
{
    Books books = emptyYard();
    for (RecordId id : {1, 2}) {
        Supplier supplier;
        supplier.id = id;
        supplier.name =
            id == 1 ? QStringLiteral("Invented north") : QStringLiteral("Made-up south");
        books.suppliers.insert(id, supplier);
    }
    return books;
}

Offer &addOffer(Books &books, RecordId supplier, double dollars, SellUnit unit = SellUnit::Cord,
                double count = 1)
{
    Offer offer;
    offer.id = books.offers.isEmpty() ? 1 : books.offers.lastKey() + 1;
    offer.supplier = supplier;
    offer.species = 1;
    offer.unit = unit;
    offer.count = Plain::rounded(count * 1e6);
    offer.price = Money::rounded(dollars * 100);
    offer.promised = dryBasis(20);
    offer.delivery = Money();
    return *books.offers.insert(offer.id, offer);
}

OfferTrial still()
{
    return {1, kLeastOfferDraws, OfferSpread::none()};
}

const OfferLine &lineOf(const OfferComparison &comparison, RecordId offer)
{
    for (const OfferLine &line : comparison.lines)
        if (line.offer == offer)
            return line;
    qFatal("no such offer");
}

bool near(double value, double expected, double tolerance)
{
    if (std::abs(value - expected) <= tolerance)
        return true;
    qWarning("got %.9g, expected %.9g", value, expected);
    return false;
}

} // namespace

// NIST Handbook 130, section 2.4: a cord is 128 ft³, an eighth is 16. The 16-inch face cord of
// 4 × 8 ft (custom of the trade) is 42.667 ft³, a third of a cord.
void TstOffers::legalVolumesOfHandbook130()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 300);
    addOffer(books, 1, 300, SellUnit::EighthCord);
    Offer &face = addOffer(books, 1, 100, SellUnit::FaceCord);
    face.stickLength = Length::rounded(16 * kMicrometresPerInch);
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    QVERIFY(near(cubicFeet(*lineOf(comparison, 1).stacked), 128, 1e-4));
    QVERIFY(near(cubicFeet(*lineOf(comparison, 2).stacked), 16, 1e-4));
    QVERIFY(near(cubicFeet(*lineOf(comparison, 3).stacked), 42.6667, 1e-3));
    QVERIFY(near(*lineOf(comparison, 1).centsPerCord, 30000, 0.01));
    QVERIFY(near(*lineOf(comparison, 2).centsPerCord, 240000, 1));
    QVERIFY(near(*lineOf(comparison, 3).centsPerCord, 30000, 0.1)); // three of them a cord
}

// The cord of tst_delivery: 85 ft³ solid of post oak at 20 % is 3,365.6 lb dry (0.600 basic
// gravity, 16.2 % shrinkage: US forest inventory and Wood Handbook) and 25.988 million Btu net (ISO
// 18125's form, 19.8 MJ/kg). $450 and $50 for bringing it: $500 a cord, 14.856 c a dry pound,
// $19.24.
void TstOffers::postOakCordByHand()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 450).delivery = Money::ofBase(5000);
    const Heat cook = Heat::rounded(2.0e6 * kJoulesPerBtu); // two million Btu
    const OfferComparison comparison = compareOffers(books, cook, still(), {});
    const OfferLine &line = comparison.lines.first();
    QVERIFY(near(pounds(line.dryMass), 3365.6, 0.1));
    QVERIFY(near(line.cents, 50000, 0));
    QVERIFY(near(*line.centsPerCord, 50000, 0.1));
    QVERIFY(near(line.centsPerDryPound, 14.856, 0.001));
    QVERIFY(near(line.centsPerMillionBtu, 1924.0, 0.5));
    QVERIFY(near(*line.centsPerCook, 3848.0, 1.0));
    // Nothing varies: the interval is the figure itself.
    QVERIFY(near(line.low, line.centsPerMillionBtu, 1e-3));
    QVERIFY(near(line.high, line.centsPerMillionBtu, 1e-3));
}

// 1,000 lb at 25 % dry basis are 800 lb of dry wood. Net heat of the default hardwood there is
// 14.271 MJ/kg (the reference table's 20 % wet basis): 1,000 lb × 14.271 / 2.326 kBtu = 6.1354
// million Btu; $92 make 11.5 c a dry pound and $14.995 a million Btu.
void TstOffers::poundsByHand()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 92, SellUnit::Pound, 1000).promised = dryBasis(25);
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    const OfferLine &line = comparison.lines.first();
    QVERIFY(near(pounds(line.dryMass), 800, 0.01));
    QVERIFY(near(line.centsPerDryPound, 11.5, 1e-3));
    QVERIFY(near(line.centsPerMillionBtu, 1499.5, 0.2));
    QVERIFY(line.stackedDerived);
    QVERIFY(!line.centsPerCook);
}

// Red oak, published ultimate analysis, 19,885 J/g gross (Channiwala and Parikh): at 20 % wet basis
// 14,386 J/g. Its 5.92 % hydrogen against the default's 6.2 moves the default analysis to 14,338.
void TstOffers::redOakHeatOfThePublishedAnalysis()
{
    HeatParts parts;
    parts.asIsKilograms = 1;
    parts.moisture = 0.25;
    Species redOak;
    redOak.grossHeat = HeatContent::ofBase(19885000);
    // [19885 - 212.2 × 6.2 - 0.8 × 44.1] × 0.8 - 24.43 × 20 = 14338.7
    QVERIFY(near(netHeatOfParts(parts, redOak) / 1000, 14338.7, 0.2));
    QVERIFY(
        near(netHeatOfParts(parts, redOak) / 1000, 14386, 50)); // the analysis of the wood itself
    parts.amount = 0.5;
    QVERIFY(near(netHeatOfParts(parts, redOak) / 1000, 14338.7 / 2, 0.1));
}

void TstOffers::typicalCookIsTheMedian()
{
    QVERIFY(!typicalCookHeat({}));
    QVector<CookFuel> cooks;
    for (qint64 heat : {9, 1, 4, 100}) {
        CookFuel cook;
        cook.finished = heat != 100; // still burning
        cook.netHeat = Heat::ofBase(heat);
        cooks << cook;
    }
    QCOMPARE(typicalCookHeat(cooks)->base(), 4);
}

void TstOffers::faceCordAlwaysSaysItsFeet()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 100, SellUnit::FaceCord, 2);
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    QVERIFY(comparison.lines.first().amount.contains(QStringLiteral("85.3")));
    QVERIFY(comparison.headline.plainSentence().contains(QStringLiteral("2 face cords (85.3")));
}

void TstOffers::refusedWithTheReason()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 300);
    addOffer(books, 1, 10, SellUnit::Bundle, 3); // 2: no volume
    addOffer(books, 1, 10).count = Plain();      // 3: no amount
    Species cedar = books.species.value(1);
    cedar.id = 2;
    cedar.name = QStringLiteral("Redcedar");
    cedar.neverBurn = true;
    cedar.neverBurnReason = QStringLiteral("resinous");
    books.species.insert(2, cedar);
    addOffer(books, 2, 1).species = 2;  // 4
    addOffer(books, 2, 1).species = 99; // 5: unknown
    Species bare;
    bare.id = 3;
    bare.name = QStringLiteral("Unweighed");
    books.species.insert(3, bare);
    addOffer(books, 2, 1).species = 3; // 6: no gravity
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    QCOMPARE(comparison.priced(), 1);
    QCOMPARE(comparison.lines.first().offer, 1); // the refused stand last however cheap
    QVERIFY(lineOf(comparison, 2).refused.contains(QStringLiteral("volume of a bundle")));
    QVERIFY(lineOf(comparison, 3).refused.contains(QStringLiteral("how many")));
    QCOMPARE(lineOf(comparison, 4).refused,
             QStringLiteral("Never burn Redcedar for food: resinous"));
    QVERIFY(lineOf(comparison, 5).refused.contains(QStringLiteral("which species")));
    QVERIFY(lineOf(comparison, 6).refused.contains(QStringLiteral("basic specific gravity")));
    QCOMPARE(lineOf(comparison, 1).cheapest, 1.0);
    // By weight no gravity is needed; with its volume a bundle is compared.
    books.offers[6].unit = SellUnit::Pound;
    books.offers[2].bundleVolume = volumeFromCubicFeet(0.75);
    QCOMPARE(compareOffers(books, {}, still(), {}).priced(), 3);
}

void TstOffers::closedOffersStayOut()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 300).closed = true;
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    QVERIFY(comparison.lines.isEmpty());
    QCOMPARE(comparison.headline.standing, Standing::Unknown);
    QVERIFY(comparison.headline.plainSentence().startsWith(QStringLiteral("No open offer")));
}

// Three loads 10 % short and 8 points wet: the expectation is three quarters of it (the default
// counts as one delivery), 7.5 % and 6 points.
void TstOffers::recordMovesThePromise()
{
    Books books = twoSuppliers();
    for (RecordId id : {1, 2, 3}) {
        Lot &lot = addLot(books, id, day(static_cast<int>(id)));
        lot.supplier = 1;
        lot.stacks = {{feet(7.2), feet(4), feet(4)}};
        lot.paidCount = Plain::ofBase(1000000);
        lot.promisedMoisture = dryBasis(20);
        addReading(books, id, lot.received, {28, 28});
    }
    addOffer(books, 1, 300);
    addOffer(books, 2, 300);
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    const OfferLine &known = lineOf(comparison, 1);
    QVERIFY(near(known.expectedShort, 0.075, 1e-6));
    QVERIFY(near(known.expected.toDouble() / 1000, 26, 1e-6));
    QCOMPARE(known.promised->base(), 20000);
    QVERIFY(known.recordWords.contains(QStringLiteral("3 of 3 short")));
    const OfferLine &unknown = lineOf(comparison, 2);
    QVERIFY(near(unknown.expectedShort, 0, 1e-12));
    QCOMPARE(unknown.expected.base(), 20000);
    QVERIFY(unknown.recordWords.startsWith(QStringLiteral("No history")));
    QCOMPARE(comparison.lines.first().offer, 2);     // same price, better word
    QVERIFY(near(*known.centsPerCord, 30000, 0.01)); // a cord is one of those offered
}

void TstOffers::noPromiseIsGreen()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 300).promised.reset();
    OfferLine line = compareOffers(books, {}, still(), {}).lines.first();
    QVERIFY(line.moistureAssumed && !line.promised);
    QCOMPARE(line.expected.base(), 70900);
    books.suppliers[1].promised = dryBasis(18);
    line = compareOffers(books, {}, still(), {}).lines.first();
    QVERIFY(line.promiseOfSupplier && !line.moistureAssumed);
    QCOMPARE(line.expected.base(), 18000);
}

// Three times the wood for three times the money is the same offer (to the whole millilitres and
// grams that amounts are kept in).
void TstOffers::scalingChangesNothing()
{
    for (SellUnit unit : {SellUnit::Cord, SellUnit::FaceCord, SellUnit::LooseCubicFoot,
                          SellUnit::Pound, SellUnit::EighthCord}) {
        Books books = twoSuppliers();
        addOffer(books, 1, 20000, unit, 200);
        addOffer(books, 1, 60000, unit, 600);
        const OfferComparison comparison = compareOffers(books, {}, {}, {});
        const OfferLine &one = lineOf(comparison, 1);
        const OfferLine &three = lineOf(comparison, 2);
        QVERIFY(near(three.centsPerMillionBtu / one.centsPerMillionBtu, 1, 1e-6));
        QVERIFY(near(three.centsPerDryPound / one.centsPerDryPound, 1, 1e-6));
        QVERIFY(near(three.low / one.low, 1, 1e-6));
        QVERIFY(near(three.high / one.high, 1, 1e-6));
    }
}

// 2 half cords, 4 quarters, 8 eighths, 3 face cords of 16 in, 128 ft³ and 180 loose ft³ (a cord
// thrown loose, from memory of a state's statute) are one cord, to the whole millilitres
// of a foot.
void TstOffers::theSameWoodInOtherUnits()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 400);
    addOffer(books, 1, 400, SellUnit::HalfCord, 2);
    addOffer(books, 1, 400, SellUnit::QuarterCord, 4);
    addOffer(books, 1, 400, SellUnit::EighthCord, 8);
    addOffer(books, 1, 400, SellUnit::FaceCord, 3);
    addOffer(books, 1, 400, SellUnit::CubicFoot, 128);
    addOffer(books, 1, 400, SellUnit::LooseCubicFoot, 180);
    addOffer(books, 1, 400, SellUnit::Bundle, 200).bundleVolume = volumeFromCubicFeet(0.64);
    const OfferComparison comparison = compareOffers(books, {}, still(), {});
    const double cord = lineOf(comparison, 1).centsPerMillionBtu;
    for (const OfferLine &line : comparison.lines) {
        QVERIFY(near(line.centsPerMillionBtu / cord, 1, 2e-5));
        QVERIFY(near(*line.centsPerCord, 40000, 1));
    }
}

// The same wood of the same supplier shares every draw: the cheaper one is cheaper in all.
void TstOffers::cheaperOfTheSameWoodIsCertain()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 401);
    addOffer(books, 1, 400);
    OfferComparison comparison = compareOffers(books, {}, {}, {});
    QCOMPARE(comparison.lines.first().offer, 2);
    QVERIFY(near(lineOf(comparison, 2).cheapest, 1, 1e-9));
    QVERIFY(near(lineOf(comparison, 1).cheapest, 0, 1e-9));
    QCOMPARE(comparison.headline.standing, Standing::Good);
    QVERIFY(comparison.headline.plainSentence().contains(QStringLiteral("in every try")));
    // At one price they tie in every draw.
    books.offers[1].price = Money::ofBase(40000);
    comparison = compareOffers(books, {}, {}, {});
    QVERIFY(near(lineOf(comparison, 1).cheapest, 0.5, 1e-9));
}

void TstOffers::equalOffersWinHalf()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 400);
    addOffer(books, 2, 400);
    const OfferComparison comparison = compareOffers(books, {}, {11, 20000, {}}, {});
    // Three standard errors of a share of 20,000 draws: 0.0106.
    QVERIFY(near(lineOf(comparison, 1).cheapest, 0.5, 0.0106));
    QCOMPARE(comparison.headline.standing, Standing::Watch);
}

// With only the density drawn, offer A at a is cheaper than B at b when a / (1 + eA) < b / (1 +
// eB), that is a eB - b eA < b - a, a normal with sd s sqrt(a^2 + b^2): share Phi((b - a) / that).
void TstOffers::shareAgainstItsClosedForm()
{
    OfferTrial trial{5, 40000, OfferSpread::none()};
    trial.spread.densitySd = 0.025;
    for (double dearer : {405.0, 415.0, 440.0}) {
        Books books = twoSuppliers();
        addOffer(books, 1, 400);
        addOffer(books, 2, dearer);
        const OfferComparison comparison = compareOffers(books, {}, trial, {});
        const double z = (dearer - 400.0) / (0.025 * std::hypot(400.0, dearer));
        const double share = stats::cdf(stats::Normal{}, z).value();
        QVERIFY(near(lineOf(comparison, 1).cheapest, share, 0.0075)); // three standard errors
    }
}

// A price falls as the density rises: its 10 % and 90 % points are those of the normal turned over.
void TstOffers::intervalOfANormal()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 400);
    OfferTrial trial{3, 40000, OfferSpread::none()};
    trial.spread.densitySd = 0.025;
    const double z = stats::quantile(stats::Normal{}, 0.9).value();
    OfferLine line = compareOffers(books, {}, trial, {}).lines.first();
    QVERIFY(near(line.low / line.centsPerMillionBtu, 1 / (1 + 0.025 * z), 0.001));
    QVERIFY(near(line.high / line.centsPerMillionBtu, 1 / (1 - 0.025 * z), 0.001));
    // Gross heat: 19.8 MJ/kg within a net heat of 14.967 × 1.2 MJ a dry kilogram.
    trial.spread = OfferSpread::none();
    trial.spread.grossHeatSd = 0.015;
    line = compareOffers(books, {}, trial, {}).lines.first();
    const double net = 14.9670667 * 1.2;
    const double half = 19.8 * 0.015 * z;
    QVERIFY(near(line.low / line.centsPerMillionBtu, net / (net + half), 0.001));
    QVERIFY(near(line.high / line.centsPerMillionBtu, net / (net - half), 0.001));
}

// 70 to 90 ft³ with the peak at 85: the tenth lies at 70 + sqrt(0.1 × 20 × 15) = 75.477, the
// ninetieth at 90 - sqrt(0.1 × 20 × 5) = 86.838 (triangular distribution, by hand). Loose:
// 0.40 to 0.50 with the peak at 85/180.
void TstOffers::intervalOfTheStacking()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 400);
    addOffer(books, 1, 400, SellUnit::LooseCubicFoot, 180);
    addOffer(books, 1, 100, SellUnit::Pound, 1000);
    OfferTrial trial{3, 40000, OfferSpread::none()};
    const OfferSpread usual;
    trial.spread.leastSolidFeetPerCord = usual.leastSolidFeetPerCord;
    trial.spread.mostSolidFeetPerCord = usual.mostSolidFeetPerCord;
    trial.spread.leastLooseFraction = usual.leastLooseFraction;
    trial.spread.mostLooseFraction = usual.mostLooseFraction;
    const OfferComparison comparison = compareOffers(books, {}, trial, {});
    const OfferLine &stack = lineOf(comparison, 1);
    QVERIFY(near(stack.high / stack.centsPerMillionBtu, 85 / 75.477, 0.003));
    QVERIFY(near(stack.low / stack.centsPerMillionBtu, 85 / 86.838, 0.002));
    const OfferLine &loose = lineOf(comparison, 2);
    const double peak = 85.0 / 180.0;
    const double tenth = 0.40 + std::sqrt(0.1 * 0.1 * (peak - 0.40));
    const double ninetieth = 0.50 - std::sqrt(0.1 * 0.1 * (0.50 - peak));
    QVERIFY(near(loose.high / loose.centsPerMillionBtu, peak / tenth, 0.003));
    QVERIFY(near(loose.low / loose.centsPerMillionBtu, peak / ninetieth, 0.002));
    const OfferLine &weighed = lineOf(comparison, 3); // a scale knows no stacking
    QVERIFY(near(weighed.high / weighed.low, 1, 1e-9));
}

// Bought by the pound, no history, density and stacking out of it: the amount is 1 - t 0.06 sqrt 2
// and the dry share 1 / (1 + u); u with t 5 sqrt 2 points. Only the amount is drawn here (moisture
// left still by promising what cannot move: below the driest). 90 % of t with 4 degrees: 1.5332.
void TstOffers::intervalOfTheRecord()
{
    DrawStream stream(8, DrawSubject::Measure, 1);
    std::vector<double> prices;
    const Expectation none = expectationOf({}, kDefaultShortScatter);
    for (int i = 0; i < 40000; ++i)
        prices.push_back(1.0 / (1.0 - none.scale * stream.studentT(none.degreesOfFreedom)));
    const double t = stats::quantile(stats::StudentT{4}, 0.9).value();
    QVERIFY(near(t, 1.5332, 1e-4)); // any table of t
    const double high = 1.0 / (1.0 - 0.06 * std::sqrt(2.0) * t);
    QVERIFY(near(stats::quantileType7(prices, 0.9).value(), high, 0.004));
    // The comparison holds both the amount and the moisture, so it is a little wider than that.
    Books books = twoSuppliers();
    addOffer(books, 1, 100, SellUnit::Pound, 1000);
    OfferTrial trial{8, 40000, OfferSpread::none()};
    trial.spread.record = 1;
    const OfferLine line = compareOffers(books, {}, trial, {}).lines.first();
    const double ratio = line.high / line.centsPerMillionBtu;
    QVERIFY(ratio > high && ratio < high + 0.08);
}

void TstOffers::drawsFollowTheirDistributions()
{
    // Share at or below a point against the distribution's own chance: three standard errors.
    constexpr int n = 40000;
    const auto check = [](const stats::Distribution &distribution, auto draw) {
        for (double x : {-2.0, -0.5, 0.0, 1.0, 2.5}) {
            int below = 0;
            for (int i = 0; i < n; ++i)
                below += draw() <= x ? 1 : 0;
            const double p = stats::cdf(distribution, x).value();
            if (!near(below / double(n), p, 3.3 * std::sqrt(p * (1 - p) / n)))
                return false;
        }
        return true;
    };
    DrawStream stream(42, DrawSubject::Density, 3, 4);
    QVERIFY(check(stats::Normal{}, [&] { return stream.normal(); }));
    QVERIFY(check(stats::StudentT{4}, [&] { return stream.studentT(4); }));
    QVERIFY(check(stats::StudentT{11}, [&] { return stream.studentT(11); }));
    double sum = 0;
    for (int i = 0; i < n; ++i) {
        const double u = stream.uniform();
        QVERIFY(u > 0 && u < 1);
        sum += u;
    }
    QVERIFY(near(sum / n, 0.5, 3.3 / std::sqrt(12.0 * n)));
    // The quantile undoes the distribution function of the triangle.
    for (double p : {0.0, 0.2, 0.75, 0.9, 1.0}) {
        const double x = triangularQuantile(70, 85, 90, p);
        const double back = x < 85 ? (x - 70) * (x - 70) / 300 : 1 - (90 - x) * (90 - x) / 100;
        QVERIFY(near(back, p, 1e-12));
    }
    // The normals of two subjects do not go together.
    DrawStream one(42, DrawSubject::Density, 1, 1);
    DrawStream two(42, DrawSubject::Density, 2, 1);
    double product = 0;
    for (int i = 0; i < n; ++i)
        product += one.normal() * two.normal();
    QVERIFY(near(product / n, 0, 3.3 / std::sqrt(double(n))));
}

void TstOffers::sameSeedSameAnswer()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 400);
    addOffer(books, 2, 410, SellUnit::LooseCubicFoot, 190);
    const OfferComparison first = compareOffers(books, {}, {7, 5000, {}}, {});
    const OfferComparison again = compareOffers(books, {}, {7, 5000, {}}, {});
    const OfferComparison other = compareOffers(books, {}, {8, 5000, {}}, {});
    for (RecordId id : {1, 2}) {
        QCOMPARE(lineOf(again, id).low, lineOf(first, id).low);
        QCOMPARE(lineOf(again, id).high, lineOf(first, id).high);
        QCOMPARE(lineOf(again, id).cheapest, lineOf(first, id).cheapest);
        QVERIFY(lineOf(other, id).low != lineOf(first, id).low);
        QVERIFY(near(lineOf(other, id).low / lineOf(first, id).low, 1, 0.02));
    }
    QCOMPARE(compareOffers(books, {}, {1, 10, {}}, {}).draws, kLeastOfferDraws);
}

void TstOffers::anotherOfferMovesNoInterval()
{
    Books books = twoSuppliers();
    addOffer(books, 2, 400);
    const OfferLine alone = compareOffers(books, {}, {}, {}).lines.first();
    addOffer(books, 1, 100);
    addOffer(books, 2, 20, SellUnit::Bundle, 2);
    const OfferLine among = lineOf(compareOffers(books, {}, {}, {}), 1);
    QCOMPARE(among.low, alone.low);
    QCOMPARE(among.high, alone.high);
    QVERIFY(among.cheapest < alone.cheapest);
}

void TstOffers::sharesAddUpToOne()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 400);
    addOffer(books, 2, 395);
    addOffer(books, 2, 150, SellUnit::FaceCord);
    addOffer(books, 1, 240, SellUnit::Pound, 2000).promised = dryBasis(35);
    addOffer(books, 2, 380, SellUnit::LooseCubicFoot, 180);
    const OfferComparison comparison = compareOffers(books, {}, {}, {});
    double sum = 0;
    for (const OfferLine &line : comparison.lines) {
        sum += line.cheapest;
        QVERIFY(line.low < line.centsPerMillionBtu && line.centsPerMillionBtu < line.high);
    }
    QVERIFY(near(sum, 1, 1e-9));
    for (qsizetype i = 1; i < comparison.lines.size(); ++i)
        QVERIFY(comparison.lines.at(i - 1).centsPerMillionBtu <=
                comparison.lines.at(i).centsPerMillionBtu);
}

void TstOffers::sentenceInPlainWords()
{
    Books books = twoSuppliers();
    addOffer(books, 1, 500);
    QVERIFY(compareOffers(books, {}, still(), {})
                .headline.plainSentence()
                .contains(QStringLiteral("no other to compare it with")));
    addOffer(books, 2, 520);
    const OfferComparison comparison = compareOffers(books, {}, {}, {});
    QString sentence = comparison.headline.plainSentence();
    sentence.replace(QChar(0x202f), QLatin1Char(' ')); // the thin space before a unit
    const int share = static_cast<int>(std::lround(100 * comparison.lines.first().cheapest));
    QVERIFY(share > 50 && share < 80);
    QCOMPARE(sentence,
             QString(QStringLiteral("Invented north: 1 cord (128 ft³) of post oak is cheapest at "
                                    "$19.24 a million Btu net; it stays cheapest in ") +
                     QString::number(share) +
                     QStringLiteral(" of 100 tries, which does not settle it.")));
    QCOMPARE(comparison.headline.figure, QStringLiteral("$19.24"));
}

RICKYARD_TEST(TstOffers)
#include "tst_offers.moc"
