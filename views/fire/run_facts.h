// What the panel of a burning cook tells, worked out from the books and a moment.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/stock.h"

#include <optional>

namespace rickyard::views {

struct RunFacts {
    domain::Instant lit;
    QVector<domain::Instant> feedings; // feeds within two minutes of each other count as one
    std::optional<domain::Instant> lastFeed;
    std::optional<domain::Duration> interval; // mean between feedings; needs two
    std::optional<domain::Instant> nextFeed;  // last plus interval
    int pieces = 0;
    domain::Mass asIs;    // as weighed or counted, water included
    domain::Heat heat;    // net
    bool assumed = false; // some weight or moisture was assumed
    std::optional<domain::CookTemperature> lastTemperature;
    std::optional<domain::RecordId> lastLot;
};

RunFacts runFacts(const domain::Books &books, const domain::Cook &cook, domain::Instant now);

// How far the cook's latest feed, reading or note lies ahead of the clock; zero when it does not.
domain::Duration aheadOfClock(const domain::Books &books, domain::RecordId cook,
                              domain::Instant now);

// Lots that can be fed, ready ones first, with how they stand in words. Woods never to be burned
// for food and empty lots are left out.
struct LotChoice {
    domain::RecordId lot = 0;
    domain::Readiness readiness = domain::Readiness::NoReading;
    domain::Heat heat;
    QString text; // "Oak, spring: dry enough, 18 % dry basis"
};
QVector<LotChoice> lotChoices(const domain::Books &books, domain::Instant now);

// Cooks that burn, oldest first.
QVector<domain::Cook> burningCooks(const domain::Books &books);

} // namespace rickyard::views
