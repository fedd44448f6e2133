// How well an effect explains observations beside what is always at work: one coefficient with a
// half-normal (truncated normal) prior on normal observations of known covariance, in closed form.
//
//   y = effect * x + U b + noise,   b ~ N(0, I),   noise ~ N(0, diag(variance))
//   effect ~ N(mean, sd^2) cut below 0
//
// b is integrated out: the covariance of the rows is diag(variance) + UU', divided by with
// Woodbury's formula (Golub and Van Loan, Matrix Computations, section 2.1.4, from memory). The
// evidence is that of the untruncated conjugate model times the posterior chance of an effect above
// 0 over the prior one.
#pragma once

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <span>
#include <vector>

namespace rickyard::domain::statistics {

struct EffectPrior {
    double mean = 0.0;
    double sd = 1.0; // above 0
};

struct Effect {
    double logEvidence = 0.0; // natural logarithm, over that of no effect
    double mean = 0.0;        // posterior before it is cut at 0
    double sd = 0.0;
};

class EffectEvidence
{
public:
    // Lengths agree, variances are above 0. Each of `alwaysAtWork` is a column of U.
    EffectEvidence(std::span<const double> y, std::span<const double> variance,
                   const std::vector<std::vector<double>> &alwaysAtWork);

    [[nodiscard]] Effect explain(std::span<const double> x, const EffectPrior &prior) const;

private:
    Eigen::VectorXd m_weight;
    Eigen::VectorXd m_y;
    Eigen::MatrixXd m_u;
    Eigen::LDLT<Eigen::MatrixXd> m_inner;
};

// log of the chance that a standard normal lies below z, accurate for z far below 0 too.
double logCumulativeNormal(double z);
// log of the sum of exponentials; at least one term.
double logSum(std::span<const double> logs);

} // namespace rickyard::domain::statistics
