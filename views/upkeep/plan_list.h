// When upkeep can be done in the coming weeks: visits proposed and placed by day, and what found
// no place, with why and what would help.
#pragma once

#include "views/page.h"

#include <functional>
#include <optional>

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

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);
    void startAsked(qint64 task);

private:
    void addDay(const QString &day);
    void addPlacement(const domain::Placement &placement);
    void addUnplaced(const domain::Unplaced &unplaced);
    // What can be done with a line, beside opening its task.
    struct Act {
        QString label;
        QString name;
        std::function<void()> run;
    };
    void addLine(domain::RecordId task, const QString &text, int role, const QString &word,
                 const std::optional<Act> &act = {});

    PageContext &m_context;
    TextLabel *m_summary;
    QPushButton *m_accept;
    QVBoxLayout *m_lines;
    int m_proposed = 0;
};

// A visit as proposed, state placed.
domain::Visit visitOf(const domain::Placement &placement);

} // namespace rickyard::views
