// Calendars by the command line: what goes out can be read again, what comes in replaces what came
// before under the same name, and a bad file changes nothing. Demo yard, invented.
#include "app/cli/calendar_kind.h"
#include "app/cli/command_line.h"
#include "models/domain/answers/answers.h"
#include "models/exchange/ics/calendar_of.h"
#include "tests/app/demo_yard.h"
#include "tests/support/registry.h"

#include <QFile>

namespace rickyard {

using namespace domain;

namespace {

// What a calendar's entry of a table holds, by the calendar's own list.
QVector<exchange::CalendarEntry> entriesOf(const exchange::Calendar &calendar, TableId table)
{
    QVector<exchange::CalendarEntry> found;
    for (const exchange::CalendarEntry &entry : calendar.entries)
        if (entry.table == table)
            found << entry;
    return found;
}

exchange::Calendar calendarIn(const Books &books, Instant now)
{
    const Wording wording = wordingOf(books);
    return exchange::calendarOf(
        books, upkeepAnswer(books, fuelAnswer(books, now, wording), now, wording), now);
}

} // namespace

class TstCalendarKind : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void initTestCase()
    {
        m_yard = m_folder.filePath(QStringLiteral("demo.rickyard"));
        QVERIFY2(run({QStringLiteral("demo"), m_yard}).code == 0, "demo");
    }

    void holdsWhatIsPlanned()
    {
        const Books books = booksOf(m_yard);
        const Instant now = test::demoNow();
        const exchange::Calendar calendar = calendarIn(books, now);
        qsizetype events = 0;
        for (const Event &event : books.events) {
            if (event.end <= now || event.state == EventState::Done)
                continue;
            ++events;
            qsizetype drives = 0;
            for (const auto &entry : entriesOf(calendar, TableId::Event))
                if (entry.record == event.id && entry.part.isEmpty()) {
                    QCOMPARE(entry.summary, event.name);
                    QCOMPARE(entry.start, event.start);
                    QCOMPARE(entry.end, event.end);
                } else if (entry.record == event.id) {
                    ++drives;
                    QCOMPARE(entry.end - entry.start, *event.travel);
                    QVERIFY(entry.end == event.start || entry.start == event.end);
                }
            QCOMPARE(drives, event.travel && event.travel->base() > 0 ? 2 : 0);
        }
        QVERIFY(events > 0);
        QVERIFY(entriesOf(calendar, TableId::Event).size() >= events);
        qsizetype cooks = 0;
        for (const PlannedCook &cook : books.plannedCooks)
            cooks += cook.light + cook.length > now ? 1 : 0;
        QVERIFY(cooks > 0);
        QCOMPARE(entriesOf(calendar, TableId::PlannedCook).size(), cooks);
        const auto tasks = entriesOf(calendar, TableId::UpkeepTask);
        QVERIFY(!tasks.isEmpty());
        for (const auto &entry : tasks) {
            QVERIFY(entry.kind == exchange::CalendarEntry::Kind::ToDo);
            QCOMPARE(entry.priority, 10 - books.tasks.value(entry.record).priority);
            for (const Visit &visit : books.visits)
                QVERIFY(visit.task != entry.record || visit.state != VisitState::Placed ||
                        visit.start <= now);
        }
    }

    void whatIsCalledOffIsSaid()
    {
        Books books = booksOf(m_yard);
        const Instant now = test::demoNow();
        for (Event &event : books.events)
            event.state = EventState::Cancelled;
        for (const auto &entry : entriesOf(calendarIn(books, now), TableId::Event))
            QVERIFY(entry.state == exchange::CalendarEntry::State::Cancelled);
        for (const auto &entry : entriesOf(calendarIn(books, now), TableId::PlannedCook))
            if (books.plannedCooks.value(entry.record).event)
                QVERIFY(entry.state == exchange::CalendarEntry::State::Cancelled);
    }

