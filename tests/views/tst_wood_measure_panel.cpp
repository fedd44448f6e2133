// A cook measured by tally and by crate: the panel says what they come to together, and one press
// brings the ledger to it and can be taken back.
#include "tests/support/registry.h"
#include "tests/support/yard_fixture.h"
#include "views/fire/wood_measure_panel.h"

#include <QPushButton>
#include <QTest>

#include <memory>

using namespace rickyard;
using namespace rickyard::domain;
using namespace rickyard::views;
using rickyard::test::YardFixture;

class TstWoodMeasurePanel : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void crateAndTallyAreReconciled()
    {
        YardFixture yard;
        WoodMeasurePanel panel(*yard.context);
        const RecordId id = yard.cooks.first();
        QVERIFY(yard.verbs->feed(id, yard.dryLot, 10, {},
                                 yard.verbs->books().cooks.value(id).lit + durationFromHours(1)));
        panel.setCook(id);
        QVERIFY(!panel.isVisibleTo(nullptr)); // a tally alone has nothing to be reconciled with
        Cook cook = yard.verbs->books().cooks.value(id);
        cook.crateBefore = massFromPounds(150);
        cook.crateAfter = massFromPounds(20);
        cook.woodLot = yard.dryLot;
        const auto edited = yard.verbs->edit(cook);
        QVERIFY2(edited.ok(), qPrintable(edited.message()));
        panel.show();
        QVERIFY2(panel.words().contains(QLatin1String("Tally: ")), qPrintable(panel.words()));
        QVERIFY2(panel.words().contains(QLatin1String("Crate: ")), qPrintable(panel.words()));
        auto *button = panel.findChild<QPushButton *>();
        QVERIFY(button != nullptr && button->isEnabled());
        const auto entries = yard.verbs->books().movements.size();
        QTest::mouseClick(button, Qt::LeftButton);
        QCOMPARE(yard.verbs->books().movements.size(), entries + 1);
        QVERIFY2(yard.refused.isEmpty(), qPrintable(yard.refused.join(QLatin1Char(' '))));
        QVERIFY(!button->isEnabled());
        QVERIFY(!yard.said.isEmpty());
        QVERIFY(yard.verbs->undo());
        QCOMPARE(yard.verbs->books().movements.size(), entries);
        QVERIFY(button->isEnabled());
    }
};

RICKYARD_TEST(TstWoodMeasurePanel)
#include "tst_wood_measure_panel.moc"
