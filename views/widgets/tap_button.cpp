#include "views/widgets/tap_button.h"

#include "views/theme/icons.h"
#include "views/theme/style_paint.h"
#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QKeySequence>
#include <QPainter>

#include <cmath>

namespace rickyard::views {

TapButton::TapButton(const QString &label, QWidget *parent) : QAbstractButton(parent)
{
    setAttribute(Qt::WA_Hover);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::MinimumExpanding, QSizePolicy::MinimumExpanding);
    setLabel(label);
}

void TapButton::setLabel(const QString &label)
{
    setText(label);
    rename();
}

void TapButton::setSubLabel(const QString &text)
{
    subLabel_ = text;
    rename();
}

void TapButton::setKey(const QKeySequence &key)
{
    setShortcut(key);
    keyText_ = key.toString(QKeySequence::NativeText);
    rename();
}

void TapButton::setIconName(const QString &name)
{
    iconName_ = name;
    updateGeometry();
    update();
}

void TapButton::setKind(ButtonKind kind)
{
    kind_ = kind;
    update();
}

void TapButton::rename()
{
    setAccessibleName(text());
    setAccessibleDescription(
        keyText_.isEmpty() ? subLabel_ : tr("%1 Key %2").arg(subLabel_, keyText_).trimmed());
    updateGeometry();
    update();
}

double TapButton::contentWidth() const
{
    const Theme &look = theme(this);
    const double big = QFontMetricsF(look.font(TextStyle::Display)).horizontalAdvance(text());
    const double small = QFontMetricsF(look.font(TextStyle::Label)).horizontalAdvance(subLabel_);
    const QFontMetricsF caption(look.font(TextStyle::Caption));
    const double key = keyText_.isEmpty() ? 0.0 : caption.horizontalAdvance(keyText_) + look.px(24);
    const double mark = iconName_.isEmpty() ? 0.0 : look.px(32) + look.space(3);
    return mark + std::max(big + key, small);
}

QSize TapButton::minimumSizeHint() const
{
    const Theme &look = theme(this);
    const double words =
        QFontMetricsF(look.font(TextStyle::Display)).height() +
        (subLabel_.isEmpty() ? 0.0
                             : look.px(4) + QFontMetricsF(look.font(TextStyle::Label)).height());
    return {static_cast<int>(std::ceil(contentWidth())) + 2 * look.space(5),
            std::max(look.px(96), static_cast<int>(std::ceil(words)) + 2 * look.space(4))};
}

QSize TapButton::sizeHint() const
{
    const QSize least = minimumSizeHint();
    return {std::max(least.width(), theme(this).px(220)), least.height()};
}

void TapButton::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QAbstractButton::changeEvent(event);
}

void TapButton::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    // By night a large filled area would blind: the primary button is told by tint and edge.
    const bool night = look.mode() == Mode::Night;
    const bool main = kind_ == ButtonKind::Primary && isEnabled();
    const bool primary = main && !night;
    const bool danger = kind_ == ButtonKind::Danger && isEnabled();
    QColor fill = look.color(primary ? Role::Accent : Role::Surface);
    if (main && night)
        fill = look.soft(Role::Accent);
    if (isDown())
        fill = primary ? fill.darker(118) : look.color(Role::Selection);
    else if (underMouse() && isEnabled())
        fill = primary ? fill.darker(108) : look.color(Role::Hover);
    const QRectF box(rect());
    const double radius = look.px(14);
    paint::panel(&painter, box, radius, fill,
                 primary ? QColor()
                         : look.color(danger ? Role::Act
                                      : main ? Role::Accent
                                             : Role::FieldEdge),
                 look.px(1.5));
    if (hasFocus()) {
        const double gap = look.px(primary ? 3 : 0);
        paint::panel(&painter, box.adjusted(gap, gap, -gap, -gap), radius - gap, QColor(),
                     look.color(primary ? Role::AccentInk : Role::Focus), look.px(2.5));
    }
    const QColor ink = look.color(!isEnabled() ? Role::InkFaint
                                  : primary    ? Role::AccentInk
                                  : danger     ? Role::Act
                                               : Role::Ink);
    const QColor quiet = look.color(!isEnabled() ? Role::InkFaint
                                    : primary    ? Role::AccentInk
                                                 : Role::InkMuted);
    double left = look.space(5);
    if (!iconName_.isEmpty()) {
        const double side = look.px(32);
        paintIcon(&painter, QRectF(left, box.center().y() - side / 2.0, side, side), iconName_,
                  ink);
        left += side + look.space(3);
    }
    const QFontMetricsF big(look.font(TextStyle::Display));
    const QFontMetricsF small(look.font(TextStyle::Label));
    const double high = big.height() + (subLabel_.isEmpty() ? 0 : look.px(4) + small.height());
    const double top = box.center().y() - high / 2.0;
    painter.setFont(look.font(TextStyle::Display));
    painter.setPen(ink);
    painter.drawText(QPointF(left, top + big.ascent()), text());
    if (!subLabel_.isEmpty()) {
        painter.setFont(look.font(TextStyle::Label));
        painter.setPen(quiet);
        painter.drawText(QPointF(left, top + big.height() + look.px(4) + small.ascent()),
                         subLabel_);
    }
    if (keyText_.isEmpty())
        return;
    painter.setFont(look.font(TextStyle::Caption));
    const QFontMetricsF caption(painter.font());
    const double wide = std::max<double>(caption.horizontalAdvance(keyText_) + look.px(12),
                                         caption.height() + look.px(4));
    const QRectF cap(box.right() - wide - look.px(12), box.top() + look.px(12), wide,
                     caption.height() + look.px(4));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(quiet, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(cap, look.px(4), look.px(4));
    painter.drawText(cap, Qt::AlignCenter, keyText_);
}

} // namespace rickyard::views
