#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/plan/reorder.h"
#include "models/domain/plan/supply.h"
#include "models/domain/wood/density.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QRandomGenerator>
#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstReorder : public QObject
{
    Q_OBJECT
private slots:
    void handWorkedExample();
    void enoughWood();
    void oneCookIsNamedSo();
    void lateIsSaid();
    void nothingToGoBy();
    void unreadWoodIsReadFirst();
    void ordersOnTheWayCount();
    void uncertainOrdersDoNotCount_data();
    void uncertainOrdersDoNotCount();
    void gapBeforeALoadIsNotForgiven();
    void leadTimeFromTheBestSource();
    void supplierThatFitsThenCheapest();
    void sellersUnits();
    void courseRunsDown();
    void bandsAddAsVariances();
    void cookAddedNeverRaisesStock();
    void amountGrowsWithNeed();
    void shiftByWeeksChangesNothing();
    void onlyCooksAheadAreCounted();
    void plannedUsesAreOrderedAndSound();
    void wordingFollowsTheYard();
};

namespace {

PlannedUse use(RecordId id, Instant light, double middle, double spread = 0, RecordId event = 0)
{
    PlannedUse u;
    u.plannedCook = id;
    u.event = event;
    u.light = light;
    u.middle = heatFromSeasonedPounds(middle);
    u.lower = heatFromSeasonedPounds(middle - spread);
    u.upper = heatFromSeasonedPounds(middle + spread);
    return u;
}

// Dry post oak of that many seasoned pounds (at 20 % a pound as is is a seasoned pound).
void stockUp(Books &books, double seasoned, RecordId id = 1)
{
    addLot(books, id, day(-30));
    addMovement(books, id, day(-30), dryFromAsIs(massFromPounds(seasoned), dryBasis(20)));
    addReading(books, id, day(-1), {20});
}

Supplier &addSupplier(Books &books, RecordId id, SellUnit unit, int leadDays, qint64 cents)
{
    Supplier supplier;
    supplier.id = id;
    supplier.name = QStringLiteral("Invented supplier ") + QString::number(id);
    supplier.unit = unit;
    supplier.leadTime = Duration::ofBase(leadDays * 86400LL);
    supplier.promised = dryBasis(20);
    if (cents > 0)
        supplier.price = Money::ofBase(cents);
    return *books.suppliers.insert(id, supplier);
}

Event &addEvent(Books &books, RecordId id, const QString &name, Instant start)
{
    Event event;
    event.id = id;
    event.name = name;
    event.start = start;
    event.end = start + Duration::ofBase(4 * 3600);
    return *books.events.insert(id, event);
}

WoodOrder &addOrder(Books &books, double cubicFeet, QDate promised)
{
    WoodOrder order;
    order.id = 1;
    order.supplier = 1;
    order.species = 1;
    order.state = OrderState::Promised;
    order.volume = volumeFromCubicFeet(cubicFeet);
    order.promised = promised;
    order.promisedMoisture = dryBasis(20);
    return *books.orders.insert(1, order);
}

QDate date(int d)
{
    return QDate(2025, 12, 1).addDays(d);
}

bool nearly(Heat heat, double seasoned, double tolerance = 0.01)
{
    return std::abs(seasonedPounds(heat) - seasoned) < tolerance;
}

} // namespace

