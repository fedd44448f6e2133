// The one wrapper around the SQLite connection. Every statement goes through it; every error
// comes back with the statement in `detail` and with words for a person in the message.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/records/value.h"

#include <QSqlDatabase>
#include <QString>
#include <QVariant>
#include <QVector>

#include <functional>
#include <memory>

class QSqlError;
class QSqlQuery;

namespace rickyard::storage {

using domain::Done;
using domain::Outcome;
using domain::Problem;

enum class OpenMode { ReadWrite, ReadOnly };

// What went wrong, in the terms a caller acts on.
enum class Fault { None, Corrupt, Foreign, ReadOnly, DiskFull, Busy, CannotOpen, Refused, Other };

struct DatabaseError {
    Fault fault = Fault::None;
    QString message; // for a person
    QString detail;  // engine's text and the statement, for a log
};

class Database
{
public:
    // Opens without touching the content; sets foreign keys, WAL and synchronous=FULL.
    static Outcome<std::unique_ptr<Database>> open(const QString &path, OpenMode mode);
    ~Database();
    Database(const Database &) = delete;
    Database &operator=(const Database &) = delete;

    [[nodiscard]] QString path() const { return m_path; }
    [[nodiscard]] bool readOnly() const { return m_readOnly; }

    bool execute(const QString &statement, const QVector<QVariant> &values = {});
    // Calls `row` for every result row; false from `row` stops.
    bool query(const QString &statement, const QVector<QVariant> &values,
               const std::function<bool(const QSqlQuery &)> &row);
    std::optional<qint64> integer(const QString &statement);
    // A statement that is prepared once and executed many times.
    bool executeMany(const QString &statement, const QVector<QVector<QVariant>> &rows,
                     const std::function<bool(int)> &keepGoing = {});

    [[nodiscard]] const DatabaseError &lastError() const { return m_error; }
    [[nodiscard]] Problem problem() const { return {{}, m_error.message}; }

    // Full check of the pages, then of the references; empty when whole.
    QStringList integrityProblems();

private:
    Database() = default;
    bool fail(const QSqlError &error, const QString &statement);
    bool openConnection(const QString &path, OpenMode mode);

    QString m_path;
    QString m_connection;
    bool m_readOnly = false;
    QSqlDatabase m_database;
    DatabaseError m_error;
    friend class Transaction;
};

// Rolls back unless committed.
class Transaction
{
public:
    explicit Transaction(Database &database);
    ~Transaction();
    Transaction(const Transaction &) = delete;
    Transaction &operator=(const Transaction &) = delete;
    [[nodiscard]] bool begun() const { return m_open; }
    bool commit();

private:
    Database &m_database;
    bool m_open = false;
};

} // namespace rickyard::storage
