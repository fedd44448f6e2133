// One cook over its hours: probe traces and typed temperatures, the target, the air outside, and
// every feed as a tick at the foot.
#pragma once

#include "views/page.h"

namespace rickyard::views {

class ChartView;

class CookTimeline : public QWidget
{
    Q_OBJECT

public:
    explicit CookTimeline(QWidget *parent = nullptr);
    // Small: without key and axis titles, for the detail beside a list.
    void setSmall(bool small);
    // Nothing is drawn for a cook that is gone.
    void setCook(const domain::Books &books, domain::RecordId cook, domain::Instant now);
    [[nodiscard]] ChartView &chart() { return *m_chart; }
    [[nodiscard]] QString summary() const { return m_summary; }
    // Traces that could not be read, in words.
    [[nodiscard]] QStringList problems() const { return m_problems; }

private:
    void draw(const domain::Books &books, const domain::Cook &cook, domain::Instant now);
    void drawMarks(const domain::Cook &cook, double low, double high);

    ChartView *m_chart;
    QString m_summary;
    QStringList m_problems;
    bool m_small = false;
};

} // namespace rickyard::views
