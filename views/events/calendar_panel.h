// The calendar with its bar, the chosen day in words, and what moving something asks.
#pragma once

#include "models/domain/plan/event_moves.h"
#include "views/events/calendar_items.h"
#include "views/page.h"

#include <optional>

namespace rickyard::views {

class Calendar;
class CalendarDay;
class InlineQuestion;
class NoticeBar;
class TextLabel;

class CalendarPanel : public QWidget
{
    Q_OBJECT

public:
    explicit CalendarPanel(PageContext &context, QWidget *parent = nullptr);
    void refresh(const QVector<domain::Clash> &clashes);
    [[nodiscard]] Calendar &calendar() { return *m_calendar; }
    void focusCalendar();

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);
    void addAsked(QDate day);

private:
    QWidget *buildBar();
    void followDay();
    void followMonth();
    void step(int weeks);
    void askMove(const domain::Link &link, int days);
    void move(const domain::Link &link, QDate day);
    void sayMoved(const domain::Link &link, const domain::Moved &moved, QDate day);
    void sayNotMovable(const domain::Link &link);
    [[nodiscard]] domain::Outcome<domain::Moved> lookAhead(const domain::Link &link,
                                                           QDate day) const;

    PageContext &m_context;
    TextLabel *m_month = nullptr;
    NoticeBar *m_notice = nullptr;
    InlineQuestion *m_question = nullptr;
    Calendar *m_calendar = nullptr;
    CalendarDay *m_dayWords = nullptr;
    QDate m_today;
    domain::Link m_moving; // asked about
    QDate m_movingTo;
};

} // namespace rickyard::views
