// Upkeep: what is overdue and what falls due, the plan of when it is done, the work itself, and the
// records behind it.
#pragma once

#include "views/page.h"

class QStackedWidget;

namespace rickyard::views {

class AshPanel;
class DueList;
class EmptyState;
class FindingDetail;
class PageHeader;
class PlanList;
class PlanPanel;
class ReadingsPanel;
class RecordList;
class SectionTabs;
class SentenceLabel;
class StatusPill;
class TaskPanel;
class VisitDetail;
class VisitSheet;

class UpkeepPage : public Page
{
    Q_OBJECT

public:
    explicit UpkeepPage(PageContext &context, QWidget *parent = nullptr);
    bool show(domain::Link link) override;
    void addNew() override;
    void startSearch() override;
    // Opens the checklist of a task, starting a visit when none is under way.
    void start(domain::RecordId task);

private:
    QWidget *buildPlanned();
    QWidget *buildPlan();
    void buildSections();
    void buildLists();
    void refresh();
    void refreshHead();
    void refreshSection();
    void closeSheet();
    void sayNextDue();
    void place(domain::RecordId task);
    void addStarterSet();
    void open(const domain::Link &link);
    [[nodiscard]] RecordList *listOf(int section) const;

    enum Section { Plan, Coming, Tasks, Visits, Findings, Readings, Ash, Exceptions, Crew, Busy };

    QStackedWidget *m_whole = nullptr; // the sections, or the work
    VisitSheet *m_sheet = nullptr;
    PageHeader *m_header = nullptr;
    StatusPill *m_pill = nullptr;
    SentenceLabel *m_sentence = nullptr;
    SectionTabs *m_sections = nullptr;
    QStackedWidget *m_planStack = nullptr;
    EmptyState *m_noTasks = nullptr;
    PlanPanel *m_plan = nullptr;
    DueList *m_due = nullptr;
    TaskPanel *m_panel = nullptr;
    PlanList *m_coming = nullptr;
    RecordList *m_tasks = nullptr;
    RecordList *m_visits = nullptr;
    RecordList *m_findings = nullptr;
    RecordList *m_exceptions = nullptr;
    RecordList *m_crew = nullptr;
    RecordList *m_busy = nullptr;
    ReadingsPanel *m_readings = nullptr;
    AshPanel *m_ash = nullptr;
    FindingDetail *m_findingDetail = nullptr;
    VisitDetail *m_visitDetail = nullptr;
    domain::RecordId m_justDone = 0; // its next due is still to be said
};

} // namespace rickyard::views
