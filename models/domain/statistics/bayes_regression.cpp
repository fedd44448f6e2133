#include "models/domain/statistics/bayes_regression.h"

#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <Eigen/Eigenvalues>
#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace rickyard::domain::statistics {
namespace {

using Wide = Eigen::Matrix<long double, Eigen::Dynamic, Eigen::Dynamic>;
using WideVector = Eigen::Matrix<long double, Eigen::Dynamic, 1>;

struct BayesWords {
    Q_DECLARE_TR_FUNCTIONS(Statistics)
};

Refusal mismatch(qsizetype given, int wanted)
{
    return {Reason::ShapeMismatch,
            BayesWords::tr("The row has %1 values where the model has %2 coefficients.")
                .arg(given)
                .arg(wanted)};
}

Refusal notFinite()
{
    return {Reason::NotFinite,
            BayesWords::tr("A value is missing or infinite; leave that row out or correct it.")};
}

Refusal flat()
{
    return {Reason::RankDeficient,
            BayesWords::tr("Nothing is known yet about one of the coefficients; it needs a prior "
                           "or more rows.")};
}

std::optional<Refusal> unfit(const RegressionPrior &prior)
{
    const auto p = prior.mean.size();
    if (p == 0 || prior.precision.rows() != p || prior.precision.cols() != p)
        return Refusal{Reason::ShapeMismatch,
                       BayesWords::tr("The prior's mean and precision differ in size.")};
    if (!prior.mean.allFinite() || !prior.precision.allFinite() || !std::isfinite(prior.dof) ||
        !std::isfinite(prior.scale))
        return notFinite();
    if (prior.dof < 0.0 || prior.scale < 0.0)
        return Refusal{Reason::OutOfRange,
                       BayesWords::tr("The prior's scatter must not be below zero.")};
    return {};
}

// A root of a positive semi-definite matrix, root' root = matrix, and its rank.
struct Root {
    Wide rows;
    int rank = 0;
};

std::optional<Root> rootOf(const Eigen::MatrixXd &precision)
{
    const Eigen::Index p = precision.rows();
    Root root;
    // A diagonal precision, the usual one, keeps its exact scales however far apart they are.
    if (precision.isDiagonal(0.0)) {
        if (precision.diagonal().minCoeff() < 0.0)
            return {};
        root.rows = precision.diagonal().cast<long double>().cwiseSqrt().asDiagonal();
        root.rank = static_cast<int>((precision.diagonal().array() > 0.0).count());
        return root;
    }
    const Eigen::SelfAdjointEigenSolver<Wide> eigen(precision.cast<long double>());
    const long double least = static_cast<long double>(p) * std::numeric_limits<double>::epsilon() *
                              std::max(0.0L, eigen.eigenvalues().maxCoeff());
    if (eigen.eigenvalues().minCoeff() < -least)
        return {};
    root.rows = Wide::Zero(p, p);
    for (Eigen::Index i = 0; i < p; ++i) {
        if (eigen.eigenvalues()[i] <= least)
            continue;
        root.rows.row(i) =
            std::sqrt(eigen.eigenvalues()[i]) * eigen.eigenvectors().col(i).transpose();
        ++root.rank;
    }
    return root;
}

double logT(double y, const PredictiveT &t)
{
    const double z = (y - t.location) / t.scale;
    return std::lgamma((t.dof + 1.0) / 2.0) - std::lgamma(t.dof / 2.0) -
           0.5 * std::log(t.dof * std::numbers::pi) - std::log(t.scale) -
           (t.dof + 1.0) / 2.0 * std::log1p(z * z / t.dof);
}

std::span<const double> spanOf(const Eigen::VectorXd &v)
{
    return {v.data(), static_cast<std::size_t>(v.size())};
}

} // namespace

RegressionPrior RegressionPrior::flat(Eigen::Index coefficients)
{
    return {Eigen::VectorXd::Zero(coefficients), Eigen::MatrixXd::Zero(coefficients, coefficients),
            0.0, 0.0};
}

