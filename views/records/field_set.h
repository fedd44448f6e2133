// Some fields of one table that stand apart on a page of their own design: the editors of the
// generic form with their messages, without its order and its buttons.
#pragma once

#include "views/page.h"

#include <QMap>

namespace rickyard::views {

class FieldEditor;
class FieldRow;

class FieldSet : public QObject
{
    Q_OBJECT

public:
    FieldSet(PageContext &context, domain::TableId table, QObject *parent = nullptr);

    // The field by its key, under its own label or another; the caller places the row.
    FieldRow *add(const QString &key, const QString &label = {});
    [[nodiscard]] FieldRow *row(const QString &key) const { return m_rows.value(key); }
    [[nodiscard]] FieldEditor *editor(const QString &key) const { return m_editors.value(key); }
    void setValue(const QString &key, const domain::Value &value);
    void show(const domain::Row &row);
    // What is typed goes into the row, with the words as typed beside it. What cannot be read is
    // left missing there and comes back as a problem.
    [[nodiscard]] domain::Problems readInto(domain::Row &row) const;
    // Each at its field; those that have none here come back.
    domain::Problems showProblems(const domain::Problems &problems);
    void clearProblems();

Q_SIGNALS:
    void edited(const QString &key);

private:
    PageContext &m_context;
    domain::TableId m_table;
    QMap<QString, FieldEditor *> m_editors;
    QMap<QString, FieldRow *> m_rows;
};

// Puts words as typed beside a record's values: for what is entered otherwise than in one field.
void keepTyped(QString &typed, const QString &key, const QString &text);

} // namespace rickyard::views
