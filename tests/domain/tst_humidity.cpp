#include "models/domain/weather/humidity.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;

class TstHumidity : public QObject
{
    Q_OBJECT

private slots:
    void airportRows_data();
    void airportRows();
    void formula();
    void dewPointRoundTrip();
    void noDewPointOfDryAir();
    void contradiction();
};

// Nine hourly airport records of 2013 (tidyverse/nycflights13, data-raw/weather.csv, CC0): degrees
// Fahrenheit and the relative humidity as reported by the stations.
void TstHumidity::airportRows_data()
{
    QTest::addColumn<double>("temperature");
    QTest::addColumn<double>("dewPoint");
    QTest::addColumn<double>("reported");
    QTest::newRow("EWR 01-05 06") << 33.08 << 17.96 << 53.36;
    QTest::newRow("EWR 05-06 06") << 51.08 << 44.96 << 79.48;
    QTest::newRow("EWR 09-08 15") << 82.94 << 55.94 << 39.67;
    QTest::newRow("JFK 01-13 12") << 44.06 << 42.98 << 95.95;
    QTest::newRow("JFK 05-18 16") << 59.00 << 53.06 << 80.64;
    QTest::newRow("JFK 09-20 22") << 64.04 << 60.08 << 86.95;
    QTest::newRow("LGA 01-25 18") << 21.20 << 15.80 << 79.31;
    QTest::newRow("LGA 05-30 22") << 86.00 << 59.00 << 40.14;
    QTest::newRow("LGA 10-03 04") << 68.00 << 55.94 << 65.31;
}

void TstHumidity::airportRows()
{
    QFETCH(double, temperature);
    QFETCH(double, dewPoint);
    QFETCH(double, reported);
    const Ratio humidity = relativeHumidity(temperatureFromFahrenheit(temperature),
                                            temperatureFromFahrenheit(dewPoint));
    const double points = 100.0 * fraction(humidity) - reported;
    QVERIFY2(std::abs(points) <= 0.06, qPrintable(QString::number(points)));
}

// Worked by hand from the formula of WMO-No. 8, annex 4.B.
void TstHumidity::formula()
{
    QVERIFY(std::abs(saturationPressure(0.0) - 6.112) < 1e-12);
    QVERIFY(std::abs(saturationPressure(20.0) - 23.326) < 5e-4);
    QVERIFY(std::abs(relativeHumidityPercent(20, 10) - 52.56) < 0.006);
    QVERIFY(std::abs(relativeHumidityPercent(35, 25) - 56.30) < 0.006);
    QVERIFY(std::abs(relativeHumidityPercent(-5, -10) - 67.99) < 0.006);
    const auto dew = dewPointFrom(temperatureFromCelsius(25), Ratio::ofBase(540000));
    QVERIFY(dew.has_value());
    QVERIFY(std::abs(celsius(*dew) - 15.04) < 0.006);
}

void TstHumidity::dewPointRoundTrip()
{
    for (int t = -30; t <= 45; t += 5) {
        for (int rh = 5; rh <= 100; rh += 5) {
            const auto dew = dewPointFrom(temperatureFromCelsius(t), Ratio::ofBase(rh * 10000));
            QVERIFY(dew.has_value());
            QVERIFY(celsius(*dew) <= t + 1e-3);
            const Ratio back = relativeHumidity(temperatureFromCelsius(t), *dew);
            QVERIFY(std::abs(100.0 * fraction(back) - rh) < 0.01);
        }
    }
}

void TstHumidity::noDewPointOfDryAir()
{
    QVERIFY(!dewPointFrom(temperatureFromCelsius(20), Ratio()).has_value());
    QVERIFY(!dewPointFrom(temperatureFromCelsius(20), Ratio::ofBase(-1)).has_value());
}

// A row of the same file as published: 80.6 °F, dew point 68 °F, "93.33 %".
void TstHumidity::contradiction()
{
    Weather w;
    w.temperature = temperatureFromFahrenheit(80.6);
    w.dewPoint = temperatureFromFahrenheit(68.0);
    QVERIFY(!humidityDisagreement(w).has_value());
    QVERIFY(!humidityContradictsDewPoint(w));
    w.humidity = Ratio::ofBase(933300);
    QVERIFY(std::abs(*humidityDisagreement(w) - 27.7) < 0.1);
    QVERIFY(humidityContradictsDewPoint(w));
    QVERIFY(std::abs(100.0 * fraction(*humidityOf(w)) - 65.6) < 0.05);
    w.humidity = Ratio::ofBase(656000);
    QVERIFY(!humidityContradictsDewPoint(w));
    w.dewPoint.reset();
    QCOMPARE(humidityOf(w)->base(), 656000);
}

RICKYARD_TEST(TstHumidity)
#include "tst_humidity.moc"
