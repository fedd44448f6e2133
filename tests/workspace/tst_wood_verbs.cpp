// The verbs of orders and of counting the ricks: one step each, whole or not at all.
#include "models/domain/wood/stock.h"
#include "models/workspace/commands/verbs.h"
#include "tests/support/registry.h"

#include <QDateTime>
#include <QTemporaryDir>
#include <QTest>

using namespace rickyard;
using namespace rickyard::domain;

namespace {

// 2026-11-26 00:00 UTC, the zone of a yard that was told none.
constexpr Instant kNow = Instant::ofSeconds(1795651200);

// Two ricks and a supplier, all invented.
struct Yard2 {
    QTemporaryDir folder;
    std::unique_ptr<workspace::Workspace> yard;
    std::unique_ptr<commands::Verbs> verbs;
    RecordId oak = 0, supplier = 0, one = 0, two = 0;

    Yard2()
    {
        auto opened = workspace::Workspace::open(folder.filePath(QStringLiteral("y.rickyard")),
                                                 QDateTime::currentDateTimeUtc());
        if (!opened)
            qFatal("open: %s", qPrintable(opened.message()));
        yard = std::move(opened.value());
        verbs = std::make_unique<commands::Verbs>(*yard, [] { return kNow; });
        Species species;
        species.name = QStringLiteral("Post oak");
        species.basicGravity = Plain::ofBase(600000);
        oak = verbs->add(species).value();
        Supplier from;
        from.name = QStringLiteral("Nowhere Wood (invented)");
        from.unit = SellUnit::HalfCord;
        supplier = verbs->add(from).value();
        one = lot(QStringLiteral("Rick one"));
        two = lot(QStringLiteral("Rick two"));
    }
    RecordId lot(const QString &name) const
    {
        Lot lot;
        lot.name = name;
        lot.species = oak;
        lot.received = kNow - Duration::ofBase(100 * 86400);
        lot.measuredBy = Measure::Weighed;
        lot.weight = massFromPounds(1200);
        lot.promisedMoisture = Moisture::ofBase(20000);
        const auto added = verbs->add(lot);
        if (!added)
            qFatal("lot: %s", qPrintable(added.message()));
        return added.value();
    }
    [[nodiscard]] WoodOrder wanted() const
    {
        WoodOrder order;
        order.supplier = supplier;
        order.species = oak;
        order.unit = SellUnit::HalfCord;
        order.count = Plain::ofBase(3000000);
        return order;
    }
    [[nodiscard]] double pounds(RecordId lot) const
    {
        return domain::pounds(lotStockAt(verbs->books(), lot, kNow).dryMass);
    }
};

RickCount splits(RecordId lot, qint64 count)
{
    return {lot, CountWay::Splits, {}, count, {}};
}

RickCount weight(RecordId lot, double pounds)
{
    return {lot, CountWay::Weight, {}, {}, massFromPounds(pounds)};
}

} // namespace

class TstWoodVerbs : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void aDraftHasItsVolume();
    void aDraftOfNothingIsRefused();
    void everyStepIsOneUndoStep();
    void whatDoesNotFollowIsRefused();
    void ricksAreCountedInOneStep();
    void oneRefusalWritesNothing();
    void anExactCountIsKept();
};

void TstWoodVerbs::aDraftHasItsVolume()
{
    Yard2 yard;
    WoodOrder order = yard.wanted();
    order.state = OrderState::Sent; // a draft all the same
    order.ordered = QDate(2026, 1, 1);
    const auto done = yard.verbs->draftOrder(order);
    QVERIFY2(done.ok(), qPrintable(done.message()));
    const WoodOrder kept = yard.verbs->books().orders.value(done.value());
    QCOMPARE(kept.state, OrderState::Draft);
    QVERIFY(!kept.ordered.isValid());
    // NIST Handbook 130: half a cord is 64 ft³.
    QVERIFY(std::abs(cubicFeet(kept.volume) - 192) < 0.001);
}

void TstWoodVerbs::aDraftOfNothingIsRefused()
{
    Yard2 yard;
    const int steps = yard.verbs->undoStack().count();
    WoodOrder order = yard.wanted();
    order.count = Plain();
    const auto none = yard.verbs->draftOrder(order);
    QVERIFY(!none && none.problems().first().field == QStringLiteral("count"));
    order = yard.wanted();
    order.unit = SellUnit::Bundle; // of no known volume
    const auto bundle = yard.verbs->draftOrder(order);
    QVERIFY(!bundle && bundle.problems().first().field == QStringLiteral("sold_by"));
    QCOMPARE(yard.verbs->undoStack().count(), steps);
}

