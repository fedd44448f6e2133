// How the books become the question of what to order: every input by itself.
#include "models/domain/fire/wood_measure.h"
#include "models/domain/plan/order_question.h"
#include "tests/domain/wood_plan_builder.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstOrderQuestion : public QObject
{
    Q_OBJECT
private slots:
    void needsMeetTheirInterval();
    void weatherWidensANeed();
    void cooksShareTheirPitAndTheirWeather();
    void eventsComeByDayAndCooksAloneCount();
    void lotsAreAsSureAsTheirMeasure();
    void splitsNotWeighedMakeAnOldCountUnsure();
    void aHeldLotCountsForNothing();
    void aReservedLotServesItsEventFirst();
    void aLotReservedForNothingAheadIsFree();
    void aGreenLotBecomesReady();
    void aLateOpenOrderRaisesTheRisk();
    void openOrdersThatDoNotCount_data();
    void openOrdersThatDoNotCount();
    void lateDaysAreReadFromTheOrders();
    void aSupplierWithoutHistoryIsWideAndSaysSo();
    void wetLoadsOnRecordCount();
    void leadTimeFromTheBestSource();
    void offersAndUsualTerms();
    void whatCannotBeReckonedIsLeftOutAndNamed();
    void unplannedFiresComeFromTheLog();
    void theNextSeasonIsTheGreenWoods();
    void eventsTooFarOffStartNoOrder();
    void roomIsTheYards();
    void eventsInThePastAreNamed();
    void standInsAreSaid();
};

namespace {

struct Asked {
    Books books;
    QVector<PlannedUse> uses;
    FuelAnswer fuel;
    QMap<RecordId, SeasoningForecast> seasoning;
    double accepted = 0.05;

    [[nodiscard]] BookQuestion question() const
    {
        const Stock stock = stockAt(books, day(0));
        const Wording wording;
        return orderQuestion({books, uses, fuel, seasoning, stock, day(0), wording}, accepted);
    }
    [[nodiscard]] WoodAnswer answer() const
    {
        return woodAnswerFrom(books, uses, fuel, seasoning, day(0), {});
    }
    [[nodiscard]] double chance(int risk = 0) const { return answer().risks.at(risk).chance; }
};

Asked plain(double stock = 500)
{
    Asked asked;
    asked.books = emptyYard();
    if (stock > 0)
        stockUp(asked.books, stock);
    addSupplier(asked.books, 1, SellUnit::QuarterCord, 7, 12000);
    addEvent(asked.books, 1, QStringLiteral("River Lane Lunch"), day(12, 16));
    addEvent(asked.books, 2, QStringLiteral("Mill Field Supper"), day(20, 16));
    asked.uses = {need(1, day(11), 300, 1.2, 1), need(2, day(19), 300, 1.2, 2)};
    return asked;
}

bool has(const QVector<Reason> &reasons, const QString &label, const QString &part, bool assumption)
{
    return std::any_of(reasons.cbegin(), reasons.cend(), [&](const Reason &reason) {
        return reason.label == label && reason.value.contains(part) &&
               reason.assumption == assumption;
    });
}

// A forecast made up: dry with chance 0.2 now, 0.6 in 5 days, 0.95 in 30.
SeasoningForecast drying()
{
    SeasoningForecast forecast;
    forecast.today = 20423;
    forecast.curve = {
        {20423, 19, 22, 25, 0.2}, {20428, 17, 19, 22, 0.6}, {20453, 15, 17, 19, 0.95}};
    forecast.chanceNow = 0.2;
    forecast.readyEarly = 20423;
    forecast.readyLikely = 20427;
    forecast.readyLate = 20451;
    return forecast;
}

} // namespace

