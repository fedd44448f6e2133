// Upkeep: what is overdue and what falls due, when it can be done, and the records behind it.
#pragma once

#include "views/page.h"

class QStackedWidget;

namespace rickyard::views {

class DueList;
class EmptyState;
class PageHeader;
class PlanList;
class RecordList;
class SectionTabs;
class SentenceLabel;
class StatusPill;
class TaskPanel;

class UpkeepPage : public Page
{
    Q_OBJECT

public:
    explicit UpkeepPage(PageContext &context, QWidget *parent = nullptr);
    bool show(domain::Link link) override;
    void addNew() override;
    void startSearch() override;

private:
    void build();
    void buildSections();
    QWidget *buildDue();
    void refresh();
    void refreshHead();
    void place(domain::RecordId task);
    void addStarterSet();
    void open(const domain::Link &link);
    [[nodiscard]] RecordList *listOf(int section) const;

    enum Section { Due, Plan, Tasks, Visits, Findings, Crew };

    PageHeader *m_header = nullptr;
    StatusPill *m_pill = nullptr;
    SentenceLabel *m_sentence = nullptr;
    SectionTabs *m_sections = nullptr;
    QStackedWidget *m_dueStack = nullptr;
    EmptyState *m_noTasks = nullptr;
    DueList *m_due = nullptr;
    TaskPanel *m_panel = nullptr;
    PlanList *m_plan = nullptr;
    RecordList *m_tasks = nullptr;
    RecordList *m_visits = nullptr;
    RecordList *m_findings = nullptr;
    RecordList *m_crew = nullptr;
};

} // namespace rickyard::views
