// Events held again: wall-clock times across a clock change, copies, changes to the later ones.
// America/Chicago, clock changes of 2027 by US law (15 U.S.C. 260a): second Sunday in March, first
// Sunday in November, so 14 March and 7 November.
#include "models/domain/answers/field_words.h"
#include "models/domain/plan/event_moves.h"
#include "models/domain/plan/event_series.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstEventSeries : public QObject
{
    Q_OBJECT

    UpkeepBooks y;
    Instant now;
    RecordId pit = 0;
    RecordId supper = 0;
    RecordId cook = 0;

    // "Sat 13 Mar, 10:00 PM" on the yard's clock.
    [[nodiscard]] QString text(Instant t) const { return y.local.timeText(t); }
    [[nodiscard]] Instant saturday(QDate day, double hour = 12) const { return y.at(day, hour); }

private slots:
    void init()
    {
        y = UpkeepBooks();
        now = y.at(QDate(2027, 2, 20), 9);
        pit = y.pit("Long Tom");
        // Serving Sunday 12:00 to 17:00, lit the evening before at 22:00 for 14 hours.
        supper = y.event("Supper", y.at(QDate(2027, 3, 7), 12), 5, 1);
        cook = y.plan(pit, y.at(QDate(2027, 3, 6), 22), 14, supper);
        y.books.plannedCooks[cook].foods = QStringLiteral("brisket");
        y.books.plannedCooks[cook].outside = temperatureFromFahrenheit(40);
    }

    void wallTimesStayAcrossClockChanges()
    {
        // 14 March: clocks go forward between lighting and serving.
        const EventCopy spring = copyOf(y.books, supper, y.at(QDate(2027, 3, 14), 12));
        QCOMPARE(text(spring.event.start), QStringLiteral("Sun 14 Mar, 12:00 PM"));
        QCOMPARE(text(spring.event.end), QStringLiteral("Sun 14 Mar, 5:00 PM"));
        QCOMPARE(text(spring.cooks.first().light), QStringLiteral("Sat 13 Mar, 10:00 PM"));
        // 22:00 CST is 04:00 UTC, 12:00 CDT is 17:00 UTC: 13 hours instead of 14.
        QCOMPARE(spring.event.start - spring.cooks.first().light, hoursOf(13));
        QCOMPARE(spring.cooks.first().length, hoursOf(14));
        const EventCopy summer = copyOf(y.books, supper, y.at(QDate(2027, 3, 21), 12));
        QCOMPARE(text(summer.cooks.first().light), QStringLiteral("Sat 20 Mar, 10:00 PM"));
        QCOMPARE(summer.event.start - summer.cooks.first().light, hoursOf(14));
        const EventCopy autumn = copyOf(y.books, supper, y.at(QDate(2027, 11, 7), 12));
        QCOMPARE(text(autumn.cooks.first().light), QStringLiteral("Sat 6 Nov, 10:00 PM"));
        QCOMPARE(autumn.event.start - autumn.cooks.first().light, hoursOf(15));
    }

    void aCopyTakesWhatBelongsToIt()
    {
        y.books.events[supper].state = EventState::Done;
        y.books.events[supper].series = QStringLiteral("s");
        y.books.events[supper].repeatRule = QStringLiteral("FREQ=WEEKLY");
        const RecordId cancelled = y.plan(pit, y.at(QDate(2027, 3, 6), 20), 14, supper);
        y.books.plannedCooks[cancelled].cancelled = true;
        // An hour earlier on the new day: the cooks follow.
        const EventCopy copy = copyOf(y.books, supper, y.at(QDate(2027, 4, 4), 11));
        QCOMPARE(copy.event.id, RecordId{0});
        QCOMPARE(copy.event.state, EventState::Booked);
        QVERIFY(copy.event.series.isEmpty() && copy.event.repeatRule.isEmpty());
        QCOMPARE(copy.event.name, QStringLiteral("Supper"));
        QCOMPARE(text(copy.event.end), QStringLiteral("Sun 4 Apr, 4:00 PM"));
        QCOMPARE(copy.cooks.size(), 1);
        QCOMPARE(text(copy.cooks.first().light), QStringLiteral("Sat 3 Apr, 9:00 PM"));
        QCOMPARE(copy.cooks.first().foods, QStringLiteral("brisket"));
        QCOMPARE(copy.cooks.first().pit, pit);
        QVERIFY(!copy.cooks.first().outside); // that day's forecast
        QVERIFY(!copy.cooks.first().event);
    }

    void aCopyCanTakeTheHoursAsCooked()
    {
        y.books.events[supper].state = EventState::Done;
        const RecordId fire =
            y.cook(pit, y.at(QDate(2027, 3, 6), 21), y.at(QDate(2027, 3, 7), 12.1));
        y.books.cooks[fire].planned = cook;
        y.books.cooks[fire].foodMass = massFromPounds(90);
        const EventCopy copy =
            copyOf(y.books, supper, y.at(QDate(2027, 4, 4), 12), CopyHours::AsCooked);
        QCOMPARE(text(copy.cooks.first().light), QStringLiteral("Sat 3 Apr, 9:00 PM"));
        QCOMPARE(copy.cooks.first().length, hoursOf(15)); // 15 h 6 min, in quarters of an hour
        QCOMPARE(copy.cooks.first().foodMass, massFromPounds(90));
        QCOMPARE(copy.cooks.first().foods, QStringLiteral("brisket"));
    }

    void daysShowTheirClashes()
    {
        // A cook of another event is on the pit on 20 March.
        y.plan(pit, y.at(QDate(2027, 3, 20), 18), 12);
        const auto days = seriesDays(y.books, supper,
                                     {y.at(QDate(2027, 3, 7), 12), y.at(QDate(2027, 3, 14), 12),
                                      y.at(QDate(2027, 3, 21), 12), y.at(QDate(2027, 2, 14), 12)},
                                     now);
        QCOMPARE(days.size(), 3); // its own day is not asked about
        QVERIFY(days.at(0).clashes.isEmpty());
        QCOMPARE(days.at(1).clashes.size(), 1);
        QCOMPARE(days.at(1).clashes.first().kind, ClashKind::SamePit);
        QVERIFY(days.at(2).past && !days.at(1).past);
        // Two days of the series itself can clash as well.
        const auto close = seriesDays(
            y.books, supper, {y.at(QDate(2027, 3, 14), 12), y.at(QDate(2027, 3, 14), 16)}, now);
        QVERIFY(!close.at(0).clashes.isEmpty() && !close.at(1).clashes.isEmpty());
    }

    void laterOnesGetTheSameChange()
    {
        Event &first = y.books.events[supper];
        first.series = QStringLiteral("s");
        const EventCopy copy = copyOf(y.books, supper, y.at(QDate(2027, 3, 14), 12));
        Event second = copy.event;
        second.id = 2;
        second.series = QStringLiteral("s");
        second.covers = 50;
        y.books.events.insert(2, second);
        PlannedCook later = copy.cooks.first();
        later.id = 2;
        later.event = 2;
        y.books.plannedCooks.insert(2, later);
        QCOMPARE(laterInSeries(y.books, supper), QVector<RecordId>{2});
        QVERIFY(laterInSeries(y.books, 2).isEmpty());

        const Row before = toRow(first);
        Event changed = first;
        changed.start = y.at(QDate(2027, 3, 7), 13);
        changed.place = QStringLiteral("Barn (invented)");
        const LaterChange events = sameOnLater(y.books, before, toRow(changed));
        QCOMPARE(events.rows.size(), 1);
        const auto moved = fromRow<Event>(events.rows.first());
        QCOMPARE(moved.id, RecordId{2});
        QCOMPARE(text(moved.start), QStringLiteral("Sun 14 Mar, 1:00 PM"));
        QCOMPARE(text(moved.end), QStringLiteral("Sun 14 Mar, 5:00 PM"));
        QCOMPARE(moved.place, QStringLiteral("Barn (invented)"));
        QCOMPARE(moved.covers, std::optional<int>(50)); // not what was changed

        const PlannedCook was = y.books.plannedCooks.value(cook);
        PlannedCook is = was;
        is.foods = QStringLiteral("ribs");
        is.light = was.light + hoursOf(2);
        const LaterChange cooks = sameOnLater(y.books, toRow(was), toRow(is));
        QCOMPARE(cooks.rows.size(), 1);
        const auto shifted = fromRow<PlannedCook>(cooks.rows.first());
        QCOMPARE(shifted.foods, QStringLiteral("ribs"));
        QCOMPARE(text(shifted.light), QStringLiteral("Sun 14 Mar, 12:00 AM"));
        // One whose cook was changed on its own is left alone and counted.
        y.books.plannedCooks[2].light = y.at(QDate(2027, 3, 13), 20);
        QCOMPARE(sameOnLater(y.books, toRow(was), toRow(is)).without, 1);
    }

    void aMoveTakesTheCooksAlong()
    {
        const auto moved = movedEvent(y.books, supper, QDate(2027, 3, 14), now);
        QVERIFY(moved);
        QCOMPARE(moved->rows.size(), 2);
        QCOMPARE(moved->cooks, 1);
        QVERIFY(moved->past.isEmpty());
        QCOMPARE(text(fromRow<Event>(moved->rows.at(0)).start),
                 QStringLiteral("Sun 14 Mar, 12:00 PM"));
        QCOMPARE(text(fromRow<PlannedCook>(moved->rows.at(1)).light),
                 QStringLiteral("Sat 13 Mar, 10:00 PM"));
        QVERIFY(movedEvent(y.books, supper, QDate(2027, 3, 7), now)->rows.isEmpty());
        const auto back = movedEvent(y.books, supper, QDate(2027, 2, 13), now);
        QVERIFY(back && back->past.contains(QStringLiteral("counts as over")));
        const auto alone = movedCook(y.books, cook, QDate(2027, 3, 5), now);
        QVERIFY(alone && alone->rows.size() == 1);
        // Lit an hour before now: still planned, but its time has passed.
        const auto late = movedCook(y.books, cook, QDate(2027, 2, 19), now);
        QVERIFY(late && late->past.contains(QStringLiteral("has passed")));
    }

    void whatIsDoneOrLitIsNotMoved()
    {
        const RecordId fire = y.cook(pit, y.at(QDate(2027, 3, 6), 22), std::nullopt);
        y.books.cooks[fire].planned = cook;
        QVERIFY(movedCook(y.books, cook, QDate(2027, 3, 5), now)
                    .message()
                    .contains(QStringLiteral("was lit")));
        QVERIFY(!movedEvent(y.books, supper, QDate(2027, 3, 14), now));
        y.books.cooks.clear();
        y.books.events[supper].state = EventState::Done;
        QVERIFY(movedEvent(y.books, supper, QDate(2027, 3, 14), now)
                    .message()
                    .contains(QStringLiteral("is done")));
        QVERIFY(!movedCook(y.books, cook, QDate(2027, 3, 5), now));
        y.books.events[supper].state = EventState::Cancelled;
        QVERIFY(!movedEvent(y.books, supper, QDate(2027, 3, 14), now));
        QVERIFY(!movedEvent(y.books, 99, QDate(2027, 3, 14), now));
    }
};

RICKYARD_TEST(TstEventSeries)
#include "tst_event_series.moc"
