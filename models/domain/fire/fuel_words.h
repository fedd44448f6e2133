// The fuel answer in words: which pit stands out, by how much, since when, what to look at first.
#pragma once

#include "models/domain/fire/fuel.h"

namespace rickyard::domain {

Headline fuelHeadline(const Books &books, const FuelAnswer &answer, Instant now,
                      const Wording &wording);

// "1 cook", "3 cooks".
QString countOf(int count, const QString &noun);

// What to look at first on a pit that stands out, from what its last cooks had in common. The order
// of causes is common practice, no source.
struct Suspicion {
    QString sentence; // "Look at the door gasket first."
    QVector<Reason> reasons;
};
Suspicion suspicionOf(const FuelAnswer &answer, const PitFuel &pit, const Wording &wording);

} // namespace rickyard::domain
