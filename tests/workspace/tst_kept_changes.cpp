// What a person changes on a cook after its fire was out is kept beside it, in the same step.
// Invented data.
#include "models/workspace/commands/verbs.h"
#include "tests/support/registry.h"

#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;
using namespace rickyard::domain;
using commands::Verbs;
using workspace::Workspace;

namespace {

// 2026-11-25 12:00 UTC, 6:00 in the morning in Chicago.
const Instant kKeptNow = Instant::ofSeconds(1795608000);

RecordId made(const Outcome<RecordId> &done)
{
    if (!done)
        qFatal("%s", qPrintable(done.message()));
    return done.value();
}

struct KeptYard {
    QTemporaryDir folder;
    Instant now = kKeptNow;
    std::unique_ptr<Workspace> workspace;
    std::unique_ptr<Verbs> verbs;
    RecordId lot = 0, otherLot = 0, pit = 0, cook = 0, feed = 0, burning = 0;

    KeptYard()
    {
        auto opened = Workspace::open(folder.filePath(QStringLiteral("kept.rickyard")),
                                      QDateTime::fromSecsSinceEpoch(now.seconds(), Qt::UTC));
        workspace = std::move(opened.value());
        verbs = std::make_unique<Verbs>(*workspace, [this] { return now; });
        Yard yard = workspace->books().yard();
        yard.timeZone = QStringLiteral("America/Chicago");
        if (!verbs->edit(yard))
            qFatal("yard");
        Species oak;
        oak.name = QStringLiteral("Invented oak");
        oak.basicGravity = Plain::ofBase(600000);
        const RecordId species = made(verbs->add(oak));
        lot = addLot(species, QStringLiteral("Rick one"));
        otherLot = addLot(species, QStringLiteral("Rick two"));
        pit = addPit(QStringLiteral("Invented pit"));
        cook = light(pit, 14);
        feed = made(verbs->feed(cook, lot, 2, {}, now - durationFromHours(4)));
        burning = light(addPit(QStringLiteral("Second invented pit")), 5);
        if (!verbs->mark(cook, Verbs::Mark::FireOut, now - durationFromHours(2)))
            qFatal("fire out");
    }
    RecordId addLot(RecordId species, const QString &name) const
    {
        Lot l;
        l.name = name;
        l.species = species;
        l.received = now - durationFromHours(24 * 30);
        l.stacks = {{Length::ofBase(2438400), Length::ofBase(1219200), Length::ofBase(1219200)}};
        l.splitMass = massFromPounds(5);
        l.promisedMoisture = Moisture::ofBase(20000);
        return made(verbs->receive(l));
    }
    RecordId addPit(const QString &name) const
    {
        Pit p;
        p.name = name;
        p.diameter = Length::ofBase(600000);
        p.length = Length::ofBase(1500000);
        return made(verbs->add(p));
    }
    RecordId light(RecordId on, double hoursAgo) const
    {
        Cook c;
        c.pit = on;
        c.lit = now - durationFromHours(hoursAgo);
        return made(verbs->lightCook(c));
    }
    [[nodiscard]] QStringList kept() const
    {
        QStringList lines;
        for (const CookChange &c : workspace->books().cookChanges)
            lines << QStringLiteral("%1: %2 -> %3")
                         .arg(c.what, c.before, c.after)
                         .replace(QChar(0x202F), QLatin1Char(' '));
        return lines;
    }
};

} // namespace

class TstKeptChanges : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void markingTheFireOutKeepsNothing();
    void everyFieldOfACookIsARow();
    void valuesThatReadAlikeAreToldApart();
    void feedsOfAFinishedCook();
    void aFeedThatMovesToAnotherCook();
    void temperaturesAndNotes();
    void aBurningCookKeepsNothing();
    void noOpsAndTypedWordsKeepNothing();
    void importsKeepNothing();
    void severalRowsByHandAreKept();
    void undoTakesThemBack();
    void theyGoWithTheirCook();
    void nobodyTypesThem();
    void whatAnotherDeletionClearsIsKept();
};

void TstKeptChanges::markingTheFireOutKeepsNothing()
{
    const KeptYard y;
    QVERIFY(y.workspace->books().cooks.value(y.cook).fireOut);
    QCOMPARE(y.kept(), QStringList());
}

