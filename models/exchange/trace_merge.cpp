#include "models/exchange/trace_merge.h"

namespace rickyard::exchange {

using domain::Trace;
using domain::TracePoint;

namespace {

// Readings by second since 1970.
using BySecond = QMap<qint64, domain::Temperature>;

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

void collect(BySecond &readings, qint64 start, const QVector<TracePoint> &points)
{
    for (const TracePoint &point : points)
        readings.insert(start + point.offset, point.temperature);
}

domain::Outcome<> fillTrace(Trace &trace, const BySecond &readings)
{
    trace.start = domain::Instant::ofSeconds(readings.firstKey());
    QVector<TracePoint> points;
    points.reserve(readings.size());
    for (auto it = readings.constBegin(); it != readings.constEnd(); ++it)
        points.append({it.key() - readings.firstKey(), it.value()});
    const auto block = domain::encodeTrace(points);
    if (!block)
        return block.problems();
    trace.points = static_cast<int>(points.size());
    trace.block = block.value();
    return domain::Done{};
}

} // namespace

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
        BySecond readings;
        if (old)
            collect(readings, old->start.seconds(), domain::decodeTrace(old->block).value());
        collect(readings, start, series.points);
        if (!old) {
            trace.cook = cook;
            trace.probe = series.probe;
            trace.source = source;
        }
        const auto filled = fillTrace(trace, readings);
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