RegressionPrior RegressionPrior::independent(const Eigen::VectorXd &mean, const Eigen::VectorXd &sd,
                                             double dof, double scale)
{
    const Eigen::VectorXd precision = (scale / sd.array()).square().matrix();
    return {mean, precision.asDiagonal(), dof, scale};
}

Answer<BayesRegression> BayesRegression::start(const RegressionPrior &prior)
{
    if (const auto refusal = unfit(prior))
        return *refusal;
    const auto root = rootOf(prior.precision);
    if (!root)
        return Refusal{Reason::OutOfRange,
                       BayesWords::tr("The prior's precision has a direction below zero.")};
    BayesRegression model;
    model.m_size = static_cast<int>(prior.mean.size());
    const auto columns = static_cast<std::size_t>(prior.mean.size());
    model.m_array.assign(columns * (columns + 1), 0.0L);
    model.m_priorDof = prior.dof;
    model.m_priorFlat = model.m_size - root->rank;
    model.m_squares = static_cast<Real>(prior.dof) * prior.scale * prior.scale;
    model.m_proper = model.m_priorFlat == 0 && prior.dof > 0.0 && prior.scale > 0.0;
    const WideVector d = root->rows * prior.mean.cast<long double>();
    for (int i = 0; i < model.m_size; ++i) {
        std::vector<Real> row(static_cast<std::size_t>(model.m_size + 1));
        for (int j = 0; j < model.m_size; ++j)
            row[static_cast<std::size_t>(j)] = root->rows(i, j);
        row.back() = d[i];
        model.rotateIn(row);
    }
    return model;
}

int BayesRegression::flatDirections() const
{
    int count = 0;
    for (int i = 0; i < m_size; ++i)
        count += rowOf(i)[i] == 0.0L ? 1 : 0;
    return count;
}

double BayesRegression::dof() const
{
    return m_priorDof + m_rows - (m_priorFlat - flatDirections());
}

double BayesRegression::scale() const
{
    const double nu = dof();
    return nu > 0.0 ? static_cast<double>(std::sqrt(m_squares / static_cast<Real>(nu)))
                    : std::numeric_limits<double>::quiet_NaN();
}

BayesRegression::Real BayesRegression::rotateIn(std::vector<Real> &row)
{
    const int width = m_size + 1;
    const std::vector<Real> given = row;
    for (int i = 0; i < m_size; ++i) {
        Real *kept = rowOf(i);
        Real *incoming = row.data();
        const Real b = incoming[i];
        if (b == 0.0L)
            continue;
        const Real a = kept[i];
        // What rounding leaves of a row that repeats earlier ones is no new direction.
        constexpr Real slack = 64.0L * std::numeric_limits<Real>::epsilon();
        if (a == 0.0L && std::abs(b) <= slack * std::abs(given[static_cast<std::size_t>(i)])) {
            incoming[i] = 0.0L;
            continue;
        }
        if (a == 0.0L) {
            // The triangle has nothing in this direction: the row becomes its row.
            for (int j = i; j < width; ++j) {
                kept[j] = incoming[j];
                incoming[j] = 0.0L;
            }
            return 0.0L;
        }
        const Real r = std::hypot(a, b);
        const Real c = a / r;
        const Real s = b / r;
        for (int j = i; j < width; ++j) {
            const Real k = kept[j];
            kept[j] = c * k + s * incoming[j];
            incoming[j] = c * incoming[j] - s * k;
        }
        kept[i] = r;
        incoming[i] = 0.0L;
    }
    return row.back();
}

