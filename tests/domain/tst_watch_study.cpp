// The bars that the watch has to pass, on a small number of invented seasons; the larger study is
// tests/benchmarks/study_watch.cpp.
#include "models/domain/fire/watch.h"
#include "tests/domain/watch_season.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::test;

class TstWatchStudy : public QObject
{
    Q_OBJECT
private slots:
    void bars_data();
    void bars();
};

void TstWatchStudy::bars_data()
{
    QTest::addColumn<double>("scatter");
    QTest::addColumn<double>("cooksPerFalseAlarm");
    QTest::addColumn<double>("median15");
    QTest::addColumn<double>("missed10");
    QTest::newRow("8 %") << 0.08 << 180.0 << 5.0 << 0.05;
    QTest::newRow("12 %") << 0.12 << 180.0 << 8.0 << 1.0;
}

// The same seasons are judged by the oracle that knows every true parameter and by the rule of
// thumb, which shows what the figures are worth.
void TstWatchStudy::bars()
{
    QFETCH(double, scatter);
    QFETCH(double, cooksPerFalseAlarm);
    QFETCH(double, median15);
    QFETCH(double, missed10);
    SeasonPlan plan;
    plan.scatter = scatter;
    constexpr int seasons = 60;
    const WatchSettings settings;
    const auto ours = [&](const SeasonPlan &p) { return watchSeason(p, settings); };
    const auto clean = study(plan, seasons, 1.0, ours);
    const auto more15 = study(plan, seasons, 1.15, ours);
    const auto more10 = missed10 < 1.0 ? study(plan, seasons, 1.10, ours) : StudyResult();
    const auto thumb = study(plan, 20, 1.0, thumbSeason);
    qInfo("%.0f cooks a false alarm (%d of them), +15 %% after %.0f, +10 %% missed %.1f %%; thumb "
          "%.0f",
          clean.cooksPerFalseAlarm, clean.falseAlarms, more15.medianToCatch, 100.0 * more10.missed,
          thumb.cooksPerFalseAlarm);
    QVERIFY(clean.falseAlarms > 0); // a watch that never speaks is none
    QVERIFY(clean.cooksPerFalseAlarm >= cooksPerFalseAlarm);
    QVERIFY(more15.medianToCatch <= median15);
    QVERIFY(more10.missed <= missed10);
    QVERIFY(thumb.cooksPerFalseAlarm < 0.5 * clean.cooksPerFalseAlarm);
}

RICKYARD_TEST(TstWatchStudy)
#include "tst_watch_study.moc"
