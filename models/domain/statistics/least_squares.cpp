#include "models/domain/statistics/least_squares.h"

#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <Eigen/QR>

#include <cmath>
#include <limits>

namespace rickyard::domain::statistics {
namespace {

using Vector = Fit::Vector;
using Matrix = Fit::Matrix;

struct FitWords {
    Q_DECLARE_TR_FUNCTIONS(Statistics)
};

// The problem in working precision: rows multiplied by the square root of their weight, after
// centring when an intercept is fitted.
struct System {
    Matrix design;
    Vector response;
    Vector weights;
    Vector centre;     // weighted column means, or zeros
    Vector magnitudes; // lengths of the weighted columns before centring: what rounding scales with
    long double level = 0.0L; // weighted mean of the response, or zero
    long double totalWeight = 0.0L;
};

std::optional<Refusal> unfitWeights(const Eigen::VectorXd &weights)
{
    if (!weights.allFinite())
        return Refusal{Reason::NotFinite, FitWords::tr("A weight is missing or infinite.")};
    if (weights.size() > 0 && weights.minCoeff() < 0.0)
        return Refusal{Reason::OutOfRange, FitWords::tr("A weight is below zero.")};
    return {};
}

std::optional<Refusal> unfit(const Eigen::MatrixXd &design, const Eigen::VectorXd &response,
                             Intercept intercept, const std::optional<Eigen::VectorXd> &weights)
{
    if (design.rows() != response.size() || (weights && weights->size() != response.size()))
        return Refusal{Reason::ShapeMismatch,
                       FitWords::tr("The columns, the response and the weights differ in length.")};
    if (design.cols() == 0 && intercept == Intercept::None)
        return Refusal{Reason::ShapeMismatch,
                       FitWords::tr("There is nothing to fit: no column and no intercept.")};
    if (!design.allFinite() || !response.allFinite())
        return Refusal{
            Reason::NotFinite,
            FitWords::tr("The data hold a missing or infinite number; leave that row out or "
                         "correct it.")};
    if (weights) {
        if (const auto refusal = unfitWeights(*weights))
            return refusal;
    }
    const auto used = weights ? (weights->array() > 0.0).count() : response.size();
    const auto unknowns = design.cols() + (intercept == Intercept::Fitted ? 1 : 0);
    if (used <= unknowns)
        return Refusal{Reason::TooFewRows,
                       FitWords::tr("%1 observations cannot determine %2 coefficients and their "
                                    "scatter; at least %3 are needed.")
                           .arg(used)
                           .arg(unknowns)
                           .arg(unknowns + 1)};
    return {};
}

System assemble(const Eigen::MatrixXd &design, const Eigen::VectorXd &response, Intercept intercept,
                const std::optional<Eigen::VectorXd> &weights)
{
    System s;
    s.design = design.cast<long double>();
    s.response = response.cast<long double>();
    s.weights = weights ? Vector(weights->cast<long double>()) : Vector::Ones(response.size());
    s.totalWeight = s.weights.sum();
    s.centre = Vector::Zero(design.cols());
    const Vector roots = s.weights.cwiseSqrt();
    s.magnitudes = (roots.asDiagonal() * s.design).colwise().norm();
    if (intercept == Intercept::Fitted) {
        s.centre = s.design.transpose() * s.weights / s.totalWeight;
        s.level = s.weights.dot(s.response) / s.totalWeight;
        s.design.rowwise() -= s.centre.transpose();
        s.response.array() -= s.level;
    }
    s.design = roots.asDiagonal() * s.design;
    s.response = s.response.cwiseProduct(roots);
    return s;
}

// How far rounding of the doubles in a column may move it, relative to its length after centring.
long double roundingOf(long double magnitude, long double length)
{
    return magnitude * std::numeric_limits<double>::epsilon() / length;
}

Refusal repeating(Eigen::Index column)
{
    return {Reason::RankDeficient,
            FitWords::tr(
                "Column %1 is constant, zero or a combination of the others, so its coefficient "
                "is not determined. Leave it out.")
                .arg(column + 1)};
}

// Fills slopes and root, or names the column that repeats the others.
std::optional<Refusal> solve(const System &s, Fit &fit)
{
    const Eigen::Index k = s.design.cols();
    fit.slopes = Vector::Zero(k);
    fit.root = Matrix::Zero(k, k);
    if (k == 0)
        return {};
    const long double slack = 16.0L * static_cast<long double>(k);
    const Vector lengths = s.design.colwise().norm();
    long double rounding = 0.0L;
    for (Eigen::Index j = 0; j < k; ++j) {
        if (!(lengths[j] > slack * std::numeric_limits<double>::epsilon() * s.magnitudes[j]))
            return repeating(j);
        rounding = std::max(rounding, roundingOf(s.magnitudes[j], lengths[j]));
    }
    const Eigen::ColPivHouseholderQR<Matrix> qr(s.design * lengths.cwiseInverse().asDiagonal());
    for (Eigen::Index j = 0; j < k; ++j) {
        if (!(std::abs(qr.matrixR()(j, j)) > slack * rounding))
            return repeating(qr.colsPermutation().indices()[j]);
    }
    const Matrix r = qr.matrixR().topLeftCorner(k, k).triangularView<Eigen::Upper>();
    const Vector rotated = qr.householderQ().adjoint() * s.response;
    const Vector scaled = r.triangularView<Eigen::Upper>().solve(Vector(rotated.head(k)));
    fit.slopes = (qr.colsPermutation() * scaled).cwiseQuotient(lengths);
    Matrix unscale = qr.colsPermutation().transpose() * Matrix(lengths.cwiseInverse().asDiagonal());
    fit.root = r.transpose().triangularView<Eigen::Lower>().solve(unscale);
    return {};
}

void describeRows(const System &s, const Eigen::MatrixXd &design, const Eigen::VectorXd &response,
                  Fit &fit)
{
    const Matrix centred = design.cast<long double>().rowwise() - s.centre.transpose();
    const Vector fitted = (centred * fit.slopes).array() + s.level;
    const Vector residuals = response.cast<long double>() - fitted;
    const Vector spread = (centred * fit.root.transpose()).rowwise().squaredNorm();
    fit.fitted = fitted.cast<double>();
    fit.residuals = residuals.cast<double>();
    fit.leverages =
        s.weights.cwiseProduct((spread.array() + fit.constantVariance).matrix()).cast<double>();

    const long double left = s.weights.dot(residuals.cwiseAbs2());
    const long double total = s.response.squaredNorm();
    fit.residualSumOfSquares = static_cast<double>(left);
    fit.residualSd =
        static_cast<double>(std::sqrt(left / static_cast<long double>(fit.degreesOfFreedom)));
    // A response that varies by less than its own rounding does not vary.
    const long double noise =
        std::numeric_limits<double>::epsilon() * response.cast<long double>().cwiseAbs().maxCoeff();
    if (total > s.totalWeight * noise * noise)
        fit.rSquared = static_cast<double>(1.0L - left / total);
}

void describeCoefficients(Fit &fit)
{
    const Eigen::Index k = fit.columns();
    const Eigen::Index first = fit.intercept == Intercept::Fitted ? 1 : 0;
    const Matrix slopes = fit.root.transpose() * fit.root;
    Matrix shape(k + first, k + first);
    Vector all(k + first);
    all.tail(k) = fit.slopes;
    shape.bottomRightCorner(k, k) = slopes;
    if (first == 1) {
        all[0] = fit.level - fit.slopes.dot(fit.centre);
        shape(0, 0) = fit.constantVariance + (fit.root * fit.centre).squaredNorm();
        shape.bottomLeftCorner(k, 1) = -slopes * fit.centre;
        shape.topRightCorner(1, k) = shape.bottomLeftCorner(k, 1).transpose();
    }
    const auto sd = static_cast<long double>(fit.residualSd);
    fit.coefficients = all.cast<double>();
    fit.covariance = (sd * sd * shape).cast<double>();
    fit.standardErrors = (sd * shape.diagonal().cwiseSqrt()).cast<double>();
}

Answer<Interval> interval(const Fit &fit, const Eigen::VectorXd &row, double level,
                          long double ownVariance)
{
    if (row.size() != fit.columns())
        return Refusal{Reason::ShapeMismatch,
                       FitWords::tr("The row has %1 values where the fit has %2 columns.")
                           .arg(row.size())
                           .arg(fit.columns())};
    if (!row.allFinite())
        return Refusal{Reason::NotFinite,
                       FitWords::tr("A value of the row is missing or infinite.")};
    const auto t = twoSided(StudentT{static_cast<double>(fit.degreesOfFreedom)}, level);
    if (!t)
        return t.refusal();
    const Vector off = row.cast<long double>() - fit.centre;
    const long double centre = fit.level + fit.slopes.dot(off);
    const long double variance =
        ownVariance + fit.constantVariance + (fit.root * off).squaredNorm();
    const long double half = t.value() * fit.residualSd * std::sqrt(variance);
    return Interval{static_cast<double>(centre), static_cast<double>(centre - half),
                    static_cast<double>(centre + half), level};
}

} // namespace

Answer<Fit> leastSquares(const Eigen::MatrixXd &design, const Eigen::VectorXd &response,
                         Intercept intercept, const std::optional<Eigen::VectorXd> &weights)
{
    if (const auto refusal = unfit(design, response, intercept, weights))
        return *refusal;
    const System system = assemble(design, response, intercept, weights);
    Fit fit;
    fit.intercept = intercept;
    fit.rows = static_cast<int>((system.weights.array() > 0.0L).count());
    fit.centre = system.centre;
    fit.level = system.level;
    if (intercept == Intercept::Fitted)
        fit.constantVariance = 1.0L / system.totalWeight;
    if (const auto refusal = solve(system, fit))
        return *refusal;
    fit.degreesOfFreedom =
        fit.rows - static_cast<int>(fit.columns()) - (intercept == Intercept::Fitted ? 1 : 0);
    describeRows(system, design, response, fit);
    describeCoefficients(fit);
    if (!fit.coefficients.allFinite() || !fit.covariance.allFinite() || !fit.fitted.allFinite())
        return Refusal{
            Reason::NoAnswer,
            FitWords::tr("The numbers are too large or too small to be fitted; use a more "
                         "usual unit.")};
    return fit;
}

Answer<Interval> predict(const Fit &fit, const Eigen::VectorXd &row, double level, double weight)
{
    if (!std::isfinite(weight) || weight <= 0.0)
        return Refusal{Reason::OutOfRange,
                       FitWords::tr("The weight of a new observation must be above zero.")};
    return interval(fit, row, level, 1.0L / static_cast<long double>(weight));
}

Answer<Interval> meanResponse(const Fit &fit, const Eigen::VectorXd &row, double level)
{
    return interval(fit, row, level, 0.0L);
}

} // namespace rickyard::domain::statistics
