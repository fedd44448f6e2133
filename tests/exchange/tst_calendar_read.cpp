// Busy times from calendar files: the meaning of RFC 5545, worked out by hand beside each case, and
// files that are broken or mean harm. Invented data.
#include "models/exchange/ics/calendar_read.h"
#include "models/exchange/ics/calendar_write.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QTest>
#include <QTimeZone>

#include <random>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

Instant utcOf(const char *iso)
{
    return Instant::ofSeconds(
        QDateTime::fromString(QString::fromLatin1(iso), Qt::ISODate).toSecsSinceEpoch());
}

CalendarReadOptions december()
{
    CalendarReadOptions options;
    options.source = QStringLiteral("An invented calendar");
    options.timeZone = QStringLiteral("America/Chicago");
    options.from = utcOf("2026-12-01T06:00:00Z"); // midnight in Chicago
    options.to = utcOf("2027-04-01T05:00:00Z");
    return options;
}

QByteArray dataFile(const char *name)
{
    QFile file(QStringLiteral(RICKYARD_TEST_DATA "/exchange/") + QLatin1String(name));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QString shown(const BusyTime &busy)
{
    const auto text = [](Instant at) {
        return QDateTime::fromSecsSinceEpoch(at.seconds(), Qt::UTC)
            .toString(QStringLiteral("yyyy-MM-dd HH:mm"));
    };
    return QStringLiteral("%1 | %2 - %3 | %4")
        .arg(busy.uid, text(busy.start), text(busy.end), busy.summary);
}

QStringList shown(const CalendarRead &read)
{
    QStringList lines;
    for (const BusyTime &busy : read.busy)
        lines << shown(busy);
    return lines;
}

QByteArray calendarOf(const QByteArray &inside)
{
    QByteArray text =
        "BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//Invented//Test//EN\n" + inside + "END:VCALENDAR\n";
    return text.replace("\n", "\r\n");
}
QByteArray eventOf(const QByteArray &lines, const QByteArray &uid = "one")
{
    return "BEGIN:VEVENT\nUID:" + uid + "\n" + lines + "END:VEVENT\n";
}

QString refusedText(const CalendarRead &read)
{
    return joined(read.refused.problems());
}

} // namespace

