// The demo's story, computed again from its records.
#include "models/domain/answers/answers.h"
#include "models/domain/fire/trace_codec.h"
#include "models/domain/records/rules.h"
#include "models/domain/wood/delivery.h"
#include "models/storage/backup.h"
#include "tests/app/demo_yard.h"
#include "tests/support/registry.h"

#include <algorithm>

namespace rickyard {

using namespace domain;

class TstDemo : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void initTestCase()
    {
        m_books = test::demoBooks(m_folder, app::kDemoSeed, test::demoNow());
        m_answers = answersOf(m_books, test::demoNow());
    }
    void saysThatItIsInvented();
    void hasTwoYearsOfRecords();
    void everyRowIsAccepted();
    void fileIsWhole();
    void namesTheMiddlePitOnly();
    void anEventIsAtRisk();
    void twoTasksAreOverdue();
    void oneDeliveryIsShortAndOneIsWet();
    void ledgerMirrorsFeedsAndLots();
    void noRickIsOverdrawn();
    void tracesDecode();
    void weatherIsPlausible();
    void sameSeedSameBooks();
    void otherDatesAndSeedsTellTheSameStory_data();
    void otherDatesAndSeedsTellTheSameStory();
    void answersThatNobodyWaitsForStop();
    void refusesAFileThatIsThere();

private:
    QTemporaryDir m_folder;
    Books m_books;
    Answers m_answers;
};

namespace {

QVector<TaskDue> overdue(const Answers &answers)
{
    QVector<TaskDue> list;
    for (const TaskDue &due : answers.upkeep.tasks)
        if (due.overdue)
            list << due;
    return list;
}

QStringList namedPits(const Books &books, const Answers &answers)
{
    QStringList names;
    for (const PitFuel &pit : answers.fuel.pits)
        if (pit.named())
            names << books.pits.value(pit.pit).name;
    return names;
}

} // namespace

void TstDemo::saysThatItIsInvented()
{
    QVERIFY(m_books.yard().invented);
    QVERIFY(m_books.yard().name.contains(QStringLiteral("invented")));
    QCOMPARE(m_books.yard().timeZone, QStringLiteral("America/Chicago"));
    for (const Weather &w : m_books.weather)
        QCOMPARE(w.source, QStringLiteral("invented"));
}

void TstDemo::hasTwoYearsOfRecords()
{
    QCOMPARE(m_books.pits.size(), 3);
    QCOMPARE(m_books.suppliers.size(), 3);
    QVERIFY2(m_books.cooks.size() >= 110 && m_books.cooks.size() <= 130,
             qPrintable(QString::number(m_books.cooks.size())));
    QVERIFY2(m_books.lots.size() >= 13 && m_books.lots.size() <= 19,
             qPrintable(QString::number(m_books.lots.size())));
    QVERIFY(m_books.feeds.size() > 12 * m_books.cooks.size());
    QVERIFY(m_books.weather.size() >= 17520);
    const auto ahead = std::count_if(m_books.events.begin(), m_books.events.end(),
                                     [](const Event &e) { return e.start > test::demoNow(); });
    QCOMPARE(ahead, 8);
    QCOMPARE(m_books.crewTimes.size(), 4);
    QCOMPARE(m_books.knownGood.size(), 1);
    QVERIFY(m_books.findings.size() >= 3);
    QMap<RecordId, int> cooks;
    for (const Cook &cook : m_books.cooks) {
        ++cooks[cook.pit];
        QVERIFY(*cook.fireOut < test::demoNow());
    }
    for (const Pit &pit : m_books.pits)
        QVERIFY2(cooks.value(pit.id) >= 30, qPrintable(pit.name));
    // Sizes differ for real: half again at the least.
    QVERIFY(m_books.pits.value(2).diameter.toDouble() >
            1.4 * m_books.pits.value(1).diameter.toDouble());
    QVERIFY(m_books.pits.value(3).length.toDouble() >
            1.25 * m_books.pits.value(2).length.toDouble());
}

void TstDemo::everyRowIsAccepted()
{
    for (TableId table : tablesInOrder())
        for (RecordId id : idsOf(m_books, table)) {
            const Problems problems = check(m_books, *rowOf(m_books, table, id));
            QVERIFY2(problems.isEmpty(),
                     qPrintable(QString(specOf(table).key + QLatin1Char(' ') + QString::number(id) +
                                        QLatin1Char(' ') + joined(problems))));
        }
}

