// What one cook burned, how long it ran and against what difference of temperature: everything of
// CookFuel that does not need the watch.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/fire/pit_course.h"
#include "models/domain/weather/series.h"

#include <QHash>

namespace rickyard::domain {

// Sorts the books by cook once, then reads any number of cooks. Books and series must outlive it.
class CookReader
{
public:
    // Entries after `now` are not looked at; a fire not out by then counts as burning.
    CookReader(const Books &books, const WeatherSeries &weather, Instant now);

    // Degree-hours are the integral of pit minus outside from lit to fire out (or now), in
    // kelvin-hours. The outside comes from the weather series where that covers three quarters of
    // the cook, else from what was typed for the cook, else it is missing. Wood comes from the
    // ledger's entries of kind burned that name the cook. The heat balance goes over the cook in
    // stretches of an hour, each with its own pit, air, wind and rain.
    [[nodiscard]] CookFuel read(const Cook &cook) const;

private:
    void readWood(CookFuel &fuel) const;
    void readTwins(CookFuel &fuel) const;
    void readOutside(CookFuel &fuel, const Cook &cook, Instant end) const;
    void readHeat(CookFuel &fuel, const Cook &cook, Instant end) const;
    void readBalance(CookFuel &fuel, const Cook &cook, Instant end, const PitCourse &course) const;

    const Books &m_books;
    const WeatherSeries &m_weather;
    Instant m_now;
    QHash<RecordId, QVector<const Movement *>> m_burned;
    QHash<RecordId, QVector<const Trace *>> m_traces;
    QHash<RecordId, QVector<const CookTemperature *>> m_typed;
    QHash<RecordId, QVector<const Feed *>> m_feeds;
    QHash<RecordId, double> m_centsPerDry; // by lot: cents per milligram received
};

// One cook alone. For many, keep a CookReader.
CookFuel cookSummary(const Books &books, const WeatherSeries &weather, const Cook &cook,
                     Instant now);

} // namespace rickyard::domain
