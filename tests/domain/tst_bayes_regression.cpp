// The conjugate regression: with a flat prior against the certified values of the NIST Statistical
// Reference Datasets and R's lm; against the closed form written out with dense matrices.
#include "models/domain/statistics/bayes_regression.h"
#include "tests/domain/least_squares_data.h"
#include "tests/support/registry.h"

#include <QTest>

#include <Eigen/LU>

#include <cmath>
#include <numbers>

using namespace rickyard::domain::statistics;
using namespace rickyard::test;

namespace {

Eigen::VectorXd polynomial(double x, int degree)
{
    Eigen::VectorXd row(degree + 1);
    for (int k = 0; k <= degree; ++k)
        row[k] = static_cast<double>(std::pow(static_cast<long double>(x), k));
    return row;
}

// Rows of a NIST set, a one in front where the set has an intercept.
std::vector<Eigen::VectorXd> rowsOf(const ReferenceTable &table, int degree, bool intercept)
{
    std::vector<Eigen::VectorXd> rows;
    const auto columns = table.header().size() - 1;
    for (qsizetype i = 0; i < table.rows(); ++i) {
        if (columns == 1) {
            const Eigen::VectorXd all = polynomial(table.number(i, QStringLiteral("x")), degree);
            rows.push_back(intercept ? all : Eigen::VectorXd(all.tail(degree)));
            continue;
        }
        Eigen::VectorXd row(columns + 1);
        row[0] = 1.0;
        for (qsizetype j = 0; j < columns; ++j)
            row[j + 1] = table.number(i, table.header().at(j + 1));
        rows.push_back(row);
    }
    return rows;
}

BayesRegression flatModel(Eigen::Index size)
{
    return BayesRegression::start(RegressionPrior::flat(size)).value();
}

// What Wampler added to the polynomial of ones: once in his third set, 100 times in the fourth,
// 10000 times in the fifth (differences of the published y of WAMPLER3.DAT and of the polynomial).
constexpr double wamplerErrors[21] = {759,   -2048, 2048,  -2048, 2523,  -2048, 2048,
                                      -2048, 1838,  -2048, 2048,  -2048, 1838,  -2048,
                                      2048,  -2048, 2523,  -2048, 2048,  -2048, 759};

// A small problem with a full prior covariance, for the comparison with dense algebra.
struct Small {
    RegressionPrior prior;
    Eigen::MatrixXd x;
    Eigen::VectorXd y;
    Eigen::VectorXd w;
};

Small smallProblem()
{
    Small s;
    Eigen::MatrixXd root(3, 3);
    root << 2.0, 0.3, -0.4, 0.0, 1.5, 0.7, 0.0, 0.0, 0.9;
    s.prior = {row({1.0, -0.5, 0.2}), root.transpose() * root, 4.0, 0.7};
    s.x.resize(7, 3);
    s.y.resize(7);
    s.w.resize(7);
    for (int i = 0; i < 7; ++i) {
        s.x.row(i) << 1.0, std::sin(1.3 * i), 0.4 * i - 1.0;
        s.y[i] = 0.8 + 0.6 * std::cos(2.1 * i) + 0.3 * i;
        s.w[i] = 0.5 + 0.25 * (i % 3);
    }
    return s;
}

} // namespace

class TstBayesRegression : public QObject
{
    Q_OBJECT
private slots:
    void flatIsLeastSquares_data();
    void flatIsLeastSquares();
    void wampler_data();
    void wampler();
    void carsIntervals_data();
    void carsIntervals();
    void closedForm();
    void orderDoesNotMatter();
    void evidenceIsThatOfTheWhole();
    void appendEqualsKnowingFromTheStart();
    void loosenWidensOnlyWhatItShould();
    void refusals();
};

void TstBayesRegression::flatIsLeastSquares_data()
{
    QTest::addColumn<int>("degree");
    QTest::addColumn<bool>("intercept");
    QTest::addColumn<double>("digits");
    QTest::newRow("norris") << 1 << true << 9.0;
    QTest::newRow("pontius") << 2 << true << 9.0;
    QTest::newRow("longley") << 1 << true << 9.0;
    QTest::newRow("noint1") << 1 << false << 9.0;
    QTest::newRow("filip") << 10 << true << 7.0;
}

