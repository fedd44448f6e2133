#include "views/records/record_form.h"

#include "models/domain/records/rules.h"
#include "views/records/field_editor.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>
#include <QJsonDocument>
#include <QJsonObject>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::FieldKind;
using domain::FieldSpec;
using domain::Problem;
using domain::Problems;
using domain::Row;
using domain::TableId;

namespace {

bool wide(const FieldSpec &field)
{
    return field.kind == FieldKind::LongText || field.kind == FieldKind::Pieces ||
           field.kind == FieldKind::Stacks || field.kind == FieldKind::Time ||
           field.kind == FieldKind::Date || field.kind == FieldKind::Reference ||
           field.kind == FieldKind::Choice;
}

} // namespace

RecordForm::RecordForm(PageContext &context, TableId table, QWidget *parent)
    : QWidget(parent), m_context(context), m_table(table), m_row(domain::emptyRow(table))
{
    build();
    rebuild();
    showRow();
}

void RecordForm::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->setSpacing(look.space(2));
    m_notice = new NoticeBar(this);
    outer->addWidget(m_notice);
    auto *scroll = new ColumnScroll(this);
    auto *inner = new QWidget(scroll);
    m_column = new QVBoxLayout(inner);
    m_column->setContentsMargins(0, 0, look.space(2), 0);
    m_column->setSpacing(look.space(4));
    m_body = new QWidget(inner);
    m_layout = new QVBoxLayout(m_body);
    m_layout->setContentsMargins(0, 0, 0, 0);
    m_layout->setSpacing(look.space(3));
    m_column->addWidget(m_body, 1);
    scroll->setWidget(inner);
    outer->addWidget(scroll, 1);

    auto *buttons = new QHBoxLayout;
    m_save = new QPushButton(tr("Save"), this);
    m_save->setProperty("role", "primary");
    m_save->setAccessibleName(tr("Save this %1").arg(domain::specOf(m_table).singular));
    m_cancel = new QPushButton(tr("Cancel"), this);
    m_cancel->setAccessibleName(tr("Put the form back as it was"));
    m_delete = new QPushButton(tr("Delete"), this);
    m_delete->setProperty("role", "quiet");
    m_delete->setAccessibleName(tr("Delete this %1").arg(domain::specOf(m_table).singular));
    buttons->addWidget(m_save);
    buttons->addWidget(m_cancel);
    buttons->addStretch(1);
    buttons->addWidget(m_delete);
    outer->addLayout(buttons);
    connect(m_save, &QPushButton::clicked, this, &RecordForm::save);
    connect(m_cancel, &QPushButton::clicked, this, [this] {
        revert();
        Q_EMIT cancelled();
    });
    connect(m_delete, &QPushButton::clicked, this, [this] { Q_EMIT deleteAsked(m_row.id); });
    auto *quickSave = new QShortcut(QKeySequence::Save, this);
    quickSave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(quickSave, &QShortcut::activated, this, &RecordForm::save);
}

void RecordForm::setHead(QWidget *head)
{
    m_column->insertWidget(0, head);
}

void RecordForm::setFields(const QStringList &keys)
{
    m_keys = keys;
    rebuild();
    showRow();
}

void RecordForm::setFixed(const QString &key, const domain::Value &value)
{
    m_fixed.insert(key, value);
    rebuild();
    showRow();
}

void RecordForm::rebuild()
{
    qDeleteAll(m_body->findChildren<QWidget *>(Qt::FindDirectChildrenOnly));
    while (QLayoutItem *item = m_layout->takeAt(0))
        delete item;
    m_editors.clear();
    m_rows.clear();
    const domain::TableSpec &spec = domain::specOf(m_table);
    QString section;
    QGridLayout *grid = nullptr;
    int column = 0;
    for (const FieldSpec &field : spec.fields) {
        const bool typed = field.kind != FieldKind::Blob && field.kind != FieldKind::Typed &&
                           !field.derived && !m_fixed.contains(field.key);
        if (!typed || (!m_keys.isEmpty() && !m_keys.contains(field.key)))
            continue;
        if (grid == nullptr || field.section != section) {
            section = field.section;
            if (!section.isEmpty())
                m_layout->addWidget(
                    new TextLabel(section, TextStyle::BodyStrong, Role::Ink, m_body));
            grid = new QGridLayout;
            grid->setHorizontalSpacing(theme(this).space(3));
            grid->setVerticalSpacing(theme(this).space(2));
            grid->setColumnStretch(0, 1);
            grid->setColumnStretch(1, 1);
            m_layout->addLayout(grid);
            column = 0;
        }
        FieldEditor *editor = makeEditor(
            field, [this]() -> const domain::Books & { return m_context.books(); }, m_body);
        auto *row =
            new FieldRow(field.kind == FieldKind::Flag ? QString() : field.label, editor, m_body);
        row->setHelp(field.help);
        connect(editor, &FieldEditor::edited, this, [this, row] {
            row->clearProblem();
            noteDirty();
        });
        m_editors.insert(field.key, editor);
        m_rows.insert(field.key, row);
        const int at = grid->rowCount() - 1;
        if (wide(field)) {
            grid->addWidget(row, column == 0 ? at : at + 1, 0, 1, 2);
            column = 0;
            grid->setRowMinimumHeight(grid->rowCount(), 0);
        } else {
            grid->addWidget(row, at, column, Qt::AlignTop);
            column = 1 - column;
        }
        if (column == 0)
            grid->setRowMinimumHeight(grid->rowCount(), 0);
    }
    m_layout->addStretch(1);
}

