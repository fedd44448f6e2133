#include "models/domain/fire/fuel.h"
#include "models/domain/fire/fuel_norm.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <random>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kNow = utc(2026, 12, 1, 0);
const Instant kFirst = utc(2026, 1, 3, 6);
constexpr double kStart = 1.4e8;         // joules of lighting
constexpr double kPerDegreeHour = 3.0e5; // joules a kelvin-hour

struct Plan {
    int cooks = 30;
    double noise = 0.02; // relative
    double fault = 1.0;  // factor on the last `faulty` cooks
    int faulty = 3;
    double cold = 0; // extra joules of a cold start; every third cook is warm then
    unsigned seed = 1;
};

// Cooks four days apart, 6 to 14 hours long, in -5 to 30 °C.
void season(FireYard &yard, RecordId pit, const Plan &plan)
{
    std::mt19937 random(plan.seed);
    std::normal_distribution<double> noise(0.0, plan.noise);
    for (int i = 0; i < plan.cooks; ++i) {
        const double length = 6.0 + (i * 5) % 9;
        const double outside = -5.0 + (i * 11) % 36;
        Cook &cook =
            yard.addCook(pit, kFirst + Duration::ofBase(qint64{i} * 4 * 86400), length, outside);
        const bool warm = plan.cold > 0 && i % 3 == 0;
        cook.start = warm ? StartKind::Warm : StartKind::Cold;
        const double line =
            kStart + kPerDegreeHour * (120.0 - outside) * length + (warm ? 0.0 : plan.cold);
        const double fault = i >= plan.cooks - plan.faulty ? plan.fault : 1.0;
        yard.burn(cook, line * fault * (1.0 + noise(random)));
    }
}

FuelAnswer answerOf(const FireYard &yard)
{
    return fuelAnswer(yard.books, kNow, Wording());
}

} // namespace

class TstFuel : public QObject
{
    Q_OBJECT

private slots:
    void exactLineIsRecovered();
    void noisyLineIsRecovered();
    void intervalHoldsNineInTen();
    void coldStartColumn();
    void faultNamesExactlyThatPit();
    void sinceTheFirstOfTheRun();
    void noFaultNamesNone();
    void lastThreeDoNotPullTheLine();
    void fiveCooksAreTooFew();
    void mendingStartsAnew();
    void knownGoodTeaches();
    void fallingUseDropsLighting();
    void wetWoodIsLookedAtFirst();
    void retiredPitIsNotNamed();
    void withoutData();
    void expectedUseFromNorm();
};

void TstFuel::exactLineIsRecovered()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("A")), {.noise = 0});
    const FuelAnswer answer = answerOf(yard);
    const PitNorm &norm = answer.pits.first();
    QVERIFY2(norm.fitted, qPrintable(norm.why));
    QCOMPARE(norm.cooks, 27);
    QVERIFY(std::abs(norm.start.toDouble() / kStart - 1.0) < 1e-5);
    QVERIFY(std::abs(norm.perDegreeHour.toDouble() / kPerDegreeHour - 1.0) < 1e-5);
    QVERIFY(std::abs(norm.meanExcessOfLast) < 1e-6);
    for (const CookFuel &cook : answer.cooks)
        QVERIFY(std::abs(*cook.excess) < 1e-6);
}

void TstFuel::noisyLineIsRecovered()
{
    for (unsigned seed = 1; seed <= 5; ++seed) {
        FireYard yard;
        season(yard, yard.addPit(QStringLiteral("A")), {.cooks = 60, .noise = 0.03, .seed = seed});
        const FuelAnswer answer = answerOf(yard);
        const PitNorm &norm = answer.pits.first();
        QVERIFY(norm.fitted);
        // Within four of the fit's own standard errors of the truth.
        const Eigen::VectorXd &se = norm.line->fit.standardErrors;
        QVERIFY(std::abs(norm.start.toDouble() - kStart) < 4 * se(0));
        QVERIFY(std::abs(norm.perDegreeHour.toDouble() - kPerDegreeHour) < 4 * se(1));
        QVERIFY(std::abs(norm.perDegreeHour.toDouble() / kPerDegreeHour - 1.0) < 0.10);
    }
}

void TstFuel::intervalHoldsNineInTen()
{
    int inside = 0;
    int all = 0;
    for (unsigned seed = 1; seed <= 10; ++seed) {
        FireYard yard;
        season(yard, yard.addPit(QStringLiteral("A")), {.cooks = 40, .noise = 0.05, .seed = seed});
        for (const CookFuel &cook : answerOf(yard).cooks) {
            QVERIFY(*cook.lower < *cook.expected && *cook.expected < *cook.upper);
            inside += *cook.lower <= cook.netHeat && cook.netHeat <= *cook.upper ? 1 : 0;
            ++all;
        }
    }
    const double share = static_cast<double>(inside) / all;
    QVERIFY2(share > 0.86 && share < 0.96, qPrintable(QString::number(share)));
}

