#include "views/wood/rick_paint.h"

#include "views/theme/icons.h"

#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace rickyard::views::paint {

using domain::Cover;
using domain::Readiness;

namespace {

// A small shake that is always the same for the same place, so that a rick keeps its face.
double shake(quint64 lot, int row, int column, int what)
{
    quint64 x = lot * 0x9E3779B97F4A7C15ULL + static_cast<quint64>(row) * 0xBF58476D1CE4E5B9ULL +
                static_cast<quint64>(column) * 0x94D049BB133111EBULL +
                static_cast<quint64>(what) * 0xD6E8FEB86659FD93ULL;
    x ^= x >> 31U;
    x *= 0x7FB5D329728EA185ULL;
    x ^= x >> 27U;
    return static_cast<double>(x % 1000) / 999.0 - 0.5;
}

QColor mixed(const QColor &a, const QColor &b, double share)
{
    const auto f = static_cast<float>(share);
    return QColor::fromRgbF(a.redF() + (b.redF() - a.redF()) * f,
                            a.greenF() + (b.greenF() - a.greenF()) * f,
                            a.blueF() + (b.blueF() - a.blueF()) * f);
}

// Wet wood is darker: from the tint of the surface at 8 % dry basis to full at 45 %.
QColor endColor(const RickStack &stack, const Theme &look)
{
    const QColor wood = look.color(Role::ChartB);
    if (stack.dryPercent < 0)
        return look.color(Role::Surface);
    const double share = std::clamp((stack.dryPercent - 8.0) / 37.0, 0.0, 1.0);
    return mixed(mixed(look.color(Role::Surface), wood, 0.30),
                 mixed(wood, look.color(Role::Ink), 0.25), share);
}

// A split end: a wedge with one rounded side, point up or down in turn.
QPainterPath splitEnd(const QRectF &cell, bool up, double lean)
{
    QPainterPath path;
    const double middle = cell.center().x() + lean * cell.width() * 0.25;
    const double tip = up ? cell.top() : cell.bottom();
    const double base = up ? cell.bottom() : cell.top();
    const double bulge = up ? cell.height() * 0.22 : -cell.height() * 0.22;
    path.moveTo(middle, tip);
    path.lineTo(cell.right(), base - bulge);
    path.quadTo(cell.center().x(), base + bulge * 0.9, cell.left(), base - bulge);
    path.closeSubpath();
    return path;
}

void ends(QPainter &painter, const QRectF &area, const RickStack &stack, const Theme &look)
{
    const double height = look.px(15);
    const int rows = qMax(1, static_cast<int>(area.height() / height));
    const double rowHeight = area.height() / rows;
    const int columns = qMax(1, static_cast<int>(std::lround(area.width() / (rowHeight * 0.72))));
    const double step = area.width() / columns;
    const QColor fill = endColor(stack, look);
    QPen outline(mixed(fill, look.color(Role::Ink), 0.45), look.px(1));
    if (stack.dryPercent < 0)
        outline.setStyle(Qt::DotLine);
    const bool dry =
        stack.dryPercent >= 0 && stack.dryPercent <= domain::kDryEnough.toDouble() / 1000;
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const auto id = static_cast<quint64>(stack.lot);
            const double x = area.left() + column * step + shake(id, row, column, 1) * step * 0.16;
            const QRectF cell(x - step * 0.10, area.top() + row * rowHeight + 0.5, step * 1.2,
                              rowHeight - 1);
            const QRectF bound = cell.intersected(area);
            const bool up = (row + column) % 2 == 0;
            const double lean = shake(id, row, column, 2);
            painter.setPen(outline);
            painter.setBrush(
                mixed(fill, look.color(Role::Ink), 0.04 + 0.07 * shake(id, row, column, 3)));
            painter.drawPath(splitEnd(bound, up, lean));
            // Drying cracks on dry ends; drops of sap on wet ones.
            const QPointF heart(bound.center().x() + lean * step * 0.15,
                                bound.center().y() + (up ? 1 : -1) * rowHeight * 0.12);
            if (dry && shake(id, row, column, 4) > 0.1) {
                painter.drawLine(heart, heart + QPointF(0, (up ? -1 : 1) * rowHeight * 0.34));
            } else if (!dry && stack.dryPercent >= 0) {
                painter.setPen(Qt::NoPen);
                painter.setBrush(look.color(Role::Surface));
                painter.drawEllipse(heart, rowHeight * 0.10, rowHeight * 0.13);
            }
        }
    }
}

