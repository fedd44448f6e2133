// Sliders: a thin groove, filled up to a round handle.
#include "views/theme/style_paint.h"
#include "views/theme/theme_hub.h"

#include <QPainter>

#include <algorithm>

namespace rickyard::views::paint {

bool slider(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget)
{
    const auto *one = qstyleoption_cast<const QStyleOptionSlider *>(option);
    if (one == nullptr || widget == nullptr || one->orientation != Qt::Horizontal)
        return false;
    const Theme &look = theme(widget);
    const bool enabled = one->state & QStyle::State_Enabled;
    const QRect handle =
        widget->style()->subControlRect(QStyle::CC_Slider, one, QStyle::SC_SliderHandle, widget);
    const double thick = look.px(4);
    const double middle = handle.center().y() + 0.5;
    const QRectF groove(one->rect.left() + look.px(2), middle - thick / 2.0,
                        one->rect.width() - look.px(4), thick);
    panel(painter, groove, thick / 2.0, look.color(Role::FieldEdge), QColor(), 0.0);
    QRectF filled = groove;
    if (one->upsideDown)
        filled.setLeft(handle.center().x());
    else
        filled.setRight(handle.center().x());
    const QColor accent = look.color(enabled ? Role::Accent : Role::InkFaint);
    panel(painter, filled, thick / 2.0, accent, QColor(), 0.0);
    const double side = std::min(handle.width(), handle.height()) - look.px(6);
    const QRectF knob(handle.center().x() + 0.5 - side / 2.0, middle - side / 2.0, side, side);
    panel(painter, knob, side / 2.0, look.color(Role::SurfaceRaised), accent, look.px(2));
    if (one->state & QStyle::State_HasFocus) {
        const double ring = look.px(2);
        panel(painter, knob.adjusted(-ring, -ring, ring, ring), side / 2.0 + ring, QColor(),
              look.color(Role::Focus), look.px(1.5));
    }
    return true;
}

} // namespace rickyard::views::paint
