// Quantiles and chances against R 4.2.2 (quantiles.csv) and against closed forms.
#include "models/domain/statistics/distributions.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <numbers>

using namespace rickyard::domain::statistics;
using rickyard::test::correctDigits;
using rickyard::test::ReferenceTable;

namespace
{

Distribution distributionOf(const QString &function, double df1, double df2)
{
    const QString name = function.mid(1);
    if (name == QLatin1String("t"))
        return StudentT{df1};
    if (name == QLatin1String("chisq"))
        return ChiSquare{df1};
    if (name == QLatin1String("f"))
        return FisherF{df1, df2};
    return Normal{};
}

int reasonOf(const Answer<double> &answer)
{
    return answer ? -1 : static_cast<int>(answer.refusal().reason);
}

} // namespace

class TstDistributions : public QObject
{
    Q_OBJECT
private slots:
    void agreesWithR();
    void closedForms();
    void tailsKeepTheirDigits();
    void quantileUndoesChance();
    void endsOfTheLine();
    void refusesLawlessArguments();
};

void TstDistributions::agreesWithR()
{
    const ReferenceTable r(QStringLiteral("quantiles.csv"));
    QCOMPARE(r.rows(), 211);
    double worst = 15.0;
    for (qsizetype i = 0; i < r.rows(); ++i) {
        const QString function = r.text(i, QStringLiteral("function"));
        const double at = r.number(i, QStringLiteral("p_or_x"));
        const Distribution d = distributionOf(function, r.number(i, QStringLiteral("df1")),
                                              r.number(i, QStringLiteral("df2")));
        const auto answer = function.startsWith(QLatin1Char('q')) ? quantile(d, at) : cdf(d, at);
        const QString where = QStringLiteral("row %1: %2 at %3").arg(i + 1).arg(function).arg(at);
        QVERIFY2(answer.ok(), qPrintable(where));
        const double digits = correctDigits(answer.value(), r.number(i, QStringLiteral("value")));
        worst = std::min(worst, digits);
        QVERIFY2(digits >= 13.0, qPrintable(where));
    }
    qInfo("211 values of R: %.1f digits at worst", worst);
}

// Student t with 1 degree of freedom is the Cauchy distribution, chi-square with 2 is exponential,
// and F with 2 and 2 has the chance x / (1 + x).
void TstDistributions::closedForms()
{
    for (const double p : {0.001, 0.2, 0.5, 0.9, 0.999}) {
        const double cauchy = std::tan(std::numbers::pi * (p - 0.5));
        QVERIFY(std::abs(quantile(StudentT{1.0}, p).value() - cauchy) <
                1e-12 * (1 + std::abs(cauchy)));
        QVERIFY(correctDigits(quantile(ChiSquare{2.0}, p).value(), -2.0 * std::log1p(-p)) > 13.0);
        QVERIFY(correctDigits(quantile(FisherF{2.0, 2.0}, p).value(), p / (1.0 - p)) > 12.0);
    }
    for (const double x : {0.1, 1.0, 7.0}) {
        QVERIFY(correctDigits(upperTail(ChiSquare{2.0}, x).value(), std::exp(-x / 2.0)) > 14.0);
        QVERIFY(correctDigits(cdf(FisherF{2.0, 2.0}, x).value(), x / (1.0 + x)) > 14.0);
        QVERIFY(correctDigits(cdf(Normal{}, x).value(), 0.5 * std::erfc(-x / std::sqrt(2.0))) >
                14.0);
    }
    QVERIFY(correctDigits(twoSided(Normal{}, 0.95).value(), 1.959963984540054) > 14.0);
}

// 1 - cdf would be 0 here: the upper tail of the normal at 10 is erfc(10 / sqrt 2) / 2.
void TstDistributions::tailsKeepTheirDigits()
{
    const double tail = 0.5 * std::erfc(10.0 / std::sqrt(2.0));
    QVERIFY(tail > 0.0 && tail < 1e-22);
    QVERIFY(correctDigits(upperTail(Normal{}, 10.0).value(), tail) > 12.0);
    QVERIFY(correctDigits(upperQuantile(Normal{}, tail).value(), 10.0) > 13.0);
    QVERIFY(correctDigits(upperTail(ChiSquare{2.0}, 200.0).value(), std::exp(-100.0)) > 12.0);
}

void TstDistributions::quantileUndoesChance()
{
    const Distribution all[] = {Normal{}, StudentT{3.5}, ChiSquare{7.0}, FisherF{4.0, 11.0}};
    for (const Distribution &d : all) {
        for (const double p : {1e-6, 0.01, 0.3, 0.5, 0.8, 0.99}) {
            QVERIFY(correctDigits(cdf(d, quantile(d, p).value()).value(), p) > 11.0);
            QVERIFY(correctDigits(upperTail(d, upperQuantile(d, p).value()).value(), p) > 11.0);
        }
    }
}

void TstDistributions::endsOfTheLine()
{
    const Distribution all[] = {Normal{}, StudentT{3.0}, ChiSquare{7.0}, FisherF{4.0, 11.0}};
    for (const Distribution &d : all) {
        QCOMPARE(cdf(d, -HUGE_VAL).value(), 0.0);
        QCOMPARE(cdf(d, HUGE_VAL).value(), 1.0);
        QCOMPARE(upperTail(d, -HUGE_VAL).value(), 1.0);
        QCOMPARE(upperTail(d, HUGE_VAL).value(), 0.0);
    }
    QCOMPARE(cdf(ChiSquare{3.0}, -1.0).value(), 0.0);
    QCOMPARE(upperTail(FisherF{3.0, 4.0}, -1.0).value(), 1.0);
}

void TstDistributions::refusesLawlessArguments()
{
    const int outOfRange = static_cast<int>(Reason::OutOfRange);
    const double nan = std::nan("");
    for (const double p : {0.0, 1.0, -0.1, 1.1, nan, HUGE_VAL}) {
        QCOMPARE(reasonOf(quantile(Normal{}, p)), outOfRange);
        QCOMPARE(reasonOf(upperQuantile(StudentT{4.0}, p)), outOfRange);
        QCOMPARE(reasonOf(twoSided(Normal{}, p)), outOfRange);
    }
    for (const double df : {0.0, -1.0, nan, HUGE_VAL}) {
        QCOMPARE(reasonOf(quantile(StudentT{df}, 0.5)), outOfRange);
        QCOMPARE(reasonOf(cdf(ChiSquare{df}, 1.0)), outOfRange);
        QCOMPARE(reasonOf(upperTail(FisherF{3.0, df}, 1.0)), outOfRange);
        QCOMPARE(reasonOf(quantile(FisherF{df, 3.0}, 0.5)), outOfRange);
    }
    QCOMPARE(reasonOf(cdf(Normal{}, nan)), static_cast<int>(Reason::NotFinite));
    // Lawful, but beyond a double: the 1e-300 tail of a t with 0.1 degrees of freedom.
    QCOMPARE(reasonOf(upperQuantile(StudentT{0.1}, 1e-300)), static_cast<int>(Reason::NoAnswer));
}

RICKYARD_TEST(TstDistributions)
#include "tst_distributions.moc"