void TstFuel::coldStartColumn()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("A")), {.noise = 0, .cold = 5e7});
    const PitNorm norm = answerOf(yard).pits.first();
    QVERIFY(norm.fitted && norm.coldExtra.has_value());
    QVERIFY(std::abs(norm.start.toDouble() / kStart - 1.0) < 1e-5);
    QVERIFY(std::abs(norm.coldExtra->toDouble() / 5e7 - 1.0) < 1e-4);
}

void TstFuel::faultNamesExactlyThatPit()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("Slow Annie")), {.seed = 1});
    season(yard, yard.addPit(QStringLiteral("Long Tom")), {.fault = 1.2, .seed = 2});
    season(yard, yard.addPit(QStringLiteral("Crow")), {.seed = 3});
    const FuelAnswer answer = answerOf(yard);
    QVERIFY(!answer.pits.at(0).named);
    QVERIFY(answer.pits.at(1).named);
    QVERIFY(!answer.pits.at(2).named);
    const PitNorm &norm = answer.pits.at(1);
    QVERIFY(std::abs(norm.meanExcessOfLast - 0.2) < 0.04);
    QVERIFY(norm.lowerExcess < 0.2 && 0.2 < norm.upperExcess && norm.lowerExcess > 0.1);
    QCOMPARE(norm.sinceCook, RecordId{58}); // its 28th cook of 30, after the 30 of the first pit
    // The extra is what those cooks burned over what they should have: a sixth of the burned.
    double burned = 0;
    for (const CookFuel &cook : answer.cooks)
        if (cook.cook >= 58 && cook.cook <= 60)
            burned += cook.netHeat.toDouble();
    QVERIFY(std::abs(norm.extraOfLast.toDouble() / (burned / 6.0) - 1.0) < 0.2);
    QVERIFY(std::abs(norm.extraPerCook.toDouble() * 3 - norm.extraOfLast.toDouble()) < 3);

    QCOMPARE(answer.headline.standing, Standing::Act);
    const QString text = answer.headline.plainSentence();
    QVERIFY2(text.startsWith(QStringLiteral("Long Tom has burned ")), qPrintable(text));
    QVERIFY(text.contains(QStringLiteral(" more than its norm over its last 3 cooks: about ")));
    QVERIFY(text.contains(QStringLiteral("seasoned lb extra a cook, since 21 Apr. ")));
    QVERIFY(text.endsWith(QStringLiteral("Look at the door gasket first.")));
    QVERIFY(answer.headline.figure.startsWith(QLatin1Char('+')));
    QVERIFY(!answer.headline.reasons.isEmpty());
}

void TstFuel::sinceTheFirstOfTheRun()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("A")),
           {.cooks = 60, .noise = 0.01, .fault = 1.25, .faulty = 6});
    const PitNorm norm = answerOf(yard).pits.first();
    QVERIFY(norm.named);
    QCOMPARE(norm.sinceCook, RecordId{55});
}

void TstFuel::noFaultNamesNone()
{
    FireYard yard;
    for (unsigned i = 0; i < 3; ++i)
        season(yard, yard.addPit(QStringLiteral("Pit %1").arg(i)), {.noise = 0.04, .seed = 10 + i});
    const FuelAnswer answer = answerOf(yard);
    for (const PitNorm &norm : answer.pits) {
        QVERIFY(norm.fitted && !norm.named);
        QCOMPARE(norm.sinceCook, RecordId{0});
    }
    QVERIFY(answer.headline.plainSentence().startsWith(
        QStringLiteral("No pit stands out: all three are within 15")));
    QVERIFY(answer.headline.standing == Standing::Good ||
            answer.headline.standing == Standing::Watch);
}

void TstFuel::lastThreeDoNotPullTheLine()
{
    FireYard sound;
    season(sound, sound.addPit(QStringLiteral("A")), {});
    FireYard faulty;
    season(faulty, faulty.addPit(QStringLiteral("A")), {.fault = 2.0});
    const PitNorm a = answerOf(sound).pits.first();
    const PitNorm b = answerOf(faulty).pits.first();
    QCOMPARE(a.start, b.start);
    QCOMPARE(a.perDegreeHour, b.perDegreeHour);
    QVERIFY(b.meanExcessOfLast > 0.9);
}

void TstFuel::fiveCooksAreTooFew()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("A")), {.cooks = 5, .fault = 3});
    FuelAnswer answer = answerOf(yard);
    QVERIFY(!answer.pits.first().fitted && !answer.pits.first().named);
    QVERIFY(answer.pits.first().why.contains(QStringLiteral("5 of 6")));
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QCOMPARE(answer.headline.figure, QStringLiteral("5"));
    FireYard six;
    season(six, six.addPit(QStringLiteral("A")), {.cooks = 6});
    QVERIFY(answerOf(six).pits.first().fitted);
    // A cook without wood does not count.
    six.books.movements.remove(2);
    answer = answerOf(six);
    QVERIFY(!answer.pits.first().fitted);
    QVERIFY(!answer.cooks.at(1).missing.isEmpty());
}