std::optional<Refusal> BayesRegression::learn(std::span<const double> row, double y, double weight)
{
    if (static_cast<int>(row.size()) != m_size)
        return mismatch(static_cast<qsizetype>(row.size()), m_size);
    const bool finite =
        std::all_of(row.begin(), row.end(), [](double v) { return std::isfinite(v); });
    if (!finite || !std::isfinite(y) || !std::isfinite(weight))
        return notFinite();
    if (weight < 0.0)
        return Refusal{Reason::OutOfRange, BayesWords::tr("A weight is below zero.")};
    if (weight == 0.0)
        return {};
    if (m_proper) {
        if (const auto t = predict(row, weight))
            m_logEvidence += logT(y, t.value());
    }
    const Real root = std::sqrt(static_cast<Real>(weight));
    std::vector<Real> incoming(row.size() + 1);
    for (std::size_t j = 0; j < row.size(); ++j)
        incoming[j] = root * static_cast<Real>(row[j]);
    incoming.back() = root * static_cast<Real>(y);
    const Real left = rotateIn(incoming);
    m_squares += left * left;
    ++m_rows;
    return {};
}

std::optional<Refusal> BayesRegression::learn(const Eigen::VectorXd &row, double y, double weight)
{
    return learn(spanOf(row), y, weight);
}

std::optional<std::vector<BayesRegression::Real>>
BayesRegression::whitened(std::span<const double> row) const
{
    // Forward substitution with R', row by row of R so that memory is read in order.
    std::vector<Real> v(row.size());
    for (std::size_t j = 0; j < row.size(); ++j)
        v[j] = static_cast<Real>(row[j]);
    for (int i = 0; i < m_size; ++i) {
        Real &vi = v[static_cast<std::size_t>(i)];
        if (vi == 0.0L)
            continue;
        const Real *r = rowOf(i);
        if (r[i] == 0.0L)
            return {};
        vi /= r[i];
        for (int j = i + 1; j < m_size; ++j)
            v[static_cast<std::size_t>(j)] -= r[j] * vi;
    }
    return v;
}

Answer<PredictiveT> BayesRegression::predict(std::span<const double> row, double weight) const
{
    if (static_cast<int>(row.size()) != m_size)
        return mismatch(static_cast<qsizetype>(row.size()), m_size);
    if (!std::all_of(row.begin(), row.end(), [](double v) { return std::isfinite(v); }))
        return notFinite();
    if (!std::isfinite(weight) || weight <= 0.0)
        return Refusal{Reason::OutOfRange,
                       BayesWords::tr("The weight of a new observation must be above zero.")};
    const double nu = dof();
    if (!(nu > 0.0))
        return Refusal{Reason::TooFewRows,
                       BayesWords::tr("Too few observations to know their scatter.")};
    const auto v = whitened(row);
    if (!v)
        return flat();
    Real location = 0.0L;
    Real leverage = 0.0L;
    for (int i = 0; i < m_size; ++i) {
        const Real vi = (*v)[static_cast<std::size_t>(i)];
        location += vi * rowOf(i)[m_size]; // x'b = (R^-T x)'(R b)
        leverage += vi * vi;
    }
    const Real own = 1.0L / static_cast<Real>(weight);
    const Real s2 = m_squares / static_cast<Real>(nu);
    return PredictiveT{static_cast<double>(location),
                       static_cast<double>(std::sqrt(s2 * (own + leverage))), nu,
                       static_cast<double>(leverage)};
}

Answer<PredictiveT> BayesRegression::predict(const Eigen::VectorXd &row, double weight) const
{
    return predict(spanOf(row), weight);
}

Answer<Interval> BayesRegression::interval(const PredictiveT &t, double level)
{
    const auto multiplier = twoSided(StudentT{t.dof}, level);
    if (!multiplier)
        return multiplier.refusal();
    const double half = multiplier.value() * t.scale;
    return Interval{t.location, t.location - half, t.location + half, level};
}

Answer<Eigen::VectorXd> BayesRegression::coefficients() const
{
    WideVector b(m_size);
    for (int i = m_size - 1; i >= 0; --i) {
        const Real *r = rowOf(i);
        if (r[i] == 0.0L)
            return flat();
        Real left = r[m_size];
        for (int j = i + 1; j < m_size; ++j)
            left -= r[j] * b[j];
        b[i] = left / r[i];
    }
    return Eigen::VectorXd(b.cast<double>());
}

