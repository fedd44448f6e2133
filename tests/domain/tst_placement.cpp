// Placement: hand-worked cases, random books against rules written down a second time, single
// pieces of work against a search of every half hour, and every change offered, made and solved
// again. The solver itself: tst_placement_solver.cpp.
#include "models/domain/upkeep/placement.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QDateTime>
#include <QRegularExpression>
#include <QTest>

#include <algorithm>
#include <random>

using namespace rickyard::test;

namespace {

const QDate kMonday(2026, 11, 23);

// The rules again, from the records and the calendar, without the program's windows or burns.
class Rules
{
public:
    explicit Rules(const UpkeepBooks &yard) : m_yard(yard) {}

    [[nodiscard]] bool pitAllows(const UpkeepTask &task, Instant start, Instant end) const
    {
        if (!task.pit)
            return true;
        const auto clash = [&](Instant light, Instant out) {
            const qint64 clear = std::max<qint64>(kHour, task.cureAfter.base());
            return !(start.seconds() >= out.seconds() + task.coldBefore.base() ||
                     end.seconds() + clear <= light.seconds());
        };
        for (const Cook &c : m_yard.books.cooks)
            if (c.pit == *task.pit && clash(c.lit, *c.fireOut))
                return false;
        for (const PlannedCook &p : m_yard.books.plannedCooks)
            if (p.pit == *task.pit && !p.cancelled && clash(p.light, p.light + p.length))
                return false;
        return true;
    }
    // All of [start, end) lies in one stretch of crew hours, and nobody is away.
    [[nodiscard]] bool crewIsThere(Instant start, Instant end) const
    {
        for (const Event &e : m_yard.books.events)
            if (start < e.end + *e.travel && e.start - *e.travel < end)
                return false;
        return std::any_of(m_yard.books.crewTimes.begin(), m_yard.books.crewTimes.end(),
                           [&](const CrewTime &t) { return covers(t, start, end); });
    }
    [[nodiscard]] int people(Instant at) const
    {
        int sum = 0;
        for (const CrewTime &t : m_yard.books.crewTimes)
            sum += covers(t, at, at + Duration::ofBase(1)) ? t.people : 0;
        return sum;
    }

private:
    static bool covers(const CrewTime &t, Instant start, Instant end)
    {
        const QTimeZone zone("America/Chicago");
        const QDateTime local = QDateTime::fromSecsSinceEpoch(start.seconds(), zone);
        if (local.date().dayOfWeek() != static_cast<int>(t.weekday) + 1)
            return false;
        const qint64 clock = local.time().msecsSinceStartOfDay() / 1000;
        return clock >= t.start.base() &&
               clock + (end - start).base() <= (t.start + t.length).base();
    }
    const UpkeepBooks &m_yard;
};

class Dice
{
public:
    explicit Dice(unsigned seed) : m_engine(seed) {}
    int upTo(int n) { return static_cast<int>(m_engine() % static_cast<unsigned>(n)); }
    double halfHours(int low, int high) { return (low + upTo(high - low + 1)) / 2.0; }

private:
    std::mt19937 m_engine;
};

UpkeepBooks randomBooks(Dice &dice)
{
    UpkeepBooks y;
    const int pits = 1 + dice.upTo(3);
    for (int i = 0; i < pits; ++i) {
        const RecordId pit = y.pit("Pit");
        // Fires follow each other; on Sundays of the clock change as well.
        Instant at = y.at(QDate(2026, 10, 10 + dice.upTo(5)), dice.halfHours(0, 40));
        const Instant now = y.at(QDate(2026, 10, 20), 12);
        while (at < y.at(QDate(2026, 12, 5))) {
            const double length = dice.halfHours(12, 32);
            if (at + hoursOf(length) <= now)
                y.cook(pit, at, at + hoursOf(length), 100);
            else if (at > now)
                y.plan(pit, at, length);
            at = at + hoursOf(length + dice.halfHours(4, 200));
        }
    }
    const int times = 1 + dice.upTo(4);
    for (int i = 0; i < times; ++i)
        y.crew(static_cast<Weekday>(dice.upTo(7)), dice.halfHours(16, 38), dice.halfHours(1, 9),
               1 + dice.upTo(2));
    for (int i = dice.upTo(3); i > 0; --i)
        y.event("Supper", y.at(QDate(2026, 10, 21).addDays(dice.upTo(40)), dice.halfHours(16, 40)),
                4, dice.halfHours(0, 6));
    const int tasks = 1 + dice.upTo(8);
    for (int i = 0; i < tasks; ++i) {
        const int pit = dice.upTo(pits + 1);
        UpkeepTask &t = y.task("Task", pit == 0 ? std::nullopt : std::optional<RecordId>(pit),
                               QDate(2026, 9, 25).addDays(dice.upTo(20)), dice.halfHours(1, 6) * 60,
                               dice.halfHours(0, 48), dice.halfHours(0, 48));
        if (dice.upTo(2) == 0)
            t.everyDays = 10 + dice.upTo(40);
        else
            t.everyCooks = 1 + dice.upTo(3);
        t.blocksLighting = dice.upTo(2) == 0;
        t.priority = 1 + dice.upTo(9);
        t.people = dice.upTo(5) == 0 ? 2 : 1;
        if (i > 0 && dice.upTo(4) == 0)
            t.after = 1 + dice.upTo(i);
    }
    return y;
}

} // namespace

