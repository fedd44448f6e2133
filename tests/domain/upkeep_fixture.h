// Small books for the upkeep tests: one call a record, times on the wall clock of the yard.
#pragma once

#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::test {

using namespace rickyard::domain;

constexpr qint64 kHour = 3600;

inline Duration hoursOf(double h)
{
    return durationFromHours(h);
}

class UpkeepBooks
{
public:
    Books books;
    FuelAnswer fuel;
    LocalTime local{QStringLiteral("America/Chicago")};

    UpkeepBooks()
    {
        Yard yard;
        yard.name = QStringLiteral("Invented yard");
        books.yards.insert(1, yard);
    }
    [[nodiscard]] Instant at(QDate day, double hour = 0) const
    {
        return local.at(day, hoursOf(hour));
    }
    RecordId pit(const char *name)
    {
        Pit p;
        p.id = books.pits.size() + 1;
        p.name = QString::fromUtf8(name);
        books.pits.insert(p.id, p);
        return p.id;
    }
    RecordId cook(RecordId pitId, Instant lit, std::optional<Instant> out,
                  std::optional<double> seasonedLb = std::nullopt)
    {
        Cook c;
        c.id = books.cooks.size() + 1;
        c.pit = pitId;
        c.lit = lit;
        c.fireOut = out;
        books.cooks.insert(c.id, c);
        if (seasonedLb) {
            CookFuel f;
            f.cook = c.id;
            f.pit = pitId;
            f.lit = lit;
            f.finished = out.has_value();
            f.netHeat = heatFromSeasonedPounds(*seasonedLb);
            f.length = out ? *out - lit : Duration();
            fuel.cooks << f;
        }
        return c.id;
    }
    RecordId plan(RecordId pitId, Instant light, double lengthHours, RecordId event = 0)
    {
        PlannedCook p;
        p.id = books.plannedCooks.size() + 1;
        p.pit = pitId;
        p.light = light;
        p.length = hoursOf(lengthHours);
        if (event != 0)
            p.event = event;
        books.plannedCooks.insert(p.id, p);
        return p.id;
    }
    RecordId event(const char *name, Instant start, double lengthHours, double travelHours)
    {
        Event e;
        e.id = books.events.size() + 1;
        e.name = QString::fromUtf8(name);
        e.start = start;
        e.end = start + hoursOf(lengthHours);
        e.travel = hoursOf(travelHours);
        books.events.insert(e.id, e);
        return e.id;
    }
    UpkeepTask &task(const char *name, std::optional<RecordId> pitId, QDate since,
                     double workMinutes = 30, double cold = 0, double cure = 0)
    {
        UpkeepTask t;
        t.id = books.tasks.size() + 1;
        t.name = QString::fromUtf8(name);
        t.pit = pitId;
        t.since = since;
        t.work = hoursOf(workMinutes / 60);
        t.coldBefore = hoursOf(cold);
        t.cureAfter = hoursOf(cure);
        return *books.tasks.insert(t.id, t);
    }
    RecordId visit(RecordId taskId, VisitState state, Instant start, double lengthHours)
    {
        Visit v;
        v.id = books.visits.size() + 1;
        v.task = taskId;
        v.state = state;
        v.start = start;
        v.end = start + hoursOf(lengthHours);
        books.visits.insert(v.id, v);
        return v.id;
    }
    void crew(Weekday day, double startHour, double lengthHours, int people = 1)
    {
        CrewTime t;
        t.id = books.crewTimes.size() + 1;
        t.weekday = day;
        t.start = hoursOf(startHour);
        t.length = hoursOf(lengthHours);
        t.people = people;
        books.crewTimes.insert(t.id, t);
    }
    RecordId reading(RecordId taskId, Instant time, double value, int point = 1,
                     RecordId visitId = 0)
    {
        CheckReading r;
        r.id = books.checkReadings.size() + 1;
        r.task = taskId;
        r.time = time;
        r.value = Plain::rounded(value * 1e6);
        r.point = point;
        if (visitId != 0)
            r.visit = visitId;
        books.checkReadings.insert(r.id, r);
        return r.id;
    }
    RecordId ashLoad(RecordId pitId, Instant takenOut, const char *can,
                     std::optional<Instant> tipped = std::nullopt)
    {
        AshLoad a;
        a.id = books.ashLoads.size() + 1;
        a.pit = pitId;
        a.takenOut = takenOut;
        a.can = QString::fromUtf8(can);
        a.tipped = tipped;
        books.ashLoads.insert(a.id, a);
        return a.id;
    }
    [[nodiscard]] UpkeepAnswer answer(Instant now) const
    {
        return upkeepAnswer(books, fuel, now,
                            {false, QStringLiteral("America/Chicago"), QStringLiteral("en_US")});
    }
};

} // namespace rickyard::test
