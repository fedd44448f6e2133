#include "models/domain/wood/ledger.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/stock.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstLedger : public QObject
{
    Q_OBJECT
private slots:
    void latestSessionCounts();
    void laterReadingIsNotKnownEarlier();
    void ovenTestOfTheSameTimeCounts();
    void ovenTestsOfADayAreOneSession();
    void senselessOvenTestIsIgnored();
    void oldAndEndFacesAreSaid();
    void moistureFallsBackInWords();
    void stackByHand();
    void looseAndClaimed();
    void weighedNeedsMoisture();
    void missingInputsNameTheirField_data();
    void missingInputsNameTheirField();
    void lotBeingEnteredIsUsedAsGiven();
    void feedByWeightAndByPieces();
    void feedWithoutWeightTakesTheUsualSplit();
    void entriesOfLotAndFeed();
};

namespace {

QStringList fieldsOf(const Problems &problems)
{
    QStringList fields;
    for (const Problem &problem : problems)
        fields << problem.field;
    return fields;
}

void addOvenTest(Books &books, RecordId id, Instant time, double wetGrams, double dryGrams)
{
    OvenTest test;
    test.id = id;
    test.lot = 1;
    test.time = time;
    test.wet = massFromKilograms(wetGrams / 1000);
    test.dry = massFromKilograms(dryGrams / 1000);
    books.ovenTests.insert(id, test);
}

} // namespace

void TstLedger::latestSessionCounts()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    QVERIFY(!moistureOfLot(books, 1, day(5)));
    addReading(books, 1, day(3), {20, 22, 24});
    addReading(books, 1, day(1), {40, 50}); // entered later, but older
    QCOMPARE(moistureOfLot(books, 1, day(5)), dryBasis(22));
    QCOMPARE(moistureOfLot(books, 1, day(2)), dryBasis(45));
}

void TstLedger::laterReadingIsNotKnownEarlier()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addReading(books, 1, day(3), {20});
    QVERIFY(!moistureOfLot(books, 1, day(3) - Duration::ofBase(1)));
    QVERIFY(moistureOfLot(books, 1, day(3)));
}

void TstLedger::ovenTestOfTheSameTimeCounts()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addReading(books, 1, day(3), {20});
    addOvenTest(books, 1, day(3), 650, 500); // 150 g water on 500 g wood: 30 %
    QCOMPARE(moistureOfLot(books, 1, day(4)), dryBasis(30));
}

void TstLedger::ovenTestsOfADayAreOneSession()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addOvenTest(books, 1, day(0), 700, 500);     // 40 %, another session
    addOvenTest(books, 2, day(3), 650, 500);     // 30 %
    addOvenTest(books, 3, day(3, 15), 600, 500); // 20 %
    const auto sample = latestMoisture(books, 1, day(4));
    QCOMPARE(sample->pieces.size(), 2);
    QCOMPARE(sample->mean(), dryBasis(25));
}

void TstLedger::senselessOvenTestIsIgnored()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addOvenTest(books, 1, day(0), 500, 650);
    QVERIFY(!moistureOfLot(books, 1, day(4)));
}

void TstLedger::oldAndEndFacesAreSaid()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addReading(books, 1, day(1), {18}).face = Face::Old;
    const DryMassResult old = moistureOrAssumed(books, 1, day(2));
    QCOMPARE(old.moisture, dryBasis(18));
    QVERIFY(old.assumed);
    QVERIFY(old.assumption.contains(QStringLiteral("old face")));
    addReading(books, 1, day(2), {16}).face = Face::End;
    QVERIFY(moistureOrAssumed(books, 1, day(2)).assumption.contains(QStringLiteral("end grain")));
    addReading(books, 1, day(3), {21});
    const DryMassResult fresh = moistureOrAssumed(books, 1, day(3));
    QVERIFY(!fresh.assumed);
    QVERIFY(fresh.assumption.isEmpty());
}

void TstLedger::moistureFallsBackInWords()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    DryMassResult result = moistureOrAssumed(books, 1, day(0));
    QCOMPARE(result.moisture, dryBasis(70.9));
    QVERIFY(result.assumption.contains(QStringLiteral("green Post oak")));
    lot.promisedMoisture = dryBasis(20);
    result = moistureOrAssumed(books, 1, day(0));
    QCOMPARE(result.moisture, dryBasis(20));
    QVERIFY(result.assumption.contains(QStringLiteral("promised")));
    addReading(books, 1, day(2), {33});
    result = moistureOrAssumed(books, 1, day(0));
    QCOMPARE(result.moisture, dryBasis(33));
    QVERIFY(result.assumed);
    QVERIFY(result.assumption.contains(QStringLiteral("2 days later")));
    // A reading of next season tells nothing of the wood that came.
    books.readings.first().time = day(200);
    QCOMPARE(moistureOrAssumed(books, 1, day(0)).moisture, dryBasis(20));
    // Nothing at all is known.
    books.readings.clear();
    lot.promisedMoisture.reset();
    books.species[1].green.reset();
    result = moistureOrAssumed(books, 1, day(0));
    QVERIFY(!result.moisture && result.assumed && !result.assumption.isEmpty());
}

