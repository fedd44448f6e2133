// The Pits page against a yard in which the small pit was made to burn 60 % more of late.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/charts/chart_view.h"
#include "views/pits/cost_table.h"
#include "views/pits/cusum_chart.h"
#include "views/pits/diagnosis_panel.h"
#include "views/pits/fuel_chart.h"
#include "views/pits/fuel_table.h"
#include "views/pits/pit_card.h"
#include "views/pits/pit_overview.h"
#include "views/pits/pits_page.h"
#include "views/pits/repair_list.h"
#include "views/pits/what_if.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/numeral.h"
#include "views/widgets/search_field.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/status_pill.h"

#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QPushButton>
#include <QSlider>
#include <QTableView>
#include <QTest>

#include <cmath>
#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::YardFixture;

class TstPitsPage : public QObject
{
    Q_OBJECT

private:
    std::unique_ptr<YardFixture> m_yard;
    std::unique_ptr<PitsPage> m_page;

    void open(bool filled = true)
    {
        m_page.reset();
        m_yard = std::make_unique<YardFixture>(filled);
        if (filled)
            worsen();
        m_page = std::make_unique<PitsPage>(*m_yard->context);
        m_page->resize(1180, 800);
        m_page->QWidget::show();
        QApplication::setActiveWindow(m_page.get());
        QVERIFY(QTest::qWaitForWindowExposed(m_page.get()));
        m_yard->waitForAnswers();
    }
    // Three cooks 30 % above the rest raise no flag on a log of ten; 60 % do.
    void worsen()
    {
        const QVector<RecordId> last = m_yard->cooks.mid(7);
        QVector<Row> rows;
        for (Feed feed : m_yard->verbs->books().feeds) {
            if (!last.contains(feed.cook))
                continue;
            feed.weight = Mass::rounded(feed.weight->toDouble() * 1.6 / 1.3);
            rows << toRow(feed);
        }
        QVERIFY(m_yard->verbs->putAll(rows, QStringLiteral("worsen")).ok());
    }
    PitCard *cardOf(RecordId pit) const
    {
        for (PitCard *card : m_page->overview().cards())
            if (card->pit() == pit)
                return card;
        return nullptr;
    }

private Q_SLOTS:
    void cleanup()
    {
        m_page.reset();
        m_yard.reset();
    }

    void theAnswerNamesThePit()
    {
        open();
        QVERIFY(m_page->overview().sentence().startsWith(QStringLiteral("Small pit burns")));
        QCOMPARE(m_page->overview().sentence().simplified(),
                 m_yard->answers->answers().fuel.headline.plainSentence().simplified());
        QCOMPARE(m_page->overview().cards().size(), 2);
        auto *card = cardOf(m_yard->smallPit);
        QCOMPARE(card->findChild<StatusPill *>()->word(), QStringLiteral("Burns too much"));
        const double excess = card->findChild<Numeral *>()->value().toDouble();
        QVERIFY2(excess > 35 && excess < 80, qPrintable(QString::number(excess)));
        QCOMPARE(cardOf(m_yard->bigPit)->findChild<StatusPill *>()->word(),
                 QStringLiteral("Not judged yet"));
    }

    void theReasonsOpen()
    {
        open();
        QPushButton *why = nullptr;
        const auto buttons = m_page->overview().findChildren<QPushButton *>();
        for (QPushButton *button : buttons)
            if (button->accessibleName() == QLatin1String("Show the reasons of this answer"))
                why = button;
        QVERIFY(why != nullptr);
        QTest::mouseClick(why, Qt::LeftButton);
        QPushButton *first = nullptr;
        const auto after = m_page->overview().findChildren<QPushButton *>();
        for (QPushButton *button : after)
            if (button->accessibleName().startsWith(QLatin1String("Open Since")))
                first = button;
        QVERIFY(first != nullptr && first->isVisible());
        QTest::mouseClick(first, Qt::LeftButton);
        QCOMPARE(m_yard->opened.size(), 1);
        QVERIFY(m_yard->opened.first().table == TableId::Cook);
    }

