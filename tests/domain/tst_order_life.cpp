#include "models/domain/plan/order_life.h"
#include "models/domain/plan/scorecard.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/sale.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstOrderLife : public QObject
{
    Q_OBJECT
private slots:
    void whatMayFollowWhat();
    void stepsStampTheirDays();
    void slipsAreRefusedInWords();
    void aPromiseIsHeldToItsDay();
    void withoutAPromiseTheUsualTimeCounts();
    void askedTwoDaysAgo();
    void theLatestComesFirst();
    void amountsFollowTheUnit();
    void theMessageHoldsWhatASupplierNeeds();
    void priceByTheUnitWithDelivery();
    void aScorecardByHand();
    void noHistoryIsSaid();
};

namespace {

const QDate kToday(2025, 12, 20);

Books yardWithSupplier()
{
    Books books = emptyYard();
    Yard yard = books.yard();
    yard.name = QStringLiteral("Test yard (invented)");
    books.yards.insert(1, yard);
    Supplier supplier;
    supplier.id = 1;
    supplier.name = QStringLiteral("Nowhere Wood (invented)");
    supplier.leadTime = Duration::ofBase(10 * 86400);
    supplier.unit = SellUnit::HalfCord;
    supplier.price = Money::ofBase(22000);
    supplier.delivery = Money::ofBase(3500);
    supplier.promised = dryBasis(20);
    books.suppliers.insert(1, supplier);
    return books;
}

WoodOrder &addOrder(Books &books, RecordId id, OrderState state, QDate ordered, QDate promised = {},
                    QDate received = {})
{
    WoodOrder order;
    order.id = id;
    order.supplier = 1;
    order.species = 1;
    order.state = state;
    order.volume = volumeFromCubicFeet(128);
    order.unit = SellUnit::HalfCord;
    order.count = Plain::ofBase(2000000);
    order.ordered = ordered;
    order.promised = promised;
    order.received = received;
    return *books.orders.insert(id, order);
}

// Amounts stand with a narrow space before their unit.
QString plainSpaces(QString text)
{
    return text.replace(QChar(0x202F), QLatin1Char(' '));
}

} // namespace

void TstOrderLife::whatMayFollowWhat()
{
    using S = OrderState;
    using T = OrderStep;
    const QVector<QPair<S, QVector<T>>> allowed{
        {S::Draft, {T::Send, T::Cancel}},
        {S::Sent, {T::Promise, T::Ask, T::Receive, T::Cancel}},
        {S::Promised, {T::Promise, T::Ask, T::Receive, T::Cancel}},
        {S::Received, {}},
        {S::Cancelled, {}}};
    for (const auto &[state, steps] : allowed)
        for (const T step : {T::Send, T::Promise, T::Ask, T::Receive, T::Cancel}) {
            QCOMPARE(mayFollow(state, step), steps.contains(step));
            WoodOrder order;
            order.state = state;
            const auto next = afterStep(order, step, kToday, kToday.addDays(3));
            QCOMPARE(next.ok(), steps.contains(step));
            QVERIFY(next.ok() || !next.message().isEmpty());
        }
}

void TstOrderLife::stepsStampTheirDays()
{
    WoodOrder order;
    order = afterStep(order, OrderStep::Send, QDate(2025, 12, 1)).value();
    QCOMPARE(order.state, OrderState::Sent);
    QCOMPARE(order.ordered, QDate(2025, 12, 1));
    order = afterStep(order, OrderStep::Promise, QDate(2025, 12, 2), QDate(2025, 12, 12)).value();
    QCOMPARE(order.state, OrderState::Promised);
    QCOMPARE(order.promised, QDate(2025, 12, 12));
    order = afterStep(order, OrderStep::Ask, QDate(2025, 12, 14)).value();
    QCOMPARE(order.state, OrderState::Promised);
    QCOMPARE(order.chased, QDate(2025, 12, 14));
    order = afterStep(order, OrderStep::Receive, QDate(2025, 12, 15)).value();
    QCOMPARE(order.state, OrderState::Received);
    QCOMPARE(order.received, QDate(2025, 12, 15));
    QCOMPARE(order.ordered, QDate(2025, 12, 1));
}

void TstOrderLife::slipsAreRefusedInWords()
{
    WoodOrder order;
    order.state = OrderState::Sent;
    order.ordered = QDate(2025, 12, 10);
    const auto before = afterStep(order, OrderStep::Promise, kToday, QDate(2025, 12, 9));
    QVERIFY(!before);
    QCOMPARE(before.problems().first().field, QStringLiteral("promised"));
    const auto none = afterStep(order, OrderStep::Promise, kToday);
    QVERIFY(!none && none.message().contains(QStringLiteral("Enter the day")));
    const auto early = afterStep(order, OrderStep::Receive, QDate(2025, 12, 9));
    QVERIFY(!early && early.problems().first().field == QStringLiteral("received"));
    QVERIFY(afterStep(order, OrderStep::Promise, kToday, QDate(2025, 12, 10)).ok());
}

