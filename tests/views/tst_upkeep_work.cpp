// The plan moved by hand and the work done on screen, by mouse and keyboard. Invented data.
#include "models/domain/upkeep/starter_tasks.h"
#include "models/items/derived_model.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "models/workspace/photos.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/charts/chart_view.h"
#include "views/records/field_editor.h"
#include "views/records/record_list.h"
#include "views/upkeep/ash_panel.h"
#include "views/upkeep/due_list.h"
#include "views/upkeep/finding_detail.h"
#include "views/upkeep/photo_strip.h"
#include "views/upkeep/plan_board.h"
#include "views/upkeep/plan_list.h"
#include "views/upkeep/plan_panel.h"
#include "views/upkeep/reading_rows.h"
#include "views/upkeep/readings_panel.h"
#include "views/upkeep/reason_panel.h"
#include "views/upkeep/step_list.h"
#include "views/upkeep/task_panel.h"
#include "views/upkeep/upkeep_page.h"
#include "views/upkeep/upkeep_words.h"
#include "views/upkeep/visit_sheet.h"
#include "views/widgets/field_row.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/unit_line_edit.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QTableView>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

namespace {

QAbstractButton *pressable(QWidget &in, const QString &accessibleName)
{
    for (QAbstractButton *b : in.findChildren<QAbstractButton *>())
        if (b->accessibleName() == accessibleName && b->isVisibleTo(&in))
            return b;
    return nullptr;
}

void press(QWidget &in, const QString &accessibleName)
{
    QTest::qWait(10); // what was just made takes its place
    QAbstractButton *found = pressable(in, accessibleName);
    QVERIFY2(found != nullptr, qPrintable(accessibleName));
    QTest::mouseClick(found, Qt::LeftButton);
}

// The fixture's overdue task, with steps and readings.
void makeRich(YardFixture &yard)
{
    UpkeepTask task = yard.workspace->books().tasks.value(yard.task);
    task.steps = QStringLiteral("Empty the bucket. Push the rod through. Pour a cup of water, 1/4 "
                                "in. deep.");
    task.reading = ReadingKind::IcePoint;
    task.readingUnit = QStringLiteral("°F");
    task.readingPoints = 2;
    task.readingLow = Plain::ofBase(30000000);
    task.readingHigh = Plain::ofBase(34000000);
    task.cautions = QStringLiteral("A blocked drain is the usual start of a grease fire.");
    QVERIFY(yard.verbs->edit(task));
    yard.waitForAnswers();
}

struct Shown {
    YardFixture yard;
    std::unique_ptr<UpkeepPage> page;

    explicit Shown(bool rich = false)
    {
        if (rich)
            makeRich(yard);
        yard.waitForAnswers();
        page = std::make_unique<UpkeepPage>(*yard.context);
        page->resize(1280, 800);
        page->setVisible(true);
        QTest::qWait(20);
    }
    template <class T>
    T *find()
    {
        return page->findChild<T *>();
    }
    [[nodiscard]] const Books &books() const { return yard.workspace->books(); }
    Placement placement() { return yard.answers->answers().upkeep.placements.value(0); }
};

QString writePicture(YardFixture &yard, const QString &name)
{
    QImage picture(300, 200, QImage::Format_RGB32);
    picture.fill(Qt::darkCyan);
    const QString path = yard.folder.filePath(name);
    return picture.save(path) ? path : QString();
}

} // namespace

