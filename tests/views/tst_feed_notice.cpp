// A feed that falls due is said once and once more when it is late; silence is kept; a clock set
// back and a night's sleep of the computer make no din. A lot that has run out by the books is
// asked about before it is fed.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/fire/feed_notice.h"
#include "views/fire/feed_pad.h"
#include "views/fire/light_panel.h"
#include "views/fire/run_facts.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/inline_question.h"

#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::YardFixture;

class TstFeedNotice : public QObject
{
    Q_OBJECT

private:
    std::unique_ptr<YardFixture> m_yard;
    QVector<Notice> m_said;
    RecordId m_cook = 0;

    // Lit 70 minutes ago, fed every 20 minutes, the last time just now.
    void light()
    {
        m_yard = std::make_unique<YardFixture>();
        m_said.clear();
        m_yard->context->notify = [this](const Notice &notice) { m_said << notice; };
        Cook cook;
        cook.pit = m_yard->smallPit;
        cook.lit = m_yard->now - Duration::ofBase(70 * 60);
        const auto lit = m_yard->verbs->lightCook(cook);
        QVERIFY2(lit.ok(), qPrintable(lit.message()));
        m_cook = lit.value();
        for (const int minutes : {60, 40, 20, 0})
            QVERIFY(m_yard->verbs->feed(m_cook, m_yard->dryLot, 1, {},
                                        m_yard->now - Duration::ofBase(minutes * 60)));
    }
    void after(int minutes) { m_yard->now = m_yard->now + Duration::ofBase(minutes * 60); }

private Q_SLOTS:
    void cleanup() { m_yard.reset(); }

    void dueIsSaidOnceAndLateOnce()
    {
        light();
        FeedNotice notice(*m_yard->context);
        QVERIFY(notice.level() == FeedNotice::Level::Sound);
        after(19);
        notice.look();
        QCOMPARE(m_said.size(), 0);
        after(1);
        notice.look();
        notice.look();
        QCOMPARE(m_said.size(), 1);
        QCOMPARE(m_said.first().title, QStringLiteral("Small pit wants wood"));
        QVERIFY(m_said.first().sound);
        QCOMPARE(m_said.first().link.id, m_cook);
        after(10);
        notice.look();
        notice.look();
        QCOMPARE(m_said.size(), 2);
        QVERIFY(m_said.last().text.contains(QStringLiteral("late")));
        // The next feed begins it anew.
        QVERIFY(m_yard->verbs->feed(m_cook, m_yard->dryLot, 1));
        notice.look();
        QCOMPARE(m_said.size(), 2);
        after(25);
        notice.look();
        QCOMPARE(m_said.size(), 3);
    }

    void silenceIsKept()
    {
        light();
        FeedNotice notice(*m_yard->context);
        notice.setLevel(FeedNotice::Level::Silent);
        after(21);
        notice.look();
        QCOMPARE(m_said.size(), 0);
        FeedNotice later(*m_yard->context); // the next start of the program
        QVERIFY(later.level() == FeedNotice::Level::Silent);
        later.setLevel(FeedNotice::Level::Notice);
        later.look();
        QCOMPARE(m_said.size(), 1);
        QVERIFY(!m_said.first().sound);
    }

    void sleepOfTheComputerIsNoNews()
    {
        light();
        FeedNotice notice(*m_yard->context);
        after(8 * 60);
        notice.look();
        QCOMPARE(m_said.size(), 0);
        // The cook is still there, resumes, and the first feed after it starts the pace again.
        QCOMPARE(burningCooks(m_yard->verbs->books()).size(), 1);
        QVERIFY(m_yard->verbs->feed(m_cook, m_yard->dryLot, 1));
        notice.look();
        QCOMPARE(m_said.size(), 0);
    }

    // Killed in the night, the program finds the fire where it was, with its pace and its next
    // feed.
    void aBurningCookIsThereAfterAFall()
    {
        light();
        const RunFacts before = runFacts(m_yard->verbs->books(),
                                         m_yard->verbs->books().cooks.value(m_cook), m_yard->now);
        const QString path = m_yard->folder.filePath(QStringLiteral("yard.rickyard"));
        const QString copy = m_yard->folder.filePath(QStringLiteral("fallen.rickyard"));
        // What is on the disk while the program still runs is what is left when it is killed.
        for (const char *tail : {"", "-wal"})
            QVERIFY(QFile::copy(QString(path + QLatin1String(tail)),
                                QString(copy + QLatin1String(tail))));
        auto again = workspace::Workspace::open(copy, QDateTime::currentDateTimeUtc());
        QVERIFY2(again.ok(), qPrintable(again.message()));
        const Books &books = again.value()->books();
        QCOMPARE(burningCooks(books).size(), 1);
        const RunFacts after = runFacts(books, books.cooks.value(m_cook), m_yard->now);
        QCOMPARE(after.nextFeed, before.nextFeed);
        QCOMPARE(after.pieces, before.pieces);
        QVERIFY(after.nextFeed.has_value());
    }

