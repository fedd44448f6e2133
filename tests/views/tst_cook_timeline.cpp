// The timeline of a cook under keys and mouse, and what stands in its picture.
#include "models/domain/fire/trace_codec.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/charts/chart_style.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/probe_facts.h"
#include "views/fire/timeline_paint.h"
#include "views/theme/theme_hub.h"

#include <QApplication>
#include <QImage>
#include <QPushButton>
#include <QTest>
#include <QWheelEvent>

#include <cmath>
#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::YardFixture;

class TstCookTimeline : public QObject
{
    Q_OBJECT

private:
    std::unique_ptr<YardFixture> m_yard;
    std::unique_ptr<CookTimeline> m_timeline;
    RecordId m_cook = 0;

    TimelineView &view() { return m_timeline->view(); }

    void addTrace(const QString &probe, const QVector<TracePoint> &points)
    {
        Trace trace;
        trace.cook = m_cook;
        trace.probe = probe;
        trace.start = m_yard->verbs->books().cooks.value(m_cook).lit;
        trace.points = static_cast<int>(points.size());
        trace.block = encodeTrace(points).value();
        QVERIFY(m_yard->verbs->add(trace).ok());
    }
    template <class F>
    static QVector<TracePoint> everySecond(int from, int to, F fahrenheit)
    {
        QVector<TracePoint> points;
        for (int i = from; i < to; ++i)
            points.append({i, temperatureFromFahrenheit(fahrenheit(i))});
        return points;
    }
    void start()
    {
        m_yard = std::make_unique<YardFixture>();
        m_cook = m_yard->cooks.last();
    }
    void open()
    {
        m_timeline = std::make_unique<CookTimeline>();
        m_timeline->resize(900, 520);
        m_timeline->show();
        QApplication::setActiveWindow(m_timeline.get());
        QVERIFY(QTest::qWaitForWindowExposed(m_timeline.get()));
        m_timeline->setCook(m_yard->verbs->books(), m_cook, m_yard->now);
        QTRY_VERIFY_WITH_TIMEOUT(m_timeline->curves() != nullptr, 20000);
    }
    TimelineFrame frameNow()
    {
        return TimelinePainter(view().content(), theme(&view()))
            .frame(view().size(), view().from(), view().to());
    }
    // Pixels of about the colour of the first probe in the upper part of the lane, above `degrees`.
    int inkAbove(double degrees)
    {
        const TimelinePainter painter(view().content(), theme(&view()));
        const TimelineFrame frame = frameNow();
        const double y = frame.temperatures.bottom() - (degrees - painter.low()) /
                                                           (painter.high() - painter.low()) *
                                                           frame.temperatures.height();
        const QImage image = view().grab().toImage();
        const QColor ink = seriesColor(0, theme(&view()));
        int count = 0;
        for (int row = static_cast<int>(frame.temperatures.top()); row < static_cast<int>(y); ++row)
            for (int x = static_cast<int>(frame.temperatures.left());
                 x <= static_cast<int>(frame.temperatures.right()); ++x) {
                const QColor c = image.pixelColor(x, row);
                const int apart = std::abs(c.red() - ink.red()) +
                                  std::abs(c.green() - ink.green()) +
                                  std::abs(c.blue() - ink.blue());
                count += apart < 120 ? 1 : 0;
            }
        return count;
    }

private Q_SLOTS:
    void cleanup()
    {
        m_timeline.reset();
        m_yard.reset();
    }

    // One reading of tens of thousands stands in the picture at every zoom that holds its moment.
    void aSpikeStaysInThePicture()
    {
        start();
        const int spike = 23457;
        addTrace(QStringLiteral("grate"), everySecond(0, 40000, [](int i) {
                     return i == spike ? 390.0 : 240 + 6 * std::sin(i / 50.0);
                 }));
        Cook cook = m_yard->verbs->books().cooks.value(m_cook);
        cook.target.reset(); // no band in the way of the ink
        QVERIFY(m_yard->verbs->edit(cook).ok());
        open();
        view().setFocus();
        int zooms = 0;
        while (view().to() - view().from() > 21) {
            QVERIFY2(inkAbove(320) > 3,
                     qPrintable(QStringLiteral("%1 s").arg(view().to() - view().from())));
            view().zoom(1.6, spike + 0.25);
            ++zooms;
        }
        QVERIFY(zooms > 12);
        // Away from it there is none.
        view().showStretch(100, 5000);
        QCOMPARE(inkAbove(320), 0);
    }

