#include "views/ribbon/ribbon_layout.h"

#include <algorithm>

namespace rickyard::views {

namespace {

// The label's room to the right of the bar ends where the next item of the row begins.
void fitLabels(const QVector<RibbonItem> &items, const QVector<QVector<int>> &rows, double right,
               const RibbonMetrics &m, QVector<RibbonPlace> &places)
{
    for (const QVector<int> &row : rows) {
        double before = m.left;
        for (qsizetype k = 0; k < row.size(); ++k) {
            RibbonPlace &place = places[row.at(k)];
            const QString &text = items.at(row.at(k)).label;
            const double wish = text.isEmpty() ? 0 : m.textWidth(text);
            const double end =
                k + 1 < row.size() ? places.at(row.at(k + 1)).bar.left() - m.gap : right;
            const double room = end - place.bar.right() - m.gap;
            const double leftRoom = place.bar.left() - before - 2 * m.gap;
            if (wish > 0 && room >= std::min(wish, m.leastLabel)) {
                place.label = QRectF(place.bar.right() + m.gap, place.bar.top(),
                                     std::min(room, wish), place.bar.height());
            } else if (wish > 0 && end >= right && leftRoom >= std::min(wish, m.leastLabel)) {
                // At the right edge there is more room on the other side.
                const double width = std::min(leftRoom, wish);
                place.label = QRectF(place.bar.left() - m.gap - width, place.bar.top(), width,
                                     place.bar.height());
            }
            place.hit = place.label.isEmpty() ? place.bar : place.bar.united(place.label);
            before = std::max(place.bar.right(), place.label.right());
        }
    }
}

} // namespace

double ribbonX(const QDateTime &time, QDate from, int days, const RibbonMetrics &metrics)
{
    const double day = static_cast<double>(from.daysTo(time.date())) +
                       time.time().msecsSinceStartOfDay() / 86400000.0;
    return metrics.left + metrics.width * std::clamp(day / std::max(1, days), 0.0, 1.0);
}

RibbonLayout layOutRibbon(const QVector<RibbonItem> &items, QDate from, int days,
                          const RibbonMetrics &m)
{
    RibbonLayout layout;
    layout.places.resize(items.size());
    const double right = m.left + m.width;
    double top = m.top;
    for (int laneIndex = 0; laneIndex < kLaneCount; ++laneIndex) {
        QVector<int> order;
        for (int i = 0; i < items.size(); ++i)
            if (items.at(i).lane == static_cast<Lane>(laneIndex))
                order << i;
        if (order.isEmpty())
            continue;
        std::stable_sort(order.begin(), order.end(),
                         [&](int a, int b) { return items.at(a).start < items.at(b).start; });
        QVector<QVector<int>> rows;
        QVector<double> used;
        for (int i : order) {
            const RibbonItem &item = items.at(i);
            double x = ribbonX(item.start, from, days, m);
            const double width = std::max(m.mark, ribbonX(item.end, from, days, m) - x);
            x = std::min(x, right - width);
            const double label =
                item.label.isEmpty() ? 0 : m.gap + std::min(m.leastLabel, m.textWidth(item.label));
            qsizetype row = 0;
            while (row < used.size() && used.at(row) > x)
                ++row;
            if (row == used.size()) {
                used << 0;
                rows << QVector<int>();
            }
            rows[row] << i;
            used[row] = x + width + m.gap + label;
            layout.places[i].bar =
                QRectF(x, top + static_cast<double>(row) * m.row, width, m.row * 0.78);
        }
        fitLabels(items, rows, right, m, layout.places);
        const double height = static_cast<double>(rows.size()) * m.row;
        layout.lanes << RibbonLane{static_cast<Lane>(laneIndex), top, height};
        top += height + m.laneGap;
    }
    layout.height = top;
    return layout;
}

} // namespace rickyard::views
