#include "app/demo/purchases.h"

#include <algorithm>

namespace rickyard::app::demo {

namespace {

using domain::Length;
using domain::Lot;
using domain::WoodOrder;

Length feetLong(double feet)
{
    // A tape is read to the inch.
    return Length::rounded(std::round(feet * 12) * domain::kMicrometresPerInch);
}

domain::Volume cordsOf(double cords)
{
    return domain::volumeFromCubicFeet(cords * domain::kCubicFeetPerCord);
}

domain::Money priceOf(const domain::Supplier &supplier, double paidCords)
{
    const double cordsAUnit = supplier.unit == domain::SellUnit::Cord       ? 1.0
                              : supplier.unit == domain::SellUnit::HalfCord ? 0.5
                                                                            : 1.0 / 3.0;
    return supplier.price.value_or(domain::Money()) * (paidCords / cordsAUnit);
}

RecordId addOrder(Draft &draft, Dice &dice, const Purchase &p)
{
    const domain::Supplier supplier = draft.books.suppliers.value(p.supplier);
    const QDate came = draft.local.dateOf(p.received);
    const int quoted = static_cast<int>(supplier.leadTime->base() / 86400);
    WoodOrder o;
    o.supplier = p.supplier;
    o.species = p.species;
    o.state = domain::OrderState::Received;
    o.volume = cordsOf(p.paidCords);
    o.price = priceOf(supplier, p.paidCords);
    o.promisedMoisture = Moisture::rounded(p.promised * 1000);
    o.ordered = came.addDays(-std::max(2, quoted + dice.whole(-3, 8)));
    o.promised = o.ordered.addDays(quoted);
    o.received = came;
    return shelve(draft.books.orders, o);
}

RecordId addLot(Draft &draft, Dice &dice, const Purchase &p)
{
    const RecordId number = draft.books.lots.size() + 1;
    Lot lot;
    lot.name = QStringLiteral("Rick %1, %2")
                   .arg(number)
                   .arg(draft.books.species.value(p.species).name.toLower());
    lot.species = p.species;
    lot.received = p.received;
    lot.measuredBy = domain::Measure::Stack;
    lot.stickLength = feetLong(16.0 / 12);
    lot.stacks = {{feetLong(p.measuredCords * domain::kCubicFeetPerCord / (4 * 16.0 / 12)),
                   feetLong(4), *lot.stickLength}};
    lot.splitThickness = Length::rounded(dice.whole(34, 46) * 2540.0);
    lot.splitMass = domain::massFromPounds(std::round(dice.between(3.0, 4.3) * 10) / 10);
    lot.splitsWeighed = dice.whole(8, 20);
    lot.splitSpread = *lot.splitMass * dice.between(0.18, 0.3);
    lot.cover = dice.chance(0.5) ? domain::Cover::TopCover : domain::Cover::Shed;
    lot.place = QStringLiteral("Bay %1").arg(QChar('A' + static_cast<int>(number % 4)));
    lot.origin = QStringLiteral("An invented county");
    if (p.supplier != 0) {
        lot.supplier = p.supplier;
        lot.paidCount = domain::Plain::rounded(p.paidCords * 1e6);
        lot.price = priceOf(draft.books.suppliers.value(p.supplier), p.paidCords);
        lot.promisedMoisture = Moisture::rounded(p.promised * 1000);
        lot.order = addOrder(draft, dice, p);
    } else {
        lot.note = QStringLiteral("The rick that stood there when the books began.");
    }
    return shelve(draft.books.lots, lot);
}

// Pieces that scatter as splits do, with just that mean.
domain::PieceMoistures pieces(Dice &dice, double mean, int count)
{
    QVector<double> values;
    double sum = 0;
    for (int i = 0; i < count; ++i) {
        values << 1.4 * dice.normal();
        sum += values.last();
    }
    domain::PieceMoistures list;
    for (const double v : values)
        list << Moisture::ofBase(std::llround((mean + v - sum / count) * 10) * 100);
    return list;
}

void addReadings(Draft &draft, Dice &dice, const Purchase &p, RecordId lot)
{
    for (int day = 0; day <= 150; day += 25) {
        const Instant time = p.received + Duration::ofBase(5400) + Duration::ofBase(day * 86400LL);
        if (time > draft.now)
            return;
        domain::MoistureReading r;
        r.lot = lot;
        r.time = time;
        r.scale = QStringLiteral("oak");
        r.woodTemperature =
            domain::Temperature::ofBase(std::llround(draft.air.celsiusAt(time)) * 1000);
        const double mean = p.settles + (p.arrived - p.settles) * std::exp(-day / 55.0);
        r.pieces = pieces(dice, mean, dice.whole(7, 10));
        shelve(draft.books.readings, r);
    }
}

// Green wood for next year: on its way, but no help for this season.
void addOpenOrder(Draft &draft)
{
    WoodOrder o;
    o.supplier = 2;
    o.species = draft.books.lots.first().species;
    o.state = domain::OrderState::Promised;
    o.volume = cordsOf(1);
    o.price = domain::Money::ofBase(29000);
    o.promisedMoisture = Moisture::ofBase(45000);
    o.ordered = draft.today().addDays(-9);
    o.promised = draft.today().addDays(33);
    o.note = QStringLiteral("Green, for next year's cooks.");
    shelve(draft.books.orders, o);
}

} // namespace

void writePurchases(Draft &draft, Dice dice, const QVector<Purchase> &purchases)
{
    draft.books.orders.clear();
    draft.books.lots.clear();
    draft.books.readings.clear();
    for (const Purchase &p : purchases)
        addReadings(draft, dice, p, addLot(draft, dice, p));
    addOpenOrder(draft);
}

} // namespace rickyard::app::demo
