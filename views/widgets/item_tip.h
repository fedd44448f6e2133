// The tip of something painted: plain text, at the mouse.
#pragma once

#include <QString>

class QHelpEvent;
class QWidget;

namespace rickyard::views {

// Empty: nothing is there, and a tip that stands is taken away.
void showItemTip(QHelpEvent *event, const QString &detail, QWidget *widget);

} // namespace rickyard::views
