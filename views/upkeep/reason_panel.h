// Putting a task off until a day, or going on although it blocks: with a reason, which is kept.
#pragma once

#include "views/page.h"

class QLineEdit;
class QPushButton;

namespace rickyard::views {

class CautionNote;
class FieldEditor;
class FieldRow;
class NoticeBar;
class TextLabel;

class ReasonPanel : public QWidget
{
    Q_OBJECT

public:
    explicit ReasonPanel(PageContext &context, QWidget *parent = nullptr);

    void startSnooze(domain::RecordId task);
    // For one planned lighting, or one event that is towed to (the other 0).
    void startOverride(domain::RecordId task, domain::RecordId plannedCook, domain::RecordId event);
    bool save();
    [[nodiscard]] QLineEdit *reason() const { return m_reason; }
    [[nodiscard]] QLineEdit *who() const { return m_who; }
    [[nodiscard]] FieldEditor *until() const { return m_until; }
    [[nodiscard]] FieldRow *reasonRow() const { return m_reasonRow; }
    [[nodiscard]] FieldRow *untilRow() const { return m_untilRow; }

Q_SIGNALS:
    void saved();
    void closed();

private:
    void begin(bool snoozing);

    PageContext &m_context;
    domain::Override m_override;
    bool m_snoozing = true;
    TextLabel *m_heading;
    TextLabel *m_text;
    CautionNote *m_caution;
    NoticeBar *m_notice;
    FieldEditor *m_until;
    FieldRow *m_untilRow;
    QLineEdit *m_reason;
    FieldRow *m_reasonRow;
    QLineEdit *m_who;
    FieldRow *m_whoRow;
    QPushButton *m_save;
};

} // namespace rickyard::views