class TstCalendarRead : public QObject
{
    Q_OBJECT

private slots:
    // Times of Chicago are UTC-6 in December, those of New York UTC-5; on 14 March 2027 both go
    // forward by an hour.
    void meaning()
    {
        const CalendarRead read =
            readCalendar(dataFile("busy.ics"), december(), QStringLiteral("busy.ics"));
        QVERIFY2(read.ok, qPrintable(refusedText(read)));
        const QStringList expected = {
            QStringLiteral("running | 2026-11-30 12:00 - 2026-12-01 12:00 | Running when the "
                           "window begins"),
            QStringLiteral("later/20261201T130000Z | 2026-12-01 13:00 - 2026-12-01 13:30 | "
                           "Mornings"),
            QStringLiteral("later/20261202T130000Z | 2026-12-02 13:00 - 2026-12-02 13:30 | "
                           "Mornings"),
            QStringLiteral("later/20261203T130000Z | 2026-12-03 14:00 - 2026-12-03 15:00 | "
                           "Mornings from now on"),
            QStringLiteral("weekly/20261204T000000Z | 2026-12-04 00:00 - 2026-12-04 02:00 | Nine "
                           "Sundays"),
            QStringLiteral("later/20261204T130000Z | 2026-12-04 14:00 - 2026-12-04 15:00 | "
                           "Mornings from now on"),
            QStringLiteral("utc | 2026-12-05 16:00 - 2026-12-05 17:30 | In UTC, with a comma; and "
                           "a fold"),
            QStringLiteral("zone | 2026-12-06 14:00 - 2026-12-06 15:30 | IANA zone"),
            QStringLiteral("own-zone | 2026-12-07 14:00 - 2026-12-07 15:00 | The file's own zone"),
            QStringLiteral("windows-zone | 2026-12-08 14:00 - 2026-12-08 15:00 | A zone by its "
                           "Windows name"),
            QStringLiteral("path-zone | 2026-12-09 14:00 - 2026-12-09 15:00 | A zone with a path"),
            QStringLiteral("unknown-zone | 2026-12-10 15:00 - 2026-12-10 16:00 | A zone that "
                           "nobody knows"),
            QStringLiteral("floating | 2026-12-11 15:00 - 2026-12-11 16:00 | Floating"),
            QStringLiteral("day | 2026-12-12 06:00 - 2026-12-13 06:00 | One whole day"),
            QStringLiteral("weekly/20261214T000000Z | 2026-12-15 01:00 - 2026-12-15 02:00 | A "
                           "Sunday moved to Monday"),
            QStringLiteral("weekly/20261217T170000Z | 2026-12-17 17:00 - 2026-12-17 17:30 | Nine "
                           "Sundays"),
            QStringLiteral("weekly/20261218T170000Z | 2026-12-18 17:00 - 2026-12-18 19:00 | Nine "
                           "Sundays"),
            QStringLiteral("twice | 2026-12-21 16:00 - 2026-12-21 17:00 | The newer version"),
            QStringLiteral("weekly/20261228T000000Z | 2026-12-28 00:00 - 2026-12-28 02:00 | Nine "
                           "Sundays"),
            QStringLiteral("days | 2027-03-13 06:00 - 2027-03-15 05:00 | Two days, one of 23 "
                           "hours"),
            // Noon to noon is 23 hours there, then one more.
            QStringLiteral("nominal | 2027-03-13 18:00 - 2027-03-14 18:00 | A day and an hour "
                           "over a clock change")};
        const QStringList found = shown(read);
        for (qsizetype i = 0; i < std::max(found.size(), expected.size()); ++i)
            QCOMPARE(found.value(i), expected.value(i));
        QCOMPARE(read.busy.first().source, QStringLiteral("An invented calendar"));
        QCOMPARE(read.report.events, 22);
        QCOMPARE(read.report.free, 1);
        QCOMPARE(read.report.calledOff, 2);
        QCOMPARE(read.report.noLength, 1);
        QCOMPARE(read.report.outside, 1);
        QCOMPARE(read.report.replaced, 1);
        QCOMPARE(read.report.others, 1);
        QCOMPARE(read.report.floating, 2);
        QCOMPARE(read.report.unknownZones, QStringList{QStringLiteral("Nowhere/At all")});
        QVERIFY(read.report.lines().join(QLatin1Char(' ')).contains(QStringLiteral("Nowhere")));
    }

    // The zone of RFC 5545 section 3.6.5, first example, under a name of no database, against the
    // tz database's New York: the first of each month of 1998 to 2006, and around the changes.
    void zoneOfTheStandard()
    {
        const QByteArray zone = "BEGIN:VTIMEZONE\nTZID:Standard's example\n"
                                "BEGIN:DAYLIGHT\nDTSTART:19870405T020000\n"
                                "RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=4;UNTIL=20060402T070000Z\n"
                                "TZOFFSETFROM:-0500\nTZOFFSETTO:-0400\nTZNAME:EDT\nEND:DAYLIGHT\n"
                                "BEGIN:STANDARD\nDTSTART:19671029T020000\n"
                                "RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10;UNTIL=20061029T060000Z\n"
                                "TZOFFSETFROM:-0400\nTZOFFSETTO:-0500\nTZNAME:EST\nEND:STANDARD\n"
                                "END:VTIMEZONE\n";
        QByteArray events;
        QVector<QDateTime> expected;
        const QTimeZone newYork("America/New_York");
        const auto add = [&](QDate day, QTime time) {
            const QDateTime at(day, time, Qt::UTC);
            const QByteArray digits = at.toString(QStringLiteral("yyyyMMdd'T'HHmmss")).toLatin1();
            events += eventOf("DTSTART;TZID=Standard's example:" + digits + "\nDURATION:PT1H\n",
                              "u" + digits);
            expected << QDateTime(day, time, newYork).toUTC();
        };
        for (QDate day(1998, 1, 1); day.year() < 2007; day = day.addMonths(1))
            add(day, QTime(12, 0));
        for (const QDate day : {QDate(2006, 4, 1), QDate(2006, 4, 2), QDate(2006, 10, 29)})
            for (const QTime time : {QTime(0, 30), QTime(3, 30)})
                add(day, time);
        CalendarReadOptions options = december();
        options.from = utcOf("1990-01-01T00:00:00Z");
        const CalendarRead read = readCalendar(calendarOf(zone + events), options);
        QVERIFY2(read.ok, qPrintable(refusedText(read)));
        QVERIFY(read.report.unknownZones.isEmpty());
        std::sort(expected.begin(), expected.end());
        QCOMPARE(read.busy.size(), expected.size());
        for (qsizetype i = 0; i < expected.size(); ++i)
            QCOMPARE(read.busy.at(i).start.seconds(), expected.at(i).toSecsSinceEpoch());
    }

