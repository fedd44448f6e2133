// The spread of due dates against closed forms: Boost's normal, lognormal and negative binomial
// distributions, and direct enumeration.
#include "models/domain/fire/watch.h"
#include "models/domain/upkeep/due_paths.h"
#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/meters.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

#include <boost/math/distributions/lognormal.hpp>
#include <boost/math/distributions/negative_binomial.hpp>
#include <boost/math/distributions/normal.hpp>

using namespace rickyard::test;

namespace {

constexpr int kMany = 20000; // a chance is then known to 0.0035
constexpr double kNear = 0.012;
const double kScore90 = boost::math::quantile(boost::math::normal(), 0.95);

QByteArray both(double got, double wanted)
{
    return QByteArray::number(got) + ' ' + QByteArray::number(wanted);
}

PlannedUse useOf(RecordId planned, double middle, double lower, double upper)
{
    PlannedUse use;
    use.plannedCook = planned;
    use.middle = heatFromSeasonedPounds(middle);
    use.lower = heatFromSeasonedPounds(lower);
    use.upper = heatFromSeasonedPounds(upper);
    return use;
}

} // namespace

class TstDuePaths : public QObject
{
    Q_OBJECT

    static const inline QDate kNow{2026, 11, 23};

    // A pit with a planned cook every week from the 28th, 06:00 to 18:00.
    static UpkeepBooks planned(int cooks)
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        for (int i = 0; i < cooks; ++i)
            y.plan(tom, y.at(QDate(2026, 11, 28).addDays(7 * i), 6), 12);
        return y;
    }
    static DueSpread spread(const UpkeepBooks &y, const UpkeepTask &task,
                            const QVector<PlannedUse> &uses = {}, int paths = kMany)
    {
        return DuePaths(y.books, y.fuel, uses, y.at(kNow, 9), y.local, paths).spreadOf(task);
    }

