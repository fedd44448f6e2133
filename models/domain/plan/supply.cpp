#include "models/domain/plan/supply.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace rickyard::domain
{

namespace
{

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

void fillHeat(Offer &offer, const Species &species)
{
    if (offer.unit == SellUnit::Pound) {
        const Mass dry = dryFromAsIs(massFromPounds(1), offer.moisture);
        offer.volume = stackedFromSolid(solidVolume(dry, species, offer.moisture));
        offer.heat = netHeatOf(dry, offer.moisture, analysisOf(species));
        return;
    }
    offer.heat = heatOfStacked(offer.volume, species, offer.moisture);
}

Offer offerOf(const Books &books, const Supplier &supplier, RecordId wanted)
{
    Offer offer;
    offer.supplier = supplier.id;
    offer.species = burnable(books, wanted) ? wanted : usualSpecies(books, supplier.id);
    offer.unit = supplier.unit;
    offer.volume = unitVolume(supplier.unit, supplier.stickLength).value_or(Volume());
    offer.moistureAssumed = !supplier.promised;
    offer.moisture = supplier.promised.value_or(kDryEnough);
    offer.dry = offer.moisture <= kDryEnough;
    offer.lead = leadTimeOf(books, supplier.id);
    offer.price = supplier.price;
    fillHeat(offer, speciesOr(books, offer.species));
    return offer;
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

std::optional<Volume> unitVolume(SellUnit unit, std::optional<Length> stickLength)
{
    // NIST Handbook 130, section 2.4: a cord is 128 cubic feet. A face cord is the custom of the
    // trade and no legal measure, so its cubic feet are always shown.
    const double stickFeet = stickLength ? inches(*stickLength) / 12.0 : 16.0 / 12.0;
    switch (unit) {
    case SellUnit::Cord:
        return volumeFromCubicFeet(kCubicFeetPerCord);
    case SellUnit::FaceCord:
        return volumeFromCubicFeet(4.0 * 8.0 * stickFeet);
    case SellUnit::HalfCord:
        return volumeFromCubicFeet(kCubicFeetPerCord / 2);
    case SellUnit::QuarterCord:
        return volumeFromCubicFeet(kCubicFeetPerCord / 4);
    case SellUnit::CubicFoot:
        return volumeFromCubicFeet(1);
    case SellUnit::Pound:
        break;
    }
    return std::nullopt;
}

QString unitWords(SellUnit unit, qint64 count)
{
    const bool one = count == 1;
    QString word;
    switch (unit) {
    case SellUnit::Cord:
        word = one ? QStringLiteral("cord") : QStringLiteral("cords");
        break;
    case SellUnit::FaceCord:
        word = one ? QStringLiteral("face cord") : QStringLiteral("face cords");
        break;
    case SellUnit::HalfCord:
        word = one ? QStringLiteral("half cord") : QStringLiteral("half cords");
        break;
    case SellUnit::QuarterCord:
        word = one ? QStringLiteral("quarter cord") : QStringLiteral("quarter cords");
        break;
    case SellUnit::CubicFoot:
        word = one ? QStringLiteral("cubic foot") : QStringLiteral("cubic feet");
        break;
    case SellUnit::Pound:
        word = one ? QStringLiteral("pound") : QStringLiteral("pounds");
        break;
    }
    return QString(QString::number(count) + QLatin1Char(' ') + word);
}

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

QVector<Offer> offersOf(const Books &books, RecordId wanted)
{
    QVector<Offer> offers;
    for (const Supplier &supplier : books.suppliers)
        offers << offerOf(books, supplier, wanted);
    if (offers.isEmpty()) {
        Supplier nobody;
        nobody.unit = SellUnit::QuarterCord;
        offers << offerOf(books, nobody, wanted);
    }
    return offers;
}

Offer bestOffer(const QVector<Offer> &offers, QDate today, QDate latestArrival)
{
    const auto rank = [&](const Offer &offer) {
        const bool late = today.addDays(offer.lead.days()) > latestArrival;
        const double price = offer.price && offer.heat.base() > 0
                                 ? offer.price->toDouble() / offer.heat.toDouble()
                                 : HUGE_VAL;
        // Of those that come late the fastest is asked first, whatever the price.
        return std::tuple(!offer.dry, late, late ? offer.lead.days() : 0, price, offer.lead.days(),
                          offer.supplier);
    };
    return *std::min_element(offers.cbegin(), offers.cend(),
                             [&](const Offer &a, const Offer &b) { return rank(a) < rank(b); });
}

qint64 unitsFor(Heat needed, const Offer &offer)
{
    if (needed.base() <= 0 || offer.heat.base() <= 0)
        return 0;
    return static_cast<qint64>(std::ceil(needed / offer.heat));
}

QString amountWords(const Offer &offer, qint64 count, const Wording &wording)
{
    const QString units = unitWords(offer.unit, count);
    if (offer.unit == SellUnit::Pound || (offer.unit == SellUnit::CubicFoot && !wording.metric))
        return units;
    // The cubic feet of a face cord need their tenth: 42.7.
    const int digits = wording.metric ? 2 : (offer.unit == SellUnit::FaceCord ? 1 : 0);
    QString size = show(offer.volume, wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
                        localeOf(wording), digits);
    if (count != 1)
        size += QStringLiteral(" each");
    return QString(units + QStringLiteral(" (") + size + QLatin1Char(')'));
}

} // namespace rickyard::domain
