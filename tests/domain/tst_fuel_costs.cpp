// Sums of what the fires cost and did, against the same sums by hand.
#include "models/domain/fire/fuel_costs.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kNow = utc(2026, 12, 1, 0);

// Two pits, four cooks in two months, one of them for an event; the lot cost 40 cents a dry
// kilogram.
FireYard yardOfFour()
{
    FireYard yard;
    const RecordId a = yard.addPit(QStringLiteral("A"));
    const RecordId b = yard.addPit(QStringLiteral("B"));
    Movement received;
    received.id = 900;
    received.lot = 1;
    received.kind = MovementKind::Received;
    received.time = utc(2026, 1, 1, 0);
    received.dryMass = massFromKilograms(1000);
    yard.books.movements.insert(900, received);
    yard.books.lots[1].price = Money::ofBase(40000);
    const struct {
        RecordId pit;
        Instant lit;
        double hours;
        double joules;
        double food;
    } cooks[] = {{a, utc(2026, 3, 5, 6), 10, 8e8, 40},
                 {a, utc(2026, 3, 31, 23), 8, 7e8, 0},
                 {b, utc(2026, 4, 10, 6), 12, 2e9, 100},
                 {b, utc(2026, 4, 20, 6), 6, 1.2e9, 20}};
    for (const auto &c : cooks) {
        Cook &cook = yard.addCook(c.pit, c.lit, c.hours, 10);
        if (c.food > 0)
            cook.foodMass = massFromKilograms(c.food);
        const RecordId id = cook.id;
        Movement &m = yard.burn(yard.books.cooks.value(id), c.joules);
        m.id = id;
    }
    Event event;
    event.id = 5;
    event.start = utc(2026, 4, 10, 18);
    yard.books.events.insert(5, event);
    PlannedCook planned;
    planned.id = 7;
    planned.event = 5;
    planned.pit = b;
    yard.books.plannedCooks.insert(7, planned);
    yard.books.cooks[3].planned = 7;
    return yard;
}

} // namespace

class TstFuelCosts : public QObject
{
    Q_OBJECT

private slots:
    void byPitByHand();
    void byMonthInTheYardsZone();
    void byEvent();
    void unpricedCooksAreNotCheap();
};

void TstFuelCosts::byPitByHand()
{
    const FireYard yard = yardOfFour();
    const FuelAnswer fuel = fuelAnswer(yard.books, kNow, Wording());
    const auto works = workByPit(yard.books, fuel);
    QCOMPARE(works.size(), 2);
    const FireWork &a = works.first();
    QCOMPARE(a.cooks, 2);
    QVERIFY(std::abs(a.hours - 18) < 1e-9);
    QVERIFY(std::abs(a.heat.toDouble() / 1.5e9 - 1.0) < 1e-5);
    QVERIFY(std::abs(*a.joulesPerHour() / (1.5e9 / 18) - 1.0) < 1e-5);
    // 110 K for 18 h.
    QVERIFY(std::abs(*a.joulesPerDegreeHour() / (1.5e9 / (110.0 * 18)) - 1.0) < 1e-5);
    // Only one of its cooks had its food weighed.
    QVERIFY(std::abs(*a.joulesPerFood() * 1e6 / (8e8 / 40) - 1.0) < 1e-5);
    QVERIFY(std::abs(*a.centsPerCook() - 40 * kilograms(a.dry) / 2) < 1e-6);
    QVERIFY(std::abs(*a.centsPerFood() * 1e6 * 40 - fuel.cooks.first().cost) < 1e-6);
    QVERIFY(std::abs(*a.efficiency() -
                     (totalHeat(fuel.cooks.at(0).columns) + totalHeat(fuel.cooks.at(1).columns)) /
                         1.5e9) < 1e-4);
}

void TstFuelCosts::byMonthInTheYardsZone()
{
    FireYard yard = yardOfFour();
    FuelAnswer fuel = fuelAnswer(yard.books, kNow, Wording());
    auto months = workByMonth(yard.books, fuel);
    QCOMPARE(months.size(), 2);
    QCOMPARE(months.first().month, QDate(2026, 4, 1));
    QCOMPARE(months.first().cooks, 2);
    // Lit at 23:00 UTC on 31 March: already April in Berlin.
    yard.books.yards[1].timeZone = QStringLiteral("Europe/Berlin");
    fuel = fuelAnswer(yard.books, kNow, Wording());
    months = workByMonth(yard.books, fuel);
    QCOMPARE(months.first().cooks, 3);
    QCOMPARE(months.last().cooks, 1);
}

void TstFuelCosts::byEvent()
{
    const FireYard yard = yardOfFour();
    const auto works = workByEvent(yard.books, fuelAnswer(yard.books, kNow, Wording()));
    QCOMPARE(works.size(), 2);
    QCOMPARE(works.first().event, RecordId{5});
    QCOMPARE(works.first().cooks, 1);
    QCOMPARE(works.last().event, RecordId{0});
    QCOMPARE(works.last().cooks, 3);
}

void TstFuelCosts::unpricedCooksAreNotCheap()
{
    FireYard yard = yardOfFour();
    Lot gift;
    gift.id = 2;
    gift.species = 1;
    yard.books.lots.insert(2, gift);
    yard.books.movements[2].lot = 2;
    const auto works = workByPit(yard.books, fuelAnswer(yard.books, kNow, Wording()));
    const FireWork &a = works.first();
    QCOMPARE(a.cooks, 2);
    QCOMPARE(a.pricedCooks, 1);
    QVERIFY(std::abs(*a.centsPerCook() - a.cents) < 1e-9);
}

RICKYARD_TEST(TstFuelCosts)
#include "tst_fuel_costs.moc"
