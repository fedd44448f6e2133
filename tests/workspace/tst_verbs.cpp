// The verb façade: every change is checked, whole, undoable and redoable, and the file always
// equals the books.
#include "models/domain/wood/stock.h"
#include "models/workspace/commands/verbs.h"
#include "tests/support/registry.h"

#include <QRandomGenerator>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::domain;
using commands::Verbs;
using workspace::Workspace;

namespace {

constexpr qint64 kDay = 86400;
const QDateTime kNowUtc(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);
const Instant kNow = Instant::ofSeconds(kNowUtc.toSecsSinceEpoch());

struct Yard1 {
    QTemporaryDir folder;
    std::unique_ptr<Workspace> workspace;
    std::unique_ptr<Verbs> verbs;
    RecordId species = 0, lot = 0, pit = 0, cook = 0;

    Yard1()
    {
        reopen();
        Species s;
        s.name = QStringLiteral("Post oak");
        s.basicGravity = Plain::ofBase(600000);
        species = verbs->add(s).value();
        Lot l;
        l.name = QStringLiteral("Lot A");
        l.species = species;
        l.received = kNow - Duration::ofBase(30 * kDay);
        l.measuredBy = Measure::Stack;
        l.stacks = {
            {Length::ofBase(8 * 304800), Length::ofBase(4 * 304800), Length::ofBase(4 * 304800)}};
        l.splitMass = massFromPounds(5);
        lot = verbs->receive(l).value();
        MoistureReading r;
        r.lot = lot;
        r.time = kNow - Duration::ofBase(29 * kDay);
        r.pieces = {Moisture::ofBase(18000), Moisture::ofBase(20000)};
        if (!verbs->add(r))
            qFatal("reading");
        Pit p;
        p.name = QStringLiteral("Pit 1");
        p.diameter = Length::ofBase(600000);
        p.length = Length::ofBase(1500000);
        p.usualTemperature = temperatureFromFahrenheit(250);
        pit = verbs->add(p).value();
        Cook c;
        c.pit = pit;
        c.lit = kNow - durationFromHours(5);
        cook = verbs->lightCook(c).value();
    }
    void reopen()
    {
        verbs.reset();
        workspace.reset();
        auto opened = Workspace::open(folder.filePath(QStringLiteral("y.rickyard")), kNowUtc);
        if (!opened)
            qFatal("%s", qPrintable(opened.message()));
        workspace = std::move(opened.value());
        verbs = std::make_unique<Verbs>(*workspace, [] { return kNow; });
    }
    [[nodiscard]] QMap<QPair<int, RecordId>, Row> all() const
    {
        QMap<QPair<int, RecordId>, Row> rows;
        for (TableId t : tablesInOrder())
            for (RecordId id : idsOf(workspace->books(), t))
                rows.insert({static_cast<int>(t), id}, *rowOf(workspace->books(), t, id));
        return rows;
    }
};

} // namespace

class TstVerbs : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void aFeedMakesItsLedgerEntry();
    void editingAFeedMovesTheLedger();
    void deletingACookTakesWhatHangsOnIt();
    void deletingWhatIsNeededIsRefused();
    void undoAndRedoAcrossEverything();
    void fileEqualsBooks();
    void badInputIsSaid_data();
    void badInputIsSaid();
    void aNoOpMakesNoStep();
    void countCorrectsAndShowsTheDifference();
    void markAndFinish();
    void longWriteCanBeStopped();
    void aDeliveryWithItsReadingIsOneStep();
    void readOnlyRefusesPolitely();
};

void TstVerbs::aFeedMakesItsLedgerEntry()
{
    Yard1 y;
    const Mass before = lotStockAt(y.workspace->books(), y.lot, kNow).dryMass;
    const auto feed = y.verbs->feed(y.cook, y.lot, 2);
    QVERIFY2(feed.ok(), qPrintable(feed.message()));
    const Mass after = lotStockAt(y.workspace->books(), y.lot, kNow).dryMass;
    // Two splits of 5 lb at 19 % dry basis hold 10 / 1.19 lb of dry wood.
    QVERIFY(std::abs(pounds(before - after) - 10.0 / 1.19) < 1e-5); // whole milligrams
    QVERIFY(y.verbs->undo().ok());
    QCOMPARE(lotStockAt(y.workspace->books(), y.lot, kNow).dryMass, before);
}

