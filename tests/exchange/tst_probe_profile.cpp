// Saved mappings of probe logs, their headers, and the first rows as understood. Files are
// invented.
#include "models/exchange/foreign_values.h"
#include "models/exchange/probe_profile.h"
#include "models/exchange/trace_merge.h"
#include "tests/support/registry.h"

#include <QStringEncoder>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

ProbeLogMapping unlikeAnyDefault()
{
    ProbeLogMapping m;
    m.separator = QLatin1Char(';');
    m.decimal = QLatin1Char(',');
    m.headerLine = 3;
    m.missing = {QString(), QStringLiteral("n.v.")};
    m.time = ProbeTime::Elapsed;
    m.timeColumn = QStringLiteral("t");
    m.dateColumn = QStringLiteral("d");
    m.timeFormat = QStringLiteral("d.M.yyyy H:m");
    m.elapsedScale = 60;
    m.zoneKind = TimeZoneKind::FixedOffset;
    m.zone = QStringLiteral("America/Denver");
    m.offsetSeconds = -7 * 3600;
    m.fahrenheit = false;
    m.probes = {{QStringLiteral("Point"), QStringLiteral("P 1 ü")}};
    m.strict = false;
    return m;
}

} // namespace

class TstProbeProfile : public QObject
{
    Q_OBJECT

private slots:
    void comesBackAsSaved()
    {
        const ProbeProfile saved{unlikeAnyDefault(),
                                 {QStringLiteral("t"), QStringLiteral("P 1 ü")}};
        const auto back = probeProfileFromText(toText(saved));
        QVERIFY2(back.ok(), qPrintable(back.message()));
        QCOMPARE(back->header, saved.header);
        QVERIFY(back->mapping == saved.mapping);
        // A start belongs to one cook and is not kept.
        ProbeProfile started = saved;
        started.mapping.start = Instant::ofSeconds(5);
        QVERIFY(!probeProfileFromText(toText(started))->mapping.start);
    }

    void foreignTextIsRefused()
    {
        QVERIFY(!probeProfileFromText(QString()).ok());
        QVERIFY(!probeProfileFromText(QStringLiteral("{}")).ok());
        QString newer = toText({unlikeAnyDefault(), {}});
        newer.replace(QStringLiteral("\"version\":1"), QStringLiteral("\"version\":2"));
        QVERIFY(probeProfileFromText(newer).message().contains(QStringLiteral("newer")));
        QString odd = toText({unlikeAnyDefault(), {}});
        odd.replace(QStringLiteral("elapsed\""), QStringLiteral("sundial\""));
        QVERIFY(!probeProfileFromText(odd).ok());
    }

    void theNextFileWithTheSameHeadersFindsIt()
    {
        Books books;
        ProbeLogMapping mapping;
        mapping.separator = QLatin1Char(',');
        ImportProfile profile;
        profile.id = 4;
        profile.kind = QLatin1String(kTraceProfileKind);
        profile.name = QStringLiteral("Shed logger");
        profile.mapping =
            toText({mapping, {QStringLiteral("Time"), QStringLiteral("A"), QStringLiteral("B")}});
        books.importProfiles.insert(profile.id, profile);
        QCOMPARE(profileFor(books, "Time,A,B\n1,2,3\n"), 4);
        QCOMPARE(profileFor(books, "Time , \"A\",B\r\n"), 4);
        QCOMPARE(profileFor(books, "Time,A\n1,2\n"), 0);
        QCOMPARE(profileFor(books, "Time,B,A\n"), 0);
        ImportProfile weather = profile;
        weather.id = 9;
        weather.kind = QStringLiteral("weather");
        books.importProfiles.insert(weather.id, weather);
        QCOMPARE(profileFor(books, "Time,A,B\n1,2,3\n"), 4);
        profile.id = 11; // of two the newer
        books.importProfiles.insert(profile.id, profile);
        QCOMPARE(profileFor(books, "Time,A,B\n1,2,3\n"), 11);
    }

