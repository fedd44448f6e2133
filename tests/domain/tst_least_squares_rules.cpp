// What least squares must hold to whatever the data: its defining properties, the meaning of
// weights, and what it refuses.
#include "models/domain/statistics/least_squares.h"
#include "tests/domain/least_squares_data.h"
#include "tests/support/registry.h"

#include <QTest>

#include <random>

using namespace rickyard::domain::statistics;
using namespace rickyard::test;

class TstLeastSquaresRules : public QObject
{
    Q_OBJECT
private slots:
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

// A whole weight w is w copies of the row, except for the degrees of freedom; weight 0 is absence.
void TstLeastSquaresRules::weightsRepeatRows()
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

void TstLeastSquaresRules::interceptAloneIsTheMean()
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

void TstLeastSquaresRules::constantResponseHasNoShare()
{
    const auto fit = leastSquares(row({1, 2, 3, 4, 7}), Eigen::VectorXd::Constant(5, 0.1));
    QVERIFY(fit.ok());
    QVERIFY(!fit->rSquared.has_value());
    QVERIFY(std::abs(fit->coefficients[1]) < 1e-16);
    QCOMPARE(fit->coefficients[0], 0.1);
}

// The defining property of least squares, on random problems with columns of very unlike sizes.
void TstLeastSquaresRules::residualsAreOrthogonal()
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

void TstLeastSquaresRules::refusals_data()
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

void TstLeastSquaresRules::refusals()
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
void TstLeastSquaresRules::refusesRepeatedColumns()
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
void TstLeastSquaresRules::acceptsNearlyRepeatedColumns()
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

void TstLeastSquaresRules::refusesLawlessPredictions()
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

RICKYARD_TEST(TstLeastSquaresRules)
#include "tst_least_squares_rules.moc"
