// A paper laid out on pages: what stands where. No heading is left alone at the foot of a page, no
// row of a table is broken between two, and a table that goes on gets its head again.
#pragma once

#include "views/reports/paper.h"
#include "views/theme/theme.h"

#include <QFont>
#include <QPointF>
#include <QRectF>

namespace rickyard::views {

// Lengths in eighths of a point: letters keep their widths whatever the device.
constexpr double kPaperUnit = 8;

struct PaperMark {
    enum class Kind { Text, Box, TickedBox, Rule };
    Kind kind = Kind::Text;
    QRectF place; // of a text: its left end, its baseline at the bottom
    QString text;
    QFont font;
    Role ink = Role::Ink;
};

struct PaperPage {
    QVector<PaperMark> marks;
    [[nodiscard]] QStringList texts() const; // in the order of reading
};

// `page`: the room within the margins, in kPaperUnits. One page at least.
QVector<PaperPage> layOutPaper(const Paper &paper, const QSizeF &page);

} // namespace rickyard::views