void TstVerbs::editingAFeedMovesTheLedger()
{
    Yard1 y;
    const RecordId id = y.verbs->feed(y.cook, y.lot, 2).value();
    Feed feed = y.workspace->books().feeds.value(id);
    feed.weight = massFromPounds(23.8);
    const qsizetype entries = y.workspace->books().movements.size();
    QVERIFY(y.verbs->edit(feed).ok());
    QCOMPARE(y.workspace->books().movements.size(), entries);
    Mass burned;
    for (const Movement &m : y.workspace->books().movements)
        if (m.feed == id)
            burned += m.dryMass;
    QVERIFY(std::abs(pounds(burned) + 20.0) < 1e-5);
}

void TstVerbs::deletingACookTakesWhatHangsOnIt()
{
    Yard1 y;
    for (int i = 0; i < 5; ++i)
        QVERIFY(y.verbs->feed(y.cook, y.lot, 1).ok());
    QVERIFY(
        y.verbs->noteTemperature(y.cook, temperatureFromFahrenheit(240), QStringLiteral("grate"))
            .ok());
    const auto before = y.all();
    QVERIFY(y.verbs->remove(TableId::Cook, {y.cook}).ok());
    QVERIFY(y.workspace->books().feeds.isEmpty());
    QVERIFY(y.workspace->books().temperatures.isEmpty());
    QCOMPARE(y.workspace->books().movements.size(), 1); // the delivery
    QVERIFY(y.verbs->undo().ok());
    QCOMPARE(y.all(), before);
}

void TstVerbs::deletingWhatIsNeededIsRefused()
{
    Yard1 y;
    QVERIFY(y.verbs->feed(y.cook, y.lot, 1).ok());
    const auto before = y.all();
    const auto pit = y.verbs->remove(TableId::Pit, {y.pit});
    QVERIFY(!pit.ok());
    QVERIFY2(pit.message().contains(QStringLiteral("cook")), qPrintable(pit.message()));
    QVERIFY(!y.verbs->remove(TableId::Lot, {y.lot}).ok());
    QVERIFY(!y.verbs->remove(TableId::Species, {y.species}).ok());
    QCOMPARE(y.all(), before);
}

// A random walk of verbs; then all the way back, and all the way forward again.
void TstVerbs::undoAndRedoAcrossEverything()
{
    Yard1 y;
    QRandomGenerator random(11);
    const int base = y.verbs->undoStack().index();
    QVector<QMap<QPair<int, RecordId>, Row>> states{y.all()};
    for (int i = 0; i < 60; ++i) {
        const int index = y.verbs->undoStack().index();
        switch (random.bounded(6)) {
        case 0:
            (void)y.verbs->feed(y.cook, y.lot, 1 + random.bounded(3));
            break;
        case 1:
            (void)y.verbs->noteTemperature(y.cook,
                                           temperatureFromFahrenheit(200 + random.bounded(80)),
                                           QStringLiteral("grate"));
            break;
        case 2:
            (void)y.verbs->note(y.cook, NoteKind::Door, QString());
            break;
        case 3: {
            Supplier s;
            s.name = QStringLiteral("Supplier %1").arg(i);
            (void)y.verbs->add(s);
            break;
        }
        case 4:
            if (!y.workspace->books().feeds.isEmpty())
                (void)y.verbs->remove(TableId::Feed, {y.workspace->books().feeds.firstKey()});
            break;
        default:
            (void)y.verbs->count(y.lot, massFromPounds(1000 + random.bounded(900)), {});
            break;
        }
        if (y.verbs->undoStack().index() > index)
            states << y.all();
    }
    QVERIFY(states.size() > 30);
    for (qsizetype i = states.size() - 2; i >= 0; --i) {
        QVERIFY(y.verbs->undo().ok());
        QCOMPARE(y.all(), states.at(i));
    }
    QCOMPARE(y.verbs->undoStack().index(), base);
    for (qsizetype i = 1; i < states.size(); ++i) {
        QVERIFY(y.verbs->redo().ok());
        QCOMPARE(y.all(), states.at(i));
    }
    y.reopen();
    QCOMPARE(y.all(), states.last());
}

