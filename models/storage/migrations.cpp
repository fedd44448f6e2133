#include "models/storage/migrations.h"

#include <QFile>

namespace rickyard::storage {

namespace {

QString pathOf(int version)
{
    return QStringLiteral(":/rickyard/migrations/%1.sql").arg(version, 4, 10, QLatin1Char('0'));
}

// Statements end with a semicolon at the end of a line; a line that starts with -- is a comment.
QStringList statementsOf(int version)
{
    QFile file(pathOf(version));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    QStringList statements;
    QString current;
    const QStringList lines = QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'));
    for (const QString &line : lines) {
        if (line.trimmed().startsWith(QLatin1String("--")))
            continue;
        current += line;
        current += QLatin1Char('\n');
        if (line.trimmed().endsWith(QLatin1Char(';'))) {
            statements << current.trimmed();
            current.clear();
        }
    }
    return statements;
}

Outcome<Done> step(Database &database, int version)
{
    Transaction transaction(database);
    if (!transaction.begun())
        return Outcome<Done>(database.problem());
    const QStringList statements = statementsOf(version);
    for (const QString &statement : statements)
        if (!database.execute(statement))
            return Outcome<Done>(database.problem());
    if (!database.execute(QStringLiteral("PRAGMA user_version = %1").arg(version)) ||
        !database.execute(QStringLiteral("PRAGMA application_id = %1").arg(kApplicationId)) ||
        !transaction.commit())
        return Outcome<Done>(database.problem());
    return Done{};
}

} // namespace

int newestVersion()
{
    int version = 0;
    while (QFile::exists(pathOf(version + 1)))
        ++version;
    return version;
}

std::optional<int> versionOf(Database &database)
{
    const auto version = database.integer(QStringLiteral("PRAGMA user_version"));
    return version ? std::optional<int>(static_cast<int>(*version)) : std::nullopt;
}

FileKind kindOf(Database &database)
{
    const qint64 id = database.integer(QStringLiteral("PRAGMA application_id")).value_or(0);
    const qint64 tables =
        database.integer(QStringLiteral("SELECT count(*) FROM sqlite_master")).value_or(0);
    if (id != kApplicationId)
        return id == 0 && tables == 0 ? FileKind::Empty : FileKind::Foreign;
    return versionOf(database).value_or(0) > newestVersion() ? FileKind::NewerYard : FileKind::Yard;
}

Outcome<Done> migrate(Database &database, int target)
{
    const int from = versionOf(database).value_or(0);
    for (int version = from + 1; version <= target; ++version) {
        const Outcome<Done> done = step(database, version);
        if (!done)
            return done;
    }
    return Done{};
}

} // namespace rickyard::storage
