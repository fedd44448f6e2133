#include "views/upkeep/reason_panel.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/blocks.h"
#include "models/domain/upkeep/due_words.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/records/field_editor.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"

#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

FieldSpec dayField()
{
    const TableSpec &spec = specOf(TableId::UpkeepTask);
    FieldSpec field = spec.fields.at(spec.indexOf(QStringLiteral("snoozed_until")));
    field.required = true; // no box to switch it off
    return field;
}

constexpr int kUsualSnoozeDays = 7;

} // namespace

ReasonPanel::ReasonPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_heading(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_text(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_caution(new CautionNote(QString(), this)), m_notice(new NoticeBar(this)),
      m_until(makeEditor(
          dayField(), [this]() -> const Books & { return m_context.books(); }, this)),
      m_untilRow(new FieldRow(tr("Until"), m_until, this)), m_reason(new QLineEdit(this)),
      m_reasonRow(new FieldRow(tr("Reason"), m_reason, this)), m_who(new QLineEdit(this)),
      m_whoRow(new FieldRow(tr("Who"), m_who, this)),
      m_save(new QPushButton(tr("Put it off"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(3));
    m_heading->setWordWrap(true);
    m_text->setWordWrap(true);
    m_until->inner()->setAccessibleName(tr("Put off until"));
    m_reason->setAccessibleName(tr("Reason"));
    m_who->setAccessibleName(tr("Who decides"));
    m_whoRow->setOptional(true);
    for (QWidget *widget : {static_cast<QWidget *>(m_heading), static_cast<QWidget *>(m_text),
                            static_cast<QWidget *>(m_caution), static_cast<QWidget *>(m_notice),
                            static_cast<QWidget *>(m_untilRow), static_cast<QWidget *>(m_reasonRow),
                            static_cast<QWidget *>(m_whoRow)})
        column->addWidget(widget);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(theme(this).space(2));
    auto *cancel = new QPushButton(tr("Cancel"), this);
    cancel->setProperty("role", "quiet");
    cancel->setAccessibleName(tr("Cancel"));
    buttons->addWidget(m_save);
    buttons->addWidget(cancel);
    buttons->addStretch(1);
    column->addLayout(buttons);
    connect(m_save, &QPushButton::clicked, this, &ReasonPanel::save);
    connect(m_reason, &QLineEdit::returnPressed, this, &ReasonPanel::save);
    connect(m_reason, &QLineEdit::textEdited, m_reasonRow, &FieldRow::clearProblem);
    connect(m_until, &FieldEditor::edited, m_untilRow, &FieldRow::clearProblem);
    connect(cancel, &QPushButton::clicked, this, &ReasonPanel::closed);
}

void ReasonPanel::begin(bool snoozing)
{
    m_snoozing = snoozing;
    m_untilRow->setVisible(snoozing);
    m_whoRow->setVisible(!snoozing);
    m_caution->setVisible(!snoozing);
    m_untilRow->clearProblem();
    m_reasonRow->clearProblem();
    m_notice->dismiss();
    m_reason->clear();
    m_who->clear();
    m_save->setEnabled(!m_context.readOnly());
    m_reason->setFocus(Qt::OtherFocusReason);
}

void ReasonPanel::startSnooze(RecordId task)
{
    m_override = Override();
    m_override.task = task;
    const Books &books = m_context.books();
    const UpkeepTask record = books.tasks.value(task);
    begin(true);
    m_heading->setText(tr("Put off: %1").arg(taskPhrase(books, task)));
    m_text->setText(record.blocksLighting || record.blocksTowing
                        ? tr("It is not asked for until that day. What it blocks stays blocked.")
                        : tr("It is not asked for until that day."));
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    m_until->setValue(toValue(today.addDays(kUsualSnoozeDays)));
    m_save->setText(tr("Put it off"));
    m_save->setAccessibleName(m_save->text());
}

void ReasonPanel::startOverride(RecordId task, RecordId plannedCook, RecordId event)
{
    m_override = Override();
    m_override.task = task;
    if (plannedCook != 0)
        m_override.plannedCook = plannedCook;
    else if (event != 0)
        m_override.event = event;
    const Books &books = m_context.books();
    begin(false);
    m_heading->setText(tr("Go on without: %1").arg(taskPhrase(books, task)));
    const QString what =
        plannedCook != 0
            ? tr("the cook of %1")
                  .arg(items::timeText(books, books.plannedCooks.value(plannedCook).light,
                                       QLocale(QStringLiteral("en_US"))))
        : event != 0 ? tr("the trip to %1").arg(books.events.value(event).name)
                     : tr("a fire lit within %1").arg(formatDuration(kOverrideHolds));
    m_text->setText(tr("It holds for %1 alone, and is kept with the reason.").arg(what));
    m_caution->setCaution(tr("The task stays overdue: nothing about the pit or the trailer has "
                             "changed. Whoever goes on answers for it."));
    m_save->setText(tr("Go on all the same"));
    m_save->setAccessibleName(m_save->text());
}

bool ReasonPanel::save()
{
    Problems problems;
    if (m_snoozing) {
        QDate until;
        fromValue(m_until->typed().value, until);
        problems = commands::snoozeTask(m_context.verbs, m_override.task, until, m_reason->text())
                       .problems();
    } else {
        m_override.reason = m_reason->text();
        m_override.who = m_who->text().trimmed();
        problems = commands::overrideBlock(m_context.verbs, m_override).problems();
    }
    QStringList others;
    for (const Problem &problem : problems) {
        if (problem.field.endsWith(QLatin1String("reason")))
            m_reasonRow->setProblem(problem.message);
        else if (problem.field == QLatin1String("snoozed_until"))
            m_untilRow->setProblem(problem.message);
        else
            others << problem.message;
    }
    if (!others.isEmpty())
        m_notice->showProblem(others.join(QLatin1Char('\n')));
    if (!problems.isEmpty())
        return false;
    const QString phrase = taskPhrase(m_context.books(), m_override.task);
    m_context.say(m_snoozing ? tr("Put off: %1.").arg(phrase)
                             : tr("Kept: going on without %1.").arg(phrase));
    Q_EMIT saved();
    return true;
}

} // namespace rickyard::views
