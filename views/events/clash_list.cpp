#include "views/events/clash_list.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

ClashList::ClashList(QWidget *parent) : QWidget(parent)
{
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto *scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto *body = new QWidget(scroll);
    m_column = new QVBoxLayout(body);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(theme(this).space(4));
    scroll->setWidget(body);
    outer->addWidget(scroll);
}

void ClashList::setClashes(const QVector<Clash> &clashes)
{
    clearLayout(m_column);
    if (clashes.isEmpty()) {
        m_column->addWidget(new EmptyState(
            QStringLiteral("check"), tr("No clash in the plan"),
            tr("Looked for: one pit asked for twice, a fire while the crew is away or busy, two "
               "events at once, a cook lit after serving begins, upkeep placed at a fire or "
               "outside "
               "the crew's hours, a pit or a trailer that overdue upkeep bars."),
            this));
        return;
    }
    for (const Clash &clash : clashes)
        addLine(clash);
    m_column->addStretch(1);
}

void ClashList::addLine(const Clash &clash)
{
    const Theme &look = theme(this);
    auto *line = new QWidget(this);
    auto *row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(4));
    auto *words = new QVBoxLayout;
    words->setSpacing(look.px(4));
    words->addWidget(new StatusPill(Role::Act, clashWord(clash.kind), line), 0, Qt::AlignLeft);
    auto *what = new TextLabel(clash.what, TextStyle::Body, Role::Ink, line);
    what->setWordWrap(true);
    words->addWidget(what);
    auto *help = new TextLabel(clash.help, TextStyle::Body, Role::InkMuted, line);
    help->setWordWrap(true);
    words->addWidget(help);
    row->addLayout(words, 1);
    auto *open = new QPushButton(tr("Open"), line);
    open->setAccessibleName(tr("Open the record to change: %1").arg(clash.what));
    connect(open, &QPushButton::clicked, this, [this, link = clash.first] { Q_EMIT opened(link); });
    row->addWidget(open, 0, Qt::AlignTop);
    m_column->addWidget(line);
}

} // namespace rickyard::views
