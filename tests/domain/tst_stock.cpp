#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/stock.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QRandomGenerator>
#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstStock : public QObject
{
    Q_OBJECT
private slots:
    void readinessOfALot();
    void viewsByHand();
    void halfWidthByStudent();
    void onlyWhatHasHappenedCounts();
    void sumOfMovementsIsTheStock();
    void shiftingTimeChangesNothing();
    void totalsSplitReadyFromWaiting();
    void overdrawnLotIsEmpty();
    void assumedMoistureIsSaid();
};

void TstStock::readinessOfALot()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    const auto readiness = [&] { return lotStockAt(books, 1, day(10)).readiness; };
    QCOMPARE(readiness(), Readiness::Empty);
    addMovement(books, 1, day(0), massFromPounds(1000));
    QCOMPARE(readiness(), Readiness::NoReading);
    addReading(books, 1, day(1), {20.001});
    QCOMPARE(readiness(), Readiness::Wet);
    addReading(books, 1, day(2), {20});
    QCOMPARE(readiness(), Readiness::Dry);
    books.lots[1].hold = true;
    QCOMPARE(readiness(), Readiness::OnHold);
    books.species[1].neverBurn = true;
    QCOMPARE(readiness(), Readiness::NeverBurn);
    // Rain: it was dry, the latest reading says it is not.
    books.species[1].neverBurn = false;
    books.lots[1].hold = false;
    addReading(books, 1, day(5), {24});
    QCOMPARE(readiness(), Readiness::Wet);
}

// 1,000 lb oven-dry of post oak at 20 %: 1,200 lb as is, 200 splits of 6 lb; gravity 0.60 / 0.946,
// so 453.592 kg / 0.634249 = 715.17 L solid = 25.256 ft³; stacked × 128/85 = 38.032 ft³. Net heat
// of 1,200 lb of the default hardwood at 20 % is 1,200 seasoned pounds by definition.
void TstStock::viewsByHand()
{
    Books books = emptyYard();
    addLot(books, 1, day(0)).splitMass = massFromPounds(6);
    addMovement(books, 1, day(0), massFromPounds(1000));
    addReading(books, 1, day(1), {20});
    const LotStock lot = lotStockAt(books, 1, day(2));
    QVERIFY(std::abs(pounds(*lot.asIs) - 1200) < 1e-3);
    QVERIFY(std::abs(*lot.splits - 200) < 1e-3);
    QVERIFY(std::abs(cubicFeet(lot.solid) - 25.256) < 0.001);
    QVERIFY(std::abs(cubicFeet(lot.stacked) - 38.032) < 0.002);
    QVERIFY(std::abs(seasonedPounds(lot.netHeat) - 1200) < 0.001);
    QVERIFY(!lot.moistureAssumed);
    QCOMPARE(lot.readAt, day(1));
    // Splits of no known weight count by their usual size: 4.162 lb dry (tst_ledger.cpp).
    books.lots[1].splitMass.reset();
    QVERIFY(std::abs(*lotStockAt(books, 1, day(2)).splits - 1000 / 4.162) < 0.5);
}

// Student t at 97.5 % with 4 degrees of freedom is 2.776 (printed tables, from memory). Readings
// 16, 18, 20, 22, 24: s = √10 = 3.1623, s/√5 = 1.41421, half-width 3.926.
void TstStock::halfWidthByStudent()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addMovement(books, 1, day(0), massFromPounds(1000));
    addReading(books, 1, day(1), {16, 18, 20, 22, 24});
    const LotStock lot = lotStockAt(books, 1, day(2));
    QCOMPARE(lot.moisture, dryBasis(20));
    QVERIFY(std::abs(lot.moistureHalfWidth->toDouble() / 1000 - 3.926) < 0.002);
    addReading(books, 1, day(2), {20});
    QVERIFY(!lotStockAt(books, 1, day(2)).moistureHalfWidth);
}

void TstStock::onlyWhatHasHappenedCounts()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addMovement(books, 1, day(0), massFromPounds(1000));
    addMovement(books, 1, day(5), -massFromPounds(100), MovementKind::Burned);
    QCOMPARE(lotStockAt(books, 1, day(4)).dryMass, massFromPounds(1000));
    QCOMPARE(lotStockAt(books, 1, day(5)).dryMass, massFromPounds(900));
    QCOMPARE(stockAt(books, day(-1)).dryMass, Mass());
}

