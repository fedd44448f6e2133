// Reads and writes records of any table from its description.
#pragma once

#include "models/domain/records/books.h"
#include "models/storage/database.h"

namespace rickyard::storage {

// One record before and after; missing before: added; missing after: deleted.
struct Change {
    domain::TableId table = domain::TableId::Yard;
    domain::RecordId id = 0;
    std::optional<domain::Row> before;
    std::optional<domain::Row> after;
};
using ChangeSet = QVector<Change>;
ChangeSet reversed(const ChangeSet &changes);

Outcome<domain::Books> readAll(Database &database);
// Writes all changes in one transaction, or none. `keepGoing` is asked with the number of records
// written; false stops and rolls back.
Outcome<Done> write(Database &database, const ChangeSet &changes,
                    const std::function<bool(int)> &keepGoing = {});

} // namespace rickyard::storage
