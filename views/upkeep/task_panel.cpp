#include "views/upkeep/task_panel.h"

#include "models/domain/quantities/units.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/charts/bar_meter.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/reason_panel.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

const TaskDue *dueOf(const UpkeepAnswer &answer, RecordId task)
{
    for (const TaskDue &due : answer.tasks)
        if (due.task == task)
            return &due;
    return nullptr;
}

QString sourceText(IntervalSource source)
{
    switch (source) {
    case IntervalSource::LocalCode:
        return TaskPanel::tr("interval from a code: check it locally");
    case IntervalSource::MakersManual:
        return TaskPanel::tr("interval from the maker's manual");
    case IntervalSource::OwnRule:
        return TaskPanel::tr("interval: our own rule");
    case IntervalSource::CommonPractice:
        break;
    }
    return TaskPanel::tr("interval: common practice");
}

QString needsText(const UpkeepTask &task)
{
    QStringList parts{TaskPanel::tr("%1 of work for one person").arg(formatDuration(task.work))};
    if (!task.coldBefore.isZero())
        parts << TaskPanel::tr("fire out %1 before").arg(formatDuration(task.coldBefore));
    if (!task.cureAfter.isZero())
        parts
            << TaskPanel::tr("%1 to cure before the next fire").arg(formatDuration(task.cureAfter));
    if (task.blocksLighting)
        parts << TaskPanel::tr("not to be lit when overdue");
    if (task.blocksTowing)
        parts << TaskPanel::tr("not to be towed when overdue");
    parts << sourceText(task.intervalFrom);
    return parts.join(QStringLiteral(" · "));
}

} // namespace

TaskPanel::TaskPanel(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext)
{
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(theme(this).space(4), 0, 0, 0);
    m_none = new TextLabel(tr("Choose a task to see how it is done."), TextStyle::Body,
                           Role::InkMuted, this);
    m_none->setWordWrap(true);
    m_none->setAlignment(Qt::AlignCenter);
    outer->addWidget(m_none, 1);
    m_scroll = new ColumnScroll(this);
    auto *body = new QWidget(m_scroll);
    auto *column = new QVBoxLayout(body);
    column->setContentsMargins(0, 0, theme(this).space(2), 0);
    column->setSpacing(theme(this).space(3));
    build(column);
    m_scroll->setWidget(body);
    outer->addWidget(m_scroll, 1);
    setMinimumWidth(theme(this).px(310));
    show(true);
}

void TaskPanel::build(QVBoxLayout *column)
{
    const Theme &look = theme(this);
    m_name = new TextLabel(QString(), TextStyle::Title, Role::Ink, this);
    m_name->setWordWrap(true);
    m_state = new StatusPill(Role::Info, QString(), this);
    m_when = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this);
    m_when->setWordWrap(true);
    m_metersHolder = new QWidget(this);
    m_meters = new QVBoxLayout(m_metersHolder);
    m_meters->setContentsMargins(0, 0, 0, 0);
    m_meters->setSpacing(look.space(2));
    m_placeText = new TextLabel(QString(), TextStyle::Body, Role::Ink, this);
    m_placeText->setWordWrap(true);
    m_blockRow = new QWidget(this);
    auto *block = new QHBoxLayout(m_blockRow);
    block->setContentsMargins(0, 0, 0, 0);
    block->setSpacing(look.space(2));
    m_blockText = new TextLabel(QString(), TextStyle::BodyStrong, Role::Act, m_blockRow);
    m_blockText->setWordWrap(true);
    block->addWidget(m_blockText, 1);
    m_override = new QPushButton(tr("Go on all the same…"), m_blockRow);
    m_override->setProperty("role", "quiet");
    m_override->setAccessibleName(tr("Go on although it blocks"));
    connect(m_override, &QPushButton::clicked, this, &TaskPanel::overrideBlock);
    block->addWidget(m_override, 0, Qt::AlignTop);
    m_reasons = new ReasonPanel(m_context, this);
    const auto closeReasons = [this] {
        m_reasons->hide();
        show(false);
    };
    connect(m_reasons, &ReasonPanel::saved, this, closeReasons);
    connect(m_reasons, &ReasonPanel::closed, this, closeReasons);
    m_caution = new CautionNote(QString(), this);
    column->addWidget(m_name);
    column->addWidget(m_state, 0, Qt::AlignLeft);
    column->addWidget(m_when);
    column->addWidget(buildButtons());
    column->addWidget(m_reasons);
    column->addWidget(m_blockRow);
    column->addWidget(m_placeText);
    column->addWidget(m_metersHolder);
    column->addWidget(m_caution);
    const auto section = [&](const QString &name) {
        auto *heading = new TextLabel(name, TextStyle::Label, Role::InkMuted, this);
        auto *text = new TextLabel(QString(), TextStyle::Body, Role::Ink, this);
        text->setWordWrap(true);
        text->setTextInteractionFlags(Qt::TextSelectableByMouse);
        column->addWidget(heading);
        column->addWidget(text);
        m_headings << heading;
        return text;
    };
    m_steps = section(tr("Steps"));
    m_tools = section(tr("Tools"));
    m_needs = section(tr("Needs"));
    m_last = section(tr("Last time"));
    column->addStretch(1);
}

