// "Done now": when it was started and finished, by whom, what was found and what it cost; written
// as a visit that is done.
#pragma once

#include "views/page.h"

#include <QHash>

class QPushButton;

namespace rickyard::views {

class FieldEditor;
class FieldRow;
class NoticeBar;
class TextLabel;

class DonePanel : public QWidget
{
    Q_OBJECT

public:
    explicit DonePanel(PageContext &context, QWidget *parent = nullptr);
    // Opens for a task: finished now, started as long before as the work usually takes, or with
    // the times of the visit that was placed for it when that has begun.
    void start(domain::RecordId task);
    [[nodiscard]] domain::RecordId task() const { return m_task; }
    [[nodiscard]] FieldEditor *editor(const QString &key) const { return m_editors.value(key); }
    [[nodiscard]] FieldRow *row(const QString &key) const { return m_rows.value(key); }
    // False: messages stand at the fields.
    bool save();

Q_SIGNALS:
    void finished(qint64 visit);
    void cancelled();

private:
    void showProblems(const domain::Problems &problems);

    PageContext &m_context;
    domain::RecordId m_task = 0;
    TextLabel *m_heading;
    NoticeBar *m_notice;
    QHash<QString, FieldEditor *> m_editors;
    QHash<QString, FieldRow *> m_rows;
    QPushButton *m_save;
};

} // namespace rickyard::views
