// Probe logs: styles of time, clock changes, broken ends, encodings. All files are invented.
#include "models/exchange/foreign_values.h"
#include "models/exchange/line_source.h"
#include "models/exchange/probe_log.h"
#include "models/exchange/time_pattern.h"
#include "tests/support/registry.h"

#include <QBuffer>
#include <QStringEncoder>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

Instant at(const char *iso)
{
    const auto t = readIsoTime(QString::fromLatin1(iso));
    return Instant::ofSeconds(QDateTime(t->date, t->time, Qt::UTC).toSecsSinceEpoch());
}

ProbeLogMapping grate()
{
    ProbeLogMapping m;
    m.separator = QLatin1Char(',');
    m.timeColumn = QStringLiteral("time");
    m.probes = {{QStringLiteral("Grate"), QStringLiteral("grate")}};
    return m;
}

ProbeLog readLog(QByteArray bytes, const ProbeLogMapping &mapping)
{
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::ReadOnly);
    return readProbeLog(buffer, mapping, QStringLiteral("log.csv"));
}

QVector<qint64> offsetsOf(const ProbeLog &log)
{
    QVector<qint64> offsets;
    for (const TracePoint &p : log.series.value(0).points)
        offsets << p.offset;
    return offsets;
}

QString startOf(const ProbeLog &log)
{
    return isoUtc(log.start.seconds());
}

// Longer than any log, and never in memory: rows are made as they are read.
class EndlessLog : public QIODevice
{
public:
    explicit EndlessLog(qint64 rows) : m_rows(rows) {}
    [[nodiscard]] qint64 size() const override { return m_rows * 32; }
    [[nodiscard]] bool atEnd() const override { return m_row >= m_rows && m_rest.isEmpty(); }

protected:
    qint64 readData(char *data, qint64 most) override
    {
        while (m_rest.size() < most && m_row < m_rows) {
            if (m_row == 0)
                m_rest += "time,grate\n";
            m_rest += QByteArray::number(m_row) + ",250.5\n";
            ++m_row;
        }
        const qint64 n = std::min<qint64>(most, m_rest.size());
        memcpy(data, m_rest.constData(), static_cast<std::size_t>(n));
        m_rest.remove(0, n);
        return n;
    }
    qint64 writeData(const char *, qint64) override { return -1; }

private:
    qint64 m_rows;
    qint64 m_row = 0;
    QByteArray m_rest;
};

} // namespace

class TstProbeLog : public QObject
{
    Q_OBJECT

private slots:
    void times_data()
    {
        QTest::addColumn<QString>("style");
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("expected"); // UTC; empty: refused
        const auto row = [](const char *style, const char *text, const char *expected) {
            QTest::newRow(text) << QString::fromLatin1(style) << QString::fromLatin1(text)
                                << QString::fromLatin1(expected);
        };
        row("", "2026-05-01T18:00:05Z", "2026-05-01T18:00:05Z");
        row("", "2026-05-01 18:00:05.250", "2026-05-01T18:00:05Z");
        row("", "2026-05-01 18:00", "2026-05-01T18:00:00Z");
        row("", "20260501T180005-0500", "2026-05-01T23:00:05Z");
        row("", "2026-05-01 18:00:05 +02:00", "2026-05-01T16:00:05Z");
        row("", "2026-05-01T24:00:00", "2026-05-02T00:00:00Z");
        row("", "2026-02-29 18:00", "");
        row("", "2026-05-01 18:61", "");
        row("", "2026-05-01 18:00:05 x", "");
        row("M/d/yyyy h:m:s AP", "5/1/2026 6:00:05 PM", "2026-05-01T18:00:05Z");
        row("M/d/yyyy h:m:s AP", "12/31/2026 12:00:05 AM", "2026-12-31T00:00:05Z");
        row("M/d/yyyy h:m:s AP", "12/31/2026 13:00:05 AM", "");
        row("M/d/yy H:m", "05/01/26 18:07", "2026-05-01T18:07:00Z");
        row("d.M.yyyy H:m:s", "29.02.2024 23:59:59", "2024-02-29T23:59:59Z");
        row("d.M.yyyy H:m:s", "31.04.2024 23:59:59", "");
    }
    void times()
    {
        QFETCH(QString, style);
        QFETCH(QString, text);
        QFETCH(QString, expected);
        const auto reading = TimePattern(style).read(text.toStdString());
        QCOMPARE(reading.has_value(), !expected.isEmpty());
        if (reading)
            QCOMPARE(isoUtc(*reading->day * 86400 + reading->secondOfDay -
                            reading->offsetSeconds.value_or(0)),
                     expected);
    }

