#include "views/widgets/shape_glyph.h"

#include <QPainter>

namespace rickyard::views {

void paintShape(QPainter *painter, const QRectF &rectangle, Role role, const QColor &color)
{
    const double side = std::min(rectangle.width(), rectangle.height());
    const QPointF middle = rectangle.center();
    const auto at = [&](double x, double y) {
        return middle + QPointF((x - 0.5) * side, (y - 0.5) * side);
    };
    const QPen line(color, side * 0.13, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(line);
    painter->setBrush(Qt::NoBrush);
    switch (role) {
    case Role::Good:
        painter->drawPolyline(QPolygonF{at(0.12, 0.55), at(0.4, 0.82), at(0.9, 0.22)});
        break;
    case Role::Watch:
        painter->drawPolygon(QPolygonF{at(0.5, 0.1), at(0.95, 0.88), at(0.05, 0.88)});
        break;
    case Role::Act:
        painter->setBrush(color);
        painter->drawPolygon(QPolygonF{at(0.5, 0.06), at(0.94, 0.5), at(0.5, 0.94), at(0.06, 0.5)});
        break;
    case Role::Info:
        painter->drawEllipse(middle, side * 0.41, side * 0.41);
        painter->setPen(Qt::NoPen);
        painter->setBrush(color);
        painter->drawEllipse(middle, side * 0.13, side * 0.13);
        break;
    default:
        painter->setPen(Qt::NoPen);
        painter->setBrush(color);
        painter->drawEllipse(middle, side * 0.25, side * 0.25);
        break;
    }
    painter->restore();
}

} // namespace rickyard::views
