#include "models/domain/fire/wood_left.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <random>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

constexpr double kFeedJoules = 30e6;

// A fire lit at six in the evening, fed every `minutes`, still burning.
Cook burning(FireYard &yard, int feeds, double minutes, double joules = kFeedJoules)
{
    const RecordId pit = yard.books.pits.isEmpty() ? yard.addPit(QStringLiteral("Long pit"))
                                                   : yard.books.pits.firstKey();
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 18), 12, 5);
    cook.fireOut.reset();
    for (int i = 0; i < feeds; ++i)
        yard.burn(cook, joules).time = cook.lit + Duration::rounded(60 * (40 + i * minutes));
    return cook;
}

} // namespace

class TstWoodLeft : public QObject
{
    Q_OBJECT

private slots:
    void evenFeedsGiveTheirPace();
    void lightingIsLeftOut();
    void feedsTogetherAreOne();
    void twoFeedsAreTooFew();
    void onlyTheLastHoursCount();
    void hoursByHand();
    void chanceFallsWithTheHoursToGo();
    void bandHoldsTheTruth();
    void nothingLeft();
};

void TstWoodLeft::evenFeedsGiveTheirPace()
{
    FireYard yard;
    const Cook cook = burning(yard, 8, 30);
    const auto pace = feedPace(yard.books, cook, cook.lit + durationFromHours(5));
    QVERIFY(pace.has_value());
    QCOMPARE(pace->interval, Duration::ofBase(1800));
    QVERIFY(std::abs(pace->perHour.toDouble() / (2 * kFeedJoules) - 1) < 1e-3);
    QVERIFY(pace->error < 1e-3);
}

// An armful at the start says nothing of the night.
void TstWoodLeft::lightingIsLeftOut()
{
    FireYard yard;
    const Cook cook = burning(yard, 4, 30);
    yard.burn(cook, 200e6).time = cook.lit + Duration::ofBase(60);
    const auto pace = feedPace(yard.books, cook, cook.lit + durationFromHours(2.5));
    QVERIFY(pace.has_value());
    QVERIFY(std::abs(pace->perHour.toDouble() / (2 * kFeedJoules) - 1) < 1e-3);
}

void TstWoodLeft::feedsTogetherAreOne()
{
    FireYard yard;
    const Cook cook = burning(yard, 5, 40);
    const QVector<Movement> all(yard.books.movements.cbegin(), yard.books.movements.cend());
    for (const Movement &m : all)
        yard.burn(cook, kFeedJoules).time = m.time + Duration::ofBase(50);
    const auto pace = feedPace(yard.books, cook, cook.lit + durationFromHours(4));
    QVERIFY(pace.has_value());
    QVERIFY(std::abs(hours(pace->interval) - 40.0 / 60) < 0.02);
    QVERIFY(std::abs(pace->perHour.toDouble() / (2 * kFeedJoules * 1.5) - 1) < 1e-3);
}

void TstWoodLeft::twoFeedsAreTooFew()
{
    FireYard yard;
    const Cook cook = burning(yard, 2, 30);
    QVERIFY(!feedPace(yard.books, cook, cook.lit + durationFromHours(2)));
}

// Fast in the first hours, slow since: the pace is that of the last three hours.
void TstWoodLeft::onlyTheLastHoursCount()
{
    FireYard yard;
    const Cook cook = burning(yard, 12, 10);
    for (int i = 1; i <= 8; ++i)
        yard.burn(cook, kFeedJoules).time = cook.lit + Duration::rounded(60 * (150 + i * 45.0));
    const Instant now = cook.lit + Duration::ofBase(60 * (150 + 8 * 45) + 60);
    const auto pace = feedPace(yard.books, cook, now);
    QVERIFY(pace.has_value());
    QVERIFY(std::abs(hours(pace->interval) - 0.75) < 0.01);
}

