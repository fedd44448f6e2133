// Pit, wood or weather: the evidence against R, planted causes in seasons of real weather, and what
// is said when records are missing or two causes explain the same.
#include "models/domain/fire/diagnosis.h"
#include "models/domain/fire/diagnosis_words.h"
#include "models/domain/statistics/effect_evidence.h"
#include "tests/domain/planted_season.h"
#include "tests/domain/real_weather.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

bool close(double a, double b, double within = 1e-9)
{
    return std::abs(a - b) <= within * std::max(1.0, std::abs(b));
}

// Cooks of `pits` pits in turn, without scatter, `before` each and `since` each; ids count up, the
// pit's first cook since is pit + pits * before.
QVector<EvidenceCook> quiet(int pits, int before, int since)
{
    QVector<EvidenceCook> cooks;
    for (int n = 0; n < before + since; ++n)
        for (int pit = 1; pit <= pits; ++pit) {
            EvidenceCook c;
            c.cook = cooks.size() + 1;
            c.pit = pit;
            c.lit = Instant::ofSeconds(86400LL * cooks.size());
            c.sd = 0.1;
            c.logRatio = (n % 2 == 0 ? 0.05 : -0.05) - 0.5 * std::log1p(c.sd * c.sd);
            c.windShare = 0.1 + 0.02 * (n % 5);
            c.lots.insert(1, 1.0);
            cooks << c;
        }
    return cooks;
}

DiagnosisQuestion asking(RecordId pit, RecordId since)
{
    DiagnosisQuestion q;
    q.pit = pit;
    q.since = since;
    return q;
}

const Cause *causeOf(const Diagnosis &d, CauseKind kind)
{
    for (const Cause &cause : d.causes)
        if (cause.kind == kind)
            return &cause;
    return nullptr;
}

double wholeOf(const Diagnosis &d)
{
    double whole = 0.0;
    for (const Cause &cause : d.causes)
        whole += cause.probability;
    return whole;
}

DiagnosisNames invented()
{
    return {QStringLiteral("Long Tom"), {{1, QStringLiteral("Post oak 1")}, {2, {}}}};
}

} // namespace

class TstDiagnosis : public QObject
{
    Q_OBJECT
private slots:
    void initTestCase();
    void evidenceIsThatOfR();
    void balanceBehindTheSlopes();
    void plantedCauseRanksFirst_data();
    void plantedCauseRanksFirst();
    void nothingPlanted();
    void worksWithoutRecords();
    void pitAndNewLotCannotBeToldApart();
    void anotherPitOnTheLotTells();
    void earlierCooksClearALot();
    void burningLess();
    void oneAbsurdCookDecidesNothing();
    void nothingToJudge();
    void words();

private:
    std::vector<WeatherHour> m_year;
};

void TstDiagnosis::initTestCase()
{
    m_year = realWeather();
    QVERIFY(!m_year.empty());
}

// Computed with R 4.2.2: the marginal by integrate() over effects above 0 of the multivariate
// normal density with the full covariance matrix, the posterior by solve(); pnorm(log.p = TRUE).
void TstDiagnosis::evidenceIsThatOfR()
{
    const std::vector<double> y{0.02, -0.05, 0.11, 0.16, 0.09, 0.21};
    const std::vector<double> v{0.01, 0.0081, 0.0121, 0.01, 0.01, 0.0144};
    const std::vector<double> x{0.0, 0.0, 1.0, 1.0, 0.5, 1.2};
    const statistics::EffectEvidence work(
        y, v, {{0.0, 0.0, 0.03, 0.03, 0.0, 0.0}, {0.03, 0.015, 0.0, 0.03, 0.01, 0.02}});
    const auto wide = work.explain(x, {0.0, 0.15});
    QVERIFY(close(wide.logEvidence, 2.388807724897));
    QVERIFY(close(wide.mean, 0.131747034193));
    QVERIFY(close(wide.sd, 0.056967268386));
    const auto sharp = work.explain(x, {0.12, 0.06});
    QVERIFY(close(sharp.logEvidence, 2.735532455718));
    QVERIFY(close(sharp.mean, 0.136534628865));
    QVERIFY(close(sharp.sd, 0.042974530583));
    QVERIFY(close(statistics::logCumulativeNormal(-3.0), -6.607726221510));
    QVERIFY(close(statistics::logCumulativeNormal(-7.9), -34.206228170982));
    QVERIFY(close(statistics::logCumulativeNormal(-20.0), -203.917155371097, 1e-6));
}

