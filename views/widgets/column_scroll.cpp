#include "views/widgets/column_scroll.h"

#include <QEvent>
#include <QScrollBar>

#include <algorithm>

namespace rickyard::views {

ColumnScroll::ColumnScroll(QWidget *parent) : QScrollArea(parent)
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

QSize ColumnScroll::minimumSizeHint() const
{
    QSize size = QScrollArea::minimumSizeHint();
    if (widget() != nullptr)
        size.setWidth(std::max(size.width(), widget()->minimumSizeHint().width() +
                                                 verticalScrollBar()->sizeHint().width()));
    return size;
}

// The area itself looks at its content's events, too.
bool ColumnScroll::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == widget() && event->type() == QEvent::LayoutRequest)
        updateGeometry();
    return QScrollArea::eventFilter(watched, event);
}

} // namespace rickyard::views
