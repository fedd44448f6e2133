// The receiving sheet by mouse and keyboard: one step into the books and one back, the verdict as
// it is typed, and refusals that lose nothing.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/widgets/field_row.h"
#include "views/widgets/inline_question.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/delivery_verdict.h"
#include "views/wood/meter_fields.h"
#include "views/wood/piece_chips.h"
#include "views/wood/receiving_groups.h"
#include "views/wood/receiving_sheet.h"
#include "views/wood/stack_fields.h"
#include "views/wood/wood_page.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QPushButton>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using rickyard::test::YardFixture;
using views::ReceivingSheet;

namespace {

// The Wood page with its sheet open, as a person opens it.
struct Opened {
    std::unique_ptr<views::WoodPage> page;
    ReceivingSheet *sheet = nullptr;

    explicit Opened(YardFixture &yard) : page(std::make_unique<views::WoodPage>(*yard.context))
    {
        page->resize(1180, 760);
        page->setVisible(true);
        if (!QTest::qWaitForWindowExposed(page.get()))
            qFatal("the page does not show");
        sheet = &page->sheet();
        press(*page, QStringLiteral("Receive a delivery"));
    }
    static void press(QWidget &in, const QString &text)
    {
        const auto all = in.findChildren<QPushButton *>();
        for (QPushButton *one : all)
            if (one->text() == text && one->isVisible()) {
                QTest::mouseClick(one, Qt::LeftButton);
                return;
            }
        QFAIL(qPrintable(text));
    }
    [[nodiscard]] QWidget *field(const char *key) const
    {
        return sheet->fields().editor(QString::fromLatin1(key))->inner();
    }
    void type(const char *key, const char *text) const
    {
        auto *edit = qobject_cast<QLineEdit *>(field(key));
        edit->selectAll();
        QTest::keyClicks(edit, QString::fromUtf8(text));
    }
    // As a person finds a choice in a closed list: by its first letters.
    void choose(const char *key, const char *letters) const
    {
        // Letters that follow too soon belong to the search before.
        QTest::qWait(QApplication::keyboardInputInterval() + 50);
        QTest::keyClicks(field(key), QString::fromUtf8(letters));
    }
    void stack(int row, const char *length, const char *height, const char *depth) const
    {
        const char *texts[] = {length, height, depth};
        for (int i = 0; i < 3; ++i) {
            views::UnitLineEdit *edit = sheet->came().stacks().edits().at(3 * row + i);
            edit->selectAll();
            QTest::keyClicks(edit, QString::fromUtf8(texts[i]));
        }
    }
    static void pieces(views::PieceChips &chips, const QStringList &figures)
    {
        for (const QString &figure : figures) {
            QTest::keyClicks(chips.field(), figure);
            QTest::keyClick(chips.field(), Qt::Key_Return);
        }
    }
    void receive() const { press(*sheet, QStringLiteral("Receive it")); }
    // The verdict follows the keys within the same turn of the event loop.
    [[nodiscard]] QString verdict() const
    {
        QCoreApplication::processEvents();
        return sheet->verdict().sentence();
    }
};

struct Sizes {
    qsizetype lots, readings, movements;
    explicit Sizes(const Books &books)
        : lots(books.lots.size()), readings(books.readings.size()),
          movements(books.movements.size())
    {
    }
    bool operator==(const Sizes &) const = default;
};

} // namespace

class TstReceivingSheet : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void aDeliveryIsOneStep();
    void aShortDeliveryIsSaidWhileItIsTyped();
    void aWetDeliveryIsSaid();
    void aStackOfNothingIsRefused();
    void aNeverBurnWoodIsRefused();
    void aFaceCordShowsItsCubicFeet();
    void anOrderIsReceivedWithIt();
    void weightsOutsideReasonAreRefused();
    void onlyTheChosenMeasureShows();
    void mouldHoldsIt();
    void leavingAsksOnlyWhenSomethingWasTyped();
    void aBegunSheetWaits();
    void everythingHasAName();
};

