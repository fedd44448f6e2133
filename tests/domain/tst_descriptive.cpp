// Means, scatter, quantiles and intervals against NIST and R; sources beside each check.
#include "models/domain/statistics/descriptive.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <numeric>

using namespace rickyard::domain::statistics;
using rickyard::test::correctDigits;
using rickyard::test::ReferenceTable;

namespace
{

using Values = std::vector<double>;

template <class T>
int reasonOf(const Answer<T> &answer)
{
    return answer ? -1 : static_cast<int>(answer.refusal().reason);
}

} // namespace

class TstDescriptive : public QObject
{
    Q_OBJECT
private slots:
    void sumKeepsSmallTerms();
    void nistNumericalAccuracy();
    void nistConfidenceLimits();
    void quantilesOfType7();
    void quantilesOfCars();
    void sampleSizesMatchTheTQuantile();
    void sampleSizeIsTheSmallest();
    void refusals();
};

void TstDescriptive::sumKeepsSmallTerms()
{
    // Neumaier's own example (1974, from memory): plain and Kahan summation both give 0.
    QCOMPARE(compensatedSum(Values{1.0, 1e100, 1.0, -1e100}), 2.0);
    // A tenth, ten million times: a plain sum is wrong in the tenth digit.
    const Values tenths(10'000'000, 0.1);
    const double plain = std::accumulate(tenths.begin(), tenths.end(), 0.0);
    QVERIFY(std::abs(plain - 1e6) > 1e-6);
    QCOMPARE(compensatedSum(tenths), 1e6);
    QCOMPARE(compensatedSum(Values{}), 0.0);
}

// NIST StRD univariate sets NumAcc1, NumAcc3 and NumAcc4, generated from their definition: one
// value, then 500 pairs a tenth below and above it (NumAcc1: the three numbers below). Certified:
// mean the first value, standard deviation 1 and 0.1. (Definition of NumAcc4: Simon and Lesage
// 1989, as NIST quotes it; of NumAcc1 and NumAcc3: from memory.)
void TstDescriptive::nistNumericalAccuracy()
{
    const Values first{10000001, 10000003, 10000002};
    QCOMPARE(mean(first).value(), 10000002.0);
    QCOMPARE(sampleSd(first).value(), 1.0);
    const auto pairs = [](double centre, double low, double high) {
        Values values{centre};
        for (int i = 0; i < 500; ++i)
            values.insert(values.end(), {low, high});
        return values;
    };
    const Values third = pairs(1000000.2, 1000000.1, 1000000.3);
    QVERIFY(correctDigits(mean(third).value(), 1000000.2) >= 15.0);
    QVERIFY(correctDigits(sampleSd(third).value(), 0.1) >= 9.0);
    const Values fourth = pairs(10000000.2, 10000000.1, 10000000.3);
    QVERIFY(correctDigits(mean(fourth).value(), 10000000.2) >= 15.0);
    // The doubles nearest these decimals hold no more than 8 digits of their scatter.
    QVERIFY(correctDigits(sampleSd(fourth).value(), 0.1) >= 8.0);
}

// NIST/SEMATECH e-Handbook 1.3.5.2: 195 calibration factors, limits as printed there.
void TstDescriptive::nistConfidenceLimits()
{
    const Values values = ReferenceTable(QStringLiteral("zarr13.csv")).column(QStringLiteral("y"));
    QCOMPARE(values.size(), std::size_t{195});
    // The handbook cuts the mean, 9.26146076, rather than rounding it.
    QVERIFY(std::abs(mean(values).value() - 9.261460) < 1e-6);
    QVERIFY(std::abs(sampleSd(values).value() - 0.022789) < 0.5e-6);
    const auto limits = meanInterval(values, 0.95);
    QVERIFY(limits.ok());
    QVERIFY2(std::abs(limits->lower - 9.258242) < 1e-6,
             qPrintable(QString::number(limits->lower, 'g', 12)));
    QVERIFY2(std::abs(limits->upper - 9.264679) < 1e-6,
             qPrintable(QString::number(limits->upper, 'g', 12)));
    QCOMPARE(limits->level, 0.95);
    const auto same = meanIntervalFromSummary(195, limits->centre, sampleSd(values).value(), 0.95);
    QCOMPARE(same->lower, limits->lower);
}

// By the definition of type 7 the p-quantile of 1..n is 1 + (n - 1) p; types 4 to 6, 8 and 9
// differ.
void TstDescriptive::quantilesOfType7()
{
    Values values;
    for (int n = 1; n <= 12; ++n) {
        values.insert(n % 2 == 0 ? values.begin() : values.end(),
                      static_cast<double>(n)); // unsorted
        for (const double p : {0.0, 0.05, 0.25, 0.5, 0.8, 1.0})
            QVERIFY(std::abs(quantileType7(values, p).value() - (1.0 + (n - 1) * p)) < 1e-14 * n);
        QCOMPARE(median(values).value(), (1.0 + n) / 2.0);
    }
    QCOMPARE(median(Values{5, 1, 100}).value(), 5.0);
    QCOMPARE(median(Values{5, 1, 100, 6}).value(), 5.5);
    // No overflow between the widest doubles.
    QCOMPARE(median(Values{-1.7e308, 1.7e308}).value(), 0.0);
}

