#include "models/domain/wood/delivery.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstDelivery : public QObject
{
    Q_OBJECT
private slots:
    void fullDryCord();
    void shortAndWet();
    void withinTheReadingsError();
    void pricesByHand();
    void stackingErrorIsStated();
    void weighedHasNoStackingError();
    void nothingMeasuredSaysSo();
    void readingTakenTheNextDayCounts();
    void promiseOfTheSupplierCounts();
    void paidByWeightComparesWeights();
    void paidByWeightAndStackedAsksForTheScale();
    void priceOfATypicalCook();
    void mixedWoodIsOnlyANote();
};

namespace {

Lot &cordOf(Books &books, double lengthFeet)
{
    Lot &lot = addLot(books, 1, day(0));
    lot.name = QStringLiteral("Invented load");
    lot.stacks = {{feet(lengthFeet), feet(4), feet(4)}};
    lot.paidCount = Plain::ofBase(1000000);
    lot.promisedMoisture = dryBasis(20);
    lot.price = Money::ofBase(50000);
    return lot;
}

QString reason(const DeliveryCheck &check, const QString &label)
{
    for (const Reason &r : check.headline.reasons)
        if (r.label == label)
            return r.value;
    return {};
}

} // namespace

void TstDelivery::fullDryCord()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(0), {18, 19, 20});
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QCOMPARE(check.headline.standing, Standing::Good);
    QVERIFY(std::abs(*check.shortBy) < 1e-6);
    QVERIFY(!*check.wetter);
    QCOMPARE(check.headline.plainSentence(),
             QStringLiteral("Invented load: the amount is right and it is dry."));
    QCOMPARE(check.headline.figure, QStringLiteral("100"));
}

void TstDelivery::shortAndWet()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 6); // 96 of 128 ft³
    addReading(books, 1, day(0), {34, 35, 36, 35});
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QCOMPARE(check.headline.standing, Standing::Act);
    QVERIFY(std::abs(*check.shortBy - 0.25) < 1e-6);
    QVERIFY(*check.wetter);
    QVERIFY(check.headline.plainSentence().contains(
        QStringLiteral("short by 25 % and wetter than promised")));
    QVERIFY(reason(check, QStringLiteral("Amount")).contains(QStringLiteral("0.75")));
    QVERIFY(reason(check, QStringLiteral("Moisture"))
                .contains(QStringLiteral("20 % dry basis (17 % wet basis) promised")));
}

void TstDelivery::withinTheReadingsError()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(0), {16, 26}); // mean 21, ± 63
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QVERIFY(!*check.wetter);
    QCOMPARE(check.headline.standing, Standing::Watch); // not dry enough to burn, all the same
    QVERIFY(reason(check, QStringLiteral("Moisture")).contains(QStringLiteral("error")));
}

// $500 for a full cord of post oak at 20 %: 3,365.6 lb dry, so 14.856 cents a dry pound; net heat
// 3,365.6 × 1.2 = 4,038.7 lb as is × 6,434.7 Btu (14.9670667 MJ/kg over 2,326 J/kg a Btu/lb)
// = 25.988 million Btu, so $19.24 a million.
void TstDelivery::pricesByHand()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(0), {20, 20});
    DeliveryCheck check = checkDelivery(books, lot, {});
    QVERIFY(std::abs(*check.centsPerCord - 50000) < 0.1);
    QVERIFY(std::abs(*check.centsPerDryPound - 14.856) < 0.001);
    QVERIFY(std::abs(*check.centsPerMillionBtu - 1924.0) < 1.0);
    QVERIFY(reason(check, QStringLiteral("Price")).contains(QStringLiteral("$500.00 a cord")));
    // Three quarters of a cord for the same money: a third dearer.
    Books shorter = emptyYard();
    const Lot &few = cordOf(shorter, 6);
    addReading(shorter, 1, day(0), {20, 20});
    check = checkDelivery(shorter, few, {});
    QVERIFY(std::abs(*check.centsPerCord - 50000 * 4.0 / 3.0) < 0.1);
    QVERIFY(std::abs(*check.centsPerDryPound - 14.856 * 4.0 / 3.0) < 0.002);
}

void TstDelivery::stackingErrorIsStated()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(0), {20, 20});
    const DeliveryCheck check = checkDelivery(books, lot, {});
    // 70, 85 and 90 ft³ of wood in a cord.
    QVERIFY(std::abs(*check.dryMassLow / *check.dryMass - 70.0 / 85.0) < 1e-6);
    QVERIFY(std::abs(*check.dryMassHigh / *check.dryMass - 90.0 / 85.0) < 1e-6);
    QVERIFY(reason(check, QStringLiteral("Dry wood")).contains(QStringLiteral("70 to 90 ft³")));
}

void TstDelivery::weighedHasNoStackingError()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.measuredBy = Measure::Weighed;
    lot.weight = massFromPounds(4038.7);
    lot.paidCount = Plain::ofBase(1000000);
    addReading(books, 1, day(0), {20, 20});
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QCOMPARE(check.dryMassLow, check.dryMassHigh);
    // The weight of a cord at 85 ft³ solid makes a cord again.
    QVERIFY(std::abs(cords(*check.stacked) - 1.0) < 1e-4);
}

