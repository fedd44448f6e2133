// Was that a cord, was it dry, and what did it cost? The check of one delivery in plain words.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// A well-stowed cord holds 70 (loosely) to 90 (tightly stacked) cubic feet of solid wood: the range
// that a California energy agency prints beside its heat table. It is the error that a stacking
// factor leaves in every amount reckoned from a stack.
constexpr double kLeastSolidFeetPerCord = 70;
constexpr double kMostSolidFeetPerCord = 90;

// A delivery counts as short when a measured stack is this much under what was paid for; less lies
// within a careful tape (common practice, no source).
constexpr double kShortDelivery = 0.05;
// The same for wood paid for by weight and weighed: a platform scale is good to about a per cent
// (common practice, no source).
constexpr double kShortWeight = 0.02;

struct DeliveryCheck {
    Headline headline; // the verdict; its reasons are the single findings
    // Stacked volume that came: of the stack, or the stack that the loose load or the weight makes.
    std::optional<Volume> stacked;
    std::optional<Volume> paidFor;
    // When paid for by weight: what the invoice says and what the scale said.
    std::optional<Mass> paidWeight;
    std::optional<Mass> weight;
    std::optional<double> shortBy;    // of what was paid for; negative: more came
    bool byWeight = false;            // shortBy compares weights
    std::optional<Moisture> moisture; // first reading, or the latest before it came
    std::optional<Moisture> moistureHalfWidth;
    std::optional<Moisture> promised;
    std::optional<bool> wetter; // than promised, beyond the reading's own interval
    std::optional<Mass> dryMass;
    std::optional<Mass> dryMassLow; // 70 and 90 ft³ solid a cord; equal for weighed wood
    std::optional<Mass> dryMassHigh;
    std::optional<Heat> netHeat;
    // Prices in cents, not whole: a dry pound costs some 13.5 cents.
    std::optional<double> centsPerCord; // of the cords that came
    std::optional<double> centsPerDryPound;
    std::optional<double> centsPerMillionBtu; // net
    std::optional<double> centsPerCook;       // of the heat of a typical cook
};

// `typicalCook` is the heat of a usual cook (offers.h), for the price of one.
DeliveryCheck checkDelivery(const Books &books, const Lot &lot, const Wording &wording,
                            std::optional<Heat> typicalCook = {});

// Short beyond what a careful tape or scale leaves open.
bool isShort(const DeliveryCheck &check);

} // namespace rickyard::domain
