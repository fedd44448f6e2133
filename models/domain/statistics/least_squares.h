// Linear least squares, plain or weighted, with what inference needs: standard errors, Student t
// prediction intervals, leverages.
//
// Method: with an intercept the columns and the response are centred at their (weighted) means,
// which takes the intercept out of the system; every column is scaled to unit length; Householder
// QR with column pivoting does the rest. The normal equations are never formed, since they square
// the condition number. All of it runs in long double: the data are doubles, so the 11 extra bits
// (x86) are there to pay for the condition number. The alternative, iterative refinement with an
// extended-precision residual, needs the same long double residual and an augmented system besides,
// to save time that fits of a few hundred rows do not take. Where long double is no wider than
// double the method is still sound but about three digits poorer.
//
// A column counts as repeating the others when what they leave of it is no more than the rounding
// of the data themselves; the ill-conditioned but honest Filip data of NIST pass that test.
#pragma once

#include "models/domain/statistics/answer.h"

#include <Eigen/Core>

#include <optional>

namespace rickyard::domain::statistics
{

enum class Intercept { Fitted, None };

struct Fit {
    using Vector = Eigen::Matrix<long double, Eigen::Dynamic, 1>;
    using Matrix = Eigen::Matrix<long double, Eigen::Dynamic, Eigen::Dynamic>;

    Intercept intercept = Intercept::Fitted;
    int rows = 0;             // observations of weight above zero
    int degreesOfFreedom = 0; // rows less coefficients, at least 1

    // The intercept first, where there is one; then one entry a column, in the column's order.
    Eigen::VectorXd coefficients;
    Eigen::VectorXd standardErrors;
    Eigen::MatrixXd covariance; // of the coefficients

    // One entry an observation, those of weight zero included (their leverage is 0).
    Eigen::VectorXd fitted;
    Eigen::VectorXd residuals; // observed less fitted, in the unit of the response, not weighted
    Eigen::VectorXd leverages; // diagonal of the hat matrix

    double residualSumOfSquares = 0.0; // weighted
    double residualSd = 0.0;           // of an observation of weight 1
    // Share of the weighted sum of squares about the mean (about zero without an intercept) that
    // the fit takes up; absent when the response does not vary at all.
    std::optional<double> rSquared;

    // For predictions, kept in the precision of the fit. A row x has leverage
    // constantVariance + |root (x - centre)|^2 and mean response level + slopes . (x - centre).
    Vector centre;
    Vector slopes;
    Matrix root;
    long double level = 0.0L;
    long double constantVariance = 0.0L;

    [[nodiscard]] Eigen::Index columns() const { return slopes.size(); }
};

// `design` holds one row an observation, without a column of ones; it may have no columns at all
// when an intercept is fitted. Weights are inverse variances up to one common factor: an
// observation of weight w has variance sd^2 / w; weight 0 leaves it out.
Answer<Fit> leastSquares(const Eigen::MatrixXd &design, const Eigen::VectorXd &response,
                         Intercept intercept = Intercept::Fitted,
                         const std::optional<Eigen::VectorXd> &weights = std::nullopt);

// Where a new observation of the given weight will fall, with probability `level` (Student t).
Answer<Interval> predict(const Fit &fit, const Eigen::VectorXd &row, double level,
                         double weight = 1.0);
// Where the mean of many such observations lies.
Answer<Interval> meanResponse(const Fit &fit, const Eigen::VectorXd &row, double level);

} // namespace rickyard::domain::statistics
