// Pictures of every page for the documentation, made by the program from the demo yard.
#pragma once

#include "app/cli/launch.h"

class QApplication;

namespace rickyard::app {

// Writes N-page-mode.png for every page, light and dark, into the folder named by the first
// operand. The demo yard is made anew for a fixed day, so that the pictures change only when the
// program does. Exit code as for verbs.
int makePictures(QApplication &application, const Launch &launch);

} // namespace rickyard::app
