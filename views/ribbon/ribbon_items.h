// What the ribbon shows, from the books and the answers alone.
#pragma once

#include "models/domain/answers/answers.h"
#include "views/ribbon/ribbon_item.h"

namespace rickyard::views {

// Everything that touches the days from `from` on: cooks that burn or are planned, events, upkeep
// visits agreed and proposed (a day's visits of one kind together), wood on order and the day to
// order by, tasks that fall due (a day's together; what is overdue stands at `from`). By start,
// then lane. Times are the yard's.
QVector<RibbonItem> ribbonItems(const domain::Books &books, const domain::Answers &answers,
                                QDate from, int days);

// The letters that stand for a pit in a bar: initials, with the pit's place where two share them.
QString pitMark(const domain::Books &books, domain::RecordId pit);

} // namespace rickyard::views
