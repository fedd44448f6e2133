// Recurrence rules against every worked example of RFC 5545 section 3.8.5.3 (each row carries the
// words of its example), the clock change rule of section 3.3.5, and rules that mean harm.
#include "models/exchange/ics/recurrence.h"
#include "tests/support/registry.h"

#include <QTest>
#include <QTimeZone>

using namespace rickyard::exchange;

namespace {

const QByteArray kNewYork = "America/New_York"; // the zone of the RFC's examples

QDateTime local(const QString &stamp, const QByteArray &zone = kNewYork)
{
    const QDateTime digits =
        QDateTime::fromString(stamp.size() == 8 ? QString(stamp + QStringLiteral("T0900")) : stamp,
                              QStringLiteral("yyyyMMdd'T'HHmm"));
    return {digits.date(), digits.time(), QTimeZone(zone)};
}

QString stampsOf(const QVector<QDateTime> &times)
{
    QStringList stamps;
    for (const QDateTime &time : times)
        stamps << time.toString(time.time() == QTime(9, 0) ? QStringLiteral("yyyyMMdd")
                                                           : QStringLiteral("yyyyMMdd'T'HHmm"));
    return stamps.join(QLatin1Char(' '));
}

// "19970902-19970911": every day; "199709 2 15 30": days of a month; else as they stand.
QString days(const char *text)
{
    QStringList stamps;
    for (const QString &part : QString::fromLatin1(text).split(QStringLiteral("; "))) {
        const QStringList words = part.split(QLatin1Char(' '));
        if (part.contains(QLatin1Char('-'))) {
            const QDate to =
                QDate::fromString(part.section(QLatin1Char('-'), 1), QStringLiteral("yyyyMMdd"));
            for (QDate day = QDate::fromString(part.left(8), QStringLiteral("yyyyMMdd")); day <= to;
                 day = day.addDays(1))
                stamps << day.toString(QStringLiteral("yyyyMMdd"));
        } else if (words.first().size() == 6) {
            for (const QString &day : words.mid(1))
                stamps << QString(words.first() + day.rightJustified(2, QLatin1Char('0')));
        } else {
            stamps << words;
        }
    }
    return stamps.join(QLatin1Char(' '));
}

QString twentyMinuteTimes(const QString &day)
{
    QStringList stamps;
    for (int minute = 9 * 60; minute <= 16 * 60 + 40; minute += 20)
        stamps << (minute == 9 * 60
                       ? day
                       : QString(
                             day +
                             QTime(0, 0).addSecs(minute * 60).toString(QStringLiteral("'T'HHmm"))));
    return stamps.join(QLatin1Char(' '));
}

} // namespace

