#include "models/domain/fire/preheat.h"

#include "models/domain/statistics/distributions.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kPriorCount = 2;
constexpr double kPriorFreedom = 4;
constexpr double kPriorScatter = 0.35;
constexpr double kColdMinutes = 60; // for the usual climb
constexpr double kUsualClimb = 110; // kelvins: 250 °F from 52 °F
constexpr double kWarmShare = 0.5;
constexpr Duration kLongest = Duration::ofBase(6 * 3600);
constexpr double kLeastClimb = 20;

// Logarithms of minutes a kelvin.
QVector<double> observed(const Books &books, const WeatherSeries &weather, RecordId pit,
                         StartKind start, Instant now)
{
    QVector<double> values;
    for (const Cook &cook : books.cooks) {
        if (cook.pit != pit || cook.start != start || !cook.target || !cook.atTemperature ||
            *cook.atTemperature > now || *cook.atTemperature <= cook.lit ||
            *cook.atTemperature - cook.lit > kLongest)
            continue;
        const auto outside = cook.outside ? cook.outside : weather.temperatureAt(cook.lit);
        if (!outside)
            continue;
        const double climb = celsius(*cook.target) - celsius(*outside);
        if (climb < kLeastClimb)
            continue;
        values << std::log(hours(*cook.atTemperature - cook.lit) * 60 / climb);
    }
    return values;
}

} // namespace

Preheat preheat(const Books &books, const WeatherSeries &weather, RecordId pit, StartKind start,
                Temperature target, Temperature outside, Instant now)
{
    const QVector<double> values = observed(books, weather, pit, start, now);
    const auto n = static_cast<double>(values.size());
    double sum = 0;
    for (const double v : values)
        sum += v;
    const double mean = n > 0 ? sum / n : 0;
    double squares = 0;
    for (const double v : values)
        squares += (v - mean) * (v - mean);
    const double prior =
        std::log(kColdMinutes / kUsualClimb * (start == StartKind::Warm ? kWarmShare : 1.0));
    const double count = kPriorCount + n;
    const double freedom = kPriorFreedom + n;
    const double middle = (kPriorCount * prior + n * mean) / count;
    const double scatter = (kPriorFreedom * kPriorScatter * kPriorScatter + squares +
                            kPriorCount * n / count * (mean - prior) * (mean - prior)) /
                           freedom;
    const double spread = std::sqrt(scatter * (1 + 1 / count));
    const auto quantile = statistics::quantile(statistics::StudentT{freedom}, 0.9);
    const double reach = quantile.ok() ? quantile.value() * spread : spread;
    const double climb = std::max(celsius(target) - celsius(outside), kLeastClimb);
    const auto time = [&](double log) { return Duration::rounded(60 * climb * std::exp(log)); };
    return {time(middle), time(middle - reach), time(middle + reach),
            static_cast<int>(values.size())};
}

Instant lightBy(const Preheat &preheat, Instant atTemperature)
{
    return atTemperature - preheat.late;
}

} // namespace rickyard::domain