    // Every day of four centuries, against the calendar of Qt.
    void calendar()
    {
        for (QDate d(1800, 1, 1); d.year() <= 2200; d = d.addDays(1))
            QCOMPARE(*dayOfCalendar(d.year(), d.month(), d.day()),
                     d.toJulianDay() - QDate(1970, 1, 1).toJulianDay());
        QVERIFY(!dayOfCalendar(2100, 2, 29) && !dayOfCalendar(2026, 13, 1));
    }

    void elapsed()
    {
        const auto read = [](const char *text, double scale = 1) {
            return readElapsed(text, '.', scale).value_or(-1);
        };
        QCOMPARE(read("90"), 90.0);
        QCOMPARE(read("1.5", 60), 90.0);
        QCOMPARE(read("0:01:30"), 90.0);
        QCOMPARE(read("26:00:05"), 26.0 * 3600 + 5);
        QCOMPARE(read("1.02:00:05"), 26.0 * 3600 + 5);
        QCOMPARE(read("12:30"), 12.5 * 3600);
        QCOMPARE(read("1:2:3:4"), -1.0);
        QCOMPARE(read("1:75"), -1.0);
        QCOMPARE(readElapsed("1,5", ',', 60).value_or(-1), 90.0);
    }

    void severalProbes()
    {
        ProbeLogMapping m = grate();
        m.probes.append({QStringLiteral("Meat"), QStringLiteral("meat")});
        const ProbeLog log = readLog("time,grate,meat\n2026-05-01T18:00:00Z,250,40.1\n"
                                     "2026-05-01T18:00:01Z,---,40.2\n"
                                     "2026-05-01T18:00:02Z,32,9999\n",
                                     m);
        QVERIFY2(log.ok, qPrintable(joined(log.refused.problems())));
        QCOMPARE(startOf(log), QStringLiteral("2026-05-01T18:00:00Z"));
        QCOMPARE(log.series.size(), 2);
        QCOMPARE(offsetsOf(log), (QVector<qint64>{0, 2}));
        QCOMPARE(log.series.at(0).points.first().temperature.base(), 121111); // 250 °F
        QCOMPARE(log.series.at(0).points.last().temperature.base(), 0);
        QCOMPARE(log.series.at(1).points.size(), 2);
        QCOMPARE(log.report.missing, 1);
        QCOMPARE(log.report.impossible, 1);
    }

    void duplicatesAndDisorder()
    {
        ProbeLogMapping m = grate();
        m.fahrenheit = false;
        const ProbeLog log = readLog("time,grate\n2026-05-01T18:00:10Z,100\n"
                                     "2026-05-01T18:00:05Z,90\n2026-05-01T18:00:10Z,101\n"
                                     "2026-05-01T18:00:20Z,110\n2026-05-01T18:00:20.500Z,111\n",
                                     m);
        QVERIFY(log.ok);
        QCOMPARE(offsetsOf(log), (QVector<qint64>{0, 5, 15}));
        QCOMPARE(log.series.at(0).points.at(1).temperature.base(), 101000);
        QCOMPARE(log.series.at(0).points.at(2).temperature.base(), 111000);
        QCOMPARE(log.report.duplicates, 2);
        QCOMPARE(log.report.outOfOrder, 1);
    }

    void elapsedWithAStart()
    {
        ProbeLogMapping m = grate();
        m.time = ProbeTime::Elapsed;
        QVERIFY(!readLog("time,grate\n0,250\n", m).ok); // without a start
        m.start = at("2026-05-01T18:00:00Z");
        m.elapsedScale = 60;
        const ProbeLog log = readLog("time,grate\n0.5,250\n1,251\n600,252\n", m);
        QVERIFY(log.ok);
        QCOMPARE(startOf(log), QStringLiteral("2026-05-01T18:00:30Z"));
        QCOMPARE(offsetsOf(log), (QVector<qint64>{0, 30, 600 * 60 - 30}));
    }

