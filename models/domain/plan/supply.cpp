#include "models/domain/plan/supply.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/sale.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace rickyard::domain {

namespace {

// Used for wood of no known species: about the basic gravity and shrinkage of post oak.
Species plainOak()
{
    Species oak;
    oak.basicGravity = Plain::ofBase(600000);
    oak.shrinkage = Ratio::ofBase(162000);
    return oak;
}

Species speciesOr(const Books &books, RecordId id)
{
    return books.species.contains(id) ? books.species.value(id) : plainOak();
}

Heat heatOfStacked(Volume stacked, const Species &species, Moisture moisture)
{
    return netHeatOf(dryMassOfSolid(solidFromStacked(stacked), species, moisture), moisture,
                     analysisOf(species));
}

bool hasLot(const Books &books, RecordId order)
{
    return std::any_of(books.lots.cbegin(), books.lots.cend(),
                       [order](const Lot &lot) { return lot.order == order; });
}

bool burnable(const Books &books, RecordId species)
{
    return books.species.contains(species) && !books.species.value(species).neverBurn;
}

// What a supplier last brought or was asked for; else the latest lot of the yard.
RecordId usualSpecies(const Books &books, RecordId supplier)
{
    RecordId theirs = 0;
    RecordId any = 0;
    Instant theirTime;
    Instant anyTime;
    for (const Lot &lot : books.lots) {
        if (!burnable(books, lot.species))
            continue;
        if (lot.supplier == supplier && (theirs == 0 || lot.received >= theirTime)) {
            theirs = lot.species;
            theirTime = lot.received;
        }
        if (any == 0 || lot.received >= anyTime) {
            any = lot.species;
            anyTime = lot.received;
        }
    }
    for (const WoodOrder &order : books.orders)
        if (theirs == 0 && order.supplier == supplier && burnable(books, order.species))
            theirs = order.species;
    return theirs != 0 ? theirs : any;
}

void fillHeat(Purchase &purchase, const Species &species)
{
    if (purchase.unit == SellUnit::Pound) {
        const Mass dry = dryFromAsIs(massFromPounds(1), purchase.moisture);
        purchase.volume = stackedFromSolid(solidVolume(dry, species, purchase.moisture));
        purchase.heat = netHeatOf(dry, purchase.moisture, analysisOf(species));
        return;
    }
    purchase.heat = heatOfStacked(purchase.volume, species, purchase.moisture);
}

Purchase purchaseOf(const Books &books, const Supplier &supplier, RecordId wanted)
{
    Purchase purchase;
    purchase.supplier = supplier.id;
    purchase.species = burnable(books, wanted) ? wanted : usualSpecies(books, supplier.id);
    purchase.unit = supplier.unit;
    purchase.volume =
        unitVolume(supplier.unit, supplier.stickLength, supplier.bundleVolume).value_or(Volume());
    purchase.moistureAssumed = !supplier.promised;
    purchase.moisture = supplier.promised.value_or(kDryEnough);
    purchase.dry = purchase.moisture <= kDryEnough;
    purchase.lead = leadTimeOf(books, supplier.id);
    purchase.price = supplier.price;
    fillHeat(purchase, speciesOr(books, purchase.species));
    return purchase;
}

OnTheWay onTheWay(const Books &books, const WoodOrder &order, QDate today)
{
    OnTheWay coming;
    coming.order = order.id;
    coming.day = order.promised;
    std::optional<Moisture> promised = order.promisedMoisture;
    if (!promised)
        promised = books.suppliers.value(order.supplier).promised;
    coming.heat =
        heatOfStacked(order.volume, speciesOr(books, order.species), promised.value_or(kDryEnough));
    if (!order.promised.isValid())
        coming.why = QStringLiteral("no day was promised");
    else if (order.promised < today)
        coming.why = QStringLiteral("it is overdue");
    else if (!burnable(books, order.species))
        coming.why = QStringLiteral("its species is not burned for food");
    else if (!promised)
        coming.why = QStringLiteral("no moisture was promised");
    else if (*promised > kDryEnough)
        coming.why = QStringLiteral("it will not come dry");
    coming.counted = coming.why.isEmpty();
    return coming;
}

} // namespace