void TstWoodVerbs::everyStepIsOneUndoStep()
{
    Yard2 yard;
    const RecordId id = yard.verbs->draftOrder(yard.wanted()).value();
    const auto state = [&] { return yard.verbs->books().orders.value(id).state; };
    int steps = yard.verbs->undoStack().count();
    QVERIFY(yard.verbs->stepOrder(id, OrderStep::Send).ok());
    QCOMPARE(yard.verbs->books().orders.value(id).ordered, QDate(2026, 11, 26));
    QVERIFY(yard.verbs->stepOrder(id, OrderStep::Promise, QDate(2026, 12, 3)).ok());
    QVERIFY(yard.verbs->stepOrder(id, OrderStep::Ask).ok());
    QVERIFY(yard.verbs->stepOrder(id, OrderStep::Receive).ok());
    QCOMPARE(state(), OrderState::Received);
    QCOMPARE(yard.verbs->undoStack().count(), steps + 4);
    const OrderState back[] = {OrderState::Promised, OrderState::Promised, OrderState::Sent,
                               OrderState::Draft};
    for (const OrderState expected : back) {
        QVERIFY(yard.verbs->undo().ok());
        QCOMPARE(state(), expected);
    }
    QVERIFY(yard.verbs->undoStack().redoText().contains(QStringLiteral("Nowhere Wood")));
}

void TstWoodVerbs::whatDoesNotFollowIsRefused()
{
    Yard2 yard;
    const RecordId id = yard.verbs->draftOrder(yard.wanted()).value();
    const int steps = yard.verbs->undoStack().count();
    const auto early = yard.verbs->stepOrder(id, OrderStep::Receive);
    QVERIFY(!early && early.message().contains(QStringLiteral("send it first")));
    QVERIFY(!yard.verbs->stepOrder(id + 100, OrderStep::Send));
    QVERIFY(yard.verbs->stepOrder(id, OrderStep::Cancel).ok());
    QVERIFY(!yard.verbs->stepOrder(id, OrderStep::Send));
    QCOMPARE(yard.verbs->undoStack().count(), steps + 1);
}

void TstWoodVerbs::ricksAreCountedInOneStep()
{
    Yard2 yard;
    const int steps = yard.verbs->undoStack().count();
    const auto done = yard.verbs->countRicks({weight(yard.one, 600), splits(yard.two, 0)},
                                             QStringLiteral("autumn walk"));
    QVERIFY2(done.ok(), qPrintable(done.message()));
    QCOMPARE(yard.verbs->undoStack().count(), steps + 1);
    QVERIFY(std::abs(yard.pounds(yard.one) - 500) < 1e-3); // 600 lb at 20 %
    QVERIFY(std::abs(yard.pounds(yard.two)) < 1e-6);
    int counted = 0;
    for (const Movement &m : yard.verbs->books().movements)
        if (m.kind == MovementKind::Counted) {
            ++counted;
            QCOMPARE(m.note, QStringLiteral("autumn walk"));
        }
    QCOMPARE(counted, 2);
    QVERIFY(yard.verbs->undo().ok());
    QVERIFY(std::abs(yard.pounds(yard.one) - 1000) < 1e-3);
    QVERIFY(std::abs(yard.pounds(yard.two) - 1000) < 1e-3);
}

void TstWoodVerbs::oneRefusalWritesNothing()
{
    Yard2 yard;
    const int steps = yard.verbs->undoStack().count();
    const auto done = yard.verbs->countRicks({weight(yard.one, 600), splits(yard.two, -4)}, {});
    QVERIFY(!done);
    QCOMPARE(done.problems().size(), qsizetype{1});
    QCOMPARE(done.problems().first().field, QString::number(yard.two));
    QVERIFY2(done.message().startsWith(QStringLiteral("Rick two: ")) &&
                 done.message().contains(QStringLiteral("less than nothing")),
             qPrintable(done.message()));
    QCOMPARE(yard.verbs->undoStack().count(), steps);
    QVERIFY(!yard.verbs->countRicks({}, {}));
}

// That it was counted, and right, is worth an entry.
void TstWoodVerbs::anExactCountIsKept()
{
    Yard2 yard;
    QVERIFY(yard.verbs->countRicks({weight(yard.one, 1200)}, {}).ok());
    bool kept = false;
    for (const Movement &m : yard.verbs->books().movements)
        kept = kept || (m.kind == MovementKind::Counted && std::abs(pounds(m.dryMass)) < 1e-3);
    QVERIFY(kept);
}

RICKYARD_TEST(TstWoodVerbs)
#include "tst_wood_verbs.moc"