QWidget *TaskPanel::buildButtons()
{
    m_buttons = new QWidget(this);
    auto *flow = new FlowLayout(m_buttons);
    flow->setContentsMargins(0, 0, 0, 0);
    flow->setSpacingSteps(2, 2);
    const auto add = [&](const QString &text, const QString &name, const char *role) {
        auto *button = new QPushButton(text, m_buttons);
        if (role != nullptr)
            button->setProperty("role", role);
        button->setAccessibleName(name);
        flow->addWidget(button);
        return button;
    };
    m_start = add(tr("Start"), tr("Start the work"), "primary");
    connect(m_start, &QPushButton::clicked, this, [this] { Q_EMIT startAsked(m_task); });
    m_place = add(tr("Place"), tr("Place a visit"), nullptr);
    connect(m_place, &QPushButton::clicked, this, [this] { Q_EMIT placeAsked(m_task); });
    m_putOff = add(tr("Put off…"), tr("Put the task off"), "quiet");
    connect(m_putOff, &QPushButton::clicked, this, &TaskPanel::putOff);
    auto *edit = add(tr("Change"), tr("Change the task"), "quiet");
    connect(edit, &QPushButton::clicked, this, [this] {
        Q_EMIT opened(Link{TableId::UpkeepTask, m_task});
    });
    return m_buttons;
}

void TaskPanel::setTask(RecordId task)
{
    if (m_task == task) {
        show(false);
        return;
    }
    m_task = task;
    show(true);
}

void TaskPanel::show(bool anew)
{
    const Books &books = m_context.books();
    const auto found = books.tasks.constFind(m_task);
    const bool any = found != books.tasks.constEnd();
    m_none->setVisible(!any);
    m_scroll->setVisible(any);
    if (!any)
        return;
    if (anew) {
        m_reasons->hide();
        m_scroll->ensureVisible(0, 0);
    }
    const TaskDue *due = dueOf(m_context.answers.answers().upkeep, m_task);
    const Instant now = m_context.verbs.now();
    m_name->setText(found->name);
    m_start->setEnabled(!m_context.readOnly());
    m_putOff->setEnabled(!m_context.readOnly());
    m_place->setEnabled(!m_context.readOnly());
    if (due != nullptr) {
        const DueState state = dueStateOf(books, *due, now);
        m_state->setStatus(state.role, state.word);
        m_when->setText(tr("%1 · %2\n%3")
                            .arg(pitName(books, due->pit),
                                 QString((due->overdue ? tr("overdue %1") : tr("due %1"))
                                             .arg(dueText(books, *due, now))),
                                 lastDoneText(books, *due)));
    } else {
        m_state->setStatus(Role::Info, found->retired ? tr("Retired") : tr("Working it out"));
        m_when->setText(pitName(books, found->pit.value_or(0)));
    }
    showMeters(due);
    showBlock();
    showPlace(*found);
    showReasons(!m_reasons->isHidden());
    m_caution->setCaution(cautionOf(*found));
    m_steps->setText(stepsOf(found->steps).join(QLatin1Char('\n')));
    m_tools->setText(found->tools);
    m_needs->setText(needsText(*found));
    m_headings.at(0)->setVisible(!found->steps.isEmpty());
    m_steps->setVisible(!found->steps.isEmpty());
    m_headings.at(1)->setVisible(!found->tools.isEmpty());
    m_tools->setVisible(!found->tools.isEmpty());
    const QString last = lastTimeText(books, m_task);
    m_last->setText(last);
    m_headings.at(3)->setVisible(!last.isEmpty());
    m_last->setVisible(!last.isEmpty());
}

