// Running a cook on the Fire page with keys and mouse, and what stands in the books afterwards.
#include "models/domain/upkeep/blocks.h"
#include "tests/support/hands.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/charts/chart_view.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/fire_now.h"
#include "views/fire/fire_page.h"
#include "views/fire/fire_words.h"
#include "views/fire/light_panel.h"
#include "views/fire/lot_picker.h"
#include "views/fire/run_facts.h"
#include "views/fire/run_panel.h"
#include "views/records/record_list.h"
#include "views/reports/paper_view.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/numeral.h"
#include "views/widgets/section_tabs.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::click;
using rickyard::test::named;
using rickyard::test::YardFixture;

namespace {

// The shown widget of that accessible name; two panels of one kind are never shown at once.
template <class T>
T *startingWith(QWidget &root, const QString &name)
{
    QCoreApplication::processEvents(); // what was just made is shown a moment later
    const auto all = root.findChildren<T *>();
    for (T *one : all)
        if (one->accessibleName().startsWith(name) && one->isVisible())
            return one;
    return nullptr;
}

QStringList nameless(const QWidget &root)
{
    QStringList found;
    const auto all = root.findChildren<QWidget *>();
    for (const QWidget *one : all) {
        const QWidget *parent = one->parentWidget();
        const bool inner = qobject_cast<const QComboBox *>(parent) != nullptr ||
                           qobject_cast<const QAbstractSpinBox *>(parent) != nullptr ||
                           one->objectName().startsWith(QLatin1String("qt_")) ||
                           one->inherits("QTableCornerButton") ||
                           one->inherits("QLineEditIconButton");
        const bool takes = qobject_cast<const QAbstractButton *>(one) != nullptr ||
                           qobject_cast<const QLineEdit *>(one) != nullptr ||
                           qobject_cast<const QComboBox *>(one) != nullptr ||
                           qobject_cast<const QAbstractSpinBox *>(one) != nullptr ||
                           qobject_cast<const QPlainTextEdit *>(one) != nullptr;
        if (inner || !takes || !one->accessibleName().isEmpty())
            continue;
        const auto *button = qobject_cast<const QAbstractButton *>(one);
        if (button == nullptr || button->text().isEmpty())
            found << QStringLiteral("%1 in %2")
                         .arg(QLatin1String(one->metaObject()->className()),
                              QLatin1String(parent->metaObject()->className()));
    }
    return found;
}

QString noticeOf(QWidget &root)
{
    const auto all = root.findChildren<NoticeBar *>();
    for (const NoticeBar *bar : all)
        if (bar->isVisible())
            return bar->text();
    return {};
}

} // namespace

class TstFirePage : public QObject
{
    Q_OBJECT

private:
    std::unique_ptr<YardFixture> m_yard;
    std::unique_ptr<FirePage> m_page;

    void open(bool filled = true)
    {
        m_page.reset();
        m_yard = std::make_unique<YardFixture>(filled);
        m_page = std::make_unique<FirePage>(*m_yard->context);
        m_page->resize(1180, 800);
        m_page->QWidget::show();
        QApplication::setActiveWindow(m_page.get());
        QVERIFY(QTest::qWaitForWindowExposed(m_page.get()));
    }
    // A cook that burns for an hour with feeds at 0, 20 and 40 minutes.
    RecordId burning()
    {
        Cook cook;
        cook.pit = m_yard->bigPit;
        cook.lit = m_yard->now - durationFromHours(1);
        cook.target = temperatureFromFahrenheit(250);
        const auto lit = m_yard->verbs->lightCook(cook);
        for (int i = 0; i < 3; ++i)
            if (!m_yard->verbs->feed(lit.value(), m_yard->dryLot, 1, {},
                                     cook.lit + Duration::ofBase(i * 1200)))
                qFatal("no feed");
        return lit.value();
    }
    QVector<Feed> feedsOf(RecordId cook) const
    {
        QVector<Feed> feeds;
        for (const Feed &feed : m_yard->verbs->books().feeds)
            if (feed.cook == cook)
                feeds << feed;
        return feeds;
    }

private Q_SLOTS:
    void cleanup()
    {
        m_page.reset();
        m_yard.reset();
    }

