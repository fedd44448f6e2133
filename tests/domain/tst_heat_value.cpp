// Net heat, density and volumes against published tables (tests/data/reference/wood_*.csv, each
// with its source in its first line).
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/stock.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using rickyard::test::ReferenceTable;

namespace {

Moisture dryPercent(double u)
{
    return moistureFromDryFraction(u / 100.0);
}

void near(double computed, double expected, double tolerance, const QString &what)
{
    QVERIFY2(std::abs(computed - expected) <= tolerance,
             qPrintable(QStringLiteral("%1: computed %2, expected %3 within %4")
                            .arg(what)
                            .arg(computed, 0, 'g', 10)
                            .arg(expected, 0, 'g', 10)
                            .arg(tolerance)));
}

Species speciesOf(double gravity, double shrinkagePercent)
{
    Species species;
    species.basicGravity = Plain::rounded(gravity * 1e6);
    species.shrinkage = Ratio::rounded(shrinkagePercent * 1e4);
    return species;
}

// Published analysis of red oak; gross heat by the Channiwala-Parikh correlation, from memory.
WoodAnalysis redOak()
{
    return {19.885e6, 5.92, 43.77, 0.03};
}

} // namespace

class TstHeatValue : public QObject
{
    Q_OBJECT
private slots:
    void basisConversions();
    void netHeatTable();
    void netHeatHandExample();
    void seasonedPoundIsDerived();
    void grossHeatOfTheSpeciesCounts();
    void perDryKilogram();
    void publishedDensityExample();
    void gravityOfSpecies();
    void shrinkageStopsAtFibreSaturation();
    void massToVolumeAndBack();
    void legalVolumes();
    void tableA();
    void tableB();
    void tableC();
    void ash();
};

void TstHeatValue::basisConversions()
{
    const ReferenceTable table(QStringLiteral("wood_basis.csv"));
    QCOMPARE(table.rows(), 6);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const double u = table.number(i, QStringLiteral("u_dry_pct"));
        const double m = table.number(i, QStringLiteral("m_wet_pct"));
        near(100.0 * wetFraction(dryPercent(u)), m, 0.005, QStringLiteral("wet basis"));
        near(moistureFromWetFraction(m / 100.0).toDouble() / 1000.0, u, 0.02,
             QStringLiteral("dry basis"));
    }
    // Exact pairs of the identity.
    near(100.0 * wetFraction(dryPercent(20)), 100.0 / 6.0, 1e-12, QStringLiteral("20 dry"));
    QCOMPARE(moistureFromWetFraction(0.20), dryPercent(25));
    QCOMPARE(moistureFromWetFraction(0.50), dryPercent(100));
}

void TstHeatValue::netHeatTable()
{
    const ReferenceTable table(QStringLiteral("wood_net_heat.csv"));
    QCOMPARE(table.rows(), 12);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        // The table prints M to two decimals: 16.67 stands for 100/6, hence half a unit of the last
        // printed digit plus what that rounding moves (0.26 MJ a point).
        const double m = table.number(i, QStringLiteral("m_wet_pct")) / 100.0;
        const Moisture u = moistureFromWetFraction(m);
        const QString what = QStringLiteral("M %1").arg(m);
        near(netHeatAsIs(redOak(), u) / 1e6, table.number(i, QStringLiteral("red_oak_mj_kg")),
             0.0015, what);
        near(netHeatAsIs(redOak(), u) / 2326.0, table.number(i, QStringLiteral("red_oak_btu_lb")),
             1.0, what);
        near(netHeatAsIs({}, u) / 1e6, table.number(i, QStringLiteral("default_mj_kg")), 0.0015,
             what);
    }
}

// Red oak at M = 20 % by hand: 19,885 − 212.2 × 5.92 − 0.8 × 43.80 = 18,593.7; × 0.80 = 14,875.0;
// − 24.43 × 20 = 488.6; leaves 14,386 J/g.
void TstHeatValue::netHeatHandExample()
{
    near(netHeatAsIs(redOak(), dryPercent(25)) / 1000.0, 14386.0, 1.0, QStringLiteral("red oak"));
}

