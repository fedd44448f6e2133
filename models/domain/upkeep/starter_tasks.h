// The upkeep tasks that a new yard starts with.
#pragma once

#include "models/domain/records/fire.h"
#include "models/domain/records/upkeep.h"

namespace rickyard::domain
{

// A set of tasks for every pit that is not retired, then the trailer's and the safety kit's, all
// counted from `since`; ids are 0. Intervals are common practice unless `intervalFrom` says that
// they come from a code (portable extinguishers: NFPA 10 summaries; solid-fuel ash and firebox:
// NFPA 96 summaries and city fire departments). Minutes are estimates, common practice.
// What is done on each tow is counted by cooks: a task without a pit goes along with every cook.
QVector<UpkeepTask> starterTasks(const QVector<Pit> &pits, QDate since);

// Stands at the end of every task's cautions.
QString authorityCaution();
// Ash is treated as hot: city fire departments; 96 hours at the least.
QString ashCaution();
constexpr Duration kAshCooling = Duration::ofBase(96 * 3600);

} // namespace rickyard::domain
