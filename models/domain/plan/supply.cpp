#include "models/domain/plan/supply.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/statistics/distributions.h"
#include "models/domain/wood/delivery.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/sale.h"
#include "models/domain/wood/stock.h"
#include "models/domain/wood/supplier_record.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr Moisture kReadingError = Moisture::ofBase(1500);
constexpr double kTakenAsDry = 2; // loads

bool hasLot(const Books &books, RecordId order)
{
    return std::any_of(books.lots.cbegin(), books.lots.cend(),
                       [order](const Lot &lot) { return lot.order == order; });
}

// What a supplier last brought or was asked for; 0 without either.
RecordId lastBrought(const Books &books, RecordId supplier)
{
    RecordId species = 0;
    Instant time;
    for (const Lot &lot : books.lots)
        if (lot.supplier == supplier && burnable(books, lot.species) &&
            (species == 0 || lot.received >= time)) {
            species = lot.species;
            time = lot.received;
        }
    for (const WoodOrder &order : books.orders)
        if (species == 0 && order.supplier == supplier && burnable(books, order.species))
            species = order.species;
    return species;
}

RecordId latestOfYard(const Books &books)
{
    RecordId species = 0;
    Instant time;
    for (const Lot &lot : books.lots)
        if (burnable(books, lot.species) && (species == 0 || lot.received >= time)) {
            species = lot.species;
            time = lot.received;
        }
    return species;
}

RecordId speciesFrom(const Books &books, RecordId supplier, RecordId wanted)
{
    const RecordId theirs = lastBrought(books, supplier);
    if (!burnable(books, wanted))
        return theirs != 0 ? theirs : latestOfYard(books);
    const bool brought = std::any_of(books.lots.cbegin(), books.lots.cend(), [&](const Lot &lot) {
        return lot.supplier == supplier && lot.species == wanted;
    });
    return brought || theirs == 0 ? wanted : theirs;
}

// False when a unit's size is not known.
bool fillUnit(WoodSource &source, const Books &books, std::optional<Length> stick,
              std::optional<Volume> bundle)
{
    const Species species = speciesOrOak(books, source.species);
    if (source.unit == SellUnit::Pound) {
        const Mass dry = dryFromAsIs(massFromPounds(1), source.moisture);
        source.unitStacked = stackedFromSolid(solidVolume(dry, species, source.moisture));
        source.unitHeat =
            netHeatOf(dry, std::min(source.moisture, kDryEnough), analysisOf(species));
    } else {
        source.unitStacked = unitVolume(source.unit, stick, bundle).value_or(Volume());
        source.unitHeat = heatOnceDry(source.unitStacked, species, source.moisture);
    }
    return source.unitHeat > Heat();
}

void fillLead(WoodSource &source, const Books &books, const Wording &wording)
{
    const LeadTime lead = leadTimeOf(books, source.supplier);
    const Lateness late = latenessOf(leadRecordOf(books, source.supplier, wording));
    source.leadDays = lead.days();
    source.leadAssumed = late.orders == 0;
    source.leadRecord = QString(daysWords(source.leadDays) + QStringLiteral(" (") + lead.basis +
                                QStringLiteral("); ") + late.basis);
}

void nameIt(WoodSource &source, const Books &books)
{
    source.supplierName = books.suppliers.value(source.supplier).name;
    const QString species = books.species.value(source.species).name.toLower();
    source.name =
        QString(source.supplierName + QStringLiteral(", ") + unitName(source.unit, false) +
                QStringLiteral(" of ") + (source.green ? QStringLiteral("green ") : QString()) +
                (species.isEmpty() ? QStringLiteral("wood") : species));
}

void setMoisture(WoodSource &source, std::optional<Moisture> promised)
{
    source.moistureAssumed = !promised;
    source.moisture = promised.value_or(kDryEnough);
    source.green = source.moisture > kDryEnough;
}

WoodSource usualTerms(const Books &books, const Supplier &supplier, RecordId wanted)
{
    WoodSource source;
    source.supplier = supplier.id;
    source.species = speciesFrom(books, supplier.id, wanted);
    source.unit = supplier.unit;
    source.price = supplier.price;
    source.delivery = supplier.delivery;
    source.mostUnits = supplier.mostUnits.value_or(0);
    setMoisture(source, supplier.promised);
    return source;
}

WoodSource termsOf(const Books &books, const Offer &offer)
{
    const Supplier supplier = books.suppliers.value(offer.supplier);
    WoodSource source;
    source.supplier = offer.supplier;
    source.offer = offer.id;
    source.species = offer.species;
    source.unit = offer.unit;
    const double count = number(offer.count);
    if (count > 0)
        source.price = Money::rounded(offer.price.toDouble() / count);
    source.delivery = offer.delivery ? offer.delivery : supplier.delivery;
    if (offer.unit == supplier.unit)
        source.mostUnits = supplier.mostUnits.value_or(0);
    setMoisture(source, offer.promised ? offer.promised : supplier.promised);
    return source;
}

QString noSize(const Books &books, const WoodSource &source)
{
    return QString(books.suppliers.value(source.supplier).name +
                   QStringLiteral(" is left out: what one ") + unitName(source.unit, true) +
                   QStringLiteral(" holds is not known. Give its size with the supplier."));
}

// The day the last of an order came; the order's own day wins.
QDate cameOn(const Books &books, const WoodOrder &order, const QTimeZone &zone)
{
    if (order.received.isValid())
        return order.received;
    QDate last;
    for (const Lot &lot : books.lots)
        if (lot.order == order.id) {
            const QDate came = dayOf(lot.received, zone);
            last = last.isValid() ? std::max(last, came) : came;
        }
    return last;
}

} // namespace

