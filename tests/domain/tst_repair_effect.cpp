// Before and after a repair: the textbook comparison as its special case, how often the interval
// holds, and what is said.
#include "models/domain/fire/repair_effect.h"
#include "tests/domain/real_weather.h"
#include "tests/domain/repaired_season.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

// Cooks whose logarithms of actual over expected are these tenths.
QVector<RepairCook> ofLogs(const std::vector<double> &logs, const std::vector<double> &trust = {})
{
    QVector<RepairCook> cooks;
    for (std::size_t i = 0; i < logs.size(); ++i)
        cooks << RepairCook{1e9 * std::exp(logs[i] / 10.0), 1e9, trust.empty() ? 1.0 : trust[i]};
    return cooks;
}

// R's `sleep` (Cushny and Peebles 1905; Student 1908, Biometrika 6:20): extra hours of sleep, two
// groups of ten. Here in tenths of a logarithm.
const std::vector<double> kSleep1{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
const std::vector<double> kSleep2{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

double logOf(double percent)
{
    return 10.0 * std::log1p(percent / 100.0);
}

// Before at `excess`, after at `now`, both scattering by +-`scatter` in turn.
RepairQuestion steady(double excess, double now, int before, int after, double scatter = 0.08)
{
    const auto cooks = [&](double level, int count) {
        QVector<RepairCook> all;
        for (int i = 0; i < count; ++i)
            all << RepairCook{1e9 * (1.0 + level) * (1.0 + (i % 2 == 0 ? scatter : -scatter)), 1e9,
                              1.0};
        return all;
    };
    RepairQuestion q;
    q.before = cooks(excess, before);
    q.after = cooks(now, after);
    q.scatter = scatter;
    q.scatterWorth = 40.0;
    q.fault = 0.15;
    return q;
}

} // namespace

class TstRepairEffect : public QObject
{
    Q_OBJECT
private slots:
    void pooledComparisonOfSleep();
    void weightedComparisonOfSleep();
    void commonNormDropsOut();
    void intervalHolds_data();
    void intervalHolds();
    void paysForItself();
    void paysLater();
    void moreCooksWouldTell();
    void didNotCure();
    void burnsMore();
    void tooFew();
};

// t.test(extra ~ group, data = sleep, var.equal = TRUE) of R 4.2.2, whose group 1 less group 2 is
// ours with the sign turned: -3.3638740323 to 0.2038740323 at 95 %, -3.0523778317 to -0.1076221683
// at 90 %. (Welch's, for unequal scatter, is -3.3654832307 to 0.2054832307: no different to the
// crew.)
void TstRepairEffect::pooledComparisonOfSleep()
{
    RepairQuestion q;
    q.before = ofLogs(kSleep1);
    q.after = ofLogs(kSleep2);
    q.level = 0.95;
    const RepairEffect wide = repairEffect(q);
    QCOMPARE(wide.dof, 18.0);
    QVERIFY(std::abs(logOf(wide.percent) - 1.58) < 1e-9);
    QVERIFY(std::abs(logOf(wide.lower) + 0.2038740323) < 1e-9);
    QVERIFY(std::abs(logOf(wide.upper) - 3.3638740323) < 1e-9);
    q.level = 0.90;
    const RepairEffect narrow = repairEffect(q);
    QVERIFY(std::abs(logOf(narrow.lower) - 0.1076221683) < 1e-9);
    QVERIFY(std::abs(logOf(narrow.upper) - 3.0523778317) < 1e-9);
    QCOMPARE(narrow.verdict, RepairVerdict::BurnsMore);
}

// lm(extra ~ group, weights = rep(c(1, 0.5, 0.25, 1, 1), 4)) and confint(level = 0.9) of R 4.2.2.
void TstRepairEffect::weightedComparisonOfSleep()
{
    const std::vector<double> trust{1, 0.5, 0.25, 1, 1, 1, 0.5, 0.25, 1, 1};
    RepairQuestion q;
    q.before = ofLogs(kSleep1, trust);
    q.after = ofLogs(kSleep2, trust);
    const RepairEffect e = repairEffect(q);
    QVERIFY(std::abs(logOf(e.percent) - 1.6166666667) < 1e-9);
    QVERIFY(std::abs(logOf(e.lower) - 0.1348503182) < 1e-9);
    QVERIFY(std::abs(logOf(e.upper) - 3.0984830151) < 1e-9);
}

void TstRepairEffect::commonNormDropsOut()
{
    RepairQuestion q = steady(0.15, 0.0, 8, 8);
    const RepairEffect e = repairEffect(q);
    for (QVector<RepairCook> *cooks : {&q.before, &q.after})
        for (RepairCook &cook : *cooks)
            cook.expected *= 1.3;
    const RepairEffect other = repairEffect(q);
    QVERIFY(std::abs(e.percent - other.percent) < 1e-9);
    QVERIFY(std::abs(e.lower - other.lower) < 1e-9);
    QVERIFY(std::abs(e.joulesSaved / other.joulesSaved - 1.0) < 1e-9);
    QVERIFY(std::abs(e.percent - 100.0 * (1.0 / 1.15 - 1.0)) < 1e-9);
}

void TstRepairEffect::intervalHolds_data()
{
    QTest::addColumn<double>("fault");
    QTest::addColumn<double>("cure");
    QTest::addColumn<bool>("fromClimb");
    QTest::newRow("cured, since the climb began") << 1.15 << 1.0 << true;
    QTest::newRow("half cured, since the climb began") << 1.20 << 0.5 << true;
    QTest::newRow("not cured, since the climb began") << 1.15 << 0.0 << true;
    QTest::newRow("cured, since the fault began") << 1.15 << 1.0 << false;
}

// Through the watch, in real weather: of the 90 % intervals 85 to 95 % hold the truth.
void TstRepairEffect::intervalHolds()
{
    QFETCH(double, fault);
    QFETCH(double, cure);
    QFETCH(bool, fromClimb);
    const auto year = realWeather();
    QVERIFY(!year.empty());
    RepairPlan plan;
    plan.season.year = &year;
    plan.season.cooksEach = 42;
    plan.season.fault = fault;
    plan.cure = cure;
    plan.fromClimb = fromClimb;
    const RepairStudy s = studyRepairs(plan, 200);
    qInfo("holds in %.1f %%, leans %+.1f %%, an effect seen in %.0f %%", 100.0 * s.covered, s.lean,
          100.0 * s.seen);
    QVERIFY(s.covered >= 0.85 && s.covered <= 0.95);
    QVERIFY(std::abs(s.lean) < 2.0);
    if (cure == 0.0)
        QVERIFY(s.seen < 0.12);
    else
        QVERIFY(s.seen > 0.5);
}

void TstRepairEffect::paysForItself()
{
    RepairQuestion q = steady(0.20, 0.0, 10, 10, 0.04);
    q.centsPerJoule = 2000.0 / 1e9; // 20 a cook
    q.costCents = 1500.0;
    const RepairEffect e = repairEffect(q);
    QCOMPARE(e.verdict, RepairVerdict::PaidBack);
    // 20 % of 1e9 J saved on the average cook (within the +-4 % that do not quite cancel).
    QVERIFY(std::abs(e.joulesSaved / 0.2e9 - 1.0) < 0.01);
    QVERIFY(std::abs(e.centsSaved - 400.0) < 4.0);
    QVERIFY(std::abs(*e.payback - 3.75) < 0.05);
    QCOMPARE(e.paidAtCook, 4);
    QVERIFY(*e.paybackSoonest < *e.payback && *e.payback < *e.paybackLatest);
    QVERIFY(std::abs(*e.paybackSoonest - 1500.0 / (e.joulesUpper * q.centsPerJoule)) < 1e-9);
    QVERIFY(repairSentence(e, QStringLiteral("The new gasket"), {})
                .startsWith(QStringLiteral(
                    "The new gasket paid for itself in 4 cooks: 17 % less wood a cook (")));
}

void TstRepairEffect::paysLater()
{
    RepairQuestion q = steady(0.20, 0.0, 10, 4, 0.04);
    q.centsPerJoule = 2000.0 / 1e9;
    q.costCents = 3900.0;
    const RepairEffect e = repairEffect(q);
    QCOMPARE(e.verdict, RepairVerdict::Saves);
    QCOMPARE(e.paidAtCook, 0);
    QVERIFY(repairSentence(e, QStringLiteral("The weld"), {})
                .contains(QStringLiteral("It should pay for itself in about 10 cooks (")));
    q.costCents.reset();
    QVERIFY(!repairEffect(q).payback);
}

// The number that is promised is the number it takes: with that many more cooks of the same scatter
// the interval is no wider than the fault, with one fewer it still is.
void TstRepairEffect::moreCooksWouldTell()
{
    const RepairQuestion q = steady(0.15, 0.10, 16, 2);
    const RepairEffect e = repairEffect(q);
    QCOMPARE(e.verdict, RepairVerdict::NoEffectYet);
    QVERIFY(e.cooksToTell && *e.cooksToTell > 0);
    const double scatter =
        std::log1p(e.upper / 100.0) - std::log1p(e.lower / 100.0); // its width now
    QVERIFY(scatter > std::log(1.15));
    const auto widthWith = [&](int more) {
        // t quantiles at 95 % of a large number of degrees of freedom hardly differ: the width goes
        // with the root of 1 / before + 1 / after.
        return scatter * std::sqrt((1.0 / 16 + 1.0 / (2 + more)) / (1.0 / 16 + 1.0 / 2));
    };
    QVERIFY(widthWith(*e.cooksToTell) <= std::log(1.15) * 1.01);
    QVERIFY(widthWith(*e.cooksToTell - 1) > std::log(1.15) * 0.99);
    QCOMPARE(repairSentence(e, QStringLiteral("The new gasket"), {}),
             QStringLiteral("The new gasket: no effect seen yet; %1 cooks more would tell.")
                 .arg(*e.cooksToTell));
    // With two cooks before no number after would do.
    const RepairEffect blind = repairEffect(steady(0.15, 0.10, 2, 2));
    QVERIFY(!blind.cooksToTell);
    QVERIFY(repairSentence(blind, QStringLiteral("It"), {}).contains(QStringLiteral("too few")));
}

void TstRepairEffect::didNotCure()
{
    const RepairEffect e = repairEffect(steady(0.15, 0.15, 20, 20));
    QCOMPARE(e.verdict, RepairVerdict::NoEffect);
    QCOMPARE(*e.cooksToTell, 0);
    QVERIFY(e.lower > 100.0 * (1.0 / 1.15 - 1.0)); // no room for a full cure
}

void TstRepairEffect::burnsMore()
{
    RepairQuestion q = steady(0.0, 0.25, 10, 10);
    q.centsPerJoule = 1e-6;
    q.costCents = 1500.0;
    const RepairEffect e = repairEffect(q);
    QCOMPARE(e.verdict, RepairVerdict::BurnsMore);
    QVERIFY(e.joulesSaved < 0.0 && !e.payback);
    QVERIFY(repairSentence(e, QStringLiteral("The new door"), {})
                .contains(QStringLiteral("25 % more wood a cook")));
}

void TstRepairEffect::tooFew()
{
    RepairQuestion q = steady(0.15, 0.0, 1, 0);
    QCOMPARE(repairEffect(q).verdict, RepairVerdict::TooFew);
    q = steady(0.15, 0.0, 1, 1);
    q.scatterWorth = 0.0; // nothing to tell scatter from effect
    QCOMPARE(repairEffect(q).verdict, RepairVerdict::TooFew);
    q = steady(0.15, 0.0, 8, 8);
    const double whole = repairEffect(q).percent;
    q.after << RepairCook{std::nan(""), 1e9, 1.0} << RepairCook{1e9, 0.0, 1.0};
    QCOMPARE(repairEffect(q).percent, whole);
}

RICKYARD_TEST(TstRepairEffect)
#include "tst_repair_effect.moc"
