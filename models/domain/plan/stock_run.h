// One run over the paths that StockPaths drew; see there. The paths go through in blocks of lanes
// so that a block's ricks stay in the processor's nearest cache and a loop over lanes has a fixed
// length.
#pragma once

#include "models/domain/plan/stock_paths.h"

#include <array>

namespace rickyard::domain {

class StockRun
{
public:
    static constexpr qsizetype kLanes = 64;

    StockRun(const StockPaths &paths, const WhatIf &whatIf);
    StockOutcome run(const CancelCheck &cancel);

private:
    using Row = StockPaths::Row;
    using Lanes = std::array<double, kLanes>;

    struct Pile { // a source that may be burned, within the block at hand
        const StockPaths::Source *source = nullptr;
        int lot = -1;                  // its index, -1 for what is still to come
        const double *ready = nullptr; // of the block
        Lanes left{};
        double firstReady = 0;
        double lastReady = 0;
        bool empty = false;
    };

    // The dry wood of a day over the paths, counted in bins of a two-thousandth of the most that
    // there can be: to keep 10,000 paths of 180 days for the fan takes longer than to draw them.
    static constexpr int kBins = 2048;
    struct DayCount {
        std::array<quint32, kBins> paths{};
        double sum = 0;
        double least = std::numeric_limits<double>::infinity();
        double most = 0;
    };

    void startBlock(qsizetype begin);
    void burn(int day, int event, Lanes &need);
    static bool takeFrom(Pile &pile, int day, Lanes &need);
    void planned(size_t need, qsizetype begin);
    void unplanned(int before, qsizetype begin);
    double burnLane(int day, size_t lane, double need);
    void endBlock(qsizetype begin);
    void noteTaken(int day, qsizetype begin, const Lanes &asked, const Lanes &missing);
    void addArrivals();
    void fillCourse(qsizetype begin);
    void fillMeans(StockOutcome &outcome);
    [[nodiscard]] double atPlace(const DayCount &counts, double chance) const;
    [[nodiscard]] double mostHeat() const;
    [[nodiscard]] EventRisk riskOf(const Row &missing) const;
    StockOutcome finish();

    const StockPaths &m_paths;
    const WhatIf &m_whatIf;
    std::vector<StockPaths::Source> m_placed;
    std::vector<Pile> m_piles;
    std::vector<Row> m_missing; // one an event: heat missing, by path
    Row m_missingUnplanned;
    std::array<size_t, kLanes> m_nextFire{};
    std::vector<qint64> m_needShort; // paths
    std::vector<double> m_left;      // sums over paths, one a pile
    std::vector<Lanes> m_change;     // by day, of the block's dry wood
    std::vector<DayCount> m_counts;  // by day
    double m_binsPerHeat = 0;
    std::vector<double> m_burned; // by day, sum over paths
};

} // namespace rickyard::domain