class TstRecurrence : public QObject
{
    Q_OBJECT

private slots:
    void workedExamples_data()
    {
        QTest::addColumn<QString>("first");
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("until"); // how far the RFC prints the list
        QTest::addColumn<QString>("expected");
        const auto row = [](const char *name, const char *first, const char *rule,
                            const char *until, const QString &expected) {
            QTest::newRow(name) << QString::fromLatin1(first) << QString::fromLatin1(rule)
                                << QString::fromLatin1(until) << expected;
        };
        const char *late = "20100101";
        row("Daily for 10 occurrences", "19970902", "FREQ=DAILY;COUNT=10", late,
            days("19970902-19970911"));
        row("Daily until December 24, 1997", "19970902", "FREQ=DAILY;UNTIL=19971224T000000Z", late,
            days("19970902-19971223"));
        row("Every other day - forever", "19970902", "FREQ=DAILY;INTERVAL=2", "19971203",
            days("199709 2 4 6 8 10 12 14 16 18 20 22 24 26 28 30; "
                 "199710 2 4 6 8 10 12 14 16 18 20 22 24 26 28 30; "
                 "199711 1 3 5 7 9 11 13 15 17 19 21 23 25 27 29; 199712 1 3"));
        row("Every 10 days, 5 occurrences", "19970902", "FREQ=DAILY;INTERVAL=10;COUNT=5", late,
            days("199709 2 12 22; 199710 2 12"));
        const QString januaries = days("19980101-19980131; 19990101-19990131; 20000101-20000131");
        row("Every day in January, for 3 years (yearly)", "19980101",
            "FREQ=YEARLY;UNTIL=20000131T140000Z;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA", late,
            januaries);
        row("Every day in January, for 3 years (daily)", "19980101",
            "FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1", late, januaries);
        row("Weekly for 10 occurrences", "19970902", "FREQ=WEEKLY;COUNT=10", late,
            days("199709 2 9 16 23 30; 199710 7 14 21 28; 199711 4"));
        row("Weekly until December 24, 1997", "19970902", "FREQ=WEEKLY;UNTIL=19971224T000000Z",
            late,
            days("199709 2 9 16 23 30; 199710 7 14 21 28; 199711 4 11 18 25; "
                 "199712 2 9 16 23"));
        row("Every other week - forever", "19970902", "FREQ=WEEKLY;INTERVAL=2;WKST=SU", "19980220",
            days("199709 2 16 30; 199710 14 28; 199711 11 25; 199712 9 23; 199801 6 20; "
                 "199802 3 17"));
        row("Weekly on Tuesday and Thursday for five weeks (until)", "19970902",
            "FREQ=WEEKLY;UNTIL=19971007T000000Z;WKST=SU;BYDAY=TU,TH", late,
            days("199709 2 4 9 11 16 18 23 25 30; 199710 2"));
        row("Weekly on Tuesday and Thursday for five weeks (count)", "19970902",
            "FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH", late,
            days("199709 2 4 9 11 16 18 23 25 30; 199710 2"));
        row("Every other week on Monday, Wednesday, and Friday until December 24, 1997", "19970901",
            "FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR", late,
            days("199709 1 3 5 15 17 19 29; 199710 1 3 13 15 17 27 29 31; "
                 "199711 10 12 14 24 26 28; 199712 8 10 12 22"));
        row("Every other week on Tuesday and Thursday, for 8 occurrences", "19970902",
            "FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH", late,
            days("199709 2 4 16 18 30; 199710 2 14 16"));
        row("Monthly on the first Friday for 10 occurrences", "19970905",
            "FREQ=MONTHLY;COUNT=10;BYDAY=1FR", late,
            days("199709 5; 199710 3; 199711 7; 199712 5; 199801 2; 199802 6; 199803 6; "
                 "199804 3; 199805 1; 199806 5"));
        row("Monthly on the first Friday until December 24, 1997", "19970905",
            "FREQ=MONTHLY;UNTIL=19971224T000000Z;BYDAY=1FR", late,
            days("199709 5; 199710 3; 199711 7; 199712 5"));
        row("Every other month on the first and last Sunday of the month for 10 occurrences",
            "19970907", "FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU", late,
            days("199709 7 28; 199711 2 30; 199801 4 25; 199803 1 29; 199805 3 31"));
        row("Monthly on the second-to-last Monday of the month for 6 months", "19970922",
            "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO", late,
            days("199709 22; 199710 20; 199711 17; 199712 22; 199801 19; 199802 16"));
        row("Monthly on the third-to-the-last day of the month, forever", "19970928",
            "FREQ=MONTHLY;BYMONTHDAY=-3", "19980228",
            days("199709 28; 199710 29; 199711 28; 199712 29; 199801 29; 199802 26"));
        row("Monthly on the 2nd and 15th of the month for 10 occurrences", "19970902",
            "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15", late,
            days("199709 2 15; 199710 2 15; 199711 2 15; 199712 2 15; 199801 2 15"));
        row("Monthly on the first and last day of the month for 10 occurrences", "19970930",
            "FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1", late,
            days("199709 30; 199710 1 31; 199711 1 30; 199712 1 31; 199801 1 31; 199802 1"));
        row("Every 18 months on the 10th thru 15th of the month for 10 occurrences", "19970910",
            "FREQ=MONTHLY;INTERVAL=18;COUNT=10;BYMONTHDAY=10,11,12,13,14,15", late,
            days("199709 10 11 12 13 14 15; 199903 10 11 12 13"));
        row("Every Tuesday, every other month", "19970902", "FREQ=MONTHLY;INTERVAL=2;BYDAY=TU",
            "19980331",
            days("199709 2 9 16 23 30; 199711 4 11 18 25; 199801 6 13 20 27; "
                 "199803 3 10 17 24 31"));
        row("Yearly in June and July for 10 occurrences", "19970610",
            "FREQ=YEARLY;COUNT=10;BYMONTH=6,7", late,
            days("199706 10; 199707 10; 199806 10; 199807 10; 199906 10; 199907 10; 200006 10; "
                 "200007 10; 200106 10; 200107 10"));
        row("Every other year on January, February, and March for 10 occurrences", "19970310",
            "FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3", late,
            days("199703 10; 199901 10; 199902 10; 199903 10; 200101 10; 200102 10; 200103 10; "
                 "200301 10; 200302 10; 200303 10"));
        row("Every third year on the 1st, 100th, and 200th day for 10 occurrences", "19970101",
            "FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200", late,
            days("199701 1; 199704 10; 199707 19; 200001 1; 200004 9; 200007 18; 200301 1; "
                 "200304 10; 200307 19; 200601 1"));
        row("Every 20th Monday of the year, forever", "19970519", "FREQ=YEARLY;BYDAY=20MO",
            "19990601", days("199705 19; 199805 18; 199905 17"));
        row("Monday of week number 20, forever", "19970512", "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO",
            "19990601", days("199705 12; 199805 11; 199905 17"));
        row("Every Thursday in March, forever", "19970313", "FREQ=YEARLY;BYMONTH=3;BYDAY=TH",
            "19991231", days("199703 13 20 27; 199803 5 12 19 26; 199903 4 11 18 25"));
        row("Every Thursday, but only during June, July, and August, forever", "19970605",
            "FREQ=YEARLY;BYDAY=TH;BYMONTH=6,7,8", "19991231",
            days("199706 5 12 19 26; 199707 3 10 17 24 31; 199708 7 14 21 28; "
                 "199806 4 11 18 25; 199807 2 9 16 23 30; 199808 6 13 20 27; "
                 "199906 3 10 17 24; 199907 1 8 15 22 29; 199908 5 12 19 26"));
        // The RFC takes the first one out with EXDATE: DTSTART counts though it is no Friday.
        row("Every Friday the 13th, forever", "19970902", "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
            "20001231", days("199709 2; 199802 13; 199803 13; 199811 13; 199908 13; 200010 13"));
        row("The first Saturday that follows the first Sunday of the month, forever", "19970913",
            "FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13", "19980613",
            days("199709 13; 199710 11; 199711 8; 199712 13; 199801 10; 199802 7; 199803 7; "
                 "199804 11; 199805 9; 199806 13"));
        row("Every 4 years, the first Tuesday after a Monday in November, forever", "19961105",
            "FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8", "20041231",
            days("199611 5; 200011 7; 200411 2"));
        row("The third instance into the month of one of Tuesday, Wednesday, or Thursday, for the "
            "next 3 months",
            "19970904", "FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3", late,
            days("199709 4; 199710 7; 199711 6"));
        row("The second-to-last weekday of the month", "19970929",
            "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2", "19980331",
            days("199709 29; 199710 30; 199711 27; 199712 30; 199801 29; 199802 26; 199803 30"));
        // UNTIL as in the RFC's erratum (from memory): 21:00 UTC is 5 PM there. As printed, 17:00
        // UTC, the 15:00 of the list lies behind it.
        row("Every 3 hours from 9:00 AM to 5:00 PM on a specific day", "19970902",
            "FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T210000Z", late,
            days("19970902 19970902T1200 19970902T1500"));
        row("Every 15 minutes for 6 occurrences", "19970902", "FREQ=MINUTELY;INTERVAL=15;COUNT=6",
            late,
            days("19970902 19970902T0915 19970902T0930 19970902T0945 19970902T1000 "
                 "19970902T1015"));
        row("Every hour and a half for 4 occurrences", "19970902",
            "FREQ=MINUTELY;INTERVAL=90;COUNT=4", late,
            days("19970902 19970902T1030 19970902T1200 19970902T1330"));
        const QString two =
            QString(twentyMinuteTimes(QStringLiteral("19970902")) + QLatin1Char(' ') +
                    twentyMinuteTimes(QStringLiteral("19970903")));
        row("Every 20 minutes from 9:00 AM to 4:40 PM every day (daily)", "19970902",
            "FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40", "19970903", two);
        row("Every 20 minutes from 9:00 AM to 4:40 PM every day (minutely)", "19970902",
            "FREQ=MINUTELY;INTERVAL=20;BYHOUR=9,10,11,12,13,14,15,16", "19970903", two);
        row("Where the days generated make a difference because of WKST: MO", "19970805",
            "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO", late, days("199708 5 10 19 24"));
        row("Where the days generated make a difference because of WKST: SU", "19970805",
            "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU", late, days("199708 5 17 19 31"));
        row("Where an invalid date (i.e., February 30) is ignored", "20070115",
            "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5", late,
            days("200701 15 30; 200702 15; 200703 15 30"));
    }
    void workedExamples()
    {
        QFETCH(QString, first);
        QFETCH(QString, rule);
        QFETCH(QString, until);
        QFETCH(QString, expected);
        const auto found = occurrences(rule, local(first),
                                       QDate::fromString(until, QStringLiteral("yyyyMMdd")), 500);
        QVERIFY2(found, qPrintable(found.message()));
        QCOMPARE(stampsOf(found.value()), expected);
    }

