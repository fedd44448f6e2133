// Clashes of a plan, each worked by hand.
#include "models/domain/plan/clashes.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstClashes : public QObject
{
    Q_OBJECT

    UpkeepBooks y;
    Instant now;

    [[nodiscard]] QVector<Clash> found() const { return clashesOf(y.books, now, y.local); }

private slots:
    void init()
    {
        y = UpkeepBooks();
        now = y.at(QDate(2026, 11, 25), 18);
    }

    void aPlainPlanHasNone()
    {
        const RecordId pit = y.pit("Long Tom");
        const RecordId supper = y.event("Supper", y.at(QDate(2026, 12, 5), 17), 5, 1);
        y.plan(pit, y.at(QDate(2026, 12, 5), 3), 14, supper);
        y.plan(pit, y.at(QDate(2026, 12, 12), 3), 14);
        QVERIFY(found().isEmpty());
    }

    void onePitTwice()
    {
        const RecordId pit = y.pit("Long Tom");
        const RecordId first = y.plan(pit, y.at(QDate(2026, 12, 5), 3), 14);
        const RecordId second = y.plan(pit, y.at(QDate(2026, 12, 5), 16), 10);
        const auto clashes = found();
        QCOMPARE(clashes.size(), 1);
        QCOMPARE(clashes.first().kind, ClashKind::SamePit);
        QCOMPARE(clashes.first().first.id, second);
        QCOMPARE(clashes.first().second.id, first);
        QVERIFY(clashes.first().what.contains(QStringLiteral("Long Tom")));
        // Ending as the other is lit is no clash: to the second.
        y.books.plannedCooks[second].light = y.at(QDate(2026, 12, 5), 17);
        QVERIFY(found().isEmpty());
        // Nor on another pit, nor when it is cancelled.
        y.books.plannedCooks[second].light = y.at(QDate(2026, 12, 5), 16);
        y.books.plannedCooks[second].cancelled = true;
        QVERIFY(found().isEmpty());
        y.books.plannedCooks[second].cancelled = false;
        y.books.plannedCooks[second].pit = y.pit("Short Tom");
        QVERIFY(found().isEmpty());
    }

    void aFireWhileTheCrewIsAway()
    {
        const RecordId pit = y.pit("Long Tom");
        const RecordId supper = y.event("Supper", y.at(QDate(2026, 12, 5), 17), 5, 1);
        // Out at 16:00, when the crew leaves: no clash. An hour longer: one.
        const RecordId cook = y.plan(pit, y.at(QDate(2026, 12, 5), 6), 10);
        QVERIFY(found().isEmpty());
        y.books.plannedCooks[cook].length = hoursOf(11);
        const auto clashes = found();
        QCOMPARE(clashes.size(), 1);
        QCOMPARE(clashes.first().kind, ClashKind::CrewAway);
        QCOMPARE(clashes.first().first.id, cook);
        QCOMPARE(clashes.first().second.id, supper);
        // The event's own cook is tended by the crew that is there.
        y.books.plannedCooks[cook].event = supper;
        QVERIFY(found().isEmpty());
    }

    void twoEventsAtOnceAndTheWayBetween()
    {
        y.event("Supper", y.at(QDate(2026, 12, 5), 17), 5, 1);
        const RecordId late = y.event("Late show", y.at(QDate(2026, 12, 5), 24), 2, 1.5);
        const auto clashes = found();
        QCOMPARE(clashes.size(), 1);
        QCOMPARE(clashes.first().kind, ClashKind::TwoEvents);
        QCOMPARE(clashes.first().first.id, late);
        y.books.events[late].travel = hoursOf(1);
        QVERIFY(found().isEmpty());
        y.books.events[late].travel = hoursOf(3);
        y.books.events[late].state = EventState::Cancelled;
        QVERIFY(found().isEmpty());
    }

    void litWhenServingHasBegunAndOnARetiredPit()
    {
        const RecordId pit = y.pit("Long Tom");
        const RecordId supper = y.event("Supper", y.at(QDate(2026, 12, 5), 17), 5, 1);
        const RecordId cook = y.plan(pit, y.at(QDate(2026, 12, 5), 17), 4, supper);
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::LitTooLate);
        y.books.plannedCooks[cook].light = y.at(QDate(2026, 12, 5), 3);
        y.books.pits[pit].retired = true;
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::RetiredPit);
    }

    void upkeepAtAFire()
    {
        const RecordId pit = y.pit("Long Tom");
        y.plan(pit, y.at(QDate(2026, 12, 5), 3), 14);
        const RecordId task = y.task("Scrape", pit, QDate(2026, 11, 1)).id;
        const RecordId visit = y.visit(task, VisitState::Placed, y.at(QDate(2026, 12, 5), 16), 1);
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::UpkeepAtFire);
        QCOMPARE(found().first().first.id, visit);
        y.books.visits[visit].start = y.at(QDate(2026, 12, 5), 18);
        y.books.visits[visit].end = y.at(QDate(2026, 12, 5), 19);
        QVERIFY(found().isEmpty());
    }

    void aPitThatIsHotOrCures()
    {
        const RecordId pit = y.pit("Long Tom");
        y.plan(pit, y.at(QDate(2026, 12, 5), 3), 14); // out at 17:00
        UpkeepTask &task = y.task("Scrape", pit, QDate(2026, 11, 1), 60, 8, 24);
        const RecordId visit = y.visit(task.id, VisitState::Placed, y.at(QDate(2026, 12, 6), 0), 1);
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::UpkeepAtFire);
        QVERIFY(
            found().first().what.contains(QStringLiteral("not cold before Sun 6 Dec, 1:00 AM")));
        // Over by 2:00 and cured a day later: a fire on Sunday evening finds it curing.
        y.books.visits[visit].start = y.at(QDate(2026, 12, 6), 1);
        y.books.visits[visit].end = y.at(QDate(2026, 12, 6), 2);
        QVERIFY(found().isEmpty());
        const RecordId next = y.plan(pit, y.at(QDate(2026, 12, 6), 20), 10);
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::PitBlocked);
        QCOMPARE(found().first().first.id, next);
        y.books.plannedCooks[next].light = y.at(QDate(2026, 12, 7), 2);
        QVERIFY(found().isEmpty());
    }

    void overdueUpkeepBarsTheFirstLighting()
    {
        const RecordId pit = y.pit("Long Tom");
        const RecordId first = y.plan(pit, y.at(QDate(2026, 12, 5), 3), 14);
        y.plan(pit, y.at(QDate(2026, 12, 12), 3), 14);
        UpkeepTask &task = y.task("Grease drain cleaned", pit, QDate(2026, 11, 1));
        task.blocksLighting = true;
        UpkeepAnswer upkeep;
        TaskDue due;
        due.task = task.id;
        due.pit = pit;
        due.due = QDate(2026, 12, 4);
        due.dueAt = y.at(QDate(2026, 12, 5));
        upkeep.tasks << due;
        const auto barred = [&] { return clashesOf(y.books, now, y.local, upkeep); };
        QCOMPARE(barred().size(), 1);
        QCOMPARE(barred().first().kind, ClashKind::PitBlocked);
        QCOMPARE(barred().first().first.id, first);
        // Due on the day of the fire: not overdue then. The next fire is the one it bars.
        upkeep.tasks.first().due = QDate(2026, 12, 5);
        upkeep.tasks.first().dueAt = y.at(QDate(2026, 12, 6));
        QCOMPARE(barred().first().at, y.at(QDate(2026, 12, 12), 3));
        // A time found for it before that fire clears it; the same time after it does not.
        Placement placed;
        placed.task = task.id;
        placed.start = y.at(QDate(2026, 12, 9), 18);
        placed.end = y.at(QDate(2026, 12, 9), 19);
        placed.freeFrom = placed.end;
        upkeep.placements << placed;
        QVERIFY(barred().isEmpty());
        upkeep.placements.first().end = y.at(QDate(2026, 12, 12), 4);
        QCOMPARE(barred().size(), 1);
        // What goes with every lighting is done at it.
        task.occasion = Occasion::BeforeCook;
        QVERIFY(barred().isEmpty());
        task.occasion = Occasion::None;
        // What does not bar lighting bars nothing.
        task.blocksLighting = false;
        QVERIFY(barred().isEmpty());
    }

    void overdueUpkeepBarsTowing()
    {
        const RecordId supper = y.event("Supper", y.at(QDate(2026, 12, 5), 17), 5, 1);
        UpkeepTask &task = y.task("Brakes", std::nullopt, QDate(2026, 1, 1));
        task.blocksTowing = true;
        UpkeepAnswer upkeep;
        TaskDue due;
        due.task = task.id;
        due.due = QDate(2026, 12, 1);
        due.dueAt = y.at(QDate(2026, 12, 2));
        upkeep.tasks << due;
        QVERIFY(clashesOf(y.books, now, y.local, upkeep).isEmpty()); // nothing is towed
        y.books.events[supper].towed = true;
        const auto clashes = clashesOf(y.books, now, y.local, upkeep);
        QCOMPARE(clashes.size(), 1);
        QCOMPARE(clashes.first().kind, ClashKind::NoTowing);
        QCOMPARE(clashes.first().at, y.at(QDate(2026, 12, 5), 16)); // when the crew leaves
    }

    void visitsNeedTheCrewsHoursAndPeople()
    {
        y.crew(Weekday::Tuesday, 18, 3, 2);
        const RecordId one = y.task("Scrape", y.pit("Long Tom"), QDate(2026, 11, 1)).id;
        const RecordId two = y.task("Gasket", y.pit("Short Tom"), QDate(2026, 11, 1)).id;
        const QDate tuesday(2026, 12, 1);
        const RecordId visit = y.visit(one, VisitState::Placed, y.at(tuesday, 18), 1);
        QVERIFY(found().isEmpty());
        y.books.visits[visit].start = y.at(tuesday, 17);
        y.books.visits[visit].end = y.at(tuesday, 18);
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::CrewHours);
        QVERIFY(found().first().what.contains(QStringLiteral("outside the hours")));
        // Two at once with two people: fine. One of them needing two: three are asked for.
        y.books.visits[visit].start = y.at(tuesday, 18);
        y.books.visits[visit].end = y.at(tuesday, 19.5);
        y.visit(two, VisitState::Placed, y.at(tuesday, 19), 1);
        QVERIFY(found().isEmpty());
        y.books.tasks[two].people = 2;
        QCOMPARE(found().size(), 1);
        QVERIFY2(found().first().what.contains(QStringLiteral("3 people")),
                 qPrintable(found().first().what));
        QVERIFY(found().first().what.contains(QStringLiteral("have 2")));
    }

    void somebodyIsBusyElsewhere()
    {
        const RecordId supper = y.event("Supper", y.at(QDate(2026, 12, 5), 17), 5, 1);
        BusyTime busy;
        busy.id = 1;
        busy.summary = QStringLiteral("School play");
        busy.start = y.at(QDate(2026, 12, 5), 22);
        busy.end = y.at(QDate(2026, 12, 5), 22.5);
        y.books.busyTimes.insert(1, busy); // before the crew is back at 23:00
        QCOMPARE(found().size(), 1);
        QCOMPARE(found().first().kind, ClashKind::CrewBusy);
        QCOMPARE(found().first().first.id, supper);
        QVERIFY(found().first().what.contains(QStringLiteral("School play")));
        y.books.busyTimes[1].start = y.at(QDate(2026, 12, 5), 23);
        y.books.busyTimes[1].end = y.at(QDate(2026, 12, 5), 24);
        QVERIFY(found().isEmpty());
        // A cook is clashed with only when it is to be lit then.
        y.plan(y.pit("Long Tom"), y.at(QDate(2026, 12, 5), 23.5), 10);
        QCOMPARE(found().size(), 1);
    }

    void whatIsOverIsNotNamed()
    {
        const RecordId pit = y.pit("Long Tom");
        y.plan(pit, y.at(QDate(2026, 11, 5), 3), 14);
        y.plan(pit, y.at(QDate(2026, 11, 5), 16), 10);
        y.event("Gone", y.at(QDate(2026, 11, 5), 17), 5, 1);
        QVERIFY(found().isEmpty());
    }
};

RICKYARD_TEST(TstClashes)
#include "tst_clashes.moc"