void TstOrderQuestion::needsMeetTheirInterval()
{
    const NeedSpread spread = needSpread(need(1, day(3), 240, 1.25));
    QVERIFY(std::abs(spread.heat.quantile(0.05) - 192) < 1e-3); // heats are whole joules
    QVERIFY(std::abs(spread.heat.quantile(0.95) - 300) < 1e-3);
    QVERIFY(std::abs(spread.heat.quantile(0.50) - 240) < 1e-3);
    QCOMPARE(spread.ofPit, 0.0);
    QVERIFY(needSpread(need(1, day(3), 240, 1)).heat.isFixed());
    QVERIFY(needSpread(need(1, day(3), 0)).heat.isFixed());
    // A lower end of zero is no end of a lognormal: the interval is taken as even in the logarithm.
    PlannedUse open = need(1, day(3), 240, 1.25);
    open.lower = Heat();
    QVERIFY(std::abs(needSpread(open).heat.quantile(0.95) - 300) < 1e-3);
}

// ln 1.25 / 1.644854 = 0.135661; with 0.05 of weather the root of the squares is 0.144583, and
// 240 exp(1.644854 · 0.144583) = 304.44. The weather has 0.05² / 0.144583² = 0.119593 of it.
void TstOrderQuestion::weatherWidensANeed()
{
    PlannedUse use = need(1, day(3), 240, 1.25);
    use.weatherSd = 0.05;
    use.normShare = 0.4;
    const NeedSpread spread = needSpread(use);
    QVERIFY(std::abs(spread.heat.quantile(0.95) - 304.44) < 0.01);
    QVERIFY(std::abs(spread.ofWeather - 0.119593) < 1e-5);
    QVERIFY(std::abs(spread.ofPit - 0.4 * (1 - 0.119593)) < 1e-5);
}

void TstOrderQuestion::cooksShareTheirPitAndTheirWeather()
{
    Asked asked = plain();
    for (PlannedUse &use : asked.uses) {
        use.pit = 3;
        use.weatherSd = 0.05;
        use.normShare = 0.3;
    }
    asked.uses << need(3, day(22), 100, 1.2);
    const auto needs = asked.question().question.plan.needs;
    QCOMPARE(needs.at(0).group, 3);
    QCOMPARE(needs.at(1).group, 3);
    QVERIFY(needs.at(0).shared > 0.2);
    QVERIFY(needs.at(0).spellShared > 0.1);
    QVERIFY(needs.at(0).spell != needs.at(1).spell); // eight days apart
    QCOMPARE(needs.at(1).spell, needs.at(2).spell);  // three days
    // What they share makes it likelier that the second runs short: the stock lasts for both on
    // average, and errors no longer even out.
    Asked shared = plain(640);
    for (PlannedUse &use : shared.uses)
        use.normShare = 0.8;
    shared.uses[0].pit = shared.uses[1].pit = 3;
    Asked alone = shared;
    for (PlannedUse &use : alone.uses)
        use.normShare = 0;
    QVERIFY2(shared.chance(1) > alone.chance(1) + 0.01,
             qPrintable(QString::number(shared.chance(1) - alone.chance(1))));
}

void TstOrderQuestion::eventsComeByDayAndCooksAloneCount()
{
    Asked asked = plain();
    asked.uses = {need(5, day(4), 100), need(1, day(11), 100, 1, 1), need(2, day(12), 100, 1, 1),
                  need(6, day(13), 100)};
    const BookQuestion q = asked.question();
    QCOMPARE(q.events.size(), 3);
    QCOMPARE(q.events.at(0).event, 0);
    QCOMPARE(q.events.at(0).plannedCook, 5);
    QCOMPARE(q.events.at(0).day, date(4));
    QCOMPARE(q.events.at(1).event, 1);
    QCOMPARE(q.events.at(1).name, QStringLiteral("River Lane Lunch"));
    QCOMPARE(q.events.at(2).plannedCook, 6);
    const auto &needs = q.question.plan.needs;
    QCOMPARE(needs.at(1).event, 1);
    QCOMPARE(needs.at(2).event, 1);
    QCOMPARE(needs.at(2).day, 12);
    QCOMPARE(needs.at(3).event, 2);
    // A fire that was to be lit yesterday and still is to come is one of today's.
    asked.uses = {need(1, day(-1), 100, 1, 1)};
    QCOMPARE(asked.question().question.plan.needs.front().day, 0);
}

