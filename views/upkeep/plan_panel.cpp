#include "views/upkeep/plan_panel.h"

#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/placement.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/plan_board.h"
#include "views/upkeep/plan_key.h"
#include "views/upkeep/plan_list.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

bool acceptProposals(PageContext &context, const QVector<RecordId> &tasks)
{
    QVector<Visit> visits;
    for (const Placement &p : context.answers.answers().upkeep.placements)
        if (!p.booked && (tasks.isEmpty() || tasks.contains(p.task)))
            visits << visitOf(p);
    if (visits.isEmpty() || context.readOnly())
        return false;
    if (!context.answers.current()) {
        context.say(PlanPanel::tr("The plan is being worked out anew; try again in a moment."));
        return false;
    }
    const auto done = context.verbs.bookVisits(visits);
    if (!done) {
        context.refuse(done.problems());
        return false;
    }
    context.say(visits.size() == 1
                    ? PlanPanel::tr("Placed: %1, %2.")
                          .arg(taskPhrase(context.books(), visits.first().task),
                               spanText(context.books(), visits.first().start,
                                        visits.first().end.value_or(visits.first().start)))
                    : PlanPanel::tr("%1 visits placed.").arg(visits.size()));
    return true;
}

PlanPanel::PlanPanel(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    column->addWidget(buildHead());
    PlanBoard::Speech speech;
    speech.span = [this](Instant start, Instant end) {
        return spanText(m_context.books(), start, end);
    };
    speech.trouble = [this](RecordId task, Instant start, Instant end) {
        return planTrouble(m_context.books(), task, start, end, m_context.verbs.now());
    };
    m_board = new PlanBoard(context.books().yard().timeZone, std::move(speech), this);
    m_board->setMovable(!context.readOnly());
    column->addWidget(m_board);
    column->addWidget(buildFoot());
    connect(m_board, &PlanBoard::wordsChanged, m_words, &QLabel::setText);
    connect(m_board, &PlanBoard::currentChanged, this, &PlanPanel::followCurrent);
    connect(m_board, &PlanBoard::firstChanged, this, &PlanPanel::followWeeks);
    connect(m_board, &PlanBoard::opened, this, &PlanPanel::opened);
    connect(m_board, &PlanBoard::moved, this, &PlanPanel::move);
}

QWidget *PlanPanel::buildHead()
{
    const Theme &look = theme(this);
    auto *head = new QWidget(this);
    auto *row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(2));
    m_weeks = new TextLabel(QString(), TextStyle::Heading, Role::Ink, head);
    row->addWidget(m_weeks);
    const auto tool = [&](const QString &iconName, const QString &name, int days) {
        auto *button = new QToolButton(head);
        button->setIcon(icon(iconName));
        button->setToolTip(name);
        button->setAccessibleName(name);
        connect(button, &QAbstractButton::clicked, this,
                [this, days] { m_board->setFirst(m_board->first().addDays(days)); });
        row->addWidget(button);
        return button;
    };
    m_earlier = tool(QStringLiteral("previous"), tr("A week earlier"), -7);
    m_later = tool(QStringLiteral("next"), tr("A week later"), 7);
    row->addSpacing(look.space(3));
    row->addWidget(new PlanKey(head), 1);
    m_summary = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, head);
    row->addWidget(m_summary);
    m_acceptAll = new QPushButton(tr("Accept all"), head);
    m_acceptAll->setAccessibleName(tr("Accept all proposed visits"));
    connect(m_acceptAll, &QPushButton::clicked, this, [this] { acceptProposals(m_context); });
    row->addWidget(m_acceptAll);
    return head;
}

QWidget *PlanPanel::buildFoot()
{
    const Theme &look = theme(this);
    auto *foot = new QWidget(this);
    auto *row = new QHBoxLayout(foot);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    foot->setFixedHeight(look.controlHeight()); // it does not jump
    m_parts = new QComboBox(foot);
    m_parts->setAccessibleName(tr("Which tasks of the chosen visit"));
    connect(m_parts, &QComboBox::activated, this, [this](int index) {
        m_board->choosePart(index - 1);
        const auto tasks = chosenTasks();
        if (tasks.size() == 1)
            Q_EMIT taskChosen(tasks.first());
    });
    row->addWidget(m_parts);
    m_words = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, foot);
    m_words->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_words->setWordWrap(true);
    row->addWidget(m_words, 1);
    const auto button = [&](const QString &text, const QString &name, void (PlanPanel::*act)()) {
        auto *made = new QPushButton(text, foot);
        made->setProperty("role", "quiet");
        made->setAccessibleName(name);
        connect(made, &QPushButton::clicked, this, act);
        row->addWidget(made);
        return made;
    };
    m_accept = button(tr("Accept"), tr("Accept this proposal"), &PlanPanel::accept);
    m_letGo = button(tr("Take off the plan"), tr("Take the chosen visit off the plan"),
                     &PlanPanel::letGo);
    return foot;
}

