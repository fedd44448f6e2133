#include "models/storage/database.h"

#include <QDir>
#include <QFileInfo>
#include <QSqlError>
#include <QSqlQuery>
#include <QUrl>
#include <QUuid>

namespace rickyard::storage {

namespace {

// SQLite's primary result codes; extended ones carry it in the low byte.
Fault faultOf(const QSqlError &error)
{
    bool ok = false;
    const int code = error.nativeErrorCode().toInt(&ok) & 0xff;
    if (!ok)
        return Fault::Other;
    switch (code) {
    case 5:
    case 6:
        return Fault::Busy;
    case 8:
        return Fault::ReadOnly;
    case 10:
        return Fault::Other;
    case 11:
        return Fault::Corrupt;
    case 13:
        return Fault::DiskFull;
    case 14:
        return Fault::CannotOpen;
    case 19:
        return Fault::Refused;
    case 26:
        return Fault::Foreign;
    default:
        return Fault::Other;
    }
}

QString wordsFor(Fault fault, const QString &path, const QString &engineText)
{
    const QString file = QDir::toNativeSeparators(path);
    switch (fault) {
    case Fault::Corrupt:
        return QStringLiteral(
                   "The yard file %1 is damaged. It was left as it is. Restore a backup, "
                   "or keep a copy of the file and start a new yard.")
            .arg(file);
    case Fault::Foreign:
        return QStringLiteral("%1 is not a yard file. It was left as it is. Choose another file.")
            .arg(file);
    case Fault::ReadOnly:
        return QStringLiteral("%1 cannot be written: the file or its folder is read-only.")
            .arg(file);
    case Fault::DiskFull:
        return QStringLiteral("The disk is full. Nothing was changed. Free some space, then try "
                              "again.");
    case Fault::Busy:
        return QStringLiteral("Another program is using %1. Try again in a moment.").arg(file);
    case Fault::CannotOpen:
        return QStringLiteral("%1 cannot be opened. Check that the folder exists and may be used.")
            .arg(file);
    case Fault::Refused:
        return QStringLiteral("The yard file refused the change, nothing was changed: %1")
            .arg(engineText);
    case Fault::None:
    case Fault::Other:
        break;
    }
    return QStringLiteral("The yard file could not be used: %1").arg(engineText);
}

// Qt wants a name of its own for each connection of each thread.
QString freshConnectionName()
{
    return QUuid::createUuid().toString();
}

} // namespace

Outcome<std::unique_ptr<Database>> Database::open(const QString &path, OpenMode mode)
{
    std::unique_ptr<Database> database(new Database);
    if (!database->openConnection(path, mode))
        return Outcome<std::unique_ptr<Database>>(database->problem());
    return Outcome<std::unique_ptr<Database>>(std::move(database));
}

bool Database::openConnection(const QString &path, OpenMode mode)
{
    m_path = path;
    m_readOnly = mode == OpenMode::ReadOnly;
    m_connection = freshConnectionName();
    m_database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), m_connection);
    QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=4000");
    QString name = path;
    if (m_readOnly) {
        options += QStringLiteral(";QSQLITE_OPEN_READONLY");
        // A WAL file in a folder that cannot be written opens only as immutable.
        const QFileInfo info(path);
        const bool lonely = !QFileInfo::exists(QString(path + QStringLiteral("-wal")));
        if (lonely && !QFileInfo(info.absolutePath()).isWritable()) {
            options += QStringLiteral(";QSQLITE_OPEN_URI");
            name =
                QString(QStringLiteral("file:") +
                        QString::fromLatin1(QUrl::toPercentEncoding(info.absoluteFilePath(), "/")) +
                        QStringLiteral("?immutable=1"));
        }
    }
    m_database.setConnectOptions(options);
    m_database.setDatabaseName(name);
    if (!m_database.open())
        return fail(m_database.lastError(), QStringLiteral("open"));
    if (!execute(QStringLiteral("PRAGMA foreign_keys = ON")))
        return false;
    // The first read tells a foreign or broken file before anything is written to it.
    if (!integer(QStringLiteral("SELECT count(*) FROM sqlite_master")))
        return false;
    return m_readOnly || execute(QStringLiteral("PRAGMA synchronous = FULL"));
}