QVector<OnTheWay> ordersOnTheWay(const Books &books, QDate today)
{
    QVector<OnTheWay> all;
    for (const WoodOrder &order : books.orders) {
        const bool open = order.state == OrderState::Sent || order.state == OrderState::Promised;
        if (open && !hasLot(books, order.id))
            all << onTheWay(books, order, today);
    }
    return all;
}

LeadTime leadTimeOf(const Books &books, RecordId supplier)
{
    const Supplier record = books.suppliers.value(supplier);
    if (record.leadTime)
        return {*record.leadTime, QStringLiteral("the supplier's usual time"), false};
    QVector<qint64> days;
    for (const WoodOrder &order : books.orders)
        if (order.supplier == supplier && order.state == OrderState::Received &&
            order.ordered.isValid() && order.received.isValid() && order.received >= order.ordered)
            days << order.ordered.daysTo(order.received);
    if (days.isEmpty())
        return {books.yard().orderLead, QStringLiteral("the yard's figure for any supplier"), true};
    std::sort(days.begin(), days.end());
    // The upper median: of two orders the slower one counts.
    return {Duration::ofBase(days.at(days.size() / 2) * 86400),
            QString(QStringLiteral("the middle of ") + QString::number(days.size()) +
                    (days.size() == 1 ? QStringLiteral(" order received from them")
                                      : QStringLiteral(" orders received from them"))),
            false};
}

QVector<Purchase> purchasesOf(const Books &books, RecordId wanted)
{
    QVector<Purchase> purchases;
    for (const Supplier &supplier : books.suppliers)
        purchases << purchaseOf(books, supplier, wanted);
    if (purchases.isEmpty()) {
        Supplier nobody;
        nobody.unit = SellUnit::QuarterCord;
        purchases << purchaseOf(books, nobody, wanted);
    }
    return purchases;
}

Purchase bestPurchase(const QVector<Purchase> &purchases, QDate today, QDate latestArrival)
{
    const auto rank = [&](const Purchase &purchase) {
        const bool late = today.addDays(purchase.lead.days()) > latestArrival;
        const double price = purchase.price && purchase.heat.base() > 0
                                 ? purchase.price->toDouble() / purchase.heat.toDouble()
                                 : HUGE_VAL;
        // Of those that come late the fastest is asked first, whatever the price.
        return std::tuple(!purchase.dry, late, late ? purchase.lead.days() : 0, price,
                          purchase.lead.days(), purchase.supplier);
    };
    return *std::min_element(
        purchases.cbegin(), purchases.cend(),
        [&](const Purchase &a, const Purchase &b) { return rank(a) < rank(b); });
}

qint64 unitsFor(Heat needed, const Purchase &purchase)
{
    if (needed.base() <= 0 || purchase.heat.base() <= 0)
        return 0;
    // A part in a hundred thousand is forgiven: masses are rounded to whole milligrams on the way
    // (2e-6 of a pound), and a need of exactly three cords must not ask for a fourth.
    return static_cast<qint64>(std::ceil(needed / purchase.heat * (1.0 - 1e-5)));
}

QString amountWords(const Purchase &purchase, qint64 count, const Wording &wording)
{
    const QString units = unitWords(purchase.unit, static_cast<double>(count));
    if (purchase.unit == SellUnit::Pound ||
        (purchase.unit == SellUnit::CubicFoot && !wording.metric))
        return units;
    // The cubic feet of a face cord need their tenth: 42.7.
    const bool parts = purchase.unit == SellUnit::FaceCord ||
                       purchase.unit == SellUnit::LooseCubicFoot ||
                       purchase.unit == SellUnit::Bundle;
    const int digits = wording.metric ? 2 : (parts ? 1 : 0);
    QString size =
        show(purchase.volume, wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
             localeOf(wording), digits);
    if (count != 1)
        size += QStringLiteral(" each");
    return QString(units + QStringLiteral(" (") + size + QLatin1Char(')'));
}

} // namespace rickyard::domain
