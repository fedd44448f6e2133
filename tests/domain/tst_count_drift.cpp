#include "models/domain/wood/count_causes.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/stock.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstCountDrift : public QObject
{
    Q_OBJECT
private slots:
    void countsBecomeDryWood();
    void lessThanNothingIsRefused();
    void anExactCountIsNoDrift();
    void gapsInTheLogComeFirst();
    void aCookWithoutWoodIsSeen();
    void anUnmeasuredDeliveryIsSuspected();
    void aDeliveryIsNotSuspectedTwice();
    void heavySplitsAreSuspected();
    void oldMoistureIsSuspected();
    void aGreatLossIsTaken();
    void moreThanTheBooksIsNotTaken();
    void sharesAreBayesRuleByHand();
    void theGapsOfALogByHand();
};

namespace {

// A cord of oak by weight: 1,200 kg dry, 20 splits weighed at 2.4 kg, read at 20 % on day 0.
Books yardWithRick(Measure measure = Measure::Weighed)
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.measuredBy = measure;
    lot.splitMass = massFromKilograms(2.4);
    lot.splitsWeighed = 20;
    lot.splitSpread = massFromKilograms(0.24);
    addReading(books, 1, day(0), {20, 20, 20});
    addMovement(books, 1, day(0), massFromKilograms(1200));
    Pit pit;
    pit.id = 1;
    pit.name = QStringLiteral("Pit");
    books.pits.insert(1, pit);
    return books;
}

// A cook of half-hour feeds of one split; those of `left` are not written down.
void addCook(Books &books, RecordId id, int atDay, int feeds, const QVector<int> &left = {})
{
    Cook cook;
    cook.id = id;
    cook.pit = 1;
    cook.lit = day(atDay, 6);
    cook.fireOut = cook.lit + Duration::ofBase(1800LL * (feeds + 1));
    books.cooks.insert(id, cook);
    const double split = kilograms(splitWeight(books, books.lots.value(1)).dry);
    for (int i = 0; i < feeds; ++i) {
        if (left.contains(i))
            continue;
        Feed feed;
        feed.id = 1000 * id + i;
        feed.cook = id;
        feed.lot = 1;
        feed.time = cook.lit + Duration::ofBase(1800LL * i);
        books.feeds.insert(feed.id, feed);
        addMovement(books, 1, feed.time, massFromKilograms(-split), MovementKind::Burned);
        Movement &m = books.movements.last();
        m.cook = id;
        m.feed = feed.id;
        m.pieces = 1;
    }
}

CountDrift driftOf(const Books &books, double countedKilograms, int atDay,
                   CountWay way = CountWay::Weight, std::optional<Moisture> moistureNow = {})
{
    const Mass dry = massFromKilograms(countedKilograms);
    const CountedWood counted{dry, dry * kCountWeightError, dryBasis(20), QString()};
    return countDrift(books, 1, counted, way, day(atDay), moistureNow, {});
}

QString told(const CountDrift &drift)
{
    QStringList lines;
    for (const DriftClue &clue : drift.clues)
        lines << QStringLiteral("%1 %2").arg(clue.share, 0, 'f', 3).arg(clue.words);
    return lines.join(QLatin1Char('\n'));
}

double bookOf(const Books &books, int atDay)
{
    return kilograms(lotStockAt(books, 1, day(atDay)).dryMass);
}

} // namespace

void TstCountDrift::countsBecomeDryWood()
{
    const Books books = yardWithRick();
    // 4 × 4 × 8 ft is a cord (NIST Handbook 130); 85 of its 128 ft³ are wood.
    RickCount stack{1, CountWay::Stack, {{feet(8), feet(4), feet(4)}}, {}, {}};
    const auto stacked = countedWood(books, stack, day(1));
    QVERIFY(stacked.ok());
    QCOMPARE(stacked->dry,
             dryMassOfSolid(volumeFromCubicFeet(85), books.species.value(1), dryBasis(20)));
    RickCount weighed{1, CountWay::Weight, {}, {}, massFromKilograms(120)};
    QVERIFY(std::abs(kilograms(countedWood(books, weighed, day(1))->dry) - 100) < 1e-6);
    RickCount splits{1, CountWay::Splits, {}, 30, {}};
    QVERIFY(std::abs(kilograms(countedWood(books, splits, day(1))->dry) - 30 * 2.4 / 1.2) < 1e-4);
    RickCount nothing{1, CountWay::Nothing, {}, {}, {}};
    QCOMPARE(countedWood(books, nothing, day(1))->dry, Mass());
}