// A stack: √(0.03² + 0.08²) = 8.544 % of it. Weighed 3 %. After thirty days a hundredth more of
// 30/30.4 months: on 1,000 lb √(85.44² + 9.868²) = 86.01.
void TstOrderQuestion::lotsAreAsSureAsTheirMeasure()
{
    Books books = emptyYard();
    Lot &lot = stockUp(books, 1200);
    const Mass left = dryFromAsIs(massFromPounds(1200), dryBasis(20)); // 1,000 lb dry
    const auto error = [&](Instant now) { return pounds(errorOfLot(books, lot, left, now)); };
    QVERIFY(std::abs(error(lot.received) - 85.44) < 0.01);
    QVERIFY(std::abs(error(lot.received + durationFromHours(30 * 24)) - 86.01) < 0.01);
    lot.measuredBy = Measure::Weighed;
    QVERIFY(std::abs(error(lot.received) - 30.0) < 0.01);
    lot.measuredBy = Measure::Claimed;
    QVERIFY(std::abs(error(lot.received) - 150.0) < 0.01);
    // A count starts anew, as a stack.
    addMovement(books, 1, day(-2), Mass(), MovementKind::Counted);
    QVERIFY(std::abs(error(day(-2)) - 85.44) < 0.01);
}

// 600 of 1,000 lb burned by splits that nobody weighed (40 %): √(85.44² + 12² + 240²) = 255.03.
void TstOrderQuestion::splitsNotWeighedMakeAnOldCountUnsure()
{
    Books books = emptyYard();
    const Lot lot = stockUp(books, 1200);
    addMovement(books, 1, lot.received + Duration::ofBase(60), massFromPounds(-600),
                MovementKind::Burned);
    const Instant then = lot.received + Duration::ofBase(120);
    QVERIFY(std::abs(pounds(errorOfLot(books, lot, massFromPounds(400), then)) - 255.03) < 0.05);
    Asked asked = plain(0);
    asked.books = books;
    QVERIFY(has(asked.question().reasons, QStringLiteral("Lot 1"), QStringLiteral("count the rick"),
                true));
    // A scale leaves only the tally's own error.
    Feed feed;
    feed.id = 1;
    feed.lot = 1;
    feed.weight = massFromPounds(700);
    books.feeds.insert(1, feed);
    books.movements.last().feed = 1;
    QVERIFY(pounds(errorOfLot(books, lot, massFromPounds(400), then)) < 87);
}

void TstOrderQuestion::aHeldLotCountsForNothing()
{
    Asked asked = plain(500);
    const double before = asked.chance(1);
    QVERIFY(before > 0.5); // 600 wanted
    stockUp(asked.books, 5000, 2).hold = true;
    QCOMPARE(asked.chance(1), before);
    QVERIFY(asked.question().question.plan.lots.back().held);
    asked.books.lots[2].hold = false;
    QVERIFY(asked.chance(1) < 0.001);
}

void TstOrderQuestion::aReservedLotServesItsEventFirst()
{
    Asked asked = plain(100);
    stockUp(asked.books, 500, 2).reservedFor = 2;
    // The first event has 100 for 300, the second its own 500 for 300.
    QVERIFY(asked.chance(0) > 0.999);
    QVERIFY(asked.chance(1) < 0.01);
    asked.books.lots[2].reservedFor.reset();
    // 600 for both: the first takes what it needs, the second is the one in doubt.
    QVERIFY(asked.chance(0) < 0.01);
    QVERIFY(asked.chance(1) > 0.2);
    asked.books.lots[2].reservedFor = 2;
    QVERIFY(has(asked.question().reasons, QStringLiteral("Lot 2"),
                QStringLiteral("kept for Mill Field Supper"), false));
}

void TstOrderQuestion::aLotReservedForNothingAheadIsFree()
{
    Asked asked = plain(100);
    addEvent(asked.books, 3, QStringLiteral("Old Fair"), day(-10)).state = EventState::Done;
    stockUp(asked.books, 1000, 2).reservedFor = 3;
    QVERIFY(asked.chance(1) < 0.01);
    QVERIFY(asked.answer().notes.join(QLatin1Char(' ')).contains(QStringLiteral("Set it free")));
    // Kept for an event ahead that has no cook yet: nobody else burns it.
    asked.books.events[3].start = day(30);
    asked.books.events[3].end = day(31);
    asked.books.events[3].state = EventState::Booked;
    QVERIFY(asked.chance(1) > 0.99);
}

