// How long the wood lasts: the pace of the feeds over the last hours, what is left over it, and the
// chance that it reaches the end of the cook.
#pragma once

#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// The pace at which a burning cook takes wood. Feeds within two minutes are one feeding. It is
// taken over the last three hours or the last five feedings, whichever reaches further back, and
// without the first half hour, in which the lighting would stand for the whole cook.
struct FeedPace {
    Instant lastFeed;
    Duration interval; // mean between feedings
    Heat perHour;      // net
    double error = 0;  // relative standard error of perHour
    int feedings = 0;  // it rests on
};
// Nothing before three feedings or in the first half hour.
std::optional<FeedPace> feedPace(const Books &books, const Cook &cook, Instant now);

// Relative standard error of what a counted or measured stack holds; a split's own comes on top.
constexpr double kCountedStockError = 0.05;

struct WoodLeft {
    Duration lasts; // from now, middle; the next feed is due an interval after the last
    Duration least; // 80 % of the time between these
    Duration most;
    std::optional<Instant> end; // of the cook, planned or assumed
    bool endAssumed = false;
    double chanceEnough = 1; // that it reaches the end; 1 without one
    Heat need;               // to the end at this pace
    [[nodiscard]] Instant runsOut(Instant now) const { return now + lasts; }
};
// `leftError` is the relative standard error of `left`. Errors multiply, so the duration is
// log-normal; the pace of the hours to come is taken to differ from that of the hours past by a
// tenth (our own).
WoodLeft woodLeft(Heat left, double leftError, const FeedPace &pace, Instant now,
                  std::optional<Instant> end, bool endAssumed);

// When a burning cook should end: by its plan, else by the mean of its pit's cooks, else assumed.
struct ExpectedEnd {
    Instant time;
    bool assumed = false;
};
std::optional<ExpectedEnd> expectedEnd(const Books &books, const Cook &cook, Instant now);

} // namespace rickyard::domain