class TstUpkeepWork : public QObject
{
    Q_OBJECT

private slots:
    void aVisitIsDraggedToAnotherDayAndStaysThere()
    {
        Shown s;
        auto *board = s.find<PlanBoard>();
        const Placement was = s.placement();
        QVERIFY(was.task == s.yard.task);
        QCOMPARE(board->content().blocks.size(), 1);
        const QPoint from = board->rectOf(0).center().toPoint();
        const double day = board->xOf(was.start + durationFromHours(24)) - board->xOf(was.start);
        const QPoint to = from + QPoint(qRound(2 * day), 0);
        QTest::mousePress(board, Qt::LeftButton, {}, from);
        QTest::mouseMove(board, (from + to) / 2);
        QTest::mouseMove(board, to);
        // Two days on there are no crew hours (Tuesdays only), and the board says so.
        QVERIFY2(board->words().contains(QStringLiteral("Outside the crew's hours")),
                 qPrintable(board->words()));
        QTest::mouseRelease(board, Qt::LeftButton, {}, to);
        QCOMPARE(s.books().visits.size(), 1);
        const Visit visit = s.books().visits.first();
        QVERIFY(visit.pinned);
        QCOMPARE(visit.task, s.yard.task);
        QCOMPARE(visit.start, was.start + durationFromHours(48));
        QCOMPARE(*visit.end - visit.start, was.end - was.start);
        s.yard.waitForAnswers();
        QVERIFY(s.placement().booked);
        QCOMPARE(s.placement().start, visit.start);
        QVERIFY(board->content().blocks.first().pinned);
        QVERIFY(s.yard.verbs->undo());
        QVERIFY(s.books().visits.isEmpty());
    }

    void aDropIsDrawnIntoTheCrewsHours()
    {
        Shown s;
        auto *board = s.find<PlanBoard>();
        const Placement was = s.placement();
        board->setFirst(QDate(2026, 11, 25));
        // Two hours to the left of a Tuesday's hours, a week on.
        const QPointF from = board->rectOf(0).center();
        const double hour =
            (board->xOf(was.start + durationFromHours(24)) - board->xOf(was.start)) / 24.0;
        const QPoint to = (from + QPointF((7 * 24 - 2) * hour, 0)).toPoint();
        QTest::mousePress(board, Qt::LeftButton, {}, from.toPoint());
        QTest::mouseMove(board, to);
        QTest::mouseRelease(board, Qt::LeftButton, {}, to);
        QCOMPARE(s.books().visits.size(), 1);
        QCOMPARE(s.books().visits.first().start, was.start + Duration::ofBase(7 * 86400));
    }

    void aVisitIsMovedByTheKeys()
    {
        Shown s;
        auto *board = s.find<PlanBoard>();
        const Placement was = s.placement();
        board->setFocus();
        QTest::keyClick(board, Qt::Key_Right);
        QCOMPARE(board->current(), 0);
        QTest::keyClick(board, Qt::Key_Space);
        QVERIFY(board->lifted());
        QTest::keyClick(board, Qt::Key_Right);
        QTest::keyClick(board, Qt::Key_Escape); // left where it was
        QVERIFY(!board->lifted());
        QVERIFY(s.books().visits.isEmpty());
        QTest::keyClick(board, Qt::Key_Space);
        QTest::keyClick(board, Qt::Key_Down); // a day
        QTest::keyClick(board, Qt::Key_Right);
        QTest::keyClick(board, Qt::Key_Right); // half an hour
        QTest::keyClick(board, Qt::Key_Return);
        QCOMPARE(s.books().visits.size(), 1);
        QCOMPARE(s.books().visits.first().start, was.start + durationFromHours(24.5));
        QVERIFY(s.books().visits.first().pinned);
        QVERIFY(s.yard.said.last().contains(QStringLiteral("by hand")));
    }

    void aMoveIntoAFireIsSaidBeforeItIsDropped()
    {
        Shown s;
        const PlannedCook cook = s.books().plannedCooks.value(s.yard.plannedCook);
        const Instant during = cook.light + durationFromHours(2);
        QVERIFY(
            planTrouble(s.books(), s.yard.task, during, during + durationFromHours(0.5), s.yard.now)
                .contains(QStringLiteral("burns then")));
        // Eight hours of cold are asked for after it.
        const Instant warm = cook.light + cook.length + durationFromHours(3);
        QVERIFY(planTrouble(s.books(), s.yard.task, warm, warm + durationFromHours(0.5), s.yard.now)
                    .contains(QStringLiteral("not cold")));
        const Instant late = cook.light - durationFromHours(1);
        QVERIFY(planTrouble(s.books(), s.yard.task, late, late + durationFromHours(0.5), s.yard.now)
                    .contains(QStringLiteral("too soon after")));
    }

