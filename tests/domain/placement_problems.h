// Placement problems for the tests of the solver: random ones, a checker and a search of everything
// that share nothing with the program.
#pragma once

#include "models/domain/upkeep/placement_solver.h"

#include <array>
#include <limits>
#include <random>
#include <vector>

namespace rickyard::test {

using namespace rickyard::domain;

class PlacementDice
{
public:
    explicit PlacementDice(unsigned seed) : m_engine(seed) {}
    int upTo(int n) { return static_cast<int>(m_engine() % static_cast<unsigned>(n)); }
    bool oneIn(int n) { return upTo(n) == 0; }
    std::mt19937 &engine() { return m_engine; }

private:
    std::mt19937 m_engine;
};

constexpr qint64 kDaySeconds = 86400;

// One to three days of crew time, two to five pieces; edges off the grid, people that change,
// pits, an order, two-person work, starts that cost more later on the same day.
inline PlacementProblem randomPlacement(PlacementDice &dice, int morePieces = 4)
{
    PlacementProblem p;
    std::vector<std::pair<qint64, qint64>> hours;
    const int days = 1 + dice.upTo(3);
    for (int k = 0; k < days; ++k) {
        const qint64 from = k * kDaySeconds + dice.upTo(4) * 900;
        const qint64 to = from + (2 + dice.upTo(4)) * 900;
        p.crew << CrewStep{from, 1 + dice.upTo(2)};
        const qint64 change = from + 900 * (1 + dice.upTo(2));
        if (dice.oneIn(3) && change < to)
            p.crew << CrewStep{change, 1 + dice.upTo(2)};
        p.crew << CrewStep{to, 0};
        hours.emplace_back(from, to);
    }
    const int pieces = 2 + dice.upTo(morePieces);
    for (int i = 0; i < pieces; ++i) {
        WorkPiece w;
        w.key = i + 1;
        w.length = 300 * (1 + dice.upTo(9));
        w.people = dice.oneIn(4) ? 2 : 1;
        w.pit = dice.upTo(3);
        const qint64 weight = 1 + dice.upTo(9);
        w.leftOut = 1000 * weight;
        if (i > 0 && dice.oneIn(4))
            w.after = dice.upTo(i);
        const int due = dice.upTo(days);
        for (int k = 0; k < days; ++k) {
            const auto [open, close] = hours[static_cast<size_t>(k)];
            const qint64 from = open + (dice.oneIn(3) ? 300 * dice.upTo(5) : 0);
            const qint64 to = close - w.length - (dice.oneIn(4) ? 900 : 0);
            if (dice.oneIn(5) || from > to)
                continue;
            const qint64 late = weight * std::max(0, k - due);
            const qint64 early = 10 * std::max(0, due - k);
            if (dice.oneIn(4) && from + 900 < to) {
                w.starts << StartRange{from, from + 600, late, early};
                w.starts << StartRange{from + 900, to, late + dice.upTo(3), early + dice.upTo(5)};
            } else {
                w.starts << StartRange{from, to, late, early + dice.upTo(4)};
            }
        }
        p.pieces << w;
    }
    return p;
}

// The rules and the costs of a plan, said a second time.
class PlacementCheck
{
public:
    explicit PlacementCheck(const PlacementProblem &problem) : m_problem(problem)
    {
        for (const WorkPiece &piece : problem.pieces) {
            m_starts.emplace_back();
            for (const StartRange &range : piece.starts)
                for (qint64 at = range.from; at <= range.to;
                     at = (at / problem.grid + 1) * problem.grid)
                    m_starts.back().push_back({at, range.late, range.waste});
        }
    }
    [[nodiscard]] bool feasible(const std::vector<qint64> &starts) const
    {
        std::vector<qint64> moments;
        for (const CrewStep &step : m_problem.crew)
            moments.push_back(step.from);
        for (const qint64 start : starts)
            if (start >= 0)
                moments.push_back(start);
        for (const qint64 at : moments) {
            int people = 0;
            for (const CrewStep &step : m_problem.crew)
                people = step.from <= at ? step.people : people;
            for (size_t i = 0; i < starts.size(); ++i)
                if (starts[i] >= 0 && starts[i] <= at && at < end(i, starts))
                    people -= piece(i).people;
            if (people < 0)
                return false;
        }
        for (size_t i = 0; i < starts.size(); ++i) {
            if (starts[i] < 0)
                continue;
            for (size_t k = 0; k < i; ++k)
                if (starts[k] >= 0 && piece(i).pit != 0 && piece(i).pit == piece(k).pit &&
                    starts[i] < end(k, starts) && starts[k] < end(i, starts))
                    return false;
            const int after = piece(i).after;
            if (after >= 0 && (starts[static_cast<size_t>(after)] < 0 ||
                               end(static_cast<size_t>(after), starts) > starts[i]))
                return false;
        }
        return true;
    }
    // Lateness and waste of a plan; a start that is not allowed costs the most there is.
    [[nodiscard]] std::pair<qint64, qint64> cost(const std::vector<qint64> &starts) const
    {
        std::pair<qint64, qint64> sum{0, 0};
        for (size_t i = 0; i < starts.size(); ++i) {
            std::pair<qint64, qint64> best{std::numeric_limits<int>::max(), 0};
            if (starts[i] < 0)
                best = {piece(i).leftOut, 0};
            for (const auto &[at, late, waste] : m_starts[i])
                if (at == starts[i])
                    best = std::min(best, {late, waste});
            sum.first += best.first;
            sum.second += best.second;
        }
        return sum;
    }
    // The best of all plans there are.
    std::pair<qint64, qint64> bestOfAll()
    {
        m_best = {std::numeric_limits<qint64>::max(), 0};
        m_plan.assign(m_starts.size(), -1);
        tryAll(0, 0, 0);
        return m_best;
    }
    static std::vector<qint64> startsOf(const PlacementPlan &plan)
    {
        std::vector<qint64> starts;
        for (const auto &start : plan.starts)
            starts.push_back(start.value_or(-1));
        return starts;
    }

private:
    [[nodiscard]] const WorkPiece &piece(size_t i) const
    {
        return m_problem.pieces.at(static_cast<qsizetype>(i));
    }
    [[nodiscard]] qint64 end(size_t i, const std::vector<qint64> &starts) const
    {
        return starts[i] + piece(i).length;
    }
    void tryAll(size_t i, qint64 late, qint64 waste)
    {
        if (std::make_pair(late, waste) >= m_best)
            return;
        if (i == m_starts.size()) {
            if (feasible(m_plan))
                m_best = {late, waste};
            return;
        }
        for (const auto &[at, l, w] : m_starts[i]) {
            m_plan[i] = at;
            tryAll(i + 1, late + l, waste + w);
        }
        m_plan[i] = -1;
        tryAll(i + 1, late + piece(i).leftOut, waste);
    }

    const PlacementProblem &m_problem;
    std::vector<std::vector<std::array<qint64, 3>>> m_starts;
    std::vector<qint64> m_plan;
    std::pair<qint64, qint64> m_best;
};

} // namespace rickyard::test