void TstKeptChanges::everyFieldOfACookIsARow()
{
    KeptYard y;
    y.now = kKeptNow + durationFromHours(20);
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.fireOut = kKeptNow - durationFromHours(1);
    c.foods = QStringLiteral("two shoulders");
    c.start = StartKind::Warm;
    const int steps = y.verbs->undoStack().count();
    QVERIFY(y.verbs->edit(c).ok());
    QCOMPARE(y.verbs->undoStack().count(), steps + 1);
    QCOMPARE(y.kept(), (QStringList{QStringLiteral("Fire out: Wed 25 Nov 2026, 4:00 AM -> "
                                                   "Wed 25 Nov 2026, 5:00 AM"),
                                    QStringLiteral("Start: Cold steel -> Warm steel"),
                                    QStringLiteral("Food:  -> two shoulders")}));
    for (const CookChange &change : y.workspace->books().cookChanges) {
        QCOMPARE(change.cook, y.cook);
        QCOMPARE(change.time, y.now);
    }
    // Taking the fire's end away is a change too; marking it anew is then the first marking.
    c.fireOut.reset();
    QVERIFY(y.verbs->edit(c).ok());
    QCOMPARE(y.kept().size(), 4);
    QCOMPARE(y.kept().last(), QStringLiteral("Fire out: Wed 25 Nov 2026, 5:00 AM -> "));
    QVERIFY(y.verbs->mark(y.cook, Verbs::Mark::FireOut).ok());
    QCOMPARE(y.kept().size(), 4);
}

void TstKeptChanges::valuesThatReadAlikeAreToldApart()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.fireOut = *c.fireOut + Duration::ofBase(20);
    QVERIFY(y.verbs->edit(c).ok());
    QCOMPARE(y.kept(), (QStringList{QStringLiteral("Fire out: Wed 25 Nov 2026, 4:00:00 AM -> "
                                                   "Wed 25 Nov 2026, 4:00:20 AM")}));
}

void TstKeptChanges::feedsOfAFinishedCook()
{
    const KeptYard y;
    QVERIFY(y.verbs->feed(y.cook, y.lot, 1, {}, kKeptNow - durationFromHours(3)).ok());
    Feed f = y.workspace->books().feeds.value(y.feed);
    f.pieces = 3;
    f.lot = y.otherLot;
    QVERIFY(y.verbs->edit(f).ok());
    QVERIFY(y.verbs->remove(TableId::Feed, {y.feed}).ok());
    QCOMPARE(y.kept(), (QStringList{
                           QStringLiteral("Feed of Wed 3:00 AM:  -> 1 split of Rick one"),
                           QStringLiteral("Feed of Wed 2:00 AM, lot: Rick one -> Rick two"),
                           QStringLiteral("Feed of Wed 2:00 AM, splits: 2 -> 3"),
                           QStringLiteral("Feed of Wed 2:00 AM: 3 splits of Rick two -> "),
                       }));
}

void TstKeptChanges::aFeedThatMovesToAnotherCook()
{
    const KeptYard y;
    Feed f = y.workspace->books().feeds.value(y.feed);
    f.cook = y.burning;
    QVERIFY(y.verbs->edit(f).ok());
    QCOMPARE(y.kept(),
             QStringList{QStringLiteral("Feed of Wed 2:00 AM: 2 splits of Rick one -> ")});
    f.cook = y.cook;
    QVERIFY(y.verbs->edit(f).ok());
    QCOMPARE(y.kept().size(), 2);
    QCOMPARE(y.kept().last(), QStringLiteral("Feed of Wed 2:00 AM:  -> 2 splits of Rick one"));
}

void TstKeptChanges::temperaturesAndNotes()
{
    const KeptYard y;
    const Instant at = kKeptNow - durationFromHours(5);
    const RecordId t =
        y.verbs
            ->noteTemperature(y.cook, temperatureFromFahrenheit(250), QStringLiteral("grate"), at)
            .value();
    CookTemperature reading = y.workspace->books().temperatures.value(t);
    reading.temperature = temperatureFromFahrenheit(265);
    QVERIFY(y.verbs->edit(reading).ok());
    CookNote n;
    n.cook = y.cook;
    n.time = at;
    n.kind = NoteKind::Rain;
    n.text = QStringLiteral("from the north");
    const RecordId note = y.verbs->add(n).value();
    QVERIFY(y.verbs->remove(TableId::CookNote, {note}).ok());
    QCOMPARE(y.kept(),
             (QStringList{
                 QStringLiteral("Temperature of grate at Wed 1:00 AM:  -> 250 °F"),
                 QStringLiteral("Temperature of grate at Wed 1:00 AM, temperature: 250 °F -> "
                                "265 °F"),
                 QStringLiteral("Note of Wed 1:00 AM:  -> Rain began, from the north"),
                 QStringLiteral("Note of Wed 1:00 AM: Rain began, from the north -> "),
             }));
}

void TstKeptChanges::aBurningCookKeepsNothing()
{
    const KeptYard y;
    const RecordId feed = y.verbs->feed(y.burning, y.lot, 1).value();
    Feed f = y.workspace->books().feeds.value(feed);
    f.pieces = 4;
    QVERIFY(y.verbs->edit(f).ok());
    QVERIFY(y.verbs->remove(TableId::Feed, {feed}).ok());
    Cook c = y.workspace->books().cooks.value(y.burning);
    c.foods = QStringLiteral("beans");
    QVERIFY(y.verbs->edit(c).ok());
    QCOMPARE(y.kept(), QStringList());
}

