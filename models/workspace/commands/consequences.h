// What follows from a change, worked out before it is applied: ledger entries that mirror feeds
// and deliveries, and the records that go or are cleared when another is deleted.
#pragma once

#include "models/workspace/workspace.h"

namespace rickyard::commands {

using IdSource = std::function<domain::RecordId(domain::TableId)>;

// `changes` with the ledger entries of every lot and feed among them.
domain::Outcome<workspace::ChangeSet>
withLedger(const domain::Books &books, const workspace::ChangeSet &changes, const IdSource &nextId);
// `changes` with the planned cooks of every event among them whose serving moved (cooksAlong); what
// the changes say of a cook themselves stands.
workspace::ChangeSet withCooksAlong(const domain::Books &books,
                                    const workspace::ChangeSet &changes);
// Deletion of records with everything that hangs on them, or the records that stand in the way.
domain::Outcome<workspace::ChangeSet> deletion(const domain::Books &books, domain::TableId table,
                                               const QVector<domain::RecordId> &ids);

} // namespace rickyard::commands
