// The watch over invented seasons: it learns from earlier cooks only, keeps its false-alarm rate,
// catches a pit that burns more, is not moved by one absurd cook, and forgets what a repair made
// untrue. The larger study is tests/benchmarks/study_watch.cpp.
#include "models/domain/fire/watch.h"
#include "models/domain/fire/watch_tuning.h"
#include "tests/domain/watch_season.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

std::vector<SeasonCook> season(int pits, int cooksEach, std::uint64_t seed, double scatter = 0.08)
{
    SeasonPlan plan;
    plan.pits = pits;
    plan.cooksEach = cooksEach;
    plan.seed = seed;
    plan.scatter = scatter;
    return inventedSeason(plan);
}

double widthOf(const WatchForecast &f)
{
    return (f.upper - f.lower) / f.expected;
}

// A pit whose scatter is none: what the watch does then follows from the ratios given.
std::vector<SeasonCook> steady(int cooks)
{
    auto all = season(1, cooks, 5);
    for (SeasonCook &c : all)
        c.cook.actual = c.truth;
    return all;
}

} // namespace

class TstWatch : public QObject
{
    Q_OBJECT
private slots:
    void firstCookIsSensibleAndWide();
    void newPitLearnsFromTheCrew();
    void earlierCooksOnly();
    void scoresAreStandardNormal();
    void partsAddUp();
    void oneAbsurdCook();
    void climbIsHeldBackAndGivenBack();
    void nothingFoundTeachesTheNorm();
    void knownGoodIsLearned();
    void repairStartsAnew();
    void burningLess();
    void excessIsMeasured();
    void doubtfulCooks();
    void leftOutWithReason();
    void tuningIsGuarded();
};

void TstWatch::firstCookIsSensibleAndWide()
{
    FuelWatch watch;
    const auto all = season(1, 300, 11);
    const HeatColumns &columns = all.front().cook.columns;
    const auto none = watch.expect(1, columns);
    QVERIFY(none.has_value());
    // Prior: the balance over the efficiency, give or take some third and the pit's own part.
    QVERIFY(std::abs(none->expected / (totalHeat(columns) / kEfficiency) - 1.0) < 1e-9);
    QVERIFY(widthOf(*none) > 1.0 && widthOf(*none) < 3.0 && none->lower > 0.0);
    std::vector<double> widths;
    for (const SeasonCook &c : all) {
        if (c.number == 4 || c.number == 21 || c.number == 300)
            widths.push_back(widthOf(*watch.expect(1, columns)));
        watch.add(c.cook);
    }
    QCOMPARE(widths.size(), std::size_t(3));
    QVERIFY2(widths[0] < 0.6 * widthOf(*none), qPrintable(QString::number(widths[0])));
    QVERIFY(widths[1] < widths[0] && widths[2] < widths[1]);
    // With 300 cooks hardly more than the scatter itself: 2 x 1.645 x 8 %.
    QVERIFY2(std::abs(widths[2] - 0.263) < 0.03, qPrintable(QString::number(widths[2])));
}

void TstWatch::newPitLearnsFromTheCrew()
{
    FuelWatch watch;
    const auto all = season(3, 30, 12);
    const HeatColumns columns = all.front().cook.columns;
    const double before = widthOf(*watch.expect(77, columns));
    for (const SeasonCook &c : all)
        watch.add(c.cook);
    const double after = widthOf(*watch.expect(77, columns));
    const double own = widthOf(*watch.expect(1, columns));
    QVERIFY(after < 0.75 * before);
    QVERIFY(own < 0.6 * after);
}

// What comes later changes nothing that was said before.
void TstWatch::earlierCooksOnly()
{
    const auto all = season(2, 40, 13);
    FuelWatch plain;
    FuelWatch shaken;
    for (std::size_t i = 0; i < all.size(); ++i) {
        WatchCook changed = all[i].cook;
        if (i >= 50)
            changed.actual *= 3.0;
        const auto a = plain.add(all[i].cook);
        const auto b = shaken.add(changed);
        if (i <= 50)
            QCOMPARE(a.forecast.expected, b.forecast.expected);
        if (i < 50)
            QCOMPARE(a.up, b.up);
    }
}

