// The fuel answer from the books: every cook against what earlier ones made it expect, flags at the
// pit that has a fault and nowhere else, mendings and looks, and what a fire to come should take.
#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/fuel.h"
#include "models/domain/fire/fuel_replay.h"
#include "models/domain/fire/fuel_words.h"
#include "models/domain/fire/use_words.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <random>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kNow = utc(2026, 12, 1, 0);
const Instant kFirst = utc(2026, 1, 3, 6);

struct Plan {
    int cooks = 30;
    double noise = 0.04; // relative
    double fault = 1.0;  // factor on the last `faulty` cooks
    int faulty = 5;
    unsigned seed = 1;
    double truth = 1.1; // heat burned over the balance at the usual efficiency
};

// Cooks four days apart, 6 to 14 hours long, in -5 to 30 °C, that burn what the heat balance of
// the pit says, times the plan's factors.
void season(FireYard &yard, RecordId pit, const Plan &plan)
{
    std::mt19937 random(plan.seed);
    std::normal_distribution<double> noise(0.0, plan.noise);
    for (int i = 0; i < plan.cooks; ++i) {
        const double length = 6.0 + (i * 5) % 9;
        const double outside = -5.0 + (i * 11) % 36;
        Cook &cook =
            yard.addCook(pit, kFirst + Duration::ofBase(qint64{i} * 4 * 86400), length, outside);
        cook.wind = Speed::ofBase(1000 + 500 * (i % 7));
        const RecordId id = cook.id;
        const double balance =
            totalHeat(cookSummary(yard.books, WeatherSeries(yard.books), cook, kNow).columns);
        const double fault = i >= plan.cooks - plan.faulty ? plan.fault : 1.0;
        yard.burn(yard.books.cooks.value(id),
                  balance / kEfficiency * plan.truth * fault * std::exp(noise(random)));
    }
}

FuelAnswer answerOf(const FireYard &yard)
{
    return fuelAnswer(yard.books, kNow, Wording());
}

PlannedFire evening(RecordId pit)
{
    PlannedFire fire;
    fire.pit = pit;
    fire.length = durationFromHours(12);
    fire.target = temperatureFromFahrenheit(250);
    fire.outside = temperatureFromFahrenheit(60);
    fire.food = massFromPounds(60);
    return fire;
}

double widthOf(const ExpectedUse &use)
{
    return (use.upper - use.lower).toDouble() / use.middle.toDouble();
}

void mend(FireYard &yard, RecordId pit, Instant at, bool done = true)
{
    Visit visit;
    visit.id = 1;
    visit.state = done ? VisitState::Done : VisitState::Placed;
    visit.start = at - durationFromHours(1);
    visit.end = at;
    yard.books.visits.insert(1, visit);
    Finding finding;
    finding.id = 1;
    finding.pit = pit;
    finding.state = FindingState::Mended;
    finding.mendedBy = 1;
    yard.books.findings.insert(1, finding);
}

} // namespace

class TstFuel : public QObject
{
    Q_OBJECT

private slots:
    void onlyEarlierCooksCount();
    void faultNamesExactlyThatPit();
    void noFaultNamesNone();
    void mendingStartsAnew();
    void nothingFoundLowersTheFlag();
    void knownGoodIsLearned();
    void oneAbsurdCookChangesLittle();
    void theAlarmRateIsTheCrews();
    void burningCookHasAnExpectation();
    void retiredPitIsNotNamed();
    void wetWoodIsLookedAtFirst();
    void withoutData();
    void expectationNarrows();
    void partsMakeTheWhole();
    void usualPitsTakeUsualWood_data();
    void usualPitsTakeUsualWood();
    void inWords();
    void moneyFollowsTheLot();
};

