// The offers on the Wood page: what is typed into the list stands in the comparison, ranked, with
// the reason beside what cannot be compared.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/records/record_form.h"
#include "views/records/record_list.h"
#include "views/theme/number_style.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"
#include "views/wood/offer_panel.h"
#include "views/wood/offer_row.h"
#include "views/wood/supplier_detail.h"
#include "views/wood/wood_page.h"

#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using rickyard::test::YardFixture;
using views::IntervalBar;
using views::OfferPanel;
using views::OfferRow;
using views::WoodPage;

namespace {

std::unique_ptr<WoodPage> offersShown(YardFixture &yard)
{
    auto page = std::make_unique<WoodPage>(*yard.context);
    page->resize(1180, 760);
    page->setVisible(true);
    page->show({TableId::Offer, 0});
    if (!QTest::qWaitForWindowExposed(page.get()))
        qFatal("no window");
    return page;
}

RecordId offerIn(YardFixture &yard, double dollars, SellUnit unit, RecordId species,
                 double count = 1)
{
    Offer offer;
    offer.supplier = yard.supplier;
    offer.species = species;
    offer.unit = unit;
    offer.count = Plain::rounded(count * 1e6);
    offer.price = Money::rounded(dollars * 100);
    offer.delivery = Money();
    offer.promised = Moisture::ofBase(20000);
    const auto added = yard.verbs->add(offer);
    if (!added)
        qFatal("offer: %s", qPrintable(added.message()));
    return added.value();
}

QVector<OfferRow *> rowsOf(WoodPage &page)
{
    QVector<OfferRow *> rows;
    for (OfferRow *row : page.offers().findChildren<OfferRow *>())
        if (row->isVisible())
            rows << row;
    std::sort(rows.begin(), rows.end(),
              [](const OfferRow *a, const OfferRow *b) { return a->y() < b->y(); });
    return rows;
}

QString textsIn(const QWidget &widget)
{
    QStringList texts;
    for (const views::TextLabel *label : widget.findChildren<views::TextLabel *>())
        if (!label->isHidden())
            texts << label->text();
    return texts.join(QLatin1Char('\n'));
}

} // namespace

class TstWoodOffers : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void emptyShowsNoComparison();
    void rankedByThePriceOfHeat();
    void aFaceCordAlwaysSaysItsFeet();
    void bothBasesAndTheRecordAreSaid();
    void whatCannotBeComparedIsListed();
    void aPriceChangedTurnsTheRanking();
    void rowsOpenTheirOfferByMouseAndKey();
    void barsStandOnOneScale();
    void aTypicalCookHasItsPrice();
    void theSupplierListTellsTheRecord();
    void theWindowIsNotHeldUp();
    void nothingIsCutWhenNarrow();
};

void TstWoodOffers::emptyShowsNoComparison()
{
    YardFixture yard;
    auto page = offersShown(yard);
    QTRY_VERIFY(page->offers().current());
    QVERIFY(!page->offers().isVisible());
    QVERIFY(page->list(TableId::Offer)->isVisible());
    const RecordId only = offerIn(yard, 300, SellUnit::Cord, yard.oak);
    QTRY_VERIFY(page->offers().isVisible());
    QVERIFY(page->offers().sentence().contains(QStringLiteral("no other to compare")));
    Offer closed = yard.verbs->books().offers.value(only);
    closed.closed = true;
    QVERIFY(yard.verbs->edit(closed).ok());
    QTRY_VERIFY(!page->offers().isVisible());
}

void TstWoodOffers::rankedByThePriceOfHeat()
{
    YardFixture yard;
    auto page = offersShown(yard);
    // $400 a cord of oak; hickory is heavier, so the same money buys more heat.
    const RecordId oak = offerIn(yard, 400, SellUnit::Cord, yard.oak);
    const RecordId hickory = offerIn(yard, 400, SellUnit::Cord, yard.hickory);
    const RecordId dear = offerIn(yard, 400, SellUnit::HalfCord, yard.oak);
    QTRY_VERIFY(page->offers().current());
    QTRY_COMPARE(rowsOf(*page).size(), 3);
    const QVector<OfferRow *> rows = rowsOf(*page);
    QCOMPARE(rows.at(0)->offer(), hickory);
    QCOMPARE(rows.at(1)->offer(), oak);
    QCOMPARE(rows.at(2)->offer(), dear);
    const OfferComparison &comparison = page->offers().comparison();
    QCOMPARE(page->offers().sentence(), comparison.headline.plainSentence().simplified());
    QVERIFY(textsIn(*rows.at(2)).contains(QStringLiteral("Never the cheapest")));
    QVERIFY(textsIn(*rows.at(0)).contains(QStringLiteral("of 100 tries")));
    // Read aloud the row says the same.
    QVERIFY(rows.at(0)->accessibleName().contains(QStringLiteral("of 100 tries")));
    QVERIFY(rows.at(0)->accessibleName().contains(QStringLiteral("a million Btu net")));
}

