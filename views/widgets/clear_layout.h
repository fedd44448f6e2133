// Empties a layout of the widgets it holds.
#pragma once

#include <QLayout>
#include <QWidget>

namespace rickyard::views {

// The widgets are hidden at once and deleted later: a click in one of them may be what led here.
inline void clearLayout(QLayout *layout)
{
    while (QLayoutItem *item = layout->takeAt(0)) {
        if (QWidget *widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        }
        delete item;
    }
}

} // namespace rickyard::views
