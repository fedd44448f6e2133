// Linear least squares against the certified values of the NIST Statistical Reference Datasets and
// against R's lm and predict.lm. Sources stand in the comment lines of the files read.
#include "models/domain/statistics/least_squares.h"
#include "tests/domain/least_squares_data.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain::statistics;
using namespace rickyard::test;

namespace
{

// x, x^2 ... x^degree, rounded to double as any caller's columns are.
Eigen::MatrixXd powers(const Eigen::VectorXd &x, int degree)
{
    Eigen::MatrixXd design(x.size(), degree);
    for (int k = 1; k <= degree; ++k)
        for (Eigen::Index i = 0; i < x.size(); ++i)
            design(i, k - 1) = static_cast<double>(std::pow(static_cast<long double>(x[i]), k));
    return design;
}

// Columns after `y`; a single one is raised to `degree` powers.
Data read(const QString &name, int degree = 1)
{
    const ReferenceTable table(name + QStringLiteral(".csv"));
    if (table.rows() == 0)
        return {};
    Data data;
    data.response = vectorOf(table.column(QStringLiteral("y")));
    const auto columns = table.header().size() - 1;
    if (columns == 1) {
        data.design = powers(vectorOf(table.column(QStringLiteral("x"))), degree);
        return data;
    }
    data.design.resize(data.response.size(), columns);
    for (qsizetype j = 0; j < columns; ++j)
        data.design.col(j) = vectorOf(table.column(table.header().at(j + 1)));
    return data;
}

// What Wampler added to the polynomial of ones: once in his third set, 100 times in the fourth,
// 10000 times in the fifth (differences of the published y of WAMPLER3.DAT and of the polynomial).
constexpr double wamplerNoise[21] = {759,   -2048, 2048,  -2048, 2523,  -2048, 2048,
                                     -2048, 1838,  -2048, 2048,  -2048, 1838,  -2048,
                                     2048,  -2048, 2523,  -2048, 2048,  -2048, 759};

} // namespace

class TstLeastSquares : public QObject
{
    Q_OBJECT
private slots:
    void nist_data();
    void nist();
    void wamplerExact_data();
    void wamplerExact();
    void wamplerNoisy_data();
    void wamplerNoisy();
    void carsCoefficients_data();
    void carsCoefficients();
    void carsIntervals_data();
    void carsIntervals();
    void carsLeverages();
};

// Filip keeps fewer digits because its tenth powers are rounded to double before they are fitted;
// with powers in long double the same method gives 11.
void TstLeastSquares::nist_data()
{
    QTest::addColumn<int>("degree");
    QTest::addColumn<bool>("withIntercept");
    QTest::addColumn<double>("digits");
    QTest::newRow("norris") << 1 << true << 9.0;
    QTest::newRow("pontius") << 2 << true << 9.0;
    QTest::newRow("longley") << 1 << true << 9.0;
    QTest::newRow("noint1") << 1 << false << 9.0;
    QTest::newRow("filip") << 10 << true << 7.0;
}

void TstLeastSquares::nist()
{
    QFETCH(int, degree);
    QFETCH(bool, withIntercept);
    QFETCH(double, digits);
    const QString name = QString::fromUtf8(QTest::currentDataTag());
    const Data data = read(name, degree);
    const ReferenceTable certified(name + QStringLiteral("_certified.csv"));
    QVERIFY(data.response.size() > 0 && certified.rows() > 0);

    const auto fit = leastSquares(data.design, data.response,
                                  withIntercept ? Intercept::Fitted : Intercept::None);
    QVERIFY2(fit.ok(), qPrintable(fit ? QString() : fit.refusal().message));
    const QString column = QStringLiteral("certified");
    double worst = 15.0;
    const int first =
        withIntercept ? 0 : 1; // the sets number their coefficients from the intercept
    for (Eigen::Index j = 0; j < fit->coefficients.size(); ++j) {
        const double value = certified.lookup(QStringLiteral("B%1").arg(j + first), column);
        const double error = certified.lookup(QStringLiteral("SE(B%1)").arg(j + first), column);
        worst = std::min(worst, correctDigits(fit->coefficients[j], value));
        worst = std::min(worst, correctDigits(fit->standardErrors[j], error));
    }
    worst = std::min(worst, correctDigits(fit->residualSd,
                                          certified.lookup(QStringLiteral("residual_sd"), column)));
    // Computed exactly from the data; the certified files give no more digits of it.
    worst = std::min(worst, correctDigits(fit->residualSumOfSquares,
                                          certified.lookup(QStringLiteral("residual_ss"),
                                                           QStringLiteral("exact20"))));
    QVERIFY(fit->rSquared.has_value());
    worst = std::min(worst, correctDigits(*fit->rSquared,
                                          certified.lookup(QStringLiteral("r_squared"), column)));
    QCOMPARE(fit->degreesOfFreedom,
             static_cast<int>(certified.lookup(QStringLiteral("residual_df"), column)));
    qInfo("%s: %.1f digits at worst", QTest::currentDataTag(), worst);
    QVERIFY2(worst >= digits, qPrintable(QString::number(worst)));
}