// The two slopes that the diagnosis takes for granted, against the heat balance: 1.3 % of the heat
// a kelvin, and what a lost shelter adds in proportion to the wind above 1 m/s.
void TstDiagnosis::balanceBehindTheSlopes()
{
    HeatShape shape = heatShape(inventedPit(0));
    const auto heat = [&](double pit, double wind) {
        HeatCook cook;
        cook.target = pit;
        cook.outsideAtStart = 12.0;
        cook.foodMass = 40.0;
        for (int h = 0; h < 12; ++h)
            cook.course.push_back({3600.0, pit, 12.0, wind, 0.0});
        return totalHeat(heatColumns(shape, cook));
    };
    const double perKelvin = (heat(125.0, 4.0) / heat(110.0, 4.0) - 1.0) / 15.0;
    QVERIFY(perKelvin > 0.011 && perKelvin < 0.015);
    std::vector<double> slopes;
    for (const double wind : {4.0, 6.0, 8.0, 10.0}) {
        shape.windShare = 0.55 * 0.65;
        const double half = heat(110.0, wind);
        shape.windShare = 0.65;
        slopes.push_back((heat(110.0, wind) / half - 1.0) / (wind - 1.0));
    }
    for (const double slope : slopes)
        QVERIFY(std::abs(slope / slopes.front() - 1.0) < 0.15);
}

void TstDiagnosis::plantedCauseRanksFirst_data()
{
    QTest::addColumn<int>("kind");
    QTest::newRow("this pit") << int(CauseKind::ThisPit);
    QTest::newRow("this lot") << int(CauseKind::ThisLot);
    QTest::newRow("wind and shelter") << int(CauseKind::WindShelter);
    QTest::newRow("preheat") << int(CauseKind::Preheat);
    QTest::newRow("door openings") << int(CauseKind::DoorOpenings);
    QTest::newRow("feed gaps") << int(CauseKind::FeedGaps);
    QTest::newRow("thermometer") << int(CauseKind::Thermometer);
    QTest::newRow("wood") << int(CauseKind::Wood);
}

// The bar: first in at least 80 % of the seasons in which the watch has a flag up. The larger study
// is tests/benchmarks/study_diagnosis.cpp.
void TstDiagnosis::plantedCauseRanksFirst()
{
    QFETCH(int, kind);
    PlantedPlan plan;
    plan.year = &m_year;
    plan.cause = static_cast<CauseKind>(kind);
    int flagged = 0;
    int right = 0;
    int rightOfAll = 0;
    constexpr int seasons = 60;
    for (int i = 0; i < seasons; ++i) {
        plan.seed = 20000U + static_cast<std::uint64_t>(i);
        const PlantedOutcome o = diagnosedSeason(plan);
        QVERIFY(!o.diagnosis.empty());
        QVERIFY(close(wholeOf(o.diagnosis), 1.0));
        const bool first = o.right(plan.cause);
        rightOfAll += first ? 1 : 0;
        flagged += o.flagged ? 1 : 0;
        right += first && o.flagged ? 1 : 0;
    }
    qInfo("first in %d of %d flagged seasons, %d of all %d", right, flagged, rightOfAll, seasons);
    QVERIFY(flagged >= seasons / 2);
    QVERIFY(right >= 0.8 * flagged);
    QVERIFY(rightOfAll >= 0.7 * seasons);
}

// Without a cause and without a flag: chance, mostly; and never told with confidence otherwise.
void TstDiagnosis::nothingPlanted()
{
    PlantedPlan plan;
    plan.year = &m_year;
    plan.cause = CauseKind::Chance;
    int chance = 0;
    int quietSeasons = 0;
    for (int i = 0; i < 60; ++i) {
        plan.seed = 20000U + static_cast<std::uint64_t>(i);
        const PlantedOutcome o = diagnosedSeason(plan);
        if (o.flagged)
            continue;
        ++quietSeasons;
        chance += o.right(CauseKind::Chance) ? 1 : 0;
    }
    QVERIFY(quietSeasons >= 45);
    QVERIFY(chance >= 0.7 * quietSeasons);
}

