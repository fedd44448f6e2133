// Whether there is dry wood for every booked cook, and if not, what to order by which day.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/wood/stock.h"

namespace rickyard::domain {

struct PlannedUse {
    RecordId plannedCook = 0;
    RecordId event = 0; // 0: none
    RecordId pit = 0;
    Instant light;
    Heat middle;
    Heat lower;
    Heat upper;
    Temperature outside;  // expected for the date
    QString weatherBasis; // in words
    Heat stockAfter;      // dry stock left after it, by the middle
    bool shortOf = false; // the upper bound finds too little dry wood
    Heat shortfall;       // by how much, at this cook; 0 when it is covered
    QString useBasis;     // in words
    bool assumed = false; // rests on a working default for use, target or weather
};

struct StockPoint {
    QDate day;
    Heat middle; // dry stock at the end of the day
    Heat lower;
    Heat upper;
};

struct WoodAnswer {
    Headline headline;
    Stock stock;
    QVector<PlannedUse> uses;
    QVector<StockPoint> course; // today to the last planned cook, six weeks at least
    RecordId firstShortEvent = 0;
    RecordId firstShortCook = 0;
    QDate orderBy; // invalid: nothing to order
    RecordId supplier = 0;
    Volume amount;        // stacked, of the supplier's wood
    QString amountInUnit; // "2 half cords (64 ft³ each)"
    Duration leadTime;
    Heat missing;         // need beyond the dry stock, upper bound
    qint64 units = 0;     // of the supplier's unit
    RecordId species = 0; // to order; 0: unknown
    qint64 lateDays = 0;  // the order-by day is this many days past; orderBy is then today
};

// Days, at most, to the order-by day from which the answer stands at Act.
constexpr int kActWithinDays = 7;
// The course is drawn this far at least.
constexpr int kCourseDays = 42;

WoodAnswer woodAnswer(const Books &books, const FuelAnswer &fuel, Instant now,
                      const Wording &wording);
// Its two halves: what every cook still ahead should take, by lighting time, and the answer from
// such needs (stockAfter, shortOf and shortfall are filled in).
QVector<PlannedUse> plannedUses(const Books &books, const FuelAnswer &fuel, Instant now);
WoodAnswer woodAnswerFrom(const Books &books, const QVector<PlannedUse> &uses, Instant now,
                          const Wording &wording);

} // namespace rickyard::domain