// A cord of post oak at 20 %: 85 ft³ solid × 28.316847 L = 2,406.93 L; shrinkage 16.2 % × (1 −
// 20/30) = 5.4 %, gravity 0.60 / 0.946 = 0.634249; dry mass 1,526.59 kg = 3,365.6 lb.
void TstLedger::stackByHand()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.stacks = {{feet(8), feet(4), feet(4)}};
    addReading(books, 1, day(0), {19, 21});
    const auto dry = dryMassReceived(books, lot);
    QVERIFY2(dry.ok(), qPrintable(dry.message()));
    QVERIFY(std::abs(kilograms(dry->dryMass) - 1526.59) < 0.05);
    QVERIFY(std::abs(pounds(dry->dryMass) - 3365.6) < 0.1);
    QVERIFY(dry->assumption.contains(QStringLiteral("85 of 128")));
}

void TstLedger::looseAndClaimed()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    addReading(books, 1, day(0), {20});
    lot.paidCount = Plain::ofBase(1000000);
    lot.looseVolume = volumeFromCubicFeet(180);
    lot.measuredBy = Measure::Claimed;
    const auto claimed = dryMassReceived(books, lot);
    lot.measuredBy = Measure::Loose;
    const auto loose = dryMassReceived(books, lot);
    // 180 ft³ loose and 128 ft³ stacked both hold 85 ft³ of wood.
    QVERIFY(std::abs(pounds(claimed->dryMass) - 3365.6) < 0.1);
    QVERIFY(std::abs(pounds(loose->dryMass) - pounds(claimed->dryMass)) < 0.01);
    QVERIFY(claimed->assumed);
    QVERIFY(claimed->assumption.contains(QStringLiteral("taken as true")));
    QVERIFY(loose->assumption.contains(QStringLiteral("180")));
}

void TstLedger::weighedNeedsMoisture()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.measuredBy = Measure::Weighed;
    lot.weight = massFromPounds(1200);
    addReading(books, 1, day(0), {20});
    const auto dry = dryMassReceived(books, lot);
    QCOMPARE(std::lround(pounds(dry->dryMass) * 1000), 1000000L); // 1,200 / 1.2
    QVERIFY(!dry->assumed);
    books.readings.clear();
    books.species[1].green.reset();
    QCOMPARE(fieldsOf(dryMassReceived(books, lot).problems()),
             QStringList{QStringLiteral("promised_moisture")});
}

void TstLedger::missingInputsNameTheirField_data()
{
    QTest::addColumn<int>("measure");
    QTest::addColumn<QStringList>("fields");
    const auto row = [](const char *name, Measure measure, const QStringList &fields) {
        QTest::newRow(name) << static_cast<int>(measure) << fields;
    };
    row("stack", Measure::Stack, {QStringLiteral("stacks")});
    row("loose", Measure::Loose, {QStringLiteral("loose_volume")});
    row("weighed", Measure::Weighed, {QStringLiteral("weight")});
    row("claimed", Measure::Claimed, {QStringLiteral("paid_count")});
}

void TstLedger::missingInputsNameTheirField()
{
    QFETCH(int, measure);
    QFETCH(QStringList, fields);
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.measuredBy = static_cast<Measure>(measure);
    const Problems problems = dryMassReceived(books, lot).problems();
    QCOMPARE(fieldsOf(problems), fields);
    for (const Problem &problem : problems) {
        QVERIFY(!problem.message.isEmpty());
        QVERIFY2(specOf(TableId::Lot).indexOf(problem.field) >= 0, qPrintable(problem.field));
    }
    lot.species = 77;
    QCOMPARE(fieldsOf(dryMassReceived(books, lot).problems()),
             QStringList{QStringLiteral("species")});
}