// The verdict on a cook stands, whatever comes after it.
void TstFuel::onlyEarlierCooksCount()
{
    FireYard yard;
    const RecordId a = yard.addPit(QStringLiteral("A"));
    season(yard, a, {.cooks = 12});
    const FuelAnswer before = answerOf(yard);
    yard.books.movements[12].dryMass = yard.books.movements[12].dryMass * 3;
    const FuelAnswer after = answerOf(yard);
    for (int i = 0; i < 11; ++i) {
        QCOMPARE(after.cooks.at(i).expected, before.cooks.at(i).expected);
        QCOMPARE(after.cooks.at(i).verdict->score, before.cooks.at(i).verdict->score);
    }
    // The last one is measured against the same expectation too: it is not its own teacher.
    QCOMPARE(after.cooks.at(11).expected, before.cooks.at(11).expected);
    QVERIFY(*after.cooks.at(11).excess > 1.0);
}

void TstFuel::faultNamesExactlyThatPit()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("Slow Annie")), {.seed = 1});
    season(yard, yard.addPit(QStringLiteral("Long Tom")), {.fault = 1.25, .seed = 2});
    season(yard, yard.addPit(QStringLiteral("Crow")), {.seed = 3});
    const FuelAnswer answer = answerOf(yard);
    QVERIFY(!answer.pits.at(0).named());
    QVERIFY(answer.pits.at(1).named());
    QVERIFY(!answer.pits.at(2).named());
    const PitFuel &pit = answer.pits.at(1);
    QVERIFY(pit.climb && pit.raisedBy > 55 && pit.raisedBy <= 60);
    QVERIFY(pit.climb->lower < 25 && 25 < pit.climb->upper);
    QVERIFY(std::abs(pit.climb->percent - 25) < 8);
    QVERIFY(std::abs(pit.climb->since - 56) <= 1); // its 26th of 30, after the 30 of the first pit
    QVERIFY(pit.heldBack > 0);
    QCOMPARE(pit.last, (QVector<RecordId>{58, 59, 60}));
    QVERIFY(std::abs(pit.excessOfLast - 0.25) < 0.1);

    QCOMPARE(answer.headline.standing, Standing::Act);
    const QString text = answer.headline.plainSentence();
    QVERIFY2(text.startsWith(QStringLiteral("Long Tom burns ")), qPrintable(text));
    QVERIFY2(text.contains(QStringLiteral(" more than it should (90 % sure: ")), qPrintable(text));
    QVERIFY2(text.contains(QStringLiteral("seasoned lb a cook. Likeliest: Long Tom itself")),
             qPrintable(text));
    QVERIFY2(text.contains(QStringLiteral("Look first: ")), qPrintable(text));
    QVERIFY(answer.headline.figure.startsWith(QLatin1Char('+')));
    QVERIFY(!answer.headline.reasons.isEmpty());
}

void TstFuel::noFaultNamesNone()
{
    FireYard yard;
    for (unsigned i = 0; i < 3; ++i)
        season(yard, yard.addPit(QStringLiteral("Pit %1").arg(i)), {.seed = 10 + i});
    const FuelAnswer answer = answerOf(yard);
    for (const PitFuel &pit : answer.pits) {
        QVERIFY(pit.cooksEver == 30 && !pit.named());
        QVERIFY(pit.limit > 3.5 && pit.limit < 6); // the textbook's 3.502 for one in 200, and more
    }
    QVERIFY(answer.headline.plainSentence().startsWith(QStringLiteral("No pit stands out")));
    QVERIFY(answer.headline.standing == Standing::Good ||
            answer.headline.standing == Standing::Watch);
}

void TstFuel::mendingStartsAnew()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.3});
    QVERIFY(answerOf(yard).pits.first().named());
    const Instant after = yard.books.cooks.value(30).fireOut.value() + durationFromHours(20);
    mend(yard, pit, after, false);
    QVERIFY(answerOf(yard).pits.first().named()); // only placed
    mend(yard, pit, after);
    const PitFuel fuel = answerOf(yard).pits.first();
    QVERIFY(!fuel.named());
    QCOMPARE(fuel.mended, std::optional(after));
    QCOMPARE(fuel.cooks, 0);
    QCOMPARE(fuel.cooksEver, 30);
    QCOMPARE(fuel.up, 0.0);
    // What it burned with the fault is not what it should burn now.
    FireYard sound;
    const RecordId same = sound.addPit(QStringLiteral("A"));
    season(sound, same, {});
    const double ratio = expectedUse(yard.books, answerOf(yard), evening(pit)).middle.toDouble() /
                         expectedUse(sound.books, answerOf(sound), evening(same)).middle.toDouble();
    QVERIFY2(std::abs(ratio - 1.0) < 0.06, qPrintable(QString::number(ratio)));
}

