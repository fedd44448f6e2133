// The figures of a cook's probes over the right hours. Checks: logs of straight lines, whose
// figures are worked out by hand beside them.
#include "models/domain/fire/probe_summary.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;

namespace {

constexpr qint64 kHour = 3600;
const Temperature kTarget = temperatureFromCelsius(120);

// Lit at 0, at temperature after an hour, food off after nine, out after ten.
Cook tenHours()
{
    Cook cook;
    cook.id = 1;
    cook.lit = Instant::ofSeconds(1790000000);
    cook.atTemperature = cook.lit + Duration::ofBase(kHour);
    cook.foodOff = cook.lit + Duration::ofBase(9 * kHour);
    cook.fireOut = cook.lit + Duration::ofBase(10 * kHour);
    cook.target = kTarget;
    return cook;
}

template <class F>
ProbePoints everyTenSeconds(qint64 from, qint64 to, F celsius)
{
    ProbePoints points;
    for (qint64 t = from; t <= to; t += 10)
        points.append({t, temperatureFromCelsius(celsius(static_cast<double>(t)))});
    return points;
}

// Twenty degrees at lighting, the target after an hour, held; each notch falls 30 K at once and
// climbs back straight over its length. A ripple of a tenth of a degree, since a probe that stands
// still is a fault.
struct Notch {
    double at;
    double length;
};
double pit(double t, const QVector<Notch> &notches)
{
    if (t < kHour)
        return 20 + 100 * t / kHour;
    const double ripple = 0.1 * (1 + std::sin(t / 50));
    for (const Notch &notch : notches)
        if (t > notch.at && t < notch.at + notch.length)
            return 120 + ripple - 30 * (1 - (t - notch.at) / notch.length);
    return 120 + ripple;
}

QByteArray block(const ProbePoints &points)
{
    return encodeTrace(points).value();
}

} // namespace

class TstProbeSummary : public QObject
{
    Q_OBJECT

private slots:
    void pitAndMeat()
    {
        const QVector<Notch> notches{{7200, 600}, {14400, 1200}, {21600, 900}};
        const QVector<ProbeTrace> probes{
            {QStringLiteral("pit"),
             everyTenSeconds(0, 12 * kHour, [&](double t) { return pit(t, notches); })},
            {QStringLiteral("meat"),
             everyTenSeconds(0, 12 * kHour, [](double t) { return 5 + t / 600; })}};
        const ProbePoints outside{{0, temperatureFromCelsius(10)}};
        // 7230 is a second split of the feeding at 7200.
        const auto summaries =
            summariseProbes(probes, tenHours(), {7200, 7230, 14400, 21600}, outside);
        QCOMPARE(summaries.size(), 2);
        const ProbeSummary &fire = summaries.first();
        QVERIFY(fire.faults.isEmpty());
        QCOMPARE(fire.covered.base(), 10 * kHour); // what came after fire out is not of the cook
        // An hour at a mean of 70, nine at 120.1, less the notches' triangles of 30 K: 15 K times
        // 600 + 1200 + 900 s, which lose 5 s each to the reading before the fall.
        const double area = 70.0 * kHour + 120.1 * 9 * kHour - 15.0 * 2700;
        QVERIFY(std::abs(celsius(*fire.mean) - area / (10.0 * kHour)) < 0.02);
        QVERIFY(std::abs(*fire.degreeHours - (area - 10.0 * 10 * kHour) / kHour) < 0.2);
        QVERIFY(std::abs(fire.toTemperature->base() - kHour) <= 10);
        QVERIFY(fire.ofPit);
        // Below 120 - 8.333 for (30 - 8.333) / 30 of each notch, of the eight hours from at
        // temperature to food off.
        const double outsideBand = 2700 * (30 - kTargetBand.toDouble() / 1000) / 30;
        QVERIFY(std::abs(*fire.steady - (1 - outsideBand / (8.0 * kHour))) < 0.002);
        // Back within 3 K after nine tenths of the notch: 540, 1080 and 810 s.
        QCOMPARE(fire.recovered, 3);
        QCOMPARE(fire.notRecovered, 0);
        QVERIFY(std::abs(fire.recovery->base() - 810) <= 10);
        const ProbeSummary &meat = summaries.last();
        QVERIFY(!meat.ofPit && !meat.steady && !meat.recovery && !meat.toTemperature);
        QVERIFY(std::abs(celsius(*meat.mean) - 35) < 0.01); // 5 to 65 over the ten hours
    }

