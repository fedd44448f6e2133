// Made-up weather of an inland place in the south of the central United States, hour by hour.
#pragma once

#include "app/demo/dice.h"
#include "models/domain/records/weather.h"

#include <QVector>

namespace rickyard::app::demo {

// Hours in a row without gaps, oldest first.
class Air
{
public:
    // Season and day as cosines, what is left as first-order autoregressive noise; wind strongest
    // in the afternoon; rain in spells. Figures are plausible, not a station's.
    Air(Dice dice, domain::Instant from, domain::Instant to);

    [[nodiscard]] double celsiusAt(domain::Instant t) const;
    [[nodiscard]] double windAt(domain::Instant t) const; // m/s
    [[nodiscard]] bool rainAt(domain::Instant t) const;
    [[nodiscard]] QVector<domain::Weather> records(const QString &place) const;

    // The seasonal mean alone, for days that have not come yet.
    static double usualCelsius(domain::Instant t);

private:
    struct Hour {
        double celsius = 0;
        double dewPoint = 0;
        double wind = 0;
        double gust = 0;
        double from = 0;
        double rain = 0; // mm
        double pascals = 0;
    };
    [[nodiscard]] const Hour &hourOf(domain::Instant t) const;

    domain::Instant m_start;
    QVector<Hour> m_hours;
};

} // namespace rickyard::app::demo