Answer<Eigen::MatrixXd> BayesRegression::shape() const
{
    if (flatDirections() > 0)
        return flat();
    Wide r = Wide::Zero(m_size, m_size);
    for (int i = 0; i < m_size; ++i)
        for (int j = i; j < m_size; ++j)
            r(i, j) = rowOf(i)[j];
    const Wide inverse = r.triangularView<Eigen::Upper>().solve(Wide::Identity(m_size, m_size));
    return Eigen::MatrixXd((inverse * inverse.transpose()).cast<double>());
}

Answer<Eigen::VectorXd> BayesRegression::standardErrors() const
{
    const auto s = shape();
    if (!s)
        return s.refusal();
    if (!(dof() > 0.0))
        return Refusal{Reason::TooFewRows,
                       BayesWords::tr("Too few observations to know their scatter.")};
    return Eigen::VectorXd(scale() * s->diagonal().cwiseSqrt());
}

std::optional<double> BayesRegression::logEvidence() const
{
    return m_proper ? std::optional(m_logEvidence) : std::nullopt;
}

void BayesRegression::append(std::span<const double> mean, std::span<const double> sdOverS)
{
    const int added = static_cast<int>(mean.size());
    const int size = m_size + added;
    std::vector<Real> array(static_cast<std::size_t>(size * (size + 1)), 0.0L);
    for (int i = 0; i < m_size; ++i) {
        Real *to = array.data() + static_cast<std::size_t>(i * (size + 1));
        std::copy_n(rowOf(i), m_size, to);
        to[size] = rowOf(i)[m_size];
    }
    for (int i = 0; i < added; ++i) {
        Real *to = array.data() + static_cast<std::size_t>((m_size + i) * (size + 1));
        const auto k = static_cast<std::size_t>(i);
        to[m_size + i] = 1.0L / static_cast<Real>(sdOverS[k]);
        to[size] = static_cast<Real>(mean[k]) / static_cast<Real>(sdOverS[k]);
    }
    m_array = std::move(array);
    m_size = size;
}

void BayesRegression::loosen(std::span<const int> which, std::span<const double> sdOverS)
{
    // Unknowns: the old values of the loosened coefficients first, then every coefficient as it is
    // now. Rows: what was known (about the old values) and new - old = noise. After triangulation
    // the rows below the old values speak of the present alone.
    const auto count = static_cast<Eigen::Index>(which.size());
    const Eigen::Index total = count + m_size;
    Wide m = Wide::Zero(total, total + 1);
    for (Eigen::Index i = 0; i < m_size; ++i) {
        const Real *r = rowOf(static_cast<int>(i));
        for (Eigen::Index j = i; j <= m_size; ++j)
            m(i, count + j) = r[j];
        for (Eigen::Index k = 0; k < count; ++k)
            std::swap(m(i, k), m(i, count + which[static_cast<std::size_t>(k)]));
    }
    for (Eigen::Index k = 0; k < count; ++k) {
        const Real tight = 1.0L / static_cast<Real>(sdOverS[static_cast<std::size_t>(k)]);
        m(m_size + k, k) = -tight;
        m(m_size + k, count + which[static_cast<std::size_t>(k)]) = tight;
    }
    const Wide before = m.leftCols(total);
    const Eigen::HouseholderQR<Wide> qr(before);
    const WideVector d = qr.householderQ().adjoint() * m.col(total);
    for (Eigen::Index i = 0; i < m_size; ++i) {
        Real *to = rowOf(static_cast<int>(i));
        std::fill_n(to, m_size + 1, 0.0L);
        for (Eigen::Index j = i; j < m_size; ++j)
            to[j] = qr.matrixQR()(count + i, count + j);
        to[m_size] = d[count + i];
    }
}

} // namespace rickyard::domain::statistics
