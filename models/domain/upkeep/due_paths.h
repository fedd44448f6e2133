// The spread of due dates: the meters run forward many times over the planned cooks, each taking
// what it happens to take, and over cooks that nobody has planned yet.
//
// Seeded draws on plain arrays. What a planned cook draws hangs on its id alone, what a pit's
// unplanned cooks draw on the pit's: the same books and moment give the same answer, and one cook
// more or less changes no other's luck.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/domain/upkeep/due.h"
#include "models/domain/upkeep/local_time.h"
#include "models/domain/upkeep/meter_use.h"

#include <vector>

namespace rickyard::domain {

constexpr int kDuePaths = 2000;
// Unplanned cooks are drawn this far ahead: a year.
constexpr int kDueDays = 366;
// A shorter log tells nothing about cooks that nobody planned. Our own rule, no source.
constexpr int kUnplannedLogDays = 28;
// Fewer cooks that fulfilled a plan tell nothing about how long a planned one takes. Our own rule.
constexpr int kPlannedLengths = 5;

// How often a pit is lit without a plan.
struct UnplannedRate {
    int cooks = 0;   // since the yard's first cook, that one left out
    double days = 0; // since then
    bool known = false;

    [[nodiscard]] double perDay() const { return known && days > 0 ? cooks / days : 0.0; }
};
UnplannedRate unplannedRate(const Books &books, RecordId pit, Instant now);
// Actual over planned length of the finished cooks that fulfilled a plan, all pits.
std::vector<double> lengthRatios(const Books &books, Instant now);

struct DueSpread {
    bool known = false; // due within the time looked at on half the paths at least
    bool fixed = false; // the same on every path
    Instant at;         // the middle, in the sense of DueForecast::at
    QDate early;        // one chance in ten that it is due by then
    QDate middle;       // five in ten
    QDate late;         // nine in ten; invalid: not within the time looked at
    double chance = 0;  // that it is due within the time looked at
    QString reason;     // of the trigger that is first most often
    QVector<LightingChance> lightings;
};

class DuePaths
{
public:
    // `uses` as plannedUses gives them; a planned cook without one takes its pit's mean rate. Where
    // nothing is uncertain a single path does.
    DuePaths(const Books &books, const FuelAnswer &fuel, const QVector<PlannedUse> &uses,
             Instant now, const LocalTime &local, int paths = kDuePaths);

    [[nodiscard]] DueSpread spreadOf(const UpkeepTask &task);

private:
    struct PathBurn {
        Instant start;
        Instant end;
        double hours = 0; // still to burn
        double heat = 0;  // J, likewise
        double ash = 0;   // kg
    };
    using Path = std::vector<PathBurn>; // by end
    struct First {
        Instant at;
        int trigger = -1; // -1: the calendar
        bool found = false;
    };

    [[nodiscard]] bool uncertain() const;
    // Of one pit, or of all together (0); drawn when they are first asked for.
    const std::vector<Path> &pathsOf(RecordId pit);
    [[nodiscard]] std::vector<Path> drawPit(RecordId pit) const;
    void drawPlanned(const Burn &burn, const UseRates &rates, const std::vector<double> &common,
                     std::vector<Path> &paths) const;
    void drawUnplanned(RecordId pit, const UseRates &rates, std::vector<Path> &paths) const;
    [[nodiscard]] static First firstOf(const Path &path, const UpkeepTask &task,
                                       const MeterSums &soFar, Instant from, Instant now);
    [[nodiscard]] double sharedError(const PlannedUse &use) const;

    const Books &m_books;
    const FuelAnswer &m_fuel;
    QMap<RecordId, PlannedUse> m_uses; // by planned cook
    Instant m_now;
    LocalTime m_local;
    std::vector<double> m_ratios;
    size_t m_count = 0;
    QMap<RecordId, std::vector<Path>> m_paths;
};

} // namespace rickyard::domain