// Dry with chance 0.2 now, 0.6 in 5 days, 0.95 in 30: on the evening before the 11th it lies at
// 0.6 + 0.35 · 6 / 25 = 0.684 (usable by the fires of day 11 is dry by day 11).
void TstOrderQuestion::aGreenLotBecomesReady()
{
    Asked asked = plain(0);
    stockUp(asked.books, 5000, 1, 26);
    asked.uses = {need(1, day(11), 300, 1, 1)};
    QCOMPARE(asked.chance(), 1.0); // no forecast: never
    asked.seasoning = {{1, drying()}};
    QVERIFY2(std::abs(asked.chance() - (1 - 0.684)) < 0.02,
             qPrintable(QString::number(asked.chance())));
    asked.uses = {need(1, day(29), 300, 1, 1)};
    QVERIFY(std::abs(asked.chance() - 0.064) < 0.015); // 0.6 + 0.35 · 24 / 25 = 0.936
    QVERIFY(has(asked.question().reasons, QStringLiteral("Lot 1"), QStringLiteral("too wet now"),
                true));
    // Read as dry it is there at once.
    asked.books.readings.last().pieces = {dryBasis(18)};
    QVERIFY(asked.chance() < 0.001);
}

void TstOrderQuestion::aLateOpenOrderRaisesTheRisk()
{
    Asked asked = plain(350);
    addOrder(asked.books, 1, 64, date(12));
    addRecord(asked.books, 1, {0, 0, 0, 0, 0, 0, 0, 0, 0, 0});
    const double punctual = asked.chance(1);
    asked.books.orders[1].promised = date(16);
    const double later = asked.chance(1);
    QVERIFY(later > punctual);
    addRecord(asked.books, 1, {0, 20, 0, 20, 0, 20, 0, 20, 0, 20});
    const double unreliable = asked.chance(1);
    QVERIFY2(unreliable > later + 0.2, qPrintable(QString::number(unreliable)));
    asked.books.orders[1].promised = date(19); // a fire of that day cannot count on it
    const double tooLate = asked.chance(1);
    QVERIFY(tooLate > 0.99);
    asked.books.orders.remove(1);
    QCOMPARE(asked.chance(1), tooLate);
}

void TstOrderQuestion::openOrdersThatDoNotCount_data()
{
    QTest::addColumn<int>("flaw");
    QTest::newRow("draft") << 0;
    QTest::newRow("cancelled") << 1;
    QTest::newRow("already a lot") << 2;
    QTest::newRow("not for food") << 3;
    QTest::newRow("no amount") << 4;
}

void TstOrderQuestion::openOrdersThatDoNotCount()
{
    QFETCH(int, flaw);
    Asked asked = plain();
    WoodOrder &order = addOrder(asked.books, 1, 64, date(5));
    QCOMPARE(asked.question().question.plan.deliveries.size(), 1U);
    if (flaw == 0)
        order.state = OrderState::Draft;
    if (flaw == 1)
        order.state = OrderState::Cancelled;
    if (flaw == 2)
        addLot(asked.books, 2, day(0)).order = 1;
    if (flaw == 3) {
        Species cedar;
        cedar.id = 2;
        cedar.basicGravity = Plain::ofBase(440000);
        cedar.neverBurn = true;
        asked.books.species.insert(2, cedar);
        order.species = 2;
    }
    if (flaw == 4)
        order.volume = Volume();
    QCOMPARE(asked.question().question.plan.deliveries.size(), 0U);
    // By units and count, the amount is known.
    if (flaw == 4) {
        order.unit = SellUnit::HalfCord;
        order.count = Plain::ofBase(1000000);
        const auto counted = asked.question().question.plan.deliveries;
        QCOMPARE(counted.size(), 1U);
        QVERIFY(std::abs(counted.front().heat.quantile(0.5) - 2019.36) < 0.5);
    }
}

