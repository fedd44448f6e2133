// Opens yards in windows until the last one is closed.
#pragma once

#include "app/cli/launch.h"

class QApplication;

namespace rickyard::app {

// The exit code of the program: 0, or 3 when no yard could be opened.
int runWindow(QApplication &application, const Launch &launch);

} // namespace rickyard::app
