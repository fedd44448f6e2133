#include "models/domain/fire/cook_doubts.h"

#include <algorithm>

namespace rickyard::domain {

int twinFeeds(QVector<const Feed *> feeds)
{
    constexpr qint64 kTwins = 5; // seconds
    std::stable_sort(feeds.begin(), feeds.end(),
                     [](const Feed *a, const Feed *b) { return a->time < b->time; });
    int twins = 0;
    for (qsizetype i = 1; i < feeds.size(); ++i) {
        const Feed &a = *feeds.at(i - 1);
        const Feed &b = *feeds.at(i);
        twins += a.lot == b.lot && a.pieces == b.pieces && a.weight == b.weight &&
                         (b.time - a.time).base() <= kTwins
                     ? 1
                     : 0;
    }
    return twins;
}

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