void TstBayesRegression::flatIsLeastSquares()
{
    QFETCH(int, degree);
    QFETCH(bool, intercept);
    QFETCH(double, digits);
    const QString name = QString::fromUtf8(QTest::currentDataTag());
    const ReferenceTable table(name + QStringLiteral(".csv"));
    const ReferenceTable certified(name + QStringLiteral("_certified.csv"));
    QVERIFY(table.rows() > 0 && certified.rows() > 0);
    const auto rows = rowsOf(table, degree, intercept);
    auto model = flatModel(rows.front().size());
    for (std::size_t i = 0; i < rows.size(); ++i)
        QVERIFY(
            !model.learn(rows[i], table.number(static_cast<qsizetype>(i), QStringLiteral("y"))));
    const auto b = model.coefficients();
    const auto se = model.standardErrors();
    QVERIFY(b.ok() && se.ok());
    const QString column = QStringLiteral("certified");
    double worst =
        correctDigits(model.scale(), certified.lookup(QStringLiteral("residual_sd"), column));
    const int first = intercept ? 0 : 1;
    for (Eigen::Index j = 0; j < b->size(); ++j) {
        worst = std::min(
            worst, correctDigits(b.value()[j],
                                 certified.lookup(QStringLiteral("B%1").arg(j + first), column)));
        worst = std::min(
            worst,
            correctDigits(se.value()[j],
                          certified.lookup(QStringLiteral("SE(B%1)").arg(j + first), column)));
    }
    QCOMPARE(model.dof(), certified.lookup(QStringLiteral("residual_df"), column));
    qInfo("%s: %.1f digits at worst", qPrintable(name), worst);
    QVERIFY2(worst >= digits, qPrintable(QString::number(worst)));
}

void TstBayesRegression::wampler_data()
{
    QTest::addColumn<double>("ratio");
    QTest::addColumn<double>("noise");
    QTest::newRow("wampler1") << 1.0 << 0.0;
    QTest::newRow("wampler2") << 0.1 << 0.0;
    QTest::newRow("wampler3") << 1.0 << 1.0;
    QTest::newRow("wampler4") << 1.0 << 100.0;
    QTest::newRow("wampler5") << 1.0 << 10000.0;
}

void TstBayesRegression::wampler()
{
    QFETCH(double, ratio);
    QFETCH(double, noise);
    const ReferenceTable certified(QStringLiteral("wampler_certified.csv"));
    QVERIFY(certified.rows() > 0);
    auto model = flatModel(6);
    const int base = ratio < 1.0 ? 10 : 1;
    for (int x = 0; x <= 20; ++x) {
        // In whole numbers first, so that y is the published decimal rounded once.
        double y = 0.0;
        for (int k = 0; k <= 5; ++k)
            y += std::pow(base, 5 - k) * std::pow(x, k);
        y = y / std::pow(base, 5) + noise * wamplerErrors[x];
        QVERIFY(!model.learn(polynomial(x, 5), y));
    }
    const auto b = model.coefficients();
    const auto se = model.standardErrors();
    QVERIFY(b.ok() && se.ok());
    double worst = 15.0;
    for (int k = 0; k <= 5; ++k) {
        worst = std::min(worst, correctDigits(b.value()[k], std::pow(ratio, k)));
        if (noise > 0.0)
            worst = std::min(
                worst, correctDigits(se.value()[k],
                                     certified.lookup(QStringLiteral("SE(B%1)").arg(k),
                                                      QString::fromUtf8(QTest::currentDataTag()))));
    }
    qInfo("%s: %.1f digits at worst", QTest::currentDataTag(), worst);
    QVERIFY2(worst >= 9.0, qPrintable(QString::number(worst)));
}

void TstBayesRegression::carsIntervals_data()
{
    QTest::addColumn<QString>("file");
    QTest::addColumn<QString>("key");
    QTest::addColumn<double>("speed");
    for (const double speed : {5.0, 10.0, 15.4, 21.0, 30.0})
        QTest::newRow(qPrintable(QStringLiteral("plain %1").arg(speed)))
            << QStringLiteral("cars_ols.csv") << QStringLiteral("prediction95") << speed;
    for (const double speed : {5.0, 15.4, 21.0})
        QTest::newRow(qPrintable(QStringLiteral("weighted %1").arg(speed)))
            << QStringLiteral("cars_wls.csv") << QStringLiteral("predint95_w") << speed;
}

