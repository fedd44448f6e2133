// ISD-Lite, local climatological data and EPW, and the door that tells them apart. The sources of
// the excerpts are in tests/data/weather/README.md.
#include "models/domain/records/books.h"
#include "models/domain/records/rules.h"
#include "models/domain/weather/humidity.h"
#include "models/exchange/epw.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/isd_lite.h"
#include "models/exchange/lcd_csv.h"
#include "models/exchange/weather_formats.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

QByteArray dataFile(const char *name)
{
    QFile file(QString(QStringLiteral(RICKYARD_TEST_DATA "/weather/") + QLatin1String(name)));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QString stamp(const Weather &w)
{
    return isoUtc(w.time.seconds());
}

WeatherReadOptions eastern()
{
    WeatherReadOptions options;
    options.zone = QStringLiteral("America/New_York");
    return options;
}

} // namespace

class TstWeatherFormats : public QObject
{
    Q_OBJECT

private slots:
    void isdLite()
    {
        const WeatherImport read =
            readIsdLite(dataFile("isd-lite-invented.txt"), {}, QStringLiteral("999999-00001.txt"));
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 5); // one twice
        QCOMPARE(read.report.duplicates, 1);
        const Weather &first = read.rows.at(0);
        QCOMPARE(first.place, QStringLiteral("999999-00001"));
        QCOMPARE(stamp(first), QStringLiteral("2026-01-25T00:00:00Z"));
        QCOMPARE(first.temperature->base(), 2600);
        QCOMPARE(first.dewPoint->base(), -1500);
        QCOMPARE(first.pressure->base(), 101850);
        QCOMPARE(first.wind->base(), 8200);
        QCOMPARE(first.windFrom->base(), 230);
        QCOMPARE(first.rain->base(), 0);
        const Weather &calm = read.rows.at(1);
        QCOMPARE(calm.wind->base(), 0);
        QVERIFY(!calm.windFrom);
        QCOMPARE(calm.rain->base(), 0); // a trace
        QVERIFY(!read.rows.at(2).temperature && !read.rows.at(2).dewPoint);
        QCOMPARE(read.rows.at(2).rain->base(), 300);                              // micrometres
        QCOMPARE(stamp(read.rows.at(3)), QStringLiteral("2026-01-25T03:00:00Z")); // out of order
        QVERIFY(!read.rows.at(4).rain && !read.rows.at(4).windFrom);
    }

    void isdLiteRefusals()
    {
        WeatherImport read = readIsdLite("2026 01 25 00 26 -15 10185 230 82 0 0 -9999\n"
                                         "2026 01 25 01 26 x 10185 230 82 0 0 -9999\n"
                                         "2026 13 25 01 26 0 10185 230 82 0 0 -9999\n"
                                         "2026 01 25 02 26\n",
                                         {}, QStringLiteral("a.txt"));
        QVERIFY(!read.ok);
        QCOMPARE(read.refused.count, 3);
        QCOMPARE(read.refused.list.at(0).line, 2);
        QCOMPARE(read.refused.list.at(0).column, 6);
        QCOMPARE(read.refused.list.at(0).value, QStringLiteral("x"));
        QCOMPARE(read.refused.list.at(2).line, 4);
        read = readIsdLite("\x1F\x8B\x08\x00", {}, QStringLiteral("a.gz"));
        QVERIFY(!read.ok && read.refused.list.first().expected.contains(QStringLiteral("unpack")));
    }

    void lcd()
    {
        const WeatherImport read = readLcd(dataFile("lcd-invented.csv"), eastern());
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 4); // the day's summary is none
        const Weather &first = read.rows.at(0);
        QCOMPARE(first.place, QStringLiteral("INVENTED FIELD, XX US"));
        // Standard time, five hours behind UTC, in the night in which daylight time begins too.
        QCOMPARE(stamp(first), QStringLiteral("2026-03-08T06:51:00Z"));
        QCOMPARE(stamp(read.rows.at(1)), QStringLiteral("2026-03-08T07:51:00Z"));
        QCOMPARE(stamp(read.rows.at(3)), QStringLiteral("2026-03-08T08:51:00Z"));
        QCOMPARE(first.temperature->base(), 2778);           // 37 °F
        QCOMPARE(first.wind->base(), 7153);                  // 16 mph
        QCOMPARE(first.gust->base(), 11176);                 // 25 mph
        QCOMPARE(first.pressure->base(), 101829);            // 30.07 inHg
        QCOMPARE(read.rows.at(1).temperature->base(), 2222); // suspect, taken
        QCOMPARE(read.rows.at(1).rain->base(), 0);           // a trace
        QVERIFY(!read.rows.at(1).windFrom);                  // VRB
        QVERIFY(!read.rows.at(2).rain);                      // of a special report
        QVERIFY(!read.rows.at(3).dewPoint);                  // *
        QCOMPARE(read.rows.at(3).rain->base(), 1524);        // 0.06 in
        const QString notes = read.report.notes.join(QLatin1Char(' '));
        QVERIFY(notes.contains(QStringLiteral("2 values are marked as suspect")));
        QVERIFY(notes.contains(QStringLiteral("1 summaries")));
    }

    void lcdOfTheMetricEdition()
    {
        const QByteArray text =
            "\"STATION\",\"DATE\",\"NAME\",\"REPORT_TYPE\",\"HourlyDewPointTemperature\","
            "\"HourlyDryBulbTemperature\",\"HourlyPrecipitation\",\"HourlyStationPressure\","
            "\"HourlyWindSpeed\"\n"
            "\"1\",\"2026-01-01T00:51:00\",\"FIELD\",\"FM-15\",\"2.0\",\"5.0\",\"0.3\",\"1016.0\","
            "\"4.1\"\n";
        WeatherReadOptions options;
        options.offsetSeconds = -6 * 3600;
        const WeatherImport read = readLcd(text, options);
        QVERIFY(read.ok);
        QCOMPARE(read.rows.first().temperature->base(), 5000);
        QCOMPARE(read.rows.first().rain->base(), 300);
        QCOMPARE(read.rows.first().wind->base(), 4100);
        QCOMPARE(stamp(read.rows.first()), QStringLiteral("2026-01-01T06:51:00Z"));
    }

    void lcdNeedsAZone()
    {
        const WeatherImport read = readLcd(dataFile("lcd-invented.csv"), {});
        QVERIFY(!read.ok);
        QVERIFY(read.refused.list.first().expected.contains(QStringLiteral("time zone")));
    }

    // The humidities of the typical year's own columns against the Magnus form.
    void typicalYear()
    {
        const WeatherImport read = readEpw(dataFile("okc-tmy3-excerpt.epw"), {});
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 6);
        const Weather &first = read.rows.at(0);
        QVERIFY(first.normal);
        QCOMPARE(first.place, QStringLiteral("Oklahoma City Will Rogers Wor"));
        QCOMPARE(stamp(first), QStringLiteral("2001-01-01T07:00:00Z")); // 01:00, six hours behind
        QCOMPARE(first.temperature->base(), -2800);
        QCOMPARE(first.dewPoint->base(), -8300);
        QCOMPARE(first.humidity->base(), 660000);
        QCOMPARE(first.pressure->base(), 97300);
        QCOMPARE(first.windFrom->base(), 360);
        QCOMPARE(first.wind->base(), 4600);
        QCOMPARE(stamp(read.rows.at(2)), QStringLiteral("2001-01-02T06:00:00Z")); // hour 24
        QCOMPARE(read.rows.at(4).windFrom->base(), 260);
        QVERIFY(!read.rows.at(5).windFrom); // calm
        for (const Weather &w : read.rows)
            QVERIFY(std::abs(*humidityDisagreement(w)) < kHumidityTolerance); // whole per cents
    }

    void yearAsItWas()
    {
        WeatherReadOptions options;
        options.asNormals = false;
        QByteArray text = dataFile("okc-tmy3-excerpt.epw");
        text.replace("-2.8,-8.3,66,97300", "99.9,99.9,999,999999");
        const WeatherImport read = readEpw(text, options);
        QVERIFY(read.ok);
        QVERIFY(!read.rows.first().normal);
        QCOMPARE(stamp(read.rows.first()), QStringLiteral("1982-01-01T07:00:00Z"));
        QVERIFY(!read.rows.first().temperature && !read.rows.first().pressure);
        QCOMPARE(read.report.missing.value(QStringLiteral("humidity")), 1);
        text.replace("1982,1,2,14,0", "1982,2,30,14,0");
        const WeatherImport wrong = readEpw(text, options);
        QVERIFY(!wrong.ok);
        QCOMPARE(wrong.refused.list.first().line, 13);
    }

    void theDoor_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("format");
        QTest::newRow("metar") << dataFile("metar-examples.txt") << QStringLiteral("metar");
        QTest::newRow("cycle") << QByteArray("2024/01/25 14:51\nKTOL 251451Z 04/00 A3006\n")
                               << QStringLiteral("metar");
        QTest::newRow("isd") << dataFile("isd-lite-invented.txt") << QStringLiteral("isd-lite");
        QTest::newRow("lcd") << dataFile("lcd-invented.csv") << QStringLiteral("lcd");
        QTest::newRow("epw") << dataFile("okc-tmy3-excerpt.epw") << QStringLiteral("epw");
        QTest::newRow("hourly") << dataFile("newark-2013-excerpt.csv") << QStringLiteral("csv");
        QTest::newRow("normals") << dataFile("seattle-normals-excerpt.csv")
                                 << QStringLiteral("csv");
        QTest::newRow("nothing") << QByteArray() << QStringLiteral("csv");
    }
    void theDoor()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, format);
        QCOMPARE(keyOf(recogniseWeather(bytes)), format);
        QCOMPARE(keyOf(*weatherFormatFromKey(format)), format);
    }

    void introducesItself()
    {
        WeatherReadOptions options;
        options.about = Instant::ofSeconds(1769000000);
        const WeatherImport read =
            readWeatherAs(WeatherFormat::Metar, dataFile("metar-examples.txt"), options);
        QCOMPARE(introduction(WeatherFormat::Metar, read),
                 QStringLiteral("This is a METAR file: 8 reports."));
        QVERIFY(!readWeatherAs(WeatherFormat::Mapped, "a,b\n1,2\n", {}).ok);
    }

    // A second import of any of the files finds every record there already.
    void again()
    {
        WeatherReadOptions options = eastern();
        options.about = Instant::ofSeconds(1769000000);
        for (const char *name : {"metar-examples.txt", "isd-lite-invented.txt", "lcd-invented.csv",
                                 "okc-tmy3-excerpt.epw"}) {
            const QByteArray bytes = dataFile(name);
            const WeatherFormat format = recogniseWeather(bytes);
            const WeatherImport first = readWeatherAs(format, bytes, options);
            QVERIFY(first.ok);
            Books books;
            for (Weather w : first.rows) {
                w.id = highestId(books, TableId::Weather) + 1;
                QVERIFY2(check(books, toRow(w)).isEmpty(), name);
                put(books, toRow(w));
            }
            const WeatherMerge merge =
                mergeWeather(books, readWeatherAs(format, bytes, options).rows);
            QCOMPARE(merge.fresh.size(), 0);
            QCOMPARE(merge.updated.size(), 0);
            QCOMPARE(merge.identical, first.rows.size());
        }
    }

    void cancelLeavesNothing()
    {
        const std::atomic_bool cancel{true};
        for (const char *name : {"metar-examples.txt", "isd-lite-invented.txt", "lcd-invented.csv",
                                 "okc-tmy3-excerpt.epw"}) {
            const QByteArray bytes = dataFile(name);
            const WeatherImport read =
                readWeatherAs(recogniseWeather(bytes), bytes, eastern(), {}, {}, &cancel);
            QVERIFY(read.cancelled && !read.ok && read.rows.isEmpty());
        }
    }
};

RICKYARD_TEST(TstWeatherFormats)
#include "tst_weather_formats.moc"
