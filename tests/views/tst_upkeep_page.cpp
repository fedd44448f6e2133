// The Upkeep page by mouse and keyboard.
#include "models/domain/upkeep/starter_tasks.h"
#include "tests/support/hands.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/upkeep/due_list.h"
#include "views/upkeep/plan_list.h"
#include "views/upkeep/task_panel.h"
#include "views/upkeep/upkeep_page.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/sentence_label.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

namespace {

QString allText(const QWidget &in)
{
    QStringList texts;
    for (const QLabel *label : in.findChildren<QLabel *>())
        texts << label->text();
    return texts.join(QLatin1Char('\n'));
}

} // namespace

class TstUpkeepPage : public QObject
{
    Q_OBJECT

private slots:
    void saysWhatIsOverdueAndHow()
    {
        YardFixture yard;
        yard.waitForAnswers();
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        QVERIFY(page.findChild<SentenceLabel *>()->plainText().startsWith(
            QStringLiteral("1 task is overdue")));
        auto *list = page.findChild<DueList *>();
        QCOMPARE(list->shown(), 1);
        QCOMPARE(list->chosen(), yard.task);
        const QString said =
            list->view().model()->index(0, 0).data(Qt::AccessibleTextRole).toString();
        QVERIFY2(said.contains(QStringLiteral("Overdue")) &&
                     said.contains(QStringLiteral("10 of 5 cooks")),
                 qPrintable(said));
    }

    void acceptsWhatIsProposed()
    {
        YardFixture yard;
        yard.waitForAnswers();
        const UpkeepAnswer answer = yard.answers->answers().upkeep;
        QVERIFY(!answer.placements.isEmpty());
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        auto *sections = page.findChild<SectionTabs *>();
        QTest::mouseClick(sections->tab(1), Qt::LeftButton);
        QTest::mouseClick(
            named<QAbstractButton>(page, QStringLiteral("Accept all proposed visits")),
            Qt::LeftButton);
        const auto &visits = yard.workspace->books().visits;
        QCOMPARE(visits.size(), answer.placements.size());
        QCOMPARE(visits.first().state, VisitState::Placed);
        QCOMPARE(visits.first().start, answer.placements.first().start);
        yard.waitForAnswers();
        QCOMPARE(page.findChild<PlanList *>()->proposed(), 0);
        QVERIFY(!named<QAbstractButton>(page, QStringLiteral("Accept all proposed visits"))
                     ->isEnabled());
        QVERIFY(yard.verbs->undo());
        QVERIFY(visits.isEmpty());
    }

    void theStarterSetIsOneStep()
    {
        YardFixture yard(false);
        Pit pit;
        pit.name = QStringLiteral("Long Tom");
        pit.diameter = Length::ofBase(600000);
        pit.length = Length::ofBase(1800000);
        QVERIFY(yard.verbs->add(pit));
        yard.waitForAnswers();
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        QTest::mouseClick(named<QAbstractButton>(page, QStringLiteral("Add starter set")) != nullptr
                              ? named<QAbstractButton>(page, QStringLiteral("Add starter set"))
                              : page.findChild<EmptyState *>()->actionButton(),
                          Qt::LeftButton);
        const auto &books = yard.workspace->books();
        const auto expected = starterTasks(books.pits.values(), QDate(2026, 11, 25)).size();
        QCOMPARE(books.tasks.size(), expected);
        yard.waitForAnswers();
        auto *list = page.findChild<DueList *>();
        QCOMPARE(list->shown(), static_cast<int>(expected));
        // One pit only.
        QTest::mouseClick(
            named<QAbstractButton>(page, QStringLiteral("Show the tasks of: Long Tom")),
            Qt::LeftButton);
        QVERIFY(list->shown() < expected && list->shown() > 0);
        for (int row = 0; row < list->shown(); ++row)
            QVERIFY(list->view()
                        .model()
                        ->index(row, 0)
                        .data(Qt::AccessibleTextRole)
                        .toString()
                        .contains(QStringLiteral("Long Tom")));
        QVERIFY(yard.verbs->undo());
        QVERIFY(books.tasks.isEmpty());
    }

