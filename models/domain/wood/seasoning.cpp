#include "models/domain/wood/seasoning.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>

namespace rickyard::domain {

namespace {

constexpr double kLeastTau = 8;
constexpr double kMostTau = 2000;
constexpr int kGrid = SeasoningAir::kGrid;
// Parts of the mixture that carry less of the chance than this are left out.
constexpr double kLeastWeight = 1e-4;
constexpr qint64 kStride = 7;
constexpr int kMostPoints = 100;
// The curve begins this long before today at the most: older drying is history.
constexpr qint64 kCurveBehind = 420;
constexpr double kOneInTen = 1.2815515655446004; // normal quantile at 90 %
constexpr double kCloseEnough = 5e-3;            // points of moisture

double normalCdf(double z)
{
    return 0.5 * std::erfc(-z * M_SQRT1_2);
}

// The lot's moisture for each tau as a + b u0, carried from day to day.
struct Course {
    std::array<double, kGrid> a{};
    std::array<double, kGrid> b{};
    int from = 0; // grid points in use
    int to = kGrid;

    Course() { b.fill(1.0); }

    void step(const SeasoningAir &air, qint64 day, const SeasoningPrior &prior)
    {
        const AirDay &today = air.day(day);
        const double *decay = air.decay(day);
        const double wet = prior.wetting > 0 ? -std::expm1(-prior.wetting * today.rain) : 0.0;
        const double keep = 1.0 - wet;
        const double added = wet * prior.most;
        for (int k = from; k < to; ++k) {
            const auto i = static_cast<size_t>(k);
            a[i] = keep * (a[i] * decay[k] + today.emc * (1.0 - decay[k])) + added;
            b[i] *= keep * decay[k];
        }
    }
};

// Posterior of u0 given tau, and the weight of that tau.
struct Component {
    int k = 0;
    double weight = 0;
    double start = 0;
    double sd = 0;
};

struct Posterior {
    QVector<Component> parts;
    double most = 0;

    // The part's moisture on the course's day is normal with this mean and deviation.
    static double meanOf(const Component &c, const Course &course)
    {
        return course.a[static_cast<size_t>(c.k)] + course.b[static_cast<size_t>(c.k)] * c.start;
    }
    static double sdOf(const Component &c, const Course &course)
    {
        return std::max(course.b[static_cast<size_t>(c.k)] * c.sd, 1e-9);
    }
    [[nodiscard]] double chanceBelow(double percent, const Course &course) const
    {
        double chance = 0;
        for (const Component &c : parts)
            chance += c.weight * normalCdf((percent - meanOf(c, course)) / sdOf(c, course));
        return chance;
    }
    // `z` is the standard normal's quantile at p: the mixture's lies between those of its parts.
    [[nodiscard]] double quantile(double p, double z, const Course &course) const
    {
        double low = std::numeric_limits<double>::max();
        double high = std::numeric_limits<double>::lowest();
        for (const Component &c : parts) {
            const double own = meanOf(c, course) + z * sdOf(c, course);
            low = std::min(low, own);
            high = std::max(high, own);
        }
        const auto miss = [&](double percent) { return chanceBelow(percent, course) - p; };
        const auto close = [](double one, double other) {
            return std::abs(one - other) < kCloseEnough;
        };
        const double atLow = miss(low);
        const double atHigh = miss(high);
        if (atLow >= 0 || atHigh <= 0 || close(low, high))
            return std::clamp(atLow >= 0 ? low : high, 0.0, most);
        std::uintmax_t steps = 60;
        const auto [from, to] =
            boost::math::tools::toms748_solve(miss, low, high, atLow, atHigh, close, steps);
        return std::clamp(0.5 * (from + to), 0.0, most);
    }
};

std::vector<double> logPriorOf(const SeasoningPrior &prior)
{
    std::vector<double> log(kGrid);
    for (int k = 0; k < kGrid; ++k) {
        const double z = (std::log(SeasoningAir::tauAt(k)) - prior.logTau) / prior.logTauSd;
        log[static_cast<size_t>(k)] = -0.5 * z * z;
    }
    return log;
}

// The grid points that the prior leaves a chance of any note (4.5 deviations).
void useGridOf(const SeasoningPrior &prior, Course &course)
{
    course.from = kGrid;
    course.to = 0;
    for (int k = 0; k < kGrid; ++k) {
        const double z = (std::log(SeasoningAir::tauAt(k)) - prior.logTau) / prior.logTauSd;
        if (std::abs(z) > 4.5)
            continue;
        course.from = std::min(course.from, k);
        course.to = std::max(course.to, k + 1);
    }
    if (course.from >= course.to) { // a prior beyond the grid: its nearest end
        course.from = prior.logTau > std::log(kMostTau) ? kGrid - 1 : 0;
        course.to = course.from + 1;
    }
}

// Sums of the normal equations of u0, one set a tau.
struct Evidence {
    std::array<double, kGrid> precision{};
    std::array<double, kGrid> weighted{};
    std::array<double, kGrid> misfit{};

