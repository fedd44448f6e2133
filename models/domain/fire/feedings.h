// Feeds that follow each other within two minutes are one feeding: a person lays several splits.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

// Our own rule, no source.
constexpr Duration kOneFeeding = Duration::ofBase(120);

// When each feeding began, by time; `feeds` in any order.
QVector<Instant> feedingStarts(QVector<Instant> feeds);

} // namespace rickyard::domain