    void oneProposalIsAcceptedByItself()
    {
        Shown s;
        press(*s.page, QStringLiteral("Accept this proposal"));
        QCOMPARE(s.books().visits.size(), 1);
        QCOMPARE(s.books().visits.first().start, s.placement().start);
        QVERIFY(!s.books().visits.first().pinned);
        s.yard.waitForAnswers();
        press(*s.page, QStringLiteral("Take the chosen visit off the plan"));
        QVERIFY(s.books().visits.isEmpty());
    }

    void theWorkIsTickedByMouseAndSpaceBar()
    {
        Shown s(true);
        press(*s.page, QStringLiteral("Start the work"));
        auto *sheet = s.find<VisitSheet>();
        QVERIFY(sheet->isVisible());
        QCOMPARE(sheet->steps().count(), 3); // sentences; "1/4 in. deep" is within one
        const RecordId visit = sheet->visit();
        QCOMPARE(s.books().visits.value(visit).state, VisitState::Started);
        QCOMPARE(s.books().visits.value(visit).start, s.yard.now);
        QTest::qWait(20);
        StepTick *second = sheet->steps().tick(1);
        QVERIFY(!second->visibleRegion().isEmpty());
        QTest::mouseClick(second, Qt::LeftButton);
        QCOMPARE(s.books().visits.value(visit).stepsDone, QStringLiteral("1"));
        // The focus went to the first that is still to do.
        QTest::keyClick(sheet->steps().tick(0), Qt::Key_Space);
        QCOMPARE(s.books().visits.value(visit).stepsDone, QStringLiteral("0,1"));
        QTest::keyClick(sheet->steps().tick(0), Qt::Key_Space);
        QCOMPARE(s.books().visits.value(visit).stepsDone, QStringLiteral("1"));
        QVERIFY(s.yard.verbs->undo());
        QVERIFY(sheet->steps().tick(0)->isChecked());
        // Left for later, it goes on where it was.
        press(*s.page, QStringLiteral("Leave for later"));
        QVERIFY(!sheet->isVisible());
        s.yard.waitForAnswers();
        press(*s.page, QStringLiteral("Go on with the work"));
        QCOMPARE(sheet->visit(), visit);
        QVERIFY(sheet->steps().tick(0)->isChecked());
        QVERIFY(!sheet->steps().tick(2)->isChecked());
    }

