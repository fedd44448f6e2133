// Verbs on a whole event: one undo step each, refused in words.
#include "models/workspace/commands/event_verbs.h"
#include "tests/support/registry.h"

#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::domain;

namespace {

struct EventYard {
    QTemporaryDir folder;
    Instant now;
    std::unique_ptr<workspace::Workspace> workspace;
    std::unique_ptr<commands::Verbs> verbs;
    RecordId pit = 0, event = 0, cook = 0;

    EventYard()
    {
        auto opened = workspace::Workspace::open(folder.filePath(QStringLiteral("y.rickyard")),
                                                 QDateTime::currentDateTimeUtc());
        workspace = std::move(opened.value());
        verbs = std::make_unique<commands::Verbs>(*workspace, [this] { return now; });
        now = at(QDate(2027, 2, 20), 9);
        Pit p;
        p.name = QStringLiteral("Long Tom");
        p.diameter = Length::ofBase(600000);
        p.length = Length::ofBase(1500000);
        pit = verbs->add(p).value();
        Event e;
        e.name = QStringLiteral("Supper (invented)");
        e.start = at(QDate(2027, 3, 6), 17);
        e.end = at(QDate(2027, 3, 6), 22);
        event = verbs->add(e).value();
        PlannedCook c;
        c.event = event;
        c.pit = pit;
        c.light = at(QDate(2027, 3, 5), 23);
        c.length = durationFromHours(16);
        cook = verbs->add(c).value();
    }
    [[nodiscard]] const Books &books() const { return workspace->books(); }
    [[nodiscard]] Instant at(QDate day, double hour) const
    {
        return LocalTime(books().yard().timeZone).at(day, durationFromHours(hour));
    }
    [[nodiscard]] QVector<Instant> weeks(int count) const
    {
        QVector<Instant> starts;
        for (int i = 1; i <= count; ++i)
            starts << at(QDate(2027, 3, 6).addDays(7 * i), 17);
        return starts;
    }
};

} // namespace

