// What each cause of a drift would do to one rick, from its records; weighed in count_drift.cpp.
#pragma once

#include "models/domain/wood/count_drift.h"

namespace rickyard::domain {

struct SuspectedCause {
    DriftCause cause = DriftCause::CountError;
    double prior = 0; // share beforehand, our own rule
    double mean = 0;  // kilograms of dry wood, count less books
    double sd = 0;    // likewise, without the error of the count
    int sign = 0;     // +1 or -1: in that direction alone; with a mean of 0 it is half a normal
    QString words;
};

struct DriftCase {
    const Books &books;
    RecordId lot;
    const CountedWood &counted;
    CountWay way;
    Instant now;
    std::optional<Moisture> moistureNow;
    const Wording &wording;
    const CountDrift &found; // book, counted and error; no clues yet
};

// Those that can be at work; a cause without anything that could show it is left out.
QVector<SuspectedCause> suspectedCauses(const DriftCase &drift);

// Feeds that a cook's log lacks, by its own rhythm: where two feedings lie twice their middle
// interval apart or more, those that would have stood between.
int feedsMissing(const Books &books, RecordId cook, Instant now);

} // namespace rickyard::domain
