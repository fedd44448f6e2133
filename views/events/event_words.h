// Events and their cooks in words: when, how much wood, whether there is enough of it.
#pragma once

#include "models/domain/answers/answers.h"
#include "views/theme/theme.h"

namespace rickyard::views {

// "in 10 days", "tomorrow", "today", "now".
QString inDaysText(const domain::Books &books, domain::Instant now, const domain::Event &event);
// "5 PM", "5:30 PM", on the yard's clock.
QString clockText(const domain::Books &books, domain::Instant time);
// "Sat 5 Dec", with the year when it is another one.
QString dateText(const domain::Books &books, domain::Instant time, domain::Instant now);

// The first event that is not over, cancelled or done; 0 when there is none.
domain::RecordId nextEvent(const domain::Books &books, domain::Instant now);
// Cooks planned for an event that are not cancelled, by lighting time.
QVector<domain::PlannedCook> cooksOf(const domain::Books &books, domain::RecordId event);
// Null when the answer does not look at it (past, cancelled, fulfilled).
const domain::PlannedUse *useOf(const domain::Answers &answers, domain::RecordId plannedCook);

struct WoodState {
    Role role = Role::Info;
    QString word;
};
WoodState woodStateOf(const domain::Books &books, const domain::PlannedUse *use);
// "96 seasoned lb, 80 to 115".
QString usePhrase(const domain::Books &books, const domain::PlannedUse &use);
// "about 101 lb or 20 splits of the dry wood on hand"; empty when no dry lot tells.
QString amountPhrase(const domain::Books &books, const domain::Stock &stock, domain::Heat heat);

// A new cook for an event, filled in as far as the records tell: the pit that is free and used
// last, its usual length, lit so that it is out when serving starts.
domain::Row cookFor(const domain::Books &books, const domain::Event &event);

} // namespace rickyard::views