    void keysPanAndZoom()
    {
        start();
        open();
        view().setFocus();
        const double whole = view().to() - view().from();
        QVERIFY(view().isWhole());
        QTest::keyClick(&view(), Qt::Key_Plus);
        QVERIFY(std::abs((view().to() - view().from()) - whole / 1.5) < 1);
        const double from = view().from();
        QTest::keyClick(&view(), Qt::Key_Right);
        QVERIFY(view().from() > from);
        QTest::keyClick(&view(), Qt::Key_Left);
        QVERIFY(std::abs(view().from() - from) < 1e-6);
        QTest::keyClick(&view(), Qt::Key_Home);
        QCOMPARE(view().from(), 0.0);
        QTest::keyClick(&view(), Qt::Key_Left); // no further than the cook
        QCOMPARE(view().from(), 0.0);
        QTest::keyClick(&view(), Qt::Key_End);
        QVERIFY(std::abs(view().to() - whole) < 1e-6);
        QTest::keyClick(&view(), Qt::Key_Minus);
        QTest::keyClick(&view(), Qt::Key_0);
        QVERIFY(view().isWhole());
        for (int i = 0; i < 60; ++i)
            QTest::keyClick(&view(), Qt::Key_Equal);
        QCOMPARE(view().to() - view().from(), 20.0);
    }

    void mousePansAndZooms()
    {
        start();
        open();
        view().setFocus();
        const QPoint middle(view().width() / 2, 80);
        const TimelineFrame before = frameNow();
        const double held = before.atOf(middle.x());
        QWheelEvent wheel(middle, view().mapToGlobal(middle), {}, QPoint(0, 240), Qt::NoButton,
                          Qt::NoModifier, Qt::NoScrollPhase, false);
        QApplication::sendEvent(&view(), &wheel);
        QVERIFY(wheel.isAccepted());
        QVERIFY(!view().isWhole());
        QVERIFY(std::abs(frameNow().atOf(middle.x()) - held) < 1); // about the pointer
        const double from = view().from();
        const double pixel = (view().to() - view().from()) / frameNow().temperatures.width();
        QTest::mousePress(&view(), Qt::LeftButton, {}, middle);
        QTest::mouseMove(&view(), middle - QPoint(40, 0));
        QTest::mouseRelease(&view(), Qt::LeftButton, {}, middle - QPoint(40, 0));
        QVERIFY(std::abs(view().from() - (from + 40 * pixel)) < pixel);
        // Without the focus the wheel is the page's.
        auto *button = m_timeline->findChild<QPushButton *>();
        button->setFocus();
        QWheelEvent passing(middle, view().mapToGlobal(middle), {}, QPoint(0, 240), Qt::NoButton,
                            Qt::NoModifier, Qt::NoScrollPhase, false);
        const double span = view().to() - view().from();
        passing.ignore();
        QApplication::sendEvent(&view(), &passing);
        QCOMPARE(view().to() - view().from(), span);
    }

    void readsWhatIsThere()
    {
        start();
        addTrace(QStringLiteral("grate"), everySecond(0, 20000, [](int) { return 251.0; }));
        open();
        view().setFocus();
        // From feed to feed: the first is six minutes after lighting.
        QTest::keyClick(&view(), Qt::Key_Right, Qt::ControlModifier);
        QCOMPARE(view().readingAt(), std::optional(360.0));
        const QString words = view().accessibleDescription();
        QVERIFY2(words.contains(QStringLiteral("grate 251\u2009°F")), qPrintable(words));
        QVERIFY2(words.contains(QStringLiteral("fed 1 split of Oak, spring")), qPrintable(words));
        QTest::keyClick(&view(), Qt::Key_Right, Qt::ControlModifier);
        QCOMPARE(view().readingAt(), std::optional(3600.0)); // at temperature
        QVERIFY(view().accessibleDescription().contains(QStringLiteral("at temperature")));
        QTest::keyClick(&view(), Qt::Key_Left, Qt::ControlModifier);
        QCOMPARE(view().readingAt(), std::optional(360.0));
        QTest::keyClick(&view(), Qt::Key_Right, Qt::ShiftModifier);
        QVERIFY(*view().readingAt() > 360);
        // The pointer reads too.
        QTest::mouseMove(&view(), QPoint(300, 100));
        QVERIFY(std::abs(*view().readingAt() - frameNow().atOf(300)) < 1);
    }