void TstOrderQuestion::lateDaysAreReadFromTheOrders()
{
    Books books = emptyYard();
    addSupplier(books, 1, SellUnit::Cord, 10, 0);
    addRecord(books, 1, {3, -1});
    // Without a promise the supplier's usual time counts: 14 days from the order are 4 late.
    WoodOrder &loose = addOrder(books, 5, 64, QDate(), OrderState::Received);
    loose.ordered = date(-50);
    loose.received = date(-36);
    // Never came: chased, then cancelled. Cancelled without being chased: the crew's own doing.
    addOrder(books, 6, 64, date(-30), OrderState::Cancelled).chased = date(-20);
    addOrder(books, 7, 64, date(-30), OrderState::Cancelled);
    // Received as a lot, the order itself without a day.
    WoodOrder &byLot = addOrder(books, 8, 64, date(-31), OrderState::Received);
    byLot.received = QDate();
    addLot(books, 1, day(-29)).order = 8;
    const LeadRecord record = leadRecordOf(books, 1, {});
    std::vector<double> late = record.daysLate;
    std::sort(late.begin(), late.end());
    QCOMPARE(late, (std::vector<double>{-1, 2, 3, 4}));
    QCOMPARE(record.neverCame, 1);
}

void TstOrderQuestion::aSupplierWithoutHistoryIsWideAndSaysSo()
{
    Asked asked = plain();
    const BookQuestion q = asked.question();
    QVERIFY(q.sources.front().leadAssumed);
    QVERIFY(q.sources.front().leadRecord.contains(QStringLiteral("a default is taken")));
    QVERIFY(q.question.offers.front().leadAssumed);
    QVERIFY(asked.answer()
                .notes.join(QLatin1Char(' '))
                .contains(QStringLiteral("Invented supplier 1 has no delivery on record")));
    const Spread &lead = q.question.offers.front().load.leadDays;
    QCOMPARE(lead.quantile(0.3), 7.0);
    QVERIFY(lead.quantile(0.95) >= 28);
    QVERIFY(q.question.offers.front().load.never > 0.02);
    addRecord(asked.books, 1, {0, 0, 1, 0, 0, 0, 0, 0});
    const BookQuestion known = asked.question();
    QVERIFY(!known.sources.front().leadAssumed);
    QVERIFY(known.question.offers.front().load.leadDays.quantile(0.9) <= 12);
}

// One of three loads read wet: 1 / (3 + 2). Such a load is not dry on the day it comes.
void TstOrderQuestion::wetLoadsOnRecordCount()
{
    Books books = emptyYard();
    addSupplier(books, 1, SellUnit::Cord, 7, 0);
    const double percents[] = {19, 20.5, 31};
    for (RecordId id = 1; id <= 3; ++id) {
        Lot &lot = stockUp(books, 100, id);
        lot.supplier = 1;
        lot.promisedMoisture = dryBasis(20);
    }
    books.readings.clear();
    for (RecordId id = 1; id <= 3; ++id)
        addReading(books, id, books.lots.value(id).received + Duration::ofBase(60),
                   {percents[id - 1]});
    const SupplierOutlook outlook = supplierOutlook(books, 1, {});
    QCOMPARE(outlook.wet, 0.2);
    QVERIFY(std::abs(outlook.wetAt.toDouble() / 1000 - 31) < 1); // temperature correction apart
    Asked asked;
    asked.books = books;
    const Spread drying = asked.question().question.offers.front().load.dryingDays;
    QCOMPARE(drying.quantile(0.79), 0.0);
    QVERIFY(drying.quantile(0.81) >= 1);
    // Taken at their word until then.
    books.readings.remove(3);
    QCOMPARE(supplierOutlook(books, 1, {}).wet, 0.0);
}

void TstOrderQuestion::leadTimeFromTheBestSource()
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

