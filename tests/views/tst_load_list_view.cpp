// The load list on screen and on paper.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/events/events_page.h"
#include "views/events/load_list_view.h"
#include "views/events/load_list_words.h"
#include "views/reports/paper_view.h"

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::test;
using namespace rickyard::views;

namespace {

// The fixture's yard with what a load needs entered, invented figures.
void outfit(YardFixture &yard)
{
    Yard own = yard.workspace->books().yard();
    own.boxMass = massFromPounds(40);
    own.kindling = massFromPounds(6);
    own.trailerEmpty = massFromPounds(2800);
    own.trailerLimit = massFromPounds(3000);
    QVERIFY(yard.verbs->edit(own));
    Lot lot = yard.workspace->books().lots.value(yard.dryLot);
    lot.place = QStringLiteral("rick A");
    QVERIFY(yard.verbs->edit(lot));
    Event event = yard.workspace->books().events.value(yard.event);
    event.towed = true;
    event.travel = durationFromHours(1);
    QVERIFY(yard.verbs->edit(event));
    PlannedCook cook = yard.workspace->books().plannedCooks.value(yard.plannedCook);
    cook.foods = QStringLiteral("brisket");
    cook.foodMass = massFromPounds(120);
    QVERIFY(yard.verbs->edit(cook));
    yard.waitForAnswers();
}

QAbstractButton *buttonCalled(QWidget &in, const QString &accessibleName)
{
    for (QAbstractButton *b : in.findChildren<QAbstractButton *>())
        if (b->accessibleName() == accessibleName)
            return b;
    return nullptr;
}

} // namespace

class TstLoadListView : public QObject
{
    Q_OBJECT

private slots:
    void ticksAreKeptUntilTheAmountChanges()
    {
        YardFixture yard;
        outfit(yard);
        const Link about{TableId::Event, yard.event};
        int all = 0;
        {
            LoadListView view(*yard.context, about);
            view.show();
            const auto boxes = view.findChildren<QCheckBox *>();
            all = static_cast<int>(boxes.size());
            QVERIFY(all >= 5); // three phases, kindling, food
            boxes.first()->setFocus();
            QTest::keyClick(boxes.first(), Qt::Key_Space);
            QTest::keyClick(boxes.last(), Qt::Key_Space);
            QCOMPARE(view.ticked(), 2);
        }
        LoadListView again(*yard.context, about);
        again.show();
        QCOMPARE(again.ticked(), 2);
        // More wood for more certainty: that line is another one, the food is not.
        auto *chance = again.findChild<QComboBox *>();
        chance->setFocus();
        const Mass before = [&] {
            return loadSheet(yard.workspace->books(), yard.answers->answers(),
                             WeatherSeries(yard.workspace->books()), yard.now, about,
                             again.chance())
                ->wood;
        }();
        QTest::keyClick(chance, Qt::Key_Down);
        QCOMPARE(again.chance(), 0.99);
        const Mass after = loadSheet(yard.workspace->books(), yard.answers->answers(),
                                     WeatherSeries(yard.workspace->books()), yard.now, about, 0.99)
                               ->wood;
        QVERIFY(after > before);
        QCOMPARE(again.ticked(), 2); // lighting and food have not changed
        QTest::mouseClick(buttonCalled(again, QStringLiteral("Untick every line")), Qt::LeftButton);
        QCOMPARE(again.ticked(), 0);
    }

    void shortWoodIsSaidWithHowMuch()
    {
        YardFixture yard;
        outfit(yard);
        const auto count = yard.verbs->count(yard.dryLot, massFromPounds(20), QString());
        QVERIFY(count);
        yard.waitForAnswers();
        LoadListView view(*yard.context, {TableId::Event, yard.event});
        view.show();
        const QString text = view.plainText();
        QVERIFY2(text.contains(QStringLiteral("Wood is short: ")), qPrintable(text));
        QVERIFY2(text.contains(QStringLiteral("Even what the fires should take is not there")),
                 qPrintable(text));
    }

    void opensFromTheEventAndTheCook()
    {
        YardFixture yard;
        outfit(yard);
        EventsPage page(*yard.context);
        page.resize(1280, 900);
        page.setVisible(true);
        page.show(Link{TableId::Event, yard.event});
        QTest::mouseClick(buttonCalled(page, QStringLiteral("Load list of this event")),
                          Qt::LeftButton);
        page.show(Link{TableId::PlannedCook, yard.plannedCook});
        QTest::mouseClick(buttonCalled(page, QStringLiteral("Load list of this cook")),
                          Qt::LeftButton);
        const auto views = page.findChildren<LoadListView *>();
        QCOMPARE(views.size(), 2);
        for (LoadListView *view : views)
            view->close();
    }

    void nothingToLoadIsSaid()
    {
        YardFixture yard;
        yard.waitForAnswers();
        const auto removed = yard.verbs->remove(TableId::PlannedCook, {yard.plannedCook});
        QVERIFY(removed);
        yard.waitForAnswers();
        LoadListView view(*yard.context, {TableId::Event, yard.event});
        view.show();
        QVERIFY(view.plainText().contains(QStringLiteral("No cook is planned")));
        QVERIFY(!view.paper());
    }

    // The printed text, word for word. RICKYARD_WRITE_GOLDEN=1 writes it anew, to be read before
    // it is kept.
    void thePaperSaysTheSame()
    {
        YardFixture yard;
        outfit(yard);
        LoadListView view(*yard.context, {TableId::Event, yard.event});
        const auto paper = view.paper();
        QVERIFY(paper);
        const QString text = PaperView(*paper).text();
        const QString path =
            QStringLiteral("%1/views/load_list.txt").arg(QString::fromUtf8(RICKYARD_TEST_DATA));
        QFile file(path);
        if (qEnvironmentVariableIsSet("RICKYARD_WRITE_GOLDEN")) {
            QVERIFY(file.open(QIODevice::WriteOnly));
            file.write(text.toUtf8());
            QSKIP("written");
        }
        QVERIFY2(file.open(QIODevice::ReadOnly), qPrintable(path));
        QCOMPARE(text, QString::fromUtf8(file.readAll()));
    }
};

RICKYARD_TEST(TstLoadListView)
#include "tst_load_list_view.moc"