void TstVerbs::fileEqualsBooks()
{
    Yard1 y;
    QVERIFY(y.verbs->feed(y.cook, y.lot, 3).ok());
    const auto before = y.all();
    y.reopen();
    QCOMPARE(y.all(), before);
}

void TstVerbs::badInputIsSaid_data()
{
    QTest::addColumn<QString>("what");
    QTest::addColumn<QString>("field");
    QTest::newRow("negative weight") << "weight"
                                     << "weight";
    QTest::newRow("too wet") << "wet"
                             << "pieces";
    QTest::newRow("ends before it starts") << "ends"
                                           << "fire_out";
    QTest::newRow("overlapping cooks") << "overlap"
                                       << "lit";
    QTest::newRow("feed before the lot came") << "early"
                                              << "lot";
    QTest::newRow("absurd temperature") << "hot"
                                        << "temperature";
    QTest::newRow("absurd outside") << "outside"
                                    << "outside";
    QTest::newRow("nameless species") << "name"
                                      << "name";
    QTest::newRow("gravity of iron") << "gravity"
                                     << "basic_gravity";
    QTest::newRow("never burn") << "never"
                                << "lot";
    QTest::newRow("event ends first") << "event"
                                      << "end";
    QTest::newRow("task without trigger") << "task"
                                          << "every_days";
}

void TstVerbs::badInputIsSaid()
{
    QFETCH(QString, what);
    QFETCH(QString, field);
    Yard1 y;
    const auto before = y.all();
    Problems problems;
    if (what == QLatin1String("weight")) {
        problems = y.verbs->feed(y.cook, y.lot, 1, massFromPounds(-3)).problems();
    } else if (what == QLatin1String("wet")) {
        MoistureReading r;
        r.lot = y.lot;
        r.time = kNow;
        r.pieces = {Moisture::ofBase(120000)}; // oak at 0.60 holds 101.7 % (Wood Handbook eq. 4-3)
        problems = y.verbs->add(r).problems();
    } else if (what == QLatin1String("ends")) {
        problems =
            y.verbs->mark(y.cook, Verbs::Mark::FireOut, kNow - Duration::ofBase(kDay)).problems();
    } else if (what == QLatin1String("overlap")) {
        Cook c;
        c.pit = y.pit;
        c.lit = kNow - durationFromHours(1);
        problems = y.verbs->lightCook(c).problems();
    } else if (what == QLatin1String("early")) {
        Lot l = y.workspace->books().lots.value(y.lot);
        l.id = 0;
        l.name = QStringLiteral("Late lot");
        l.received = kNow;
        const RecordId late = y.verbs->receive(l).value();
        problems = y.verbs->feed(y.cook, late, 1, {}, kNow - durationFromHours(2)).problems();
        QVERIFY(y.verbs->undo().ok());
    } else if (what == QLatin1String("hot")) {
        problems =
            y.verbs
                ->noteTemperature(y.cook, temperatureFromFahrenheit(4000), QStringLiteral("grate"))
                .problems();
    } else if (what == QLatin1String("outside")) {
        Cook c = y.workspace->books().cooks.value(y.cook);
        c.outside = temperatureFromFahrenheit(250);
        problems = y.verbs->edit(c).problems();
    } else if (what == QLatin1String("name") || what == QLatin1String("gravity")) {
        Species s;
        s.name = what == QLatin1String("name") ? QStringLiteral("  ") : QStringLiteral("Iron");
        s.basicGravity = Plain::ofBase(what == QLatin1String("name") ? 600000 : 7800000);
        problems = y.verbs->add(s).problems();
    } else if (what == QLatin1String("never")) {
        Species s = y.workspace->books().species.value(y.species);
        s.neverBurn = true;
        s.neverBurnReason = QStringLiteral("resinous");
        QVERIFY(y.verbs->edit(s).ok());
        problems = y.verbs->feed(y.cook, y.lot, 1).problems();
        QVERIFY(y.verbs->undo().ok());
    } else if (what == QLatin1String("event")) {
        Event e;
        e.name = QStringLiteral("Backwards");
        e.start = kNow;
        e.end = kNow - Duration::ofBase(60);
        problems = y.verbs->add(e).problems();
    } else {
        UpkeepTask t;
        t.name = QStringLiteral("Never due");
        t.since = QDate(2026, 1, 1);
        t.work = Duration::ofBase(600);
        problems = y.verbs->add(t).problems();
    }
    QVERIFY(!problems.isEmpty());
    QCOMPARE(problems.first().field, field);
    QVERIFY(problems.first().message.size() > 12);
    QCOMPARE(y.all(), before);
}