void TstReceivingSheet::aDeliveryIsOneStep()
{
    YardFixture yard;
    Opened open(yard);
    const Sizes before(yard.verbs->books());
    const int steps = yard.verbs->undoStack().count();
    open.type("paid_count", "0.5");
    open.type("price", "220");
    open.stack(0, "8", "4", "16");
    Opened::press(open.sheet->came(), QStringLiteral("Add a stack"));
    open.stack(1, "4", "4", "16");
    Opened::pieces(open.sheet->sample().weights(),
                   {"4", "4.5", "5", "5.5", "6", "4", "4.5", "5", "5.5", "6"});
    Opened::pieces(open.sheet->sample().meter().chips(), {"17", "18", "19"});
    open.receive();
    const Books &books = yard.verbs->books();
    QCOMPARE(books.lots.size(), before.lots + 1);
    QCOMPARE(books.readings.size(), before.readings + 1);
    QCOMPARE(books.movements.size(), before.movements + 1);
    QCOMPARE(yard.verbs->undoStack().count(), steps + 1);
    const Lot lot = books.lots.last();
    QCOMPARE(lot.name, QStringLiteral("Hickory, 25 Nov"));
    QCOMPARE(lot.received, yard.now);
    QCOMPARE(lot.stacks.size(), qsizetype{2});
    // By hand: mean 5 lb; squares of the deviations 2 × (1 + 0.25 + 0 + 0.25 + 1) = 5, over nine,
    // root 0.745 lb.
    QCOMPARE(lot.splitsWeighed, 10);
    QVERIFY(std::abs(pounds(*lot.splitMass) - 5.0) < 1e-5);
    QVERIFY(std::abs(pounds(*lot.splitSpread) - 0.7454) < 1e-3);
    QCOMPARE(lot.splitsWeighedAt, std::optional(yard.now));
    // What was typed stands beside what came of it.
    QVERIFY2(lot.typed.contains(QStringLiteral("8 ft × 4 ft × 16 in; 4 ft × 4 ft × 16 in")) &&
                 lot.typed.contains(QStringLiteral("4 4.5 5 5.5 6 4 4.5 5 5.5 6 lb")),
             qPrintable(lot.typed));
    const MoistureReading reading = books.readings.last();
    QCOMPARE(reading.lot, lot.id);
    QCOMPARE(reading.pieces.size(), qsizetype{3});
    QVERIFY2(reading.typed.contains(QStringLiteral("17 18 19 % dry")), qPrintable(reading.typed));
    // The ledger rests on the reading of that day, not on the promise.
    const Movement entry = books.movements.last();
    QCOMPARE(entry.lot, lot.id);
    QCOMPARE(entry.moisture, std::optional(Moisture::ofBase(18000)));
    QVERIFY(yard.verbs->undo().ok());
    QVERIFY(Sizes(books) == before);
    QVERIFY(yard.verbs->redo().ok());
    QCOMPARE(books.lots.size(), before.lots + 1);
    QCOMPARE(books.readings.size(), before.readings + 1);
}

void TstReceivingSheet::aShortDeliveryIsSaidWhileItIsTyped()
{
    YardFixture yard;
    Opened open(yard);
    const Sizes before(yard.verbs->books());
    QVERIFY2(open.verdict().contains(QStringLiteral("ot measured")), qPrintable(open.verdict()));
    open.type("paid_count", "0.5");
    open.stack(0, "8", "4", "16");
    // 8 × 4 ft × 16 in is 42.7 ft³ of the 64 ft³ paid for: a third is missing.
    QVERIFY2(open.verdict().contains(QStringLiteral("Short by 33")), qPrintable(open.verdict()));
    open.stack(0, "8", "4", "24");
    QVERIFY2(!open.verdict().contains(QStringLiteral("hort")), qPrintable(open.verdict()));
    const QString reasons = open.sheet->verdict().reasons();
    QVERIFY2(reasons.contains(QStringLiteral("70 to 90 ft³")), qPrintable(reasons));
    QVERIFY2(reasons.contains(QStringLiteral("million Btu")), qPrintable(reasons));
    QVERIFY(Sizes(yard.verbs->books()) == before); // nothing is written by looking
}

void TstReceivingSheet::aWetDeliveryIsSaid()
{
    YardFixture yard;
    Opened open(yard);
    open.type("paid_count", "0.5");
    open.stack(0, "8", "4", "24");
    open.type("promised_moisture", "20");
    Opened::pieces(open.sheet->sample().meter().chips(), {"30", "31", "32"});
    QVERIFY2(open.verdict().contains(QStringLiteral("etter than promised")),
             qPrintable(open.verdict()));
}

void TstReceivingSheet::aStackOfNothingIsRefused()
{
    YardFixture yard;
    Opened open(yard);
    const Sizes before(yard.verbs->books());
    open.stack(0, "8", "0", "16");
    const views::FieldRow &row = open.sheet->came().stacksRow();
    QVERIFY2(row.message().contains(QStringLiteral("height of “0”")), qPrintable(row.message()));
    open.receive();
    QVERIFY(Sizes(yard.verbs->books()) == before);
    QVERIFY(open.sheet->isVisible());
    QVERIFY(row.hasProblem());
    QCOMPARE(open.sheet->came().stacks().edits().at(0)->text(), QStringLiteral("8"));
    QCOMPARE(open.sheet->came().stacks().edits().at(1)->text(), QStringLiteral("0"));
    // A stack that is only begun is no slip until it is to be saved.
    open.stack(0, "8", "4", "16");
    QVERIFY(!row.hasProblem());
    open.sheet->came().stacks().edits().at(1)->clear();
    open.receive();
    QVERIFY2(row.message().contains(QStringLiteral("no height yet")), qPrintable(row.message()));
    QVERIFY(Sizes(yard.verbs->books()) == before);
}

