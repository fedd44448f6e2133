// Placement of 10, 30 and 60 tasks over eight weeks: four pits, two people on weekday evenings and
// Sundays, eight cooks, two trips away; five yards of each size, and the same with long jobs and
// half the evenings. Prints time, gap and nodes.
#include "models/domain/upkeep/placement.h"

#include <cstdio>
#include <ctime>
#include <random>

using namespace rickyard::domain;

namespace {

const QDate kFirstDay(2026, 11, 23); // a Monday

class BenchYard
{
public:
    BenchYard(unsigned seed, int tasks, bool hard) : m_engine(seed)
    {
        Yard yard;
        yard.timeZone = QStringLiteral("America/Chicago");
        m_books.yards.insert(1, yard);
        for (RecordId id = 1; id <= 4; ++id) {
            Pit pit;
            pit.id = id;
            pit.name = QStringLiteral("Pit ") + QString::number(id);
            m_books.pits.insert(id, pit);
        }
        for (int day = 0; day < 5; ++day)
            if (!hard || day % 2 == 1)
                addCrew(static_cast<Weekday>(day), 18, 3);
        addCrew(Weekday::Sunday, 10, 6);
        for (int week = 0; week < 8; ++week)
            addCook(1 + week % 4, kFirstDay.addDays(7 * week + 5));
        addTrip(kFirstDay.addDays(7 * 2 + 4));
        addTrip(kFirstDay.addDays(7 * 5 + 4));
        for (int i = 0; i < tasks; ++i)
            addTask(hard);
    }
    PlacementResult solve(double &seconds) const
    {
        const Instant now = m_local.at(kFirstDay, Duration::ofBase(8 * 3600));
        QVector<TaskDue> dues;
        for (const UpkeepTask &task : m_books.tasks) {
            const DueForecast forecast = forecastDue(m_books, {}, task, now, m_local);
            TaskDue due;
            due.task = task.id;
            due.pit = task.pit.value_or(0);
            due.due = forecast.day;
            due.overdue = forecast.known && forecast.day < m_local.dateOf(now);
            due.worst = 0.5;
            dues << due;
        }
        const QVector<Work> work = workToPlace(m_books, {}, dues, now, m_local);
        m_placed = static_cast<int>(work.size());
        const Yardtime time = yardtimeOf(m_books, now, m_local);
        timespec from{};
        timespec to{};
        clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &from);
        const PlacementResult result = placeWork(m_books, work, {}, time, now, m_local);
        clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &to);
        seconds = static_cast<double>(to.tv_sec - from.tv_sec) +
                  1e-9 * static_cast<double>(to.tv_nsec - from.tv_nsec);
        return result;
    }
    [[nodiscard]] int placed() const { return m_placed; }

private:
    int upTo(int n) { return static_cast<int>(m_engine() % static_cast<unsigned>(n)); }
    void addCrew(Weekday day, int from, int hoursLong)
    {
        CrewTime time;
        time.id = m_books.crewTimes.size() + 1;
        time.weekday = day;
        time.start = Duration::ofBase(from * 3600);
        time.length = Duration::ofBase(hoursLong * 3600);
        time.people = 2;
        m_books.crewTimes.insert(time.id, time);
    }
    void addCook(RecordId pit, QDate day)
    {
        PlannedCook cook;
        cook.id = m_books.plannedCooks.size() + 1;
        cook.pit = pit;
        cook.light = m_local.at(day, Duration::ofBase(4 * 3600));
        cook.length = Duration::ofBase(12 * 3600);
        m_books.plannedCooks.insert(cook.id, cook);
    }
    void addTrip(QDate friday)
    {
        Event event;
        event.id = m_books.events.size() + 1;
        event.name = QStringLiteral("Invented fair");
        event.start = m_local.at(friday, Duration::ofBase(12 * 3600));
        event.end = m_local.at(friday.addDays(2), Duration::ofBase(18 * 3600));
        event.travel = Duration::ofBase(2 * 3600);
        m_books.events.insert(event.id, event);
    }
    void addTask(bool hard)
    {
        constexpr int minutes[] = {10, 15, 20, 30, 30, 45, 60, 60, 90, 120};
        constexpr int intervals[] = {14, 30, 30, 60, 90, 180, 365};
        UpkeepTask task;
        task.id = m_books.tasks.size() + 1;
        task.name = QStringLiteral("Task ") + QString::number(task.id);
        const int pit = upTo(5);
        if (pit != 0)
            task.pit = pit;
        task.work = Duration::ofBase(60 * minutes[upTo(10)] * (hard ? 3 : 2) / 2);
        task.people = upTo(6) == 0 ? 2 : 1;
        task.coldBefore = Duration::ofBase(upTo(2) * 12 * 3600);
        task.cureAfter = Duration::ofBase(upTo(4) == 0 ? 24 * 3600 : 0);
        task.daylight = upTo(6) == 0;
        task.priority = 1 + upTo(9);
        if (task.id > 1 && upTo(8) == 0)
            task.after = 1 + upTo(static_cast<int>(task.id) - 1);
        if (task.pit && upTo(4) == 0) {
            task.everyCooks = 1 + upTo(2);
            task.blocksLighting = upTo(2) == 0;
            task.since = kFirstDay.addDays(-20);
        } else {
            task.everyDays = intervals[upTo(7)];
            task.since = kFirstDay.addDays(upTo(58) - 4 - *task.everyDays); // due within the weeks
        }
        m_books.tasks.insert(task.id, task);
    }

    std::mt19937 m_engine;
    Books m_books;
    LocalTime m_local{QStringLiteral("America/Chicago")};
    mutable int m_placed = 0;
};

} // namespace

int main()
{
    for (const bool hard : {false, true}) {
        std::printf("%s\n  %6s %5s %9s %8s %7s %10s %9s\n",
                    hard ? "half the evenings, long jobs" : "weekday evenings and Sundays", "tasks",
                    "seed", "left out", "CPU s", "nodes", "late days", "gap");
        for (const int tasks : {10, 30, 60})
            for (unsigned seed = 1; seed <= 5; ++seed) {
                const BenchYard yard(seed, tasks, hard);
                double seconds = 0;
                const PlacementResult result = yard.solve(seconds);
                const QString gap =
                    result.provenGap > 0 ? gapWords(result.provenGap) : QStringLiteral("best");
                std::printf("  %6d %5u %9d %8.3f %7d %10lld  %s\n", yard.placed(), seed,
                            static_cast<int>(result.unplaced.size()), seconds, result.nodes,
                            static_cast<long long>(result.weightedDays), qPrintable(gap));
            }
    }
    return 0;
}
