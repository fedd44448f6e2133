// Thinning a time series before it is drawn. A chart is a few hundred pixels wide; a night of probe
// readings is tens of thousands of points. Averaging would flatten the flare-up or the dip that the
// crew is looking for, so each pixel column keeps its lowest and its highest reading instead: the
// drawn envelope is exactly that of the full series.
#pragma once

#include "models/domain/statistics/answer.h"

#include <span>
#include <vector>

namespace rickyard::domain::statistics
{

// Indices to keep, ascending. `x` (times, never falling) and `y` are of one length. The first and
// the last point are always kept, and the lowest and highest reading of every column; of equal
// readings the first is taken. At most `most` indices (4 or more) come back; a series that already
// fits comes back whole. Refused: a missing reading (split the trace at its gaps first, so that no
// line is drawn across them), falling times, differing lengths.
Answer<std::vector<std::size_t>> minMaxDecimation(std::span<const double> x,
                                                  std::span<const double> y, std::size_t most);

// The columns that `most` points allow: two points a column besides the first and the last.
std::size_t columnsFor(std::size_t most);
// Which of `columns` equal slices of [first, last] holds x; 0 when the range is empty.
std::size_t columnOf(double x, double first, double last, std::size_t columns);

} // namespace rickyard::domain::statistics