    void theChartKnowsItsCooks()
    {
        open();
        FuelChart &chart = m_page->overview().chart();
        QCOMPARE(chart.chosenPit(), m_yard->smallPit);
        QScatterSeries *points = nullptr;
        bool line = false;
        bool band = false;
        const auto all = chart.chart().chart()->series();
        for (QAbstractSeries *series : all) {
            if (auto *scatter = qobject_cast<QScatterSeries *>(series))
                points = scatter;
            line = line || series->name().contains(QLatin1String("expected"));
            band = band || qobject_cast<QAreaSeries *>(series) != nullptr;
        }
        QVERIFY(points != nullptr && line && band);
        QCOMPARE(points->count(), 10);
        // Each point leads to the cook whose heat it shows.
        const auto &fuel = m_yard->answers->answers().fuel;
        for (const CookFuel &cook : fuel.cooks) {
            const QPointF at(*cook.degreeHours * 1.8, seasonedPounds(cook.netHeat));
            QCOMPARE(chart.cookAt(points->name(), at), cook.cook);
        }
        // A pit without cooks has a line from its size and the crew's other cooks.
        chart.choosePit(m_yard->bigPit);
        QString expected;
        const auto without = chart.chart().chart()->series();
        for (QAbstractSeries *series : without)
            if (series->name().contains(QLatin1String("expected")))
                expected = series->name();
        QVERIFY2(expected.contains(QLatin1String("Big pit")), qPrintable(expected));
    }

    void theSumStandsUnderItsLimit()
    {
        open();
        CusumChart &sums = m_page->overview().sums();
        QHash<QString, QList<QPointF>> lines;
        const auto all = sums.chart()->series();
        for (QAbstractSeries *series : all)
            if (auto *line = qobject_cast<QLineSeries *>(series))
                lines.insert(line->name(), line->points());
        const auto more = lines.value(QStringLiteral("burns more"));
        const auto limit = lines.value(QStringLiteral("the flag goes up"));
        QCOMPARE(more.size(), 10);
        QCOMPARE(limit.size(), 10);
        QVERIFY(more.last().y() > limit.last().y()); // the fixture's fault is flagged
        QVERIFY(more.first().y() < limit.first().y());
        QString shown;
        connect(&sums, &ChartView::pointShown, this, [&](const QString &text) { shown = text; });
        sums.setFocus();
        QTest::keyClick(&sums, Qt::Key_End);
        QTest::keyClick(&sums, Qt::Key_Left);
        QVERIFY2(shown.contains(QLatin1String("limit")), qPrintable(shown));
    }

    void aCookIsThoughtUp()
    {
        open();
        FireWhatIf &what = m_page->overview().whatIf();
        QCOMPARE(what.choice()->currentData().toLongLong(), m_yard->smallPit);
        const QString before = what.sentence();
        QVERIFY2(before.startsWith(QLatin1String("A 12-hour cook at ")), qPrintable(before));
        const auto amount = [&] {
            return what.findChild<Numeral *>()->value().remove(QLatin1Char(',')).toDouble();
        };
        const double first = amount();
        QVERIFY(first > 0);
        QTest::keyClick(what.slider(FireWhatIf::Hours), Qt::Key_Right);
        QVERIFY2(what.sentence().startsWith(QLatin1String("A 13-hour cook")),
                 qPrintable(what.sentence()));
        const double longer = amount();
        QVERIFY(longer > first);
        QTest::keyClick(what.slider(FireWhatIf::Outside), Qt::Key_PageDown);
        const double colder = amount();
        QVERIFY(colder >= longer);
        QTest::keyClick(what.slider(FireWhatIf::Moisture), Qt::Key_PageUp);
        QVERIFY(amount() > colder); // wetter wood weighs more for the same heat
        const QString asked = what.sentence();
        // New answers leave what was set.
        Pit pit = m_yard->verbs->books().pits.value(m_yard->bigPit);
        pit.note = QStringLiteral("painted");
        QVERIFY(m_yard->verbs->edit(pit));
        m_yard->waitForAnswers();
        QCOMPARE(what.sentence(), asked);
    }

