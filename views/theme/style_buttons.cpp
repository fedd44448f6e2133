// Buttons, check boxes and radio buttons.
#include "views/theme/style_paint.h"

#include "views/theme/theme_hub.h"

#include <QPainter>
#include <QPainterPath>
#include <QVariant>
#include <QWidget>

namespace rickyard::views::paint {

ButtonKind kindOf(const QWidget *widget)
{
    const QString role = widget == nullptr ? QString() : widget->property("role").toString();
    if (role == QLatin1String("primary"))
        return ButtonKind::Primary;
    if (role == QLatin1String("quiet"))
        return ButtonKind::Quiet;
    if (role == QLatin1String("danger"))
        return ButtonKind::Danger;
    return ButtonKind::Plain;
}

void chevron(QPainter *painter, const QRectF &rectangle, Direction direction, const QColor &color,
             double thickness)
{
    const double side = std::min(rectangle.width(), rectangle.height());
    const double wide = side * 0.5;
    const double high = side * 0.26;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->translate(rectangle.center());
    painter->rotate(direction == Direction::Down   ? 0.0
                    : direction == Direction::Up   ? 180.0
                    : direction == Direction::Left ? 90.0
                                                   : 270.0);
    painter->setPen(QPen(color, thickness, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->setBrush(Qt::NoBrush);
    painter->drawPolyline(QPolygonF{QPointF(-wide / 2, -high / 2), QPointF(0, high / 2),
                                    QPointF(wide / 2, -high / 2)});
    painter->restore();
}

void panel(QPainter *painter, const QRectF &rectangle, double radius, const QColor &fill,
           const QColor &edge, double thickness)
{
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const double half = thickness / 2.0;
    const QRectF inner = rectangle.adjusted(half, half, -half, -half);
    painter->setBrush(fill.isValid() ? QBrush(fill) : QBrush(Qt::NoBrush));
    painter->setPen(edge.isValid() && thickness > 0.0 ? QPen(edge, thickness) : QPen(Qt::NoPen));
    painter->drawRoundedRect(inner, radius, radius);
    painter->restore();
}

namespace {

struct ButtonColors {
    QColor fill;
    QColor edge;
};

QColor blend(const QColor &top, const QColor &under, float share)
{
    return QColor::fromRgbF(top.redF() * share + under.redF() * (1.0F - share),
                            top.greenF() * share + under.greenF() * (1.0F - share),
                            top.blueF() * share + under.blueF() * (1.0F - share));
}

ButtonColors buttonColors(const Theme &look, ButtonKind kind, QStyle::State state)
{
    const bool enabled = state & QStyle::State_Enabled;
    const bool hover = enabled && (state & QStyle::State_MouseOver);
    const bool down = state & (QStyle::State_Sunken | QStyle::State_On);
    const QColor ink = look.color(Role::Ink);
    switch (kind) {
    case ButtonKind::Primary: {
        if (!enabled)
            return {look.color(Role::Field), look.color(Role::Hairline)};
        const QColor accent = look.color(Role::Accent);
        return {down    ? blend(ink, accent, 0.25F)
                : hover ? blend(ink, accent, 0.12F)
                        : accent,
                QColor()};
    }
    case ButtonKind::Quiet:
        return {down    ? look.color(Role::Selection)
                : hover ? blend(ink, look.color(Role::Surface), 0.07F)
                        : QColor(),
                QColor()};
    case ButtonKind::Danger:
        return {down || hover ? look.soft(Role::Act) : look.color(Role::Surface),
                look.color(enabled ? Role::Act : Role::Hairline)};
    case ButtonKind::Plain:
        break;
    }
    const QColor rest = look.color(enabled ? Role::Surface : Role::Field);
    return {down    ? look.color(Role::Selection)
            : hover ? blend(ink, rest, 0.05F)
                    : rest,
            look.color(enabled ? Role::FieldEdge : Role::Hairline)};
}

void drawButton(const QStyleOption *option, QPainter *painter, const QWidget *widget,
                ButtonKind kind)
{
    const Theme &look = theme(widget);
    const ButtonColors colors = buttonColors(look, kind, option->state);
    const QRectF box(option->rect);
    panel(painter, box, look.radius(), colors.fill, colors.edge, look.px(1));
    if (option->state & QStyle::State_HasFocus) {
        const double width = look.px(2);
        if (kind == ButtonKind::Primary) {
            const double gap = look.px(2);
            panel(painter, box.adjusted(gap, gap, -gap, -gap), look.radius() - gap, QColor(),
                  look.color(Role::AccentInk), width * 0.75);
        } else {
            panel(painter, box, look.radius(), QColor(), look.color(Role::Focus), width);
        }
    }
}

} // namespace

bool buttonPanel(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    ButtonKind kind = kindOf(widget);
    const auto *button = qstyleoption_cast<const QStyleOptionButton *>(option);
    // The button that Return presses in a dialog is its primary one.
    if (kind == ButtonKind::Plain && button != nullptr &&
        (button->features & QStyleOptionButton::DefaultButton))
        kind = ButtonKind::Primary;
    drawButton(option, painter, widget, kind);
    return true;
}

bool toolButtonPanel(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const ButtonKind kind = kindOf(widget);
    drawButton(option, painter, widget, kind == ButtonKind::Plain ? ButtonKind::Quiet : kind);
    return true;
}

bool checkBox(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const Theme &look = theme(widget);
    const bool enabled = option->state & QStyle::State_Enabled;
    const bool on = option->state & QStyle::State_On;
    const bool part = option->state & QStyle::State_NoChange;
    const bool hover = enabled && (option->state & QStyle::State_MouseOver);
    const Role fill = !enabled ? Role::Field : on || part ? Role::Accent : Role::Surface;
    const bool strong = enabled && (hover || (option->state & QStyle::State_HasFocus));
    const Role edge = !enabled     ? Role::Hairline
                      : on || part ? Role::Accent
                      : strong     ? Role::Accent
                                   : Role::FieldEdge;
    const QRectF box(option->rect);
    panel(painter, box, look.px(4), look.color(fill), look.color(edge), strong ? 2.0 : 1.0);
    if (!on && !part)
        return true;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(look.color(enabled ? Role::AccentInk : Role::InkMuted), box.width() * 0.12,
                         Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const auto at = [&](double x, double y) {
        return QPointF(box.left() + x * box.width(), box.top() + y * box.height());
    };
    if (part)
        painter->drawLine(at(0.28, 0.5), at(0.72, 0.5));
    else
        painter->drawPolyline(QPolygonF{at(0.25, 0.53), at(0.43, 0.7), at(0.76, 0.32)});
    painter->restore();
    return true;
}

bool radioButton(const QStyleOption *option, QPainter *painter, const QWidget *widget)
{
    const Theme &look = theme(widget);
    const bool enabled = option->state & QStyle::State_Enabled;
    const bool on = option->state & QStyle::State_On;
    const bool strong =
        enabled && (option->state & (QStyle::State_MouseOver | QStyle::State_HasFocus));
    const QRectF box(option->rect);
    const Role edge = !enabled ? Role::Hairline : on || strong ? Role::Accent : Role::FieldEdge;
    panel(painter, box, box.width() / 2.0, look.color(enabled ? Role::Surface : Role::Field),
          look.color(edge), strong || on ? 2.0 : 1.0);
    if (on) {
        const double inset = box.width() * 0.29;
        panel(painter, box.adjusted(inset, inset, -inset, -inset), box.width(),
              look.color(enabled ? Role::Accent : Role::InkMuted), QColor(), 0.0);
    }
    return true;
}

} // namespace rickyard::views::paint