void TstDemo::fileIsWhole()
{
    const QString path = m_folder.filePath(
        QStringLiteral("%1-%2.rickyard").arg(app::kDemoSeed).arg(test::demoNow().seconds()));
    auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc());
    QVERIFY(yard.ok());
    const auto whole = yard.value()->readFile(storage::checkWhole);
    QVERIFY2(whole.ok(), qPrintable(whole.message()));
}

void TstDemo::namesTheMiddlePitOnly()
{
    QCOMPARE(namedPits(m_books, m_answers), QStringList{QStringLiteral("Deacon")});
    for (const PitFuel &pit : m_answers.fuel.pits) {
        QVERIFY(pit.cooksEver >= 10);
        if (pit.named()) {
            QVERIFY(pit.climb && pit.climb->percent > 12 && pit.climb->percent < 40);
            QVERIFY(pit.climb->since != 0 && pit.raisedBy != 0);
        }
    }
    QCOMPARE(m_answers.fuel.headline.standing, Standing::Act);
}

void TstDemo::anEventIsAtRisk()
{
    const WoodAnswer &wood = m_answers.wood;
    QVERIFY(wood.firstShortEvent != 0);
    QVERIFY(m_books.events.value(wood.firstShortEvent).start > test::demoNow());
    QVERIFY(wood.orderBy.isValid());
    QVERIFY(wood.units > 0);
    // It is not the first event: there is wood for the first weekend, and time to order.
    QVERIFY(!wood.uses.first().shortOf);
    QVERIFY(wood.stock.readyHeat > Heat());
    QVERIFY(wood.stock.waitingHeat > Heat());
}

void TstDemo::twoTasksAreOverdue()
{
    QStringList names;
    for (const TaskDue &due : overdue(m_answers))
        names << QString(m_books.tasks.value(due.task).name + QStringLiteral(" / ") +
                         m_books.pits.value(due.pit).name);
    names.sort();
    QCOMPARE(names, QStringList({QStringLiteral("Gasket test / Deacon"),
                                 QStringLiteral("Grease drain and bucket / Barge")}));
    QVERIFY(m_books.visits.size() > 400);
}

void TstDemo::oneDeliveryIsShortAndOneIsWet()
{
    int shortOnes = 0;
    int wetOnes = 0;
    for (const Lot &lot : m_books.lots) {
        const DeliveryCheck checked = checkDelivery(m_books, lot, wordingOf(m_books));
        if (checked.shortBy && *checked.shortBy > 0.2) {
            ++shortOnes;
            QVERIFY(qAbs(number(*lot.paidCount) - 1.0) < 1e-5); // whole millilitres
            QVERIFY(*checked.shortBy > 0.22 && *checked.shortBy < 0.28);
        }
        if (checked.moisture && *checked.moisture > Moisture::ofBase(30000)) {
            ++wetOnes;
            QVERIFY(qAbs(checked.moisture->base() - 31000) < 300);
            QCOMPARE(lot.promisedMoisture->base(), 20000);
            QVERIFY(checked.wetter.value_or(false));
        }
    }
    QCOMPARE(shortOnes, 1);
    QCOMPARE(wetOnes, 1);
}

void TstDemo::ledgerMirrorsFeedsAndLots()
{
    qsizetype received = 0;
    QSet<RecordId> feeds;
    for (const Movement &m : m_books.movements) {
        received += m.kind == MovementKind::Received ? 1 : 0;
        if (m.feed)
            feeds.insert(*m.feed);
    }
    QCOMPARE(received, m_books.lots.size());
    QCOMPARE(feeds.size(), m_books.feeds.size());
}

void TstDemo::noRickIsOverdrawn()
{
    for (const LotStock &lot : m_answers.wood.stock.lots)
        QVERIFY2(lot.dryMass >= Mass(), qPrintable(m_books.lots.value(lot.lot).name));
}

void TstDemo::tracesDecode()
{
    QVERIFY(m_books.traces.size() > m_books.cooks.size() / 2);
    for (const Trace &trace : m_books.traces) {
        const auto points = decodeTrace(trace.block);
        QVERIFY(points.ok());
        QCOMPARE(points.value().size(), trace.points);
        const Cook cook = m_books.cooks.value(trace.cook);
        QVERIFY(trace.start + Duration::ofBase(points.value().last().offset) <= *cook.fireOut);
    }
}

