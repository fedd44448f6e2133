// A column that scrolls up and down in what is left of a page or dialog, without a frame.
#pragma once

class QVBoxLayout;
class QWidget;

namespace rickyard::views {

// Put below what `column` holds already; takes all the room that is left. What is returned belongs
// to it. `spacing` in pixels.
QVBoxLayout *addScrollColumn(QVBoxLayout *column, QWidget *parent, int spacing);

} // namespace rickyard::views
