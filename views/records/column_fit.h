// The columns of a list in the room it has: nothing is cut at the right and nothing scrolls
// sideways until a person sets columns as he wants them.
#pragma once

#include <QObject>
#include <QVector>

class QTableView;

namespace rickyard::views {

// Pixels. Numbers, days and times have `least` = `wanted`: half a number is a wrong number.
struct ColumnWish {
    int wanted = 0;
    int least = 0;
};

// Widths that fill the room: what is over goes to the first, which names the row. The widest give
// way first, none below its least. Where even those do not fit, columns from the right are left off
// (width 0), never the first; or, when none may be left off, they keep their least.
QVector<int> fittedWidths(const QVector<ColumnWish> &wishes, int room, bool mayLeaveOff);

// Keeps a view's columns fitted as it changes its width, from the words that stand in them.
class ColumnFit : public QObject
{
    Q_OBJECT

public:
    // `shown`: logical indexes in the order of their weight; others stay as they are. `leaveOff`:
    // hide those that do not fit.
    ColumnFit(QTableView *view, bool leaveOff);
    void setShown(const QVector<int> &columns);
    // At most so many pixels at 100 % for one column, unless there is room over.
    void setWidest(int pixels) { m_widest = pixels; }
    // Into the room there is. Measured when the first words stand in the columns, and anew when
    // the theme or the text size changes.
    void fit();
    // From now on the columns stand as they are; or are fitted again, in their first order.
    void stop();
    void start();
    [[nodiscard]] bool running() const { return m_running; }

Q_SIGNALS:
    // A person drew a border or moved a column; the fit has stopped.
    void taken();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void touched();
    void measureAnew();
    [[nodiscard]] ColumnWish wishOf(int column) const;

    QTableView *m_view;
    QWidget *m_room; // the view's viewport
    QVector<int> m_shown;
    QVector<ColumnWish> m_wishes;
    int m_widest = 230;
    bool m_leaveOff = false;
    bool m_running = true;
    bool m_pressed = false; // the mouse holds a border or a heading
};

} // namespace rickyard::views
