#include "models/domain/fire/cook_summary.h"

#include "models/domain/fire/pit_course.h"
#include "models/domain/wood/heat_value.h"

#include <algorithm>

namespace rickyard::domain
{

namespace
{

constexpr double kWeatherCovers = 0.75; // share of the cook that weather records must cover
constexpr double kNearlyWhole = 0.995;
// The moisture at which wood counts as dry stands in where none is known.
constexpr Moisture kAssumedMoisture = Moisture::ofBase(20000);

} // namespace

CookReader::CookReader(const Books &books, const WeatherSeries &weather, Instant now)
    : m_books(books), m_weather(weather), m_now(now)
{
    for (const Movement &m : books.movements)
        if (m.kind == MovementKind::Burned && m.cook && m.time <= now)
            m_burned[*m.cook].append(&m);
    for (const Trace &t : books.traces)
        m_traces[t.cook].append(&t);
    for (const CookTemperature &t : books.temperatures)
        if (t.time <= now)
            m_typed[t.cook].append(&t);
}

CookFuel CookReader::read(const Cook &cook) const
{
    CookFuel fuel;
    fuel.cook = cook.id;
    fuel.pit = cook.pit;
    fuel.lit = cook.lit;
    fuel.start = cook.start;
    fuel.finished = cook.fireOut && *cook.fireOut <= m_now;
    const Instant end = fuel.finished ? *cook.fireOut : m_now;
    fuel.length = end - cook.lit;
    readWood(fuel);
    if (fuel.length <= Duration())
        fuel.missing << QStringLiteral("The fire is out before it is lit: correct the times.");
    else
        readHeat(fuel, cook, end);
    if (!fuel.finished)
        fuel.missing << QStringLiteral("The fire is still burning.");
    return fuel;
}

void CookReader::readWood(CookFuel &fuel) const
{
    double waterWeighted = 0; // moisture times dry mass
    int assumed = 0;
    int noMoisture = 0;
    for (const Movement *m : m_burned.value(fuel.cook)) {
        const Mass dry = -m->dryMass; // burned wood leaves the ledger
        const Lot lot = m_books.lots.value(m->lot);
        const Moisture moisture = m->moisture.value_or(kAssumedMoisture);
        fuel.dryMass += dry;
        fuel.netHeat += netHeatOf(dry, moisture, analysisOf(m_books.species.value(lot.species)));
        waterWeighted += moisture.toDouble() * dry.toDouble();
        if (!fuel.lots.contains(m->lot))
            fuel.lots << m->lot;
        noMoisture += m->moisture ? 0 : 1;
        assumed += m->assumed ? 1 : 0;
    }
    if (fuel.dryMass <= Mass()) {
        fuel.missing << QStringLiteral("No wood is logged for it: enter its feeds.");
        return;
    }
    if (noMoisture == 0)
        fuel.meanMoisture = Moisture::rounded(waterWeighted / fuel.dryMass.toDouble());
    else
        fuel.assumptions << QStringLiteral("The wood is taken to have been at 20 % dry basis where "
                                           "its moisture is not known.");
    if (assumed > 0)
        fuel.assumptions << QString(QString::number(assumed) +
                                    QStringLiteral(" of its feeds rest on an assumed weight or "
                                                   "moisture."));
}

void CookReader::readHeat(CookFuel &fuel, const Cook &cook, Instant end) const
{
    const PitCourse course = pitCourse(cook, end, m_traces.value(cook.id), m_typed.value(cook.id));
    fuel.meanPit = course.mean;
    fuel.assumptions << course.assumptions;
    if (!fuel.meanPit)
        fuel.missing << QStringLiteral("The pit's temperature is not known: type readings, import "
                                       "the probe's log or set a target.");

    const WeatherMean weather = m_weather.mean(cook.lit, end);
    fuel.meanWind = weather.wind ? weather.wind : cook.wind;
    if (weather.temperature && weather.covered >= kWeatherCovers) {
        fuel.meanOutside = weather.temperature;
        if (weather.covered < kNearlyWhole)
            fuel.assumptions << QString(weather.basis +
                                        QStringLiteral(" The rest is taken to have been alike."));
    } else if (cook.outside) {
        fuel.meanOutside = cook.outside;
        fuel.assumptions << QStringLiteral("The outside temperature typed for the cook is taken "
                                           "for all of it.");
    } else {
        fuel.missing << QString(weather.basis +
                                QStringLiteral(" Import weather or type the outside "
                                               "temperature of the cook."));
    }
    if (fuel.meanPit && fuel.meanOutside)
        fuel.degreeHours =
            (celsius(*fuel.meanPit) - celsius(*fuel.meanOutside)) * hours(fuel.length);
    if (fuel.degreeHours && *fuel.degreeHours <= 0)
        fuel.missing << QStringLiteral("The pit was no warmer than the air: check both "
                                       "temperatures.");
}

CookFuel cookSummary(const Books &books, const WeatherSeries &weather, const Cook &cook,
                     Instant now)
{
    return CookReader(books, weather, now).read(cook);
}

} // namespace rickyard::domain