    // RFC 5545 prints "9:00 AM EDT" before and "9:00 AM EST" from October 26, 1997 on.
    void wallClockStaysOverClockChanges()
    {
        const auto found = occurrences(QStringLiteral("FREQ=WEEKLY;COUNT=10"),
                                       local(QStringLiteral("19970902")), QDate(1998, 1, 1), 500);
        QVERIFY(found);
        for (const QDateTime &time : found.value())
            QCOMPARE(time.offsetFromUtc(), time.date() < QDate(1997, 10, 26) ? -14400 : -18000);
    }

    // Section 3.3.5: 2:30 on March 11, 2007 does not exist in New York and is "interpreted using
    // the UTC offset before the gap"; 1:30 on November 4, 2007 is "the first occurrence".
    void timesThatAreSkippedOrDoubled()
    {
        const auto spring =
            occurrences(QStringLiteral("FREQ=DAILY;COUNT=3"),
                        local(QStringLiteral("20070310T0230")), QDate(2007, 12, 31), 10);
        QVERIFY(spring);
        QCOMPARE(spring->at(1).toUTC(), QDateTime(QDate(2007, 3, 11), QTime(7, 30), Qt::UTC));
        QCOMPARE(spring->at(2).toUTC(), QDateTime(QDate(2007, 3, 12), QTime(6, 30), Qt::UTC));
        const auto autumn =
            occurrences(QStringLiteral("FREQ=DAILY;COUNT=2"),
                        local(QStringLiteral("20071103T0130")), QDate(2007, 12, 31), 10);
        QVERIFY(autumn);
        QCOMPARE(autumn->at(1).toUTC(), QDateTime(QDate(2007, 11, 4), QTime(5, 30), Qt::UTC));
    }

