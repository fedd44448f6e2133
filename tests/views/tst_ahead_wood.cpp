// The why of the wood answer on Ahead, by mouse and keyboard: the fan and its tables, the what-if
// against the same question asked directly, the order it writes, and orders that are late.
#include "models/domain/answers/answers.h"
#include "models/domain/plan/order_life.h"
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/ahead/ahead_page.h"
#include "views/ahead/answer_card.h"
#include "views/ahead/late_orders.h"
#include "views/ahead/order_what_if.h"
#include "views/ahead/wood_tables.h"
#include "views/ahead/wood_why.h"
#include "views/records/figure_table.h"
#include "views/wood/fan_chart.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QFileInfo>
#include <QImage>
#include <QPushButton>
#include <QSignalSpy>
#include <QSlider>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using rickyard::test::YardFixture;
using views::AheadPage;
using views::OrderWhatIf;

namespace {

// A yard whose dry wood does not last: the dry rick is nearly burned up, and the event is some
// weeks off.
struct ShortYard : YardFixture {
    explicit ShortYard(double pounds = 40, int laterDays = 40)
    {
        const Duration later = Duration::ofBase(laterDays * 86400LL);
        Event feast = verbs->books().events.value(event);
        feast.start = feast.start + later;
        feast.end = feast.end + later;
        PlannedCook cook = verbs->books().plannedCooks.value(plannedCook);
        cook.light = cook.light + later;
        if (!verbs->putAll({toRow(feast), toRow(cook)}, QStringLiteral("later")))
            qFatal("later");
        const auto counted = verbs->count(dryLot, massFromPounds(pounds), QString());
        if (!counted)
            qFatal("count");
        waitForAnswers();
    }
};

QPushButton *buttonIn(const QWidget &in, const QString &text)
{
    const auto all = in.findChildren<QPushButton *>();
    for (QPushButton *one : all)
        if (one->text() == text && one->isVisible())
            return one;
    return nullptr;
}

struct Shown {
    std::unique_ptr<AheadPage> page;

    explicit Shown(YardFixture &yard) : page(std::make_unique<AheadPage>(*yard.context))
    {
        yard.waitForAnswers();
        page->resize(1060, 760);
        page->setVisible(true);
        if (!QTest::qWaitForWindowExposed(page.get()))
            qFatal("the page does not show");
    }
    void openWhy() const
    {
        QTest::mouseClick(buttonIn(page->woodCard(), QStringLiteral("Why?")), Qt::LeftButton);
        QCoreApplication::processEvents();
        settle();
    }
    void settle() const
    {
        QTRY_VERIFY_WITH_TIMEOUT(whatIf().settled(), 30000);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] views::WoodWhy &why() const { return page->woodWhy(); }
    [[nodiscard]] OrderWhatIf &whatIf() const { return why().whatIf(); }
};

const WoodAnswer &woodOf(const YardFixture &yard)
{
    return yard.answers->answers().wood;
}

QString cell(const views::FigureTable &table, int row, int column)
{
    return table.model()->index(row, column).data().toString();
}

} // namespace

class TstAheadWood : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void theWhyOpensTheFan();
    void tablesHoldTheSameNumbers();
    void nothingToOrderIsSaidPlainly();
    void aLostCauseIsSaidPlainly();
    void slidersAskTheSameDraw();
    void itAnswersWhileDragging();
    void anotherRiskBringsAdvice();
    void aSupplierIsTakenIntoTheSliders();
    void theOrderIsWritten();
    void pictureAndCsv();
    void lateOrdersAreChased();
    void chancesDoNotLieUponEachOther();
    void everythingHasAName();
};

void TstAheadWood::theWhyOpensTheFan()
{
    ShortYard yard;
    const Shown shown(yard);
    QVERIFY(!shown.why().isVisible());
    shown.openWhy();
    QVERIFY(shown.why().fan().isVisible());
    QVERIFY(woodOf(yard).needed);
    // The event that runs short carries its chance, in the words of the answer.
    const WoodRisk &worst = woodOf(yard).risks.at(woodOf(yard).worst);
    QCOMPARE(shown.why().fan().eventLabels(),
             QStringList{chanceWords(worst.chance, worst.error, wordingOf(yard.verbs->books()))});
    const QStringList lines = shown.why().lines().split(QLatin1Char('\n'));
    QCOMPARE(lines.size(), qsizetype{3});
    QVERIFY2(lines.at(0).startsWith(QStringLiteral("If nothing is ordered: ")) &&
                 lines.at(0).contains(worst.name),
             qPrintable(lines.at(0)));
    QVERIFY2(lines.at(1).startsWith(QStringLiteral("If the order comes a week late: ")),
             qPrintable(lines.at(1)));
    QVERIFY2(lines.at(2).startsWith(QStringLiteral("If every cook is 20 °F colder: ")),
             qPrintable(lines.at(2)));
    // The keyboard reads the event's point.
    QSignalSpy spoken(&shown.why().fan(), &views::ChartView::pointShown);
    shown.why().fan().setFocus();
    QTest::keyClick(&shown.why().fan(), Qt::Key_Home);
    QVERIFY(!spoken.isEmpty());
    QVERIFY2(spoken.last().first().toString().contains(worst.name),
             qPrintable(spoken.last().first().toString()));
}

