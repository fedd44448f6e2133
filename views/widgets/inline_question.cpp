#include "views/widgets/inline_question.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/shape_glyph.h"
#include "views/widgets/text_label.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

InlineQuestion::InlineQuestion(const QString &goOn, const QString &goBack, QWidget *parent)
    : QWidget(parent), m_words(new TextLabel(QString())), m_goOn(new QPushButton(goOn)),
      m_goBack(new QPushButton(goBack))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(3) + look.px(20), look.space(2), look.space(3),
                               look.space(3));
    column->setSpacing(look.space(2));
    m_words->setWordWrap(true);
    column->addWidget(m_words);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(look.space(2));
    m_goOn->setAccessibleName(goOn);
    m_goBack->setAccessibleName(goBack);
    buttons->addWidget(m_goOn);
    buttons->addWidget(m_goBack);
    buttons->addStretch(1);
    column->addLayout(buttons);
    connect(m_goOn, &QPushButton::clicked, this, [this] {
        dismiss();
        Q_EMIT wentOn();
    });
    connect(m_goBack, &QPushButton::clicked, this, [this] {
        dismiss();
        Q_EMIT wentBack();
    });
    setVisible(false);
}

void InlineQuestion::ask(const QString &question)
{
    m_words->setText(question);
    m_goOn->setAccessibleDescription(question);
    m_goBack->setAccessibleDescription(question);
    setVisible(true);
    m_goBack->setFocus(Qt::OtherFocusReason);
}

void InlineQuestion::dismiss()
{
    setVisible(false);
}

QString InlineQuestion::question() const
{
    return m_words->text();
}

void InlineQuestion::keyPressEvent(QKeyEvent *event)
{
    if (event->key() != Qt::Key_Escape) {
        QWidget::keyPressEvent(event);
        return;
    }
    dismiss();
    Q_EMIT wentBack();
}

void InlineQuestion::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.soft(Role::Watch));
    painter.drawRoundedRect(rect(), look.radius(), look.radius());
    const double side = look.px(14);
    paintShape(&painter, QRectF(look.space(3), look.space(2) + look.px(2), side, side), Role::Watch,
               look.color(Role::Watch));
}

} // namespace rickyard::views
