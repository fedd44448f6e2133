// The wood to pull: phases add up to the upper bound, lots in burning order, nothing twice.
#include "models/domain/plan/load_list.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <boost/math/distributions/students_t.hpp>

#include <cmath>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kNow = utc(2026, 3, 1, 12);

// Lot 1 with `first` kg and lot 2 with `second` kg of dry oak at 18 %, 2 kg a split as is.
FireYard yardWith(double first, double second)
{
    FireYard yard;
    yard.books.species[1].basicGravity = Plain::ofBase(600000);
    yard.books.yards[1].correctTemperature = false;
    Lot other = yard.books.lots.value(1);
    other.id = 2;
    yard.books.lots.insert(2, other);
    const double amounts[] = {first, second};
    for (RecordId id = 1; id <= 2; ++id) {
        Lot &lot = yard.books.lots[id];
        lot.name = id == 1 ? QStringLiteral("Old oak") : QStringLiteral("New oak");
        lot.received = utc(2025, id == 1 ? 3 : 6, 1, 12);
        lot.splitMass = massFromKilograms(2);
        lot.splitsWeighed = 10;
        Movement m;
        m.id = id;
        m.lot = id;
        m.time = lot.received;
        m.dryMass = massFromKilograms(amounts[id - 1]);
        yard.books.movements.insert(id, m);
        MoistureReading r;
        r.id = id;
        r.lot = id;
        r.time = lot.received;
        r.pieces = {Moisture::ofBase(18000), Moisture::ofBase(18000)};
        yard.books.readings.insert(id, r);
    }
    yard.addPit(QStringLiteral("A"));
    return yard;
}

PlannedFire evening()
{
    PlannedFire fire;
    fire.pit = 1;
    fire.length = durationFromHours(10);
    fire.target = temperatureFromFahrenheit(250);
    fire.outside = temperatureFromFahrenheit(50);
    return fire;
}

QVector<LoadList> listsOf(const FireYard &yard, const QVector<PlannedFire> &fires)
{
    const FuelAnswer fuel = fuelAnswer(yard.books, kNow, Wording());
    const Stock stock = stockAt(yard.books, kNow);
    return loadLists(yard.books, fuel, stock, burnFirst(yard.books, stock, {}), fires);
}

Heat heatOf(const LoadList &list)
{
    Heat sum;
    for (const LoadLine &line : list.lines)
        sum += line.heat;
    return sum;
}

} // namespace

class TstLoadList : public QObject
{
    Q_OBJECT

private slots:
    void phasesAddUp();
    void lotsInBurningOrder();
    void secondFireFindsWhatIsLeft();
    void shortIsSaid();
    void enoughIsTheQuantileOfThePrediction_data();
    void enoughIsTheQuantileOfThePrediction();
    void enoughByHand();
    void reserveGrowsWithTheChance();
    void keptWoodStaysForItsEvent();
};

void TstLoadList::phasesAddUp()
{
    const FireYard yard = yardWith(2000, 2000);
    const LoadList list = listsOf(yard, {evening()}).first();
    const ExpectedUse use =
        expectedUse(yard.books, fuelAnswer(yard.books, kNow, Wording()), evening());
    QVERIFY(std::abs((heatOf(list) - use.upper).toDouble()) < 10);
    QCOMPARE(list.missing, Heat());
    QCOMPARE(list.asIs, list.asIsOf(LoadPhase::Lighting) + list.asIsOf(LoadPhase::Hold) +
                            list.asIsOf(LoadPhase::Reserve));
    // 2 kg a split: the count is the weight over it, rounded up once a line.
    const double whole = kilograms(list.asIs) / 2.0;
    QVERIFY(list.splits >= whole - 1e-6 &&
            list.splits <= whole + static_cast<double>(list.lines.size()));
    QVERIFY(list.splitsOf(LoadPhase::Lighting) > 0 && list.splitsOf(LoadPhase::Reserve) > 0);
    const QString words = pullWords(yard.books, list, Wording());
    QVERIFY2(words.startsWith(QStringLiteral("Pull %1 splits (").arg(list.splits)),
             qPrintable(words));
    QVERIFY(words.contains(QStringLiteral("of Old oak:")));
}

void TstLoadList::lotsInBurningOrder()
{
    const FireYard yard = yardWith(30, 2000);
    const LoadList list = listsOf(yard, {evening()}).first();
    QCOMPARE(list.lines.first().lot, RecordId{1});
    QCOMPARE(list.lines.last().lot, RecordId{2});
    Mass old;
    for (const LoadLine &line : list.lines)
        old += line.lot == 1 ? line.asIs : Mass();
    QVERIFY(std::abs(kilograms(old) - 30 * 1.18) < 0.01);
    QVERIFY(
        pullWords(yard.books, list, Wording()).contains(QStringLiteral("Old oak, then New oak")));
}

void TstLoadList::secondFireFindsWhatIsLeft()
{
    const FireYard yard = yardWith(2000, 2000);
    const auto lists = listsOf(yard, {evening(), evening()});
    QCOMPARE(lists.size(), 2);
    QVERIFY(std::abs((heatOf(lists.at(0)) - heatOf(lists.at(1))).toDouble()) < 10);
    const FireYard little = yardWith(120, 0);
    const auto both = listsOf(little, {evening(), evening()});
    const double held = 120 * netHeatPerDryKilogram(WoodAnalysis(), Moisture::ofBase(18000));
    QVERIFY((heatOf(both.at(0)) + heatOf(both.at(1))).toDouble() <= held * 1.001);
    QVERIFY(both.at(1).missing > both.at(0).missing);
}