    void whatIsWrittenIsReadAgain()
    {
        Calendar calendar;
        calendar.yard = QStringLiteral("Invented yard");
        calendar.mark = QStringLiteral("0b5e");
        calendar.timeZone = QStringLiteral("America/Chicago");
        calendar.written = utcOf("2026-12-01T00:00:00Z");
        for (int i = 0; i < 100; ++i) {
            CalendarEntry entry;
            entry.record = i + 1;
            entry.summary = QString::fromUtf8("Fire %1, \xF0\x9F\x94\xA5; oak").arg(i);
            entry.start = calendar.written + Duration::ofBase(86400 + i * 86401);
            entry.end = entry.start + Duration::ofBase(3600 + 60 * i);
            calendar.entries << entry;
        }
        const auto bytes = writeCalendar(calendar);
        QVERIFY(bytes);
        const CalendarRead read = readCalendar(bytes.value(), december());
        QVERIFY2(read.ok, qPrintable(refusedText(read)));
        QCOMPARE(read.busy.size(), 100);
        for (int i = 0; i < 100; ++i) {
            const CalendarEntry &entry = calendar.entries.at(i);
            QCOMPARE(read.busy.at(i).uid, calendarUid(calendar.mark, entry));
            QCOMPARE(read.busy.at(i).start, entry.start);
            QCOMPARE(read.busy.at(i).end, entry.end);
            QCOMPARE(read.busy.at(i).summary, entry.summary);
        }
    }

    void theSameAgainChangesNothing()
    {
        const CalendarReadOptions options = december();
        const QByteArray bytes = dataFile("busy.ics");
        const CalendarRead first = readCalendar(bytes, options);
        Books books;
        RecordId id = 0;
        for (BusyTime busy : first.busy) {
            busy.id = ++id;
            books.busyTimes.insert(busy.id, busy);
        }
        BusyMerge merge = mergeBusyTimes(books, readCalendar(bytes, options).busy, options);
        QCOMPARE(merge.identical, first.busy.size());
        QVERIFY(merge.fresh.isEmpty() && merge.updated.isEmpty() && merge.gone.isEmpty());

        // One moved, one gone, one new; another calendar's and the past stay as they are.
        QVector<BusyTime> later = first.busy;
        later[3].end = later[3].end + Duration::ofBase(60);
        later.removeAt(5);
        BusyTime extra = later.first();
        extra.uid = QStringLiteral("new");
        later << extra;
        BusyTime other = first.busy.first();
        other.id = ++id;
        other.source = QStringLiteral("Another");
        books.busyTimes.insert(other.id, other);
        BusyTime past = first.busy.first();
        past.id = ++id;
        past.uid = QStringLiteral("past");
        past.start = utcOf("2026-01-01T00:00:00Z");
        past.end = utcOf("2026-01-02T00:00:00Z");
        books.busyTimes.insert(past.id, past);
        merge = mergeBusyTimes(books, later, options);
        QCOMPARE(merge.identical, first.busy.size() - 2);
        QCOMPARE(merge.fresh.size(), 1);
        QCOMPARE(merge.updated.size(), 1);
        QCOMPARE(merge.updated.first().id, 4);
        QCOMPARE(merge.gone, QVector<RecordId>{6});
    }

