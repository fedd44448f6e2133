#include "models/domain/fire/fuel_default.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kNow = utc(2026, 12, 1, 0);
const Instant kFirst = utc(2026, 1, 3, 6);

FuelAnswer answerOf(const FireYard &yard)
{
    return fuelAnswer(yard.books, kNow, Wording());
}

} // namespace

class TstFuelDefault : public QObject
{
    Q_OBJECT

private slots:
    void expectedUsePooled();
    void expectedUseDefault();
    void backyardPitTakesASplitEveryHalfHourOrHour();
    void sizeTable();
};

void TstFuelDefault::expectedUsePooled()
{
    FireYard yard;
    const RecordId known = yard.addPit(QStringLiteral("A"), 20, 40);
    const RecordId fresh = yard.addPit(QStringLiteral("B"), 40, 80);
    yard.burn(yard.addCook(known, kFirst, 10, 20), 4e8);
    const FuelAnswer answer = answerOf(yard);
    const auto use = [&](RecordId pit) {
        return expectedUse(yard.books, answer, pit, durationFromHours(5),
                           temperatureFromCelsius(120), temperatureFromCelsius(20));
    };
    QVERIFY(!use(known).fromNorm);
    // Half the degree-hours on the same pit: half the heat. Twice as wide and long: four times it.
    QVERIFY(std::abs(use(known).middle.toDouble() / 2e8 - 1.0) < 1e-5);
    QVERIFY(std::abs(use(fresh).middle.toDouble() / 8e8 - 1.0) < 1e-5);
    QVERIFY(use(fresh).basis.startsWith(QStringLiteral("Assumed")));
    QVERIFY(use(fresh).basis.contains(QStringLiteral("1 cook on 1 pit")));
}

void TstFuelDefault::expectedUseDefault()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"), 20, 40);
    const FuelAnswer answer = answerOf(yard);
    const auto use = [&](double outsideF, double length) {
        return expectedUse(yard.books, answer, pit, durationFromHours(length),
                           temperatureFromFahrenheit(250), temperatureFromFahrenheit(outsideF));
    };
    // 10 lb for lighting and 5.6 lb an hour for twelve hours at 250 °F in 70 °F.
    QVERIFY(std::abs(seasonedPounds(use(70, 12).middle) - 77.2) < 0.5);
    QVERIFY(use(20, 12).middle > use(70, 12).middle);
    QVERIFY(use(70, 12).lower < use(70, 12).middle && use(70, 12).middle < use(70, 12).upper);
    QVERIFY(use(70, 12).basis.startsWith(QStringLiteral("Assumed: a working default")));
    QVERIFY(!use(70, 12).fromNorm);
    // Warmer outside than in the pit: only the lighting is left.
    QVERIFY(std::abs(seasonedPounds(use(300, 12).middle) - 10.0) < 0.1);
}

// Trade check, common practice, no source: on a backyard pit of 20 to 24 in one split goes in
// every 30 to 60 minutes. A 20 in pit takes 14 in splits of 3.3 lb, a 24 in pit 16 in splits of
// 4.2 lb (3.5 in thick, at 45 lb a solid cubic foot).
void TstFuelDefault::backyardPitTakesASplitEveryHalfHourOrHour()
{
    FireYard yard;
    const Pit small = yard.books.pits.value(yard.addPit(QStringLiteral("A"), 20, 40));
    const Pit large = yard.books.pits.value(yard.addPit(QStringLiteral("B"), 24, 54));
    const double smallMinutes = 60.0 * 3.3 / seasonedPounds(workingDefault(small).hourly);
    const double largeMinutes = 60.0 * 4.2 / seasonedPounds(workingDefault(large).hourly);
    QVERIFY2(smallMinutes >= 30 && smallMinutes <= 60, qPrintable(QString::number(smallMinutes)));
    QVERIFY2(largeMinutes >= 30 && largeMinutes <= 60, qPrintable(QString::number(largeMinutes)));
}

// Volumes by hand: a 24 by 54 in cylinder holds 24,429 cubic inches, 105.8 gallons of 231.
void TstFuelDefault::sizeTable()
{
    FireYard yard;
    const auto pit = [&](double d, double l) {
        return yard.books.pits.value(yard.addPit(QStringLiteral("A"), d, l));
    };
    QVERIFY(std::abs(chamberGallons(pit(24, 54)) - 105.75) < 0.05);
    double before = 0;
    for (const double d : {16.0, 20.0, 24.0, 30.0, 36.0, 42.0, 48.0}) {
        const WorkingDefault w = workingDefault(pit(d, 2.5 * d));
        QVERIFY(w.hourlyLower < w.hourly && w.hourly < w.hourlyUpper);
        QVERIFY(w.hourly.toDouble() > before);
        before = w.hourly.toDouble();
    }
    Pit wrapped = pit(24, 54);
    wrapped.insulation = Insulation::FireboxOnly;
    QVERIFY(workingDefault(wrapped).hourly < workingDefault(pit(24, 54)).hourly * 0.67);
    QVERIFY(workingDefault(Pit()).hourly > Heat()); // no size yet
    // A closed cylinder of 1 m by 2 m and five sides of a 1 m cube.
    Pit round = pit(24, 54);
    round.diameter = Length::ofBase(1000000);
    round.length = Length::ofBase(2000000);
    QVERIFY(std::abs(shellArea(round) - (2.5 * 3.14159265 + 5.0)) < 1e-6);
}

RICKYARD_TEST(TstFuelDefault)
#include "tst_fuel_default.moc"
