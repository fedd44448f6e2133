#include "models/workspace/commands/consequences.h"

#include "models/domain/plan/event_moves.h"
#include "models/domain/wood/ledger.h"

#include <QSet>

namespace rickyard::commands {

using domain::Books;
using domain::Dependant;
using domain::Movement;
using domain::OnDelete;
using domain::Outcome;
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

// The lot whose delivery entry a change may move: the lot itself, or one that was read.
RecordId lotConcerned(const Change &change)
{
    if (change.table == TableId::Lot)
        return change.after ? change.id : 0;
    if (change.table != TableId::MoistureReading && change.table != TableId::OvenTest)
        return 0;
    const Row &row = change.after ? *change.after : *change.before;
    return domain::integerOr(domain::valueOf(row, QStringLiteral("lot")), 0);
}

Change replacing(const Books &books, const Movement &movement)
{
    const auto before = domain::rowOf(books, TableId::Movement, movement.id);
    return {TableId::Movement, movement.id, before, domain::toRow(movement)};
}

// Ledger entries that come with the changes themselves (an import brings them along): they are
// taken as they are.
struct Brought {
    QSet<RecordId> deliveries; // by lot
    QSet<RecordId> feeds;

    explicit Brought(const ChangeSet &changes)
    {
        for (const Change &c : changes) {
            if (c.table != TableId::Movement || !c.after)
                continue;
            const auto movement = domain::fromRow<Movement>(*c.after);
            if (movement.feed)
                feeds.insert(*movement.feed);
            else if (movement.kind == domain::MovementKind::Received)
                deliveries.insert(movement.lot);
        }
    }
};

Books booksAfter(const Books &books, const ChangeSet &changes)
{
    Books after = books;
    for (const Change &c : changes) {
        if (c.after)
            domain::put(after, *c.after);
        else
            domain::drop(after, c.table, c.id);
    }
    return after;
}

// Collects the entries that follow, new or in place of an existing one.
class LedgerWriter
{
public:
    LedgerWriter(const Books &books, const IdSource &nextId) : m_books(books), m_nextId(nextId) {}

    void write(const Outcome<Movement> &movement, RecordId existing)
    {
        if (!movement) {
            m_problems += movement.problems();
            return;
        }
        Movement entry = movement.value();
        entry.id = existing != 0 ? existing : m_nextId(TableId::Movement);
        const Change change = replacing(m_books, entry);
        if (change.before != change.after)
            m_changes.append(change);
    }
    [[nodiscard]] Outcome<ChangeSet> after(const ChangeSet &changes) const
    {
        if (!m_problems.isEmpty())
            return Outcome<ChangeSet>(m_problems);
        return ChangeSet(changes + m_changes);
    }

private:
    const Books &m_books;
    const IdSource &m_nextId;
    ChangeSet m_changes;
    Problems m_problems;
};

} // namespace

Outcome<ChangeSet> withLedger(const Books &books, const ChangeSet &changes, const IdSource &nextId)
{
    // The entries are worked out against the books as they will be.
    const Books after = booksAfter(books, changes);
    const Brought brought(changes);
    QHash<RecordId, RecordId> entryOfFeed;
    for (const Movement &m : books.movements)
        if (m.feed)
            entryOfFeed.insert(*m.feed, m.id);
    LedgerWriter writer(books, nextId);
    QSet<RecordId> lots;
    for (const Change &c : changes) {
        if (c.table == TableId::Feed && c.after && !brought.feeds.contains(c.id)) {
            const RecordId existing = c.before ? entryOfFeed.value(c.id) : 0;
            writer.write(
                domain::movementOf(after, domain::fromRow<domain::Feed>(*c.after), existing),
                existing);
        } else if (const RecordId lot = lotConcerned(c);
                   lot != 0 && !brought.deliveries.contains(lot)) {
            lots.insert(lot);
        }
    }
    // A delivery that was weighed rests on the first reading, so a reading moves its entry too.
    for (RecordId id : std::as_const(lots)) {
        const auto lot = after.lots.constFind(id);
        if (lot == after.lots.constEnd())
            continue;
        const RecordId existing =
            books.lots.contains(id) ? movementOfDelivery(books, id) : RecordId{0};
        writer.write(domain::movementOf(after, *lot, existing), existing);
    }
    return writer.after(changes);
}

ChangeSet withCooksAlong(const Books &books, const ChangeSet &changes)
{
    QSet<RecordId> said;
    for (const Change &c : changes)
        if (c.table == TableId::PlannedCook)
            said.insert(c.id);
    ChangeSet all = changes;
    for (const Change &c : changes) {
        if (c.table != TableId::Event || !c.before || !c.after)
            continue;
        for (const domain::PlannedCook &cook :
             domain::cooksAlong(books, domain::fromRow<domain::Event>(*c.before),
                                domain::fromRow<domain::Event>(*c.after)))
            if (!said.contains(cook.id))
                all.append({TableId::PlannedCook, cook.id,
                            domain::rowOf(books, TableId::PlannedCook, cook.id),
                            domain::toRow(cook)});
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
