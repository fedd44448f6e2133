// How a number is written: true minus, thin space before the unit, an en dash for a range.
// Formatting of quantities belongs to the delegates; this is only their typography.
#pragma once

#include <QString>

namespace rickyard::views {

// A hyphen that stands as a sign before a digit becomes U+2212.
QString trueMinus(QString number);
// "12.5" + "lb" -> "12.5 lb" with U+2009 between; percent and degree signs keep it too.
QString withUnit(const QString &number, const QString &unit);
// "10" to "14" -> "10–14"; with signs a spaced dash, since "−3–−1" cannot be read.
QString rangeText(const QString &low, const QString &high);
// What stands where a value is missing: an en dash.
QString missingMark();

} // namespace rickyard::views
