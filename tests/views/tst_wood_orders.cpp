// An order's life on the Wood page, by mouse and keyboard: draft, sent, promised, late, asked,
// come.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/records/figure_table.h"
#include "views/widgets/field_row.h"
#include "views/widgets/status_pill.h"
#include "views/wood/order_row.h"
#include "views/wood/order_sheet.h"
#include "views/wood/orders_panel.h"
#include "views/wood/receiving_groups.h"
#include "views/wood/receiving_sheet.h"
#include "views/wood/supplier_scores.h"
#include "views/wood/wood_page.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QDateTimeEdit>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using rickyard::test::YardFixture;
using views::OrderRow;
using views::WoodPage;

namespace {

const QDate kToday(2026, 11, 25);

std::unique_ptr<WoodPage> ordersShown(YardFixture &yard)
{
    auto page = std::make_unique<WoodPage>(*yard.context);
    page->resize(1180, 760);
    page->setVisible(true);
    if (!QTest::qWaitForWindowExposed(page.get()))
        qFatal("the page does not show");
    page->show({TableId::WoodOrder, 0});
    QCoreApplication::processEvents();
    return page;
}

QPushButton *buttonIn(const QWidget &in, const QString &text)
{
    const auto all = in.findChildren<QPushButton *>();
    for (QPushButton *one : all)
        if (one->text() == text && one->isVisible())
            return one;
    return nullptr;
}

void press(const QWidget &in, const QString &text)
{
    QPushButton *one = buttonIn(in, text);
    QVERIFY2(one != nullptr && one->isEnabled(), qPrintable(text));
    QTest::mouseClick(one, Qt::LeftButton);
    QCoreApplication::processEvents();
}

RecordId orderIn(YardFixture &yard, OrderState state, QDate ordered, QDate promised = {})
{
    WoodOrder order;
    order.supplier = yard.supplier;
    order.species = yard.oak;
    order.state = state;
    order.unit = SellUnit::HalfCord;
    order.count = Plain::ofBase(2000000);
    order.volume = volumeFromCubicFeet(128);
    order.ordered = ordered;
    order.promised = promised;
    const auto added = yard.verbs->add(order);
    if (!added)
        qFatal("order: %s", qPrintable(added.message()));
    return added.value();
}

QString plain(QString text)
{
    return text.replace(QChar(0x202F), QLatin1Char(' '));
}

WoodOrder orderOf(const YardFixture &yard, RecordId id)
{
    return yard.verbs->books().orders.value(id);
}

void type(const views::FieldSet &fields, const char *key, const char *text)
{
    auto *edit = qobject_cast<QLineEdit *>(fields.editor(QString::fromLatin1(key))->inner());
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, QString::fromUtf8(text));
}

} // namespace

class TstWoodOrders : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void aNewOrderByHand();
    void aRefusedOrderKeepsWhatWasTyped();
    void sendingStampsAndCopies();
    void promisingTakesTheDay();
    void aDayBeforeItWasSentIsRefused();
    void lateOnesAreAskedOnce();
    void itCameFillsTheSheet();
    void aBegunDeliveryIsNotLost();
    void cancellingIsOneStep();
    void whatIsTypedSurvivesOtherChanges();
    void scoresSaySoWithoutHistory();
};

void TstWoodOrders::aNewOrderByHand()
{
    YardFixture yard;
    auto page = ordersShown(yard);
    const int steps = yard.verbs->undoStack().count();
    press(page->orders(), QStringLiteral("New order"));
    views::OrderSheet &sheet = page->orders().sheet();
    // Supplier, wood, unit, promise and usual day are those of the supplier.
    QVERIFY2(plain(sheet.amount()).startsWith(QStringLiteral("1 half cord (64 ft³) of hickory")),
             qPrintable(sheet.amount()));
    type(sheet.fields(), "count", "3");
    QCOMPARE(plain(sheet.amount()), QStringLiteral("3 half cords (192 ft³) of hickory"));
    auto *price =
        qobject_cast<QLineEdit *>(sheet.fields().editor(QStringLiteral("price"))->inner());
    QCOMPARE(price->text(), QStringLiteral("660")); // 3 × $220
    QTest::keyClick(price, Qt::Key_S, Qt::ControlModifier);
    QCoreApplication::processEvents();
    QCOMPARE(yard.verbs->undoStack().count(), steps + 1);
    QCOMPARE(yard.verbs->books().orders.size(), qsizetype{1});
    const WoodOrder order = yard.verbs->books().orders.first();
    QCOMPARE(order.state, OrderState::Draft);
    QVERIFY(std::abs(cubicFeet(order.volume) - 192) < 0.001);
    QCOMPARE(order.price, std::optional(Money::ofBase(66000)));
    QCOMPARE(order.promised, kToday.addDays(10));
    QVERIFY(!order.ordered.isValid());
    OrderRow *row = page->orders().row(order.id);
    QVERIFY(row != nullptr && row->isVisible());
    QCOMPARE(row->findChild<views::StatusPill *>()->word(), QStringLiteral("Draft"));
    QVERIFY(yard.verbs->undo().ok());
    QVERIFY(yard.verbs->books().orders.isEmpty());
}