    void anEvenNumberOfFeedings()
    {
        const QVector<Notch> notches{{7200, 600}, {14400, 1200}};
        const QVector<ProbeTrace> probes{
            {QStringLiteral("pit"),
             everyTenSeconds(0, 10 * kHour, [&](double t) { return pit(t, notches); })}};
        const auto summary = summariseProbes(probes, tenHours(), {7200, 14400}, {}).first();
        QVERIFY(std::abs(summary.recovery->base() - 810) <= 10); // between 540 and 1080
        QVERIFY(!summary.degreeHours);                           // nothing is known of the air
        // A notch that the next feed cuts short has not come back.
        const auto cut = summariseProbes(probes, tenHours(), {7200, 14400, 14900}, {}).first();
        QCOMPARE(cut.notRecovered, 1);
    }

    void whatIsFeltBeforeTheTargetIsNoRecovery()
    {
        const QVector<ProbeTrace> probes{
            {QStringLiteral("pit"),
             everyTenSeconds(0, 10 * kHour, [](double t) { return pit(t, {}); })}};
        const auto summary = summariseProbes(probes, tenHours(), {600, 1200, 34000}, {}).first();
        QCOMPARE(summary.recovered + summary.notRecovered, 0); // warming up, or food off
        QCOMPARE(*summary.steady, 1.0);
    }

    void faultsAreLeftOut()
    {
        const QVector<ProbeTrace> probes{
            {QStringLiteral("pit"), everyTenSeconds(0, 10 * kHour,
                                                    [](double t) {
                                                        if (t > 4 * kHour && t < 5 * kHour)
                                                            return 12 +
                                                                   std::sin(t / 50); // came off
                                                        return pit(t, {});
                                                    })},
            {QStringLiteral("other"),
             everyTenSeconds(0, 10 * kHour, [](double t) { return 80 + 10 * std::sin(t / 700); })}};
        const auto summary = summariseProbes(probes, tenHours(), {}, {}).first();
        QCOMPARE(summary.faults.size(), 1);
        QVERIFY(summary.faults.first().kind == ProbeFaultKind::Detached);
        QCOMPARE(*summary.steady, 1.0);
        // Less the fall itself, which takes up to three minutes to be seen.
        QVERIFY(std::abs(summary.covered.base() - 9 * kHour) < 200);
        // An hour at 70 and eight at 120.
        QVERIFY(std::abs(celsius(*summary.mean) - (70 + 8 * 120) / 9.0) < 0.2);
    }

    void blocksOfOneProbeAreJoined()
    {
        Books books;
        const Cook cook = tenHours();
        books.cooks.insert(cook.id, cook);
        const auto straight = [](double t) { return 100 + t / 100; };
        Trace later;
        later.id = 1;
        later.cook = cook.id;
        later.probe = QStringLiteral("Pit");
        later.start = cook.lit + Duration::ofBase(kHour);
        later.block = block(everyTenSeconds(0, 600, straight));
        Trace earlier = later;
        earlier.id = 2;
        earlier.probe = QStringLiteral("pit");
        earlier.start = cook.lit - Duration::ofBase(60);
        Trace broken = later;
        broken.id = 3;
        broken.probe = QStringLiteral("Meat");
        broken.block = later.block.left(later.block.size() / 2);
        Trace elsewhere = later;
        elsewhere.id = 4;
        elsewhere.cook = 99;
        for (const Trace &trace : {later, earlier, broken, elsewhere})
            books.traces.insert(trace.id, trace);
        const CookTraces traces = tracesOf(books, cook);
        QCOMPARE(traces.probes.size(), 1);
        QCOMPARE(traces.probes.first().points.size(), 122);
        QCOMPARE(traces.probes.first().points.first().offset, -60);
        QCOMPARE(traces.probes.first().points.last().offset, kHour + 600);
        QCOMPARE(traces.problems.size(), 1);
        QVERIFY(traces.problems.first().startsWith(QStringLiteral("Meat: ")));
    }
};

RICKYARD_TEST(TstProbeSummary)
#include "tst_probe_summary.moc"