    // A log that knows only the time of day, across two midnights; started in a zone behind UTC,
    // where the day of the month differs from that in UTC.
    void midnight()
    {
        ProbeLogMapping m = grate();
        m.time = ProbeTime::TimeOfDay;
        m.timeFormat = QStringLiteral("H:m:s");
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("America/Chicago");
        m.start = at("2026-05-02T03:00:00Z"); // 22:00 of the day before
        const ProbeLog log =
            readLog("time,grate\n21:59:59,250\n23:59:59,250\n00:00:01,251\n12:00:00,251\n"
                    "23:59:58,250\n00:00:00,250\n",
                    m);
        QVERIFY(log.ok);
        QCOMPARE(startOf(log), QStringLiteral("2026-05-02T02:59:59Z"));
        QCOMPARE(offsetsOf(log), (QVector<qint64>{0, 7200, 7202, 50401, 93599, 93601}));
    }

    // Clocks in Chicago go back on 2026-11-01 at 02:00 and forward on 2026-03-08 at 02:00.
    void clocksGoBack()
    {
        ProbeLogMapping m = grate();
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("America/Chicago");
        QByteArray text = "time,grate\n";
        QByteArray backwards;
        const qint64 first = at("2026-11-01T05:30:00Z").seconds();
        const QTimeZone zone("America/Chicago");
        for (int i = 0; i < 3 * 3600; i += 10) {
            const QDateTime local = QDateTime::fromSecsSinceEpoch(first + i, zone);
            const QByteArray row =
                local.toString(QStringLiteral("yyyy-MM-dd HH:mm:ss")).toLatin1() + ",250\n";
            text += row;
            backwards = row + backwards;
        }
        const ProbeLog log = readLog(text, m);
        QVERIFY(log.ok);
        QCOMPARE(log.series.at(0).points.size(), 1080);
        QCOMPARE(log.start.seconds(), first);
        for (int i = 0; i < 1080; ++i)
            QCOMPARE(log.series.at(0).points.at(i).offset, i * 10);
        QCOMPARE(log.report.ambiguousTimes, 720);
        QCOMPARE(log.report.outOfOrder, 0);
        const ProbeLog newestFirst = readLog("time,grate\n" + backwards, m);
        QCOMPARE(newestFirst.start.seconds(), first);
        QCOMPARE(offsetsOf(newestFirst), offsetsOf(log));
    }

    void clocksGoForward()
    {
        ProbeLogMapping m = grate();
        m.zoneKind = TimeZoneKind::Zone;
        m.zone = QStringLiteral("America/Chicago");
        ProbeLog log = readLog("time,grate\n2026-03-08 01:59:59,250\n2026-03-08 03:00:00,250\n"
                               "2026-03-09 03:00:00,250\n",
                               m);
        QVERIFY(log.ok);
        QCOMPARE(offsetsOf(log), (QVector<qint64>{0, 1, 86401}));
        log = readLog("time,grate\n2026-03-08 01:59:59,250\n2026-03-08 02:30:00,250\n", m);
        QVERIFY(!log.ok);
        QCOMPARE(log.refused.list.first().line, 3);
        QVERIFY(log.refused.list.first().expected.contains(QStringLiteral("skip")));
    }

    void endInTheMiddleOfALine()
    {
        const QByteArray whole = "time,grate\n2026-05-01T18:00:00Z,250.5\n"
                                 "2026-05-01T18:00:01Z,251.5\n";
        // Wherever the last line is cut, what is read of it is whole or nothing.
        for (qsizetype length = whole.indexOf("250.5") + 6; length < whole.size(); ++length) {
            const ProbeLog log = readLog(whole.left(length), grate());
            QVERIFY2(log.ok, qPrintable(joined(log.refused.problems())));
            const bool all = length == whole.size() - 1; // only the line end is missing
            QCOMPARE(log.series.at(0).points.size(), all ? 2 : 1);
        }
        const ProbeLog filled = readLog(whole + QByteArray(4096, '\0'), grate());
        QVERIFY(filled.ok);
        QCOMPARE(filled.series.at(0).points.size(), 2);
        QVERIFY(filled.report.lines().join(QLatin1Char(' ')).contains(QStringLiteral("middle")));
    }

