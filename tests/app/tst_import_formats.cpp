// The import verb on weather files of known formats and on probe logs, as a script sees it.
#include "app/cli/command_line.h"
#include "models/domain/fire/trace_codec.h"
#include "models/workspace/workspace.h"
#include "tests/app/demo_yard.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QTextStream>
#include <QTimeZone>

namespace rickyard {

using namespace domain;

class TstImportFormats : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void initTestCase()
    {
        m_yard = m_folder.filePath(QStringLiteral("yard.rickyard"));
        QVERIFY(app::makeDemoFile(m_yard, 7, test::demoNow()).ok());
        for (const Cook &cook : books().cooks)
            if (cook.fireOut)
                m_cook = cook;
        QVERIFY(m_cook.id > 0);
        m_traces = books().traces.size();
    }

    void weatherOfEachFormat_data()
    {
        QTest::addColumn<QString>("file");
        QTest::addColumn<QStringList>("options");
        QTest::addColumn<QString>("said");
        QTest::addColumn<int>("records");
        QTest::newRow("metar") << QStringLiteral("metar-examples.txt")
                               << QStringList{QStringLiteral("--about"),
                                              QStringLiteral("2026-01-20")}
                               << QStringLiteral("This is a METAR file: 8 reports.") << 8;
        QTest::newRow("isd") << QStringLiteral("isd-lite-invented.txt") << QStringList{}
                             << QStringLiteral("an ISD-Lite file: 6 hours") << 5;
        QTest::newRow("lcd") << QStringLiteral("lcd-invented.csv")
                             << QStringList{QStringLiteral("--zone"),
                                            QStringLiteral("America/New_York")}
                             << QStringLiteral("standard time of America/New_York") << 4;
        QTest::newRow("epw") << QStringLiteral("okc-tmy3-excerpt.epw") << QStringList{}
                             << QStringLiteral("climate normals") << 6;
    }
    void weatherOfEachFormat()
    {
        QFETCH(QString, file);
        QFETCH(QStringList, options);
        QFETCH(QString, said);
        QFETCH(int, records);
        const qsizetype before = books().weather.size();
        const QStringList call =
            QStringList{QStringLiteral("import"), QStringLiteral("weather"),
                        QString(QStringLiteral(RICKYARD_TEST_DATA "/weather/") + file)} +
            options;
        const Ran ran = run(call);
        QVERIFY2(ran.code == 0, qPrintable(ran.err));
        QVERIFY2(ran.out.contains(said), qPrintable(ran.out));
        QCOMPARE(books().weather.size(), before + records);
        const Ran again = run(call);
        QVERIFY2(again.out.contains(QStringLiteral("0 added, 0 changed")), qPrintable(again.out));
    }

    // The years of the excerpt as they were lie before any yard's books.
    void aRealYearKeepsItsYears()
    {
        const Ran ran = run({QStringLiteral("import"), QStringLiteral("weather"),
                             QStringLiteral(RICKYARD_TEST_DATA "/weather/okc-tmy3-excerpt.epw"),
                             QStringLiteral("--real-year")});
        QVERIFY(ran.code == 1);
        QVERIFY2(ran.out.contains(QStringLiteral("From 1982-01-01T07:00:00Z")),
                 qPrintable(ran.out));
        QVERIFY2(ran.err.contains(QStringLiteral("1990")), qPrintable(ran.err));
    }

    void refusesWhatItCannotPlace()
    {
        const QString metar = QStringLiteral(RICKYARD_TEST_DATA "/weather/metar-examples.txt");
        const qsizetype before = books().weather.size();
        const Ran ran = run({QStringLiteral("import"), QStringLiteral("weather"), metar});
        QVERIFY(ran.code == 1);
        QVERIFY2(ran.out.contains(QStringLiteral("--about")), qPrintable(ran.out));
        QVERIFY2(ran.err.contains(QStringLiteral("line 2")), qPrintable(ran.err));
        for (const QStringList &options :
             {QStringList{QStringLiteral("--about"), QStringLiteral("soon")},
              QStringList{QStringLiteral("--format"), QStringLiteral("grib")},
              QStringList{QStringLiteral("--format"), QStringLiteral("epw")}})
            QVERIFY(run(QStringList{QStringLiteral("import"), QStringLiteral("weather"), metar} +
                        options)
                        .code == 1);
        QCOMPARE(books().weather.size(), before);
    }

