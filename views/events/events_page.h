// Events: what comes next and whether there is wood for it, the coming weeks, the events and their
// cooks, and what the plan asks for twice.
#pragma once

#include "views/page.h"

class QScrollArea;

namespace rickyard::views {

class ClashList;
class EventDetail;
class NextEvent;
class PageHeader;
class PlannedCookDetail;
class RecordList;
class Ribbon;
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
    void refresh();
    void refreshPlan();
    void planCook(domain::RecordId event);
    void open(const domain::Link &link);
    [[nodiscard]] QString subtitle() const;
    void bringUpSections();

    enum Section { Events, Cooks, Clashes };

    QScrollArea *m_scroll = nullptr;
    PageHeader *m_header = nullptr;
    NextEvent *m_next = nullptr;
    Ribbon *m_ribbon = nullptr;
    SectionTabs *m_sections = nullptr;
    RecordList *m_events = nullptr;
    RecordList *m_cooks = nullptr;
    EventDetail *m_eventDetail = nullptr;
    PlannedCookDetail *m_cookDetail = nullptr;
    ClashList *m_clashes = nullptr;
};

} // namespace rickyard::views
