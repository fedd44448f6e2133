// The calendar of the Events page by mouse and keyboard. The fixture's now is Wednesday, 25
// November 2026, 18:00; its event serves on Saturday, 5 December, from 18:00 and its cook is lit at
// 4:00 that day.
#include "models/items/wording.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/events/calendar.h"
#include "views/events/calendar_day.h"
#include "views/events/calendar_panel.h"
#include "views/events/events_page.h"
#include "views/records/field_editor.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/widgets/inline_question.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/section_tabs.h"

#include <QAbstractButton>
#include <QApplication>
#include <QScrollBar>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

namespace {

const QDate kSupperDay(2026, 12, 5);

// A page that is shown, with its calendar.
struct Shown {
    YardFixture yard;
    std::unique_ptr<EventsPage> page;
    Calendar *calendar = nullptr;
    SectionTabs *sections = nullptr;

    explicit Shown(bool filled = true) : yard(filled)
    {
        yard.waitForAnswers();
        page = std::make_unique<EventsPage>(*yard.context);
        page->resize(1100, 800);
        page->setVisible(true);
        QTest::qWait(0);
        calendar = page->findChild<Calendar *>();
        sections = page->findChild<SectionTabs *>();
    }
    [[nodiscard]] const Books &books() const { return yard.workspace->books(); }
    [[nodiscard]] int itemOf(TableId table, RecordId id) const
    {
        for (int i = 0; i < calendar->items().size(); ++i) {
            const Link link = calendar->items().at(i).item.link;
            if (link.table == table && link.id == id)
                return i;
        }
        return -1;
    }
    [[nodiscard]] QPoint pointOf(TableId table, RecordId id) const
    {
        return calendar->rectOf(itemOf(table, id)).center().toPoint();
    }
    [[nodiscard]] QPoint pointOf(QDate day) const
    {
        const QRectF cell = calendar->rectOf(day);
        return QPointF(cell.center().x(), cell.bottom() - 6).toPoint();
    }
    void drag(QPoint from, QPoint to) const
    {
        QWidget *view = calendar->viewport();
        QTest::mousePress(view, Qt::LeftButton, {}, from);
        const QPoint middle = (from + to) / 2;
        for (const QPoint at : {middle, to}) {
            QMouseEvent move(QEvent::MouseMove, at, view->mapToGlobal(at), Qt::NoButton,
                             Qt::LeftButton, {});
            QApplication::sendEvent(view, &move);
        }
        QTest::mouseRelease(view, Qt::LeftButton, {}, to);
    }
    void dragEvent(QDate to) const
    {
        const QPoint from = pointOf(TableId::Event, yard.event);
        const QRectF there = calendar->rectOf(to);
        const QRectF here = calendar->rectOf(kSupperDay);
        drag(from, from + (there.topLeft() - here.topLeft()).toPoint());
    }
    [[nodiscard]] QString timeOf(Instant time) const
    {
        return LocalTime(books().yard().timeZone).timeText(time);
    }
    [[nodiscard]] QString eventTime() const
    {
        return timeOf(books().events.value(yard.event).start);
    }
    [[nodiscard]] QString cookTime() const
    {
        return timeOf(books().plannedCooks.value(yard.plannedCook).light);
    }
};

} // namespace

class TstCalendar : public QObject
{
    Q_OBJECT

private slots:
    void showsSixWeeksFromThisOne()
    {
        Shown s;
        QVERIFY(s.calendar->isVisible());
        QCOMPARE(s.calendar->day(), QDate(2026, 11, 25));
        QCOMPARE(s.calendar->firstDayShown(), QDate(2026, 11, 23)); // a Monday
        // Six weeks are in sight: the last Sunday of them still has its place.
        const QRectF last = s.calendar->rectOf(QDate(2027, 1, 3));
        QVERIFY2(last.bottom() <= s.calendar->viewport()->height() + 1,
                 qPrintable(QString::number(last.bottom())));
        // It scrolls to earlier and later ones.
        QVERIFY(s.calendar->verticalScrollBar()->maximum() > 0);
        QVERIFY(s.calendar->rectOf(QDate(2026, 11, 16)).top() < 0);
        QVERIFY(s.calendar->rectOf(QDate(2027, 11, 25)).top() > 800);
    }

    void barsStandAtTheirHoursAcrossMidnight()
    {
        Shown s;
        const double day = s.calendar->rectOf(kSupperDay).width();
        const QRectF cook = s.calendar->rectOf(s.itemOf(TableId::PlannedCook, s.yard.plannedCook));
        // 4:00 to 18:00.
        QVERIFY(std::abs(cook.left() - (s.calendar->rectOf(kSupperDay).left() + day * 4 / 24)) < 2);
        QVERIFY(std::abs(cook.width() - day * 14 / 24) < 2);
        PlannedCook night = s.books().plannedCooks.value(s.yard.plannedCook);
        night.light = night.light - durationFromHours(6); // Friday 22:00
        QVERIFY(s.yard.verbs->edit(night));
        const QRectF over = s.calendar->rectOf(s.itemOf(TableId::PlannedCook, s.yard.plannedCook));
        QVERIFY(over.left() < s.calendar->rectOf(kSupperDay).left());
        QVERIFY(over.right() > s.calendar->rectOf(kSupperDay).left());
    }

