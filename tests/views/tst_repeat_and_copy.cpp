// Repeating an event, copying one, and changing the later ones of a series, by keys and mouse.
#include "models/workspace/commands/event_verbs.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/events/copy_dialog.h"
#include "views/events/event_details.h"
#include "views/events/events_page.h"
#include "views/events/later_question.h"
#include "views/events/repeat_dialog.h"
#include "views/records/field_editor.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/widgets/field_row.h"
#include "views/widgets/section_tabs.h"

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

namespace {

QPushButton *primaryOf(QWidget &dialog)
{
    for (QPushButton *button : dialog.findChildren<QPushButton *>())
        if (button->property("role") == QStringLiteral("primary"))
            return button;
    return nullptr;
}

void typeCount(RepeatDialog &dialog, int count)
{
    auto *spin = dialog.findChild<QSpinBox *>();
    spin->setFocus();
    spin->selectAll();
    QTest::keyClicks(spin, QString::number(count));
}

QStringList daysOf(const Books &books)
{
    const LocalTime local(books.yard().timeZone);
    QMap<Instant, QString> days;
    for (const Event &event : books.events)
        days.insert(event.start, local.timeText(event.start));
    return days.values();
}

} // namespace

class TstRepeatAndCopy : public QObject
{
    Q_OBJECT

private slots:
    void everyWeekWithItsCooks()
    {
        YardFixture yard;
        yard.waitForAnswers();
        RepeatDialog dialog(*yard.context, yard.event);
        dialog.show();
        QCOMPARE(dialog.rule(), QStringLiteral("FREQ=WEEKLY;BYDAY=SA;COUNT=6"));
        typeCount(dialog, 4);
        QCOMPARE(dialog.rule(), QStringLiteral("FREQ=WEEKLY;BYDAY=SA;COUNT=4"));
        QCOMPARE(dialog.previewText(), (QStringList{QStringLiteral("Sat 12 Dec 2026, 6:00 PM"),
                                                    QStringLiteral("Sat 19 Dec 2026, 6:00 PM"),
                                                    QStringLiteral("Sat 26 Dec 2026, 6:00 PM")}));
        QCOMPARE(yard.workspace->books().events.size(), 1); // nothing is written yet
        // One day is left out by its box.
        QTest::qWait(0); // the new days come into sight
        QVector<QCheckBox *> days;
        for (QCheckBox *box : dialog.findChildren<QCheckBox *>())
            if (box->isVisible())
                days << box;
        QCOMPARE(days.size(), 3);
        QCheckBox *second = days.at(1);
        second->setFocus();
        QTest::keyClick(second, Qt::Key_Space);
        QPushButton *make = primaryOf(dialog);
        QCOMPARE(make->text(), QStringLiteral("Add 2 events"));
        QTest::mouseClick(make, Qt::LeftButton);
        QCOMPARE(daysOf(yard.workspace->books()),
                 (QStringList{QStringLiteral("Sat 5 Dec, 6:00 PM"),
                              QStringLiteral("Sat 12 Dec, 6:00 PM"),
                              QStringLiteral("Sat 26 Dec, 6:00 PM")}));
        QCOMPARE(yard.workspace->books().plannedCooks.size(), 3);
        QVERIFY(yard.verbs->undo());
        QCOMPARE(yard.workspace->books().events.size(), 1);
    }

    void theMonthsWeekdayUntilADay()
    {
        YardFixture yard;
        yard.waitForAnswers();
        RepeatDialog dialog(*yard.context, yard.event);
        dialog.show();
        auto *kind = dialog.findChild<QComboBox *>();
        kind->setFocus();
        QTest::keyClick(kind, Qt::Key_Down);
        QCOMPARE(kind->currentText(), QStringLiteral("Every second Saturday"));
        QTest::keyClick(kind, Qt::Key_Down);
        QCOMPARE(kind->currentText(), QStringLiteral("The first Saturday of every month"));
        dialog.findChild<QDateEdit *>()->setDate(QDate(2027, 4, 30));
        QVERIFY(dialog.findChildren<QRadioButton *>().at(1)->isChecked());
        // The end of 30 April in Chicago is 1 May, 4:59:59, in UTC (daylight time).
        QCOMPARE(dialog.rule(), QStringLiteral("FREQ=MONTHLY;BYDAY=1SA;UNTIL=20270501T045959Z"));
        // First Saturdays of 2027, counted on a calendar: 2 January, 6 February, 6 March, 3 April.
        QCOMPARE(dialog.previewText(), (QStringList{QStringLiteral("Sat 2 Jan 2027, 6:00 PM"),
                                                    QStringLiteral("Sat 6 Feb 2027, 6:00 PM"),
                                                    QStringLiteral("Sat 6 Mar 2027, 6:00 PM"),
                                                    QStringLiteral("Sat 3 Apr 2027, 6:00 PM")}));
        QCOMPARE(repeatRuleWords(dialog.rule(), QDate(2026, 12, 5), QTimeZone("America/Chicago")),
                 QStringLiteral("the first Saturday of every month, until 30 Apr 2027"));
    }