    void theFactsAreThoseOfTheFeeds()
    {
        open();
        const RecordId id = burning();
        // A second split within two minutes belongs to the same feeding.
        QVERIFY(
            m_yard->verbs->feed(id, m_yard->dryLot, 2, {}, m_yard->now - Duration::ofBase(1140)));
        const Books &books = m_yard->verbs->books();
        const RunFacts facts = runFacts(books, books.cooks.value(id), m_yard->now);
        QCOMPARE(facts.pieces, 5);
        QCOMPARE(facts.feedings.size(), 3);
        QCOMPARE(facts.interval->base(), 1200);
        QCOMPARE(facts.lastFeed->seconds(), m_yard->now.seconds() - 1140);
        QCOMPARE(facts.nextFeed->seconds(), m_yard->now.seconds() + 60);
        // Five splits of 5 lb as weighed.
        QCOMPARE(std::round(pounds(facts.asIs)), 25.0);
        // At 18.17 % dry basis a little more than a seasoned pound each, by the method.
        QVERIFY(seasonedPounds(facts.heat) > 25.0 && seasonedPounds(facts.heat) < 26.0);
    }

    // The sheet for the next shift: on the screen, in a file, and noted when it was taken over.
    void theHandOverWritesItself()
    {
        open();
        const RecordId id = burning();
        m_yard->waitForAnswers();
        RunPanel *run = m_page->now().currentRun();
        QVERIFY(run != nullptr);
        click(named<QPushButton>(*run, QStringLiteral("Hand over to the next shift")));
        auto *view = m_page->window()->findChild<PaperView *>();
        QVERIFY(view != nullptr);
        const QString text = view->text();
        for (const char *words : {"Hand-over: Big pit", "Lit ", "From ", "carbon monoxide",
                                  "authority having jurisdiction"})
            QVERIFY2(text.contains(QString::fromUtf8(words)), qPrintable(text));
        const QString file = m_yard->folder.filePath(QStringLiteral("sheet.pdf"));
        QVERIFY(view->saveTo(file));
        QFile pdf(file);
        QVERIFY(pdf.open(QIODevice::ReadOnly));
        QVERIFY(pdf.readAll().startsWith("%PDF-"));
        QVERIFY(!view->saveTo(QStringLiteral("/no/such/folder/sheet.pdf")));
        const auto before = m_yard->verbs->books().notes.size();
        click(named<QPushButton>(*view, QStringLiteral("Handed over")));
        QCOMPARE(m_yard->verbs->books().notes.size(), before + 1);
        QCOMPARE(m_yard->verbs->books().notes.last().kind, NoteKind::HandOver);
        QCOMPARE(m_yard->verbs->books().notes.last().cook, id);
    }

    void readyLotsComeFirstWithTheirMoisture()
    {
        open();
        const auto choices = lotChoices(m_yard->verbs->books(), m_yard->now);
        QCOMPARE(choices.size(), 2);
        QCOMPARE(choices.at(0).lot, m_yard->dryLot);
        QVERIFY(choices.at(0).text.contains(QStringLiteral("dry enough, 18 % dry basis")));
        QVERIFY(choices.at(1).text.contains(QStringLiteral("too wet")));
    }

    void lightingAsksForTheOverdueUpkeep()
    {
        open();
        m_yard->waitForAnswers();
        auto *panel = m_page->findChild<LightPanel *>();
        click(named<QPushButton>(*panel, QStringLiteral("Pit Small pit")));
        auto *reason = named<QLineEdit>(*panel, QStringLiteral("Reason to light all the same"));
        QVERIFY(reason != nullptr);
        auto *light = named<QAbstractButton>(*panel, QStringLiteral("Light now"));
        click(light);
        QVERIFY(burningCooks(m_yard->verbs->books()).isEmpty());
        QTest::keyClicks(reason, QStringLiteral("looked at it, still clear"));
        click(named<QPushButton>(*panel, QStringLiteral("Start: Warm steel")));
        click(light);
        const auto alight = burningCooks(m_yard->verbs->books());
        QCOMPARE(alight.size(), 1);
        QCOMPARE(alight.first().pit, m_yard->smallPit);
        QCOMPARE(alight.first().lit, m_yard->now);
        QVERIFY(alight.first().start == StartKind::Warm);
        QCOMPARE(std::round(fahrenheit(*alight.first().target)), 250.0);
        const Books &books = m_yard->verbs->books();
        const auto despite = litDespite(books, alight.first());
        QCOMPARE(despite.size(), 1);
        QCOMPARE(despite.first().reason, QStringLiteral("looked at it, still clear"));
        QCOMPARE(books.tasks.value(despite.first().task).name,
                 QStringLiteral("Clean the grease drain"));
        QVERIFY(m_page->now().currentRun() != nullptr);
        // Fire and reason are one step.
        QVERIFY(m_yard->verbs->undo().ok());
        QVERIFY(burningCooks(m_yard->verbs->books()).isEmpty());
        QVERIFY(m_yard->verbs->books().overrides.isEmpty());
    }