bool isOnTheWay(const Books &books, const WoodOrder &order)
{
    return (order.state == OrderState::Sent || order.state == OrderState::Promised) &&
           !hasLot(books, order.id);
}

bool burnable(const Books &books, RecordId species)
{
    return books.species.contains(species) && !books.species.value(species).neverBurn;
}

Species speciesOrOak(const Books &books, RecordId id)
{
    if (books.species.contains(id))
        return books.species.value(id);
    Species oak;
    oak.basicGravity = Plain::ofBase(600000);
    oak.shrinkage = Ratio::ofBase(162000);
    return oak;
}

Heat heatOnceDry(Volume stacked, const Species &species, Moisture moisture)
{
    return netHeatOf(dryMassOfSolid(solidFromStacked(stacked), species, moisture),
                     std::min(moisture, kDryEnough), analysisOf(species));
}

QVector<WoodSource> woodSources(const Books &books, RecordId wanted, const Wording &wording,
                                QStringList &notes)
{
    QVector<WoodSource> all;
    const auto add = [&](WoodSource source, std::optional<Length> stick,
                         std::optional<Volume> bundle) {
        if (!fillUnit(source, books, stick, bundle)) {
            notes << noSize(books, source);
            return;
        }
        fillLead(source, books, wording);
        nameIt(source, books);
        all << source;
    };
    for (const Offer &offer : books.offers)
        if (!offer.closed && books.suppliers.contains(offer.supplier) &&
            burnable(books, offer.species))
            add(termsOf(books, offer), offer.stickLength, offer.bundleVolume);
    const QVector<WoodSource> offered = all;
    for (const Supplier &supplier : books.suppliers) {
        const WoodSource usual = usualTerms(books, supplier, wanted);
        const bool replaced =
            std::any_of(offered.cbegin(), offered.cend(), [&](const WoodSource &source) {
                return source.supplier == supplier.id && source.green == usual.green;
            });
        if (!replaced)
            add(usual, supplier.stickLength, supplier.bundleVolume);
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

LeadRecord leadRecordOf(const Books &books, RecordId supplier, const Wording &wording)
{
    const QTimeZone zone = zoneOf(wording);
    const LeadTime usual = leadTimeOf(books, supplier);
    LeadRecord record;
    for (const WoodOrder &order : books.orders) {
        if (order.supplier != supplier)
            continue;
        if (order.state == OrderState::Cancelled) {
            record.neverCame += order.chased.isValid() ? 1 : 0;
            continue;
        }
        QDate due = order.promised;
        if (!due.isValid() && order.ordered.isValid())
            due = order.ordered.addDays(usual.days());
        const QDate came = cameOn(books, order, zone);
        if (due.isValid() && came.isValid())
            record.daysLate.push_back(static_cast<double>(due.daysTo(came)));
    }
    return record;
}

SupplierOutlook supplierOutlook(const Books &books, RecordId supplier, const Wording &wording)
{
    SupplierOutlook outlook;
    outlook.lead = leadRecordOf(books, supplier, wording);
    const SupplierRecord record = supplierRecord(books, supplier, wording);
    const Expectation shortBy = expectedShort(record);
    const statistics::StudentT t{shortBy.degreesOfFreedom};
    const auto score = statistics::twoSided(t, 0.90);
    const double middle = 1.0 - shortBy.mean;
    const double half = shortBy.scale * (score ? score.value() : 2.0);
    outlook.share =
        Spread::studentT(middle, middle - half, middle + half, shortBy.degreesOfFreedom);
    outlook.shareWords = shortWords(record, wording);
    outlook.shareAssumed = record.shortBy.count == 0;
    int read = 0;
    int wet = 0;
    Moisture sum;
    for (const Lot &lot : books.lots) {
        if (lot.supplier != supplier)
            continue;
        const DeliveryCheck check = checkDelivery(books, lot, wording);
        if (!check.moisture || (check.promised && *check.promised > kDryEnough))
            continue;
        ++read;
        if (*check.moisture > kDryEnough + kReadingError) {
            ++wet;
            sum += *check.moisture;
        }
    }
    if (wet > 0) {
        outlook.wet = wet / (read + kTakenAsDry);
        outlook.wetAt = Moisture::rounded(sum.toDouble() / wet);
        outlook.wetWords =
            QString(QString::number(wet) + QStringLiteral(" of ") + QString::number(read) +
                    QStringLiteral(" loads read on arrival came too wet, at ") +
                    moistureWords(outlook.wetAt, wording));
    }
    return outlook;
}

QString amountWords(const WoodSource &source, int units, const Wording &wording)
{
    const QString words = unitWords(source.unit, static_cast<double>(units));
    if (source.unit == SellUnit::Pound || (source.unit == SellUnit::CubicFoot && !wording.metric))
        return words;
    // The cubic feet of a face cord need their tenth: 42.7.
    const bool parts = source.unit == SellUnit::FaceCord ||
                       source.unit == SellUnit::LooseCubicFoot || source.unit == SellUnit::Bundle;
    const int digits = wording.metric ? 2 : (parts ? 1 : 0);
    QString size =
        show(source.unitStacked, wording.metric ? UnitSystem::Metric : UnitSystem::UsCustomary,
             localeOf(wording), digits);
    if (units != 1)
        size += QStringLiteral(" each");
    return QString(words + QStringLiteral(" (") + size + QLatin1Char(')'));
}

} // namespace rickyard::domain
