#include "models/storage/repository.h"

#include <QSqlQuery>

#include <algorithm>

namespace rickyard::storage {

using domain::FieldKind;
using domain::FieldSpec;
using domain::Row;
using domain::TableId;
using domain::TableSpec;
using domain::Value;

namespace {

QString quoted(const QString &name)
{
    return QString(QLatin1Char('"') + name + QLatin1Char('"'));
}

QVariant toVariant(const Value &value)
{
    if (const qint64 *i = std::get_if<qint64>(&value))
        return *i;
    // A null QString would be bound as NULL; an empty text is a text.
    if (const QString *s = std::get_if<QString>(&value))
        return s->isNull() ? QVariant(QStringLiteral("")) : QVariant(*s);
    if (const QByteArray *b = std::get_if<QByteArray>(&value))
        return *b;
    return {};
}

Value fromVariant(const QVariant &variant, FieldKind kind)
{
    if (variant.isNull())
        return std::monostate{};
    switch (kind) {
    case FieldKind::Text:
    case FieldKind::LongText:
    case FieldKind::Choice:
    case FieldKind::Date:
    case FieldKind::Pieces:
    case FieldKind::Stacks:
    case FieldKind::Typed:
        return variant.toString();
    case FieldKind::Blob:
        return variant.toByteArray();
    case FieldKind::Flag:
    case FieldKind::Count:
    case FieldKind::Quantity:
    case FieldKind::Time:
    case FieldKind::Reference:
        break;
    }
    return qint64{variant.toLongLong()};
}

QStringList columnsOf(const TableSpec &spec)
{
    QStringList names;
    for (const FieldSpec &field : spec.fields)
        names << quoted(field.key);
    return names;
}

QString insertInto(const TableSpec &spec)
{
    QStringList marks(spec.fields.size() + 1, QStringLiteral("?"));
    return QStringLiteral("INSERT INTO %1 (%2, id) VALUES (%3)")
        .arg(quoted(spec.key), columnsOf(spec).join(QStringLiteral(", ")),
             marks.join(QStringLiteral(", ")));
}

QString updateOf(const TableSpec &spec)
{
    QStringList sets;
    for (const QString &name : columnsOf(spec))
        sets << QString(name + QStringLiteral(" = ?"));
    return QStringLiteral("UPDATE %1 SET %2 WHERE id = ?")
        .arg(quoted(spec.key), sets.join(QStringLiteral(", ")));
}

QVector<QVariant> bound(const Row &row)
{
    QVector<QVariant> values;
    for (const Value &value : row.values)
        values << toVariant(value);
    values << QVariant(row.id);
    return values;
}

bool readTable(Database &database, TableId table, domain::Books &books)
{
    const TableSpec &spec = domain::specOf(table);
    const QString statement =
        QStringLiteral("SELECT id, %1 FROM %2 ORDER BY id")
            .arg(columnsOf(spec).join(QStringLiteral(", ")), quoted(spec.key));
    return database.query(statement, {}, [&](const QSqlQuery &q) {
        Row row{table, q.value(0).toLongLong(), {}};
        row.values.reserve(spec.fields.size());
        for (int i = 0; i < spec.fields.size(); ++i)
            row.values << fromVariant(q.value(i + 1), spec.fields.at(i).kind);
        domain::put(books, row);
        return true;
    });
}

// One table's changes of one kind, written with one prepared statement.
bool writeGroup(Database &database, const QString &statement,
                const QVector<QVector<QVariant>> &rows, int &written,
                const std::function<bool(int)> &keepGoing)
{
    if (rows.isEmpty())
        return true;
    const int base = written;
    written += static_cast<int>(rows.size());
    return database.executeMany(statement, rows,
                                [&](int done) { return !keepGoing || keepGoing(base + done); });
}

} // namespace

ChangeSet reversed(const ChangeSet &changes)
{
    ChangeSet back;
    for (auto it = changes.crbegin(); it != changes.crend(); ++it)
        back.append({it->table, it->id, it->after, it->before});
    return back;
}

Outcome<domain::Books> readAll(Database &database)
{
    domain::Books books;
    for (TableId table : domain::tablesInOrder())
        if (!readTable(database, table, books))
            return Outcome<domain::Books>(database.problem());
    return books;
}

Outcome<Done> write(Database &database, const ChangeSet &changes,
                    const std::function<bool(int)> &keepGoing)
{
    Transaction transaction(database);
    if (!transaction.begun())
        return Outcome<Done>(database.problem());
    // References are checked at the commit, so tables may be written in any order; deletions go
    // first so that a unique key can be taken over by a new record.
    int written = 0;
    for (TableId table : domain::tablesInOrder()) {
        const TableSpec &spec = domain::specOf(table);
        QVector<QVector<QVariant>> gone;
        QVector<QVector<QVariant>> changed;
        QVector<QVector<QVariant>> added;
        for (const Change &change : changes) {
            if (change.table != table)
                continue;
            if (!change.after)
                gone << QVector<QVariant>{QVariant(change.id)};
            else if (change.before)
                changed << bound(*change.after);
            else
                added << bound(*change.after);
        }
        const QString remove = QStringLiteral("DELETE FROM %1 WHERE id = ?").arg(quoted(spec.key));
        if (!writeGroup(database, remove, gone, written, keepGoing) ||
            !writeGroup(database, updateOf(spec), changed, written, keepGoing) ||
            !writeGroup(database, insertInto(spec), added, written, keepGoing))
            return Outcome<Done>(database.problem());
    }
    if (!transaction.commit())
        return Outcome<Done>(database.problem());
    return Done{};
}

} // namespace rickyard::storage
