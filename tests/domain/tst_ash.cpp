// Ash: 96 true hours in the can, and how much lies in a pit.
#include "models/domain/upkeep/ash.h"
#include "models/domain/upkeep/meter_use.h"
#include "models/domain/upkeep/meters.h"
#include "models/domain/wood/heat_value.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstAsh : public QObject
{
    Q_OBJECT

    // A lot of a species with that share of ash; the cook burned only from it.
    static void burned(UpkeepBooks &y, RecordId cook, double dryPounds, std::optional<double> share)
    {
        Species s;
        s.id = y.books.species.size() + 1;
        if (share)
            s.ash = Ratio::rounded(*share * 1e6);
        y.books.species.insert(s.id, s);
        Lot lot;
        lot.id = y.books.lots.size() + 1;
        lot.species = s.id;
        y.books.lots.insert(lot.id, lot);
        for (CookFuel &c : y.fuel.cooks)
            if (c.cook == cook) {
                c.dryMass = massFromPounds(dryPounds);
                c.lots = {{lot.id, 1.0}};
            }
    }

private slots:
    // City fire departments: 96 hours at the least (tests/domain/tst_starters has the caution).
    void ninetySixHoursInTheCan()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.ashLoad(tom, y.at(QDate(2026, 11, 24), 21 + 40.0 / 60), "1");
        auto states = ashStates(y.books, y.at(QDate(2026, 11, 25), 9), y.local);
        QCOMPARE(states.size(), 1);
        QVERIFY(states.first().waiting && !states.first().tipped);
        QCOMPARE(
            states.first().words,
            QStringLiteral("in can 1 since Tue 24 Nov, 9:40 PM; not to be tipped before Sat 28 "
                           "Nov, 9:40 PM, 96 h at the least; local code decides"));
        states = ashStates(y.books, y.at(QDate(2026, 11, 28), 22), y.local);
        QVERIFY(!states.first().waiting);
        QVERIFY2(states.first().words.startsWith(QStringLiteral(
                     "in can 1 since Tue 24 Nov, 9:40 PM; 96 h at the least were over Sat 28 Nov, "
                     "9:40 PM: treat it as hot all the same")),
                 qPrintable(states.first().words));
        QVERIFY(!states.first().words.contains(QStringLiteral("safe"), Qt::CaseInsensitive));
        // Not yet taken out when asked about the day before.
        QVERIFY(ashStates(y.books, y.at(QDate(2026, 11, 24), 9), y.local).isEmpty());
    }

    void trueHoursAcrossTheClockChange()
    {
        UpkeepBooks y;
        y.ashLoad(y.pit("Long Tom"), y.at(QDate(2026, 10, 30), 20), "Can A");
        const AshState state = ashStates(y.books, y.at(QDate(2026, 10, 31)), y.local).first();
        // Clocks go back on 1 November: 96 h after Fri 20:00 it is Tue 19:00.
        QCOMPARE(y.local.timeText(state.notBefore), QStringLiteral("Tue 3 Nov, 7:00 PM"));
    }

    void hotAshOnTopStartsAnew()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const RecordId first = y.ashLoad(tom, y.at(QDate(2026, 11, 20), 10), "can 1");
        y.ashLoad(tom, y.at(QDate(2026, 11, 23), 10), "Can 1 ");
        y.ashLoad(tom, y.at(QDate(2026, 11, 24), 10), "can 2");
        const auto find = [&](Instant now, RecordId load) {
            for (const AshState &s : ashStates(y.books, now, y.local))
                if (s.load == load)
                    return s;
            return AshState();
        };
        const AshState state = find(y.at(QDate(2026, 11, 25)), first);
        QVERIFY(state.waiting);
        QCOMPARE(state.notBefore, y.at(QDate(2026, 11, 27), 10));
        QVERIFY(state.words.contains(QStringLiteral("hot ash added Mon 23 Nov, 10:00 AM")));
        // What was tipped before the can was filled again is a matter of its own.
        y.books.ashLoads[first].tipped = y.at(QDate(2026, 11, 22), 10);
        const AshState tipped = find(y.at(QDate(2026, 11, 25)), first);
        QVERIFY(tipped.tipped && tipped.tippedEarly);
        QVERIFY2(tipped.words.contains(QStringLiteral("only 48 h after hot ash")),
                 qPrintable(tipped.words));
        QVERIFY(tipped.words.contains(QStringLiteral("look for embers")));
    }

    void ashOfTheWoodBurned()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const QDate day(2026, 11, 7);
        const RecordId one = y.cook(tom, y.at(day, 6), y.at(day, 18), 120);
        const RecordId two = y.cook(tom, y.at(day.addDays(7), 6), y.at(day.addDays(7), 18), 120);
        y.cook(tom, y.at(day.addDays(8), 6), y.at(day.addDays(8), 18)); // no figure
        burned(y, one, 100, 0.02);
        burned(y, two, 100, std::nullopt);
        const Instant now = y.at(QDate(2026, 11, 20));
        AshInPit ash = ashInPit(y.books, y.fuel, tom, now, y.local);
        // 2 % of 100 lb and 1.1 % of 100 lb, by hand.
        QVERIFY(std::abs(pounds(ash.ash) - 3.1) < 1e-5);
        QCOMPARE(ash.cooks, 3);
        QCOMPARE(ash.withoutWood, 1);
        QVERIFY2(ash.words.startsWith(QStringLiteral("about 3.1")), qPrintable(ash.words));
        QVERIFY2(ash.words.contains(QStringLiteral("of ash from 3 cooks, char on top")),
                 qPrintable(ash.words));
        // Taken out in the middle of the second cook: half of it is left.
        y.ashLoad(tom, y.at(day.addDays(7), 12), "1");
        ash = ashInPit(y.books, y.fuel, tom, now, y.local);
        QVERIFY(std::abs(pounds(ash.ash) - 0.55) < 1e-5);
        // The meter of a task counts the same.
        UpkeepTask &task = y.task("Cans", std::nullopt, QDate(2026, 11, 1));
        task.everyAsh = massFromPounds(3);
        const TaskMeters meters = metersOf(y.books, y.fuel, task, now, y.local);
        QCOMPARE(meters.meters.first().unit, QStringLiteral("lb of ash"));
        QVERIFY(std::abs(meters.meters.first().used - 3.1) < 1e-5);
        QCOMPARE(meters.withoutHeat, 1);
        const DueForecast due = forecastDue(y.books, y.fuel, task, now, y.local);
        QCOMPARE(due.day, day.addDays(7));
        QCOMPARE(due.reason, QStringLiteral("after 3 lb of ash"));
        y.books.yards[1].metric = true;
        QCOMPARE(metersOf(y.books, y.fuel, task, now, y.local).meters.first().unit,
                 QStringLiteral("kg of ash"));
    }

    // Planned cooks leave ash in the ratio of the pit's log, else of the default hardwood: 1.1 % of
    // what gives 100 seasoned pounds at 20 % dry basis. A seasoned pound is 1 lb of that wood with
    // its water, 1/1.2 of it oven-dry.
    void plannedAsh()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        const UseRates rates = ratesOf(y.books, y.fuel, tom);
        QVERIFY(rates.ashAssumed);
        const double lb =
            rates.ashPerHeat * heatFromSeasonedPounds(100).toDouble() / kKilogramsPerPound;
        QVERIFY2(std::abs(lb - 100 / 1.2 * 0.011) < 1e-3, QByteArray::number(lb));
        // Pennsylvania's DCNR: about 60 lb of ash a cord, char and all. A cord of seasoned oak of
        // 3,650 lb leaves more than a third of that as mineral ash, and less than the whole.
        const double cord = 3650 / 1.2 * kDefaultAsh;
        QVERIFY(cord > 20 && cord < 60);
    }
};

RICKYARD_TEST(TstAsh)
#include "tst_ash.moc"
