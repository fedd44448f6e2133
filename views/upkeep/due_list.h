// What falls due, most urgent first, of all pits or of one.
#pragma once

#include "views/page.h"
#include "views/upkeep/upkeep_words.h"

class QButtonGroup;
class QListView;

namespace rickyard::items {
class DerivedModel;
}

namespace rickyard::views {

class FlowLayout;
class TextLabel;

class DueList : public QWidget
{
    Q_OBJECT

public:
    explicit DueList(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    [[nodiscard]] domain::RecordId chosen() const;
    // Takes the filter away when the task is not shown; false when there is no such task.
    bool choose(domain::RecordId task);
    [[nodiscard]] QListView &view() { return *m_view; }
    // Number of tasks shown.
    [[nodiscard]] int shown() const;
    void startSearch();

Q_SIGNALS:
    void chosenChanged(qint64 task);
    void activated(qint64 task); // Enter or double click

private:
    void buildFilter();
    void fill();
    [[nodiscard]] bool wanted(const domain::TaskDue &task) const;

    // All pits, the trailer and kit, or one pit.
    static constexpr qint64 kAll = -1;

    PageContext &m_context;
    items::DerivedModel *m_model;
    QListView *m_view;
    QWidget *m_filterRow;
    FlowLayout *m_filterFlow;
    QButtonGroup *m_filter;
    TextLabel *m_nothing;
    QHash<domain::RecordId, TaskBlock> m_blocks;
    qint64 m_pit = kAll;
    domain::RecordId m_chosen = 0;
    bool m_filling = false;
};

} // namespace rickyard::views
