#include "models/storage/backup.h"

#include "models/storage/migrations.h"

#include <QDir>
#include <QFileInfo>

namespace rickyard::storage {

namespace {

const QString kStampFormat = QStringLiteral("yyyyMMdd-HHmmss-zzz");

QString stamped(const QString &stem, const QDateTime &nowUtc)
{
    return QString(stem + QLatin1Char('-') + nowUtc.toUTC().toString(kStampFormat));
}

// Opens a copy read-only and reads all of it.
Outcome<Done> checkCopy(const QString &path)
{
    auto copy = Database::open(path, OpenMode::ReadOnly);
    if (!copy)
        return Outcome<Done>(copy.problems());
    const FileKind kind = kindOf(*copy.value());
    if (kind == FileKind::Foreign || kind == FileKind::Empty)
        return Outcome<Done>::failed(QStringLiteral("%1 is not a yard file.").arg(path));
    const QStringList problems = copy.value()->integrityProblems();
    if (!problems.isEmpty())
        return Outcome<Done>::failed(
            QStringLiteral("The copy %1 is damaged: %2").arg(path, problems.first()));
    return Done{};
}

void removeWithSidecars(const QString &path)
{
    QFile::remove(path);
    QFile::remove(QString(path + QStringLiteral("-wal")));
    QFile::remove(QString(path + QStringLiteral("-shm")));
}

} // namespace

QString backupFolder(const QString &yardPath)
{
    const QFileInfo info(yardPath);
    return info.absoluteDir().filePath(
        QString(info.completeBaseName() + QStringLiteral(" backups")));
}

QVector<BackupFile> backupsOf(const QString &yardPath)
{
    QVector<BackupFile> found;
    const QDir folder(backupFolder(yardPath));
    const QFileInfoList files =
        folder.entryInfoList({QStringLiteral("backup-*.rickyard")}, QDir::Files, QDir::Name);
    for (const QFileInfo &file : files) {
        QDateTime time = QDateTime::fromString(file.completeBaseName().mid(7), kStampFormat);
        time.setTimeSpec(Qt::UTC);
        found.prepend({file.absoluteFilePath(), time, file.size()});
    }
    return found;
}

Outcome<Done> copyTo(Database &database, const QString &target)
{
    if (QFileInfo::exists(target))
        return Outcome<Done>::failed(
            QStringLiteral("%1 exists already. Choose another name.").arg(target));
    if (!database.execute(QStringLiteral("VACUUM INTO ?"), {target})) {
        const Problem problem = database.problem();
        removeWithSidecars(target);
        return Outcome<Done>(problem);
    }
    const Outcome<Done> checked = checkCopy(target);
    if (!checked)
        removeWithSidecars(target);
    return checked;
}

Outcome<QString> backUp(Database &database, const QDateTime &nowUtc, int keep)
{
    const QString folder = backupFolder(database.path());
    if (!QDir().mkpath(folder))
        return Outcome<QString>::failed(
            QStringLiteral("The backup folder %1 cannot be made.").arg(folder));
    const QString target = QDir(folder).filePath(
        QString(stamped(QStringLiteral("backup"), nowUtc) + QStringLiteral(".rickyard")));
    const Outcome<Done> copied = copyTo(database, target);
    if (!copied)
        return Outcome<QString>(copied.problems());
    const QVector<BackupFile> all = backupsOf(database.path());
    for (int i = qMax(1, keep); i < all.size(); ++i)
        removeWithSidecars(all.at(i).path);
    return target;
}

Outcome<QString> checkWhole(Database &database)
{
    const QStringList problems = database.integrityProblems();
    if (problems.isEmpty())
        return QString();
    domain::Problems all;
    for (const QString &problem : problems)
        all.append({{}, problem});
    return Outcome<QString>(all);
}

Outcome<QString> restore(const QString &backupPath, const QString &yardPath,
                         const QDateTime &nowUtc)
{
    const Outcome<Done> checked = checkCopy(backupPath);
    if (!checked)
        return Outcome<QString>(checked.problems());
    // Copied next to the yard first, so that the exchange itself is a rename.
    const QString incoming = stamped(QString(yardPath + QStringLiteral(".incoming")), nowUtc);
    if (!QFile::copy(backupPath, incoming))
        return Outcome<QString>::failed(
            QStringLiteral("The backup could not be copied beside the yard. Is the disk full?"));
    const QString aside = stamped(QString(yardPath + QStringLiteral(".before-restore")), nowUtc);
    const bool had = QFileInfo::exists(yardPath);
    if (had && !QFile::rename(yardPath, aside)) {
        QFile::remove(incoming);
        return Outcome<QString>::failed(
            QStringLiteral("%1 is in use and could not be set aside.").arg(yardPath));
    }
    QFile::remove(QString(yardPath + QStringLiteral("-wal")));
    QFile::remove(QString(yardPath + QStringLiteral("-shm")));
    if (!QFile::rename(incoming, yardPath)) {
        if (had)
            QFile::rename(aside, yardPath);
        return Outcome<QString>::failed(
            QStringLiteral("The backup could not be put in place. The yard is as it was."));
    }
    return had ? aside : QString();
}

} // namespace rickyard::storage
