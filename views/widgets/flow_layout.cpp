#include "views/widgets/flow_layout.h"

#include "views/theme/theme_hub.h"

#include <QWidget>

namespace rickyard::views {

FlowLayout::FlowLayout(QWidget *parent) : QLayout(parent)
{
    setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout()
{
    qDeleteAll(items_);
}

void FlowLayout::setSpacingSteps(int across, int down)
{
    across_ = across;
    down_ = down;
    invalidate();
}

void FlowLayout::addItem(QLayoutItem *item)
{
    items_.append(item);
}

QLayoutItem *FlowLayout::takeAt(int index)
{
    return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

int FlowLayout::heightForWidth(int width) const
{
    return arrange(QRect(0, 0, width, 0), false);
}

QSize FlowLayout::minimumSize() const
{
    QSize size;
    for (const QLayoutItem *item : items_) {
        if (!item->isEmpty())
            size = size.expandedTo(item->minimumSize());
    }
    const QMargins margins = contentsMargins();
    return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

void FlowLayout::setGeometry(const QRect &rectangle)
{
    QLayout::setGeometry(rectangle);
    arrange(rectangle, true);
}

int FlowLayout::arrange(const QRect &rectangle, bool place) const
{
    const Theme &look = theme(parentWidget());
    const QRect area = rectangle.marginsRemoved(contentsMargins());
    int x = area.left();
    int y = area.top();
    int rowHeight = 0;
    for (QLayoutItem *item : items_) {
        if (item->isEmpty())
            continue;
        const QSize size = item->sizeHint();
        if (x > area.left() && x + size.width() - 1 > area.right()) {
            x = area.left();
            y += rowHeight + look.space(down_);
            rowHeight = 0;
        }
        if (place)
            item->setGeometry(QRect(QPoint(x, y), size));
        x += size.width() + look.space(across_);
        rowHeight = std::max(rowHeight, size.height());
    }
    return y + rowHeight - rectangle.top() + contentsMargins().bottom();
}

} // namespace rickyard::views
