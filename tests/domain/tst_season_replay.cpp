// Following the advice through invented seasons with real weather: the share of events short stays
// under the accepted risk, with less wood on the yard than the rule of thumb that does as well. The
// larger study is tests/benchmarks/study_reorder.cpp.
#include "tests/domain/reorder_season.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstSeasonReplay : public QObject
{
    Q_OBJECT
private slots:
    void theSeasonIsWhatItSays();
    void theAdviceKeepsItsRiskWithLessWood();
};

void TstSeasonReplay::theSeasonIsWhatItSays()
{
    const auto days = newarkDays();
    QCOMPARE(int(days.size()), 364);
    const auto mean = [&](int first, int count) {
        double sum = 0;
        for (int d = first; d < first + count; ++d)
            sum += days[size_t(d)].celsius * 1.8 + 32;
        return sum / count;
    };
    // The record's own monthly means: January 35.6 °F, July 80.7 °F.
    QVERIFY(std::abs(mean(0, 31) - 35.6) < 0.1);
    QVERIFY(std::abs(mean(181, 31) - 80.7) < 0.1);
    const ReplaySeason season = replaySeason(1, false, days);
    QCOMPARE(season.events, 52);
    const ReplaySeason again = replaySeason(1, false, days);
    QCOMPARE(again.cooks.back().need, season.cooks.back().need);
    // What the plan expects is what happens: half of the needs above the middle, a tenth outside
    // the 90 % interval, within four standard errors.
    double above = 0;
    double outside = 0;
    double count = 0;
    double cold = 0;
    double warm = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed)
        for (const ReplayCook &cook : replaySeason(seed, true, days).cooks) {
            above += cook.need > cook.expected.quantile(0.5) ? 1 : 0;
            outside +=
                cook.need < cook.expected.quantile(0.05) || cook.need > cook.expected.quantile(0.95)
                    ? 1
                    : 0;
            ++count;
            if (cook.day % 365 < 45)
                cold = std::max(cold, cook.expected.quantile(0.5));
            if (std::abs(cook.day % 365 - 196) < 20)
                warm = std::max(warm, cook.expected.quantile(0.5));
        }
    QVERIFY(std::abs(above / count - 0.5) < 4 * 0.5 / std::sqrt(count) + 0.03);
    QVERIFY(std::abs(outside / count - 0.1) < 4 * 0.3 / std::sqrt(count) + 0.02);
    QVERIFY(cold > 1.1 * warm);
}

void TstSeasonReplay::theAdviceKeepsItsRiskWithLessWood()
{
    constexpr int seasons = 6;
    const auto days = newarkDays();
    QVERIFY(!days.empty());
    AdviceSettings settings;
    settings.paths = 400;
    const ReplayResult ours = replayAll(seasons, false, days, advice(settings));
    const double threshold = thresholdFor(seasons, false, days, 1.0, ours.share());
    const ReplayResult same = replayAll(seasons, false, days, ruleOfThumb(threshold, 1.0));
    const ReplayResult bare = replayAll(seasons, false, days, ruleOfThumb(0.0, 1.0));
    qInfo("advice: %d of %d events short, %.2f cords on average, %.1f orders a year; the rule does "
          "as well with a cord when %.2f are left, %.2f cords on average",
          ours.shortEvents, ours.events, ours.meanStock / kCordPounds, ours.orders, threshold,
          same.meanStock / kCordPounds);
    QVERIFY(ours.share() <= settings.accepted);
    QVERIFY(same.share() <= ours.share());
    QVERIFY(ours.meanStock < same.meanStock);
    // The seasons do punish: ordering when the last stick is gone leaves many events short.
    QVERIFY(bare.share() > 0.1);
    QVERIFY(ours.orders > 2);
}

RICKYARD_TEST(TstSeasonReplay)
#include "tst_season_replay.moc"
