#include "views/upkeep/visit_sheet.h"

#include "models/domain/upkeep/due_words.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/records/field_editor.h"
#include "views/reports/checklist_paper.h"
#include "views/reports/paper_view.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/photo_strip.h"
#include "views/upkeep/reading_rows.h"
#include "views/upkeep/step_list.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QCheckBox>
#include <QEvent>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

VisitSheet::VisitSheet(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    column->addWidget(buildHead());
    m_scroll = new ColumnScroll(this);
    auto *body = new QWidget(m_scroll);
    auto *both = new QHBoxLayout(body);
    both->setContentsMargins(0, 0, look.space(2), 0);
    both->setSpacing(look.space(6));
    both->addWidget(buildLeft(), 3);
    both->addWidget(buildRight(), 2);
    m_scroll->setWidget(body);
    column->addWidget(m_scroll, 1);
    column->addWidget(buildFoot());
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::Visit) || changes.touches(TableId::UpkeepTask))
                    refresh();
            });
}

QWidget *VisitSheet::buildHead()
{
    const Theme &look = theme(this);
    auto *head = new QWidget(this);
    auto *row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    auto *back = new QPushButton(icon(QStringLiteral("back")), tr("Leave for later"), head);
    back->setProperty("role", "quiet");
    back->setAccessibleName(tr("Leave for later"));
    connect(back, &QPushButton::clicked, this, &VisitSheet::leave);
    auto *paper = new QPushButton(icon(QStringLiteral("export")), tr("On paper…"), head);
    paper->setProperty("role", "quiet");
    paper->setAccessibleName(tr("The checklist on paper"));
    connect(paper, &QPushButton::clicked, this, [this] {
        PaperView view(checklistPaper(m_context.books(), m_visit), this);
        view.exec();
    });
    auto *names = new QVBoxLayout;
    names->setSpacing(0);
    m_name = new TextLabel(QString(), TextStyle::Title, Role::Ink, head);
    m_name->setWordWrap(true);
    m_place = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, head);
    names->addWidget(m_name);
    names->addWidget(m_place);
    row->addLayout(names, 1);
    m_state = new StatusPill(Role::Info, QString(), head);
    row->addWidget(m_state, 0, Qt::AlignVCenter);
    row->addWidget(paper, 0, Qt::AlignVCenter);
    row->addWidget(back, 0, Qt::AlignVCenter);
    return head;
}

QWidget *VisitSheet::buildLeft()
{
    const Theme &look = theme(this);
    auto *left = new QWidget(this);
    auto *column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_caution = new CautionNote(QString(), left);
    column->addWidget(m_caution);
    m_tools = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, left);
    m_tools->setWordWrap(true);
    column->addWidget(m_tools);
    m_steps = new StepList(left);
    connect(m_steps, &StepList::ticked, this, [this](int step, bool on) {
        const auto done = commands::tickStep(m_context.verbs, m_visit, step, on);
        if (!done) {
            m_context.refuse(done.problems());
            refresh();
        }
    });
    column->addWidget(m_steps);
    m_noSteps = new TextLabel(tr("The task has no steps written down. Do it as you know it; the "
                                 "steps can be added under Tasks."),
                              TextStyle::Body, Role::InkMuted, left);
    m_noSteps->setWordWrap(true);
    column->addWidget(m_noSteps);
    column->addStretch(1);
    return left;
}

QWidget *VisitSheet::buildRight()
{
    const Theme &look = theme(this);
    auto *right = new QWidget(this);
    auto *column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    const auto heading = [&](const QString &text) {
        auto *label = new TextLabel(text, TextStyle::Heading, Role::Ink, right);
        column->addWidget(label);
        return label;
    };
    m_readingsHead = heading(tr("Readings"));
    m_readings = new ReadingRows(m_context, right);
    m_proposed = new QCheckBox(right);
    m_proposed->setToolTip(tr("Opens a finding when the work is recorded as done."));
    m_proposed->hide();
    connect(m_readings, &ReadingRows::judged, this, &VisitSheet::proposeFinding);
    column->addWidget(m_readings);
    column->addWidget(m_proposed);
    heading(tr("What was found"));
    addField(column, QStringLiteral("found"), tr("Found"));
    m_mendHead = new TextLabel(tr("Mended by it"), TextStyle::Label, Role::InkMuted, right);
    column->addWidget(m_mendHead);
    m_mends = new QVBoxLayout;
    m_mends->setSpacing(look.space(1));
    column->addLayout(m_mends);
    heading(tr("Photographs"));
    m_photos = new PhotoStrip(m_context, right);
    column->addWidget(m_photos);
    heading(tr("When, who, cost"));
    addField(column, QStringLiteral("start"), tr("Started"));
    addField(column, QStringLiteral("end"), tr("Finished"));
    m_rows.value(QStringLiteral("end"))
        ->setHelp(tr("Stamped when you press Done, unless you change it."));
    addField(column, QStringLiteral("who"), tr("Who"));
    addField(column, QStringLiteral("cost"), tr("Cost"));
    column->addStretch(1);
    return right;
}

