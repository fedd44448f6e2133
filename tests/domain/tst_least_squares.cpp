// Linear least squares against the certified values of the NIST Statistical Reference Datasets and
// against R's lm and predict.lm. Sources stand in the comment lines of the files read.
#include "models/domain/statistics/least_squares.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

#include <random>

using namespace rickyard::domain::statistics;
using rickyard::test::correctDigits;
using rickyard::test::ReferenceTable;

namespace
{

struct Data {
    Eigen::MatrixXd design;
    Eigen::VectorXd response;
};

Eigen::VectorXd vectorOf(const std::vector<double> &values)
{
    return Eigen::Map<const Eigen::VectorXd>(values.data(),
                                             static_cast<Eigen::Index>(values.size()));
}

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

Data cars()
{
    const ReferenceTable table(QStringLiteral("cars.csv"));
    return {vectorOf(table.column(QStringLiteral("speed"))),
            vectorOf(table.column(QStringLiteral("dist")))};
}

Eigen::VectorXd row(std::initializer_list<double> values)
{
    return vectorOf(std::vector<double>(values));
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
    void weightsRepeatRows();
    void interceptAloneIsTheMean();
    void constantResponseHasNoShare();
    void residualsAreOrthogonal();
    void refusals_data();
    void refusals();
    void refusesRepeatedColumns();
    void acceptsNearlyRepeatedColumns();
    void refusesLawlessPredictions();
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

// A whole weight w is w copies of the row, except for the degrees of freedom; weight 0 is absence.
void TstLeastSquares::weightsRepeatRows()
{
    const Data data = cars();
    Eigen::VectorXd weights(50);
    for (Eigen::Index i = 0; i < 50; ++i)
        weights[i] = static_cast<double>(i % 4);
    const auto total = static_cast<Eigen::Index>(weights.sum());
    Data copies{Eigen::MatrixXd(total, 1), Eigen::VectorXd(total)};
    Eigen::Index at = 0;
    for (Eigen::Index i = 0; i < 50; ++i) {
        for (int c = 0; c < i % 4; ++c, ++at) {
            copies.design(at, 0) = data.design(i, 0);
            copies.response[at] = data.response[i];
        }
    }
    const auto weighted = leastSquares(data.design, data.response, Intercept::Fitted, weights);
    const auto repeated = leastSquares(copies.design, copies.response);
    QVERIFY(weighted.ok() && repeated.ok());
    QVERIFY((weighted->coefficients - repeated->coefficients).norm() < 1e-12);
    QVERIFY(correctDigits(weighted->residualSumOfSquares, repeated->residualSumOfSquares) > 13.0);
    QVERIFY(correctDigits(*weighted->rSquared, *repeated->rSquared) > 13.0);
    QCOMPARE(weighted->rows, 37);
    QCOMPARE(weighted->degreesOfFreedom, 35);
    QCOMPARE(weighted->leverages[0], 0.0);
    QCOMPARE(weighted->fitted.size(), 50);
}

void TstLeastSquares::interceptAloneIsTheMean()
{
    const auto fit = leastSquares(Eigen::MatrixXd(4, 0), row({1, 2, 3, 6}));
    QVERIFY(fit.ok());
    QCOMPARE(fit->coefficients[0], 3.0);
    QCOMPARE(fit->residualSumOfSquares, 14.0);
    QCOMPARE(fit->standardErrors[0], std::sqrt(14.0 / 3.0 / 4.0));
    QCOMPARE(*fit->rSquared, 0.0);
    // t quantile 3.182446305283708 with 3 degrees of freedom: R's qt(0.975, 3).
    const auto next = predict(fit.value(), Eigen::VectorXd(0), 0.95);
    QVERIFY(next.ok());
    const double half = 3.182446305283708 * std::sqrt(14.0 / 3.0 * 1.25);
    QVERIFY(correctDigits(next->upper, 3.0 + half) > 14.0);
}

void TstLeastSquares::constantResponseHasNoShare()
{
    const auto fit = leastSquares(row({1, 2, 3, 4, 7}), Eigen::VectorXd::Constant(5, 0.1));
    QVERIFY(fit.ok());
    QVERIFY(!fit->rSquared.has_value());
    QVERIFY(std::abs(fit->coefficients[1]) < 1e-16);
    QCOMPARE(fit->coefficients[0], 0.1);
}

// The defining property of least squares, on random problems with columns of very unlike sizes.
void TstLeastSquares::residualsAreOrthogonal()
{
    std::mt19937 random(20240517);
    std::normal_distribution<double> normal;
    for (int round = 0; round < 50; ++round) {
        const Eigen::Index rows = 12 + round;
        Eigen::MatrixXd design(rows, 4);
        Eigen::VectorXd response(rows);
        Eigen::VectorXd weights(rows);
        for (Eigen::Index i = 0; i < rows; ++i) {
            for (Eigen::Index j = 0; j < 4; ++j)
                design(i, j) = (normal(random) + 3.0) * std::pow(10.0, 3 * static_cast<int>(j) - 4);
            response[i] = normal(random);
            weights[i] = std::exp(normal(random));
        }
        const auto fit = leastSquares(design, response, Intercept::Fitted, weights);
        QVERIFY(fit.ok());
        const Eigen::VectorXd pull = weights.cwiseProduct(fit->residuals);
        QVERIFY(std::abs(pull.sum()) < 1e-12 * pull.lpNorm<1>());
        for (Eigen::Index j = 0; j < 4; ++j)
            QVERIFY(std::abs(design.col(j).dot(pull)) <
                    1e-12 * design.col(j).cwiseAbs().dot(pull.cwiseAbs()));
        QVERIFY(correctDigits(fit->leverages.sum(), 5.0) > 13.0);
    }
}

void TstLeastSquares::refusals_data()
{
    QTest::addColumn<int>("reason");
    const auto add = [](const char *name, Reason reason) {
        QTest::newRow(name) << static_cast<int>(reason);
    };
    add("as many rows as coefficients", Reason::TooFewRows);
    add("weights leave too few rows", Reason::TooFewRows);
    add("missing in a column", Reason::NotFinite);
    add("infinite response", Reason::NotFinite);
    add("missing weight", Reason::NotFinite);
    add("negative weight", Reason::OutOfRange);
    add("lengths differ", Reason::ShapeMismatch);
    add("weights differ in length", Reason::ShapeMismatch);
    add("nothing to fit", Reason::ShapeMismatch);
    add("constant column beside an intercept", Reason::RankDeficient);
    add("column of zeros", Reason::RankDeficient);
}

void TstLeastSquares::refusals()
{
    QFETCH(int, reason);
    const QString name = QString::fromUtf8(QTest::currentDataTag());
    const double nan = std::nan("");
    Eigen::MatrixXd design = row({1, 2, 4, 8});
    Eigen::VectorXd response = row({1, 3, 2, 5});
    std::optional<Eigen::VectorXd> weights;
    Intercept intercept = Intercept::Fitted;
    QVERIFY(leastSquares(design, response).ok()); // lawful until the case below spoils it
    if (name == QLatin1String("as many rows as coefficients")) {
        design = row({1, 2});
        response = row({1, 3});
    } else if (name == QLatin1String("weights leave too few rows")) {
        weights = row({1, 0, 1, 0});
    } else if (name == QLatin1String("missing in a column")) {
        design(2, 0) = nan;
    } else if (name == QLatin1String("infinite response")) {
        response[0] = HUGE_VAL;
    } else if (name == QLatin1String("missing weight")) {
        weights = row({1, nan, 1, 1});
    } else if (name == QLatin1String("negative weight")) {
        weights = row({1, 1, -1, 1});
    } else if (name == QLatin1String("lengths differ")) {
        response = row({1, 3, 2});
    } else if (name == QLatin1String("weights differ in length")) {
        weights = row({1, 1, 1});
    } else if (name == QLatin1String("nothing to fit")) {
        design = Eigen::MatrixXd(4, 0);
        intercept = Intercept::None;
    } else if (name == QLatin1String("constant column beside an intercept")) {
        design.setConstant(0.1);
    } else {
        design.setZero();
        intercept = Intercept::None;
    }
    const auto fit = leastSquares(design, response, intercept, weights);
    QVERIFY(!fit.ok());
    QCOMPARE(static_cast<int>(fit.refusal().reason), reason);
    QVERIFY(!fit.refusal().message.isEmpty());
}

// A sum of two columns, rounded to double, is refused whatever offset the columns carry.
void TstLeastSquares::refusesRepeatedColumns()
{
    std::mt19937 random(7);
    std::normal_distribution<double> normal;
    for (const double offset : {0.0, 1.0, 1e3, 1e6}) {
        for (int round = 0; round < 20; ++round) {
            Eigen::MatrixXd design(40, 3);
            Eigen::VectorXd response(40);
            for (Eigen::Index i = 0; i < 40; ++i) {
                design(i, 0) = offset + normal(random);
                design(i, 1) = 0.01 * (offset + normal(random));
                design(i, 2) = design(i, 0) / 3.0 + 2.0 * design(i, 1) - 0.7;
                response[i] = normal(random);
            }
            const auto fit = leastSquares(design, response);
            QVERIFY(!fit.ok());
            QCOMPARE(fit.refusal().reason, Reason::RankDeficient);
        }
    }
}

// Columns that differ by a millionth of their scatter are ill-conditioned, not repeated.
void TstLeastSquares::acceptsNearlyRepeatedColumns()
{
    std::mt19937 random(8);
    std::normal_distribution<double> normal;
    Eigen::MatrixXd design(40, 2);
    Eigen::VectorXd response(40);
    for (Eigen::Index i = 0; i < 40; ++i) {
        design(i, 0) = normal(random);
        design(i, 1) = design(i, 0) + 1e-6 * normal(random);
        response[i] = 2.0 + 3.0 * design(i, 0) - 1.0 * design(i, 1);
    }
    const auto fit = leastSquares(design, response);
    QVERIFY(fit.ok());
    QVERIFY(std::abs(fit->coefficients[1] - 3.0) < 1e-8);
    QVERIFY(std::abs(fit->coefficients[2] + 1.0) < 1e-8);
}

void TstLeastSquares::refusesLawlessPredictions()
{
    const Data data = cars();
    const auto fit = leastSquares(data.design, data.response);
    QVERIFY(fit.ok());
    const auto reasonOf = [](const Answer<Interval> &answer) {
        return answer ? -1 : static_cast<int>(answer.refusal().reason);
    };
    const Fit &f = fit.value();
    QCOMPARE(reasonOf(predict(f, row({1, 2}), 0.95)), static_cast<int>(Reason::ShapeMismatch));
    QCOMPARE(reasonOf(predict(f, row({std::nan("")}), 0.95)), static_cast<int>(Reason::NotFinite));
    QCOMPARE(reasonOf(predict(f, row({10}), 1.0)), static_cast<int>(Reason::OutOfRange));
    QCOMPARE(reasonOf(predict(f, row({10}), 0.95, 0.0)), static_cast<int>(Reason::OutOfRange));
    QCOMPARE(reasonOf(meanResponse(f, row({10}), 0.0)), static_cast<int>(Reason::OutOfRange));
}

RICKYARD_TEST(TstLeastSquares)
#include "tst_least_squares.moc"
