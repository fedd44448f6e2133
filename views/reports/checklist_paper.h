// The checklist of one visit, to work through with a pen: what to have ready, the cautions, steps
// to tick, values to write down beside their limits, room for what is found.
#pragma once

#include "models/domain/records/books.h"
#include "views/reports/paper.h"

namespace rickyard::views {

// What the visit holds already is ticked and filled in. An empty paper when there is no such visit.
Paper checklistPaper(const domain::Books &books, domain::RecordId visit);

} // namespace rickyard::views
