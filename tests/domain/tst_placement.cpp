// First-fit placement: hand-worked cases, random books against rules written down a second time,
// and single pieces of work against a search of every half hour.
#include "models/domain/upkeep/placement.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QDateTime>
#include <QElapsedTimer>
#include <QTest>

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
                 QStringLiteral("is placed on Tue 24 Nov, 18:00, but it needs 1 h of work after "
                                "12 h cold and Long Tom burns until Tue 24 Nov, 14:00"));
        QCOMPARE(left.first().help, QStringLiteral("Move it to Tue 1 Dec, 18:00."));
    }

    void notBeforeThreeQuartersOfItsInterval()
    {
        UpkeepBooks y;
        y.crew(Weekday::Tuesday, 18, 3, 1);
        y.task("A", std::nullopt, QDate(2026, 11, 10), 60).everyDays =
            40; // due 20 Dec; from 10 Dec
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
                                "01:00)"));
        // Cold at 04:00, done by 04:30, clear an hour: lit at 05:30, and nobody is there at four.
        QCOMPARE(answer.unplaced.first().help,
                 QStringLiteral("Light the Mill Field Supper 4 h 30 min later, and have one "
                                "person there from Sat 28 Nov, 04:00."));
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
        QCOMPARE(left.first().help, QStringLiteral("Make one of them 30 min longer."));

        const RecordId tom = y.pit("Long Tom");
        y.books.tasks.clear();
        UpkeepTask &blocking = y.task("B", tom, QDate(2026, 10, 1), 60);
        blocking.everyDays = 30;
        blocking.blocksLighting = true;
        y.plan(tom, y.at(kMonday, 20), 12); // before any crew hours
        left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("there are no crew hours")));

        y.books.plannedCooks[1].light = y.at(QDate(2026, 11, 25), 2);
        y.visit(y.task("C", std::nullopt, kMonday, 60).id, VisitState::Placed,
                y.at(QDate(2026, 11, 24), 18), 1);
        left = y.answer(y.at(kMonday)).unplaced;
        QCOMPARE(left.size(), 1);
        QVERIFY(left.first().why.contains(QStringLiteral("taken by other work")));
        QVERIFY(
            left.first().help.startsWith(QStringLiteral("One more person on Tue 24 Nov, 18:00")));
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
                    together += o.start <= p.start && p.start < o.end ? 1 : 0;
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

    // Two years of three pits with the starter set and 40 visits a task. The bound catches a change
    // of order, not of degree: debug builds and sanitizers run it too.
    void aFullYardIsAnsweredAtOnce()
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
        QElapsedTimer timer;
        timer.start();
        const UpkeepAnswer answer = y.answer(y.at(kMonday));
        const qint64 took = timer.elapsed();
        qInfo("%lld ms for %lld tasks, %lld placed, %lld left over", took,
              static_cast<long long>(answer.tasks.size()),
              static_cast<long long>(answer.placements.size()),
              static_cast<long long>(answer.unplaced.size()));
        QCOMPARE(answer.tasks.size(), y.books.tasks.size());
        QVERIFY(!answer.placements.isEmpty());
        QVERIFY(took < 2000);
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
};

RICKYARD_TEST(TstPlacement)
#include "tst_placement.moc"
