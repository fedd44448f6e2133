// Words that the papers of upkeep share. Inside views/reports only.
#pragma once

#include "models/domain/records/books.h"

namespace rickyard::views {

QString reportWords(const char *text);
QString reportDay(const QDate &day);                                   // "Tue 1 Dec"
QString reportDate(const domain::Books &books, domain::Instant at);    // "1 Dec 2026"
QString reportDayTime(const domain::Books &books, domain::Instant at); // "Tue 1 Dec, 6 PM"
QString reportMoney(const std::optional<domain::Money> &money);        // empty when missing
QString reportTask(const domain::Books &books, domain::RecordId task); // "Gasket test"
QString reportTaskAndPit(const domain::Books &books, domain::RecordId task);
// The yard's name, and that its data is invented where it is.
QString reportFoot(const domain::Books &books);

} // namespace rickyard::views
