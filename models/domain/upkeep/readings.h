// Readings taken on upkeep visits against the limits of their task: thermometers in ice and in
// boiling water, the paper test of a gasket, the thickness of a plate, or any other figure. The
// words say what was read and against what; they never call a thing safe or in order.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/upkeep/local_time.h"

namespace rickyard::domain {

// The limits that hold for a task's readings in this yard, in its reading unit.
struct ReadingLimits {
    std::optional<double> low;
    std::optional<double> high;
    // Boiling point: limits are written for sea level and moved to the yard's height.
    std::optional<Temperature> boils; // water at the yard's height
    double moved = 0;                 // what the limits were moved by, in the reading unit
    bool heightKnown = false;
    QString basis; // in words; empty where nothing was worked out

    [[nodiscard]] bool any() const { return low || high; }
    [[nodiscard]] bool holds(double value) const
    {
        return (!low || value >= *low) && (!high || value <= *high);
    }
};
ReadingLimits readingLimits(const Books &books, const UpkeepTask &task);

struct JudgedPoint {
    RecordId reading = 0;
    int point = 1;
    double value = 0;
    bool failed = false;
};

struct ReadingVerdict {
    QVector<JudgedPoint> points; // by point; the last reading of each
    int missing = 0;             // points of the task without a reading
    bool failed = false;         // at least one lies outside the limits
    bool judged = false;         // there are limits and at least one reading
    QString words;   // "reads 209.1 °F, 2.4 °F above the 206.7 °F of boiling water here"
    QString finding; // text of a finding to propose; empty unless failed
};
// Of the readings of one visit, or any others of the task taken together.
ReadingVerdict judgeReadings(const Books &books, const UpkeepTask &task,
                             const QVector<CheckReading> &readings);
QVector<CheckReading> readingsOfVisit(const Books &books, RecordId visit);

// Every reading of a task with the limits of today, by time and point: for the chart.
struct ReadingPoint {
    RecordId reading = 0;
    Instant time;
    int point = 1;
    double value = 0;
    bool failed = false;
};
QVector<ReadingPoint> readingCourse(const Books &books, const UpkeepTask &task);

// How a plate wears: a straight line through the thinnest value of each day, by least squares.
constexpr double kWearLevel = 0.80; // of its interval
struct PlateWear {
    int values = 0; // days with a reading
    double latest = 0;
    std::optional<double> perYear; // lost, in the reading unit; from 3 values on
    std::optional<double> perYearLow;
    std::optional<double> perYearHigh;
    QDate limitDay;      // on which the line meets the lower limit; invalid: never, or unknown
    QDate limitDayEarly; // ends of the interval (Fieller); invalid: never, or unknown
    QDate limitDayLate;
    bool reached = false; // the latest value lies at or below it
    QString words;
};
PlateWear plateWear(const Books &books, const UpkeepTask &task, Instant now,
                    const LocalTime &local);

} // namespace rickyard::domain
