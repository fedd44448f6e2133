#include "models/domain/upkeep/placement_solver.h"

#include "models/domain/upkeep/placement_master.h"

#include <QString>

#include <algorithm>
#include <numeric>

namespace rickyard::domain {

namespace {

// Sums of costs stay exact in a double, and far from the tolerances of a linear program.
constexpr qint64 kMostCost = 1'000'000'000;

QString pieceFault(const PlacementProblem &problem, const WorkPiece &piece)
{
    if (piece.length <= 0 || piece.people < 1)
        return QStringLiteral("a piece without length or people");
    if (piece.leftOut < 0 || piece.leftOut > kMostCost)
        return QStringLiteral("a cost out of range");
    if (piece.after < -1 || piece.after >= problem.pieces.size())
        return QStringLiteral("a piece after one that is not there");
    for (const StartRange &range : piece.starts)
        if (range.late < 0 || range.waste < 0 || range.late > kMostCost || range.waste > kMostCost)
            return QStringLiteral("a cost out of range");
    return {};
}

} // namespace

double PlacementPlan::gap() const
{
    const auto share = [](qint64 value, qint64 bound) {
        return value > bound ? static_cast<double>(value - bound) / static_cast<double>(value) : 0;
    };
    return lateBound < late ? share(late, lateBound) : share(waste, wasteBound);
}

QString problemFault(const PlacementProblem &problem)
{
    if (problem.grid < 1)
        return QStringLiteral("no grid");
    for (const WorkPiece &piece : problem.pieces) {
        const QString fault = pieceFault(problem, piece);
        if (!fault.isEmpty())
            return fault;
        // Following the order back must come to an end.
        int steps = 0;
        for (int j = piece.after; j >= 0; j = problem.pieces.at(j).after) {
            if (j >= problem.pieces.size() || ++steps > problem.pieces.size())
                return QStringLiteral("pieces in a circle");
        }
    }
    for (qsizetype i = 1; i < problem.crew.size(); ++i)
        if (problem.crew.at(i).from < problem.crew.at(i - 1).from)
            return QStringLiteral("crew steps out of order");
    return {};
}

PlacementPlan solvePlacement(const PlacementProblem &problem, const SolverLimits &limits)
{
    PlacementPlan plan;
    plan.starts.resize(problem.pieces.size());
    if (problem.pieces.isEmpty() || !problemFault(problem).isEmpty()) {
        plan.failed = !problem.pieces.isEmpty();
        return plan;
    }
    // The same pieces in another order are the same problem: they are put in the order of keys.
    QVector<int> order(problem.pieces.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return problem.pieces.at(a).key < problem.pieces.at(b).key;
    });
    QVector<int> place(order.size());
    for (int i = 0; i < order.size(); ++i)
        place[order.at(i)] = i;
    QVector<WorkPiece> pieces;
    for (const int j : order) {
        pieces << problem.pieces.at(j);
        if (pieces.last().after >= 0)
            pieces.last().after = place.at(pieces.last().after);
    }
    const PlacementPlan ordered =
        PlacementMaster(pieces, problem.crew, problem.grid, limits).solve();
    plan = ordered;
    for (int i = 0; i < order.size(); ++i)
        plan.starts[order.at(i)] = ordered.starts.at(i);
    return plan;
}

} // namespace rickyard::domain