void TstDiagnosis::worksWithoutRecords()
{
    auto cooks = quiet(3, 15, 8);
    for (EvidenceCook &c : cooks) {
        c.lots.clear();
        if (c.pit == 2 && c.cook > 45)
            c.logRatio += std::log(1.2);
    }
    const Diagnosis d = diagnosisOf(cooks, asking(2, 47));
    QCOMPARE(d.causes.first().kind, CauseKind::ThisPit);
    QCOMPARE(d.cooksSince, 8);
    QVERIFY(close(wholeOf(d), 1.0));
    QVERIFY(d.causes.first().probability > 0.6);
    // Between the excess itself and what the prior drags it down to.
    QVERIFY(d.causes.first().percent > 12.0 && d.causes.first().percent < 20.5);
    QVERIFY(d.causes.first().lower < d.causes.first().percent);
    QVERIFY(d.causes.first().upper > d.causes.first().percent);
    const QVector<CauseKind> none{CauseKind::Preheat, CauseKind::DoorOpenings, CauseKind::FeedGaps,
                                  CauseKind::Thermometer};
    QCOMPARE(d.notJudged, none);
    QCOMPARE(causeOf(d, CauseKind::Preheat), nullptr);
    QVERIFY(notJudgedWords(d).contains(QStringLiteral("door openings")));
}

void TstDiagnosis::pitAndNewLotCannotBeToldApart()
{
    auto cooks = quiet(1, 15, 8);
    for (EvidenceCook &c : cooks)
        if (c.cook > 15) {
            c.logRatio += std::log(1.2);
            c.lots = {{2, 1.0}};
        }
    const Diagnosis d = diagnosisOf(cooks, asking(1, 16));
    QVERIFY(!d.toldApart);
    const Cause *lot = causeOf(d, CauseKind::ThisLot);
    QVERIFY(lot && lot->lot == 2);
    const Cause *pit = causeOf(d, CauseKind::ThisPit);
    QVERIFY(std::abs(lot->logEvidence - pit->logEvidence) < std::log(3.0));
    const QString experiment = experimentFor(*pit, *lot, invented());
    QCOMPARE(experiment, QStringLiteral("Burn another lot on Long Tom, or lot 2 on another pit."));
    QVERIFY(diagnosisSentence(d, invented(), {}).contains(QStringLiteral("cannot be told from")));
}

void TstDiagnosis::anotherPitOnTheLotTells()
{
    auto cooks = quiet(2, 15, 8);
    for (EvidenceCook &c : cooks)
        if (c.cook > 30 && c.cook % 4 < 2) {
            c.logRatio += std::log(1.25);
            c.lots = {{2, 1.0}};
        }
    // Either pit's cooks on the lot are high, their others are not.
    const Diagnosis d = diagnosisOf(cooks, asking(1, 33));
    QCOMPARE(d.causes.first().kind, CauseKind::ThisLot);
    QCOMPARE(d.causes.first().lot, 2);
    QVERIFY(d.causes.first().probability > 0.8);
    QVERIFY(d.causes.first().evidence.touchedMean > 0.15);
    QVERIFY(std::abs(d.causes.first().evidence.othersMean) < 0.08);
}

// Burned for long without harm: not the lot.
void TstDiagnosis::earlierCooksClearALot()
{
    auto cooks = quiet(1, 15, 8);
    for (EvidenceCook &c : cooks)
        if (c.cook > 15)
            c.logRatio += std::log(1.2);
    const Diagnosis d = diagnosisOf(cooks, asking(1, 16));
    QCOMPARE(d.causes.first().kind, CauseKind::ThisPit);
    QVERIFY(causeOf(d, CauseKind::ThisLot)->probability < 0.1);
}