// 600 MJ at 60 MJ an hour, the last feed ten minutes old of thirty: a third of an hour and ten.
void TstWoodLeft::hoursByHand()
{
    FeedPace pace;
    pace.perHour = Heat::ofBase(60'000'000);
    pace.interval = Duration::ofBase(1800);
    pace.lastFeed = utc(2026, 3, 1, 22, 0);
    pace.error = 0;
    const Instant now = utc(2026, 3, 1, 22, 10);
    const WoodLeft left = woodLeft(Heat::ofBase(600'000'000), 0, pace, now, std::nullopt, false);
    QVERIFY(std::abs(hours(left.lasts) - (10 + 20.0 / 60)) < 1e-3);
    QCOMPARE(left.runsOut(now), utc(2026, 3, 2, 8, 30));
    // A tenth of error in the pace to come: a factor of exp(0.12816) either way.
    QVERIFY(std::abs(hours(left.most) - (20.0 / 60 + 10 * std::exp(0.128155))) < 1e-3);
    QVERIFY(std::abs(hours(left.least) - (20.0 / 60 + 10 * std::exp(-0.128155))) < 1e-3);
    QCOMPARE(left.chanceEnough, 1.0);
}

void TstWoodLeft::chanceFallsWithTheHoursToGo()
{
    FeedPace pace;
    pace.perHour = Heat::ofBase(60'000'000);
    pace.interval = Duration::ofBase(1800);
    pace.lastFeed = utc(2026, 3, 1, 22, 0);
    pace.error = 0.1;
    const Instant now = pace.lastFeed;
    double last = 1.1;
    for (int toGo = 4; toGo <= 20; ++toGo) {
        const WoodLeft left = woodLeft(Heat::ofBase(600'000'000), 0.05, pace, now,
                                       now + durationFromHours(toGo), false);
        QVERIFY(left.chanceEnough < last);
        last = left.chanceEnough;
        if (toGo == 10) // half an hour of the fire that burns, nine and a half of ten
            QVERIFY(left.chanceEnough > 0.6 && left.chanceEnough < 0.7);
    }
    QVERIFY(last < 0.01);
}

// Nights whose pace to come differs from the measured one as the model says: the 80 % band holds
// the true hours in 75 to 85 of 100.
void TstWoodLeft::bandHoldsTheTruth()
{
    std::mt19937_64 random(5);
    std::normal_distribution<double> normal(0, 1);
    int held = 0;
    constexpr int kNights = 2000;
    for (int i = 0; i < kNights; ++i) {
        const double truth = 60e6 * std::exp(0.2 * normal(random));
        FeedPace pace;
        pace.error = 0.15;
        pace.perHour = Heat::rounded(truth * std::exp(pace.error * normal(random)));
        pace.lastFeed = utc(2026, 3, 1, 22);
        const double left = 500e6;
        const WoodLeft said = woodLeft(Heat::rounded(left * std::exp(0.1 * normal(random))), 0.1,
                                       pace, pace.lastFeed, std::nullopt, false);
        const double lasts = left / (truth * std::exp(0.1 * normal(random)));
        held += lasts >= hours(said.least) && lasts <= hours(said.most) ? 1 : 0;
    }
    const double share = static_cast<double>(held) / kNights;
    QVERIFY2(share > 0.75 && share < 0.85, qPrintable(QString::number(share)));
}

void TstWoodLeft::nothingLeft()
{
    FeedPace pace;
    pace.perHour = Heat::ofBase(60'000'000);
    pace.interval = Duration::ofBase(1800);
    pace.lastFeed = utc(2026, 3, 1, 22, 0);
    const WoodLeft left = woodLeft(Heat(), 0.1, pace, pace.lastFeed + durationFromHours(1),
                                   pace.lastFeed + durationFromHours(5), false);
    QCOMPARE(left.lasts, Duration());
    QCOMPARE(left.chanceEnough, 0.0);
    QVERIFY(left.need.base() > 0);
}

RICKYARD_TEST(TstWoodLeft)
#include "tst_wood_left.moc"
