#include "views/fire/cook_curves.h"

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr double kJoined = 600; // seconds: the longest step that a line is drawn across
constexpr qint64 kAirStep = 1800;

ProbeCurve curveOf(const ProbeTrace &trace, const QVector<ProbeFault> &faults)
{
    ProbeCurve curve;
    curve.name = trace.probe;
    curve.faults = faults;
    const auto count = static_cast<std::size_t>(trace.points.size());
    std::vector<double> values;
    curve.x.reserve(count);
    values.reserve(count);
    for (const TracePoint &point : trace.points) {
        const auto at = static_cast<double>(point.offset);
        if (!curve.x.empty() && at - curve.x.back() > kJoined)
            curve.breaks.push_back(curve.x.size());
        curve.x.push_back(at);
        values.push_back(point.temperature.toDouble());
    }
    curve.y = statistics::MinMaxTree(std::move(values));
    return curve;
}

template <class Ask>
QVector<AirPoint> airCourse(qint64 end, Ask ask)
{
    QVector<AirPoint> course;
    bool any = false;
    for (qint64 t = 0; t < end + kAirStep; t += kAirStep) {
        const auto value = ask(std::min(t, end));
        course.append({static_cast<double>(std::min(t, end)), value});
        any = any || value;
    }
    return any ? course : QVector<AirPoint>();
}

} // namespace

CookCurvesPtr readCurves(const Books &books, RecordId id, Instant now)
{
    auto curves = std::make_shared<CookCurves>();
    curves->cook = id;
    const auto cook = books.cooks.constFind(id);
    if (cook == books.cooks.constEnd())
        return curves;
    const CookTraces traces = tracesOf(books, *cook);
    curves->problems = traces.problems;
    qint64 last = std::max<qint64>(0, (cook->fireOut.value_or(now) - cook->lit).base());
    const WeatherSeries weather(books);
    const Instant lit = cook->lit;
    curves->outside = airCourse(last, [&](qint64 t) {
        const auto air = weather.temperatureAt(lit + Duration::ofBase(t));
        return air ? std::optional(air->toDouble()) : std::nullopt;
    });
    curves->wind = airCourse(last, [&](qint64 t) {
        const auto wind = weather.windAt(lit + Duration::ofBase(t));
        return wind ? std::optional(wind->toDouble()) : std::nullopt;
    });
    qint64 first = 0;
    for (const ProbeTrace &probe : traces.probes) {
        if (probe.points.isEmpty())
            continue;
        first = std::min(first, probe.points.first().offset);
        last = std::max(last, probe.points.last().offset);
    }
    const ProbePoints outside =
        traces.probes.isEmpty() ? ProbePoints() : outsideOver(weather, lit, first, last);
    curves->summaries = summariseProbes(traces.probes, *cook, feedTimes(books, *cook), outside);
    for (qsizetype i = 0; i < traces.probes.size(); ++i)
        curves->probes.push_back(curveOf(traces.probes.at(i), curves->summaries.at(i).faults));
    return curves;
}

} // namespace rickyard::views