    void untilHoldsToTheSecondOrTheDay()
    {
        const QDateTime first = local(QStringLiteral("20261205"), "America/Chicago");
        const auto count = [&first](const char *until) {
            const auto found =
                occurrences(QString(QStringLiteral("FREQ=WEEKLY;UNTIL=") + QLatin1String(until)),
                            first, QDate(2030, 1, 1), 500);
            return found ? found->size() : -1;
        };
        QCOMPARE(count("20261219"), 3);        // the day itself counts
        QCOMPARE(count("20261219T090000"), 3); // local
        QCOMPARE(count("20261219T085959"), 2);
        QCOMPARE(count("20261219T150000Z"), 3); // 9:00 in Chicago
        QCOMPARE(count("20261219T145959Z"), 2);
    }

    void windowAndLimit()
    {
        const QDateTime first = local(QStringLiteral("20261205"), "America/Chicago");
        const QString saturdays = QStringLiteral("FREQ=WEEKLY;INTERVAL=2;BYDAY=SA");
        const auto found = occurrences(saturdays, first, QDate(2027, 1, 2), 500);
        QVERIFY(found);
        QCOMPARE(stampsOf(found.value()), QStringLiteral("20261205 20261219 20270102"));
        QCOMPARE(occurrences(saturdays, first, QDate(2027, 1, 2), 2)->size(), 2);
        QCOMPARE(occurrences(saturdays, first, QDate(2026, 12, 4), 10)->size(), 0);
        QCOMPARE(occurrences(saturdays, first, QDate(2027, 1, 2), 0)->size(), 0);
        QCOMPARE(occurrences(saturdays, first, QDate(2900, 1, 2), 7)->size(), 7);
        QVERIFY(!occurrences(saturdays, QDateTime(), QDate(2027, 1, 2), 7));
        // Lower case, blanks around it and UTC do as well.
        QCOMPARE(occurrences(QStringLiteral(" freq=weekly;count=2 "), first.toUTC(),
                             QDate(2027, 1, 2), 500)
                     ->size(),
                 2);
    }

