// What the log holds on each judged cook that may tell pit from wood from weather from habit; the
// input of diagnosis.h, gathered from the books.
#pragma once

#include "models/domain/fire/diagnosis.h"
#include "models/domain/fire/fuel.h"

namespace rickyard::domain {

// One entry a judged cook, by lighting time. Preheat: from lighting to the mark "at temperature".
// Doors: notes of that kind over the hours of the fire. Feed gap: the longest interval between
// feedings over the median one, from four feedings on (the last hour of the fire left out: it is
// let burn down). Dial: a logged pit probe less what was read and typed within five minutes of it,
// median, from three such pairs on.
QVector<EvidenceCook> evidenceOf(const Books &books, const FuelAnswer &fuel);

// The same question for a pit as it stands: since the start of its climb (or fall), flagged or not;
// nothing when it neither climbs nor falls.
std::optional<DiagnosisQuestion> questionOf(const FuelAnswer &fuel, RecordId pit);

} // namespace rickyard::domain
