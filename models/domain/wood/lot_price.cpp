#include "models/domain/wood/lot_price.h"

namespace rickyard::domain {

QHash<RecordId, double> centsPerDryMass(const Books &books)
{
    QHash<RecordId, double> received;
    for (const Movement &m : books.movements)
        if (m.kind == MovementKind::Received)
            received[m.lot] += m.dryMass.toDouble();
    QHash<RecordId, double> cents;
    for (const Lot &lot : books.lots) {
        const double mass = received.value(lot.id);
        if (lot.price && mass > 0)
            cents.insert(lot.id, lot.price->toDouble() / mass);
    }
    return cents;
}

} // namespace rickyard::domain