    void theOtherPitIsLitWithoutAReasonAndABadTargetIsRefused()
    {
        open();
        m_yard->waitForAnswers();
        auto *panel = m_page->findChild<LightPanel *>();
        click(named<QPushButton>(*panel, QStringLiteral("Pit Big pit")));
        auto *target = named<QLineEdit>(*panel, QStringLiteral("Target temperature"));
        QCOMPARE(target->text(), QStringLiteral("250"));
        auto *light = named<QAbstractButton>(*panel, QStringLiteral("Light now"));
        target->selectAll();
        QTest::keyClicks(target, QStringLiteral("hot"));
        click(light);
        QVERIFY(burningCooks(m_yard->verbs->books()).isEmpty());
        target->selectAll();
        QTest::keyClicks(target, QStringLiteral("5000"));
        click(light);
        QVERIFY(burningCooks(m_yard->verbs->books()).isEmpty());
        QCOMPARE(target->text(), QStringLiteral("5000")); // nothing typed is lost
        target->selectAll();
        QTest::keyClicks(target, QStringLiteral("275"));
        click(light);
        QCOMPARE(burningCooks(m_yard->verbs->books()).size(), 1);
    }

    void aPlannedCookNearIsFulfilled()
    {
        open();
        m_yard->now = m_yard->verbs->books().plannedCooks.value(m_yard->plannedCook).light;
        auto *panel = m_page->findChild<LightPanel *>();
        panel->choosePit(m_yard->smallPit);
        auto *planned = named<QCheckBox>(*panel, QStringLiteral("This is the planned cook"));
        QVERIFY(planned != nullptr && planned->isChecked());
        QVERIFY(planned->text().contains(QStringLiteral("Mill Field Supper")));
        if (auto *reason = named<QLineEdit>(*panel, QStringLiteral("Reason to light all the same")))
            QTest::keyClicks(reason, QStringLiteral("clear"));
        click(named<QAbstractButton>(*panel, QStringLiteral("Light now")));
        const auto alight = burningCooks(m_yard->verbs->books());
        QCOMPARE(alight.size(), 1);
        QVERIFY(alight.first().planned == m_yard->plannedCook);
        // It is not offered twice.
        QVERIFY(!plannedNear(m_yard->verbs->books(), m_yard->smallPit, m_yard->now));
    }

    void keysFeedAndUndoTakesBack()
    {
        open();
        const RecordId id = burning();
        RunPanel *run = m_page->now().currentRun();
        QVERIFY(run != nullptr);
        QCOMPARE(feedsOf(id).size(), 3);
        QTest::keyClick(m_page.get(), Qt::Key_F);
        QTRY_COMPARE(feedsOf(id).size(), 4);
        QCOMPARE(feedsOf(id).last().pieces, 1);
        QCOMPARE(feedsOf(id).last().lot, m_yard->dryLot);
        QCOMPARE(feedsOf(id).last().time, m_yard->now);
        QVERIFY(noticeOf(*m_page).contains(QStringLiteral("Fed 1 split of Oak, spring")));
        QTest::keyClick(m_page.get(), Qt::Key_3);
        QTRY_COMPARE(feedsOf(id).last().pieces, 3);
        click(named<QPushButton>(*m_page, QStringLiteral("Undo")));
        QCOMPARE(feedsOf(id).size(), 4);
        // Space presses the large button that has the focus.
        auto *one = named<QAbstractButton>(*run, QStringLiteral("Feed 1 split"));
        one->setFocus();
        QTest::keyClick(one, Qt::Key_Space);
        QCOMPARE(feedsOf(id).size(), 5);
    }

    void undoOfAFeedAfterOtherChangesTakesOutThatFeed()
    {
        open();
        const RecordId id = burning();
        QTest::keyClick(m_page.get(), Qt::Key_F);
        QTRY_COMPARE(feedsOf(id).size(), 4);
        const RecordId fed = feedsOf(id).last().id;
        QVERIFY(m_yard->verbs->note(id, NoteKind::Door, QString()));
        click(named<QPushButton>(*m_page, QStringLiteral("Undo")));
        QVERIFY(!m_yard->verbs->books().feeds.contains(fed));
        QCOMPARE(m_yard->verbs->books().notes.size(), 1);
    }