void TstAheadWood::tablesHoldTheSameNumbers()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    const WoodAnswer &answer = woodOf(yard);
    const Wording wording = wordingOf(yard.verbs->books());
    for (views::FigureTable *table :
         {&shown.why().suppliers(), &shown.why().events(), &shown.why().course()}) {
        const QAbstractItemModelTester tester(table->model());
        QVERIFY(table->model()->rowCount() > 0);
    }
    QCOMPARE(shown.why().events().model()->rowCount(), static_cast<int>(answer.risks.size()));
    QCOMPARE(cell(shown.why().events(), 0, 2),
             chanceWords(answer.risks.first().chance, answer.risks.first().error, wording));
    QCOMPARE(shown.why().suppliers().model()->rowCount(),
             static_cast<int>(answer.orders.size() + answer.greenOrders.size()));
    QCOMPARE(cell(shown.why().suppliers(), 0, 1), answer.orders.first().amount);
    QTest::mouseClick(buttonIn(shown.why(), QStringLiteral("Table")), Qt::LeftButton);
    QVERIFY(shown.why().course().isVisible());
    QCOMPARE(shown.why().course().model()->rowCount(), static_cast<int>(answer.course.size()));
    QCOMPARE(cell(shown.why().course(), 3, 2).remove(QLatin1Char(',')),
             QString::number(qRound64(seasonedPounds(answer.course.at(3).middle))));
}

// Eight events a week apart: room for all chances in a wide chart, for some in a narrow one.
void TstAheadWood::chancesDoNotLieUponEachOther()
{
    const YardFixture yard;
    WoodAnswer answer;
    answer.acceptedRisk = 0.05;
    const QDate first(2026, 12, 1);
    for (int day = 0; day < 60; ++day)
        answer.course << StockPoint{first.addDays(day), Heat::ofBase(1000000000), Heat(),
                                    Heat::ofBase(2000000000)};
    for (int week = 0; week < 8; ++week) {
        WoodRisk risk;
        risk.name = QStringLiteral("Supper %1").arg(week + 1);
        risk.day = first.addDays(2 + 7 * week);
        risk.chance = 0.5;
        answer.risks << risk;
    }
    views::FanChart fan;
    fan.show(yard.verbs->books(), answer);
    fan.resize(1200, 360);
    fan.setVisible(true);
    QTRY_COMPARE(fan.eventLabels().size(), 8);
    fan.resize(300, 360);
    QTRY_VERIFY(fan.eventLabels().size() < 8);
    QVERIFY(!fan.eventLabels().isEmpty());
}

void TstAheadWood::nothingToOrderIsSaidPlainly()
{
    YardFixture yard;
    const Shown shown(yard);
    shown.openWhy();
    QVERIFY(!woodOf(yard).needed);
    QVERIFY(shown.why().fan().eventLabels().isEmpty());
    QTRY_VERIFY_WITH_TIMEOUT(
        shown.why().lines().contains(QStringLiteral("If every cook is 20 °F colder: ")), 30000);
    QVERIFY(!shown.why().fan().showsOrder());
    QVERIFY(!shown.why().suppliers().isVisible());
}

// The event is nearer than any load.
void TstAheadWood::aLostCauseIsSaidPlainly()
{
    ShortYard yard(40, -8);
    const Shown shown(yard);
    shown.openWhy();
    QVERIFY(woodOf(yard).needed);
    QVERIFY(woodOf(yard).orders.isEmpty());
    QVERIFY2(shown.why().lines().contains(QStringLiteral("no order would come in time")),
             qPrintable(shown.why().lines()));
    QVERIFY(!buttonIn(shown.why(), QStringLiteral("Write the order"))->isEnabled());
}