void TstLeastSquares::wamplerExact_data()
{
    QTest::addColumn<double>("ratio");
    QTest::newRow("wampler1: every coefficient 1") << 1.0;
    QTest::newRow("wampler2: coefficients 10^-k") << 0.1;
}

// Definitions: Wampler (1970), p. 552, as quoted in the header of NIST Dataplot's WAMPLER1.DAT.
void TstLeastSquares::wamplerExact()
{
    QFETCH(double, ratio);
    const Eigen::VectorXd x = Eigen::VectorXd::LinSpaced(21, 0.0, 20.0);
    // In whole numbers first, so that y is the published decimal rounded once.
    const int base = ratio < 1.0 ? 10 : 1;
    Eigen::VectorXd y(21);
    for (Eigen::Index i = 0; i < 21; ++i) {
        double sum = 0.0;
        for (int k = 0; k <= 5; ++k)
            sum += std::pow(base, 5 - k) * std::pow(x[i], k);
        y[i] = sum / std::pow(base, 5);
    }
    const auto fit = leastSquares(powers(x, 5), y);
    QVERIFY(fit.ok());
    double worst = 15.0;
    for (int k = 0; k <= 5; ++k)
        worst = std::min(worst, correctDigits(fit->coefficients[k], std::pow(ratio, k)));
    qInfo("%s: %.1f digits at worst", QTest::currentDataTag(), worst);
    QVERIFY2(worst >= 9.0, qPrintable(QString::number(worst)));
    QVERIFY(fit->residualSd < 1e-9 * y.maxCoeff());
    QVERIFY(correctDigits(*fit->rSquared, 1.0) >= 14.0);
}

void TstLeastSquares::wamplerNoisy_data()
{
    QTest::addColumn<double>("factor");
    QTest::newRow("wampler3") << 1.0;
    QTest::newRow("wampler4") << 100.0;
    QTest::newRow("wampler5") << 10000.0;
}

void TstLeastSquares::wamplerNoisy()
{
    QFETCH(double, factor);
    const QString column = QString::fromUtf8(QTest::currentDataTag());
    const ReferenceTable certified(QStringLiteral("wampler_certified.csv"));
    QVERIFY(certified.rows() > 0);
    const Eigen::VectorXd x = Eigen::VectorXd::LinSpaced(21, 0.0, 20.0);
    const Eigen::MatrixXd design = powers(x, 5);
    Eigen::VectorXd y = design.rowwise().sum().array() + 1.0;
    for (Eigen::Index i = 0; i < 21; ++i)
        y[i] += factor * wamplerNoise[i];

    const auto fit = leastSquares(design, y);
    QVERIFY(fit.ok());
    double worst = 15.0;
    for (int k = 0; k <= 5; ++k) {
        const QString key = QStringLiteral("SE(B%1)").arg(k);
        worst = std::min(worst, correctDigits(fit->coefficients[k], 1.0));
        worst =
            std::min(worst, correctDigits(fit->standardErrors[k], certified.lookup(key, column)));
    }
    worst = std::min(worst, correctDigits(fit->residualSd,
                                          certified.lookup(QStringLiteral("residual_sd"), column)));
    worst = std::min(worst, correctDigits(fit->residualSumOfSquares,
                                          certified.lookup(QStringLiteral("residual_ss"), column)));
    worst = std::min(worst, correctDigits(*fit->rSquared,
                                          certified.lookup(QStringLiteral("r_squared"), column)));
    qInfo("%s: %.1f digits at worst", QTest::currentDataTag(), worst);
    QVERIFY2(worst >= 9.0, qPrintable(QString::number(worst)));
    QCOMPARE(fit->degreesOfFreedom, 15);
}

void TstLeastSquares::carsCoefficients_data()
{
    QTest::addColumn<bool>("weighted");
    QTest::newRow("cars_ols") << false;
    QTest::newRow("cars_wls") << true;
}

