#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/trace_codec.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kLater = utc(2026, 12, 1, 0);

CookFuel read(const Books &books, RecordId cook, Instant now = kLater)
{
    return cookSummary(books, WeatherSeries(books), books.cooks.value(cook), now);
}

void weather(Books &books, Instant time, double degrees, double wind = 2)
{
    Weather w;
    w.id = static_cast<RecordId>(books.weather.size()) + 1;
    w.time = time;
    w.temperature = temperatureFromCelsius(degrees);
    w.wind = Speed::rounded(wind * 1000);
    books.weather.insert(w.id, w);
}

void typed(Books &books, RecordId cook, Instant time, double degrees, const QString &probe = {})
{
    CookTemperature t;
    t.id = static_cast<RecordId>(books.temperatures.size()) + 1;
    t.cook = cook;
    t.time = time;
    t.probe = probe;
    t.temperature = temperatureFromCelsius(degrees);
    books.temperatures.insert(t.id, t);
}

void trace(Books &books, RecordId cook, const QString &probe, Instant start,
           const QVector<TracePoint> &points)
{
    Trace t;
    t.id = static_cast<RecordId>(books.traces.size()) + 1;
    t.cook = cook;
    t.probe = probe;
    t.start = start;
    t.points = static_cast<int>(points.size());
    t.block = encodeTrace(points).value();
    books.traces.insert(t.id, t);
}

QVector<TracePoint> level(double degrees, double hoursLong)
{
    QVector<TracePoint> points;
    for (qint64 s = 0; s <= std::llround(hoursLong * 3600); s += 600)
        points.append({s, temperatureFromCelsius(degrees)});
    return points;
}

} // namespace

class TstCookSummary : public QObject
{
    Q_OBJECT

private slots:
    void degreeHoursByHand();
    void woodByHand();
    void grateBeforeMeatAndTyped();
    void damagedTraceIsSaid();
    void targetIsAnAssumption();
    void outsideTypedElseMissing();
    void weatherGapsAreSaid();
    void missingIsNamed();
    void burningCook();
    void endsBeforeItStarts();
};

// Pit 20 °C at 10:00, 120 °C at 12:00 and 14:00: means 70 and 120, 95 over the four hours.
// Outside 5 °C until 11:30 and 15 °C after it: (1.5 * 5 + 2.5 * 15) / 4 = 11.25.
// (95 - 11.25) * 4 h = 335 kelvin-hours.
void TstCookSummary::degreeHoursByHand()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const RecordId cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 30).id;
    yard.burn(yard.books.cooks[cook], 1e8);
    typed(yard.books, cook, utc(2026, 3, 1, 14), 120);
    typed(yard.books, cook, utc(2026, 3, 1, 10), 20);
    typed(yard.books, cook, utc(2026, 3, 1, 12), 120);
    for (int hour = 10; hour <= 14; ++hour)
        weather(yard.books, utc(2026, 3, 1, hour), hour < 12 ? 5 : 15, hour < 12 ? 1 : 3);
    const CookFuel fuel = read(yard.books, cook);
    QCOMPARE(fuel.meanPit->base(), 95000);
    QCOMPARE(fuel.meanOutside->base(), 11250);
    QVERIFY(std::abs(*fuel.degreeHours - 335.0) < 1e-9);
    QCOMPARE(fuel.meanWind->base(), 2250);
    QCOMPARE(fuel.length.base(), 4 * 3600);
    QVERIFY(fuel.complete());
    QVERIFY2(fuel.assumptions.isEmpty(), qPrintable(fuel.assumptions.join(QLatin1Char('\n'))));
}

// One seasoned pound is 1 lb of default hardwood at 20 % dry basis: 1/1.2 lb oven-dry. 12 of them
// and as much oven-dry wood again at 50 %, whose water costs heat.
void TstCookSummary::woodByHand()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const Cook cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 30);
    Movement &dry = yard.burn(cook, 0);
    dry.dryMass = -massFromPounds(10);
    QVERIFY(std::abs(seasonedPounds(read(yard.books, cook.id).netHeat) - 12.0) < 0.001);
    Movement &wet = yard.burn(cook, 0, Moisture::ofBase(50000));
    wet.dryMass = -massFromPounds(10);
    const CookFuel fuel = read(yard.books, cook.id);
    QCOMPARE(fuel.dryMass.base(), 2 * massFromPounds(10).base());
    QCOMPARE(fuel.meanMoisture->base(), 35000);
    // 0.3 kg more water a kilogram dry; boiling and heating it takes 2.443 MJ a kilogram at 25 °C.
    const double lost = 0.3 * 2.443e6 * kilograms(massFromPounds(10));
    const double expected = 24.0 * kJoulesPerSeasonedPound - lost;
    QVERIFY(std::abs(fuel.netHeat.toDouble() - expected) < 0.002 * expected);
    QCOMPARE(fuel.lots, QVector<RecordId>{1});
}

