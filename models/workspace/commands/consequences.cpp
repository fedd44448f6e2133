#include "models/workspace/commands/consequences.h"

#include "models/domain/wood/ledger.h"

#include <QSet>

namespace rickyard::commands {

using domain::Books;
using domain::Dependant;
using domain::Movement;
using domain::OnDelete;
using domain::Outcome;
using domain::Problem;
using domain::Problems;
using domain::RecordId;
using domain::Row;
using domain::TableId;
using workspace::Change;
using workspace::ChangeSet;

namespace {

RecordId movementOfDelivery(const Books &books, RecordId lot)
{
    for (const Movement &m : books.movements)
        if (m.lot == lot && m.kind == domain::MovementKind::Received)
            return m.id;
    return 0;
}

Change replacing(const Books &books, const Movement &movement)
{
    const auto before = domain::rowOf(books, TableId::Movement, movement.id);
    return {TableId::Movement, movement.id, before, domain::toRow(movement)};
}

} // namespace

Outcome<ChangeSet> withLedger(const Books &books, const ChangeSet &changes, const IdSource &nextId)
{
    // The entries are worked out against the books as they will be.
    Books after = books;
    for (const Change &c : changes)
        if (c.after)
            domain::put(after, *c.after);
    ChangeSet all = changes;
    // An import brings the entries along with their lots and feeds: they are taken as they are.
    QSet<RecordId> deliveriesBrought;
    QSet<RecordId> feedsBrought;
    for (const Change &c : changes) {
        if (c.table != TableId::Movement || !c.after)
            continue;
        const auto movement = domain::fromRow<Movement>(*c.after);
        if (movement.feed)
            feedsBrought.insert(*movement.feed);
        else if (movement.kind == domain::MovementKind::Received)
            deliveriesBrought.insert(movement.lot);
    }
    QHash<RecordId, RecordId> entryOfFeed;
    for (const Movement &m : books.movements)
        if (m.feed)
            entryOfFeed.insert(*m.feed, m.id);
    for (const Change &c : changes) {
        if (!c.after || (c.table != TableId::Lot && c.table != TableId::Feed))
            continue;
        const bool isLot = c.table == TableId::Lot;
        if ((isLot ? deliveriesBrought : feedsBrought).contains(c.id))
            continue;
        RecordId existing = 0;
        if (c.before)
            existing = isLot ? movementOfDelivery(books, c.id) : entryOfFeed.value(c.id);
        const auto movement =
            isLot ? domain::movementOf(after, domain::fromRow<domain::Lot>(*c.after), existing)
                  : domain::movementOf(after, domain::fromRow<domain::Feed>(*c.after), existing);
        if (!movement)
            return Outcome<ChangeSet>(movement.problems());
        Movement entry = movement.value();
        entry.id = existing != 0 ? existing : nextId(TableId::Movement);
        const Change change = replacing(books, entry);
        if (change.before != change.after)
            all.append(change);
    }
    return all;
}

Outcome<ChangeSet> deletion(const Books &books, TableId table, const QVector<RecordId> &ids)
{
    QVector<QPair<TableId, RecordId>> queue;
    QSet<QPair<int, RecordId>> going;
    for (RecordId id : ids)
        queue.append({table, id});
    QVector<Dependant> cleared;
    QStringList inTheWay;
    while (!queue.isEmpty()) {
        const auto [t, id] = queue.takeFirst();
        if (going.contains({static_cast<int>(t), id}))
            continue;
        going.insert({static_cast<int>(t), id});
        for (const Dependant &d : domain::dependantsOf(books, t, id)) {
            if (d.onDelete == OnDelete::Cascade)
                queue.append({d.table, d.id});
            else if (d.onDelete == OnDelete::Clear)
                cleared.append(d);
            else
                inTheWay << QStringLiteral("%1 (%2)").arg(domain::titleOf(books, d.table, d.id),
                                                          domain::specOf(d.table).singular);
        }
    }
    if (!inTheWay.isEmpty()) {
        const QString more = inTheWay.size() > 3
                                 ? QStringLiteral(" and %1 more").arg(inTheWay.size() - 3)
                                 : QString();
        return Outcome<ChangeSet>::failed(
            QStringLiteral("It is still used by %1%2. Change or delete those first.")
                .arg(inTheWay.mid(0, 3).join(QStringLiteral(", ")), more));
    }
    // One change a record, even when several of its references are cleared.
    QMap<QPair<int, RecordId>, Row> edited;
    for (const Dependant &d : cleared) {
        const QPair<int, RecordId> key{static_cast<int>(d.table), d.id};
        if (going.contains(key))
            continue;
        Row row = edited.value(key, *domain::rowOf(books, d.table, d.id));
        domain::setValue(row, d.field, std::monostate{});
        edited.insert(key, row);
    }
    ChangeSet changes;
    for (auto it = edited.cbegin(); it != edited.cend(); ++it)
        changes.append({it->table, it->id, domain::rowOf(books, it->table, it->id), *it});
    for (const auto &[t, id] : going) {
        const auto row = domain::rowOf(books, static_cast<TableId>(t), id);
        if (row)
            changes.append({static_cast<TableId>(t), id, row, std::nullopt});
    }
    return changes;
}

} // namespace rickyard::commands