// Today is Mon 1 Dec. Dry wood: 1,000 seasoned pounds. Three cooks of 400 ± 60 lit at noon of the
// 5th, 11th and 17th; the second and third are for events.
//   need, middle 400, 800, 1,200; half-widths 60, 60√2 = 84.85, 60√3 = 103.92
//   upper 460, 884.85, 1,303.92: the third is short, by 303.92; middle: 1,000 − 1,200 = −200 left.
// The wood must be there on the 16th; 10 days of lead time: order by Sat 6 Dec.
// A half cord of post oak at 20 %: 42.5 ft³ solid, half of 3,365.6 lb dry = 1,682.8; × 1.2 =
// 2,019.4 seasoned pounds, so one half cord. By the cubic foot: 2,019.4 / 64 = 31.55; 303.92
// / 31.55 = 9.63, so ten.
void TstReorder::handWorkedExample()
{
    Books books = emptyYard();
    stockUp(books, 1000);
    addEvent(books, 1, QStringLiteral("River Lane Lunch"), day(12, 16));
    addEvent(books, 2, QStringLiteral("Mill Field Supper"), day(18, 16));
    addSupplier(books, 1, SellUnit::HalfCord, 10, 30000);
    const QVector<PlannedUse> uses = {use(1, day(4), 400, 60), use(2, day(10), 400, 60, 1),
                                      use(3, day(16), 400, 60, 2)};
    WoodAnswer answer = woodAnswerFrom(books, uses, day(0), {});
    QVERIFY(nearly(answer.stock.readyHeat, 1000));
    QVERIFY(nearly(answer.uses.at(2).stockAfter, -200));
    QVERIFY(nearly(answer.uses.at(1).stockAfter, 200));
    QVERIFY(!answer.uses.at(1).shortOf && answer.uses.at(2).shortOf);
    QVERIFY(nearly(answer.missing, 303.92));
    QCOMPARE(answer.firstShortCook, 3);
    QCOMPARE(answer.firstShortEvent, 2);
    QCOMPARE(answer.orderBy, date(5));
    QCOMPARE(answer.lateDays, 0);
    QCOMPARE(answer.supplier, 1);
    QCOMPARE(answer.units, 1);
    QCOMPARE(answer.amountInUnit, QStringLiteral("1 half cord (64\u202Fft³)"));
    QVERIFY(std::abs(cubicFeet(answer.amount) - 64) < 1e-3);
    QCOMPARE(answer.headline.standing, Standing::Act); // within a week
    QCOMPARE(answer.headline.figure, QStringLiteral("6 Dec"));
    QCOMPARE(answer.headline.plainSentence(),
             QStringLiteral("Order 1 half cord of post oak by Sat 6 Dec: dry wood lasts until Mill "
                            "Field Supper on 19 Dec, then runs 304\u202Fseasoned lb short."));
    books.suppliers[1].unit = SellUnit::CubicFoot;
    answer = woodAnswerFrom(books, uses, day(0), {});
    QCOMPARE(answer.units, 10);
    QCOMPARE(answer.amountInUnit, QStringLiteral("10 cubic feet"));
}

void TstReorder::enoughWood()
{
    Books books = emptyYard();
    stockUp(books, 1304);
    const QVector<PlannedUse> uses = {use(1, day(4), 400, 60), use(2, day(10), 400, 60),
                                      use(3, day(16), 400, 60)};
    const WoodAnswer answer = woodAnswerFrom(books, uses, day(0), {});
    QCOMPARE(answer.headline.standing, Standing::Good);
    QCOMPARE(answer.missing, Heat());
    QVERIFY(!answer.orderBy.isValid());
    QCOMPARE(answer.headline.plainSentence(),
             QStringLiteral("No order needed: dry wood covers all 3 booked cooks until 17 Dec."));
    // A single pound under the upper bound of 1,303.92 turns it.
    Books less = emptyYard();
    stockUp(less, 1303);
    QVERIFY(woodAnswerFrom(less, uses, day(0), {}).orderBy.isValid());
}

void TstReorder::oneCookIsNamedSo()
{
    Books books = emptyYard();
    stockUp(books, 500);
    QCOMPARE(woodAnswerFrom(books, {use(1, day(4), 400, 60)}, day(0), {}).headline.plainSentence(),
             QStringLiteral("No order needed: dry wood covers the one booked cook on 5 Dec."));
}

void TstReorder::lateIsSaid()
{
    Books books = emptyYard();
    stockUp(books, 100);
    addSupplier(books, 1, SellUnit::Cord, 10, 0);
    const WoodAnswer answer = woodAnswerFrom(books, {use(1, day(4), 400, 60)}, day(0), {});
    QCOMPARE(answer.orderBy, date(0)); // never before today
    QCOMPARE(answer.lateDays, 7);      // 4 Dec − 10 days = 24 Nov
    QCOMPARE(answer.headline.standing, Standing::Act);
    const QString sentence = answer.headline.plainSentence();
    QVERIFY2(sentence.contains(QStringLiteral("today, 7 days late")), qPrintable(sentence));
    QVERIFY2(sentence.contains(QStringLiteral("falls 360")), qPrintable(sentence));
}

void TstReorder::nothingToGoBy()
{
    Books books = emptyYard();
    WoodAnswer answer = woodAnswerFrom(books, {use(1, day(4), 400)}, day(0), {});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("enter the deliveries")));
    stockUp(books, 500);
    answer = woodAnswerFrom(books, {}, day(0), {});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("enter the next event")));
    QCOMPARE(answer.headline.figure, QStringLiteral("500"));
    QCOMPARE(answer.course.size(), kCourseDays + 1);
}

