// The air that wood dries in, day by day: what the yard's own records say, and for days without
// records (the future, and gaps) the mean of the records and normals of that time of the year.
//
// Days are whole days UTC, counted from 1970-01-01. A day counts as observed with at least eight
// hours of temperature and humidity; hours of several stations are averaged.
#pragma once

#include "models/domain/records/books.h"

#include <vector>

namespace rickyard::domain {

// The day of a moment, counted from 1970-01-01 UTC.
qint64 dayNumber(Instant time);

struct AirDay {
    double emc = 0;   // per cent of dry mass, mean of the hours' equilibrium moistures
    double speed = 0; // of drying, relative to air at 70 °F: see dryingSpeed
    double rain = 0;  // millimetres
};

// Drying time of a red-oak board in moving air, in days: tau = L^1.52 / (a + b p), L the thickness
// in inches, a = 0.0575, b = 0.00142, p the saturation pressure in mmHg, 10^(8.07131 - 1730.63 /
// (233.426 + T)). After Simpson and Tschernitz 1980, as a university course prints it. A stack in a
// yard takes several times as long: here it gives shape only.
constexpr double kThicknessPower = 1.52;
double boardDryingTime(double thicknessInches, double celsius);
// Relative drying speed by temperature: the board's time at 70 °F over its time at this one.
double dryingSpeed(double celsius);

class AirCourse
{
public:
    explicit AirCourse(const Books &books);
    // Constant air on every day, for checks and for a yard without any weather.
    static AirCourse constant(AirDay air);

    [[nodiscard]] AirDay dayAt(qint64 day) const;
    [[nodiscard]] bool observed(qint64 day) const;
    // The mean of that time of the year: days within 15 of the date in any year.
    [[nodiscard]] AirDay usual(qint64 day) const;
    // Without any weather the air of an invented mild year is used (12.5 %, 60 °F, 2.5 mm a day).
    [[nodiscard]] bool assumed() const { return m_assumed; }
    [[nodiscard]] int observedDays() const { return m_observedDays; }
    // Days of the year, of 366, that have records or normals of their own within 15 days.
    [[nodiscard]] int yearCovered() const { return m_yearCovered; }

private:
    AirCourse() = default;
    struct Hours;
    void settle(const Hours &observations, const Hours &normals);
    void fillYear(const Hours &observations, const Hours &normals);

    std::vector<AirDay> m_days;
    std::vector<char> m_known;
    qint64 m_first = 0; // day of m_days[0]
    std::vector<AirDay> m_year = std::vector<AirDay>(366);
    int m_observedDays = 0;
    int m_yearCovered = 0;
    bool m_assumed = false;
};

} // namespace rickyard::domain