    void anOwnRuleIsReadOrRefused()
    {
        YardFixture yard;
        yard.waitForAnswers();
        RepeatDialog dialog(*yard.context, yard.event);
        dialog.show();
        auto *kind = dialog.findChild<QComboBox *>();
        kind->setFocus();
        QTest::keyClick(kind, Qt::Key_End);
        auto *text = dialog.findChildren<QLineEdit *>().first();
        for (QLineEdit *edit : dialog.findChildren<QLineEdit *>())
            if (qobject_cast<FieldRow *>(edit->parentWidget()) != nullptr)
                text = edit;
        QVERIFY(text->isVisible());
        QVERIFY(!primaryOf(dialog)->isEnabled());
        QTest::keyClicks(text, QStringLiteral("rrule:freq=weekly;byday=tu,sa;count=4"));
        QCOMPARE(dialog.previewText(), (QStringList{QStringLiteral("Tue 8 Dec 2026, 6:00 PM"),
                                                    QStringLiteral("Sat 12 Dec 2026, 6:00 PM"),
                                                    QStringLiteral("Tue 15 Dec 2026, 6:00 PM")}));
        text->selectAll();
        QTest::keyClicks(text, QStringLiteral("every other friday"));
        QVERIFY(dialog.previewText().isEmpty());
        const auto *row = qobject_cast<FieldRow *>(text->parentWidget());
        QVERIFY(row != nullptr && row->hasProblem());
        QCOMPARE(text->text(), QStringLiteral("every other friday")); // the input stays
    }

    void clashesStandInThePreview()
    {
        YardFixture yard;
        PlannedCook other = yard.workspace->books().plannedCooks.value(yard.plannedCook);
        other.id = 0;
        other.event.reset();
        other.light = other.light + durationFromHours(7 * 24 + 2);
        QVERIFY(yard.verbs->add(other));
        yard.waitForAnswers();
        RepeatDialog dialog(*yard.context, yard.event);
        dialog.show();
        QCOMPARE(dialog.previewText().first(),
                 QStringLiteral("Sat 12 Dec 2026, 6:00 PM: One pit twice"));
    }

    void copiesFromLastTimeSamePlaceFirst()
    {
        YardFixture yard;
        Event older = yard.workspace->books().events.value(yard.event);
        older.id = 0;
        older.name = QStringLiteral("Spring Supper (invented)");
        older.state = EventState::Done;
        older.start = older.start - Duration::ofBase(200 * 86400LL);
        older.end = older.end - Duration::ofBase(200 * 86400LL);
        const RecordId last = yard.verbs->add(older).value();
        Event elsewhere = older;
        elsewhere.id = 0;
        elsewhere.place = QStringLiteral("Barn (invented)");
        elsewhere.start = elsewhere.start + Duration::ofBase(20 * 86400LL);
        elsewhere.end = elsewhere.end + Duration::ofBase(20 * 86400LL);
        const RecordId barn = yard.verbs->add(elsewhere).value();
        QCOMPARE(eventsToCopy(yard.workspace->books(), yard.event, yard.now),
                 (QVector<RecordId>{yard.event, last, barn}));
        yard.waitForAnswers();
        CopyDialog dialog(*yard.context, yard.event, QDate(2026, 12, 19));
        dialog.show();
        QVERIFY2(dialog.previewText().contains(QStringLiteral("Light Sat 19 Dec, 4 AM for 14 h")),
                 qPrintable(dialog.previewText()));
        QSignalSpy made(&dialog, &CopyDialog::made);
        QTest::mouseClick(primaryOf(dialog), Qt::LeftButton);
        QCOMPARE(made.size(), 1);
        const RecordId id = made.first().first().toLongLong();
        const Event copy = yard.workspace->books().events.value(id);
        QCOMPARE(LocalTime(QStringLiteral("America/Chicago")).timeText(copy.start),
                 QStringLiteral("Sat 19 Dec, 6:00 PM"));
        QCOMPARE(copy.covers, std::optional<int>(120));
        const PlannedCook cook = yard.workspace->books().plannedCooks.last();
        QCOMPARE(cook.event, std::optional<RecordId>(id));
        QCOMPARE(cook.pit, yard.smallPit);
        QVERIFY(yard.verbs->undo());
        QCOMPARE(yard.workspace->books().events.size(), 3);
    }

    void aChangeIsOfferedToTheLaterOnes()
    {
        YardFixture yard;
        QVector<Instant> starts;
        const Event first = yard.workspace->books().events.value(yard.event);
        for (int week = 1; week <= 3; ++week)
            starts << first.start + Duration::ofBase(week * 7 * 86400LL);
        const auto made = commands::repeatEvent(*yard.verbs, yard.event, starts,
                                                QStringLiteral("FREQ=WEEKLY;BYDAY=SA;COUNT=4"));
        QVERIFY(made);
        yard.waitForAnswers();
        EventsPage page(*yard.context);
        page.resize(1280, 900);
        page.setVisible(true);
        QVERIFY(page.show(Link{TableId::Event, made->first()}));
        auto *sections = page.findChild<SectionTabs *>();
        auto *list = qobject_cast<RecordList *>(sections->page(1));
        auto *covers =
            qobject_cast<QLineEdit *>(list->form().editor(QStringLiteral("covers"))->inner());
        QVERIFY(covers != nullptr);
        covers->selectAll();
        QTest::keyClicks(covers, QStringLiteral("90"));
        QVERIFY(list->form().save());
        auto &later = page.findChild<EventDetail *>()->later();
        QVERIFY2(later.question().contains(QStringLiteral("2 later ones")),
                 qPrintable(later.question()));
        QTest::mouseClick(later.findChildren<QAbstractButton *>().first(), Qt::LeftButton);
        const Books &books = yard.workspace->books();
        QCOMPARE(books.events.value(made->at(2)).covers, std::optional<int>(90));
        QCOMPARE(books.events.value(yard.event).covers, std::optional<int>(120));
        QVERIFY(later.question().isEmpty());
        // Saved again without a change, nothing is asked.
        QVERIFY(page.show(Link{TableId::Event, made->last()}));
        QVERIFY(later.question().isEmpty());
    }
};

RICKYARD_TEST(TstRepeatAndCopy)
#include "tst_repeat_and_copy.moc"
