// The chosen task: how far it has run, what it blocks, when it can be done, how it is done and what
// to mind; from here it is started, placed, put off, or gone on without.
#pragma once

#include "views/page.h"

class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace rickyard::views {

class CautionNote;
class ReasonPanel;
class StatusPill;
class TextLabel;

class TaskPanel : public QWidget
{
    Q_OBJECT

public:
    explicit TaskPanel(PageContext &context, QWidget *parent = nullptr);
    void setTask(domain::RecordId task);
    void refresh() { show(false); }
    [[nodiscard]] ReasonPanel &reasons() { return *m_reasons; }

Q_SIGNALS:
    void startAsked(qint64 task);
    void placeAsked(qint64 task);
    void opened(const rickyard::domain::Link &link);

private:
    void build(QVBoxLayout *column);
    void show(bool anew);
    QWidget *buildButtons();
    void showMeters(const domain::TaskDue *due);
    void showBlock();
    void showPlace(const domain::UpkeepTask &task);
    void showReasons(bool asking);
    void putOff();
    void overrideBlock();

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
    QPushButton *m_start = nullptr;
    QPushButton *m_place = nullptr;
    QPushButton *m_putOff = nullptr;
    QWidget *m_blockRow = nullptr;
    TextLabel *m_blockText = nullptr;
    QPushButton *m_override = nullptr;
    domain::RecordId m_blockedCook = 0;
    domain::RecordId m_blockedEvent = 0;
    ReasonPanel *m_reasons = nullptr;
    TextLabel *m_placeText = nullptr;
    CautionNote *m_caution = nullptr;
    TextLabel *m_needs = nullptr;
    TextLabel *m_tools = nullptr;
    TextLabel *m_steps = nullptr;
    TextLabel *m_last = nullptr;
    QVector<TextLabel *> m_headings; // steps, tools, needs, last time
};

} // namespace rickyard::views
