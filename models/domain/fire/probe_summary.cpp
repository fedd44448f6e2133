#include "models/domain/fire/probe_summary.h"

#include "models/domain/fire/feedings.h"
#include "models/domain/fire/trace_codec.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

ProbeTrace &traceNamed(QVector<ProbeTrace> &probes, const QString &name)
{
    for (ProbeTrace &probe : probes)
        if (probe.probe.compare(name, Qt::CaseInsensitive) == 0)
            return probe;
    probes.append({name, {}});
    return probes.last();
}

QVector<qint64> feedingsOf(const QVector<qint64> &feeds)
{
    QVector<qint64> feedings;
    std::optional<qint64> last;
    for (const qint64 feed : feeds) {
        if (!last || feed - *last > kOneFeeding.base())
            feedings << feed;
        last = feed;
    }
    return feedings;
}

std::optional<Duration> medianOf(QVector<Duration> times)
{
    if (times.isEmpty())
        return std::nullopt;
    std::sort(times.begin(), times.end());
    const qsizetype half = times.size() / 2;
    if (times.size() % 2 == 1)
        return times.at(half);
    return (times.at(half - 1) + times.at(half)) * 0.5;
}

void addHold(ProbeSummary &summary, const TraceCourse &course, const Cook &cook,
             const QVector<qint64> &feedings, qint64 end)
{
    const qint64 hot = cook.atTemperature ? (*cook.atTemperature - cook.lit).base()
                                          : summary.toTemperature->base();
    const qint64 off = cook.foodOff ? (*cook.foodOff - cook.lit).base() : end;
    summary.steady = course.shareInBand(*cook.target - kTargetBand, *cook.target + kTargetBand, hot,
                                        std::max(hot, off));
    QVector<Duration> times;
    for (qsizetype i = 0; i < feedings.size(); ++i) {
        if (feedings.at(i) < hot || feedings.at(i) > off)
            continue;
        const std::optional<qint64> next =
            i + 1 < feedings.size() ? std::optional(feedings.at(i + 1)) : std::nullopt;
        const auto recovery = course.recovery(feedings.at(i), next);
        if (!recovery)
            continue;
        if (recovery->back)
            times << *recovery->back;
        else
            ++summary.notRecovered;
    }
    summary.recovered = static_cast<int>(times.size());
    summary.recovery = medianOf(times);
}

} // namespace

CookTraces tracesOf(const Books &books, const Cook &cook)
{
    CookTraces traces;
    for (const Trace &trace : books.traces) {
        if (trace.cook != cook.id)
            continue;
        auto points = decodeTrace(trace.block);
        if (!points) {
            traces.problems << QStringLiteral("%1: %2").arg(trace.probe, points.message());
            continue;
        }
        const qint64 shift = (trace.start - cook.lit).base();
        for (TracePoint &point : points.value())
            point.offset += shift;
        ProbePoints &all = traceNamed(traces.probes, trace.probe).points;
        if (all.isEmpty())
            all = std::move(points.value());
        else
            all += points.value();
    }
    const auto earlier = [](const TracePoint &a, const TracePoint &b) {
        return a.offset < b.offset;
    };
    for (ProbeTrace &probe : traces.probes)
        if (!std::is_sorted(probe.points.cbegin(), probe.points.cend(), earlier))
            std::stable_sort(probe.points.begin(), probe.points.end(), earlier);
    return traces;
}

ProbePoints outsideOver(const WeatherSeries &weather, Instant start, qint64 from, qint64 to)
{
    ProbePoints course;
    for (qint64 t = from; t <= to + 3599; t += 3600) {
        const auto air = weather.temperatureAt(start + Duration::ofBase(t));
        if (!air)
            return {};
        course.append({t, *air});
    }
    return course;
}

QVector<qint64> feedTimes(const Books &books, const Cook &cook)
{
    QVector<qint64> feeds;
    for (const Feed &feed : books.feeds)
        if (feed.cook == cook.id)
            feeds << (feed.time - cook.lit).base();
    std::sort(feeds.begin(), feeds.end());
    return feeds;
}

QVector<ProbeSummary> summariseProbes(const QVector<ProbeTrace> &probes, const Cook &cook,
                                      const QVector<qint64> &feeds, const ProbePoints &outside)
{
    const QVector<qint64> feedings = feedingsOf(feeds);
    QVector<ProbeSummary> summaries;
    for (qsizetype i = 0; i < probes.size(); ++i) {
        QVector<ProbePoints> others;
        for (qsizetype j = 0; j < probes.size(); ++j)
            if (j != i)
                others << probes.at(j).points;
        ProbeSummary summary;
        summary.probe = probes.at(i).probe;
        summary.readings = probes.at(i).points.size();
        summary.faults = probeFaults(probes.at(i).points, others, outside);
        const TraceCourse course(probes.at(i).points, summary.faults);
        if (!course.isEmpty()) {
            const qint64 end = cook.fireOut ? (*cook.fireOut - cook.lit).base() : course.last();
            summary.covered = course.covered(0, end);
            summary.mean = course.mean(0, end);
            summary.degreeHours = course.degreeHours(outside, 0, end);
            if (cook.target)
                summary.toTemperature = course.timeToTemperature(*cook.target, 0);
            summary.ofPit = summary.toTemperature.has_value();
            if (summary.ofPit)
                addHold(summary, course, cook, feedings, end);
        }
        summaries << summary;
    }
    return summaries;
}

} // namespace rickyard::domain
