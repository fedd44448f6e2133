// Upkeep as it is done: each verb is checked, durable, one undo step, and takes nothing with it
// when it refuses. Invented data.
#include "models/domain/upkeep/starter_tasks.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "tests/support/registry.h"

#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::commands;

namespace {

const QDateTime kCareUtc(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);
const Instant kCareNow = Instant::ofSeconds(kCareUtc.toSecsSinceEpoch());

struct CareYard {
    QTemporaryDir folder;
    Instant now = kCareNow;
    std::unique_ptr<workspace::Workspace> yard;
    std::unique_ptr<Verbs> verbs;
    RecordId pit = 0, task = 0, event = 0, planned = 0;

    CareYard()
    {
        reopen();
        Pit p;
        p.name = QStringLiteral("Long Tom");
        p.diameter = Length::ofBase(600000);
        p.length = Length::ofBase(1500000);
        pit = verbs->add(p).value();
        UpkeepTask t;
        t.name = QStringLiteral("Gasket test");
        t.pit = pit;
        t.since = QDate(2026, 10, 1);
        t.everyDays = 30;
        t.work = durationFromHours(0.5);
        t.blocksLighting = true;
        t.reading = ReadingKind::PaperTest;
        t.readingPoints = 8;
        t.readingUnit = QStringLiteral("of 3");
        t.readingLow = Plain::ofBase(2000000);
        task = verbs->add(t).value();
        Event e;
        e.name = QStringLiteral("Mill Field Supper (invented)");
        e.start = now + Duration::ofBase(9 * 86400);
        e.end = e.start + durationFromHours(5);
        event = verbs->add(e).value();
        PlannedCook c;
        c.pit = pit;
        c.event = event;
        c.light = e.start - durationFromHours(12);
        c.length = durationFromHours(12);
        planned = verbs->add(c).value();
    }
    void reopen()
    {
        verbs.reset();
        yard.reset();
        auto opened =
            workspace::Workspace::open(folder.filePath(QStringLiteral("y.rickyard")), kCareUtc);
        if (!opened)
            qFatal("%s", qPrintable(opened.message()));
        yard = std::move(opened.value());
        verbs = std::make_unique<Verbs>(*yard, [this] { return now; });
    }
    [[nodiscard]] const Books &books() const { return yard->books(); }
    [[nodiscard]] Visit visit(RecordId id) const { return books().visits.value(id); }
    [[nodiscard]] int steps() const { return verbs->undoStack().index(); }
};

bool namesField(const Problems &problems, const char *field)
{
    return problems.size() == 1 && problems.first().field == QLatin1String(field) &&
           !problems.first().message.isEmpty();
}

} // namespace