    void nonsenseIsRefused_data()
    {
        QTest::addColumn<QString>("part"); // that the sentence must name
        const auto row = [](const char *rule, const char *part) {
            QTest::newRow(rule) << QString::fromLatin1(part);
        };
        row("", "FREQ=WEEKLY");
        row("every second Saturday", "FREQ=WEEKLY");
        row("RRULE:FREQ=DAILY", "RRULE:FREQ");
        row("INTERVAL=2", "how often");
        row("FREQ=", "FREQ=WEEKLY");
        row("FREQ=FORTNIGHTLY", "FORTNIGHTLY");
        row("FREQ=DAILY;FREQ=WEEKLY", "FREQ twice");
        row("FREQ=DAILY;INTERVAL=0", "INTERVAL=0");
        row("FREQ=DAILY;INTERVAL=-1", "INTERVAL=-1");
        row("FREQ=DAILY;INTERVAL=99999999999", "INTERVAL=");
        row("FREQ=DAILY;COUNT=0", "COUNT=0");
        row("FREQ=DAILY;COUNT=3;UNTIL=20261224", "ends twice");
        row("FREQ=DAILY;UNTIL=20261324", "UNTIL=");
        row("FREQ=DAILY;UNTIL=tomorrow", "UNTIL=");
        row("FREQ=WEEKLY;BYDAY=XX", "BYDAY=XX");
        row("FREQ=WEEKLY;BYDAY=SA,", "BYDAY=SA,");
        row("FREQ=WEEKLY;BYDAY=2SA", "1SA");
        row("FREQ=MONTHLY;BYDAY=99SA", "BYDAY=99SA");
        row("FREQ=YEARLY;BYWEEKNO=20;BYDAY=1MO", "BYWEEKNO");
        row("FREQ=MONTHLY;BYMONTHDAY=32", "BYMONTHDAY=32");
        row("FREQ=MONTHLY;BYMONTHDAY=0", "BYMONTHDAY=0");
        row("FREQ=WEEKLY;BYMONTHDAY=3", "BYMONTHDAY");
        row("FREQ=DAILY;BYYEARDAY=3", "BYYEARDAY");
        row("FREQ=MONTHLY;BYWEEKNO=3", "BYWEEKNO");
        row("FREQ=YEARLY;BYMONTH=13", "BYMONTH=13");
        row("FREQ=YEARLY;BYMONTH=-1", "BYMONTH=-1");
        row("FREQ=DAILY;BYHOUR=24", "BYHOUR=24");
        row("FREQ=DAILY;BYSETPOS=1", "BYSETPOS");
        row("FREQ=MONTHLY;BYDAY=MO;BYSETPOS=300", "BYSETPOS=300");
        row("FREQ=DAILY;WKST=8", "WKST=8");
        row("FREQ=DAILY;RSCALE=CHINESE", "RSCALE");
        row("FREQ=DAILY;X-OURS=1", "X-OURS");
        row("FREQ=DAILY;", "no part");
    }
    void nonsenseIsRefused()
    {
        QFETCH(QString, part);
        const QString rule = QString::fromLatin1(QTest::currentDataTag());
        const auto found = occurrences(rule, local(QStringLiteral("20261205"), "America/Chicago"),
                                       QDate(2027, 12, 31), 100);
        QVERIFY(!found);
        QVERIFY2(found.message().contains(part), qPrintable(found.message()));
        QVERIFY(!checkRule(rule).isEmpty());
    }

    // A rule that finds nothing, or too much, ends. Nothing here is timed: a search that does not
    // end fails by the time limit of the whole program.
    void hostileRulesEnd_data()
    {
        QTest::addColumn<int>("most");
        const auto row = [](const char *rule, int most) { QTest::newRow(rule) << most; };
        row("FREQ=SECONDLY", 400);
        row("FREQ=SECONDLY;INTERVAL=1;BYSECOND=0;BYMINUTE=0;BYHOUR=0;BYMONTHDAY=29;BYMONTH=2", -1);
        row("FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=30", -1);
        row("FREQ=MINUTELY;BYMONTH=2;BYMONTHDAY=30", -1);
        row("FREQ=HOURLY;BYMONTH=2;BYMONTHDAY=30", -1);
        row("FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", 1);
        row("FREQ=MONTHLY;BYMONTHDAY=31;BYMONTH=4", 1);
        row("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", 1);
        row("FREQ=YEARLY;BYYEARDAY=366;BYMONTH=1", 1);
        row("FREQ=YEARLY;BYWEEKNO=53;BYMONTH=6", 1);
        row("FREQ=YEARLY;BYDAY=53SU;BYMONTH=2", 1);
        row("FREQ=MONTHLY;BYDAY=MO;BYSETPOS=31", 1);
        row("FREQ=YEARLY;INTERVAL=32767", 1);
        row("FREQ=DAILY;COUNT=1000000", 400);
    }
    void hostileRulesEnd()
    {
        QFETCH(int, most);
        const auto found = occurrences(QString::fromLatin1(QTest::currentDataTag()),
                                       local(QStringLiteral("20261205"), "America/Chicago"),
                                       QDate(9999, 12, 31), 400);
        if (most < 0) {
            QVERIFY(!found);
            QVERIFY(found.message().contains(QStringLiteral("FREQ=DAILY")));
            return;
        }
        QVERIFY2(found, qPrintable(found.message()));
        QCOMPARE(int(found->size()), most);
    }
};

RICKYARD_TEST(TstRecurrence)
#include "tst_recurrence.moc"
