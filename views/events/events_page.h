// Events: what comes next and whether there is wood for it, the calendar of the coming weeks, the
// events and their cooks, and what the plan asks for twice.
#pragma once

#include "views/page.h"

class QScrollArea;

namespace rickyard::views {

class CalendarPanel;
class ClashList;
class EventDetail;
class LaterQuestion;
class NextEvent;
class PageHeader;
class PlannedCookDetail;
class RecordList;
class SectionTabs;

class EventsPage : public Page
{
    Q_OBJECT

public:
    explicit EventsPage(PageContext &context, QWidget *parent = nullptr);
    bool show(domain::Link link) override;
    void addNew() override;
    void startSearch() override;

private:
    void build();
    void buildSections();
    void refreshPlan();
    void planCook(domain::RecordId event);
    void addEvent(QDate day);
    void repeatEvent(domain::RecordId event);
    void copyEvent(domain::RecordId like, QDate day);
    void followChange(const workspace::Changes &changes);
    void askAboutLater(domain::TableId table, domain::RecordId id, LaterQuestion &question);
    void open(const domain::Link &link);
    [[nodiscard]] QString subtitle() const;
    void bringUpSections();

    enum Section { Weeks, Events, Cooks, Clashes };

    QScrollArea *m_scroll = nullptr;
    PageHeader *m_header = nullptr;
    NextEvent *m_next = nullptr;
    CalendarPanel *m_calendar = nullptr;
    SectionTabs *m_sections = nullptr;
    RecordList *m_events = nullptr;
    RecordList *m_cooks = nullptr;
    EventDetail *m_eventDetail = nullptr;
    PlannedCookDetail *m_cookDetail = nullptr;
    ClashList *m_clashes = nullptr;
    // The last change of a single event or cook, asked about when it came from its form.
    std::optional<workspace::Change> m_lastChange;
    int m_along = 0; // planned cooks that moved with it
};

} // namespace rickyard::views
