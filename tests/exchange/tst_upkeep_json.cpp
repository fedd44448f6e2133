// The report of the upkeep verb against a golden file, and its figures by hand. To renew the file
// after a wanted change: RICKYARD_RENEW_GOLDEN=1 tst_exchange TstUpkeepJson.
#include "models/exchange/upkeep_json.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

constexpr qint64 kUpkeepNow = 1'777'658'400; // 2026-05-01T18:00:00Z, 13:00 in Chicago

Instant after(double h)
{
    return Instant::ofSeconds(kUpkeepNow) + durationFromHours(h);
}

Books upkeepBooks()
{
    Books books;
    Yard yard;
    yard.name = QStringLiteral("Invented yard");
    yard.invented = true;
    books.yards.insert(1, yard);
    Pit pit;
    pit.id = 3;
    pit.name = QStringLiteral("Long pit");
    books.pits.insert(3, pit);
    UpkeepTask drain;
    drain.id = 2;
    drain.name = QStringLiteral("Grease drain");
    drain.pit = 3;
    drain.everyCooks = 5;
    drain.blocksLighting = true;
    drain.since = QDate(2026, 1, 1);
    books.tasks.insert(2, drain);
    UpkeepTask tyres;
    tyres.id = 4;
    tyres.name = QStringLiteral("Tyres");
    tyres.occasion = Occasion::BeforeTowing;
    tyres.blocksTowing = true;
    tyres.since = QDate(2026, 1, 1);
    books.tasks.insert(4, tyres);
    Event event;
    event.id = 6;
    event.name = QStringLiteral("Spring table");
    event.start = after(50);
    event.end = after(54);
    event.travel = durationFromHours(2);
    event.towed = true;
    books.events.insert(6, event);
    PlannedCook plan;
    plan.id = 7;
    plan.pit = 3;
    plan.event = 6;
    plan.light = after(36);
    plan.length = durationFromHours(12);
    books.plannedCooks.insert(7, plan);
    Override allowed;
    allowed.id = 9;
    allowed.task = 2;
    allowed.plannedCook = 7;
    allowed.time = after(-1);
    allowed.reason = QStringLiteral("drain rodded from below");
    books.overrides.insert(9, allowed);
    AshLoad ash;
    ash.id = 5;
    ash.pit = 3;
    ash.takenOut = after(-24);
    ash.can = QStringLiteral("1");
    books.ashLoads.insert(5, ash);
    return books;
}

Answers upkeepAnswers()
{
    Answers answers;
    answers.asOf = Instant::ofSeconds(kUpkeepNow);
    TaskDue drain;
    drain.task = 2;
    drain.pit = 3;
    drain.meters = {{QStringLiteral("cooks"), 6, 5}};
    drain.worst = 1.2;
    drain.due = QDate(2026, 4, 28);
    drain.dueEarly = QDate(2026, 4, 26);
    drain.dueLate = QDate(2026, 4, 30);
    drain.certain = false;
    drain.dueAt = after(-72);
    drain.dueReason = QStringLiteral("after 5 cooks");
    drain.overdue = true;
    drain.snoozed = true;
    drain.snoozedUntil = QDate(2026, 5, 9);
    drain.snoozeReason = QStringLiteral("rod is on order");
    drain.lightings = {{7, after(36), 0.85}};
    TaskDue tyres;
    tyres.task = 4;
    answers.upkeep.tasks = {drain, tyres};
    return answers;
}

} // namespace

class TstUpkeepJson : public QObject
{
    Q_OBJECT

private slots:
    void reportIsGolden()
    {
        const QByteArray now = QJsonDocument(upkeepReport(upkeepAnswers(), upkeepBooks())).toJson();
        QFile file(QStringLiteral(RICKYARD_TEST_DATA "/exchange/upkeep.json"));
        if (qEnvironmentVariableIsSet("RICKYARD_RENEW_GOLDEN") && file.open(QIODevice::WriteOnly)) {
            file.write(now);
            file.close();
        }
        QVERIFY(file.open(QIODevice::ReadOnly));
        QCOMPARE(now, file.readAll());
    }

    void whatIsBlockedAndTheAsh()
    {
        const QJsonObject report = upkeepReport(upkeepAnswers(), upkeepBooks());
        const QJsonArray blocked = report.value(QLatin1String("blocked")).toArray();
        QCOMPARE(blocked.size(), 3); // now, the planned cook, the tow
        const auto block = [&](int act) {
            return blocked.at(act)
                .toObject()
                .value(QLatin1String("blocks"))
                .toArray()
                .first()
                .toObject();
        };
        QVERIFY(block(0).value(QLatin1String("stands")).toBool());
        QVERIFY(!block(1).value(QLatin1String("stands")).toBool());
        QCOMPARE(block(1).value(QLatin1String("override_reason")).toString(),
                 QStringLiteral("drain rodded from below"));
        QCOMPARE(blocked.at(2).toObject().value(QLatin1String("act")).toString(),
                 QStringLiteral("towing"));
        QCOMPARE(blocked.at(2).toObject().value(QLatin1String("at")).toString(),
                 QStringLiteral("2026-05-03T18:00:00Z")); // serving less two hours
        const QJsonObject load = report.value(QLatin1String("ash"))
                                     .toObject()
                                     .value(QLatin1String("loads"))
                                     .toArray()
                                     .first()
                                     .toObject();
        // 96 h after 30 April, 18:00 UTC.
        QCOMPARE(load.value(QLatin1String("not_to_be_tipped_before")).toString(),
                 QStringLiteral("2026-05-04T18:00:00Z"));
        const QJsonObject task = report.value(QLatin1String("tasks")).toArray().first().toObject();
        QCOMPARE(task.value(QLatin1String("due_with_chance_10")).toString(),
                 QStringLiteral("2026-04-26"));
        QCOMPARE(task.value(QLatin1String("put_off")).toBool(), true);
        QCOMPARE(task.value(QLatin1String("lightings"))
                     .toArray()
                     .first()
                     .toObject()
                     .value(QLatin1String("chance_overdue"))
                     .toDouble(),
                 0.85);
    }
};

RICKYARD_TEST(TstUpkeepJson)
#include "tst_upkeep_json.moc"
