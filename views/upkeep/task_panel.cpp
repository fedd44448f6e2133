#include "views/upkeep/task_panel.h"

#include "models/domain/quantities/units.h"
#include "views/charts/bar_meter.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/done_panel.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
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
    m_scroll = new QScrollArea(this);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
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
    m_buttons = new QWidget(this);
    auto *buttons = new QHBoxLayout(m_buttons);
    buttons->setContentsMargins(0, 0, 0, 0);
    buttons->setSpacing(look.space(2));
    m_doneNow = new QPushButton(tr("Done now"), m_buttons);
    m_doneNow->setProperty("role", "primary");
    m_doneNow->setAccessibleName(tr("Done now"));
    connect(m_doneNow, &QPushButton::clicked, this, &TaskPanel::startDone);
    m_place = new QPushButton(tr("Place"), m_buttons);
    m_place->setAccessibleName(tr("Place a visit"));
    connect(m_place, &QPushButton::clicked, this, [this] { Q_EMIT placeAsked(m_task); });
    auto *edit = new QPushButton(tr("Change the task"), m_buttons);
    edit->setProperty("role", "quiet");
    edit->setAccessibleName(tr("Change the task"));
    connect(edit, &QPushButton::clicked, this, [this] {
        Q_EMIT opened(Link{TableId::UpkeepTask, m_task});
    });
    buttons->addWidget(m_doneNow);
    buttons->addWidget(m_place);
    buttons->addWidget(edit);
    buttons->addStretch(1);
    m_done = new DonePanel(m_context, this);
    const auto closeDone = [this] {
        m_done->hide();
        show(false);
    };
    connect(m_done, &DonePanel::finished, this, closeDone);
    connect(m_done, &DonePanel::cancelled, this, closeDone);
    m_caution = new CautionNote(QString(), this);
    column->addWidget(m_name);
    column->addWidget(m_state, 0, Qt::AlignLeft);
    column->addWidget(m_when);
    column->addWidget(m_metersHolder);
    column->addWidget(m_placeText);
    column->addWidget(m_buttons);
    column->addWidget(m_done);
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
    column->addStretch(1);
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
        m_done->hide();
        m_scroll->ensureVisible(0, 0);
    }
    const TaskDue *due = dueOf(m_context.answers.answers().upkeep, m_task);
    const Instant now = m_context.verbs.now();
    m_name->setText(found->name);
    m_doneNow->setEnabled(!m_context.readOnly());
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
    showPlace(*found);
    showDoing(!m_done->isHidden());
    const QString caution = cautionWithoutClosing(found->cautions);
    m_caution->setCaution(caution.isEmpty() ? tr("Before you start: the fire is out, the pit is "
                                                 "cold, and ash is treated as hot.")
                                            : caution);
    m_steps->setText(found->steps);
    m_tools->setText(found->tools);
    m_needs->setText(needsText(*found));
    m_headings.at(0)->setVisible(!found->steps.isEmpty());
    m_steps->setVisible(!found->steps.isEmpty());
    m_headings.at(1)->setVisible(!found->tools.isEmpty());
    m_tools->setVisible(!found->tools.isEmpty());
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
    m_place->setText(booked ? tr("Move") : tr("Place"));
    m_place->setAccessibleName(booked ? tr("Move the visit") : tr("Place a visit"));
}

void TaskPanel::startDone()
{
    if (m_context.readOnly() || !m_context.books().tasks.contains(m_task))
        return;
    showDoing(true);
    m_done->start(m_task);
    // Once the panel has its place.
    QTimer::singleShot(0, m_done, [this] { m_scroll->ensureWidgetVisible(m_done, 0, 0); });
}

// While it is being recorded, only the form and the cautions stand there.
void TaskPanel::showDoing(bool doing)
{
    m_done->setVisible(doing);
    m_buttons->setVisible(!doing);
    m_metersHolder->setVisible(!doing && m_meters->count() > 0);
    m_placeText->setVisible(!doing && !m_placeText->text().isEmpty());
}

} // namespace rickyard::views