void TstOrderLife::aPromiseIsHeldToItsDay()
{
    Books books = yardWithSupplier();
    const WoodOrder &order =
        addOrder(books, 1, OrderState::Promised, QDate(2025, 12, 1), QDate(2025, 12, 16));
    QVERIFY(!lateness(books, order, QDate(2025, 12, 16), {})); // the day itself is in time
    const auto late = lateness(books, order, kToday, {});
    QVERIFY(late.has_value());
    QCOMPARE(late->days, qint64{4});
    QVERIFY2(late->sentence.contains(QStringLiteral("4 days late: promised for Tue 16 Dec")),
             qPrintable(late->sentence));
    QCOMPARE(late->asked, QStringLiteral("not asked yet"));
}

void TstOrderLife::withoutAPromiseTheUsualTimeCounts()
{
    Books books = yardWithSupplier();
    WoodOrder &order = addOrder(books, 1, OrderState::Sent, QDate(2025, 12, 1));
    QCOMPARE(orderDue(books, order, {}).day, QDate(2025, 12, 11));
    QCOMPARE(lateness(books, order, kToday, {})->days, qint64{9});
    // Wished for later: nobody is late before that. Wished for sooner: the usual time stands.
    order.promised = QDate(2025, 12, 24);
    QVERIFY(!lateness(books, order, kToday, {}));
    order.promised = QDate(2025, 12, 3);
    QCOMPARE(orderDue(books, order, {}).day, QDate(2025, 12, 11));
    order.state = OrderState::Draft;
    QVERIFY(!orderDue(books, order, {}).day.isValid());
    order.state = OrderState::Received;
    QVERIFY(!lateness(books, order, kToday, {}));
}

void TstOrderLife::askedTwoDaysAgo()
{
    Books books = yardWithSupplier();
    WoodOrder &order =
        addOrder(books, 1, OrderState::Promised, QDate(2025, 12, 1), QDate(2025, 12, 16));
    order.chased = QDate(2025, 12, 18);
    QCOMPARE(lateness(books, order, kToday, {})->asked, QStringLiteral("last asked 2 days ago"));
    QVERIFY(!lateness(books, order, kToday, {})->askedToday);
    order.chased = kToday;
    QVERIFY(lateness(books, order, kToday, {})->askedToday);
}

void TstOrderLife::theLatestComesFirst()
{
    Books books = yardWithSupplier();
    addOrder(books, 1, OrderState::Promised, QDate(2025, 12, 1), QDate(2025, 12, 18));
    addOrder(books, 2, OrderState::Sent, QDate(2025, 12, 2));
    addOrder(books, 3, OrderState::Promised, QDate(2025, 12, 1), QDate(2025, 12, 30));
    addOrder(books, 4, OrderState::Promised, QDate(2025, 11, 1), QDate(2025, 11, 9));
    addLot(books, 1, day(3)).order = 4; // it has come, whatever its state says
    const auto late = lateOrders(books, kToday, {});
    QCOMPARE(late.size(), qsizetype{2});
    QCOMPARE(late.at(0).order, RecordId{2});
    QCOMPARE(late.at(0).days, qint64{8});
    QCOMPARE(late.at(1).order, RecordId{1});
    QCOMPARE(late.at(1).days, qint64{2});
}

// NIST Handbook 130 section 2.4: a cord is 128 ft³. A face cord is 4 × 8 ft × the stick.
void TstOrderLife::amountsFollowTheUnit()
{
    Books books = yardWithSupplier();
    WoodOrder order = addOrder(books, 1, OrderState::Draft, {});
    QCOMPARE(volumeOrdered(books, order), std::optional(volumeFromCubicFeet(128)));
    QCOMPARE(plainSpaces(orderAmountWords(books, order, {})),
             QStringLiteral("2 half cords (128 ft³)"));
    order.unit = SellUnit::FaceCord;
    order.count = Plain::ofBase(3000000);
    QVERIFY(std::abs(cubicFeet(*volumeOrdered(books, order)) - 3 * 4 * 8 * 16.0 / 12) < 0.01);
    QCOMPARE(plainSpaces(orderAmountWords(books, order, {})),
             QStringLiteral("3 face cords (128 ft³)"));
    // A bundle of no known volume has none; an order of before the units has cords.
    order.unit = SellUnit::Bundle;
    QVERIFY(!volumeOrdered(books, order));
    order.unit = SellUnit::Cord;
    order.count.reset();
    order.volume = volumeFromCubicFeet(96);
    QCOMPARE(plainSpaces(orderAmountWords(books, order, {})),
             QStringLiteral("0.75 cords (96 ft³)"));
    // Pounds: the wood in them at the moisture wished, back through the density to a stack.
    order.unit = SellUnit::Pound;
    order.count = Plain::ofBase(3000LL * 1000000);
    order.promisedMoisture = dryBasis(25);
    const Mass dry = dryMassOfSolid(solidFromStacked(*volumeOrdered(books, order)),
                                    books.species.value(1), dryBasis(25));
    QVERIFY(std::abs(pounds(dry) - 3000 / 1.25) < 0.5);
}

