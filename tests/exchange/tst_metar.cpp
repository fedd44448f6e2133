// Aviation weather reports. Test strings from public decoder documentation (temperatures as their
// groups say); the rule of the tenths group from AFMAN 15-111 (2019), page 102. Humidities from
// whole degrees and tenths computed by the Magnus form of WMO-No. 8.
#include "models/domain/weather/humidity.h"
#include "models/exchange/foreign_values.h"
#include "models/exchange/metar.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

Instant momentFrom(const char *iso)
{
    const auto t = readIsoTime(QString::fromLatin1(iso));
    return Instant::ofSeconds(QDateTime(t->date, t->time, Qt::UTC).toSecsSinceEpoch());
}

WeatherImport readText(const QByteArray &text, const char *about = nullptr)
{
    WeatherReadOptions options;
    if (about != nullptr)
        options.about = momentFrom(about);
    return readMetars(text, options, QStringLiteral("obs.txt"));
}

QString timeOf(const Weather &w)
{
    return isoUtc(w.time.seconds());
}

} // namespace

class TstMetar : public QObject
{
    Q_OBJECT

private slots:
    void groups_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<double>("temperature");
        QTest::addColumn<double>("dew");
        QTest::addColumn<double>("humidity");
        QTest::addColumn<double>("wind"); // m/s; -1 missing
        QTest::addColumn<double>("gust");
        QTest::addColumn<int>("from"); // -1: none
        const double kn = 1852.0 / 3600.0;
        const auto row = [](const char *text, double t, double d, double rh, double wind,
                            double gust, int from) {
            QTest::newRow(text) << QString::fromLatin1(text) << t << d << rh << wind << gust
                                << from;
        };
        row("KTOL 251451Z 23016G22KT 8SM CLR 04/00 A3006 RMK AO2 SLP185 T00440000 56016", 4.4, 0.0,
            73.1, 16 * kn, 22 * kn, 230);
        row("KCLE 251554Z 20015KT 10SM FEW055 OVC070 03/M02 A3011 RMK AO2 SLP205 T00331017", 3.3,
            -1.7, 69.8, 15 * kn, -1, 200);
        row("PAUN 131256Z AUTO 08006KT 10SM SCT021 M04/M05 A2931 RMK AO2 SNE15 SLP927 P0000 "
            "T10391050 FZRANO",
            -3.9, -5.0, 92.1, 6 * kn, -1, 80);
        row("KLAW 121053Z AUTO 06006KT 10SM -RA OVC050 13/12 A3001 RMK AO2 SLP159 P0001 T01330122",
            13.3, 12.2, 93.1, 6 * kn, -1, 60);
        row("EGHI 282120Z 19015KT 140V220 6000 RA SCT006 BKN009 16/14 Q1006", 16, 14, 87.9, 15 * kn,
            -1, 190);
        row("K2W6 021035Z AUTO 02/M05 A3004 RMK AO1", 2, -5, 59.8, -1, -1, -1);
        row("ZMUB 021000Z VRB01MPS CAVOK M09/M13 Q1025 NOSIG RMK QFE660.4 66", -9, -13, 72.8, 1.0,
            -1, -1);
        row("KFDY 251450Z 21012G21KT 8SM OVC065 04/M01 A3010 RMK SLP201 57014", 4, -1, 69.9,
            12 * kn, 21 * kn, 210);
        row("KABC 251451Z 00000KT 03/M01 A2992 RMK AO2 T00261015", 2.6, -1.5, 74.4, 0, -1, -1);
    }
    void groups()
    {
        QFETCH(QString, text);
        QFETCH(double, temperature);
        QFETCH(double, dew);
        QFETCH(double, humidity);
        QFETCH(double, wind);
        QFETCH(double, gust);
        QFETCH(int, from);
        const auto m = readMetar(text);
        QVERIFY(m);
        QVERIFY(m->faults.isEmpty());
        QVERIFY(m->temperature && m->dewPoint);
        QVERIFY(std::abs(*m->temperature - temperature) < 1e-9);
        QVERIFY(std::abs(*m->dewPoint - dew) < 1e-9);
        QVERIFY(std::abs(relativeHumidityPercent(*m->temperature, *m->dewPoint) - humidity) < 0.06);
        QCOMPARE(m->wind.has_value(), wind >= 0);
        if (m->wind)
            QVERIFY(std::abs(*m->wind - wind) < 1e-9);
        QCOMPARE(m->gust.has_value(), gust >= 0);
        if (m->gust)
            QVERIFY(std::abs(*m->gust - gust) < 1e-9);
        QCOMPARE(m->windFrom.value_or(-1), from);
    }

    void pressureRainAndFlags()
    {
        auto m = readMetar(QStringLiteral(
            "SPECI KLAW 121053Z COR AUTO 06006KT 350V020 13/ A3001 RMK AO2 P0012 ="));
        QVERIFY(m && m->special && m->corrected && m->automatic);
        QVERIFY(std::abs(*m->pressure - 1016.26) < 0.01); // 30.01 x 33.86389 hPa
        QVERIFY(std::abs(*m->rain - 0.12) < 1e-12);
        QCOMPARE(*m->varyingFrom, 350);
        QCOMPARE(*m->varyingTo, 20);
        QVERIFY(m->temperature && !m->dewPoint);
        m = readMetar(
            QStringLiteral("EGHI 282120Z 19015KT 9999 16/14 Q1006 TEMPO 25030G45KT Q0990"));
        QVERIFY(std::abs(*m->wind - 15 * 1852.0 / 3600) < 1e-9);
        QVERIFY(!m->gust);
        QVERIFY(std::abs(*m->pressure - 1006) < 1e-9);
        m = readMetar(QStringLiteral("KXYZ 251451Z /////KT ///// A//// RMK PNO"));
        QVERIFY(m && !m->wind && !m->temperature && !m->pressure && m->faults.isEmpty());
        QVERIFY(!readMetar(QStringLiteral("KXYZ 321451Z 23016KT 04/00 A3006")));
        QVERIFY(!readMetar(QStringLiteral("KXYZ 252451Z 23016KT 04/00 A3006")));
        QVERIFY(!readMetar(QStringLiteral("KXYZ 25145Z 23016KT 04/00 A3006")));
    }

    // What the remarks' tenths say must round to the body; otherwise it is another station's.
    void tenthsOfAnotherReportAreNotTaken()
    {
        const auto m = readMetar(QStringLiteral("KABC 251451Z 04/00 A2992 RMK T02440000"));
        QCOMPARE(*m->temperature, 4.0);
        QCOMPARE(m->faults.size(), 1);
    }

    void nearestMonth()
    {
        const auto near = [](int day, const char *about) {
            return isoUtc(nearestMoment(day, 14, 51, momentFrom(about))->seconds());
        };
        QCOMPARE(near(25, "2026-01-25T16:00Z"), QStringLiteral("2026-01-25T14:51:00Z"));
        QCOMPARE(near(31, "2026-02-03T16:00Z"), QStringLiteral("2026-01-31T14:51:00Z"));
        QCOMPARE(near(1, "2025-12-31T16:00Z"), QStringLiteral("2026-01-01T14:51:00Z"));
        QCOMPARE(near(31, "2026-01-01T01:00Z"), QStringLiteral("2025-12-31T14:51:00Z"));
        QCOMPARE(near(29, "2024-03-02T00:00Z"), QStringLiteral("2024-02-29T14:51:00Z"));
        QCOMPARE(near(29, "2026-03-02T00:00Z"), QStringLiteral("2026-03-29T14:51:00Z"));
    }

    void manyReportsInAFile()
    {
        QFile file(QStringLiteral(RICKYARD_TEST_DATA "/weather/metar-examples.txt"));
        QVERIFY(file.open(QIODevice::ReadOnly));
        const WeatherImport read = readText(file.readAll(), "2026-01-20T00:00Z");
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 8);
        QCOMPARE(read.report.rowsRead, 8);
        for (const Weather &w : read.rows)
            if (w.place == QLatin1String("KLAW"))
                QCOMPARE(w.rain->base(), 254); // one hundredth of an inch
        QVERIFY(read.report.lines().join(QLatin1Char(' ')).contains(QStringLiteral("nearest")));
    }

    void datesBeforeReports()
    {
        const WeatherImport read =
            readText("2024/01/25 14:51\nKTOL 251451Z 23016KT 04/00 A3006\n\n"
                     "202402291551 METAR KCLE 291551Z 20015KT 03/M02 A3011=\n"
                     "2024-12-31 23:58 KFDY 010003Z 21012KT 04/M01 A3010\n"
                     "KLAW,2023-07-04 10:53,KLAW 041053Z AUTO 06006KT 23/22 A3001\n"
                     "EGHI,2022,09,28,21,20,METAR EGHI 282120Z 19015KT 16/14 Q1006=\n");
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QMap<QString, QString> times;
        for (const Weather &w : read.rows)
            times.insert(w.place, timeOf(w));
        QCOMPARE(times.value("KTOL"), QStringLiteral("2024-01-25T14:51:00Z"));
        QCOMPARE(times.value("KCLE"), QStringLiteral("2024-02-29T15:51:00Z"));
        QCOMPARE(times.value("KFDY"), QStringLiteral("2025-01-01T00:03:00Z"));
        QCOMPARE(times.value("KLAW"), QStringLiteral("2023-07-04T10:53:00Z"));
        QCOMPARE(times.value("EGHI"), QStringLiteral("2022-09-28T21:20:00Z"));
    }

    // One date at the top of forty days of reports.
    void oneDateCarriesOn()
    {
        QByteArray text = "2024-01-10\n";
        for (int day = 0; day < 40; ++day)
            text += "KTOL " +
                    QDate(2024, 1, 10).addDays(day).toString(QStringLiteral("dd")).toLatin1() +
                    "1451Z 04/00 A3006\n";
        const WeatherImport read = readText(text);
        QCOMPARE(read.rows.size(), 40);
        QCOMPARE(timeOf(read.rows.last()), QStringLiteral("2024-02-18T14:51:00Z"));
    }

    void foldedAndRunTogether()
    {
        const WeatherImport read =
            readText("METAR KTOL 251451Z 23016G22KT 8SM CLR\r\n     04/00 A3006 RMK AO2\r\n"
                     "     T00440000=\r\nKCLE 251554Z 20015KT 03/M02 A3011= KFDY 251450Z 21012KT "
                     "04/M01 A3010 KLAW 251053Z 06006KT 13/12 A3001\r\n",
                     "2026-01-25T16:00Z");
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 4);
        for (const Weather &w : read.rows)
            if (w.place == QLatin1String("KTOL"))
                QCOMPARE(w.temperature->base(), 4400);
        QCOMPARE(read.rows.first().place, QStringLiteral("KCLE"));
        QCOMPARE(read.rows.first().temperature->base(), 3000);
    }

    void correctionWinsElseTheLater()
    {
        const char *about = "2026-01-25T16:00Z";
        WeatherImport read = readText("METAR COR KTOL 251451Z 05/00 A3006\n"
                                      "METAR KTOL 251451Z 23016KT 04/00 A3006\n",
                                      about);
        QCOMPARE(read.rows.size(), 1);
        QCOMPARE(read.rows.first().temperature->base(), 5000);
        QVERIFY(read.rows.first().wind); // the correction does not say: the other's is kept
        QCOMPARE(read.report.duplicates, 1);
        read = readText("KTOL 251451Z 04/00 A3006\nKTOL 251351Z 02/00 A3006\n"
                        "KTOL 251451Z 06/00 A3006\n",
                        about);
        QCOMPARE(read.rows.size(), 2);
        QCOMPARE(read.rows.first().temperature->base(), 2000); // out of order, settled by time
        QCOMPARE(read.rows.last().temperature->base(), 6000);
    }

    void specialReportsDoNotCountRainTwice()
    {
        const WeatherImport read = readText("SPECI KTOL 251420Z 04/00 A3006 RMK P0005\n"
                                            "METAR KTOL 251451Z 04/00 A3006 RMK P0009\n",
                                            "2026-01-25T16:00Z");
        QVERIFY(!read.rows.first().rain);
        QCOMPARE(read.rows.last().rain->base(), 2286); // 0.09 in
    }

    void forecastsAndEmptyReports()
    {
        const WeatherImport read =
            readText("TAF KTOL 251120Z 2512/2612 25030G45KT\n     FM251800 27020KT\n"
                     "KTOL 251451Z NIL=\nKTOL 251551Z 04/00 A3006\n",
                     "2026-01-25T16:00Z");
        QVERIFY2(read.ok, qPrintable(joined(read.refused.problems())));
        QCOMPARE(read.rows.size(), 1);
        QVERIFY(!read.rows.first().wind);
        QCOMPARE(read.report.empty, 1);
    }

    void refusals()
    {
        WeatherImport read =
            readText("KTOL 251451Z 04/00 A3006\nMETAR KTOL 25155Z 23016KT 04/00 A3006\n"
                     "KTOL 321651Z 04/00 A3006\n",
                     "2026-01-25T16:00Z");
        QVERIFY(!read.ok);
        QCOMPARE(read.refused.count, 2);
        QCOMPARE(read.refused.list.at(0).line, 2);
        QVERIFY(read.refused.list.at(0).expected.contains(QStringLiteral("KTOL 251451Z")));
        QCOMPARE(read.refused.list.at(1).line, 3);
        QVERIFY(read.rows.isEmpty());
        read = readText("KTOL 251451Z 04/00 A3006\n"); // no date anywhere
        QVERIFY(!read.ok);
        QVERIFY(read.refused.list.first().expected.contains(QStringLiteral("date")));
        read = readText("KTOL 251451Z 04/00 A3006\nKTOL 251551Z 2301KT 04/09 A9999\n",
                        "2026-01-25T16:00Z");
        QVERIFY(read.ok); // a wind, dew point and pressure that cannot be true: missing and listed
        QCOMPARE(read.report.setMissing.count, 3);
        QVERIFY(!read.rows.last().dewPoint && !read.rows.last().pressure);
        WeatherReadOptions strict;
        strict.about = momentFrom("2026-01-25T16:00Z");
        strict.outOfRange = OutOfRange::Refuse;
        QVERIFY(!readMetars("KTOL 251551Z 2301KT 04/00 A3006\n", strict).ok);
        QVERIFY(!readText("nothing of the kind\n", "2026-01-25T16:00Z").ok);
    }
};

RICKYARD_TEST(TstMetar)
#include "tst_metar.moc"