    // A digit is a feed on this page, but not while the timeline has the focus.
    void singleKeysAreItsOwn()
    {
        start();
        open();
        QKeyEvent zero(QEvent::ShortcutOverride, Qt::Key_0, Qt::NoModifier);
        zero.ignore();
        QApplication::sendEvent(&view(), &zero);
        QVERIFY(zero.isAccepted());
        QKeyEvent two(QEvent::ShortcutOverride, Qt::Key_2, Qt::NoModifier);
        two.ignore();
        QApplication::sendEvent(&view(), &two);
        QVERIFY(!two.isAccepted());
        QKeyEvent textSize(QEvent::ShortcutOverride, Qt::Key_0, Qt::ControlModifier);
        textSize.ignore();
        QApplication::sendEvent(&view(), &textSize);
        QVERIFY(!textSize.isAccepted());
    }

    void faultsAreMarkedAndSaid()
    {
        start();
        addTrace(QStringLiteral("grate"), everySecond(0, 20000, [](int i) {
                     return i > 8000 && i < 12000 ? 60 + std::sin(i / 9.0)
                                                  : 250 + 5 * std::sin(i / 90.0);
                 }));
        addTrace(QStringLiteral("shelf"),
                 everySecond(0, 20000, [](int i) { return 240 + 5 * std::sin(i / 70.0); }));
        open();
        QCOMPARE(m_timeline->curves()->summaries.first().faults.size(), 1);
        const TimelineContent &content = view().content();
        QVERIFY(content.reading(10000, 5).contains(QStringLiteral("left out")));
        QVERIFY(!content.reading(5000, 5).contains(QStringLiteral("left out")));
        // The stretch is tinted where the rest of the lane is not.
        const TimelineFrame frame = frameNow();
        const QImage image = view().grab().toImage();
        const int row = static_cast<int>(frame.temperatures.bottom()) - 4;
        int tinted = 0;
        for (int at = 8300; at < 11700; at += 100)
            tinted += image.pixelColor(static_cast<int>(frame.xOf(at)), row) !=
                              image.pixelColor(static_cast<int>(frame.xOf(5000)), row)
                          ? 1
                          : 0;
        QVERIFY(tinted > 20);
        ProbeFacts facts;
        facts.show(m_yard->verbs->books(), *m_timeline->curves());
        QVERIFY2(facts.text().contains(QStringLiteral("Left out of these figures")),
                 qPrintable(facts.text()));
    }

    void ofAnotherCookIsShownWhole()
    {
        start();
        open();
        view().setFocus();
        QTest::keyClick(&view(), Qt::Key_Plus);
        // The same cook again, as after any change of the yard, keeps its stretch.
        const double from = view().from();
        m_timeline->setCook(m_yard->verbs->books(), m_cook, m_yard->now);
        QCOMPARE(view().from(), from);
        QVERIFY(!view().isWhole());
        m_timeline->setCook(m_yard->verbs->books(), m_yard->cooks.first(), m_yard->now);
        QVERIFY(view().isWhole());
        m_timeline->setCook(m_yard->verbs->books(), 99999, m_yard->now);
        QCOMPARE(view().content().cook, 0);
    }

    void exportsAPicture()
    {
        start();
        open();
        const QString png = m_yard->folder.filePath(QStringLiteral("t.png"));
        QVERIFY(!view().exportPicture(png));
        QCOMPARE(QImage(png).size(), view().size() * 2);
        QVERIFY(!view().exportPicture(m_yard->folder.filePath(QStringLiteral("t.svg"))));
        QVERIFY(view().exportPicture(m_yard->folder.filePath(QStringLiteral("t.doc"))));
        QVERIFY(view().exportPicture(m_yard->folder.filePath(QStringLiteral("no/t.png"))));
    }
};

RICKYARD_TEST(TstCookTimeline)
#include "tst_cook_timeline.moc"
