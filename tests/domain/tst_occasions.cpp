// Tasks due with an occasion, several triggers at once, and put-offs: worked by hand.
#include "models/domain/upkeep/meters.h"
#include "models/domain/upkeep/occasions.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstOccasions : public QObject
{
    Q_OBJECT

    static UpkeepTask &occasion(UpkeepBooks &y, std::optional<RecordId> pit, Occasion when,
                                QDate since = QDate(2026, 10, 1))
    {
        UpkeepTask &task = y.task("Task", pit, since, 10);
        task.occasion = when;
        return task;
    }
    static DueForecast due(const UpkeepBooks &y, const UpkeepTask &task, Instant now,
                           double fraction = 1.0)
    {
        return forecastDue(y.books, y.fuel, task, now, y.local, fraction);
    }

private slots:
    void beforeEachCook()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const RecordId ruth = y.pit("Big Ruth");
        y.cook(tom, y.at(QDate(2026, 11, 21), 6), y.at(QDate(2026, 11, 21), 18));
        const RecordId first = y.plan(tom, y.at(QDate(2026, 11, 28), 4), 12);
        const RecordId second = y.plan(tom, y.at(QDate(2026, 12, 5), 4), 12);
        y.plan(ruth, y.at(QDate(2026, 11, 25), 4), 12);
        UpkeepTask &task = occasion(y, tom, Occasion::BeforeCook);
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        DueForecast f = due(y, task, now);
        QCOMPARE(f.at, y.at(QDate(2026, 11, 28), 4));
        QCOMPARE(f.day, QDate(2026, 11, 28));
        QCOMPARE(f.beforeCook, first);
        QCOMPARE(f.reason, QStringLiteral("before each cook"));
        QVERIFY(!f.byDays);
        // Three days ahead at most.
        QCOMPARE(due(y, task, now, 0.75).day, QDate(2026, 11, 25));
        // A cook that was lit without it is over: it is asked for before the next one.
        QVERIFY(!doneForOccasion(y.books, task, now, now));
        // Done on the Monday it serves Saturday's fire and no other.
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 11, 23), 8), 0.2);
        QVERIFY(doneForOccasion(y.books, task, y.at(QDate(2026, 11, 28), 4), now));
        QVERIFY(doneForOccasion(y.books, task, now, now)); // lit without a plan, today
        QVERIFY(!doneForOccasion(y.books, task, y.at(QDate(2026, 12, 5), 4), now));
        f = due(y, task, now);
        QCOMPARE(f.beforeCook, second);
        // Begun before the lighting and ended after it, it was done for that fire.
        const Instant lit = y.at(QDate(2026, 11, 28), 4);
        y.books.cooks[y.cook(tom, lit, std::nullopt)].planned = first;
        QCOMPARE(due(y, task, lit + hoursOf(1)).beforeCook, second);
        // A task without a pit goes with every lighting.
        UpkeepTask &kit = occasion(y, std::nullopt, Occasion::BeforeCook);
        QCOMPARE(due(y, kit, now).at, y.at(QDate(2026, 11, 25), 4));
        // No plan, no day; but a fire that nobody planned finds it undone.
        y.books.plannedCooks.clear();
        QVERIFY(!due(y, kit, now).known);
        QVERIFY(!doneForOccasion(y.books, kit, now, now));
    }

    void afterEachCook()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.plan(tom, y.at(QDate(2026, 11, 28), 20), 12);
        UpkeepTask &task = occasion(y, tom, Occasion::AfterCook);
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        DueForecast f = due(y, task, now);
        QCOMPARE(f.at, y.at(QDate(2026, 11, 29), 8));
        QCOMPARE(f.day, QDate(2026, 11, 29));
        QCOMPARE(f.reason, QStringLiteral("after each cook"));
        QCOMPARE(metersOf(y.books, y.fuel, task, now, y.local).meters.first().limit, 1.0);
        y.cook(tom, y.at(QDate(2026, 11, 21), 6), y.at(QDate(2026, 11, 21), 18));
        f = due(y, task, now);
        QCOMPARE(f.at, y.at(QDate(2026, 11, 21), 18));
        QCOMPARE(metersOf(y.books, y.fuel, task, now, y.local).worst, 1.0);
        QVERIFY(y.answer(now).tasks.first().overdue);
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 11, 22), 9), 0.2);
        QCOMPARE(due(y, task, now).at, y.at(QDate(2026, 11, 29), 8));
        // Done in the middle of a cook, it is due again when that fire is out.
        y.books.visits.clear();
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 11, 21), 12), 0.2);
        QCOMPARE(due(y, task, now).at, y.at(QDate(2026, 11, 21), 18));
        QCOMPARE(metersOf(y.books, y.fuel, task, now, y.local).worst, 1.0);
    }

    void beforeTowing()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const RecordId ruth = y.pit("Big Ruth");
        const RecordId home = y.event("Yard supper", y.at(QDate(2026, 11, 25), 17), 3, 0);
        const RecordId fair = y.event("Quarry Fair", y.at(QDate(2026, 12, 5), 12), 4, 2);
        const RecordId off = y.event("Rained off", y.at(QDate(2026, 11, 27), 12), 4, 2);
        const RecordId mill = y.event("Mill Day", y.at(QDate(2026, 12, 12), 12), 4, 1);
        for (const RecordId id : {fair, off, mill})
            y.books.events[id].towed = true;
        y.books.events[off].state = EventState::Cancelled;
        y.plan(tom, y.at(QDate(2026, 11, 25), 4), 10, home);
        y.plan(ruth, y.at(QDate(2026, 12, 4), 22), 12, fair);
        UpkeepTask &tyres = occasion(y, std::nullopt, Occasion::BeforeTowing);
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        DueForecast f = due(y, tyres, now);
        QCOMPARE(f.at, y.at(QDate(2026, 12, 5), 10)); // serving less two hours on the road
        QCOMPARE(f.beforeEvent, fair);
        QVERIFY(f.byDays);
        QCOMPARE(f.reason, QStringLiteral("before towing"));
        QCOMPARE(y.answer(now).tasks.first().beforeEvent, fair);
        // Only the pit that goes along; an event without a planned cook takes any.
        UpkeepTask &latches = occasion(y, tom, Occasion::BeforeTowing);
        QCOMPARE(due(y, latches, now).beforeEvent, mill);
        QCOMPARE(due(y, occasion(y, ruth, Occasion::BeforeTowing), now).beforeEvent, fair);
        y.visit(tyres.id, VisitState::Done, y.at(QDate(2026, 12, 5), 8), 0.2);
        QCOMPARE(due(y, y.books.tasks[tyres.id], y.at(QDate(2026, 12, 5), 9)).beforeEvent, mill);
    }

    void beforeTheSeason()
    {
        UpkeepBooks y;
        UpkeepTask &task =
            occasion(y, y.pit("Long Tom"), Occasion::BeforeSeason, QDate(2026, 11, 1));
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        QVERIFY(!due(y, task, now).known); // the yard has no season
        y.books.yards[1].seasonMonth = 4;
        DueForecast f = due(y, task, now);
        QCOMPARE(f.day, QDate(2027, 3, 31));
        QCOMPARE(f.at, y.at(QDate(2027, 4, 1)));
        QVERIFY(f.byDays);
        QCOMPARE(f.reason, QStringLiteral("before the season"));
        // Left undone it stays due, in season or not.
        QCOMPARE(due(y, task, y.at(QDate(2027, 6, 1))).day, QDate(2027, 3, 31));
        QVERIFY(y.answer(y.at(QDate(2027, 6, 1))).tasks.first().overdue);
        // Done in February it was done for April; done late in May, it is due next year again.
        const RecordId visit = y.visit(task.id, VisitState::Done, y.at(QDate(2027, 2, 10), 9), 1);
        QCOMPARE(due(y, task, y.at(QDate(2027, 3, 1))).day, QDate(2028, 3, 31));
        y.books.visits[visit].start = y.at(QDate(2027, 5, 10), 9);
        y.books.visits[visit].end = y.at(QDate(2027, 5, 10), 10);
        QCOMPARE(due(y, task, y.at(QDate(2027, 6, 1))).day, QDate(2028, 3, 31));
        // In September, more than half a year ahead: not for the spring to come.
        y.books.visits[visit].start = y.at(QDate(2027, 9, 10), 9);
        y.books.visits[visit].end = y.at(QDate(2027, 9, 10), 10);
        QCOMPARE(due(y, task, y.at(QDate(2027, 11, 1))).day, QDate(2028, 3, 31));
        // A season that begins in January; 31 December is the last day before it.
        y.books.visits.clear();
        y.books.yards[1].seasonMonth = 1;
        QCOMPARE(due(y, task, now).day, QDate(2026, 12, 31));
    }

    void whicheverIsFirst()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const RecordId fair = y.event("Quarry Fair", y.at(QDate(2026, 12, 5), 12), 4, 2);
        y.books.events[fair].towed = true;
        y.plan(tom, y.at(QDate(2026, 11, 28), 6), 12);
        UpkeepTask &task = occasion(y, tom, Occasion::BeforeTowing, QDate(2026, 11, 1));
        task.everyDays = 60;
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        QCOMPARE(due(y, task, now).reason, QStringLiteral("before towing"));
        task.everyDays = 30;
        QCOMPARE(due(y, task, now).reason, QStringLiteral("after 30 days"));
        task.everyCooks = 1;
        QCOMPARE(due(y, task, now).reason, QStringLiteral("after 1 cook"));
        // One visit starts them all anew.
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 11, 29), 9), 0.5);
        const DueForecast after = due(y, task, y.at(QDate(2026, 11, 30)));
        QCOMPARE(after.day, QDate(2026, 12, 29));
        QCOMPARE(after.reason, QStringLiteral("after 30 days"));
    }

    void putOffWithAReason()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.plan(tom, y.at(QDate(2026, 11, 28), 6), 12);
        UpkeepTask &task = y.task("Repaint", tom, QDate(2026, 10, 1));
        task.everyDays = 30;
        task.blocksLighting = true;
        task.snoozedUntil = QDate(2026, 12, 10);
        task.snoozeReason = QStringLiteral("paint is ordered");
        const Instant now = y.at(QDate(2026, 11, 23), 9);
        UpkeepAnswer answer = y.answer(now);
        const TaskDue &first = answer.tasks.first();
        QVERIFY(first.snoozed && first.overdue);
        QVERIFY(first.blocksNextCook); // a block stays a block
        QCOMPARE(first.snoozedUntil, QDate(2026, 12, 10));
        QCOMPARE(answer.headline.figureUnit, QStringLiteral("put off"));
        QVERIFY(answer.headline.plainSentence().startsWith(QStringLiteral("1 task is put off")));
        QVERIFY2(answer.headline.reasons.first().value.contains(QStringLiteral(
                     "put off until 10 Dec: paint is ordered (it blocks lighting all the same)")),
                 qPrintable(answer.headline.reasons.first().value));
        // Another one that is overdue comes first and is the one that is asked for.
        y.task("Sweep", tom, QDate(2026, 10, 20)).everyDays = 30;
        answer = y.answer(now);
        QCOMPARE(answer.tasks.first().task, 2);
        QCOMPARE(answer.headline.figure, QStringLiteral("1"));
        // The day itself has come.
        answer = y.answer(y.at(QDate(2026, 12, 10)));
        QVERIFY(!answer.tasks.first().snoozed);
        QCOMPARE(answer.headline.figure, QStringLiteral("2"));
    }
};

RICKYARD_TEST(TstOccasions)
#include "tst_occasions.moc"
