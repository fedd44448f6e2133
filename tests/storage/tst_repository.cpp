// Random records of every table go through the file and come back the same; a refused change
// leaves nothing behind.
#include "models/storage/backup.h"
#include "models/storage/repository.h"
#include "models/storage/yard_file.h"
#include "tests/support/registry.h"

#include <QRandomGenerator>
#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::storage;
using domain::FieldKind;
using domain::FieldSpec;
using domain::Row;
using domain::TableId;
using domain::Value;

namespace {

const QDateTime kNow(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);

// A value that the schema accepts; references go to record 1 of the other table.
Value randomValue(const FieldSpec &field, QRandomGenerator &random, int serial)
{
    if (!field.required && random.bounded(4) == 0 && field.kind != FieldKind::Text &&
        field.kind != FieldKind::LongText && field.kind != FieldKind::Typed &&
        field.kind != FieldKind::Stacks)
        return std::monostate{};
    switch (field.kind) {
    case FieldKind::Text:
    case FieldKind::LongText:
        return QStringLiteral("=Ünïcode \"%1\", '; %2").arg(serial).arg(random.bounded(1000));
    case FieldKind::Typed:
        return QStringLiteral("{\"a\":\"%1 lb\"}").arg(serial);
    case FieldKind::Choice:
        return field.choices.at(random.bounded(field.choices.size())).key;
    case FieldKind::Flag:
        return qint64{random.bounded(2)};
    case FieldKind::Date:
        return QDate(2026, 1, 1).addDays(random.bounded(300)).toString(Qt::ISODate);
    case FieldKind::Time:
        return qint64{1700000000 + serial * 100000LL + random.bounded(1000)};
    case FieldKind::Pieces:
        return QStringLiteral("18500 20000 %1").arg(random.bounded(30000));
    case FieldKind::Stacks:
        return QStringLiteral("2438400x1219200x%1").arg(10000 + random.bounded(30000));
    case FieldKind::Blob:
        return QByteArray("\0\xff\x01 block", 9);
    case FieldKind::Reference:
        return qint64{1};
    case FieldKind::Count:
    case FieldKind::Quantity:
        break;
    }
    const qint64 low = field.minimum.value_or(0);
    const qint64 high = qMin(field.maximum.value_or(low + 1000000), low + 1000000000LL);
    return qint64{low + static_cast<qint64>(random.bounded(1000)) * ((high - low) / 1000)};
}

// The few rules of the schema that join two columns.
void satisfyRules(Row &row, int serial)
{
    const auto set = [&](const char *key, const Value &v) {
        domain::setValue(row, QString::fromLatin1(key), v);
    };
    const qint64 t = 1700000000 + serial * 100000LL;
    if (row.table == TableId::Cook) {
        set("lit", t);
        set("at_temperature", t + 3600);
        set("food_on", t + 4000);
        set("food_off", t + 30000);
        set("fire_out", t + 40000);
        set("crate_before", qint64{900000000});
        set("crate_after", qint64{100000000});
    } else if (row.table == TableId::Event) {
        set("start", t);
        set("end", t + 3600);
    } else if (row.table == TableId::Visit) {
        set("start", t);
        set("end", t + 3600);
    } else if (row.table == TableId::BusyTime) {
        set("start", t);
        set("end", t + 3600);
    } else if (row.table == TableId::AshLoad) {
        set("taken_out", t);
        set("tipped", t + 400000);
    } else if (row.table == TableId::OvenTest) {
        set("wet", qint64{700000});
        set("dry", qint64{500000});
    } else if (row.table == TableId::KnownGood) {
        set("from_day", QStringLiteral("2026-01-01"));
        set("to_day", QStringLiteral("2026-02-01"));
    } else if (row.table == TableId::Movement) {
        set("kind", QStringLiteral("counted"));
        set("feed", std::monostate{});
    }
}

ChangeSet everything(int each, quint32 seed)
{
    QRandomGenerator random(seed);
    ChangeSet changes;
    for (TableId table : domain::tablesInOrder()) {
        const int n = table == TableId::Yard ? 1 : each;
        for (int i = 1; i <= n; ++i) {
            Row row{table, i, {}};
            for (const FieldSpec &field : domain::specOf(table).fields)
                row.values << randomValue(field, random, i);
            satisfyRules(row, i);
            changes.append({table, i, std::nullopt, row});
        }
    }
    return changes;
}

} // namespace

class TstRepository : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void everyRecordComesBackTheSame();
    void reversedChangesRestore();
    void aRefusedChangeLeavesNothing();
    void aDanglingReferenceIsRefused();
    void stoppingLeavesNothing();
    void fullDiskIsSaid();
    void backupsRotateAndRestore();
    void damagedBackupIsNotRestored();
};

void TstRepository::everyRecordComesBackTheSame()
{
    for (quint32 seed = 1; seed <= 5; ++seed) {
        QTemporaryDir folder;
        auto file = openYardFile(folder.filePath(QStringLiteral("y.rickyard")), kNow);
        QVERIFY(file.ok());
        const ChangeSet changes = everything(6, seed);
        const auto written = write(*file.value().database, changes);
        QVERIFY2(written.ok(), qPrintable(file.value().database->lastError().detail));
        const auto books = readAll(*file.value().database);
        QVERIFY(books.ok());
        for (const Change &c : changes) {
            const auto row = domain::rowOf(books.value(), c.table, c.id);
            QVERIFY(row.has_value());
            for (int i = 0; i < row->values.size(); ++i) {
                const FieldSpec &field = domain::specOf(c.table).fields.at(i);
                if (row->values.at(i) != c.after->values.at(i) &&
                    !(field.kind == FieldKind::Blob && domain::isMissing(c.after->values.at(i))))
                    QFAIL(qPrintable(
                        QString(domain::specOf(c.table).key + QLatin1Char('.') + field.key)));
            }
        }
        QVERIFY(file.value().database->integrityProblems().isEmpty());
    }
}

