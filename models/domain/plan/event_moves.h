// An event or a planned cook put on another day: what moves along, what stands in the way, and what
// it means when that day is over.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

namespace rickyard::domain {

struct Moved {
    QVector<Row> rows; // to be written; none when it stands on that day already
    int cooks = 0;     // that go along with an event
    QString past;      // what it means that the day is over, in words; empty when it is not
};

// The clock times stay, by the wall clock. An event takes its planned cooks along. Refused: what is
// done, cancelled, or has a fire that was lit for it.
Outcome<Moved> movedEvent(const Books &books, RecordId event, QDate day, Instant now);
Outcome<Moved> movedCook(const Books &books, RecordId plannedCook, QDate day, Instant now);

// The planned cooks of an event whose serving goes from one time to another: each as long before it
// as it was, by the wall clock. A cook that was lit stays where it is.
QVector<PlannedCook> cooksAlong(const Books &books, const Event &before, const Event &after);

} // namespace rickyard::domain
