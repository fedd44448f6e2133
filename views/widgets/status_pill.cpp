#include "views/widgets/status_pill.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"

#include <QEvent>
#include <QPainter>

namespace rickyard::views {

StatusPill::StatusPill(Role role, const QString &word, QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setStatus(role, word);
}

void StatusPill::setStatus(Role role, const QString &word)
{
    role_ = role;
    word_ = word;
    setAccessibleName(word);
    // A pill without a parent yet must not open as a window of its own.
    if (word.isEmpty())
        hide();
    else if (parentWidget() != nullptr)
        show();
    updateGeometry();
    update();
}

QSize StatusPill::sizeFor(const QString &word, const Theme &look)
{
    const QFontMetrics metrics(look.font(TextStyle::Caption));
    return {look.px(9) + look.px(11) + look.px(6) + metrics.horizontalAdvance(word) + look.px(10),
            std::max(metrics.height() + look.px(6), look.px(24))};
}

QSize StatusPill::sizeHint() const
{
    return sizeFor(word_, theme(this));
}

void StatusPill::paint(QPainter *painter, const QRect &cell, Role role, const QString &word,
                       const Theme &look)
{
    const QSize size = sizeFor(word, look);
    const QRectF box(cell.left(), cell.center().y() + 0.5 - size.height() / 2.0,
                     std::min(size.width(), cell.width()), size.height());
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(Qt::NoPen);
    painter->setBrush(look.soft(role));
    painter->drawRoundedRect(box, box.height() / 2.0, box.height() / 2.0);
    const double side = look.px(11);
    paintShape(painter, QRectF(box.left() + look.px(9), box.center().y() - side / 2.0, side, side),
               role, look.color(role));
    painter->setFont(look.font(TextStyle::Caption));
    painter->setPen(look.color(role));
    const double left = box.left() + look.px(9) + side + look.px(6);
    const QRectF text(left, box.top(), box.right() - left - look.px(4), box.height());
    painter->drawText(
        text, Qt::AlignLeft | Qt::AlignVCenter,
        painter->fontMetrics().elidedText(word, Qt::ElideRight, static_cast<int>(text.width())));
    painter->restore();
}

void StatusPill::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    paint(&painter, rect(), role_, word_, theme(this));
}

void StatusPill::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QWidget::changeEvent(event);
}

} // namespace rickyard::views
