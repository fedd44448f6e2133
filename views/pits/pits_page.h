// Pits: which one burns more than it should, and the records of the pits themselves.
#pragma once

#include "views/page.h"

class QStackedWidget;

namespace rickyard::views {

class CostTable;
class EmptyState;
class PageHeader;
class PitOverview;
class RecordList;
class SectionTabs;

class PitsPage : public Page
{
    Q_OBJECT

public:
    explicit PitsPage(PageContext &context, QWidget *parent = nullptr);
    // A pit with id 0 starts a new one.
    bool show(domain::Link link) override;
    void addNew() override;
    void startSearch() override;

    [[nodiscard]] PitOverview &overview() { return *m_overview; }
    [[nodiscard]] CostTable &costs() { return *m_costs; }
    [[nodiscard]] SectionTabs &sections() { return *m_sections; }
    [[nodiscard]] RecordList *list(domain::TableId table) const;

private:
    void build();
    void addList(domain::TableId table, const QString &name, const QString &iconName,
                 const QString &empty, const QString &sortKey);
    void followCount();

    struct Section {
        domain::TableId table;
        RecordList *list;
    };
    PageHeader *m_header = nullptr;
    SectionTabs *m_sections = nullptr;
    QStackedWidget *m_first = nullptr;
    EmptyState *m_empty = nullptr;
    PitOverview *m_overview = nullptr;
    CostTable *m_costs = nullptr;
    QVector<Section> m_lists; // after the overview and the costs
};

} // namespace rickyard::views