// R's lm(dist ~ speed), plain and with weights 1 / speed.
void TstLeastSquares::carsCoefficients()
{
    QFETCH(bool, weighted);
    const ReferenceTable r(QString::fromUtf8(QTest::currentDataTag()) + QStringLiteral(".csv"));
    const Data data = cars();
    QVERIFY(r.rows() > 0 && data.response.size() == 50);
    std::optional<Eigen::VectorXd> weights;
    if (weighted)
        weights = data.design.col(0).cwiseInverse();
    const auto fit = leastSquares(data.design, data.response, Intercept::Fitted, weights);
    QVERIFY(fit.ok());
    const auto check = [&](double computed, const QString &key) {
        const double digits = correctDigits(computed, r.lookup(key, QStringLiteral("value")));
        QVERIFY2(digits >= 12.0, qPrintable(key + QStringLiteral(" ") + QString::number(digits)));
    };
    check(fit->coefficients[0], QStringLiteral("coef[(Intercept)]"));
    check(fit->coefficients[1], QStringLiteral("coef[speed]"));
    check(fit->standardErrors[0], QStringLiteral("se[(Intercept)]"));
    check(fit->standardErrors[1], QStringLiteral("se[speed]"));
    check(fit->residualSd, QStringLiteral("sigma"));
    check(fit->residualSumOfSquares, QStringLiteral("rss"));
    check(*fit->rSquared, QStringLiteral("r2"));
    QCOMPARE(fit->degreesOfFreedom, 48);
    if (weighted)
        return;
    check(fit->covariance(0, 0), QStringLiteral("vcov[1]"));
    check(fit->covariance(1, 0), QStringLiteral("vcov[2]"));
    check(fit->covariance(0, 1), QStringLiteral("vcov[3]"));
    check(fit->covariance(1, 1), QStringLiteral("vcov[4]"));
}

void TstLeastSquares::carsIntervals_data()
{
    QTest::addColumn<QString>("file");
    QTest::addColumn<QString>("kind");
    QTest::addColumn<double>("level");
    QTest::addColumn<double>("speed");
    const auto add = [](const char *file, const QString &kind, double level, double speed) {
        QTest::newRow(qPrintable(QStringLiteral("%1 at %2").arg(kind).arg(speed)))
            << QString::fromUtf8(file) << kind << level << speed;
    };
    for (const int percent : {80, 90, 95}) {
        for (const double speed : {5.0, 10.0, 15.4, 21.0, 30.0}) {
            add("cars_ols.csv", QStringLiteral("prediction%1").arg(percent), percent / 100.0,
                speed);
            add("cars_ols.csv", QStringLiteral("confidence%1").arg(percent), percent / 100.0,
                speed);
        }
    }
    for (const double speed : {5.0, 15.4, 21.0})
        add("cars_wls.csv", QStringLiteral("predint95_w"), 0.95, speed);
}

// R's predict.lm; in the weighted file the new observation has weight 1 / speed too.
void TstLeastSquares::carsIntervals()
{
    QFETCH(QString, file);
    QFETCH(QString, kind);
    QFETCH(double, level);
    QFETCH(double, speed);
    const ReferenceTable r(file);
    const Data data = cars();
    QVERIFY(r.rows() > 0 && data.response.size() == 50);
    const bool weighted = file.contains(QLatin1String("wls"));
    std::optional<Eigen::VectorXd> weights;
    if (weighted)
        weights = data.design.col(0).cwiseInverse();
    const auto fit = leastSquares(data.design, data.response, Intercept::Fitted, weights);
    QVERIFY(fit.ok());
    const auto interval =
        kind.startsWith(QLatin1String("confidence"))
            ? meanResponse(fit.value(), row({speed}), level)
            : predict(fit.value(), row({speed}), level, weighted ? 1.0 / speed : 1.0);
    QVERIFY(interval.ok());
    const auto expected = [&](const char *what) {
        return r.lookup(
            QStringLiteral("%1[speed=%2]:%3").arg(kind).arg(speed).arg(QLatin1String(what)),
            QStringLiteral("value"));
    };
    // The file gives 12 decimals.
    QVERIFY(std::abs(interval->centre - expected("fit")) < 1e-10);
    QVERIFY(std::abs(interval->lower - expected("lwr")) < 1e-10);
    QVERIFY(std::abs(interval->upper - expected("upr")) < 1e-10);
    QCOMPARE(interval->level, level);
}

// R's hatvalues and rstandard.
void TstLeastSquares::carsLeverages()
{
    const ReferenceTable r(QStringLiteral("cars_ols.csv"));
    const Data data = cars();
    const auto fit = leastSquares(data.design, data.response);
    QVERIFY(fit.ok());
    const auto value = [&](const char *key) {
        return r.lookup(QString::fromUtf8(key), QStringLiteral("value"));
    };
    QVERIFY(correctDigits(fit->leverages[0], value("hat_1")) >= 12.0);
    QVERIFY(correctDigits(fit->leverages[49], value("hat_50")) >= 12.0);
    const double standardised =
        fit->residuals[48] / (fit->residualSd * std::sqrt(1.0 - fit->leverages[48]));
    QVERIFY(correctDigits(standardised, value("rstandard_49")) >= 12.0);
    double press = 0.0;
    for (Eigen::Index i = 0; i < 50; ++i)
        press += std::pow(fit->residuals[i] / (1.0 - fit->leverages[i]), 2);
    QVERIFY(correctDigits(press, value("loocv_PRESS")) >= 12.0);
    // The trace of the hat matrix is the number of coefficients.
    QVERIFY(correctDigits(fit->leverages.sum(), 2.0) >= 13.0);
}

RICKYARD_TEST(TstLeastSquares)
#include "tst_least_squares.moc"