    void aWeightIsTakenForOneFeedOnly()
    {
        open();
        const RecordId id = burning();
        RunPanel *run = m_page->now().currentRun();
        auto *weight = named<QLineEdit>(*run, QStringLiteral("Weight of the next feed"));
        auto *one = named<QAbstractButton>(*run, QStringLiteral("Feed 1 split"));
        QTest::keyClicks(weight, QStringLiteral("heavy"));
        click(one);
        QCOMPARE(feedsOf(id).size(), 3);
        weight->selectAll();
        QTest::keyClicks(weight, QStringLiteral("7.5"));
        click(one);
        QCOMPARE(std::round(10 * pounds(*feedsOf(id).last().weight)), 75.0);
        click(one);
        QVERIFY(!feedsOf(id).last().weight);
        // Digits typed into the field fed nothing.
        QCOMPARE(feedsOf(id).size(), 5);
    }

    void theNextFeedIsSaidAndGoesLate()
    {
        open();
        burning();
        RunPanel *run = m_page->now().currentRun();
        QVERIFY(startingWith<Numeral>(*run, QStringLiteral("0:00")) != nullptr);
        m_yard->now = m_yard->now + Duration::ofBase(65);
        run->tick();
        auto *next = startingWith<Numeral>(*run, QStringLiteral("1:05"));
        QVERIFY(next != nullptr);
        QVERIFY(next->accessibleName().contains(QStringLiteral("late")));
        QVERIFY(next->accessibleName().contains(QStringLiteral("pace of 20 min")));
    }

    void temperaturesAndNotesAreKept()
    {
        open();
        const RecordId id = burning();
        RunPanel *run = m_page->now().currentRun();
        auto *entry = named<QLineEdit>(*run, QStringLiteral("Temperature read now"));
        QTest::keyClicks(entry, QStringLiteral("warm"));
        QTest::keyClick(entry, Qt::Key_Return);
        QVERIFY(m_yard->verbs->books().temperatures.isEmpty());
        entry->selectAll();
        QTest::keyClicks(entry, QStringLiteral("243"));
        QTest::keyClick(entry, Qt::Key_Return);
        QCOMPARE(m_yard->verbs->books().temperatures.size(), 1);
        const CookTemperature read = m_yard->verbs->books().temperatures.first();
        QCOMPARE(read.cook, id);
        QCOMPARE(read.probe, QStringLiteral("grate"));
        QCOMPARE(std::round(fahrenheit(read.temperature)), 243.0);
        QVERIFY(entry->text().isEmpty());
        click(named<QPushButton>(*run, QStringLiteral("Note: Wrapped")));
        QVERIFY(m_yard->verbs->books().notes.last().kind == NoteKind::Wrapped);
        auto *words = named<QLineEdit>(*run, QStringLiteral("Note in words"));
        QTest::keyClicks(words, QStringLiteral("<b>smoke</b> is thin"));
        QTest::keyClick(words, Qt::Key_Return);
        QCOMPARE(m_yard->verbs->books().notes.last().text, QStringLiteral("<b>smoke</b> is thin"));
    }

    void finishingIsAskedForTwiceAndCanBeTakenBack()
    {
        open();
        const RecordId id = burning();
        RunPanel *run = m_page->now().currentRun();
        click(named<QPushButton>(*run, QStringLiteral("At temperature")));
        QCOMPARE(*m_yard->verbs->books().cooks.value(id).atTemperature, m_yard->now);
        click(named<QPushButton>(*run, QStringLiteral("Fire out")));
        QVERIFY(!m_yard->verbs->books().cooks.value(id).fireOut);
        click(named<QPushButton>(*run, QStringLiteral("Finish this cook?")));
        QCOMPARE(*m_yard->verbs->books().cooks.value(id).fireOut, m_yard->now);
        QCOMPARE(m_page->now().burning(), 0);
        QVERIFY(noticeOf(*m_page).contains(QStringLiteral("fire out at")));
        click(named<QPushButton>(*m_page, QStringLiteral("Undo")));
        QCOMPARE(m_page->now().burning(), 1);
        QVERIFY(!m_yard->verbs->books().cooks.value(id).fireOut);
    }

