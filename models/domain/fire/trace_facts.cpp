// The figures; trace_faults.cpp finds the stretches that are left out.
#include "models/domain/fire/trace_facts.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kSecondsAnHour = 3600.0;
constexpr double kMilliAKelvin = 1000.0;
constexpr qint64 kBeforeAFeed = 300;      // seconds
constexpr qint64 kLongestRecovery = 3600; // seconds
constexpr qint64 kRecoveredWithin = 3000; // thousandths of a kelvin

bool isLeftOut(qint64 t, const QVector<ProbeFault> &faults)
{
    return std::any_of(faults.begin(), faults.end(),
                       [t](const ProbeFault &f) { return t >= f.from && t <= f.to; });
}

// Integral of max(0, y) along a straight line of length dt.
double positiveArea(double y0, double y1, double dt)
{
    if (y0 <= 0 && y1 <= 0)
        return 0;
    if (y0 >= 0 && y1 >= 0)
        return (y0 + y1) / 2 * dt;
    const double high = std::max(y0, y1);
    return high / 2 * dt * high / std::abs(y1 - y0);
}

// Share of a straight line that lies at or below a level.
double shareBelow(double y0, double y1, double level)
{
    if (y0 == y1)
        return y0 <= level ? 1 : 0;
    const double low = std::min(y0, y1);
    const double high = std::max(y0, y1);
    return std::clamp((level - low) / (high - low), 0.0, 1.0);
}

double courseAt(const ProbePoints &course, double t)
{
    const auto after =
        std::upper_bound(course.begin(), course.end(), t, [](double time, const TracePoint &p) {
            return time < static_cast<double>(p.offset);
        });
    if (after == course.begin())
        return course.first().temperature.toDouble();
    if (after == course.end())
        return course.last().temperature.toDouble();
    const TracePoint &a = *(after - 1);
    const double span = static_cast<double>(after->offset - a.offset);
    const double part = (t - static_cast<double>(a.offset)) / span;
    return a.temperature.toDouble() + part * (after->temperature - a.temperature).toDouble();
}

} // namespace

TraceCourse::TraceCourse(const ProbePoints &points, const QVector<ProbeFault> &leftOut,
                         Duration longestGap)
{
    m_points.reserve(points.size());
    bool cut = true; // a stretch left out lies between this point and the one before
    for (const TracePoint &point : points) {
        if (!leftOut.isEmpty() && isLeftOut(point.offset, leftOut)) {
            cut = true;
            continue;
        }
        if (!m_points.isEmpty())
            m_joined.append(!cut && point.offset - m_points.last().offset <= longestGap.base());
        m_points.append(point);
        cut = false;
    }
}

template <class Take>
void TraceCourse::forPieces(qint64 from, qint64 to, Take take) const
{
    const auto begin =
        std::lower_bound(m_points.begin(), m_points.end(), from,
                         [](const TracePoint &p, qint64 time) { return p.offset < time; });
    qsizetype i = std::max<qsizetype>(0, begin - m_points.begin() - 1);
    for (; i + 1 < m_points.size() && m_points.at(i).offset < to; ++i) {
        const TracePoint &a = m_points.at(i);
        const TracePoint &b = m_points.at(i + 1);
        if (!m_joined.at(i) || b.offset <= from || b.offset == a.offset)
            continue;
        const double span = static_cast<double>(b.offset - a.offset);
        const double slope = (b.temperature - a.temperature).toDouble() / span;
        const auto t0 = static_cast<double>(std::max(a.offset, from));
        const auto t1 = static_cast<double>(std::min(b.offset, to));
        const auto at = [&](double t) {
            return a.temperature.toDouble() + slope * (t - static_cast<double>(a.offset));
        };
        if (!take(Piece{t0, t1, at(t0), at(t1)}))
            return;
    }
}

Duration TraceCourse::covered(qint64 from, qint64 to) const
{
    double sum = 0;
    forPieces(from, to, [&sum](const Piece &p) {
        sum += p.t1 - p.t0;
        return true;
    });
    return Duration::rounded(sum);
}

std::optional<Temperature> TraceCourse::mean(qint64 from, qint64 to) const
{
    double area = 0;
    double time = 0;
    forPieces(from, to, [&](const Piece &p) {
        area += (p.y0 + p.y1) / 2 * (p.t1 - p.t0);
        time += p.t1 - p.t0;
        return true;
    });
    return time > 0 ? std::optional(Temperature::rounded(area / time)) : std::nullopt;
}

