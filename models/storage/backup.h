// Backups: a compact copy beside the yard, checked after it was written, the oldest dropped.
#pragma once

#include "models/storage/database.h"

#include <QDateTime>

namespace rickyard::storage {

struct BackupFile {
    QString path;
    QDateTime time; // UTC
    qint64 bytes = 0;
};

QString backupFolder(const QString &yardPath);
QVector<BackupFile> backupsOf(const QString &yardPath); // newest first

// Copies the open yard to `target` with VACUUM INTO and checks the copy. `target` must not exist.
Outcome<Done> copyTo(Database &database, const QString &target);
// A backup in the yard's backup folder; keeps the newest `keep`.
Outcome<QString> backUp(Database &database, const QDateTime &nowUtc, int keep = 12);
// "" when every page and reference is in order, else what is not, as a problem.
Outcome<QString> checkWhole(Database &database);
// Replaces the (closed) yard by a checked backup. The present file is kept beside it under the
// returned name.
Outcome<QString> restore(const QString &backupPath, const QString &yardPath,
                         const QDateTime &nowUtc);

} // namespace rickyard::storage
