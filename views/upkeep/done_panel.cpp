#include "views/upkeep/done_panel.h"

#include "models/domain/upkeep/due_words.h"
#include "views/records/field_editor.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

const char *const kFields[] = {"start", "end", "who", "found", "cost"};

} // namespace

DonePanel::DonePanel(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext),
      m_heading(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_notice(new NoticeBar(this)), m_save(new QPushButton(tr("Record it as done"), this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_heading->setWordWrap(true);
    column->addWidget(m_heading);
    column->addWidget(m_notice);
    const TableSpec &spec = specOf(TableId::Visit);
    for (const char *key : kFields) {
        FieldSpec field = spec.fields.at(spec.indexOf(QString::fromLatin1(key)));
        field.required = field.required || field.key == QStringLiteral("end"); // it is done
        FieldEditor *editor = makeEditor(
            field, [this]() -> const Books & { return m_context.books(); }, this);
        QString label = field.label;
        if (field.key == QStringLiteral("start"))
            label = tr("Started");
        else if (field.key == QStringLiteral("end"))
            label = tr("Finished");
        auto *row = new FieldRow(label, editor, this);
        editor->inner()->setAccessibleName(label);
        connect(editor, &FieldEditor::edited, row, &FieldRow::clearProblem);
        m_editors.insert(field.key, editor);
        m_rows.insert(field.key, row);
        column->addWidget(row);
    }
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(look.space(2));
    m_save->setProperty("role", "primary");
    m_save->setAccessibleName(m_save->text());
    connect(m_save, &QPushButton::clicked, this, &DonePanel::save);
    auto *cancel = new QPushButton(tr("Cancel"), this);
    cancel->setProperty("role", "quiet");
    cancel->setAccessibleName(tr("Cancel"));
    connect(cancel, &QPushButton::clicked, this, &DonePanel::cancelled);
    buttons->addWidget(m_save);
    buttons->addWidget(cancel);
    buttons->addStretch(1);
    column->addLayout(buttons);
}

void DonePanel::start(RecordId taskId)
{
    m_task = taskId;
    const Books &books = m_context.books();
    const UpkeepTask record = books.tasks.value(taskId);
    const Instant now = m_context.verbs.now();
    m_heading->setText(tr("Done: %1").arg(taskPhrase(books, taskId)));
    m_notice->dismiss();
    Instant from = now - record.work;
    Instant until = now;
    for (const Visit &visit : books.visits)
        if (visit.task == taskId && visit.start <= now &&
            (visit.state == VisitState::Placed || visit.state == VisitState::Started)) {
            from = visit.start;
            until = std::min(now, visit.end.value_or(now));
            break;
        }
    for (FieldRow *row : qAsConst(m_rows))
        row->clearProblem();
    m_editors.value(QStringLiteral("start"))->setValue(toValue(from));
    m_editors.value(QStringLiteral("end"))->setValue(toValue(until));
    for (const QString &key :
         {QStringLiteral("who"), QStringLiteral("found"), QStringLiteral("cost")})
        m_editors.value(key)->setValue(Value());
    m_save->setEnabled(!m_context.readOnly());
    m_editors.value(QStringLiteral("who"))->inner()->setFocus(Qt::OtherFocusReason);
}

void DonePanel::showProblems(const Problems &problems)
{
    QStringList others;
    for (const Problem &problem : problems) {
        if (FieldRow *row = m_rows.value(problem.field))
            row->setProblem(problem.message);
        else
            others << problem.message;
    }
    if (!others.isEmpty())
        m_notice->showProblem(others.join(QLatin1Char('\n')));
}

bool DonePanel::save()
{
    m_notice->dismiss();
    Problems problems;
    QHash<QString, Value> values;
    for (auto it = m_editors.cbegin(); it != m_editors.cend(); ++it) {
        const Typed typed = it.value()->typed();
        m_rows.value(it.key())->clearProblem();
        if (!typed.problem.isEmpty())
            problems << Problem{it.key(), typed.problem};
        else if (isMissing(typed.value) &&
                 (it.key() == QStringLiteral("start") || it.key() == QStringLiteral("end")))
            problems << Problem{it.key(), tr("A time is needed here.")};
        values.insert(it.key(), typed.value);
    }
    if (!problems.isEmpty()) {
        showProblems(problems);
        return false;
    }
    Instant from;
    Instant until;
    std::optional<Money> cost;
    fromValue(values.value(QStringLiteral("start")), from);
    fromValue(values.value(QStringLiteral("end")), until);
    fromValue(values.value(QStringLiteral("cost")), cost);
    const auto done =
        m_context.verbs.finishTask(m_task, from, until, textOf(values.value(QStringLiteral("who"))),
                                   textOf(values.value(QStringLiteral("found"))), cost);
    if (!done) {
        showProblems(done.problems());
        return false;
    }
    m_context.say(tr("Recorded: %1 is done.").arg(taskPhrase(m_context.books(), m_task)));
    Q_EMIT finished(done.value());
    return true;
}

} // namespace rickyard::views
