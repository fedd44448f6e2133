#include "views/upkeep/plan_list.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/due_words.h"
#include "models/items/wording.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/plan_panel.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

Visit visitOf(const Placement &placement)
{
    Visit visit;
    visit.task = placement.task;
    visit.state = VisitState::Placed;
    visit.start = placement.start;
    visit.end = placement.end;
    return visit;
}

PlanList::PlanList(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext),
      m_summary(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_accept(new QPushButton(tr("Accept all"), this))
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(look.space(3));
    auto *head = new QHBoxLayout;
    head->setSpacing(look.space(3));
    m_summary->setWordWrap(true);
    head->addWidget(m_summary, 1);
    m_accept->setAccessibleName(tr("Accept all proposed visits"));
    m_accept->setProperty("role", "primary");
    connect(m_accept, &QPushButton::clicked, this, [this] { acceptProposals(m_context); });
    head->addWidget(m_accept);
    outer->addLayout(head);
    auto *scroll = new ColumnScroll(this);
    auto *body = new QWidget(scroll);
    m_lines = new QVBoxLayout(body);
    m_lines->setContentsMargins(0, 0, look.space(2), 0);
    m_lines->setSpacing(look.space(1));
    scroll->setWidget(body);
    outer->addWidget(scroll, 1);
}

void PlanList::refresh()
{
    clearLayout(m_lines);
    const Books &books = m_context.books();
    const UpkeepAnswer &answer = m_context.answers.answers().upkeep;
    m_proposed = 0;
    int booked = 0;
    for (const Placement &p : answer.placements)
        (p.booked ? booked : m_proposed) += 1;
    m_accept->setEnabled(m_proposed > 0 && !m_context.readOnly());
    m_summary->setText(tr("In the coming six weeks: %1 proposed, %2 placed, %3 without a place.")
                           .arg(m_proposed)
                           .arg(booked)
                           .arg(answer.unplaced.size()));
    if (!answer.unplaced.isEmpty()) {
        addDay(tr("Without a place"));
        for (const Unplaced &u : answer.unplaced)
            addUnplaced(u);
    }
    QDate day;
    for (const Placement &p : answer.placements) {
        const QDate its = items::toLocal(books, p.start).date();
        if (its != day)
            addDay(QLocale(QStringLiteral("en_US")).toString(its, QStringLiteral("dddd d MMMM")));
        day = its;
        addPlacement(p);
    }
    if (answer.placements.isEmpty() && answer.unplaced.isEmpty())
        addDay(tr("Nothing falls due in the coming six weeks."));
    m_lines->addStretch(1);
}

void PlanList::addDay(const QString &day)
{
    auto *heading = new TextLabel(day, TextStyle::Heading, Role::Ink, this);
    heading->setContentsMargins(0, m_lines->count() == 0 ? 0 : theme(this).space(3), 0, 0);
    heading->setWordWrap(true);
    m_lines->addWidget(heading);
}

void PlanList::addLine(RecordId task, const QString &text, int role, const QString &word,
                       const std::optional<Act> &act)
{
    const Theme &look = theme(this);
    QString name = taskPhrase(m_context.books(), task);
    name[0] = name.at(0).toUpper();
    auto *line = new QWidget(this);
    auto *row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    auto *title = new TextLabel(name, TextStyle::Body, Role::Ink, line);
    title->setWordWrap(true);
    title->setFixedWidth(look.px(280));
    row->addWidget(title, 0, Qt::AlignVCenter);
    auto *words = new TextLabel(text, TextStyle::Body, Role::InkMuted, line);
    words->setWordWrap(true);
    row->addWidget(words, 1);
    auto *pill = new QWidget(line); // a column of its own
    auto *cell = new QHBoxLayout(pill);
    cell->setContentsMargins(0, 0, 0, 0);
    cell->addWidget(new StatusPill(static_cast<Role>(role), word, pill), 0, Qt::AlignLeft);
    pill->setFixedWidth(std::max(look.px(130), StatusPill::sizeFor(word, look).width()));
    row->addWidget(pill);
    const auto button = [&](const QString &label, const QString &accessible) {
        auto *made = new QPushButton(label, line);
        made->setProperty("role", "quiet");
        made->setAccessibleName(accessible);
        row->addWidget(made);
        return made;
    };
    if (act) {
        auto *does = button(act->label, act->name.arg(name));
        does->setMinimumWidth(look.px(88));
        does->setEnabled(!m_context.readOnly());
        connect(does, &QPushButton::clicked, this, act->run);
    }
    auto *open = button(tr("Open"), tr("Open the task: %1").arg(name));
    connect(open, &QPushButton::clicked, this, [this, task] {
        Q_EMIT opened(Link{TableId::UpkeepTask, task});
    });
    m_lines->addWidget(line);
}

void PlanList::addPlacement(const Placement &p)
{
    const Books &books = m_context.books();
    QString text = spanText(books, p.start, p.end, false);
    const QString cold = coldText(books, p, m_context.verbs.now());
    if (!cold.isEmpty())
        text += QString(QStringLiteral(", ") + cold);
    if (p.freeFrom > p.end)
        text += tr("; cures %1").arg(formatDuration(p.freeFrom - p.end));
    const Role role = p.late ? Role::Watch : p.booked ? Role::Good : Role::Info;
    const QString word = p.late     ? (p.booked ? tr("Placed late") : tr("Proposed, late"))
                         : p.booked ? tr("Placed")
                                    : tr("Proposed");
    const RecordId task = p.task;
    const Act act = p.booked ? Act{tr("Start"), tr("Start the work: %1"),
                                   [this, task] { Q_EMIT startAsked(task); }}
                             : Act{tr("Accept"), tr("Accept the proposal: %1"),
                                   [this, task] { acceptProposals(m_context, {task}); }};
    addLine(p.task, text, static_cast<int>(role), word, act);
}

void PlanList::addUnplaced(const Unplaced &u)
{
    addLine(u.task, tr("%1. %2").arg(u.why, u.help), static_cast<int>(Role::Act), tr("No time"));
}

} // namespace rickyard::views