void TstWatch::scoresAreStandardNormal()
{
    double sum = 0.0;
    double squares = 0.0;
    int inside = 0;
    int count = 0;
    for (std::uint64_t s = 0; s < 25; ++s) {
        FuelWatch watch;
        for (const SeasonCook &c : season(2, 40, 100 + s)) {
            const auto v = watch.add(c.cook);
            if (c.number <= 5)
                continue;
            sum += v.score;
            squares += v.score * v.score;
            inside +=
                c.cook.actual >= v.forecast.lower && c.cook.actual <= v.forecast.upper ? 1 : 0;
            ++count;
        }
    }
    const double mean = sum / count;
    const double sd = std::sqrt(squares / count - mean * mean);
    qInfo("%d scores: mean %.3f, sd %.3f, %.1f %% within the 90 %% interval", count, mean, sd,
          100.0 * inside / count);
    QVERIFY(std::abs(mean) < 0.12);
    QVERIFY(sd > 0.88 && sd < 1.06);
    QVERIFY(inside > 0.88 * count && inside < 0.95 * count);
}

void TstWatch::partsAddUp()
{
    FuelWatch watch;
    const auto all = season(2, 20, 14);
    for (const SeasonCook &c : all)
        watch.add(c.cook);
    for (const RecordId pit : {1, 2, 99}) {
        const auto parts = watch.expectedParts(pit, all.back().cook.columns);
        const auto whole = watch.expect(pit, all.back().cook.columns);
        QVERIFY(parts && whole);
        QVERIFY(std::abs(totalHeat(*parts) / whole->expected - 1.0) < 1e-12);
    }
}

// A cook written down ten times too large: no flag by itself, and the norm stays where it was.
void TstWatch::oneAbsurdCook()
{
    for (const double factor : {10.0, 0.1, 100.0}) {
        FuelWatch plain;
        FuelWatch shaken;
        const auto all = season(1, 40, 15);
        double worst = 0.0;
        for (const SeasonCook &c : all) {
            WatchCook changed = c.cook;
            changed.actual *= c.number == 25 ? factor : 1.0;
            plain.add(c.cook);
            const auto v = shaken.add(changed);
            if (c.number == 25)
                QVERIFY(!v.raised && std::abs(v.score) > 3.0);
            if (c.number >= 25)
                worst = std::max(worst, std::abs(shaken.expect(1, c.cook.columns)->expected /
                                                     plain.expect(1, c.cook.columns)->expected -
                                                 1.0));
        }
        QVERIFY2(worst < 0.02, qPrintable(QString::number(worst)));
        QVERIFY(shaken.norm().scale() < 1.15 * plain.norm().scale());
    }
}

// Two cooks 13 % high lift the sum above the hold; then ordinary ones let it die.
void TstWatch::climbIsHeldBackAndGivenBack()
{
    FuelWatch watch;
    int rows = 0;
    bool wasHeld = false;
    for (const SeasonCook &c : steady(60)) {
        WatchCook cook = c.cook;
        // A scatter of 6 % up and down, so that there is one.
        cook.actual *= c.number % 2 == 0 ? 1.06 : 1.0 / 1.06;
        if (c.number > 30 && c.number <= 32)
            cook.actual = c.truth * 1.13;
        const auto v = watch.add(cook);
        wasHeld = wasHeld || v.heldBack;
        QCOMPARE(v.heldBack, watch.heldBack(1) > 0);
        QVERIFY(!v.raised);
        QCOMPARE(watch.norm().rows() + watch.heldBack(1), c.number);
        rows = watch.norm().rows();
    }
    QVERIFY(wasHeld);
    QCOMPARE(rows, 60); // all were given back
}