// R's predict.lm; in the weighted file rows and the new observation have weight 1 / speed.
void TstBayesRegression::carsIntervals()
{
    QFETCH(QString, file);
    QFETCH(QString, key);
    QFETCH(double, speed);
    const ReferenceTable r(file);
    const Data data = cars();
    QVERIFY(r.rows() > 0 && data.response.size() == 50);
    const bool weighted = file.contains(QLatin1String("wls"));
    auto model = flatModel(2);
    for (Eigen::Index i = 0; i < 50; ++i) {
        const double x = data.design(i, 0);
        QVERIFY(!model.learn(row({1.0, x}), data.response[i], weighted ? 1.0 / x : 1.0));
    }
    const auto t = model.predict(row({1.0, speed}), weighted ? 1.0 / speed : 1.0);
    QVERIFY(t.ok());
    QCOMPARE(t->dof, 48.0);
    const auto interval = BayesRegression::interval(t.value(), 0.95);
    QVERIFY(interval.ok());
    const auto expected = [&](const char *what) {
        return r.lookup(
            QStringLiteral("%1[speed=%2]:%3").arg(key).arg(speed).arg(QLatin1String(what)),
            QStringLiteral("value"));
    };
    QVERIFY(std::abs(interval->centre - expected("fit")) < 1e-10);
    QVERIFY(std::abs(interval->lower - expected("lwr")) < 1e-10);
    QVERIFY(std::abs(interval->upper - expected("upr")) < 1e-10);
}

// Normal-inverse-gamma algebra written out (Gelman et al., Bayesian Data Analysis, section 14.8).
void TstBayesRegression::closedForm()
{
    const Small s = smallProblem();
    auto model = BayesRegression::start(s.prior).value();
    for (int i = 0; i < 7; ++i)
        QVERIFY(!model.learn(Eigen::VectorXd(s.x.row(i)), s.y[i], s.w[i]));
    const Eigen::MatrixXd weights = s.w.asDiagonal();
    const Eigen::MatrixXd precision = s.prior.precision + s.x.transpose() * weights * s.x;
    const Eigen::VectorXd mean =
        precision.inverse() * (s.prior.precision * s.prior.mean + s.x.transpose() * weights * s.y);
    const double squares = s.prior.dof * s.prior.scale * s.prior.scale + s.y.dot(weights * s.y) +
                           s.prior.mean.dot(s.prior.precision * s.prior.mean) -
                           mean.dot(precision * mean);
    const double dof = s.prior.dof + 7.0;
    QVERIFY((model.coefficients().value() - mean).cwiseAbs().maxCoeff() < 1e-12);
    QVERIFY((model.shape().value() - precision.inverse()).cwiseAbs().maxCoeff() < 1e-12);
    QCOMPARE(model.dof(), dof);
    QVERIFY(std::abs(model.sumOfSquares() - squares) < 1e-11);
    const Eigen::VectorXd x = row({1.0, 0.2, -0.6});
    const auto t = model.predict(x, 2.0);
    QVERIFY(t.ok());
    QVERIFY(std::abs(t->location - x.dot(mean)) < 1e-12);
    const double variance = squares / dof * (0.5 + x.dot(precision.inverse() * x));
    QVERIFY(std::abs(t->scale - std::sqrt(variance)) < 1e-12);
}

void TstBayesRegression::orderDoesNotMatter()
{
    const Small s = smallProblem();
    auto there = BayesRegression::start(s.prior).value();
    auto back = BayesRegression::start(s.prior).value();
    for (int i = 0; i < 7; ++i) {
        QVERIFY(!there.learn(Eigen::VectorXd(s.x.row(i)), s.y[i], s.w[i]));
        QVERIFY(!back.learn(Eigen::VectorXd(s.x.row(6 - i)), s.y[6 - i], s.w[6 - i]));
    }
    QVERIFY((there.coefficients().value() - back.coefficients().value()).cwiseAbs().maxCoeff() <
            1e-13);
    QVERIFY(std::abs(there.sumOfSquares() - back.sumOfSquares()) < 1e-13);
    QVERIFY(std::abs(*there.logEvidence() - *back.logEvidence()) < 1e-12);
}

// The multivariate t of all rows at once; the model adds it up a row at a time.
void TstBayesRegression::evidenceIsThatOfTheWhole()
{
    const Small s = smallProblem();
    auto model = BayesRegression::start(s.prior).value();
    for (int i = 0; i < 7; ++i)
        QVERIFY(!model.learn(Eigen::VectorXd(s.x.row(i)), s.y[i], s.w[i]));
    Eigen::MatrixXd spread = s.x * s.prior.precision.inverse() * s.x.transpose();
    spread.diagonal() += s.w.cwiseInverse();
    spread *= s.prior.scale * s.prior.scale;
    const Eigen::VectorXd off = s.y - s.x * s.prior.mean;
    const double nu = s.prior.dof;
    const double expected = std::lgamma((nu + 7.0) / 2.0) - std::lgamma(nu / 2.0) -
                            3.5 * std::log(nu * std::numbers::pi) -
                            0.5 * std::log(spread.determinant()) -
                            (nu + 7.0) / 2.0 * std::log1p(off.dot(spread.inverse() * off) / nu);
    QVERIFY(model.logEvidence().has_value());
    QVERIFY(std::abs(*model.logEvidence() - expected) < 1e-11);
    QVERIFY(!flatModel(2).logEvidence().has_value());
}

