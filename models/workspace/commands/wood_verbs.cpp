// The verbs of orders and of counting the ricks.
#include "models/domain/answers/wording.h"
#include "models/domain/wood/stock.h"
#include "models/workspace/commands/verbs.h"

namespace rickyard::commands {

using domain::OrderStep;
using domain::WoodOrder;

namespace {

QDate todayOf(const domain::Books &books, Instant now)
{
    domain::Wording wording;
    wording.timeZone = books.yard().timeZone;
    return domain::dayOf(now, domain::zoneOf(wording));
}

QString nameOf(OrderStep step, const QString &supplier)
{
    switch (step) {
    case OrderStep::Send:
        return Verbs::tr("send the order to %1").arg(supplier);
    case OrderStep::Promise:
        return Verbs::tr("note the promise of %1").arg(supplier);
    case OrderStep::Ask:
        return Verbs::tr("note that %1 was asked").arg(supplier);
    case OrderStep::Receive:
        return Verbs::tr("receive the order from %1").arg(supplier);
    case OrderStep::Cancel:
        break;
    }
    return Verbs::tr("cancel the order from %1").arg(supplier);
}

// The words of a problem with the rick they are about in front: several are counted at once.
Problems atRick(const domain::Books &books, RecordId lot, Problems problems)
{
    for (domain::Problem &problem : problems) {
        problem.message =
            QString(books.lots.value(lot).name + QStringLiteral(": ") + problem.message);
        problem.field = QString::number(lot);
    }
    return problems;
}

} // namespace

Outcome<RecordId> Verbs::draftOrder(WoodOrder order)
{
    order.state = domain::OrderState::Draft;
    order.ordered = QDate();
    order.received = QDate();
    order.chased = QDate();
    if (order.count && order.count->base() <= 0)
        return Outcome<RecordId>::failed(tr("Order at least some of it: a number above zero."),
                                         QStringLiteral("count"));
    if (order.count) {
        const auto volume = domain::volumeOrdered(books(), order);
        if (!volume)
            return Outcome<RecordId>::failed(
                tr("What a unit of this holds is not known: choose the wood, or give the volume "
                   "of a bundle on the supplier."),
                QStringLiteral("sold_by"));
        order.volume = *volume;
    }
    const QString supplier = books().suppliers.value(order.supplier).name;
    return add(order, supplier.isEmpty() ? tr("draft an order")
                                         : tr("draft an order to %1").arg(supplier));
}

Outcome<Done> Verbs::stepOrder(RecordId id, OrderStep step, QDate promised)
{
    const auto found = books().orders.constFind(id);
    if (found == books().orders.constEnd())
        return Outcome<Done>::failed(tr("This order was deleted meanwhile."));
    const auto next = domain::afterStep(*found, step, todayOf(books(), now()), promised);
    if (!next)
        return next.problems();
    return edit(next.value(), nameOf(step, books().suppliers.value(found->supplier).name));
}

Outcome<Done> Verbs::countRicks(const QVector<domain::RickCount> &counts, const QString &note)
{
    const Instant at = now();
    QVector<Row> rows;
    Problems problems;
    for (const domain::RickCount &count : counts) {
        const auto counted = domain::countedWood(books(), count, at);
        if (!counted) {
            problems += atRick(books(), count.lot, counted.problems());
            continue;
        }
        domain::Movement m;
        m.lot = count.lot;
        m.time = at;
        m.kind = domain::MovementKind::Counted;
        m.dryMass = counted->dry - domain::lotStockAt(books(), count.lot, at).dryMass;
        m.moisture = counted->moisture;
        if (count.way == domain::CountWay::Weight)
            m.asIs = count.weight;
        m.note = note;
        rows << domain::toRow(m);
    }
    if (!problems.isEmpty())
        return problems;
    if (rows.isEmpty())
        return Outcome<Done>::failed(tr("Nothing was counted yet: measure one rick at least."));
    const auto done =
        putAll(rows, rows.size() == 1 ? tr("count 1 rick") : tr("count %1 ricks").arg(rows.size()),
               Origin::ByHand);
    return done ? Outcome<Done>(Done{}) : Outcome<Done>(done.problems());
}

} // namespace rickyard::commands