    void cautionsStandAtTheTaskAndNothingIsCalledSafe()
    {
        YardFixture yard;
        const auto tasks = starterTasks(yard.workspace->books().pits.values(), QDate(2026, 8, 1));
        QVector<Row> rows;
        for (const UpkeepTask &task : tasks)
            rows << toRow(task);
        const auto ids = yard.verbs->putAll(rows, QStringLiteral("add"));
        QVERIFY(ids);
        yard.waitForAnswers();
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        RecordId ash = 0;
        for (const TaskDue &due : yard.answers->answers().upkeep.tasks)
            if (yard.workspace->books().tasks.value(due.task).name == QStringLiteral("Ash removal"))
                ash = due.task;
        QVERIFY(page.show(Link{TableId::UpkeepTask, ash}) && ash != 0);
        const auto *caution = page.findChild<TaskPanel *>()->findChild<CautionNote *>();
        QVERIFY(caution->isVisible());
        const QString text = allText(*caution);
        QVERIFY2(text.contains(QStringLiteral("96 hours")), qPrintable(text));
        QCOMPARE(text.count(QStringLiteral("authority having jurisdiction")), 1);
        for (const TaskDue &due : yard.answers->answers().upkeep.tasks)
            QVERIFY(!dueStateOf(yard.workspace->books(), due, yard.now)
                         .word.contains(QStringLiteral("safe"), Qt::CaseInsensitive));
    }

    void placesOneTask()
    {
        YardFixture yard;
        yard.waitForAnswers();
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        QTest::mouseClick(named<QAbstractButton>(page, QStringLiteral("Place a visit")),
                          Qt::LeftButton);
        QCOMPARE(yard.workspace->books().visits.size(), 1);
        QCOMPARE(yard.workspace->books().visits.first().state, VisitState::Placed);
    }

    void aSpreadOfDaysIsSaidInWords()
    {
        const auto day = [](int month, int d) { return QDate(2026, month, d); };
        QCOMPARE(betweenText(day(12, 3), day(12, 16), false),
                 QStringLiteral("between the 3rd and the 16th"));
        QCOMPARE(betweenText(day(12, 1), day(12, 22), false),
                 QStringLiteral("between the 1st and the 22nd"));
        QCOMPARE(betweenText(day(12, 11), day(12, 13), false),
                 QStringLiteral("between the 11th and the 13th"));
        QCOMPARE(betweenText(day(11, 28), day(12, 9), false),
                 QStringLiteral("between 28 Nov and 9 Dec"));
        QCOMPARE(betweenText(day(12, 3), day(12, 16), true), QStringLiteral("3 to 16 Dec"));
        QCOMPARE(betweenText(day(11, 28), day(12, 9), true), QStringLiteral("28 Nov to 9 Dec"));
    }

    void stepsAreLinesOrSentences()
    {
        QCOMPARE(
            stepsOf(QStringLiteral("Rake. Shovel it out, 1/4 in. deep. Close the lid.")),
            (QStringList{QStringLiteral("Rake."), QStringLiteral("Shovel it out, 1/4 in. deep."),
                         QStringLiteral("Close the lid.")}));
        QCOMPARE(
            stepsOf(QStringLiteral("Rake. Then wait.\n\n  Close the lid. \n")),
            (QStringList{QStringLiteral("Rake. Then wait."), QStringLiteral("Close the lid.")}));
        QVERIFY(stepsOf(QString()).isEmpty());
        // Every step of the starter set is one thing to do.
        for (const UpkeepTask &task : starterTasks({}, QDate(2026, 1, 1)))
            QVERIFY2(!stepsOf(task.steps).isEmpty(), qPrintable(task.name));
    }

    void modelsKeepTheirPromises()
    {
        YardFixture yard;
        yard.waitForAnswers();
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        auto *list = page.findChild<DueList *>();
        const QAbstractItemModelTester tester(
            list->view().model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        UpkeepTask task = yard.workspace->books().tasks.value(yard.task);
        task.id = 0;
        task.name = QStringLiteral("Stack look");
        QVERIFY(yard.verbs->add(task));
        yard.waitForAnswers();
        QCOMPARE(list->shown(), 2);
        QVERIFY(yard.verbs->undo());
        yard.waitForAnswers();
        QCOMPARE(list->shown(), 1);
    }

    void everythingHasAName()
    {
        YardFixture yard;
        yard.waitForAnswers();
        UpkeepPage page(*yard.context);
        page.resize(1280, 800);
        page.setVisible(true);
        auto *sections = page.findChild<SectionTabs *>();
        for (int section = 0; section < sections->count(); ++section) {
            sections->setCurrent(section);
            for (QWidget *widget : page.findChildren<QWidget *>()) {
                const bool interactive = qobject_cast<QAbstractButton *>(widget) != nullptr ||
                                         qobject_cast<QComboBox *>(widget) != nullptr ||
                                         qobject_cast<QListView *>(widget) != nullptr ||
                                         (qobject_cast<QLineEdit *>(widget) != nullptr &&
                                          !widget->objectName().startsWith(QLatin1String("qt_")));
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
    }
};

RICKYARD_TEST(TstUpkeepPage)
#include "tst_upkeep_page.moc"
