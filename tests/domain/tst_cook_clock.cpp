// A night keeps its true length, whatever the clocks do in it: midnight, and the change of the
// clock both ways (US rule: 8 March and 1 November 2026 at 2 o'clock, Energy Policy Act of 2005).
#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/fuel_costs.h"
#include "models/domain/fire/wood_left.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>
#include <QTimeZone>

#include <cmath>

using namespace rickyard::domain;
using rickyard::test::FireYard;

namespace {

Instant inChicago(int year, int month, int day, int hour, int minute = 0)
{
    const QDateTime local(QDate(year, month, day), QTime(hour, minute),
                          QTimeZone(QByteArrayLiteral("America/Chicago")));
    return Instant::ofSeconds(local.toSecsSinceEpoch());
}

} // namespace

class TstCookClock : public QObject
{
    Q_OBJECT

private slots:
    void nightsKeepTheirLength_data();
    void nightsKeepTheirLength();
};

void TstCookClock::nightsKeepTheirLength_data()
{
    QTest::addColumn<Instant>("lit");
    QTest::addColumn<Instant>("out");
    QTest::addColumn<double>("hours");
    QTest::newRow("across midnight")
        << inChicago(2026, 6, 5, 22) << inChicago(2026, 6, 6, 8) << 10.0;
    QTest::newRow("the clock goes back")
        << inChicago(2026, 10, 31, 22) << inChicago(2026, 11, 1, 8) << 11.0;
    QTest::newRow("the clock goes forward")
        << inChicago(2026, 3, 7, 22) << inChicago(2026, 3, 8, 8) << 9.0;
    QTest::newRow("across the year")
        << inChicago(2026, 12, 31, 22) << inChicago(2027, 1, 1, 8) << 10.0;
}

void TstCookClock::nightsKeepTheirLength()
{
    QFETCH(Instant, lit);
    QFETCH(Instant, out);
    QFETCH(double, hours);
    FireYard yard;
    yard.books.yards[1].timeZone = QStringLiteral("America/Chicago");
    const RecordId pit = yard.addPit(QStringLiteral("A"));
    Cook &cook = yard.addCook(pit, lit, hours, 10);
    cook.fireOut = out;
    const RecordId id = cook.id;
    const Instant later = out + durationFromHours(48);
    const CookFuel fuel =
        cookSummary(yard.books, WeatherSeries(yard.books), yard.books.cooks.value(id), later);
    QCOMPARE(rickyard::domain::hours(fuel.length), hours);
    QVERIFY(std::abs(*fuel.degreeHours - 110.0 * hours) < 1e-6);
    // Fed every hour of true time, the pace is an hour, through the change too.
    for (int h = 0; h < static_cast<int>(hours); ++h) {
        Movement m;
        m.id = 100 + h;
        m.lot = 1;
        m.time = lit + durationFromHours(h + 0.75);
        m.kind = MovementKind::Burned;
        m.dryMass = -massFromKilograms(2);
        m.moisture = Moisture::ofBase(18000);
        m.cook = id;
        yard.books.movements.insert(m.id, m);
    }
    yard.books.cooks[id].fireOut = {};
    for (const double at : {4.0, 6.0, hours - 0.1}) {
        const auto pace =
            feedPace(yard.books, yard.books.cooks.value(id), lit + durationFromHours(at));
        QVERIFY(pace.has_value());
        QVERIFY(std::abs(pace->interval.toDouble() - 3600) < 1);
    }
    // The month is the crew's own, by the evening of the lighting.
    yard.books.cooks[id].fireOut = out;
    const auto months = workByMonth(yard.books, fuelAnswer(yard.books, later, Wording()));
    QCOMPARE(months.size(), 1);
    const QDateTime local = QDateTime::fromSecsSinceEpoch(
        lit.seconds(), QTimeZone(QByteArrayLiteral("America/Chicago")));
    QCOMPARE(months.first().month, QDate(local.date().year(), local.date().month(), 1));
}

RICKYARD_TEST(TstCookClock)
#include "tst_cook_clock.moc"
