#include "app/demo/draft.h"
#include "app/demo/purchases.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/heat_value.h"
#include "models/domain/wood/ledger.h"

#include <algorithm>

namespace rickyard::app::demo {

namespace {

using domain::Cook;
using domain::Feed;
using domain::Lot;
using domain::Movement;

// Burns the purchases cook by cook and keeps the same ledger as the program will.
class Burning
{
public:
    Burning(Draft &draft, Dice dice, QVector<Purchase> &purchases)
        : m_draft(draft), m_dice(dice), m_purchases(purchases)
    {
        for (const Lot &lot : m_draft.books.lots)
            m_left[lot.id] = domain::movementOf(m_draft.books, lot, 0).value().dryMass;
    }

    void run()
    {
        m_draft.books.feeds.clear();
        m_draft.books.movements.clear();
        for (const Need &need : m_draft.needs)
            burn(m_draft.books.cooks[need.cook], need.joules);
    }
    // Dry wood left in the ricks that are burned; the wet one, the last, is not.
    [[nodiscard]] Mass left() const
    {
        Mass sum;
        for (auto it = m_left.cbegin(); it != m_left.cend(); ++it)
            if (it.key() != m_draft.books.lots.lastKey())
                sum += it.value();
        return sum;
    }
    [[nodiscard]] bool movedDelivery() const { return m_moved; }
    [[nodiscard]] const QMap<RecordId, Instant> &emptyAt() const { return m_emptyAt; }

private:
    void burn(Cook &cook, double joules);
    void feed(Cook &cook, Instant time, double joules);
    void takeNextRick(Instant time);
    [[nodiscard]] double joulesPerDryKilogram(Instant time) const;

