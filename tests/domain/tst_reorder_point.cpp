// The closed forms against the worked examples of inventory_examples.csv and the loss table.
#include "models/domain/plan/reorder_point.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <limits>

using namespace rickyard::domain;
using rickyard::test::correctDigits;
using rickyard::test::ReferenceTable;

class TstReorderPoint : public QObject
{
    Q_OBJECT
private slots:
    void lossTable();
    void economicOrder();
    void newsvendor();
    void points();
    void agreesWhenTheLeadTimeIsSteady();
    void lumpyLeadTimesBreakIt();
    void refuses();

private:
    static double worked(const char *key)
    {
        return ReferenceTable(QStringLiteral("inventory_examples.csv"))
            .lookup(QString::fromLatin1(key), QStringLiteral("value"));
    }
};

void TstReorderPoint::lossTable()
{
    const ReferenceTable table(QStringLiteral("normal_loss_table.csv"));
    QVERIFY(table.rows() > 30);
    for (qsizetype i = 0; i < table.rows(); ++i) {
        const double z = table.number(i, QStringLiteral("z"));
        QVERIFY(correctDigits(normalLoss(z), table.number(i, QStringLiteral("L"))) > 10);
        QVERIFY(correctDigits(normalSecondLoss(z), table.number(i, QStringLiteral("L2"))) > 9);
    }
    QVERIFY(correctDigits(normalLoss(-1.4), worked("loss -1.4")) > 11);
    QVERIFY(correctDigits(normalLoss(0.3), worked("loss 0.3")) > 11);
    QVERIFY(correctDigits(normalLoss(3.1), worked("loss 3.1")) > 10);
    QVERIFY(correctDigits(meanShortOf(1600, 1000, 300), worked("book shortage")) > 10);
    // What is left less what is missing is the stock less the mean.
    QVERIFY(std::abs(meanLeftOf(1600, 1000, 300) - meanShortOf(1600, 1000, 300) - 600) < 1e-9);
}

void TstReorderPoint::economicOrder()
{
    const double q = economicOrderQuantity(8, 0.225, 1300).value();
    QVERIFY(correctDigits(q, worked("EOQ")) > 11);
    QVERIFY(correctDigits(orderingAndHoldingCost(q, 8, 0.225, 1300), worked("EOQ cost")) > 11);
    QVERIFY(correctDigits(orderingAndHoldingCost(250, 8, 0.225, 1300), worked("EOQ cost at 250")) >
            11);
}

void TstReorderPoint::newsvendor()
{
    const double stock = newsvendorStock(50, 8, 0.18, 0.70).value();
    QVERIFY(correctDigits(stock, worked("newsvendor stock")) > 11);
    QVERIFY(correctDigits(newsvendorCost(stock, 50, 8, 0.18, 0.70), worked("newsvendor cost")) >
            10);
    const double other = newsvendorStock(900, 60, 43, 79).value();
    QVERIFY(correctDigits(other, worked("newsvendor stock 2")) > 11);
    QVERIFY(correctDigits(newsvendorCost(other, 900, 60, 43, 79), worked("newsvendor cost 2")) >
            10);
    const double five = newsvendorStock(250, 8 * std::sqrt(5.0), 0.18, 0.70).value();
    QVERIFY(correctDigits(five, worked("base stock")) > 11);
}

void TstReorderPoint::points()
{
    const double exactRisk = 0.05;
    const LeadDemand steady{30, 5, 10, 0};
    QVERIFY(correctDigits(reorderPoint(steady, exactRisk).value(),
                          worked("carpet reorder point exact z")) > 10);
    // The book rounds z to 1.65.
    QVERIFY(correctDigits(steady.mean() + 1.65 * steady.sd(), worked("carpet reorder point")) > 10);
    const LeadDemand random{30, 5, 10, 3};
    QVERIFY(correctDigits(random.sd(), worked("carpet sigma")) > 10);
    QVERIFY(correctDigits(random.mean() + 1.65 * random.sd(),
                          worked("carpet reorder point random lead")) > 10);
    const LeadDemand chopra{2500, 500, 7, 7};
    QVERIFY(correctDigits(chopra.sd(), worked("Chopra sigma")) > 10);
    QVERIFY(correctDigits(reorderPoint(chopra, 0.10).value() - chopra.mean(),
                          worked("Chopra safety stock")) > 10);
    QVERIFY(correctDigits(reorderPoint({50, 5, 1, 0}, 0.03).value(),
                          worked("Stevenson reorder point")) > 10);
}

void TstReorderPoint::agreesWhenTheLeadTimeIsSteady()
{
    const auto check = checkReorderPoint(30, 5, Spread::fixed(10), 0, 0.05, 1, 40000);
    QVERIFY(check.ok());
    QVERIFY(correctDigits(check->point, worked("carpet reorder point exact z")) > 10);
    QVERIFY(std::abs(check->simulated - 0.05) < 4 * check->error);
    QVERIFY(!check->misleading);
    QVERIFY(check->note.isEmpty());
}

// 7 days in eight of ten cases, else 35: mean 12.6, sd 11.2. The demand over 35 days, N(1050, 30),
// lies above the 5 % point of the bell curve (about 930) for certain: the real risk is 20 %.
void TstReorderPoint::lumpyLeadTimesBreakIt()
{
    const Spread lumpy = Spread::sample({{7, 0.8}, {35, 0.2}});
    const auto check = checkReorderPoint(30, 5, lumpy, 0, 0.05, 1, 40000);
    QVERIFY(check.ok());
    QVERIFY(check->point < 1000);
    QVERIFY(std::abs(check->simulated - 0.20) < 4 * check->error);
    QVERIFY(check->misleading);
    QVERIFY2(check->note.contains(QStringLiteral("20 %")), qPrintable(check->note));
    // Loads that never come are in no formula.
    const auto lost = checkReorderPoint(30, 5, Spread::fixed(10), 0.1, 0.05, 1, 40000);
    QVERIFY(std::abs(lost->simulated - (0.1 + 0.9 * 0.05)) < 4 * lost->error);
    // Rare enough, and the formula fears too much.
    const auto mild = checkReorderPoint(30, 5, Spread::sample({{7, 0.98}, {35, 0.02}}), 0, 0.05, 1);
    QVERIFY(mild->misleading);
    QVERIFY(mild->simulated < 0.05);
}

void TstReorderPoint::refuses()
{
    QVERIFY(!economicOrderQuantity(0, 1, 1).ok());
    QVERIFY(!economicOrderQuantity(1, std::nan(""), 1).ok());
    QVERIFY(!newsvendorStock(50, 0, 1, 1).ok());
    QVERIFY(!newsvendorStock(50, 8, 1, -1).ok());
    QVERIFY(!reorderPoint({30, 5, 10, 0}, 0).ok());
    QVERIFY(!reorderPoint({30, -5, 10, 0}, 0.05).ok());
    const double never = std::numeric_limits<double>::infinity();
    QVERIFY(!checkReorderPoint(30, 5, Spread::fixed(never), 0, 0.05, 1).ok());
    QVERIFY(!checkReorderPoint(30, 5, Spread::fixed(7), 1.0, 0.05, 1).ok());
}

RICKYARD_TEST(TstReorderPoint)
#include "tst_reorder_point.moc"
