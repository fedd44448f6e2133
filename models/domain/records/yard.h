// The yard itself: one row that every yard file has, crew hours and saved import profiles.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

struct Yard {
    RecordId id = 1;
    QString name;
    QString timeZone = QStringLiteral("America/Chicago"); // IANA
    bool metric = false;
    bool invented = false; // demo data says so wherever the yard is shown
    std::optional<Length> elevation;
    Ratio acceptedRisk = Ratio::ofBase(50000); // chance of running short that the crew accepts
    int falseAlarmCooks = 200; // of one pit in order, for each false flag that the crew accepts
    Duration orderLead = Duration::ofBase(14 * 86400); // used for a supplier without a figure
    // Meter readings are corrected when they are used, never in the record (domain/wood/meter.h).
    bool correctTemperature = true;
    bool correctSpecies = false;      // its table is from memory: off until the crew says so
    std::optional<Volume> woodRoom;   // stacked wood there is room for
    std::optional<int> seasonMonth;   // 1 to 12, the month a season starts with
    std::optional<Mass> boxMass;      // wood that one box holds
    std::optional<Mass> kindling;     // for one fire
    std::optional<Mass> trailerEmpty; // trailer, pits and gear, without wood and food
    std::optional<Mass> trailerLimit; // the most it may weigh
    QString meterScale;               // what the crew's meter is usually set to
    QString note;
    QString mark; // of this yard alone; names its records to other programs, whatever it is called
    QString typed;
};

enum class Weekday { Monday, Tuesday, Wednesday, Thursday, Friday, Saturday, Sunday };

// When the crew can work on the pits, by weekday, in local time.
struct CrewTime {
    RecordId id = 0;
    Weekday weekday = Weekday::Monday;
    Duration start; // after local midnight
    Duration length;
    int people = 1;
    QString note;
    QString typed;
};

// A stretch in which the crew is taken, read from somebody's calendar.
struct BusyTime {
    RecordId id = 0;
    QString uid;    // of the calendar's entry; a repeated one has its start behind it
    QString source; // the calendar it came from
    Instant start;
    Instant end;
    QString summary;
    QString typed;
};

// A saved mapping from a foreign file's columns to ours (JSON, see docs/file-formats.md).
struct ImportProfile {
    RecordId id = 0;
    QString name;
    QString kind;
    QString mapping;
    QString typed;
};

} // namespace rickyard::domain