void TstBayesRegression::appendEqualsKnowingFromTheStart()
{
    const Eigen::VectorXd mean = row({1.0, 0.0, 0.5});
    const Eigen::VectorXd sd = row({0.4, 0.2, 0.3});
    auto whole = BayesRegression::start(RegressionPrior::independent(mean, sd, 5.0, 0.1)).value();
    auto grown =
        BayesRegression::start(RegressionPrior::independent(mean.head(2), sd.head(2), 5.0, 0.1))
            .value();
    QVERIFY(!whole.learn(row({1.0, 0.3, 0.0}), 1.2));
    QVERIFY(!grown.learn(row({1.0, 0.3}), 1.2));
    const std::vector<double> newMean{0.5};
    const std::vector<double> newSd{0.3 / 0.1};
    grown.append(newMean, newSd);
    for (auto *model : {&whole, &grown})
        QVERIFY(!model->learn(row({0.9, 0.1, 1.0}), 1.7));
    QVERIFY((whole.coefficients().value() - grown.coefficients().value()).cwiseAbs().maxCoeff() <
            1e-14);
    QVERIFY((whole.shape().value() - grown.shape().value()).cwiseAbs().maxCoeff() < 1e-13);
    QCOMPARE(whole.dof(), grown.dof());
}

// b becomes b + noise: covariance grows by the noise's variance in that entry and nowhere else.
void TstBayesRegression::loosenWidensOnlyWhatItShould()
{
    const Small s = smallProblem();
    auto model = BayesRegression::start(s.prior).value();
    for (int i = 0; i < 7; ++i)
        QVERIFY(!model.learn(Eigen::VectorXd(s.x.row(i)), s.y[i], s.w[i]));
    Eigen::MatrixXd expected = model.shape().value();
    const Eigen::VectorXd mean = model.coefficients().value();
    const double squares = model.sumOfSquares();
    const double dof = model.dof();
    const std::vector<int> which{0, 2};
    const std::vector<double> sd{1.5, 0.25};
    model.loosen(which, sd);
    expected(0, 0) += 1.5 * 1.5;
    expected(2, 2) += 0.25 * 0.25;
    QVERIFY((model.shape().value() - expected).cwiseAbs().maxCoeff() < 1e-12);
    QVERIFY((model.coefficients().value() - mean).cwiseAbs().maxCoeff() < 1e-12);
    QCOMPARE(model.sumOfSquares(), squares);
    QCOMPARE(model.dof(), dof);
}

void TstBayesRegression::refusals()
{
    auto model = flatModel(2);
    QCOMPARE(model.predict(row({1.0, 2.0})).refusal().reason, Reason::TooFewRows);
    QCOMPARE(model.learn(row({1.0}), 1.0)->reason, Reason::ShapeMismatch);
    QCOMPARE(model.learn(row({1.0, std::nan("")}), 1.0)->reason, Reason::NotFinite);
    QCOMPARE(model.learn(row({1.0, 2.0}), INFINITY)->reason, Reason::NotFinite);
    QCOMPARE(model.learn(row({1.0, 2.0}), 1.0, -1.0)->reason, Reason::OutOfRange);
    QCOMPARE(model.rows(), 0);
    // Two equal rows determine one direction; the other stays flat.
    for (int i = 0; i < 3; ++i)
        QVERIFY(!model.learn(row({1.0, 2.0}), 1.0 + i));
    QCOMPARE(model.dof(), 2.0);
    QCOMPARE(model.predict(row({1.0, 5.0})).refusal().reason, Reason::RankDeficient);
    QVERIFY(std::abs(model.predict(row({1.0, 2.0}))->location - 2.0) < 1e-15);
    QCOMPARE(model.coefficients().refusal().reason, Reason::RankDeficient);
    RegressionPrior bad = RegressionPrior::flat(2);
    bad.precision << 1.0, 2.0, 2.0, 1.0;
    QCOMPARE(BayesRegression::start(bad).refusal().reason, Reason::OutOfRange);
    bad = RegressionPrior::flat(2);
    bad.dof = -1.0;
    QCOMPARE(BayesRegression::start(bad).refusal().reason, Reason::OutOfRange);
}

RICKYARD_TEST(TstBayesRegression)
#include "tst_bayes_regression.moc"
