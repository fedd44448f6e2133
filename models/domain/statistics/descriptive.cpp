#include "models/domain/statistics/descriptive.h"

#include "models/domain/statistics/distributions.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace rickyard::domain::statistics {
namespace {

struct SampleWords {
    Q_DECLARE_TR_FUNCTIONS(Statistics)
};

constexpr int largestSample = 1'000'000;

std::optional<Refusal> unfit(std::span<const double> values, std::size_t least)
{
    if (values.size() < least)
        return Refusal{Reason::TooFewRows,
                       SampleWords::tr("This needs at least %n value(s); measure more.", nullptr,
                                       static_cast<int>(least))};
    if (!std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); }))
        return Refusal{
            Reason::NotFinite,
            SampleWords::tr("A value is missing or infinite; leave it out or correct it.")};
    return {};
}

Answer<double> representable(double result)
{
    if (std::isfinite(result))
        return result;
    return Refusal{Reason::NoAnswer, SampleWords::tr("The values are too large to be summed.")};
}

// Half the width of the t interval of a mean, in standard deviations.
Answer<double> halfWidthPerSd(int count, double level)
{
    const auto t = twoSided(StudentT{static_cast<double>(count - 1)}, level);
    if (!t)
        return t;
    return t.value() / std::sqrt(static_cast<double>(count));
}

} // namespace

double compensatedSum(std::span<const double> values)
{
    double sum = 0.0;
    double lost = 0.0;
    for (const double v : values) {
        const double next = sum + v;
        lost += std::abs(sum) >= std::abs(v) ? (sum - next) + v : (v - next) + sum;
        sum = next;
    }
    return sum + lost;
}

Answer<double> mean(std::span<const double> values)
{
    if (const auto refusal = unfit(values, 1))
        return *refusal;
    return representable(compensatedSum(values) / static_cast<double>(values.size()));
}

Answer<double> sampleSd(std::span<const double> values)
{
    if (const auto refusal = unfit(values, 2))
        return *refusal;
    const auto centre = mean(values);
    if (!centre)
        return centre;
    std::vector<double> deviations(values.begin(), values.end());
    for (double &d : deviations)
        d -= centre.value();
    // The rounding of the mean leaves the deviations summing to a little more or less than zero;
    // taking that back is the correction of the two-pass algorithm (Chan, Golub, LeVeque 1983).
    const double rest = compensatedSum(deviations);
    for (double &d : deviations)
        d *= d;
    const auto n = static_cast<double>(values.size());
    const double squares = compensatedSum(deviations) - rest * rest / n;
    return representable(std::sqrt(std::max(0.0, squares) / (n - 1.0)));
}

Answer<double> quantileType7(std::span<const double> values, double p)
{
    if (const auto refusal = unfit(values, 1))
        return *refusal;
    if (!(p >= 0.0 && p <= 1.0))
        return Refusal{Reason::OutOfRange,
                       SampleWords::tr("The share below a quantile must lie between 0 and 1.")};
    std::vector<double> sorted(values.begin(), values.end());
    const double rank = p * static_cast<double>(sorted.size() - 1);
    const auto below = static_cast<std::ptrdiff_t>(std::floor(rank));
    const auto at = sorted.begin() + below;
    std::nth_element(sorted.begin(), at, sorted.end());
    const double share = rank - static_cast<double>(below);
    if (share <= 0.0)
        return *at;
    const double next = *std::min_element(at + 1, sorted.end());
    // As a weighted sum, not low + share * (high - low): the difference may overflow.
    return (1.0 - share) * *at + share * next;
}

Answer<double> median(std::span<const double> values)
{
    return quantileType7(values, 0.5);
}

Answer<Interval> meanInterval(std::span<const double> values, double level)
{
    if (const auto refusal = unfit(values, 2))
        return *refusal;
    const auto centre = mean(values);
    if (!centre)
        return centre.refusal();
    const auto sd = sampleSd(values);
    if (!sd)
        return sd.refusal();
    return meanIntervalFromSummary(static_cast<int>(values.size()), centre.value(), sd.value(),
                                   level);
}

Answer<Interval> meanIntervalFromSummary(int count, double sampleMean, double sd, double level)
{
    if (count < 2)
        return Refusal{Reason::TooFewRows,
                       SampleWords::tr("An interval needs at least two values; measure more.")};
    if (!std::isfinite(sampleMean) || !std::isfinite(sd) || sd < 0.0)
        return Refusal{Reason::OutOfRange,
                       SampleWords::tr("The mean must be finite and the scatter zero or more.")};
    const auto perSd = halfWidthPerSd(count, level);
    if (!perSd)
        return perSd.refusal();
    const double half = perSd.value() * sd;
    return Interval{sampleMean, sampleMean - half, sampleMean + half, level};
}

Answer<int> sampleSizeForMean(double sd, double halfWidth, double level)
{
    if (!std::isfinite(sd) || sd < 0.0 || !std::isfinite(halfWidth) || halfWidth <= 0.0)
        return Refusal{Reason::OutOfRange,
                       SampleWords::tr("The scatter must be zero or more and the "
                                       "wanted precision above zero.")};
    // The half-width falls steadily with the count, so bisection finds the first that is enough.
    const auto enough = [&](int count) -> Answer<bool> {
        const auto perSd = halfWidthPerSd(count, level);
        if (!perSd)
            return perSd.refusal();
        return perSd.value() * sd <= halfWidth;
    };
    const auto atMost = enough(largestSample);
    if (!atMost)
        return atMost.refusal();
    if (!atMost.value())
        return Refusal{Reason::NoAnswer,
                       SampleWords::tr("More than a million values would be needed. "
                                       "Accept a wider margin.")};
    int low = 1; // a single value has no scatter: never enough
    int high = largestSample;
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        const auto verdict = enough(middle);
        if (!verdict)
            return verdict.refusal();
        (verdict.value() ? high : low) = middle;
    }
    return high;
}

} // namespace rickyard::domain::statistics
