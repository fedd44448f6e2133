// The plan: the board with its weeks, what is said about the chosen visit, and what can be done
// with it. Every change by hand is one undo step, and the rest of the plan follows it.
#pragma once

#include "views/page.h"

class QComboBox;
class QPushButton;
class QToolButton;

namespace rickyard::views {

class PlanBoard;
class TextLabel;

// Books proposals as visits, as one step, and says so: of these tasks, or of all when empty.
bool acceptProposals(PageContext &context, const QVector<domain::RecordId> &tasks = {});

class PlanPanel : public QWidget
{
    Q_OBJECT

public:
    explicit PlanPanel(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    // Shows a task's visit on the board, without saying that it was chosen.
    void choose(domain::RecordId task);
    [[nodiscard]] PlanBoard &board() { return *m_board; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void taskChosen(qint64 task);
    void opened(const rickyard::domain::Link &link);

private:
    QWidget *buildHead();
    QWidget *buildFoot();
    void showChosen();
    void followCurrent();
    void followWeeks();
    void buildParts();
    void accept();
    void letGo();
    void move(const QVector<domain::Visit> &visits);
    [[nodiscard]] QVector<domain::RecordId> chosenTasks() const;

    PageContext &m_context;
    TextLabel *m_weeks = nullptr;
    TextLabel *m_summary = nullptr;
    QToolButton *m_earlier = nullptr;
    QToolButton *m_later = nullptr;
    QPushButton *m_acceptAll = nullptr;
    PlanBoard *m_board = nullptr;
    TextLabel *m_words = nullptr;
    QComboBox *m_parts = nullptr; // all of an evening's tasks, or one
    QPushButton *m_accept = nullptr;
    QPushButton *m_letGo = nullptr;
    bool m_following = false;
};

} // namespace rickyard::views
