#include "models/domain/weather/air_course.h"
#include "models/domain/wood/emc.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

qint64 dayIn(int d)
{
    return dayNumber(day(d, 0));
}

void addHours(Books &books, int dayIndex, int hours, double celsius, double humidity,
              double rain = 0, const char *place = "yard", bool normal = false)
{
    for (int hour = 0; hour < hours; ++hour) {
        Weather record;
        record.id = books.weather.isEmpty() ? 1 : books.weather.lastKey() + 1;
        record.place = QString::fromLatin1(place);
        record.time = day(dayIndex, hour);
        record.temperature = temperatureFromCelsius(celsius);
        record.humidity = Ratio::rounded(humidity * 1e6);
        record.rain = Length::rounded(rain * 1000);
        record.normal = normal;
        books.weather.insert(record.id, record);
    }
}

} // namespace

class TstAirCourse : public QObject
{
    Q_OBJECT

private slots:
    void aDayIsTheMeanOfItsHours();
    void fewHoursAreNoDay();
    void twoStationsAreAveraged();
    void theUsualAirOfTheSeason();
    void normalsServeTheFuture();
    void withoutWeather();
    void monthsOfATypicalYear_data();
    void monthsOfATypicalYear();
};

void TstAirCourse::aDayIsTheMeanOfItsHours()
{
    Books books = emptyYard();
    addHours(books, 3, 24, 20, 0.65, 0.5);
    const AirCourse air(books);
    QVERIFY(air.observed(dayIn(3)));
    QVERIFY(!air.observed(dayIn(2)) && !air.observed(dayIn(4)));
    const AirDay here = air.dayAt(dayIn(3));
    // 20 °C and 65 %: 11.996 % by the handbook's equation.
    QVERIFY(std::abs(here.emc - 11.996) < 0.01);
    QVERIFY(std::abs(here.rain - 12) < 1e-9); // 24 hours of half a millimetre
    QVERIFY(std::abs(here.speed - dryingSpeed(20)) < 1e-12);
}

void TstAirCourse::fewHoursAreNoDay()
{
    Books books = emptyYard();
    addHours(books, 3, 7, 20, 0.65);
    QVERIFY(!AirCourse(books).observed(dayIn(3)));
    QCOMPARE(AirCourse(books).observedDays(), 0);
}

void TstAirCourse::twoStationsAreAveraged()
{
    Books books = emptyYard();
    addHours(books, 3, 24, 20, 0.50, 1);
    addHours(books, 3, 24, 20, 0.80, 3, "airport");
    const AirDay here = AirCourse(books).dayAt(dayIn(3));
    const double mean =
        (equilibriumMoisturePercent(20, 0.5) + equilibriumMoisturePercent(20, 0.8)) / 2;
    QVERIFY(std::abs(here.emc - mean) < 1e-9);
    QVERIFY(std::abs(here.rain - 48) < 1e-9); // their mean, not their sum
}

void TstAirCourse::theUsualAirOfTheSeason()
{
    Books books = emptyYard();
    for (int d = 0; d < 30; ++d) {
        addHours(books, d, 24, 0, 0.80);        // December
        addHours(books, d + 182, 24, 30, 0.50); // June
    }
    const AirCourse air(books);
    const AirDay winter = air.dayAt(dayIn(365 + 15));
    const AirDay summer = air.dayAt(dayIn(365 + 182 + 15));
    QVERIFY(std::abs(winter.emc - equilibriumMoisturePercent(0, 0.80)) < 1e-9);
    QVERIFY(std::abs(summer.emc - equilibriumMoisturePercent(30, 0.50)) < 1e-9);
    QVERIFY(winter.speed < summer.speed);
    // Between the seasons with records: the mean of all that is known.
    const AirDay between = air.dayAt(dayIn(365 + 100));
    QVERIFY(std::abs(between.emc - (winter.emc + summer.emc) / 2) < 1e-9);
    QVERIFY(air.yearCovered() > 90 && air.yearCovered() < 140);
}

void TstAirCourse::normalsServeTheFuture()
{
    Books books = emptyYard();
    for (int d = 0; d < 10; ++d)
        addHours(books, d, 24, 5, 0.70, 0, "normals", true);
    const AirCourse air(books);
    QVERIFY(!air.observed(dayIn(3)));
    QVERIFY(std::abs(air.dayAt(dayIn(3)).emc - equilibriumMoisturePercent(5, 0.70)) < 1e-9);
    QVERIFY(!air.assumed());
}

void TstAirCourse::withoutWeather()
{
    const AirCourse air(emptyYard());
    QVERIFY(air.assumed());
    const AirDay mild = air.dayAt(dayIn(100));
    QVERIFY(mild.emc > 11 && mild.emc < 14);
    QVERIFY(mild.speed > 0.7 && mild.speed < 1.1);
}

// Oklahoma City, typical-year file (TMY3): mean temperature and humidity of the months, and the
// equilibrium moisture reckoned from them by the Celsius coefficients of the handbook.
void TstAirCourse::monthsOfATypicalYear_data()
{
    QTest::addColumn<double>("celsius");
    QTest::addColumn<double>("humidity");
    QTest::addColumn<double>("emc");
    QTest::newRow("Jan") << 0.9 << 0.58 << 10.95;
    QTest::newRow("Mar") << 10.4 << 0.65 << 12.26;
    QTest::newRow("May") << 20.6 << 0.68 << 12.64;
    QTest::newRow("Jul") << 27.7 << 0.60 << 10.73;
    QTest::newRow("Aug") << 27.9 << 0.56 << 10.02;
    QTest::newRow("Nov") << 9.8 << 0.73 << 14.21;
    QTest::newRow("Dec") << 3.6 << 0.69 << 13.28;
}

void TstAirCourse::monthsOfATypicalYear()
{
    QFETCH(double, celsius);
    QFETCH(double, humidity);
    QFETCH(double, emc);
    Books books = emptyYard();
    addHours(books, 1, 24, celsius, humidity);
    QVERIFY(std::abs(AirCourse(books).dayAt(dayIn(1)).emc - emc) < 0.02);
}

RICKYARD_TEST(TstAirCourse)
#include "tst_air_course.moc"
