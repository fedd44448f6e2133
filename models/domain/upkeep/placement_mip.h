// A small mixed-integer program over binaries, solved by GLPK. This is the only file that knows
// GLPK; it is silent, keeps no state between calls and may be called from any thread (the packaged
// GLPK keeps its environment in thread-local storage, and each call frees it again).
#pragma once

#include <QtGlobal>

#include <functional>
#include <optional>
#include <vector>

namespace rickyard::domain {

// Sum of coefficients times variables (numbered from 0), at most or exactly `limit`.
struct MipRow {
    std::vector<int> columns;
    std::vector<double> factors;
    double limit = 0;
    bool exactly = false;
};

// Least sum of cost times variable, every variable 0 or 1. Costs are whole numbers, so that a bound
// can be rounded up and an optimum is exact.
struct MipModel {
    std::vector<qint64> costs;
    std::vector<MipRow> rows;
    std::vector<MipRow> lazy; // rows too: they are taken up only once broken
    std::vector<int> zero;    // variables that are 0
};

struct MipHooks {
    struct Verdict {
        std::vector<MipRow> cuts; // rows that this solution breaks; none: it is good
        bool certain = true;      // false: a cut may have thrown away good solutions too
    };
    // Asked about every solution of whole numbers before it counts.
    std::function<Verdict(const std::vector<char> &)> judge;
    // A good solution near the broken one at hand, when there is an easy one.
    std::function<std::optional<std::vector<char>>(const std::vector<double> &)> repair;
    std::function<bool()> stop; // true: give up now
    int nodes = 2000;           // the most nodes of the tree
};

enum class MipState { Proven, Limited, Stopped, Failed };

struct MipResult {
    MipState state = MipState::Failed;
    std::optional<std::vector<char>> best;
    qint64 value = 0;           // of `best`
    qint64 bound = 0;           // no solution costs less
    int nodes = 0;              // of the tree
    std::vector<MipRow> learnt; // certain cuts of the hooks, for the next run
};

// `start` is a good solution to begin with. State Failed: GLPK gave up on an error; `best` is then
// still the best good solution met.
MipResult solveMip(const MipModel &model, const MipHooks &hooks,
                   const std::optional<std::vector<char>> &start);

} // namespace rickyard::domain