void TstFuel::nothingFoundLowersTheFlag()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.3});
    const double before = expectedUse(yard.books, answerOf(yard), evening(pit)).middle.toDouble();
    Finding looked;
    looked.id = 1;
    looked.pit = pit;
    looked.state = FindingState::Nothing;
    looked.opened = yard.books.cooks.value(30).fireOut.value() + durationFromHours(2);
    yard.books.findings.insert(1, looked);
    const FuelAnswer answer = answerOf(yard);
    QVERIFY(!answer.pits.first().named());
    QCOMPARE(answer.pits.first().heldBack, 0);
    QCOMPARE(answer.pits.first().foundSound, std::optional(looked.opened));
    // The cooks were ordinary ones then, so more is expected of the next.
    QVERIFY(expectedUse(yard.books, answer, evening(pit)).middle.toDouble() > before * 1.02);
}

void TstFuel::knownGoodIsLearned()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.3});
    KnownGood good;
    good.id = 1;
    good.pit = pit;
    good.from = QDate(2026, 4, 1);
    yard.books.knownGood.insert(1, good);
    const FuelAnswer answer = answerOf(yard);
    QVERIFY(!answer.pits.first().named());
    QCOMPARE(answer.pits.first().heldBack, 0);
    QVERIFY(answer.cooks.last().knownGood && !answer.cooks.first().knownGood);
}

void TstFuel::oneAbsurdCookChangesLittle()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.cooks = 20});
    const double before = expectedUse(yard.books, answerOf(yard), evening(pit)).middle.toDouble();
    yard.books.movements[15].dryMass = yard.books.movements[15].dryMass * 8;
    const FuelAnswer answer = answerOf(yard);
    const double after = expectedUse(yard.books, answer, evening(pit)).middle.toDouble();
    QVERIFY2(std::abs(after / before - 1.0) < 0.04, qPrintable(QString::number(after / before)));
    QVERIFY(!answer.pits.first().named());
}

void TstFuel::theAlarmRateIsTheCrews()
{
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("A")), {.cooks = 20});
    const double usual = answerOf(yard).pits.first().limit;
    yard.books.yards[1].falseAlarmCooks = 50;
    const double eager = answerOf(yard).pits.first().limit;
    // One-sided h for a false alarm every 50 and 200 cooks: 2.2247 and 3.5020, by integral
    // equation (reference table of the run lengths of cumulative sum charts).
    QVERIFY2(std::abs((usual - eager) - (3.5020 - 2.2247)) < 1e-3,
             qPrintable(QString::number(usual - eager)));
}

void TstFuel::burningCookHasAnExpectation()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.cooks = 10});
    yard.books.cooks[10].fireOut = {};
    const Instant lit = yard.books.cooks.value(10).lit;
    const auto expectedAfter = [&](double hours) {
        const FuelAnswer answer = fuelAnswer(yard.books, lit + durationFromHours(hours), Wording());
        const CookFuel &cook = answer.cooks.last();
        return cook.expected && !cook.excess ? cook.expected->toDouble() : 0.0;
    };
    const double three = expectedAfter(3);
    const double six = expectedAfter(6);
    const double nine = expectedAfter(9);
    QVERIFY(three > 0 && three < six && six < nine);
    QVERIFY(std::abs((nine - six) / (six - three) - 1.0) < 0.02); // the same every hour
}

void TstFuel::retiredPitIsNotNamed()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.5});
    QVERIFY(answerOf(yard).headline.plainSentence().startsWith(QStringLiteral("A burns")));
    yard.books.pits[pit].retired = true;
    QVERIFY(!answerOf(yard).headline.plainSentence().startsWith(QStringLiteral("A burns")));
}

