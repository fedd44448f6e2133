#include "app/cli/yard_access.h"
#include "app/demo/demo.h"
#include "models/domain/records/rules.h"
#include "models/storage/backup.h"

#include <QDateTime>
#include <QDir>
#include <QFileInfo>

namespace rickyard::app {

int runBackup(CliCall &call)
{
    const WorkspacePtr yard = openForReading(call);
    if (!yard)
        return CannotOpen;
    QString target;
    domain::Problems problems;
    if (call.launch.operands.isEmpty()) {
        const auto made = yard->backUp(QDateTime::currentDateTimeUtc());
        problems = made.problems();
        target = made ? made.value() : QString();
    } else {
        target = call.launch.operands.first();
        problems = yard->copyTo(target).problems();
    }
    if (!problems.isEmpty()) {
        sayProblems(call.err, problems);
        return RefusedInput;
    }
    call.out << "Backed up to " << QDir::toNativeSeparators(target)
             << ". The copy was read through and is whole.\n";
    return Finished;
}

int runRestore(CliCall &call)
{
    const QString backup = call.launch.operands.first();
    if (!QFileInfo::exists(backup)) {
        call.err << "There is no file " << QDir::toNativeSeparators(backup) << ".\n";
        return RefusedInput;
    }
    // Nobody may be writing to the yard while it is exchanged. A damaged yard does not open, and
    // that is when a backup is wanted: the backup itself is checked below.
    if (QFileInfo::exists(call.launch.yardPath)) {
        QLockFile lock(
            QString(QFileInfo(call.launch.yardPath).absoluteFilePath() + QStringLiteral(".lock")));
        lock.setStaleLockTime(0);
        if (!lock.tryLock(200)) {
            call.err << "Another window has this yard open. Close it, then restore.\n";
            return CannotOpen;
        }
    }
    const auto restored =
        storage::restore(backup, call.launch.yardPath, QDateTime::currentDateTimeUtc());
    if (!restored) {
        sayProblems(call.err, restored.problems());
        return RefusedInput;
    }
    call.out << "The yard is as in " << QDir::toNativeSeparators(backup) << " again.";
    if (!restored.value().isEmpty())
        call.out << " What was there before is kept in "
                 << QDir::toNativeSeparators(restored.value()) << ".";
    call.out << "\n";
    return Finished;
}

int runCheck(CliCall &call)
{
    const WorkspacePtr yard = openForReading(call);
    if (!yard)
        return CannotOpen;
    QStringList found = yard->integrityProblems();
    qsizetype records = 0;
    const domain::Books &books = yard->books();
    for (domain::TableId table : domain::tablesInOrder())
        for (domain::RecordId id : domain::idsOf(books, table)) {
            ++records;
            const domain::Problems problems =
                domain::check(books, *domain::rowOf(books, table, id));
            for (const domain::Problem &problem : problems)
                found << QStringLiteral("%1 %2 (%3): %4")
                             .arg(domain::specOf(table).singular)
                             .arg(id)
                             .arg(domain::titleOf(books, table, id), problem.message);
        }
    if (!found.isEmpty()) {
        call.err << found.join(QLatin1Char('\n')) << "\n";
        return RefusedInput;
    }
    call.out << "The file is whole. " << records << " records were checked and are in order.\n";
    return Finished;
}

int runDemo(CliCall &call)
{
    quint64 seed = kDemoSeed;
    if (call.launch.has(QStringLiteral("seed"))) {
        bool ok = false;
        seed = call.launch.options.value(QStringLiteral("seed")).toULongLong(&ok);
        if (!ok) {
            call.err << "--seed needs a whole number, zero or more.\n";
            return Usage;
        }
    }
    const auto now = momentOf(call, QStringLiteral("America/Chicago"));
    if (!now)
        return Usage;
    const QString path = call.launch.operands.first();
    const auto made = makeDemoFile(path, seed, *now);
    if (!made) {
        sayProblems(call.err, made.problems());
        return RefusedInput;
    }
    call.out << "An invented yard is in " << QDir::toNativeSeparators(path) << ".\n";
    return Finished;
}

} // namespace rickyard::app
