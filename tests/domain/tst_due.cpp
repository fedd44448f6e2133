// The upkeep answer: what is overdue, what it blocks, and the sentence, worked by hand.
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstDue : public QObject
{
    Q_OBJECT

    static UpkeepBooks supperWeek()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Tuesday, 18, 3);
        y.cook(tom, y.at(QDate(2026, 11, 21), 6), y.at(QDate(2026, 11, 21), 18));
        const RecordId supper = y.event("Mill Field Supper", y.at(QDate(2026, 11, 28), 17), 3, 1);
        y.plan(tom, y.at(QDate(2026, 11, 28), 4), 12, supper);
        return y;
    }

private slots:
    void overdueNamesTheWorkTheDayAndTheTime()
    {
        UpkeepBooks y = supperWeek();
        UpkeepTask &drain = y.task("Grease drain", 1, QDate(2026, 11, 1), 15, 8);
        drain.everyCooks = 1;
        drain.blocksLighting = true;
        y.task("Gasket test", 1, QDate(2026, 10, 15), 15).everyDays = 30; // due 14 Nov
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        UpkeepAnswer answer = y.answer(now);
        QCOMPARE(answer.tasks.size(), 2);
        const TaskDue &first = answer.tasks.first();
        QCOMPARE(first.task, 1);
        QVERIFY(first.overdue && first.blocksNextCook);
        QCOMPARE(first.due, QDate(2026, 11, 21));
        QCOMPARE(first.beforeEvent, 1);
        QCOMPARE(first.beforeCook, 1);
        QVERIFY(answer.tasks.at(1).overdue && !answer.tasks.at(1).blocksNextCook);
        QCOMPARE(answer.tasks.at(1).due, QDate(2026, 11, 14));
        // The gasket test fell due first and goes first on Tuesday.
        QCOMPARE(answer.headline.plainSentence(),
                 QStringLiteral("2 tasks are overdue: do the grease drain on Long Tom before Sat "
                                "28 Nov; there is time on Tue 24 Nov, 6:15 PM."));
        QCOMPARE(answer.headline.figure, QStringLiteral("2"));
        QCOMPARE(answer.headline.figureUnit, QStringLiteral("overdue"));
        QCOMPARE(answer.headline.standing, Standing::Act);

        y.visit(1, VisitState::Done, y.at(QDate(2026, 11, 22), 10), 0.25);
        answer = y.answer(now);
        QCOMPARE(answer.headline.figure, QStringLiteral("1"));
        QVERIFY(answer.headline.plainSentence().startsWith(
            QStringLiteral("1 task is overdue: do the gasket test on Long Tom before Sat 28 Nov")));
        // Done, it falls due again after the supper's own cook.
        const auto drained = std::find_if(answer.tasks.begin(), answer.tasks.end(),
                                          [](const TaskDue &d) { return d.task == 1; });
        QVERIFY(!drained->overdue && !drained->blocksNextCook);
        QCOMPARE(drained->due, QDate(2026, 11, 28));
        QCOMPARE(drained->beforeCook, 0);
    }

    void notOverdueOnTheDueDayItself()
    {
        UpkeepBooks y;
        y.task("Gasket test", y.pit("Long Tom"), QDate(2026, 10, 2)).everyDays = 30; // 1 Nov
        const auto overdue = [&](QDate day, double hour) {
            return y.answer(y.at(day, hour)).tasks.first().overdue;
        };
        QVERIFY(!overdue(QDate(2026, 11, 1), 0));
        // The 25th hour of the long day is still that day.
        QCOMPARE(y.local.dateOf(y.local.startOf(QDate(2026, 11, 1)) + hoursOf(24.5)),
                 QDate(2026, 11, 1));
        QVERIFY(!overdue(QDate(2026, 11, 1), 23.75));
        QVERIFY(overdue(QDate(2026, 11, 2), 0));
    }

    void fallsDueBeforeTheSupper()
    {
        UpkeepBooks y = supperWeek();
        y.task("Gasket test", 1, QDate(2026, 10, 27), 15).everyDays = 30; // 26 Nov
        const UpkeepAnswer answer = y.answer(y.at(QDate(2026, 11, 23), 9));
        QCOMPARE(answer.headline.plainSentence(),
                 QStringLiteral("Nothing recorded as overdue; the gasket test on Long Tom falls "
                                "due about 26 Nov, before the Mill Field Supper; there is time on "
                                "Tue 24 Nov, 6:00 PM."));
        QCOMPARE(answer.headline.figure, QStringLiteral("3"));
        QCOMPARE(answer.headline.standing, Standing::Good);
        QVERIFY(!answer.tasks.first().blocksNextCook);

        y.books.tasks[1].blocksLighting = true;
        QVERIFY(y.answer(y.at(QDate(2026, 11, 23), 9)).tasks.first().blocksNextCook);
        QCOMPARE(y.answer(y.at(QDate(2026, 11, 23), 9)).headline.standing, Standing::Watch);
        // Due on the supper's own day is in time for a lighting on that day.
        y.books.tasks[1].everyDays = 32;
        QVERIFY(!y.answer(y.at(QDate(2026, 11, 23), 9)).tasks.first().blocksNextCook);
    }

    void theTrailerIsAskedBeforeItIsTowed()
    {
        UpkeepBooks y = supperWeek();
        const RecordId towed = y.event("Quarry Fair", y.at(QDate(2026, 12, 5), 12), 4, 2);
        y.books.events[towed].towed = true;
        UpkeepTask &t = y.task("Tyres", std::nullopt, QDate(2026, 11, 1), 30);
        t.everyDays = 20;
        t.blocksTowing = true;
        QCOMPARE(y.answer(y.at(QDate(2026, 11, 20))).tasks.first().beforeEvent, towed);
        y.books.tasks[1].blocksTowing = false;
        QCOMPARE(y.answer(y.at(QDate(2026, 11, 20))).tasks.first().beforeEvent, 1);
    }

    void emptyYardsRetiredTasksAndNothingDue()
    {
        UpkeepBooks y;
        const Instant now = y.at(QDate(2026, 11, 23));
        QCOMPARE(y.answer(now).headline.standing, Standing::Unknown);
        UpkeepTask &t = y.task("Sweep", y.pit("Long Tom"), QDate(2026, 1, 1));
        t.everyCooks = 5;
        QVERIFY(y.answer(now).headline.plainSentence().startsWith(
            QStringLiteral("Nothing recorded as overdue, and nothing falls due")));
        QVERIFY(!y.answer(now).tasks.first().due.isValid());
        y.books.tasks[1].everyDays = 30;
        QVERIFY(y.answer(now).tasks.first().overdue);
        y.books.pits[1].retired = true;
        QVERIFY(y.answer(now).tasks.isEmpty());
        y.books.pits[1].retired = false;
        y.books.tasks[1].retired = true;
        QVERIFY(y.answer(now).tasks.isEmpty());
    }

    void onceIsEnough()
    {
        UpkeepBooks y;
        const Instant now = y.at(QDate(2026, 11, 23));
        UpkeepTask &t = y.task("Look: the gasket", y.pit("Long Tom"), QDate(2026, 11, 1));
        t.everyDays = 7;
        t.once = true;
        QVERIFY(y.answer(now).tasks.first().overdue);
        y.visit(1, VisitState::Placed, y.at(QDate(2026, 11, 24), 10), 0.5);
        QCOMPARE(y.answer(now).tasks.size(), 1);
        y.visit(1, VisitState::Done, y.at(QDate(2026, 11, 22), 10), 0.5);
        QVERIFY(y.answer(now).tasks.isEmpty());
        y.books.tasks[1].once = false;
        QCOMPARE(y.answer(now).tasks.size(), 1);
    }

    void neverCallsAPitSafe()
    {
        UpkeepBooks y = supperWeek();
        const auto words = [&] {
            QString all = y.answer(y.at(QDate(2026, 11, 23))).headline.plainSentence();
            for (const Reason &r : y.answer(y.at(QDate(2026, 11, 23))).headline.reasons)
                all += r.label + r.value;
            return all;
        };
        QVERIFY(!words().contains(QStringLiteral("safe"), Qt::CaseInsensitive));
        y.task("Sweep", 1, QDate(2026, 11, 20)).everyDays = 300;
        QVERIFY(!words().contains(QStringLiteral("safe"), Qt::CaseInsensitive));
        QVERIFY(words().contains(QStringLiteral("Nothing recorded as overdue")));
    }

    void aRunningCookWithoutAPlanIsAnAssumption()
    {
        UpkeepBooks y = supperWeek();
        y.task("Sweep", 1, QDate(2026, 11, 20)).everyDays = 300;
        y.cook(1, y.at(QDate(2026, 11, 23), 6), std::nullopt);
        const auto reasons = y.answer(y.at(QDate(2026, 11, 23), 9)).headline.reasons;
        QVERIFY(std::any_of(reasons.begin(), reasons.end(), [](const Reason &r) {
            return r.assumption && r.label.startsWith(QStringLiteral("End of the running cook"));
        }));
    }
};

RICKYARD_TEST(TstDue)
#include "tst_due.moc"
