// The schema in the file against the description in the code, and the ways a file can be refused.
#include "models/domain/records/books.h"
#include "models/storage/backup.h"
#include "models/storage/migrations.h"
#include "models/storage/repository.h"
#include "models/storage/yard_file.h"
#include "tests/support/registry.h"

#include <QDir>
#include <QSqlQuery>
#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::storage;

namespace {

const QDateTime kNow(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);

QByteArray bytesOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void writeBytes(const QString &path, const QByteArray &bytes)
{
    QFile file(path);
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write(bytes);
}

} // namespace

class TstMigrations : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void everyTableHasItsColumns_data();
    void everyTableHasItsColumns();
    void everyTableIsStrict();
    void writesAreDurableAndLogged();
    void refusesWhatIsNotOurs_data();
    void refusesWhatIsNotOurs();
    void refusesANewerFile();
    void secondWriterReadsOnly();
    void upgradesFromEveryVersion();
    void keepsTheRecordsOfEveryVersion();

private:
    QTemporaryDir m_folder;
    QString path(const char *name) const { return m_folder.filePath(QString::fromLatin1(name)); }
};

void TstMigrations::everyTableHasItsColumns_data()
{
    QTest::addColumn<int>("table");
    for (domain::TableId table : domain::tablesInOrder())
        QTest::newRow(qPrintable(domain::specOf(table).key)) << static_cast<int>(table);
}

void TstMigrations::everyTableHasItsColumns()
{
    QFETCH(int, table);
    const domain::TableSpec &spec = domain::specOf(static_cast<domain::TableId>(table));
    auto file =
        openYardFile(m_folder.filePath(QString(spec.key + QStringLiteral(".rickyard"))), kNow);
    QVERIFY2(file.ok(), qPrintable(file.message()));
    QStringList columns;
    QVERIFY(file.value().database->query(
        QStringLiteral("SELECT name FROM pragma_table_info('%1') ORDER BY cid").arg(spec.key), {},
        [&](const QSqlQuery &q) {
            columns << q.value(0).toString();
            return true;
        }));
    QStringList expected{QStringLiteral("id")};
    for (const domain::FieldSpec &field : spec.fields)
        expected << field.key;
    std::sort(columns.begin(), columns.end());
    std::sort(expected.begin(), expected.end());
    QCOMPARE(columns, expected);
}

void TstMigrations::everyTableIsStrict()
{
    auto file = openYardFile(path("strict.rickyard"), kNow);
    QVERIFY(file.ok());
    const auto loose = file.value().database->integer(QStringLiteral(
        "SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND "
        "strict = 0 AND name NOT LIKE 'sqlite_%'"));
    QCOMPARE(loose.value_or(-1), 0);
    // A text does not get into an integer column.
    QVERIFY(!file.value().database->execute(QStringLiteral(
        "INSERT INTO species (name, basic_gravity, never_burn) VALUES ('x', 'heavy', 0)")));
}

void TstMigrations::writesAreDurableAndLogged()
{
    auto file = openYardFile(path("wal.rickyard"), kNow);
    QVERIFY(file.ok());
    QString mode;
    QVERIFY(file.value().database->query(QStringLiteral("PRAGMA journal_mode"), {},
                                         [&](const QSqlQuery &q) {
                                             mode = q.value(0).toString();
                                             return false;
                                         }));
    QCOMPARE(mode, QStringLiteral("wal"));
    QCOMPARE(file.value().database->integer(QStringLiteral("PRAGMA synchronous")).value_or(-1), 2);
    QCOMPARE(file.value().database->integer(QStringLiteral("PRAGMA foreign_keys")).value_or(-1), 1);
}

void TstMigrations::refusesWhatIsNotOurs_data()
{
    QTest::addColumn<QByteArray>("content");
    QTest::newRow("text") << QByteArray("this is a shopping list, not a database at all\n");
    QTest::newRow("zeros") << QByteArray(5000, '\0');
    QTest::newRow("header only") << QByteArray("SQLite format 3\0", 16);
    QTest::newRow("header and noise")
        << QByteArray(QByteArray("SQLite format 3\0", 16) + QByteArray(4080, 'x'));
}

void TstMigrations::refusesWhatIsNotOurs()
{
    QFETCH(QByteArray, content);
    const QString file = path("foreign.rickyard");
    QFile::remove(file);
    writeBytes(file, content);
    const auto opened = openYardFile(file, kNow);
    QVERIFY(!opened.ok());
    QVERIFY2(opened.message().contains(QStringLiteral("left as it is")),
             qPrintable(opened.message()));
    QCOMPARE(bytesOf(file), content);
}

