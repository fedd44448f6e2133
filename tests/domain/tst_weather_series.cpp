#include "models/domain/weather/series.h"
#include "tests/support/registry.h"

#include <QDateTime>
#include <QElapsedTimer>
#include <QTest>

using namespace rickyard::domain;

namespace {

Instant utc(int year, int month, int day, int hour, int minute = 0)
{
    return Instant::ofSeconds(
        QDateTime(QDate(year, month, day), QTime(hour, minute), Qt::UTC).toSecsSinceEpoch());
}

void record(Books &books, Instant time, std::optional<double> degrees,
            std::optional<double> wind = std::nullopt, bool normal = false)
{
    Weather w;
    w.id = books.weather.isEmpty() ? 1 : books.weather.lastKey() + 1;
    w.time = time;
    if (degrees)
        w.temperature = temperatureFromCelsius(*degrees);
    if (wind)
        w.wind = Speed::rounded(*wind * 1000);
    w.normal = normal;
    books.weather.insert(w.id, w);
}

} // namespace

class TstWeatherSeries : public QObject
{
    Q_OBJECT

private slots:
    void nearestWithinReach();
    void meanIsWeightedByTime();
    void gapsStayGaps();
    void quantitiesAreLookedUpByThemselves();
    void twoStationsAreAveraged();
    void climatologyTakesSeasonAndHour();
    void climatologyWrapsTheYear();
    void climatologyFallsBackOnAnyHour();
    void normalsAreClimateOnly();
    void empty();
    void largeSeriesIsQuick();
};

void TstWeatherSeries::nearestWithinReach()
{
    Books books; // entered out of order on purpose
    record(books, utc(2026, 1, 5, 12), 8);
    record(books, utc(2026, 1, 5, 10), 4);
    const WeatherSeries series(books);
    QCOMPARE(series.temperatureAt(utc(2026, 1, 5, 10))->base(), 4000);
    QCOMPARE(series.temperatureAt(utc(2026, 1, 5, 10, 59))->base(), 4000);
    QCOMPARE(series.temperatureAt(utc(2026, 1, 5, 11, 0))->base(), 4000); // a tie: the earlier
    QCOMPARE(series.temperatureAt(utc(2026, 1, 5, 11, 1))->base(), 8000);
    QCOMPARE(series.temperatureAt(utc(2026, 1, 5, 13, 30))->base(), 8000);
    QVERIFY(!series.temperatureAt(utc(2026, 1, 5, 13, 31)).has_value());
    QVERIFY(!series.temperatureAt(utc(2026, 1, 5, 8, 29)).has_value());
    QVERIFY(!series.windAt(utc(2026, 1, 5, 10)).has_value());
}

// By hand: records at 10:00 (0 °C), 11:00 (6 °C) and 11:30 (12 °C); from 10:00 to 12:00 they speak
// for 30, 45 and 45 minutes: (0 * 30 + 6 * 45 + 12 * 45) / 120 = 6.75.
void TstWeatherSeries::meanIsWeightedByTime()
{
    Books books;
    record(books, utc(2026, 1, 5, 10), 0, 1);
    record(books, utc(2026, 1, 5, 11), 6, 2);
    record(books, utc(2026, 1, 5, 11, 30), 12, 3);
    const WeatherMean mean = WeatherSeries(books).mean(utc(2026, 1, 5, 10), utc(2026, 1, 5, 12));
    QCOMPARE(mean.temperature->base(), 6750);
    QCOMPARE(mean.wind->base(), 2125);
    QCOMPARE(mean.covered, 1.0);
}

// By hand: records at 00:00 and 10:00 speak for 90 minutes of 00:00-01:30 and for 08:30-10:00 of
// the ten hours: 3 of 10 hours, and the mean is of those alone.
void TstWeatherSeries::gapsStayGaps()
{
    Books books;
    record(books, utc(2026, 1, 5, 0), 10);
    record(books, utc(2026, 1, 5, 10), 20);
    const WeatherSeries series(books);
    const WeatherMean mean = series.mean(utc(2026, 1, 5, 0), utc(2026, 1, 5, 10));
    QVERIFY(std::abs(mean.covered - 0.3) < 1e-12);
    QCOMPARE(mean.temperature->base(), 15000);
    const WeatherMean nothing = series.mean(utc(2026, 1, 5, 2), utc(2026, 1, 5, 8));
    QVERIFY(!nothing.temperature.has_value());
    QCOMPARE(nothing.covered, 0.0);
    QVERIFY(!nothing.basis.isEmpty());
}

void TstWeatherSeries::quantitiesAreLookedUpByThemselves()
{
    Books books;
    record(books, utc(2026, 1, 5, 10), 5, std::nullopt);
    record(books, utc(2026, 1, 5, 10, 20), std::nullopt, 7);
    const WeatherSeries series(books);
    QCOMPARE(series.temperatureAt(utc(2026, 1, 5, 10, 20))->base(), 5000);
    QCOMPARE(series.windAt(utc(2026, 1, 5, 10))->base(), 7000);
}

void TstWeatherSeries::twoStationsAreAveraged()
{
    Books books;
    record(books, utc(2026, 1, 5, 10), 5);
    record(books, utc(2026, 1, 5, 10), 9);
    QCOMPARE(WeatherSeries(books).temperatureAt(utc(2026, 1, 5, 10))->base(), 7000);
}