void TstDelivery::nothingMeasuredSaysSo()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    DeliveryCheck check = checkDelivery(books, lot, {});
    QCOMPARE(check.headline.standing, Standing::Unknown);
    QVERIFY(!check.dryMass && !check.shortBy && !check.centsPerCord);
    QVERIFY(reason(check, QStringLiteral("Missing")).contains(QStringLiteral("length")));
    lot.measuredBy = Measure::Claimed;
    lot.paidCount = Plain::ofBase(1000000);
    check = checkDelivery(books, lot, {});
    QVERIFY(!check.shortBy); // a claim cannot confirm itself
    QCOMPARE(check.headline.standing, Standing::Unknown);
}

void TstDelivery::readingTakenTheNextDayCounts()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(1), {30, 31, 32});
    addReading(books, 1, day(100), {17, 18, 19}); // it has seasoned; that is not what came
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QCOMPARE(check.moisture, dryBasis(31));
    QVERIFY(*check.wetter);
}

void TstDelivery::promiseOfTheSupplierCounts()
{
    Books books = emptyYard();
    Supplier supplier;
    supplier.id = 1;
    supplier.promised = dryBasis(18);
    books.suppliers.insert(1, supplier);
    Lot &lot = cordOf(books, 8);
    lot.promisedMoisture.reset();
    lot.supplier = 1;
    addReading(books, 1, day(0), {25, 25.5, 26});
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QCOMPARE(check.promised, dryBasis(18));
    QVERIFY(*check.wetter);
}

// 2,000 lb paid for, 1,900 came: 5 % short, which a scale can tell and a tape could not.
void TstDelivery::paidByWeightComparesWeights()
{
    Books books = emptyYard();
    Lot &lot = addLot(books, 1, day(0));
    lot.name = QStringLiteral("Invented load");
    lot.measuredBy = Measure::Weighed;
    lot.weight = massFromPounds(1900);
    lot.paidUnit = SellUnit::Pound;
    lot.paidCount = Plain::ofBase(2000 * 1000000LL);
    lot.promisedMoisture = dryBasis(20);
    addReading(books, 1, day(0), {20, 20});
    DeliveryCheck check = checkDelivery(books, lot, {});
    QVERIFY(check.byWeight && !check.paidFor);
    QVERIFY(std::abs(*check.shortBy - 0.05) < 1e-9);
    QVERIFY(isShort(check));
    QCOMPARE(check.headline.standing, Standing::Act);
    QCOMPARE(check.headline.figure, QStringLiteral("95"));
    QString amount = reason(check, QStringLiteral("Amount"));
    amount.replace(QChar(0x202f), QLatin1Char(' ')); // the thin space before a unit
    QVERIFY2(
        amount.startsWith(QStringLiteral("short by 5 %: 1,900 lb came, 2,000 lb was paid for")),
        qPrintable(amount));
    lot.weight = massFromPounds(1970); // within the scale's error
    check = checkDelivery(books, lot, {});
    QVERIFY(!isShort(check));
    QVERIFY(reason(check, QStringLiteral("Amount")).startsWith(QStringLiteral("as paid for")));
    QCOMPARE(check.headline.standing, Standing::Good);
    lot.weight = massFromPounds(2050);
    check = checkDelivery(books, lot, {});
    QVERIFY(reason(check, QStringLiteral("Amount")).startsWith(QStringLiteral("over by")));
}

void TstDelivery::paidByWeightAndStackedAsksForTheScale()
{
    Books books = emptyYard();
    Lot &lot = cordOf(books, 8);
    lot.paidUnit = SellUnit::Pound;
    lot.paidCount = Plain::ofBase(2000 * 1000000LL);
    addReading(books, 1, day(0), {20, 20});
    DeliveryCheck check = checkDelivery(books, lot, {});
    QVERIFY(!check.shortBy && !check.byWeight);
    QVERIFY(reason(check, QStringLiteral("Amount")).contains(QStringLiteral("weigh it")));
    lot.stacks.clear();
    check = checkDelivery(books, lot, {});
    QVERIFY(reason(check, QStringLiteral("Amount")).contains(QStringLiteral("weigh the load")));
}

// The cord of pricesByHand: $19.24 a million Btu net, so two million cost $38.48.
void TstDelivery::priceOfATypicalCook()
{
    Books books = emptyYard();
    const Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(0), {20, 20});
    const Heat cook = Heat::rounded(2.0e6 * kJoulesPerBtu);
    const DeliveryCheck check = checkDelivery(books, lot, {}, cook);
    QVERIFY(std::abs(*check.centsPerCook - 3848.0) < 1.0);
    QVERIFY(reason(check, QStringLiteral("Price")).contains(QStringLiteral("a typical cook")));
    QVERIFY(!checkDelivery(books, lot, {}).centsPerCook);
}

// NIST Handbook 130, section 2.4.2: shares of a mix within 10 points.
void TstDelivery::mixedWoodIsOnlyANote()
{
    Books books = emptyYard();
    Lot &lot = cordOf(books, 8);
    addReading(books, 1, day(0), {20, 20});
    const Standing plain = checkDelivery(books, lot, {}).headline.standing;
    QVERIFY(reason(checkDelivery(books, lot, {}), QStringLiteral("Mixed wood")).isEmpty());
    lot.note = QStringLiteral("Mixed oak and pecan, half and half");
    const DeliveryCheck check = checkDelivery(books, lot, {});
    QVERIFY(reason(check, QStringLiteral("Mixed wood")).contains(QStringLiteral("10 points")));
    QCOMPARE(check.headline.standing, plain);
}

RICKYARD_TEST(TstDelivery)
#include "tst_delivery.moc"
