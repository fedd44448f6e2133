// Where an uncertain number falls: the amount of a cook, of a lot, the day on which wood is dry.
// Plain numbers; the unit is the caller's.
#pragma once

#include "models/domain/wood/offer_draws.h"

#include <QtGlobal>

#include <memory>
#include <utility>
#include <vector>

namespace rickyard::domain {

struct TCurve;

class Spread
{
public:
    Spread() = default; // the number 0
    static Spread fixed(double value);
    static Spread normal(double mean, double sd);
    // The three numbers are met exactly, also where they are not symmetric: two halves that share
    // the median. `level` is what lies between lower and upper. Lognormal with all three above 0,
    // else it is the number `median`.
    static Spread lognormal(double median, double lower, double upper, double level = 0.90);
    static Spread studentT(double median, double lower, double upper, double degreesOfFreedom,
                           double level = 0.90);
    // One of these numbers, in proportion to its weight (0 and less: left out). An infinite number
    // is lawful: "never". None at all: the number 0.
    static Spread sample(const std::vector<std::pair<double, double>> &valueAndWeight);
    // (chance at or below, value), both ascending; straight between. Below the first chance the
    // first value; above the last one infinity, "not within what was looked at": give a chance of 1
    // to have an end.
    static Spread quantiles(const std::vector<std::pair<double, double>> &chanceAndValue);

    // The value with that chance at or below it, 0 < chance < 1.
    [[nodiscard]] double quantile(double chance) const;
    // The value at a standard normal score: rising with it.
    [[nodiscard]] double atScore(double z) const;
    // `count` draws.
    void fill(DrawStream &stream, double *out, qsizetype count) const;
    // Draws whose normal scores share sqrt(share) of `common` (one score a path).
    void fillShared(DrawStream &stream, const double *common, double share, double *out,
                    qsizetype count) const;

    // The same thing in another unit, or more or less of it; the factor is above 0.
    [[nodiscard]] Spread times(double factor) const;

    [[nodiscard]] bool isFixed() const { return m_kind == Kind::Fixed; }
    [[nodiscard]] bool finite() const; // no missing number in what it was made from

private:
    enum class Kind { Fixed, Normal, Lognormal, StudentT, Sample, Quantiles };
    [[nodiscard]] double atChance(double chance) const;
    [[nodiscard]] bool byScore() const { return m_kind < Kind::Sample; }

    Kind m_kind = Kind::Fixed;
    double m_middle = 0; // logarithm for Lognormal
    double m_below = 0;  // scale under the middle
    double m_above = 0;
    std::vector<double> m_chances; // cumulative
    std::vector<double> m_values;
    std::shared_ptr<const TCurve> m_t; // of Student t
};

} // namespace rickyard::domain