void TstWoodOffers::aFaceCordAlwaysSaysItsFeet()
{
    YardFixture yard;
    auto page = offersShown(yard);
    offerIn(yard, 130, SellUnit::FaceCord, yard.oak);
    QTRY_COMPARE(rowsOf(*page).size(), 1);
    // 4 × 8 ft × 16 in: 42.667 ft³ (custom of the trade).
    QVERIFY(textsIn(*rowsOf(*page).first()).contains(QStringLiteral("1 face cord (42.7")));
    QVERIFY(page->offers().sentence().contains(QStringLiteral("42.7")));
    QVERIFY(rowsOf(*page).first()->accessibleName().contains(QStringLiteral("42.7")));
}

void TstWoodOffers::bothBasesAndTheRecordAreSaid()
{
    YardFixture yard;
    auto page = offersShown(yard);
    offerIn(yard, 400, SellUnit::Cord, yard.oak);
    QTRY_COMPARE(rowsOf(*page).size(), 1);
    const QString texts = textsIn(*rowsOf(*page).first());
    // 20 % dry basis is 16.7 % wet basis (identity).
    QVERIFY2(texts.contains(QStringLiteral("20 % dry basis (17 % wet basis)")), qPrintable(texts));
    QVERIFY2(texts.contains(QStringLiteral("2 deliveries: 0 of 2 short")), qPrintable(texts));
    // The labels are drawn in their own ink, not in that of a button.
    for (const auto *label : rowsOf(*page).first()->findChildren<views::TextLabel *>())
        QCOMPARE(label->foregroundRole(), QPalette::WindowText);
}

void TstWoodOffers::whatCannotBeComparedIsListed()
{
    YardFixture yard;
    Species cedar = yard.verbs->books().species.value(yard.oak);
    cedar.id = 0;
    cedar.name = QStringLiteral("Redcedar");
    cedar.neverBurn = true;
    cedar.neverBurnReason = QStringLiteral("resinous");
    const auto added = yard.verbs->add(cedar);
    QVERIFY(added.ok());
    auto page = offersShown(yard);
    offerIn(yard, 400, SellUnit::Cord, yard.oak);
    offerIn(yard, 10, SellUnit::Cord, added.value());
    QTRY_COMPARE(page->offers().comparison().lines.size(), 2);
    QCOMPARE(rowsOf(*page).size(), 1);
    QVERIFY(
        textsIn(page->offers()).contains(QStringLiteral("Never burn Redcedar for food: resinous")));
    bool pill = false;
    for (const auto *one : page->offers().findChildren<views::StatusPill *>())
        pill = pill || (one->isVisible() && one->word() == QStringLiteral("never burn"));
    QVERIFY(pill);
}

void TstWoodOffers::aPriceChangedTurnsTheRanking()
{
    YardFixture yard;
    auto page = offersShown(yard);
    const RecordId first = offerIn(yard, 300, SellUnit::Cord, yard.oak);
    const RecordId second = offerIn(yard, 310, SellUnit::Cord, yard.oak);
    QTRY_COMPARE(rowsOf(*page).size(), 2);
    QCOMPARE(rowsOf(*page).first()->offer(), first);
    // One pile of one supplier: certain, however close.
    QVERIFY(page->offers().sentence().contains(QStringLiteral("in every try")));
    Offer offer = yard.verbs->books().offers.value(second);
    offer.price = Money::ofBase(29000);
    QVERIFY(yard.verbs->edit(offer).ok());
    QVERIFY(!page->offers().current());
    QTRY_VERIFY(page->offers().current());
    QTRY_COMPARE(rowsOf(*page).size(), 2);
    QCOMPARE(rowsOf(*page).first()->offer(), second);
}

void TstWoodOffers::rowsOpenTheirOfferByMouseAndKey()
{
    YardFixture yard;
    auto page = offersShown(yard);
    offerIn(yard, 300, SellUnit::Cord, yard.oak);
    offerIn(yard, 500, SellUnit::Cord, yard.hickory);
    QTRY_COMPARE(rowsOf(*page).size(), 2);
    QTRY_VERIFY(page->offers().current());
    const QVector<OfferRow *> rows = rowsOf(*page);
    QTest::mouseClick(rows.at(1), Qt::LeftButton);
    QCOMPARE(page->list(TableId::Offer)->chosen(), rows.at(1)->offer());
    QVERIFY(rows.at(0)->focusPolicy() == Qt::StrongFocus);
    rows.at(0)->setFocus();
    QTest::keyClick(rows.at(0), Qt::Key_Return);
    QCOMPARE(page->list(TableId::Offer)->chosen(), rows.at(0)->offer());
    QCOMPARE(page->list(TableId::Offer)->form().id(), rows.at(0)->offer());
}

