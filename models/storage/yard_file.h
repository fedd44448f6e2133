// Opening a yard file: one writer by a lock file beside it, checks before anything is written,
// backup before a migration.
#pragma once

#include "models/storage/database.h"

#include <QDateTime>
#include <QLockFile>

namespace rickyard::storage {

struct YardFile {
    std::unique_ptr<QLockFile> lock; // held while open for writing
    std::unique_ptr<Database> database;
    bool created = false;
    bool readOnly = false;
    QString notice; // why it is read-only, or what was done on opening; may be empty
};

// Opens or creates the yard. A file that is foreign, damaged or newer is refused untouched. A
// file that another instance is writing, or that cannot be written, opens read-only with a notice.
Outcome<YardFile> openYardFile(const QString &path, const QDateTime &nowUtc,
                               OpenMode wanted = OpenMode::ReadWrite);

} // namespace rickyard::storage