QWidget *VisitSheet::buildFoot()
{
    const Theme &look = theme(this);
    auto *foot = new QWidget(this);
    auto *column = new QVBoxLayout(foot);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_notice = new NoticeBar(foot);
    column->addWidget(m_notice);
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(3));
    m_doneButton =
        new QPushButton(icon(QStringLiteral("check"), Role::AccentInk), tr("Done"), foot);
    m_doneButton->setProperty("role", "primary");
    m_doneButton->setAccessibleName(tr("Done: record the work"));
    m_doneButton->setMinimumWidth(look.px(140));
    connect(m_doneButton, &QPushButton::clicked, this, &VisitSheet::finish);
    m_progress = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, foot);
    row->addWidget(m_doneButton);
    row->addWidget(m_progress, 1);
    column->addLayout(row);
    return foot;
}

void VisitSheet::addField(QVBoxLayout *column, const QString &key, const QString &label)
{
    const TableSpec &spec = specOf(TableId::Visit);
    FieldSpec field = spec.fields.at(spec.indexOf(key));
    field.required = field.required || key == QLatin1String("end"); // it will be done
    FieldEditor *editor = makeEditor(
        field, [this]() -> const Books & { return m_context.books(); }, this);
    auto *row = new FieldRow(label, editor, this);
    editor->inner()->setAccessibleName(label);
    editor->inner()->installEventFilter(this);
    connect(editor, &FieldEditor::edited, this, [this, key, row] {
        row->clearProblem();
        m_noted = m_noted || key != QLatin1String("end");
        m_endTyped = m_endTyped || key == QLatin1String("end");
    });
    m_editors.insert(key, editor);
    m_rows.insert(key, row);
    column->addWidget(row);
}

bool VisitSheet::open(RecordId visit)
{
    const auto found = m_context.books().visits.constFind(visit);
    if (found == m_context.books().visits.constEnd() || found->state != VisitState::Started)
        return false;
    m_visit = visit;
    m_task = found->task;
    m_noted = false;
    m_endTyped = false;
    m_notice->dismiss();
    for (FieldRow *row : std::as_const(m_rows))
        row->clearProblem();
    const Row row = toRow(*found);
    for (auto it = m_editors.cbegin(); it != m_editors.cend(); ++it)
        it.value()->setValue(valueOf(row, it.key()));
    m_editors.value(QStringLiteral("end"))->setValue(toValue(m_context.verbs.now()));
    m_noted = m_endTyped = false;
    const UpkeepTask task = m_context.books().tasks.value(m_task);
    m_name->setText(task.name);
    m_place->setText(
        task.target.isEmpty()
            ? pitName(m_context.books(), task.pit.value_or(0))
            : tr("%1, %2").arg(pitName(m_context.books(), task.pit.value_or(0)), task.target));
    m_caution->setCaution(cautionOf(task));
    m_tools->setText(tr("Tools: %1").arg(task.tools));
    m_tools->setVisible(!task.tools.isEmpty());
    m_readingsHead->setVisible(task.reading != ReadingKind::None);
    m_readings->showVisit(visit);
    m_photos->showVisit(visit);
    m_doneButton->setEnabled(!m_context.readOnly());
    m_steps->setSteps(stepsOf(task.steps));
    m_noSteps->setVisible(m_steps->count() == 0);
    m_steps->setEditable(!m_context.readOnly());
    showFindings();
    refresh();
    m_scroll->ensureVisible(0, 0);
    if (m_steps->count() > 0)
        m_steps->focusNext();
    else
        m_editors.value(QStringLiteral("found"))->inner()->setFocus(Qt::OtherFocusReason);
    return true;
}

void VisitSheet::refresh()
{
    if (m_visit == 0)
        return;
    const auto found = m_context.books().visits.constFind(m_visit);
    if (found == m_context.books().visits.constEnd() || found->state != VisitState::Started) {
        m_visit = 0; // undone, or finished elsewhere
        Q_EMIT closed();
        return;
    }
    m_steps->setTicked(commands::tickedSteps(*found));
    m_state->setStatus(Role::Info, tr("Under way since %1")
                                       .arg(items::toLocal(m_context.books(), found->start)
                                                .toString(QStringLiteral("ddd h:mm AP"))));
    followProgress();
}

