// The shape that goes with a semantic colour, so that colour never speaks alone:
// Good a tick in a ring, Watch a triangle, Act a filled diamond, Info a ring with a dot.
#pragma once

#include "views/theme/theme.h"

#include <QRectF>

class QPainter;

namespace rickyard::views {

void paintShape(QPainter *painter, const QRectF &rectangle, Role role, const QColor &color);

} // namespace rickyard::views
