#include "views/widgets/notice_bar.h"

#include "views/theme/icons.h"
#include "views/theme/style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"
#include "views/widgets/text_label.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>
#include <QToolButton>

namespace rickyard::views {

NoticeBar::NoticeBar(QWidget *parent)
    : QWidget(parent), text_(new TextLabel(QString())), actions_(new QHBoxLayout),
      close_(new QToolButton)
{
    auto *row = new QHBoxLayout(this);
    text_->setWordWrap(true);
    row->addWidget(text_, 1);
    row->addLayout(actions_);
    row->addWidget(close_);
    close_->setIcon(icon(QStringLiteral("close"), Role::InkMuted));
    close_->setAccessibleName(tr("Put the notice away"));
    close_->setToolTip(close_->accessibleName());
    connect(close_, &QToolButton::clicked, this, &NoticeBar::dismiss);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    setSizePolicy(policy);
    onTheme(this, [this, row] {
        const Theme &look = theme(this);
        row->setContentsMargins(look.space(4) + look.px(26), look.space(2), look.space(2),
                                look.space(2));
        row->setSpacing(look.space(3));
        actions_->setSpacing(look.space(2));
    });
    hide();
}

void NoticeBar::showInfo(const QString &text, const QVector<NoticeAction> &actions)
{
    show(Role::Info, text, actions);
}

void NoticeBar::showGood(const QString &text, const QVector<NoticeAction> &actions)
{
    show(Role::Good, text, actions);
}

void NoticeBar::showProblem(const QString &text, const QVector<NoticeAction> &actions)
{
    show(Role::Act, text, actions);
}

void NoticeBar::show(Role role, const QString &text, const QVector<NoticeAction> &actions)
{
    role_ = role;
    text_->setText(text);
    setAccessibleName(text);
    while (QLayoutItem *old = actions_->takeAt(0)) {
        // The button may be the one whose click brought us here.
        old->widget()->hide();
        old->widget()->deleteLater();
        delete old;
    }
    for (qsizetype i = 0; i < std::min<qsizetype>(2, actions.size()); ++i) {
        const NoticeAction &action = actions.at(i);
        auto *button = new QPushButton(action.label);
        button->setAccessibleName(action.label);
        setButtonKind(button, i == 0 ? ButtonKind::Plain : ButtonKind::Quiet);
        connect(button, &QPushButton::clicked, this, [run = action.run] {
            if (run)
                run();
        });
        actions_->addWidget(button);
    }
    QWidget::show();
    update();
    QAccessibleEvent told(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&told);
}

void NoticeBar::dismiss()
{
    hide();
    emit dismissed();
}

QString NoticeBar::text() const
{
    return text_->text();
}

void NoticeBar::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Escape)
        dismiss();
    else
        QWidget::keyPressEvent(event);
}

void NoticeBar::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.soft(role_));
    painter.drawRoundedRect(QRectF(rect()), look.px(8), look.px(8));
    const double side = look.px(15);
    paintShape(&painter, QRectF(look.space(4), (height() - side) / 2.0, side, side), role_,
               look.color(role_));
}

} // namespace rickyard::views
