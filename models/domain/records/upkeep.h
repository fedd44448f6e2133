// Upkeep: tasks with their triggers, visits (placed or done), findings, known-good periods.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

// What a task is due with, beside its intervals.
enum class Occasion { None, BeforeCook, AfterCook, BeforeTowing, BeforeSeason };

// What is read off when it is done. Ice and boiling point check a thermometer, the paper test a
// gasket at its points (the pull in the task's own scale), plate thickness the steel.
enum class ReadingKind { None, IcePoint, BoilingPoint, PaperTest, PlateThickness, Other };

enum class IntervalSource { CommonPractice, LocalCode, MakersManual, OwnRule };

// Due at whichever trigger comes first, counted from the last visit that did it (or `since`).
struct UpkeepTask {
    RecordId id = 0;
    QString name;
    std::optional<RecordId> pit; // missing: trailer or kit
    QString target;              // "door gasket", "extinguisher 1"
    QDate since;                 // start of the count before the first visit
    std::optional<int> everyDays;
    std::optional<int> everyCooks;
    std::optional<Duration> everyFireHours;
    std::optional<Heat> everySeasoned; // heat burned, shown as seasoned pounds
    std::optional<Mass> everyAsh;      // estimated ash of the wood burned
    Occasion occasion = Occasion::None;
    QDate snoozedUntil; // put off to that day; a block stays a block
    QString snoozeReason;
    Duration work;                 // one person
    int people = 1;                // needed at once
    std::optional<RecordId> after; // the task to be done before it
    bool daylight = false;         // needs daylight
    bool dryWeather = false;       // needs a dry spell
    Duration coldBefore;           // pit cold before the work
    Duration cureAfter;            // before the next fire
    bool blocksLighting = false;
    bool blocksTowing = false;
    int priority = 1; // weight of lateness, 1 to 9
    QString tools;
    QString steps;
    QString cautions;
    IntervalSource intervalFrom = IntervalSource::CommonPractice;
    ReadingKind reading = ReadingKind::None;
    QString readingUnit;              // "°F", "mm", "of 3"
    int readingPoints = 1;            // values a visit
    std::optional<Plain> readingLow;  // limits, in readingUnit
    std::optional<Plain> readingHigh; // likewise
    bool once = false;                // done once, it is due no more
    bool retired = false;
    QString typed;
};

enum class VisitState { Placed, Started, Done, Skipped };

struct Visit {
    RecordId id = 0;
    RecordId task = 0;
    VisitState state = VisitState::Placed;
    Instant start;
    std::optional<Instant> end;
    bool pinned = false; // moved by hand: re-planning leaves it
    QString who;
    std::optional<Money> cost;
    QString stepsDone; // numbers of the steps ticked, from 0: "0,2,3"
    QString found;
    QString note;
    QString typed;
};

// One value read on a visit, or between visits.
struct CheckReading {
    RecordId id = 0;
    RecordId task = 0;
    std::optional<RecordId> visit;
    Instant time;
    int point = 1; // 1 to the task's readingPoints
    Plain value;   // in the task's readingUnit
    QString note;
    QString typed;
};

// Nothing: the pit was looked at and nothing was found, so its last cooks count as ordinary ones.
enum class FindingState { Open, Watched, Mended, Nothing };

struct Finding {
    RecordId id = 0;
    std::optional<RecordId> pit;
    std::optional<RecordId> cook;
    std::optional<RecordId> visit;    // where it was found
    std::optional<RecordId> mendedBy; // visit
    Instant opened;
    FindingState state = FindingState::Open;
    QString text;
    QString typed;
};

// A picture, kept in the folder beside the yard file.
struct Photo {
    RecordId id = 0;
    std::optional<RecordId> visit;
    std::optional<RecordId> finding;
    QString file; // its name in that folder
    QString caption;
    QString sha256; // of the file, in hexadecimal digits
    int bytes = 0;
    Instant taken; // when it was attached
    QString typed;
};

// Ash taken out of a pit. It is hot for days: see kAshCooling in upkeep/starter_tasks.h.
struct AshLoad {
    RecordId id = 0;
    RecordId pit = 0;
    Instant takenOut;
    QString can;
    std::optional<Mass> mass;
    std::optional<Instant> tipped; // out of the can; missing: still in it
    QString where;                 // it was tipped
    QString note;
    QString typed;
};

// Going on although a task blocks it: for one cook or one event, with the reason.
struct Override {
    RecordId id = 0;
    RecordId task = 0;
    std::optional<RecordId> plannedCook; // the lighting that is allowed
    std::optional<RecordId> event;       // the towing that is allowed
    Instant time;
    QString reason;
    QString who;
    QString typed;
};

// A stretch in which a pit is declared in order: the norm may learn from it.
struct KnownGood {
    RecordId id = 0;
    RecordId pit = 0;
    QDate from;
    QDate to; // missing: open
    QString reason;
    QString typed;
};

} // namespace rickyard::domain