    void goesOutAndComesIn()
    {
        const QString path = m_folder.filePath(QStringLiteral("out.ics"));
        const Ran out =
            run(QStringList{QStringLiteral("export"), QStringLiteral("calendar"), path} + m_then);
        QVERIFY2(out.code == 0, qPrintable(out.err));
        // The same moment gives the same bytes, on the terminal as well.
        const Ran shown =
            run(QStringList{QStringLiteral("export"), QStringLiteral("calendar")} + m_then);
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QByteArray bytes = file.readAll();
        QCOMPARE(shown.out.toUtf8(), bytes);
        QVERIFY(bytes.startsWith("BEGIN:VCALENDAR\r\n"));
        // It is there already.
        QCOMPARE(
            run(QStringList{QStringLiteral("export"), QStringLiteral("calendar"), path} + m_then)
                .code,
            1);

        const QStringList in =
            QStringList{QStringLiteral("import"), QStringLiteral("calendar"), path,
                        QStringLiteral("--source"), QStringLiteral("Our own plans")} +
            m_then;
        const Ran first = run(in);
        QVERIFY2(first.code == 0, qPrintable(first.err));
        const Books books = booksOf(m_yard);
        QVERIFY(!books.busyTimes.isEmpty());
        QVERIFY(first.out.contains(
            QStringLiteral("%1 added, 0 changed, 0 taken away").arg(books.busyTimes.size())));
        for (const BusyTime &busy : books.busyTimes)
            QCOMPARE(busy.source, QStringLiteral("Our own plans"));
        const Ran again = run(in);
        QVERIFY(again.out.contains(QStringLiteral("0 added, 0 changed, 0 taken away, %1 the same")
                                       .arg(books.busyTimes.size())));

        // An empty calendar of that name takes them away; the file's name names it elsewhere.
        const QString empty = write("empty.ics", "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n");
        QCOMPARE(
            run(QStringList{QStringLiteral("import"), QStringLiteral("calendar"), empty} + m_then)
                .code,
            0);
        QCOMPARE(booksOf(m_yard).busyTimes.size(), books.busyTimes.size());
        QStringList emptied = in;
        emptied[2] = empty;
        const Ran gone = run(emptied);
        QVERIFY(gone.out.contains(QStringLiteral("%1 taken away").arg(books.busyTimes.size())));
        QVERIFY(booksOf(m_yard).busyTimes.isEmpty());
    }

    void badFilesChangeNothing()
    {
        const QString bad =
            write("bad.ics", "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\n"
                             "DTSTART:20261205T100000Z\r\nDTEND:20261205T110000Z\r\n"
                             "RRULE:FREQ=SOMETIMES\r\nEND:VEVENT\r\n"
                             "BEGIN:VEVENT\r\nUID:b\r\nDTSTART:20261205T100000Z\r\n"
                             "DTEND:20261205T110000Z\r\nEND:VEVENT\r\n"
                             "END:VCALENDAR\r\n");
        const QStringList in =
            QStringList{QStringLiteral("import"), QStringLiteral("calendar"), bad} + m_then;
        const Ran refused = run(in);
        QCOMPARE(refused.code, 1);
        QVERIFY(refused.err.contains(QStringLiteral("bad.ics, line 6")));
        QVERIFY(refused.err.contains(QStringLiteral("Nothing was imported")));
        QVERIFY(booksOf(m_yard).busyTimes.isEmpty());
        const Ran left = run(in + QStringList{QStringLiteral("--leave-out")});
        QCOMPARE(left.code, 0);
        QVERIFY(left.out.contains(QStringLiteral("Left out: bad.ics, line 6")));
        QVERIFY(left.out.contains(QStringLiteral("1 added")));
        QCOMPARE(run({QStringLiteral("import"), QStringLiteral("calendar"),
                      m_folder.filePath(QStringLiteral("none.ics"))})
                     .code,
                 1);
    }

private:
    struct Ran {
        std::optional<int> code;
        QString out;
        QString err;
    };
    Ran run(const QStringList &arguments) const
    {
        Ran ran;
        QTextStream out(&ran.out);
        QTextStream err(&ran.err);
        QStringList all{QStringLiteral("rickyard"), QStringLiteral("--yard"), m_yard};
        all += arguments;
        if (arguments.first() == QLatin1String("demo"))
            all += m_then;
        ran.code = app::runCommandLine(all, out, err);
        out.flush();
        err.flush();
        return ran;
    }
    QString write(const char *name, const QByteArray &content) const
    {
        const QString path = m_folder.filePath(QString::fromLatin1(name));
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(content) != content.size())
            qWarning("could not write %s", qPrintable(path));
        return path;
    }
    static Books booksOf(const QString &path)
    {
        auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc(),
                                               storage::OpenMode::ReadOnly);
        return yard ? yard.value()->books() : Books();
    }

    QTemporaryDir m_folder;
    QString m_yard;
    QStringList m_then = {QStringLiteral("--as-of"), QStringLiteral("2026-11-25T14:20Z")};
};

} // namespace rickyard

using rickyard::TstCalendarKind;
RICKYARD_TEST(TstCalendarKind)
#include "tst_calendar_kind.moc"
