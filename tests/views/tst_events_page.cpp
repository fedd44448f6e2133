// The Events page by mouse and keyboard.
#include "tests/support/hands.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/events/calendar.h"
#include "views/events/clash_list.h"
#include "views/events/event_words.h"
#include "views/events/events_page.h"
#include "views/events/next_event.h"
#include "views/records/field_editor.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/status_pill.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QLineEdit>
#include <QTest>
#include <QTextEdit>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

class TstEventsPage : public QObject
{
    Q_OBJECT

private slots:
    void saysWhatComesNextAndWhetherThereIsWood()
    {
        YardFixture yard;
        yard.waitForAnswers();
        EventsPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        auto *next = page.findChild<NextEvent *>();
        QVERIFY(next != nullptr);
        QCOMPARE(next->plainText(), QStringLiteral("Mill Field Supper (invented) in 10 days, Sat 5 "
                                                   "Dec, serving 6 PM"));
        const auto &use = yard.answers->answers().wood.uses.first();
        QStringList words;
        for (StatusPill *pill : next->findChildren<StatusPill *>())
            words << pill->word();
        QCOMPARE(words, QStringList(woodStateOf(yard.workspace->books(), &use).word));
        const auto *calendar = page.findChild<Calendar *>();
        QVERIFY(calendar != nullptr && calendar->isVisible() && !calendar->items().isEmpty());
    }

    void shortWoodIsSaidInWords()
    {
        YardFixture yard;
        const Books &books = yard.workspace->books();
        Answers answers = answersOf(books, yard.now);
        PlannedUse use = answers.wood.uses.first();
        use.shortOf = true;
        use.shortfall = heatFromSeasonedPounds(120);
        QCOMPARE(woodStateOf(books, &use).role, Role::Act);
        QVERIFY(woodStateOf(books, &use).word.contains(QStringLiteral("120")));
        use.shortOf = false;
        use.standIns.clear();
        QCOMPARE(woodStateOf(books, &use).role, Role::Good);
    }

    void plansACookForAnEvent()
    {
        YardFixture yard;
        yard.waitForAnswers();
        EventsPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        QVERIFY(page.show(Link{TableId::Event, yard.event}));
        const auto before = yard.workspace->books().plannedCooks.size();
        QAbstractButton *plan =
            named<QAbstractButton>(page, QStringLiteral("Plan a cook for this event"));
        QVERIFY(plan != nullptr);
        QTest::mouseClick(plan, Qt::LeftButton);
        auto *sections = page.findChild<SectionTabs *>();
        QCOMPARE(sections->current(), 2);
        auto *list = qobject_cast<RecordList *>(sections->page(2));
        QVERIFY(list != nullptr);
        QVERIFY(list->form().save());
        const auto &cooks = yard.workspace->books().plannedCooks;
        QCOMPARE(cooks.size(), before + 1);
        const PlannedCook made = cooks.last();
        QCOMPARE(made.event.value_or(0), yard.event);
        // The small pit is taken at that time: the other one, twelve hours before serving.
        QCOMPARE(made.pit, yard.bigPit);
        const Event event = yard.workspace->books().events.value(yard.event);
        QCOMPARE(made.light + made.length, event.start);
        QVERIFY(yard.verbs->undo());
        QCOMPARE(yard.workspace->books().plannedCooks.size(), before);
    }

    void namesAClashAndOpensIt()
    {
        YardFixture yard;
        PlannedCook twice = yard.workspace->books().plannedCooks.value(yard.plannedCook);
        twice.id = 0;
        twice.event.reset();
        twice.light = twice.light + durationFromHours(6);
        const auto added = yard.verbs->add(twice);
        QVERIFY(added);
        yard.waitForAnswers();
        EventsPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        auto *sections = page.findChild<SectionTabs *>();
        QTest::mouseClick(sections->tab(3), Qt::LeftButton);
        auto *clashes = page.findChild<ClashList *>();
        QVERIFY(clashes->isVisible());
        QStringList words;
        for (StatusPill *pill : clashes->findChildren<StatusPill *>())
            words << pill->word();
        QVERIFY2(words.contains(QStringLiteral("One pit twice")),
                 qPrintable(words.join(QLatin1Char(','))));
        const auto buttons = clashes->findChildren<QAbstractButton *>();
        QVERIFY(!buttons.isEmpty());
        buttons.first()->setFocus();
        QTest::keyClick(buttons.first(), Qt::Key_Space);
        QCOMPARE(sections->current(), 2);
    }

    void anEmptyYardSaysWhatToDo()
    {
        YardFixture yard(false);
        EventsPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        QCOMPARE(page.findChild<NextEvent *>()->plainText(), QStringLiteral("No event ahead."));
        page.addNew();
        auto *list = qobject_cast<RecordList *>(page.findChild<SectionTabs *>()->page(1));
        auto *name =
            qobject_cast<QLineEdit *>(list->form().editor(QStringLiteral("name"))->inner());
        QVERIFY(name != nullptr);
        QTest::keyClicks(name, QStringLiteral("Barn Dance"));
        list->form()
            .editor(QStringLiteral("start"))
            ->setValue(toValue(yard.now + durationFromHours(48)));
        list->form()
            .editor(QStringLiteral("end"))
            ->setValue(toValue(yard.now + durationFromHours(52)));
        QVERIFY(list->form().save());
        QVERIFY(page.findChild<NextEvent *>()->plainText().startsWith(
            QStringLiteral("Barn Dance in 2 days")));
    }

    void everythingHasAName()
    {
        YardFixture yard;
        yard.waitForAnswers();
        EventsPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        page.show(Link{TableId::Event, yard.event});
        for (QWidget *widget : page.findChildren<QWidget *>()) {
            const bool interactive = qobject_cast<QAbstractButton *>(widget) != nullptr ||
                                     qobject_cast<QComboBox *>(widget) != nullptr ||
                                     (qobject_cast<QLineEdit *>(widget) != nullptr &&
                                      !widget->objectName().startsWith(QLatin1String("qt_"))) ||
                                     qobject_cast<Calendar *>(widget) != nullptr;
            // The mark inside a search field is no control of its own.
            if (!interactive || !widget->isVisibleTo(&page) ||
                widget->inherits("QLineEditIconButton"))
                continue;
            const auto *own = qobject_cast<QAbstractButton *>(widget);
            QVERIFY2(!widget->accessibleName().isEmpty() ||
                         (own != nullptr && !own->text().isEmpty()),
                     widget->metaObject()->className());
        }
    }
};

RICKYARD_TEST(TstEventsPage)
#include "tst_events_page.moc"
