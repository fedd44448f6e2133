// A comparison of offers in plain words.
#pragma once

#include "models/domain/wood/offers.h"

namespace rickyard::domain {

// "Hill Road: 1 face cord (42.7 ft³) of post oak".
QString offerName(const OfferLine &line);
// "$14.20 a million Btu net".
QString heatPriceWords(double centsPerMillionBtu, const Wording &wording);
// "cheapest in 83 of 100 tries"; never 0 or 100 of 100 unless it was so in every draw.
QString cheapestWords(double share);

// The answer: the cheapest, what its heat costs, how often it stays cheapest, the next best, what
// varied and what was refused.
Headline offerHeadline(const OfferComparison &comparison, const Wording &wording);

} // namespace rickyard::domain
