#include "views/ribbon/ribbon_bar.h"

#include "views/charts/chart_style.h"
#include "views/widgets/shape_glyph.h"

#include <QPainter>

#include <algorithm>

namespace rickyard::views {

QColor ribbonInk(const RibbonItem &item, const Theme &look)
{
    if (item.standing == domain::Standing::Act)
        return item.hue >= 0 ? seriesColor(item.hue, look) : look.color(Role::Act);
    if (item.hue >= 0)
        return seriesColor(item.hue, look);
    switch (item.lane) {
    case Lane::Events:
        return look.color(Role::Accent);
    case Lane::Due:
        return look.color(item.standing == domain::Standing::Watch ? Role::Watch : Role::InkMuted);
    default:
        return look.color(Role::InkMuted);
    }
}

bool hasShape(const RibbonItem &item)
{
    return item.standing == domain::Standing::Act || item.standing == domain::Standing::Watch;
}

void paintRibbonBar(QPainter &painter, const Theme &look, const RibbonItem &item,
                    const QRectF &place)
{
    const bool point = item.start == item.end;
    if (point && hasShape(item)) {
        const double side = std::min(place.width(), place.height());
        const Role role = item.standing == domain::Standing::Act ? Role::Act : Role::Watch;
        QRectF shape(0, 0, side, side);
        shape.moveCenter(place.center());
        paintShape(&painter, shape, role, look.color(role));
        return;
    }
    const double line = look.px(1.5);
    const double round = look.px(4);
    const QColor ink = ribbonInk(item, look);
    QColor fill = ink;
    fill.setAlphaF(item.tentative ? 0.06F : 0.22F);
    QPen edge(ink, line);
    if (item.tentative)
        edge.setStyle(Qt::DashLine);
    painter.setPen(edge);
    painter.setBrush(fill);
    const QRectF body = place.adjusted(line / 2, line / 2, -line / 2, -line / 2);
    if (point) {
        const double side = std::min(body.width(), body.height()) * 0.72;
        QRectF dot(0, 0, side, side);
        dot.moveCenter(body.center());
        painter.drawEllipse(dot);
    } else {
        painter.drawRoundedRect(body, round, round);
    }
    painter.setPen(look.color(Role::Ink));
    if (!item.mark.isEmpty())
        painter.drawText(place, Qt::AlignCenter, item.mark);
}

} // namespace rickyard::views
