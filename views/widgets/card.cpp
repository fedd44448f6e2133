#include "views/widgets/card.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

namespace rickyard::views {

Card::Card(const QString &heading, QWidget *parent)
    : QWidget(parent), head_(new QHBoxLayout), heading_(new TextLabel(heading, TextStyle::Heading)),
      body_(new QVBoxLayout)
{
    auto *whole = new QVBoxLayout(this);
    head_->addWidget(heading_, 1);
    whole->addLayout(head_);
    whole->addLayout(body_, 1);
    setHeading(heading);
    onTheme(this, [this] { relayout(); });
}

void Card::setHeading(const QString &heading)
{
    heading_->setText(heading);
    heading_->setVisible(!heading.isEmpty());
    setAccessibleName(heading);
}

void Card::addHeadingWidget(QWidget *widget)
{
    head_->addWidget(widget);
}

void Card::setFlush(bool flush)
{
    flush_ = flush;
    relayout();
}

void Card::relayout()
{
    const Theme &look = theme(this);
    const int side = flush_ ? 1 : look.space(5);
    layout()->setContentsMargins(side, look.space(4) + look.px(2), side,
                                 flush_ ? look.space(2) : look.space(5));
    head_->setContentsMargins(flush_ ? look.space(5) : 0, 0, flush_ ? look.space(4) : 0, 0);
    head_->setSpacing(look.space(2));
    layout()->setSpacing(look.space(3));
    body_->setSpacing(look.space(3));
    update();
}

void Card::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setPen(QPen(look.color(Role::Hairline), 1));
    painter.setBrush(look.color(Role::Surface));
    painter.drawRoundedRect(box, look.px(10), look.px(10));
}

} // namespace rickyard::views
