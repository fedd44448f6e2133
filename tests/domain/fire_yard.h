// A small yard of pits and cooks whose use is known in advance, for the tests of the fuel answer.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/heat_value.h"

#include <QDateTime>

namespace rickyard::test {

using namespace rickyard::domain;

inline Instant utc(int year, int month, int day, int hour, int minute = 0)
{
    return Instant::ofSeconds(
        QDateTime(QDate(year, month, day), QTime(hour, minute), Qt::UTC).toSecsSinceEpoch());
}

class FireYard
{
public:
    Books books;

    FireYard()
    {
        Yard yard;
        yard.timeZone = QStringLiteral("UTC");
        books.yards.insert(1, yard);
        Species oak;
        oak.id = 1;
        oak.name = QStringLiteral("Oak");
        books.species.insert(1, oak);
        Lot lot;
        lot.id = 1;
        lot.species = 1;
        books.lots.insert(1, lot);
    }

    RecordId addPit(const QString &name, double diameterInches = 24, double lengthInches = 54)
    {
        Pit pit;
        pit.id = static_cast<RecordId>(books.pits.size()) + 1;
        pit.name = name;
        pit.diameter = Length::rounded(diameterInches * kMicrometresPerInch);
        pit.length = Length::rounded(lengthInches * kMicrometresPerInch);
        books.pits.insert(pit.id, pit);
        return pit.id;
    }

    // A cook at 120 °C by its target, with a typed outside temperature.
    Cook &addCook(RecordId pit, Instant lit, double length, double outside)
    {
        Cook cook;
        cook.id = static_cast<RecordId>(books.cooks.size()) + 1;
        cook.pit = pit;
        cook.lit = lit;
        cook.fireOut = lit + durationFromHours(length);
        cook.target = temperatureFromCelsius(120);
        cook.outside = temperatureFromCelsius(outside);
        return *books.cooks.insert(cook.id, cook);
    }

    // Oven-dry wood of that net heat, burned at 20 % dry basis unless said.
    Movement &burn(const Cook &cook, double joules, Moisture moisture = Moisture::ofBase(20000))
    {
        const double perKilogram = netHeatPerDryKilogram(WoodAnalysis(), moisture);
        Movement m;
        m.id = static_cast<RecordId>(books.movements.size()) + 1;
        m.lot = 1;
        m.time = cook.lit;
        m.kind = MovementKind::Burned;
        m.dryMass = -massFromKilograms(joules / perKilogram);
        m.moisture = moisture;
        m.cook = cook.id;
        return *books.movements.insert(m.id, m);
    }
};

} // namespace rickyard::test