void TstCookSummary::grateBeforeMeatAndTyped()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const Cook cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 20);
    typed(yard.books, cook.id, utc(2026, 3, 1, 11), 99);
    typed(yard.books, cook.id, utc(2026, 3, 1, 13), 99);
    trace(yard.books, cook.id, QStringLiteral("Meat 1"), cook.lit, level(60, 4));
    QCOMPARE(read(yard.books, cook.id).meanPit->base(), 99000);
    trace(yard.books, cook.id, QStringLiteral("Pit left"), cook.lit, level(110, 4));
    QCOMPARE(read(yard.books, cook.id).meanPit->base(), 110000);
    trace(yard.books, cook.id, QStringLiteral("GRATE"), cook.lit, level(107, 4));
    QCOMPARE(read(yard.books, cook.id).meanPit->base(), 107000);
}

void TstCookSummary::damagedTraceIsSaid()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const Cook cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 20);
    trace(yard.books, cook.id, QStringLiteral("grate"), cook.lit, level(107, 4));
    yard.books.traces.first().block.chop(1);
    const CookFuel fuel = read(yard.books, cook.id);
    QCOMPARE(fuel.meanPit->base(), 120000); // the target
    QVERIFY(fuel.assumptions.first().contains(QStringLiteral("grate")));
}

void TstCookSummary::targetIsAnAssumption()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 20);
    QVERIFY(
        read(yard.books, cook.id).assumptions.join(QString()).contains(QStringLiteral("target")));
    QVERIFY(std::abs(*read(yard.books, cook.id).degreeHours - 400.0) < 1e-9);
    // A log of the first half hour reaches two of the four hours: too little to be preferred.
    trace(yard.books, cook.id, QStringLiteral("grate"), cook.lit, level(80, 0.5));
    QCOMPARE(read(yard.books, cook.id).meanPit->base(), 120000);
    cook.target.reset();
    QCOMPARE(read(yard.books, cook.id).meanPit->base(), 80000);
}

void TstCookSummary::outsideTypedElseMissing()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 7);
    yard.burn(cook, 1e8);
    QCOMPARE(read(yard.books, cook.id).meanOutside->base(), 7000);
    QVERIFY(read(yard.books, cook.id).complete());
    cook.outside.reset();
    const CookFuel fuel = read(yard.books, cook.id);
    QVERIFY(!fuel.meanOutside && !fuel.degreeHours && !fuel.complete());
    QVERIFY(fuel.missing.join(QString()).contains(QStringLiteral("outside")));
}

void TstCookSummary::weatherGapsAreSaid()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const Cook cook = yard.addCook(pit, utc(2026, 3, 1, 10), 6, 7);
    weather(yard.books, utc(2026, 3, 1, 10), 1);
    weather(yard.books, utc(2026, 3, 1, 12), 1);
    QCOMPARE(read(yard.books, cook.id).meanOutside->base(), 7000); // 3.5 of 6 hours: too little
    weather(yard.books, utc(2026, 3, 1, 13), 1);
    const CookFuel fuel = read(yard.books, cook.id); // to 14:30: 4.5 of 6 hours
    QCOMPARE(fuel.meanOutside->base(), 1000);
    QVERIFY(fuel.assumptions.join(QString()).contains(QStringLiteral("75 %")));
}

void TstCookSummary::missingIsNamed()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 7);
    cook.target.reset();
    const CookFuel fuel = read(yard.books, cook.id);
    QVERIFY(!fuel.complete());
    const QString all = fuel.missing.join(QString());
    QVERIFY(all.contains(QStringLiteral("No wood")));
    QVERIFY(all.contains(QStringLiteral("pit's temperature")));
    Movement &m = yard.burn(yard.books.cooks[cook.id], 1e8);
    m.moisture.reset();
    m.assumed = true;
    const CookFuel assumed = read(yard.books, cook.id);
    QVERIFY(!assumed.meanMoisture.has_value());
    QVERIFY(assumed.assumptions.join(QString()).contains(QStringLiteral("20 %")));
    QVERIFY(assumed.assumptions.join(QString()).contains(QStringLiteral("1 of its feeds")));
}

void TstCookSummary::burningCook()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const Cook cook = yard.addCook(pit, utc(2026, 3, 1, 10), 4, 20);
    yard.burn(cook, 1e8);
    yard.burn(cook, 1e8).time = utc(2026, 3, 1, 13); // not yet
    const CookFuel fuel = read(yard.books, cook.id, utc(2026, 3, 1, 12));
    QVERIFY(!fuel.finished && !fuel.complete());
    QCOMPARE(fuel.length.base(), 2 * 3600);
    QVERIFY(std::abs(*fuel.degreeHours - 200.0) < 1e-9);
    QVERIFY(std::abs(fuel.netHeat.toDouble() / 1e8 - 1.0) < 1e-6);
}

void TstCookSummary::endsBeforeItStarts()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    const Cook cook = yard.addCook(pit, utc(2026, 3, 1, 10), -4, 20);
    yard.burn(cook, 1e8);
    const CookFuel fuel = read(yard.books, cook.id);
    QVERIFY(!fuel.complete() && !fuel.degreeHours);
    QVERIFY(fuel.missing.first().contains(QStringLiteral("before it is lit")));
}

RICKYARD_TEST(TstCookSummary)
#include "tst_cook_summary.moc"
