#include "views/widgets/empty_state.h"

#include "views/theme/icons.h"
#include "views/theme/style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

EmptyState::EmptyState(const QString &iconName, const QString &heading, const QString &text,
                       QWidget *parent)
    : QWidget(parent), mark_(new QLabel), action_(new QPushButton)
{
    auto *column = new QVBoxLayout(this);
    auto *title = new TextLabel(heading, TextStyle::Title);
    auto *words = new TextLabel(text, TextStyle::Body, Role::InkMuted);
    mark_->setTextFormat(Qt::PlainText);
    title->setAlignment(Qt::AlignHCenter);
    title->setWordWrap(true);
    words->setAlignment(Qt::AlignHCenter);
    words->setWordWrap(true);
    column->addStretch(2);
    column->addWidget(mark_, 0, Qt::AlignHCenter);
    column->addWidget(title);
    // Not by alignment: an aligned label is not asked for its height at its width.
    auto *measure = new QHBoxLayout;
    measure->addStretch(1);
    measure->addWidget(words, 100);
    measure->addStretch(1);
    column->addLayout(measure);
    column->addWidget(action_, 0, Qt::AlignHCenter);
    column->addStretch(3);
    setButtonKind(action_, ButtonKind::Primary);
    action_->hide();
    connect(action_, &QPushButton::clicked, this, &EmptyState::triggered);
    setAccessibleName(heading);
    setAccessibleDescription(text);
    onTheme(this, [this, column, words, iconName] {
        const Theme &look = theme(this);
        mark_->setPixmap(
            iconPixmap(iconName, look.color(Role::InkFaint), look.px(48), devicePixelRatioF()));
        // About 60 letters a line, the measure that is read without effort.
        words->setMaximumWidth(look.px(480));
        column->setSpacing(look.space(3));
    });
}

void EmptyState::setAction(const QString &label)
{
    action_->setText(label);
    action_->setAccessibleName(label);
    action_->setVisible(!label.isEmpty());
}

} // namespace rickyard::views
