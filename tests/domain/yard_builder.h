// A small invented yard for the tests of wood and plan.
#pragma once

#include "models/domain/records/books.h"

namespace rickyard::test {

using namespace rickyard::domain;

inline Instant day(int d, int hour = 12)
{
    return Instant::ofSeconds(1764547200 + d * 86400LL + hour * 3600LL); // 1 Dec 2025, 00:00 UTC
}

inline Moisture dryBasis(double percent)
{
    return moistureFromDryFraction(percent / 100.0);
}

inline Length feet(double ft)
{
    return Length::rounded(ft * 12 * kMicrometresPerInch);
}

inline Books emptyYard()
{
    Books books;
    Yard yard;
    yard.timeZone = QStringLiteral("UTC");
    books.yards.insert(1, yard);
    Species oak;
    oak.id = 1;
    oak.name = QStringLiteral("Post oak");
    oak.basicGravity = Plain::ofBase(600000);
    oak.shrinkage = Ratio::ofBase(162000);
    oak.green = dryBasis(70.9);
    books.species.insert(1, oak);
    return books;
}

inline Lot &addLot(Books &books, RecordId id, Instant received)
{
    Lot lot;
    lot.id = id;
    lot.name = QStringLiteral("Lot ") + QString::number(id);
    lot.species = 1;
    lot.received = received;
    return *books.lots.insert(id, lot);
}

inline void addMovement(Books &books, RecordId lot, Instant time, Mass dry,
                        MovementKind kind = MovementKind::Received)
{
    Movement movement;
    movement.id = books.movements.isEmpty() ? 1 : books.movements.lastKey() + 1;
    movement.lot = lot;
    movement.time = time;
    movement.kind = kind;
    movement.dryMass = dry;
    books.movements.insert(movement.id, movement);
}

inline MoistureReading &addReading(Books &books, RecordId lot, Instant time,
                                   const QVector<double> &percents)
{
    MoistureReading reading;
    reading.id = books.readings.isEmpty() ? 1 : books.readings.lastKey() + 1;
    reading.lot = lot;
    reading.time = time;
    for (double percent : percents)
        reading.pieces << dryBasis(percent);
    return *books.readings.insert(reading.id, reading);
}

} // namespace rickyard::test