    void encodings()
    {
        const QString text = QStringLiteral("time;grate °C\r\n2026-05-01T18:00:00Z;121,5\r\n"
                                            "2026-05-01T18:00:01Z;-0,5\r\n");
        QVector<QByteArray> files{text.toUtf8(), "\xEF\xBB\xBF" + text.toUtf8()};
        QStringEncoder little(QStringEncoder::Utf16LE, QStringEncoder::Flag::WriteBom);
        QStringEncoder big(QStringEncoder::Utf16BE, QStringEncoder::Flag::WriteBom);
        files << QByteArray(little.encode(text)) << QByteArray(big.encode(text));
        for (const QByteArray &bytes : std::as_const(files)) {
            const ProbeLogGuess guess = guessProbeLog(bytes);
            QCOMPARE(guess.mapping.decimal, QLatin1Char(','));
            QVERIFY(!guess.mapping.fahrenheit);
            const ProbeLog log = readLog(bytes, guess.mapping);
            QVERIFY2(log.ok, qPrintable(joined(log.refused.problems())));
            QCOMPARE(log.series.at(0).probe, QStringLiteral("grate °C"));
            QCOMPARE(log.series.at(0).points.at(0).temperature.base(), 121500);
            QCOMPARE(log.series.at(0).points.at(1).temperature.base(), -500);
        }
    }

    // Chunks of every size give the same lines: CRLF and UTF-16 may be cut anywhere.
    void chunks()
    {
        const QString text = QStringLiteral("a,b\r\n1,2\r3,ü\n\n4,5");
        QStringEncoder encoder(QStringEncoder::Utf16LE, QStringEncoder::Flag::WriteBom);
        for (QByteArray bytes : {text.toUtf8(), QByteArray(encoder.encode(text))})
            for (qsizetype chunk = 1; chunk < 40; ++chunk) {
                QBuffer buffer(&bytes);
                buffer.open(QIODevice::ReadOnly);
                LineSource source(buffer, chunk);
                QStringList lines;
                std::string_view line;
                while (source.next(line)) {
                    lines << QString::fromUtf8(line.data(), static_cast<qsizetype>(line.size()));
                    QCOMPARE(source.lineEnded(), lines.size() < 5);
                }
                QCOMPARE(lines, QStringList({"a,b", "1,2", "3,ü", "", "4,5"}));
            }
    }