void RecordForm::startNew()
{
    startNew(domain::emptyRow(m_table));
}

void RecordForm::startNew(const Row &prefilled)
{
    m_row = prefilled;
    m_row.id = 0;
    showRow();
    focusFirst();
}

void RecordForm::load(domain::RecordId id)
{
    const auto row = domain::rowOf(m_context.books(), m_table, id);
    m_row = row.value_or(domain::emptyRow(m_table));
    showRow();
}

void RecordForm::showRow()
{
    for (auto it = m_editors.cbegin(); it != m_editors.cend(); ++it) {
        (*it)->setValue(domain::valueOf(m_row, it.key()));
        m_rows.value(it.key())->clearProblem();
    }
    m_notice->dismiss();
    m_delete->setVisible(m_deletable && m_row.id != 0);
    m_save->setText(m_row.id == 0 ? tr("Add") : tr("Save"));
    m_wasDirty = false;
    m_save->setEnabled(!m_context.readOnly());
    m_delete->setEnabled(!m_context.readOnly());
    Q_EMIT dirtyChanged(false);
}

Row RecordForm::typedRow(Problems &problems) const
{
    Row row = m_row;
    QJsonObject asTyped =
        QJsonDocument::fromJson(
            domain::textOf(domain::valueOf(row, QStringLiteral("typed"))).toUtf8())
            .object();
    for (auto it = m_fixed.cbegin(); it != m_fixed.cend(); ++it)
        domain::setValue(row, it.key(), it.value());
    for (auto it = m_editors.cbegin(); it != m_editors.cend(); ++it) {
        const Typed typed = (*it)->typed();
        if (!typed.problem.isEmpty()) {
            problems.append({it.key(), typed.problem});
            continue;
        }
        domain::setValue(row, it.key(), typed.value);
        if (!typed.text.isEmpty())
            asTyped.insert(it.key(), typed.text);
        else if (domain::isMissing(typed.value))
            asTyped.remove(it.key());
    }
    if (!asTyped.isEmpty())
        domain::setValue(row, QStringLiteral("typed"),
                         QString::fromUtf8(QJsonDocument(asTyped).toJson(QJsonDocument::Compact)));
    return row;
}

bool RecordForm::dirty() const
{
    Problems problems;
    return typedRow(problems) != m_row || !problems.isEmpty();
}

void RecordForm::noteDirty()
{
    const bool now = dirty();
    if (now == m_wasDirty)
        return;
    m_wasDirty = now;
    Q_EMIT dirtyChanged(now);
}

bool RecordForm::save()
{
    Problems problems;
    Row row = typedRow(problems);
    for (FieldRow *field : std::as_const(m_rows))
        field->clearProblem();
    // All slips at once: those of typing and those of the rules.
    if (!problems.isEmpty()) {
        const Problems others = domain::checkFields(m_context.books(), row);
        for (const Problem &p : others) {
            bool known = false;
            for (const Problem &q : std::as_const(problems))
                known = known || q.field == p.field;
            if (!known)
                problems.append(p);
        }
        showProblems(problems);
        return false;
    }
    if (row.id == 0) {
        const auto added = m_context.verbs.add(row);
        if (!added) {
            showProblems(added.problems());
            return false;
        }
        row.id = added.value();
    } else {
        const auto done = m_context.verbs.edit(row);
        if (!done) {
            showProblems(done.problems());
            return false;
        }
    }
    load(row.id);
    Q_EMIT saved(row.id);
    return true;
}

void RecordForm::showProblems(const Problems &problems)
{
    QStringList elsewhere;
    QWidget *first = nullptr;
    for (const Problem &problem : problems) {
        FieldRow *row = m_rows.value(problem.field);
        if (row == nullptr) {
            elsewhere << problem.message;
            continue;
        }
        row->setProblem(problem.message);
        if (first == nullptr)
            first = m_editors.value(problem.field)->inner();
    }
    if (!elsewhere.isEmpty())
        m_notice->showProblem(elsewhere.join(QLatin1Char('\n')));
    if (first != nullptr)
        first->setFocus(Qt::OtherFocusReason);
}

void RecordForm::revert()
{
    if (m_row.id != 0)
        load(m_row.id);
    else
        showRow();
}

void RecordForm::focusFirst()
{
    const domain::TableSpec &spec = domain::specOf(m_table);
    for (const FieldSpec &field : spec.fields)
        if (FieldEditor *editor = m_editors.value(field.key)) {
            editor->inner()->setFocus(Qt::OtherFocusReason);
            return;
        }
}

void RecordForm::setDeletable(bool deletable)
{
    m_deletable = deletable;
    m_delete->setVisible(deletable && m_row.id != 0);
}

FieldRow *RecordForm::fieldRow(const QString &key) const
{
    return m_rows.value(key);
}
FieldEditor *RecordForm::editor(const QString &key) const
{
    return m_editors.value(key);
}

} // namespace rickyard::views
