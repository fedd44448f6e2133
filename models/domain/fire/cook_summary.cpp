#include "models/domain/fire/cook_summary.h"

#include "models/domain/fire/cook_doubts.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/lot_price.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

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
    for (const Feed &f : books.feeds)
        if (f.time <= now)
            m_feeds[f.cook].append(&f);
    m_centsPerDry = centsPerDryMass(books);
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
    readTwins(fuel);
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
    double assumedMass = 0;
    double dampMass = 0; // of unknown moisture
    double pricedMass = 0;
    for (const Movement *m : m_burned.value(fuel.cook)) {
        const Mass dry = -m->dryMass; // burned wood leaves the ledger
        const Lot lot = m_books.lots.value(m->lot);
        const Moisture moisture = m->moisture.value_or(kAssumedMoisture);
        fuel.dryMass += dry;
        fuel.netHeat += netHeatOf(dry, moisture, analysisOf(m_books.species.value(lot.species)));
        waterWeighted += moisture.toDouble() * dry.toDouble();
        fuel.lots[m->lot] += dry.toDouble();
        dampMass += m->moisture ? 0.0 : dry.toDouble();
        assumed += m->assumed ? 1 : 0;
        assumedMass += m->assumed ? dry.toDouble() : 0.0;
        if (const auto price = m_centsPerDry.constFind(m->lot); price != m_centsPerDry.cend()) {
            fuel.cost += *price * dry.toDouble();
            pricedMass += dry.toDouble();
        }
    }
    if (fuel.dryMass <= Mass()) {
        fuel.missing << QStringLiteral("No wood is logged for it: enter its feeds.");
        return;
    }
    const double whole = fuel.dryMass.toDouble();
    for (double &share : fuel.lots)
        share /= whole;
    fuel.priced = pricedMass / whole;
    addDoubt(fuel.doubt, kUnknownMoisture * dampMass / whole);
    addDoubt(fuel.doubt, kAssumedWeight * assumedMass / whole);
    if (dampMass <= 0)
        fuel.meanMoisture = Moisture::rounded(waterWeighted / whole);
    else
        fuel.assumptions << QStringLiteral("The wood is taken to have been at 20 % dry basis where "
                                           "its moisture is not known.");
    if (assumed > 0)
        fuel.assumptions << QString(QString::number(assumed) +
                                    QStringLiteral(" of its feeds rest on an assumed weight or "
                                                   "moisture."));
}

void CookReader::readTwins(CookFuel &fuel) const
{
    const QVector<const Feed *> feeds = m_feeds.value(fuel.cook);
    const int twins = twinFeeds(feeds);
    if (twins == 0)
        return;
    addDoubt(fuel.doubt, 0.5 * twins / static_cast<double>(feeds.size()));
    fuel.assumptions << QString(QString::number(twins) +
                                QStringLiteral(" of its feeds came within seconds of one alike "
                                               "and may be counted twice."));
}

void CookReader::readOutside(CookFuel &fuel, const Cook &cook, Instant end) const
{
    const WeatherMean weather = m_weather.mean(cook.lit, end);
    fuel.meanWind = weather.wind ? weather.wind : cook.wind;
    if (!fuel.meanWind) {
        fuel.assumptions << QStringLiteral("The wind is not known and is taken as usual.");
        addDoubt(fuel.doubt, kUnknownWind);
    } else if (!weather.wind) {
        addDoubt(fuel.doubt, kTypedWind);
    }
    if (weather.temperature && weather.covered >= kWeatherCovers) {
        fuel.meanOutside = weather.temperature;
        if (weather.covered < kNearlyWhole)
            fuel.assumptions << QString(weather.basis +
                                        QStringLiteral(" The rest is taken to have been alike."));
        addDoubt(fuel.doubt, kTypedOutside * (1.0 - weather.covered));
    } else if (cook.outside) {
        fuel.meanOutside = cook.outside;
        fuel.assumptions << QStringLiteral("The outside temperature typed for the cook is taken "
                                           "for all of it.");
        addDoubt(fuel.doubt, kTypedOutside);
    } else {
        fuel.missing << QString(weather.basis +
                                QStringLiteral(" Import weather or type the outside "
                                               "temperature of the cook."));
    }
}

void CookReader::readHeat(CookFuel &fuel, const Cook &cook, Instant end) const
{
    const PitCourse course = pitCourse(cook, end, m_traces.value(cook.id), m_typed.value(cook.id));
    fuel.meanPit = course.mean;
    fuel.assumptions << course.assumptions;
    if (!fuel.meanPit)
        fuel.missing << QStringLiteral("The pit's temperature is not known: type readings, import "
                                       "the probe's log or set a target.");
    else
        addDoubt(fuel.doubt, kUnmeasuredPit * (1.0 - course.covered));
    readOutside(fuel, cook, end);
    if (!fuel.meanPit || !fuel.meanOutside)
        return;
    fuel.degreeHours = (celsius(*fuel.meanPit) - celsius(*fuel.meanOutside)) * hours(fuel.length);
    if (*fuel.degreeHours <= 0)
        fuel.missing << QStringLiteral("The pit was no warmer than the air: check both "
                                       "temperatures.");
    readBalance(fuel, cook, end, course);
}

void CookReader::readBalance(CookFuel &fuel, const Cook &cook, Instant end,
                             const PitCourse &course) const
{
    HeatCook heat;
    heat.start = cook.start;
    heat.foodMass = cook.foodMass ? kilograms(*cook.foodMass) : 0.0;
    heat.target = celsius(cook.target.value_or(*fuel.meanPit));
    const auto outsideAt = [&](Instant t) {
        return celsius(m_weather.temperatureAt(t).value_or(*fuel.meanOutside));
    };
    const double meanWind = fuel.meanWind.value_or(kUsualWind).toDouble() / 1000.0;
    heat.outsideAtStart = outsideAt(cook.lit);
    bool brokeOff = false;
    constexpr qint64 step = 3600;
    for (qint64 t = cook.lit.seconds(); t < end.seconds(); t += step) {
        const qint64 next = std::min(t + step, end.seconds());
        const Instant middle = Instant::ofSeconds(t + (next - t) / 2);
        const auto wind = m_weather.windAt(middle);
        HeatStretch s;
        s.seconds = static_cast<double>(next - t);
        s.pit = course.celsiusOver(t, next);
        s.outside = outsideAt(middle);
        s.wind = wind ? wind->toDouble() / 1000.0 : meanWind;
        s.rain = m_weather.rainOver(Instant::ofSeconds(t), Instant::ofSeconds(next));
        const bool between = t >= cook.lit.seconds() + 2 * step && next + 2 * step <= end.seconds();
        brokeOff =
            brokeOff || (between && s.pit - s.outside < kBrokenOff * (heat.target - s.outside));
        heat.course.push_back(s);
    }
    fuel.columns = heatColumns(heatShape(m_books.pits.value(fuel.pit)), heat);
    if (!brokeOff)
        return;
    addDoubt(fuel.doubt, kInterrupted);
    fuel.assumptions << QStringLiteral("The pit went cold in between: the cook was interrupted, "
                                       "so it says less than others.");
}

CookFuel cookSummary(const Books &books, const WeatherSeries &weather, const Cook &cook,
                     Instant now)
{
    return CookReader(books, weather, now).read(cook);
}

} // namespace rickyard::domain
