// Where wood comes from: what suppliers sell and ask, how long they take, and how they have kept to
// their word so far.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/plan/lead_record.h"
#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// What can be had from whom. Its place in WoodAnswer::sources is the `source` of orders and
// what-ifs.
struct WoodSource {
    RecordId supplier = 0;
    RecordId offer = 0;   // open offer that sets the price; 0: the supplier's usual terms
    RecordId species = 0; // 0: unknown, reckoned as oak
    QString supplierName;
    QString name;                 // "Creek Wood (invented), half cords of post oak"
    bool green = false;           // comes too wet to burn at once
    Moisture moisture;            // promised; the limit of dry when nothing is
    bool moistureAssumed = false; // nothing is promised
    SellUnit unit = SellUnit::Cord;
    Volume unitStacked;
    Heat unitHeat;                 // net, once dry
    std::optional<Money> price;    // of one unit
    std::optional<Money> delivery; // of one load
    int mostUnits = 0;             // in one load; 0: no limit known
    int leadDays = 0;              // from order to delivery as promised or usual
    QString leadRecord;            // how the lead time was taken, in words
    bool leadAssumed = false;      // no delivery on record: the lateness is a wide default
};

// Every way to order that the books know: the open offers, and the usual terms of each supplier
// that has no open offer of wood as dry. `wanted` is the species asked for (0: any); a supplier who
// never brought it is taken to bring what they last brought. What cannot be reckoned is left out
// and named in `notes`.
QVector<WoodSource> woodSources(const Books &books, RecordId wanted, const Wording &wording,
                                QStringList &notes);

struct LeadTime {
    Duration duration;
    QString basis; // in words
    bool assumed = false;
    [[nodiscard]] int days() const { return static_cast<int>((duration.base() + 86399) / 86400); }
};
// The supplier's usual time, else the median of their received orders, else the yard's figure.
LeadTime leadTimeOf(const Books &books, RecordId supplier);

// Days late of every order that came, against the day promised, else against their usual time; an
// order that was chased and cancelled never came.
LeadRecord leadRecordOf(const Books &books, RecordId supplier, const Wording &wording);

// What the next load of a supplier will be like.
struct SupplierOutlook {
    LeadRecord lead;
    Spread share;       // of what is ordered that comes
    double wet = 0;     // chance that a load promised dry comes too wet to burn
    Moisture wetAt;     // as wet as that
    QString shareWords; // in words
    QString wetWords;   // empty when no load ever came wet
    bool shareAssumed = false;
};
// Share: the Student t of supplier_record.h. Wet: loads read on arrival more than 1.5 points (the
// meter's own error) over the limit of dry, out of all read and two more that are taken as dry: a
// supplier is taken at their word until a load says otherwise.
SupplierOutlook supplierOutlook(const Books &books, RecordId supplier, const Wording &wording);

// An order that was sent or promised and is not yet on the books as a lot.
bool isOnTheWay(const Books &books, const WoodOrder &order);
bool burnable(const Books &books, RecordId species);
// The record, or for an unknown species plain oak (about post oak's gravity and shrinkage).
Species speciesOrOak(const Books &books, RecordId id);
// Net heat of stacked wood at a moisture, or once it has dried to the limit of dry.
Heat heatOnceDry(Volume stacked, const Species &species, Moisture moisture);

// "2 half cords (64 ft³ each)".
QString amountWords(const WoodSource &source, int units, const Wording &wording);

} // namespace rickyard::domain
