#include "models/storage/yard_file.h"

#include "models/storage/backup.h"
#include "models/storage/migrations.h"

#include <QDir>
#include <QFileInfo>

namespace rickyard::storage {

namespace {

Outcome<YardFile> refused(const QString &message)
{
    return Outcome<YardFile>::failed(message);
}

// The first bytes of every SQLite file. Read before the engine sees the file.
bool looksLikeDatabase(const QString &path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return true; // the engine says why in its own words
    const QByteArray head = file.read(16);
    return head.isEmpty() || head == QByteArray("SQLite format 3\0", 16);
}

Outcome<Done> refuseUnlessOurs(Database &database)
{
    const QString file = QDir::toNativeSeparators(database.path());
    switch (kindOf(database)) {
    case FileKind::Foreign:
        return Outcome<Done>::failed(
            QStringLiteral("%1 is a database, but not a yard file. It was left as it is.")
                .arg(file));
    case FileKind::NewerYard:
        return Outcome<Done>::failed(
            QStringLiteral("%1 was written by a newer Rickyard (version %2, this one knows %3). "
                           "It was left as it is. Update the program to open it.")
                .arg(file)
                .arg(versionOf(database).value_or(0))
                .arg(newestVersion()));
    case FileKind::Empty:
    case FileKind::Yard:
        break;
    }
    return Done{};
}

// Check, then back up, then migrate: a damaged file is never migrated.
Outcome<Done> bringUpToDate(Database &database, const QDateTime &nowUtc, QString &notice)
{
    const int version = versionOf(database).value_or(0);
    if (version == newestVersion())
        return Done{};
    if (version > 0) {
        const QStringList problems = database.integrityProblems();
        if (!problems.isEmpty())
            return Outcome<Done>::failed(
                QStringLiteral("The yard file %1 is damaged (%2). It was left as it is. Restore a "
                               "backup.")
                    .arg(database.path(), problems.first()));
        const Outcome<QString> backup = backUp(database, nowUtc);
        if (!backup)
            return Outcome<Done>(backup.problems());
        notice = QStringLiteral("The yard was brought up to date. A backup from before is in %1.")
                     .arg(QDir::toNativeSeparators(backup.value()));
    }
    return migrate(database);
}

Outcome<YardFile> openReadOnly(const QString &path, const QString &why)
{
    auto database = Database::open(path, OpenMode::ReadOnly);
    if (!database)
        return Outcome<YardFile>(database.problems());
    const Outcome<Done> ours = refuseUnlessOurs(*database.value());
    if (!ours)
        return Outcome<YardFile>(ours.problems());
    if (versionOf(*database.value()).value_or(0) != newestVersion())
        return refused(QStringLiteral("%1 is from an older Rickyard and cannot be brought up to "
                                      "date while it is read-only.")
                           .arg(path));
    YardFile file;
    file.database = std::move(database.value());
    file.readOnly = true;
    file.notice = why;
    return Outcome<YardFile>(std::move(file));
}

} // namespace

Outcome<YardFile> openYardFile(const QString &path, const QDateTime &nowUtc, OpenMode wanted)
{
    const QFileInfo info(path);
    const bool exists = info.exists() && info.size() > 0;
    if (info.isDir())
        return refused(QStringLiteral("%1 is a folder, not a yard file.").arg(path));
    if (exists && !looksLikeDatabase(path))
        return refused(QStringLiteral("%1 is not a yard file. It was left as it is. Choose another "
                                      "file.")
                           .arg(QDir::toNativeSeparators(path)));
    if (!exists && wanted == OpenMode::ReadOnly)
        return refused(
            QStringLiteral("There is no yard file at %1.").arg(QDir::toNativeSeparators(path)));
    if (wanted == OpenMode::ReadOnly)
        return openReadOnly(path, {});
    if (!exists && !QDir().mkpath(info.absolutePath()))
        return refused(QStringLiteral("The folder %1 cannot be made.")
                           .arg(QDir::toNativeSeparators(info.absolutePath())));
    if (exists && (!info.isWritable() || !QFileInfo(info.absolutePath()).isWritable()))
        return openReadOnly(path, QStringLiteral("The yard file cannot be written, so it is open "
                                                 "for reading only."));

    YardFile file;
    file.lock =
        std::make_unique<QLockFile>(QString(info.absoluteFilePath() + QStringLiteral(".lock")));
    file.lock->setStaleLockTime(0); // only a dead process makes a lock stale
    if (!file.lock->tryLock(200)) {
        if (file.lock->error() == QLockFile::LockFailedError)
            return openReadOnly(path, QStringLiteral("Another window has this yard open. Here it "
                                                     "is open for reading only."));
        return refused(QStringLiteral("%1 cannot be written: its folder is read-only or the disk "
                                      "is full.")
                           .arg(QDir::toNativeSeparators(path)));
    }
    auto database = Database::open(path, OpenMode::ReadWrite);
    if (!database)
        return Outcome<YardFile>(database.problems());
    file.database = std::move(database.value());
    const Outcome<Done> ours = refuseUnlessOurs(*file.database);
    if (!ours)
        return Outcome<YardFile>(ours.problems());
    file.created = kindOf(*file.database) == FileKind::Empty;
    if (!file.database->execute(QStringLiteral("PRAGMA journal_mode = WAL")))
        return Outcome<YardFile>(file.database->problem());
    const Outcome<Done> current = bringUpToDate(*file.database, nowUtc, file.notice);
    if (!current)
        return Outcome<YardFile>(current.problems());
    return Outcome<YardFile>(std::move(file));
}

} // namespace rickyard::storage