    void refusals_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("said"); // with the line
        const auto row = [](const char *name, const QByteArray &bytes, const char *said) {
            QTest::newRow(name) << bytes << QString::fromUtf8(said);
        };
        const QByteArray when = "DTSTART:20261205T160000Z\nDTEND:20261205T170000Z\n";
        row("empty", "", "BEGIN:VCALENDAR");
        row("a picture", QByteArray("\x89PNG\r\n\x1a\n\0\0", 10), "BEGIN:VCALENDAR");
        row("a table", "id,name\r\n1,a\r\n", "line 1");
        row("cut off", calendarOf(eventOf(when)).chopped(15), "expected an END:VCALENDAR");
        row("cut off in an event", calendarOf(eventOf(when)).chopped(40), "an END:VEVENT");
        row("crossed", "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nEND:VCALENDAR\r\nEND:VEVENT\r\n",
            "line 3: found “END:VCALENDAR”; expected END:VEVENT for the BEGIN of line 2");
        row("END alone", "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\nEND:VCALENDAR\r\n", "line 3");
        row("event in event", calendarOf("BEGIN:VEVENT\n" + eventOf(when) + "END:VEVENT\n"),
            "line 5");
        row("calendar in calendar", calendarOf(calendarOf(eventOf(when))), "line 4");
        QByteArray deep;
        for (int i = 0; i < 100000; ++i)
            deep += "BEGIN:X-DEEP\n";
        row("nested without end", calendarOf(deep), "at most 8 parts inside each other");
        QByteArray zero = calendarOf(eventOf(when));
        zero[60] = '\0';
        row("zero byte", zero, "zero byte");
        row("Latin-1", calendarOf(eventOf(when + "SUMMARY:Caf\xE9\n")), "line 8: found “SUMMARY”");
        row("no colon", calendarOf(eventOf(when + "nonsense\n")), "line 8");
        row("no start", calendarOf(eventOf("SUMMARY:When?\n")), "a DTSTART in it");
        row("start is nonsense", calendarOf(eventOf("DTSTART:tomorrow\n")), "line 6");
        row("start is no day", calendarOf(eventOf("DTSTART:20261399T990000Z\n")), "line 6");
        row("start in year 1", calendarOf(eventOf("DTSTART:00010101T000000Z\n")), "1900");
        row("two starts", calendarOf(eventOf(when + "DTSTART:20261206T160000Z\n")),
            "one DTSTART only; the first is in line 6");
        row("end before start",
            calendarOf(eventOf("DTSTART:20261205T160000Z\nDTEND:20261205T150000Z\n")), "line 7");
        row("end and duration", calendarOf(eventOf(when + "DURATION:PT1H\n")), "not both");
        row("day and time",
            calendarOf(eventOf("DTSTART;VALUE=DATE:20261205\nDTEND:20261206T150000Z\n")),
            "as the start is");
        row("negative duration", calendarOf(eventOf("DTSTART:20261205T160000Z\nDURATION:-PT1H\n")),
            "PT2H30M");
        row("duration is nonsense",
            calendarOf(eventOf("DTSTART:20261205T160000Z\nDURATION:long\n")), "PT2H30M");
        row("duration without end",
            calendarOf(eventOf("DTSTART:20261205T160000Z\nDURATION:P99999999W\n")), "PT2H30M");
        row("bad rule", calendarOf(eventOf(when + "RRULE:FREQ=SOMETIMES\n")), "SOMETIMES");
        row("rule by the second", calendarOf(eventOf(when + "RRULE:FREQ=SECONDLY\n")),
            "at most 2000 repeats");
        row("rule without end",
            calendarOf(eventOf(when + "RRULE:FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=30\n")), "FREQ=");
        row("two rules", calendarOf(eventOf(when + "RRULE:FREQ=DAILY\nRRULE:FREQ=WEEKLY\n")),
            "one RRULE only");
        row("zone by the minute",
            calendarOf("BEGIN:VTIMEZONE\nTZID:Wild\nBEGIN:STANDARD\nDTSTART:19700101T000000\n"
                       "RRULE:FREQ=MINUTELY\nTZOFFSETFROM:+0000\nTZOFFSETTO:+0100\n"
                       "END:STANDARD\nEND:VTIMEZONE\n" +
                       eventOf("DTSTART;TZID=Wild:20261205T160000\nDURATION:PT1H\n")),
            "line 8: found “RRULE:FREQ=MINUTELY”; expected a clock change once a year");
        row("zone of nothing",
            calendarOf("BEGIN:VTIMEZONE\nTZID:Bare\nEND:VTIMEZONE\n" +
                       eventOf("DTSTART;TZID=Bare:20261205T160000\nDURATION:PT1H\n")),
            "a time zone with its offsets");
        row("long line",
            calendarOf(eventOf(when + "EXDATE:" + QByteArray("20261205T160000Z,").repeated(5000) +
                               "20261205T160000Z\n")),
            "at most 65536 bytes");
        QByteArray dates;
        for (int i = 0; i < 3000; ++i)
            dates += "EXDATE:20261205T160000Z\n";
        row("many lines", calendarOf(eventOf(when + dates)), "at most 2000 lines");
        QByteArray many;
        for (int i = 0; i < 20001; ++i)
            many += eventOf(when, QByteArray::number(i));
        row("too many events", calendarOf(many), "at most 20000 appointments");
        row("too large", QByteArray(33 * 1024 * 1024, 'x'), "at most 32 MB");
    }
    void refusals()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, said);
        const CalendarRead read = readCalendar(bytes, december(), QStringLiteral("bad.ics"));
        QVERIFY(!read.ok);
        QVERIFY(read.busy.isEmpty());
        QVERIFY2(refusedText(read).contains(said), qPrintable(refusedText(read)));
        QVERIFY(refusedText(read).startsWith(QStringLiteral("bad.ics")));
    }

    void refusedOnesCanBeLeftOut()
    {
        const QByteArray when = "DTSTART:20261205T160000Z\nDTEND:20261205T170000Z\n";
        const QByteArray bytes =
            calendarOf(eventOf(when, "good") + eventOf("DTSTART:tomorrow\n", "bad"));
        CalendarReadOptions options = december();
        QVERIFY(!readCalendar(bytes, options).ok);
        options.strict = false;
        const CalendarRead read = readCalendar(bytes, options);
        QVERIFY(read.ok);
        QCOMPARE(read.busy.size(), 1);
        QCOMPARE(read.refused.count, 1);
        // A file that is cut off is not taken even then.
        QVERIFY(!readCalendar(bytes.chopped(20), options).ok);
    }

    void tenThousandEvents()
    {
        QByteArray events;
        for (int i = 0; i < 10000; ++i)
            events += eventOf("DTSTART;TZID=America/Chicago:20261205T" +
                                  QByteArray::number(100000 + i % 60 * 100) +
                                  "\nDURATION:PT1H\nSUMMARY:Number " + QByteArray::number(i) + "\n",
                              QByteArray::number(i));
        const CalendarRead read = readCalendar(calendarOf(events), december());
        QVERIFY2(read.ok, qPrintable(refusedText(read)));
        QCOMPARE(read.busy.size(), 10000);
        // Each repeated without end: too many busy times, said once.
        events.replace("DURATION:PT1H", "DURATION:PT1H\nRRULE:FREQ=DAILY");
        const CalendarRead repeated = readCalendar(calendarOf(events), december());
        QVERIFY(!repeated.ok);
        QVERIFY(refusedText(repeated).contains(QStringLiteral("at most 20000 busy times")));
        // Each with a rule that finds nothing: the search of all together is bounded.
        events.replace("RRULE:FREQ=DAILY", "RRULE:FREQ=MINUTELY;BYMONTH=2;BYMONTHDAY=30");
        const CalendarRead endless = readCalendar(calendarOf(events), december());
        QVERIFY(!endless.ok);
    }

    void canBeCancelled()
    {
        std::atomic_bool cancel{true};
        const CalendarRead read =
            readCalendar(dataFile("busy.ics"), december(), QString(), {}, &cancel);
        QVERIFY(read.cancelled);
        QVERIFY(!read.ok);
        QVERIFY(read.busy.isEmpty());
    }

    // Four thousand broken versions of a file with everything in it: bytes changed, cut out, put
    // in, doubled; lines swapped. Whatever comes back, it keeps to its bounds.
    void mutatedFilesNeverCrash()
    {
        const QByteArray good = dataFile("busy.ics");
        QVERIFY(good.size() > 1000);
        std::mt19937 chance(20261205);
        const auto below = [&chance](qsizetype most) {
            return static_cast<qsizetype>(chance() %
                                          static_cast<unsigned>(std::max<qsizetype>(most, 1)));
        };
        static const QByteArrayList words = {"BEGIN:VEVENT\r\n",
                                             "END:VEVENT\r\n",
                                             "RRULE:FREQ=SECONDLY\r\n",
                                             "FREQ=MINUTELY;",
                                             ";",
                                             "INTERVAL=99999;",
                                             "BYSETPOS=-366;",
                                             "DTSTART:99999999T999999Z\r\n",
                                             ":",
                                             ",",
                                             "\xF0\x9F",
                                             "=",
                                             "\"",
                                             "P1W",
                                             "-",
                                             "TZID=",
                                             "\r\n ",
                                             "\r\n",
                                             "VALUE=PERIOD:",
                                             "\\",
                                             "BYDAY=-53SU,53MO;",
                                             "UNTIL=00000000;",
                                             "RDATE:20261205T000000Z/P9999D\r\n"};
        int taken = 0;
        for (int i = 0; i < 4000; ++i) {
            QByteArray bytes = good;
            const qsizetype changes = 1 + below(4);
            for (qsizetype c = 0; c < changes; ++c) {
                const qsizetype at = below(bytes.size());
                switch (below(5)) {
                case 0:
                    bytes[at] = static_cast<char>(chance());
                    break;
                case 1:
                    bytes.remove(at, 1 + below(40));
                    break;
                case 2:
                    bytes.insert(at, words.at(below(words.size())));
                    break;
                case 3:
                    bytes.insert(at, bytes.mid(below(bytes.size()), below(300)));
                    break;
                default:
                    bytes[at] = static_cast<char>('0' + below(10));
                    break;
                }
            }
            CalendarReadOptions options = december();
            options.strict = i % 2 == 0;
            const CalendarRead read = readCalendar(bytes, options);
            QVERIFY(read.busy.size() <= 20000);
            QVERIFY(read.ok || read.busy.isEmpty());
            QVERIFY(read.ok || !read.refused.isEmpty());
            for (const BusyTime &busy : read.busy) {
                QVERIFY(busy.end > busy.start);
                QVERIFY(busy.end > options.from && busy.start < options.to);
                QVERIFY(!busy.uid.isEmpty());
            }
            taken += read.ok ? 1 : 0;
        }
        QVERIFY(taken > 200 && taken < 3900); // both ways are taken
    }
};

RICKYARD_TEST(TstCalendarRead)
#include "tst_calendar_read.moc"
