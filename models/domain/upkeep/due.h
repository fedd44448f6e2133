// What is overdue, what falls due before which event, and when it can be done.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/fire/fuel.h"
#include "models/domain/plan/reorder.h"

#include <cmath>
#include <functional>

namespace rickyard::domain {

struct Meter {
    QString unit;    // "days", "cooks", "fire hours", "seasoned lb", "lb of ash", "kg of ash"
    double used = 0; // since the last time it was done
    double limit = 0;

    // The unit beside a figure that is shown whole: "1 cook", "2 cooks".
    [[nodiscard]] QString unitBy(double figure) const
    {
        const bool one = std::lround(figure) == 1 && unit.endsWith(QLatin1Char('s'));
        return one ? unit.chopped(1) : unit;
    }
};

// How likely a task is to be overdue at a planned lighting when nothing is done about it.
struct LightingChance {
    RecordId plannedCook = 0;
    Instant light;
    double chance = 0;
};

struct TaskDue {
    RecordId task = 0;
    RecordId pit = 0; // 0: trailer or kit
    std::optional<Instant> lastDone;
    QVector<Meter> meters;
    double worst = 0; // highest used / limit
    // By the first trigger, the middle of its spread; invalid when nothing runs it up.
    QDate due;
    QDate dueEarly;          // one chance in ten that it falls due by then
    QDate dueLate;           // nine in ten; invalid: not within a year or the plan
    bool certain = true;     // no spread: days, occasions, a meter that is full already
    Instant dueAt;           // a lighting or departure at or after this finds it overdue
    bool byCalendar = false; // `dueAt` is a moment of the calendar, see DueForecast::byDays
    QString dueReason;       // "after 10 cooks"
    bool overdue = false;
    // Put off: shown as such, not asked for until that day. A block stays a block.
    bool snoozed = false;
    QDate snoozedUntil;
    QString snoozeReason;
    QVector<LightingChance> lightings; // planned ones, by time
    RecordId beforeEvent = 0;          // first event or cook that it falls due before
    RecordId beforeCook = 0;
    bool blocksNextCook = false; // overdue at a lighting it blocks
};

struct Placement {
    RecordId task = 0;
    Instant start;
    Instant end;      // work done
    Instant freeFrom; // after the cure
    bool late = false;
    bool booked = false; // an existing placed visit, not a proposal
};

struct Unplaced {
    RecordId task = 0;
    QString why;
    QString help; // the smallest change that would help
};

struct UpkeepAnswer {
    Headline headline;
    QVector<TaskDue> tasks; // most urgent first
    QVector<Placement> placements;
    QVector<Unplaced> unplaced;
    double provenGap = 0; // the placements may be this share above the best; 0: they are the best
};

UpkeepAnswer upkeepAnswer(const Books &books, const FuelAnswer &fuel, Instant now,
                          const Wording &wording);
// The same with what the planned cooks take already worked out (plannedUses). `stop`: the best
// placement so far is enough.
UpkeepAnswer upkeepAnswer(const Books &books, const FuelAnswer &fuel,
                          const QVector<PlannedUse> &uses, Instant now, const Wording &wording,
                          const std::function<bool()> &stop = {});

} // namespace rickyard::domain