namespace {

Books randomYard(quint32 seed, Mass &sum)
{
    QRandomGenerator random(seed);
    Books books = emptyYard();
    for (RecordId id = 1; id <= 4; ++id) {
        addLot(books, id, day(random.bounded(10)));
        addMovement(books, id, day(0), massFromPounds(4000 + random.bounded(1000)));
        addReading(books, id, day(1), {10.0 + random.bounded(25), 10.0 + random.bounded(25)});
    }
    for (int i = 0; i < 60; ++i)
        addMovement(books, 1 + random.bounded(4), day(1 + random.bounded(30)),
                    -Mass::ofBase(random.bounded(20000000)),
                    i % 7 == 0 ? MovementKind::Counted : MovementKind::Burned);
    sum = Mass();
    for (const Movement &movement : books.movements)
        sum += movement.dryMass;
    return books;
}

} // namespace

void TstStock::sumOfMovementsIsTheStock()
{
    for (quint32 seed = 1; seed <= 20; ++seed) {
        Mass sum;
        const Books books = randomYard(seed, sum);
        const Stock stock = stockAt(books, day(40));
        QCOMPARE(stock.dryMass, sum); // exact: integers
        Mass ofLots;
        for (const LotStock &lot : stock.lots) {
            ofLots += lot.dryMass;
            const LotStock alone = lotStockAt(books, lot.lot, day(40));
            QCOMPARE(alone.dryMass, lot.dryMass);
            QCOMPARE(alone.netHeat, lot.netHeat);
            QCOMPARE(alone.readiness, lot.readiness);
        }
        QCOMPARE(ofLots, sum);
    }
}

void TstStock::shiftingTimeChangesNothing()
{
    Mass sum;
    const Books books = randomYard(3, sum);
    Books later = books;
    const Duration shift = Duration::ofBase(86400 * 91 + 1234);
    for (Lot &lot : later.lots)
        lot.received = lot.received + shift;
    for (MoistureReading &reading : later.readings)
        reading.time = reading.time + shift;
    for (Movement &movement : later.movements)
        movement.time = movement.time + shift;
    const Stock a = stockAt(books, day(15));
    const Stock b = stockAt(later, day(15) + shift);
    QCOMPARE(b.dryMass, a.dryMass);
    QCOMPARE(b.readyHeat, a.readyHeat);
    QCOMPARE(b.waitingHeat, a.waitingHeat);
    QCOMPARE(b.readyStacked, a.readyStacked);
    QVERIFY(a.readyHeat.base() > 0 || a.waitingHeat.base() > 0);
}

void TstStock::totalsSplitReadyFromWaiting()
{
    Books books = emptyYard();
    Species cedar;
    cedar.id = 2;
    cedar.basicGravity = Plain::ofBase(440000);
    cedar.neverBurn = true;
    books.species.insert(2, cedar);
    for (RecordId id = 1; id <= 4; ++id) {
        addLot(books, id, day(static_cast<int>(id)));
        addMovement(books, id, day(4), massFromPounds(100));
    }
    addReading(books, 1, day(5), {18});
    addReading(books, 2, day(5), {35});
    books.lots[4].species = 2; // 3 has no reading
    const Stock stock = stockAt(books, day(6));
    QCOMPARE(stock.lots.size(), 4);
    QCOMPARE(stock.dryMass, massFromPounds(100) * 4);
    QCOMPARE(stock.readyDryMass, massFromPounds(100));
    QCOMPARE(stock.readyHeat, stock.lots.at(0).netHeat);
    QCOMPARE(stock.readyStacked, stock.lots.at(0).stacked);
    QCOMPARE(stock.waitingHeat, stock.lots.at(1).netHeat + stock.lots.at(2).netHeat);
    QCOMPARE(stock.lots.at(3).readiness, Readiness::NeverBurn);
    // Wet wood holds less net heat for the same dry mass.
    QVERIFY(stock.lots.at(1).netHeat < stock.lots.at(0).netHeat);
}

void TstStock::overdrawnLotIsEmpty()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addReading(books, 1, day(0), {18});
    addMovement(books, 1, day(0), -massFromPounds(40), MovementKind::Burned);
    const LotStock lot = lotStockAt(books, 1, day(1));
    QCOMPARE(lot.dryMass, -massFromPounds(40)); // the drift stays visible
    QCOMPARE(lot.readiness, Readiness::Empty);
    QCOMPARE(lot.netHeat, Heat());
    QCOMPARE(stockAt(books, day(1)).readyHeat, Heat());
}

void TstStock::assumedMoistureIsSaid()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addMovement(books, 1, day(0), massFromPounds(100));
    const LotStock lot = lotStockAt(books, 1, day(1));
    QVERIFY(lot.moistureAssumed);
    QVERIFY(!lot.asIs);
    QVERIFY(!lot.moisture);
    QCOMPARE(lot.netHeat, netHeatOf(massFromPounds(100), dryBasis(70.9))); // green
    addReading(books, 1, day(1), {18}).face = Face::Old;
    QVERIFY(lotStockAt(books, 1, day(1)).moistureNote.contains(QStringLiteral("old face")));
}

RICKYARD_TEST(TstStock)
#include "tst_stock.moc"