void TstVerbs::aNoOpMakesNoStep()
{
    Yard1 y;
    const int index = y.verbs->undoStack().index();
    QVERIFY(y.verbs->edit(y.workspace->books().pits.value(y.pit)).ok());
    QCOMPARE(y.verbs->undoStack().index(), index);
}

void TstVerbs::countCorrectsAndShowsTheDifference()
{
    Yard1 y;
    const Mass book = lotStockAt(y.workspace->books(), y.lot, kNow).dryMass;
    QVERIFY(y.verbs->count(y.lot, massFromPounds(1234), QStringLiteral("walked the rick")).ok());
    QCOMPARE(lotStockAt(y.workspace->books(), y.lot, kNow).dryMass, massFromPounds(1234));
    const Movement last = y.workspace->books().movements.last();
    QCOMPARE(last.kind, MovementKind::Counted);
    QCOMPARE(last.dryMass, massFromPounds(1234) - book);
    QVERIFY(!y.verbs->count(y.lot, massFromPounds(-1), {}).ok());
}

void TstVerbs::markAndFinish()
{
    Yard1 y;
    QVERIFY(y.verbs->mark(y.cook, Verbs::Mark::AtTemperature, kNow - durationFromHours(4)).ok());
    QVERIFY(y.verbs->mark(y.cook, Verbs::Mark::FireOut).ok());
    QCOMPARE(*y.workspace->books().cooks.value(y.cook).fireOut, kNow);
    QCOMPARE(y.verbs->undoStack().undoText(), QStringLiteral("finish cook"));
    QVERIFY(!y.verbs->feed(y.cook, y.lot, 1, {}, kNow + Duration::ofBase(60)).ok());
}

void TstVerbs::longWriteCanBeStopped()
{
    Yard1 y;
    QVector<Row> rows;
    for (int i = 0; i < 4000; ++i) {
        Weather w;
        w.place = QStringLiteral("Invented field");
        w.time = Instant::ofSeconds(1700000000 + i * 3600);
        w.temperature = temperatureFromCelsius(10);
        rows << toRow(w);
    }
    std::optional<bool> result;
    auto state = y.verbs->putAllInBackground(rows, QStringLiteral("import weather"),
                                             [&](const Outcome<Done> &o) { result = o.ok(); });
    state->cancelled = true;
    QTRY_VERIFY(result.has_value());
    QVERIFY(!*result);
    QVERIFY(y.workspace->books().weather.isEmpty());
    y.reopen();
    QVERIFY(y.workspace->books().weather.isEmpty());
    result.reset();
    (void)y.verbs->putAllInBackground(rows, QStringLiteral("import weather"),
                                      [&](const Outcome<Done> &o) { result = o.ok(); });
    QVERIFY(y.workspace->busy());
    QVERIFY(!y.verbs->feed(y.cook, y.lot, 1).ok()); // said, not lost in a race
    QTRY_VERIFY_WITH_TIMEOUT(result.has_value(), 20000);
    QVERIFY(*result);
    QCOMPARE(y.workspace->books().weather.size(), 4000);
    QVERIFY(y.verbs->undo().ok());
    QVERIFY(y.workspace->books().weather.isEmpty());
}

