// The larger study of the watch, beside the oracle and the rule of thumb, on invented seasons in
// real hourly weather, or in invented weather.
// Usage: study_watch [seasons] [pits] [real|invented]. Prints a table; the figures of
// docs/method-fuel-watch.md come from here. Not a test: it takes minutes at the default size.
#include "tests/domain/real_weather.h"
#include "tests/domain/watch_season.h"

#include <cstdio>
#include <cstdlib>
#include <cstring>

using namespace rickyard;
using namespace rickyard::test;

namespace {

template <class Replay>
void line(const char *name, const SeasonPlan &plan, int seasons, Replay replay)
{
    const StudyResult clean = study(plan, seasons, 1.0, replay);
    const StudyResult more10 = study(plan, seasons, 1.10, replay);
    const StudyResult more15 = study(plan, seasons, 1.15, replay);
    std::printf("%-8s %4.0f %% %8.0f (%4d) %9.0f %8.1f %% %9.0f %8.1f %% %8.1f\n", name,
                100.0 * plan.scatter, clean.cooksPerFalseAlarm, clean.falseAlarms,
                more15.medianToCatch, 100.0 * more15.missed, more10.medianToCatch,
                100.0 * more10.missed, more15.meanPercent);
    std::fflush(stdout);
}

} // namespace

int main(int argc, char **argv)
{
    const int seasons = argc > 1 ? std::atoi(argv[1]) : 400;
    SeasonPlan plan;
    plan.pits = argc > 2 ? std::atoi(argv[2]) : 3;
    const bool invented = argc > 3 && std::strcmp(argv[3], "invented") == 0;
    if (seasons < 1 || plan.pits < 1) {
        std::fprintf(stderr, "usage: study_watch [seasons] [pits] [real|invented]\n");
        return 2;
    }
    const std::vector<WeatherHour> year = invented ? std::vector<WeatherHour>() : realWeather();
    if (!invented && year.empty()) {
        std::fprintf(stderr, "tests/data/weather/newark-2013-hours.csv cannot be read\n");
        return 1;
    }
    plan.year = invented ? nullptr : &year;
    std::printf("%d seasons in %s weather, %d pits, %d cooks each, fault after %d clean cooks\n",
                seasons, invented ? "invented" : "real", plan.pits, plan.cooksEach, plan.clean);
    std::printf("%-8s %6s %15s %9s %10s %9s %10s %8s\n", "method", "scatter", "cooks/false (n)",
                "+15% med", "missed", "+10% med", "missed", "said %");
    for (const double scatter : {0.08, 0.12}) {
        plan.scatter = scatter;
        line("oracle", plan, seasons, [](const SeasonPlan &p) { return oracleSeason(p, 3.502); });
        line("watch", plan, seasons,
             [](const SeasonPlan &p) { return watchSeason(p, domain::WatchSettings()); });
        line("thumb", plan, seasons, thumbSeason);
    }
    return 0;
}