void cover(QPainter &painter, const QRectF &area, const RickStack &stack, const Theme &look)
{
    const QColor ink = look.color(Role::InkMuted);
    const double over = look.px(5);
    painter.setPen(QPen(ink, look.px(2), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    const double top = area.top() - look.px(3);
    switch (stack.cover) {
    case Cover::Open:
        break;
    case Cover::TopCover:
        painter.drawLine(QPointF(area.left() - over, top), QPointF(area.right() + over, top));
        painter.drawLine(QPointF(area.left() - over, top),
                         QPointF(area.left() - over, top + look.px(9)));
        painter.drawLine(QPointF(area.right() + over, top),
                         QPointF(area.right() + over, top + look.px(9)));
        break;
    case Cover::KilnDried:
    case Cover::Shed: {
        QPainterPath roof(QPointF(area.left() - over, top));
        roof.lineTo(area.center().x(), top - look.px(11));
        roof.lineTo(area.right() + over, top);
        painter.drawPath(roof);
        painter.drawLine(QPointF(area.left() - over + look.px(1), top),
                         QPointF(area.left() - over + look.px(1), area.bottom()));
        painter.drawLine(QPointF(area.right() + over - look.px(1), top),
                         QPointF(area.right() + over - look.px(1), area.bottom()));
        if (stack.cover == Cover::KilnDried)
            painter.drawLine(QPointF(area.left() - over, top), QPointF(area.right() + over, top));
        break;
    }
    }
    painter.setPen(QPen(look.color(Role::FieldEdge), look.px(2)));
    painter.drawLine(QPointF(area.left() - over, area.bottom() + 1),
                     QPointF(area.right() + over, area.bottom() + 1));
}

// Two crossed boards: this rick is not to be touched.
void barred(QPainter &painter, const QRectF &area, Role role, const QString &iconName,
            const Theme &look)
{
    painter.setClipRect(area);
    painter.setPen(QPen(look.color(Role::Surface), look.px(9)));
    painter.drawLine(area.topLeft(), area.bottomRight());
    painter.drawLine(area.bottomLeft(), area.topRight());
    painter.setPen(QPen(look.color(role), look.px(4)));
    painter.drawLine(area.topLeft(), area.bottomRight());
    painter.drawLine(area.bottomLeft(), area.topRight());
    painter.setClipping(false);
    const double side = look.px(26);
    const QRectF plate(area.center().x() - side / 2, area.center().y() - side / 2, side, side);
    painter.setPen(QPen(look.color(role), look.px(2)));
    painter.setBrush(look.color(Role::Surface));
    painter.drawEllipse(plate);
    const double inner = look.px(6);
    paintIcon(&painter, plate.adjusted(inner, inner, -inner, -inner), iconName, look.color(role));
}

} // namespace

int coverHeight(const Theme &look)
{
    return look.px(18);
}

void rick(QPainter &painter, const QRectF &area, const RickStack &stack, const Theme &look)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    ends(painter, area, stack, look);
    cover(painter, area, stack, look);
    if (stack.readiness == Readiness::NeverBurn)
        barred(painter, area, Role::Act, QStringLiteral("close"), look);
    else if (stack.hold)
        barred(painter, area, Role::Watch, QStringLiteral("lock"), look);
    painter.restore();
}

} // namespace rickyard::views::paint
