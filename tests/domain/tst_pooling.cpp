// Group offsets with a normal prior in the conjugate regression are a random intercept: checked
// against lme4 at its REML variances. Sources stand in the comment lines of the files read.
#include "models/domain/statistics/bayes_regression.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QHash>
#include <QTest>

#include <cmath>

using namespace rickyard::domain::statistics;
using namespace rickyard::test;

namespace {

// lme4's keys hold commas: the number stands behind the last one.
QHash<QString, double> lmeValues(const QString &name)
{
    QHash<QString, double> values;
    QFile file(QStringLiteral("%1/reference/%2").arg(QString::fromUtf8(RICKYARD_TEST_DATA), name));
    if (!file.open(QIODevice::ReadOnly | QIODevice::Text))
        return values;
    for (const QString &line : QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'))) {
        const auto comma = line.lastIndexOf(QLatin1Char(','));
        if (!line.startsWith(QLatin1Char('#')) && comma > 0)
            values.insert(line.left(comma), line.mid(comma + 1).trimmed().toDouble());
    }
    return values;
}

void close(double computed, double expected, double tolerance = 1e-6)
{
    QVERIFY2(
        std::abs(computed - expected) < tolerance,
        qPrintable(
            QStringLiteral("%1 against %2").arg(computed, 0, 'g', 12).arg(expected, 0, 'g', 12)));
}

} // namespace

class TstPooling : public QObject
{
    Q_OBJECT
private slots:
    void sleepstudy();
    void dyestuff();
};

// lme4 at its REML variances: group offsets with prior N(0, between / within).
void TstPooling::sleepstudy()
{
    const ReferenceTable data(QStringLiteral("sleepstudy.csv"));
    const auto lme = lmeValues(QStringLiteral("sleepstudy_ri_reml.csv"));
    QCOMPARE(data.rows(), 180);
    const double between = lme[QStringLiteral("vcov[Subject,(Intercept),-]")];
    const double within = lme[QStringLiteral("vcov[Residual,NA,-]")];
    QVERIFY(between > 0.0 && within > 0.0);
    QStringList subjects;
    for (qsizetype i = 0; i < data.rows(); ++i)
        if (!subjects.contains(data.text(i, QStringLiteral("Subject"))))
            subjects << data.text(i, QStringLiteral("Subject"));
    QCOMPARE(subjects.size(), 18);
    RegressionPrior prior = RegressionPrior::flat(20);
    prior.precision.diagonal().tail(18).setConstant(within / between);
    auto model = BayesRegression::start(prior).value();
    for (qsizetype i = 0; i < data.rows(); ++i) {
        Eigen::VectorXd x = Eigen::VectorXd::Zero(20);
        x[0] = 1.0;
        x[1] = data.number(i, QStringLiteral("Days"));
        x[2 + subjects.indexOf(data.text(i, QStringLiteral("Subject")))] = 1.0;
        QVERIFY(!model.learn(x, data.number(i, QStringLiteral("Reaction"))));
    }
    const auto b = model.coefficients();
    const auto se = model.standardErrors();
    QVERIFY(b.ok() && se.ok());
    close(b.value()[0], lme[QStringLiteral("fixef[(Intercept)]")]);
    close(b.value()[1], lme[QStringLiteral("fixef[Days]")]);
    for (int s = 0; s < 18; ++s)
        close(b.value()[2 + s],
              lme[QStringLiteral("ranef[Subject=%1,(Intercept)]").arg(subjects.at(s))]);
    // At the REML optimum the penalised sum of squares over n - 2 is the residual variance (Bates
    // et al. 2015, J. Stat. Softw. 67(1), equation 42, from memory): the scatter agrees too.
    QCOMPARE(model.dof(), 178.0);
    close(model.scale(), lme[QStringLiteral("sigma")]);
    close(se.value()[0], lme[QStringLiteral("se_fixef[(Intercept)]")]);
    close(se.value()[1], lme[QStringLiteral("se_fixef[Days]")]);
}

// Balanced one-way layout: between 1764.05 and within 2451.25 exactly (mean squares 11271.5 and
// 2451.25); shrinkage 0.7825267267.
void TstPooling::dyestuff()
{
    const ReferenceTable data(QStringLiteral("dyestuff.csv"));
    const auto lme = lmeValues(QStringLiteral("dyestuff_reml.csv"));
    QCOMPARE(data.rows(), 30);
    RegressionPrior prior = RegressionPrior::flat(7);
    prior.precision.diagonal().tail(6).setConstant(2451.25 / 1764.05);
    auto model = BayesRegression::start(prior).value();
    double meanOfA = 0.0;
    for (qsizetype i = 0; i < data.rows(); ++i) {
        Eigen::VectorXd x = Eigen::VectorXd::Zero(7);
        x[0] = 1.0;
        x[1 + data.text(i, QStringLiteral("Batch")).at(0).unicode() - u'A'] = 1.0;
        QVERIFY(!model.learn(x, data.number(i, QStringLiteral("Yield"))));
        meanOfA += i < 5 ? data.number(i, QStringLiteral("Yield")) / 5.0 : 0.0;
    }
    const auto b = model.coefficients();
    QVERIFY(b.ok());
    close(b.value()[0], 1527.5);
    // lme4 stopped at 1764.04995: its offsets are right to 5e-7 of themselves, not to 1e-6.
    for (int g = 0; g < 6; ++g)
        QVERIFY(std::abs(b.value()[1 + g] -
                         lme[QStringLiteral("ranef[Batch=%1,(Intercept)]").arg(QChar(u'A' + g))]) <
                1e-5);
    QVERIFY(std::abs(b.value()[1] / (meanOfA - 1527.5) - 0.7825267267) < 1e-9);
    const double means[6] = {1509.893, 1527.891, 1556.062, 1504.415, 1584.233, 1482.505};
    for (int g = 0; g < 6; ++g)
        QVERIFY(std::abs(b.value()[0] + b.value()[1 + g] - means[g]) < 6e-4);
    close(model.scale() * model.scale(), 2451.25);
}

RICKYARD_TEST(TstPooling)
#include "tst_pooling.moc"
