// Free windows, worked by hand on the wall clock of Chicago.
#include "models/domain/upkeep/windows.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstWindows : public QObject
{
    Q_OBJECT

    static QStringList texts(const UpkeepBooks &y, const QVector<WorkWindow> &windows)
    {
        QStringList list;
        for (const WorkWindow &w : windows)
            list << QString(y.local.timeText(w.start) % QStringLiteral(" +") %
                            QString::number((w.end - w.start).base() / 60));
        return list;
    }

private slots:
    void crewHoursKeepTheirWallClock()
    {
        UpkeepBooks y;
        y.crew(Weekday::Sunday, 18, 3, 2);
        const auto windows =
            crewWindows(y.books, y.at(QDate(2026, 10, 24)), y.at(QDate(2026, 11, 9)), y.local);
        QCOMPARE(texts(y, windows), QStringList({QStringLiteral("Sun 25 Oct, 6:00 PM +180"),
                                                 QStringLiteral("Sun 1 Nov, 6:00 PM +180"),
                                                 QStringLiteral("Sun 8 Nov, 6:00 PM +180")}));
        // A week with the long night between them: 169 hours, then 168.
        QCOMPARE((windows.at(1).start - windows.at(0).start).base(), 169 * kHour);
        QCOMPARE((windows.at(2).start - windows.at(1).start).base(), 168 * kHour);
        QCOMPARE(windows.first().people, 2);
    }

    void hoursOverTheLongNightKeepTheirTrueLength()
    {
        UpkeepBooks y;
        y.crew(Weekday::Saturday, 23, 4);
        const auto windows =
            crewWindows(y.books, y.at(QDate(2026, 10, 31)), y.at(QDate(2026, 11, 2)), y.local);
        QCOMPARE(windows.size(), 1);
        QCOMPARE((windows.first().end - windows.first().start).base(), 4 * kHour);
        // 23:00 CDT and four hours is 02:00 CST, not 03:00.
        QCOMPARE(y.local.timeText(windows.first().end), QStringLiteral("Sun 1 Nov, 2:00 AM"));
    }

    void cutByNowTheHorizonAndYesterday()
    {
        UpkeepBooks y;
        y.crew(Weekday::Monday, 22, 4);
        const auto windows = crewWindows(y.books, y.at(QDate(2026, 11, 3), 1),
                                         y.at(QDate(2026, 11, 9), 23), y.local);
        QCOMPARE(texts(y, windows), QStringList({QStringLiteral("Tue 3 Nov, 1:00 AM +60"),
                                                 QStringLiteral("Mon 9 Nov, 10:00 PM +60")}));
    }

    void withoutRecordsHoursAreAssumedAndSaid()
    {
        UpkeepBooks y;
        bool assumed = false;
        crewTimesOrAssumed(y.books, &assumed);
        QVERIFY(assumed);
        QCOMPARE(texts(y, crewWindows(y.books, y.at(QDate(2026, 11, 23)), y.at(QDate(2026, 11, 30)),
                                      y.local)),
                 QStringList({QStringLiteral("Tue 24 Nov, 6:00 PM +180"),
                              QStringLiteral("Wed 25 Nov, 6:00 PM +180"),
                              QStringLiteral("Thu 26 Nov, 6:00 PM +180")}));
        y.task("Look", y.pit("Long Tom"), QDate(2026, 11, 1)).everyDays = 30;
        const auto answer = y.answer(y.at(QDate(2026, 11, 23)));
        const auto said = [](const UpkeepAnswer &a) {
            return std::any_of(a.headline.reasons.begin(), a.headline.reasons.end(),
                               [](const Reason &r) {
                                   return r.assumption && r.label == QStringLiteral("Crew hours");
                               });
        };
        QVERIFY(said(answer));
        y.crew(Weekday::Monday, 18, 3);
        QVERIFY(!said(y.answer(y.at(QDate(2026, 11, 23)))));
    }

    void nobodyWorksWhileAway()
    {
        UpkeepBooks y;
        y.crew(Weekday::Saturday, 8, 12);
        // Away from 11:00 less 2 h to 15:00 plus 2 h.
        const RecordId e = y.event("Mill Field Supper", y.at(QDate(2026, 11, 28), 11), 4, 2);
        const auto free = [&] {
            return texts(y, crewWindows(y.books, y.at(QDate(2026, 11, 28)),
                                        y.at(QDate(2026, 11, 29)), y.local));
        };
        QCOMPARE(free(), QStringList({QStringLiteral("Sat 28 Nov, 8:00 AM +60"),
                                      QStringLiteral("Sat 28 Nov, 5:00 PM +180")}));
        y.books.events[e].state = EventState::Cancelled;
        QCOMPARE(free(), QStringList({QStringLiteral("Sat 28 Nov, 8:00 AM +720")}));
    }

    void fireColdAndCure()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.crew(Weekday::Friday, 8, 14);                 // 08:00 to 22:00
        y.plan(tom, y.at(QDate(2026, 11, 26), 12), 12); // out at midnight before Friday
        y.plan(tom, y.at(QDate(2026, 11, 27), 20), 10); // lit at 20:00 on Friday
        const Instant now = y.at(QDate(2026, 11, 25));
        const auto windows = crewWindows(y.books, now, y.at(QDate(2026, 11, 28)), y.local);
        const auto fires = burnsOf(y.books, tom, now);
        const auto free = [&](double cold, double cure) {
            return texts(y, freeWindows(windows, fires, hoursOf(cold), hoursOf(cure)));
        };
        // An hour before lighting at the least.
        QCOMPARE(free(0, 0), QStringList({QStringLiteral("Fri 27 Nov, 8:00 AM +660")}));
        QCOMPARE(free(12, 0), QStringList({QStringLiteral("Fri 27 Nov, 12:00 PM +420")}));
        QCOMPARE(free(12, 6), QStringList({QStringLiteral("Fri 27 Nov, 12:00 PM +120")}));
        QCOMPARE(free(12, 8), QStringList());
        // Another pit's fires do not matter.
        QCOMPARE(texts(y, freeWindows(windows, burnsOf(y.books, y.pit("Big Ruth"), now),
                                      hoursOf(12), hoursOf(6))),
                 QStringList({QStringLiteral("Fri 27 Nov, 8:00 AM +840")}));
    }

    void aRunningCookHoldsThePitToItsExpectedEnd()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.cook(tom, y.at(QDate(2026, 11, 24), 6), std::nullopt);
        const Instant now = y.at(QDate(2026, 11, 24), 10);
        QVector<Burn> burns = burnsOf(y.books, tom, now);
        QCOMPARE(burns.size(), 1);
        QVERIFY(burns.first().running && burns.first().endAssumed);
        QCOMPARE(burns.first().end, y.at(QDate(2026, 11, 24), 18)); // 12 h assumed
        // With a plan, the plan's length; the plan itself is not counted twice.
        y.books.cooks[1].planned = y.plan(tom, y.at(QDate(2026, 11, 24), 5), 9);
        burns = burnsOf(y.books, tom, now);
        QCOMPARE(burns.size(), 1);
        QVERIFY(!burns.first().endAssumed);
        QCOMPARE(burns.first().end, y.at(QDate(2026, 11, 24), 15));
        // Longer than planned: it burns at least until now.
        burns = burnsOf(y.books, tom, y.at(QDate(2026, 11, 24), 20));
        QCOMPARE(burns.first().end, y.at(QDate(2026, 11, 24), 20));
    }
};

RICKYARD_TEST(TstWindows)
#include "tst_windows.moc"