void TstWoodOrders::aRefusedOrderKeepsWhatWasTyped()
{
    YardFixture yard;
    auto page = ordersShown(yard);
    press(page->orders(), QStringLiteral("New order"));
    views::FieldSet &fields = page->orders().sheet().fields();
    type(fields, "count", "-2");
    auto *note = fields.editor(QStringLiteral("note"))->inner();
    note->setFocus();
    QTest::keyClicks(note, QStringLiteral("by the back gate"));
    press(page->orders(), QStringLiteral("Keep the draft"));
    QVERIFY(yard.verbs->books().orders.isEmpty());
    QVERIFY(fields.row(QStringLiteral("count"))->hasProblem());
    // Another page and back: nothing is lost.
    page->show({TableId::Lot, 0});
    page->show({TableId::WoodOrder, 0});
    auto *count = qobject_cast<QLineEdit *>(fields.editor(QStringLiteral("count"))->inner());
    QCOMPARE(count->text(), QStringLiteral("-2"));
    type(fields, "count", "2");
    press(page->orders(), QStringLiteral("Keep the draft"));
    QCOMPARE(yard.verbs->books().orders.size(), qsizetype{1});
    QCOMPARE(yard.verbs->books().orders.first().note, QStringLiteral("by the back gate"));
}

void TstWoodOrders::sendingStampsAndCopies()
{
    YardFixture yard;
    const RecordId id = orderIn(yard, OrderState::Draft, {}, QDate(2026, 12, 3));
    auto page = ordersShown(yard);
    const int steps = yard.verbs->undoStack().count();
    OrderRow *row = page->orders().row(id);
    press(*row, QStringLiteral("Send it"));
    QCOMPARE(yard.verbs->undoStack().count(), steps + 1);
    QCOMPARE(orderOf(yard, id).state, OrderState::Sent);
    QCOMPARE(orderOf(yard, id).ordered, kToday);
    QCOMPARE(row->panel(), OrderRow::Panel::Message);
    QApplication::clipboard()->clear();
    press(*row, QStringLiteral("Copy"));
    const QString copied = QApplication::clipboard()->text();
    QVERIFY2(copied.contains(QStringLiteral("2 half cords (128 ft³) of post oak")) &&
                 copied.contains(QStringLiteral("Test yard (invented)")) &&
                 copied.contains(QStringLiteral("3 December 2026")),
             qPrintable(copied));
    QVERIFY(yard.verbs->undo().ok());
    QCoreApplication::processEvents();
    QCOMPARE(orderOf(yard, id).state, OrderState::Draft);
    QVERIFY(buttonIn(*row, QStringLiteral("Send it")) != nullptr);
}

void TstWoodOrders::promisingTakesTheDay()
{
    YardFixture yard;
    const RecordId id = orderIn(yard, OrderState::Sent, kToday.addDays(-2));
    auto page = ordersShown(yard);
    OrderRow *row = page->orders().row(id);
    press(*row, QStringLiteral("Promised for…"));
    auto *day =
        qobject_cast<QDateTimeEdit *>(row->promise().editor(QStringLiteral("promised"))->inner());
    QVERIFY(day->hasFocus());
    QCOMPARE(day->date(), kToday.addDays(1));
    day->setSelectedSection(QDateTimeEdit::DaySection);
    QTest::keyClick(day, Qt::Key_Up);
    QTest::keyClick(day, Qt::Key_Up);
    press(*row, QStringLiteral("Note the promise"));
    QCOMPARE(orderOf(yard, id).state, OrderState::Promised);
    QCOMPARE(orderOf(yard, id).promised, kToday.addDays(3));
    QVERIFY2(row->standing().contains(QStringLiteral("promised for Sat 28 Nov")),
             qPrintable(row->standing()));
    QVERIFY(yard.verbs->undo().ok());
    QCOMPARE(orderOf(yard, id).state, OrderState::Sent);
}

void TstWoodOrders::aDayBeforeItWasSentIsRefused()
{
    YardFixture yard;
    const RecordId id = orderIn(yard, OrderState::Sent, kToday, kToday);
    auto page = ordersShown(yard);
    OrderRow *row = page->orders().row(id);
    press(*row, QStringLiteral("Promised for…"));
    auto *day =
        qobject_cast<QDateTimeEdit *>(row->promise().editor(QStringLiteral("promised"))->inner());
    day->setSelectedSection(QDateTimeEdit::DaySection);
    QTest::keyClick(day, Qt::Key_Down);
    press(*row, QStringLiteral("Note the promise"));
    QCOMPARE(orderOf(yard, id).state, OrderState::Sent);
    QVERIFY(row->promise().row(QStringLiteral("promised"))->hasProblem());
    QCOMPARE(day->date(), kToday.addDays(-1)); // what was typed stays
}

