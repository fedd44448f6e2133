// Where wood comes from: orders on their way, and what a supplier sells, by when and for how much.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <QDate>

#include <optional>

namespace rickyard::domain {

// An open order: sent or promised, not cancelled and not yet on the books as a lot.
struct OnTheWay {
    RecordId order = 0;
    QDate day; // promised; invalid when none was given
    Heat heat; // of what was ordered, at the promised moisture
    bool counted = false;
    QString why; // when not counted
};
QVector<OnTheWay> ordersOnTheWay(const Books &books, QDate today);

struct LeadTime {
    Duration duration;
    QString basis; // in words
    bool assumed = false;
    [[nodiscard]] qint64 days() const { return (duration.base() + 86399) / 86400; }
};
// The supplier's usual time, else the median of their received orders, else the yard's figure.
LeadTime leadTimeOf(const Books &books, RecordId supplier);

// What to buy from a supplier (0: none on the books, sold by the quarter cord).
struct Purchase {
    RecordId supplier = 0;
    RecordId species = 0; // 0: unknown
    SellUnit unit = SellUnit::QuarterCord;
    Volume volume;     // stacked, of one unit
    Heat heat;         // net, of one unit
    Moisture moisture; // promised, or the limit of dry when nothing is promised
    bool moistureAssumed = false;
    bool dry = true;
    LeadTime lead;
    std::optional<Money> price; // of one unit
};
// One purchase a supplier, or the nameless one when there is none. `wanted` is the species asked
// for, 0 when it does not matter.
QVector<Purchase> purchasesOf(const Books &books, RecordId wanted);
// Dry before wet, then one that still comes by `latestArrival` when ordered today, then the lowest
// price for its heat.
Purchase bestPurchase(const QVector<Purchase> &purchases, QDate today, QDate latestArrival);

// Whole units that hold at least that heat; 0 when an purchase holds none.
qint64 unitsFor(Heat needed, const Purchase &purchase);
// "2 half cords (64 ft³ each)".
QString amountWords(const Purchase &purchase, qint64 count, const Wording &wording);

} // namespace rickyard::domain