    void headersFurtherDownAndNone()
    {
        const QByteArray deep = "Logger of the shed, serial 12\n\nTime;Grate °C;Battery V\n"
                                "2026-05-01T18:00:00;121,5;3,7\n2026-05-01T18:00:05;122,0;3,7\n"
                                "2026-05-01T18:00:10;122,0;3,7\n";
        const ProbeLogGuess guess = guessProbeLog(deep, QStringLiteral("America/Chicago"), 3);
        QCOMPARE(guess.mapping.headerLine, 3);
        QCOMPARE(guess.mapping.timeColumn, QStringLiteral("Time"));
        QCOMPARE(guess.mapping.probes.size(), 1); // the battery is none
        QCOMPARE(guess.mapping.probes.first().column, QStringLiteral("Grate °C"));
        QVERIFY(!guess.mapping.fahrenheit);
        QCOMPARE(probeHeader(deep, guess.mapping.separator, 3).size(), 3);
        const QByteArray bare = "2026-05-01T18:00:00,250.5\n2026-05-01T18:00:05,251\n"
                                "2026-05-01T18:00:10,251\n";
        const ProbeLogGuess numbered = guessProbeLog(bare, {}, 0);
        QCOMPARE(numbered.mapping.timeColumn, QStringLiteral("1"));
        QCOMPARE(numbered.mapping.probes.first().column, QStringLiteral("2"));
        const auto rows = previewProbeLog(bare, numbered.mapping, 10);
        QCOMPARE(rows.size(), 3);
        QCOMPARE(rows.first().line, 1);
        QCOMPARE(rows.first().readings.first(), std::optional(temperatureFromFahrenheit(250.5)));
    }

    // Probes are called A to F too: a lone letter is a unit only if every probe ends with it.
    void aLetterThatIsNoUnit()
    {
        const QByteArray letters = "Time,Probe A,Probe C\n2026-05-01T18:00:00,250,251\n"
                                   "2026-05-01T18:00:05,250,251\n2026-05-01T18:00:10,250,251\n";
        QVERIFY(guessProbeLog(letters).mapping.fahrenheit);
        const QByteArray cold = "Time,Grate F,Meat F\n2026-05-01T18:00:00,60,40\n"
                                "2026-05-01T18:00:05,60,40\n2026-05-01T18:00:10,60,40\n";
        const ProbeLogGuess guess = guessProbeLog(cold);
        QVERIFY(guess.mapping.fahrenheit);
        QVERIFY(guess.unitNote.isEmpty());
    }

    void firstRowsSayWhatWillBeRefused()
    {
        const QString text = QStringLiteral("time,grate\n2026-05-01T18:00:00Z,250\nnoon,251\n"
                                            "2026-05-01T18:00:02Z,hot\n2026-05-01T18:00:03Z,---\n");
        ProbeLogMapping mapping;
        mapping.separator = QLatin1Char(',');
        mapping.timeColumn = QStringLiteral("time");
        mapping.probes = {{QStringLiteral("Grate"), QStringLiteral("grate")}};
        QStringEncoder wide(QStringEncoder::Utf16LE, QStringEncoder::Flag::WriteBom);
        for (const QByteArray &bytes : {text.toUtf8(), QByteArray(wide.encode(text))}) {
            const auto rows = previewProbeLog(bytes, mapping, 10);
            QCOMPARE(rows.size(), 4);
            QCOMPARE(isoUtc(rows.at(0).time->seconds()), QStringLiteral("2026-05-01T18:00:00Z"));
            QVERIFY(rows.at(0).refused.isEmpty());
            QVERIFY(!rows.at(1).time);
            QVERIFY(rows.at(1).refused.contains(QStringLiteral("line 3, column 1 (time)")));
            QVERIFY(rows.at(2).refused.contains(QStringLiteral("line 4, column 2 (grate)")));
            QVERIFY(rows.at(2).refused.contains(QStringLiteral("hot")));
            QVERIFY(rows.at(3).refused.isEmpty());
            QVERIFY(!rows.at(3).readings.first()); // a mark for none
            QCOMPARE(previewProbeLog(bytes, mapping, 2).size(), 2);
        }
        mapping.timeColumn = QStringLiteral("clock");
        QVERIFY(previewProbeLog(text.toUtf8(), mapping, 10).isEmpty());
    }

    void theHoursOfACook()
    {
        Cook cook;
        cook.lit = Instant::ofSeconds(1000000);
        ProbeLogMapping mapping;
        keepHoursOf(cook, mapping);
        QCOMPARE(mapping.from->seconds(), 1000000 - 7200);
        QCOMPARE(mapping.to->seconds(), 1000000 + 72 * 3600);
        cook.fireOut = Instant::ofSeconds(1036000);
        keepHoursOf(cook, mapping);
        QCOMPARE(mapping.to->seconds(), 1036000 + 6 * 3600);
    }
};

RICKYARD_TEST(TstProbeProfile)
#include "tst_probe_profile.moc"
