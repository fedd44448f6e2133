// The command line as a script sees it: output, messages and exit codes.
// To renew the golden files after a wanted change (of the demo yard too): RICKYARD_RENEW_GOLDEN=1.
#include "app/cli/command_line.h"
#include "tests/app/demo_yard.h"
#include "tests/support/registry.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>

namespace rickyard {

using namespace domain;

class TstCommandLine : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void opensTheWindowWithoutAVerb();
    void refusesWhatItDoesNotKnow_data();
    void refusesWhatItDoesNotKnow();
    void saysWhenThereIsNoYard();
    void refusesAForeignFile();
    void answersInWordsAndJson();
    void everyReportSpeaks_data();
    void everyReportSpeaks();
    void reorderIsGolden();
    void reorderTakesTheAcceptedRisk();
    void upkeepSaysRangesBlocksAndAsh();
    void readsDaysAndTimes();
    void exportedTablesComeBackUnchanged();
    void wholeYardMovesToANewFile();
    void badTableNamesLineAndColumn();
    void importsForeignWeatherOnce();
    void badWeatherChangesNothing();
    void backsUpAndRestores();
    void demoRefusesAFileThatIsThere();
    void checkFindsNothingWrong();
    void programItselfNeedsNoDisplay();

private:
    struct Ran {
        std::optional<int> code;
        QString out;
        QString err;
    };
    Ran run(const QStringList &arguments, const QString &yard = {}) const;
    QString write(const QString &name, const QByteArray &content) const;
    Books booksOf(const QString &path) const;

    QTemporaryDir m_folder;
    QString m_yard;
    QStringList m_then = {QStringLiteral("--as-of"), QStringLiteral("2026-11-25T14:20Z")};
};

TstCommandLine::Ran TstCommandLine::run(const QStringList &arguments, const QString &yard) const
{
    Ran ran;
    QTextStream out(&ran.out);
    QTextStream err(&ran.err);
    QStringList all = {QStringLiteral("rickyard"), QStringLiteral("--yard"),
                       yard.isEmpty() ? m_yard : yard};
    ran.code = app::runCommandLine(all + arguments, out, err);
    out.flush();
    err.flush();
    return ran;
}

QString TstCommandLine::write(const QString &name, const QByteArray &content) const
{
    const QString path = m_folder.filePath(name);
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(content) != content.size())
        qWarning("could not write %s", qPrintable(path));
    return path;
}

Books TstCommandLine::booksOf(const QString &path) const
{
    auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc(),
                                           storage::OpenMode::ReadOnly);
    return yard ? yard.value()->books() : Books();
}

void TstCommandLine::initTestCase()
{
    m_yard = m_folder.filePath(QStringLiteral("demo.rickyard"));
    const Ran ran = run(QStringList{QStringLiteral("demo"), m_yard} + m_then);
    QVERIFY2(ran.code == 0, qPrintable(ran.err));
    QVERIFY(ran.out.contains(QStringLiteral("invented")));
}

void TstCommandLine::opensTheWindowWithoutAVerb()
{
    QCOMPARE(run({}).code, std::nullopt);
    QCOMPARE(run({QStringLiteral("-platform"), QStringLiteral("offscreen")}).code, std::nullopt);
    const app::Launch launch =
        app::parseLaunch({QStringLiteral("rickyard"), QStringLiteral("--demo")});
    QVERIFY(launch.demo && launch.verb.isEmpty());
    QVERIFY(launch.yardPath.endsWith(QStringLiteral("demo.rickyard")));
    QCOMPARE(app::parseLaunch({QStringLiteral("rickyard"), QStringLiteral("--yard=a b.rickyard")})
                 .yardPath,
             QStringLiteral("a b.rickyard"));
}

