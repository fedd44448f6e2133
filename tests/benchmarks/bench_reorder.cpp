// The wish: 10,000 paths x 180 days x 30 planned cooks x 20 lots at least twice as fast as the same
// simulation in NumPy (reorder_numpy.py beside this file, run from here, turn about in one go), and
// time linear in each size. Usage: bench_reorder [PYTHON]. Without NumPy only our own times come.
#include "models/domain/plan/stock_paths.h"

#include <algorithm>

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>

using namespace rickyard::domain;

namespace {

struct Size {
    int paths = 10000;
    int days = 180;
    int cooks = 30;
    int lots = 20;
};

// Invented: pounds of wood at 20 %; a cook takes 150, the lots hold a little more than all cooks.
StockPlan planOf(const Size &size)
{
    StockPlan plan;
    plan.days = size.days;
    plan.events = size.cooks;
    for (int i = 0; i < size.cooks; ++i) {
        StockNeed need;
        need.day = i * (size.days - 5) / size.cooks + 3;
        need.event = i;
        need.heat = Spread::lognormal(150, 125, 180);
        need.key = i + 1;
        plan.needs.push_back(need);
    }
    for (int i = 0; i < size.lots; ++i) {
        StockLot lot;
        const double mean = 165.0 * size.cooks / size.lots;
        lot.heat = Spread::normal(mean, 0.1 * mean);
        const double ready = double(i) * size.days / size.lots;
        if (i % 2 != 0)
            lot.readyDay = Spread::quantiles({{0.0, ready - 15}, {1.0, ready + 15}});
        lot.key = i + 1;
        plan.lots.push_back(lot);
    }
    StockOffer offer;
    offer.share = Spread::quantiles({{0.0, 0.8}, {0.05, 0.9}, {0.5, 0.97}, {1.0, 1.0}});
    offer.leadDays = Spread::sample({{7, 3}, {9, 1}, {14, 1}, {28, 1}});
    offer.never = 0.02;
    plan.offers.push_back(offer);
    plan.unplanned = {0.04, Spread::lognormal(40, 40.0 / 1.5, 60)};
    return plan;
}

struct Timing {
    double whole = 0;  // draw and run with the fan
    double whatIf = 0; // another run on the same draw, without it
    double any = 0;
    double worst = 0;
    double dayLater = 0; // any short, when ordered a day later
};

// Processor time, here and there: both use one thread, and the machine may have other work.
double secondsSince(std::clock_t begin)
{
    return double(std::clock() - begin) / CLOCKS_PER_SEC;
}

Timing once(const Size &size, quint64 seed)
{
    Timing timing;
    WhatIf whatIf;
    whatIf.orders.push_back({0, 10, 300.0, 0.0, 0});
    whatIf.course = true;
    auto begin = std::clock();
    const auto drawn = StockPaths::draw(planOf(size), seed, size.paths);
    const StockOutcome outcome = drawn.value().run(whatIf);
    timing.whole = secondsSince(begin);
    timing.any = outcome.any.chance;
    timing.worst = outcome.worstChance();
    whatIf.course = false;
    whatIf.orders[0].day = 11;
    begin = std::clock();
    timing.dayLater = drawn.value().run(whatIf).any.chance;
    timing.whatIf = secondsSince(begin);
    return timing;
}

Timing medianOf(const Size &size, int repeats)
{
    std::vector<Timing> all;
    for (int i = 0; i < repeats; ++i)
        all.push_back(once(size, static_cast<quint64>(i) + 1));
    Timing middle = all.front();
    const auto median = [&](double Timing::*member) {
        std::vector<double> values;
        for (const Timing &t : all)
            values.push_back(t.*member);
        std::sort(values.begin(), values.end());
        return values[values.size() / 2];
    };
    middle.whole = median(&Timing::whole);
    middle.whatIf = median(&Timing::whatIf);
    return middle;
}

// Seconds of one simulation in NumPy; below 0 when it did not run.
double numpy(const std::string &python, const Size &size)
{
    const std::string script = RICKYARD_SOURCE_DIR "/tests/benchmarks/reorder_numpy.py";
    const std::string command = python + " '" + script + "' " + std::to_string(size.paths) + ' ' +
                                std::to_string(size.days) + ' ' + std::to_string(size.cooks) + ' ' +
                                std::to_string(size.lots) + " 5";
    FILE *pipe = popen(command.c_str(), "r");
    if (pipe == nullptr)
        return -1;
    double seconds = -1;
    double any = 0;
    double worst = 0;
    if (std::fscanf(pipe, "%lf %lf %lf", &seconds, &any, &worst) == 3)
        std::printf("  NumPy     %7.1f ms   any short %5.1f %%   worst cook %5.1f %%\n",
                    1e3 * seconds, 100 * any, 100 * worst);
    else
        seconds = -1;
    pclose(pipe);
    return seconds;
}

void against(const std::string &python)
{
    const Size size;
    std::printf("%d paths x %d days x %d cooks x %d lots, one order under consideration, fan\n",
                size.paths, size.days, size.cooks, size.lots);
    std::vector<double> ratios;
    for (int turn = 0; turn < 3; ++turn) {
        const Timing ours = medianOf(size, 5);
        std::printf("  Rickyard  %7.1f ms   any short %5.1f %%   worst cook %5.1f %%   what-if on "
                    "the same draw %.1f ms\n",
                    1e3 * ours.whole, 100 * ours.any, 100 * ours.worst, 1e3 * ours.whatIf);
        const double theirs = numpy(python, size);
        if (theirs <= 0) {
            std::printf("  NumPy did not run with %s; no ratio.\n", python.c_str());
            return;
        }
        ratios.push_back(theirs / ours.whole);
    }
    std::sort(ratios.begin(), ratios.end());
    std::printf("  NumPy takes %.1f times as long (middle of three)\n", ratios[1]);
}

void sizes(const char *name, int Size::*member)
{
    std::printf("%-6s", name);
    double before = 0;
    for (const double factor : {0.5, 1.0, 2.0, 4.0}) {
        Size size;
        size.*member = static_cast<int>(size.*member * factor);
        const Timing t = medianOf(size, 5);
        std::printf("  %6d: %6.1f ms", size.*member, 1e3 * t.whole);
        if (before > 0)
            std::printf(" (x%.2f)", t.whole / before);
        before = t.whole;
    }
    std::printf("\n");
}

} // namespace

int main(int argc, char **argv)
{
    against(argc > 1 ? argv[1] : "python3");
    std::printf("each size at half, once, twice and four times\n");
    sizes("paths", &Size::paths);
    sizes("days", &Size::days);
    sizes("cooks", &Size::cooks);
    sizes("lots", &Size::lots);
    return 0;
}