void TstDemo::weatherIsPlausible()
{
    double july = 0;
    double january = 0;
    int inJuly = 0;
    int inJanuary = 0;
    int wet = 0;
    for (const Weather &w : m_books.weather) {
        QVERIFY(*w.dewPoint <= *w.temperature);
        const int month = QDateTime::fromSecsSinceEpoch(w.time.seconds(), Qt::UTC).date().month();
        if (month == 7) {
            july += celsius(*w.temperature);
            ++inJuly;
        } else if (month == 1) {
            january += celsius(*w.temperature);
            ++inJanuary;
        }
        wet += w.rain && w.rain->base() > 0 ? 1 : 0;
    }
    july /= inJuly;
    january /= inJanuary;
    QVERIFY2(july > 25 && july < 32, qPrintable(QString::number(july)));
    QVERIFY2(january > 4 && january < 13, qPrintable(QString::number(january)));
    const double share = static_cast<double>(wet) / static_cast<double>(m_books.weather.size());
    QVERIFY2(share > 0.02 && share < 0.08, qPrintable(QString::number(share)));
}

void TstDemo::sameSeedSameBooks()
{
    QTemporaryDir other;
    const Books again = test::demoBooks(other, app::kDemoSeed, test::demoNow());
    for (TableId table : tablesInOrder()) {
        QCOMPARE(idsOf(again, table), idsOf(m_books, table));
        for (RecordId id : idsOf(m_books, table))
            QVERIFY2(rowOf(again, table, id) == rowOf(m_books, table, id),
                     qPrintable(specOf(table).key));
    }
}

void TstDemo::otherDatesAndSeedsTellTheSameStory_data()
{
    QTest::addColumn<quint64>("seed");
    QTest::addColumn<QDateTime>("now");
    const auto utc = [](int y, int m, int d, int h) {
        return QDateTime(QDate(y, m, d), QTime(h, 0), Qt::UTC);
    };
    QTest::newRow("a Saturday in July") << app::kDemoSeed << utc(2027, 7, 10, 18);
    QTest::newRow("a leap day") << app::kDemoSeed << utc(2028, 2, 29, 3);
    QTest::newRow("a Monday, clock change week") << app::kDemoSeed << utc(2026, 3, 9, 12);
    QTest::newRow("another seed") << quint64{7} << utc(2026, 11, 25, 14);
}

void TstDemo::otherDatesAndSeedsTellTheSameStory()
{
    QFETCH(quint64, seed);
    QFETCH(QDateTime, now);
    const Instant at = Instant::ofSeconds(now.toSecsSinceEpoch());
    const Books books = test::demoBooks(m_folder, seed, at);
    QVERIFY(books.cooks.size() > 100);
    const Answers answers = answersOf(books, at);
    QCOMPARE(namedPits(books, answers), QStringList{QStringLiteral("Deacon")});
    QVERIFY(answers.wood.firstShortEvent != 0);
    QVERIFY(!answers.wood.uses.first().shortOf);
    QCOMPARE(overdue(answers).size(), 2);
}

// What was not begun when the window closed is left out.
void TstDemo::answersThatNobodyWaitsForStop()
{
    int asked = 0;
    const Answers stopped = answersOf(m_books, test::demoNow(), [&asked] { return ++asked > 1; });
    QCOMPARE(stopped.fuel.pits.size(), m_answers.fuel.pits.size());
    QVERIFY(!stopped.seasoning.isEmpty());
    QVERIFY(stopped.wood.stock.lots.isEmpty());
    QVERIFY(stopped.upkeep.tasks.isEmpty());
}

void TstDemo::refusesAFileThatIsThere()
{
    const QString path = m_folder.filePath(QStringLiteral("there.txt"));
    QFile file(path);
    QVERIFY(file.open(QIODevice::WriteOnly) && file.write("mine") == 4);
    file.close();
    QVERIFY(!app::makeDemoFile(path, 1, test::demoNow()).ok());
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(file.readAll(), QByteArray("mine"));
}

RICKYARD_TEST(TstDemo)

} // namespace rickyard

#include "tst_demo.moc"