    void oneKeyShowsTheNextFire()
    {
        open();
        const RecordId first = burning();
        Cook cook;
        cook.pit = m_yard->smallPit;
        const auto second = m_yard->verbs->lightCook(cook);
        QVERIFY(second);
        QCOMPARE(m_page->now().burning(), 2);
        QCOMPARE(m_page->now().currentRun()->cook(), first);
        QTest::keyClick(m_page.get(), Qt::Key_F2);
        QCOMPARE(m_page->now().currentRun()->cook(), second.value());
        // Keys feed the fire that is shown.
        QTest::keyClick(m_page.get(), Qt::Key_2);
        QTRY_COMPARE(feedsOf(second.value()).size(), 1);
        QCOMPARE(feedsOf(first).size(), 3);
        QTest::keyClick(m_page.get(), Qt::Key_F2);
        QCOMPARE(m_page->now().currentRun()->cook(), first);
    }

    void aFeedIsMendedAndTakenOutInPlace()
    {
        open();
        const RecordId id = burning();
        RunPanel *run = m_page->now().currentRun();
        auto *change = startingWith<QToolButton>(*run, QStringLiteral("Change the feed of"));
        click(change);
        auto *save = named<QPushButton>(*run, QStringLiteral("Save this feed"));
        QVERIFY(save != nullptr);
        auto *away = startingWith<QToolButton>(*run, QStringLiteral("Take out the feed of"));
        click(away);
        QCOMPARE(feedsOf(id).size(), 2);
        click(named<QPushButton>(*m_page, QStringLiteral("Undo")));
        QCOMPARE(feedsOf(id).size(), 3);
    }

    void theLogShowsACookWithItsFuel()
    {
        open();
        m_yard->waitForAnswers();
        QVERIFY(m_page->show({TableId::Cook, m_yard->cooks.last()}));
        QCOMPARE(m_page->sections().current(), 1);
        QCOMPARE(m_page->list(TableId::Cook)->chosen(), m_yard->cooks.last());
        auto *excess = m_page->list(TableId::Cook)->findChildren<Numeral *>().value(2);
        QVERIFY(excess != nullptr);
        // The last cooks of this pit were made to burn 30 % more.
        QVERIFY(excess->value().toDouble() > 15);
        auto *timeline = m_page->list(TableId::Cook)->findChild<CookTimeline *>();
        QVERIFY(timeline->summary().contains(QStringLiteral("feeds")));
        for (const TableId table :
             {TableId::Feed, TableId::CookTemperature, TableId::CookNote, TableId::Trace}) {
            QVERIFY(m_page->show({table, 0}));
            QTRY_VERIFY(m_page->list(table)->isVisible());
        }
        QVERIFY(!m_page->show({TableId::Supplier, 1}));
    }

    void anEmptyYardSaysWhatToDo()
    {
        open(false);
        auto *empty = m_page->findChild<EmptyState *>();
        QVERIFY(empty->isVisible());
        click(empty->actionButton());
        QCOMPARE(m_yard->opened.size(), 1);
        QVERIFY(m_yard->opened.first().table == TableId::Pit);
    }

    void spansAndClocksRead()
    {
        QCOMPARE(FireWords::ticking(Duration::ofBase(724)), QStringLiteral("12:04"));
        QCOMPARE(FireWords::ticking(Duration::ofBase(3723)), QStringLiteral("1:02:03"));
        QCOMPARE(FireWords::ticking(Duration::ofBase(-5)),
                 QString(QChar(0x2212) + QStringLiteral("0:05")));
        QCOMPARE(FireWords::tickingUnit(Duration::ofBase(724)), QStringLiteral("min"));
        QCOMPARE(FireWords::tickingUnit(Duration::ofBase(-3723)), QStringLiteral("h"));
        QCOMPARE(FireWords::span(Duration::ofBase(14700)), QStringLiteral("4:05 h"));
    }

    void everythingHasAName()
    {
        open();
        burning();
        for (const TableId table : {TableId::Cook, TableId::Feed})
            m_page->list(table);
        const QStringList without = nameless(*m_page);
        QVERIFY2(without.isEmpty(), qPrintable(without.join(QLatin1Char('\n'))));
    }

    void nightIsKept()
    {
        open();
        ThemeHub::apply(*qApp, Mode::Light);
        m_page->setNight(true);
        QVERIFY(theme(&m_page->now()).mode() == Mode::Night);
        QVERIFY(m_yard->settings->value(QStringLiteral("fire/night")).toBool());
        m_page->setNight(false);
        QVERIFY(theme(&m_page->now()).mode() == Mode::Light);
    }
};

RICKYARD_TEST(TstFirePage)
#include "tst_fire_page.moc"