void TstWoodOrders::lateOnesAreAskedOnce()
{
    YardFixture yard;
    const RecordId late =
        orderIn(yard, OrderState::Promised, kToday.addDays(-20), kToday.addDays(-4));
    const RecordId slow = orderIn(yard, OrderState::Sent, kToday.addDays(-12)); // usually 10 days
    const RecordId inTime = orderIn(yard, OrderState::Sent, kToday.addDays(-1));
    auto page = ordersShown(yard);
    const auto word = [&](RecordId id) {
        return page->orders().row(id)->findChild<views::StatusPill *>()->word();
    };
    QCOMPARE(word(late), QStringLiteral("4 days late"));
    QCOMPARE(word(slow), QStringLiteral("2 days late"));
    QCOMPARE(word(inTime), QStringLiteral("Sent"));
    QCOMPARE(page->orders().rows().first()->order(), late); // the latest stands first
    QVERIFY(buttonIn(*page->orders().row(inTime), QStringLiteral("Asked today")) == nullptr);
    press(*page->orders().row(late), QStringLiteral("Asked today"));
    QCOMPARE(orderOf(yard, late).chased, kToday);
    QVERIFY(!buttonIn(*page->orders().row(late), QStringLiteral("Asked today"))->isEnabled());
    QVERIFY(yard.verbs->undo().ok());
    QVERIFY(!orderOf(yard, late).chased.isValid());
}

void TstWoodOrders::itCameFillsTheSheet()
{
    YardFixture yard;
    orderIn(yard, OrderState::Sent, kToday.addDays(-3));
    const RecordId id = orderIn(yard, OrderState::Promised, kToday.addDays(-9), kToday);
    auto page = ordersShown(yard);
    press(*page->orders().row(id), QStringLiteral("It came"));
    QVERIFY(page->sheet().isVisible());
    const Lot lot = page->sheet().lot();
    QCOMPARE(lot.order, std::optional(id)); // this one, not the first that is open
    QCOMPARE(lot.paidUnit, SellUnit::HalfCord);
    QCOMPARE(lot.paidCount, std::optional(Plain::ofBase(2000000)));
    QCOMPARE(lot.species, yard.oak);
}

void TstWoodOrders::aBegunDeliveryIsNotLost()
{
    YardFixture yard;
    const RecordId id = orderIn(yard, OrderState::Sent, kToday.addDays(-3));
    auto page = ordersShown(yard);
    press(*page, QStringLiteral("Receive a delivery"));
    page->sheet().paid().orders().setCurrentIndex(0);
    type(page->sheet().fields(), "price", "123");
    page->show({TableId::WoodOrder, 0});
    press(*page->orders().row(id), QStringLiteral("It came"));
    QCOMPARE(page->sheet().lot().price, std::optional(Money::ofBase(12300)));
    QVERIFY(!page->sheet().lot().order);
}

void TstWoodOrders::cancellingIsOneStep()
{
    YardFixture yard;
    const RecordId id = orderIn(yard, OrderState::Sent, kToday.addDays(-3));
    auto page = ordersShown(yard);
    press(*page->orders().row(id), QStringLiteral("Cancel order"));
    QCOMPARE(orderOf(yard, id).state, OrderState::Cancelled);
    QVERIFY(page->orders().row(id) == nullptr);
    QVERIFY(yard.verbs->undo().ok());
    QCoreApplication::processEvents();
    QVERIFY(page->orders().row(id) != nullptr);
}

void TstWoodOrders::whatIsTypedSurvivesOtherChanges()
{
    YardFixture yard;
    const RecordId id = orderIn(yard, OrderState::Sent, kToday.addDays(-3));
    auto page = ordersShown(yard);
    OrderRow *row = page->orders().row(id);
    press(*row, QStringLiteral("Promised for…"));
    auto *day =
        qobject_cast<QDateTimeEdit *>(row->promise().editor(QStringLiteral("promised"))->inner());
    day->setSelectedSection(QDateTimeEdit::DaySection);
    QTest::keyClick(day, Qt::Key_Up);
    orderIn(yard, OrderState::Draft, {});
    QCoreApplication::processEvents();
    QCOMPARE(page->orders().row(id), row);
    QCOMPARE(row->panel(), OrderRow::Panel::Promise);
    QCOMPARE(day->date(), kToday.addDays(2));
}

void TstWoodOrders::scoresSaySoWithoutHistory()
{
    YardFixture yard;
    Supplier fresh;
    fresh.name = QStringLiteral("Untried Wood (invented)");
    QVERIFY(yard.verbs->add(fresh).ok());
    auto page = ordersShown(yard);
    page->show({TableId::Supplier, 0});
    QCoreApplication::processEvents();
    const views::FigureTable &table = page->findChild<views::SupplierScores *>()->table();
    const QAbstractItemModelTester tester(const_cast<QAbstractItemModel *>(table.model()));
    QCOMPARE(table.model()->rowCount(), 2);
    const auto cell = [&](int row, int column) {
        return table.model()->index(row, column).data().toString();
    };
    QCOMPARE(cell(1, 0), fresh.name);
    QCOMPARE(cell(1, 7), QStringLiteral("No history yet"));
    QCOMPARE(cell(0, 7), QStringLiteral("2 deliveries"));
    QVERIFY(cell(0, 4) != cell(1, 4));
}

RICKYARD_TEST(TstWoodOrders)
#include "tst_wood_orders.moc"