void TstMigrations::refusesANewerFile()
{
    const QString file = path("newer.rickyard");
    {
        auto opened = openYardFile(file, kNow);
        QVERIFY(opened.ok());
        QVERIFY(opened.value().database->execute(
            QStringLiteral("PRAGMA user_version = %1").arg(newestVersion() + 1)));
    }
    const auto again = openYardFile(file, kNow);
    QVERIFY(!again.ok());
    QVERIFY2(again.message().contains(QStringLiteral("newer Rickyard")),
             qPrintable(again.message()));
}

void TstMigrations::secondWriterReadsOnly()
{
    const QString file = path("two.rickyard");
    auto first = openYardFile(file, kNow);
    QVERIFY(first.ok());
    QVERIFY(!first.value().readOnly);
    auto second = openYardFile(file, kNow);
    QVERIFY2(second.ok(), qPrintable(second.message()));
    QVERIFY(second.value().readOnly);
    QVERIFY(second.value().notice.contains(QStringLiteral("Another window")));
    QVERIFY(!second.value().database->execute(QStringLiteral("DELETE FROM species")));
}

// Every version that ever shipped opens, and a backup stands beside it. The fixtures are made by
// the frozen migrations themselves.
void TstMigrations::upgradesFromEveryVersion()
{
    QVERIFY(newestVersion() >= 1);
    for (int version = 1; version <= newestVersion(); ++version) {
        const QString file = m_folder.filePath(QStringLiteral("v%1.rickyard").arg(version));
        {
            auto database = Database::open(file, OpenMode::ReadWrite);
            QVERIFY(database.ok());
            QVERIFY(migrate(*database.value(), version).ok());
            QCOMPARE(versionOf(*database.value()).value_or(-1), version);
        }
        auto opened = openYardFile(file, kNow);
        QVERIFY2(opened.ok(), qPrintable(opened.message()));
        QCOMPARE(versionOf(*opened.value().database).value_or(-1), newestVersion());
        QVERIFY(opened.value().database->integrityProblems().isEmpty());
        QCOMPARE(backupsOf(file).isEmpty(), version == newestVersion());
    }
}

// Yards as earlier versions left them (cut from the invented demo): every record is still there.
void TstMigrations::keepsTheRecordsOfEveryVersion()
{
    const QDir yards(QStringLiteral(RICKYARD_TEST_DATA "/yards"));
    for (int version = 1; version <= newestVersion(); ++version) {
        const QString name = QStringLiteral("v%1.rickyard").arg(version);
        QVERIFY2(yards.exists(name), "add a fixture of every version that ships");
        const QString copy = m_folder.filePath(QString(QStringLiteral("old-") + name));
        QVERIFY(QFile::copy(yards.filePath(name), copy));
        QFile::setPermissions(copy, QFile::ReadOwner | QFile::WriteOwner);
        auto opened = openYardFile(copy, kNow);
        QVERIFY2(opened.ok(), qPrintable(opened.message()));
        QCOMPARE(versionOf(*opened.value().database).value_or(-1), newestVersion());
        const auto books = readAll(*opened.value().database);
        QVERIFY(books.ok());
        const QPair<domain::TableId, int> counts[] = {
            {domain::TableId::Species, 28},  {domain::TableId::Lot, 17},
            {domain::TableId::Cook, 3},      {domain::TableId::Feed, 61},
            {domain::TableId::Movement, 93}, {domain::TableId::Weather, 24},
            {domain::TableId::Visit, 20}};
        for (const auto &[table, count] : counts)
            QCOMPARE(domain::countOf(books.value(), table), count);
        QCOMPARE(domain::countOf(books.value(), domain::TableId::CookChange), version < 3 ? 0 : 1);
        QCOMPARE(domain::countOf(books.value(), domain::TableId::CheckReading),
                 version < 4 ? 0 : 2);
        for (const domain::TableId table : {domain::TableId::Photo, domain::TableId::AshLoad,
                                            domain::TableId::Override, domain::TableId::BusyTime})
            QCOMPARE(domain::countOf(books.value(), table), version < 4 ? 0 : 1);
        QCOMPARE(books.value().tasks.value(6).readingPoints, version < 4 ? 1 : 8);
        QCOMPARE(books.value().tasks.value(6).people, version < 4 ? 1 : 2);
        QCOMPARE(books.value().yard().seasonMonth.has_value(), version >= 4);
        QCOMPARE(books.value().yard().mark.size(), 32); // of hex
        QCOMPARE(books.value().events.value(1).series.isEmpty(), version < 4);
        QCOMPARE(books.value().yard().falseAlarmCooks, 200);
        QCOMPARE(std::any_of(books.value().findings.cbegin(), books.value().findings.cend(),
                             [](const domain::Finding &finding) {
                                 return finding.state == domain::FindingState::Nothing;
                             }),
                 version >= 3);
    }
}

RICKYARD_TEST(TstMigrations)
#include "tst_migrations.moc"