void TstReorder::unreadWoodIsReadFirst()
{
    Books books = emptyYard();
    stockUp(books, 500);
    books.readings.clear();
    const WoodAnswer answer = woodAnswerFrom(books, {use(1, day(4), 400)}, day(0), {});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("Read the moisture of 1 lot")));
    QVERIFY(nearly(answer.missing, 400)); // and what hangs on it is still reckoned
}

void TstReorder::ordersOnTheWayCount()
{
    Books books = emptyYard();
    stockUp(books, 500);
    addOrder(books, 64, date(9)); // 2,019 seasoned pounds
    const QVector<PlannedUse> uses = {use(1, day(4), 400), use(2, day(10), 400)};
    const WoodAnswer answer = woodAnswerFrom(books, uses, day(0), {});
    QCOMPARE(answer.headline.standing, Standing::Good);
    QVERIFY(nearly(answer.uses.at(1).stockAfter, 500 - 800 + 2019.36, 0.1));
    // It is in the course from the day it comes.
    QVERIFY(nearly(answer.course.at(8).middle, 100));
    QVERIFY(nearly(answer.course.at(9).middle, 100 + 2019.36, 0.1));
    // A fire lit on that day cannot count on it.
    books.orders[1].promised = date(10);
    QCOMPARE(woodAnswerFrom(books, uses, day(0), {}).firstShortCook, 2);
}

void TstReorder::uncertainOrdersDoNotCount_data()
{
    QTest::addColumn<int>("flaw");
    QTest::newRow("draft") << 0;
    QTest::newRow("promised wet") << 1;
    QTest::newRow("nothing promised") << 2;
    QTest::newRow("no day") << 3;
    QTest::newRow("overdue") << 4;
    QTest::newRow("already a lot") << 5;
    QTest::newRow("not for food") << 6;
}

void TstReorder::uncertainOrdersDoNotCount()
{
    QFETCH(int, flaw);
    Books books = emptyYard();
    stockUp(books, 500);
    WoodOrder &order = addOrder(books, 64, date(5));
    const QVector<PlannedUse> uses = {use(1, day(4), 400), use(2, day(10), 400)};
    QVERIFY(!woodAnswerFrom(books, uses, day(0), {}).orderBy.isValid());
    if (flaw == 0)
        order.state = OrderState::Draft;
    if (flaw == 1)
        order.promisedMoisture = dryBasis(25);
    if (flaw == 2)
        order.promisedMoisture.reset();
    if (flaw == 3)
        order.promised = QDate();
    if (flaw == 4)
        order.promised = date(-1);
    if (flaw == 5)
        addLot(books, 2, day(0)).order = 1;
    if (flaw == 6) {
        Species cedar;
        cedar.id = 2;
        cedar.basicGravity = Plain::ofBase(440000);
        cedar.neverBurn = true;
        books.species.insert(2, cedar);
        order.species = 2;
    }
    QCOMPARE(woodAnswerFrom(books, uses, day(0), {}).firstShortCook, 2);
}

// 500 on hand; 400 on the 5th, 400 on the 11th, a load of 2,019 on the 12th, 400 on the 17th. In
// the end there is plenty, but on the 11th 300 are missing: that is what must be ordered.
void TstReorder::gapBeforeALoadIsNotForgiven()
{
    Books books = emptyYard();
    stockUp(books, 500);
    addOrder(books, 64, date(11));
    const WoodAnswer answer = woodAnswerFrom(
        books, {use(1, day(4), 400), use(2, day(10), 400), use(3, day(16), 400)}, day(0), {});
    QCOMPARE(answer.firstShortCook, 2);
    QVERIFY(nearly(answer.missing, 300));
    QVERIFY(!answer.uses.at(2).shortOf);
}

