#include "views/records/field_set.h"

#include "views/records/field_editor.h"
#include "views/widgets/field_row.h"

#include <QJsonDocument>
#include <QJsonObject>

namespace rickyard::views {

using domain::Problem;
using domain::Problems;

FieldSet::FieldSet(PageContext &context, domain::TableId table, QObject *parent)
    : QObject(parent), m_context(context), m_table(table)
{
}

FieldRow *FieldSet::add(const QString &key, const QString &label)
{
    const domain::TableSpec &spec = domain::specOf(m_table);
    domain::FieldSpec field = spec.fields.at(spec.indexOf(key));
    if (!label.isEmpty())
        field.label = label;
    FieldEditor *editor = makeEditor(
        field, [this]() -> const domain::Books & { return m_context.books(); }, nullptr);
    auto *row = new FieldRow(field.label, editor);
    row->setHelp(field.help);
    m_editors.insert(key, editor);
    m_rows.insert(key, row);
    connect(editor, &FieldEditor::edited, this, [this, row, key] {
        row->clearProblem();
        Q_EMIT edited(key);
    });
    return row;
}

void FieldSet::setValue(const QString &key, const domain::Value &value)
{
    if (FieldEditor *editor = m_editors.value(key))
        editor->setValue(value);
}

void FieldSet::show(const domain::Row &row)
{
    for (auto it = m_editors.cbegin(); it != m_editors.cend(); ++it)
        it.value()->setValue(domain::valueOf(row, it.key()));
    clearProblems();
}

Problems FieldSet::readInto(domain::Row &row) const
{
    Problems problems;
    QJsonObject asTyped =
        QJsonDocument::fromJson(
            domain::textOf(domain::valueOf(row, QStringLiteral("typed"))).toUtf8())
            .object();
    for (auto it = m_editors.cbegin(); it != m_editors.cend(); ++it) {
        const Typed typed = it.value()->typed();
        if (!typed.problem.isEmpty())
            problems.append({it.key(), typed.problem});
        domain::setValue(row, it.key(),
                         typed.problem.isEmpty() ? typed.value : domain::Value(std::monostate{}));
        if (typed.problem.isEmpty() && !typed.text.isEmpty())
            asTyped.insert(it.key(), typed.text);
        else if (domain::isMissing(typed.value))
            asTyped.remove(it.key());
    }
    if (!asTyped.isEmpty())
        domain::setValue(row, QStringLiteral("typed"),
                         QString::fromUtf8(QJsonDocument(asTyped).toJson(QJsonDocument::Compact)));
    return problems;
}

Problems FieldSet::showProblems(const Problems &problems)
{
    Problems elsewhere;
    for (const Problem &problem : problems) {
        if (FieldRow *row = m_rows.value(problem.field))
            row->setProblem(problem.message);
        else
            elsewhere.append(problem);
    }
    return elsewhere;
}

void keepTyped(QString &typed, const QString &key, const QString &text)
{
    QJsonObject all = QJsonDocument::fromJson(typed.toUtf8()).object();
    all.insert(key, text);
    typed = QString::fromUtf8(QJsonDocument(all).toJson(QJsonDocument::Compact));
}

void FieldSet::clearProblems()
{
    for (FieldRow *row : std::as_const(m_rows))
        row->clearProblem();
}

} // namespace rickyard::views
