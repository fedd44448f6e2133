#include "views/fire/log_chart.h"

#include "views/charts/chart_view.h"
#include "views/charts/nice_axis.h"
#include "views/fire/log_chart_words.h"
#include "views/pits/pit_card.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QVBoxLayout>
#include <QtCharts/QLegendMarker>

#include <algorithm>
#include <limits>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kLineSteps = 24; // the band is curved, the line is not

} // namespace

LogChart::LogChart(QWidget *parent)
    : QWidget(parent), m_chart(new ChartView(tr("Wood use of past cooks"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_chart->setMinimumHeight(theme(this).px(330));
    m_chart->setMarkersOnly(true);
    column->addWidget(m_chart, 1);
    connect(m_chart, &ChartView::pointActivated, this,
            [this](const QAbstractSeries *series, const QPointF &point) {
                if (const RecordId cook = cookAt(series->name(), point); cook != 0)
                    Q_EMIT cookOpened(cook);
            });
    m_chart->setDescribe([this](const QAbstractSeries *series, const QPointF &point) {
        return describe(series->name(), point);
    });
}

void LogChart::showCooks(const Books &books, const QVector<CookFuel> &cooks, UseAgainst against,
                         const QVector<UseLine> &lines)
{
    m_books = &books;
    m_cooks = cooks;
    m_against = against;
    m_chart->clearAll();
    m_points.clear();
    const QVector<UsePoint> points = usePoints(cooks, against);
    drawAxes(points);
    for (const UseLine &line : lines)
        if (line.drawn())
            drawLine(line, lines.size() == 1);
    drawPoints(points);
    QString words;
    for (const SentencePart &part : LogChartWords(books, against).sentence(lines))
        words += part.text;
    m_chart->setSummary(
        tr("%1 finished cooks on %2 pits. %3").arg(points.size()).arg(lines.size()).arg(words));
}

void LogChart::drawAxes(const QVector<UsePoint> &points)
{
    const LogChartWords words(*m_books, m_against);
    const bool fromZero = m_against == UseAgainst::Wind;
    double left =
        fromZero || points.isEmpty() ? words.across(0) : std::numeric_limits<double>::infinity();
    double right = points.isEmpty() ? left + 10 : -std::numeric_limits<double>::infinity();
    double top = 0;
    for (const UsePoint &point : points) {
        left = std::min(left, words.across(point.across));
        right = std::max(right, words.across(point.across));
        top = std::max(top, words.use(point.use));
    }
    const double margin = 0.02 * std::max(right - left, 1.0);
    m_chart->addAxis(niceAxis(fromZero ? left : left - margin, right + margin, 7), Qt::AlignBottom,
                     words.acrossTitle());
    m_chart->addAxis(niceAxis(0, top > 0 ? 1.05 * top : 10, 5), Qt::AlignLeft, words.useTitle());
}

void LogChart::drawLine(const UseLine &line, bool band)
{
    const LogChartWords words(*m_books, m_against);
    const int index = pitIndex(*m_books, line.pit);
    QList<QPointF> middle;
    QList<QPointF> lower;
    QList<QPointF> upper;
    for (int i = 0; i <= kLineSteps; ++i) {
        const double at = line.first + (line.last - line.first) * i / kLineSteps;
        const auto interval = line.at(at);
        if (!interval)
            continue;
        const double x = words.across(at);
        middle << QPointF(x, words.use(interval->centre));
        lower << QPointF(x, std::max(0.0, words.use(interval->lower)));
        upper << QPointF(x, words.use(interval->upper));
    }
    if (band)
        m_chart->add(bandSeries(upper, lower, index, theme(this)), index, SeriesPart::Band);
    auto *drawn = new QLineSeries;
    drawn->setName(band ? tr("its plain line, with 90 % interval of one cook")
                        : tr("plain line of %1").arg(m_books->pits.value(line.pit).name));
    drawn->replace(middle);
    m_chart->add(drawn, index, SeriesPart::Expected);
    if (band)
        return;
    const auto markers = m_chart->chart()->legend()->markers(drawn);
    for (QLegendMarker *marker : markers) // its hue says whose it is
        marker->setVisible(false);
}

void LogChart::drawPoints(const QVector<UsePoint> &points)
{
    const LogChartWords words(*m_books, m_against);
    for (const UsePoint &point : points)
        m_points.add(point.pit, QPointF(words.across(point.across), words.use(point.use)),
                     point.cook);
    m_points.draw(*m_chart, *m_books);
}

RecordId LogChart::cookAt(const QString &series, const QPointF &point) const
{
    return m_points.cookAt(series, point);
}

QString LogChart::describe(const QString &series, const QPointF &point) const
{
    const LogChartWords words(*m_books, m_against);
    const RecordId cook = cookAt(series, point);
    for (const CookFuel &fuel : m_cooks)
        if (fuel.cook == cook && cook != 0)
            return words.cook(fuel);
    return QStringLiteral("%1: %2").arg(
        series, words.useText(point.y() * FireWords(*m_books).unit(Dimension::Heat).scale));
}

} // namespace rickyard::views
