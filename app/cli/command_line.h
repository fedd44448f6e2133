// The command line: numbers without a window, so that they can be scripted and checked.
#pragma once

#include "app/cli/launch.h"

#include <QTextStream>

#include <optional>

namespace rickyard::app {

// Runs the verb in `arguments` (which begin with the program's name) and gives the exit code:
// 0 done, 1 refused input, 2 usage, 3 the yard cannot be opened. Nothing when no verb was given
// and the window is to be opened. Needs a QCoreApplication, but no display.
std::optional<int> runCommandLine(const QStringList &arguments, QTextStream &out, QTextStream &err);

} // namespace rickyard::app
