// Foreign weather files: real excerpts (tests/data/weather/README.md names their sources), and
// small files with one fault each.
#include "models/domain/records/books.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/weather_import.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

QByteArray fileBytes(const char *name)
{
    QFile file(QString(QStringLiteral(RICKYARD_TEST_DATA "/weather/") + QLatin1String(name)));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

WeatherMapping simple()
{
    WeatherMapping m;
    m.timeColumn = QStringLiteral("time");
    m.place = QStringLiteral("yard");
    m.columns = {{QStringLiteral("temperature"), QStringLiteral("t"), QStringLiteral("degC")}};
    return m;
}

QString iso(Instant t)
{
    return isoUtc(t.seconds());
}

Books booksWith(const QVector<Weather> &rows)
{
    Books books;
    for (Weather w : rows) {
        w.id = highestId(books, TableId::Weather) + 1;
        put(books, toRow(w));
    }
    return books;
}

} // namespace

class TstWeatherImport : public QObject
{
    Q_OBJECT

private slots:
    void newarkIsRecognised()
    {
        const MappingGuess guess =
            guessMapping(fileBytes("newark-2013-excerpt.csv"), QStringLiteral("America/New_York"));
        const WeatherMapping &m = guess.mapping;
        QCOMPARE(m.timeColumn, QStringLiteral("time_hour"));
        QCOMPARE(m.timeColumns, TimeColumns::One);
        QCOMPARE(m.zoneKind, TimeZoneKind::Utc);
        QCOMPARE(m.placeColumn, QStringLiteral("origin"));
        const QVector<QuantityColumn> expected = {
            {"temperature", "temp", "degF"}, {"dew_point", "dewp", "degF"},
            {"humidity", "humid", "pct"},    {"wind_from", "wind_dir", "deg"},
            {"wind", "wind_speed", "mph"},   {"gust", "wind_gust", "mph"},
            {"rain", "precip", "in"},        {"pressure", "pressure", "hPa"}};
        QCOMPARE(m.columns, expected);
        QVERIFY(guess.notes.join(QLatin1Char(' ')).contains(QStringLiteral("time_hour")));
    }

    void newarkIsRead()
    {
        const QByteArray bytes = fileBytes("newark-2013-excerpt.csv");
        const WeatherMapping m = guessMapping(bytes).mapping;
        const WeatherImport read = readWeather(bytes, m, QStringLiteral("newark.csv"));
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        const WeatherReport &report = read.report;
        QCOMPARE(report.rowsRead, 201);
        QCOMPARE(report.accepted, 201);
        QCOMPARE(iso(*report.first), QStringLiteral("2013-01-01T06:00:00Z"));
        QCOMPARE(iso(*report.last), QStringLiteral("2013-10-07T19:00:00Z"));
        QCOMPARE(report.usualStep.base(), 3600);

        // The first row, converted by hand: 39.02 °F = 3.9 °C, 26.06 °F = -3.3 °C,
        // 10.35702 mph * 0.44704 = 4.630 m/s, 1012 hPa.
        const Weather &first = read.rows.first();
        QCOMPARE(first.place, QStringLiteral("EWR"));
        QCOMPARE(first.temperature->base(), 3900);
        QCOMPARE(first.dewPoint->base(), -3300);
        QCOMPARE(first.humidity->base(), 593700);
        QCOMPARE(first.wind->base(), 4630);
        QCOMPARE(first.windFrom->base(), 270);
        QVERIFY(!first.gust);
        QCOMPARE(first.rain->base(), 0);
        QCOMPARE(first.pressure->base(), 101200);
        QCOMPARE(first.source, QStringLiteral("newark.csv"));

        // The contradicting row: dew point and temperature give 65.6 % (Magnus, WMO-No. 8),
        // the file says 93.33 %. Kept as reported, and named.
        const Weather &odd = read.rows.last();
        QCOMPARE(odd.temperature->base(), 27000);
        QCOMPARE(odd.dewPoint->base(), 20000);
        QCOMPARE(odd.humidity->base(), 933300);
        QVERIFY(!odd.pressure);
        QVERIFY(report.humidityDisagrees >= 1);
        QCOMPARE(report.worstHumidityLine, 202);
        QVERIFY2(std::abs(report.worstHumidity - 27.8) < 0.1,
                 qPrintable(QString::number(report.worstHumidity)));
    }

