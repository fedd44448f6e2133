// How the books become the question of what to order: needs, seasons, room and what is said. The
// supply side: tst_order_supply.cpp.
#include "models/domain/plan/order_question.h"
#include "tests/domain/asked_yard.h"
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
    void unplannedFiresComeFromTheLog();
    void theNextSeasonIsTheGreenWoods();
    void eventsTooFarOffStartNoOrder();
    void roomIsTheYards();
    void eventsInThePastAreNamed();
    void standInsAreSaid();
};

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
    Heat = heatFromSeasonedPounds(10.0 * static_cast<double>(id));
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
    QVERIFY(std::abs(q.storage - 64) < 1e-4);
    // Post oak at 20 %: 128 ft³ hold 4,038.7 seasoned pounds.
    QVERIFY(std::abs(q.roomPerHeat - 128 / 4038.72) < 1e-5);
    // An event larger than the yard is said, with split loads proposed. (With the wide default
    // for lateness none is sure to come early, and all goes straight to the event.)
    addRecord(asked.books, 1, std::vector<int>(20, 0));
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
