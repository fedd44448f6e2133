// The outer question of the placement solver: which piece goes into which stretch of crew time.
#pragma once

#include "models/domain/upkeep/placement_block.h"
#include "models/domain/upkeep/placement_mip.h"
#include "models/domain/upkeep/placement_solver.h"

#include <map>
#include <vector>

namespace rickyard::domain {

// One piece in one stretch at one cost: a 0/1 variable of the program.
struct MasterOption {
    int piece = 0;
    int stretch = 0;
    qint64 late = 0;
    qint64 waste = 0;
    std::vector<int> starts; // points of the stretch
    std::vector<int> ends;
};

// Crew time that some piece may use, without a break; by time.
struct Stretch {
    qint64 from = 0;
    qint64 to = 0;
    std::vector<qint64> points;
    std::vector<int> people;
};

class PlacementMaster
{
public:
    // `pieces` in the order that decides between equals.
    PlacementMaster(const QVector<WorkPiece> &pieces, const QVector<CrewStep> &crew, qint64 grid,
                    const SolverLimits &limits);
    PlacementPlan solve();

private:
    enum class Aim { Lateness, Waste, Earliness };
    using Choice = std::vector<char>; // by column: the options, then the pieces left out

    void makeStretches(const QVector<CrewStep> &crew, qint64 grid);
    void makeOptions(qint64 grid);
    void findLastGood();
    [[nodiscard]] MipModel model(Aim aim) const;
    void addStretchRows(MipModel &model) const;
    void addOrderRows(MipModel &model) const;
    void addPitRows(MipModel &model, int stretch, const std::vector<int> &columns) const;
    [[nodiscard]] qint64 cost(Aim aim, size_t column) const;
    [[nodiscard]] qint64 sum(Aim aim, const Choice &choice) const;
    MipResult improve(Aim aim);
    void keepAim(Aim aim, const std::optional<qint64> &limit, const Choice &choice,
                 MipHooks::Verdict &verdict) const;
    MipHooks::Verdict judge(const Choice &choice);
    MipRow cutFor(int stretch, std::vector<int> options);
    [[nodiscard]] BlockProblem blockOf(int stretch, const std::vector<int> &options,
                                       bool widened) const;
    BlockFit checked(const BlockProblem &block, int steps);
    BlockFit fits(int stretch, const std::vector<int> &options, bool quick = false);
    // Pieces by falling priority (one that must come before another comes first), each to the
    // option wished for most, else to its cheapest, that fits with those before it.
    [[nodiscard]] Choice build(const std::vector<double> &priority,
                               const std::vector<double> *wish);
    [[nodiscard]] Choice polished(const Choice &choice);
    bool lessLate(std::vector<std::vector<int>> &sets, std::vector<int> &columns);
    [[nodiscard]] bool keepsOrder(const std::vector<int> &columns, int piece, int stretch) const;
    // A good plan to begin with.
    void squeak();
    [[nodiscard]] bool keepsLimits(const Choice &choice) const;
    [[nodiscard]] std::vector<int> turns(const std::vector<double> &priority) const;
    [[nodiscard]] std::vector<std::vector<int>> byStretch(const Choice &choice) const;
    void readStarts(PlacementPlan &plan);

    const QVector<WorkPiece> &m_pieces;
    const SolverLimits &m_limits;
    std::vector<Stretch> m_stretches;
    std::vector<MasterOption> m_options;
    std::vector<std::vector<int>> m_ofPiece;   // options
    std::vector<std::vector<int>> m_ofStretch; // options
    std::vector<int> m_lastGood;               // stretch, by piece
    std::map<std::vector<int>, BlockFit> m_known;
    std::vector<MipRow> m_cuts;
    std::optional<qint64> m_lateLimit;
    std::optional<qint64> m_wasteLimit;
    int m_looks = 0; // quick checks left to the polishing at hand
    int m_work = 0;  // steps of checks left to the aim at hand
    Choice m_best;
};

} // namespace rickyard::domain
