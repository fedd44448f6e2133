// The coming weeks as a calendar: a week a row, days side by side, what happens as bars at their
// time of day that run on across midnight. Today is marked, clashes have their mark and words. The
// arrow keys move the day, Space goes through what it holds, Enter or a click opens it, N adds an
// event; an event or a planned cook is dragged to another day, or moved by Shift and an arrow key.
// It shows and asks; it writes nothing.
#pragma once

#include "views/events/calendar_items.h"
#include "views/ribbon/ribbon_layout.h"

#include <QAbstractScrollArea>

namespace rickyard::views {

class Theme;

class Calendar : public QAbstractScrollArea
{
    Q_OBJECT

public:
    explicit Calendar(QWidget *parent = nullptr);

    // `from` is a Monday. The chosen day and the place scrolled to stay.
    void setItems(QDate from, int weeks, QDate today, QVector<CalendarItem> items);
    [[nodiscard]] const QVector<CalendarItem> &items() const { return m_items; }
    [[nodiscard]] QDate day() const { return m_day; }
    void setDay(QDate day);
    // The item chosen on the day, -1 for none.
    [[nodiscard]] int current() const { return m_current; }
    // The weeks in sight begin with the one of this day.
    void showWeekOf(QDate day);
    [[nodiscard]] QDate firstDayShown() const;
    // Where an item or a day stands now, in the viewport's coordinates; of an item its part in the
    // week of its beginning. Empty: outside all weeks.
    [[nodiscard]] QRectF rectOf(int item) const;
    [[nodiscard]] QRectF rectOf(QDate day) const;

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void dayChanged(QDate day);
    void opened(const rickyard::domain::Link &link);
    void addAsked(QDate day);
    void moveAsked(const rickyard::domain::Link &link, int days);
    void notMovable(const rickyard::domain::Link &link);

protected:
    bool viewportEvent(QEvent *event) override;
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void leaveEvent(QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    struct Week {
        QDate monday;
        double top = 0; // in the whole
        double height = 0;
        QVector<int> items;  // indices
        RibbonLayout layout; // of these, from the week's own top
    };
    struct Drag {
        int item = -1;
        QDate from; // the day under the pointer when it was pressed
        QPoint pressed;
        QDate over;
        bool moving = false;
    };

    void arrange();
    [[nodiscard]] RibbonMetrics metrics() const;
    [[nodiscard]] int headHeight() const; // the names of the weekdays
    [[nodiscard]] double dayWidth() const;
    [[nodiscard]] double scrolled() const;
    [[nodiscard]] int weekOf(QDate day) const; // -1: none
    [[nodiscard]] QDate dayAt(const QPointF &at) const;
    [[nodiscard]] int itemAt(const QPointF &at) const;
    void choose(QDate day, int item);
    void stepItem();
    void moveCurrent(int days);
    void bringIntoSight(QDate day);
    void describe();
    bool moveByKey(int key, bool shift);
    void endDrag();

    void paintHead(QPainter &painter, const Theme &look) const;
    void paintWeek(QPainter &painter, const Theme &look, const Week &week) const;
    void paintDay(QPainter &painter, const Theme &look, const Week &week, QDate day) const;
    void paintItems(QPainter &painter, const Theme &look, const Week &week) const;
    void paintTravel(QPainter &painter, const Theme &look, const Week &week, int place) const;
    void paintTarget(QPainter &painter, const Theme &look) const;
    [[nodiscard]] int clashesOn(QDate day) const;

    QVector<CalendarItem> m_items;
    QVector<Week> m_weeks;
    QDate m_from;
    QDate m_today;
    QDate m_day;
    int m_weekCount = 0;
    int m_current = -1;
    int m_hovered = -1;
    double m_height = 0;
    Drag m_drag;
};

} // namespace rickyard::views
