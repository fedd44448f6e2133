// Where wood comes from: orders on their way, and what a supplier sells, by when and for how much.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <QDate>

#include <optional>

namespace rickyard::domain
{

// Stacked volume of one unit; a face cord is 4 × 8 ft × the stick length (16 in when not given). A
// pound has no volume of its own: missing.
std::optional<Volume> unitVolume(SellUnit unit, std::optional<Length> stickLength);
// "2 half cords"; "1 face cord".
QString unitWords(SellUnit unit, qint64 count);

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
struct Offer {
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
// One offer a supplier, or the nameless one when there is none. `wanted` is the species asked for,
// 0 when it does not matter.
QVector<Offer> offersOf(const Books &books, RecordId wanted);
// Dry before wet, then one that still comes by `latestArrival` when ordered today, then the lowest
// price for its heat.
Offer bestOffer(const QVector<Offer> &offers, QDate today, QDate latestArrival);

// Whole units that hold at least that heat; 0 when an offer holds none.
qint64 unitsFor(Heat needed, const Offer &offer);
// "2 half cords (64 ft³ each)".
QString amountWords(const Offer &offer, qint64 count, const Wording &wording);

} // namespace rickyard::domain