void TstCountDrift::lessThanNothingIsRefused()
{
    const Books books = yardWithRick();
    const RickCount wrong[] = {{1, CountWay::Splits, {}, -3, {}},
                               {1, CountWay::Weight, {}, {}, massFromKilograms(-1)},
                               {1, CountWay::Stack, {{-feet(8), feet(4), feet(4)}}, {}, {}}};
    for (const RickCount &count : wrong) {
        const auto refused = countedWood(books, count, day(1));
        QVERIFY(!refused);
        QVERIFY(refused.message().contains(QStringLiteral("less than nothing")));
    }
    QVERIFY(!countedWood(books, {7, CountWay::Nothing, {}, {}, {}}, day(1)));
    QVERIFY(!countedWood(books, {1, CountWay::Splits, {}, {}, {}}, day(1)));
}

void TstCountDrift::anExactCountIsNoDrift()
{
    Books books = yardWithRick();
    addCook(books, 1, 5, 20);
    const CountDrift drift = driftOf(books, bookOf(books, 10), 10);
    QVERIFY(drift.withinError);
    QCOMPARE(drift.clues.first().cause, DriftCause::CountError);
}

void TstCountDrift::gapsInTheLogComeFirst()
{
    Books books = yardWithRick();
    // Six feeds in a row are missing from each of eight cooks: 48 splits, 96 kg.
    for (int i = 0; i < 8; ++i)
        addCook(books, i + 1, 2 + i, 22, {8, 9, 10, 11, 12, 13});
    const CountDrift drift = driftOf(books, bookOf(books, 20) - 96, 20);
    QVERIFY(!drift.clues.isEmpty());
    QVERIFY2(drift.clues.first().cause == DriftCause::FeedsNotLogged, qPrintable(told(drift)));
    QVERIFY2(drift.clues.first().words.contains(QStringLiteral("48 feeds")),
             qPrintable(told(drift)));
}

void TstCountDrift::aCookWithoutWoodIsSeen()
{
    Books books = yardWithRick();
    addCook(books, 1, 3, 20);
    addCook(books, 2, 6, 20,
            {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19});
    const CountDrift drift = driftOf(books, bookOf(books, 10) - 40, 10, CountWay::Splits);
    bool seen = false;
    for (const DriftClue &clue : drift.clues)
        seen = seen || (clue.cause == DriftCause::FeedsNotLogged &&
                        clue.words.contains(QStringLiteral("1 cook without any wood")));
    QVERIFY2(seen, qPrintable(told(drift)));
}

void TstCountDrift::anUnmeasuredDeliveryIsSuspected()
{
    Books books = yardWithRick(Measure::Claimed);
    const CountDrift drift = driftOf(books, 1000, 3);
    QVERIFY2(drift.clues.first().cause == DriftCause::Delivery, qPrintable(told(drift)));
    QVERIFY(drift.clues.first().words.contains(QStringLiteral("was short")));
    QVERIFY(drift.clues.first().words.contains(QStringLiteral("taken as true")));
}

// Once counted, the delivery is settled.
void TstCountDrift::aDeliveryIsNotSuspectedTwice()
{
    Books books = yardWithRick(Measure::Claimed);
    addMovement(books, 1, day(2), massFromKilograms(-100), MovementKind::Counted);
    for (const DriftClue &clue : driftOf(books, 1000, 3).clues)
        QVERIFY(clue.cause != DriftCause::Delivery);
}

void TstCountDrift::heavySplitsAreSuspected()
{
    Books books = yardWithRick();
    Lot &lot = books.lots[1];
    lot.splitsWeighed = 2; // two splits: off by a sixth, as splits go
    lot.splitSpread.reset();
    for (int i = 0; i < 12; ++i)
        addCook(books, i + 1, 2 + i, 40);
    // 480 splits of 2 kg were booked; were they a tenth heavier, 96 kg more are gone.
    const CountDrift drift = driftOf(books, bookOf(books, 20) - 96, 20);
    QVERIFY2(drift.clues.first().cause == DriftCause::SplitWeight, qPrintable(told(drift)));
    // 2.2 kg of dry wood are 4.9 lb.
    QVERIFY2(drift.clues.first().words.contains(QStringLiteral("at 4.9")), qPrintable(told(drift)));
}

