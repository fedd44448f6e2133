#include "models/domain/wood/delivery.h"
#include "models/domain/wood/supplier_record.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstSupplierRecord : public QObject
{
    Q_OBJECT
private slots:
    void noHistorySaysSo();
    void shortWetAndLateByHand();
    void aLateReadingTellsNothingOfTheDelivery();
    void anOldFaceTellsNothing();
    void whatCannotBeComparedIsNotCounted();
    void arrivalOfTheLotStandsInForTheOrders();
    void expectationIsTheConjugateOne();
    void manyDeliveriesSpeakForThemselves();
};

namespace {

Supplier &addSupplier(Books &books, RecordId id)
{
    Supplier supplier;
    supplier.id = id;
    supplier.name = QStringLiteral("Invented yard ") + QString::number(id);
    return *books.suppliers.insert(id, supplier);
}

// A cord paid for; `share` of it came, at `percent` with 20 promised.
Lot &addDelivery(Books &books, RecordId id, RecordId supplier, double share, double percent)
{
    Lot &lot = addLot(books, id, day(static_cast<int>(10 * id)));
    lot.supplier = supplier;
    lot.stacks = {{feet(8 * share), feet(4), feet(4)}};
    lot.paidCount = Plain::ofBase(1000000);
    lot.promisedMoisture = dryBasis(20);
    addReading(books, id, lot.received, {percent, percent});
    return lot;
}

WoodOrder &addOrder(Books &books, RecordId id, RecordId supplier, QDate promised, QDate received)
{
    WoodOrder order;
    order.id = id;
    order.supplier = supplier;
    order.species = 1;
    order.state = OrderState::Received;
    order.promised = promised;
    order.received = received;
    return *books.orders.insert(id, order);
}

} // namespace

void TstSupplierRecord::noHistorySaysSo()
{
    Books books = emptyYard();
    addSupplier(books, 1);
    const SupplierRecord record = supplierRecord(books, 1, {});
    QVERIFY(record.empty());
    QVERIFY(!record.shortBy.sd());
    const QString words = supplierRecordWords(record, {});
    QVERIFY(words.startsWith(QStringLiteral("No history")));
    QVERIFY(words.contains(QStringLiteral("6 % of the amount and 5 points")));
    QVERIFY(words.contains(QStringLiteral("wide default")));
}

// By hand: 1, 0.9 and 0.8 of a cord: 0, 10 and 20 % short, mean 10 %, sum of squares 2 × 0.1^2,
// two of them by more than 5 %. 26, 20 and 29 % against 20 %: 6, 0 and 9 points, mean 5, squares
// 1 + 25 + 16 = 42. Late 0 (early), 3 and 6 days: mean 3, worst 6.
void TstSupplierRecord::shortWetAndLateByHand()
{
    Books books = emptyYard();
    addSupplier(books, 1);
    addSupplier(books, 2);
    addDelivery(books, 1, 1, 1.0, 26);
    addDelivery(books, 2, 1, 0.9, 20);
    addDelivery(books, 3, 1, 0.8, 29);
    addDelivery(books, 4, 2, 0.5, 60); // another's
    const QDate promised(2025, 12, 10);
    addOrder(books, 1, 1, promised, promised.addDays(-2));
    addOrder(books, 2, 1, promised, promised.addDays(3));
    addOrder(books, 3, 1, promised, promised.addDays(6));
    addOrder(books, 4, 2, promised, promised.addDays(40));
    const SupplierRecord record = supplierRecord(books, 1, {});
    QCOMPARE(record.deliveries, 3);
    QCOMPARE(record.shortDeliveries, 2);
    QCOMPARE(record.shortBy.count, 3);
    QVERIFY(std::abs(record.shortBy.mean - 0.10) < 1e-6);
    QVERIFY(std::abs(record.shortBy.squares - 0.02) < 1e-6);
    QVERIFY(std::abs(*record.shortBy.sd() - 0.1) < 1e-6);
    QCOMPARE(record.wetPoints.count, 3);
    QVERIFY(std::abs(record.wetPoints.mean - 5.0) < 1e-6);
    QVERIFY(std::abs(record.wetPoints.squares - 42.0) < 1e-6);
    QVERIFY(std::abs(record.wetPoints.worst - 9.0) < 1e-6);
    QVERIFY(std::abs(record.daysLate.mean - 3.0) < 1e-12);
    QCOMPARE(record.daysLate.worst, 6.0);
    QCOMPARE(supplierRecordWords(record, {}),
             QStringLiteral("3 deliveries: 2 of 3 short, on average 10 % under what was paid for; "
                            "5.0 points wetter than promised (dry basis, 3 deliveries); 3 days "
                            "late on average, 6 at worst (3 orders)."));
}

