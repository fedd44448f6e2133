// When a lot will be dry, and which rick to burn first, as the Wood page says it.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/wood/drying_chart.h"
#include "views/wood/drying_panel.h"
#include "views/wood/lot_detail.h"
#include "views/wood/wood_words.h"

#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;
using rickyard::test::YardFixture;

class TstWoodDrying : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void theAnswerIsInWords();
    void aReadingMovesTheCurve();
    void everyEventHasItsChance();
    void aPointIsDescribed();
    void anEmptyLotHasNoForecast();
};

void TstWoodDrying::theAnswerIsInWords()
{
    YardFixture yard;
    yard.waitForAnswers();
    views::DryingPanel panel(*yard.context);
    panel.setLot(yard.wetLot);
    panel.setVisible(true);
    QVERIFY(panel.isVisibleTo(nullptr));
    const QString answer = panel.answerText();
    QVERIFY2(answer.startsWith(QStringLiteral("Ready ")) ||
                 answer.startsWith(QStringLiteral("Perhaps dry now")),
             qPrintable(answer));
    // The dry lot was read a hundred days ago at 18 %.
    panel.setLot(yard.dryLot);
    QVERIFY2(panel.answerText().startsWith(QStringLiteral("Dry now")),
             qPrintable(panel.answerText()));
}

void TstWoodDrying::aReadingMovesTheCurve()
{
    YardFixture yard;
    yard.waitForAnswers();
    views::DryingPanel panel(*yard.context);
    panel.setLot(yard.wetLot);
    const QString before = panel.answerText();
    MoistureReading r;
    r.lot = yard.wetLot;
    r.time = yard.now;
    r.pieces = {Moisture::ofBase(16000), Moisture::ofBase(17000), Moisture::ofBase(15500)};
    QVERIFY(yard.verbs->add(r).ok());
    QTRY_VERIFY(panel.answerText() != before);
    QVERIFY2(panel.answerText().contains(QStringLiteral("ry now")), qPrintable(panel.answerText()));
}

void TstWoodDrying::everyEventHasItsChance()
{
    YardFixture yard;
    yard.waitForAnswers();
    const auto forecast = yard.answers->answers().seasoning.value(yard.wetLot);
    const QStringList lines = views::chancesByEvent(yard.verbs->books(), forecast, yard.now, 4);
    QCOMPARE(lines.size(), 1);
    QVERIFY(lines.first().startsWith(yard.verbs->books().events.value(yard.event).name));
    QVERIFY2(lines.first().contains(QStringLiteral("dry")), qPrintable(lines.first()));
}

// The chart tells its points by keyboard as by pointer.
void TstWoodDrying::aPointIsDescribed()
{
    YardFixture yard;
    yard.waitForAnswers();
    views::DryingChart chart;
    chart.resize(600, 300);
    chart.setVisible(true);
    chart.show(yard.verbs->books(), yard.answers->answers().seasoning.value(yard.wetLot), yard.now);
    QString said;
    connect(&chart, &views::ChartView::pointShown, this, [&](const QString &text) { said = text; });
    chart.setFocus();
    QTest::keyClick(&chart, Qt::Key_Right);
    QVERIFY2(said.contains(QStringLiteral("dry")), qPrintable(said));
    QVERIFY(!chart.accessibleName().isEmpty());
}

void TstWoodDrying::anEmptyLotHasNoForecast()
{
    YardFixture yard;
    QVERIFY(yard.verbs->count(yard.wetLot, Mass(), QStringLiteral("all gone")).ok());
    yard.waitForAnswers();
    views::DryingPanel panel(*yard.context);
    panel.setLot(yard.wetLot);
    QVERIFY(panel.isHidden());
}

RICKYARD_TEST(TstWoodDrying)
#include "tst_wood_drying.moc"