void TstVerbs::aDeliveryWithItsReadingIsOneStep()
{
    Yard1 y;
    Supplier s;
    s.name = QStringLiteral("Invented wood");
    WoodOrder order;
    order.supplier = y.verbs->add(s).value();
    order.species = y.species;
    order.state = OrderState::Promised;
    order.volume = volumeFromCubicFeet(128);
    const RecordId orderId = y.verbs->add(order).value();
    Lot l;
    l.name = QStringLiteral("Lot B");
    l.species = y.species;
    l.order = orderId;
    l.received = kNow;
    l.measuredBy = Measure::Weighed;
    l.weight = massFromPounds(1200);
    MoistureReading r;
    r.lot = y.lot; // of another lot: it is the new one's
    r.time = kNow - Duration::ofBase(600);
    r.pieces = {Moisture::ofBase(19000), Moisture::ofBase(21000)};
    const Books before = y.verbs->books();
    const int steps = y.verbs->undoStack().count();
    // A reading that cannot be writes nothing at all.
    MoistureReading impossible = r;
    impossible.pieces = {Moisture::ofBase(180000)};
    const auto refused = y.verbs->receive(l, impossible);
    QVERIFY(!refused.ok());
    QCOMPARE(refused.problems().first().field, QStringLiteral("pieces"));
    QCOMPARE(y.verbs->books().lots.size(), before.lots.size());
    QCOMPARE(y.verbs->undoStack().count(), steps);
    const auto received = y.verbs->receive(l, r);
    QVERIFY2(received.ok(), qPrintable(received.message()));
    const Books &books = y.verbs->books();
    QCOMPARE(y.verbs->undoStack().count(), steps + 1);
    const MoistureReading kept = books.readings.last();
    QCOMPARE(kept.lot, received.value());
    QCOMPARE(kept.time, kNow);
    // 1,200 lb at the 20 % that was read are 1,000 lb dry: the entry rests on that reading.
    const Movement entry = books.movements.last();
    QCOMPARE(entry.lot, received.value());
    QVERIFY(std::abs(pounds(entry.dryMass) - 1000) < 0.01);
    QVERIFY(!entry.assumed);
    QCOMPARE(books.orders.value(orderId).state, OrderState::Received);
    QCOMPARE(books.orders.value(orderId).received, QDate(2026, 11, 25));
    QVERIFY(y.verbs->undo().ok());
    QCOMPARE(books.lots.size(), before.lots.size());
    QCOMPARE(books.readings.size(), before.readings.size());
    QCOMPARE(books.movements.size(), before.movements.size());
    QCOMPARE(books.orders.value(orderId).state, OrderState::Promised);
    y.reopen();
    QCOMPARE(y.workspace->books().lots.size(), before.lots.size());
    // Without a reading it is the lot alone.
    l.promisedMoisture = Moisture::ofBase(20000);
    QVERIFY(y.verbs->receive(l, std::nullopt).ok());
    QCOMPARE(y.verbs->books().readings.size(), before.readings.size());
}

void TstVerbs::readOnlyRefusesPolitely()
{
    Yard1 y;
    auto second = Workspace::open(y.folder.filePath(QStringLiteral("y.rickyard")), kNowUtc);
    QVERIFY(second.ok());
    QVERIFY(second.value()->readOnly());
    Verbs verbs(*second.value(), [] { return kNow; });
    const auto refused = verbs.feed(y.cook, y.lot, 1);
    QVERIFY(!refused.ok());
    QVERIFY(refused.message().contains(QStringLiteral("reading only")));
}

RICKYARD_TEST(TstVerbs)
#include "tst_verbs.moc"