class TstUpkeepVerbs : public QObject
{
    Q_OBJECT

private slots:
    void aPlacedVisitIsTheOneThatStarts()
    {
        CareYard y;
        Visit later;
        later.task = y.task;
        later.start = y.now + Duration::ofBase(5 * 86400);
        later.end = later.start + durationFromHours(0.5);
        Visit sooner = later;
        sooner.start = y.now + Duration::ofBase(86400);
        sooner.end = sooner.start + durationFromHours(0.5);
        const RecordId second = y.verbs->add(later).value();
        const RecordId first = y.verbs->add(sooner).value();
        const int before = y.steps();
        const auto started = startVisit(*y.verbs, y.task);
        QVERIFY(started);
        QCOMPARE(started.value(), first);
        QCOMPARE(y.steps(), before + 1);
        QCOMPARE(y.visit(first).state, VisitState::Started);
        QCOMPARE(y.visit(first).start, y.now);
        QVERIFY(!y.visit(first).end);
        QCOMPARE(y.visit(second).state, VisitState::Placed);
        // Starting again goes on with it, and is no step.
        y.now = y.now + durationFromHours(1);
        QCOMPARE(startVisit(*y.verbs, y.task).value(), first);
        QCOMPARE(y.steps(), before + 1);
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.visit(first).start, sooner.start);
        QCOMPARE(y.visit(first).state, VisitState::Placed);
        QVERIFY(!startVisit(*y.verbs, 9999));
    }

    void ticksAreDurableAtOnce()
    {
        CareYard y;
        const RecordId visit = startVisit(*y.verbs, y.task).value();
        QVERIFY(tickStep(*y.verbs, visit, 2, true));
        QVERIFY(tickStep(*y.verbs, visit, 0, true));
        QCOMPARE(y.visit(visit).stepsDone, QStringLiteral("0,2"));
        // Again is no step.
        const int before = y.steps();
        QVERIFY(tickStep(*y.verbs, visit, 2, true));
        QCOMPARE(y.steps(), before);
        QVERIFY(tickStep(*y.verbs, visit, 0, false));
        QVERIFY(!tickStep(*y.verbs, visit, -1, true));
        y.reopen(); // as after a crash: nothing was said to save
        QCOMPARE(tickedSteps(y.visit(visit)), QVector<int>{2});
        Visit odd;
        odd.stepsDone = QStringLiteral("1,,x,-3,1, 4");
        QCOMPARE(tickedSteps(odd), (QVector<int>{1, 4}));
    }

    void readingsAreWrittenChangedAndTakenAway()
    {
        CareYard y;
        const RecordId visit = startVisit(*y.verbs, y.task).value();
        QVERIFY(noteReading(*y.verbs, visit, 8, Plain::ofBase(1000000)));
        QCOMPARE(y.books().checkReadings.size(), 1);
        const CheckReading first = y.books().checkReadings.first();
        QCOMPARE(first.task, y.task);
        QCOMPARE(first.visit.value_or(0), visit);
        QCOMPARE(first.time, y.now);
        y.now = y.now + durationFromHours(0.1);
        QVERIFY(noteReading(*y.verbs, visit, 8, Plain::ofBase(3000000)));
        QCOMPARE(y.books().checkReadings.size(), 1);
        QCOMPARE(y.books().checkReadings.first().value, Plain::ofBase(3000000));
        QCOMPARE(y.books().checkReadings.first().time, y.now);
        // The task has eight points.
        QVERIFY(!noteReading(*y.verbs, visit, 9, Plain::ofBase(1)));
        QVERIFY(noteReading(*y.verbs, visit, 8, std::nullopt));
        QVERIFY(y.books().checkReadings.isEmpty());
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.books().checkReadings.size(), 1);
    }

    void doneIsOneStepWithItsFindings()
    {
        CareYard y;
        Finding warped;
        warped.pit = y.pit;
        warped.opened = y.now - Duration::ofBase(20 * 86400);
        warped.text = QStringLiteral("Door leaks at the top");
        const RecordId old = y.verbs->add(warped).value();
        const RecordId visit = startVisit(*y.verbs, y.task).value();
        VisitReport report;
        report.visit = visit;
        report.start = y.now;
        report.end = y.now + durationFromHours(0.4);
        report.who = QStringLiteral("Ada (invented)");
        report.found = QStringLiteral("loose at two points");
        report.cost = Money::ofBase(1250);
        report.findings = {QStringLiteral("Paper slips at point 3"),
                           QStringLiteral("Paper slips at point 4")};
        report.mended = {old};
        // The end lies ahead: nothing is written.
        const int before = y.steps();
        QVERIFY(namesField(finishVisit(*y.verbs, report).problems(), "end"));
        QCOMPARE(y.steps(), before);
        QCOMPARE(y.books().findings.size(), 1);
        y.now = report.end;
        QVERIFY(finishVisit(*y.verbs, report));
        QCOMPARE(y.steps(), before + 1);
        const Visit done = y.visit(visit);
        QCOMPARE(done.state, VisitState::Done);
        QCOMPARE(*done.end, report.end);
        QCOMPARE(done.who, report.who);
        QCOMPARE(*done.cost, Money::ofBase(1250));
        QCOMPARE(y.books().findings.size(), 3);
        const Finding opened = y.books().findings.last();
        QCOMPARE(opened.visit.value_or(0), visit);
        QCOMPARE(opened.pit.value_or(0), y.pit);
        QCOMPARE(opened.state, FindingState::Open);
        QCOMPARE(y.books().findings.value(old).state, FindingState::Mended);
        QCOMPARE(y.books().findings.value(old).mendedBy.value_or(0), visit);
        // It is over: no more ticks, no second end.
        QVERIFY(!tickStep(*y.verbs, visit, 1, true));
        QVERIFY(!finishVisit(*y.verbs, report));
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.visit(visit).state, VisitState::Started);
        QCOMPARE(y.books().findings.size(), 1);
        QCOMPARE(y.books().findings.value(old).state, FindingState::Open);
        QVERIFY(y.verbs->redo());
        QCOMPARE(y.visit(visit).state, VisitState::Done);
    }

    void anEndBeforeTheStartIsRefused()
    {
        CareYard y;
        VisitReport report;
        report.visit = startVisit(*y.verbs, y.task).value();
        report.start = y.now;
        report.end = y.now - durationFromHours(1);
        QVERIFY(namesField(finishVisit(*y.verbs, report).problems(), "end"));
        QCOMPARE(y.visit(report.visit).state, VisitState::Started);
    }

    void whatAHandPlacesIsPinned()
    {
        CareYard y;
        Visit proposal;
        proposal.task = y.task;
        proposal.start = y.now + Duration::ofBase(2 * 86400);
        proposal.end = proposal.start + durationFromHours(0.5);
        const int before = y.steps();
        QVERIFY(pinVisits(*y.verbs, {proposal}));
        QCOMPARE(y.steps(), before + 1);
        QCOMPARE(y.books().visits.size(), 1);
        Visit placed = y.books().visits.first();
        QVERIFY(placed.pinned);
        QCOMPARE(placed.state, VisitState::Placed);
        placed.start = placed.start + Duration::ofBase(86400);
        placed.end = *placed.end + Duration::ofBase(86400);
        QVERIFY(pinVisits(*y.verbs, {placed}));
        QCOMPARE(y.books().visits.size(), 1);
        QCOMPARE(y.visit(placed.id).start, proposal.start + Duration::ofBase(86400));
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.visit(placed.id).start, proposal.start);
        // What is done stays where it was.
        Visit done = y.visit(placed.id);
        done.state = VisitState::Done;
        QVERIFY(y.verbs->edit(done));
        QVERIFY(!pinVisits(*y.verbs, {placed}));
    }

    void puttingOffNeedsADayAheadAndAReason()
    {
        CareYard y;
        const QDate today(2026, 11, 25);
        QVERIFY(namesField(
            snoozeTask(*y.verbs, y.task, today, QStringLiteral("no gasket rope")).problems(),
            "snoozed_until"));
        QVERIFY(namesField(
            snoozeTask(*y.verbs, y.task, today.addDays(7), QStringLiteral("  ")).problems(),
            "snooze_reason"));
        QCOMPARE(snoozeTask(*y.verbs, y.task, QDate(), QString()).problems().size(), 2);
        QVERIFY(!y.books().tasks.value(y.task).snoozedUntil.isValid());
        QVERIFY(snoozeTask(*y.verbs, y.task, today.addDays(7), QStringLiteral(" no gasket rope ")));
        QCOMPARE(y.books().tasks.value(y.task).snoozedUntil, today.addDays(7));
        QCOMPARE(y.books().tasks.value(y.task).snoozeReason, QStringLiteral("no gasket rope"));
        QVERIFY(wakeTask(*y.verbs, y.task));
        QVERIFY(!y.books().tasks.value(y.task).snoozedUntil.isValid());
        QVERIFY(y.verbs->undo());
        QCOMPARE(y.books().tasks.value(y.task).snoozeReason, QStringLiteral("no gasket rope"));
    }

    void goingOnIsKeptWithItsReason()
    {
        CareYard y;
        Override record;
        record.task = y.task;
        record.plannedCook = y.planned;
        QVERIFY(namesField(overrideBlock(*y.verbs, record).problems(), "reason"));
        record.reason = QStringLiteral("looked at it, seals well");
        record.who = QStringLiteral("Ada (invented)");
        const auto kept = overrideBlock(*y.verbs, record);
        QVERIFY(kept);
        QCOMPARE(y.books().overrides.value(kept.value()).time, y.now);
        record.plannedCook.reset();
        QVERIFY(namesField(overrideBlock(*y.verbs, record).problems(), "planned_cook"));
        UpkeepTask harmless = y.books().tasks.value(y.task);
        harmless.blocksLighting = false;
        QVERIFY(y.verbs->edit(harmless));
        record.plannedCook = y.planned;
        QVERIFY(namesField(overrideBlock(*y.verbs, record).problems(), "task"));
        QCOMPARE(y.books().overrides.size(), 1);
    }

    void ashWaitsNinetySixHours()
    {
        CareYard y;
        AshLoad load;
        load.pit = y.pit;
        QVERIFY(namesField(takeOutAsh(*y.verbs, load).problems(), "can"));
        load.can = QStringLiteral(" Can   1 ");
        QVERIFY(takeOutAsh(*y.verbs, load));
        const AshLoad first = y.books().ashLoads.first();
        QCOMPARE(first.can, QStringLiteral("Can 1"));
        QCOMPARE(first.takenOut, y.now);
        // 96 hours: city fire departments, see starter_tasks.h.
        QCOMPARE(kAshCooling, durationFromHours(96));
        y.now = first.takenOut + durationFromHours(60);
        QVERIFY(takeOutAsh(*y.verbs, load)); // more into the same can: the time runs anew
        const Instant second = y.now;
        y.now = first.takenOut + durationFromHours(97);
        const Problems early =
            tipAsh(*y.verbs, QStringLiteral("can 1"), QStringLiteral("Pit yard"), y.now).problems();
        QVERIFY(namesField(early, "tipped"));
        QVERIFY(early.first().message.contains(QStringLiteral("at the earliest")));
        QVERIFY(!y.books().ashLoads.first().tipped);
        QVERIFY(namesField(
            tipAsh(*y.verbs, QStringLiteral("Can 1"), QString(), second + durationFromHours(96))
                .problems()
                .mid(0, 1),
            "tipped_where"));
        y.now = second + durationFromHours(96);
        const int before = y.steps();
        QVERIFY(tipAsh(*y.verbs, QStringLiteral("Can 1"), QStringLiteral("Metal bin"), y.now));
        QCOMPARE(y.steps(), before + 1);
        for (const AshLoad &tipped : y.books().ashLoads) {
            QCOMPARE(tipped.tipped.value_or(Instant()), y.now);
            QCOMPARE(tipped.where, QStringLiteral("Metal bin"));
            QVERIFY(tipped.note.isEmpty());
        }
        QVERIFY(namesField(
            tipAsh(*y.verbs, QStringLiteral("Can 1"), QStringLiteral("x"), y.now).problems(),
            "can"));
        QVERIFY(y.verbs->undo());
        for (const AshLoad &load2 : y.books().ashLoads)
            QVERIFY(!load2.tipped);
    }

    void whatWasTippedTooEarlyIsRecordedAsThat()
    {
        CareYard y;
        AshLoad load;
        load.pit = y.pit;
        load.can = QStringLiteral("Can 2");
        load.takenOut = y.now - durationFromHours(10);
        QVERIFY(takeOutAsh(*y.verbs, load));
        QVERIFY(tipAsh(*y.verbs, load.can, QStringLiteral("Metal bin"), y.now, true));
        QVERIFY(y.books().ashLoads.first().note.contains(QStringLiteral("before 96 hours")));
        // What lies ahead is refused in any case.
        QVERIFY(takeOutAsh(*y.verbs, load));
        QVERIFY(namesField(tipAsh(*y.verbs, load.can, QStringLiteral("Metal bin"),
                                  y.now + durationFromHours(1), true)
                               .problems(),
                           "tipped"));
        load.takenOut = y.now + durationFromHours(1);
        QVERIFY(namesField(takeOutAsh(*y.verbs, load).problems(), "taken_out"));
    }

    void aPhotographBelongsSomewhere()
    {
        CareYard y;
        Photo photo;
        photo.file = QStringLiteral("abc.jpg");
        photo.sha256 = QString(64, QLatin1Char('a'));
        QVERIFY(!addPhoto(*y.verbs, photo));
        photo.visit = startVisit(*y.verbs, y.task).value();
        const auto added = addPhoto(*y.verbs, photo);
        QVERIFY2(added, qPrintable(added.message()));
        QCOMPARE(y.books().photos.value(added.value()).taken, y.now);
        QVERIFY(y.verbs->undo());
        QVERIFY(y.books().photos.isEmpty());
    }
};

RICKYARD_TEST(TstUpkeepVerbs)
#include "tst_upkeep_verbs.moc"
