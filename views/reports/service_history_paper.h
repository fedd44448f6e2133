// A pit's service history on paper, for a fire marshal or a buyer: what was done, read, found and
// mended, and what it cost.
#pragma once

#include "models/domain/records/books.h"
#include "views/reports/paper.h"

namespace rickyard::views {

// All that the books hold of the pit up to `now`, oldest first. An empty paper when there is no
// such pit.
Paper serviceHistoryPaper(const domain::Books &books, domain::RecordId pit, domain::Instant now);

} // namespace rickyard::views
