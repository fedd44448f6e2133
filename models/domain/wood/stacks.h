// Stacks as a person measures them: several ricks of a lot, each length × height × depth.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/quantities/units.h"
#include "models/domain/records/value.h"

namespace rickyard::domain {

// Of all stacks together.
Volume stackedVolume(const StackSizes &stacks);

// "8 ft × 4 ft × 16 in; 4 ft × 4 ft × 16 in", or in metres and centimetres.
QString stacksText(const StackSizes &stacks, UnitSystem system, const QLocale &locale);
// Reads that, with "x", "*" or "by" for ×, and a semicolon or a new line between stacks. A figure
// without a unit is feet (metres) for length and height, inches (centimetres) for the depth.
Outcome<StackSizes> parseStacks(const QString &text, UnitSystem system, const QLocale &locale);

} // namespace rickyard::domain
