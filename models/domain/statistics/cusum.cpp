#include "models/domain/statistics/cusum.h"

#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace rickyard::domain::statistics {
namespace {

struct CusumWords {
    Q_DECLARE_TR_FUNCTIONS(Statistics)
};

double phi(double x)
{
    return std::exp(-0.5 * x * x) / std::sqrt(2.0 * std::numbers::pi);
}

double capitalPhi(double x)
{
    return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}

struct Node {
    double at = 0.0;
    double weight = 0.0;
};

// Gauss-Legendre nodes on (0, h): roots of the Legendre polynomial by Newton's method from the
// usual cosine guess (Abramowitz and Stegun 25.4.29 and 22.7.10, from memory).
std::vector<Node> gaussLegendre(int count, double h)
{
    std::vector<Node> nodes(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        double x = std::cos(std::numbers::pi * (i + 0.75) / (count + 0.5));
        double slope = 1.0;
        for (int step = 0; step < 100; ++step) {
            double before = 1.0;
            double value = x;
            for (int n = 2; n <= count; ++n) {
                const double next = ((2.0 * n - 1.0) * x * value - (n - 1.0) * before) / n;
                before = value;
                value = next;
            }
            slope = count * (x * value - before) / (x * x - 1.0);
            const double move = value / slope;
            x -= move;
            if (std::abs(move) < 1e-15)
                break;
        }
        nodes[static_cast<std::size_t>(i)] = {0.5 * h * (1.0 - x),
                                              h / ((1.0 - x * x) * slope * slope)};
    }
    return nodes;
}

// Eight nodes a unit of h resolve the normal density of unit width far below the 1e-6 needed.
int nodesFor(double h)
{
    return 16 + static_cast<int>(std::ceil(8.0 * h));
}

double solvedRunLength(double h, double shift, double slack)
{
    const auto nodes = gaussLegendre(nodesFor(h), h);
    const auto n = static_cast<Eigen::Index>(nodes.size());
    // Unknowns: L at the nodes, then L(0).
    Eigen::MatrixXd a = Eigen::MatrixXd::Identity(n + 1, n + 1);
    for (Eigen::Index i = 0; i <= n; ++i) {
        const double u = i < n ? nodes[static_cast<std::size_t>(i)].at : 0.0;
        for (Eigen::Index j = 0; j < n; ++j) {
            const Node &y = nodes[static_cast<std::size_t>(j)];
            a(i, j) -= y.weight * phi(y.at + slack - u - shift);
        }
        a(i, n) -= capitalPhi(slack - u - shift);
    }
    const Eigen::VectorXd lengths = a.partialPivLu().solve(Eigen::VectorXd::Ones(n + 1));
    return lengths[n];
}

} // namespace

Answer<double> averageRunLength(double h, double shift, double slack)
{
    if (!(h > 0.0 && h <= 20.0) || !(slack >= 0.0) || !std::isfinite(shift) ||
        !std::isfinite(slack))
        return Refusal{Reason::OutOfRange,
                       CusumWords::tr("The limit must lie above 0 and up to 20, the slack at 0 or "
                                      "above.")};
    const double length = solvedRunLength(h, shift, slack);
    // Beyond the precision of the linear system the answer is noise.
    if (!std::isfinite(length) || length < 1.0 || length > 1e12)
        return Refusal{Reason::NoAnswer,
                       CusumWords::tr("The run is too long to be computed; choose a lower limit.")};
    return length;
}

Answer<double> averageRunLengthTwoSided(double h, double shift, double slack)
{
    const auto up = averageRunLength(h, shift, slack);
    if (!up)
        return up;
    const auto down = averageRunLength(h, -shift, slack);
    // A run too long to compute does not shorten the other.
    if (!down)
        return down.refusal().reason == Reason::NoAnswer ? up : down;
    return 1.0 / (1.0 / up.value() + 1.0 / down.value());
}

Answer<double> decisionInterval(double runLength, double slack)
{
    if (!(runLength >= 2.0 && runLength <= 1e6) || !(slack >= 0.0) || !(slack <= 3.0))
        return Refusal{Reason::OutOfRange,
                       CusumWords::tr("Ask for a false alarm every 2 to 1000000 cooks.")};
    double low = 1e-6;
    double high = 1.0;
    const auto above = [&](double h) {
        const auto length = averageRunLength(h, 0.0, slack);
        return !length || length.value() > runLength;
    };
    if (above(low))
        return Refusal{Reason::NoAnswer,
                       CusumWords::tr("Alarms cannot be that frequent with this slack.")};
    while (high < 20.0 && !above(high)) {
        low = high;
        high = std::min(20.0, 2.0 * high);
    }
    while (high - low > 1e-8) {
        const double middle = 0.5 * (low + high);
        (above(middle) ? high : low) = middle;
    }
    return 0.5 * (low + high);
}

double normalScore(double t, double dof)
{
    if (std::isnan(t))
        return t;
    const auto tail = upperTail(StudentT{dof}, std::abs(t));
    if (!tail)
        return std::numeric_limits<double>::quiet_NaN();
    // The far tail of the normal is cut where its chance leaves the range of a double.
    const auto z = upperQuantile(Normal{}, std::clamp(tail.value(), 1e-299, 0.5));
    return z ? std::copysign(std::abs(z.value()), t) : std::numeric_limits<double>::quiet_NaN();
}

std::optional<double> SelfStartingScores::add(double x)
{
    std::optional<double> score;
    const double n = m_count + 1;
    if (m_count >= 2 && m_squares > 0.0) {
        m_standardised = (x - m_mean) / std::sqrt(m_squares / (m_count - 1));
        score = normalScore(std::sqrt((n - 1.0) / n) * m_standardised, n - 2.0);
    }
    const double off = x - m_mean;
    m_mean += off / n;
    m_squares += off * (x - m_mean);
    ++m_count;
    return score;
}

} // namespace rickyard::domain::statistics