void TstReorder::leadTimeFromTheBestSource()
{
    Books books = emptyYard();
    addSupplier(books, 1, SellUnit::Cord, 9, 0);
    QCOMPARE(leadTimeOf(books, 1).days(), 9);
    QVERIFY(!leadTimeOf(books, 1).assumed);
    books.suppliers[1].leadTime.reset();
    QCOMPARE(leadTimeOf(books, 1).days(), 14); // the yard's
    QVERIFY(leadTimeOf(books, 1).assumed);
    const int took[] = {5, 30, 8};
    for (RecordId id = 1; id <= 3; ++id) {
        WoodOrder order;
        order.id = id;
        order.supplier = 1;
        order.state = OrderState::Received;
        order.ordered = date(-60);
        order.received = date(-60 + took[id - 1]);
        books.orders.insert(id, order);
    }
    QCOMPARE(leadTimeOf(books, 1).days(), 8);
    QVERIFY(leadTimeOf(books, 1).basis.contains(QStringLiteral("3 orders")));
}

void TstReorder::supplierThatFitsThenCheapest()
{
    Books books = emptyYard();
    stockUp(books, 100);
    addSupplier(books, 1, SellUnit::Cord, 30, 20000); // cheap and slow
    addSupplier(books, 2, SellUnit::Cord, 5, 60000);
    addSupplier(books, 3, SellUnit::HalfCord, 5, 25000); // 500 a cord: cheaper than 2
    const QVector<PlannedUse> soon = {use(1, day(10), 400)};
    QCOMPARE(woodAnswerFrom(books, soon, day(0), {}).supplier, 3);
    const QVector<PlannedUse> later = {use(1, day(40), 400)};
    QCOMPARE(woodAnswerFrom(books, later, day(0), {}).supplier, 1);
    // Wet wood is no help, however cheap; none fits: the fastest.
    books.suppliers[1].promised = dryBasis(40);
    QCOMPARE(woodAnswerFrom(books, later, day(0), {}).supplier, 3);
    books.suppliers[2].leadTime = Duration::ofBase(4 * 86400);
    QCOMPARE(woodAnswerFrom(books, {use(1, day(2), 400)}, day(0), {}).supplier, 2);
    // Only wet wood is to be had: it says so.
    for (Supplier &supplier : books.suppliers)
        supplier.promised = dryBasis(40);
    const WoodAnswer wet = woodAnswerFrom(books, later, day(0), {});
    QVERIFY(wet.headline.plainSentence().contains(QStringLiteral("No supplier promises it dry")));
}

void TstReorder::sellersUnits()
{
    Books books = emptyYard();
    stockUp(books, 1);
    addSupplier(books, 1, SellUnit::FaceCord, 5, 0).stickLength =
        Length::rounded(16 * kMicrometresPerInch);
    // 42.667 ft³ hold a third of 4,038.7 seasoned pounds: 1,346.2. 2,999 needed: three.
    const QVector<PlannedUse> uses = {use(1, day(10), 3000)};
    const auto amount = [&](SellUnit unit) {
        books.suppliers[1].unit = unit;
        return woodAnswerFrom(books, uses, day(0), {}).amountInUnit;
    };
    QCOMPARE(amount(SellUnit::FaceCord), QStringLiteral("3 face cords (42.7\u202Fft³ each)"));
    QCOMPARE(amount(SellUnit::Cord), QStringLiteral("1 cord (128\u202Fft³)"));
    QCOMPARE(amount(SellUnit::QuarterCord), QStringLiteral("3 quarter cords (32\u202Fft³ each)"));
    // At 20 % a pound as is is a seasoned pound.
    QCOMPARE(amount(SellUnit::Pound), QStringLiteral("2,999 pounds"));
    const WoodAnswer answer = woodAnswerFrom(books, uses, day(0), {});
    // A pound is some 596 mL solid and 897 mL of stack, each kept in whole millilitres: half of one
    // in both leaves up to 0.14 %.
    QVERIFY(std::abs(cords(answer.amount) / (2999 / 4038.72) - 1.0) < 1.4e-3);
    books.suppliers.clear();
    QCOMPARE(woodAnswerFrom(books, uses, day(0), {}).amountInUnit,
             QStringLiteral("3 quarter cords (32\u202Fft³ each)"));
}

void TstReorder::courseRunsDown()
{
    Books books = emptyYard();
    stockUp(books, 1000);
    const WoodAnswer answer =
        woodAnswerFrom(books, {use(1, day(4), 400, 60), use(2, day(60), 400, 60)}, day(0), {});
    QCOMPARE(answer.course.first().day, date(0));
    QCOMPARE(answer.course.last().day, date(60)); // past six weeks, to the last cook
    for (int d = 0; d < answer.course.size(); ++d) {
        const StockPoint &point = answer.course.at(d);
        QCOMPARE(point.day, date(d));
        QVERIFY(nearly(point.middle, d < 4 ? 1000 : d < 60 ? 600 : 200));
        QVERIFY(point.lower <= point.middle && point.middle <= point.upper);
    }
    QVERIFY(nearly(answer.course.at(4).lower, 540));
    QVERIFY(nearly(answer.course.at(4).upper, 660));
}

