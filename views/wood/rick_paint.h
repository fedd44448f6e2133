// The strokes of the rick picture; see rick_view.h.
#pragma once

#include "views/theme/theme.h"
#include "views/wood/rick_view.h"

class QPainter;

namespace rickyard::views::paint {

// Split ends in rows within `area`, the cover over them and the hold across them.
void rick(QPainter &painter, const QRectF &area, const RickStack &stack, const Theme &look);
// Height above the stack that the tallest cover needs.
int coverHeight(const Theme &look);

} // namespace rickyard::views::paint
