// What a probe's log says of a cook: mean, degree-hours, time to temperature, recovery after a
// feed, time inside a band; and the stretches in which the probe did not measure what it should.
// The method is written up in docs/method-traces.md.
//
// Times are seconds from a start common to all probes of a log, as in trace_codec.h. Between two
// readings the temperature runs straight; across a gap, and across a stretch left out, nothing is
// assumed.
#pragma once

#include "models/domain/fire/trace_codec.h"

#include <optional>

namespace rickyard::domain {

using ProbePoints = QVector<TracePoint>; // by time

enum class ProbeFaultKind {
    Flat,     // the same value over and over while other probes move
    Detached, // fell of a sudden towards the outside air and stayed there
};

struct ProbeFault {
    ProbeFaultKind kind = ProbeFaultKind::Flat;
    qint64 from = 0; // first and last reading that are left out
    qint64 to = 0;
    [[nodiscard]] QString words() const; // "same value for 45 min while other probes moved"
    bool operator==(const ProbeFault &) const = default;
};

// Common practice, no source; every figure can be given.
struct ProbeFaultRules {
    Duration flatFor = Duration::ofBase(20 * 60);
    // A probe shown in whole degrees stands still for an hour in meat that stalls.
    Duration flatForCoarse = Duration::ofBase(3 * 3600);
    Temperature coarseStep =
        Temperature::ofBase(300); // smallest step of a coarse probe, a difference
    Temperature othersMove = Temperature::ofBase(3000); // highest less lowest of another probe
    Duration fallWithin = Duration::ofBase(180);
    double fallShare = 0.6; // of what the probe was above the outside air
    double backShare = 0.5; // above this share it is in its place again
    Duration staysFor = Duration::ofBase(600);
    Temperature hotEnough = Temperature::ofBase(40000);      // above outside before the fall
    Temperature outsideUnknown = Temperature::ofBase(15000); // taken without an outside course
};

// `others` are the other probes of the same log; without any a flat stretch cannot be told from
// a steady pit and none is found. `outside` may be empty.
QVector<ProbeFault> probeFaults(const ProbePoints &probe, const QVector<ProbePoints> &others,
                                const ProbePoints &outside, const ProbeFaultRules &rules = {});

struct FeedRecovery {
    Temperature before;           // mean of the five minutes before the feed
    Temperature lowest;           // after it
    std::optional<Duration> back; // from the feed until it is within 3 K of before again
};

// One probe's log without its faults, to be asked for any stretch.
class TraceCourse
{
public:
    // Neighbours further apart than `longestGap` are not joined.
    explicit TraceCourse(const ProbePoints &points, const QVector<ProbeFault> &leftOut = {},
                         Duration longestGap = Duration::ofBase(600));

    [[nodiscard]] bool isEmpty() const { return m_points.isEmpty(); }
    [[nodiscard]] qint64 first() const { return m_points.first().offset; }
    [[nodiscard]] qint64 last() const { return m_points.last().offset; }
    // Time between joined neighbours within the stretch.
    [[nodiscard]] Duration covered(qint64 from, qint64 to) const;
    // Over the covered time; nothing when there is none.
    [[nodiscard]] std::optional<Temperature> mean(qint64 from, qint64 to) const;
    // Kelvin hours: the integral of what the probe is above the outside, where it is above. The
    // outside course runs straight between its readings and holds its first and last.
    [[nodiscard]] std::optional<double> degreeHours(const ProbePoints &outside, qint64 from,
                                                    qint64 to) const;
    // Share of the covered time with low <= T <= high.
    [[nodiscard]] std::optional<double> shareInBand(Temperature low, Temperature high, qint64 from,
                                                    qint64 to) const;
    // From `from` until the target is reached and the mean of the `hold` after it is no lower:
    // a flare-up is not counted.
    [[nodiscard]] std::optional<Duration>
    timeToTemperature(Temperature target, qint64 from, Duration hold = Duration::ofBase(300)) const;
    // Until the next feed, or an hour at most. Nothing without readings before and after the feed.
    [[nodiscard]] std::optional<FeedRecovery> recovery(qint64 feed,
                                                       std::optional<qint64> nextFeed) const;

private:
    // A straight piece within a stretch: seconds and thousandths of a degree at both ends.
    struct Piece {
        double t0;
        double t1;
        double y0;
        double y1;
    };
    template <class Take>
    void forPieces(qint64 from, qint64 to, Take take) const;

    ProbePoints m_points;
    QVector<bool> m_joined; // point i with point i + 1
};

} // namespace rickyard::domain
