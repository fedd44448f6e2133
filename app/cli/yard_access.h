// Opening a yard for a verb, and the moment that a verb speaks of.
#pragma once

#include "app/cli/verb_table.h"
#include "models/workspace/commands/verbs.h"

#include <memory>

namespace rickyard::app {

using WorkspacePtr = std::unique_ptr<workspace::Workspace>;

// Null when it cannot be opened, which has then been said on call.err. Never makes a new file.
WorkspacePtr openForReading(CliCall &call);
// The same for writing; a yard that only opens for reading is refused. `mayCreate`: a missing file
// becomes a new yard.
WorkspacePtr openForWriting(CliCall &call, bool mayCreate = false);

// A day alone means its end in the zone (IANA; UTC when there is none of that name). Nothing when
// it is neither a day nor a time.
std::optional<domain::Instant> readMoment(const QString &text, const QString &ianaZone);
// --as-of, else the present. A day alone means its end in the zone. Nothing when it cannot be read,
// which has then been said.
std::optional<domain::Instant> momentOf(CliCall &call, const QString &ianaZone);

void sayProblems(QTextStream &err, const domain::Problems &problems);
// "Invented data" where a yard's figures are shown.
QString yardLine(const domain::Books &books, domain::Instant now);

} // namespace rickyard::app