    void theTableIsFoundSortedAndExported()
    {
        open();
        FuelTable &table = m_page->overview().table();
        QAbstractItemModel *model = table.view().model();
        QCOMPARE(model->rowCount(), 10);
        QCOMPARE(model->index(0, 0).data().toString(), QStringLiteral("Cook 10")); // newest first
        table.view().sortByColumn(7, Qt::DescendingOrder);
        const QString most = model->index(0, 0).data().toString();
        QVERIFY2(QStringList({QStringLiteral("Cook 8"), QStringLiteral("Cook 9"),
                              QStringLiteral("Cook 10")})
                     .contains(most),
                 qPrintable(most));
        QTest::keyClicks(&table.search(), QStringLiteral("sun sep"));
        QCOMPARE(model->rowCount(), 1);
        table.view().setFocus();
        table.view().setCurrentIndex(model->index(0, 0));
        QTest::keyClick(&table.view(), Qt::Key_Return);
        QCOMPARE(m_yard->opened.size(), 1);
        QCOMPARE(m_yard->opened.first().id, m_yard->cooks.at(3));
        const QString path = m_yard->folder.filePath(QStringLiteral("fuel.csv"));
        QVERIFY(!table.exportTo(path));
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        const QByteArray bytes = file.readAll();
        QCOMPARE(bytes.trimmed().count('\n'), 10);
        QVERIFY(bytes.contains("Cook 10"));
        QVERIFY(table.exportTo(m_yard->folder.filePath(QStringLiteral("none/fuel.csv"))));
    }

    void theCauseIsFiledWithItsTask()
    {
        open();
        DiagnosisPanel &panel = m_page->overview().diagnosis();
        QVERIFY(!panel.diagnosis().empty());
        QVERIFY2(panel.sentence().contains(QLatin1String("Small pit")) ||
                     panel.sentence().contains(QLatin1String("Oak, spring")),
                 qPrintable(panel.sentence()));
        double all = 0;
        for (const Cause &cause : panel.diagnosis().causes)
            all += cause.probability;
        QVERIFY(std::abs(all - 1.0) < 1e-6);
        const auto tasks = m_yard->verbs->books().tasks.size();
        QPushButton *file = nullptr;
        const auto buttons = panel.findChildren<QPushButton *>();
        for (QPushButton *button : buttons)
            if (button->accessibleName().startsWith(QLatin1String("File the likeliest")))
                file = button;
        QVERIFY(file != nullptr);
        QTest::mouseClick(file, Qt::LeftButton);
        const Books &books = m_yard->verbs->books();
        QCOMPARE(books.findings.size(), 1);
        QCOMPARE(books.findings.last().pit, std::optional(m_yard->smallPit));
        QVERIFY(books.findings.last().state == FindingState::Open);
        QCOMPARE(books.tasks.size(), tasks + 1);
        QVERIFY(books.tasks.last().once && !books.tasks.last().steps.isEmpty());
        // One step, taken back as one.
        QVERIFY(m_yard->verbs->undo());
        QVERIFY(m_yard->verbs->books().findings.isEmpty());
        QCOMPARE(m_yard->verbs->books().tasks.size(), tasks);
    }

    void nothingFoundLowersTheFlag()
    {
        open();
        QPushButton *nothing = nullptr;
        const auto buttons = m_page->overview().diagnosis().findChildren<QPushButton *>();
        for (QPushButton *button : buttons)
            if (button->accessibleName().startsWith(QLatin1String("The pit was looked at")))
                nothing = button;
        QVERIFY(nothing != nullptr);
        QTest::mouseClick(nothing, Qt::LeftButton);
        m_yard->waitForAnswers();
        QVERIFY2(!m_page->overview().sentence().startsWith(QLatin1String("Small pit burns")),
                 qPrintable(m_page->overview().sentence()));
        QVERIFY(m_page->overview().diagnosis().sentence().contains(
            QLatin1String("nothing to explain")));
    }

