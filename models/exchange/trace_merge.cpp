#include "models/exchange/trace_merge.h"

namespace rickyard::exchange {

using domain::Trace;
using domain::TracePoint;

namespace {

constexpr qint64 kBeforeLighting = 2 * 3600;
constexpr qint64 kAfterFireOut = 6 * 3600;
constexpr qint64 kLongestCook = 72 * 3600; // of one without an end

std::optional<Trace> overlappingTrace(const domain::Books &books, domain::RecordId cook,
                                      const QString &probe, qint64 from, qint64 to)
{
    for (const Trace &trace : books.traces) {
        if (trace.cook != cook || trace.probe.compare(probe, Qt::CaseInsensitive) != 0)
            continue;
        const auto points = domain::decodeTrace(trace.block);
        if (!points || points.value().isEmpty())
            continue;
        const qint64 start = trace.start.seconds();
        if (start + points.value().first().offset <= to &&
            start + points.value().last().offset >= from)
            return trace;
    }
    return std::nullopt;
}

// Offsets counted from another start.
QVector<TracePoint> shifted(QVector<TracePoint> points, qint64 by)
{
    if (by != 0)
        for (TracePoint &point : points)
            point.offset += by;
    return points;
}

// Both by time; of two readings of one second the new one stays.
QVector<TracePoint> united(const QVector<TracePoint> &old, const QVector<TracePoint> &fresh)
{
    QVector<TracePoint> points;
    points.reserve(old.size() + fresh.size());
    qsizetype i = 0;
    for (const TracePoint &point : fresh) {
        while (i < old.size() && old.at(i).offset < point.offset)
            points.append(old.at(i++));
        if (i < old.size() && old.at(i).offset == point.offset)
            ++i;
        points.append(point);
    }
    while (i < old.size())
        points.append(old.at(i++));
    return points;
}

// `points` count from `origin`; the trace starts at its first reading.
domain::Outcome<> fillTrace(Trace &trace, const QVector<TracePoint> &points, qint64 origin)
{
    const qint64 first = points.first().offset;
    trace.start = domain::Instant::ofSeconds(origin + first);
    const auto block = domain::encodeTrace(shifted(points, -first));
    if (!block)
        return block.problems();
    trace.points = static_cast<int>(points.size());
    trace.block = block.value();
    return domain::Done{};
}

} // namespace

void keepHoursOf(const domain::Cook &cook, ProbeLogMapping &mapping)
{
    mapping.from = cook.lit - domain::Duration::ofBase(kBeforeLighting);
    mapping.to = cook.fireOut ? *cook.fireOut + domain::Duration::ofBase(kAfterFireOut)
                              : cook.lit + domain::Duration::ofBase(kLongestCook);
}

domain::Outcome<TraceMerge> mergeTraces(const domain::Books &books, domain::RecordId cook,
                                        const ProbeLog &log, const QString &source)
{
    TraceMerge merge;
    for (const ProbeSeries &series : log.series) {
        if (series.points.isEmpty())
            continue;
        const qint64 start = log.start.seconds();
        const auto old =
            overlappingTrace(books, cook, series.probe, start + series.points.first().offset,
                             start + series.points.last().offset);
        Trace trace = old.value_or(Trace{});
        QVector<TracePoint> points = series.points;
        if (old) {
            const auto before = domain::decodeTrace(old->block);
            points = united(shifted(before.value(), old->start.seconds() - start), points);
        }
        if (!old) {
            trace.cook = cook;
            trace.probe = series.probe;
            trace.source = source;
        }
        const auto filled = fillTrace(trace, points, start);
        if (!filled)
            return filled.problems();
        if (old && old->start == trace.start && old->block == trace.block)
            ++merge.identical;
        else
            (old ? merge.updated : merge.fresh).append(trace);
    }
    return merge;
}

} // namespace rickyard::exchange
