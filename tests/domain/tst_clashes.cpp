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