void PlanPanel::refresh()
{
    const Books &books = m_context.books();
    const UpkeepAnswer &answer = m_context.answers.answers().upkeep;
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    m_following = true;
    m_board->setContent(planContent(books, answer, m_context.verbs.now(), kPlacementDays), today);
    m_following = false;
    showChosen();
    int proposed = 0;
    for (const Placement &p : answer.placements)
        proposed += p.booked ? 0 : 1;
    const auto placed = answer.placements.size() - proposed;
    QString text = tr("%1 proposed, %2 placed").arg(proposed).arg(placed);
    if (!answer.unplaced.isEmpty())
        text += tr(", %1 without a place").arg(answer.unplaced.size());
    m_summary->setText(text);
    m_acceptAll->setEnabled(proposed > 0 && !m_context.readOnly());
    followWeeks();
}

void PlanPanel::followWeeks()
{
    const QLocale locale(QStringLiteral("en_US"));
    const QDate first = m_board->first();
    if (!first.isValid())
        return;
    m_weeks->setText(
        tr("%1 to %2")
            .arg(locale.toString(first, QStringLiteral("d MMM")),
                 locale.toString(first.addDays(PlanBoard::kDays - 1), QStringLiteral("d MMM"))));
    const QDate today = items::toLocal(m_context.books(), m_context.verbs.now()).date();
    m_earlier->setEnabled(first > today);
    m_later->setEnabled(first.addDays(PlanBoard::kDays) < today.addDays(kPlacementDays));
}

QVector<RecordId> PlanPanel::chosenTasks() const
{
    QVector<RecordId> tasks;
    const int current = m_board->current();
    if (current < 0)
        return tasks;
    const PlanBlock &block = m_board->content().blocks.at(current);
    for (int i = 0; i < block.visits.size(); ++i)
        if (m_board->part() < 0 || m_board->part() == i)
            tasks << block.visits.at(i).task;
    return tasks;
}

void PlanPanel::showChosen()
{
    buildParts();
    const int current = m_board->current();
    const bool some = current >= 0 && !m_context.readOnly();
    const PlanBlock block = some ? m_board->content().blocks.at(current) : PlanBlock();
    m_accept->setVisible(some && !block.booked);
    m_letGo->setVisible(some && block.booked && !block.started);
    m_words->setText(m_board->words());
}

void PlanPanel::followCurrent()
{
    if (m_following)
        return;
    showChosen();
    const auto tasks = chosenTasks();
    if (!tasks.isEmpty())
        Q_EMIT taskChosen(tasks.first());
}

// An evening of several tasks is moved as one, or a task by itself.
void PlanPanel::buildParts()
{
    m_parts->clear();
    const int current = m_board->current();
    const PlanBlock block = current >= 0 ? m_board->content().blocks.at(current) : PlanBlock();
    m_parts->setVisible(block.visits.size() > 1);
    m_parts->addItem(tr("All %1 tasks").arg(block.visits.size()));
    for (const PlanVisit &visit : block.visits)
        m_parts->addItem(visit.name);
    m_parts->setCurrentIndex(m_board->part() + 1);
}

void PlanPanel::choose(RecordId task)
{
    m_following = true;
    m_board->choose(task);
    m_following = false;
    showChosen();
}

void PlanPanel::accept()
{
    acceptProposals(m_context, chosenTasks());
}

void PlanPanel::letGo()
{
    QVector<RecordId> visits;
    const PlanBlock &block = m_board->content().blocks.at(m_board->current());
    for (int i = 0; i < block.visits.size(); ++i)
        if ((m_board->part() < 0 || m_board->part() == i) && block.visits.at(i).visit != 0)
            visits << block.visits.at(i).visit;
    const auto done = m_context.verbs.remove(TableId::Visit, visits);
    if (!done)
        m_context.refuse(done.problems());
    else
        m_context.say(tr("Taken off the plan. Undo puts it back."));
}

void PlanPanel::move(const QVector<Visit> &visits)
{
    const auto done = commands::pinVisits(m_context.verbs, visits);
    if (!done) {
        m_context.refuse(done.problems());
        refresh(); // back to where it was
        return;
    }
    m_context.say(tr("Placed by hand: %1, %2. The rest is planned around it.")
                      .arg(visits.size() == 1 ? taskPhrase(m_context.books(), visits.first().task)
                                              : tr("%1 visits").arg(visits.size()),
                           spanText(m_context.books(), visits.first().start,
                                    visits.last().end.value_or(visits.last().start))));
}

QString PlanPanel::words() const
{
    return m_words->text();
}

} // namespace rickyard::views
