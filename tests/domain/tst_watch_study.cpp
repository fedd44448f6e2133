// The bars that the watch has to pass, on a small number of invented seasons in invented and in
// real weather; the larger study is tests/benchmarks/study_watch.cpp.
#include "models/domain/fire/watch.h"
#include "tests/domain/real_weather.h"
#include "tests/domain/watch_season.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

class TstWatchStudy : public QObject
{
    Q_OBJECT
private slots:
    void initTestCase();
    void theYearIsRead();
    void bars_data();
    void bars();

private:
    std::vector<WeatherHour> m_year;
};

void TstWatchStudy::initTestCase()
{
    m_year = realWeather();
}

// Figures of the file, taken from it with other tools (awk): 8,703 rows, 27 hours missing between
// the first and the last; 43.88 in of rain in all; the first hour has 39.02 F and 10.36 mph.
void TstWatchStudy::theYearIsRead()
{
    QCOMPARE(m_year.size(), std::size_t(8730));
    double rain = 0.0;
    double windiest = 0.0;
    for (const WeatherHour &hour : m_year) {
        rain += hour.rain;
        windiest = std::max(windiest, hour.wind);
    }
    QVERIFY(std::abs(rain - 43.88 * 25.4) < 0.01);
    QVERIFY(std::abs(windiest - 42.58 * 0.44704) < 0.01);
    QVERIFY(std::abs(m_year.front().temperature - 3.9) < 1e-9);
    QVERIFY(std::abs(m_year.front().wind - 10.36 * 0.44704) < 1e-9);
}

void TstWatchStudy::bars_data()
{
    QTest::addColumn<bool>("real");
    QTest::addColumn<int>("pits");
    QTest::addColumn<double>("scatter");
    QTest::addColumn<double>("median15");
    QTest::addColumn<double>("missed10");
    QTest::newRow("invented weather, 3 pits, 8 %") << false << 3 << 0.08 << 5.0 << 0.05;
    QTest::newRow("invented weather, 3 pits, 12 %") << false << 3 << 0.12 << 8.0 << 1.0;
    QTest::newRow("real weather, 3 pits, 8 %") << true << 3 << 0.08 << 5.0 << 0.05;
    QTest::newRow("real weather, 3 pits, 12 %") << true << 3 << 0.12 << 8.0 << 1.0;
    QTest::newRow("real weather, 1 pit, 8 %") << true << 1 << 0.08 << 5.0 << 0.05;
    QTest::newRow("real weather, 1 pit, 12 %") << true << 1 << 0.12 << 8.0 << 1.0;
}

// The same seasons are judged by the oracle that knows every true parameter and by the rule of
// thumb, which shows what the figures are worth.
void TstWatchStudy::bars()
{
    QFETCH(bool, real);
    QFETCH(int, pits);
    QFETCH(double, scatter);
    QFETCH(double, median15);
    QFETCH(double, missed10);
    constexpr double kCooksPerFalseAlarm = 180.0;
    SeasonPlan plan;
    plan.scatter = scatter;
    plan.pits = pits;
    plan.year = real ? &m_year : nullptr;
    constexpr int seasons = 60;
    const WatchSettings settings;
    const auto ours = [&](const SeasonPlan &p) { return watchSeason(p, settings); };
    const auto oracle = [](const SeasonPlan &p) { return oracleSeason(p, 3.502); };
    const auto clean = study(plan, seasons, 1.0, ours);
    const auto more15 = study(plan, seasons, 1.15, ours);
    const auto more10 = missed10 < 1.0 ? study(plan, seasons, 1.10, ours) : StudyResult();
    const auto known = study(plan, seasons, 1.15, oracle);
    const auto thumb = study(plan, 20, 1.0, thumbSeason);
    qInfo("%.0f cooks a false alarm (%d of them), +15 %% after %.0f (oracle %.0f), +10 %% missed "
          "%.1f %% (nan: not asked); thumb %.0f",
          clean.cooksPerFalseAlarm, clean.falseAlarms, more15.medianToCatch, known.medianToCatch,
          missed10 < 1.0 ? 100.0 * more10.missed : std::nan(""), thumb.cooksPerFalseAlarm);
    QVERIFY(clean.falseAlarms > 0); // a watch that never speaks is none
    QVERIFY(clean.cooksPerFalseAlarm >= kCooksPerFalseAlarm);
    QVERIFY(more15.medianToCatch <= median15);
    QVERIFY(known.medianToCatch <= more15.medianToCatch);
    QVERIFY(more10.missed <= missed10);
    QVERIFY(thumb.cooksPerFalseAlarm < 0.5 * clean.cooksPerFalseAlarm);
}

RICKYARD_TEST(TstWatchStudy)
#include "tst_watch_study.moc"
