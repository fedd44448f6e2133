#include "models/domain/plan/drying_ahead.h"

#include "models/domain/weather/air_course.h"
#include "models/domain/wood/supplier_record.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

Spread readyFrom(const SeasoningForecast &forecast, qint64 begin)
{
    std::vector<std::pair<double, double>> quantiles;
    const double now = forecast.chanceOn(begin);
    if (now > 0)
        quantiles.emplace_back(now, 0.0);
    for (const SeasoningPoint &point : forecast.curve) {
        const double before = quantiles.empty() ? 0.0 : quantiles.back().first;
        if (point.day > begin && point.chanceDry > before)
            quantiles.emplace_back(point.chanceDry, static_cast<double>(point.day - begin));
    }
    return Spread::quantiles(quantiles);
}

} // namespace

Spread readyDays(const SeasoningForecast &forecast)
{
    return readyFrom(forecast, forecast.today);
}

const Spread &DryingAhead::daysOf(RecordId species, Moisture moisture, int arrival)
{
    const auto [found, fresh] = m_known.try_emplace({species, moisture.base(), arrival});
    if (!fresh)
        return found->second;
    const qint64 today = dayNumber(m_now);
    if (!m_air)
        m_air = std::make_unique<SeasoningAir>(AirCourse(m_books), today,
                                               today + kSeasoningHorizonDays);
    Lot load;
    load.species = species;
    load.promisedMoisture = moisture;
    load.cover = Cover::TopCover;
    SeasoningPrior prior = seasoningPrior(m_books, load);
    prior.startSd = kDefaultWetScatter;
    const qint64 came = std::min(today + std::max(arrival, 0), m_air->last());
    found->second =
        readyFrom(forecastSeasoning(prior, came, {}, *m_air, came, m_air->last()), came);
    return found->second;
}

} // namespace rickyard::domain
