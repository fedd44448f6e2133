// What the calendar shows: the ribbon's cooks, events, visits and wood, with travel and clashes.
#pragma once

#include "models/domain/answers/answers.h"
#include "models/domain/plan/clashes.h"
#include "views/ribbon/ribbon_item.h"

namespace rickyard::views {

struct CalendarItem {
    RibbonItem item; // the bar; of an event from leaving to coming back
    QDateTime start; // of the thing itself, within the bar
    QDateTime end;
    QVector<domain::Clash> clashes;
    bool movable = false; // an event or a planned cook
};

// From a day on, wall-clock times. Upkeep that is only due or proposed is left to the ribbon and
// the Upkeep page: here stands what is agreed. `today` is where late orders stand.
QVector<CalendarItem> calendarItems(const domain::Books &books, const domain::Answers &answers,
                                    const QVector<domain::Clash> &clashes, QDate from, QDate until,
                                    QDate today);

// The words of a day for a screen reader and the panel beside: its items that touch it.
QVector<int> itemsOn(const QVector<CalendarItem> &items, QDate day);

} // namespace rickyard::views