class TstPlacement : public QObject
{
    Q_OBJECT

private slots:
    void onePersonOneAfterAnother()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const RecordId ruth = y.pit("Big Ruth");
        y.crew(Weekday::Tuesday, 18, 2, 1);
        y.task("A", tom, QDate(2026, 10, 1), 60).everyDays = 30;  // due 31 Oct
        y.task("B", ruth, QDate(2026, 10, 2), 60).everyDays = 30; // due 1 Nov
        y.task("C", ruth, QDate(2026, 10, 3), 60).everyDays = 30; // due 2 Nov: next week
        auto placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.size(), 3);
        QCOMPARE(placed.at(0).task, 1);
        QCOMPARE(placed.at(0).start, y.at(QDate(2026, 11, 24), 18));
        QVERIFY(placed.at(0).late && !placed.at(0).booked);
        QCOMPARE(placed.at(1).task, 2);
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 11, 24), 19));
        QCOMPARE(placed.at(2).start, y.at(QDate(2026, 12, 1), 18));
        // Two people: A and B side by side; C waits for its pit, not for a person.
        y.books.crewTimes[1].people = 2;
        placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.at(0).start, placed.at(1).start);
        QCOMPARE(placed.at(2).task, 3);
        QCOMPARE(placed.at(2).start, y.at(QDate(2026, 11, 24), 19));
    }

    void equalDueDatesGoByPriority()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 1, 1);
        y.task("A", std::nullopt, QDate(2026, 10, 1), 60).everyDays = 30;
        UpkeepTask &b = y.task("B", std::nullopt, QDate(2026, 10, 1), 60);
        b.everyDays = 30;
        b.priority = 9;
        QCOMPARE(y.answer(y.at(kMonday)).placements.first().task, 2);
    }

    void agreedVisitsStayAndTakeTheirTime()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Tuesday, 18, 3, 1);
        y.task("A", tom, QDate(2026, 10, 1), 60).everyDays = 30;
        y.task("B", tom, QDate(2026, 10, 1), 60, 0, 24).everyDays = 30;
        y.visit(2, VisitState::Placed, y.at(QDate(2026, 11, 24), 18), 1);
        const auto placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.size(), 2);
        QCOMPARE(placed.at(0).task, 2);
        QVERIFY(placed.at(0).booked);
        QCOMPARE(placed.at(0).freeFrom, y.at(QDate(2026, 11, 25), 19));
        QCOMPARE(placed.at(1).task, 1);
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 11, 24), 19));
    }

    void anAgreedVisitOnAHotPitIsNamed()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Tuesday, 18, 3, 1);
        y.task("A", tom, QDate(2026, 11, 1), 60, 12).everyDays = 60;
        y.visit(1, VisitState::Placed, y.at(QDate(2026, 11, 24), 18), 1);
        QVERIFY(y.answer(y.at(kMonday)).unplaced.isEmpty());
        y.plan(tom, y.at(QDate(2026, 11, 24), 2), 12);
        const auto left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QCOMPARE(left.first().why,
                 QStringLiteral("is placed on Tue 24 Nov, 6:00 PM, but it needs 1 h of work after "
                                "12 h cold and Long Tom burns until Tue 24 Nov, 2:00 PM"));
        QCOMPARE(left.first().help, QStringLiteral("Move it to Tue 1 Dec, 6:00 PM."));
    }

    void noEarlierThanItNeedsToBe()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 3, 1);
        y.task("A", std::nullopt, QDate(2026, 11, 10), 60).everyDays = 40; // due 20 Dec, a Sunday
        const auto placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.size(), 1);
        QCOMPARE(placed.first().start, y.at(QDate(2026, 12, 15), 18));
        QVERIFY(!placed.first().late);
    }

    void workAfterACookIsPlacedAfterIt()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Tuesday, 18, 3, 1);
        UpkeepTask &t = y.task("Ash", tom, QDate(2026, 11, 1), 20, 12);
        t.everyCooks = 1;
        t.blocksLighting = true;
        y.plan(tom, y.at(QDate(2026, 11, 28), 4), 12);
        y.plan(tom, y.at(QDate(2026, 12, 5), 4), 12);
        const auto placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.size(), 1);
        QCOMPARE(placed.first().start, y.at(QDate(2026, 12, 1), 18));
    }

    void firesTooCloseTogether()
    {
        UpkeepBooks y;
        const RecordId ruth = y.pit("Big Ruth");
        y.crew(Weekday::Friday, 16, 8);
        UpkeepTask &t = y.task("Ash", ruth, QDate(2026, 11, 1), 30, 12);
        t.everyCooks = 1;
        t.blocksLighting = true;
        y.plan(ruth, y.at(QDate(2026, 11, 27), 6), 10);
        const RecordId supper = y.event("Mill Field Supper", y.at(QDate(2026, 11, 28), 17), 3, 1);
        y.plan(ruth, y.at(QDate(2026, 11, 28), 1), 12, supper);
        const auto answer = y.answer(y.at(kMonday));
        QVERIFY(answer.placements.isEmpty());
        QCOMPARE(answer.unplaced.size(), 1);
        QCOMPARE(answer.unplaced.first().why,
                 QStringLiteral("needs 30 min of work after 12 h cold, but the fires of Big Ruth "
                                "are 9 h apart before the Mill Field Supper is lit (Sat 28 Nov, "
                                "1:00 AM)"));
        // Cold at 04:00, done by 04:30, clear an hour: lit at 05:30, and nobody is there at four.
        QCOMPARE(answer.unplaced.first().help,
                 QStringLiteral("Light the Mill Field Supper 4 h 30 min later, and have one "
                                "person there from Sat 28 Nov, 4:00 AM for 30 min."));
        // With hands there in the night, moving the lighting is enough.
        y.crew(Weekday::Saturday, 3, 3);
        QCOMPARE(y.answer(y.at(kMonday)).unplaced.first().help,
                 QStringLiteral("Light the Mill Field Supper 4 h 30 min later."));
        // And with the lighting moved, the work has its place.
        y.books.plannedCooks[2].light = y.at(QDate(2026, 11, 28), 5.5);
        QCOMPARE(y.answer(y.at(kMonday)).placements.first().start, y.at(QDate(2026, 11, 28), 4));
    }

    void crewHoursTooShortMissingOrTaken()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 1, 1);
        y.task("A", std::nullopt, QDate(2026, 10, 1), 90).everyDays = 30;
        auto left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("the longest crew hours")));
        QCOMPARE(left.first().help,
                 QStringLiteral("Have the crew stay 30 min longer on Tue 24 Nov, 6:00 PM."));

        const RecordId tom = y.pit("Long Tom");
        y.books.tasks.clear();
        UpkeepTask &blocking = y.task("B", tom, QDate(2026, 10, 1), 60);
        blocking.everyDays = 30;
        blocking.blocksLighting = true;
        y.plan(tom, y.at(kMonday, 20), 12); // before any crew hours
        left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("there are no crew hours")));
        QCOMPARE(left.first().help, QStringLiteral("Light the cook of Mon 23 Nov 24 h later."));

        y.books.plannedCooks[1].light = y.at(QDate(2026, 11, 25), 2);
        y.visit(y.task("C", std::nullopt, kMonday, 60).id, VisitState::Placed,
                y.at(QDate(2026, 11, 24), 18), 1);
        left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("taken by other work")));
        QVERIFY(
            left.first().help.startsWith(QStringLiteral("One more person on Tue 24 Nov, 6:00 PM")));
        y.books.crewTimes[1].people = 2;
        QVERIFY(y.answer(y.at(kMonday)).unplaced.isEmpty());
    }

    void randomBooksKeepTheRules()
    {
        int seen = 0;
        int left = 0;
        for (unsigned seed = 1; seed <= 150; ++seed) {
            Dice dice(seed);
            const UpkeepBooks y = randomBooks(dice);
            const Rules rules(y);
            const UpkeepAnswer answer = y.answer(y.at(QDate(2026, 10, 20), 12));
            left += static_cast<int>(answer.unplaced.size());
            for (const Placement &p : answer.placements) {
                ++seen;
                const UpkeepTask task = y.books.tasks.value(p.task);
                const QByteArray where = QByteArray::number(seed);
                QVERIFY2(p.end - p.start == task.work, where);
                QVERIFY2(rules.pitAllows(task, p.start, p.end), where);
                QVERIFY2(rules.crewIsThere(p.start, p.end), where);
                int together = 0;
                for (const Placement &o : answer.placements) {
                    const bool overlap = o.start < p.end && p.start < o.end;
                    together += o.start <= p.start && p.start < o.end
                                    ? y.books.tasks.value(o.task).people
                                    : 0;
                    const auto otherPit = y.books.tasks.value(o.task).pit;
                    if (o.task != p.task && task.pit && otherPit == task.pit)
                        QVERIFY2(!overlap, where);
                }
                QVERIFY2(together <= rules.people(p.start), where);
            }
        }
        QVERIFY(seen > 300); // the books are not trivially empty
        QVERIFY(left > 20);
    }

    // The starter set on three pits with two years of cooks and visits: answered, and the best.
    void aFullYardIsAnswered()
    {
        UpkeepBooks y;
        for (const char *name : {"Long Tom", "Big Ruth", "Little Ann"})
            y.pit(name);
        const QDate first(2024, 11, 20);
        for (int i = 0; i < 126; ++i) {
            const Instant lit = y.at(first.addDays(i * 6), 5);
            if (lit < y.at(kMonday))
                y.cook(1 + i % 3, lit, lit + hoursOf(12), 150);
            else
                y.plan(1 + i % 3, lit, 12);
        }
        y.crew(Weekday::Tuesday, 18, 3);
        y.crew(Weekday::Thursday, 18, 3, 2);
        for (UpkeepTask t : starterTasks(y.books.pits.values(), QDate(2024, 11, 20))) {
            t.id = y.books.tasks.size() + 1;
            y.books.tasks.insert(t.id, t);
            for (int i = 0; i < 40; ++i)
                y.visit(t.id, VisitState::Done, y.at(first.addDays(10 + i * 18), 18), 0.5);
        }
        const UpkeepAnswer answer = y.answer(y.at(kMonday));
        QCOMPARE(answer.tasks.size(), y.books.tasks.size());
        QVERIFY(!answer.placements.isEmpty());
        QCOMPARE(answer.provenGap, 0.0);
    }

    void oneTaskAgainstEveryHalfHour()
    {
        int found = 0;
        int none = 0;
        for (unsigned seed = 1000; seed < 1150; ++seed) {
            Dice dice(seed);
            const UpkeepBooks y = randomBooks(dice);
            const Rules rules(y);
            const Instant now = y.at(QDate(2026, 10, 20), 12);
            const Yardtime time = yardtimeOf(y.books, now, y.local);
            const UpkeepTask task = y.books.tasks.first();
            Work work;
            work.task = task.id;
            work.pit = task.pit.value_or(0);
            work.length = task.work;
            work.coldBefore = task.coldBefore;
            work.cureAfter = task.cureAfter;
            const Instant until = now + hoursOf(24.0 * (1 + dice.upTo(14)));
            std::optional<Instant> expected;
            for (Instant s = now; s + task.work <= until && !expected; s = s + hoursOf(0.5))
                if (rules.pitAllows(task, s, s + task.work) && rules.crewIsThere(s, s + task.work))
                    expected = s;
            const auto start = earliestStart(work, time, {}, now, until);
            QVERIFY2(start == expected, QByteArray::number(seed));
            ++(expected ? found : none);
        }
        QVERIFY(found > 40 && none > 40);
    }

    // The first Tuesday B's pit is hot, the third is taken: A leaves it the second, which would
    // suit A better too.
    void whatCanWaitMakesRoom()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Tuesday, 18, 1, 1);
        y.task("A", std::nullopt, QDate(2026, 11, 24), 60).everyDays = 10; // due 4 Dec
        UpkeepTask &b = y.task("B", tom, QDate(2026, 11, 26), 60);         // due 10 Dec
        b.everyDays = 14;
        b.blocksLighting = true;
        y.visit(y.task("C", std::nullopt, kMonday, 60).id, VisitState::Placed,
                y.at(QDate(2026, 12, 8), 18), 1);
        y.plan(tom, y.at(QDate(2026, 11, 24), 8), 12);
        y.plan(tom, y.at(QDate(2026, 12, 11), 4), 12);
        const auto answer = y.answer(y.at(kMonday));
        QCOMPARE(answer.unplaced.size(), 0);
        QCOMPARE(answer.placements.size(), 3);
        QCOMPARE(answer.placements.at(0).task, 1);
        QCOMPARE(answer.placements.at(0).start, y.at(QDate(2026, 11, 24), 18));
        QCOMPARE(answer.placements.at(1).task, 2);
        QCOMPARE(answer.placements.at(1).start, y.at(QDate(2026, 12, 1), 18));
    }

    void whatIsMovedByHandStaysAndTheRestMakesWay()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 2, 1);
        y.task("A", std::nullopt, QDate(2026, 10, 1), 60).everyDays = 30;
        y.task("B", std::nullopt, QDate(2026, 10, 2), 60).everyDays = 30;
        QCOMPARE(y.answer(y.at(kMonday)).placements.at(1).task, 2);
        const RecordId visit = y.visit(2, VisitState::Placed, y.at(QDate(2026, 11, 24), 18.25), 1);
        y.books.visits[visit].pinned = true;
        auto placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.at(0).start, y.at(QDate(2026, 11, 24), 18.25));
        QVERIFY(placed.at(0).booked);
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 12, 1), 18)); // no hour left on the 24th
        // Ten minutes further on it leaves no quarter hour either; at seven it leaves the first.
        y.books.visits[visit].start = y.at(QDate(2026, 11, 24), 19);
        y.books.visits[visit].end = y.at(QDate(2026, 11, 24), 20);
        placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.at(0).task, 1);
        QCOMPARE(placed.at(0).start, y.at(QDate(2026, 11, 24), 18));
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 11, 24), 19));
    }

    void twoPeopleDaylightOrderAndPuttingOff()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 3, 1);
        y.crew(Weekday::Sunday, 15, 4, 2); // 15:00 to 19:00
        UpkeepTask &lift = y.task("Lift the lid", std::nullopt, QDate(2026, 10, 1), 60);
        lift.everyDays = 30;
        lift.people = 2;
        auto placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.first().start, y.at(QDate(2026, 11, 29), 15));
        lift.people = 3;
        auto left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("by 3 people, but no more than 2")));
        QCOMPARE(left.first().help,
                 QStringLiteral("2 more people on Tue 24 Nov, 6:00 PM would do."));

        lift.people = 1;
        lift.daylight = true; // until 17:00, assumed
        lift.work = hoursOf(1.5);
        placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.first().start, y.at(QDate(2026, 11, 29), 15));
        lift.work = hoursOf(2.5);
        left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("long enough in daylight")));
        QCOMPARE(left.first().help,
                 QStringLiteral("Have the crew start 30 min earlier on Sun 29 Nov, 3:00 PM."));

        lift.daylight = false;
        lift.work = hoursOf(1);
        UpkeepTask &paint = y.task("Paint", std::nullopt, QDate(2026, 10, 1), 60);
        paint.everyDays = 30;
        paint.priority = 9;
        paint.after = 1;
        placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.at(0).task, 1);
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 11, 24), 19));

        y.books.tasks[1].snoozedUntil = QDate(2026, 11, 26);
        placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.at(0).start, y.at(QDate(2026, 11, 29), 15));
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 11, 29), 16));

        BusyTime busy;
        busy.id = 1;
        busy.start = y.at(QDate(2026, 11, 29), 12);
        busy.end = y.at(QDate(2026, 11, 29), 17.5);
        y.books.busyTimes.insert(1, busy);
        placed = y.answer(y.at(kMonday)).placements;
        QCOMPARE(placed.at(0).start, y.at(QDate(2026, 11, 29), 17.5));
        QCOMPARE(placed.at(1).start, y.at(QDate(2026, 12, 1), 18));
    }

    void dryDaysAreAllowedOrNotKnown()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 3, 1);
        UpkeepTask &paint = y.task("Paint", std::nullopt, QDate(2026, 10, 1), 60);
        paint.everyDays = 30;
        paint.dryWeather = true;
        const Instant now = y.at(kMonday);
        const auto dues = y.answer(now).tasks;
        const auto work = workToPlace(y.books, y.fuel, dues, now, y.local);
        Yardtime time = yardtimeOf(y.books, now, y.local);
        auto result = placeWork(y.books, work, {}, time, now, y.local);
        QCOMPARE(result.placements.first().start, y.at(QDate(2026, 11, 24), 18));
        time.dryDays =
            QVector<WorkWindow>{{y.at(QDate(2026, 11, 30)), y.at(QDate(2026, 12, 1), 19.25), 1}};
        result = placeWork(y.books, work, {}, time, now, y.local);
        QCOMPARE(result.placements.first().start, y.at(QDate(2026, 12, 1), 18));
        time.dryDays = QVector<WorkWindow>();
        result = placeWork(y.books, work, {}, time, now, y.local);
        QVERIFY(result.placements.isEmpty());
        QVERIFY(result.unplaced.first().why.contains(QStringLiteral("expected to be dry")));
    }

    void contradictionsAreNamed()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Tuesday, 18, 3, 1);
        for (const char *name : {"One", "Two", "Three", "Four"})
            y.task(name, std::nullopt, QDate(2026, 10, 1), 30).everyDays = 30;
        y.books.tasks[1].after = 2;
        y.books.tasks[2].after = 3;
        y.books.tasks[3].after = 1;
        y.books.tasks[4].after = 1;
        auto answer = y.answer(y.at(kMonday));
        QCOMPARE(answer.placements.size(), 0);
        QCOMPARE(answer.unplaced.size(), 4);
        QCOMPARE(answer.unplaced.first().why,
                 QStringLiteral("waits for tasks that wait for it: one, two, three"));
        QCOMPARE(answer.unplaced.last().why,
                 QStringLiteral("comes after the one, which has no place itself"));
        y.books.tasks[3].after.reset();
        answer = y.answer(y.at(kMonday));
        QCOMPARE(answer.unplaced.size(), 0);
        QCOMPARE(answer.placements.first().task, 3);

        UpkeepBooks z;
        const RecordId ruth = z.pit("Big Ruth");
        z.crew(Weekday::Tuesday, 18, 3, 1);
        UpkeepTask &ash = z.task("Ash", ruth, QDate(2026, 10, 1), 30);
        ash.everyDays = 30;
        ash.blocksLighting = true;
        ash.snoozedUntil = QDate(2026, 12, 1);
        z.plan(ruth, z.at(QDate(2026, 11, 28), 4), 12);
        answer = z.answer(z.at(kMonday));
        QCOMPARE(answer.unplaced.size(), 1);
        QVERIFY(answer.unplaced.first().why.startsWith(
            QStringLiteral("is put off until Tue 1 Dec, but has to be over before the")));

        // A pit that was retired with its task open: the list of tasks leaves it out, and work for
        // it that comes another way is named.
        Work work;
        work.task = 1;
        work.pit = tom;
        work.length = hoursOf(1);
        y.books.pits[tom].retired = true;
        const auto result =
            placeWork(y.books, {work}, {}, yardtimeOf(y.books, y.at(kMonday), y.local),
                      y.at(kMonday), y.local);
        QCOMPARE(result.unplaced.first().why, QStringLiteral("is for Long Tom, which is retired"));
    }

    // Work that blocks towing is over before the crew leaves.
    void beforeTowing()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 3, 1);
        UpkeepTask &bearings = y.task("Bearings", std::nullopt, QDate(2026, 11, 1), 60);
        bearings.everyDays = 26; // due 27 Nov
        bearings.blocksTowing = true;
        const RecordId e = y.event("Mill Field Supper", y.at(QDate(2026, 12, 1), 20), 3, 1.5);
        y.books.events[e].towed = true;
        QCOMPARE(y.answer(y.at(kMonday)).placements.first().start, y.at(QDate(2026, 11, 24), 18));
        y.books.crewTimes[1].weekday = Weekday::Wednesday;
        y.books.events[e].start = y.at(QDate(2026, 11, 25), 19.5); // leaves at 18:00
        y.books.events[e].end = y.at(QDate(2026, 11, 25), 22);
        y.books.tasks[1].since = QDate(2026, 10, 1);
        const auto left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(
            QStringLiteral("before leaving for the Mill Field Supper (Wed 25 Nov, 6:00 PM)")));
    }

    void sameAnswerWhateverTheOrder()
    {
        for (unsigned seed = 400; seed < 440; ++seed) {
            Dice dice(seed);
            const UpkeepBooks y = randomBooks(dice);
            const Instant now = y.at(QDate(2026, 10, 20), 12);
            auto dues = y.answer(now).tasks;
            QVector<Work> work = workToPlace(y.books, y.fuel, dues, now, y.local);
            const Yardtime time = yardtimeOf(y.books, now, y.local);
            const auto one = placeWork(y.books, work, {}, time, now, y.local);
            std::reverse(work.begin(), work.end());
            const auto two = placeWork(y.books, work, {}, time, now, y.local);
            QCOMPARE(one.weightedDays, two.weightedDays);
            QCOMPARE(one.placements.size(), two.placements.size());
            for (const Placement &p : one.placements)
                QVERIFY(std::any_of(
                    two.placements.begin(), two.placements.end(), [&p](const Placement &o) {
                        return o.task == p.task && o.start == p.start && o.late == p.late;
                    }));
        }
    }

    // Each change that is offered is read from its words, made, and the work has its place.
    void everyChangeOfferedHelps()
    {
        QMap<QString, int> kinds;
        int none = 0;
        for (unsigned seed = 600; seed < 700; ++seed) {
            Dice dice(seed);
            const UpkeepBooks y = randomBooks(dice);
            const Instant now = y.at(QDate(2026, 10, 20), 12);
            const auto work = workToPlace(y.books, y.fuel, y.answer(now).tasks, now, y.local);
            const Yardtime time = yardtimeOf(y.books, now, y.local);
            for (const Unplaced &u : placeWork(y.books, work, {}, time, now, y.local).unplaced) {
                Yardtime changed = time;
                QVector<Work> moved = work;
                const QString kind = make(u.help, y, changed, moved, u.task);
                if (kind.isEmpty()) {
                    ++none;
                    continue;
                }
                ++kinds[kind];
                const auto again = placeWork(y.books, moved, {}, changed, now, y.local);
                const bool placed =
                    std::any_of(again.placements.begin(), again.placements.end(),
                                [&u](const Placement &p) { return p.task == u.task; });
                QVERIFY2(placed, QByteArray(QByteArray::number(seed) + u.help.toUtf8()));
            }
        }
        qInfo() << kinds << none;
        QVERIFY(kinds.value(QStringLiteral("person")) > 5);
        QVERIFY(kinds.value(QStringLiteral("hours")) > 20);
        QVERIFY(kinds.value(QStringLiteral("light")) > 1);
        QVERIFY(kinds.value(QStringLiteral("there")) > 10);
    }

    void theGapInWords()
    {
        QCOMPARE(gapWords(0), QString());
        QCOMPARE(gapWords(0.03), QStringLiteral("within 3 % of the best possible"));
        QCOMPARE(gapWords(0.0301), QStringLiteral("within 4 % of the best possible"));
        QCOMPARE(gapWords(0.0001), QStringLiteral("within 1 % of the best possible"));
    }

