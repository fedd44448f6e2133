// Seasons in which pit 1 gets a fault and is mended after it was flagged: what the before-and-after
// comparison makes of it. Invented; everything follows from the seed.
#pragma once

#include "models/domain/fire/repair_effect.h"
#include "models/domain/fire/watch.h"
#include "tests/domain/watch_season.h"

namespace rickyard::test {

struct RepairPlan {
    SeasonPlan season; // its fault begins after its clean cooks; 1.0: none
    double cure = 1.0; // share of the fault's logarithm that the repair takes away
    int broken = 10;   // cooks with the fault before the repair
    int after = 10;
    bool fromClimb = true; // before: since the climb began, as the watch dates it; false: the true
                           // first cook with the fault
};

struct RepairOutcome {
    domain::RepairEffect effect;
    double truth = 0.0; // percent
    int before = 0;     // cooks compared
};

inline RepairOutcome repairedSeason(const RepairPlan &plan)
{
    const int repairedAfter = plan.season.clean + plan.broken;
    domain::FuelWatch watch;
    std::vector<SeasonCook> ofPit;
    domain::RecordId since = 0;
    const double left = std::pow(plan.season.fault, -plan.cure);
    for (SeasonCook c : inventedSeason(plan.season)) {
        if (c.number > repairedAfter + plan.after)
            break;
        if (c.cook.pit == 1 && c.number == repairedAfter + 1) {
            if (const auto climb = watch.excess(1))
                since = climb->since;
            watch.repaired(1);
        }
        if (c.cook.pit == 1 && c.number > repairedAfter)
            c.cook.actual *= left;
        const auto verdict = watch.add(c.cook);
        if (verdict.raised && (c.cook.pit != 1 || c.number <= plan.season.clean))
            watch.nothingFound(c.cook.pit);
        if (c.cook.pit == 1)
            ofPit.push_back(c);
    }
    RepairOutcome outcome;
    domain::RepairQuestion question;
    for (const SeasonCook &c : ofPit) {
        const auto norm = watch.expect(1, c.cook.columns);
        const domain::RepairCook cook{c.cook.actual, norm ? norm->expected : 0.0, 1.0};
        const bool fault =
            plan.fromClimb && since != 0 ? c.cook.cook >= since : c.number > plan.season.clean;
        if (c.number > repairedAfter)
            question.after << cook;
        else if (fault)
            question.before << cook;
    }
    question.scatter = watch.norm().scale();
    question.scatterWorth = watch.norm().dof();
    question.fault = plan.season.fault > 1.0 ? plan.season.fault - 1.0 : 0.1;
    question.level = 0.90;
    outcome.effect = domain::repairEffect(question);
    outcome.truth = 100.0 * (left - 1.0);
    outcome.before = static_cast<int>(question.before.size());
    return outcome;
}

struct RepairStudy {
    double covered = 0.0; // share of seasons whose interval holds the truth
    double lean = 0.0;    // mean of what is said less the truth, percent
    double seen = 0.0;    // share told apart from no effect, in the right direction
    double wrong = 0.0;   // share said to burn more than before
    double before = 0.0;  // cooks compared
};

inline RepairStudy studyRepairs(RepairPlan plan, int seasons)
{
    RepairStudy study;
    for (int i = 0; i < seasons; ++i) {
        plan.season.seed = 9000U + static_cast<std::uint64_t>(i);
        const RepairOutcome o = repairedSeason(plan);
        const auto &e = o.effect;
        study.covered += (e.lower <= o.truth && o.truth <= e.upper ? 1.0 : 0.0) / seasons;
        study.lean += (e.percent - o.truth) / seasons;
        study.seen += (e.upper < 0.0 ? 1.0 : 0.0) / seasons;
        study.wrong += (e.lower > 0.0 ? 1.0 : 0.0) / seasons;
        study.before += double(o.before) / seasons;
    }
    return study;
}

} // namespace rickyard::test