void TstReceivingSheet::aNeverBurnWoodIsRefused()
{
    YardFixture yard;
    Species pine;
    pine.name = QStringLiteral("Pine");
    pine.basicGravity = Plain::ofBase(400000);
    pine.neverBurn = true;
    pine.neverBurnReason = QStringLiteral("resin");
    QVERIFY(yard.verbs->add(pine).ok());
    Opened open(yard);
    const Sizes before(yard.verbs->books());
    open.stack(0, "8", "4", "24");
    open.choose("species", "Pin");
    QVERIFY2(open.verdict().contains(QStringLiteral("never burned for food")),
             qPrintable(open.verdict()));
    const views::FieldRow *row = open.sheet->fields().row(QStringLiteral("species"));
    QVERIFY2(row->message().contains(QStringLiteral("resin")), qPrintable(row->message()));
    open.receive();
    QVERIFY(Sizes(yard.verbs->books()) == before);
    QVERIFY(row->hasProblem());
    QVERIFY(open.sheet->isVisible());
    // Another wood, and it is taken; nothing else was lost.
    open.choose("species", "Post");
    QVERIFY(!row->hasProblem());
    open.receive();
    QCOMPARE(yard.verbs->books().lots.size(), before.lots + 1);
    QCOMPARE(yard.verbs->books().lots.last().name, QStringLiteral("Post oak, 25 Nov"));
}

void TstReceivingSheet::aFaceCordShowsItsCubicFeet()
{
    YardFixture yard;
    Opened open(yard);
    open.type("paid_count", "1");
    open.choose("paid_unit", "Face");
    (void)open.verdict();
    // NIST Handbook 130 has no face cord; by custom 4 × 8 ft × 16 in = 42.7 ft³.
    QVERIFY2(open.sheet->paid().holds().contains(QStringLiteral("42.7")),
             qPrintable(open.sheet->paid().holds()));
    open.type("stick_length", "24");
    (void)open.verdict();
    QVERIFY2(open.sheet->paid().holds().contains(QStringLiteral("64")),
             qPrintable(open.sheet->paid().holds()));
    // The depth of a single row is the length of its sticks.
    QCOMPARE(open.sheet->came().stacks().edits().at(2)->text(), QStringLiteral("24"));
}

void TstReceivingSheet::anOrderIsReceivedWithIt()
{
    YardFixture yard;
    WoodOrder order;
    order.supplier = yard.supplier;
    order.species = yard.oak;
    order.state = OrderState::Sent;
    order.volume = volumeFromCubicFeet(64);
    order.price = Money::ofBase(21000);
    order.promisedMoisture = Moisture::ofBase(19000);
    order.ordered = QDate(2026, 11, 10);
    const RecordId id = yard.verbs->add(order).value();
    Opened open(yard);
    QCOMPARE(open.sheet->paid().order(), std::optional(id));
    QCOMPARE(open.sheet->lot().species, yard.oak);
    QVERIFY(open.sheet->lot().paidCount == Plain::ofBase(500000));
    open.stack(0, "8", "4", "24");
    open.receive();
    const WoodOrder after = yard.verbs->books().orders.value(id);
    QCOMPARE(after.state, OrderState::Received);
    QCOMPARE(after.received, QDate(2026, 11, 25));
    QCOMPARE(yard.verbs->books().lots.last().order, std::optional(id));
    QVERIFY(yard.verbs->undo().ok());
    QCOMPARE(yard.verbs->books().orders.value(id).state, OrderState::Sent);
}

void TstReceivingSheet::weightsOutsideReasonAreRefused()
{
    YardFixture yard;
    Opened open(yard);
    views::PieceChips &weights = open.sheet->sample().weights();
    Opened::pieces(weights, {"500"});
    QVERIFY(weights.values().isEmpty());
    QVERIFY(weights.row()->hasProblem());
    QCOMPARE(weights.field()->text(), QStringLiteral("500"));
    weights.field()->clear();
    Opened::pieces(weights, {"5", "2 kg"});
    QCOMPARE(weights.values().size(), qsizetype{2});
    QVERIFY(std::abs(weights.values().last() - 4.409) < 0.001); // 2 / 0.45359237
    QVERIFY2(open.sheet->sample().weightsText().contains(QStringLiteral("mean 4.7")),
             qPrintable(open.sheet->sample().weightsText()));
    QTest::keyClick(weights.field(), Qt::Key_Backspace);
    QCOMPARE(weights.values().size(), qsizetype{1});
}

