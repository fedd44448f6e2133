// Exact placement of pieces of work into crew time: numbers in, numbers out, no clock, no records.
//
// A piece is placed at one of its start points or left out. People are counted at every moment;
// who holds a piece may change while it runs. Of all plans the one is sought with
//   1. the least lateness: sum of the `late` of the starts, and of `leftOut` of what is left out;
//   2. of these the least waste: sum of the `waste` of the starts;
//   3. of these the earliest: sum of the hours at which the stretches of crew time begin; within a
//      stretch the pieces stand as early as their order (key) lets them.
// The first two are proven, or come with a bound. Method: branch and check (Hooker, Logic-Based
// Methods for Optimization, 2000; Thorsteinsson 2001, from memory). A mixed-integer program chooses
// the stretch of crew time and the cost of each piece; whether the chosen pieces fit into a stretch
// is decided by fitBlock, and what does not fit is cut off. Pieces meet only within a stretch, so
// nothing is lost by the split.
#pragma once

#include <QVector>

#include <functional>
#include <optional>

namespace rickyard::domain {

// Starts from `from` to `to`, both inclusive: `from` itself and every multiple of the grid after
// it.
struct StartRange {
    qint64 from = 0; // seconds
    qint64 to = 0;
    qint64 late = 0; // costs of starting there, not negative
    qint64 waste = 0;
};

struct WorkPiece {
    qint64 key = 0;    // names it, unique; decides between equals
    qint64 length = 0; // seconds, more than 0
    int people = 1;
    qint64 pit = 0;     // 0: none; pieces on one pit never overlap
    qint64 leftOut = 0; // lateness that being left out counts as
    QVector<StartRange> starts;
    int after = -1; // index of the piece that must be over first and is left out only with this one
};

// People there from a moment to the next step's; nobody before the first.
struct CrewStep {
    qint64 from = 0;
    int people = 0;
};

struct PlacementProblem {
    QVector<WorkPiece> pieces;
    QVector<CrewStep> crew; // by time
    qint64 grid = 900;      // seconds
};

struct SolverLimits {
    int nodes = 1000;           // of the tree, for each of the three aims
    int steps = 3000;           // of one check whether pieces fit together
    int work = 100000;          // of all such checks of one aim; used up, the best so far stands
    std::function<bool()> stop; // asked often; true: give the best so far
    bool latenessOnly = false;  // leave out the second and third aim
};

struct PlacementPlan {
    QVector<std::optional<qint64>> starts; // by piece
    qint64 late = 0;
    qint64 waste = 0;
    qint64 lateBound = 0;  // no plan is less late
    qint64 wasteBound = 0; // no plan as late as this wastes less
    int nodes = 0;
    bool stopped = false; // by `stop`
    bool failed = false;  // the solver gave up on an error of its own; the plan is feasible still

    [[nodiscard]] bool proven() const { return lateBound >= late && wasteBound >= waste; }
    // Share by which the first aim that is not proven may be above the best; 0: proven.
    [[nodiscard]] double gap() const;
};

// What is wrong with a problem, in words for a developer; empty: nothing. The solver leaves every
// piece out of a problem that is not sound.
QString problemFault(const PlacementProblem &problem);

// The answer does not depend on the order of the pieces.
PlacementPlan solvePlacement(const PlacementProblem &problem, const SolverLimits &limits = {});

} // namespace rickyard::domain