    void aReadingIsJudgedAsItIsTypedAndOpensAFinding()
    {
        Shown s(true);
        QTest::keyClick(&s.find<DueList>()->view(), Qt::Key_Return);
        auto *sheet = s.find<VisitSheet>();
        QVERIFY(sheet->isVisible());
        ReadingRows &rows = sheet->readings();
        QCOMPARE(rows.count(), 2);
        QTest::keyClicks(rows.field(1), QStringLiteral("33"));
        QCOMPARE(rows.verdict(1)->word(), QStringLiteral("Within"));
        QTest::keyClicks(rows.field(1), QStringLiteral("x"));
        QCOMPARE(rows.verdict(1)->word(), QStringLiteral("A number is expected"));
        QTest::keyClick(rows.field(1), Qt::Key_Backspace);
        QTest::keyClick(rows.field(1), Qt::Key_Return);
        QTest::keyClicks(rows.field(2), QStringLiteral("41.5"));
        QCOMPARE(rows.verdict(2)->word(), QStringLiteral("Outside"));
        QCOMPARE(s.books().checkReadings.size(), 1); // the second is still being typed
        QTest::keyClicks(sheet->editor(QStringLiteral("who"))->inner(), QStringLiteral("Ada"));
        s.yard.now = s.yard.now + durationFromHours(0.5);
        press(*s.page, QStringLiteral("Done: record the work"));
        QVERIFY(!sheet->isVisible());
        QCOMPARE(s.books().checkReadings.size(), 2);
        const Visit visit = s.books().visits.first();
        QCOMPARE(visit.state, VisitState::Done);
        QCOMPARE(*visit.end, s.yard.now);
        QCOMPARE(visit.who, QStringLiteral("Ada"));
        QCOMPARE(s.books().findings.size(), 1);
        const Finding finding = s.books().findings.first();
        QVERIFY2(finding.text.contains(QStringLiteral("41.5")) &&
                     finding.text.contains(QStringLiteral("point 2")),
                 qPrintable(finding.text));
        QCOMPARE(finding.visit.value_or(0), visit.id);
        // The next due is said as soon as it is known.
        s.yard.waitForAnswers();
        QVERIFY2(s.yard.said.last().contains(QStringLiteral("is done")),
                 qPrintable(s.yard.said.last()));
        // One undo takes back the end and the finding.
        QVERIFY(s.yard.verbs->undo());
        QCOMPARE(s.books().visits.first().state, VisitState::Started);
        QVERIFY(s.books().findings.isEmpty());
    }

    void anEndBeforeTheStartIsRefusedAtItsField()
    {
        Shown s(true);
        press(*s.page, QStringLiteral("Start the work"));
        auto *sheet = s.find<VisitSheet>();
        auto *end = sheet->editor(QStringLiteral("end"));
        end->setValue(toValue(s.yard.now - durationFromHours(30)));
        QTest::keyClick(end->inner(), Qt::Key_Up); // touched by a person
        press(*s.page, QStringLiteral("Done: record the work"));
        QVERIFY(sheet->isVisible());
        QVERIFY(sheet->row(QStringLiteral("end"))->hasProblem());
        QCOMPARE(s.books().visits.first().state, VisitState::Started);
    }

    void undoingTheStartClosesTheSheet()
    {
        Shown s(true);
        press(*s.page, QStringLiteral("Start the work"));
        auto *sheet = s.find<VisitSheet>();
        QVERIFY(sheet->isVisible());
        QVERIFY(s.yard.verbs->undo());
        QVERIFY(!sheet->isVisible());
        QVERIFY(s.books().visits.isEmpty());
    }

    void photographsComeInAndAreWatched()
    {
        Shown s(true);
        press(*s.page, QStringLiteral("Start the work"));
        PhotoStrip &strip = s.find<VisitSheet>()->photos();
        const QString good = writePicture(s.yard, QStringLiteral("drain.png"));
        QFile bad(s.yard.folder.filePath(QStringLiteral("notes.jpg")));
        QVERIFY(bad.open(QIODevice::WriteOnly));
        bad.write("words");
        bad.close();
        strip.take({good, bad.fileName()});
        QTRY_VERIFY(!strip.busy());
        QCOMPARE(s.books().photos.size(), 1);
        QVERIFY2(strip.problem().contains(QStringLiteral("notes.jpg")),
                 qPrintable(strip.problem()));
        QCOMPARE(strip.tiles().size(), 1);
        QTRY_VERIFY(strip.tiles().first()->shown());
        QVERIFY(strip.tiles().first()->trouble().isEmpty());
        QLineEdit *caption = strip.tiles().first()->caption();
        QTest::keyClicks(caption, QStringLiteral("Drain before"));
        QTest::keyClick(caption, Qt::Key_Return);
        QCOMPARE(s.books().photos.first().caption, QStringLiteral("Drain before"));
        // Taken off: the record goes, the file stays for an undo.
        const QString path = workspace::photoPath(
            workspace::photoFolderOf(s.yard.workspace->path()), s.books().photos.first());
        press(strip, QStringLiteral("Take the picture off: photograph"));
        QVERIFY(s.books().photos.isEmpty());
        QVERIFY(QFile::exists(path));
        QVERIFY(QFile::remove(path));
        QVERIFY(s.yard.verbs->undo());
        QCOMPARE(strip.tiles().size(), 1);
        QTRY_COMPARE(strip.tiles().first()->trouble(), QStringLiteral("The file is missing"));
    }

