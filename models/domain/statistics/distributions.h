// Cumulative chances and quantiles of the four distributions the method uses. Arguments outside
// their domain come back as a refusal; nothing throws. Source of the numbers: Boost.Math.
#pragma once

#include "models/domain/statistics/answer.h"

#include <variant>

namespace rickyard::domain::statistics
{

struct Normal {
}; // mean 0, standard deviation 1
struct StudentT {
    double degreesOfFreedom; // > 0; need not be whole
};
struct ChiSquare {
    double degreesOfFreedom; // > 0
};
struct FisherF {
    double numerator;   // degrees of freedom, > 0
    double denominator; // degrees of freedom, > 0
};
using Distribution = std::variant<Normal, StudentT, ChiSquare, FisherF>;

// Chance of a value at or below x. Infinite x is lawful (0 or 1); NaN is refused.
Answer<double> cdf(const Distribution &distribution, double x);
// Chance of a value above x, accurate where 1 - cdf(x) would round to nothing.
Answer<double> upperTail(const Distribution &distribution, double x);
// The value with chance p at or below it, 0 < p < 1.
Answer<double> quantile(const Distribution &distribution, double p);
// The value with chance q above it, 0 < q < 1, accurate for a very small q.
Answer<double> upperQuantile(const Distribution &distribution, double q);

// Half-width multiplier of a two-sided interval: the quantile at (1 + level) / 2. 0 < level < 1.
Answer<double> twoSided(const Distribution &distribution, double level);

} // namespace rickyard::domain::statistics