Database::~Database()
{
    if (m_connection.isEmpty())
        return;
    m_database.close();
    m_database = QSqlDatabase();
    QSqlDatabase::removeDatabase(m_connection);
}

bool Database::fail(const QSqlError &error, const QString &statement)
{
    m_error.fault = faultOf(error);
    m_error.message = wordsFor(m_error.fault, m_path, error.databaseText());
    m_error.detail = QString(error.text() + QStringLiteral(" in: ") + statement);
    return false;
}

bool Database::execute(const QString &statement, const QVector<QVariant> &values)
{
    QSqlQuery query(m_database);
    query.setForwardOnly(true);
    if (!query.prepare(statement))
        return fail(query.lastError(), statement);
    for (const QVariant &value : values)
        query.addBindValue(value);
    return query.exec() || fail(query.lastError(), statement);
}

bool Database::executeMany(const QString &statement, const QVector<QVector<QVariant>> &rows,
                           const std::function<bool(int)> &keepGoing)
{
    QSqlQuery query(m_database);
    query.setForwardOnly(true);
    if (!query.prepare(statement))
        return fail(query.lastError(), statement);
    int done = 0;
    for (const QVector<QVariant> &row : rows) {
        for (int i = 0; i < row.size(); ++i)
            query.bindValue(i, row.at(i));
        if (!query.exec())
            return fail(query.lastError(), statement);
        if (keepGoing && !keepGoing(++done)) {
            m_error = {Fault::None, QStringLiteral("Stopped. Nothing was changed."), {}};
            return false;
        }
    }
    return true;
}

bool Database::query(const QString &statement, const QVector<QVariant> &values,
                     const std::function<bool(const QSqlQuery &)> &row)
{
    QSqlQuery query(m_database);
    query.setForwardOnly(true);
    if (!query.prepare(statement))
        return fail(query.lastError(), statement);
    for (const QVariant &value : values)
        query.addBindValue(value);
    if (!query.exec())
        return fail(query.lastError(), statement);
    while (query.next())
        if (!row(query))
            return true;
    if (query.lastError().isValid() && query.lastError().type() != QSqlError::NoError)
        return fail(query.lastError(), statement);
    return true;
}

std::optional<qint64> Database::integer(const QString &statement)
{
    std::optional<qint64> result;
    const bool ok = query(statement, {}, [&](const QSqlQuery &q) {
        result = q.value(0).toLongLong();
        return false;
    });
    return ok ? result : std::nullopt;
}

QStringList Database::integrityProblems()
{
    QStringList problems;
    const bool pages =
        query(QStringLiteral("PRAGMA integrity_check(20)"), {}, [&](const QSqlQuery &q) {
            const QString line = q.value(0).toString();
            if (line != QLatin1String("ok"))
                problems << line;
            return true;
        });
    if (!pages)
        problems << m_error.message;
    const bool keys =
        query(QStringLiteral("PRAGMA foreign_key_check"), {}, [&](const QSqlQuery &q) {
            problems << QStringLiteral("%1 %2 refers to a missing %3")
                            .arg(q.value(0).toString(), q.value(1).toString(),
                                 q.value(2).toString());
            return problems.size() < 20;
        });
    if (!keys && pages)
        problems << m_error.message;
    return problems;
}

Transaction::Transaction(Database &database)
    : m_database(database), m_open(database.execute(QStringLiteral("BEGIN IMMEDIATE")))
{
}

Transaction::~Transaction()
{
    if (!m_open)
        return;
    // The error that led here is worth more than one of the rollback.
    const DatabaseError kept = m_database.m_error;
    m_database.execute(QStringLiteral("ROLLBACK"));
    m_database.m_error = kept;
}

bool Transaction::commit()
{
    if (!m_open || !m_database.execute(QStringLiteral("COMMIT")))
        return false;
    m_open = false;
    return true;
}

} // namespace rickyard::storage
