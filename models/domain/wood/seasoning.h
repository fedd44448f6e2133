// How a lot dries, and when it will be dry enough.
//
// Model: du/dt = -(u - E(t)) s(t) / tau, stepped day by day: u is the lot's mean moisture in per
// cent of dry mass, E the air's equilibrium moisture, s its drying speed (air_course.h), tau the
// lot's drying time at 70 °F. After each day's drying, rain wets what the cover lets it reach:
// u += (1 - exp(-w r)) (u_max - u), r in millimetres, w by cover. Each step is a weighted mean of
// u, E and u_max, so u neither crosses E from above nor passes the species' maximum.
//
// Given tau, u is linear in the moisture at arrival u0. So with a normal prior for u0 and normal
// errors of the readings everything but tau is solved in closed form, and tau is summed over a grid
// of its logarithm: the posterior is a mixture of normals.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/weather/air_course.h"

#include <QDate>

#include <optional>
#include <vector>

namespace rickyard::domain {

// What is believed of a lot before its readings. Per cents are of dry mass.
struct SeasoningPrior {
    double logTau = 0; // mean of ln(days)
    double logTauSd = 0.5;
    double start = 60; // moisture at arrival
    double startSd = 20;
    double most = 110;       // maximum moisture of the species
    double wetting = 0;      // w, per millimetre of rain
    QStringList assumptions; // in words
};
// tau: 105 days for a split of red oak 4 in thick, which takes green oak to 20 % in the nine to
// twelve months that extension services name; times (thickness / 4 in)^1.52 (the board formula's
// exponent), times a factor by species (air-drying day ranges for lumber, FPL Technical Note 233,
// from memory) and 1.2 in a shed (less wind; common practice, no source). Its scatter, 0.5 in the
// logarithm, is our own: splits, stacking and sites differ by a factor of 2.7 either way.
SeasoningPrior seasoningPrior(const Books &books, const Lot &lot);

// One session as the model sees it.
struct SeasoningReading {
    qint64 day = 0; // since 1970-01-01 UTC
    double percent = 0;
    double sd = 1; // of the mean, with the meter's own error
};
// Errors: the scatter between pieces (2 points when unknown) over the root of their number, and the
// meter's own 1.5 points (±1 % is claimed with a species' own curve). Above fibre saturation a
// quarter of what lies above it comes on top, on other than fresh faces 3 points, and an oven test
// has no meter error.
QVector<SeasoningReading> seasoningReadings(const Books &books, RecordId lot);

// One day of one lot whose tau is known: the model's step.
double afterDay(double percent, double tau, const AirDay &air, double wetting, double most);

// The air of a stretch of days, prepared once for any number of lots.
class SeasoningAir
{
public:
    // Both days inclusive.
    SeasoningAir(const AirCourse &air, qint64 firstDay, qint64 lastDay);

    static constexpr int kGrid = 121; // tau from 8 to 2,000 days in equal steps of its logarithm
    static double tauAt(int k);

    [[nodiscard]] qint64 first() const { return m_first; }
    [[nodiscard]] qint64 last() const { return m_first + static_cast<qint64>(m_days.size()) - 1; }
    [[nodiscard]] const AirDay &day(qint64 day) const
    {
        return m_days[static_cast<size_t>(day - m_first)];
    }
    // exp(-s / tau_k) of that day for every k.
    [[nodiscard]] const double *decay(qint64 day) const
    {
        return m_decay.data() + static_cast<size_t>(day - m_first) * kGrid;
    }

private:
    qint64 m_first = 0;
    std::vector<AirDay> m_days;
    std::vector<double> m_decay;
};

struct SeasoningPoint {
    qint64 day = 0;
    double low = 0; // 10 %, per cents of dry mass
    double middle = 0;
    double high = 0; // 90 %
    double chanceDry = 0;
};

struct SeasoningForecast {
    QVector<SeasoningPoint> curve; // from arrival, 420 days back at most, to the horizon's end
    QVector<SeasoningReading> readings;
    qint64 today = 0;
    double chanceNow = 0;
    // First days on which the chance of being dry reaches 10, 50 and 90 %; missing when it does not
    // within the horizon, and today when it has already.
    std::optional<qint64> readyEarly;
    std::optional<qint64> readyLikely;
    std::optional<qint64> readyLate;
    double tau = 0; // posterior median, days
    double tauLow = 0;
    double tauHigh = 0; // 80 % interval
    QStringList assumptions;

    // The chance that the lot is dry enough on a day of the curve.
    [[nodiscard]] double chanceOn(qint64 day) const;
    [[nodiscard]] SeasoningPoint at(qint64 day) const;
};

// `today` and the horizon must lie within the air; the lot may have come before it begins (the
// curve then starts with the air).
SeasoningForecast forecastSeasoning(const SeasoningPrior &prior, qint64 received,
                                    const QVector<SeasoningReading> &readings,
                                    const SeasoningAir &air, qint64 today, qint64 horizon,
                                    double dryEnough = 20.0);

// Every lot that has wood, over one preparation of the yard's air. Never-burn woods are left out.
constexpr qint64 kSeasoningHorizonDays = 550;
QMap<RecordId, SeasoningForecast> seasoningOf(const Books &books, Instant now);

inline QDate dateOfDay(qint64 day)
{
    return QDate(1970, 1, 1).addDays(day);
}
// "ready between 4 and 19 March", "dry now (96 %)", "not before next summer"; with its standing.
QString readyWords(const SeasoningForecast &forecast);

} // namespace rickyard::domain
