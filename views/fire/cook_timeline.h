// One cook over its hours with all that is known of it: probe traces in their target band, typed
// temperatures, feeds as ticks sized by weight, notes, wind and the air outside. With the buttons
// and the line of words that go with it.
#pragma once

#include "views/fire/timeline_view.h"
#include "views/latest_work.h"
#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class FlowLayout;
class TextLabel;

class CookTimeline : public QWidget
{
    Q_OBJECT

public:
    explicit CookTimeline(QWidget *parent = nullptr);
    ~CookTimeline() override;
    // Small: for the detail beside a list.
    void setSmall(bool small);
    // Nothing is drawn for a cook that is gone. Traces are read on a thread and come a moment
    // later; those of the same cook stay in sight until then.
    // `atLeast`: seconds that the whole reaches to, so that two cooks share their hours.
    void setCook(const domain::Books &books, domain::RecordId cook, domain::Instant now,
                 double atLeast = 0);
    // A button of its owner, in the row with the others.
    void addTool(QWidget *tool);
    [[nodiscard]] TimelineView &view() { return *m_view; }
    [[nodiscard]] QString summary() const { return m_summary; }
    // Traces that could not be read, in words.
    [[nodiscard]] QStringList problems() const;
    // Null until the traces have been read.
    [[nodiscard]] CookCurvesPtr curves() const { return m_view->content().curves; }

Q_SIGNALS:
    void curvesRead();

private:
    QPushButton *tool(const QString &text, const QString &name, const QString &tip);
    void showWords(const QString &reading);
    void summarise(const QString &title);

    LatestWork m_work;
    TimelineView *m_view;
    FlowLayout *m_tools;
    QPushButton *m_whole = nullptr;
    TextLabel *m_words;
    QString m_title;
    QString m_summary;
};

} // namespace rickyard::views
