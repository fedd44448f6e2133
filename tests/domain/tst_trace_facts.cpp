// Figures of a probe's log. Checks: integrals of straight lines done by hand, the closed form of an
// exponential warm-up, and a log in which each fault was put by hand.
#include "models/domain/fire/trace_facts.h"
#include "tests/support/registry.h"

#include <QElapsedTimer>
#include <QTest>

#include <cmath>

using namespace rickyard::domain;

namespace {

ProbePoints points(std::initializer_list<std::pair<qint64, double>> list)
{
    ProbePoints p;
    for (const auto &[t, celsius] : list)
        p.append({t, temperatureFromCelsius(celsius)});
    return p;
}

template <class F>
ProbePoints sampled(qint64 from, qint64 to, qint64 step, F celsius)
{
    ProbePoints p;
    for (qint64 t = from; t <= to; t += step)
        p.append({t, temperatureFromCelsius(celsius(static_cast<double>(t)))});
    return p;
}

// A wood fire: two swings on top of each other, never still.
double fire(double t)
{
    return 120 + 6 * std::sin(t / 300.0) + 1.5 * std::sin(t / 41.0);
}

} // namespace

class TstTraceFacts : public QObject
{
    Q_OBJECT

private slots:
    void meanOfStraightLines()
    {
        const TraceCourse course(points({{0, 20}, {300, 120}, {600, 120}, {900, 60}}));
        // (70 + 120 + 90) / 3
        QCOMPARE(course.mean(0, 900)->base(), 93333);
        QCOMPARE(course.mean(150, 300)->base(), 95000); // half of the first line
        QCOMPARE(course.covered(0, 900).base(), 900);
        QCOMPARE(course.covered(-100, 150).base(), 150);
        QVERIFY(!course.mean(900, 1000));
        QVERIFY(!TraceCourse(ProbePoints()).mean(0, 10));
    }

    void gapsAreNotFilled()
    {
        const TraceCourse course(points({{0, 100}, {60, 100}, {4000, 200}, {4060, 200}}));
        QCOMPARE(course.covered(0, 4060).base(), 120);
        QCOMPARE(course.mean(0, 4060)->base(), 150000);
    }

    void degreeHoursAboveTheOutside()
    {
        const TraceCourse steady(sampled(0, 7200, 60, [](double) { return 120.0; }));
        QVERIFY(std::abs(*steady.degreeHours(points({{0, 20}}), 0, 7200) - 200.0) < 1e-9);
        // The outside rises from 20 to 40: 90 K on the mean.
        QVERIFY(std::abs(*steady.degreeHours(points({{0, 20}, {7200, 40}}), 0, 7200) - 180.0) <
                1e-9);
        // A bend of the outside within one piece of the trace: 100 K, then 100 to 0 K.
        const TraceCourse course(points({{0, 120}, {600, 120}}));
        QVERIFY(std::abs(*course.degreeHours(points({{0, 20}, {300, 20}, {600, 120}}), 0, 600) -
                         (100.0 * 300 + 50.0 * 300) / 3600) < 1e-9);
        // Below the outside nothing counts: a triangle of 10 K and half the time.
        const TraceCourse crossing(points({{0, 10}, {600, 30}}));
        QVERIFY(std::abs(*crossing.degreeHours(points({{0, 20}}), 0, 600) - 0.5 * 10 * 300 / 3600) <
                1e-9);
        QVERIFY(!steady.degreeHours({}, 0, 7200));
    }

    void shareInsideTheBand()
    {
        // 0 to 100 in 100 s: 30 to 50 for 20 s.
        const TraceCourse ramp(points({{0, 0}, {100, 100}}));
        QVERIFY(std::abs(*ramp.shareInBand(temperatureFromCelsius(30), temperatureFromCelsius(50),
                                           0, 100) -
                         0.2) < 1e-12);
        // A sine is within half its height for a third of the time: 2 asin(1/2) / pi.
        const TraceCourse sine(sampled(
            0, 36000, 5, [](double t) { return 120 + 10 * std::sin(t * 2 * M_PI / 3600); }));
        QVERIFY(std::abs(*sine.shareInBand(temperatureFromCelsius(115), temperatureFromCelsius(125),
                                           0, 36000) -
                         1.0 / 3.0) < 1e-4);
        const TraceCourse flat(points({{0, 100}, {100, 100}}));
        QCOMPARE(
            *flat.shareInBand(temperatureFromCelsius(100), temperatureFromCelsius(110), 0, 100),
            1.0);
        QCOMPARE(
            *flat.shareInBand(temperatureFromCelsius(101), temperatureFromCelsius(110), 0, 100),
            0.0);
    }

    // T = 15 + 135 (1 - exp(-t / 1800)) reaches 120 at t = 1800 ln(135 / 30) = 2707 s.
    void timeToTemperature()
    {
        const auto warmUp = [](double t) { return 15 + 135 * (1 - std::exp(-t / 1800)); };
        const TraceCourse course(sampled(0, 7200, 10, warmUp));
        const double expected = 1800 * std::log(135.0 / 30.0);
        const auto took = course.timeToTemperature(temperatureFromCelsius(120), 0);
        QVERIFY(took);
        QVERIFY(std::abs(took->toDouble() - expected) < 1.0);
        QVERIFY(!course.timeToTemperature(temperatureFromCelsius(151), 0));
        // A flare-up of a minute on the way does not count.
        const TraceCourse flare(sampled(
            0, 7200, 10, [&warmUp](double t) { return t > 600 && t < 660 ? 125.0 : warmUp(t); }));
        QVERIFY(std::abs(flare.timeToTemperature(temperatureFromCelsius(120), 0)->toDouble() -
                         expected) < 1.0);
        // Counted from when it was lit.
        QVERIFY(std::abs(course.timeToTemperature(temperatureFromCelsius(120), 700)->toDouble() -
                         (expected - 700)) < 1.0);
    }