// 19,800 − 212.2 × 6.2 − 0.8 × 44.1 = 18,449.08 J/g dry; at 20 % dry basis M = 100/6 %:
// 18,449.08 × 5/6 − 24.43 × 100/6 = 15,374.2333 − 407.1667 = 14,967.0667 J/g.
void TstHeatValue::seasonedPoundIsDerived()
{
    near(netHeatAsIs({}, kDryEnough), 14967066.7, 0.1, QStringLiteral("a kilogram"));
    near(netHeatAsIs({}, kDryEnough) * kKilogramsPerPound, kJoulesPerSeasonedPound, 0.05,
         QStringLiteral("a seasoned pound"));
    const Mass dry = dryFromAsIs(massFromPounds(100), kDryEnough);
    near(seasonedPounds(netHeatOf(dry, kDryEnough)), 100.0, 1e-5, QStringLiteral("100 lb"));
}

void TstHeatValue::grossHeatOfTheSpeciesCounts()
{
    Species species = speciesOf(0.6, 16.2);
    QCOMPARE(analysisOf(species).grossHeat, 19.8e6);
    species.grossHeat = HeatContent::ofBase(20800000);
    // A megajoule more gross is a megajoule more net in a dry kilogram.
    near(netHeatPerDryKilogram(analysisOf(species), dryPercent(30)) -
             netHeatPerDryKilogram({}, dryPercent(30)),
         1e6, 1e-3, QStringLiteral("gross heat"));
}

// "Per dry kg the penalty is 2.443 u / 100 MJ": what evaporating the water takes.
void TstHeatValue::perDryKilogram()
{
    near(netHeatPerDryKilogram({}, dryPercent(0)), 18449080.0, 0.5, QStringLiteral("dry"));
    for (int u = 5; u <= 150; u += 5)
        near(18449080.0 - netHeatPerDryKilogram({}, dryPercent(u)), 24430.0 * u, 0.5,
             QStringLiteral("u %1").arg(u));
}

// University of Missouri forestry functions, citing the Wood Handbook: gravity 0.40 at 12 % is
// 27.968 lb/ft³ (with 62.43 lb/ft³ of water) or 448 kg/m³.
void TstHeatValue::publishedDensityExample()
{
    const double density = densityAt(0.40, dryPercent(12));
    near(density, 448.0, 1e-9, QStringLiteral("kg/m³"));
    near(density * 62.43 / 1000.0, 27.968, 0.001, QStringLiteral("lb/ft³"));
}

void TstHeatValue::gravityOfSpecies()
{
    const ReferenceTable table(QStringLiteral("wood_species.csv"));
    QCOMPARE(table.rows(), 13);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const Species wood = speciesOf(table.number(i, QStringLiteral("gb")),
                                       table.number(i, QStringLiteral("shrink_v_pct")));
        const QString name = table.text(i, QStringLiteral("species"));
        const auto column = [&](const char *key) {
            return table.number(i, QString::fromUtf8(key));
        };
        near(gravityAt(wood, dryPercent(12)), column("g12_table"), 0.02, name);
        near(gravityAt(wood, dryPercent(12)), column("g12_calc"), 0.0006, name);
        near(densityAt(wood, dryPercent(12)), column("rho12_kg_m3"), 0.6, name);
        near(densityAt(wood, dryPercent(20)), column("rho20_kg_m3"), 0.6, name);
        near(densityAt(wood, dryPercent(20)) / 16.0185, column("rho20_lb_ft3"), 0.06, name);
        near(densityAt(wood, dryPercent(0)), column("rho0_kg_m3"), 0.6, name);
    }
}

void TstHeatValue::shrinkageStopsAtFibreSaturation()
{
    const Species oak = speciesOf(0.60, 16.2);
    QCOMPARE(shrinkageAt(oak, dryPercent(30)), 0.0);
    QCOMPARE(shrinkageAt(oak, dryPercent(80)), 0.0);
    QCOMPARE(shrinkageAt(oak, dryPercent(0)), 0.162);
    near(shrinkageAt(oak, dryPercent(15)), 0.081, 1e-12, QStringLiteral("half way"));
    Species bare = oak;
    bare.shrinkage.reset();
    near(fullShrinkage(bare), 0.159, 1e-12, QStringLiteral("26.5 % of the gravity"));
}