// Weighed with 30 % in mind and dry to 18 %, 1,180 of 1,300 parts are there.
void TstCountDrift::oldMoistureIsSuspected()
{
    Books books = yardWithRick();
    const double seeming = 1200 * 1.18 / 1.30;
    const Mass dry = massFromKilograms(seeming);
    const CountedWood counted{dry, dry * kCountWeightError, dryBasis(30), QString()};
    const CountDrift drift =
        countDrift(books, 1, counted, CountWay::Weight, day(90), dryBasis(18), {});
    QVERIFY2(drift.clues.first().cause == DriftCause::DriedOut, qPrintable(told(drift)));
    QVERIFY(drift.clues.first().words.contains(QStringLiteral("90 days ago")));
    // Without a forecast nothing is said of drying.
    for (const DriftClue &clue :
         countDrift(books, 1, counted, CountWay::Weight, day(90), {}, {}).clues)
        QVERIFY(clue.cause != DriftCause::DriedOut);
}

void TstCountDrift::aGreatLossIsTaken()
{
    Books books = yardWithRick();
    const CountDrift drift = driftOf(books, 600, 3);
    QVERIFY2(drift.clues.first().cause == DriftCause::TakenOrLost, qPrintable(told(drift)));
    QVERIFY(!drift.withinError);
}

void TstCountDrift::moreThanTheBooksIsNotTaken()
{
    Books books = yardWithRick();
    addCook(books, 1, 2, 20);
    const CountDrift drift = driftOf(books, 1700, 3);
    for (const DriftClue &clue : drift.clues) {
        QVERIFY(clue.cause != DriftCause::TakenOrLost);
        QVERIFY(clue.cause != DriftCause::FeedsNotLogged);
    }
    QVERIFY2(drift.clues.first().cause == DriftCause::PutThere, qPrintable(told(drift)));
}

// No burning, weighed on arrival, 72 kg less counted: three causes are left, worked out by hand.
// Half a normal of 420 kg with an error of 33.84 kg on top is 2 phi(72 / 421.4) / 421.4 times the
// normal integral up to 72 × 420 / (33.84 × 421.4) = 2.12, which tables give as 0.9830.
void TstCountDrift::sharesAreBayesRuleByHand()
{
    const Books books = yardWithRick();
    const double counted = 1128;
    const double error = counted * kCountWeightError; // 33.84
    const auto ordinate = [](double x, double sd) {
        return std::exp(-x * x / (2 * sd * sd)) / sd; // the common root of 2 pi drops out
    };
    const double byCount = 0.35 * ordinate(72, error);
    const double byDelivery = 0.08 * ordinate(72, std::hypot(0.04 * 1200, error));
    const double taken = 0.04 * 2 * ordinate(72, std::hypot(0.35 * 1200, error)) * 0.9830;
    const double sum = byCount + byDelivery + taken;
    const CountDrift drift = driftOf(books, counted, 3);
    double whole = 0;
    for (const DriftClue &clue : drift.clues) {
        whole += clue.share;
        const double expected = clue.cause == DriftCause::CountError ? byCount
                                : clue.cause == DriftCause::Delivery ? byDelivery
                                                                     : taken;
        QVERIFY2(std::abs(clue.share - expected / sum) < 1e-4, qPrintable(told(drift)));
    }
    QVERIFY(whole <= 1 + 1e-9 && whole > 1 - 2 * kLeastShare);
    QVERIFY(
        std::is_sorted(drift.clues.cbegin(), drift.clues.cend(),
                       [](const DriftClue &a, const DriftClue &b) { return a.share > b.share; }));
}

// Feeds at 0, 30, 60, 150, 180, 210, 270 minutes: the middle gap is 30; 90 lacks two, 60 lacks one.
void TstCountDrift::theGapsOfALogByHand()
{
    Books books = yardWithRick();
    addCook(books, 1, 2, 10, {3, 4, 8});
    QCOMPARE(feedsMissing(books, 1, day(9)), 3);
    Books whole = yardWithRick();
    addCook(whole, 1, 2, 10);
    QCOMPARE(feedsMissing(whole, 1, day(9)), 0);
    Books few = yardWithRick();
    addCook(few, 1, 2, 3, {1});
    QCOMPARE(feedsMissing(few, 1, day(9)), 0); // too few to know a rhythm
}

RICKYARD_TEST(TstCountDrift)
#include "tst_count_drift.moc"