    void recoveryAfterAFeed()
    {
        // 120 °C; at 1000 s it falls in 100 s to 110 and is back in 400 s.
        const TraceCourse course(
            points({{0, 120}, {500, 120}, {1000, 120}, {1100, 110}, {1500, 120}, {2000, 120}}));
        const auto recovery = course.recovery(1000, std::nullopt);
        QVERIFY(recovery);
        QCOMPARE(recovery->before.base(), 120000);
        QCOMPARE(recovery->lowest.base(), 110000);
        QCOMPARE(recovery->back->base(), 380); // 117 °C at 1100 + 280 s
        const auto fedAgain = course.recovery(1000, 1300);
        QVERIFY(fedAgain && !fedAgain->back);
        QCOMPARE(course.recovery(1600, std::nullopt)->back->base(), 0);
        QVERIFY(!course.recovery(5000, std::nullopt));
    }

    void flatLine()
    {
        const ProbePoints meat = sampled(0, 20000, 10, [](double t) { return 40 + t / 500; });
        const ProbePoints stuck = sampled(0, 20000, 10, [](double t) {
            return t >= 6000 && t <= 9000 ? 121.3 : std::round(fire(t) * 10) / 10;
        });
        const QVector<ProbeFault> faults = probeFaults(stuck, {meat}, {});
        QCOMPARE(faults.size(), 1);
        QCOMPARE(faults.first().kind, ProbeFaultKind::Flat);
        QVERIFY(std::abs(faults.first().from - 6000) <= 10);
        QVERIFY(std::abs(faults.first().to - 9000) <= 10);
        QVERIFY(faults.first().words().contains(QStringLiteral("50 min")));
        QVERIFY(probeFaults(stuck, {}, {}).isEmpty()); // nothing to tell it by
        const ProbePoints still = sampled(0, 20000, 10, [](double) { return 50.0; });
        QVERIFY(probeFaults(stuck, {still}, {}).isEmpty());
        // Meat that stalls, shown in whole degrees, is no fault in an hour and a half.
        const ProbePoints stall = sampled(0, 20000, 10, [](double t) {
            return t < 6000 ? std::round(t / 100) : t < 11400 ? 68.0 : 70.0;
        });
        QVERIFY(probeFaults(stall, {stuck}, {}).isEmpty());
        // The mean leaves it out, and nothing is drawn across it.
        const TraceCourse course(stuck, faults);
        QVERIFY(course.covered(0, 20000).base() <= 20000 - 3000);
        QVERIFY(course.covered(0, 20000).base() >= 20000 - 3040);
    }

    void detachedProbe()
    {
        const ProbePoints air = points({{0, 10}, {20000, 10}});
        const auto pulled = [](double t) {
            return t < 8000 || t > 12000 ? fire(t) : 10 + 110 * std::exp(-(t - 8000) / 45);
        };
        const ProbePoints probe = sampled(0, 20000, 5, pulled);
        const QVector<ProbeFault> faults = probeFaults(probe, {}, air);
        QCOMPARE(faults.size(), 1);
        QCOMPARE(faults.first().kind, ProbeFaultKind::Detached);
        QVERIFY(faults.first().from > 7800 && faults.first().from <= 8010);
        QCOMPARE(faults.first().to, 12000);
        const TraceCourse course(probe, faults);
        QVERIFY(std::abs(celsius(*course.mean(0, 20000)) - 120) < 1.5);
        QVERIFY(celsius(*TraceCourse(probe).mean(0, 20000)) < 105);
        // A lid open for four minutes is no detached probe, a fire that dies over hours neither.
        const ProbePoints lid =
            sampled(0, 20000, 5, [](double t) { return t < 8000 || t > 8240 ? fire(t) : 40.0; });
        QVERIFY(probeFaults(lid, {}, air).isEmpty());
        const ProbePoints dying = sampled(0, 20000, 5, [](double t) {
            return t < 5000 ? fire(t) : 10 + 110 * std::exp(-(t - 5000) / 2500);
        });
        QVERIFY(probeFaults(dying, {}, air).isEmpty());
    }

    // Sixteen hours by the second.
    void aWholeCookIsQuick()
    {
        const ProbePoints probe = sampled(0, 57600, 1, fire);
        const ProbePoints other = sampled(0, 57600, 1, [](double t) { return 5 + t / 800; });
        QElapsedTimer timer;
        timer.start();
        QVERIFY(probeFaults(probe, {other}, {}).isEmpty());
        const TraceCourse course(probe);
        QVERIFY(std::abs(celsius(*course.mean(0, 57600)) - 120) < 0.2);
        QVERIFY(timer.elapsed() < 5000); // milliseconds, in a debug build on a busy machine
    }
};

RICKYARD_TEST(TstTraceFacts)
#include "tst_trace_facts.moc"
