// The wood of a cook measured three ways, reconciled, and the ledger brought to it.
#include "models/domain/fire/wood_measure.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/ledger.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <array>
#include <cmath>
#include <vector>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

// A lot with ten weighed splits of 2 kg at 20 % dry basis, and one cook on it.
struct Measured {
    FireYard yard;
    RecordId cook = 0;

    Measured()
    {
        yard.books.species[1].basicGravity = Plain::ofBase(600000);
        Lot &lot = yard.books.lots[1];
        lot.received = utc(2026, 1, 1, 12);
        lot.splitMass = massFromKilograms(2);
        lot.splitsWeighed = 10;
        lot.splitSpread = massFromKilograms(0.4);
        MoistureReading reading;
        reading.id = 1;
        reading.lot = 1;
        reading.time = lot.received;
        reading.pieces = {Moisture::ofBase(20000), Moisture::ofBase(20000)};
        yard.books.readings.insert(1, reading);
        yard.books.yards[1].correctTemperature = false;
        const RecordId pit = yard.addPit(QStringLiteral("A"));
        cook = yard.addCook(pit, utc(2026, 2, 1, 18), 10, 10).id;
    }

    void feed(int pieces, std::optional<Mass> weight = {})
    {
        Feed f;
        f.id = static_cast<RecordId>(yard.books.feeds.size()) + 1;
        f.cook = cook;
        f.lot = 1;
        f.time =
            yard.books.cooks.value(cook).lit + durationFromHours(0.1 * static_cast<double>(f.id));
        f.pieces = pieces;
        f.weight = weight;
        yard.books.feeds.insert(f.id, f);
        auto movement = movementOf(yard.books, f, f.id);
        QVERIFY2(movement.ok(), qPrintable(movement.message()));
        yard.books.movements.insert(f.id, movement.value());
    }

    Cook &record() { return yard.books.cooks[cook]; }
    WoodReckoning reckon() { return woodReckoning(yard.books, record()); }
};

} // namespace

class TstWoodMeasure : public QObject
{
    Q_OBJECT

private slots:
    void tallyByHand();
    void crateByHand();
    void stackByHand();
    void reconciledByInverseSquares();
    void disagreementIsSeen();
    void trueUpClosesTheGap();
    void crateAloneNeedsItsLot();
    void slipsAreSaid();
};

void TstWoodMeasure::tallyByHand()
{
    Measured m;
    m.feed(20);
    m.feed(5, massFromKilograms(9));
    const WoodReckoning r = m.reckon();
    QCOMPARE(r.ways.size(), 1);
    // 20 splits of 2 kg and 9 kg, as is at 20 % dry basis.
    QVERIFY(std::abs(kilograms(r.ways.first().dry) - 49.0 / 1.2) < 1e-3);
    // Mean of ten +-20 %, 2 % miscount, the scatter of twenty; 1 % of the 9 kg.
    const double counted = 40.0 / 1.2 * std::sqrt(0.04 / 10 + 0.0004 + 0.04 / 20);
    const double weighed = 9.0 / 1.2 * 0.01;
    QVERIFY(std::abs(kilograms(r.ways.first().error) - std::hypot(counted, weighed)) < 1e-3);
    QCOMPARE(r.booked, r.ways.first().dry);
    QVERIFY(trueUpOf(m.yard.books, m.record(), r, utc(2026, 2, 2, 4)).isEmpty());
}

void TstWoodMeasure::crateByHand()
{
    Measured m;
    m.record().woodLot = 1;
    m.record().crateBefore = massFromKilograms(80);
    m.record().crateAfter = massFromKilograms(20);
    const WoodReckoning r = m.reckon();
    QCOMPARE(r.ways.size(), 1);
    QVERIFY(std::abs(kilograms(*r.dry) - 50.0) < 1e-3);
    QVERIFY(std::abs(kilograms(r.error) - std::sqrt(2.0) * 0.3 / 1.2) < 1e-3);
    QCOMPARE(r.booked, Mass());
}

void TstWoodMeasure::stackByHand()
{
    Measured m;
    m.record().woodLot = 1;
    m.record().stackBefore = volumeFromCubicFeet(20);
    m.record().stackAfter = volumeFromCubicFeet(12);
    const WoodReckoning r = m.reckon();
    // 8 ft3 of stack hold 8 x 85/128 ft3 of wood (a cord of 128 ft3 holds 85 ft3 of solid wood,
    // US Forest Service usage, from memory).
    const Mass wood = dryMassOfSolid(volumeFromCubicFeet(8.0 * 85 / 128),
                                     m.yard.books.species.value(1), Moisture::ofBase(20000));
    QVERIFY(std::abs(kilograms(*r.dry) - kilograms(wood)) < 0.02 * kilograms(wood));
    const double share = std::hypot(0.03 * std::hypot(20.0, 12.0) / 8.0, 0.08);
    QVERIFY(std::abs(r.error / *r.dry - share) < 1e-3);
}

