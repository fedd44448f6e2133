// An invented yard with needs, wood, suppliers and orders, for the tests of the wood answer.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/domain/wood/density.h"
#include "tests/domain/yard_builder.h"

#include <cmath>

namespace rickyard::test {

inline QDate date(int d)
{
    return QDate(2025, 12, 1).addDays(d);
}

// A need known already; `spread` is half of its 90 % interval, the same either way in the logarithm
// when it is given as a factor.
inline PlannedUse need(RecordId id, Instant light, double middle, double factor = 1,
                       RecordId event = 0)
{
    PlannedUse u;
    u.plannedCook = id;
    u.event = event;
    u.light = light;
    u.middle = heatFromSeasonedPounds(middle);
    u.lower = heatFromSeasonedPounds(middle / factor);
    u.upper = heatFromSeasonedPounds(middle * factor);
    u.colder = heatFromSeasonedPounds(middle * 1.1);
    return u;
}

// Dry post oak of that many seasoned pounds (at 20 % a pound as is is a seasoned pound).
inline Lot &stockUp(Books &books, double seasoned, RecordId id = 1, double percent = 20)
{
    Lot &lot = addLot(books, id, day(-30 + static_cast<int>(id)));
    addMovement(books, id, lot.received, dryFromAsIs(massFromPounds(seasoned), dryBasis(20)));
    addReading(books, id, day(-1), {percent});
    return lot;
}

inline Supplier &addSupplier(Books &books, RecordId id, SellUnit unit, int leadDays, qint64 cents)
{
    Supplier supplier;
    supplier.id = id;
    supplier.name = QStringLiteral("Invented supplier ") + QString::number(id);
    supplier.unit = unit;
    supplier.leadTime = Duration::ofBase(leadDays * 86400LL);
    supplier.promised = dryBasis(20);
    if (cents > 0)
        supplier.price = Money::ofBase(cents);
    return *books.suppliers.insert(id, supplier);
}

inline Event &addEvent(Books &books, RecordId id, const QString &name, Instant start)
{
    Event event;
    event.id = id;
    event.name = name;
    event.start = start;
    event.end = start + Duration::ofBase(4 * 3600);
    return *books.events.insert(id, event);
}

inline WoodOrder &addOrder(Books &books, RecordId id, double cubicFeet, QDate promised,
                           OrderState state = OrderState::Promised)
{
    WoodOrder order;
    order.id = id;
    order.supplier = 1;
    order.species = 1;
    order.state = state;
    order.volume = volumeFromCubicFeet(cubicFeet);
    order.promised = promised;
    order.promisedMoisture = dryBasis(20);
    return *books.orders.insert(id, order);
}

// Orders that came so many days after the day promised, long ago.
inline void addRecord(Books &books, RecordId supplier, const std::vector<int> &daysLate)
{
    RecordId id = 1000 * supplier;
    for (const int late : daysLate) {
        ++id;
        const QDate promised = date(-200 + static_cast<int>(id % 100));
        WoodOrder &order = addOrder(books, id, 64, promised, OrderState::Received);
        order.supplier = supplier;
        order.ordered = order.promised.addDays(-7);
        order.received = order.promised.addDays(late);
    }
}

inline WoodAnswer answerOf(const Books &books, const QVector<PlannedUse> &uses,
                           const WoodAnswerSettings &settings = {}, Instant now = day(0))
{
    return woodAnswerFrom(books, uses, {}, {}, now, {}, settings);
}

// Standard normal distribution, from the C++ library's erfc.
inline double phi(double z)
{
    return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

inline bool nearly(Heat heat, double seasoned, double tolerance = 0.01)
{
    return std::abs(seasonedPounds(heat) - seasoned) < tolerance;
}

// A lot is known to within nine parts in a hundred, so needs lie far from the edge.
inline Books yardWith(double stock)
{
    Books books = emptyYard();
    if (stock > 0)
        stockUp(books, stock);
    addEvent(books, 1, QStringLiteral("River Lane Lunch"), day(12, 16));
    addEvent(books, 2, QStringLiteral("Mill Field Supper"), day(18, 16));
    return books;
}

// A supplier who has always kept to the day, as far as forty orders tell.
inline Supplier &addPunctual(Books &books, RecordId id, SellUnit unit, int leadDays, qint64 cents)
{
    addSupplier(books, id, unit, leadDays, cents);
    addRecord(books, id, std::vector<int>(40, 0));
    return books.suppliers[id];
}

inline QVector<PlannedUse> threeCooks()
{
    return {need(1, day(4), 400, 1.15), need(2, day(10), 400, 1.15, 1),
            need(3, day(16), 400, 1.15, 2)};
}

} // namespace rickyard::test
