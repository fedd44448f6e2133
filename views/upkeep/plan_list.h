// When upkeep can be done in the coming weeks: visits proposed and placed by day, and what found
// no place, with why and what would help.
#pragma once

#include "views/page.h"

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class PlanList : public QWidget
{
    Q_OBJECT

public:
    explicit PlanList(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    [[nodiscard]] int proposed() const { return m_proposed; }
    // Books every proposal, as one step.
    void bookAll();

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    void addDay(const QString &day);
    void addPlacement(const domain::Placement &placement);
    void addUnplaced(const domain::Unplaced &unplaced);
    QWidget *addLine(const QString &name, const QString &text, int role, const QString &word,
                     domain::RecordId task);

    PageContext &m_context;
    TextLabel *m_summary;
    QPushButton *m_book;
    QVBoxLayout *m_lines;
    int m_proposed = 0;
};

// A visit as proposed, state placed.
domain::Visit visitOf(const domain::Placement &placement);

} // namespace rickyard::views
