// Which cooks stand before and after a mending, and what the effect is worth: seasons whose fault
// and cure are planted.
#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/repairs.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <random>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kStart = utc(2026, 1, 3, 6);
const Instant kToday = utc(2026, 12, 1, 0);

Instant lightingOf(int cook)
{
    return kStart + Duration::ofBase(qint64{cook} * 4 * 86400);
}

// Cooks four days apart; from `faulty` on the pit takes a quarter more, from `cured` on no more.
void seasonWith(FireYard &yard, RecordId pit, int cooks, int faulty, int cured)
{
    std::mt19937 random(7);
    std::normal_distribution<double> noise(0.0, 0.03);
    for (int i = 0; i < cooks; ++i) {
        Cook &cook = yard.addCook(pit, lightingOf(i), 8.0 + i % 5, -5.0 + (i * 11) % 36);
        cook.wind = Speed::ofBase(2000);
        const RecordId id = cook.id;
        const double balance =
            totalHeat(cookSummary(yard.books, WeatherSeries(yard.books), cook, kToday).columns);
        const double fault = i >= faulty && i < cured ? 1.25 : 1.0;
        yard.burn(yard.books.cooks.value(id),
                  balance / kEfficiency * fault * std::exp(noise(random)));
    }
}

void mendOn(FireYard &yard, RecordId id, RecordId pit, Instant at, double dollars)
{
    Visit visit;
    visit.id = id;
    visit.state = VisitState::Done;
    visit.start = at - durationFromHours(1);
    visit.end = at;
    if (dollars > 0)
        visit.cost = Money::rounded(dollars * 100);
    yard.books.visits.insert(id, visit);
    Finding finding;
    finding.id = id;
    finding.pit = pit;
    finding.text = QStringLiteral("Door gasket leaks");
    finding.state = FindingState::Mended;
    finding.mendedBy = id;
    yard.books.findings.insert(id, finding);
}

QVector<Repair> repairsIn(const FireYard &yard)
{
    const FuelAnswer fuel = fuelAnswer(yard.books, kToday, Wording());
    return repairsOf(yard.books, fuel, kToday, Wording());
}

} // namespace

class TstRepairs : public QObject
{
    Q_OBJECT

private slots:
    void noneWithoutMending();
    void theCureIsSeen();
    void theNextMendingEndsIt();
    void anotherPitHasNoPart();
};

void TstRepairs::noneWithoutMending()
{
    FireYard yard;
    yard.addPit(QStringLiteral("Long Tom"));
    seasonWith(yard, 1, 20, 12, 20);
    QVERIFY(repairsIn(yard).isEmpty());
}

void TstRepairs::theCureIsSeen()
{
    FireYard yard;
    yard.addPit(QStringLiteral("Long Tom"));
    seasonWith(yard, 1, 36, 20, 28);
    mendOn(yard, 1, 1, lightingOf(28) - durationFromHours(24), 0);
    const auto repairs = repairsIn(yard);
    QCOMPARE(repairs.size(), 1);
    const Repair &one = repairs.first();
    QCOMPARE(one.after, 8);
    // All of the climb, not only the usual six; the climb may have begun a cook or two early.
    QVERIFY2(one.before >= 8 && one.before <= 11, qPrintable(QString::number(one.before)));
    // 1 / 1.25 is a fifth less.
    QVERIFY2(std::abs(one.effect.percent + 20.0) < 4.0,
             qPrintable(QString::number(one.effect.percent)));
    QVERIFY(one.effect.lower < -20.0 && one.effect.upper > -20.0);
    QCOMPARE(one.effect.verdict, RepairVerdict::Saves);
    QVERIFY(one.sentence.contains(QStringLiteral("Door gasket leaks")));
}

void TstRepairs::theNextMendingEndsIt()
{
    FireYard yard;
    yard.addPit(QStringLiteral("Long Tom"));
    seasonWith(yard, 1, 36, 20, 28);
    mendOn(yard, 1, 1, lightingOf(24) - durationFromHours(24), 0); // no use
    mendOn(yard, 2, 1, lightingOf(28) - durationFromHours(24), 0); // the cure
    const auto repairs = repairsIn(yard);
    QCOMPARE(repairs.size(), 2);
    QCOMPARE(repairs.first().finding, RecordId(2)); // newest first
    QCOMPARE(repairs.first().before, 4);
    QCOMPARE(repairs.first().after, 8);
    QCOMPARE(repairs.last().after, 4);
    QVERIFY(std::abs(repairs.last().effect.percent) < 8.0);
    QVERIFY(repairs.first().effect.percent < -12.0);
}

void TstRepairs::anotherPitHasNoPart()
{
    FireYard yard;
    yard.addPit(QStringLiteral("Long Tom"));
    yard.addPit(QStringLiteral("Deacon"));
    seasonWith(yard, 1, 20, 20, 20);
    mendOn(yard, 1, 2, lightingOf(10), 0);
    const auto repairs = repairsIn(yard);
    QCOMPARE(repairs.size(), 1);
    QCOMPARE(repairs.first().before, 0);
    QCOMPARE(repairs.first().after, 0);
    QCOMPARE(repairs.first().effect.verdict, RepairVerdict::TooFew);
}

RICKYARD_TEST(TstRepairs)
#include "tst_repairs.moc"
