// Cumulative sum charts: how a small lasting shift is told from scatter. One-sided upper sum
//
//   S(n) = max(0, S(n-1) + z(n) - k),   a flag when S(n) > h
//
// on scores z that are standard normal while all is well, and its mirror for a shift downwards
// (Page 1954, Biometrika 41:100; Montgomery, Introduction to Statistical Quality Control, section
// 9.1; both from memory). k = 0.5 is tuned to a shift of one standard deviation.
#pragma once

#include "models/domain/statistics/answer.h"

#include <optional>

namespace rickyard::domain::statistics {

constexpr double kCusumSlack = 0.5; // k

// One side of the chart. `run` counts the observations since the sum was last zero (Montgomery's
// N+): the shift is dated to just before the first of them.
struct CusumSide {
    double sum = 0.0;
    int run = 0;

    void add(double z, double slack = kCusumSlack)
    {
        sum = sum + z - slack;
        if (sum > 0.0) {
            ++run;
        } else {
            sum = 0.0;
            run = 0;
        }
    }
};

struct Cusum {
    CusumSide up;
    CusumSide down; // of -z

    void add(double z, double slack = kCusumSlack)
    {
        up.add(z, slack);
        down.add(-z, slack);
    }
};

// Mean number of observations until the upper sum, starting from zero, first exceeds h, when the
// scores are N(shift, 1). From the integral equation L(u) = 1 + L(0) Phi(k - u - shift) +
// integral over (0, h) of L(y) phi(y + k - u - shift) dy (Page 1954; Goel and Wu 1971,
// Technometrics 13:221, from memory), solved at Gauss-Legendre nodes. Refused: h not above 0 or
// above 20, k below 0, a shift that is not finite.
Answer<double> averageRunLength(double h, double shift = 0.0, double slack = kCusumSlack);
// Upper and lower sum together, whichever flags first, by 1/L = 1/L(up) + 1/L(down), which is exact
// when the two sums cannot be above zero together at a flag (k at least half of h apart; Montgomery
// section 9.1.2, from memory).
Answer<double> averageRunLengthTwoSided(double h, double shift = 0.0, double slack = kCusumSlack);
// The h whose one-sided run length in control is `runLength` (2 to 1e6 observations).
Answer<double> decisionInterval(double runLength, double slack = kCusumSlack);

// The standard normal score with the same tail chance as the value `t` of a Student t; within
// +-37. NaN for a missing value.
double normalScore(double t, double dof);

// Self-starting form for observations of unknown mean and scatter (Hawkins 1987, The Statistician
// 36:299, from memory): the score of the n-th is the normal score of sqrt((n-1)/n) T on n-2 degrees
// of freedom, T its distance from the mean of those before it over their standard deviation. The
// scores are independent standard normals exactly. None for the first two, or while those before do
// not scatter at all.
class SelfStartingScores
{
public:
    std::optional<double> add(double x);
    // T of the last one added, when it had a score.
    [[nodiscard]] double standardised() const { return m_standardised; }

private:
    int m_count = 0;
    double m_mean = 0.0;
    double m_squares = 0.0; // about the mean
    double m_standardised = 0.0;
};

} // namespace rickyard::domain::statistics
