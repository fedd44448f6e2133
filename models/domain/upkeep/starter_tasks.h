// The upkeep tasks that a new yard starts with.
#pragma once

#include "models/domain/records/fire.h"
#include "models/domain/records/upkeep.h"

namespace rickyard::domain {

// A set of tasks for every pit that is not retired, then the trailer's and the safety kit's, all
// counted from `since`. Intervals are common practice unless `intervalFrom` says that they come
// from a code (portable extinguishers: NFPA 10 summaries; solid-fuel ash and firebox: NFPA 96
// summaries and city fire departments) or have to be taken from the maker's manual. Minutes are
// estimates, common practice.
//
// `firstId` above 0: the tasks get the ids from there on, so that one can name the other that goes
// before it (UpkeepTask::after). With 0 ids are 0 and none waits for another.
QVector<UpkeepTask> starterTasks(const QVector<Pit> &pits, QDate since, RecordId firstId = 0);

// Stands at the end of every task's cautions.
QString authorityCaution();
// Ash is treated as hot: city fire departments; 96 hours at the least.
QString ashCaution();
constexpr Duration kAshCooling = Duration::ofBase(96 * 3600);

} // namespace rickyard::domain
