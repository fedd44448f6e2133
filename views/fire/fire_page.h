// Fire: the fires that burn now, and the log of past cooks.
#pragma once

#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class FireNow;
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

private:
    void build();
    RecordList *makeList(domain::TableId table);
    void followSection(int index);
    void showCount(int burning);
    QPushButton *makeBell();

    struct Section {
        domain::TableId table;
        QWidget *holder;
        RecordList *list;
    };
    PageHeader *m_header = nullptr;
    QPushButton *m_night = nullptr;
    SectionTabs *m_sections = nullptr;
    FireNow *m_now = nullptr;
    QVector<Section> m_lists; // section i + 1
};

} // namespace rickyard::views
