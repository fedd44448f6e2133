#include "views/fire/cook_timeline.h"

#include "views/charts/chart_view.h"
#include "views/fire/cook_courses.h"
#include "views/fire/fire_words.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QVBoxLayout>
#include <QtCharts/QLegendMarker>
#include <QtCharts/QValueAxis>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

// Where a reader hovers: how far into the cook, and the clock.
QString describePoint(const Books &books, Instant lit, const QString &unit,
                      const QAbstractSeries *series, const QPointF &point, bool tick)
{
    const FireWords words(books);
    const Instant at = lit + durationFromHours(point.x());
    const QString when =
        CookTimeline::tr("%1, %2 after lighting").arg(words.clock(at), FireWords::span(at - lit));
    if (tick)
        return QStringLiteral("%1, %2").arg(series->name(), when);
    return QStringLiteral("%1 %2, %3")
        .arg(series->name(), withUnit(formatNumber(point.y(), 0, words.locale()), unit), when);
}

void hideKey(QChart *chart, QAbstractSeries *series)
{
    const auto markers = chart->legend()->markers(series);
    for (QLegendMarker *marker : markers)
        marker->setVisible(false);
}

QValueAxis *axis(double low, double high, const QString &format, int ticks)
{
    auto *made = new QValueAxis;
    made->setRange(low, high);
    made->setLabelFormat(format);
    made->setTickCount(ticks);
    return made;
}

// A step of 1, 2 or 5 times a power of ten that cuts the span into about `parts`.
double niceStep(double span, int parts)
{
    const double rough = std::max(span, 1e-9) / parts;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= rough)
            return factor * power;
    return 10.0 * power;
}

} // namespace

CookTimeline::CookTimeline(QWidget *parent)
    : QWidget(parent), m_chart(new ChartView(tr("Temperatures and feeds of this cook"), this))
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_chart);
}

void CookTimeline::setSmall(bool small)
{
    m_small = small;
    m_chart->setLegendShown(!small);
    m_chart->setMinimumHeight(theme(this).px(small ? 150 : 230));
    m_chart->setMaximumHeight(theme(this).px(small ? 190 : 340));
}

void CookTimeline::setCook(const Books &books, RecordId id, Instant now)
{
    m_chart->clear();
    const auto axes = m_chart->chart()->axes();
    for (QAbstractAxis *old : axes) {
        m_chart->chart()->removeAxis(old);
        delete old;
    }
    m_summary.clear();
    m_problems.clear();
    const auto cook = books.cooks.constFind(id);
    if (cook != books.cooks.constEnd())
        draw(books, *cook, now);
    m_chart->setSummary(m_summary);
}

void CookTimeline::draw(const Books &books, const Cook &cook, Instant now)
{
    const FireWords words(books);
    const Unit &unit = words.unit(Dimension::Temperature);
    const Instant end = cook.fireOut.value_or(now);
    const QVector<CookCourse> probes = probeCourses(books, cook, unit, m_problems);
    const QList<QPointF> outside = outsideCourse(books, cook, end, unit);
    QList<QPointF> feeds;
    for (const Feed &feed : books.feeds)
        if (feed.cook == cook.id)
            feeds << QPointF(hours(feed.time - cook.lit), 0);
    std::sort(feeds.begin(), feeds.end(),
              [](const QPointF &a, const QPointF &b) { return a.x() < b.x(); });

    double low = toUnit(temperatureFromFahrenheit(100).base(), unit);
    double high = toUnit(temperatureFromFahrenheit(300).base(), unit);
    const auto include = [&](double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    };
    double last = std::max(1.0, hours(end - cook.lit));
    for (const CookCourse &course : probes)
        for (const QPointF &point : course.points) {
            include(point.y());
            last = std::max(last, point.x());
        }
    for (const QPointF &point : outside)
        include(point.y());
    if (cook.target)
        include(toUnit(cook.target->base(), unit));
    const double step = niceStep(high - low, 4);
    low = std::floor(low / step - 0.2) * step; // room for the ticks of the feeds
    high = std::ceil(high / step) * step;
    const double across = niceStep(last, m_small ? 4 : 8);
    last = std::ceil(last / across) * across;
    m_chart->addAxis(axis(0, last, across < 1 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"),
                          static_cast<int>(std::lround(last / across)) + 1),
                     Qt::AlignBottom, tr("Hours after lighting"));
    m_chart->addAxis(axis(low, high, QStringLiteral("%.0f"),
                          static_cast<int>(std::lround((high - low) / step)) + 1),
                     Qt::AlignLeft, m_small ? unit.symbol : tr("Temperature, %1").arg(unit.symbol));

    for (int i = 0; i < probes.size(); ++i) {
        auto *line = new QLineSeries;
        line->setName(probes.at(i).name);
        line->replace(probes.at(i).points);
        line->setPointsVisible(probes.at(i).points.size() < 40);
        m_chart->add(line, i, SeriesPart::Measured);
    }
    if (!outside.isEmpty()) {
        auto *air = new QLineSeries;
        air->setName(tr("outside"));
        air->replace(outside);
        m_chart->add(air, 4, SeriesPart::Measured);
    }
    if (cook.target) {
        auto *target = new QLineSeries;
        target->setName(tr("target"));
        const double y = toUnit(cook.target->base(), unit);
        target->replace({QPointF(0, y), QPointF(last, y)});
        m_chart->add(target, -1, SeriesPart::Future);
    }
    for (QPointF &point : feeds)
        point.setY(low + 0.04 * (high - low));
    auto *ticks = new QScatterSeries;
    ticks->setName(tr("feed"));
    ticks->replace(feeds);
    m_chart->add(ticks, 5, SeriesPart::Measured);
    drawMarks(cook, low, high);
    m_chart->setLegendShown(!m_small);

    m_chart->setDescribe([&books, lit = cook.lit, symbol = unit.symbol,
                          ticks](const QAbstractSeries *series, const QPointF &point) {
        return describePoint(books, lit, symbol, series, point, series == ticks);
    });
    m_summary = tr("%1 over %2 with %3 feeds.")
                    .arg(cookTitle(books, cook), FireWords::span(end - cook.lit))
                    .arg(feeds.size());
}

// At temperature, food on and food off as upright lines without a key; the times are in the form.
void CookTimeline::drawMarks(const Cook &cook, double low, double high)
{
    const std::pair<std::optional<Instant>, QString> marks[] = {
        {cook.atTemperature, tr("at temperature")},
        {cook.foodOn, tr("food on")},
        {cook.foodOff, tr("food off")}};
    for (const auto &[time, name] : marks) {
        if (!time)
            continue;
        auto *line = new QLineSeries;
        line->setName(name);
        const double x = hours(*time - cook.lit);
        line->replace({QPointF(x, low), QPointF(x, high)});
        m_chart->add(line, -1, SeriesPart::Future);
        hideKey(m_chart->chart(), line);
    }
}

} // namespace rickyard::views