void TstReceivingSheet::onlyTheChosenMeasureShows()
{
    YardFixture yard;
    Opened open(yard);
    QVERIFY(open.sheet->came().stacks().isVisible());
    open.choose("measured_by", "Weighed");
    (void)open.verdict();
    QVERIFY(!open.sheet->came().stacks().isVisible());
    QVERIFY(open.field("weight")->isVisible());
    open.receive();
    QVERIFY(open.sheet->fields().row(QStringLiteral("weight"))->hasProblem());
    open.type("weight", "1800");
    Opened::pieces(open.sheet->sample().meter().chips(), {"20", "20"});
    open.receive();
    // 1,800 lb at 20 % dry basis are 1,500 lb of dry wood.
    const Movement entry = yard.verbs->books().movements.last();
    QVERIFY(std::abs(pounds(entry.dryMass) - 1500) < 0.01);
}

void TstReceivingSheet::mouldHoldsIt()
{
    YardFixture yard;
    Opened open(yard);
    open.stack(0, "8", "4", "24");
    open.sheet->came().mould().setFocus();
    QTest::keyClick(&open.sheet->came().mould(), Qt::Key_Space);
    open.receive();
    const Lot lot = yard.verbs->books().lots.last();
    QVERIFY(lot.hold);
    QCOMPARE(lot.holdReason, QStringLiteral("Mould seen"));
}

void TstReceivingSheet::leavingAsksOnlyWhenSomethingWasTyped()
{
    YardFixture yard;
    Opened open(yard);
    QTest::keyClick(open.field("price"), Qt::Key_Escape);
    QVERIFY(!open.sheet->isVisible());
    Opened::press(*open.page, QStringLiteral("Receive a delivery"));
    QVERIFY(open.sheet->isVisible());
    open.type("price", "220");
    QTest::keyClick(open.field("price"), Qt::Key_Escape);
    QVERIFY(open.sheet->isVisible());
    QVERIFY(open.sheet->question().isVisible());
    Opened::press(*open.sheet, QStringLiteral("Go on"));
    QVERIFY(open.sheet->isVisible());
    QCOMPARE(qobject_cast<QLineEdit *>(open.field("price"))->text(), QStringLiteral("220"));
    Opened::press(*open.sheet, QStringLiteral("Cancel"));
    Opened::press(*open.sheet, QStringLiteral("Throw it away"));
    QVERIFY(!open.sheet->isVisible());
    Opened::press(*open.page, QStringLiteral("Receive a delivery"));
    QVERIFY(qobject_cast<QLineEdit *>(open.field("price"))->text().isEmpty());
}

void TstReceivingSheet::aBegunSheetWaits()
{
    YardFixture yard;
    Opened open(yard);
    open.type("price", "220");
    QVERIFY(open.page->show({TableId::Supplier, yard.supplier}));
    QVERIFY(!open.sheet->isVisible());
    Opened::press(*open.page, QStringLiteral("Receive a delivery"));
    QCOMPARE(qobject_cast<QLineEdit *>(open.field("price"))->text(), QStringLiteral("220"));
}

void TstReceivingSheet::everythingHasAName()
{
    YardFixture yard;
    Opened open(yard);
    Opened::pieces(open.sheet->sample().weights(), {"5"});
    Opened::press(open.sheet->came(), QStringLiteral("Add a stack"));
    int asked = 0;
    const auto children = open.sheet->findChildren<QWidget *>();
    for (const QWidget *child : children) {
        const bool control = qobject_cast<const QAbstractButton *>(child) != nullptr ||
                             qobject_cast<const QComboBox *>(child) != nullptr ||
                             qobject_cast<const QLineEdit *>(child) != nullptr;
        const QWidget *holder = child->parentWidget();
        const bool inner = child->objectName().startsWith(QStringLiteral("qt_")) ||
                           qobject_cast<const QComboBox *>(holder) != nullptr ||
                           qobject_cast<const QLineEdit *>(holder) != nullptr ||
                           holder->inherits("QAbstractSpinBox");
        if (!control || inner)
            continue;
        ++asked;
        QVERIFY2(!child->accessibleName().isEmpty(), child->metaObject()->className());
    }
    QVERIFY(asked > 25);
}

RICKYARD_TEST(TstReceivingSheet)
#include "tst_receiving_sheet.moc"
