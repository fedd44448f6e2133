// One burning cook: feed it, note it, see how it stands. The clock moves labels only; everything
// else follows changes of the books.
#pragma once

#include "views/fire/run_facts.h"
#include "views/page.h"
#include "views/reports/paper.h"

class QPushButton;

namespace rickyard::views {

class BandMeter;
class CookTimeline;
class FeedPad;
class MarksBar;
class NoticeBar;
class Numeral;
class RecentFeeds;
class TemperatureEntry;
class TextLabel;

class RunPanel : public QWidget
{
    Q_OBJECT

public:
    // What was done is said in `notice`, which stands outside, so that nothing moves under a
    // finger and it is in sight wherever the panel is scrolled to.
    RunPanel(PageContext &context, domain::RecordId cook, NoticeBar *notice,
             QWidget *parent = nullptr);
    [[nodiscard]] domain::RecordId cook() const { return m_cook; }
    void refresh();
    void tick();
    void focusFeed();
    [[nodiscard]] FeedPad &pad() { return *m_pad; }
    // The hand-over as it would be printed now.
    [[nodiscard]] Paper handOverPaper() const;

Q_SIGNALS:
    void finished(qint64 cook);

private:
    void build();
    QWidget *buildStrip();
    void follow();
    void showWood();
    void showTemperature();
    void showExpected();
    void showLeft();
    void openHandOver();
    // Says what was done and offers to take it back: by the undo stack while it is the last step,
    // else by taking out the record.
    void offerUndo(const QString &text, domain::Link link);
    void refuse(const QString &message);

    PageContext &m_context;
    domain::RecordId m_cook;
    NoticeBar *m_notice;
    RunFacts m_facts;
    Numeral *m_elapsed = nullptr;
    Numeral *m_wood = nullptr;
    Numeral *m_temperature = nullptr;
    Numeral *m_left = nullptr;
    Numeral *m_next = nullptr;
    TextLabel *m_title = nullptr;
    BandMeter *m_expected = nullptr;
    TextLabel *m_line = nullptr;
    FeedPad *m_pad = nullptr;
    MarksBar *m_marks = nullptr;
    TemperatureEntry *m_entry = nullptr;
    CookTimeline *m_timeline = nullptr;
    RecentFeeds *m_recent = nullptr;
    QPushButton *m_handOver = nullptr;
};

} // namespace rickyard::views