    void aTaskIsPutOffWithAReason()
    {
        Shown s;
        press(*s.page, QStringLiteral("Put the task off"));
        auto *reasons = s.find<ReasonPanel>();
        QVERIFY(reasons->isVisible());
        press(*s.page, QStringLiteral("Put it off"));
        QVERIFY(reasons->reasonRow()->hasProblem());
        QTest::keyClicks(reasons->reason(), QStringLiteral("rod is lent out"));
        QTest::keyClick(reasons->reason(), Qt::Key_Return);
        QVERIFY(!reasons->isVisible());
        QCOMPARE(s.books().tasks.value(s.yard.task).snoozeReason,
                 QStringLiteral("rod is lent out"));
        QCOMPARE(s.books().tasks.value(s.yard.task).snoozedUntil, QDate(2026, 12, 2));
        press(*s.page, QStringLiteral("Take the task up again"));
        QVERIFY(!s.books().tasks.value(s.yard.task).snoozedUntil.isValid());
    }

    void aBlockIsSetAsideForOneCookWithAReason()
    {
        Shown s;
        const auto block = [&s] {
            return taskBlocks(s.books(), s.yard.answers->answers().upkeep, s.yard.now)
                .value(s.yard.task);
        };
        QCOMPARE(block().plannedCook, s.yard.plannedCook);
        QVERIFY(block().words.contains(QStringLiteral("Small pit")));
        press(*s.page, QStringLiteral("Go on although it blocks"));
        auto *reasons = s.find<ReasonPanel>();
        QTest::keyClicks(reasons->who(), QStringLiteral("Ada"));
        press(*s.page, QStringLiteral("Go on all the same"));
        QVERIFY(reasons->reasonRow()->hasProblem());
        QVERIFY(s.books().overrides.isEmpty());
        QTest::keyClicks(reasons->reason(), QStringLiteral("drain runs free"));
        press(*s.page, QStringLiteral("Go on all the same"));
        QCOMPARE(s.books().overrides.size(), 1);
        QCOMPARE(s.books().overrides.first().plannedCook.value_or(0), s.yard.plannedCook);
        QVERIFY(block().overridden.contains(QStringLiteral("drain runs free")));
        QVERIFY(pressable(*s.page, QStringLiteral("Go on although it blocks")) == nullptr);
        QVERIFY(s.yard.verbs->undo());
        QVERIFY(s.books().overrides.isEmpty());
    }

