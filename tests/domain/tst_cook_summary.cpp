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
    void balanceFollowsTheHours();
    void rainIsShared();
    void poorlyKnownCooksAreDoubted();
    void detachedProbeIsLeftOut();
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
    QCOMPARE(QVector<RecordId>(fuel.lots.keys()), QVector<RecordId>{1});
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

// In steady air the balance over the hours is that of one stretch; when the air changes by night,
// that of the stretches (heat_balance.h, whose terms are checked against textbook values).
void TstCookSummary::balanceFollowsTheHours()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 18), 10, 10);
    cook.wind = Speed::ofBase(3000);
    cook.foodMass = massFromKilograms(20);
    HeatCook one;
    one.course = {{10 * 3600.0, 120.0, 10.0, 3.0, 0.0}};
    one.target = 120;
    one.outsideAtStart = 10;
    one.foodMass = 20;
    const HeatShape shape = heatShape(yard.books.pits.value(pit));
    HeatColumns expected = heatColumns(shape, one);
    HeatColumns found = read(yard.books, cook.id).columns;
    for (std::size_t i = 0; i < found.size(); ++i)
        QVERIFY2(std::abs(found[i] - expected[i]) <= 1e-9 * std::max(1.0, expected[i]),
                 qPrintable(QString::number(i)));
    for (int h = 0; h <= 10; ++h)
        weather(yard.books, utc(2026, 3, 1, 18) + durationFromHours(h), h < 5 ? 15 : 5,
                h < 5 ? 2 : 6);
    found = read(yard.books, cook.id).columns;
    one.course = {{5 * 3600.0, 120.0, 15.0, 2.0, 0.0}, {5 * 3600.0, 120.0, 5.0, 6.0, 0.0}};
    one.outsideAtStart = 15;
    expected = heatColumns(shape, one);
    // The middle of an hour takes the record nearest to it: half an hour may fall to either side.
    QVERIFY(std::abs(found[ShellColumn] / expected[ShellColumn] - 1.0) < 0.01);
    QVERIFY(std::abs(found[WindColumn] / expected[WindColumn] - 1.0) < 0.06);
    QVERIFY(std::abs(found[LightingColumn] / expected[LightingColumn] - 1.0) < 1e-9);
}

void TstCookSummary::rainIsShared()
{
    Books books;
    for (int h = 1; h <= 3; ++h) {
        Weather w;
        w.id = h;
        w.time = utc(2026, 3, 1, 12 + h);
        w.temperature = temperatureFromCelsius(10);
        w.rain = Length::ofBase(h * 1000); // 1, 2, 3 mm in the hour before
        books.weather.insert(h, w);
    }
    const WeatherSeries series(books);
    QCOMPARE(series.rainOver(utc(2026, 3, 1, 12), utc(2026, 3, 1, 15)), 6.0);
    QCOMPARE(series.rainOver(utc(2026, 3, 1, 13, 30), utc(2026, 3, 1, 14, 30)), 2.5);
    QCOMPARE(series.rainOver(utc(2026, 3, 1, 15), utc(2026, 3, 1, 20)), 0.0);
}

void TstCookSummary::poorlyKnownCooksAreDoubted()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 18), 10, 10);
    yard.burn(cook, 1e9);
    const double target = read(yard.books, cook.id).doubt;
    for (int h = 0; h <= 10; ++h) {
        typed(yard.books, cook.id, cook.lit + durationFromHours(h), 120);
        weather(yard.books, cook.lit + durationFromHours(h), 10);
    }
    const double measured = read(yard.books, cook.id).doubt;
    QVERIFY(measured < 1e-6 && target > 0.01);
    yard.books.movements[1].assumed = true;
    QVERIFY(read(yard.books, cook.id).doubt > 0.01);
    yard.books.movements[1].assumed = false;
    for (RecordId id = 1; id <= 4; ++id) {
        Feed feed;
        feed.id = id;
        feed.cook = cook.id;
        feed.lot = 1;
        feed.time = cook.lit + Duration::ofBase(id == 4 ? 3 * 3600 + 2 : id * 3600);
        yard.books.feeds.insert(id, feed);
    }
    const CookFuel twins = read(yard.books, cook.id);
    QVERIFY(twins.doubt > measured);
    QVERIFY(twins.assumptions.join(QLatin1Char(' ')).contains(QStringLiteral("counted twice")));
}

// A probe that falls to the air while another goes on is off the grate: the pit did not go out.
void TstCookSummary::detachedProbeIsLeftOut()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 18), 8, 10);
    QVector<TracePoint> grate;
    QVector<TracePoint> meat;
    for (qint64 s = 0; s <= 8 * 3600; s += 60) {
        const bool off = s > 3 * 3600 && s < 4 * 3600;
        grate.append(
            {s, temperatureFromCelsius(off ? 12.0 : 120.0 + static_cast<double>(s / 60 % 3))});
        meat.append({s, temperatureFromCelsius(20 + static_cast<double>(s) / 600.0)});
    }
    trace(yard.books, cook.id, QStringLiteral("Grate"), cook.lit, grate);
    trace(yard.books, cook.id, QStringLiteral("Meat"), cook.lit, meat);
    const CookFuel fuel = read(yard.books, cook.id);
    QVERIFY2(std::abs(celsius(*fuel.meanPit) - 121) < 1.5,
             qPrintable(QString::number(celsius(*fuel.meanPit))));
    QVERIFY(fuel.assumptions.join(QLatin1Char(' ')).contains(QStringLiteral("left out")));
}

RICKYARD_TEST(TstCookSummary)
#include "tst_cook_summary.moc"