void TstWatch::nothingFoundTeachesTheNorm()
{
    FuelWatch watch;
    bool raised = false;
    for (const SeasonCook &c : season(1, 40, 16)) {
        WatchCook cook = c.cook;
        cook.actual *= c.number > 25 ? 1.2 : 1.0;
        raised = watch.add(cook).raised || raised;
    }
    QVERIFY(raised && watch.flag(1) == WatchFlag::More && watch.heldBack(1) > 5);
    const HeatColumns columns = season(1, 1, 16).front().cook.columns;
    const double before = watch.expect(1, columns)->expected;
    watch.nothingFound(1);
    QCOMPARE(watch.heldBack(1), 0);
    QCOMPARE(watch.flag(1), WatchFlag::None);
    QCOMPARE(watch.norm().rows(), 40);
    QVERIFY(watch.expect(1, columns)->expected > 1.03 * before);
    QVERIFY(!watch.excess(1).has_value());
}

void TstWatch::knownGoodIsLearned()
{
    FuelWatch watch;
    for (const SeasonCook &c : season(1, 60, 17)) {
        WatchCook cook = c.cook;
        cook.actual *= c.number > 20 ? 1.2 : 1.0;
        cook.knownGood = c.number > 20 && c.number <= 50;
        const auto v = watch.add(cook);
        if (cook.knownGood)
            QVERIFY(v.up == 0.0 && v.flag == WatchFlag::None && !v.heldBack);
    }
    QVERIFY(watch.flag(1) == WatchFlag::None);
    QVERIFY(watch.norm().rows() >= 50);
}

void TstWatch::repairStartsAnew()
{
    FuelWatch watch;
    const auto all = season(2, 70, 18);
    double clean = 0.0;
    double spread = 0.0;
    bool flagged = false;
    for (const SeasonCook &c : all) {
        WatchCook cook = c.cook;
        if (cook.pit == 1 && c.number == 26) {
            clean = watch.expect(1, all.front().cook.columns)->expected;
            spread = watch.expect(1, all.front().cook.columns)->relativeSd;
        }
        cook.actual *= cook.pit == 1 && c.number > 25 && c.number <= 40 ? 1.25 : 1.0;
        if (cook.pit == 1 && c.number == 41) {
            QVERIFY(flagged && watch.heldBack(1) > 5);
            watch.repaired(1);
            QCOMPARE(watch.flag(1), WatchFlag::None);
            QCOMPARE(watch.heldBack(1), 0);
            const auto after = watch.expect(1, all.front().cook.columns);
            QVERIFY(std::abs(after->expected / clean - 1.0) < 0.06);
            QVERIFY(after->relativeSd > spread); // what the repair did is not known yet
        }
        const auto v = watch.add(cook);
        flagged = flagged || (v.pit == 1 && v.raised);
    }
    QVERIFY(std::abs(watch.expect(1, all.front().cook.columns)->expected / clean - 1.0) < 0.06);
}

void TstWatch::burningLess()
{
    int seen = 0;
    for (std::uint64_t s = 0; s < 10; ++s) {
        FuelWatch watch;
        bool less = false;
        for (const SeasonCook &c : season(2, 45, 200 + s)) {
            WatchCook cook = c.cook;
            cook.actual *= cook.pit == 1 && c.number > 25 ? 0.80 : 1.0;
            const auto v = watch.add(cook);
            less = less || (v.pit == 1 && v.raised && v.flag == WatchFlag::Less && c.number > 25);
        }
        seen += less ? 1 : 0;
    }
    QVERIFY2(seen >= 8, qPrintable(QString::number(seen)));
}