void TstCommandLine::refusesWhatItDoesNotKnow_data()
{
    QTest::addColumn<QStringList>("arguments");
    QTest::newRow("verb") << QStringList{QStringLiteral("dance")};
    QTest::newRow("option") << QStringList{QStringLiteral("stock"), QStringLiteral("--json")};
    QTest::newRow("window option") << QStringList{QStringLiteral("--jsno")};
    QTest::newRow("too many") << QStringList{QStringLiteral("stock"), QStringLiteral("x")};
    QTest::newRow("too few") << QStringList{QStringLiteral("import"), QStringLiteral("lot")};
    QTest::newRow("no value") << QStringList{QStringLiteral("answers"), QStringLiteral("--as-of")};
    QTest::newRow("no date") << QStringList{QStringLiteral("answers"), QStringLiteral("--as-of"),
                                            QStringLiteral("soon")};
    QTest::newRow("table") << QStringList{QStringLiteral("export"), QStringLiteral("lots")};
    QTest::newRow("kind") << QStringList{QStringLiteral("import"), QStringLiteral("lots"),
                                         QStringLiteral("x.csv")};
    for (const char *risk : {"much", "0", "100", "-5", ""})
        QTest::addRow("risk %s", risk) << QStringList{
            QStringLiteral("reorder"), QStringLiteral("--accept"), QString::fromUtf8(risk)};
    QTest::newRow("seed") << QStringList{QStringLiteral("demo"), QStringLiteral("new.rickyard"),
                                         QStringLiteral("--seed"), QStringLiteral("x")};
}

void TstCommandLine::refusesWhatItDoesNotKnow()
{
    QFETCH(QStringList, arguments);
    const Ran ran = run(arguments);
    QVERIFY(ran.code == 2);
    QVERIFY(!ran.err.isEmpty());
    QVERIFY(ran.out.isEmpty());
}

void TstCommandLine::saysWhenThereIsNoYard()
{
    const QString nowhere = m_folder.filePath(QStringLiteral("nowhere.rickyard"));
    for (const char *verb : {"answers", "stock", "check", "backup"}) {
        const Ran ran = run({QString::fromUtf8(verb)}, nowhere);
        QVERIFY(ran.code == 3);
        QVERIFY(ran.err.contains(QStringLiteral("nowhere.rickyard")));
        QVERIFY(!QFile::exists(nowhere));
    }
}

void TstCommandLine::refusesAForeignFile()
{
    const QString path = write(QStringLiteral("letter.txt"), "Dear crew, the oak is late.\n");
    QVERIFY(run({QStringLiteral("answers")}, path).code == 3);
    const QString table = write(QStringLiteral("pit.csv"), "id,name\r\n");
    QVERIFY(run({QStringLiteral("import"), QStringLiteral("pit"), table}, path).code == 3);
    QFile file(path);
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(file.readAll(), QByteArray("Dear crew, the oak is late.\n"));
}

void TstCommandLine::answersInWordsAndJson()
{
    const Ran words = run(QStringList{QStringLiteral("answers")} + m_then);
    QVERIFY2(words.code == 0, qPrintable(words.err));
    for (const char *part : {"Wood (act)", "Fire (act)", "Upkeep (act)", "Deacon", "Invented data"})
        QVERIFY2(words.out.contains(QString::fromUtf8(part)), part);
    const Ran json = run(QStringList{QStringLiteral("answers"), QStringLiteral("--json")} + m_then);
    QVERIFY(json.code == 0);
    QJsonParseError error{};
    const QJsonObject object = QJsonDocument::fromJson(json.out.toUtf8(), &error).object();
    QCOMPARE(error.error, QJsonParseError::NoError);
    for (const char *key : {"wood", "fuel", "upkeep"})
        QVERIFY2(object.value(QLatin1String(key)).isObject(), key);
    // The same books and the same moment give the same bytes.
    QCOMPARE(run(QStringList{QStringLiteral("answers"), QStringLiteral("--json")} + m_then).out,
             json.out);
}

void TstCommandLine::everyReportSpeaks_data()
{
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("part");
    const auto row = [](const char *verb, const char *option, const char *part) {
        QStringList arguments{QString::fromUtf8(verb)};
        if (*option != '\0')
            arguments << QString::fromUtf8(option);
        QTest::addRow("%s %s", verb, option) << arguments << QString::fromUtf8(part);
    };
    row("fuel", "", "Expected");
    row("fuel", "--csv", "\r\n");
    row("fuel", "--json", "{");
    row("stock", "", "too wet");
    row("moisture", "", "% dry basis");
    row("reorder", "", "If nothing more is ordered");
    row("reorder", "--json", "{");
    row("upkeep", "", "overdue");
    row("upkeep", "--json", "{");
}

void TstCommandLine::everyReportSpeaks()
{
    QFETCH(QStringList, arguments);
    QFETCH(QString, part);
    const Ran ran = run(arguments + m_then);
    QVERIFY2(ran.code == 0, qPrintable(ran.err));
    QVERIFY2(ran.out.contains(part), qPrintable(ran.out.left(2000)));
    if (part == QLatin1String("{"))
        QVERIFY(QJsonDocument::fromJson(ran.out.toUtf8()).isObject());
    QVERIFY(run({QStringLiteral("help")}).out.contains(arguments.first()));
}

