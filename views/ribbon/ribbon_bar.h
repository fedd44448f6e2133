// How one item of the plan is drawn, on the ribbon and in the calendar alike.
#pragma once

#include "views/ribbon/ribbon_item.h"
#include "views/theme/theme.h"

#include <QRectF>

class QPainter;

namespace rickyard::views {

// The colour of an item before it is tinted: its pit's, else its lane's.
QColor ribbonInk(const RibbonItem &item, const Theme &look);
// Watch and Act have the shape of their role.
bool hasShape(const RibbonItem &item);
// A bar with its mark inside, or the shape or dot of what is one moment.
void paintRibbonBar(QPainter &painter, const Theme &look, const RibbonItem &item,
                    const QRectF &place);

} // namespace rickyard::views