// R's summary(cars): 4, 12, 15, 15.4, 19, 25 and 2, 26, 36, 42.98, 56, 120 (from memory; the means
// also stand in cars_ols.csv, as the point through which the line passes).
void TstDescriptive::quantilesOfCars()
{
    const ReferenceTable cars(QStringLiteral("cars.csv"));
    const Values speed = cars.column(QStringLiteral("speed"));
    const Values dist = cars.column(QStringLiteral("dist"));
    QCOMPARE(speed.size(), std::size_t{50});
    const double p[] = {0.0, 0.25, 0.5, 0.75, 1.0};
    const double speeds[] = {4, 12, 15, 19, 25};
    const double dists[] = {2, 26, 36, 56, 120};
    for (int i = 0; i < 5; ++i) {
        QCOMPARE(quantileType7(speed, p[i]).value(), speeds[i]);
        QCOMPARE(quantileType7(dist, p[i]).value(), dists[i]);
    }
    QCOMPARE(mean(speed).value(), 15.4);
    QCOMPARE(mean(dist).value(), 42.98);
}

// With n values the half-width is t / sqrt n standard deviations, so a margin just above it asks
// for n and one just below for n + 1. t quantiles: R, quantiles.csv.
void TstDescriptive::sampleSizesMatchTheTQuantile()
{
    const ReferenceTable r(QStringLiteral("quantiles.csv"));
    int checked = 0;
    for (qsizetype i = 0; i < r.rows(); ++i) {
        const double p = r.number(i, QStringLiteral("p_or_x"));
        if (r.text(i, QStringLiteral("function")) != QLatin1String("qt") || p < 0.9)
            continue;
        const int n = static_cast<int>(r.number(i, QStringLiteral("df1"))) + 1;
        const double half = 3.0 * r.number(i, QStringLiteral("value")) / std::sqrt(n);
        QCOMPARE(sampleSizeForMean(3.0, half * (1 + 1e-9), 2 * p - 1).value(), n);
        QCOMPARE(sampleSizeForMean(3.0, half * (1 - 1e-9), 2 * p - 1).value(), n + 1);
        ++checked;
    }
    QVERIFY(checked > 50);
    // For a large sample, the textbook (1.96 sd / e)^2 and a little: 384.15 for sd 10, e 1.
    const int large = sampleSizeForMean(10.0, 1.0).value();
    QVERIFY(large >= 385 && large <= 388);
}

void TstDescriptive::sampleSizeIsTheSmallest()
{
    for (const double sd : {0.5, 2.0, 4.3, 9.0}) {
        const int n = sampleSizeForMean(sd, 2.0, 0.95).value();
        const auto reach = [sd](int count) {
            const auto i = meanIntervalFromSummary(count, 0.0, sd, 0.95);
            return i->upper;
        };
        QVERIFY(reach(n) <= 2.0);
        if (n > 2)
            QVERIFY(reach(n - 1) > 2.0);
    }
    QCOMPARE(sampleSizeForMean(0.0, 1.0).value(), 2); // no scatter: the fewest that can show it
}

void TstDescriptive::refusals()
{
    const int few = static_cast<int>(Reason::TooFewRows);
    const int range = static_cast<int>(Reason::OutOfRange);
    const int finite = static_cast<int>(Reason::NotFinite);
    const int none = static_cast<int>(Reason::NoAnswer);
    const Values gap{1.0, std::nan(""), 3.0};
    QCOMPARE(reasonOf(mean(Values{})), few);
    QCOMPARE(reasonOf(median(Values{})), few);
    QCOMPARE(reasonOf(sampleSd(Values{1.0})), few);
    QCOMPARE(reasonOf(meanInterval(Values{1.0}, 0.95)), few);
    QCOMPARE(reasonOf(mean(gap)), finite);
    QCOMPARE(reasonOf(sampleSd(gap)), finite);
    QCOMPARE(reasonOf(median(gap)), finite);
    QCOMPARE(reasonOf(meanInterval(Values{1.0, HUGE_VAL}, 0.95)), finite);
    QCOMPARE(reasonOf(quantileType7(Values{1.0}, 1.01)), range);
    QCOMPARE(reasonOf(quantileType7(Values{1.0}, std::nan(""))), range);
    QCOMPARE(reasonOf(meanInterval(Values{1.0, 2.0}, 1.0)), range);
    QCOMPARE(reasonOf(meanIntervalFromSummary(5, 1.0, -1.0, 0.95)), range);
    QCOMPARE(reasonOf(sampleSizeForMean(1.0, 0.0)), range);
    QCOMPARE(reasonOf(sampleSizeForMean(-1.0, 1.0)), range);
    QCOMPARE(reasonOf(sampleSizeForMean(1.0, 1.0, 0.0)), range);
    QCOMPARE(reasonOf(sampleSizeForMean(1.0, 1e-6)), none);
    QCOMPARE(reasonOf(mean(Values{1.7e308, 1.7e308})), none);
}

RICKYARD_TEST(TstDescriptive)
#include "tst_descriptive.moc"