void TstCommandLine::reorderIsGolden()
{
    const Ran ran = run(QStringList{QStringLiteral("reorder")} + m_then);
    QVERIFY2(ran.code == 0, qPrintable(ran.err));
    QFile file(QStringLiteral(RICKYARD_TEST_DATA "/cli/reorder.txt"));
    if (qEnvironmentVariableIsSet("RICKYARD_RENEW_GOLDEN") && file.open(QIODevice::WriteOnly)) {
        file.write(ran.out.toUtf8());
        file.close();
    }
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(ran.out, QString::fromUtf8(file.readAll()));
}

void TstCommandLine::reorderTakesTheAcceptedRisk()
{
    const auto at = [this](const QStringList &more) {
        const Ran ran =
            run(QStringList{QStringLiteral("reorder"), QStringLiteral("--json")} + more + m_then);
        return QJsonDocument::fromJson(ran.out.toUtf8()).object();
    };
    const QString option = QStringLiteral("--accept");
    const QJsonObject usual = at({});
    QCOMPARE(usual.value(QLatin1String("accepted_risk")).toDouble(), 0.05);
    const QJsonObject bold = at({option, QStringLiteral("30")});
    QCOMPARE(bold.value(QLatin1String("accepted_risk")).toDouble(), 0.3);
    QCOMPARE(at({option, QStringLiteral("2.5%")}).value(QLatin1String("accepted_risk")).toDouble(),
             0.025);
    // The chances are of the books and not of what is accepted.
    QCOMPARE(bold.value(QLatin1String("risks")), usual.value(QLatin1String("risks")));
    for (const char *key : {"risks", "orders", "course", "course_with_order"})
        QVERIFY2(!usual.value(QLatin1String(key)).toArray().isEmpty(), key);
}

// The demo's story: the large pit's grease drain was left after its last cook, and a pit is towed
// in December.
void TstCommandLine::upkeepSaysRangesBlocksAndAsh()
{
    const Ran words = run(QStringList{QStringLiteral("upkeep")} + m_then);
    QVERIFY2(words.code == 0, qPrintable(words.err));
    for (const char *part :
         {"10 to 90 % by", "What stands in the way", "Lighting Barge now",
          "Grease drain and bucket: 1 cook since the last time, limit 1", "Towing to",
          "not to be tipped before", "96 h at the least", "lb of ash from", "When it can be done",
          "Local code and the authority having jurisdiction decide"})
        QVERIFY2(words.out.contains(QString::fromUtf8(part)),
                 qPrintable(QString::fromUtf8(part) + words.out.left(9000)));
    QVERIFY(!words.out.contains(QStringLiteral(" safe"), Qt::CaseInsensitive));
    const QStringList json{QStringLiteral("upkeep"), QStringLiteral("--json")};
    const Ran ran = run(json + m_then);
    const QJsonObject report = QJsonDocument::fromJson(ran.out.toUtf8()).object();
    for (const char *key : {"headline", "tasks", "blocked", "ash", "placements", "unplaced"})
        QVERIFY2(report.contains(QLatin1String(key)), key);
    QCOMPARE(run(json + m_then).out, ran.out);
    // Asked as of the day before the large pit's last cook: another answer, as it was then.
    QVERIFY(run(json + QStringList{QStringLiteral("--as-of"), QStringLiteral("2026-11-06")}).out !=
            ran.out);
}

void TstCommandLine::readsDaysAndTimes()
{
    // A day alone is its end in the yard's zone: Chicago is six hours behind UTC in November.
    const auto asOf = [this](const char *date) {
        return run({QStringLiteral("answers"), QStringLiteral("--json"), QStringLiteral("--as-of"),
                    QString::fromUtf8(date)})
            .out;
    };
    QCOMPARE(asOf("2026-11-24"), asOf("2026-11-25T05:59:59Z"));
    QCOMPARE(asOf("2026-11-24T18:00"), asOf("2026-11-25T00:00Z"));
    QVERIFY(asOf("2026-11-24") != asOf("2026-11-24T12:00Z"));
}

