// The chosen task: how far it has run, when it can be done, how it is done and what to mind; with
// "Done now" and "Place".
#pragma once

#include "views/page.h"

class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace rickyard::views {

class CautionNote;
class DonePanel;
class StatusPill;
class TextLabel;

class TaskPanel : public QWidget
{
    Q_OBJECT

public:
    explicit TaskPanel(PageContext &context, QWidget *parent = nullptr);
    void setTask(domain::RecordId task);
    void refresh() { show(false); }
    // Opens "Done now" for the task shown.
    void startDone();
    [[nodiscard]] DonePanel &donePanel() { return *m_done; }

Q_SIGNALS:
    void placeAsked(qint64 task);
    void opened(const rickyard::domain::Link &link);

private:
    void build(QVBoxLayout *column);
    void show(bool anew);
    void showMeters(const domain::TaskDue *due);
    void showPlace(const domain::UpkeepTask &task);
    void showDoing(bool doing);

    PageContext &m_context;
    domain::RecordId m_task = 0;
    TextLabel *m_none = nullptr;
    QScrollArea *m_scroll = nullptr;
    TextLabel *m_name = nullptr;
    StatusPill *m_state = nullptr;
    TextLabel *m_when = nullptr;
    QWidget *m_metersHolder = nullptr;
    QVBoxLayout *m_meters = nullptr;
    QWidget *m_buttons = nullptr;
    QPushButton *m_doneNow = nullptr;
    QPushButton *m_place = nullptr;
    DonePanel *m_done = nullptr;
    TextLabel *m_placeText = nullptr;
    CautionNote *m_caution = nullptr;
    TextLabel *m_needs = nullptr;
    TextLabel *m_tools = nullptr;
    TextLabel *m_steps = nullptr;
    QVector<TextLabel *> m_headings; // needs, tools, steps
};

} // namespace rickyard::views