void TstOrderQuestion::offersAndUsualTerms()
{
    Asked asked = plain();
    Supplier &supplier = asked.books.suppliers[1];
    supplier.delivery = Money::ofBase(4000);
    supplier.mostUnits = 3;
    BookQuestion q = asked.question();
    QCOMPARE(q.sources.size(), 1);
    QCOMPARE(q.sources.front().offer, 0);
    // 32 ft³ of post oak at 20 %: a quarter of 4,038.7 seasoned pounds.
    QVERIFY(std::abs(q.question.offers.front().unitHeat - 1009.68) < 0.05);
    QVERIFY(std::abs(q.question.offers.front().unitRoom - 32) < 1e-6);
    QCOMPARE(q.question.offers.front().mostUnits, 3);
    QCOMPARE(*q.question.offers.front().unitPrice, 12000.0);
    QCOMPARE(q.question.offers.front().deliveryPrice, 4000.0);
    // An open offer takes the place of the usual terms for wood as dry, with its price by the unit.
    Offer offer;
    offer.id = 9;
    offer.supplier = 1;
    offer.species = 1;
    offer.unit = SellUnit::HalfCord;
    offer.count = Plain::ofBase(2000000);
    offer.price = Money::ofBase(42000);
    asked.books.offers.insert(9, offer);
    q = asked.question();
    QCOMPARE(q.sources.size(), 1);
    QCOMPARE(q.sources.front().offer, 9);
    QCOMPARE(*q.question.offers.front().unitPrice, 21000.0);
    QCOMPARE(q.question.offers.front().deliveryPrice, 4000.0);
    QCOMPARE(q.question.offers.front().mostUnits, 0); // three quarter cords say nothing of halves
    // Green wood stands beside it, judged green.
    asked.books.offers[9].promised = dryBasis(45);
    q = asked.question();
    QCOMPARE(q.sources.size(), 2);
    QVERIFY(q.sources.front().green && !q.sources.back().green);
    QVERIFY(q.question.offers.front().green);
    QVERIFY(q.question.offers.front().load.dryingDays.quantile(0.5) > 30);
    asked.books.offers[9].closed = true;
    QCOMPARE(asked.question().sources.size(), 1);
}

void TstOrderQuestion::whatCannotBeReckonedIsLeftOutAndNamed()
{
    Asked asked = plain();
    asked.books.suppliers[1].unit = SellUnit::Bundle;
    BookQuestion q = asked.question();
    QVERIFY(q.sources.isEmpty());
    QVERIFY(q.notes.join(QLatin1Char(' ')).contains(QStringLiteral("what one bundle holds")));
    // Nobody on the books.
    asked.books.suppliers.clear();
    const WoodAnswer answer = asked.answer();
    QVERIFY(answer.orders.isEmpty());
    QVERIFY(
        answer.headline.plainSentence().contains(QStringLiteral("No supplier is on the books")));
    QVERIFY(
        answer.notes.join(QLatin1Char(' ')).contains(QStringLiteral("No supplier is on record")));
    // No species anywhere: reckoned as oak, and said.
    asked = plain(0);
    asked.books.species.clear();
    q = asked.question();
    QVERIFY(std::abs(q.question.offers.front().unitHeat - 1009.68) < 0.05);
    QVERIFY(q.notes.join(QLatin1Char(' ')).contains(QStringLiteral("reckoned as oak")));
    // Wood that is not burned for food is no offer.
    asked = plain();
    asked.books.species[1].neverBurn = true;
    Offer cedar;
    cedar.id = 1;
    cedar.supplier = 1;
    cedar.species = 1;
    asked.books.offers.insert(1, cedar);
    QCOMPARE(asked.question().sources.size(), 1);
    QCOMPARE(asked.question().sources.front().offer, 0);
}

