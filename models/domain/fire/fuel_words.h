// The fuel answer in words: which pit stands out, by how much, since when, what to look at first.
#pragma once

#include "models/domain/fire/fuel.h"

namespace rickyard::domain {

Headline fuelHeadline(const Books &books, const FuelAnswer &answer, Instant now,
                      const Wording &wording);

// "1 cook", "3 cooks".
QString countOf(int count, const QString &noun);

} // namespace rickyard::domain
