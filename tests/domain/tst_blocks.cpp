// What stands in the way of lighting and towing, and what lifts it for one cook or event.
#include "models/domain/upkeep/blocks.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstBlocks : public QObject
{
    Q_OBJECT

    static const inline QDate kNow{2026, 11, 23};

    struct Yardful {
        UpkeepBooks y;
        RecordId tom = y.pit("Long Tom");
        RecordId ruth = y.pit("Big Ruth");
        RecordId fair = y.event("Quarry Fair", y.at(QDate(2026, 12, 5), 12), 4, 2);
        RecordId cookOfFair = y.plan(tom, y.at(QDate(2026, 12, 4), 22), 12, fair);
        RecordId cook = y.plan(tom, y.at(QDate(2026, 11, 28), 4), 12);
        Instant now = y.at(kNow, 9);

        Yardful() { y.books.events[fair].towed = true; }
        [[nodiscard]] QVector<Block> lighting(Instant at, RecordId planned = 0,
                                              RecordId pit = 0) const
        {
            return lightingBlocks(y.books, y.answer(now), pit != 0 ? pit : tom, at, now, planned);
        }
        [[nodiscard]] QVector<Block> towing() const
        {
            return towingBlocks(y.books, y.answer(now), fair, y.at(QDate(2026, 12, 5), 10), now);
        }
        RecordId override(RecordId task, std::optional<RecordId> planned,
                          std::optional<RecordId> event)
        {
            Override o;
            o.id = y.books.overrides.size() + 1;
            o.task = task;
            o.plannedCook = planned;
            o.event = event;
            o.time = now;
            o.reason = QStringLiteral("spare drain fitted");
            y.books.overrides.insert(o.id, o);
            return o.id;
        }
    };

private slots:
    void overdueTasksOfThePitAndTheKit()
    {
        Yardful f;
        f.y.cook(f.tom, f.y.at(QDate(2026, 11, 21), 6), f.y.at(QDate(2026, 11, 21), 18));
        UpkeepTask &drain = f.y.task("Grease drain", f.tom, QDate(2026, 11, 1));
        drain.everyCooks = 1;
        drain.blocksLighting = true;
        UpkeepTask &look = f.y.task("Extinguisher look", std::nullopt, QDate(2026, 10, 1));
        look.everyDays = 30;
        look.blocksLighting = true;
        f.y.task("Repaint", f.tom, QDate(2026, 1, 1)).everyDays = 30; // blocks nothing
        UpkeepTask &tyres = f.y.task("Tyres", std::nullopt, QDate(2026, 1, 1));
        tyres.everyDays = 30;
        tyres.blocksTowing = true;
        const auto blocks = f.lighting(f.now);
        QCOMPARE(blocks.size(), 2);
        QStringList words;
        for (const Block &b : blocks) {
            QVERIFY(b.stands());
            words << blockWords(b);
        }
        QVERIFY(
            words.contains(QStringLiteral("Grease drain: 1 cook since the last time, limit 1")));
        QVERIFY(words.contains(
            QStringLiteral("Extinguisher look: 53 days since the last time, limit 30")));
        QCOMPARE(f.lighting(f.now, 0, f.ruth).size(), 1); // the kit's alone
        QCOMPARE(f.towing().size(), 1);
        QCOMPARE(f.towing().first().name, QStringLiteral("Tyres"));
        // On the evening of the same day too: the day does not have to be over.
        f.now = f.y.at(QDate(2026, 11, 21), 18.5);
        const auto evening = f.lighting(f.now);
        QVERIFY(std::any_of(evening.begin(), evening.end(), [](const Block &b) {
            return b.name == QStringLiteral("Grease drain");
        }));
        f.now = f.y.at(QDate(2026, 11, 21), 5);
        for (const Block &b : f.lighting(f.now))
            QVERIFY(b.name != QStringLiteral("Grease drain"));
    }

    void whatFallsDueByThen()
    {
        Yardful f;
        UpkeepTask &test = f.y.task("Gasket test", f.tom, QDate(2026, 11, 1));
        test.everyDays = 29; // 30 November
        test.blocksLighting = true;
        QVERIFY(f.lighting(f.now).isEmpty());
        QVERIFY(f.lighting(f.y.at(QDate(2026, 11, 28), 4), f.cook).isEmpty());
        const auto blocks = f.lighting(f.y.at(QDate(2026, 12, 4), 22), f.cookOfFair);
        QCOMPARE(blocks.size(), 1);
        QCOMPARE(blocks.first().why, QStringLiteral("due by Mon 30 Nov, after 29 days"));
    }

    void occasionsCountForEveryFire()
    {
        Yardful f;
        UpkeepTask &site = f.y.task("Fire kit", f.tom, QDate(2026, 11, 1));
        site.occasion = Occasion::BeforeCook;
        site.blocksLighting = true;
        QCOMPARE(f.lighting(f.now).size(), 1); // one that nobody planned
        f.y.visit(site.id, VisitState::Done, f.y.at(kNow, 8), 0.2);
        QVERIFY(f.lighting(f.now).isEmpty());
        QVERIFY(f.lighting(f.y.at(QDate(2026, 11, 28), 4), f.cook).isEmpty());
        QCOMPARE(f.lighting(f.y.at(QDate(2026, 12, 4), 22), f.cookOfFair).size(), 1);
        UpkeepTask &hitch = f.y.task("Hitch", std::nullopt, QDate(2026, 11, 1));
        hitch.occasion = Occasion::BeforeTowing;
        hitch.blocksTowing = true;
        QCOMPARE(f.towing().size(), 1);
        QVERIFY(f.towing().first().why.contains(QStringLiteral("before towing")));
        f.y.visit(hitch.id, VisitState::Done, f.y.at(kNow, 8), 0.2);
        QVERIFY(f.towing().isEmpty());
        f.y.books.events[f.fair].towed = false;
        f.y.books.visits.clear();
        QVERIFY(f.towing().isEmpty());
    }

    void curingAndUnfinishedWork()
    {
        Yardful f;
        UpkeepTask &gasket = f.y.task("Gasket renewal", f.tom, QDate(2026, 11, 1), 90, 24, 24);
        gasket.everyDays = 540;
        const RecordId visit = f.y.visit(gasket.id, VisitState::Done, f.y.at(kNow, 6), 2);
        const auto blocks = f.lighting(f.now);
        QCOMPARE(blocks.size(), 1);
        QCOMPARE(blocks.first().kind, BlockKind::Curing);
        QCOMPARE(blocks.first().why, QStringLiteral("cures until Tue 24 Nov, 8:00 AM"));
        QCOMPARE(*blocks.first().until, f.y.at(kNow.addDays(1), 8));
        QVERIFY(f.lighting(f.y.at(kNow.addDays(1), 8)).isEmpty());
        QVERIFY(f.lighting(f.now, 0, f.ruth).isEmpty());
        QVERIFY(f.towing().isEmpty());
        f.y.books.visits[visit].state = VisitState::Started;
        QCOMPARE(f.lighting(f.now).first().kind, BlockKind::Underway);
        QCOMPARE(f.towing().first().kind, BlockKind::Underway); // the door is off
        f.y.books.visits[visit].state = VisitState::Placed;
        QVERIFY(f.lighting(f.now).isEmpty());
    }

    void aFailedCheckIsNotCleared()
    {
        Yardful f;
        UpkeepTask &leak = f.y.task("Leak test", f.tom, QDate(2026, 11, 1));
        leak.everyDays = 30;
        leak.blocksLighting = true;
        const RecordId visit = f.y.visit(leak.id, VisitState::Done, f.y.at(kNow, 8), 0.2);
        Finding finding;
        finding.id = 1;
        finding.pit = f.tom;
        finding.visit = visit;
        finding.opened = f.y.at(kNow, 8.2);
        finding.text = QStringLiteral("Bubbles at the regulator");
        f.y.books.findings.insert(1, finding);
        const auto blocks = f.lighting(f.now);
        QCOMPARE(blocks.size(), 1);
        QCOMPARE(blocks.first().kind, BlockKind::OpenFinding);
        QVERIFY(blocks.first().why.contains(QStringLiteral("Bubbles at the regulator")));
        f.y.books.findings[1].state = FindingState::Mended;
        QVERIFY(f.lighting(f.now).isEmpty());
        f.y.books.findings[1].state = FindingState::Open;
        f.y.books.tasks[1].blocksLighting = false;
        QVERIFY(f.lighting(f.now).isEmpty());
    }

    void anOverrideIsForOneCookOrOneEvent()
    {
        Yardful f;
        UpkeepTask &both = f.y.task("Frame", std::nullopt, QDate(2026, 1, 1));
        both.everyDays = 30;
        both.blocksLighting = true;
        both.blocksTowing = true;
        const RecordId other = f.y.event("Mill Day", f.y.at(QDate(2026, 12, 12), 12), 4, 1);
        f.y.books.events[other].towed = true;
        f.override(both.id, f.cook, std::nullopt);
        const Instant lit = f.y.at(QDate(2026, 11, 28), 4);
        auto blocks = f.lighting(lit, f.cook);
        QCOMPARE(blocks.size(), 1);
        QVERIFY(!blocks.first().stands());
        QCOMPARE(blocks.first().overrideReason, QStringLiteral("spare drain fitted"));
        QVERIFY(blockWords(blocks.first())
                    .endsWith(QStringLiteral("; gone on with all the same: spare drain fitted")));
        QVERIFY(f.lighting(f.y.at(QDate(2026, 12, 4), 22), f.cookOfFair).first().stands());
        QVERIFY(f.lighting(f.now).first().stands());
        QVERIFY(f.towing().first().stands());
        f.override(both.id, std::nullopt, f.fair);
        QVERIFY(!f.towing().first().stands());
        QVERIFY(f.lighting(f.now).first().stands());
        const auto elsewhere = towingBlocks(f.y.books, f.y.answer(f.now), other,
                                            f.y.at(QDate(2026, 12, 12), 11), f.now);
        QVERIFY(elsewhere.first().stands());
        // Of a fire that nobody planned: half a day.
        f.override(both.id, std::nullopt, std::nullopt);
        QVERIFY(!f.lighting(f.now).first().stands());
        QVERIFY(!f.lighting(f.now + hoursOf(11)).first().stands());
        QVERIFY(f.lighting(f.now + hoursOf(12)).first().stands());
        // Another task's is no matter.
        f.y.books.overrides[3].task = 99;
        QVERIFY(f.lighting(f.now).first().stands());
    }

    void aPutOffTaskBlocksAllTheSame()
    {
        Yardful f;
        UpkeepTask &drain = f.y.task("Grease drain", f.tom, QDate(2026, 10, 1));
        drain.everyDays = 30;
        drain.blocksLighting = true;
        drain.snoozedUntil = QDate(2026, 12, 24);
        QCOMPARE(f.lighting(f.now).size(), 1);
        f.y.books.tasks[1].retired = true;
        QVERIFY(f.lighting(f.now).isEmpty());
    }
};

RICKYARD_TEST(TstBlocks)
#include "tst_blocks.moc"