void TstCommandLine::exportedTablesComeBackUnchanged()
{
    const Books before = booksOf(m_yard);
    for (TableId table : {TableId::Lot, TableId::Feed, TableId::Movement, TableId::Weather}) {
        const QString key = specOf(table).key;
        const QString file = m_folder.filePath(QString(key + QStringLiteral(".csv")));
        QVERIFY(run({QStringLiteral("export"), key, file}).code == 0);
        QVERIFY(run({QStringLiteral("export"), key, file}).code == 1); // it is there
        const Ran ran = run({QStringLiteral("import"), key, file});
        QVERIFY2(ran.code == 0, qPrintable(ran.err));
        QVERIFY2(ran.out.contains(QStringLiteral("0 added, 0 changed")), qPrintable(ran.out));
    }
    const Books after = booksOf(m_yard);
    QCOMPARE(after.movements.size(), before.movements.size());
    QCOMPARE(after.weather.size(), before.weather.size());
}

void TstCommandLine::wholeYardMovesToANewFile()
{
    const QString tables = m_folder.filePath(QStringLiteral("all tables"));
    QVERIFY(run({QStringLiteral("export"), QStringLiteral("all"), tables}).code == 0);
    const QString copy = m_folder.filePath(QStringLiteral("copy.rickyard"));
    const Ran ran = run({QStringLiteral("import"), QStringLiteral("all"), tables}, copy);
    QVERIFY2(ran.code == 0, qPrintable(ran.err));
    const Books original = booksOf(m_yard);
    const Books moved = booksOf(copy);
    for (TableId table : tablesInOrder()) {
        QCOMPARE(idsOf(moved, table), idsOf(original, table));
        for (RecordId id : idsOf(original, table))
            QVERIFY2(rowOf(moved, table, id) == rowOf(original, table, id),
                     qPrintable(specOf(table).key));
    }
}

void TstCommandLine::badTableNamesLineAndColumn()
{
    const QString yard = m_folder.filePath(QStringLiteral("small.rickyard"));
    const QString good =
        write(QStringLiteral("pits.csv"), "name,diameter [in],length [in],shelter\r\n"
                                          "One,24,60,half\r\nTwo,30,80,half\r\n");
    const Ran first = run({QStringLiteral("import"), QStringLiteral("pit"), good}, yard);
    QVERIFY2(first.code == 0, qPrintable(first.err));
    QCOMPARE(booksOf(yard).pits.size(), 2);
    // Without ids, the same rows are the same pits.
    const Ran again = run({QStringLiteral("import"), QStringLiteral("pit"), good}, yard);
    QVERIFY2(again.out.contains(QStringLiteral("0 added, 0 changed, 2 the same")),
             qPrintable(again.out + again.err));
    const QString bad =
        write(QStringLiteral("bad.csv"), "name,diameter [in],length [in],shelter\r\n"
                                         "Three,24,60,half\r\nFour,-3,80,half\r\n");
    const Ran refused = run({QStringLiteral("import"), QStringLiteral("pit"), bad}, yard);
    QVERIFY(refused.code == 1);
    for (const char *part : {"bad.csv", "line 3", "column 2", "-3", "was imported"})
        QVERIFY2(refused.err.contains(QString::fromUtf8(part)), qPrintable(refused.err));
    QCOMPARE(booksOf(yard).pits.size(), 2);
    // A rule between records names its place too: nothing burns from a pit that is not there.
    const QString cooks = write(QStringLiteral("cooks.csv"),
                                "pit,lit,fire_out,start,measured_by\r\n"
                                "1,2026-05-01T10:00:00Z,2026-05-01T09:00:00Z,cold,tally\r\n");
    const Ran early = run({QStringLiteral("import"), QStringLiteral("cook"), cooks}, yard);
    QVERIFY(early.code == 1);
    for (const char *part : {"line 2", "column 3", "cannot be before the lighting"})
        QVERIFY2(early.err.contains(QString::fromUtf8(part)), qPrintable(early.err));
    QCOMPARE(booksOf(yard).cooks.size(), 0);
}

