// What the marks of the plan board mean: a small key beside its heading.
#pragma once

#include <QWidget>

class QPainter;

namespace rickyard::views {

class PlanKey : public QWidget
{
    Q_OBJECT

public:
    explicit PlanKey(QWidget *parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent *event) override;
};

// Slanted lines within a rectangle, leaning one way for cooling and the other for curing.
void paintHatch(QPainter &painter, const QRectF &area, QColor ink, double gap, bool leansRight);

} // namespace rickyard::views
