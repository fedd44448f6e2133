#include "models/domain/statistics/min_max_tree.h"

#include <algorithm>
#include <array>

namespace rickyard::domain::statistics {

namespace {

constexpr std::size_t kFan = 16;

struct Lower {
    bool operator()(double a, double b) const { return a < b; }
};
struct Higher {
    bool operator()(double a, double b) const { return a > b; }
};

} // namespace

MinMaxTree::MinMaxTree(std::vector<double> values) : m_values(std::move(values))
{
    build(m_lowest, Lower());
    build(m_highest, Higher());
}

template <class Better>
void MinMaxTree::build(std::vector<Level> &levels, Better better) const
{
    std::size_t below = m_values.size();
    while (below > kFan) {
        Level level;
        level.reserve(below / kFan + 1);
        const Level *inner = levels.empty() ? nullptr : &levels.back();
        for (std::size_t start = 0; start < below; start += kFan) {
            const std::size_t end = std::min(start + kFan, below);
            std::size_t winner = inner == nullptr ? start : (*inner)[start];
            for (std::size_t i = start + 1; i < end; ++i) {
                const std::size_t rival = inner == nullptr ? i : (*inner)[i];
                if (better(m_values[rival], m_values[winner]))
                    winner = rival;
            }
            level.push_back(static_cast<std::uint32_t>(winner));
        }
        below = level.size();
        levels.push_back(std::move(level));
    }
}

// Readings up to the first whole block, whole blocks, readings after the last; the same among the
// blocks one level up.
template <class Better>
std::size_t MinMaxTree::best(const std::vector<Level> &levels, std::size_t from, std::size_t to,
                             Better better) const
{
    std::size_t winner = from;
    const auto take = [&](std::size_t rival) {
        if (better(m_values[rival], m_values[winner]) ||
            (m_values[rival] == m_values[winner] && rival < winner))
            winner = rival;
    };
    std::size_t level = 0; // 0: the readings, k: levels[k - 1]
    const auto indexAt = [&](std::size_t i) { return level == 0 ? i : levels[level - 1][i]; };
    while (from < to) {
        const std::size_t firstBlock = (from + kFan - 1) / kFan;
        const std::size_t endBlock = to / kFan;
        if (level == levels.size() || firstBlock >= endBlock) {
            for (; from < to; ++from)
                take(indexAt(from));
            break;
        }
        for (; from < firstBlock * kFan; ++from)
            take(indexAt(from));
        for (std::size_t i = endBlock * kFan; i < to; ++i)
            take(indexAt(i));
        from = firstBlock;
        to = endBlock;
        ++level;
    }
    return winner;
}

MinMaxTree::Extremes MinMaxTree::extremes(std::size_t from, std::size_t to) const
{
    return {best(m_lowest, from, to, Lower()), best(m_highest, from, to, Higher())};
}

std::vector<std::size_t> columnExtremes(std::span<const double> x, const MinMaxTree &tree,
                                        double from, double to, std::size_t columns)
{
    std::vector<std::size_t> kept;
    if (x.empty() || columns == 0 || !(to > from))
        return kept;
    kept.reserve(columns * 4 + 2);
    const auto firstFrom = [&](std::ptrdiff_t begin, double time) {
        return std::lower_bound(x.begin() + begin, x.end(), time) - x.begin();
    };
    std::ptrdiff_t at = firstFrom(0, from);
    if (at > 0)
        kept.push_back(static_cast<std::size_t>(at - 1));
    const double width = (to - from) / static_cast<double>(columns);
    const auto size = static_cast<std::ptrdiff_t>(x.size());
    for (std::size_t column = 0; column < columns && at < size; ++column) {
        // The last column takes a reading that lies upon the right edge.
        const std::ptrdiff_t next =
            column + 1 == columns ? std::upper_bound(x.begin() + at, x.end(), to) - x.begin()
                                  : firstFrom(at, from + width * static_cast<double>(column + 1));
        if (next == at)
            continue;
        const auto begin = static_cast<std::size_t>(at);
        const auto end = static_cast<std::size_t>(next);
        const MinMaxTree::Extremes extremes = tree.extremes(begin, end);
        std::array<std::size_t, 4> corners{begin, extremes.lowest, extremes.highest, end - 1};
        std::sort(corners.begin(), corners.end());
        kept.insert(kept.end(), corners.begin(), std::unique(corners.begin(), corners.end()));
        at = next;
    }
    if (at < size)
        kept.push_back(static_cast<std::size_t>(at));
    return kept;
}

} // namespace rickyard::domain::statistics
