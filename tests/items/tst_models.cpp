// Every item model under the model tester, through additions, edits, deletions, undo and resets.
#include "models/items/derived_model.h"
#include "models/items/record_model.h"
#include "models/items/search_proxy.h"
#include "models/workspace/commands/verbs.h"
#include "tests/support/registry.h"

#include <QAbstractItemModelTester>
#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::domain;
using items::RecordModel;
using items::SearchProxy;

namespace {
const QDateTime kNowUtc(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);
const Instant kNow = Instant::ofSeconds(kNowUtc.toSecsSinceEpoch());
} // namespace

class TstModels : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init();
    void everyTable_data();
    void everyTable();
    void followsChanges();
    void manyChangesReset();
    void searchFindsWordsInAnyColumn();
    void missingSortsLast();
    void derivedRows();

private:
    RecordId addSpecies(const QString &name, qint64 gravity, std::optional<Ratio> ash = {});
    std::unique_ptr<QTemporaryDir> m_folder;
    std::unique_ptr<workspace::Workspace> m_workspace;
    std::unique_ptr<commands::Verbs> m_verbs;
};

void TstModels::init()
{
    m_verbs.reset();
    m_workspace.reset();
    m_folder = std::make_unique<QTemporaryDir>();
    m_workspace = std::move(
        workspace::Workspace::open(m_folder->filePath(QStringLiteral("y.rickyard")), kNowUtc)
            .value());
    m_verbs = std::make_unique<commands::Verbs>(*m_workspace, [] { return kNow; });
}

RecordId TstModels::addSpecies(const QString &name, qint64 gravity, std::optional<Ratio> ash)
{
    Species s;
    s.name = name;
    s.basicGravity = Plain::ofBase(gravity);
    s.ash = ash;
    return m_verbs->add(s).value();
}

void TstModels::everyTable_data()
{
    QTest::addColumn<int>("table");
    for (TableId table : tablesInOrder())
        QTest::newRow(qPrintable(specOf(table).key)) << static_cast<int>(table);
}

void TstModels::everyTable()
{
    QFETCH(int, table);
    RecordModel model(*m_workspace, static_cast<TableId>(table));
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
    QCOMPARE(model.rowCount(),
             static_cast<int>(countOf(m_workspace->books(), static_cast<TableId>(table))));
    for (int c = 0; c < model.columnCount(); ++c)
        QVERIFY(!model.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty());
}

void TstModels::followsChanges()
{
    RecordModel model(*m_workspace, TableId::Species);
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
    SearchProxy proxy;
    proxy.setSourceModel(&model);
    QAbstractItemModelTester proxyTester(&proxy,
                                         QAbstractItemModelTester::FailureReportingMode::QtTest);
    const RecordId oak = addSpecies(QStringLiteral("Oak"), 600000);
    const RecordId ash = addSpecies(QStringLiteral("Ash"), 550000);
    QCOMPARE(model.rowCount(), 2);
    const int name = model.columnOfField(QStringLiteral("name"));
    QCOMPARE(model.index(model.rowOfId(oak), name).data().toString(), QStringLiteral("Oak"));
    Species edited = m_workspace->books().species.value(oak);
    edited.name = QStringLiteral("Post oak");
    QVERIFY(m_verbs->edit(edited).ok());
    QCOMPARE(model.index(model.rowOfId(oak), name).data().toString(), QStringLiteral("Post oak"));
    QVERIFY(m_verbs->remove(TableId::Species, {oak}).ok());
    QCOMPARE(model.rowCount(), 1);
    QCOMPARE(model.idAt(0), ash);
    QVERIFY(m_verbs->undo().ok());
    QCOMPARE(model.idAt(0), oak);
    QCOMPARE(model.index(0, name).data(Qt::AccessibleTextRole).toString(),
             QStringLiteral("Name: Post oak"));
}

void TstModels::manyChangesReset()
{
    RecordModel model(*m_workspace, TableId::Weather);
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
    QVector<Row> rows;
    for (int i = 0; i < 500; ++i) {
        Weather w;
        w.place = QStringLiteral("Field");
        w.time = Instant::ofSeconds(1700000000 + 3600 * i);
        w.wind = Speed::ofBase(1000);
        rows << toRow(w);
    }
    QVERIFY(m_verbs->putAll(rows, QStringLiteral("import")).ok());
    QCOMPARE(model.rowCount(), 500);
    QVERIFY(m_verbs->undo().ok());
    QCOMPARE(model.rowCount(), 0);
}

void TstModels::searchFindsWordsInAnyColumn()
{
    addSpecies(QStringLiteral("Post oak"), 600000);
    addSpecies(QStringLiteral("Red oak"), 560000);
    addSpecies(QStringLiteral("Pecan"), 600000);
    RecordModel model(*m_workspace, TableId::Species);
    SearchProxy proxy;
    proxy.setSourceModel(&model);
    proxy.setWords(QStringLiteral("OAK 0.60"));
    QCOMPARE(proxy.rowCount(), 1);
    proxy.setWords(QStringLiteral("oak"));
    QCOMPARE(proxy.rowCount(), 2);
    proxy.setWords(QString());
    QCOMPARE(proxy.rowCount(), 3);
}

void TstModels::missingSortsLast()
{
    addSpecies(QStringLiteral("A"), 600000, Ratio::ofBase(9000));
    addSpecies(QStringLiteral("B"), 600000);
    addSpecies(QStringLiteral("C"), 600000, Ratio::ofBase(3000));
    RecordModel model(*m_workspace, TableId::Species);
    SearchProxy proxy;
    proxy.setSourceModel(&model);
    const int ash = model.columnOfField(QStringLiteral("ash"));
    const auto order = [&] {
        QString text;
        for (int r = 0; r < proxy.rowCount(); ++r)
            text += proxy.index(r, model.columnOfField(QStringLiteral("name"))).data().toString();
        return text;
    };
    proxy.sort(ash, Qt::AscendingOrder);
    QCOMPARE(order(), QStringLiteral("CAB"));
    proxy.sort(ash, Qt::DescendingOrder);
    QCOMPARE(order(), QStringLiteral("ACB"));
}

void TstModels::derivedRows()
{
    items::DerivedModel model({{QStringLiteral("Pit"), false}, {QStringLiteral("Used"), true}});
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
    model.setRows({{{TableId::Pit, 3},
                    {{QStringLiteral("Big"), {}, {}}, {QStringLiteral("12 lb"), 12.0, {}}},
                    Standing::Act}});
    QCOMPARE(model.rowCount(), 1);
    QCOMPARE(model.linkAt(0).id, 3);
    QCOMPARE(model.index(0, 1).data(items::SortRole).toDouble(), 12.0);
    QCOMPARE(model.index(0, 1).data(Qt::AccessibleTextRole).toString(),
             QStringLiteral("Used: 12 lb"));
}

RICKYARD_TEST(TstModels)
#include "tst_models.moc"