// Ten fires without a plan in the 200 days since the first planned one.
void TstOrderQuestion::unplannedFiresComeFromTheLog()
{
    Books books = emptyYard();
    FuelAnswer fuel;
    const auto add = [&](RecordId id, int when, bool planned) {
        Cook cook;
        cook.id = id;
        cook.lit = day(when);
        if (planned)
            cook.planned = 1;
        books.cooks.insert(id, cook);
        CookFuel burned;
        burned.cook = id;
        burned.lit = cook.lit;
        burned.finished = true;
        burned.netHeat = heatFromSeasonedPounds(10.0 * static_cast<double>(id));
        fuel.cooks << burned;
    };
    for (RecordId id = 1; id <= 10; ++id)
        add(id, -10 * static_cast<int>(id), false);
    UnplannedFires found = unplannedFires(books, fuel, day(0));
    QCOMPARE(found.days, 0); // nobody plans: nothing is told from it
    QCOMPARE(found.fires.chance, 0.0);
    add(11, -200, true);
    found = unplannedFires(books, fuel, day(0));
    QCOMPARE(found.days, 200);
    QCOMPARE(found.count, 10);
    QCOMPARE(found.fires.chance, 0.05);
    QVERIFY(found.fires.heat.quantile(0.01) >= 9.99 && found.fires.heat.quantile(0.99) <= 100.01);
    // They take wood from the booked cooks.
    Asked asked = plain(700);
    const double without = asked.chance(1);
    asked.books.cooks = books.cooks;
    for (Cook &cook : asked.books.cooks)
        cook.fireOut = cook.lit;
    asked.fuel = fuel;
    QVERIFY(asked.chance(1) > without + 0.02);
}

void TstOrderQuestion::theNextSeasonIsTheGreenWoods()
{
    Asked asked = plain();
    QCOMPARE(asked.question().question.nextSeason, INT_MAX);
    asked.books.yards[1].seasonMonth = 4;
    BookQuestion q = asked.question();
    QCOMPARE(q.question.nextSeason, int(date(0).daysTo(QDate(2026, 4, 1))));
    QVERIFY(q.notes.join(QLatin1Char(' ')).contains(QStringLiteral("Nothing is booked")));
    // A season that starts within the days served is dry wood's; the next one is a year later.
    asked.books.yards[1].seasonMonth = 1;
    QCOMPARE(asked.question().question.nextSeason, int(date(0).daysTo(QDate(2027, 1, 1))));
    // Green wood is proposed for an event of the next season, and only for that.
    asked = plain(5000);
    asked.books.yards[1].seasonMonth = 9;
    asked.books.suppliers[1].promised = dryBasis(45);
    addSupplier(asked.books, 2, SellUnit::QuarterCord, 7, 0);
    addEvent(asked.books, 3, QStringLiteral("Autumn Fair"), day(330));
    asked.uses << need(3, day(330), 6000, 1.1, 3);
    const WoodAnswer answer = asked.answer();
    QVERIFY(!answer.needed);
    QVERIFY(answer.risks.at(2).nextSeason);
    QVERIFY(!answer.greenOrders.isEmpty());
    QCOMPARE(answer.greenOrders.front().supplier, 1);
    QVERIFY(answer.greenOrders.front().green);
    QVERIFY(answer.orders.isEmpty());
    QVERIFY2(answer.headline.plainSentence().contains(QStringLiteral("For the next season, order")),
             qPrintable(answer.headline.plainSentence()));
}

void TstOrderQuestion::eventsTooFarOffStartNoOrder()
{
    Asked asked = plain(700);
    addRecord(asked.books, 1, {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0});
    addEvent(asked.books, 3, QStringLiteral("Far Fair"), day(200));
    asked.uses << need(3, day(200), 3000, 1.1, 3);
    const WoodAnswer answer = asked.answer();
    QVERIFY(answer.risks.at(2).farOff);
    QVERIFY(answer.risks.at(2).chance > 0.99);
    QVERIFY(answer.worst != 2);
    // Seven days of lead time and six weeks: until day 49.
    QCOMPARE(asked.question().question.judgedUntil, 50);
    asked.uses[2].light = day(49);
    QVERIFY(!asked.answer().risks.at(2).farOff);
    QVERIFY(asked.answer().needed);
    asked.uses[2].light = day(50);
    QVERIFY(asked.answer().risks.at(2).farOff);
}