private slots:
    void aCertainMeterHasAnExactDay()
    {
        UpkeepBooks y = planned(6);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        task.everyCooks = 3;
        DueSpread s = spread(y, task);
        QVERIFY(s.known && s.fixed);
        QCOMPARE(s.middle, QDate(2026, 12, 12));
        QCOMPARE(s.early, s.middle);
        QCOMPARE(s.late, s.middle);
        QCOMPARE(s.at, y.at(QDate(2026, 12, 12), 18));
        QCOMPARE(s.reason, QStringLiteral("after 3 cooks"));
        QCOMPARE(s.lightings.size(), 6);
        for (int i = 0; i < 6; ++i)
            QCOMPARE(s.lightings.at(i).chance, i < 3 ? 0.0 : 1.0);
        // Fire hours as planned, with no log to say otherwise.
        task.everyCooks.reset();
        task.everyFireHours = hoursOf(25);
        s = spread(y, task);
        QVERIFY(s.fixed);
        QCOMPARE(s.middle, QDate(2026, 12, 12));
        // Nothing planned gets there.
        task.everyFireHours = hoursOf(100);
        s = spread(y, task);
        QVERIFY(!s.known && !s.middle.isValid());
        QCOMPARE(s.chance, 0.0);
    }

    void daysHaveNoSpread()
    {
        UpkeepBooks y = planned(3);
        for (int i = 0; i < 9; ++i) // cooks that nobody planned are no matter to days
            y.cook(1, y.at(QDate(2026, 8, 1).addDays(9 * i), 6),
                   y.at(QDate(2026, 8, 1).addDays(9 * i), 18));
        UpkeepTask &task = y.task("Test", 1, QDate(2026, 11, 10));
        task.everyDays = 30;
        const DueSpread s = spread(y, task);
        QVERIFY(s.known && s.fixed);
        QCOMPARE(s.middle, QDate(2026, 12, 10));
        QCOMPARE(s.early, s.middle);
        QCOMPARE(s.late, s.middle);
        QCOMPARE(s.at, y.at(QDate(2026, 12, 11)));
        QCOMPARE(s.lightings.last().chance, 1.0); // 12 December
        QCOMPARE(s.lightings.at(1).chance, 0.0);  // 5 December
        QCOMPARE(s.reason, QStringLiteral("after 30 days"));
    }

    // Normal uses that are as good as always above zero: the sum after n cooks is normal, and the
    // first passage by cook n has the chance 1 - Phi((L - n m) / (s sqrt n)).
    void normalUsesPassAsBoostSays()
    {
        UpkeepBooks y = planned(8);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        task.everySeasoned = heatFromSeasonedPounds(500);
        QVector<PlannedUse> uses;
        for (RecordId id = 1; id <= 8; ++id)
            uses << useOf(id, 100, 0, 100 + 20 * kScore90); // sd 20; a lower end of 0: normal
        const DueSpread s = spread(y, task, uses);
        const auto by = [](int n) {
            return boost::math::cdf(boost::math::complement(
                boost::math::normal(100.0 * n, 20.0 * std::sqrt(n)), 500.0));
        };
        QCOMPARE(s.lightings.size(), 8);
        for (int n = 1; n < 8; ++n) // lit when n cooks are over
            QVERIFY2(std::abs(s.lightings.at(n).chance - by(n)) < kNear,
                     both(s.lightings.at(n).chance, by(n)));
        // 10 % by the 4th? 0.6 %: no; by the 5th 50 %, by the 6th 98 %.
        QCOMPARE(s.early, QDate(2026, 12, 26));
        QCOMPARE(s.late, QDate(2027, 1, 2));
        QVERIFY(s.middle == s.early || s.middle == s.late);
        QVERIFY(!s.fixed);
        QCOMPARE(s.reason, QStringLiteral("after 500 seasoned lb"));
    }

    void skewUsesMeetTheirThreeNumbers()
    {
        UpkeepBooks y = planned(3);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        const double sd = 0.2;
        const QVector<PlannedUse> uses{
            useOf(1, 100, 100 * std::exp(-sd * kScore90), 100 * std::exp(sd * kScore90))};
        for (const double limit : {80.0, 100.0, 120.0}) {
            task.everySeasoned = heatFromSeasonedPounds(limit);
            const double chance = boost::math::cdf(
                boost::math::complement(boost::math::lognormal(std::log(100.0), sd), limit));
            QVERIFY(std::abs(spread(y, task, uses).lightings.at(1).chance - chance) < kNear);
        }
    }

    // What is not known of a pit's norm is the same for all its cooks: with next to no scatter of
    // their own two cooks take twice what one takes, and P(2 X >= L) = P(X >= L / 2).
    void aNormThatIsHardlyKnownErrsTheSameWay()
    {
        UpkeepBooks y = planned(3);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        task.everySeasoned = heatFromSeasonedPounds(260);
        WatchSettings settings;
        settings.scatter = 1e-4;
        settings.scatterWorth = 1000;
        y.fuel.watch = std::make_shared<FuelWatch>(settings);
        const double sd = 0.3;
        QVector<PlannedUse> uses;
        for (RecordId id = 1; id <= 2; ++id)
            uses << useOf(id, 100, 100 * std::exp(-sd * kScore90), 100 * std::exp(sd * kScore90));
        const double together = boost::math::cdf(
            boost::math::complement(boost::math::lognormal(std::log(100.0), sd), 130.0));
        QVERIFY(std::abs(spread(y, task, uses).lightings.at(2).chance - together) < kNear);
        // Independent, the sum of two is narrower and seldom gets that far.
        y.fuel.watch.reset();
        QVERIFY(spread(y, task, uses).lightings.at(2).chance < together - 0.03);
    }

    // Five cooks that fulfilled a plan: three took the hours planned, two twice as many. All
    // outcomes can be counted.
    void lengthsAreThoseOfTheLog()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        for (int i = 0; i < 5; ++i) {
            const Instant lit = y.at(QDate(2026, 9, 5).addDays(7 * i), 6);
            const RecordId plan = y.plan(tom, lit, 10);
            y.books.cooks[y.cook(tom, lit, lit + hoursOf(i < 3 ? 10 : 20))].planned = plan;
        }
        QCOMPARE(lengthRatios(y.books, y.at(kNow)).size(), size_t(5));
        for (int i = 0; i < 3; ++i)
            y.plan(tom, y.at(QDate(2026, 11, 28).addDays(7 * i), 0), 10);
        UpkeepTask &task = y.task("Sweep", tom, QDate(2026, 11, 1));
        task.everyFireHours = hoursOf(15);
        DueSpread s = spread(y, task);
        QVERIFY(std::abs(s.lightings.at(1).chance - 0.4) < kNear); // one of two fifths
        QCOMPARE(s.lightings.at(2).chance, 1.0);
        task.everyFireHours = hoursOf(25);
        s = spread(y, task);
        QCOMPARE(s.lightings.at(1).chance, 0.0);
        // Both ordinary, 20 h: 0.36. Anything else gets there.
        QVERIFY(std::abs(s.lightings.at(2).chance - 0.64) < kNear);
        QCOMPARE(s.early, QDate(2026, 12, 5));
        QCOMPARE(s.middle, QDate(2026, 12, 5));
        QCOMPARE(s.late, QDate(2026, 12, 12));
        // Four are too few to go by.
        y.books.cooks.remove(1);
        QCOMPARE(spread(y, task).late, QDate(2026, 12, 12));
        QVERIFY(spread(y, task).fixed);
    }

    // Cooks that nobody planned: k in T days, a Poisson rate known no better than Gamma(k, T); the
    // number in h days is negative binomial with k successes of chance T / (T + h).
    void unplannedCooksAreNegativeBinomial()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const Instant now = y.at(kNow, 9);
        // T = 100 d from the first. Short cooks, so that they never run into each other.
        y.cook(tom, now - hoursOf(24 * 100), now - hoursOf(24 * 100 - 0.1), 1);
        for (int i = 1; i <= 6; ++i)
            y.cook(tom, now - hoursOf(24 * 15 * i - 30), now - hoursOf(24 * 15 * i - 30.1), 1);
        const UnplannedRate rate = unplannedRate(y.books, tom, now);
        QCOMPARE(rate.cooks, 6);
        QVERIFY(rate.known && std::abs(rate.days - 100) < 1e-9);
        y.plan(tom, now + hoursOf(24 * 40), 12);
        UpkeepTask &task = y.task("Sweep", tom, kNow);
        for (const int limit : {1, 2, 4}) {
            task.everyCooks = limit;
            const double chance = boost::math::cdf(boost::math::complement(
                boost::math::negative_binomial(6, 100.0 / 140.0), limit - 1));
            const DueSpread s = spread(y, task);
            QVERIFY2(std::abs(s.lightings.first().chance - chance) < kNear,
                     both(s.lightings.first().chance, chance));
            QVERIFY(!s.fixed && s.early < s.late);
        }
        // A plan makes them planned, by its time or by its record.
        y.plan(tom, now - hoursOf(24 * 15 - 30), 0.1);
        y.books.cooks[3].planned = y.plan(tom, now - hoursOf(24 * 300), 1);
        QCOMPARE(unplannedRate(y.books, tom, now).cooks, 4);
        // A log of three weeks tells nothing.
        QVERIFY(!unplannedRate(y.books, tom, now - hoursOf(24 * 79)).known);
        QCOMPARE(unplannedRate(y.books, tom, now - hoursOf(24 * 79)).perDay(), 0.0);
    }

    void whicheverComesFirst()
    {
        UpkeepBooks y = planned(8);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        task.everySeasoned = heatFromSeasonedPounds(500);
        task.everyDays = 50; // 21 December
        QVector<PlannedUse> uses;
        for (RecordId id = 1; id <= 8; ++id)
            uses << useOf(id, 130, 0, 130 + 30 * kScore90);
        const DueSpread s = spread(y, task, uses);
        // By the fourth cook, out on 19 December, with the chance of 520 and sd 60 above 500.
        const double chance =
            boost::math::cdf(boost::math::complement(boost::math::normal(520, 60), 500.0));
        QVERIFY(std::abs(s.lightings.at(4).chance - 1.0) < 1e-9); // 26 December: the days are up
        QCOMPARE(s.late, QDate(2026, 12, 21));
        QCOMPARE(s.early, QDate(2026, 12, 19));
        QVERIFY(chance > 0.6);
        QCOMPARE(s.reason, QStringLiteral("after 500 seasoned lb"));
    }

    void moreCooksNeverLaterHigherLimitsNeverSooner()
    {
        UpkeepBooks y = planned(8);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        QVector<PlannedUse> uses;
        for (RecordId id = 1; id <= 8; ++id)
            uses << useOf(id, 100, 70, 140);
        QDate before;
        for (const double limit : {150.0, 250.0, 350.0, 450.0}) {
            task.everySeasoned = heatFromSeasonedPounds(limit);
            const DueSpread s = spread(y, task, uses, kDuePaths);
            QVERIFY(!before.isValid() || s.early >= before);
            before = s.early;
        }
        const DueSpread plain = spread(y, task, uses, kDuePaths);
        const RecordId extra = y.plan(1, y.at(QDate(2026, 12, 2), 6), 12);
        const DueSpread more =
            spread(y, task, uses + QVector{useOf(extra, 100, 70, 140)}, kDuePaths);
        QVERIFY(more.early <= plain.early && more.middle <= plain.middle &&
                more.late <= plain.late);
        QVERIFY(more.middle < plain.middle);
        // The same books and moment, the same answer.
        const DueSpread again =
            spread(y, task, uses + QVector{useOf(extra, 100, 70, 140)}, kDuePaths);
        for (int i = 0; i < again.lightings.size(); ++i)
            QCOMPARE(again.lightings.at(i).chance, more.lightings.at(i).chance);
        for (int i = 1; i < more.lightings.size(); ++i)
            QVERIFY(more.lightings.at(i).chance >= more.lightings.at(i - 1).chance);
    }

    void theDayIsTheYardsOwn()
    {
        // Out at 23:30 on the long day: in UTC it is the 2nd already.
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.plan(tom, y.at(QDate(2026, 11, 1), 11.5), 12);
        UpkeepTask &task = y.task("Sweep", tom, QDate(2026, 10, 1));
        task.everyCooks = 1;
        const DueSpread s =
            DuePaths(y.books, y.fuel, {}, y.at(QDate(2026, 10, 30)), y.local).spreadOf(task);
        QCOMPARE(s.middle, QDate(2026, 11, 1));
        QCOMPARE(s.early, QDate(2026, 11, 1));
    }

    void whatIsFullAlreadyHasNoSpread()
    {
        UpkeepBooks y = planned(3);
        y.cook(1, y.at(QDate(2026, 11, 14), 6), y.at(QDate(2026, 11, 14), 18), 120);
        UpkeepTask &task = y.task("Sweep", 1, QDate(2026, 11, 1));
        task.everySeasoned = heatFromSeasonedPounds(100);
        const DueSpread s = spread(y, task, {useOf(1, 100, 70, 140)});
        QVERIFY(s.fixed);
        QCOMPARE(s.middle, QDate(2026, 11, 14));
        QCOMPARE(s.lightings.first().chance, 1.0);
    }

    void theAnswerSaysItInWords()
    {
        UpkeepBooks y = planned(8);
        UpkeepTask &task = y.task("Stack sweep", 1, QDate(2026, 11, 1), 15);
        task.everySeasoned = heatFromSeasonedPounds(500);
        QVector<PlannedUse> uses;
        for (RecordId id = 1; id <= 8; ++id)
            uses << useOf(id, 100, 50, 200);
        const UpkeepAnswer answer =
            upkeepAnswer(y.books, y.fuel, uses, y.at(kNow, 9),
                         {false, QStringLiteral("America/Chicago"), QStringLiteral("en_US")});
        const TaskDue &due = answer.tasks.first();
        QVERIFY(!due.certain);
        QCOMPARE(due.due, QDate(2026, 12, 26));
        QCOMPARE(due.dueEarly, QDate(2026, 12, 19));
        QCOMPARE(due.dueLate, QDate(2027, 1, 2));
        QCOMPARE(dueBandText(due, y.local), QStringLiteral("8 in 10 between 19 Dec and 2 Jan"));
        QVERIFY2(answer.headline.plainSentence().startsWith(QStringLiteral(
                     "Nothing recorded as overdue; the stack sweep on Long Tom falls "
                     "due about 26 Dec (8 in 10 between 19 Dec and 2 Jan)")),
                 qPrintable(answer.headline.plainSentence()));
        QCOMPARE(due.lightings.size(), 8);
    }
};

RICKYARD_TEST(TstDuePaths)
#include "tst_due_paths.moc"
