// The weather records of a yard as a time series that can be asked for any stretch.
//
// Rules: a moment has the value of the record nearest to it, if that is no more than 90 minutes
// away, else nothing (a gap stays a gap). Each quantity is looked up by itself, so a record without
// wind leaves no hole in the temperatures. Records of one instant (two stations) are averaged.
// Build it once for a computation: building sorts everything, asking is then a binary search.
#pragma once

#include "models/domain/records/books.h"

#include <optional>
#include <vector>

namespace rickyard::domain {

struct WeatherMean {
    std::optional<Temperature> temperature;
    std::optional<Speed> wind;
    double covered = 0; // fraction of the stretch with a record no more than 90 minutes away
    QString basis;      // in words
};

class WeatherSeries
{
public:
    explicit WeatherSeries(const Books &books);
    // Millimetres that fell in the stretch: each record tells of the hour before it, and counts
    // with the part of that hour that lies in the stretch. Observations only; where none is, none
    // fell.
    [[nodiscard]] double rainOver(Instant from, Instant to) const;
    // Time-weighted. Observations only; gaps stay gaps.
    [[nodiscard]] WeatherMean mean(Instant from, Instant to) const;
    [[nodiscard]] std::optional<Temperature> temperatureAt(Instant t) const;
    [[nodiscard]] std::optional<Speed> windAt(Instant t) const;
    // What the yard's own records (or normals) say of this time of the year: records within 15 days
    // of the date in any year, between the same hours (of UTC: a clock change shifts them by one).
    [[nodiscard]] WeatherMean climatology(Instant from, Instant to) const;
    [[nodiscard]] bool isEmpty() const
    {
        return m_temperature.empty() && m_wind.empty() && !m_anyClimate;
    }

private:
    struct Point {
        qint64 time; // seconds since 1970
        double value;
    };
    using Course = std::vector<Point>; // by time, one point an instant

    // Sums of one quantity by hour of the day, running over the days of a leap year, so that
    // a window of days costs two look-ups.
    struct Climate {
        static constexpr int kDays = 366;
        struct Cell {
            double sum = 0;
            qint64 count = 0;
        };
        std::vector<Cell> running; // [hour][day + 1], day 0 stands for an empty sum
        Climate() : running(24 * (kDays + 1)) {}
        static std::size_t rowAt(int hour) { return static_cast<std::size_t>(hour) * (kDays + 1); }
        void add(int day, int hour, double value);
        void accumulate();
        [[nodiscard]] Cell window(int day, int hour) const;
    };
    struct ClimateMean {
        std::optional<double> value;
        double covered = 0;
        qint64 records = 0;
    };

    static void settle(Course &course);
    static std::optional<double> at(const Course &course, qint64 t);
    struct StretchMean {
        double mean = 0;
        double covered = 0;
    };
    static StretchMean stretchMean(const Course &course, qint64 from, qint64 to);
    static ClimateMean climateMean(const Climate &climate, qint64 from, qint64 to, bool anyHour);

    Course m_temperature; // thousandths of a degree Celsius
    Course m_wind;        // millimetres a second
    Course m_rain;        // millimetres in the hour before
    Climate m_temperatureClimate;
    Climate m_windClimate;
    bool m_anyClimate = false;
    bool m_anyNormal = false;
};

} // namespace rickyard::domain