void TstRepository::reversedChangesRestore()
{
    QTemporaryDir folder;
    auto file = openYardFile(folder.filePath(QStringLiteral("y.rickyard")), kNow);
    QVERIFY(file.ok());
    const ChangeSet changes = everything(3, 7);
    QVERIFY(write(*file.value().database, changes).ok());
    QVERIFY(write(*file.value().database, reversed(changes)).ok());
    const auto books = readAll(*file.value().database);
    for (TableId table : domain::tablesInOrder())
        QCOMPARE(domain::countOf(books.value(), table), 0);
}

void TstRepository::aRefusedChangeLeavesNothing()
{
    QTemporaryDir folder;
    auto file = openYardFile(folder.filePath(QStringLiteral("y.rickyard")), kNow);
    ChangeSet changes = everything(2, 3);
    // A pit of negative size among good records: the schema refuses it, and with it all of them.
    for (Change &c : changes)
        if (c.table == TableId::Pit && c.id == 2)
            domain::setValue(*c.after, QStringLiteral("diameter"), qint64{-5});
    const auto written = write(*file.value().database, changes);
    QVERIFY(!written.ok());
    QCOMPARE(file.value().database->lastError().fault, Fault::Refused);
    QCOMPARE(domain::countOf(readAll(*file.value().database).value(), TableId::Species), 0);
}

void TstRepository::aDanglingReferenceIsRefused()
{
    QTemporaryDir folder;
    auto file = openYardFile(folder.filePath(QStringLiteral("y.rickyard")), kNow);
    ChangeSet changes = everything(1, 4);
    changes.erase(std::remove_if(changes.begin(), changes.end(),
                                 [](const Change &c) { return c.table == TableId::Pit; }),
                  changes.end());
    QVERIFY(!write(*file.value().database, changes).ok());
    QCOMPARE(domain::countOf(readAll(*file.value().database).value(), TableId::Species), 0);
}

void TstRepository::stoppingLeavesNothing()
{
    QTemporaryDir folder;
    auto file = openYardFile(folder.filePath(QStringLiteral("y.rickyard")), kNow);
    int seen = 0;
    const auto written = write(*file.value().database, everything(20, 5), [&](int n) {
        seen = n;
        return n < 150;
    });
    QVERIFY(!written.ok());
    QCOMPARE(seen, 150);
    QCOMPARE(domain::countOf(readAll(*file.value().database).value(), TableId::Species), 0);
}

void TstRepository::fullDiskIsSaid()
{
    QTemporaryDir folder;
    auto file = openYardFile(folder.filePath(QStringLiteral("y.rickyard")), kNow);
    Database &database = *file.value().database;
    // SQLite says "database or disk is full" when the page limit is reached.
    const qint64 pages = database.integer(QStringLiteral("PRAGMA page_count")).value_or(0);
    QVERIFY(database.execute(QStringLiteral("PRAGMA max_page_count = %1").arg(pages + 2)));
    const auto written = write(database, everything(200, 6));
    QVERIFY(!written.ok());
    QCOMPARE(database.lastError().fault, Fault::DiskFull);
    QVERIFY(written.message().contains(QStringLiteral("disk is full")));
    QCOMPARE(domain::countOf(readAll(database).value(), TableId::Species), 0);
    QVERIFY(database.integrityProblems().isEmpty());
}

void TstRepository::backupsRotateAndRestore()
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("y.rickyard"));
    QString first;
    {
        auto file = openYardFile(path, kNow);
        QVERIFY(write(*file.value().database, everything(2, 8)).ok());
        for (int i = 0; i < 5; ++i) {
            const auto backup = backUp(*file.value().database, kNow.addSecs(i), 3);
            QVERIFY2(backup.ok(), qPrintable(backup.message()));
        }
        const auto all = backupsOf(path);
        QCOMPARE(all.size(), 3);
        QCOMPARE(all.first().time, kNow.addSecs(4));
        first = all.first().path;
        // After the backup everything is deleted.
        QVERIFY(write(*file.value().database, reversed(everything(2, 8))).ok());
    }
    const auto restored = restore(first, path, kNow.addSecs(60));
    QVERIFY2(restored.ok(), qPrintable(restored.message()));
    QVERIFY(QFile::exists(restored.value()));
    auto again = openYardFile(path, kNow);
    QVERIFY(again.ok());
    QCOMPARE(domain::countOf(readAll(*again.value().database).value(), TableId::Species), 2);
}

void TstRepository::damagedBackupIsNotRestored()
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("y.rickyard"));
    QString backup;
    {
        auto file = openYardFile(path, kNow);
        QVERIFY(write(*file.value().database, everything(30, 9)).ok());
        backup = backUp(*file.value().database, kNow).value();
    }
    QFile damaged(backup);
    QVERIFY(damaged.open(QIODevice::ReadWrite));
    QVERIFY(damaged.resize(damaged.size() / 2));
    damaged.close();
    const auto restored = restore(backup, path, kNow);
    QVERIFY(!restored.ok());
    auto again = openYardFile(path, kNow);
    QVERIFY(again.ok());
    QCOMPARE(domain::countOf(readAll(*again.value().database).value(), TableId::Species), 30);
}

RICKYARD_TEST(TstRepository)
#include "tst_repository.moc"
