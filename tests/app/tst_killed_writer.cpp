// A process killed in the middle of its writes loses nothing that it had confirmed.
#include "models/domain/wood/starter_species.h"
#include "models/storage/backup.h"
#include "models/workspace/commands/verbs.h"
#include "tests/support/registry.h"

#include <QDateTime>
#include <QProcess>
#include <QRandomGenerator>
#include <QTemporaryDir>
#include <QTest>

#include <csignal>

namespace rickyard {

using namespace domain;

class TstKilledWriter : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void losesNoConfirmedFeed();
};

namespace {

constexpr int kKills = 30;

// A yard with one pit, one lot and a burning cook.
bool makeYard(const QString &path)
{
    auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc());
    if (!yard)
        return false;
    commands::Verbs verbs(*yard.value());
    Pit pit;
    pit.name = QStringLiteral("Pit");
    pit.diameter = Length::ofBase(600000);
    pit.length = Length::ofBase(1500000);
    const auto pitId = verbs.add(pit);
    const auto species = verbs.add(starterSpecies().first());
    if (!pitId || !species)
        return false;
    Lot lot;
    lot.name = QStringLiteral("Lot");
    lot.species = species.value();
    lot.received = verbs.now() - Duration::ofBase(86400);
    lot.measuredBy = Measure::Claimed;
    lot.paidCount = Plain::ofBase(1000000);
    lot.promisedMoisture = Moisture::ofBase(18000);
    lot.splitMass = massFromPounds(3);
    Cook cook;
    cook.pit = pitId.value();
    cook.lit = verbs.now() - Duration::ofBase(3600);
    return verbs.receive(lot).ok() && verbs.lightCook(cook).ok();
}

// Runs the writer, kills it after `wait` milliseconds, and gives the ids that it confirmed. The
// last line may have been cut by the kill: only whole lines count.
QVector<RecordId> killedAfter(const QString &path, int wait, QString &problem)
{
    QProcess writer;
    writer.start(QStringLiteral(RICKYARD_WRITER), {path, QStringLiteral("100000")});
    if (!writer.waitForStarted() || !writer.waitForReadyRead(20000)) {
        problem = QString(QStringLiteral("the writer did not begin: ") +
                          QString::fromUtf8(writer.readAllStandardError()));
        writer.kill();
        writer.waitForFinished();
        return {};
    }
    QTest::qWait(wait);
    ::kill(static_cast<pid_t>(writer.processId()), SIGKILL);
    writer.waitForFinished();
    if (writer.exitStatus() != QProcess::CrashExit)
        problem = QStringLiteral("the writer ended by itself");
    const QByteArray text = writer.readAllStandardOutput();
    QVector<RecordId> ids;
    const QList<QByteArray> lines = text.left(text.lastIndexOf('\n') + 1).split('\n');
    for (const QByteArray &line : lines)
        if (!line.isEmpty())
            ids << line.toLongLong();
    return ids;
}

} // namespace

void TstKilledWriter::losesNoConfirmedFeed()
{
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("yard.rickyard"));
    QVERIFY(makeYard(path));
    QRandomGenerator chance(4711);
    QVector<RecordId> confirmed;
    for (int kill = 0; kill < kKills; ++kill) {
        QString problem;
        confirmed << killedAfter(path, chance.bounded(0, 60), problem);
        QVERIFY2(problem.isEmpty(), qPrintable(problem));
        auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc());
        QVERIFY2(yard.ok(), qPrintable(yard.message()));
        QVERIFY2(!yard.value()->readOnly(), qPrintable(yard.value()->notice()));
        const auto whole = yard.value()->readFile(storage::checkWhole);
        QVERIFY2(whole.ok(), qPrintable(whole.message()));
        const Books &books = yard.value()->books();
        for (RecordId id : confirmed)
            QVERIFY2(books.feeds.contains(id), qPrintable(QString::number(id)));
        // Each feed has its ledger entry: one transaction holds both.
        QSet<RecordId> entered;
        for (const Movement &m : books.movements)
            if (m.feed)
                entered.insert(*m.feed);
        QCOMPARE(entered.size(), books.feeds.size());
        // At the most the one that was being written is there without having been confirmed.
        QVERIFY(books.feeds.size() <= confirmed.size() + kill + 1);
    }
    QVERIFY(confirmed.size() >= kKills);
}

RICKYARD_TEST(TstKilledWriter)

} // namespace rickyard

#include "tst_killed_writer.moc"
