// How often the diagnosis ranks the planted cause first, over invented seasons in real weather.
// Usage: study_diagnosis [seasons] [scatter] [cooks since]. The figures of
// docs/method-fuel-watch.md come from here.
#include "tests/domain/planted_season.h"
#include "tests/domain/real_weather.h"

#include <cstdio>
#include <cstdlib>

using namespace rickyard;
using namespace rickyard::test;
using domain::CauseKind;

namespace {

constexpr std::array kNames{"pit",  "lot",         "wind", "preheat", "doors",
                            "gaps", "thermometer", "wood", "chance"};

void study(PlantedPlan plan, int seasons)
{
    std::array<int, kNames.size()> first{};
    int right = 0;
    int flagged = 0;
    int rightOfFlagged = 0;
    int apart = 0;
    double sure = 0.0;
    for (int i = 0; i < seasons; ++i) {
        // Other seasons than those with which the method was tried out (from 5000).
        plan.seed = 20000U + static_cast<std::uint64_t>(i);
        const auto o = diagnosedSeason(plan);
        const bool hit = o.right(plan.cause);
        right += hit ? 1 : 0;
        flagged += o.flagged ? 1 : 0;
        rightOfFlagged += hit && o.flagged ? 1 : 0;
        ++first[static_cast<std::size_t>(o.diagnosis.causes.first().kind)];
        apart += o.diagnosis.toldApart ? 1 : 0;
        sure += o.diagnosis.causes.first().probability;
    }
    std::printf("%-12s first %5.1f %%  of the flagged %5.1f %% (%d)  told apart %3.0f %%  sure "
                "%.2f |",
                kNames[static_cast<std::size_t>(plan.cause)], 100.0 * right / seasons,
                flagged ? 100.0 * rightOfFlagged / flagged : 0.0, flagged, 100.0 * apart / seasons,
                sure / seasons);
    for (std::size_t k = 0; k < first.size(); ++k)
        if (first[k] > 0)
            std::printf(" %s %d", kNames[k], first[k]);
    std::printf("\n");
    std::fflush(stdout);
}

} // namespace

int main(int argc, char **argv)
{
    const int seasons = argc > 1 ? std::atoi(argv[1]) : 300;
    PlantedPlan plan;
    if (argc > 2)
        plan.scatter = std::atof(argv[2]);
    if (argc > 3)
        plan.after = std::atoi(argv[3]);
    const auto year = realWeather();
    if (seasons < 1 || year.empty()) {
        std::fprintf(
            stderr,
            "usage: study_diagnosis [seasons] [scatter] [cooks since], with tests/data there\n");
        return 2;
    }
    plan.year = &year;
    std::printf("%d seasons each, scatter %.0f %%, %d cooks a pit before and %d since\n", seasons,
                100.0 * plan.scatter, plan.clean, plan.after);
    for (int k = 0; k < static_cast<int>(kNames.size()); ++k) {
        plan.cause = static_cast<CauseKind>(k);
        study(plan, seasons);
    }
    std::printf("a pit that lost only half its shelter:\n");
    plan.cause = CauseKind::WindShelter;
    plan.shelter = 0.55;
    study(plan, seasons);
    return 0;
}