void TstLoadList::shortIsSaid()
{
    FireYard yard = yardWith(10, 0);
    const LoadList list = listsOf(yard, {evening()}).first();
    QVERIFY(list.missing > Heat());
    QVERIFY(pullWords(yard.books, list, Wording()).contains(QStringLiteral("is missing")));
    // Wet or held wood is not pulled.
    yard.books.lots[1].hold = true;
    const LoadList none = listsOf(yard, {evening()}).first();
    QVERIFY(none.lines.isEmpty());
    QCOMPARE(pullWords(yard.books, none, Wording()),
             QStringLiteral("There is no dry wood to pull."));
}

void TstLoadList::enoughIsTheQuantileOfThePrediction_data()
{
    QTest::addColumn<double>("chance");
    for (const double chance : {0.80, 0.90, 0.95, 0.99})
        QTest::addRow("%.0f", 100 * chance) << chance;
}

// Boost.Math's Student t against the log of actual over expected.
void TstLoadList::enoughIsTheQuantileOfThePrediction()
{
    QFETCH(double, chance);
    FireYard yard = yardWith(2000, 2000);
    for (int i = 0; i < 6; ++i) {
        const Cook cook = yard.addCook(1, utc(2026, 1, 3 + 7 * i, 8), 8 + i, 2.0 * i);
        yard.burn(cook, 6e8 + 4e7 * i);
    }
    const FuelAnswer fuel = fuelAnswer(yard.books, kNow, Wording());
    const ExpectedUse use = expectedUse(yard.books, fuel, evening());
    QVERIFY(use.fromNorm && use.relativeSd > 0);
    const double v = std::log(1 + use.relativeSd * use.relativeSd);
    const boost::math::students_t t(use.dof);
    const double expected =
        use.middle.toDouble() * std::exp(-v / 2 + boost::math::quantile(t, chance) * std::sqrt(v));
    const auto enough = enoughFor(use, chance);
    QVERIFY(enough);
    QVERIFY(std::abs(*enough / Heat::rounded(expected) - 1) < 1e-9);
    // The other way round: Boost's chance of staying under it is the one asked for.
    const double score =
        (std::log(enough->toDouble() / use.middle.toDouble()) + v / 2) / std::sqrt(v);
    QVERIFY(std::abs(boost::math::cdf(t, score) - chance) < 1e-7);
    if (chance == 0.95)
        QVERIFY(std::abs(*enough / use.upper - 1) < 1e-6);
    const Stock stock = stockAt(yard.books, kNow);
    const LoadList list =
        loadLists(yard.books, fuel, stock, burnFirst(yard.books, stock, {}), {evening()}, chance)
            .first();
    QVERIFY(std::abs(heatOf(list) / *enough - 1) < 1e-6);
}

// t quantiles for 10 degrees of freedom: NIST/SEMATECH e-Handbook of Statistical Methods, table
// 1.3.6.7.2 (1.372, 1.812, 2.764 for 0.90, 0.95, 0.99). 100 seasoned lb expected, 20 % scatter:
// v = ln 1.04 = 0.039221, sqrt v = 0.198042.
void TstLoadList::enoughByHand()
{
    ExpectedUse use;
    use.middle = heatFromSeasonedPounds(100);
    use.relativeSd = 0.2;
    use.dof = 10;
    QVERIFY(std::abs(seasonedPounds(*enoughFor(use, 0.90)) - 128.67) < 0.02);
    QVERIFY(std::abs(seasonedPounds(*enoughFor(use, 0.95)) - 140.39) < 0.02);
    QVERIFY(std::abs(seasonedPounds(*enoughFor(use, 0.99)) - 169.52) < 0.02);
    // Never less than what is expected, and nothing of nothing.
    QCOMPARE(*enoughFor(use, 0.30), use.middle);
    use.dof = 0;
    QVERIFY(!enoughFor(use, 0.95));
}

void TstLoadList::reserveGrowsWithTheChance()
{
    const FireYard yard = yardWith(2000, 2000);
    const FuelAnswer fuel = fuelAnswer(yard.books, kNow, Wording());
    const Stock stock = stockAt(yard.books, kNow);
    const auto order = burnFirst(yard.books, stock, {});
    Mass before;
    for (const double chance : {0.80, 0.90, 0.95, 0.99}) {
        const LoadList list =
            loadLists(yard.books, fuel, stock, order, {evening()}, chance).first();
        QVERIFY(list.asIsOf(LoadPhase::Reserve) > before);
        before = list.asIsOf(LoadPhase::Reserve);
    }
}

void TstLoadList::keptWoodStaysForItsEvent()
{
    FireYard yard = yardWith(2000, 2000);
    yard.books.lots[1].reservedFor = 7;
    const FuelAnswer fuel = fuelAnswer(yard.books, kNow, Wording());
    const Stock stock = stockAt(yard.books, kNow);
    const auto order = burnFirst(yard.books, stock, {});
    const ExpectedUse use = expectedUse(yard.books, fuel, evening());
    DryWood others(yard.books, stock);
    for (const LoadLine &line : others.pull(use, 1, order, 3, 0.95).lines)
        QCOMPARE(line.lot, RecordId{2});
    // Its own event takes it first, though the other is older in the order.
    yard.books.lots[1].reservedFor.reset();
    yard.books.lots[2].reservedFor = 7;
    DryWood own(yard.books, stock);
    QCOMPARE(own.pull(use, 1, order, 7, 0.95).lines.first().lot, RecordId{2});
}

RICKYARD_TEST(TstLoadList)
#include "tst_load_list.moc"
