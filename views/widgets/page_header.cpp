#include "views/widgets/page_header.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>

namespace rickyard::views {

PageHeader::PageHeader(const QString &title, const QString &subtitle, QWidget *parent)
    : QWidget(parent), title_(new TextLabel(title, TextStyle::Title)),
      subtitle_(new TextLabel(subtitle, TextStyle::Body, Role::InkMuted)), actions_(new QHBoxLayout)
{
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    auto *words = new QVBoxLayout;
    words->addWidget(title_);
    words->addWidget(subtitle_);
    row->addLayout(words, 1);
    row->addLayout(actions_);
    row->setAlignment(actions_, Qt::AlignTop);
    subtitle_->setWordWrap(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setSubtitle(subtitle);
    onTheme(this, [this, words, row] {
        words->setSpacing(theme(this).px(2));
        actions_->setSpacing(theme(this).space(2));
        row->setSpacing(theme(this).space(4));
    });
}

void PageHeader::setTitle(const QString &title)
{
    title_->setText(title);
}

void PageHeader::setSubtitle(const QString &subtitle)
{
    subtitle_->setText(subtitle);
    subtitle_->setVisible(!subtitle.isEmpty());
}

void PageHeader::addAction(QWidget *action)
{
    actions_->addWidget(action);
}

} // namespace rickyard::views
