// Seasons replayed: the advice beside the rule of thumb. Usage: study_reorder [seasons] [paths].
// Prints the table of docs/method-reorder.md. Not a test: it takes minutes at the default size.
#include "tests/domain/reorder_season.h"

#include <cstdio>
#include <cstdlib>

using namespace rickyard::test;

namespace {

void line(const char *name, const ReplayResult &r)
{
    const double error = std::sqrt(r.share() * (1 - r.share()) / r.events);
    std::printf("%-44s %5.2f %% (%.2f) %8.2f %8.1f %8.2f\n", name, 100 * r.share(), 100 * error,
                r.meanStock / kCordPounds, r.orders, r.ordered / kCordPounds);
    std::fflush(stdout);
}

void rule(const char *why, int seasons, bool irregular, const std::vector<DayWeather> &days,
          double cords, double share)
{
    const double threshold = thresholdFor(seasons, irregular, days, cords, share);
    char name[96];
    std::snprintf(name, sizeof name, "%.2f cord when %.2f are left, %s", cords, threshold, why);
    line(name, replayAll(seasons, irregular, days, ruleOfThumb(threshold, cords)));
}

void study(int seasons, int paths, bool irregular, const std::vector<DayWeather> &days)
{
    std::printf("%d seasons, events %s\n%-44s %15s %8s %8s %8s\n", seasons,
                irregular ? "at irregular gaps" : "every second Saturday", "", "short (error)",
                "stock", "orders/y", "each");
    line("a cord when half a cord is left",
         replayAll(seasons, irregular, days, ruleOfThumb(0.5, 1.0)));
    for (const double accepted : {0.05, 0.02}) {
        if (irregular && accepted < 0.05)
            break;
        AdviceSettings settings;
        settings.accepted = accepted;
        settings.paths = paths;
        char name[96];
        const auto ours = replayAll(seasons, irregular, days, advice(settings));
        std::snprintf(name, sizeof name, "advice, accepted %.0f %%", 100 * accepted);
        line(name, ours);
        rule("for what was accepted", seasons, irregular, days, 1.0, accepted);
        rule("for the same share", seasons, irregular, days, 1.0, ours.share());
        rule("loads as ours, same share", seasons, irregular, days, ours.ordered / kCordPounds,
             ours.share());
    }
    if (irregular)
        return;
    AdviceSettings whole;
    whole.unitCords = 1.0;
    whole.paths = paths;
    const auto ours = replayAll(seasons, irregular, days, advice(whole));
    line("advice in whole cords, accepted 5 %", ours);
    rule("for the same share", seasons, irregular, days, 1.0, ours.share());
}

} // namespace

int main(int argc, char **argv)
{
    const int seasons = argc > 1 ? std::atoi(argv[1]) : 200;
    const int paths = argc > 2 ? std::atoi(argv[2]) : 1000;
    const auto days = newarkDays();
    if (seasons < 1 || paths < 100 || days.empty()) {
        std::fprintf(stderr, "usage: study_reorder [seasons] [paths of 100 or more]\n");
        return 2;
    }
    const auto season = replaySeason(1, false, days);
    double least = 1e9;
    double most = 0;
    double sum = 0;
    for (const auto &cook : season.cooks) {
        least = std::min(least, cook.need);
        most = std::max(most, cook.need);
        sum += cook.need;
    }
    std::printf("a cook takes %.0f to %.0f seasoned pounds, a year %.1f cords\n", least, most,
                sum / 2 / kCordPounds);
    study(seasons, paths, false, days);
    study(seasons, paths, true, days);
    return 0;
}
