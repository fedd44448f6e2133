// What to know before lighting a pit: the planned cook that is near, what blocks the lighting,
// whether the steel is still warm.
#pragma once

#include "models/domain/answers/answers.h"

namespace rickyard::views {

// The nearest planned cook of a pit within 18 hours that no cook fulfils yet.
std::optional<domain::PlannedCook> plannedNear(const domain::Books &books, domain::RecordId pit,
                                               domain::Instant now);
QString plannedWords(const domain::Books &books, const domain::PlannedCook &planned,
                     domain::Instant now);

struct Blocking {
    domain::RecordId task = 0;
    QString text; // "Clean the grease drain: 6 cooks since the last time, limit 5"
};
// What stands in the way of lighting the pit now, for that planned cook (0: none); see
// models/domain/upkeep/blocks.h. What was overridden for it is left out.
QVector<Blocking> blockingTasks(const domain::Books &books, const domain::UpkeepAnswer &upkeep,
                                domain::RecordId pit, domain::Instant now,
                                domain::RecordId plannedCook);

// Out for less than eight hours, steel this thick is still warm: common practice, no source.
domain::StartKind likelyStart(const domain::Books &books, domain::RecordId pit,
                              domain::Instant now);

} // namespace rickyard::views
