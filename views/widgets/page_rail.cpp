#include "views/widgets/page_rail.h"

#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

RailButton::RailButton(const QString &iconName, const QString &label, QWidget *parent)
    : QAbstractButton(parent), iconName_(iconName)
{
    setText(label);
    setAccessibleName(label);
    setCheckable(true);
    setAttribute(Qt::WA_Hover);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
}

void RailButton::setBadge(int count, const QString &meaning)
{
    badge_ = std::max(0, count);
    setAccessibleName(badge_ == 0 ? text()
                                  : tr("%1, %2 %3").arg(text(), QString::number(badge_), meaning));
    setToolTip(badge_ == 0 ? QString() : tr("%1 %2").arg(QString::number(badge_), meaning));
    update();
}

QSize RailButton::sizeHint() const
{
    const Theme &look = theme(this);
    const int text = QFontMetrics(look.font(TextStyle::BodyStrong)).horizontalAdvance(this->text());
    return {look.space(4) + look.px(22) + look.space(3) + text + look.space(3) + look.px(28),
            look.px(44)};
}

void RailButton::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QAbstractButton::changeEvent(event);
}

void RailButton::keyPressEvent(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Up:
        emit stepped(-1);
        return;
    case Qt::Key_Down:
        emit stepped(1);
        return;
    case Qt::Key_Home:
        emit jumped(false);
        return;
    case Qt::Key_End:
        emit jumped(true);
        return;
    default:
        QAbstractButton::keyPressEvent(event);
    }
}

void RailButton::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(0, look.px(2), 0, -look.px(2));
    painter.setPen(Qt::NoPen);
    if (isChecked())
        painter.setBrush(look.color(Role::Selection));
    else if (underMouse())
        painter.setBrush(look.color(Role::Hover));
    if (isChecked() || underMouse())
        painter.drawRoundedRect(box, look.radius(), look.radius());
    if (isChecked()) {
        painter.setBrush(look.color(Role::Accent));
        painter.drawRoundedRect(
            QRectF(box.left(), box.top() + look.px(9), look.px(3), box.height() - 2 * look.px(9)),
            look.px(1.5), look.px(1.5));
    }
    const int side = look.px(22);
    const QRectF mark(look.space(4), box.center().y() - side / 2.0, side, side);
    paintIcon(&painter, mark, iconName_, look.color(isChecked() ? Role::Accent : Role::InkMuted));
    painter.setPen(look.color(isChecked() ? Role::Ink : Role::InkMuted));
    painter.setFont(look.font(isChecked() ? TextStyle::BodyStrong : TextStyle::Body));
    painter.drawText(QRectF(mark.right() + look.space(3), box.top(), box.width(), box.height()),
                     Qt::AlignLeft | Qt::AlignVCenter, text());
    if (badge_ > 0) {
        const QString number = badge_ > 99 ? QStringLiteral("99+") : QString::number(badge_);
        painter.setFont(look.font(TextStyle::Caption));
        const double height = look.px(20);
        const double width =
            std::max<double>(height, painter.fontMetrics().horizontalAdvance(number) + look.px(11));
        const QRectF dot(box.right() - look.space(2) - width, box.center().y() - height / 2.0,
                         width, height);
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.soft(Role::Act));
        painter.drawRoundedRect(dot, height / 2.0, height / 2.0);
        painter.setPen(look.color(Role::Act));
        painter.drawText(dot, Qt::AlignCenter, number);
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look.color(Role::Focus), look.px(2)));
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), look.radius(), look.radius());
    }
}

PageRail::PageRail(QWidget *parent) : QWidget(parent)
{
    setAccessibleName(tr("Pages"));
    auto *whole = new QVBoxLayout(this);
    layout_ = new QVBoxLayout;
    foot_ = new QVBoxLayout;
    whole->addLayout(layout_);
    whole->addStretch(1);
    whole->addLayout(foot_);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
    onTheme(this, [this] { relayout(); });
}

void PageRail::relayout()
{
    const Theme &look = theme(this);
    layout()->setContentsMargins(look.space(3), look.space(5), look.space(3), look.space(4));
    layout_->setSpacing(look.px(2));
    update();
}

int PageRail::addPage(const QString &iconName, const QString &label)
{
    auto *button = new RailButton(iconName, label, this);
    const int index = count();
    buttons_.append(button);
    layout_->addWidget(button);
    connect(button, &QAbstractButton::clicked, this, [this, index] { setCurrent(index); });
    connect(button, &RailButton::stepped, this, [this, index](int by) { focusOn(index + by); });
    connect(button, &RailButton::jumped, this,
            [this](bool last) { focusOn(last ? count() - 1 : 0); });
    if (current_ < 0)
        setCurrent(0);
    return index;
}

void PageRail::focusOn(int index)
{
    const int to = std::clamp(index, 0, count() - 1);
    buttons_.at(to)->setFocus(Qt::TabFocusReason);
    setCurrent(to);
}

void PageRail::setCurrent(int index)
{
    if (index < 0 || index >= count())
        return;
    const bool moved = index != current_;
    current_ = index;
    // Set in every case: a click on the current page must not uncheck it.
    for (int i = 0; i < count(); ++i) {
        buttons_.at(i)->setChecked(i == index);
        // One stop for Tab; the arrows do the rest.
        buttons_.at(i)->setFocusPolicy(i == index ? Qt::StrongFocus : Qt::ClickFocus);
    }
    if (moved)
        emit currentChanged(index);
}

void PageRail::setBadge(int index, int count, const QString &meaning)
{
    if (RailButton *target = button(index))
        target->setBadge(count, meaning);
}

void PageRail::addFootWidget(QWidget *widget)
{
    foot_->addWidget(widget);
}

void PageRail::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.fillRect(QRect(width() - 1, 0, 1, height()), theme(this).color(Role::Hairline));
}

} // namespace rickyard::views
