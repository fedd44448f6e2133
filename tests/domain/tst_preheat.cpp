#include "models/domain/fire/preheat.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <random>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

const Instant kNow = utc(2026, 6, 1, 12);

void addPreheat(FireYard &yard, RecordId pit, int dayOfYear, double minutes, double outside,
                StartKind start = StartKind::Cold)
{
    Cook &cook =
        yard.addCook(pit, utc(2025, 1, 1, 6) + Duration::ofBase(dayOfYear * 86400LL), 10, outside);
    cook.start = start;
    cook.atTemperature = cook.lit + Duration::rounded(60 * minutes);
}

double minutesOf(Duration d)
{
    return hours(d) * 60;
}

} // namespace

class TstPreheat : public QObject
{
    Q_OBJECT

private slots:
    void aNewPitTakesTheUsualHour();
    void itLearnsFromItsOwn();
    void coldAirTakesLonger();
    void warmSteelIsItsOwn();
    void nineInTenAreReady();
    void whatCannotBeUsedIsLeftOut();
};

void TstPreheat::aNewPitTakesTheUsualHour()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
    const Preheat p = preheat(yard.books, WeatherSeries(yard.books), pit, StartKind::Cold,
                              temperatureFromCelsius(120), temperatureFromCelsius(10), kNow);
    QCOMPARE(p.learnedFrom, 0);
    QVERIFY(std::abs(minutesOf(p.middle) - 60) < 0.1);
    QVERIFY(p.early < p.middle && p.middle < p.late);
    QVERIFY(minutesOf(p.late) > 90); // knows little
}

// Thirty preheats of 90 minutes for 110 K: the prior of two weighs little.
void TstPreheat::itLearnsFromItsOwn()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
    for (int i = 0; i < 30; ++i)
        addPreheat(yard, pit, i * 7, 90, 10);
    const Preheat p = preheat(yard.books, WeatherSeries(yard.books), pit, StartKind::Cold,
                              temperatureFromCelsius(120), temperatureFromCelsius(10), kNow);
    QCOMPARE(p.learnedFrom, 30);
    // exp((2 ln 60 + 30 ln 90) / 32)
    QVERIFY(std::abs(minutesOf(p.middle) -
                     std::exp((2 * std::log(60.0) + 30 * std::log(90.0)) / 32)) < 0.1);
    QVERIFY(minutesOf(p.late) < 120);
}

void TstPreheat::coldAirTakesLonger()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
    for (int i = 0; i < 10; ++i)
        addPreheat(yard, pit, i * 7, 60, 10);
    const auto at = [&](double outside) {
        return minutesOf(preheat(yard.books, WeatherSeries(yard.books), pit, StartKind::Cold,
                                 temperatureFromCelsius(120), temperatureFromCelsius(outside), kNow)
                             .middle);
    };
    QVERIFY(std::abs(at(-10) / at(10) - 130.0 / 110) < 1e-3);
}

void TstPreheat::warmSteelIsItsOwn()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
    for (int i = 0; i < 12; ++i) {
        addPreheat(yard, pit, i * 7, 80, 10);
        addPreheat(yard, pit, i * 7 + 2, 20, 10, StartKind::Warm);
    }
    const auto of = [&](StartKind start) {
        return preheat(yard.books, WeatherSeries(yard.books), pit, start,
                       temperatureFromCelsius(120), temperatureFromCelsius(10), kNow);
    };
    QCOMPARE(of(StartKind::Warm).learnedFrom, 12);
    QVERIFY(minutesOf(of(StartKind::Warm).middle) < 0.4 * minutesOf(of(StartKind::Cold).middle));
}

// Pits and preheats drawn as the model believes: nine of ten lit by its word are ready in time.
void TstPreheat::nineInTenAreReady()
{
    std::mt19937_64 random(3);
    std::normal_distribution<double> normal(0, 1);
    int ready = 0;
    constexpr int kPits = 400;
    for (int i = 0; i < kPits; ++i) {
        FireYard yard;
        const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
        const double own = std::log(60.0 / 110) + 0.25 * normal(random);
        for (int k = 0; k < 6; ++k)
            addPreheat(yard, pit, k * 9, 110 * std::exp(own + 0.25 * normal(random)), 10);
        const Preheat p = preheat(yard.books, WeatherSeries(yard.books), pit, StartKind::Cold,
                                  temperatureFromCelsius(120), temperatureFromCelsius(10), kNow);
        const Instant goal = utc(2026, 6, 2, 6);
        const double takes = 110 * std::exp(own + 0.25 * normal(random));
        ready += lightBy(p, goal) + Duration::rounded(60 * takes) <= goal ? 1 : 0;
    }
    const double share = static_cast<double>(ready) / kPits;
    QVERIFY2(share > 0.85 && share < 0.97, qPrintable(QString::number(share)));
}

void TstPreheat::whatCannotBeUsedIsLeftOut()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
    addPreheat(yard, pit, 1, 60, 10);
    yard.books.cooks.last().target.reset();
    addPreheat(yard, pit, 2, 60, 10);
    yard.books.cooks.last().outside.reset(); // and no weather
    addPreheat(yard, pit, 3, 60, 10);
    yard.books.cooks.last().atTemperature.reset();
    addPreheat(yard, pit, 4, 500, 10); // forgotten until the food was on
    addPreheat(yard, pit, 5, 60, 10);
    const Preheat p = preheat(yard.books, WeatherSeries(yard.books), pit, StartKind::Cold,
                              temperatureFromCelsius(120), temperatureFromCelsius(10), kNow);
    QCOMPARE(p.learnedFrom, 1);
}

RICKYARD_TEST(TstPreheat)
#include "tst_preheat.moc"
