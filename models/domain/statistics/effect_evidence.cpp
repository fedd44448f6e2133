#include "models/domain/statistics/effect_evidence.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rickyard::domain::statistics {
namespace {

Eigen::VectorXd columnOf(std::span<const double> v)
{
    return Eigen::Map<const Eigen::VectorXd>(v.data(), static_cast<Eigen::Index>(v.size()));
}

} // namespace

double logCumulativeNormal(double z)
{
    if (z > -8.0)
        return std::log(0.5 * std::erfc(-z / std::numbers::sqrt2));
    // First two terms of the asymptotic series of Mills's ratio.
    return -0.5 * z * z - std::log(-z) - 0.5 * std::log(2.0 * std::numbers::pi) +
           std::log1p(-1.0 / (z * z));
}

double logSum(std::span<const double> logs)
{
    const double most = *std::max_element(logs.begin(), logs.end());
    double sum = 0.0;
    for (const double l : logs)
        sum += std::exp(l - most);
    return most + std::log(sum);
}

EffectEvidence::EffectEvidence(std::span<const double> y, std::span<const double> variance,
                               const std::vector<std::vector<double>> &alwaysAtWork)
    : m_weight(columnOf(variance).cwiseInverse()), m_y(columnOf(y)),
      m_u(m_y.size(), static_cast<Eigen::Index>(alwaysAtWork.size()))
{
    for (std::size_t j = 0; j < alwaysAtWork.size(); ++j)
        m_u.col(static_cast<Eigen::Index>(j)) = columnOf(alwaysAtWork[j]);
    const auto k = m_u.cols();
    m_inner.compute(Eigen::MatrixXd::Identity(k, k) +
                    m_u.transpose() * m_weight.asDiagonal() * m_u);
}

Effect EffectEvidence::explain(std::span<const double> x, const EffectPrior &prior) const
{
    const Eigen::VectorXd v = columnOf(x);
    const Eigen::VectorXd weighted = m_weight.cwiseProduct(v);
    const Eigen::VectorXd shared = m_u.transpose() * weighted;
    const Eigen::VectorXd solved = m_inner.solve(shared);
    const double xx = weighted.dot(v) - shared.dot(solved);
    const double xy = weighted.dot(m_y) - solved.dot(m_u.transpose() * m_weight.cwiseProduct(m_y));
    const double before = 1.0 / (prior.sd * prior.sd);
    const double precision = xx + before;
    Effect e;
    e.sd = 1.0 / std::sqrt(precision);
    e.mean = (xy + prior.mean * before) / precision;
    e.logEvidence = 0.5 * std::log(before / precision) +
                    0.5 * (e.mean * e.mean * precision - prior.mean * prior.mean * before) +
                    logCumulativeNormal(e.mean / e.sd) - logCumulativeNormal(prior.mean / prior.sd);
    return e;
}

} // namespace rickyard::domain::statistics
