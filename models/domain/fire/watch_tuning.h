// The beliefs of the watch (how far pits differ, how far the terms of the balance may be off) from
// the crew's own log: those under which each cook was best foretold from the ones before it.
#pragma once

#include "models/domain/fire/watch.h"

namespace rickyard::domain {

// Below this many cooks, or for a smaller gain in the log, the settings stay as they are.
constexpr int kCooksToTune = 30;
constexpr double kGainToTune = 2.0; // natural log: the new beliefs foretell e^2 times as well

// Sum over the cooks of the log density with which each was foretold (its logarithm on Student's t;
// the log marginal likelihood, built up a cook at a time). A t beyond 5 counts as 5.
double foretold(const QVector<WatchCook> &cooks, const WatchSettings &settings);

// `cooks` in time order. Of the beliefs only pitWhole, pitTerm and crewTerm move, to a half or
// twice of what `settings` says.
WatchSettings tunedSettings(const QVector<WatchCook> &cooks, const WatchSettings &settings);

} // namespace rickyard::domain