    void add(const SeasoningReading &reading, const Course &course)
    {
        const double w = 1.0 / (reading.sd * reading.sd);
        for (int k = course.from; k < course.to; ++k) {
            const auto i = static_cast<size_t>(k);
            const double rest = reading.percent - course.a[i];
            precision[i] += w * course.b[i] * course.b[i];
            weighted[i] += w * course.b[i] * rest;
            misfit[i] += w * rest * rest;
        }
    }
};

Posterior posteriorOf(const SeasoningPrior &prior, const Evidence &evidence, const Course &course)
{
    const std::vector<double> logPrior = logPriorOf(prior);
    const double p0 = 1.0 / (prior.startSd * prior.startSd);
    std::vector<Component> all;
    std::vector<double> logs;
    for (int k = course.from; k < course.to; ++k) {
        const auto i = static_cast<size_t>(k);
        const double precision = p0 + evidence.precision[i];
        const double weighted = p0 * prior.start + evidence.weighted[i];
        // ln of the marginal likelihood, up to what all taus share.
        const double log =
            logPrior[i] - 0.5 * (evidence.misfit[i] + p0 * prior.start * prior.start -
                                 weighted * weighted / precision + std::log(precision / p0));
        all.push_back({k, 0, weighted / precision, 1.0 / std::sqrt(precision)});
        logs.push_back(log);
    }
    const double top = *std::max_element(logs.cbegin(), logs.cend());
    double sum = 0;
    for (size_t i = 0; i < all.size(); ++i)
        sum += all[i].weight = std::exp(logs[i] - top);
    Posterior posterior;
    posterior.most = prior.most;
    double kept = 0;
    for (Component &c : all)
        if (c.weight / sum >= kLeastWeight) {
            kept += c.weight;
            posterior.parts << c;
        }
    for (Component &c : posterior.parts)
        c.weight /= kept;
    return posterior;
}

double tauQuantile(const Posterior &posterior, double p)
{
    // Each grid point stands for its cell, half a step either way.
    const double half = 0.5 * std::log(kMostTau / kLeastTau) / (kGrid - 1);
    double below = 0;
    for (const Component &c : posterior.parts) {
        if (below + c.weight >= p)
            return std::exp(std::log(SeasoningAir::tauAt(c.k)) - half +
                            2 * half * (p - below) / c.weight);
        below += c.weight;
    }
    return SeasoningAir::tauAt(posterior.parts.last().k);
}

SeasoningPoint pointOf(const Posterior &posterior, const Course &course, qint64 day,
                       double dryEnough)
{
    return {day, posterior.quantile(0.1, -kOneInTen, course), posterior.quantile(0.5, 0, course),
            posterior.quantile(0.9, kOneInTen, course), posterior.chanceBelow(dryEnough, course)};
}

// The first day of the curve, from today on, on which the chance reaches p.
std::optional<qint64> firstReady(const SeasoningForecast &forecast, double p)
{
    std::optional<SeasoningPoint> before;
    for (const SeasoningPoint &point : forecast.curve) {
        if (point.day < forecast.today)
            continue;
        if (point.chanceDry >= p) {
            if (!before || point.chanceDry <= before->chanceDry)
                return point.day;
            const double part = (p - before->chanceDry) / (point.chanceDry - before->chanceDry);
            return before->day + static_cast<qint64>(std::ceil(
                                     part * static_cast<double>(point.day - before->day)));
        }
        before = point;
    }
    return std::nullopt;
}

} // namespace

double afterDay(double percent, double tau, const AirDay &air, double wetting, double most)
{
    const double decay = std::exp(-air.speed / tau);
    const double dried = air.emc + (percent - air.emc) * decay;
    return dried - std::expm1(-wetting * air.rain) * (most - dried);
}

SeasoningAir::SeasoningAir(const AirCourse &air, qint64 firstDay, qint64 lastDay)
    : m_first(firstDay)
{
    const auto count = static_cast<size_t>(std::max<qint64>(lastDay - firstDay + 1, 1));
    m_days.reserve(count);
    m_decay.reserve(count * kGrid);
    for (qint64 day = firstDay; day < firstDay + static_cast<qint64>(count); ++day) {
        m_days.push_back(air.dayAt(day));
        for (int k = 0; k < kGrid; ++k)
            m_decay.push_back(std::exp(-m_days.back().speed / tauAt(k)));
    }
}

double SeasoningAir::tauAt(int k)
{
    return kLeastTau *
           std::pow(kMostTau / kLeastTau, static_cast<double>(k) / static_cast<double>(kGrid - 1));
}

double SeasoningForecast::chanceOn(qint64 day) const
{
    return at(day).chanceDry;
}

SeasoningPoint SeasoningForecast::at(qint64 day) const
{
    if (curve.isEmpty())
        return {day, 0, 0, 0, 0};
    if (day <= curve.first().day)
        return curve.first();
    for (int i = 1; i < curve.size(); ++i) {
        const SeasoningPoint &b = curve.at(i);
        if (day > b.day)
            continue;
        const SeasoningPoint &a = curve.at(i - 1);
        const double part = static_cast<double>(day - a.day) / static_cast<double>(b.day - a.day);
        const auto mix = [part](double x, double y) { return x + part * (y - x); };
        return {day, mix(a.low, b.low), mix(a.middle, b.middle), mix(a.high, b.high),
                mix(a.chanceDry, b.chanceDry)};
    }
    return curve.last();
}

SeasoningForecast forecastSeasoning(const SeasoningPrior &prior, qint64 received,
                                    const QVector<SeasoningReading> &readings,
                                    const SeasoningAir &air, qint64 today, qint64 horizon,
                                    double dryEnough)
{
    SeasoningForecast forecast;
    forecast.readings = readings;
    forecast.today = today;
    forecast.assumptions = prior.assumptions;
    const qint64 begin = std::max(received, air.first());
    const qint64 end = std::min(horizon, air.last());
    Course start;
    useGridOf(prior, start);

    // Once through the readings for the posterior, once from the start for the curve.
    Course course = start;
    Evidence evidence;
    qint64 day = begin;
    for (const SeasoningReading &reading : readings) {
        for (; day < std::min(reading.day, end); ++day)
            course.step(air, day, prior);
        evidence.add(reading, course);
    }
    const Posterior posterior = posteriorOf(prior, evidence, start);
    // Only the taus that the readings leave a chance are carried on.
    start.from = posterior.parts.first().k;
    start.to = posterior.parts.last().k + 1;

    const qint64 shown = std::max(begin, today - kCurveBehind);
    const qint64 stride = std::max(kStride, (end - shown) / kMostPoints);
    course = start;
    for (day = begin; day <= end; ++day) {
        if (day >= shown && ((day - shown) % stride == 0 || day == today || day == end))
            forecast.curve << pointOf(posterior, course, day, dryEnough);
        if (day < end)
            course.step(air, day, prior);
    }
    forecast.chanceNow = forecast.chanceOn(today);
    forecast.readyEarly = firstReady(forecast, 0.1);
    forecast.readyLikely = firstReady(forecast, 0.5);
    forecast.readyLate = firstReady(forecast, 0.9);
    forecast.tau = tauQuantile(posterior, 0.5);
    forecast.tauLow = tauQuantile(posterior, 0.1);
    forecast.tauHigh = tauQuantile(posterior, 0.9);
    return forecast;
}

} // namespace rickyard::domain