class TstEventVerbs : public QObject
{
    Q_OBJECT

private slots:
    void aSeriesIsOneStep()
    {
        EventYard y;
        const int steps = y.verbs->undoStack().count();
        const auto made = commands::repeatEvent(*y.verbs, y.event, y.weeks(3),
                                                QStringLiteral("FREQ=WEEKLY;COUNT=4"));
        QVERIFY2(made, qPrintable(made.message()));
        QCOMPARE(made->size(), 3);
        QCOMPARE(y.books().events.size(), 4);
        QCOMPARE(y.books().plannedCooks.size(), 4);
        QCOMPARE(y.verbs->undoStack().count(), steps + 1);
        QSet<QString> series;
        for (const Event &e : y.books().events) {
            QCOMPARE(e.repeatRule, QStringLiteral("FREQ=WEEKLY;COUNT=4"));
            series.insert(e.series);
        }
        QCOMPARE(series.size(), 1);
        QVERIFY(!series.begin()->isEmpty());
        const LocalTime local(y.books().yard().timeZone);
        // The clocks go forward on 14 March: lit at 23:00 on every Friday all the same.
        for (const PlannedCook &c : y.books().plannedCooks)
            QVERIFY2(local.timeText(c.light).endsWith(QStringLiteral("11:00 PM")),
                     qPrintable(local.timeText(c.light)));
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.books().events.size(), 1);
        QCOMPARE(y.books().plannedCooks.size(), 1);
        QVERIFY(y.books().events.first().series.isEmpty());
        QVERIFY(y.verbs->redo());
        QCOMPARE(y.books().plannedCooks.size(), 4);
    }

    void whatCannotBeRepeatedIsRefused()
    {
        EventYard y;
        const QString rule = QStringLiteral("FREQ=WEEKLY");
        QVERIFY(!commands::repeatEvent(*y.verbs, y.event, {}, rule));
        QVERIFY(!commands::repeatEvent(*y.verbs, 99, y.weeks(1), rule));
        QVERIFY(
            !commands::repeatEvent(*y.verbs, y.event, y.weeks(commands::kMostRepeats + 1), rule));
        const auto past =
            commands::repeatEvent(*y.verbs, y.event, {y.at(QDate(2027, 1, 2), 17)}, rule);
        QVERIFY(past.message().contains(QStringLiteral("is past")));
        QCOMPARE(y.books().events.size(), 1);
    }

    void laterOnesChangeTogetherAndCanEnd()
    {
        EventYard y;
        const auto made = commands::repeatEvent(*y.verbs, y.event, y.weeks(3),
                                                QStringLiteral("FREQ=WEEKLY;COUNT=4"));
        QVERIFY(made);
        const RecordId second = made->first();
        const Row before = toRow(y.books().events.value(second));
        Event changed = y.books().events.value(second);
        changed.covers = 80;
        QVERIFY(y.verbs->edit(changed));
        const auto later = commands::changeLater(*y.verbs, before, toRow(changed));
        QCOMPARE(later.value(), 2);
        QVERIFY(!y.books().events.value(y.event).covers);
        QCOMPARE(y.books().events.value(made->last()).covers, std::optional<int>(80));
        QVERIFY(y.verbs->undo());
        QVERIFY(!y.books().events.value(made->last()).covers);
        const auto gone = commands::endSeriesAt(*y.verbs, made->at(1));
        QCOMPARE(gone.value(), 2);
        QCOMPARE(y.books().events.size(), 2);
        QCOMPARE(y.books().plannedCooks.size(), 2);
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.books().plannedCooks.size(), 4);
        // The last one has none after it.
        const Row last = toRow(y.books().events.value(made->last()));
        QVERIFY(!commands::changeLater(*y.verbs, last, last));
    }

    void movesAndCopiesAreOneStep()
    {
        EventYard y;
        const LocalTime local(y.books().yard().timeZone);
        QVERIFY(commands::moveEvent(*y.verbs, y.event, QDate(2027, 3, 20)));
        QCOMPARE(local.timeText(y.books().events.value(y.event).start),
                 QStringLiteral("Sat 20 Mar, 5:00 PM"));
        QCOMPARE(local.timeText(y.books().plannedCooks.value(y.cook).light),
                 QStringLiteral("Fri 19 Mar, 11:00 PM"));
        QVERIFY(y.verbs->undo());
        QCOMPARE(local.timeText(y.books().plannedCooks.value(y.cook).light),
                 QStringLiteral("Fri 5 Mar, 11:00 PM"));
        QVERIFY(commands::moveCook(*y.verbs, y.cook, QDate(2027, 3, 4)));
        QCOMPARE(local.timeText(y.books().events.value(y.event).start),
                 QStringLiteral("Sat 6 Mar, 5:00 PM"));
        QVERIFY(!commands::moveCook(*y.verbs, 77, QDate(2027, 3, 4)));
        QVERIFY(y.verbs->undo());

        // Serving an hour and a half later, typed in the form.
        Event event = y.books().events.value(y.event);
        event.start = event.start + Duration::ofBase(5400);
        QVERIFY(y.verbs->edit(event));
        QCOMPARE(local.timeText(y.books().plannedCooks.value(y.cook).light),
                 QStringLiteral("Sat 6 Mar, 12:30 AM"));
        QVERIFY(y.verbs->undo());
        QCOMPARE(local.timeText(y.books().plannedCooks.value(y.cook).light),
                 QStringLiteral("Fri 5 Mar, 11:00 PM"));
        // A list that brings both says itself where the cook stands.
        QVERIFY(y.verbs->putAll({toRow(event)}, QStringLiteral("import")).ok());
        QCOMPARE(local.timeText(y.books().plannedCooks.value(y.cook).light),
                 QStringLiteral("Fri 5 Mar, 11:00 PM"));
        QVERIFY(y.verbs->undo());

        const int steps = y.verbs->undoStack().index();
        const auto copy = commands::addEventCopy(
            *y.verbs, copyOf(y.books(), y.event, y.at(QDate(2027, 4, 3), 17)));
        QVERIFY(copy);
        QCOMPARE(y.verbs->undoStack().index(), steps + 1);
        QCOMPARE(y.books().plannedCooks.last().event, std::optional<RecordId>(copy.value()));
        QVERIFY(y.books().events.value(copy.value()).series.isEmpty());
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.books().events.size(), 1);
    }
};

RICKYARD_TEST(TstEventVerbs)
#include "tst_event_verbs.moc"