void TstAheadWood::slidersAskTheSameDraw()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    const WoodAnswer &answer = woodOf(yard);
    // At the proposal it says what the proposal says.
    const WoodOrderChoice &best = answer.orders.first();
    QCOMPARE(shown.whatIf().asked().source, best.source);
    QCOMPARE(shown.whatIf().asked().units, best.units);
    QCOMPARE(shown.whatIf().asked().orderDay, best.orderBy);
    const auto &first = shown.whatIf().result();
    QVERIFY(std::abs(first.risks.at(first.worst).chance - best.chance) < 1e-12);
    // Each lever, by the keyboard, against the question asked directly.
    const QPair<OrderWhatIf::Lever, Qt::Key> moves[] = {{OrderWhatIf::Late, Qt::Key_PageUp},
                                                        {OrderWhatIf::Colder, Qt::Key_PageUp},
                                                        {OrderWhatIf::Day, Qt::Key_Home},
                                                        {OrderWhatIf::Amount, Qt::Key_Right}};
    for (const auto &[lever, key] : moves) {
        shown.whatIf().slider(lever)->setFocus();
        QTest::keyClick(shown.whatIf().slider(lever), key);
        shown.settle();
        const WoodWhatIfAnswer direct =
            woodWhatIf(answer, shown.whatIf().asked(), wordingOf(yard.verbs->books()));
        const WoodWhatIfAnswer &told = shown.whatIf().result();
        QCOMPARE(told.worst, direct.worst);
        QCOMPARE(told.risks.at(told.worst).chance, direct.risks.at(direct.worst).chance);
        QVERIFY2(shown.whatIf().sentence().contains(chanceWords(
                     direct.risks.at(direct.worst).chance, direct.risks.at(direct.worst).error,
                     wordingOf(yard.verbs->books()))),
                 qPrintable(shown.whatIf().sentence()));
    }
    QVERIFY(shown.whatIf()
                .slider(OrderWhatIf::Colder)
                ->accessibleDescription()
                .contains(QStringLiteral("°F")));
}

// A slider that keeps moving is answered on the way, and the last place in the end.
void TstAheadWood::itAnswersWhileDragging()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    QSlider *slider = shown.whatIf().slider(OrderWhatIf::Late);
    QSignalSpy answered(&shown.whatIf(), &OrderWhatIf::answered);
    const int y = slider->height() / 2;
    QTest::mousePress(slider, Qt::LeftButton, {}, {slider->height() / 4, y});
    for (int x = 0; x < slider->width(); x += 4) {
        QTest::mouseMove(slider, {x, y});
        QTest::qWait(5);
    }
    QTRY_VERIFY_WITH_TIMEOUT(!answered.isEmpty(), 30000);
    QTest::mouseRelease(slider, Qt::LeftButton, {}, {slider->width() - 1, y});
    shown.settle();
    const WoodWhatIfAnswer direct =
        woodWhatIf(woodOf(yard), shown.whatIf().asked(), wordingOf(yard.verbs->books()));
    QCOMPARE(shown.whatIf().result().risks.at(direct.worst).chance,
             direct.risks.at(direct.worst).chance);
    QVERIFY(shown.why().fan().showsOrder());
}

void TstAheadWood::anotherRiskBringsAdvice()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    QVERIFY(shown.whatIf().advice().isEmpty());
    QSlider *risk = shown.whatIf().slider(OrderWhatIf::Risk);
    risk->setFocus();
    QTest::keyClick(risk, Qt::Key_PageUp);
    const int percent = risk->value();
    QTRY_VERIFY_WITH_TIMEOUT(!shown.whatIf().advice().isEmpty(), 60000);
    QVERIFY2(shown.whatIf().advice().startsWith(QStringLiteral("At %1 %").arg(percent)),
             qPrintable(shown.whatIf().advice()));
}

void TstAheadWood::aSupplierIsTakenIntoTheSliders()
{
    ShortYard yard;
    Supplier other;
    other.name = QStringLiteral("Far Hill Wood (invented)");
    other.leadTime = Duration::ofBase(3 * 86400);
    other.unit = SellUnit::QuarterCord;
    other.price = Money::ofBase(15000);
    other.promised = Moisture::ofBase(18000);
    QVERIFY(yard.verbs->add(other).ok());
    const Shown shown(yard);
    shown.openWhy();
    QVERIFY(woodOf(yard).orders.size() > 1);
    views::FigureTable &table = shown.why().suppliers();
    table.setFocus();
    table.setCurrentIndex(table.model()->index(1, 0));
    QTest::keyClick(&table, Qt::Key_Return);
    shown.settle();
    QCOMPARE(shown.whatIf().asked().source, woodOf(yard).orders.at(1).source);
    QCOMPARE(shown.whatIf().asked().units, woodOf(yard).orders.at(1).units);
}