    void travelIsPartOfTheBar()
    {
        Shown s;
        const double before = s.calendar->rectOf(s.itemOf(TableId::Event, s.yard.event)).width();
        Event event = s.books().events.value(s.yard.event);
        event.travel = durationFromHours(2);
        QVERIFY(s.yard.verbs->edit(event));
        const int item = s.itemOf(TableId::Event, s.yard.event);
        const double day = s.calendar->rectOf(kSupperDay).width();
        QVERIFY(std::abs(s.calendar->rectOf(item).width() - before - day * 4 / 24) < 2);
        QVERIFY(s.calendar->items().at(item).item.detail.contains(QStringLiteral("crew leaves")));
    }

    void keysMoveTheDayAndOpenTheRecord()
    {
        Shown s;
        s.calendar->setFocus();
        QTest::keyClick(s.calendar, Qt::Key_Down);
        QCOMPARE(s.calendar->day(), QDate(2026, 12, 2));
        for (int i = 0; i < 3; ++i)
            QTest::keyClick(s.calendar, Qt::Key_Right);
        QCOMPARE(s.calendar->day(), kSupperDay);
        QTest::keyClick(s.calendar, Qt::Key_Left);
        QTest::keyClick(s.calendar, Qt::Key_Up);
        QCOMPARE(s.calendar->day(), QDate(2026, 11, 27));
        QTest::keyClick(s.calendar, Qt::Key_Home);
        QCOMPARE(s.calendar->day(), QDate(2026, 11, 25));
        s.calendar->setDay(kSupperDay);
        QVERIFY2(
            s.calendar->accessibleDescription().contains(QStringLiteral("Saturday 5 December")),
            qPrintable(s.calendar->accessibleDescription()));
        const auto *words = s.page->findChild<CalendarDay *>();
        QVERIFY2(words->plainText().contains(QStringLiteral("Mill Field Supper")),
                 qPrintable(words->plainText()));
        // Space goes through the day, Enter opens what is chosen: the cook, then the event.
        QTest::keyClick(s.calendar, Qt::Key_Space);
        QTest::keyClick(s.calendar, Qt::Key_Space);
        QVERIFY(s.calendar->accessibleDescription().contains(QStringLiteral("2 of 2")));
        QTest::keyClick(s.calendar, Qt::Key_Return);
        QCOMPARE(s.sections->current(), 1);
        QCOMPARE(qobject_cast<RecordList *>(s.sections->page(1))->chosen(), s.yard.event);
    }

    void aClickOpensTheRecord()
    {
        Shown s;
        QTest::mouseClick(s.calendar->viewport(), Qt::LeftButton, {},
                          s.pointOf(TableId::PlannedCook, s.yard.plannedCook));
        QCOMPARE(s.sections->current(), 2);
        QCOMPARE(qobject_cast<RecordList *>(s.sections->page(2))->chosen(), s.yard.plannedCook);
    }

    void nAddsAnEventThatDay()
    {
        Shown s;
        s.calendar->setFocus();
        s.calendar->setDay(QDate(2026, 12, 12));
        QTest::keyClick(s.calendar, Qt::Key_N);
        QCOMPARE(s.sections->current(), 1);
        auto *list = qobject_cast<RecordList *>(s.sections->page(1));
        QTest::keyClicks(list->form().editor(QStringLiteral("name"))->inner(),
                         QStringLiteral("Harvest Table (invented)"));
        QVERIFY(list->form().save());
        const Event made = s.books().events.last();
        // At the clock times of the last event.
        QCOMPARE(s.timeOf(made.start), QStringLiteral("Sat 12 Dec, 6:00 PM"));
        QCOMPARE(made.end - made.start, durationFromHours(5));
    }

