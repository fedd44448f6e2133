// Two cooks side by side, their timelines one above the other on one axis, and the cooks most like
// one that was or is to be.
#pragma once

#include "models/domain/fire/cook_likeness.h"
#include "views/page.h"

class QComboBox;
class QStackedWidget;

namespace rickyard::views {

class CompareGrid;
class CookTimeline;
class LikeFinder;
class SentenceLabel;
class TextLabel;

class CompareView : public QWidget
{
    Q_OBJECT

public:
    explicit CompareView(PageContext &context, QWidget *parent = nullptr);
    // Second 0: the cook most like the first. First 0: the latest that is finished.
    void compare(domain::RecordId first, domain::RecordId second = 0);

    [[nodiscard]] domain::RecordId first() const;
    [[nodiscard]] domain::RecordId second() const;
    [[nodiscard]] LikeFinder &finder() { return *m_finder; }
    [[nodiscard]] CompareGrid &grid() { return *m_grid; }
    [[nodiscard]] QComboBox &firstChoice() { return *m_first; }
    [[nodiscard]] QComboBox &secondChoice() { return *m_second; }
    [[nodiscard]] CookTimeline &firstTimeline() { return *m_above; }
    [[nodiscard]] CookTimeline &secondTimeline() { return *m_below; }
    [[nodiscard]] QString sentence() const;

protected:
    void showEvent(QShowEvent *event) override;

private:
    void build();
    QWidget *buildChoice();
    QWidget *buildTimelines();
    void fillChoices();
    void choose(QComboBox *box, domain::RecordId cook);
    void firstChanged();
    void refresh();
    void showTimelines();

    PageContext &m_context;
    bool m_stale = true;
    QStackedWidget *m_stack = nullptr;
    QComboBox *m_first = nullptr;
    QComboBox *m_second = nullptr;
    LikeFinder *m_finder = nullptr;
    SentenceLabel *m_sentence = nullptr;
    CompareGrid *m_grid = nullptr;
    TextLabel *m_aboveName = nullptr;
    TextLabel *m_belowName = nullptr;
    CookTimeline *m_above = nullptr;
    CookTimeline *m_below = nullptr;
};

} // namespace rickyard::views
