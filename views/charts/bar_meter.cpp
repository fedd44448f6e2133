#include "views/charts/bar_meter.h"

#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

BarMeter::BarMeter(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void BarMeter::setValues(double have, double need, const QString &haveText, const QString &needText)
{
    have_ = have;
    need_ = need;
    haveText_ = haveText;
    needText_ = needText;
    setAccessibleName(QStringLiteral("%1, %2").arg(haveText, needText));
    updateGeometry();
    update();
}

void BarMeter::setRole(Role role)
{
    role_ = role;
    update();
}

QSize BarMeter::sizeHint() const
{
    const Theme &look = theme(this);
    const QFontMetrics metrics(look.font(TextStyle::Caption));
    const int words = metrics.horizontalAdvance(haveText_) + metrics.horizontalAdvance(needText_);
    return {std::max(look.px(160), words + look.space(4)),
            metrics.height() + look.space(2) + look.px(16)};
}

void BarMeter::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QWidget::changeEvent(event);
}

void BarMeter::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(look.font(TextStyle::Caption));
    const double text = painter.fontMetrics().height();
    painter.setPen(look.color(Role::Ink));
    painter.drawText(QRectF(0, 0, width(), text), Qt::AlignLeft, haveText_);
    painter.setPen(look.color(Role::InkMuted));
    painter.drawText(QRectF(0, 0, width(), text), Qt::AlignRight, needText_);
    const double thick = look.px(8);
    const double top = text + look.space(2) + (look.px(16) - thick) / 2.0;
    const QRectF groove(0, top, width(), thick);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.color(Role::Hairline));
    painter.drawRoundedRect(groove, thick / 2, thick / 2);
    const double whole = std::max(std::isfinite(have_) ? have_ : 0.0, need_) * 1.06;
    if (!(whole > 0.0))
        return;
    if (std::isfinite(have_) && have_ > 0.0) {
        painter.setBrush(look.color(role_));
        painter.drawRoundedRect(QRectF(0, top, std::max(thick, width() * have_ / whole), thick),
                                thick / 2, thick / 2);
    }
    // The need is a mark across the bar, so that it is seen without colour.
    const double x = width() * need_ / whole;
    painter.setBrush(look.color(Role::Ink));
    painter.drawRect(QRectF(x - look.px(1), top - look.px(4), look.px(2), thick + look.px(8)));
}

} // namespace rickyard::views