    void draggingAnEventTakesItsCooksAlongInOneStep()
    {
        Shown s;
        const int steps = s.yard.verbs->undoStack().count();
        s.dragEvent(QDate(2026, 12, 13));
        QCOMPARE(s.eventTime(), QStringLiteral("Sun 13 Dec, 6:00 PM"));
        QCOMPARE(s.cookTime(), QStringLiteral("Sun 13 Dec, 4:00 AM"));
        QCOMPARE(s.yard.verbs->undoStack().count(), steps + 1);
        QVERIFY(s.yard.said.last().contains(QStringLiteral("Sunday 13 December")));
        QCOMPARE(s.calendar->day(), QDate(2026, 12, 13));
        QVERIFY(s.yard.verbs->undo());
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 5 Dec, 6:00 PM"));
        QCOMPARE(s.cookTime(), QStringLiteral("Sat 5 Dec, 4:00 AM"));
        // A cook is dragged alone; and let go where it was, nothing moves.
        const QPoint from = s.pointOf(TableId::PlannedCook, s.yard.plannedCook);
        const double day = s.calendar->rectOf(kSupperDay).width();
        s.drag(from, from - QPoint(static_cast<int>(day), 0));
        QCOMPARE(s.cookTime(), QStringLiteral("Fri 4 Dec, 4:00 AM"));
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 5 Dec, 6:00 PM"));
        QVERIFY(s.yard.verbs->undo());
        s.drag(from, from + QPoint(static_cast<int>(day / 5), 0));
        QCOMPARE(s.cookTime(), QStringLiteral("Sat 5 Dec, 4:00 AM"));
    }

    void shiftAndArrowMoveToo()
    {
        Shown s;
        s.calendar->setFocus();
        s.calendar->setDay(kSupperDay);
        QTest::keyClick(s.calendar, Qt::Key_Space);
        QTest::keyClick(s.calendar, Qt::Key_Space);
        QTest::keyClick(s.calendar, Qt::Key_Down, Qt::ShiftModifier);
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 12 Dec, 6:00 PM"));
    }

    void thePastIsAskedAbout()
    {
        Shown s;
        auto *question = s.page->findChild<CalendarPanel *>()->findChild<InlineQuestion *>();
        s.dragEvent(QDate(2026, 11, 24));
        QVERIFY(question->isVisible());
        QVERIFY2(question->question().contains(QStringLiteral("is past")),
                 qPrintable(question->question()));
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 5 Dec, 6:00 PM"));
        // The way back has the focus.
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
        QVERIFY(!question->isVisible());
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 5 Dec, 6:00 PM"));
        s.dragEvent(QDate(2026, 11, 24));
        QTest::mouseClick(question->findChildren<QAbstractButton *>().first(), Qt::LeftButton);
        QCOMPARE(s.eventTime(), QStringLiteral("Tue 24 Nov, 6:00 PM"));
    }

    void whatCannotMoveSaysWhy()
    {
        Shown s;
        auto *notice = s.page->findChild<CalendarPanel *>()->findChild<NoticeBar *>();
        Event event = s.books().events.value(s.yard.event);
        event.state = EventState::Done;
        QVERIFY(s.yard.verbs->edit(event));
        QTest::qWait(0);
        const QPoint from = s.pointOf(TableId::Event, s.yard.event);
        const double day = s.calendar->rectOf(kSupperDay).width();
        s.drag(from, from + QPoint(static_cast<int>(day), 0));
        QVERIFY(notice->isVisible());
        QVERIFY2(notice->text().contains(QStringLiteral("is done")), qPrintable(notice->text()));
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 5 Dec, 6:00 PM"));
    }

    void escapeLetsGo()
    {
        Shown s;
        const QPoint from = s.pointOf(TableId::Event, s.yard.event);
        const QPoint to =
            from + QPoint(0, static_cast<int>(s.calendar->rectOf(kSupperDay).height()));
        QWidget *view = s.calendar->viewport();
        QTest::mousePress(view, Qt::LeftButton, {}, from);
        QMouseEvent move(QEvent::MouseMove, to, view->mapToGlobal(to), Qt::NoButton, Qt::LeftButton,
                         {});
        QApplication::sendEvent(view, &move);
        QTest::keyClick(s.calendar, Qt::Key_Escape);
        QTest::mouseRelease(view, Qt::LeftButton, {}, to);
        QCOMPARE(s.eventTime(), QStringLiteral("Sat 5 Dec, 6:00 PM"));
    }

    void clashesAreMarkedAndSaid()
    {
        Shown s;
        PlannedCook twice = s.books().plannedCooks.value(s.yard.plannedCook);
        twice.id = 0;
        twice.event.reset();
        twice.light = twice.light + durationFromHours(6);
        const auto added = s.yard.verbs->add(twice);
        QVERIFY(added);
        const CalendarItem item =
            s.calendar->items().at(s.itemOf(TableId::PlannedCook, added.value()));
        QVERIFY(!item.clashes.isEmpty());
        QVERIFY2(item.item.label.startsWith(QStringLiteral("One pit twice")),
                 qPrintable(item.item.label));
        s.calendar->setDay(kSupperDay);
        QVERIFY2(s.calendar->accessibleDescription().contains(QStringLiteral("clash")),
                 qPrintable(s.calendar->accessibleDescription()));
        QVERIFY(s.page->findChild<CalendarDay *>()->plainText().contains(
            QStringLiteral("is asked for twice")));
    }
};

RICKYARD_TEST(TstCalendar)
#include "tst_calendar.moc"
