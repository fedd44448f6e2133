// The log of cooks on the Fire page: charts of all cooks, two cooks side by side, and on a cook's
// own page its wood with the money and what was changed afterwards. Invented data.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/charts/chart_view.h"
#include "views/fire/compare_grid.h"
#include "views/fire/compare_view.h"
#include "views/fire/cook_changes_panel.h"
#include "views/fire/cook_detail.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/cook_wood_panel.h"
#include "views/fire/fire_page.h"
#include "views/fire/like_finder.h"
#include "views/fire/log_chart.h"
#include "views/fire/log_charts.h"
#include "views/fire/log_table.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/records/record_list.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/text_label.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>
#include <QtCharts/QScatterSeries>

#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::YardFixture;

class TstLogOfCooks : public QObject
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
        m_yard->waitForAnswers();
    }
    LogCharts &charts()
    {
        clickTab(QStringLiteral("Charts"));
        return m_page->charts();
    }
    CompareView &comparison()
    {
        clickTab(QStringLiteral("Compare"));
        return m_page->comparison();
    }
    void clickTab(const QString &name)
    {
        SectionTabs &tabs = m_page->sections();
        for (int i = 0; i < tabs.count(); ++i)
            if (tabs.tab(i)->text() == name || tabs.tab(i)->accessibleName() == name)
                QTest::mouseClick(tabs.tab(i), Qt::LeftButton);
        QApplication::processEvents();
    }
    static QList<QScatterSeries *> pitsOf(ChartView &chart)
    {
        QList<QScatterSeries *> found;
        for (QAbstractSeries *series : chart.chart()->series())
            if (auto *scatter = qobject_cast<QScatterSeries *>(series))
                found << scatter;
        return found;
    }
    static QStringList textsOf(const QWidget &widget)
    {
        QStringList texts;
        for (const TextLabel *label : widget.findChildren<TextLabel *>())
            if (!label->isHidden())
                texts << label->text();
        return texts;
    }

