// An axis whose ticks stand at round numbers.
#pragma once

#include <QtCharts/QValueAxis>

namespace rickyard::views {

// From the tick at or below `low` to the one at or above `high`, in about `parts` steps of 1, 2 or
// 5 times a power of ten. The chart that gets it owns it.
QValueAxis *niceAxis(double low, double high, int parts);

} // namespace rickyard::views
