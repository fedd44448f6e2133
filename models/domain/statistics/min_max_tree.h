// The lowest and the highest reading of any stretch of a long series without looking at each: what
// a chart of a million readings needs to be drawn anew at every movement. Blocks of 16 readings,
// blocks of 16 blocks and so on remember where their lowest and highest are.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace rickyard::domain::statistics {

class MinMaxTree
{
public:
    MinMaxTree() = default;
    // Finite values.
    explicit MinMaxTree(std::vector<double> values);

    [[nodiscard]] std::size_t size() const { return m_values.size(); }
    [[nodiscard]] bool isEmpty() const { return m_values.empty(); }
    [[nodiscard]] double value(std::size_t i) const { return m_values[i]; }
    // Where the extremes of [from, to) are; from < to <= size(). Of equal readings the first.
    struct Extremes {
        std::size_t lowest;
        std::size_t highest;
    };
    [[nodiscard]] Extremes extremes(std::size_t from, std::size_t to) const;

private:
    using Level = std::vector<std::uint32_t>;
    template <class Better>
    [[nodiscard]] std::size_t best(const std::vector<Level> &levels, std::size_t from,
                                   std::size_t to, Better better) const;
    template <class Better>
    void build(std::vector<Level> &levels, Better better) const;

    std::vector<double> m_values;
    std::vector<Level> m_lowest; // m_lowest[k][b]: the lowest in block b of 16^(k + 1) readings
    std::vector<Level> m_highest;
};

// The readings that a drawing of [from, to] in `columns` equal columns needs: of every column the
// first, the lowest, the highest and the last, and one reading beyond either edge so that the line
// runs off it. Ascending, none twice. `x` are the times of the tree's values, never falling.
std::vector<std::size_t> columnExtremes(std::span<const double> x, const MinMaxTree &tree,
                                        double from, double to, std::size_t columns);

} // namespace rickyard::domain::statistics