void TstReorder::bandsAddAsVariances()
{
    Books books = emptyYard();
    stockUp(books, 1000);
    // Half-widths 30 and 40 make 50.
    const WoodAnswer answer =
        woodAnswerFrom(books, {use(1, day(4), 100, 30), use(2, day(5), 100, 40)}, day(0), {});
    QVERIFY(nearly(answer.course.at(5).lower, 750));
    QVERIFY(nearly(answer.course.at(5).upper, 850));
}

namespace {

QVector<PlannedUse> randomUses(quint32 seed)
{
    QRandomGenerator random(seed);
    QVector<PlannedUse> uses;
    int d = 0;
    for (RecordId id = 1; id <= 8; ++id) {
        d += random.bounded(6);
        const double middle = 100 + random.bounded(300);
        uses << use(id, day(d, 6 + random.bounded(12)), middle, middle * random.generateDouble());
    }
    return uses;
}

} // namespace

void TstReorder::cookAddedNeverRaisesStock()
{
    for (quint32 seed = 1; seed <= 30; ++seed) {
        Books books = emptyYard();
        stockUp(books, 900);
        QVector<PlannedUse> uses = randomUses(seed);
        const PlannedUse extra = uses.takeAt(seed % 8);
        const WoodAnswer without = woodAnswerFrom(books, uses, day(0), {});
        uses.insert(seed % 8, extra);
        const WoodAnswer with = woodAnswerFrom(books, uses, day(0), {});
        for (qsizetype i = 0; i < std::min(with.course.size(), without.course.size()); ++i) {
            QVERIFY(with.course.at(i).middle <= without.course.at(i).middle);
            QVERIFY(with.course.at(i).lower <= without.course.at(i).lower);
            // One joule of rounding in each root.
            QVERIFY(with.course.at(i).upper <= without.course.at(i).upper + Heat::ofBase(2));
        }
        QVERIFY(with.missing >= without.missing);
        QVERIFY(with.units >= without.units);
    }
}

void TstReorder::amountGrowsWithNeed()
{
    Books books = emptyYard();
    stockUp(books, 300);
    addSupplier(books, 1, SellUnit::CubicFoot, 5, 0);
    qint64 before = -1;
    Heat missing = Heat::ofBase(-1);
    for (int need = 0; need <= 3000; need += 50) {
        const WoodAnswer answer = woodAnswerFrom(books, {use(1, day(20), need)}, day(0), {});
        QVERIFY(answer.units >= before);
        QVERIFY(answer.missing >= missing);
        QCOMPARE(answer.units == 0, need <= 300);
        // What is ordered covers the need, and one unit less would not.
        const double units = static_cast<double>(answer.units);
        QVERIFY(units * 31.5525 + 0.1 >= need - 300);
        QVERIFY(answer.units == 0 || (units - 1) * 31.5525 - 0.1 < need - 300);
        before = answer.units;
        missing = answer.missing;
    }
}

void TstReorder::shiftByWeeksChangesNothing()
{
    constexpr int kDays = 7 * 9;
    const Duration shift = Duration::ofBase(kDays * 86400LL);
    for (quint32 seed = 1; seed <= 10; ++seed) {
        Books books = emptyYard();
        stockUp(books, 900);
        addSupplier(books, 1, SellUnit::CubicFoot, 6, 0);
        addOrder(books, 16, date(8));
        QVector<PlannedUse> uses = randomUses(seed);
        const WoodAnswer a = woodAnswerFrom(books, uses, day(0), {});
        for (PlannedUse &u : uses)
            u.light = u.light + shift;
        books.lots[1].received = books.lots[1].received + shift;
        books.movements[1].time = books.movements[1].time + shift;
        books.readings[1].time = books.readings[1].time + shift;
        books.orders[1].promised = books.orders[1].promised.addDays(kDays);
        const WoodAnswer b = woodAnswerFrom(books, uses, day(0) + shift, {});
        QCOMPARE(b.missing, a.missing);
        QCOMPARE(b.units, a.units);
        QCOMPARE(b.firstShortCook, a.firstShortCook);
        QCOMPARE(b.lateDays, a.lateDays);
        QCOMPARE(b.orderBy, a.orderBy.isValid() ? a.orderBy.addDays(kDays) : QDate());
        QCOMPARE(b.course.size(), a.course.size());
        for (qsizetype i = 0; i < a.course.size(); ++i)
            QCOMPARE(b.course.at(i).middle, a.course.at(i).middle);
    }
}

