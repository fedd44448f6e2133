// The plan as a board: a lane a pit, two weeks of days, fires with the hours they take to cool,
// visits with the hours they cure, the crew's hours behind them. A visit is moved by the mouse or
// by the keys: Space picks it up, the arrows move it, Enter puts it down, Escape leaves it.
#pragma once

#include "views/upkeep/plan_content.h"

#include <QWidget>

#include <functional>

class QPainter;

namespace rickyard::views {

class Theme;

class PlanBoard : public QWidget
{
    Q_OBJECT

public:
    static constexpr int kDays = 14;

    // What the board asks about times, in the yard's words.
    struct Speech {
        std::function<QString(domain::Instant, domain::Instant)> span;
        std::function<QString(domain::RecordId, domain::Instant, domain::Instant)> trouble;
    };

    explicit PlanBoard(const QString &timeZone, Speech speech, QWidget *parent = nullptr);

    // `first` is the first day shown.
    void setContent(PlanContent content, QDate today);
    void setFirst(QDate first);
    [[nodiscard]] QDate first() const { return m_first; }
    void setMovable(bool movable) { m_movable = movable; }
    // The block of a task, or none (0).
    void choose(domain::RecordId task);
    // One visit of the chosen block alone; < 0: all of it.
    void choosePart(int part);
    [[nodiscard]] const PlanContent &content() const { return m_content; }
    [[nodiscard]] int current() const { return m_current; }
    [[nodiscard]] int part() const { return m_part; }
    [[nodiscard]] QRectF rectOf(int block) const;
    [[nodiscard]] double xOf(domain::Instant time) const;
    // What is said about the chosen block, or about the one that is being moved.
    [[nodiscard]] QString words() const;
    [[nodiscard]] bool lifted() const { return m_lifted; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void currentChanged();
    void wordsChanged(const QString &words);
    void firstChanged();
    void opened(const rickyard::domain::Link &link);
    // Put down elsewhere: task, id (0: it was a proposal), start and end of each.
    void moved(const QVector<rickyard::domain::Visit> &visits);

protected:
    bool event(QEvent *event) override;
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void leaveEvent(QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    struct Measures {
        double left = 0;  // where the days begin
        double day = 0;   // width of one
        double top = 0;   // of the first lane
        double lane = 0;  // height
        double gap = 0;   // between lanes
        double least = 0; // width of a block
    };
    [[nodiscard]] const Measures &measures() const { return m_measures; }
    void measure();
    [[nodiscard]] domain::Instant timeAt(double x) const;
    [[nodiscard]] QRectF barOf(int lane, domain::Instant start, domain::Instant end,
                               double least) const;
    [[nodiscard]] int blockAt(const QPointF &at) const;
    [[nodiscard]] const PlanFire *fireAt(const QPointF &at) const;
    [[nodiscard]] domain::Instant snapped(domain::Instant start, bool toCrew) const;
    [[nodiscard]] QVector<PlanVisit> chosenVisits() const;
    [[nodiscard]] domain::Instant chosenStart() const;
    [[nodiscard]] domain::Duration chosenLength() const;
    void setCurrent(int block);
    void step(int by);
    void stepLane(int by);
    void showCurrent();
    void lift();
    void shift(domain::Duration by);
    void putDown();
    void leaveIt();
    void say();
    bool moveKey(QKeyEvent *event);
    void paintDays(QPainter &painter, const Theme &look) const;
    void paintLane(QPainter &painter, const Theme &look, int lane) const;
    void paintFire(QPainter &painter, const Theme &look, int lane, const PlanFire &fire) const;
    void paintBlock(QPainter &painter, const Theme &look, int block) const;
    void paintGhost(QPainter &painter, const Theme &look) const;

    Measures m_measures; // anew when size, lanes or theme change
    Speech m_speech;
    domain::LocalTime m_local;
    PlanContent m_content;
    QDate m_today;
    QDate m_first;
    bool m_movable = true;
    int m_current = -1;
    int m_part = -1;
    int m_hovered = -1;
    // Being moved: by the mouse, from where it was pressed, or by the keys.
    int m_pressed = -1;
    QPointF m_pressedAt;
    bool m_lifted = false;
    bool m_dragging = false;
    bool m_awaited = false;   // put down; the plan is still being worked out
    domain::Instant m_target; // start of what is moved
};

} // namespace rickyard::views