void TstKeptChanges::noOpsAndTypedWordsKeepNothing()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    QVERIFY(y.verbs->edit(c).ok());
    c.typed = QStringLiteral(R"({"lit":"the same, typed otherwise"})");
    QVERIFY(y.verbs->edit(c).ok());
    QCOMPARE(y.kept(), QStringList());
}

void TstKeptChanges::importsKeepNothing()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.foods = QStringLiteral("from a file");
    QVERIFY(y.verbs->putAll({toRow(c)}, QStringLiteral("import")).ok());
    c.foods = QStringLiteral("from another file");
    std::optional<bool> written;
    (void)y.verbs->putAllInBackground({toRow(c)}, QStringLiteral("import"),
                                      [&](const Outcome<Done> &o) { written = o.ok(); });
    QTRY_VERIFY(written.has_value());
    QVERIFY(*written);
    QCOMPARE(y.workspace->books().cooks.value(y.cook).foods, QStringLiteral("from another file"));
    Trace trace;
    trace.cook = y.cook;
    trace.probe = QStringLiteral("grate");
    trace.start = c.lit;
    const auto read = y.verbs->add(trace);
    QVERIFY2(read.ok(), qPrintable(read.message()));
    QCOMPARE(y.kept(), QStringList());
    QVERIFY(y.verbs->remove(TableId::Trace, {read.value()}).ok());
    QCOMPARE(y.kept(), QStringList{QStringLiteral("Trace of grate: 0 points -> ")});
}

void TstKeptChanges::severalRowsByHandAreKept()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.crateAfter = massFromPounds(40);
    Feed f = y.workspace->books().feeds.value(y.feed);
    f.pieces = 1;
    const int steps = y.verbs->undoStack().count();
    QVERIFY(y.verbs->putAll({toRow(c), toRow(f)}, QStringLiteral("true up"), Verbs::Origin::ByHand)
                .ok());
    QCOMPARE(y.verbs->undoStack().count(), steps + 1);
    QCOMPARE(y.kept().size(), 2);
}

void TstKeptChanges::undoTakesThemBack()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.name = QStringLiteral("Renamed");
    QVERIFY(y.verbs->edit(c).ok());
    QCOMPARE(y.kept().size(), 1);
    QVERIFY(y.verbs->undo().ok());
    QCOMPARE(y.kept(), QStringList());
    QVERIFY(y.verbs->redo().ok());
    QCOMPARE(y.kept(), QStringList{QStringLiteral("Name:  -> Renamed")});
}

void TstKeptChanges::theyGoWithTheirCook()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.name = QStringLiteral("Renamed");
    QVERIFY(y.verbs->edit(c).ok());
    QVERIFY(y.verbs->remove(TableId::Cook, {y.cook}).ok());
    QCOMPARE(y.kept(), QStringList());
    QVERIFY(y.verbs->undo().ok());
    QCOMPARE(y.kept().size(), 1);
}

void TstKeptChanges::nobodyTypesThem()
{
    const KeptYard y;
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.name = QStringLiteral("Renamed");
    QVERIFY(y.verbs->edit(c).ok());
    CookChange change = y.workspace->books().cookChanges.first();
    change.before = QStringLiteral("something nicer");
    QVERIFY(!y.verbs->edit(change).ok());
    QVERIFY(!y.verbs->remove(TableId::CookChange, {change.id}).ok());
    change.id = 0;
    QVERIFY(!y.verbs->add(change).ok());
    QCOMPARE(y.kept(), QStringList{QStringLiteral("Name:  -> Renamed")});
    for (const FieldSpec &field : specOf(TableId::CookChange).fields)
        QVERIFY2(field.derived || field.kind == FieldKind::Typed, qPrintable(field.key));
}

void TstKeptChanges::whatAnotherDeletionClearsIsKept()
{
    const KeptYard y;
    Event event;
    event.name = QStringLiteral("Invented fair");
    event.start = kKeptNow - durationFromHours(8);
    event.end = kKeptNow;
    PlannedCook plan;
    plan.event = y.verbs->add(event).value();
    plan.pit = y.pit;
    plan.light = kKeptNow - durationFromHours(14);
    plan.length = durationFromHours(12);
    const auto planned = y.verbs->add(plan);
    QVERIFY2(planned.ok(), qPrintable(planned.message()));
    Cook c = y.workspace->books().cooks.value(y.cook);
    c.planned = planned.value();
    QVERIFY(y.verbs->edit(c).ok());
    QVERIFY(y.verbs->remove(TableId::PlannedCook, {planned.value()}).ok());
    QCOMPARE(y.kept().size(), 2);
    QVERIFY(y.kept().last().startsWith(QStringLiteral("Planned as: ")));
    QVERIFY(y.kept().last().endsWith(QStringLiteral(" -> ")));
}

RICKYARD_TEST(TstKeptChanges)
#include "tst_kept_changes.moc"
