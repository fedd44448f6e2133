// What wood costs as it lies in its lot.
#pragma once

#include "models/domain/records/books.h"

#include <QHash>

namespace rickyard::domain {

// By lot, in cents per milligram of oven-dry mass: its price with delivery over what was received.
// Each lot is one delivery, so wood is priced as it came in, whichever is burned first. Lots
// without price or without a delivery in the ledger are left out.
QHash<RecordId, double> centsPerDryMass(const Books &books);

} // namespace rickyard::domain
