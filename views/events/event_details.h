// What stands above the forms of the Events page: an event's cooks with the wood they should take,
// and a planned cook's expected use with what it rests on.
#pragma once

#include "views/page.h"

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class InlineQuestion;
class LaterQuestion;
class Numeral;
class StatusPill;
class TextLabel;

class EventDetail : public QWidget
{
    Q_OBJECT

public:
    explicit EventDetail(PageContext &context, QWidget *parent = nullptr);
    void setEvent(domain::RecordId event); // 0: a new one, nothing to show
    void refresh() { setEvent(m_event); }
    [[nodiscard]] LaterQuestion &later() { return *m_later; }

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);
    void planAsked(qint64 event);
    void repeatAsked(qint64 event);
    void copyAsked(qint64 event);

private:
    void buildActs(QVBoxLayout *column);
    void addCook(const domain::PlannedCook &cook);
    void showSeries(const domain::Event &event);
    void endSeries();

    PageContext &m_context;
    domain::RecordId m_event = 0;
    TextLabel *m_heading;
    QVBoxLayout *m_cooks;
    LaterQuestion *m_later;
    TextLabel *m_series;
    QPushButton *m_endSeries = nullptr;
    InlineQuestion *m_endQuestion = nullptr;
    QPushButton *m_plan;
    QPushButton *m_load = nullptr;
};

class PlannedCookDetail : public QWidget
{
    Q_OBJECT

public:
    explicit PlannedCookDetail(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    void refresh() { setCook(m_cook); }
    [[nodiscard]] LaterQuestion &later() { return *m_later; }

private:
    PageContext &m_context;
    domain::RecordId m_cook = 0;
    Numeral *m_use;
    StatusPill *m_state;
    TextLabel *m_lines;
    LaterQuestion *m_later;
    QPushButton *m_load;
};

} // namespace rickyard::views
