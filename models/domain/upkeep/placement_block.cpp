#include "models/domain/upkeep/placement_block.h"

#include <algorithm>
#include <limits>
#include <string>
#include <unordered_set>

namespace rickyard::domain {

namespace {

constexpr int kNever = std::numeric_limits<int>::max();

class BlockSearch
{
public:
    BlockSearch(const BlockProblem &problem, int steps)
        : m_problem(problem), m_steps(steps), m_used(problem.people.size(), 0),
          m_start(problem.jobs.size(), -1), m_end(problem.jobs.size(), -1)
    {
        int pits = 0;
        for (const BlockJob &job : problem.jobs) {
            pits = std::max(pits, job.pit);
            int least = kNever;
            for (size_t i = 0; i < job.starts.size(); ++i)
                least = std::min(least, job.ends[i] - job.starts[i]);
            m_least.push_back(least);
        }
        m_pitEnd.assign(static_cast<size_t>(pits) + 1, 0);
    }
    BlockFit run(std::vector<int> *starts)
    {
        for (const int least : m_least)
            if (least == kNever)
                return BlockFit::DoesNot;
        const bool found = place(0, -1, m_problem.jobs.size());
        if (found && starts != nullptr)
            *starts = m_start;
        if (found)
            return BlockFit::Fits;
        return m_steps < 0 ? BlockFit::Unknown : BlockFit::DoesNot;
    }

    [[nodiscard]] int stepsLeft() const { return std::max(0, m_steps); }

private:
    struct Spot {
        int start = kNever;
        int end = kNever;
    };

    // First free point for a job not before `from`.
    [[nodiscard]] Spot earliest(size_t j, int from) const
    {
        const BlockJob &job = m_problem.jobs[j];
        from = std::max(from, m_pitEnd[static_cast<size_t>(job.pit)]);
        if (job.after >= 0) {
            const auto before = static_cast<size_t>(job.after);
            from = std::max(from, m_end[before] >= 0 ? m_end[before] : m_least[before]);
        }
        auto at = std::lower_bound(job.starts.begin(), job.starts.end(), from);
        for (; at != job.starts.end(); ++at) {
            const int end = job.ends[static_cast<size_t>(at - job.starts.begin())];
            int blocked = -1;
            for (int p = *at; p < end && blocked < 0; ++p)
                if (m_used[static_cast<size_t>(p)] + job.people >
                    m_problem.people[static_cast<size_t>(p)])
                    blocked = p;
            if (blocked < 0)
                return {*at, end};
        }
        return {};
    }
    [[nodiscard]] bool ready(size_t j) const
    {
        const int after = m_problem.jobs[j].after;
        return after < 0 || m_end[static_cast<size_t>(after)] >= 0;
    }
    [[nodiscard]] bool enoughPeople(int from) const
    {
        int free = 0;
        for (size_t p = static_cast<size_t>(from); p < m_used.size(); ++p)
            free += std::max(0, m_problem.people[p] - m_used[p]);
        int wanted = 0;
        for (size_t j = 0; j < m_start.size(); ++j)
            wanted += m_start[j] < 0 ? m_least[j] * m_problem.jobs[j].people : 0;
        return wanted <= free;
    }
    // What the rest of the search depends on.
    [[nodiscard]] std::string key(int last, int lastJob) const
    {
        std::string text;
        const auto add = [&text](int n) {
            text.append(reinterpret_cast<const char *>(&n), sizeof n);
        };
        add(last);
        add(lastJob);
        for (const int start : m_start)
            text.push_back(start < 0 ? '0' : '1');
        for (size_t p = static_cast<size_t>(last); p < m_used.size(); ++p)
            add(m_used[p]);
        for (const int end : m_pitEnd)
            add(std::max(end, last));
        for (size_t j = 0; j < m_start.size(); ++j)
            if (m_start[j] < 0 && m_problem.jobs[j].after >= 0)
                add(std::max(last, m_end[static_cast<size_t>(m_problem.jobs[j].after)]));
        return text;
    }

    void put(size_t j, const Spot &spot, int sign)
    {
        const BlockJob &job = m_problem.jobs[j];
        for (int p = spot.start; p < spot.end; ++p)
            m_used[static_cast<size_t>(p)] += sign * job.people;
        m_start[j] = sign > 0 ? spot.start : -1;
        m_end[j] = sign > 0 ? spot.end : -1;
    }

    bool place(int last, int lastJob, size_t left)
    {
        if (left == 0)
            return true;
        if (--m_steps < 0 || !enoughPeople(last))
            return false;
        std::string state = key(last, lastJob);
        if (m_failed.count(state) > 0)
            return false;
        std::vector<Spot> spots(m_start.size());
        int firstOver = kNever;
        for (size_t j = 0; j < m_start.size(); ++j) {
            if (m_start[j] >= 0)
                continue;
            spots[j] = earliest(j, last);
            if (spots[j].start == kNever)
                return false;
            if (ready(j))
                firstOver = std::min(firstOver, spots[j].end);
        }
        for (size_t j = 0; j < m_start.size(); ++j) {
            const Spot spot = spots[j];
            const bool tie = spot.start == last && static_cast<int>(j) < lastJob;
            if (m_start[j] >= 0 || !ready(j) || tie || spot.start >= firstOver)
                continue;
            const auto pit = static_cast<size_t>(m_problem.jobs[j].pit);
            const int before = m_pitEnd[pit];
            put(j, spot, 1);
            if (pit != 0)
                m_pitEnd[pit] = spot.end;
            if (place(spot.start, static_cast<int>(j), left - 1))
                return true;
            put(j, spot, -1);
            m_pitEnd[pit] = before;
            if (m_steps < 0)
                return false;
        }
        m_failed.insert(std::move(state));
        return false;
    }

    const BlockProblem &m_problem;
    int m_steps;
    std::vector<int> m_used;
    std::vector<int> m_start;
    std::vector<int> m_end;
    std::vector<int> m_least;
    std::vector<int> m_pitEnd;
    std::unordered_set<std::string> m_failed;
};

} // namespace

BlockFit fitBlock(const BlockProblem &problem, std::vector<int> *starts, int steps, int *used)
{
    BlockSearch search(problem, steps);
    const BlockFit fit = search.run(starts);
    if (used != nullptr)
        *used = steps - search.stepsLeft();
    return fit;
}

} // namespace rickyard::domain