void TstWatch::excessIsMeasured()
{
    int covered = 0;
    int dated = 0;
    double sum = 0.0;
    constexpr int seasons = 30;
    for (std::uint64_t s = 0; s < seasons; ++s) {
        FuelWatch watch;
        const auto all = season(3, 45, 300 + s);
        RecordId first = 0;
        for (const SeasonCook &c : all) {
            WatchCook cook = c.cook;
            if (cook.pit == 1 && c.number > 25) {
                first = first ? first : cook.cook;
                cook.actual *= 1.25;
            }
            watch.add(cook);
        }
        const auto excess = watch.excess(1);
        QVERIFY(excess.has_value());
        sum += excess->percent / seasons;
        covered += excess->lower <= 25.0 && excess->upper >= 25.0 ? 1 : 0;
        // Three pits take turns: within two cooks of this pit.
        dated += std::abs(excess->since - first) <= 6 ? 1 : 0;
        QVERIFY(excess->joulesPerCook > 0.0 && excess->cooks >= 10);
    }
    qInfo("+25 %% planted: mean %.1f %%, covered %d of %d, dated %d", sum, covered, seasons, dated);
    QVERIFY(std::abs(sum - 25.0) < 4.0);
    QVERIFY(covered >= 23);
    QVERIFY(dated >= 25);
}

// A cook whose wood was only guessed counts as the share it is trusted.
void TstWatch::doubtfulCooks()
{
    FuelWatch sure;
    FuelWatch unsure;
    const auto all = season(1, 4, 19);
    for (std::size_t i = 0; i < 3; ++i) {
        WatchCook cook = all[i].cook;
        sure.add(cook);
        cook.trust = 0.25;
        unsure.add(cook);
    }
    const HeatColumns &next = all[3].cook.columns;
    QVERIFY(widthOf(*unsure.expect(1, next)) > 1.1 * widthOf(*sure.expect(1, next)));
    QVERIFY(widthOf(*sure.expect(1, next, 0.25)) > 1.3 * widthOf(*sure.expect(1, next)));
}

void TstWatch::leftOutWithReason()
{
    FuelWatch watch;
    const auto all = season(1, 2, 20);
    WatchCook cook = all[0].cook;
    for (const double actual : {0.0, -5.0, std::nan(""), double(INFINITY)}) {
        cook.actual = actual;
        QVERIFY(!watch.add(cook).leftOut.isEmpty());
    }
    cook = all[0].cook;
    cook.columns[WindColumn] = std::nan("");
    QVERIFY(!watch.add(cook).leftOut.isEmpty());
    cook.columns = {};
    QVERIFY(!watch.add(cook).leftOut.isEmpty());
    cook = all[0].cook;
    cook.trust = 0.0;
    QVERIFY(!watch.add(cook).leftOut.isEmpty());
    QCOMPARE(watch.norm().rows(), 0);
    QVERIFY(!watch.expect(1, HeatColumns{}).has_value());
    QVERIFY(watch.add(all[0].cook).leftOut.isEmpty());
    watch.nothingFound(55); // a pit never seen: nothing happens
    watch.repaired(55);
    QVERIFY(!watch.excess(55).has_value());
}

// The beliefs move only with enough cooks and when they say so clearly; then they foretell better.
void TstWatch::tuningIsGuarded()
{
    const WatchSettings defaults;
    QVector<WatchCook> cooks;
    for (const SeasonCook &c : season(3, 9, 21))
        cooks << c.cook;
    QCOMPARE(tunedSettings(cooks, defaults).pitWhole, defaults.pitWhole); // 27 are too few
    // Pits that are exactly alike: their own parts are believed smaller.
    cooks.clear();
    auto all = season(3, 40, 22);
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].cook.actual =
            1.1 * totalHeat(all[i].cook.columns) / kEfficiency * (i % 2 == 0 ? 1.05 : 1.0 / 1.05);
        cooks << all[i].cook;
    }
    const WatchSettings tuned = tunedSettings(cooks, defaults);
    QVERIFY(tuned.pitWhole < defaults.pitWhole);
    QVERIFY(foretold(cooks, tuned) > foretold(cooks, defaults));
}

RICKYARD_TEST(TstWatch)
#include "tst_watch.moc"
