// Summaries of a sample. Every routine refuses a sample that holds a missing or infinite number: a
// gap in the data is for the caller to see and leave out, not for a mean to hide.
#pragma once

#include "models/domain/statistics/answer.h"

#include <span>

namespace rickyard::domain::statistics
{

// Sum with Neumaier's compensation (Neumaier 1974, Z. Angew. Math. Mech. 54:39): the error does not
// grow with the number of terms, and a large term cannot swallow the small ones. An empty sum is 0.
double compensatedSum(std::span<const double> values);

// At least one value.
Answer<double> mean(std::span<const double> values);
// Sample standard deviation (divisor n - 1) in two passes; at least two values.
Answer<double> sampleSd(std::span<const double> values);

// Quantile of type 7 in Hyndman and Fan (1996, The American Statistician 50:361): linear between
// order statistics, the p-quantile at rank 1 + (n - 1) p. 0 <= p <= 1; at least one value.
Answer<double> quantileType7(std::span<const double> values, double p);
// The quantile of type 7 at one half: the middle value, or the mean of the middle two.
Answer<double> median(std::span<const double> values);

// Student's t interval for the mean of the population the sample came from; at least two values.
Answer<Interval> meanInterval(std::span<const double> values, double level);
// The same from a count, a mean and a sample standard deviation.
Answer<Interval> meanIntervalFromSummary(int count, double sampleMean, double sd, double level);

// The smallest sample size (2 or more, in all, not on top) whose t interval for the mean reaches
// no further than `halfWidth` either side, if the scatter stays at `sd`. The t quantile belongs to
// the new size, so small samples are not promised too much. Refused beyond a million.
Answer<int> sampleSizeForMean(double sd, double halfWidth, double level = 0.95);

} // namespace rickyard::domain::statistics
