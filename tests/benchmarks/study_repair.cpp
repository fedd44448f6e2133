// How good the before-and-after comparison of a repair is, on invented seasons in real weather.
// Usage: study_repair [seasons]. The figures of docs/method-fuel-watch.md come from here.
#include "tests/domain/real_weather.h"
#include "tests/domain/repaired_season.h"

#include <cstdio>
#include <cstdlib>

using namespace rickyard::test;

int main(int argc, char **argv)
{
    const int seasons = argc > 1 ? std::atoi(argv[1]) : 600;
    const auto year = realWeather();
    if (seasons < 1 || year.empty()) {
        std::fprintf(stderr, "usage: study_repair [seasons], with tests/data there\n");
        return 2;
    }
    std::printf("%d seasons each, 90 %% interval, 3 pits, scatter 8 %%\n", seasons);
    std::printf("%5s %5s %6s %9s %8s %7s %6s %6s %6s\n", "fault", "cure", "cooks", "before",
                "covered", "lean", "seen", "worse", "n");
    for (const bool fromClimb : {true, false})
        for (const double fault : {1.10, 1.15, 1.20})
            for (const double cure : {0.0, 0.5, 1.0})
                for (const int cooks : {6, 12}) {
                    RepairPlan plan;
                    plan.season.year = &year;
                    plan.season.cooksEach = 50;
                    plan.season.fault = fault;
                    plan.cure = cure;
                    plan.broken = cooks;
                    plan.after = cooks;
                    plan.fromClimb = fromClimb;
                    const RepairStudy s = studyRepairs(plan, seasons);
                    std::printf("%5.2f %5.1f %6d %9s %7.1f%% %+6.1f%% %5.0f%% %5.1f%% %6.1f\n",
                                fault, cure, cooks, fromClimb ? "the climb" : "the fault",
                                100.0 * s.covered, s.lean, 100.0 * s.seen, 100.0 * s.wrong,
                                s.before);
                }
    return 0;
}
