#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

#include <cmath>

namespace rickyard::domain::statistics {
namespace {

namespace bm = boost::math;
namespace bp = boost::math::policies;

// Every error becomes NaN or infinity instead of an exception; `checked` turns those into words.
using Quiet =
    bp::policy<bp::domain_error<bp::ignore_error>, bp::pole_error<bp::ignore_error>,
               bp::overflow_error<bp::ignore_error>, bp::underflow_error<bp::ignore_error>,
               bp::evaluation_error<bp::ignore_error>,
               bp::indeterminate_result_error<bp::ignore_error>>;

struct DistributionWords {
    Q_DECLARE_TR_FUNCTIONS(Statistics)
};

bool lawful(double degrees)
{
    return std::isfinite(degrees) && degrees > 0.0;
}

bool lawful(const Distribution &distribution)
{
    struct {
        bool operator()(Normal) const { return true; }
        bool operator()(StudentT d) const { return lawful(d.degreesOfFreedom); }
        bool operator()(ChiSquare d) const { return lawful(d.degreesOfFreedom); }
        bool operator()(FisherF d) const { return lawful(d.numerator) && lawful(d.denominator); }
    } const check;
    return std::visit(check, distribution);
}

auto boosted(Normal)
{
    return bm::normal_distribution<double, Quiet>();
}
auto boosted(StudentT d)
{
    return bm::students_t_distribution<double, Quiet>(d.degreesOfFreedom);
}
auto boosted(ChiSquare d)
{
    return bm::chi_squared_distribution<double, Quiet>(d.degreesOfFreedom);
}
auto boosted(FisherF d)
{
    return bm::fisher_f_distribution<double, Quiet>(d.numerator, d.denominator);
}

// The chi-square and F distributions have no values below zero.
bool startsAtZero(const Distribution &distribution)
{
    return std::holds_alternative<ChiSquare>(distribution) ||
           std::holds_alternative<FisherF>(distribution);
}

Refusal badDegrees()
{
    return {Reason::OutOfRange,
            DistributionWords::tr("The degrees of freedom must be a finite number above zero.")};
}

Answer<double> checked(double result)
{
    if (std::isfinite(result))
        return result;
    return Refusal{Reason::NoAnswer,
                   DistributionWords::tr(
                       "The result is too extreme to be computed. Use a chance further from 0 "
                       "and 1, or more degrees of freedom.")};
}

template <class Compute>
Answer<double> chanceAt(const Distribution &distribution, double x, bool upper, Compute compute)
{
    if (!lawful(distribution))
        return badDegrees();
    if (std::isnan(x))
        return Refusal{Reason::NotFinite,
                       DistributionWords::tr("The value to look up is missing.")};
    if (startsAtZero(distribution) && x <= 0.0)
        return upper ? 1.0 : 0.0;
    if (std::isinf(x))
        return (x > 0.0) == upper ? 0.0 : 1.0;
    return checked(std::visit(compute, distribution));
}

template <class Compute>
Answer<double> valueAt(const Distribution &distribution, double p, Compute compute)
{
    if (!lawful(distribution))
        return badDegrees();
    if (!(p > 0.0 && p < 1.0))
        return Refusal{Reason::OutOfRange,
                       DistributionWords::tr("A chance must lie between 0 and 1.")};
    return checked(std::visit(compute, distribution));
}

} // namespace

Answer<double> cdf(const Distribution &distribution, double x)
{
    return chanceAt(distribution, x, false, [x](auto d) { return bm::cdf(boosted(d), x); });
}

Answer<double> upperTail(const Distribution &distribution, double x)
{
    return chanceAt(distribution, x, true,
                    [x](auto d) { return bm::cdf(bm::complement(boosted(d), x)); });
}

Answer<double> quantile(const Distribution &distribution, double p)
{
    return valueAt(distribution, p, [p](auto d) { return bm::quantile(boosted(d), p); });
}

Answer<double> upperQuantile(const Distribution &distribution, double q)
{
    return valueAt(distribution, q,
                   [q](auto d) { return bm::quantile(bm::complement(boosted(d), q)); });
}

Answer<double> twoSided(const Distribution &distribution, double level)
{
    if (!(level > 0.0 && level < 1.0))
        return Refusal{
            Reason::OutOfRange,
            DistributionWords::tr("A confidence level must lie between 0 and 1, such as 0.95.")};
    return upperQuantile(distribution, (1.0 - level) / 2.0);
}

} // namespace rickyard::domain::statistics
