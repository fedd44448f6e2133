// Numbered migrations, append-only. The version stands in the file's user_version and is set in
// the same transaction as the change itself.
#pragma once

#include "models/storage/database.h"

namespace rickyard::storage {

// Marks a file as a yard: PRAGMA application_id, "RkYd".
constexpr int kApplicationId = 0x526b5964;

int newestVersion();
std::optional<int> versionOf(Database &database);

enum class FileKind { Empty, Yard, NewerYard, Foreign };
FileKind kindOf(Database &database);

// Brings the file to `target` (the newest by default); each step is one transaction.
Outcome<Done> migrate(Database &database, int target = newestVersion());

} // namespace rickyard::storage
