// The demo yard: two years of an invented crew, made by the program from a seed and an end date.
// The same seed and moment give the same records.
#pragma once

#include "models/workspace/commands/verbs.h"

namespace rickyard::app {

constexpr quint64 kDemoSeed = 3;

// Fills a yard that has no records yet, in a few large steps that can each be undone.
commands::Outcome<commands::Done> fillDemo(commands::Verbs &verbs, quint64 seed,
                                           commands::Instant now);

// A new yard file at `path` with the demo in it. Refused when there is a file already; nothing is
// left behind when it fails.
commands::Outcome<commands::Done> makeDemoFile(const QString &path, quint64 seed,
                                               commands::Instant now);

} // namespace rickyard::app