void TstFuel::wetWoodIsLookedAtFirst()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.fault = 1.3});
    for (RecordId id = 28; id <= 30; ++id) {
        Movement &m = yard.books.movements[id];
        const double heat =
            -kilograms(m.dryMass) * netHeatPerDryKilogram(WoodAnalysis(), Moisture::ofBase(20000));
        m.moisture = Moisture::ofBase(34000);
        m.dryMass = -massFromKilograms(heat / netHeatPerDryKilogram(WoodAnalysis(), *m.moisture));
    }
    const FuelAnswer answer = answerOf(yard);
    QVERIFY(answer.pits.first().named());
    QVERIFY2(answer.headline.plainSentence().contains(
                 QStringLiteral("Likeliest: the wood or its weights, on every pit")),
             qPrintable(answer.headline.plainSentence()));
}

void TstFuel::withoutData()
{
    FireYard yard;
    FuelAnswer answer = answerOf(yard);
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().startsWith(QStringLiteral("Add your pits first")));
    const RecordId pit = yard.addPit(QStringLiteral("Long Tom"));
    answer = answerOf(yard);
    QVERIFY(answer.headline.plainSentence().startsWith(QStringLiteral("No cook can be judged")));
    // A cook without wood is left out, with the reason.
    yard.addCook(pit, kFirst, 10, 10);
    answer = answerOf(yard);
    QVERIFY(!answer.cooks.first().verdict && !answer.cooks.first().missing.isEmpty());
    QCOMPARE(answer.pits.first().cooksEver, 0);
}

void TstFuel::expectationNarrows()
{
    QVector<double> widths;
    for (const int cooks : {0, 3, 12, 60}) {
        FireYard yard;
        const RecordId pit = yard.addPit(QStringLiteral("A"));
        season(yard, pit, {.cooks = cooks});
        const ExpectedUse use = expectedUse(yard.books, answerOf(yard), evening(pit));
        QCOMPARE(use.fromNorm, cooks > 0);
        QVERIFY(use.lower > Heat() && use.lower < use.middle && use.middle < use.upper);
        widths << widthOf(use);
    }
    QVERIFY2(widths.at(0) > 1.0, qPrintable(QString::number(widths.at(0)))); // wide on purpose
    for (int i = 1; i < widths.size(); ++i)
        QVERIFY(widths.at(i) < widths.at(i - 1));
    QVERIFY2(widths.last() < 0.3, qPrintable(QString::number(widths.last())));
    // A pit without cooks leans on the crew's others, less surely than on its own.
    FireYard yard;
    season(yard, yard.addPit(QStringLiteral("A")), {.cooks = 60});
    const RecordId other = yard.addPit(QStringLiteral("B"));
    const ExpectedUse lent = expectedUse(yard.books, answerOf(yard), evening(other));
    QVERIFY(!lent.fromNorm && lent.basis.contains(QStringLiteral("other pits")));
    QVERIFY(widthOf(lent) < widths.first() && widthOf(lent) > widths.last());
}

void TstFuel::partsMakeTheWhole()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.cooks = 8});
    PlannedFire fire = evening(pit);
    fire.wind = Speed::ofBase(5000);
    fire.rain = 4;
    const ExpectedUse use = expectedUse(yard.books, answerOf(yard), fire);
    QVERIFY(std::abs(totalHeat(use.parts) / use.middle.toDouble() - 1.0) < 1e-6);
    for (const double part : use.parts)
        QVERIFY(part > 0);
    // More wind, colder air, a longer fire: more wood.
    const auto middle = [&](const PlannedFire &one) {
        return expectedUse(yard.books, answerOf(yard), one).middle;
    };
    PlannedFire windier = fire;
    windier.wind = Speed::ofBase(9000);
    QVERIFY(middle(windier) > use.middle);
    PlannedFire colder = fire;
    colder.outside = temperatureFromFahrenheit(20);
    QVERIFY(middle(colder) > use.middle);
    PlannedFire warm = fire;
    warm.start = StartKind::Warm;
    QVERIFY(middle(warm) < use.middle);
}