void VisitSheet::followProgress()
{
    int ticked = 0;
    for (int i = 0; i < m_steps->count(); ++i)
        ticked += m_steps->tick(i)->isChecked() ? 1 : 0;
    m_progress->setText(m_steps->count() == 0
                            ? QString()
                            : tr("%1 of %2 steps ticked").arg(ticked).arg(m_steps->count()));
}

// Faults of the pit that are still open: the work may have mended them.
void VisitSheet::showFindings()
{
    clearLayout(m_mends);
    m_mended.clear();
    const UpkeepTask task = m_context.books().tasks.value(m_task);
    for (const Finding &finding : m_context.books().findings) {
        const bool open =
            finding.state == FindingState::Open || finding.state == FindingState::Watched;
        if (!open || finding.pit != task.pit)
            continue;
        auto *box = new QCheckBox(finding.text, this);
        box->setAccessibleName(tr("It mended: %1").arg(finding.text));
        box->setProperty("finding", finding.id);
        m_mends->addWidget(box);
        m_mended << box;
    }
    m_mendHead->setVisible(!m_mended.isEmpty());
}

// Values outside their limits propose a finding, ticked until somebody unticks it.
void VisitSheet::proposeFinding()
{
    const QString failure = m_readings->failure();
    m_proposed->setVisible(!failure.isEmpty());
    if (failure == m_proposed->text())
        return;
    if (m_proposed->text().isEmpty())
        m_proposed->setChecked(true);
    m_proposed->setText(failure);
    m_proposed->setAccessibleName(tr("Open a finding: %1").arg(failure));
}

bool VisitSheet::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() == QEvent::FocusOut)
        keepNotes();
    return QWidget::eventFilter(watched, event);
}

namespace {

struct Typedness {
    commands::VisitReport report;
    Problems problems;
};

Typedness reportOf(const QHash<QString, FieldEditor *> &editors)
{
    Typedness typedness;
    QHash<QString, Value> values;
    for (auto it = editors.cbegin(); it != editors.cend(); ++it) {
        const Typed typed = it.value()->typed();
        if (!typed.problem.isEmpty())
            typedness.problems << Problem{it.key(), typed.problem};
        values.insert(it.key(), typed.value);
    }
    commands::VisitReport &report = typedness.report;
    fromValue(values.value(QStringLiteral("start")), report.start);
    fromValue(values.value(QStringLiteral("end")), report.end);
    fromValue(values.value(QStringLiteral("cost")), report.cost);
    report.who = textOf(values.value(QStringLiteral("who"))).trimmed();
    report.found = textOf(values.value(QStringLiteral("found"))).trimmed();
    return typedness;
}

} // namespace

void VisitSheet::keepNotes()
{
    if (!m_noted || m_visit == 0 || m_context.readOnly())
        return;
    Typedness typedness = reportOf(m_editors);
    if (!typedness.problems.isEmpty())
        return; // said when it is finished; what was typed stays in its field
    typedness.report.visit = m_visit;
    m_noted = false;
    const auto done = commands::keepReport(m_context.verbs, typedness.report);
    if (!done)
        showProblems(done.problems());
}

void VisitSheet::leave()
{
    keepNotes();
    m_readings->settle();
    m_visit = 0;
    Q_EMIT closed();
}

void VisitSheet::showProblems(const Problems &problems)
{
    QStringList others;
    for (const Problem &problem : problems) {
        FieldRow *row = m_rows.value(problem.field);
        if (row == nullptr) {
            others << problem.message;
            continue;
        }
        row->setProblem(problem.message);
        m_scroll->ensureWidgetVisible(row);
    }
    if (!others.isEmpty())
        m_notice->showProblem(others.join(QLatin1Char('\n')));
}

bool VisitSheet::finish()
{
    m_notice->dismiss();
    if (!m_readings->settle()) {
        m_notice->showProblem(tr("A reading is no number. Correct it or empty its field."));
        return false;
    }
    Typedness typedness = reportOf(m_editors);
    if (!typedness.problems.isEmpty()) {
        showProblems(typedness.problems);
        return false;
    }
    commands::VisitReport &report = typedness.report;
    report.visit = m_visit;
    if (!m_endTyped)
        report.end = std::max(m_context.verbs.now(), report.start);
    if (!m_proposed->text().isEmpty() && m_proposed->isChecked())
        report.findings << m_proposed->text();
    for (const QCheckBox *box : std::as_const(m_mended))
        if (box->isChecked())
            report.mended << box->property("finding").toLongLong();
    const RecordId task = m_task;
    const RecordId visit = std::exchange(m_visit, 0); // the books' own change is no surprise
    const auto done = commands::finishVisit(m_context.verbs, report);
    if (!done) {
        m_visit = visit;
        showProblems(done.problems());
        return false;
    }
    m_noted = false;
    Q_EMIT finished(task);
    return true;
}

} // namespace rickyard::views