private Q_SLOTS:
    void cleanup()
    {
        m_page.reset();
        m_yard.reset();
    }

    void everyFinishedCookIsAPoint()
    {
        open();
        LogCharts &page = charts();
        const auto pits = pitsOf(page.chart().chart());
        QCOMPARE(pits.size(), 1); // the big pit never burned
        QCOMPARE(pits.first()->name(), QStringLiteral("Small pit"));
        QCOMPARE(pits.first()->count(), 10);
        QVERIFY2(page.sentence().startsWith(QStringLiteral("Each further hour took")),
                 qPrintable(page.sentence()));
        QVERIFY(page.sentence().contains(QStringLiteral("on Small pit")));
        QCOMPARE(page.table().view().model()->rowCount(), 10);
        const QAbstractItemModelTester tester(page.table().view().model());
        // The points are the hours and the heat of the answers.
        const CookFuel &first = m_yard->answers->answers().fuel.cooks.first();
        QCOMPARE(pits.first()->at(0).x(), hours(first.length));
        QVERIFY(std::abs(pits.first()->at(0).y() - seasonedPounds(first.netHeat)) < 1e-6);
    }

    void theOtherTwoAreUseAnHour()
    {
        open();
        LogCharts &page = charts();
        const CookFuel first = m_yard->answers->answers().fuel.cooks.first();
        for (const UseAgainst against : {UseAgainst::Outside, UseAgainst::Wind}) {
            QPushButton *button = nullptr;
            for (auto *one : page.findChildren<QPushButton *>())
                if (one->isCheckable() &&
                    one->text() == (against == UseAgainst::Wind
                                        ? QStringLiteral("Wind")
                                        : QStringLiteral("Outside temperature")))
                    button = one;
            QVERIFY(button != nullptr);
            QTest::mouseClick(button, Qt::LeftButton);
            const QPointF point = pitsOf(page.chart().chart()).first()->at(0);
            QVERIFY(std::abs(point.y() - seasonedPounds(first.netHeat) / hours(first.length)) <
                    1e-6);
            QVERIFY(std::abs(point.x() - (against == UseAgainst::Wind
                                              ? 3.0 / 0.44704 // an exact mile an hour
                                              : fahrenheit(*first.meanOutside))) < 1e-3);
        }
        // Every cook had the same wind: no line, and the words say so.
        QVERIFY2(page.sentence().contains(QStringLiteral("No line")), qPrintable(page.sentence()));
    }

    void filtersNarrowAllOfIt()
    {
        open();
        LogCharts &page = charts();
        page.pits().setCurrentIndex(page.pits().findText(QStringLiteral("Big pit")));
        QCOMPARE(page.table().view().model()->rowCount(), 0);
        QVERIFY(pitsOf(page.chart().chart()).isEmpty());
        QVERIFY(page.sentence().contains(QStringLiteral("No finished cook")));
        page.pits().setCurrentIndex(page.pits().findText(QStringLiteral("Small pit")));
        QCOMPARE(page.table().view().model()->rowCount(), 10);
        // Lit 90, 82, … 18 days before 25 Nov 2026; 42, 34, 26 and 18 days are 14, 22, 30 Oct and 7
        // Nov.
        page.from().setValue(QStringLiteral("2026-10-15"));
        Q_EMIT page.from().edited();
        QCOMPARE(page.table().view().model()->rowCount(), 3);
        page.until().setValue(QStringLiteral("2026-10-31"));
        Q_EMIT page.until().edited();
        QCOMPARE(pitsOf(page.chart().chart()).first()->count(), 2);
    }

    void aPointNamesItsCookAndOpensIt()
    {
        open();
        LogCharts &page = charts();
        ChartView &chart = page.chart().chart();
        QSignalSpy shown(&chart, &ChartView::pointShown);
        chart.setFocus();
        QTest::keyClick(&chart, Qt::Key_Home);
        QVERIFY(!shown.isEmpty());
        // The arrow keys visit the ten cooks and no point of the line.
        for (int i = 0; i < 20; ++i)
            QTest::keyClick(&chart, Qt::Key_Right);
        QSet<QString> texts;
        for (const auto &call : shown)
            texts << call.first().toString();
        QCOMPARE(texts.size(), 10);
        const QString last = shown.last().first().toString();
        QVERIFY2(last.contains(QStringLiteral("Cook ")) && last.contains(QStringLiteral("an hour")),
                 qPrintable(last));
        m_yard->opened.clear();
        QTest::keyClick(&chart, Qt::Key_Return);
        QCOMPARE(m_yard->opened.size(), 1);
        QCOMPARE(m_yard->opened.first().table, TableId::Cook);
        const Cook cook = m_yard->workspace->books().cooks.value(m_yard->opened.first().id);
        QVERIFY2(last.startsWith(cook.name + QLatin1Char(',')), qPrintable(last));
        // The table does the same.
        m_yard->opened.clear();
        page.table().view().setFocus();
        page.table().view().selectRow(0);
        QTest::keyClick(&page.table().view(), Qt::Key_Return);
        QCOMPARE(m_yard->opened.size(), 1);
    }

    void bothCanBeTakenAway()
    {
        open();
        LogCharts &page = charts();
        const QString csv = m_yard->folder.filePath(QStringLiteral("use.csv"));
        QVERIFY(!page.exportTable(csv));
        QFile file(csv);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QList<QByteArray> lines = file.readAll().trimmed().split('\n');
        QCOMPARE(lines.size(), 11);
        QVERIFY(lines.first().contains("length [h]") && lines.first().contains("used [slb]"));
        const QList<QByteArray> cells = lines.at(1).split(',');
        const CookFuel first = m_yard->answers->answers().fuel.cooks.first();
        QVERIFY(std::abs(cells.at(8).toDouble() - seasonedPounds(first.netHeat)) < 0.01);
        QVERIFY(page.exportTable(QStringLiteral("/nowhere/at/all.csv")));
        for (const char *name : {"use.png", "use.svg"})
            QVERIFY(
                !page.chart().chart().exportPicture(m_yard->folder.filePath(QLatin1String(name))));
    }

    void anEmptyLogSaysWhatToDo()
    {
        open(false);
        (void)charts();
        QVERIFY(textsOf(m_page->charts())
                    .join(QLatin1Char(' '))
                    .contains(QStringLiteral("No finished cook yet")));
        QVERIFY(textsOf(comparison())
                    .join(QLatin1Char(' '))
                    .contains(QStringLiteral("Two cooks are needed")));
    }

    void twoChosenInTheListStandSideBySide()
    {
        open();
        RecordList *list = m_page->list(TableId::Cook);
        clickTab(QStringLiteral("Log of cooks"));
        QVERIFY(list->show(m_yard->cooks.at(5)));
        auto *detail = list->findChild<CookDetail *>();
        QPushButton *button = nullptr;
        for (auto *one : detail->findChildren<QPushButton *>())
            if (one->text().startsWith(QStringLiteral("Compare")))
                button = one;
        QVERIFY(button != nullptr);
        QCOMPARE(button->text(), QStringLiteral("Compare with…"));
        const QModelIndex other = list->view().currentIndex().siblingAtRow(
            list->view().currentIndex().row() + 1); // the one before it in time
        list->view().selectionModel()->select(other, QItemSelectionModel::Select |
                                                         QItemSelectionModel::Rows);
        QCOMPARE(button->text(), QStringLiteral("Compare the two"));
        QTest::mouseClick(button, Qt::LeftButton);
        CompareView &view = m_page->comparison();
        QVERIFY(view.isVisible());
        QCOMPARE(view.first(), m_yard->cooks.at(4)); // the earlier one
        QCOMPARE(view.second(), m_yard->cooks.at(5));
        // Cook 5 ran 8 h, cook 6 ran 9 h, ten cooks with two degrees less each time.
        const QStringList texts = textsOf(view.grid());
        QVERIFY(texts.contains(QStringLiteral("1:00 h longer")));
        QVERIFY(texts.contains(
            QString(QStringLiteral("2") + QChar(0x2009) + QStringLiteral("°F colder"))));
        QVERIFY(texts.contains(QStringLiteral("the same")));
    }

    void timelinesShareTheirHours()
    {
        open();
        CompareView &view = comparison();
        view.compare(m_yard->cooks.at(0), m_yard->cooks.at(3)); // 8 h and 11 h
        const auto hoursOf = [](CookTimeline &timeline) { return timeline.view().to() / 3600; };
        QVERIFY(hoursOf(view.firstTimeline()) >= 11);
        QCOMPARE(hoursOf(view.firstTimeline()), hoursOf(view.secondTimeline()));
    }

    void oneCookMeetsTheOneMostLikeIt()
    {
        open();
        CompareView &view = comparison();
        view.compare(m_yard->cooks.at(6));
        QCOMPARE(view.first(), m_yard->cooks.at(6));
        QCOMPARE(view.second(), view.finder().found().first().cook);
        // Asked for a much shorter and warmer one, it finds another: eight hours at 60 °F.
        PlannedCook asked;
        asked.pit = m_yard->smallPit;
        asked.length = durationFromHours(8);
        asked.outside = temperatureFromFahrenheit(60);
        view.finder().fields().show(toRow(asked));
        Q_EMIT view.finder().fields().edited(QStringLiteral("length"));
        QCOMPARE(view.finder().found().first().cook, m_yard->cooks.at(0));
        QVERIFY(view.finder().found().first().distance < 1e-3);
    }

    void woodAndMoneyOfACook()
    {
        open();
        RecordList *list = m_page->list(TableId::Cook);
        clickTab(QStringLiteral("Log of cooks"));
        QVERIFY(list->show(m_yard->cooks.at(0)));
        auto *detail = list->findChild<CookDetail *>();
        detail->parts().setCurrent(1);
        const QStringList texts = textsOf(detail->wood());
        QVERIFY(texts.contains(QStringLiteral("Oak, spring")));
        QVERIFY(texts.at(2).startsWith(QStringLiteral("8 splits · ")));
        // $220 for the lot's received dry wood, by the share that this cook burned.
        Mass burned;
        Mass received;
        for (const Movement &m : m_yard->workspace->books().movements) {
            if (m.cook == m_yard->cooks.at(0))
                burned += -m.dryMass;
            if (m.lot == m_yard->dryLot && m.kind == MovementKind::Received)
                received += m.dryMass;
        }
        const QString cost = texts.at(1);
        QVERIFY2(std::abs(cost.mid(1).toDouble() - 220.0 * (burned / received)) < 0.006,
                 qPrintable(cost));
    }

    void whatWasChangedAfterwardsIsShown()
    {
        open();
        RecordList *list = m_page->list(TableId::Cook);
        clickTab(QStringLiteral("Log of cooks"));
        QVERIFY(list->show(m_yard->cooks.at(0)));
        auto *detail = list->findChild<CookDetail *>();
        // The yard's feeds were typed after the fires were out: each is a change already.
        const int before = detail->changes().count();
        QCOMPARE(before, 8);
        Cook cook = m_yard->workspace->books().cooks.value(m_yard->cooks.at(0));
        cook.foods = QStringLiteral("two shoulders");
        QVERIFY(m_yard->verbs->edit(cook).ok());
        QCOMPARE(detail->changes().count(), before + 1);
        detail->parts().setCurrent(2);
        const QStringList texts = textsOf(detail->changes());
        QCOMPARE(texts.at(0), QStringLiteral("Food")); // the latest stands first
        QCOMPARE(texts.at(1), QStringLiteral("added: two shoulders"));
        QVERIFY(texts.at(2).contains(QStringLiteral("25 Nov 2026")));
        QVERIFY(list->show(m_yard->cooks.at(1)));
        QCOMPARE(detail->changes().count(), 9); // its own nine feeds
        QVERIFY(list->show(m_yard->cooks.at(0)));
        QVERIFY(m_yard->verbs->undo().ok());
        QCOMPARE(detail->changes().count(), before);
    }
};

RICKYARD_TEST(TstLogOfCooks)
#include "tst_log_of_cooks.moc"
