#include "views/widgets/numeral.h"

#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"

#include <QEvent>
#include <QPainter>

#include <cmath>

namespace rickyard::views {

Numeral::Numeral(QWidget *parent) : Numeral(QString(), QString(), QString(), parent) {}

Numeral::Numeral(const QString &value, const QString &unit, const QString &caption, QWidget *parent)
    : QWidget(parent), caption_(caption)
{
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
    setValue(value, unit);
}

void Numeral::setValue(const QString &value, const QString &unit)
{
    value_ = value.isEmpty() ? missingMark() : trueMinus(value);
    unit_ = value.isEmpty() ? QString() : unit;
    refresh();
}

void Numeral::setCaption(const QString &caption)
{
    caption_ = caption;
    refresh();
}

void Numeral::setRole(Role role)
{
    role_ = role;
    refresh();
}

void Numeral::setTextStyle(TextStyle style)
{
    style_ = style;
    refresh();
}

void Numeral::refresh()
{
    setAccessibleName(QStringLiteral("%1 %2, %3").arg(value_, unit_, caption_));
    updateGeometry();
    update();
}

bool Numeral::showsShape() const
{
    return role_ == Role::Good || role_ == Role::Watch || role_ == Role::Act || role_ == Role::Info;
}

QFont Numeral::unitFont() const
{
    return theme(this).font(style_ == TextStyle::NumeralHuge ? TextStyle::Title : TextStyle::Body);
}

QSize Numeral::sizeHint() const
{
    const Theme &look = theme(this);
    const QFontMetricsF number(look.font(style_));
    const QFontMetricsF unit(unitFont());
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    const double first = number.horizontalAdvance(value_) +
                         (unit_.isEmpty() ? 0 : look.px(5) + unit.horizontalAdvance(unit_));
    const double second =
        caption.horizontalAdvance(caption_) + (showsShape() ? look.px(12) + look.space(1) : 0);
    const double height =
        number.height() + (caption_.isEmpty() ? 0 : look.px(2) + caption.height());
    return {static_cast<int>(std::ceil(std::max(first, second))) + 1,
            static_cast<int>(std::ceil(height))};
}

void Numeral::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QWidget::changeEvent(event);
}

void Numeral::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setFont(look.font(style_));
    const QFontMetricsF number(painter.font());
    painter.setPen(look.color(isEnabled() ? role_ : Role::InkFaint));
    painter.drawText(QPointF(0, number.ascent()), value_);
    if (!unit_.isEmpty()) {
        painter.setFont(unitFont());
        painter.setPen(look.color(Role::InkMuted));
        painter.drawText(QPointF(number.horizontalAdvance(value_) + look.px(5), number.ascent()),
                         unit_);
    }
    if (caption_.isEmpty())
        return;
    painter.setFont(look.font(TextStyle::Caption));
    const QFontMetricsF caption(painter.font());
    const double top = number.height() + look.px(2);
    double left = 0.0;
    if (showsShape()) {
        const double side = look.px(11);
        paintShape(&painter, QRectF(0, top + (caption.height() - side) / 2.0, side, side), role_,
                   look.color(role_));
        left = look.px(12) + look.space(1);
    }
    painter.setPen(look.color(Role::InkMuted));
    painter.drawText(QPointF(left, top + caption.ascent()), caption_);
}

} // namespace rickyard::views