void TstCommandLine::importsForeignWeatherOnce()
{
    const QString yard = m_folder.filePath(QStringLiteral("weather.rickyard"));
    const QString file = write(QStringLiteral("station.csv"),
                               "valid,tmpf,dwpf,sknt\n2026-01-05 00:00,41.0,30.2,8\n"
                               "2026-01-05 01:00,40.1,30.0,M\n2026-01-05 02:00,39.9,29.8,6\n");
    const QStringList call = {
        QStringLiteral("import"),    QStringLiteral("weather"), file,
        QStringLiteral("--zone"),    QStringLiteral("UTC"),     QStringLiteral("--place"),
        QStringLiteral("Test field")};
    const Ran ran = run(call, yard);
    QVERIFY2(ran.code == 0, qPrintable(ran.err));
    QVERIFY2(ran.out.contains(QStringLiteral("3 added")), qPrintable(ran.out));
    QVERIFY2(ran.out.contains(QStringLiteral("temperature from \"tmpf\" in degF")),
             qPrintable(ran.out));
    const Books books = booksOf(yard);
    QCOMPARE(books.weather.size(), 3);
    QCOMPARE(books.weather.first().temperature, temperatureFromFahrenheit(41.0));
    QCOMPARE(books.weather.first().place, QStringLiteral("Test field"));
    const Ran again = run(call, yard);
    QVERIFY2(again.out.contains(QStringLiteral("0 added, 0 changed, 3 the same")),
             qPrintable(again.out));
}

void TstCommandLine::badWeatherChangesNothing()
{
    const QString yard = m_folder.filePath(QStringLiteral("nothing.rickyard"));
    const QString file =
        write(QStringLiteral("broken.csv"), "valid,tmpf,dwpf\n2026-01-05 00:00,41.0,30.2\n"
                                            "2026-01-05 01:00,warm,30.0\n");
    const Ran ran = run({QStringLiteral("import"), QStringLiteral("weather"), file}, yard);
    QVERIFY(ran.code == 1);
    for (const char *part : {"broken.csv", "line 3", "column 2", "warm"})
        QVERIFY2(ran.err.contains(QString::fromUtf8(part)), qPrintable(ran.err));
    QVERIFY(!QFile::exists(yard));
    const QString profile = write(QStringLiteral("profile.json"), "{ not json");
    QVERIFY(run({QStringLiteral("import"), QStringLiteral("weather"), file,
                 QStringLiteral("--profile"), profile},
                yard)
                .code == 1);
}

void TstCommandLine::backsUpAndRestores()
{
    const QString yard = m_folder.filePath(QStringLiteral("kept.rickyard"));
    QVERIFY(QFile::copy(m_yard, yard));
    const QString copy = m_folder.filePath(QStringLiteral("copy of kept.rickyard"));
    QVERIFY(run({QStringLiteral("backup"), copy}, yard).code == 0);
    QVERIFY(run({QStringLiteral("backup"), copy}, yard).code == 1); // it is there
    QVERIFY(run({QStringLiteral("backup")}, yard).code == 0);
    const QString pits =
        write(QStringLiteral("more.csv"), "name,diameter [in],length [in],shelter\n"
                                          "Extra,24,60,half\n");
    QVERIFY(run({QStringLiteral("import"), QStringLiteral("pit"), pits}, yard).code == 0);
    QCOMPARE(booksOf(yard).pits.size(), 4);
    const Ran restored = run({QStringLiteral("restore"), copy}, yard);
    QVERIFY2(restored.code == 0, qPrintable(restored.err));
    QCOMPARE(booksOf(yard).pits.size(), 3);
    const QString torn = write(QStringLiteral("torn.rickyard"), "SQLite format 3");
    QVERIFY(run({QStringLiteral("restore"), torn}, yard).code == 1);
    QCOMPARE(booksOf(yard).pits.size(), 3);
}

void TstCommandLine::demoRefusesAFileThatIsThere()
{
    const Ran ran = run({QStringLiteral("demo"), m_yard});
    QVERIFY(ran.code == 1);
    QVERIFY(ran.err.contains(QStringLiteral("exists already")));
}

void TstCommandLine::checkFindsNothingWrong()
{
    const Ran ran = run({QStringLiteral("check")});
    QVERIFY2(ran.code == 0, qPrintable(ran.err.left(2000)));
    QVERIFY(ran.out.contains(QStringLiteral("whole")));
}

void TstCommandLine::programItselfNeedsNoDisplay()
{
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char *name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
        environment.remove(QString::fromUtf8(name));
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(RICKYARD_BINARY),
                  {QStringLiteral("--yard"), m_yard, QStringLiteral("stock")});
    QVERIFY(program.waitForFinished(30000));
    QCOMPARE(program.exitCode(), 0);
    QVERIFY(program.readAllStandardOutput().contains("Dry enough to burn"));
    program.start(QStringLiteral(RICKYARD_BINARY), {QStringLiteral("dance")});
    QVERIFY(program.waitForFinished(30000));
    QCOMPARE(program.exitCode(), 2);
}

RICKYARD_TEST(TstCommandLine)

} // namespace rickyard

#include "tst_command_line.moc"
