// The answers as JSON and CSV against golden files, and the conversions against exact factors.
// To renew the golden files after a wanted change: RICKYARD_RENEW_GOLDEN=1 tst_exchange.
#include "models/exchange/answers_json.h"
#include "models/exchange/csv_reader.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

constexpr qint64 kAsOf = 1'777'658'400; // 2026-05-01T18:00:00Z

Books invented()
{
    Books books;
    Yard yard;
    yard.name = QStringLiteral("Invented yard");
    yard.invented = true;
    books.yards.insert(1, yard);
    Pit pit;
    pit.id = 3;
    pit.name = QStringLiteral("=Long pit");
    books.pits.insert(3, pit);
    Lot lot;
    lot.id = 5;
    lot.name = QStringLiteral("North rick");
    books.lots.insert(5, lot);
    Cook cook;
    cook.id = 8;
    cook.name = QStringLiteral("Saturday, first");
    cook.pit = 3;
    books.cooks.insert(8, cook);
    UpkeepTask task;
    task.id = 2;
    task.name = QStringLiteral("Door gasket");
    books.tasks.insert(2, task);
    Event event;
    event.id = 6;
    event.name = QStringLiteral("Spring table");
    books.events.insert(6, event);
    return books;
}

Headline headline(Standing standing)
{
    Headline h;
    h.standing = standing;
    h.sentence = {{QStringLiteral("Order by "), false}, {QStringLiteral("3 Dec"), true}};
    h.figure = QStringLiteral("3 Dec");
    h.figureUnit = QStringLiteral("order by");
    h.reasons = {{QStringLiteral("Lead time"), QStringLiteral("14 days"), true, {}},
                 {QStringLiteral("Lot"), QStringLiteral("dry"), false, {TableId::Lot, 5}}};
    return h;
}

