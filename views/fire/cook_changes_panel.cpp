#include "views/fire/cook_changes_panel.h"

#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/text_label.h"

#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

CookChangesPanel::CookChangesPanel(PageContext &context, QWidget *parent)
    : QScrollArea(parent), m_context(context)
{
    const Theme &look = theme(this);
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setAccessibleName(tr("Changed afterwards"));
    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(0, look.space(2), look.space(2), 0);
    m_lines = new QVBoxLayout;
    m_lines->setSpacing(look.px(2));
    column->addLayout(m_lines);
    column->addStretch(1);
    setWidget(content);
    viewport()->setAutoFillBackground(false);
    content->setAutoFillBackground(false);
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::CookChange))
                    refresh();
            });
    refresh();
}

void CookChangesPanel::setCook(RecordId cook)
{
    m_cook = cook;
    refresh();
}

void CookChangesPanel::addWords(const QString &text, bool strong, bool muted)
{
    auto *label = new TextLabel(text,
                                strong  ? TextStyle::BodyStrong
                                : muted ? TextStyle::Caption
                                        : TextStyle::Body,
                                muted ? Role::InkMuted : Role::Ink, widget());
    label->setWordWrap(true);
    m_lines->addWidget(label);
}

void CookChangesPanel::addChange(const CookChange &change)
{
    addWords(change.what, true, false);
    if (change.before.isEmpty())
        addWords(tr("added: %1").arg(change.after), false, false);
    else if (change.after.isEmpty())
        addWords(tr("taken away: %1").arg(change.before), false, false);
    else
        addWords(tr("from %1 to %2").arg(change.before, change.after), false, false);
    addWords(items::timeText(m_context.books(), change.time, FireWords(m_context.books()).locale()),
             false, true);
    m_lines->addSpacing(theme(this).space(2));
}

void CookChangesPanel::refresh()
{
    clearLayout(m_lines);
    QVector<CookChange> changes;
    for (const CookChange &change : m_context.books().cookChanges)
        if (change.cook == m_cook)
            changes << change;
    std::stable_sort(changes.begin(), changes.end(), [](const CookChange &a, const CookChange &b) {
        return a.time != b.time ? a.time > b.time : a.id > b.id;
    });
    for (const CookChange &change : std::as_const(changes))
        addChange(change);
    m_count = static_cast<int>(changes.size());
    if (changes.isEmpty())
        addWords(tr("Nothing was changed since the fire was out."), false, true);
    Q_EMIT countChanged(m_count);
}

} // namespace rickyard::views
