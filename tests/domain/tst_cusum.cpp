// Cumulative sums against Montgomery's worked example, run lengths against his table 9.3 and an
// independent solution of the integral equation, the self-starting form against Hawkins's formula
// computed elsewhere. Sources stand in the comment lines of the files read.
#include "models/domain/statistics/cusum.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain::statistics;
using namespace rickyard::test;

class TstCusum : public QObject
{
    Q_OBJECT
private slots:
    void montgomery();
    void runLengths();
    void oneSidedDesign();
    void selfStarting();
    void scores();
    void refusals();
};

// Example 9.1: mean 10, standard deviation 1, k 0.5, h 5.
void TstCusum::montgomery()
{
    const ReferenceTable table(QStringLiteral("montgomery_9_1_cusum_ewma.csv"));
    QCOMPARE(table.rows(), 30);
    Cusum chart;
    int signal = 0;
    int run = 0;
    for (qsizetype i = 0; i < table.rows(); ++i) {
        chart.add(table.number(i, QStringLiteral("x")) - 10.0);
        QVERIFY(std::abs(chart.up.sum - table.number(i, QStringLiteral("cplus"))) < 1e-9);
        QVERIFY(std::abs(chart.up.sum - table.number(i, QStringLiteral("cplus_published"))) < 6e-3);
        QVERIFY(std::abs(chart.down.sum - table.number(i, QStringLiteral("cminus"))) < 1e-9);
        QCOMPARE(chart.up.run, static_cast<int>(table.number(i, QStringLiteral("nplus"))));
        QCOMPARE(chart.down.run, static_cast<int>(table.number(i, QStringLiteral("nminus"))));
        if (signal == 0 && chart.up.sum > 5.0) {
            signal = static_cast<int>(i) + 1;
            run = chart.up.run;
            // The new mean: 10 + k + C / N.
            QVERIFY(std::abs(10.0 + kCusumSlack + chart.up.sum / run - 11.25) < 6e-3);
        }
    }
    QCOMPARE(signal, 29);
    QCOMPARE(run, 7);
}

void TstCusum::runLengths()
{
    const ReferenceTable table(QStringLiteral("arl_cusum.csv"));
    QVERIFY(table.rows() >= 20);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const auto length = averageRunLengthTwoSided(
            table.number(i, QStringLiteral("h")), table.number(i, QStringLiteral("shift_sigma")));
        QVERIFY(length.ok());
        const double computed = table.number(i, QStringLiteral("arl_computed"));
        const double published = table.number(i, QStringLiteral("arl_published_montgomery"));
        QVERIFY2(std::abs(length.value() - computed) < 2e-4,
                 qPrintable(QString::number(length.value(), 'g', 10)));
        QVERIFY(std::abs(length.value() / published - 1.0) < 0.005); // three digits are printed
    }
}

void TstCusum::oneSidedDesign()
{
    const ReferenceTable table(QStringLiteral("cusum_design_onesided.csv"));
    QVERIFY(table.rows() >= 20);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const double k = table.number(i, QStringLiteral("k"));
        const double wanted = table.number(i, QStringLiteral("arl0"));
        const auto h = decisionInterval(wanted, k);
        QVERIFY(h.ok());
        QVERIFY2(std::abs(h.value() - table.number(i, QStringLiteral("h"))) < 1e-4,
                 qPrintable(QString::number(h.value(), 'g', 10)));
        // There and back.
        QVERIFY(std::abs(averageRunLength(h.value(), 0.0, k).value() / wanted - 1.0) < 1e-6);
        for (int shift = 1; shift <= 2; ++shift) {
            const auto length = averageRunLength(h.value(), shift, k);
            const double expected = table.number(i, QStringLiteral("arl_shift%1").arg(shift));
            QVERIFY(length.ok() && std::abs(length.value() - expected) < 1e-3);
        }
    }
}

void TstCusum::selfStarting()
{
    const ReferenceTable data(QStringLiteral("montgomery_9_1_cusum_ewma.csv"));
    const ReferenceTable expected(QStringLiteral("selfstart_cusum_montgomery.csv"));
    QCOMPARE(expected.rows(), 28);
    SelfStartingScores scores;
    Cusum chart;
    for (qsizetype i = 0; i < data.rows(); ++i) {
        const auto score = scores.add(data.number(i, QStringLiteral("x")));
        QCOMPARE(score.has_value(), i >= 2);
        if (!score)
            continue;
        chart.add(*score);
        const qsizetype r = i - 2;
        QVERIFY(std::abs(scores.standardised() - expected.number(r, QStringLiteral("T"))) < 1e-9);
        QVERIFY(std::abs(*score - expected.number(r, QStringLiteral("U"))) < 1e-9);
        QVERIFY(std::abs(chart.up.sum - expected.number(r, QStringLiteral("Splus"))) < 2e-9);
    }
    QVERIFY(std::abs(chart.up.sum - 2.3012049875846) < 1e-11);
}

void TstCusum::scores()
{
    // A t of many degrees of freedom is a normal; symmetric; the far tail stays finite and ordered.
    QVERIFY(std::abs(normalScore(1.7, 1e7) - 1.7) < 1e-6);
    QCOMPARE(normalScore(0.0, 3.0), 0.0);
    QCOMPARE(normalScore(-2.2, 5.0), -normalScore(2.2, 5.0));
    QVERIFY(normalScore(4.0, 3.0) < 4.0); // heavy tails make a value less surprising
    QVERIFY(normalScore(60.0, 200.0) > normalScore(40.0, 200.0));
    QVERIFY(std::isfinite(normalScore(1e9, 500.0)));
    // R 4.2.2: qnorm(pt(2.5, 7)) from the t table's 0.02049 upper tail.
    QVERIFY(std::abs(normalScore(2.5, 7.0) - 2.0440) < 2e-3);
}

void TstCusum::refusals()
{
    QCOMPARE(averageRunLength(0.0).refusal().reason, Reason::OutOfRange);
    QCOMPARE(averageRunLength(4.0, std::nan("")).refusal().reason, Reason::OutOfRange);
    QCOMPARE(decisionInterval(1.0).refusal().reason, Reason::OutOfRange);
    QVERIFY(std::isnan(normalScore(std::nan(""), 4.0)));
    SelfStartingScores flat;
    for (int i = 0; i < 4; ++i)
        QVERIFY(!flat.add(3.0).has_value()); // no scatter, no score
}

RICKYARD_TEST(TstCusum)
#include "tst_cusum.moc"
