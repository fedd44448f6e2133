// Linear regression that starts from a belief and learns one row at a time: the conjugate model
//
//   y | x, b, s2 ~ N(x'b, s2 / w),   b | s2 ~ N(mean, s2 precision^-1),   s2 ~ Inv-chi2(dof,
//   scale2)
//
// (Gelman et al., Bayesian Data Analysis, 3rd ed., chapter 14; O'Hagan and Forster, Kendall's
// Advanced Theory of Statistics 2B, chapter 11; both from memory). The posterior has the same form
// and the predictive distribution of a new row is Student t, all in closed form.
//
// What is kept is the square-root information array (Bierman, Factorization Methods for Discrete
// Sequential Estimation, 1977; from memory): an upper triangle R and a vector d with R b = d +
// noise of variance s2. A new row is rotated into it by Givens rotations in long double, so the
// normal equations are never formed and a flat direction (precision 0) is simply a row of zeros.
// With a flat prior and dof 0 the result is ordinary least squares.
#pragma once

#include "models/domain/statistics/answer.h"

#include <Eigen/Core>

#include <optional>
#include <span>
#include <vector>

namespace rickyard::domain::statistics {

// Units: y has the unit of the response, a coefficient that of y over its column. `precision` is
// relative to the scatter of a row of weight 1: a coefficient believed to lie within +-tau has
// precision (scale / tau)^2. Zero rows and columns are flat directions.
struct RegressionPrior {
    Eigen::VectorXd mean;
    Eigen::MatrixXd precision; // symmetric, no direction below zero
    double dof = 0.0;          // how many rows the belief about the scatter is worth; 0: none
    double scale = 0.0;        // believed standard deviation of a row of weight 1

    // No belief at all: least squares.
    static RegressionPrior flat(Eigen::Index coefficients);
    // Independent coefficients, each mean +- sd, seen from the scatter `scale`.
    static RegressionPrior independent(const Eigen::VectorXd &mean, const Eigen::VectorXd &sd,
                                       double dof, double scale);
};

// Where a new observation will fall: location + scale * (Student t of dof).
struct PredictiveT {
    double location = 0.0;
    double scale = 0.0;
    double dof = 0.0;
    double leverage = 0.0; // what not knowing the coefficients adds: scale2 = s2 (1/w + leverage)
};

class BayesRegression
{
public:
    // Refused: shapes that disagree, a missing number, a precision with a direction below zero,
    // negative dof or scale.
    static Answer<BayesRegression> start(const RegressionPrior &prior);

    [[nodiscard]] int coefficientCount() const { return m_size; }
    [[nodiscard]] int rows() const { return m_rows; }
    // Degrees of freedom of the scatter: those of the prior, plus the rows, less the flat
    // directions that rows have had to pay for. Zero or less: no scatter yet.
    [[nodiscard]] double dof() const;
    // Posterior scale of a row of weight 1, sqrt(sum of squares / dof); with a flat prior the
    // residual standard deviation. NaN while dof() is not above 0.
    [[nodiscard]] double scale() const;
    // Squared deviations left over, the prior's own dof * scale2 included.
    [[nodiscard]] double sumOfSquares() const { return static_cast<double>(m_squares); }

    // Learns a row of variance s2 / weight; weight 0 learns nothing. Refused (and nothing
    // learned): a missing number, a wrong length, a negative weight.
    std::optional<Refusal> learn(std::span<const double> row, double y, double weight = 1.0);
    std::optional<Refusal> learn(const Eigen::VectorXd &row, double y, double weight = 1.0);

    // Refused when the row's direction is still flat or the scatter unknown.
    [[nodiscard]] Answer<PredictiveT> predict(std::span<const double> row,
                                              double weight = 1.0) const;
    [[nodiscard]] Answer<PredictiveT> predict(const Eigen::VectorXd &row,
                                              double weight = 1.0) const;
    // The interval of a predictive t that holds `level` of it, centred.
    static Answer<Interval> interval(const PredictiveT &t, double level);

    // Posterior means, and their scales (standard errors); refused while a direction is flat.
    [[nodiscard]] Answer<Eigen::VectorXd> coefficients() const;
    [[nodiscard]] Answer<Eigen::VectorXd> standardErrors() const;
    // Posterior covariance over s2: (R'R)^-1.
    [[nodiscard]] Answer<Eigen::MatrixXd> shape() const;

    // log density of everything learned so far; missing when the prior was not a proper one
    // (a flat direction, or no belief about the scatter). Rows after a change of the coefficients
    // (append, loosen) go on counting.
    [[nodiscard]] std::optional<double> logEvidence() const;

    // Puts new coefficients, independent of the rest, at the end. `sd` is in multiples of s.
    void append(std::span<const double> mean, std::span<const double> sdOverS);
    // Lets coefficients wander: b becomes b + N(0, (sdOverS s)^2), independently. What the others
    // know is kept; nothing is learned about the scatter.
    void loosen(std::span<const int> which, std::span<const double> sdOverS);

private:
    using Real = long double;
    // Row r of the array: m_size numbers of R, then d.
    Real *rowOf(int r) { return m_array.data() + static_cast<std::size_t>(r * (m_size + 1)); }
    [[nodiscard]] const Real *rowOf(int r) const
    {
        return m_array.data() + static_cast<std::size_t>(r * (m_size + 1));
    }
    [[nodiscard]] int flatDirections() const;
    // Rotates a row of m_size + 1 numbers into the triangle; returns what is left of its last.
    Real rotateIn(std::vector<Real> &row);
    // R^-T x, or nothing where R has no say in a direction of x.
    [[nodiscard]] std::optional<std::vector<Real>> whitened(std::span<const double> row) const;

    int m_size = 0;
    int m_rows = 0;
    double m_priorDof = 0.0;
    int m_priorFlat = 0;
    bool m_proper = false;
    Real m_squares = 0.0L;
    double m_logEvidence = 0.0;
    std::vector<Real> m_array;
};

} // namespace rickyard::domain::statistics
