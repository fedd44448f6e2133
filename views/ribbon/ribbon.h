// The coming weeks as a calm band: days are columns, weekends a little darker, weeks named, today
// marked; cooks, events, upkeep, wood and due tasks in lanes. A click or Enter opens an item, the
// arrow keys move from one to the next, and each is said in words.
#pragma once

#include "views/ribbon/ribbon_layout.h"

#include <QWidget>

class QPainter;

namespace rickyard::views {

class Theme;

class Ribbon : public QWidget
{
    Q_OBJECT

public:
    explicit Ribbon(QWidget *parent = nullptr);

    // `from` is today.
    void setItems(QDate from, int days, QVector<RibbonItem> items);
    [[nodiscard]] const QVector<RibbonItem> &items() const { return m_items; }
    // Where an item stands, in the widget's coordinates.
    [[nodiscard]] QRectF rectOf(int item) const { return m_layout.places.value(item).hit; }
    [[nodiscard]] int current() const { return m_current; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

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
    void changeEvent(QEvent *event) override;

private:
    [[nodiscard]] RibbonMetrics metrics(int width) const;
    [[nodiscard]] RibbonLayout layoutFor(int width) const;
    [[nodiscard]] int itemAt(const QPointF &at) const;
    void arrange();
    void setCurrent(int item);
    void moveLane(int by);
    void describe();
    [[nodiscard]] QString emptyWords() const; // before the first items: that it is still worked out
    void paintDays(QPainter &painter, const Theme &look) const;
    void paintItem(QPainter &painter, const Theme &look, int item) const;

    QVector<RibbonItem> m_items;
    QDate m_from;
    int m_days = 42;
    RibbonLayout m_layout;
    int m_current = -1;
    int m_hovered = -1;
    int m_pressed = -1;
};

} // namespace rickyard::views