WoodAnswer wood()
{
    WoodAnswer answer;
    answer.headline = headline(Standing::Act);
    LotStock lot;
    lot.lot = 5;
    lot.dryMass = massFromKilograms(100);
    lot.moisture = Moisture::ofBase(18500);
    lot.readiness = Readiness::Dry;
    lot.splits = 41.25;
    lot.stacked = volumeFromCubicFeet(128);
    lot.netHeat = Heat::ofBase(1'500'000'000);
    answer.stock.lots = {lot};
    answer.stock.dryMass = lot.dryMass;
    answer.stock.readyStacked = volumeFromCubicFeet(64);
    PlannedUse use;
    use.plannedCook = 0;
    use.event = 6;
    use.pit = 3;
    use.light = Instant::ofSeconds(kAsOf + 86400);
    use.middle = heatFromSeasonedPounds(120);
    use.upper = heatFromSeasonedPounds(150);
    use.outside = temperatureFromCelsius(-40);
    use.weatherBasis = QStringLiteral("normals");
    use.shortOf = true;
    answer.uses = {use};
    answer.course = {{QDate(2026, 5, 2), heatFromSeasonedPounds(10), Heat(), Heat()}};
    answer.uses.first().chanceShort = 0.38;
    answer.uses.first().standIns = QStringList{QStringLiteral("no wind on record")};
    WoodRisk risk;
    risk.event = 6;
    risk.name = QStringLiteral("Spring table");
    risk.day = QDate(2026, 5, 2);
    risk.chance = 0.38;
    risk.error = 0.005;
    risk.meanShort = heatFromSeasonedPounds(20);
    risk.whenShort = heatFromSeasonedPounds(52);
    answer.risks = {risk};
    answer.worst = 0;
    answer.needed = true;
    WoodSource source;
    source.unit = SellUnit::HalfCord;
    source.leadDays = 14;
    source.leadRecord = QStringLiteral("14 days (the supplier's usual time)");
    answer.sources = {source};
    WoodOrderChoice order;
    order.source = 0;
    order.units = 2;
    order.amount = QStringLiteral("2 half cords (64 ft³ each)");
    order.orderBy = QDate(2026, 5, 3);
    order.arrival = QDate(2026, 5, 17);
    order.keeps = true;
    order.worst = QStringLiteral("Spring table");
    order.chance = 0.03;
    order.chanceError = 0.002;
    order.chanceLate = 0.2;
    order.cost = Money::ofBase(42050);
    order.loads = {{QDate(2026, 5, 3), 2, false}};
    answer.orders = {order};
    answer.crossCheck.known = true;
    answer.crossCheck.point = heatFromSeasonedPounds(300);
    answer.crossCheck.words = QStringLiteral("order when the dry stock is under it");
    answer.notes = QStringList{QStringLiteral("No price is known.")};
    answer.firstShortEvent = 6;
    answer.orderBy = QDate(2026, 5, 3);
    answer.amount = volumeFromCubicFeet(128);
    answer.amountInUnit = QStringLiteral("2 half cords (64 ft³ each)");
    answer.leadTime = Duration::ofBase(14 * 86400);
    return answer;
}

CookFuel cookFuel(double actual, bool known)
{
    CookFuel cook;
    cook.cook = 8;
    cook.pit = 3;
    cook.lit = Instant::ofSeconds(kAsOf - 86400);
    cook.finished = true;
    cook.dryMass = massFromPounds(100);
    cook.netHeat = heatFromSeasonedPounds(actual);
    cook.length = durationFromHours(12.5);
    if (!known) {
        cook.missing = {QStringLiteral("no weather")};
        return cook;
    }
    cook.degreeHours = 1234.5;
    cook.meanPit = temperatureFromFahrenheit(250);
    cook.meanWind = Speed::ofBase(4470);
    cook.expected = heatFromSeasonedPounds(100);
    cook.lower = heatFromSeasonedPounds(85);
    cook.upper = heatFromSeasonedPounds(115);
    cook.excess = actual / 100.0 - 1.0;
    cook.columns = {3e8, 5e7, 4e7, 3e7, 0};
    WatchVerdict verdict;
    verdict.score = 1.75;
    verdict.up = 5.25;
    verdict.limit = 4.5;
    verdict.flag = WatchFlag::More;
    verdict.raised = true;
    cook.verdict = verdict;
    cook.cost = 1234;
    cook.priced = 1;
    return cook;
}

FuelAnswer fuel()
{
    FuelAnswer answer;
    answer.headline = headline(Standing::Watch);
    answer.cooks = {cookFuel(122, true), cookFuel(110, true), cookFuel(140, false)};
    PitFuel pit;
    pit.pit = 3;
    pit.cooks = 12;
    pit.cooksEver = 20;
    pit.excessOfLast = 0.22;
    pit.up = 5.25;
    pit.limit = 4.5;
    pit.flag = WatchFlag::More;
    pit.raisedBy = 8;
    pit.climb = WatchExcess{8, 4, 21.5, 12.0, 32.0, 2.5e8};
    pit.hourly = heatFromSeasonedPounds(9);
    answer.pits = {pit};
    return answer;
}

UpkeepAnswer upkeep()
{
    UpkeepAnswer answer;
    answer.headline = headline(Standing::Good);
    TaskDue task;
    task.task = 2;
    task.pit = 3;
    task.lastDone = Instant::ofSeconds(0);
    task.meters = {{QStringLiteral("cooks"), 9, 10}};
    task.worst = 0.9;
    task.due = QDate(2026, 5, 20);
    task.dueReason = QStringLiteral("after 10 cooks");
    task.beforeEvent = 6;
    answer.tasks = {task};
    answer.placements = {{2, Instant::ofSeconds(kAsOf), Instant::ofSeconds(kAsOf + 1800),
                          Instant::ofSeconds(kAsOf + 3600), false, true}};
    answer.unplaced = {{2, QStringLiteral("no cold evening"), QStringLiteral("move one cook")}};
    return answer;
}

QByteArray golden(const char *name, const QByteArray &now)
{
    QFile file(QString(QStringLiteral(RICKYARD_TEST_DATA "/exchange/") + QLatin1String(name)));
    if (qEnvironmentVariableIsSet("RICKYARD_RENEW_GOLDEN") && file.open(QIODevice::WriteOnly)) {
        file.write(now);
        file.close();
    }
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// A lot half way, made up.
QMap<RecordId, SeasoningForecast> drying()
{
    SeasoningForecast forecast;
    forecast.today = kAsOf / 86400;
    forecast.curve = {{forecast.today, 24, 26, 28, 0.04}, {forecast.today + 60, 17, 19, 21, 0.7}};
    forecast.chanceNow = 0.04;
    forecast.readyEarly = forecast.today + 9;
    forecast.readyLikely = forecast.today + 42;
    forecast.tau = 110;
    forecast.tauLow = 80;
    forecast.tauHigh = 150;
    forecast.assumptions = QStringList{QStringLiteral("splits about 4 in thick (not measured)")};
    return {{1, forecast}};
}

} // namespace

class TstAnswersJson : public QObject
{
    Q_OBJECT

private slots:
    void jsonIsGolden()
    {
        const Answers answers{Instant::ofSeconds(kAsOf), wood(), fuel(), upkeep(), drying(), {}};
        const QByteArray now = QJsonDocument(toJson(answers, invented())).toJson();
        QCOMPARE(now, golden("answers.json", now));
    }

    void csvIsGolden()
    {
        const QByteArray now = fuelCsv(fuel(), invented());
        QCOMPARE(now, golden("fuel.csv", now));
    }

    void numbersAreRight()
    {
        const QJsonObject json = toJson(wood(), invented());
        const QJsonObject lot =
            json.value("stock").toObject().value("lots").toArray().first().toObject();
        // 1 lb = 0.45359237 kg, exact (NIST Handbook 44, appendix C).
        QCOMPARE(lot.value("dry_kg").toDouble(), 100.0);
        QVERIFY(std::abs(lot.value("dry_lb").toDouble() - 220.462262) < 1e-5);
        // A cord is 128 ft³ (NIST Handbook 130), 3.624556 m³.
        QVERIFY(std::abs(lot.value("stacked_cord").toDouble() - 1.0) < 1e-6);
        QVERIFY(std::abs(lot.value("stacked_m3").toDouble() - 3.624556) < 1e-5);
        QCOMPARE(lot.value("moisture_pct_dry").toDouble(), 18.5);
        QCOMPARE(lot.value("net_MJ").toDouble(), 1500.0);
        QVERIFY(lot.value("as_is_lb").isNull()); // missing, not zero
        const QJsonObject use = json.value("planned_cooks").toArray().first().toObject();
        QCOMPARE(use.value("outside_degF").toDouble(), -40.0);
        QVERIFY(use.value("planned_cook").isNull());
        QCOMPARE(use.value("event_name").toString(), QStringLiteral("Spring table"));
        QVERIFY(std::abs(use.value("expected_seasoned_lb").toDouble() - 120.0) < 1e-6);
    }

    void flagsFollowTheInterval()
    {
        QVERIFY(cookFuel(122, true).high());
        QVERIFY(!cookFuel(110, true).high());
        QVERIFY(!cookFuel(140, false).high()); // no expectation, no word
    }

    void csvIsSafeAndReadable()
    {
        CsvReader reader(fuelCsv(fuel(), invented()));
        CsvRow row;
        QVERIFY(reader.next(row));
        const qsizetype width = row.cells.size();
        const qsizetype pit = row.cells.indexOf(QStringLiteral("pit_name"));
        const qsizetype expected = row.cells.indexOf(QStringLiteral("expected [slb]"));
        QVERIFY(pit > 0 && expected > 0);
        int rows = 0;
        while (reader.next(row)) {
            QCOMPARE(row.cells.size(), width);
            QCOMPARE(row.cells.at(pit), QStringLiteral("'=Long pit"));
            ++rows;
        }
        QCOMPARE(rows, 3);
        QVERIFY(row.cells.at(expected).isEmpty());
    }

    void sameInputSameBytes()
    {
        const Answers answers{Instant::ofSeconds(kAsOf), wood(), fuel(), upkeep(), drying(), {}};
        QCOMPARE(QJsonDocument(toJson(answers, invented())).toJson(),
                 QJsonDocument(toJson(answers, invented())).toJson());
    }
};

RICKYARD_TEST(TstAnswersJson)
#include "tst_answers_json.moc"