    void aMendingShowsItsEffect()
    {
        open();
        QVERIFY(m_page->overview().repairs().words().contains(QLatin1String("Nothing mended")));
        const Books &books = m_yard->verbs->books();
        const Instant between = books.cooks.value(m_yard->cooks.at(6)).fireOut.value();
        UpkeepTask task;
        task.name = QStringLiteral("New gasket");
        task.pit = m_yard->smallPit;
        task.everyDays = 400;
        task.since = QDate(2026, 1, 1);
        task.work = Duration::ofBase(1800);
        const auto made = m_yard->verbs->add(task);
        QVERIFY2(made.ok(), qPrintable(made.message()));
        Visit visit;
        visit.task = made.value();
        visit.state = VisitState::Done;
        visit.start = between + durationFromHours(20);
        visit.end = between + durationFromHours(21);
        const auto done = m_yard->verbs->add(visit);
        QVERIFY2(done.ok(), qPrintable(done.message()));
        Finding finding;
        finding.pit = m_yard->smallPit;
        finding.opened = between;
        finding.state = FindingState::Mended;
        finding.mendedBy = done.value();
        finding.text = QStringLiteral("The worn gasket");
        QVERIFY(m_yard->verbs->add(finding));
        m_yard->waitForAnswers();
        const QString words = m_page->overview().repairs().words();
        QVERIFY2(words.contains(QLatin1String("The worn gasket")), qPrintable(words));
        QVERIFY2(words.contains(QLatin1String("3 since")), qPrintable(words));
    }

    void costsBySeveralSums()
    {
        open();
        m_page->sections().setCurrent(1);
        CostTable &costs = m_page->costs();
        QAbstractItemModel *model = costs.view().model();
        QCOMPARE(model->rowCount(), 1);
        QCOMPARE(model->index(0, 0).data().toString(), QStringLiteral("Small pit"));
        QCOMPARE(model->index(0, 1).data().toString(), QStringLiteral("10"));
        QVERIFY2(costs.sentence().contains(QLatin1String("did work")),
                 qPrintable(costs.sentence()));
        costs.choose(CostTable::By::Month);
        QVERIFY(model->rowCount() >= 2);
        costs.choose(CostTable::By::Event);
        QCOMPARE(model->rowCount(), 1);
        const QString path = m_yard->folder.filePath(QStringLiteral("costs.csv"));
        QVERIFY(!costs.exportTo(path));
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        QVERIFY(file.readAll().startsWith("what,cooks,hours [h]"));
        QVERIFY(costs.exportTo(m_yard->folder.filePath(QStringLiteral("none/costs.csv"))));
    }

    void aRetiredPitLeavesTheOverview()
    {
        open();
        Pit pit = m_yard->verbs->books().pits.value(m_yard->bigPit);
        pit.retired = true;
        QVERIFY(m_yard->verbs->edit(pit));
        m_yard->waitForAnswers();
        QCOMPARE(m_page->overview().cards().size(), 1);
    }

    void linksLeadToTheirLists()
    {
        open();
        QVERIFY(m_page->show({TableId::Pit, m_yard->smallPit}));
        QCOMPARE(m_page->sections().current(), 2);
        QCOMPARE(m_page->list(TableId::Pit)->chosen(), m_yard->smallPit);
        QVERIFY(m_page->show({TableId::Pit, 0}));
        QCOMPARE(m_page->list(TableId::Pit)->form().id(), RecordId(0));
        QVERIFY(!m_page->show({TableId::Lot, 1}));
    }

    void anEmptyYardSaysWhatToDo()
    {
        open(false);
        auto *empty = m_page->sections().page(0)->findChild<EmptyState *>();
        QVERIFY(empty->isVisible());
        QTest::mouseClick(empty->actionButton(), Qt::LeftButton);
        QCOMPARE(m_page->sections().current(), 2);
        QVERIFY(m_page->list(TableId::Pit)->form().isVisible());
    }

    void buttonsAndFieldsHaveNames()
    {
        open();
        const auto all = m_page->overview().findChildren<QWidget *>();
        int checked = 0;
        for (const QWidget *one : all) {
            if (qobject_cast<const QPushButton *>(one) == nullptr &&
                qobject_cast<const QLineEdit *>(one) == nullptr &&
                qobject_cast<const QTableView *>(one) == nullptr &&
                qobject_cast<const QComboBox *>(one) == nullptr)
                continue;
            ++checked;
            QVERIFY2(!one->accessibleName().isEmpty(), one->metaObject()->className());
        }
        QVERIFY(checked >= 8);
    }
};

RICKYARD_TEST(TstPitsPage)
#include "tst_pits_page.moc"
