// Whether pieces of work fit together into one stretch of crew time: the inner question of the
// placement solver, answered exactly.
#pragma once

#include <vector>

namespace rickyard::domain {

// Time is counted in the points of the stretch: every moment at which a piece may start or the
// number of people changes, in order. No piece starts between two points, so a piece holds its
// people from its start point up to the first point at or after its end.
struct BlockJob {
    std::vector<int> starts; // points at which it may start, rising
    std::vector<int> ends;   // for each: first point at which it is over
    int people = 1;
    int pit = 0;    // 0: none; two jobs on one pit never overlap
    int after = -1; // job that must be over first; -1: none
};

struct BlockProblem {
    std::vector<int> people; // at each point
    std::vector<BlockJob> jobs;
};

enum class BlockFit { Fits, DoesNot, Unknown };

// `starts` gets the start point of each job when they fit. Unknown: more than `steps` steps.
//
// Why the search is complete though it tries few times: take the feasible plan whose list of
// (start, job), sorted, is least. Each job in it starts at the first point that is allowed, not
// before the job before it in the list, and free given the jobs before it: otherwise it could be
// moved there, since only jobs earlier in the list run before its old start, and the list would be
// less. So it is enough to try the orders, each job at that first point. For the same reason a job
// need not come next if another could be over before it starts.
// `used`: gets the steps that were taken.
BlockFit fitBlock(const BlockProblem &problem, std::vector<int> *starts, int steps,
                  int *used = nullptr);

} // namespace rickyard::domain
