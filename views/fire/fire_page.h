// Fire: the fires that burn now, and the log of past cooks.
#pragma once

#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class CompareView;
class CookDetail;
class FireNow;
class LogCharts;
class PageHeader;
class RecordList;
class SectionTabs;

class FirePage : public Page
{
    Q_OBJECT

public:
    explicit FirePage(PageContext &context, QWidget *parent = nullptr);
    bool show(domain::Link link) override;
    void addNew() override;
    void startSearch() override;

    [[nodiscard]] FireNow &now() { return *m_now; }
    [[nodiscard]] SectionTabs &sections() { return *m_sections; }
    void setNight(bool night);
    // Lists are made when they are first shown: most visits to this page are for the fire.
    RecordList *list(domain::TableId table);
    // The same holds for the charts of the log and for two cooks side by side.
    LogCharts &charts();
    CompareView &comparison();

private:
    void build();
    void addLists(const QVector<QPair<domain::TableId, QString>> &lists);
    QWidget *addHolder(const QString &name, int &index);
    void pairCooks(RecordList &list, CookDetail &detail);
    RecordList *makeList(domain::TableId table);
    void followSection(int index);
    void showCount(int burning);
    QPushButton *makeBell();

    struct Section {
        domain::TableId table;
        QWidget *holder;
        RecordList *list;
        int index; // among the sections of the page
    };
    [[nodiscard]] const Section *sectionAt(int index) const;
    void compare(qint64 first, qint64 second);
    PageHeader *m_header = nullptr;
    QPushButton *m_night = nullptr;
    SectionTabs *m_sections = nullptr;
    FireNow *m_now = nullptr;
    QVector<Section> m_lists;
    QWidget *m_chartsHolder = nullptr;
    QWidget *m_compareHolder = nullptr;
    int m_chartsIndex = -1;
    int m_compareIndex = -1;
    LogCharts *m_charts = nullptr;
    CompareView *m_comparison = nullptr;
};

} // namespace rickyard::views
