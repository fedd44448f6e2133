// Before and after: every mending of a pit with what it did to its fuel; and its service history
// on paper.
#pragma once

#include "views/page.h"

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class RepairList : public QWidget
{
    Q_OBJECT

public:
    explicit RepairList(PageContext &context, QWidget *parent = nullptr);
    void showPit(domain::RecordId pit);
    [[nodiscard]] QString words() const;
    [[nodiscard]] QPushButton *historyButton() const { return m_history; }

private:
    void openHistory();

    PageContext &m_context;
    QVBoxLayout *m_lines;
    QPushButton *m_history;
    domain::RecordId m_pit = 0;
    QVector<TextLabel *> m_shown;
};

} // namespace rickyard::views