// Two years; only records within 15 days and at the asked hours may count.
void TstWeatherSeries::climatologyTakesSeasonAndHour()
{
    Books books;
    record(books, utc(2024, 6, 1, 14), 30, 2);
    record(books, utc(2025, 6, 11, 14), 20, 4);
    record(books, utc(2024, 6, 16, 14), 31, 2);  // 15 days away from 1 June: in
    record(books, utc(2024, 6, 17, 14), 99, 99); // 16 days: out
    record(books, utc(2024, 5, 16, 14), 99, 99); // 16 days: out
    record(books, utc(2024, 6, 1, 15), 99, 99);  // another hour: out
    const WeatherMean usual =
        WeatherSeries(books).climatology(utc(2026, 6, 1, 14), utc(2026, 6, 1, 15));
    QCOMPARE(usual.temperature->base(), 27000);
    QVERIFY(std::abs(usual.wind->toDouble() - 8000.0 / 3) < 1.0);
    QCOMPARE(usual.covered, 1.0);
    // Half an hour of 15 h has 99 °C, half an hour of 14 h has 27 °C.
    const WeatherMean across =
        WeatherSeries(books).climatology(utc(2026, 6, 1, 14, 30), utc(2026, 6, 1, 15, 30));
    QCOMPARE(across.temperature->base(), 63000);
}

void TstWeatherSeries::climatologyWrapsTheYear()
{
    Books books;
    record(books, utc(2024, 12, 25, 6), -4);
    record(books, utc(2025, 1, 10, 6), -8);
    const WeatherSeries series(books);
    QCOMPARE(series.climatology(utc(2026, 1, 2, 6), utc(2026, 1, 2, 7)).temperature->base(), -6000);
    QCOMPARE(series.climatology(utc(2026, 12, 30, 6), utc(2026, 12, 30, 7)).temperature->base(),
             -6000);
    QVERIFY(!series.climatology(utc(2026, 7, 1, 6), utc(2026, 7, 1, 7)).temperature.has_value());
    // 1 March is 15 days from 14 February in a common year and 16 in a leap year: one calendar.
    Books february;
    record(february, utc(2025, 2, 15, 6), 3);
    QVERIFY(WeatherSeries(february)
                .climatology(utc(2026, 3, 1, 6), utc(2026, 3, 1, 7))
                .temperature.has_value());
}

void TstWeatherSeries::climatologyFallsBackOnAnyHour()
{
    Books books;
    record(books, utc(2025, 6, 1, 12), 25);
    const WeatherMean usual =
        WeatherSeries(books).climatology(utc(2026, 6, 1, 2), utc(2026, 6, 1, 4));
    QCOMPARE(usual.temperature->base(), 25000);
    QVERIFY(usual.basis.contains(QStringLiteral("whatever hours")));
}

void TstWeatherSeries::normalsAreClimateOnly()
{
    Books books;
    record(books, utc(2010, 6, 1, 12), 25, 3, true);
    const WeatherSeries series(books);
    QVERIFY(!series.isEmpty());
    QVERIFY(!series.temperatureAt(utc(2010, 6, 1, 12)).has_value());
    QVERIFY(!series.mean(utc(2010, 6, 1, 12), utc(2010, 6, 1, 13)).temperature.has_value());
    const WeatherMean usual = series.climatology(utc(2026, 6, 1, 12), utc(2026, 6, 1, 13));
    QCOMPARE(usual.temperature->base(), 25000);
    QVERIFY(usual.basis.contains(QStringLiteral("normals")));
}

void TstWeatherSeries::empty()
{
    const WeatherSeries series{Books()};
    QVERIFY(series.isEmpty());
    QVERIFY(!series.mean(utc(2026, 1, 1, 0), utc(2026, 1, 2, 0)).temperature.has_value());
    QVERIFY(!series.climatology(utc(2026, 1, 1, 0), utc(2026, 1, 2, 0)).temperature.has_value());
    QVERIFY(!series.temperatureAt(utc(2026, 1, 1, 0)).has_value());
}

// Eleven years of hours. Asking a thousand times for a night must cost next to nothing, or a plan
// of a season would stall the window; the bound is generous for slow and instrumented machines.
void TstWeatherSeries::largeSeriesIsQuick()
{
    Books books;
    const Instant start = utc(2014, 1, 1, 0);
    for (int i = 0; i < 100000; ++i)
        record(books, start + Duration::ofBase(qint64{i} * 3600), i % 24, i % 7);
    const WeatherSeries series(books);
    QElapsedTimer timer;
    timer.start();
    for (int i = 0; i < 1000; ++i) {
        const Instant from = start + Duration::ofBase(qint64{i} * 86400);
        const Instant to = from + Duration::ofBase(86400);
        // The values are the hours of the day, 0 to 23: 11.5 over any whole day of climate.
        QCOMPARE(series.climatology(from, to).temperature->base(), 11500);
        QVERIFY(series.mean(from, to).covered > 0.999);
    }
    QVERIFY2(timer.elapsed() < 2000, qPrintable(QString::number(timer.elapsed())));
}

RICKYARD_TEST(TstWeatherSeries)
#include "tst_weather_series.moc"