    void guesses_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<int>("time");
        QTest::addColumn<QString>("style");
        QTest::addColumn<int>("probes");
        QTest::addColumn<bool>("fahrenheit");
        const auto row = [](const char *name, const char *text, ProbeTime time, const char *style,
                            int probes, bool fahrenheit) {
            QTest::newRow(name) << QByteArray(text) << static_cast<int>(time)
                                << QString::fromLatin1(style) << probes << fahrenheit;
        };
        row("iso",
            "Timestamp,Grate,Meat\n2026-05-01T18:00:00Z,250,70\n2026-05-01T18:00:01Z,251,70\n",
            ProbeTime::Clock, "", 2, true);
        row("us", "Time,Note,P1 (C)\n5/1/2026 6:00:00 PM,lit,121\n5/1/2026 6:00:01 PM,,122\n",
            ProbeTime::Clock, "M/d/yyyy h:m:s AP", 1, false);
        row("two columns", "Date\tTime\tP1\n1.5.2026\t18:00\t121\n1.5.2026\t18:01\t122\n",
            ProbeTime::Clock, "d.M.yyyy H:m", 1, false);
        row("elapsed", "Elapsed min,P1,P2\n0,250,70\n1,251,---\n", ProbeTime::Elapsed, "", 2, true);
        row("time of day", "Clock,P1\n18:00:00,250\n18:00:01,251\n", ProbeTime::TimeOfDay, "H:m:s",
            1, true);
    }
    void guesses()
    {
        QFETCH(QByteArray, text);
        QFETCH(int, time);
        QFETCH(QString, style);
        QFETCH(int, probes);
        QFETCH(bool, fahrenheit);
        ProbeLogMapping m = guessProbeLog(text).mapping;
        QCOMPARE(static_cast<int>(m.time), time);
        QCOMPARE(m.timeFormat, style);
        QCOMPARE(m.probes.size(), probes);
        QCOMPARE(m.fahrenheit, fahrenheit);
        // Month and day could be the other way round, a unit another: it is said.
        QCOMPARE(!guessProbeLog(text).notes.isEmpty(), style.startsWith(QLatin1String("M/d")));
        QCOMPARE(guessProbeLog(text).unitNote.isEmpty(), text.contains("(C)"));
        m.start = at("2026-05-01T18:00:00Z");
        const ProbeLog log = readLog(text, m);
        QVERIFY2(log.ok, qPrintable(joined(log.refused.problems())));
        QCOMPARE(log.series.at(0).points.size(), 2);
        QCOMPARE(startOf(log), QStringLiteral("2026-05-01T18:00:00Z"));
    }

    void refusals()
    {
        ProbeLog log = readLog("time,grate\n2026-05-01T18:00:00Z,250\nnoon,251\n"
                               "2026-05-01T18:00:02Z,hot\n2026-05-01T18:00:03Z\n"
                               "2026-05-01T18:00:04Z,252\n",
                               grate());
        QVERIFY(!log.ok && log.series.isEmpty());
        QCOMPARE(log.refused.count, 3);
        QCOMPARE(log.refused.list.at(0).line, 3);
        QCOMPARE(log.refused.list.at(0).column, 1);
        QCOMPARE(log.refused.list.at(0).value, QStringLiteral("noon"));
        QCOMPARE(log.refused.list.at(1).column, 2);
        QCOMPARE(log.refused.list.at(2).line, 5);
        ProbeLogMapping loose = grate();
        loose.strict = false;
        log = readLog("time,grate\n2026-05-01T18:00:00Z,250\nnoon,251\n", loose);
        QVERIFY(log.ok);
        QCOMPARE(log.refused.count, 1);
        ProbeLogMapping other = grate();
        other.probes.first().column = QStringLiteral("none");
        QVERIFY(!readLog("time,grate\n2026-05-01T18:00:00Z,250\n", other).ok);
        QVERIFY(!readLog("", grate()).ok);
        QVERIFY(!readLog("\x1F\x8B\x08 \n", grate()).ok);
    }

    // A million rows pass by; the hour that is wanted stands in memory, no more.
    void onlyTheHoursOfTheCook()
    {
        ProbeLogMapping m = grate();
        m.time = ProbeTime::Elapsed;
        m.start = Instant::ofSeconds(0);
        m.from = Instant::ofSeconds(1000000);
        m.to = Instant::ofSeconds(1003600);
        EndlessLog endless(1100000);
        endless.open(QIODevice::ReadOnly);
        qint64 reports = 0;
        ProbeLog log = readProbeLog(endless, m, {}, [&reports](qint64, qint64) { ++reports; });
        QVERIFY2(log.ok, qPrintable(joined(log.refused.problems())));
        QCOMPARE(log.series.at(0).points.size(), 3601);
        QCOMPARE(log.start.seconds(), 1000000);
        QCOMPARE(log.report.outside, 1100000 - 3601);
        QVERIFY(reports > 100);
        m.from.reset();
        m.to.reset();
        EndlessLog whole(1100000);
        whole.open(QIODevice::ReadOnly);
        log = readProbeLog(whole, m);
        QVERIFY(!log.ok);
        QVERIFY(log.refused.list.first().expected.contains(QStringLiteral("1000000")));
    }

    void cancelLeavesNothing()
    {
        std::atomic_bool cancel{false};
        ProbeLogMapping m = grate();
        m.time = ProbeTime::Elapsed;
        m.start = Instant::ofSeconds(0);
        EndlessLog endless(900000);
        endless.open(QIODevice::ReadOnly);
        const ProbeLog log = readProbeLog(
            endless, m, {}, [&cancel](qint64 done, qint64) { cancel = done > 2000000; }, &cancel);
        QVERIFY(log.cancelled && !log.ok && log.series.isEmpty());
        QVERIFY(log.report.rowsRead < 900000);
    }
};

RICKYARD_TEST(TstProbeLog)
#include "tst_probe_log.moc"