    void aClockSetBackIsSeen()
    {
        light();
        FeedNotice notice(*m_yard->context);
        QCOMPARE(aheadOfClock(m_yard->verbs->books(), m_cook, m_yard->now), Duration());
        m_yard->now = m_yard->now - Duration::ofBase(3600);
        notice.look();
        QCOMPARE(m_said.size(), 0);
        QCOMPARE(aheadOfClock(m_yard->verbs->books(), m_cook, m_yard->now), Duration::ofBase(3600));
        // It still takes feeds, stamped by the clock there is.
        const auto fed = m_yard->verbs->feed(m_cook, m_yard->dryLot, 1);
        QVERIFY2(fed.ok(), qPrintable(fed.message()));
        QCOMPARE(m_yard->verbs->books().feeds.value(fed.value()).time, m_yard->now);
    }

    // The cautions that always hold stand there without any weather; a windy, hot day adds to them.
    void cautionsFollowTheDay()
    {
        light();
        const auto cautionOf = [](LightPanel &panel) {
            QStringList texts;
            for (const QLabel *label : panel.findChild<CautionNote *>()->findChildren<QLabel *>())
                texts << label->text();
            return texts.join(QLatin1Char(' '));
        };
        LightPanel calm(*m_yard->context);
        calm.resize(900, 600);
        calm.show();
        QVERIFY(cautionOf(calm).contains(QStringLiteral("Carbon monoxide")));
        QVERIFY(!cautionOf(calm).contains(QStringLiteral("burn ban")));
        Weather w;
        w.place = QStringLiteral("Yard");
        w.time = m_yard->now;
        w.temperature = temperatureFromFahrenheit(96);
        w.wind = Speed::ofBase(7000);
        QVERIFY(m_yard->verbs->add(w));
        LightPanel windy(*m_yard->context);
        windy.resize(900, 600);
        windy.show();
        QVERIFY2(cautionOf(windy).contains(QStringLiteral("burn ban")),
                 qPrintable(cautionOf(windy)));
        QVERIFY(cautionOf(windy).contains(QStringLiteral("one hour")));
        QVERIFY(cautionOf(windy).contains(QStringLiteral("Carbon monoxide")));
    }

    void twoFeedsInOneSecondAreTwo()
    {
        light();
        const auto before = m_yard->verbs->books().feeds.size();
        QVERIFY(m_yard->verbs->feed(m_cook, m_yard->dryLot, 1));
        QVERIFY(m_yard->verbs->feed(m_cook, m_yard->dryLot, 1));
        QCOMPARE(m_yard->verbs->books().feeds.size(), before + 2);
    }

    void aLotThatRanOutIsAskedAbout()
    {
        light();
        FeedPad pad(*m_yard->context, m_cook);
        pad.show();
        pad.chooseLot(m_yard->dryLot);
        // All but a crumb is counted away.
        QVERIFY(m_yard->verbs->count(m_yard->dryLot, massFromKilograms(0.5), QString()));
        pad.refresh();
        pad.chooseLot(m_yard->dryLot);
        const auto before = m_yard->verbs->books().feeds.size();
        QSignalSpy fed(&pad, &FeedPad::fed);
        pad.feed(2);
        QCOMPARE(fed.count(), 0);
        QVERIFY(pad.ranOut().isVisible());
        QVERIFY(pad.ranOut().question().contains(QStringLiteral("run out")));
        const auto buttons = pad.ranOut().findChildren<QPushButton *>();
        for (QPushButton *button : buttons)
            if (button->text().contains(QStringLiteral("count is off")))
                QTest::mouseClick(button, Qt::LeftButton);
        QCOMPARE(fed.count(), 1);
        QCOMPARE(m_yard->verbs->books().feeds.size(), before + 1);
        QCOMPARE(m_yard->verbs->books().feeds.last().pieces, 2);
        // Answered once, it does not ask at every tap of the night.
        pad.feed(1);
        QCOMPARE(fed.count(), 2);
    }
};

RICKYARD_TEST(TstFeedNotice)
#include "tst_feed_notice.moc"
