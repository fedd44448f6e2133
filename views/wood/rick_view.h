// The ricks as they stand: each lot a stack of split ends, as wide as its stacked volume, with its
// moisture told by pattern, number and word, and its cover and hold drawn upon it.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/stock.h"

#include <QVector>
#include <QWidget>

class QPainter;

namespace rickyard::views {

// One stack, in words that are ready to be drawn.
struct RickStack {
    domain::RecordId lot = 0;
    QString name;
    QString moisture;       // "18 % dry", or that it is not read
    QString amount;         // "0.31 cord"
    double cubicFeet = 0;   // stacked
    double dryPercent = -1; // below zero: not known
    domain::Readiness readiness = domain::Readiness::NoReading;
    domain::Cover cover = domain::Cover::TopCover;
    bool hold = false;

    [[nodiscard]] QString sentence() const; // all of it, for a screen reader
};

// The lots with wood left, what can be burned first and the older before the newer.
QVector<RickStack> rickStacks(const domain::Books &books, const domain::Stock &stock);

class RickView : public QWidget
{
    Q_OBJECT

public:
    explicit RickView(QWidget *parent = nullptr);

    void setStacks(const QVector<RickStack> &stacks);
    void setChosen(domain::RecordId lot);
    [[nodiscard]] domain::RecordId focused() const;
    [[nodiscard]] QRect cellOf(domain::RecordId lot) const; // empty when it is not drawn

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

Q_SIGNALS:
    void opened(qint64 lot);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void leaveEvent(QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;
    bool event(QEvent *event) override;

private:
    struct Cell {
        QRect area;
        int stackWidth = 0;
    };
    // Places the cells for a width and returns the height used.
    int place(int width, QVector<Cell> &cells) const;
    void arrange();
    void focusOn(int index);
    void describe();
    [[nodiscard]] int at(const QPoint &point) const;
    void paintCell(QPainter &painter, int index) const;

    QVector<RickStack> m_stacks;
    QVector<Cell> m_cells;
    int m_focused = 0;
    int m_hovered = -1;
    domain::RecordId m_chosen = 0;
};

} // namespace rickyard::views