    void missingValuesAreCounted()
    {
        const QByteArray bytes = fileBytes("newark-2013-excerpt.csv");
        const WeatherImport read = readWeather(bytes, guessMapping(bytes).mapping);
        // Counted in the excerpt itself: column 11 is wind_gust, 13 is pressure.
        qint64 gusts = 0;
        qint64 pressures = 0;
        for (const QByteArray &line : bytes.trimmed().split('\n').mid(1)) {
            gusts += line.split(',').at(10) == "NA" ? 1 : 0;
            pressures += line.split(',').at(12) == "NA" ? 1 : 0;
        }
        QVERIFY(gusts > 0 && pressures > 0);
        QCOMPARE(read.report.missing.value(QStringLiteral("gust")), gusts);
        QCOMPARE(read.report.missing.value(QStringLiteral("pressure")), pressures);
        QCOMPARE(read.report.missing.value(QStringLiteral("temperature")), 0);
        QCOMPARE(read.rows.size() -
                     std::count_if(read.rows.begin(), read.rows.end(),
                                   [](const Weather &w) { return w.gust.has_value(); }),
                 gusts);
    }

    // Nine observations whose humidity agrees with temperature and dew point.
    void nineRowsAgree()
    {
        const QByteArray bytes = fileBytes("asos-nine-rows.csv");
        const MappingGuess guess = guessMapping(bytes, QStringLiteral("America/New_York"));
        QCOMPARE(guess.mapping.zoneKind, TimeZoneKind::Zone);
        const WeatherImport read = readWeather(bytes, guess.mapping);
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.report.accepted, 9);
        QCOMPARE(read.report.humidityChecked, 9);
        QCOMPARE(read.report.humidityDisagrees, 0);
        // 2013-01-05 06:00 is standard time (UTC-5), 2013-05-06 06:00 daylight time (UTC-4).
        QCOMPARE(iso(read.rows.at(0).time), QStringLiteral("2013-01-05T11:00:00Z"));
        QCOMPARE(iso(read.rows.at(1).time), QStringLiteral("2013-05-06T10:00:00Z"));
    }

    void seattleIsReadAsNormals()
    {
        const QByteArray bytes = fileBytes("seattle-normals-excerpt.csv");
        WeatherMapping m = guessMapping(bytes).mapping;
        QCOMPARE(m.timeColumn, QStringLiteral("date"));
        const QVector<QuantityColumn> expected = {{"pressure", "pressure", "hPa"},
                                                  {"temperature", "temperature", "degC"},
                                                  {"wind", "wind", "m/s"}};
        QCOMPARE(m.columns, expected);
        m.place = QStringLiteral("Seattle");
        m.asNormals = true;
        m.zoneKind = TimeZoneKind::FixedOffset;
        m.offsetSeconds = -8 * 3600;
        const WeatherImport read = readWeather(bytes, m);
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.report.accepted, 200);
        QCOMPARE(read.report.humidityChecked, 0);
        const Weather &first = read.rows.first();
        QVERIFY(first.normal);
        QCOMPARE(iso(first.time), QStringLiteral("2010-01-01T09:00:00Z"));
        QCOMPARE(first.pressure->base(), 101660);
        QCOMPARE(first.temperature->base(), 4000);
        QCOMPARE(first.wind->base(), 3800);
        QVERIFY(!first.humidity);
    }

    void mappingComesBackFromJson()
    {
        WeatherMapping m = guessMapping(fileBytes("newark-2013-excerpt.csv")).mapping;
        m.separator = QLatin1Char(';');
        m.decimal = QLatin1Char(',');
        m.headerLine = 3;
        m.missing = {QStringLiteral("-"), QStringLiteral("n/a")};
        m.timeColumns = TimeColumns::Parts;
        m.yearColumn = QStringLiteral("Jahr");
        m.minuteColumn = QStringLiteral("min");
        m.timeFormat = QStringLiteral("d.M.yyyy");
        m.zoneKind = TimeZoneKind::FixedOffset;
        m.zone = QStringLiteral("America/Denver");
        m.offsetSeconds = -5400;
        m.asNormals = true;
        m.strict = false;
        m.outOfRange = OutOfRange::Missing;
        m.place = QStringLiteral("=yard");
        m.source = QStringLiteral("station \"7\"");
        const auto back = mappingFromText(toText(m));
        QVERIFY2(back.ok(), qPrintable(back.message()));
        QVERIFY(back.value() == m);
        QVERIFY(!mappingFromText(QStringLiteral("{")).ok());
        QVERIFY(!mappingFromText(QStringLiteral("{}")).ok());
        QString newer = toText(m);
        newer.replace(QStringLiteral("\"version\":1"), QStringLiteral("\"version\":2"));
        QVERIFY(!mappingFromText(newer).ok());
    }

    void wrongMappingIsSaid_data()
    {
        QTest::addColumn<WeatherMapping>("mapping");
        QTest::addColumn<QString>("field");
        WeatherMapping m = simple();
        m.timeColumn.clear();
        QTest::newRow("no time") << m << "timeColumn";
        m = simple();
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("Mars/Base");
        QTest::newRow("zone") << m << "zone";
        m = simple();
        m.place.clear();
        QTest::newRow("no place") << m << "place";
        m = simple();
        m.columns.first().unit = QStringLiteral("lb");
        QTest::newRow("unit") << m << "columns.temperature";
        m = simple();
        m.columns.clear();
        QTest::newRow("no column") << m << "columns";
        m = simple();
        m.decimal = m.separator;
        QTest::newRow("decimal") << m << "decimal";
    }
    void wrongMappingIsSaid()
    {
        QFETCH(WeatherMapping, mapping);
        QCOMPARE(mapping.check().size(), 1);
        QTEST(mapping.check().first().field, "field");
        const WeatherImport read = readWeather("time,t\n2026-01-01T00:00Z,1\n", mapping);
        QVERIFY(!read.ok);
        QVERIFY(read.rows.isEmpty());
        QCOMPARE(read.refused.count, 1);
    }

    void refused_data()
    {
        QTest::addColumn<QByteArray>("rows");
        QTest::addColumn<QString>("sentence");
        QTest::newRow("not a number")
            << QByteArray("2026-01-01T00:00Z,warm\n")
            << "w.csv, line 3, column 2 (t): found “warm”; expected a number in degC or a mark "
               "for missing.";
        QTest::newRow("absurd")
            << QByteArray("2026-01-01T00:00Z,99\n")
            << "w.csv, line 3, column 2 (t): found “99”; expected a value from −60.0\u202f°C to "
               "60.0\u202f°C.";
        QTest::newRow("beyond all integers")
            << QByteArray("2026-01-01T00:00Z,1e300\n")
            << "w.csv, line 3, column 2 (t): found “1e300”; expected a value from −60.0\u202f°C "
               "to 60.0\u202f°C.";
        QTest::newRow("no time")
            << QByteArray("yesterday,4\n")
            << "w.csv, line 3, column 1 (time): found “yesterday”; expected a time such as "
               "2026-05-01T18:00:00Z.";
        QTest::newRow("30 February")
            << QByteArray("2026-02-30T00:00Z,4\n")
            << "w.csv, line 3, column 1 (time): found “2026-02-30T00:00Z”; expected a time such "
               "as 2026-05-01T18:00:00Z.";
        QTest::newRow("long ago") << QByteArray("0026-02-03T00:00Z,4\n")
                                  << "w.csv, line 3, column 1 (time): found “0026-02-03T00:00Z”; "
                                     "expected a time between the years 1800 and 2200.";
        QTest::newRow("short") << QByteArray("2026-01-01T00:00Z\n")
                               << "w.csv, line 3: found “1 cell”; expected 2 cells, as in the "
                                  "header.";
        QTest::newRow("two truths")
            << QByteArray("2025-12-31T23:00Z,5\n")
            << "w.csv, line 3: found “2025-12-31T23:00:00Z”; expected one row for each time; line "
               "2 has other values for this one.";
    }
    void refused()
    {
        QFETCH(QByteArray, rows);
        const QByteArray file = "time,t\n2025-12-31T23:00Z,4\n" + rows;
        WeatherMapping m = simple();
        const WeatherImport strict = readWeather(file, m, QStringLiteral("w.csv"));
        QVERIFY(!strict.ok);
        QVERIFY(strict.rows.isEmpty()); // nothing half-imported
        QCOMPARE(strict.refused.count, 1);
        QTEST(strict.refused.list.first().sentence(), "sentence");
        m.strict = false;
        const WeatherImport lenient = readWeather(file, m, QStringLiteral("w.csv"));
        QVERIFY(lenient.ok);
        QCOMPARE(lenient.rows.size(), 1);
        QCOMPARE(lenient.refused.count, 1);
    }

    void impossibleValueMayCountAsMissing()
    {
        WeatherMapping m = simple();
        m.outOfRange = OutOfRange::Missing;
        m.columns.append({QStringLiteral("wind"), QStringLiteral("w"), QStringLiteral("mph")});
        const WeatherImport read =
            readWeather("time,t,w\n2026-01-01T00:00Z,4,5\n2026-01-01T01:00Z,3,1048\n", m);
        QVERIFY(read.ok);
        QCOMPARE(read.rows.size(), 2);
        QCOMPARE(read.rows.at(1).temperature->base(), 3000);
        QVERIFY(!read.rows.at(1).wind);
        QCOMPARE(read.report.setMissing.count, 1);
        QCOMPARE(read.report.setMissing.list.first().line, 3);
        QVERIFY(read.report.lines().join(QLatin1Char('\n')).contains(QStringLiteral("1048")));
    }

    void rowsWithoutAnyValueAreLeftOut()
    {
        const WeatherImport read =
            readWeather("time,t\n2026-01-01T00:00Z,4\n2026-01-01T01:00Z,NA\n", simple());
        QVERIFY(read.ok);
        QCOMPARE(read.rows.size(), 1);
        QCOMPARE(read.report.empty, 1);
        QCOMPARE(read.report.accepted, 1);
    }

    void malformedTextRefusesEvenWhenLenient()
    {
        WeatherMapping m = simple();
        m.strict = false;
        const WeatherImport read =
            readWeather("time,t\n2026-01-01T00:00Z,4\n\"2026-01-01T01:00Z,5\n", m);
        QVERIFY(!read.ok);
        QVERIFY(read.rows.isEmpty());
    }

    void emptyFilesAreRefused()
    {
        QVERIFY(!readWeather("", simple()).ok);
        QVERIFY(!readWeather("time,t\n", simple()).ok);
        QVERIFY(!readWeather("time,x\n2026-01-01T00:00Z,4\n", simple()).ok);
    }

    void duplicatesAreLeftOut()
    {
        const WeatherImport read = readWeather(
            "time,t\n2026-01-01T00:00Z,4\n2026-01-01T00:00Z,4\n2026-01-01T01:00+01:00,4.0\n",
            simple());
        QVERIFY(read.ok);
        QCOMPARE(read.rows.size(), 1);
        QCOMPARE(read.report.duplicates, 2);
    }

    void gapsAreFound()
    {
        const WeatherImport read = readWeather("time,t\n2026-01-01T00:00Z,4\n2026-01-01T01:00Z,4\n"
                                               "2026-01-01T05:00Z,4\n2026-01-01T06:00Z,4\n",
                                               simple());
        QCOMPARE(read.report.gapCount, 1);
        QCOMPARE(iso(read.report.gaps.first().from), QStringLiteral("2026-01-01T01:00:00Z"));
        QCOMPARE(iso(read.report.gaps.first().to), QStringLiteral("2026-01-01T05:00:00Z"));
    }

    // US clocks went back at 2013-11-03 02:00 EDT and forward at 2013-03-10 02:00 EST
    // (Energy Policy Act of 2005, section 110).
    void repeatedHourFollowsTheOrder_data()
    {
        QTest::addColumn<QByteArray>("rows");
        QTest::addColumn<QStringList>("times");
        const QStringList hours = {"2013-11-03T04:00:00Z", "2013-11-03T05:00:00Z",
                                   "2013-11-03T06:00:00Z", "2013-11-03T07:00:00Z"};
        QTest::newRow("oldest first")
            << QByteArray("2013-11-03 00:00,1\n2013-11-03 01:00,2\n2013-11-03 01:00,3\n"
                          "2013-11-03 02:00,4\n")
            << hours;
        QTest::newRow("newest first")
            << QByteArray("2013-11-03 03:00,0\n2013-11-03 02:00,4\n2013-11-03 01:00,3\n"
                          "2013-11-03 01:00,2\n2013-11-03 00:00,1\n")
            << QStringList(hours + QStringList{"2013-11-03T08:00:00Z"});
        QTest::newRow("half hours")
            << QByteArray("2013-11-03 00:30,1\n2013-11-03 01:00,2\n2013-11-03 01:30,3\n"
                          "2013-11-03 01:00,4\n2013-11-03 01:30,5\n2013-11-03 02:00,6\n")
            << QStringList{"2013-11-03T04:30:00Z", "2013-11-03T05:00:00Z", "2013-11-03T05:30:00Z",
                           "2013-11-03T06:00:00Z", "2013-11-03T06:30:00Z", "2013-11-03T07:00:00Z"};
    }
    void repeatedHourFollowsTheOrder()
    {
        QFETCH(QByteArray, rows);
        QFETCH(QStringList, times);
        WeatherMapping m = simple();
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("America/New_York");
        const WeatherImport read = readWeather("time,t\n" + rows, m);
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QStringList found;
        for (const Weather &w : read.rows)
            found << iso(w.time);
        QCOMPARE(found, times);
        QVERIFY(read.report.ambiguousTimes >= 2);
        QVERIFY(read.report.lines().join(QLatin1Char(' ')).contains(QStringLiteral("repeats")));
    }

    void skippedHourIsRefusedWithTheWayOut()
    {
        const QByteArray file = "time,t\n2013-03-10 01:00,1\n2013-03-10 02:00,2\n"
                                "2013-03-10 03:00,3\n";
        WeatherMapping m = simple();
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("America/New_York");
        const WeatherImport read = readWeather(file, m);
        QVERIFY(!read.ok);
        QCOMPARE(read.refused.count, 1);
        QCOMPARE(read.refused.list.first().line, 3);
        QVERIFY(read.refused.list.first().expected.contains(QStringLiteral("fixed offset")));
        // The guess sees such a time and takes the offset of standard time.
        const MappingGuess guess = guessMapping(file, QStringLiteral("America/New_York"));
        QCOMPARE(guess.mapping.zoneKind, TimeZoneKind::FixedOffset);
        QCOMPARE(guess.mapping.offsetSeconds, -5 * 3600);
    }

    void partsAndDecimalCommas()
    {
        const QByteArray file = "Year;Month;Day;Hour;temperature;wind (km/h);rh\n"
                                "2026;1;2;3;-4,5;36;80,5\n2026;1;2;24;-999;18;\n";
        MappingGuess guess = guessMapping(file);
        QCOMPARE(guess.mapping.separator, QLatin1Char(';'));
        QCOMPARE(guess.mapping.decimal, QLatin1Char(','));
        QCOMPARE(guess.mapping.timeColumns, TimeColumns::Parts);
        guess.mapping.missing << QStringLiteral("-999,0");
        guess.mapping.place = QStringLiteral("yard");
        const WeatherImport read = readWeather(file, guess.mapping);
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(iso(read.rows.at(0).time), QStringLiteral("2026-01-02T03:00:00Z"));
        QCOMPARE(iso(read.rows.at(1).time), QStringLiteral("2026-01-03T00:00:00Z"));
        QCOMPARE(read.rows.at(0).temperature->base(), -4500);
        QCOMPARE(read.rows.at(0).wind->base(), 10000);
        QCOMPARE(read.rows.at(0).humidity->base(), 805000);
        QVERIFY(!read.rows.at(1).temperature);
        QVERIFY(!read.rows.at(1).humidity);
    }

    void formatAndNoHeader()
    {
        const QByteArray file = "5/1/2026 6:00,70\n5/1/2026 7:00,71\n";
        WeatherMapping m = simple();
        m.headerLine = 0;
        m.timeColumn = QStringLiteral("1");
        m.timeFormat = QStringLiteral("M/d/yyyy H:mm");
        m.columns = {{QStringLiteral("temperature"), QStringLiteral("2"), QStringLiteral("degF")}};
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("America/Chicago");
        const WeatherImport read = readWeather(file, m);
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 2);
        QCOMPARE(iso(read.rows.first().time), QStringLiteral("2026-05-01T11:00:00Z"));
    }

    void cancelReturnsNothing()
    {
        const std::atomic_bool cancel = true;
        int calls = 0;
        const QByteArray bytes = fileBytes("newark-2013-excerpt.csv");
        const WeatherMapping m = guessMapping(bytes).mapping;
        const auto progress = [&calls](qint64 done, qint64 total) {
            ++calls;
            QVERIFY(done <= total && total > 0);
        };
        const WeatherImport read = readWeather(bytes, m, {}, progress, &cancel);
        QVERIFY(read.cancelled);
        QVERIFY(!read.ok);
        QVERIFY(read.rows.isEmpty());
        QCOMPARE(calls, 0);
        QVERIFY(readWeather(bytes, m, {}, progress).ok);
        QVERIFY(calls >= 2);
    }

    void importingAgainChangesNothing()
    {
        const QByteArray bytes = fileBytes("newark-2013-excerpt.csv");
        const WeatherMapping m = guessMapping(bytes).mapping;
        const QVector<Weather> rows = readWeather(bytes, m, QStringLiteral("a.csv")).rows;
        const WeatherMerge first = mergeWeather({}, rows);
        QCOMPARE(first.fresh.size(), 201);
        const Books books = booksWith(first.fresh);
        const WeatherMerge again =
            mergeWeather(books, readWeather(bytes, m, QStringLiteral("renamed.csv")).rows);
        QCOMPARE(again.identical, 201);
        QVERIFY(again.fresh.isEmpty() && again.updated.isEmpty());
    }

    void mergeUpdatesAndKeepsWhatIsNotThere()
    {
        Weather old;
        old.place = QStringLiteral("yard");
        old.time = Instant::ofSeconds(1'700'000'000);
        old.temperature = Temperature::ofBase(4000);
        old.wind = Speed::ofBase(3000);
        const Books books = booksWith({old});
        Weather corrected = old;
        corrected.temperature = Temperature::ofBase(5000);
        corrected.wind.reset();
        Weather normal = old;
        normal.normal = true;
        Weather elsewhere = old;
        elsewhere.place = QStringLiteral("field");
        const WeatherMerge merge = mergeWeather(books, {corrected, normal, elsewhere});
        QCOMPARE(merge.updated.size(), 1);
        QCOMPARE(merge.updated.first().id, 1);
        QCOMPARE(merge.updated.first().temperature->base(), 5000);
        QCOMPARE(merge.updated.first().wind->base(), 3000);
        QCOMPARE(merge.fresh.size(), 2);
        QCOMPARE(merge.identical, 0);
    }
};

RICKYARD_TEST(TstWeatherImport)
#include "tst_weather_import.moc"