void TstSupplierRecord::aLateReadingTellsNothingOfTheDelivery()
{
    Books books = emptyYard();
    addSupplier(books, 1);
    Lot &lot = addLot(books, 1, day(0));
    lot.supplier = 1;
    lot.promisedMoisture = dryBasis(20);
    addReading(books, 1, day(kReadingOfDeliveryDays + 1), {14, 14}); // it has dried since
    QCOMPARE(supplierRecord(books, 1, {}).wetPoints.count, 0);
    addReading(books, 1, day(kReadingOfDeliveryDays), {30, 30});
    const SupplierRecord record = supplierRecord(books, 1, {});
    QCOMPARE(record.wetPoints.count, 1);
    QVERIFY(std::abs(record.wetPoints.mean - 10.0) < 1e-6);
}

void TstSupplierRecord::anOldFaceTellsNothing()
{
    Books books = emptyYard();
    addSupplier(books, 1);
    addDelivery(books, 1, 1, 1.0, 15);
    books.readings[1].face = Face::Old; // reads low
    QCOMPARE(supplierRecord(books, 1, {}).wetPoints.count, 0);
}

void TstSupplierRecord::whatCannotBeComparedIsNotCounted()
{
    Books books = emptyYard();
    addSupplier(books, 1);
    Lot &lot = addDelivery(books, 1, 1, 0.5, 30);
    lot.measuredBy = Measure::Claimed; // nobody measured
    lot.promisedMoisture.reset();      // nothing was promised
    WoodOrder &order = addOrder(books, 1, 1, {}, QDate(2025, 12, 1));
    order.promised = {};
    WoodOrder &cancelled = addOrder(books, 2, 1, QDate(2025, 12, 1), QDate(2025, 12, 30));
    cancelled.state = OrderState::Cancelled;
    const SupplierRecord record = supplierRecord(books, 1, {});
    QCOMPARE(record.deliveries, 1);
    QCOMPARE(record.shortBy.count, 0);
    QCOMPARE(record.wetPoints.count, 0);
    QCOMPARE(record.daysLate.count, 0);
    const QString words = supplierRecordWords(record, {});
    QVERIFY(words.contains(QStringLiteral("no amount measured yet")));
    QVERIFY(words.contains(QStringLiteral("no promised day")));
    // The supplier's own promise stands in for one on the lot.
    books.suppliers[1].promised = dryBasis(25);
    QVERIFY(std::abs(supplierRecord(books, 1, {}).wetPoints.mean - 5.0) < 1e-6);
}

void TstSupplierRecord::arrivalOfTheLotStandsInForTheOrders()
{
    Books books = emptyYard();
    addSupplier(books, 1);
    addOrder(books, 7, 1, QDate(2025, 12, 5), {});
    QCOMPARE(supplierRecord(books, 1, {}).daysLate.count, 0); // still out
    Lot &lot = addLot(books, 1, day(8));                      // 9 Dec 2025
    lot.supplier = 1;
    lot.order = 7;
    const SupplierRecord record = supplierRecord(books, 1, {});
    QCOMPARE(record.daysLate.count, 1);
    QCOMPARE(record.daysLate.mean, 4.0);
}

// Normal-inverse-gamma by hand: three deliveries 5 points wet on average with squares 42, prior
// scatter 5. Mean 3 × 5 / 4 = 3.75; nu 7; s^2 = (4 × 25 + 42 + 3 × 25 / 4) / 7 = 160.75 / 7
// = 22.9643; scale^2 = 22.9643 × 1.25 = 28.7054, scale 5.35774. None: sqrt(25 × 2) = 7.07107, nu 4.
void TstSupplierRecord::expectationIsTheConjugateOne()
{
    const Tally tally = tallyOf({6, 0, 9});
    const Expectation three = expectationOf(tally, 5);
    QVERIFY(std::abs(three.mean - 3.75) < 1e-12);
    QCOMPARE(three.degreesOfFreedom, 7.0);
    QVERIFY(std::abs(three.scale - 5.35774) < 1e-5);
    QCOMPARE(three.deliveries, 3);
    const Expectation none = expectationOf({}, 5);
    QCOMPARE(none.mean, 0.0);
    QCOMPARE(none.degreesOfFreedom, 4.0);
    QVERIFY(std::abs(none.scale - 7.07107) < 1e-5);
}

void TstSupplierRecord::manyDeliveriesSpeakForThemselves()
{
    QVector<double> values; // 4 and 6 in turn: mean 5, sd 1
    for (int i = 0; i < 4000; ++i)
        values << 5.0 + (i % 2 == 0 ? 1.0 : -1.0);
    const Expectation expectation = expectationOf(tallyOf(values), 5);
    QVERIFY(std::abs(expectation.mean - 5.0) < 0.01);
    QVERIFY(std::abs(expectation.scale - 1.0) < 0.03);
    // Each more delivery like the others narrows what is expected.
    double before = expectationOf({}, 5).scale;
    for (int n = 2; n <= 20; n += 2) {
        const double scale = expectationOf(tallyOf(values.mid(0, n)), 5).scale;
        QVERIFY(scale < before || n == 2);
        before = scale;
    }
}

RICKYARD_TEST(TstSupplierRecord)
#include "tst_supplier_record.moc"
