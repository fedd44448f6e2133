#include "views/fire/cook_courses.h"

#include "models/domain/fire/trace_codec.h"
#include "models/domain/statistics/decimate.h"

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr std::size_t kMostPoints = 800; // more than a chart has pixels across

double hoursAfter(const Cook &cook, qint64 seconds)
{
    return static_cast<double>(seconds - cook.lit.seconds()) / 3600.0;
}

QList<QPointF> thinned(const QVector<TracePoint> &points, const Cook &cook, const Trace &trace,
                       const Unit &unit)
{
    std::vector<double> x;
    std::vector<double> y;
    x.reserve(static_cast<std::size_t>(points.size()));
    y.reserve(static_cast<std::size_t>(points.size()));
    for (const TracePoint &point : points) {
        x.push_back(hoursAfter(cook, trace.start.seconds() + point.offset));
        y.push_back(toUnit(point.temperature.base(), unit));
    }
    QList<QPointF> drawn;
    const auto kept = statistics::minMaxDecimation(x, y, kMostPoints);
    if (!kept)
        return drawn;
    for (const std::size_t i : kept.value())
        drawn << QPointF(x[i], y[i]);
    return drawn;
}

CookCourse &courseNamed(QVector<CookCourse> &courses, const QString &name)
{
    for (CookCourse &course : courses)
        if (course.name.compare(name, Qt::CaseInsensitive) == 0)
            return course;
    courses.append({name, {}});
    return courses.last();
}

} // namespace

QVector<CookCourse> probeCourses(const Books &books, const Cook &cook, const Unit &unit,
                                 QStringList &problems)
{
    QVector<CookCourse> courses;
    for (const Trace &trace : books.traces) {
        if (trace.cook != cook.id)
            continue;
        const auto points = decodeTrace(trace.block);
        if (!points) {
            problems << QStringLiteral("%1: %2").arg(trace.probe, points.message());
            continue;
        }
        courseNamed(courses, trace.probe).points << thinned(points.value(), cook, trace, unit);
    }
    for (const CookTemperature &t : books.temperatures)
        if (t.cook == cook.id)
            courseNamed(courses, t.probe.isEmpty() ? QStringLiteral("pit") : t.probe).points
                << QPointF(hoursAfter(cook, t.time.seconds()), toUnit(t.temperature.base(), unit));
    for (CookCourse &course : courses)
        std::stable_sort(course.points.begin(), course.points.end(),
                         [](const QPointF &a, const QPointF &b) { return a.x() < b.x(); });
    return courses;
}

QList<QPointF> outsideCourse(const Books &books, const Cook &cook, Instant end, const Unit &unit)
{
    QList<QPointF> points;
    for (const Weather &w : books.weather)
        if (!w.normal && w.temperature && w.time >= cook.lit && w.time <= end)
            points << QPointF(hoursAfter(cook, w.time.seconds()),
                              toUnit(w.temperature->base(), unit));
    std::stable_sort(points.begin(), points.end(),
                     [](const QPointF &a, const QPointF &b) { return a.x() < b.x(); });
    return points;
}

} // namespace rickyard::views
