// The strokes the style is made of. Each returns true when it has drawn the element, so that the
// style can hand what is left to Fusion.
#pragma once

#include "views/theme/style.h"

#include <QStyleOption>

class QPainter;

namespace rickyard::views::paint {

ButtonKind kindOf(const QWidget *widget);

enum class Direction { Up, Down, Left, Right };
void chevron(QPainter *painter, const QRectF &rectangle, Direction direction, const QColor &color,
             double thickness);
void panel(QPainter *painter, const QRectF &rectangle, double radius, const QColor &fill,
           const QColor &edge, double thickness);
// The soft filled box of editors: hairline at rest, accent when focused, act colour when refused.
void field(QPainter *painter, const QRect &rectangle, const QStyleOption *option,
           const QWidget *widget);

bool buttonPanel(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool toolButtonPanel(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool checkBox(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool radioButton(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool comboBox(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget);
bool spinBox(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget);
bool scrollBar(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget);
bool slider(const QStyleOptionComplex *option, QPainter *painter, const QWidget *widget);
bool menuItem(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool menuBarItem(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool tabShape(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool headerSection(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool headerLabel(const QStyleOption *option, QPainter *painter, const QWidget *widget);
bool progress(QStyle::ControlElement element, const QStyleOption *option, QPainter *painter,
              const QWidget *widget);

} // namespace rickyard::views::paint
