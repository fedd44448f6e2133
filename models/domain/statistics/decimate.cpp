#include "models/domain/statistics/decimate.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace rickyard::domain::statistics {
namespace {

struct DecimateWords {
    Q_DECLARE_TR_FUNCTIONS(Statistics)
};

std::optional<Refusal> unfit(std::span<const double> x, std::span<const double> y, std::size_t most)
{
    const auto finite = [](double v) { return std::isfinite(v); };
    if (x.size() != y.size())
        return Refusal{
            Reason::ShapeMismatch,
            DecimateWords::tr("There are %1 times for %2 readings; give each reading its time.")
                .arg(x.size())
                .arg(y.size())};
    if (most < 4)
        return Refusal{Reason::OutOfRange,
                       DecimateWords::tr("A line needs room for at least 4 points.")};
    if (!std::all_of(x.begin(), x.end(), finite) || !std::all_of(y.begin(), y.end(), finite))
        return Refusal{Reason::NotFinite,
                       DecimateWords::tr("A reading is missing; split the line where the gap is.")};
    if (!std::is_sorted(x.begin(), x.end()))
        return Refusal{Reason::OutOfRange,
                       DecimateWords::tr("The readings are not in the order of their times.")};
    return {};
}

} // namespace

std::size_t columnsFor(std::size_t most)
{
    return most < 4 ? 0 : (most - 2) / 2;
}

std::size_t columnOf(double x, double first, double last, std::size_t columns)
{
    // Halves, so that the widest range of doubles still has a finite width.
    const double width = last / 2 - first / 2;
    if (!(width > 0.0) || columns == 0)
        return 0;
    const double share = std::clamp((x / 2 - first / 2) / width, 0.0, 1.0);
    return std::min(columns - 1, static_cast<std::size_t>(share * static_cast<double>(columns)));
}

Answer<std::vector<std::size_t>> minMaxDecimation(std::span<const double> x,
                                                  std::span<const double> y, std::size_t most)
{
    if (const auto refusal = unfit(x, y, most))
        return *refusal;
    const std::size_t count = y.size();
    if (count <= most) {
        std::vector<std::size_t> all(count);
        std::iota(all.begin(), all.end(), std::size_t{0});
        return all;
    }
    const std::size_t columns = columnsFor(most);
    const std::size_t last = count - 1;
    std::vector<std::size_t> kept{0};
    kept.reserve(most);
    for (std::size_t i = 1; i < last;) {
        const std::size_t column = columnOf(x[i], x[0], x[last], columns);
        std::size_t lowest = i;
        std::size_t highest = i;
        for (; i < last && columnOf(x[i], x[0], x[last], columns) == column; ++i) {
            if (y[i] < y[lowest])
                lowest = i;
            if (y[i] > y[highest])
                highest = i;
        }
        kept.push_back(std::min(lowest, highest));
        if (lowest != highest)
            kept.push_back(std::max(lowest, highest));
    }
    kept.push_back(last);
    return kept;
}

} // namespace rickyard::domain::statistics
