#include "views/pits/cook_points.h"

#include "views/charts/chart_view.h"
#include "views/pits/pit_card.h"

#include <limits>

namespace rickyard::views {

using domain::RecordId;

void CookPoints::clear()
{
    m_byPit.clear();
    m_bySeries.clear();
}

void CookPoints::draw(ChartView &chart, const domain::Books &books)
{
    for (auto it = m_byPit.cbegin(); it != m_byPit.cend(); ++it) {
        auto *series = new QScatterSeries;
        QString name = books.pits.value(it.key()).name;
        while (m_bySeries.contains(name)) // two pits of one name stay two series
            name += QStringLiteral(" (2)");
        series->setName(name);
        QList<QPointF> points;
        for (const Mark &mark : it.value())
            points << mark.point;
        series->replace(points);
        m_bySeries.insert(name, it.value());
        chart.add(series, pitIndex(books, it.key()), SeriesPart::Measured);
    }
}

RecordId CookPoints::cookAt(const QString &series, const QPointF &point) const
{
    RecordId nearest = 0;
    double least = std::numeric_limits<double>::infinity();
    const QVector<Mark> marks = m_bySeries.value(series);
    for (const Mark &mark : marks) {
        const QPointF off = mark.point - point;
        const double distance = QPointF::dotProduct(off, off);
        if (distance < least) {
            least = distance;
            nearest = mark.cook;
        }
    }
    return nearest;
}

} // namespace rickyard::views