void TstFuel::usualPitsTakeUsualWood_data()
{
    QTest::addColumn<double>("diameter"); // inches
    QTest::addColumn<double>("length");
    QTest::addColumn<double>("split"); // pounds
    // Common practice, no source: a backyard offset takes a split every 30 to 60 minutes; the
    // weights of splits are those of the trade's sizes, 12 x 3.2 in to 16 x 3.5 in.
    QTest::newRow("20 x 40 in") << 20.0 << 40.0 << 2.5;
    QTest::newRow("24 x 48 in") << 24.0 << 48.0 << 4.2;
}

void TstFuel::usualPitsTakeUsualWood()
{
    QFETCH(double, diameter);
    QFETCH(double, length);
    QFETCH(double, split);
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"), diameter, length);
    yard.books.pits[pit].plate = Length::rounded(0.25 * kMicrometresPerInch);
    PlannedFire fire = evening(pit);
    fire.target = temperatureFromFahrenheit(225);
    const Heat hour = hourlyUse(yard.books, answerOf(yard), fire);
    const double splits = pounds(woodFor(hour, Moisture::ofBase(20000))) / split;
    QVERIFY2(splits > 0.9 && splits < 2.3, qPrintable(QString::number(splits)));
}

void TstFuel::inWords()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.cooks = 12});
    PlannedFire fire = evening(pit);
    fire.outside = temperatureFromFahrenheit(41);
    fire.wind = Speed::rounded(9 * 447.04);
    const ExpectedUse use = expectedUse(yard.books, answerOf(yard), fire);
    const QString text =
        useWords(yard.books, fire, use, Moisture::ofBase(20000), Wording()).sentence();
    const auto amount =
        QString::number(std::lround(pounds(woodFor(use.middle, Moisture::ofBase(20000)))));
    QVERIFY2(text.startsWith(QStringLiteral("A 12-hour cook at 250")), qPrintable(text));
    QVERIFY2(text.contains(QStringLiteral("half sheltered) should take ") + amount),
             qPrintable(text));
    QVERIFY2(text.contains(QStringLiteral("Shell ")) && text.contains(QStringLiteral("wind ")),
             qPrintable(text));
    double shares = 0;
    for (const UsePart &part : usePartsOf(use))
        shares += part.share;
    QVERIFY(std::abs(shares - 1.0) < 0.02);
    // A seasoned pound is the heat of a pound at 20 % dry basis: the wood's own definition.
    QVERIFY(std::abs(pounds(woodFor(heatFromSeasonedPounds(100), Moisture::ofBase(20000))) - 100) <
            1.0);
    QVERIFY(woodFor(heatFromSeasonedPounds(100), Moisture::ofBase(35000)) >
            woodFor(heatFromSeasonedPounds(100), Moisture::ofBase(20000)));
}

void TstFuel::moneyFollowsTheLot()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    season(yard, pit, {.cooks = 4});
    QCOMPARE(answerOf(yard).cooks.first().priced, 0.0);
    Movement received;
    received.id = 900;
    received.lot = 1;
    received.kind = MovementKind::Received;
    received.time = kFirst;
    received.dryMass = massFromKilograms(1000);
    yard.books.movements.insert(900, received);
    yard.books.lots[1].price = Money::ofBase(40000); // 400 dollars for 1000 kg
    const FuelAnswer answer = answerOf(yard);
    const CookFuel &cook = answer.cooks.first();
    QCOMPARE(cook.priced, 1.0);
    QVERIFY(std::abs(cook.cost - 40.0 * kilograms(cook.dryMass)) < 1e-6);
    QVERIFY(std::abs(centsPerJoule(answer, pit) * cook.netHeat.toDouble() - cook.cost) <
            0.01 * cook.cost);
}

RICKYARD_TEST(TstFuel)
#include "tst_fuel.moc"