std::optional<double> TraceCourse::degreeHours(const ProbePoints &outside, qint64 from,
                                               qint64 to) const
{
    if (outside.isEmpty())
        return std::nullopt;
    double area = 0;
    bool any = false;
    forPieces(from, to, [&](const Piece &p) {
        any = true;
        const double slope = (p.y1 - p.y0) / (p.t1 - p.t0);
        // Between the outside readings both run straight, and so does their difference.
        auto bend = std::upper_bound(outside.begin(), outside.end(), p.t0,
                                     [](double time, const TracePoint &point) {
                                         return time < static_cast<double>(point.offset);
                                     });
        double t = p.t0;
        while (t < p.t1) {
            const double next =
                bend == outside.end() ? p.t1 : std::min(p.t1, static_cast<double>(bend->offset));
            const double here = p.y0 + slope * (t - p.t0) - courseAt(outside, t);
            const double there = p.y0 + slope * (next - p.t0) - courseAt(outside, next);
            area += positiveArea(here, there, next - t);
            t = next;
            if (bend != outside.end())
                ++bend;
        }
        return true;
    });
    return any ? std::optional(area / kMilliAKelvin / kSecondsAnHour) : std::nullopt;
}

std::optional<double> TraceCourse::shareInBand(Temperature low, Temperature high, qint64 from,
                                               qint64 to) const
{
    double inside = 0;
    double time = 0;
    forPieces(from, to, [&](const Piece &p) {
        const double dt = p.t1 - p.t0;
        time += dt;
        if (p.y0 == p.y1)
            inside += p.y0 >= low.toDouble() && p.y0 <= high.toDouble() ? dt : 0;
        else
            inside += dt * (shareBelow(p.y0, p.y1, high.toDouble()) -
                            shareBelow(p.y0, p.y1, low.toDouble()));
        return true;
    });
    return time > 0 ? std::optional(inside / time) : std::nullopt;
}

std::optional<Duration> TraceCourse::timeToTemperature(Temperature target, qint64 from,
                                                       Duration hold) const
{
    if (m_points.isEmpty())
        return std::nullopt;
    std::optional<Duration> answer;
    const double level = target.toDouble();
    bool below = true; // a crossing upwards, or a start above
    forPieces(from, last(), [&](const Piece &p) {
        if (p.y0 < level && p.y1 < level) {
            below = true;
            return true;
        }
        if (!below && p.y0 >= level)
            return true;
        const double t =
            p.y0 >= level ? p.t0 : p.t0 + (level - p.y0) / (p.y1 - p.y0) * (p.t1 - p.t0);
        below = p.y1 < level;
        const auto reached = static_cast<qint64>(std::floor(t));
        const auto after = mean(static_cast<qint64>(std::ceil(t)), reached + hold.base());
        if (after && *after < target)
            return true;
        answer = Duration::ofBase(static_cast<qint64>(std::llround(t)) - from);
        return false;
    });
    return answer;
}

std::optional<FeedRecovery> TraceCourse::recovery(qint64 feed, std::optional<qint64> nextFeed) const
{
    const qint64 until =
        std::min(nextFeed.value_or(feed + kLongestRecovery), feed + kLongestRecovery);
    const auto before = mean(feed - kBeforeAFeed, feed);
    FeedRecovery recovery;
    double lowest = 0;
    bool any = false;
    double lowestAt = 0;
    forPieces(feed, until, [&](const Piece &p) {
        for (const auto &[t, y] : {std::pair(p.t0, p.y0), std::pair(p.t1, p.y1)}) {
            if (!any || y < lowest) {
                lowest = y;
                lowestAt = t;
            }
            any = true;
        }
        return true;
    });
    if (!before || !any)
        return std::nullopt;
    recovery.before = *before;
    recovery.lowest = Temperature::rounded(lowest);
    const double level = (*before - Temperature::ofBase(kRecoveredWithin)).toDouble();
    if (lowest >= level) {
        recovery.back = Duration::ofBase(0); // it never fell
        return recovery;
    }
    forPieces(static_cast<qint64>(lowestAt), until, [&](const Piece &p) {
        if (p.y1 < level)
            return true;
        const double t =
            p.y0 >= level ? p.t0 : p.t0 + (level - p.y0) / (p.y1 - p.y0) * (p.t1 - p.t0);
        recovery.back = Duration::rounded(t - static_cast<double>(feed));
        return false;
    });
    return recovery;
}

} // namespace rickyard::domain
