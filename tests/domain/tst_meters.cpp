// Meters and due dates, worked by hand. Calendar: November 2026 begins on a Sunday, the day on
// which clocks in Chicago go back at 02:00 (US Energy Policy Act of 2005: first Sunday of
// November), so that day has 25 hours.
#include "models/domain/upkeep/meters.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstMeters : public QObject
{
    Q_OBJECT

private slots:
    void localTimeKnowsClockChanges()
    {
        const LocalTime local(QStringLiteral("America/Chicago"));
        const QDate back(2026, 11, 1);
        // CDT is UTC-5 and CST UTC-6: 2026-11-01T00:00-05:00 = 1793509200 (date -d, coreutils).
        QCOMPARE(local.startOf(back).seconds(), 1793509200LL);
        QCOMPARE((local.startOf(back.addDays(1)) - local.startOf(back)).base(), 25 * kHour);
        QCOMPARE((local.at(back, hoursOf(18)) - local.startOf(back)).base(), 19 * kHour);
        QCOMPARE((local.at(back, hoursOf(1.5)) - local.startOf(back)).base(), kHour * 3 / 2);
        const QDate forward(2027, 3, 14);
        QCOMPARE((local.at(forward, hoursOf(18)) - local.startOf(forward)).base(), 17 * kHour);
        // 02:30 is skipped; read with the offset before, it is the instant shown as 03:30.
        QCOMPARE((local.at(forward, hoursOf(2.5)) - local.startOf(forward)).base(), kHour * 5 / 2);
        QCOMPARE(local.at(forward, hoursOf(24)), local.startOf(forward.addDays(1)));
        QCOMPARE(local.timeText(local.at(QDate(2026, 11, 24), hoursOf(18))),
                 QStringLiteral("Tue 24 Nov, 6:00 PM"));
        QVERIFY(!LocalTime(QStringLiteral("Nowhere/Town")).valid());
    }

    void daysAreCalendarDays()
    {
        UpkeepBooks y;
        UpkeepTask &task = y.task("Gasket test", y.pit("Long Tom"), QDate(2026, 10, 20));
        task.everyDays = 30;
        // 23:30 on 31 Oct to 00:30 on 2 Nov: 26 true hours, two calendar days.
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 10, 31), 23), 0.5);
        const Instant now = y.at(QDate(2026, 11, 2), 0.5);
        const TaskMeters m = metersOf(y.books, y.fuel, task, now, y.local);
        QCOMPARE(m.meters.size(), 1);
        QCOMPARE(m.meters.first().used, 2.0);
        QCOMPARE(m.meters.first().unit, QStringLiteral("days"));
        QCOMPARE(m.worst, 2.0 / 30.0);
        const DueForecast due = forecastDue(y.books, y.fuel, task, now, y.local);
        QCOMPARE(due.day, QDate(2026, 11, 30)); // 31 Oct and 30 days
        QCOMPARE(due.at, y.local.startOf(QDate(2026, 12, 1)));
        QCOMPARE(due.reason, QStringLiteral("after 30 days"));
    }

    void oneDayTaskAcrossTheLongNight()
    {
        UpkeepBooks y;
        UpkeepTask &task = y.task("Look", y.pit("Long Tom"), QDate(2026, 10, 31));
        task.everyDays = 1;
        const DueForecast due =
            forecastDue(y.books, y.fuel, task, y.at(QDate(2026, 10, 31), 12), y.local);
        QCOMPARE(due.day, QDate(2026, 11, 1));
        // Overdue from midnight, CST: 1793509200 + 25 h.
        QCOMPARE(due.at.seconds(), 1793509200LL + 25 * kHour);
    }

    void cooksHoursAndPounds()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const RecordId ruth = y.pit("Big Ruth");
        UpkeepTask &task = y.task("Sweep", tom, QDate(2026, 11, 1));
        task.everyCooks = 10;
        task.everyFireHours = hoursOf(100);
        task.everySeasoned = heatFromSeasonedPounds(1000);
        y.visit(task.id, VisitState::Skipped, y.at(QDate(2026, 11, 6)), 1); // does not reset
        y.cook(tom, y.at(QDate(2026, 10, 30), 6), y.at(QDate(2026, 10, 30), 18), 120); // before
        y.cook(tom, y.at(QDate(2026, 11, 7), 6), y.at(QDate(2026, 11, 7), 18), 120);
        y.cook(ruth, y.at(QDate(2026, 11, 8), 6), y.at(QDate(2026, 11, 8), 18), 300);
        y.cook(tom, y.at(QDate(2026, 11, 14), 20), std::nullopt, 50); // burns since 20:00
        const Instant now = y.at(QDate(2026, 11, 15), 1);
        const TaskMeters m = metersOf(y.books, y.fuel, task, now, y.local);
        QCOMPARE(m.meters.size(), 3);
        QCOMPARE(m.meters.at(0).used, 1.0); // a cook counts when its fire is out
        QCOMPARE(m.meters.at(1).used, 17.0);
        QVERIFY(std::abs(m.meters.at(2).used - 170.0) < 1e-6);
        QVERIFY(std::abs(m.worst - 0.17) < 1e-6);
        QCOMPARE(m.withoutHeat, 0);

        // A task without a pit goes along with every cook.
        UpkeepTask kit = task;
        kit.id = 99;
        kit.pit.reset();
        const TaskMeters all = metersOf(y.books, y.fuel, kit, now, y.local);
        QCOMPARE(all.meters.at(0).used, 2.0);
        QCOMPARE(all.meters.at(1).used, 29.0);
        QVERIFY(std::abs(all.meters.at(2).used - 470.0) < 1e-6);
    }

    void aBurnUnderWayCountsInPart()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        UpkeepTask &task = y.task("Drain", tom, QDate(2026, 11, 1));
        task.everyFireHours = hoursOf(100);
        task.everySeasoned = heatFromSeasonedPounds(1000);
        task.everyCooks = 3;
        y.cook(tom, y.at(QDate(2026, 11, 7), 6), y.at(QDate(2026, 11, 7), 18), 120);
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 11, 7), 14), 1); // 15:00, 3 h left
        const TaskMeters m = metersOf(y.books, y.fuel, task, y.at(QDate(2026, 11, 9), 9), y.local);
        QCOMPARE(m.meters.at(0).used, 0.0);
        QCOMPARE(m.meters.at(1).used, 3.0);
        QVERIFY(std::abs(m.meters.at(2).used - 30.0) < 1e-6); // 120 lb x 3/12
    }

    void runsForwardOverPlannedCooks()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        UpkeepTask &task = y.task("Scrape", tom, QDate(2026, 11, 1));
        task.everyCooks = 4;
        y.cook(tom, y.at(QDate(2026, 11, 7), 6), y.at(QDate(2026, 11, 7), 18), 120);
        const RecordId off = y.event("Rained off", y.at(QDate(2026, 11, 21), 12), 4, 1);
        y.books.events[off].state = EventState::Cancelled;
        const RecordId done = y.plan(tom, y.at(QDate(2026, 11, 14), 6), 12);
        y.plan(tom, y.at(QDate(2026, 11, 21), 6), 12, off);
        y.books.plannedCooks[y.plan(tom, y.at(QDate(2026, 11, 22), 6), 12)].cancelled = true;
        y.plan(tom, y.at(QDate(2026, 11, 28), 6), 12);
        y.plan(tom, y.at(QDate(2026, 12, 5), 20), 12); // the fourth; out at 08:00 on the 6th
        y.books.cooks[y.cook(tom, y.at(QDate(2026, 11, 14), 7), y.at(QDate(2026, 11, 14), 19))]
            .planned = done;
        const Instant now = y.at(QDate(2026, 11, 16), 12);
        DueForecast due = forecastDue(y.books, y.fuel, task, now, y.local);
        QVERIFY(due.known && !due.byDays);
        QCOMPARE(due.day, QDate(2026, 12, 6));
        QCOMPARE(due.at, y.at(QDate(2026, 12, 6), 8));
        QCOMPARE(due.reason, QStringLiteral("after 4 cooks"));
        // Twelve hours a cook: 30 h are reached by the third, on 28 Nov.
        task.everyFireHours = hoursOf(30);
        due = forecastDue(y.books, y.fuel, task, now, y.local);
        QCOMPARE(due.day, QDate(2026, 11, 28));
        QCOMPARE(due.reason, QStringLiteral("after 30 fire hours"));
        // 120 lb known, the second cook has no figure, 10 lb/h for the plans: 240 on 28 Nov.
        task.everyFireHours.reset();
        task.everySeasoned = heatFromSeasonedPounds(240);
        due = forecastDue(y.books, y.fuel, task, now, y.local);
        QCOMPARE(due.day, QDate(2026, 11, 28));
        QCOMPARE(due.reason, QStringLiteral("after 240 seasoned lb"));
        QCOMPARE(metersOf(y.books, y.fuel, task, now, y.local).withoutHeat, 1);
        // Nothing planned reaches it.
        task.everySeasoned.reset();
        task.everyCooks = 5;
        QVERIFY(!forecastDue(y.books, y.fuel, task, now, y.local).known);
        // Days win when they come first.
        task.everyCooks = 4;
        task.everyDays = 20;
        due = forecastDue(y.books, y.fuel, task, now, y.local);
        QCOMPARE(due.day, QDate(2026, 11, 21));
        QVERIFY(due.byDays);
    }

    void anEarlierDayIsAskedAsIfLaterRecordsWereNotThere()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        UpkeepTask &task = y.task("Scrape", tom, QDate(2026, 11, 1));
        task.everyCooks = 4;
        y.cook(tom, y.at(QDate(2026, 11, 7), 6), y.at(QDate(2026, 11, 7), 18));
        y.cook(tom, y.at(QDate(2026, 11, 14), 6), y.at(QDate(2026, 11, 14), 18));
        y.visit(task.id, VisitState::Done, y.at(QDate(2026, 11, 20)), 1);
        const auto used = [&](QDate day) {
            return metersOf(y.books, y.fuel, task, y.at(day, 12), y.local).meters.first().used;
        };
        QCOMPARE(used(QDate(2026, 11, 8)), 1.0);
        QCOMPARE(used(QDate(2026, 11, 15)), 2.0);
        QCOMPARE(used(QDate(2026, 11, 21)), 0.0);
    }
};

RICKYARD_TEST(TstMeters)
#include "tst_meters.moc"