private:
    static Duration durationIn(const QString &text)
    {
        qint64 seconds = 0;
        auto it = QRegularExpression(QStringLiteral("(\\d+) (h|min|days)\\b")).globalMatch(text);
        while (it.hasNext()) {
            const auto match = it.next();
            const QString unit = match.captured(2);
            seconds += match.captured(1).toInt() * (unit == QStringLiteral("h")     ? 3600
                                                    : unit == QStringLiteral("min") ? 60
                                                                                    : 86400);
        }
        return Duration::ofBase(seconds);
    }
    // Makes the change that a sentence offers; which kind it was, empty for none.
    static QString make(const QString &help, const UpkeepBooks &y, Yardtime &time,
                        QVector<Work> &work, RecordId task)
    {
        QString kind;
        static const QRegularExpression more(
            QStringLiteral("^(One|\\d+) more (?:person|people) on (.*) would do"));
        static const QRegularExpression stretch(
            QStringLiteral("^Have the crew (stay|start) (.*) (?:longer|earlier) on (.*)\\.$"));
        static const QRegularExpression light(
            QStringLiteral("^Light the (.*?) ((?:\\d+ (?:h|min|days) ?)+) later"));
        static const QRegularExpression there(
            QStringLiteral("ave (one person|(\\d+) people) there from (.*) for (.*)\\.$"));
        if (const auto m = more.match(help); m.hasMatch()) {
            for (WorkWindow &w : time.windows)
                if (y.local.timeText(w.start) == m.captured(2)) {
                    w.people += std::max(1, m.captured(1).toInt());
                    return QStringLiteral("person");
                }
        } else if (const auto s = stretch.match(help); s.hasMatch()) {
            for (WorkWindow &w : time.windows)
                if (y.local.timeText(w.start) == s.captured(3)) {
                    if (s.captured(1) == QStringLiteral("stay"))
                        w.end = w.end + durationIn(s.captured(2));
                    else
                        w.start = w.start - durationIn(s.captured(2));
                    return QStringLiteral("hours");
                }
        }
        if (const auto l = light.match(help); l.hasMatch()) {
            const RecordId pit = y.books.tasks.value(task).pit.value_or(0);
            const Duration by = durationIn(l.captured(2));
            for (Burn &b : time.fires[pit])
                if (b.cook == 0 && burnName(y.books, b) == l.captured(1)) {
                    for (Work &w : work)
                        if (w.blockedCook == b.planned && w.before)
                            w.before = *w.before + by;
                    b.start = b.start + by;
                    b.end = b.end + by;
                    kind = QStringLiteral("light");
                    break;
                }
        }
        if (const auto t = there.match(help); t.hasMatch()) {
            QDateTime from = QLocale(QStringLiteral("en_US"))
                                 .toDateTime(t.captured(3) + QStringLiteral(" 2026"),
                                             QStringLiteral("ddd d MMM, h:mm AP yyyy"));
            const Instant start = y.local.at(
                from.date(), Duration::ofBase(from.time().msecsSinceStartOfDay() / 1000));
            time.windows << WorkWindow{start, start + durationIn(t.captured(4)),
                                       std::max(1, t.captured(2).toInt())};
            kind = QStringLiteral("there");
        }
        return kind;
    }
};

RICKYARD_TEST(TstPlacement)
#include "tst_placement.moc"