void TstWoodOffers::barsStandOnOneScale()
{
    YardFixture yard;
    auto page = offersShown(yard);
    offerIn(yard, 300, SellUnit::Cord, yard.oak);
    offerIn(yard, 330, SellUnit::LooseCubicFoot, yard.hickory, 180);
    QTRY_COMPARE(rowsOf(*page).size(), 2);
    QTRY_VERIFY(page->offers().current());
    const QVector<OfferRow *> rows = rowsOf(*page);
    auto *upper = rows.at(0)->findChild<IntervalBar *>();
    auto *lower = rows.at(1)->findChild<IntervalBar *>();
    QVERIFY(upper != nullptr && lower != nullptr);
    QCOMPARE(upper->width(), lower->width());
    QCOMPARE(upper->mapTo(page.get(), QPoint()).x(), lower->mapTo(page.get(), QPoint()).x());
    const OfferLine line = page->offers().comparison().lines.first();
    QCOMPARE(upper->place(line.centsPerMillionBtu), lower->place(line.centsPerMillionBtu));
    QVERIFY(upper->place(line.low) > 0 && upper->place(line.high) < upper->width());
    QVERIFY(upper->place(line.low) < upper->place(line.high));
    QVERIFY(upper->words().contains(QStringLiteral("80 of 100")));
}

void TstWoodOffers::aTypicalCookHasItsPrice()
{
    YardFixture yard;
    yard.waitForAnswers();
    auto page = offersShown(yard);
    offerIn(yard, 300, SellUnit::Cord, yard.oak);
    QTRY_COMPARE(rowsOf(*page).size(), 1);
    QTRY_VERIFY(page->offers().comparison().lines.first().centsPerCook);
    QTRY_VERIFY(textsIn(page->offers()).contains(QStringLiteral("a typical cook")));
}

void TstWoodOffers::theSupplierListTellsTheRecord()
{
    YardFixture yard;
    auto page = offersShown(yard);
    QVERIFY(page->show({TableId::Supplier, yard.supplier}));
    auto *detail = page->findChild<views::SupplierDetail *>();
    QVERIFY(detail != nullptr && detail->isVisible());
    QVERIFY2(detail->text().startsWith(QStringLiteral("2 deliveries: 0 of 2 short")),
             qPrintable(detail->text()));
    // A shorter stack of one of the two is said at once.
    Lot lot = yard.verbs->books().lots.value(yard.wetLot);
    lot.stacks.first().height = Length::ofBase(2 * 304800);
    QVERIFY(yard.verbs->edit(lot).ok());
    QVERIFY2(detail->text().startsWith(
                 QStringLiteral("2 deliveries: 1 of 2 short, on average 25 % under")),
             qPrintable(detail->text()));
}

// The reckoning runs aside: asking for it returns at once.
void TstWoodOffers::theWindowIsNotHeldUp()
{
    YardFixture yard;
    for (int i = 0; i < 40; ++i)
        offerIn(yard, 300 + i, SellUnit::Cord, i % 2 == 0 ? yard.oak : yard.hickory);
    OfferPanel panel(*yard.context);
    panel.refresh();
    QCoreApplication::processEvents(); // starts it: the panel goes on before it is done
    QVERIFY(!panel.current());
    QTRY_VERIFY_WITH_TIMEOUT(panel.current(), 20000);
    QCOMPARE(panel.comparison().lines.size(), 40);
}

void TstWoodOffers::nothingIsCutWhenNarrow()
{
    YardFixture yard;
    auto page = offersShown(yard);
    offerIn(yard, 130, SellUnit::FaceCord, yard.oak, 2);
    offerIn(yard, 330, SellUnit::LooseCubicFoot, yard.hickory, 180);
    QTRY_COMPARE(rowsOf(*page).size(), 2);
    QTRY_VERIFY(page->offers().current());
    page->resize(860, 760);
    QTest::qWait(20);
    for (OfferRow *row : rowsOf(*page)) {
        QVERIFY(row->width() <= page->width());
        for (const views::TextLabel *label : row->findChildren<views::TextLabel *>()) {
            const int needed = label->heightForWidth(label->width());
            QVERIFY2(label->height() >= needed, qPrintable(label->text()));
        }
        const auto *bar = row->findChild<IntervalBar *>();
        QVERIFY2(bar->width() >= bar->minimumSizeHint().width(), qPrintable(bar->words()));
    }
}

RICKYARD_TEST(TstWoodOffers)
#include "tst_wood_offers.moc"