    void probeLog()
    {
        const QTimeZone zone(books().yard().timeZone.toUtf8());
        QByteArray text = "Time,Grate F,Meat F\n";
        for (int i = -20000; i < 4000; i += 10)
            text += QDateTime::fromSecsSinceEpoch(m_cook.lit.seconds() + i, zone)
                        .toString(QStringLiteral("M/d/yyyy h:mm:ss AP"))
                        .toUtf8() +
                    ",25" + QByteArray::number(std::abs(i / 10) % 10) + ",70\n";
        const QString file = write(QStringLiteral("log.csv"), text);
        const QStringList call = {QStringLiteral("import"),
                                  QStringLiteral("trace"),
                                  file,
                                  QStringLiteral("--cook"),
                                  QString::number(m_cook.id),
                                  QStringLiteral("--probe"),
                                  QStringLiteral("Grate north=Grate F")};
        const Ran ran = run(call);
        QVERIFY2(ran.code == 0, qPrintable(ran.err));
        QVERIFY2(ran.out.contains(QStringLiteral("1 added")), qPrintable(ran.out));
        QVERIFY2(ran.out.contains(QStringLiteral("outside the hours")), qPrintable(ran.out));
        const Books after = books();
        QCOMPARE(after.traces.size(), m_traces + 1);
        const Trace trace = after.traces.last();
        QCOMPARE(trace.cook, m_cook.id);
        QCOMPARE(trace.probe, QStringLiteral("Grate north"));
        // Two hours before lighting, to the end of the log.
        QCOMPARE(trace.start.seconds(), m_cook.lit.seconds() - 7200);
        const auto points = decodeTrace(trace.block);
        QVERIFY(points.ok());
        QCOMPARE(points.value().size(), 720 + 400);
        QCOMPARE(trace.points, 720 + 400);
        QCOMPARE(points.value().at(720).temperature, temperatureFromFahrenheit(250));
        const Ran again = run(call);
        QVERIFY2(again.out.contains(QStringLiteral("0 added, 0 changed, 1 the same")),
                 qPrintable(again.out));
        // A longer log of the same probe joins the trace.
        text += QDateTime::fromSecsSinceEpoch(m_cook.lit.seconds() + 4000, zone)
                    .toString(QStringLiteral("M/d/yyyy h:mm:ss AP"))
                    .toUtf8() +
                ",260,70\n";
        write(QStringLiteral("log.csv"), text);
        const Ran longer = run(call);
        QVERIFY2(longer.out.contains(QStringLiteral("0 added, 1 changed")), qPrintable(longer.out));
        QCOMPARE(books().traces.size(), m_traces + 1);
        QCOMPARE(books().traces.last().points, 720 + 401);
    }

    void probeLogRefusals()
    {
        const qsizetype before = books().traces.size();
        const QString file =
            write(QStringLiteral("bad.csv"), "Elapsed s,A,B\n0,250,70\n1,hot,70\n");
        const auto call = [&](const QStringList &options) {
            return run(QStringList{QStringLiteral("import"), QStringLiteral("trace"), file} +
                       options);
        };
        const QString id = QString::number(m_cook.id);
        Ran ran = call({});
        QVERIFY(ran.code == 1 && ran.err.contains(QStringLiteral("--cook")));
        ran = call({QStringLiteral("--cook"), QStringLiteral("no such cook")});
        QVERIFY(ran.code == 1 && ran.err.contains(QStringLiteral("no such cook")));
        ran = call({QStringLiteral("--cook"), id, QStringLiteral("--probe"), QStringLiteral("A")});
        QVERIFY(ran.code == 1);
        QVERIFY2(ran.err.contains(QStringLiteral("line 3")), qPrintable(ran.err));
        QVERIFY2(ran.err.contains(QStringLiteral("hot")), qPrintable(ran.err));
        ran =
            call({QStringLiteral("--cook"), id, QStringLiteral("--probe"), QStringLiteral("C=D")});
        QVERIFY(ran.code == 1 && ran.err.contains(QStringLiteral("columns are")));
        ran = call({QStringLiteral("--cook"), id, QStringLiteral("--probe"), QStringLiteral("B"),
                    QStringLiteral("--unit"), QStringLiteral("degK")});
        QVERIFY(ran.code == 1);
        QCOMPARE(books().traces.size(), before);
        ran = call({QStringLiteral("--cook"), id, QStringLiteral("--probe"), QStringLiteral("B"),
                    QStringLiteral("--unit"), QStringLiteral("degF")});
        QVERIFY2(ran.code == 0, qPrintable(ran.err));
        QVERIFY2(ran.out.contains(QStringLiteral("begin when the cook was lit")),
                 qPrintable(ran.out));
    }

private:
    struct Ran {
        int code = -1;
        QString out;
        QString err;
    };
    Ran run(const QStringList &arguments) const
    {
        Ran ran;
        QTextStream out(&ran.out);
        QTextStream err(&ran.err);
        ran.code = app::runCommandLine(
                       QStringList{QStringLiteral("rickyard"), QStringLiteral("--yard"), m_yard} +
                           arguments,
                       out, err)
                       .value_or(-1);
        out.flush();
        err.flush();
        return ran;
    }
    QString write(const QString &name, const QByteArray &content) const
    {
        const QString path = m_folder.filePath(name);
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || file.write(content) != content.size())
            qWarning("could not write %s", qPrintable(path));
        return path;
    }
    Books books() const
    {
        auto yard = workspace::Workspace::open(m_yard, QDateTime::currentDateTimeUtc(),
                                               storage::OpenMode::ReadOnly);
        return yard ? yard.value()->books() : Books();
    }

    QTemporaryDir m_folder;
    QString m_yard;
    Cook m_cook;
    qsizetype m_traces = 0;
};

RICKYARD_TEST(TstImportFormats)

} // namespace rickyard

#include "tst_import_formats.moc"
