// Fire: pits, cooks, feeds, temperatures and traces.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

enum class Insulation { Bare, FireboxOnly, Whole };
enum class Shelter { Open, Half, Sheltered };

struct Pit {
    RecordId id = 0;
    QString name;
    Length diameter;                   // cook chamber
    Length length;                     // cook chamber
    std::optional<Length> fireboxSide; // edge of a cube of the same size
    std::optional<Length> plate;       // steel thickness
    std::optional<Mass> steel;         // weighed or from the maker
    Insulation insulation = Insulation::Bare;
    Shelter shelter = Shelter::Half;
    std::optional<Temperature> usualTemperature;
    bool retired = false;
    QString note;
    QString typed;
};

enum class StartKind { Cold, Warm };
enum class WoodMeasure { Tally, Weighed, Difference };

struct Cook {
    RecordId id = 0;
    QString name;
    RecordId pit = 0;
    std::optional<RecordId> planned; // the planned cook it fulfils
    Instant lit;
    std::optional<Instant> atTemperature;
    std::optional<Instant> foodOn;
    std::optional<Instant> foodOff;
    std::optional<Instant> fireOut; // missing while it burns
    std::optional<Temperature> target;
    StartKind start = StartKind::Cold;
    QString foods;
    std::optional<Mass> foodMass;
    WoodMeasure measuredBy = WoodMeasure::Tally;
    std::optional<Mass> crateBefore; // weighed crate, as is
    std::optional<Mass> crateAfter;
    std::optional<Volume> stackBefore; // stacked wood at the pit, by difference
    std::optional<Volume> stackAfter;
    std::optional<RecordId> woodLot;    // what the crate or the stack is of; missing: as the feeds
    std::optional<Temperature> outside; // typed when there is no weather series
    std::optional<Speed> wind;
    QString note;
    QString typed;
};

struct Feed {
    RecordId id = 0;
    RecordId cook = 0;
    RecordId lot = 0;
    Instant time;
    int pieces = 1;
    std::optional<Mass> weight; // as is; missing: pieces times the lot's mean split
    QString note;
    QString typed;
};

// A pit temperature read and typed (probe logs are traces).
struct CookTemperature {
    RecordId id = 0;
    RecordId cook = 0;
    Instant time;
    QString probe;
    Temperature temperature;
    QString typed;
};

enum class NoteKind { Remark, Door, Wrapped, Turned, Rain, WindTurned, Grease, Ash, HandOver };

struct CookNote {
    RecordId id = 0;
    RecordId cook = 0;
    Instant time;
    NoteKind kind = NoteKind::Remark;
    QString text;
    QString typed;
};

// A probe's temperatures in one compressed block; see domain/fire/trace_codec.h.
struct Trace {
    RecordId id = 0;
    RecordId cook = 0;
    QString probe;
    Instant start;
    int points = 0;
    QByteArray block;
    QString source;
    QString typed;
};

// What was changed on a cook after its fire was out: kept by the program, never typed.
struct CookChange {
    RecordId id = 0;
    RecordId cook = 0;
    Instant time;   // of the change
    QString what;   // "Fire out", "Feed of 02:10, splits"
    QString before; // in words of the day it was changed; empty: there was none
    QString after;  // empty: taken away
    QString typed;
};

} // namespace rickyard::domain