namespace {

Books yardWithPlan()
{
    Books books = emptyYard();
    Pit pit;
    pit.id = 1;
    pit.name = QStringLiteral("Long Pit");
    pit.diameter = Length::ofBase(610000);
    pit.length = Length::ofBase(1500000);
    books.pits.insert(1, pit);
    addEvent(books, 1, QStringLiteral("Mill Field Supper"), day(12));
    for (RecordId id = 1; id <= 3; ++id) {
        PlannedCook planned;
        planned.id = id;
        planned.event = 1;
        planned.pit = 1;
        planned.light = day(12 - static_cast<int>(id), 4); // entered latest first
        planned.length = durationFromHours(12);
        books.plannedCooks.insert(id, planned);
    }
    return books;
}

QVector<RecordId> ahead(const Books &books, Instant now)
{
    QVector<RecordId> ids;
    const QVector<PlannedUse> uses = plannedUses(books, {}, now);
    for (const PlannedUse &u : uses)
        ids << u.plannedCook;
    return ids;
}

} // namespace

void TstReorder::onlyCooksAheadAreCounted()
{
    Books books = yardWithPlan();
    QCOMPARE(ahead(books, day(0)), (QVector<RecordId>{3, 2, 1}));
    QCOMPARE(ahead(books, day(9, 20)), (QVector<RecordId>{2, 1}));   // 3 was to be out by 16:00
    QCOMPARE(ahead(books, day(9, 8)), (QVector<RecordId>{3, 2, 1})); // late to be lit, still needed
    books.plannedCooks[2].cancelled = true;
    QCOMPARE(ahead(books, day(0)), (QVector<RecordId>{3, 1}));
    Cook cook;
    cook.id = 1;
    cook.pit = 1;
    cook.planned = 3;
    books.cooks.insert(1, cook);
    QCOMPARE(ahead(books, day(0)), QVector<RecordId>{1});
    books.events[1].state = EventState::Cancelled;
    QVERIFY(ahead(books, day(0)).isEmpty());
    books.events[1].state = EventState::Proposed;
    QCOMPARE(ahead(books, day(0)), QVector<RecordId>{1});
    books.plannedCooks[1].event.reset();
    QCOMPARE(ahead(books, day(0)), QVector<RecordId>{1});
}

void TstReorder::plannedUsesAreOrderedAndSound()
{
    const QVector<PlannedUse> uses = plannedUses(yardWithPlan(), {}, day(0));
    QCOMPARE(uses.size(), 3);
    for (const PlannedUse &u : uses) {
        QVERIFY(u.middle.base() > 0);
        QVERIFY(u.lower.base() >= 0 && u.lower <= u.middle && u.middle <= u.upper);
        QVERIFY(!u.useBasis.isEmpty());
        QVERIFY(!u.weatherBasis.isEmpty()); // there is none on record: it says what was assumed
        QVERIFY(u.assumed);
    }
    QVERIFY(uses.at(0).light < uses.at(1).light && uses.at(1).light < uses.at(2).light);
}

void TstReorder::wordingFollowsTheYard()
{
    Books books = emptyYard();
    stockUp(books, 100);
    books.yards[1].metric = true;
    books.yards[1].timeZone = QStringLiteral("America/Chicago");
    const Wording wording = wordingOf(books);
    QVERIFY(wording.metric);
    // 3:00 UTC on the 12th is still the 11th in Chicago: the wood must be there on the 10th.
    addSupplier(books, 1, SellUnit::HalfCord, 2, 0);
    const WoodAnswer answer = woodAnswerFrom(books, {use(1, day(11, 3), 400)}, day(0), wording);
    QCOMPARE(answer.orderBy, date(7)); // lit on the 11th: 10 Dec less two days
    QCOMPARE(answer.amountInUnit, QStringLiteral("1 half cord (1.81\u202Fm³)"));
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("MJ short")));
}

RICKYARD_TEST(TstReorder)
#include "tst_reorder.moc"