    Draft &m_draft;
    Dice m_dice;
    QVector<Purchase> &m_purchases;
    QMap<RecordId, Mass> m_left;
    QMap<RecordId, Instant> m_emptyAt;
    RecordId m_rick = 1;
    double m_carry = 0; // joules owed by whole splits
    Mass m_weighed;
    bool m_moved = false;
};

double Burning::joulesPerDryKilogram(Instant time) const
{
    const Moisture moisture =
        domain::moistureOfLot(m_draft.books, m_rick, time).value_or(Moisture::ofBase(18000));
    const Lot lot = m_draft.books.lots.value(m_rick);
    return domain::netHeatPerDryKilogram(
        domain::analysisOf(m_draft.books.species.value(lot.species)), moisture);
}

void Burning::takeNextRick(Instant time)
{
    // The books never agree with an empty rick to the last stick: a count puts them right.
    Movement m;
    m.lot = m_rick;
    m.time = time;
    m.kind = domain::MovementKind::Counted;
    m.dryMass = -m_left.value(m_rick);
    m.moisture = domain::moistureOfLot(m_draft.books, m_rick, time);
    m.note = QStringLiteral("The rick is used up. The books still showed this much.");
    shelve(m_draft.books.movements, m);
    m_left[m_rick] = Mass();
    m_emptyAt[m_rick] = time;
    ++m_rick;
    Purchase &next = m_purchases[m_rick - 1];
    if (next.received >= time) {
        next.received = time - Duration::ofBase(9 * 86400LL);
        m_moved = true;
    }
}

void Burning::feed(Cook &cook, Instant time, double joules)
{
    const Lot before = m_draft.books.lots.value(m_rick);
    const double dry = (joules + m_carry) / joulesPerDryKilogram(time);
    const bool last = m_rick + 1 >= m_draft.books.lots.lastKey();
    if (!last && domain::massFromKilograms(1.15 * dry) > m_left.value(m_rick))
        takeNextRick(time);
    const Lot lot = m_draft.books.lots.value(m_rick);
    const Moisture moisture =
        domain::moistureOfLot(m_draft.books, m_rick, time).value_or(Moisture::ofBase(18000));
    const Mass drySplit = domain::splitWeight(m_draft.books, lot).dry;
    const double split = domain::kilograms(drySplit) * joulesPerDryKilogram(time);
    Feed f;
    f.cook = cook.id;
    f.lot = m_rick;
    f.time = time;
    f.pieces = std::max(1, static_cast<int>(std::lround((joules + m_carry) / split)));
    if (cook.pit == kSmallPit) {
        // Weighed in a crate: smaller sticks, to the tenth of a pound.
        const double share = std::clamp((joules + m_carry) / (split * f.pieces), 0.3, 1.4);
        const double lb =
            domain::pounds(domain::asIsFromDry(drySplit, moisture)) * f.pieces * share;
        f.weight = domain::massFromPounds(std::max(0.3, std::round(lb * 10) / 10));
        m_weighed += *f.weight;
    }
    if (lot.received > time)
        return; // the delivery was moved: this run is thrown away
    f.id = shelve(m_draft.books.feeds, f);
    const auto entry = domain::movementOf(m_draft.books, f, 0);
    m_left[m_rick] += entry.value().dryMass;
    m_carry += joules - domain::kilograms(-entry.value().dryMass) * joulesPerDryKilogram(time);
}

void Burning::burn(Cook &cook, double joules)
{
    // A first load to make coals, then a feed about every half hour, none in the last hour.
    QVector<QPair<Instant, double>> plan = {{cook.lit, 2.6}};
    Instant t = cook.lit + Duration::ofBase(15 * 60);
    plan << QPair<Instant, double>{t, 1.8};
    const Instant end = *cook.fireOut - Duration::ofBase(65 * 60);
    while ((t = t + Duration::ofBase(m_dice.whole(26, 44) * 60LL)) < end)
        plan << QPair<Instant, double>{t, m_dice.between(0.8, 1.2)};
    double shares = 0;
    for (const auto &[time, share] : plan)
        shares += share;
    m_weighed = Mass();
    for (const auto &[time, share] : plan)
        feed(cook, time, joules * share / shares);
    if (cook.pit == kSmallPit) {
        cook.measuredBy = domain::WoodMeasure::Weighed;
        cook.crateAfter = domain::massFromPounds(m_dice.whole(5, 25));
        cook.crateBefore = *cook.crateAfter + m_weighed;
    }
}

// Nobody reads a rick that is gone.
void dropLateReadings(Draft &draft, const QMap<RecordId, Instant> &emptyAt)
{
    domain::Shelf<domain::MoistureReading> kept;
    for (const domain::MoistureReading &r : std::as_const(draft.books.readings))
        if (!emptyAt.contains(r.lot) || r.time <= emptyAt.value(r.lot))
            shelve(kept, r);
    draft.books.readings = kept;
}

} // namespace

void addWood(Draft &draft)
{
    std::stable_sort(draft.needs.begin(), draft.needs.end(), [&](const Need &a, const Need &b) {
        return draft.books.cooks.value(a.cook).lit < draft.books.cooks.value(b.cook).lit;
    });
    Dice dice = draft.dice.fork(5);
    const double keep = kilogramsToKeep(draft);
    QVector<Purchase> purchases = planPurchases(draft, dice, keep);
    const double perCord =
        dryKilogramsPerCord(draft.books.species.value(purchases.first().species), 17.6);
    // The first rick's size is set so that the story ends with the wood it needs: it depends a
    // little on whole splits and ends of ricks, hence the rounds.
    for (int round = 0; round < 8; ++round) {
        writePurchases(draft, draft.dice.fork(6), purchases);
        Burning burning(draft, draft.dice.fork(7), purchases);
        burning.run();
        const double off = keep - domain::kilograms(burning.left());
        if ((!burning.movedDelivery() && std::abs(off) < 12) || round == 7) {
            dropLateReadings(draft, burning.emptyAt());
            return;
        }
        double &cords = purchases.first().measuredCords;
        cords = std::clamp(cords + off / perCord, 0.08, 1.2);
    }
}

} // namespace rickyard::app::demo