// The mirror image of a climb has the mirrored answer.
void TstDiagnosis::burningLess()
{
    auto more = quiet(2, 15, 8);
    for (EvidenceCook &c : more) {
        c.preheat = c.cook > 30 ? 2.0 : 1.0;
        if (c.cook > 30)
            c.logRatio += std::log(1.2);
    }
    auto less = more;
    for (EvidenceCook &c : less) {
        const double v = std::log1p(c.sd * c.sd);
        c.logRatio = -(c.logRatio + 0.5 * v) - 0.5 * v;
        c.preheat = 3.0 - *c.preheat;
    }
    DiagnosisQuestion question = asking(1, 31);
    const Diagnosis up = diagnosisOf(more, question);
    question.direction = WatchFlag::Less;
    const Diagnosis down = diagnosisOf(less, question);
    QCOMPARE(up.causes.first().kind, CauseKind::Preheat);
    QCOMPARE(down.causes.size(), up.causes.size());
    for (qsizetype i = 0; i < up.causes.size(); ++i) {
        QCOMPARE(down.causes.at(i).kind, up.causes.at(i).kind);
        QVERIFY(close(down.causes.at(i).probability, up.causes.at(i).probability));
        QVERIFY(close(1.0 + down.causes.at(i).percent / 100.0,
                      1.0 / (1.0 + up.causes.at(i).percent / 100.0)));
    }
    QVERIFY(down.causes.first().percent < 0.0);
    QVERIFY(down.causes.first().lower < down.causes.first().upper);
}

void TstDiagnosis::oneAbsurdCookDecidesNothing()
{
    auto cooks = quiet(3, 15, 8);
    for (EvidenceCook &c : cooks)
        if (c.cook == 58) // one of pit 1's
            c.logRatio = std::log(40.0);
    const Diagnosis d = diagnosisOf(cooks, asking(1, 46));
    const Diagnosis clean = diagnosisOf(quiet(3, 15, 8), asking(1, 46));
    QVERIFY(clean.causes.first().kind == CauseKind::Chance);
    for (const Cause &cause : d.causes)
        QVERIFY(cause.percent < 12.0);
}

void TstDiagnosis::nothingToJudge()
{
    QVERIFY(diagnosisOf({}, asking(1, 1)).empty());
    QVERIFY(diagnosisOf(quiet(1, 5, 5), asking(1, 77)).empty());
    auto broken = quiet(1, 5, 5);
    for (EvidenceCook &c : broken)
        c.sd = 0.0;
    QVERIFY(diagnosisOf(broken, asking(1, 6)).empty());
    // The very first cook of a pit.
    const Diagnosis first = diagnosisOf(quiet(1, 0, 1), asking(1, 1));
    QVERIFY(!first.empty() && close(wholeOf(first), 1.0));
}

void TstDiagnosis::words()
{
    Cause cause;
    cause.kind = CauseKind::Thermometer;
    cause.probability = 0.87;
    cause.percent = 14.4;
    cause.lower = 8.6;
    cause.upper = 20.0;
    cause.evidence = {8, 0.14, 15, -0.012, 0.4, 15.0};
    Wording wording;
    QCOMPARE(evidenceWords(cause, invented(), wording),
             QStringLiteral("The probe above the dial: 1 °F before, 27 °F since. Long Tom: +14 % "
                            "over 8 cooks; other pits: −1 % over 15 cooks."));
    wording.metric = true;
    QVERIFY(evidenceWords(cause, invented(), wording).contains(QStringLiteral("15 °C since")));
    Diagnosis d;
    d.causes << cause;
    QCOMPARE(diagnosisSentence(d, invented(), wording),
             QStringLiteral("Most likely a dial that reads low (87 in 100), about +14 % (+9 % to "
                            "+20 %)."));
    for (int k = 0; k <= int(CauseKind::Chance); ++k) {
        cause.kind = static_cast<CauseKind>(k);
        QVERIFY(!causeName(cause, invented()).isEmpty());
        QVERIFY(!evidenceWords(cause, invented(), wording).isEmpty());
        QVERIFY(!checksOf(cause.kind).isEmpty());
        Cause pit;
        pit.kind = CauseKind::ThisPit;
        QVERIFY(!experimentFor(pit, cause, invented()).isEmpty());
    }
    QCOMPARE(checksBasis(), QStringLiteral("common practice, no source"));
    QVERIFY(!checksOf(CauseKind::ThisPit).first().caution.isEmpty());
}

RICKYARD_TEST(TstDiagnosis)
#include "tst_diagnosis.moc"