void TstOrderQuestion::roomIsTheYards()
{
    Asked asked = plain(100);
    QVERIFY(!std::isfinite(asked.question().question.storage));
    QVERIFY(has(asked.question().reasons, QStringLiteral("Room for wood"),
                QStringLiteral("not given"), true));
    asked.books.yards[1].woodRoom = volumeFromCubicFeet(64);
    const OrderQuestion q = asked.question().question;
    QVERIFY(std::abs(q.storage - 64) < 1e-6);
    // Post oak at 20 %: 128 ft³ hold 4,038.7 seasoned pounds.
    QVERIFY(std::abs(q.roomPerHeat - 128 / 4038.72) < 1e-5);
    // An event larger than the yard is said, with split loads proposed.
    asked.uses = {need(1, day(40), 5000, 1.05, 1)};
    const WoodAnswer answer = asked.answer();
    QVERIFY(!answer.orders.isEmpty());
    QVERIFY(answer.orders.front().loads.size() > 1);
    int units = 0;
    for (const WoodLoad &load : answer.orders.front().loads)
        units += load.units;
    QCOMPARE(units, answer.orders.front().units);
    const QString notes = answer.notes.join(QLatin1Char(' '));
    QVERIFY2(notes.contains(QStringLiteral("times the wood that the yard can stack")),
             qPrintable(notes));
    // Held wood takes room too.
    stockUp(asked.books, 1500, 2).hold = true;
    QCOMPARE(asked.question().question.plan.lots.size(), 2U);
}

void TstOrderQuestion::eventsInThePastAreNamed()
{
    Asked asked = plain();
    PlannedCook planned;
    planned.id = 1;
    planned.event = 1;
    planned.light = day(-9);
    planned.length = durationFromHours(10);
    asked.books.plannedCooks.insert(1, planned);
    asked.books.events[1].start = day(-8);
    asked.books.events[1].end = day(-8, 20);
    asked.uses = plannedUses(asked.books, {}, day(0));
    QVERIFY(asked.uses.isEmpty());
    QVERIFY(asked.question()
                .notes.join(QLatin1Char(' '))
                .contains(QStringLiteral("River Lane Lunch lies in the past")));
    asked.books.events[1].state = EventState::Done;
    QVERIFY(!asked.question().notes.join(QLatin1Char(' ')).contains(QStringLiteral("River Lane")));
    // The event was moved, its cook was not.
    asked.books.events[1].state = EventState::Booked;
    asked.books.plannedCooks[1].light = day(5);
    asked.uses = plannedUses(asked.books, {}, day(0));
    QCOMPARE(asked.uses.size(), 1);
    QVERIFY(asked.question()
                .notes.join(QLatin1Char(' '))
                .contains(QStringLiteral("set for after the event")));
}

void TstOrderQuestion::standInsAreSaid()
{
    Asked asked = plain();
    Pit pit;
    pit.id = 1;
    pit.name = QStringLiteral("Long Pit");
    pit.diameter = Length::ofBase(610000);
    pit.length = Length::ofBase(1500000);
    asked.books.pits.insert(1, pit);
    PlannedCook planned;
    planned.id = 1;
    planned.pit = 1;
    planned.light = day(9);
    planned.length = durationFromHours(10);
    asked.books.plannedCooks.insert(1, planned);
    asked.uses = plannedUses(asked.books, {}, day(0));
    const auto reasons = asked.question().reasons;
    const QString label = QStringLiteral("Assumed");
    QVERIFY(has(reasons, label, QStringLiteral("no weather on record"), true));
    QVERIFY(has(reasons, label, QStringLiteral("no wind on record"), true));
    QVERIFY(has(reasons, label, QStringLiteral("250 °F"), true));
    QVERIFY(has(reasons, label, QStringLiteral("no cook is logged yet"), true));
    QVERIFY(
        has(reasons, QStringLiteral("Fires nobody plans"), QStringLiteral("not foreseen"), true));
    // With all of it given nothing stands in but the pit's missing log.
    asked.books.plannedCooks[1].outside = temperatureFromFahrenheit(40);
    asked.books.plannedCooks[1].wind = Speed::ofBase(4000);
    asked.books.plannedCooks[1].target = temperatureFromFahrenheit(260);
    const auto given = plannedUses(asked.books, {}, day(0));
    QCOMPARE(given.front().standIns.size(), 1);
    QVERIFY(given.front().weatherSd > 0);
    QVERIFY(given.front().weatherSd < asked.uses.front().weatherSd);
    QVERIFY(given.front().colder > given.front().middle);
}

RICKYARD_TEST(TstOrderQuestion)
#include "tst_order_question.moc"