void TstOrderLife::theMessageHoldsWhatASupplierNeeds()
{
    Books books = yardWithSupplier();
    WoodOrder &order = addOrder(books, 1, OrderState::Draft, {}, QDate(2026, 1, 8));
    order.promisedMoisture = dryBasis(20);
    order.price = Money::ofBase(47500);
    const QString text = orderMessage(books, order, {});
    for (const char *part : {"Hello Nowhere Wood (invented),", "2 half cords (128 ft³) of post oak",
                             "20 % dry basis (17 % wet basis) or drier", "Thursday 8 January 2026",
                             "475", "Test yard (invented)", "Thank you"})
        QVERIFY2(text.contains(QString::fromUtf8(part)), qPrintable(text));
    QVERIFY(text.size() < 500);
    // What is not known is not asked for.
    order.promisedMoisture.reset();
    order.promised = QDate();
    order.price.reset();
    const QString bare = orderMessage(books, order, {});
    for (const char *part : {"Moisture", "Day wished", "Price"})
        QVERIFY2(!bare.contains(QString::fromUtf8(part)), qPrintable(bare));
}

void TstOrderLife::priceByTheUnitWithDelivery()
{
    Books books = yardWithSupplier();
    WoodOrder order = addOrder(books, 1, OrderState::Draft, {});
    QCOMPARE(usualPrice(books, order), std::optional(Money::ofBase(2 * 22000 + 3500)));
    order.unit = SellUnit::Cord; // not what they sell by
    QVERIFY(!usualPrice(books, order));
}

// By hand: 0, 0 and 6 days late of three that came: two of three on time, the middle 0, the worst
// 6. One cord paid for, 0.9 came: 10 % short; 24 read of 20 promised: 4 points wetter.
void TstOrderLife::aScorecardByHand()
{
    Books books = yardWithSupplier();
    addOrder(books, 1, OrderState::Received, QDate(2025, 9, 1), QDate(2025, 9, 12),
             QDate(2025, 9, 12));
    addOrder(books, 2, OrderState::Received, QDate(2025, 10, 1), {}, QDate(2025, 10, 9));
    addOrder(books, 3, OrderState::Received, QDate(2025, 11, 1), QDate(2025, 11, 10),
             QDate(2025, 11, 16));
    addOrder(books, 4, OrderState::Sent, QDate(2025, 12, 1));
    addOrder(books, 5, OrderState::Draft, {});
    Lot &lot = addLot(books, 1, day(1));
    lot.supplier = 1;
    lot.stacks = {{feet(7.2), feet(4), feet(4)}};
    lot.paidCount = Plain::ofBase(1000000);
    lot.price = Money::ofBase(30000);
    lot.promisedMoisture = dryBasis(20);
    addReading(books, 1, lot.received, {24, 24});
    const Scorecard card = scorecardOf(books, 1, {});
    QCOMPARE(card.orders, 4);
    QCOMPARE(card.judged, 3);
    QCOMPARE(card.onTime, 2);
    QVERIFY(std::abs(*card.onTimeShare() - 2.0 / 3) < 1e-12);
    QCOMPARE(*card.medianLate, 0.0);
    QCOMPARE(*card.worstLate, 6.0);
    QVERIFY(std::abs(card.record.shortBy.mean - 0.1) < 1e-6);
    QVERIFY(std::abs(card.record.wetPoints.mean - 4) < 1e-6);
    // A cord of post oak holds some 85 × 37.4 lb of dry wood (FPL-GTR-190: 0.60 × 62.4 lb/ft³);
    // nine tenths of it, a little under a seasoned pound for each dry pound × 1.2: $300 over about
    // 3,300 of them is near nine cents.
    QCOMPARE(card.priced, 1);
    QVERIFY2(*card.centsPerSeasonedPound > 8 && *card.centsPerSeasonedPound < 10,
             qPrintable(QString::number(*card.centsPerSeasonedPound)));
    QVERIFY(scorecardWords(card, {}).startsWith(QStringLiteral("2 of 3 on time")));
}

void TstOrderLife::noHistoryIsSaid()
{
    Books books = yardWithSupplier();
    addOrder(books, 1, OrderState::Sent, QDate(2025, 12, 1));
    const Scorecard card = scorecardOf(books, 1, {});
    QVERIFY(card.empty());
    QVERIFY(!card.medianLate && !card.onTimeShare() && !card.centsPerSeasonedPound);
    QVERIFY(scorecardWords(card, {}).startsWith(QStringLiteral("No history yet")));
    QCOMPARE(scorecards(books, {}).size(), qsizetype{1});
}

RICKYARD_TEST(TstOrderLife)
#include "tst_order_life.moc"