    void ashGoesIntoACanAndIsTippedLater()
    {
        Shown s;
        s.find<SectionTabs>()->setCurrent(6);
        auto *ash = s.find<AshPanel>();
        QVERIFY(ash->isVisible());
        press(*s.page, QStringLiteral("Record the ash taken out"));
        QVERIFY(ash->row(QStringLiteral("can"))->hasProblem());
        QTest::keyClicks(ash->can()->lineEdit(), QStringLiteral("Can 1"));
        press(*s.page, QStringLiteral("Record the ash taken out"));
        QCOMPARE(s.books().ashLoads.size(), 1);
        QCOMPARE(s.books().ashLoads.first().pit, s.yard.bigPit);
        QCOMPARE(s.books().ashLoads.first().takenOut, s.yard.now);
        // 96 hours after Wednesday 25 November, 6 PM.
        const QString words = ash->canWords().value(0);
        QVERIFY2(words.contains(QStringLiteral("Not to be tipped before Sun 29 Nov")),
                 qPrintable(words));
        press(*s.page, QStringLiteral("Tipped: Can 1"));
        QTest::keyClicks(ash->where()->inner(), QStringLiteral("Metal bin"));
        press(*s.page, QStringLiteral("Record the can as tipped"));
        QVERIFY(ash->row(QStringLiteral("tipped"))->hasProblem());
        QVERIFY(!s.books().ashLoads.first().tipped);
        press(*s.page, QStringLiteral("Cancel"));
        s.yard.now = s.yard.now + durationFromHours(96);
        press(*s.page, QStringLiteral("Tipped: Can 1"));
        QTest::keyClicks(ash->where()->inner(), QStringLiteral("Metal bin"));
        press(*s.page, QStringLiteral("Record the can as tipped"));
        QCOMPARE(s.books().ashLoads.first().tipped.value_or(Instant()), s.yard.now);
        QVERIFY(ash->canWords().isEmpty());
        QVERIFY(s.yard.verbs->undo());
        QCOMPARE(ash->canWords().size(), 1);
        for (const QString &can : ash->canWords())
            QVERIFY(!can.contains(QStringLiteral("safe"), Qt::CaseInsensitive));
    }

    void readingsStandInAChartAndATable()
    {
        Shown s(true);
        for (int week = 0; week < 4; ++week)
            for (int point = 1; point <= 2; ++point) {
                CheckReading reading;
                reading.task = s.yard.task;
                reading.time = s.yard.now - Duration::ofBase((40 - 10 * week) * 86400LL);
                reading.point = point;
                reading.value = Plain::ofBase((31 + 2 * week) * 1000000LL);
                QVERIFY(s.yard.verbs->add(reading));
            }
        s.find<SectionTabs>()->setCurrent(5);
        auto *panel = s.find<ReadingsPanel>();
        QVERIFY(panel->isVisible());
        const QAbstractItemModelTester tester(
            panel->table()->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        QCOMPARE(panel->table()->model()->rowCount(), 8);
        // 31, 33 lie within 30 to 34; 35 and 37 do not.
        QVERIFY2(panel->chart()->accessibleDescription().startsWith(
                     QStringLiteral("4 of 8 values lie outside")),
                 qPrintable(panel->chart()->accessibleDescription()));
        // Two limits and two points.
        QCOMPARE(panel->chart()->chart()->series().size(), 4);
        QCOMPARE(panel->table()->model()->index(0, 3).data().toString(),
                 QStringLiteral("outside 30 to 34\u2009°F"));
    }

    void aFindingSaysWhatMendedIt()
    {
        Shown s(true);
        Visit visit;
        visit.task = s.yard.task;
        visit.state = VisitState::Done;
        visit.start = s.yard.now - Duration::ofBase(3 * 86400);
        visit.end = visit.start + durationFromHours(1);
        const RecordId mending = s.yard.verbs->add(visit).value();
        Finding finding;
        finding.pit = s.yard.smallPit;
        finding.cook = s.yard.cooks.at(7);
        finding.opened = s.yard.now - Duration::ofBase(20 * 86400);
        finding.text = QStringLiteral("Door leaks");
        finding.state = FindingState::Mended;
        finding.mendedBy = mending;
        const RecordId id = s.yard.verbs->add(finding).value();
        s.yard.waitForAnswers();
        QVERIFY(s.page->show(Link{TableId::Finding, id}));
        auto *detail = s.find<FindingDetail>();
        QVERIFY2(detail->words().contains(QStringLiteral("Seen on the cook")) &&
                     detail->words().contains(QStringLiteral("Mended by")),
                 qPrintable(detail->words()));
        press(*s.page, QStringLiteral("Open the visit that mended it"));
        QCOMPARE(s.yard.opened.last().id, mending);
    }
};

RICKYARD_TEST(TstUpkeepWork)
#include "tst_upkeep_work.moc"
