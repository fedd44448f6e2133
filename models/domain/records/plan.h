// Plan: events and the cooks booked for them.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

enum class EventState { Proposed, Booked, Done, Cancelled };

struct Event {
    RecordId id = 0;
    QString name;
    QString place;
    Instant start; // serving
    Instant end;
    EventState state = EventState::Booked;
    std::optional<Duration> travel; // one way
    bool towed = false;             // a pit goes along on the trailer
    std::optional<int> covers;
    QString siteRules;
    QString repeatRule; // RRULE of RFC 5545 without DTSTART, on every event of a series
    QString series;     // the same on every event of a series, and on no other
    QString note;
    QString typed;
};

struct PlannedCook {
    RecordId id = 0;
    std::optional<RecordId> event;
    RecordId pit = 0;
    Instant light;
    Duration length;                   // lighting to fire out
    std::optional<Temperature> target; // missing: the pit's usual
    QString foods;
    std::optional<Mass> foodMass;
    std::optional<RecordId> species;    // preferred wood
    std::optional<Temperature> outside; // forecast typed in; missing: usual for the date
    std::optional<Speed> wind;
    bool cancelled = false;
    QString note;
    QString typed;
};

} // namespace rickyard::domain