void TstAheadWood::theOrderIsWritten()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    const WoodOrderChoice best = woodOf(yard).orders.first();
    const int steps = yard.verbs->undoStack().count();
    QTest::mouseClick(buttonIn(shown.why(), QStringLiteral("Write the order")), Qt::LeftButton);
    QCOMPARE(yard.verbs->undoStack().count(), steps + 1);
    QCOMPARE(yard.verbs->books().orders.size(), qsizetype{1});
    const WoodOrder order = yard.verbs->books().orders.first();
    QCOMPARE(order.state, OrderState::Draft);
    QCOMPARE(order.supplier, best.supplier);
    QCOMPARE(order.count, std::optional(Plain::rounded(best.units * 1e6)));
    QCOMPARE(order.volume, best.stacked);
    QCOMPARE(order.price, best.cost);
    QCOMPARE(yard.opened.last().table, TableId::WoodOrder);
    QCOMPARE(yard.opened.last().id, order.id);
    QVERIFY(yard.verbs->undo().ok());
    QVERIFY(yard.verbs->books().orders.isEmpty());
}

void TstAheadWood::pictureAndCsv()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    const WoodAnswer &answer = woodOf(yard);
    const QList<QByteArray> lines =
        views::courseCsv(answer, answer.withOrder).trimmed().split('\n');
    QCOMPARE(lines.size(), answer.course.size() + 1);
    QVERIFY(lines.first().startsWith("day,nothing_p5 [slb]"));
    const QList<QByteArray> cells = lines.at(5).trimmed().split(',');
    QCOMPARE(cells.at(0), answer.course.at(4).day.toString(Qt::ISODate).toUtf8());
    QVERIFY(std::abs(cells.at(2).toDouble() - seasonedPounds(answer.course.at(4).middle)) < 0.06);
    QVERIFY(std::abs(cells.at(6).toDouble() - seasonedPounds(answer.withOrder.at(4).upper)) < 0.06);
    for (const char *name : {"fan.png", "fan.svg"}) {
        const QString path = yard.folder.filePath(QString::fromLatin1(name));
        QVERIFY(!shown.why().fan().exportPicture(path));
        QVERIFY(QFileInfo(path).size() > 2000);
    }
}

void TstAheadWood::lateOrdersAreChased()
{
    YardFixture yard;
    WoodOrder order;
    order.supplier = yard.supplier;
    order.species = yard.oak;
    order.state = OrderState::Promised;
    order.volume = volumeFromCubicFeet(64);
    order.ordered = QDate(2026, 11, 1);
    order.promised = QDate(2026, 11, 21);
    const RecordId id = yard.verbs->add(order).value();
    const Shown shown(yard);
    auto *late = shown.page->findChild<views::LateOrders *>();
    QVERIFY(late->isVisible());
    QPushButton *ask = buttonIn(*late, QStringLiteral("Asked today"));
    QVERIFY(ask != nullptr);
    QVERIFY2(ask->accessibleName().contains(QStringLiteral("is 4 days late")),
             qPrintable(ask->accessibleName()));
    QTest::mouseClick(buttonIn(*late, QStringLiteral("Open")), Qt::LeftButton);
    QCOMPARE(yard.opened.last().id, id);
    QTest::mouseClick(ask, Qt::LeftButton);
    QCoreApplication::processEvents();
    QCOMPARE(yard.verbs->books().orders.value(id).chased, QDate(2026, 11, 25));
    QVERIFY(!buttonIn(*late, QStringLiteral("Asked today"))->isEnabled());
    QVERIFY(yard.verbs->undo().ok());
    QCoreApplication::processEvents();
    QVERIFY(buttonIn(*late, QStringLiteral("Asked today"))->isEnabled());
    QVERIFY(yard.verbs->stepOrder(id, OrderStep::Cancel).ok());
    QCoreApplication::processEvents();
    QVERIFY(!late->isVisible());
}

void TstAheadWood::everythingHasAName()
{
    ShortYard yard;
    const Shown shown(yard);
    shown.openWhy();
    const auto children = shown.why().findChildren<QWidget *>();
    for (const QWidget *child : children) {
        const bool asked = child->inherits("QSlider") || child->inherits("QComboBox") ||
                           child->inherits("QPushButton") || child->inherits("QTableView") ||
                           child->inherits("rickyard::views::ChartView");
        if (asked && child->parentWidget()->inherits("QComboBox"))
            continue;
        QVERIFY2(!asked || !child->accessibleName().isEmpty() ||
                     child->inherits("QComboBoxListView"),
                 child->metaObject()->className());
    }
}

RICKYARD_TEST(TstAheadWood)
#include "tst_ahead_wood.moc"