void TstFuel::mendingStartsAnew()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.3});
    Visit visit;
    visit.id = 1;
    visit.state = VisitState::Done;
    visit.start = yard.books.cooks.value(22).lit; // eight cooks from the 23rd on
    visit.end = visit.start + durationFromHours(1);
    yard.books.visits.insert(1, visit);
    Finding finding;
    finding.id = 1;
    finding.pit = pit;
    finding.state = FindingState::Mended;
    yard.books.findings.insert(1, finding);
    QCOMPARE(answerOf(yard).pits.first().completeCooks, 30); // a mending without a visit
    yard.books.findings[1].mendedBy = 1;
    PitNorm norm = answerOf(yard).pits.first();
    QCOMPARE(norm.completeCooks, 8);
    QCOMPARE(norm.cooks, 5);
    QVERIFY(norm.mended.has_value());
    yard.books.visits[1].end = yard.books.cooks.value(26).lit; // and the 26th counts itself
    norm = answerOf(yard).pits.first();
    QCOMPARE(norm.completeCooks, 5);
    QVERIFY(!norm.fitted && !norm.named);
    QVERIFY(norm.why.contains(QStringLiteral("mended")));
    yard.books.visits[1].state = VisitState::Placed;
    QVERIFY(answerOf(yard).pits.first().named);
}

// Ten faulty cooks drag a line that learns from seven of them; declared good months do not.
void TstFuel::knownGoodTeaches()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.noise = 0, .fault = 1.2, .faulty = 15});
    QVERIFY(answerOf(yard).pits.first().meanExcessOfLast < 0.19);
    KnownGood good;
    good.id = 1;
    good.pit = pit;
    good.from = QDate(2026, 1, 1);
    good.to = QDate(2026, 3, 1); // the first fifteen: 3 January to 28 February
    yard.books.knownGood.insert(1, good);
    const PitNorm norm = answerOf(yard).pits.first();
    QCOMPARE(norm.cooks, 15);
    QVERIFY(std::abs(norm.meanExcessOfLast - 0.2) < 1e-4);
    QCOMPARE(norm.sinceCook, RecordId{16});
}

void TstFuel::fallingUseDropsLighting()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    for (int i = 0; i < 10; ++i) // longer cooks that burned less: no fire does that
        yard.burn(yard.addCook(pit, kFirst + Duration::ofBase(qint64{i} * 4 * 86400), 6 + i, 10),
                  5e9 / (6.0 + i) / (6.0 + i));
    const FuelAnswer answer = answerOf(yard);
    // Lighting is dropped then, and what is left rises: a poor norm, but one of a fire.
    QVERIFY(answer.pits.first().start.isZero());
    QVERIFY(answer.pits.first().perDegreeHour > Heat());
}

void TstFuel::wetWoodIsLookedAtFirst()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.25});
    for (RecordId id = 28; id <= 30; ++id) {
        Movement &m = yard.books.movements[id];
        const double heat =
            -kilograms(m.dryMass) * netHeatPerDryKilogram(WoodAnalysis(), Moisture::ofBase(20000));
        m.moisture = Moisture::ofBase(34000);
        m.dryMass = -massFromKilograms(heat / netHeatPerDryKilogram(WoodAnalysis(), *m.moisture));
    }
    const FuelAnswer answer = answerOf(yard);
    QVERIFY(answer.pits.first().named);
    QVERIFY(answer.headline.plainSentence().endsWith(
        QStringLiteral("Look at the wood first: it was wet.")));
}

void TstFuel::retiredPitIsNotNamed()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.5});
    QVERIFY(answerOf(yard).pits.first().named);
    yard.books.pits[pit].retired = true;
    QVERIFY(!answerOf(yard).pits.first().named);
}

void TstFuel::withoutData()
{
    FireYard yard;
    FuelAnswer answer = answerOf(yard);
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().startsWith(QStringLiteral("Add your pits first")));
    yard.addPit(QStringLiteral("Long Tom"));
    answer = answerOf(yard);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("Long Tom has 0")));
    QCOMPARE(answer.headline.figureUnit, QStringLiteral("of 6 cooks"));
}

void TstFuel::expectedUseFromNorm()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {});
    const ExpectedUse use = expectedUse(yard.books, answerOf(yard), pit, durationFromHours(10),
                                        temperatureFromCelsius(120), temperatureFromCelsius(20));
    QVERIFY(use.fromNorm);
    QVERIFY(std::abs(use.middle.toDouble() / (kStart + kPerDegreeHour * 1000.0) - 1.0) < 0.03);
    QVERIFY(use.lower < use.middle && use.middle < use.upper);
    QVERIFY(use.basis.contains(QStringLiteral("27 cooks")));
}

RICKYARD_TEST(TstFuel)
#include "tst_fuel.moc"
