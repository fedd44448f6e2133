// Cooks as points of a chart: a pit a series with its hue and marker, a point leads to its cook.
#pragma once

#include "models/domain/records/books.h"

#include <QHash>
#include <QMap>
#include <QPointF>

namespace rickyard::views {

class ChartView;

class CookPoints
{
public:
    void add(domain::RecordId pit, const QPointF &at, domain::RecordId cook)
    {
        m_byPit[pit].append({at, cook});
    }
    void clear();
    // Puts the series into the chart, after its axes.
    void draw(ChartView &chart, const domain::Books &books);
    // The cook of the nearest point of a series; 0 when it has none.
    [[nodiscard]] domain::RecordId cookAt(const QString &series, const QPointF &point) const;
    [[nodiscard]] qsizetype pits() const { return m_byPit.size(); }

private:
    struct Mark {
        QPointF point;
        domain::RecordId cook = 0;
    };
    QMap<domain::RecordId, QVector<Mark>> m_byPit;
    QHash<QString, QVector<Mark>> m_bySeries;
};

} // namespace rickyard::views
