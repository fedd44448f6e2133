// The busy times of a calendar are replaced as one step: undone and done again as one, and the file
// equals the books each time. Invented data.
#include "models/exchange/ics/calendar_read.h"
#include "models/workspace/commands/verbs.h"
#include "tests/support/registry.h"

#include <QTemporaryDir>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;

namespace {

const QDateTime kOpened(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);
const Instant kStart = Instant::ofSeconds(kOpened.toSecsSinceEpoch());

BusyTime busyTime(const char *uid, int hour, const char *source = "Ours")
{
    BusyTime busy;
    busy.uid = QString::fromLatin1(uid);
    busy.source = QString::fromLatin1(source);
    busy.start = kStart + Duration::ofBase(hour * 3600);
    busy.end = busy.start + Duration::ofBase(3600);
    busy.summary = QStringLiteral("Taken");
    return busy;
}

} // namespace

class TstBusyTimes : public QObject
{
    Q_OBJECT

private slots:
    void replacedInOneStep()
    {
        QTemporaryDir folder;
        const QString path = folder.filePath(QStringLiteral("y.rickyard"));
        auto opened = workspace::Workspace::open(path, kOpened);
        QVERIFY(opened);
        commands::Verbs verbs(*opened.value(), [] { return kStart; });
        const QString ours = QStringLiteral("Ours");
        QVERIFY(verbs.replaceBusyTimes(ours, {busyTime("a", 1), busyTime("b", 2)}, {}));
        const Books first = verbs.books();
        QCOMPARE(first.busyTimes.size(), 2);
        QCOMPARE(verbs.undoStack().undoText(), QStringLiteral("import busy times of Ours"));

        BusyTime moved = first.busyTimes.first();
        moved.end = moved.end + Duration::ofBase(600);
        const RecordId gone = first.busyTimes.last().id;
        QVERIFY(verbs.replaceBusyTimes(ours, {moved, busyTime("c", 3)}, {gone}));
        const Books second = verbs.books();
        QCOMPARE(second.busyTimes.size(), 2);
        QVERIFY(!second.busyTimes.contains(gone));
        QCOMPARE(verbs.undoStack().count(), 2);
        // Nothing new makes no step.
        QVERIFY(verbs.replaceBusyTimes(ours, {moved}, {}));
        QCOMPARE(verbs.undoStack().count(), 2);

        const auto sameAs = [&verbs, &path](const Books &books) {
            auto again = workspace::Workspace::open(path, kOpened, storage::OpenMode::ReadOnly);
            return idsOf(verbs.books(), TableId::BusyTime) == idsOf(books, TableId::BusyTime) &&
                   std::all_of(
                       books.busyTimes.begin(), books.busyTimes.end(), [&](const BusyTime &busy) {
                           const auto row = rowOf(books, TableId::BusyTime, busy.id);
                           return rowOf(verbs.books(), TableId::BusyTime, busy.id) == row &&
                                  rowOf(again.value()->books(), TableId::BusyTime, busy.id) == row;
                       });
        };
        QVERIFY(sameAs(second));
        QVERIFY(verbs.undo());
        QVERIFY(sameAs(first));
        QVERIFY(verbs.redo());
        QVERIFY(sameAs(second));
        QVERIFY(verbs.undo());
        QVERIFY(verbs.undo());
        QVERIFY(verbs.books().busyTimes.isEmpty());
    }

    void anotherCalendarIsLeftAlone()
    {
        QTemporaryDir folder;
        auto opened =
            workspace::Workspace::open(folder.filePath(QStringLiteral("y.rickyard")), kOpened);
        QVERIFY(opened);
        commands::Verbs verbs(*opened.value(), [] { return kStart; });
        QVERIFY(verbs.replaceBusyTimes(QStringLiteral("Theirs"), {busyTime("a", 1, "Theirs")}, {}));
        const RecordId theirs = verbs.books().busyTimes.firstKey();
        QVERIFY(!verbs.replaceBusyTimes(QStringLiteral("Ours"), {}, {theirs}));
        QVERIFY(!verbs.replaceBusyTimes(QStringLiteral("Ours"), {busyTime("b", 1, "Theirs")}, {}));
        BusyTime backwards = busyTime("c", 1);
        backwards.end = backwards.start;
        QVERIFY(!verbs.replaceBusyTimes(QStringLiteral("Ours"), {backwards}, {}));
        QCOMPARE(verbs.books().busyTimes.size(), 1);
    }
};

RICKYARD_TEST(TstBusyTimes)
#include "tst_busy_times.moc"