void TstHeatValue::massToVolumeAndBack()
{
    const Species oak = speciesOf(0.60, 16.2);
    const Mass dry = massFromPounds(1000);
    for (int u = 0; u <= 80; u += 10) {
        const Volume solid = solidVolume(dry, oak, dryPercent(u));
        near(pounds(dryMassOfSolid(solid, oak, dryPercent(u))), 1000.0, 1e-3,
             QStringLiteral("u %1").arg(u));
        near(kilograms(asIsFromDry(dry, dryPercent(u))) / (solid.toDouble() / 1e6),
             densityAt(oak, dryPercent(u)), 0.01, QStringLiteral("density %1").arg(u));
        near(pounds(dryFromAsIs(asIsFromDry(dry, dryPercent(u)), dryPercent(u))), 1000.0, 1e-4,
             QStringLiteral("water %1").arg(u));
    }
    near(cubicFeet(solidFromStacked(volumeFromCubicFeet(128))), 85.0, 1e-4,
         QStringLiteral("a cord"));
    near(cubicFeet(looseFromSolid(volumeFromCubicFeet(85))), 180.0, 1e-4, QStringLiteral("loose"));
    near(cubicFeet(stackedFromSolid(solidFromLoose(volumeFromCubicFeet(180)))), 128.0, 1e-4,
         QStringLiteral("loose load of a cord"));
}

// NIST Handbook 130 section 2.4: a cord is 128 ft³; a row of 16 in sticks 4 ft high and 8 ft long
// is a third of it.
void TstHeatValue::legalVolumes()
{
    const Length sixteen = Length::rounded(16 * kMicrometresPerInch);
    const Length four = Length::rounded(48 * kMicrometresPerInch);
    const Length eight = Length::rounded(96 * kMicrometresPerInch);
    near(cubicFeet(stackVolume(eight, four, sixteen)), 128.0 / 3.0, 1e-4, QStringLiteral("row"));
    near(cords(stackVolume(eight, four, four)), 1.0, 1e-6, QStringLiteral("cord"));
    near(cubicFeet(volumeFromCubicFeet(kCubicFeetPerCord / 8)), 16.0, 1e-4,
         QStringLiteral("an eighth"));
}

// Our own way to a cord's weight and heat reproduces each table with that table's assumptions.
void TstHeatValue::tableA()
{
    const ReferenceTable table(QStringLiteral("wood_cord_table_a.csv"));
    QCOMPARE(table.rows(), 7);
    const double solid = cubicFeet(solidFromStacked(volumeFromCubicFeet(128)));
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const QString name = table.text(i, QStringLiteral("species"));
        const double weight = table.number(i, QStringLiteral("lb_ft3")) * solid;
        // A density of one decimal leaves 0.05 × 85 lb.
        near(weight, table.number(i, QStringLiteral("lb_cord")), 4.3, name);
        near(weight * 6400 / 1e6, table.number(i, QStringLiteral("mbtu_cord")), 0.06, name);
    }
}

void TstHeatValue::tableB()
{
    const ReferenceTable table(QStringLiteral("wood_cord_table_b.csv"));
    QCOMPARE(table.rows(), 11);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const QString name = table.text(i, QStringLiteral("species"));
        Species wood;
        // The table's gravity is at 12 % already: no shrinkage is left to apply.
        wood.basicGravity = Plain::rounded(table.number(i, QStringLiteral("implied_g12")) * 1e6);
        wood.shrinkage = Ratio();
        const double weight = pounds(dryMassOfSolid(volumeFromCubicFeet(80), wood, dryPercent(12)));
        // The implied gravity has three decimals: half a unit of the last is 2.5 lb a cord.
        near(weight, table.number(i, QStringLiteral("lb_cord")), 5.0, name);
        near(weight * table.number(i, QStringLiteral("btu_lb")) / 1e6,
             table.number(i, QStringLiteral("mbtu_cord")), 0.1, name);
    }
}

void TstHeatValue::tableC()
{
    const ReferenceTable table(QStringLiteral("wood_cord_table_c.csv"));
    QCOMPARE(table.rows(), 10);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const QString name = table.text(i, QStringLiteral("species"));
        const double pounds = table.number(i, QStringLiteral("dry_lb_cord"));
        near(pounds * 7000 / 1e6, table.number(i, QStringLiteral("mbtu_cord")), 0.06, name);
        // Those 7,000 Btu are a pound of air-dry wood near gross: our net figure for a pound at
        // 20 % dry basis lies below and our oven-dry net figure above.
        QVERIFY(netHeatAsIs({}, kDryEnough) / 2326.0 < 7000);
        QVERIFY(netHeatAsIs({}, Moisture()) / 2326.0 > 7000);
    }
}

void TstHeatValue::ash()
{
    Species wood;
    near(pounds(ashOf(massFromPounds(1000), wood)), 11.0, 1e-4, QStringLiteral("default"));
    wood.ash = Ratio::ofBase(3100);
    near(pounds(ashOf(massFromPounds(1000), wood)), 3.1, 1e-4, QStringLiteral("clean oak"));
}

RICKYARD_TEST(TstHeatValue)
#include "tst_heat_value.moc"
