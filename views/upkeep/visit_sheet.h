// Doing a piece of work: cautions at the head, its steps as large ticks, what was read and found,
// photographs, times, cost and who. Ticks, values and pictures are kept at once; "Done" is one
// step, and opens the findings and closes those it mended.
#pragma once

#include "views/page.h"

#include <QHash>
#include <QTimer>

class QCheckBox;
class QGridLayout;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace rickyard::views {

class CautionNote;
class FieldEditor;
class FieldRow;
class NoticeBar;
class PhotoStrip;
class ReadingRows;
class StatusPill;
class StepList;
class TextLabel;

class VisitSheet : public QWidget
{
    Q_OBJECT

public:
    explicit VisitSheet(PageContext &context, QWidget *parent = nullptr);
    // A visit that has been started; false when there is none of that id, or it is over.
    bool open(domain::RecordId visit);
    [[nodiscard]] domain::RecordId visit() const { return m_visit; }
    // Follows the books: an undo may take back a tick, or the start itself.
    void refresh();
    bool finish();
    [[nodiscard]] StepList &steps() { return *m_steps; }
    [[nodiscard]] ReadingRows &readings() { return *m_readings; }
    [[nodiscard]] PhotoStrip &photos() { return *m_photos; }
    [[nodiscard]] FieldEditor *editor(const QString &key) const { return m_editors.value(key); }
    [[nodiscard]] FieldRow *row(const QString &key) const { return m_rows.value(key); }

Q_SIGNALS:
    void finished(qint64 task);
    void closed();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    QWidget *buildHead();
    QWidget *buildLeft();
    QWidget *buildRight();
    QWidget *buildFoot();
    void addField(QVBoxLayout *column, const QString &key, const QString &label);
    void showSteps();
    void showFindings();
    void proposeFinding();
    void keepNotes();
    void leave();
    void showProblems(const domain::Problems &problems);
    void followProgress();

    PageContext &m_context;
    domain::RecordId m_visit = 0;
    domain::RecordId m_task = 0;
    bool m_noted = false; // something typed that is not kept yet
    bool m_endTyped = false;
    TextLabel *m_name = nullptr;
    TextLabel *m_place = nullptr;
    StatusPill *m_state = nullptr;
    CautionNote *m_caution = nullptr;
    TextLabel *m_tools = nullptr;
    StepList *m_steps = nullptr;
    TextLabel *m_noSteps = nullptr;
    TextLabel *m_readingsHead = nullptr;
    ReadingRows *m_readings = nullptr;
    QCheckBox *m_proposed = nullptr; // the finding that the readings call for
    TextLabel *m_mendHead = nullptr;
    QVBoxLayout *m_mends = nullptr;
    QVector<QCheckBox *> m_mended;
    PhotoStrip *m_photos = nullptr;
    NoticeBar *m_notice = nullptr;
    TextLabel *m_progress = nullptr;
    QPushButton *m_doneButton = nullptr;
    QScrollArea *m_scroll = nullptr;
    QHash<QString, FieldEditor *> m_editors;
    QHash<QString, FieldRow *> m_rows;
};

} // namespace rickyard::views