void TaskPanel::showBlock()
{
    const auto blocks =
        taskBlocks(m_context.books(), m_context.answers.answers().upkeep, m_context.verbs.now());
    m_blockRow->setVisible(blocks.contains(m_task));
    const TaskBlock block = blocks.value(m_task);
    m_blockedCook = block.plannedCook;
    m_blockedEvent = block.event;
    const bool overridden = !block.overridden.isEmpty();
    m_blockText->setLook(TextStyle::BodyStrong, overridden ? Role::Watch : Role::Act);
    m_blockText->setText(overridden ? QString(block.words + QLatin1Char('\n') + block.overridden)
                                    : block.words);
    m_override->setVisible(!overridden);
    m_override->setEnabled(!m_context.readOnly());
}

void TaskPanel::putOff()
{
    const UpkeepTask task = m_context.books().tasks.value(m_task);
    if (task.snoozedUntil.isValid() &&
        task.snoozedUntil > items::toLocal(m_context.books(), m_context.verbs.now()).date()) {
        const auto done = commands::wakeTask(m_context.verbs, m_task);
        if (!done)
            m_context.refuse(done.problems());
        return;
    }
    showReasons(true);
    m_reasons->startSnooze(m_task);
}

void TaskPanel::overrideBlock()
{
    showReasons(true);
    m_reasons->startOverride(m_task, m_blockedCook, m_blockedEvent);
}

void TaskPanel::showMeters(const TaskDue *due)
{
    clearLayout(m_meters);
    const QVector<Meter> meters = due != nullptr ? due->meters : QVector<Meter>();
    const QLocale locale(QStringLiteral("en_US"));
    for (const Meter &meter : meters) {
        auto *bar = new BarMeter(this);
        const double share = meter.limit > 0 ? meter.used / meter.limit : 0;
        bar->setValues(
            meter.used, meter.limit,
            tr("%1 %2 run").arg(formatNumber(meter.used, 0, locale), meter.unitBy(meter.used)),
            tr("due at %1").arg(formatNumber(meter.limit, 0, locale)));
        bar->setRole(share >= 1 ? Role::Act : share >= 0.75 ? Role::Watch : Role::Accent);
        m_meters->addWidget(bar);
    }
}

void TaskPanel::showPlace(const UpkeepTask &task)
{
    const Books &books = m_context.books();
    const UpkeepAnswer &answer = m_context.answers.answers().upkeep;
    QString text;
    bool booked = false;
    for (const Placement &p : answer.placements) {
        if (p.task != task.id)
            continue;
        const QString cold = coldText(books, p, m_context.verbs.now());
        text = (p.booked ? tr("Placed: %1") : tr("There is time on %1"))
                   .arg(spanText(books, p.start, p.end));
        if (!cold.isEmpty())
            text += QString(QStringLiteral(", ") + cold);
        text += QLatin1Char('.');
        booked = p.booked;
        break;
    }
    for (const Unplaced &u : answer.unplaced)
        if (u.task == task.id && text.isEmpty())
            text = tr("No time fits. %1. %2").arg(u.why, u.help);
    m_placeText->setText(text);
    bool started = false;
    for (const Visit &visit : books.visits)
        started = started || (visit.task == task.id && visit.state == VisitState::Started);
    m_start->setText(started ? tr("Go on") : tr("Start"));
    m_start->setAccessibleName(started ? tr("Go on with the work") : tr("Start the work"));
    m_place->setText(booked ? tr("Move") : tr("Place"));
    m_place->setAccessibleName(booked ? tr("Move the visit") : tr("Place a visit"));
    m_place->setVisible(!started);
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    const bool snoozed = task.snoozedUntil.isValid() && task.snoozedUntil > today;
    m_putOff->setText(snoozed ? tr("Take it up again") : tr("Put off…"));
    m_putOff->setAccessibleName(snoozed ? tr("Take the task up again") : tr("Put the task off"));
    if (snoozed)
        m_placeText->setText(
            tr("Put off until %1: %2")
                .arg(items::dayText(task.snoozedUntil, QLocale(QStringLiteral("en_US"))),
                     task.snoozeReason));
}

// While a reason is asked for, only its form and the cautions stand there.
void TaskPanel::showReasons(bool asking)
{
    m_reasons->setVisible(asking);
    m_buttons->setVisible(!asking);
    m_metersHolder->setVisible(!asking && m_meters->count() > 0);
    if (asking) // once the form has its place
        QTimer::singleShot(0, m_reasons,
                           [this] { m_scroll->ensureWidgetVisible(m_reasons, 0, 0); });
    m_placeText->setVisible(!asking && !m_placeText->text().isEmpty());
}

} // namespace rickyard::views
