// The form of one record of any table, made from its description: editors with units inside,
// messages beside the field at fault, nothing lost when something is refused.
#pragma once

#include "views/page.h"

#include <QHash>

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class FieldEditor;
class FieldRow;
class NoticeBar;

class RecordForm : public QWidget
{
    Q_OBJECT

public:
    RecordForm(PageContext &context, domain::TableId table, QWidget *parent = nullptr);

    // Only these fields, in this order; the others keep their values. Empty: all that are typed.
    void setFields(const QStringList &keys);
    // Field values given from outside and not shown (the cook of a feed).
    void setFixed(const QString &key, const domain::Value &value);

    void startNew(const domain::Row &prefilled);
    void startNew();
    void load(domain::RecordId id);
    [[nodiscard]] domain::RecordId id() const { return m_row.id; }
    [[nodiscard]] bool dirty() const;
    [[nodiscard]] FieldRow *fieldRow(const QString &key) const;
    [[nodiscard]] FieldEditor *editor(const QString &key) const;
    // Writes through the verbs. False: messages stand at the fields.
    bool save();
    void revert();
    void focusFirst();
    // A widget above the fields that scrolls with them.
    void setHead(QWidget *head);
    // The yard's own record cannot be deleted.
    void setDeletable(bool deletable);

Q_SIGNALS:
    void saved(qint64 id);
    void cancelled();
    void dirtyChanged(bool dirty);
    void deleteAsked(qint64 id);

private:
    void build();
    void rebuild();
    void showRow();
    [[nodiscard]] domain::Row typedRow(domain::Problems &problems) const;
    void showProblems(const domain::Problems &problems);
    void noteDirty();

    PageContext &m_context;
    domain::TableId m_table;
    QStringList m_keys;
    QHash<QString, domain::Value> m_fixed;
    domain::Row m_row; // as loaded
    bool m_wasDirty = false;
    bool m_deletable = true;
    QVBoxLayout *m_column = nullptr; // head and fields
    QVBoxLayout *m_layout = nullptr; // the fields
    QWidget *m_body = nullptr;
    NoticeBar *m_notice = nullptr;
    QPushButton *m_save = nullptr;
    QPushButton *m_cancel = nullptr;
    QPushButton *m_delete = nullptr;
    QHash<QString, FieldEditor *> m_editors;
    QHash<QString, FieldRow *> m_rows;
};

} // namespace rickyard::views