void TstLedger::lotBeingEnteredIsUsedAsGiven()
{
    Books books = emptyYard();
    Lot lot;
    lot.id = 5; // not in the books
    lot.species = 1;
    lot.received = day(0);
    lot.measuredBy = Measure::Weighed;
    lot.weight = massFromPounds(1300);
    lot.promisedMoisture = dryBasis(30);
    const auto dry = dryMassReceived(books, lot);
    QVERIFY(dry.ok());
    QVERIFY(std::abs(pounds(dry->dryMass) - 1000) < 0.001);
    QVERIFY(dry->assumed);
}

void TstLedger::feedByWeightAndByPieces()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.splitMass = massFromPounds(6);
    addReading(books, 1, day(0), {20});
    Feed feed;
    feed.lot = 1;
    feed.time = day(1);
    feed.pieces = 2;
    const auto pieces = dryMassOfFeed(books, feed);
    QVERIFY(std::abs(pounds(pieces->dryMass) - 10) < 1e-4); // 2 × 6 / 1.2
    QVERIFY(!pieces->assumption.isEmpty());
    feed.weight = massFromPounds(9);
    const auto weighed = dryMassOfFeed(books, feed);
    QVERIFY(std::abs(pounds(weighed->dryMass) - 7.5) < 1e-4);
    QVERIFY(weighed->assumption.isEmpty());
    // The same weight read wetter holds less wood of it.
    addReading(books, 1, day(0, 13), {50});
    QVERIFY(std::abs(pounds(dryMassOfFeed(books, feed)->dryMass) - 6) < 1e-4);
    // A split keeps its wood: weighed at 50 % it holds 4 lb, however dry it has become since.
    feed.weight.reset();
    lot.splitsWeighedAt = day(0, 14);
    addReading(books, 1, day(0, 20), {20});
    QVERIFY(std::abs(pounds(dryMassOfFeed(books, feed)->dryMass) - 8) < 1e-4);
    QVERIFY(std::abs(pounds(*movementOf(books, feed, 0)->asIs) - 9.6) < 1e-3);
}

// Without a weighed split its size stands in, and is said: 0.75 × 4 × 4 × 16 in = 192 in³ of post
// oak at its green volume, 0.60 × 62.43 lb/ft³ × 192/1728 ft³ = 4.162 lb.
void TstLedger::feedWithoutWeightTakesTheUsualSplit()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    Feed feed;
    feed.lot = 1;
    feed.time = day(1);
    feed.pieces = 3;
    const auto usual = dryMassOfFeed(books, feed);
    QVERIFY2(usual.ok(), qPrintable(usual.message()));
    QVERIFY(std::abs(pounds(usual->dryMass) - 3 * 4.162) < 0.01);
    QVERIFY(usual->assumed);
    QVERIFY2(usual->assumption.contains(QStringLiteral("4.2 lb of dry wood each, give or take")),
             qPrintable(usual->assumption));
    // Half as thick, a quarter of the wood.
    lot.splitThickness = Length::rounded(2 * kMicrometresPerInch);
    QVERIFY(std::abs(pounds(dryMassOfFeed(books, feed)->dryMass) - 3 * 4.162 / 4) < 0.01);
    feed.lot = 9;
    QCOMPARE(fieldsOf(dryMassOfFeed(books, feed).problems()), QStringList{QStringLiteral("lot")});
}

void TstLedger::entriesOfLotAndFeed()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.measuredBy = Measure::Weighed;
    lot.weight = massFromPounds(1200);
    lot.splitMass = massFromPounds(6);
    addReading(books, 1, day(0), {20});
    const auto received = movementOf(books, lot, 7);
    QVERIFY(received.ok());
    QCOMPARE(received->id, 7);
    QCOMPARE(received->lot, 1);
    QCOMPARE(received->kind, MovementKind::Received);
    QCOMPARE(received->time, day(0));
    QCOMPARE(received->asIs, massFromPounds(1200));
    QVERIFY(!received->assumed && !received->feed && !received->cook);

    Feed feed;
    feed.id = 3;
    feed.cook = 4;
    feed.lot = 1;
    feed.time = day(1);
    feed.pieces = 2;
    const auto burned = movementOf(books, feed, 0);
    QCOMPARE(burned->kind, MovementKind::Burned);
    QVERIFY(std::abs(pounds(burned->dryMass) + 10) < 1e-4); // taken away
    QCOMPARE(burned->feed, 3);
    QCOMPARE(burned->cook, 4);
    QCOMPARE(burned->pieces, 2);
    QVERIFY(std::abs(pounds(*burned->asIs) - 12) < 1e-4);
    QCOMPARE(burned->moisture, dryBasis(20));
}

RICKYARD_TEST(TstLedger)
#include "tst_ledger.moc"
