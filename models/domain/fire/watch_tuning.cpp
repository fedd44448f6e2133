#include "models/domain/fire/watch_tuning.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rickyard::domain {

double foretold(const QVector<WatchCook> &cooks, const WatchSettings &settings)
{
    FuelWatch watch(settings);
    double sum = 0.0;
    for (const WatchCook &cook : cooks) {
        const WatchVerdict v = watch.add(cook);
        if (!v.leftOut.isEmpty())
            continue;
        const double variance = std::log1p(v.forecast.relativeSd * v.forecast.relativeSd);
        const double off = std::log(1.0 + v.excess) + 0.5 * variance;
        const double t = std::clamp(off / std::sqrt(variance), -5.0, 5.0);
        const double nu = v.forecast.dof;
        sum += std::lgamma((nu + 1.0) / 2.0) - std::lgamma(nu / 2.0) -
               0.5 * std::log(nu * std::numbers::pi * variance) -
               (nu + 1.0) / 2.0 * std::log1p(t * t / nu);
    }
    return sum;
}

WatchSettings tunedSettings(const QVector<WatchCook> &cooks, const WatchSettings &settings)
{
    if (cooks.size() < kCooksToTune)
        return settings;
    WatchSettings best = settings;
    double reached = foretold(cooks, settings) + kGainToTune;
    for (const double pit : {0.5, 1.0, 2.0}) {
        for (const double crew : {0.5, 1.0, 2.0}) {
            WatchSettings tried = settings;
            tried.pitWhole *= pit;
            tried.pitTerm *= pit;
            tried.crewTerm *= crew;
            const double sum = foretold(cooks, tried);
            if (sum > reached) {
                reached = sum;
                best = tried;
            }
        }
    }
    return best;
}

} // namespace rickyard::domain