// Three measures 60, 64, 55 with errors 4, 0.4, 6: R 4.2.2 weighted.mean(x, 1/s^2) gives
// 63.921139 +- 0.397142, sum of squares 3.210570 on 2 degrees, pchisq upper tail 0.200832: the
// formula below, which is then fed with what the ways come to.
void TstWoodMeasure::reconciledByInverseSquares()
{
    const auto combined = [](const std::vector<std::pair<double, double>> &measures) {
        double sum = 0;
        double weights = 0;
        double chi = 0;
        for (const auto &[x, s] : measures) {
            sum += x / (s * s);
            weights += 1.0 / (s * s);
        }
        for (const auto &[x, s] : measures)
            chi += std::pow((x - sum / weights) / s, 2);
        return std::array<double, 3>{sum / weights, 1.0 / std::sqrt(weights), chi};
    };
    const auto byR = combined({{60, 4}, {64, 0.4}, {55, 6}});
    QVERIFY(std::abs(byR[0] - 63.921139102) < 1e-8 && std::abs(byR[1] - 0.397142035) < 1e-8 &&
            std::abs(byR[2] - 3.210569551) < 1e-8);
    Measured m;
    m.feed(30);
    m.record().crateBefore = massFromKilograms(90);
    m.record().crateAfter = massFromKilograms(26);
    m.record().stackBefore = volumeFromCubicFeet(20);
    m.record().stackAfter = volumeFromCubicFeet(14);
    const WoodReckoning r = m.reckon();
    QCOMPARE(r.ways.size(), 3);
    std::vector<std::pair<double, double>> measures;
    for (const WoodEstimate &way : r.ways)
        measures.emplace_back(kilograms(way.dry), kilograms(way.error));
    const auto [mean, error, chi] = combined(measures);
    QVERIFY(std::abs(kilograms(*r.dry) - mean) < 1e-4);
    QVERIFY(std::abs(kilograms(r.error) - error) < 1e-4);
    QVERIFY(r.error < r.ways.at(0).error && r.error < r.ways.at(1).error &&
            r.error < r.ways.at(2).error);
    // Upper tail of chi-square on two degrees is exp(-x / 2): closed form.
    QVERIFY(std::abs(r.agreement - std::exp(-chi / 2)) < 1e-3);
}

void TstWoodMeasure::disagreementIsSeen()
{
    Measured m;
    m.feed(30); // 50 kg dry
    m.record().crateBefore = massFromKilograms(60);
    m.record().crateAfter = massFromKilograms(0.5); // 49.6 kg dry
    QVERIFY(m.reckon().agree());
    m.record().crateAfter = massFromKilograms(30); // 25 kg: half of the feeds never came from it
    const WoodReckoning r = m.reckon();
    QVERIFY(!r.agree());
    QVERIFY(r.agreement < 1e-6);
}

void TstWoodMeasure::trueUpClosesTheGap()
{
    Measured m;
    m.feed(30);
    m.record().crateBefore = massFromKilograms(70);
    m.record().crateAfter = massFromKilograms(4); // 55 kg dry
    const WoodReckoning before = m.reckon();
    QVERIFY(before.difference() > Mass());
    const auto entries = trueUpOf(m.yard.books, m.record(), before, utc(2026, 2, 2, 4));
    QCOMPARE(entries.size(), 1);
    QCOMPARE(entries.first().lot, RecordId{1});
    Movement entry = entries.first();
    entry.id = 700;
    m.yard.books.movements.insert(700, entry);
    const WoodReckoning after = m.reckon();
    QVERIFY(std::abs(kilograms(after.difference())) < 1e-3);
    QVERIFY(trueUpOf(m.yard.books, m.record(), after, utc(2026, 2, 2, 4)).isEmpty());
}

void TstWoodMeasure::crateAloneNeedsItsLot()
{
    Measured m;
    m.record().crateBefore = massFromKilograms(70);
    m.record().crateAfter = massFromKilograms(10);
    const WoodReckoning r = m.reckon();
    QVERIFY(!r.dry && r.problems.join(QString()).contains(QStringLiteral("which lot")));
    m.record().woodLot = 1;
    QVERIFY(m.reckon().dry);
}

void TstWoodMeasure::slipsAreSaid()
{
    Measured m;
    m.feed(10);
    m.record().crateBefore = massFromKilograms(10);
    m.record().crateAfter = massFromKilograms(70);
    m.record().stackBefore = volumeFromCubicFeet(5);
    m.record().stackAfter = volumeFromCubicFeet(9);
    const WoodReckoning r = m.reckon();
    QCOMPARE(r.ways.size(), 1);
    QCOMPARE(r.problems.size(), 2);
}

RICKYARD_TEST(TstWoodMeasure)
#include "tst_wood_measure.moc"
