// The shape of the house, read from the sources themselves: who includes whom, where SQL and
// colours live, what the domain may know. Every rule is first proved able to find.
#include "tests/architecture/rules.h"
#include "tests/architecture/source_text.h"
#include "tests/support/registry.h"

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QTest>

using namespace rickyard::test;

namespace {

QString root()
{
    return QStringLiteral(RICKYARD_SOURCE_DIR);
}

// Paths relative to the root, sorted.
QStringList filesUnder(const QStringList &folders, const QStringList &patterns)
{
    QStringList files;
    for (const QString &folder : folders) {
        QDirIterator each(root() + QStringLiteral("/") + folder, patterns, QDir::Files,
                          QDirIterator::Subdirectories);
        while (each.hasNext())
            files += QDir(root()).relativeFilePath(each.next());
    }
    files.sort();
    return files;
}

QString read(const QString &path)
{
    QFile file(root() + QStringLiteral("/") + path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

Check checkNamed(const QString &name)
{
    for (const Rule &rule : sourceRules()) {
        if (name == QLatin1String(rule.name))
            return rule.check;
    }
    return nullptr;
}

struct Example {
    const char *rule;
    const char *path;
    const char *text;
};

// One line each, on its own line of a small file: each must be found.
const QVector<Example> &badExamples()
{
    static const QVector<Example> examples = {
        {"layers", "models/domain/a.h", "#include \"models/storage/b.h\""},
        {"layers", "models/domain/a.h", "#include \"app/b.h\""},
        {"layers", "models/storage/a.h", "#include \"models/exchange/b.h\""},
        {"layers", "models/storage/a.h", "#include \"models/workspace/b.h\""},
        {"layers", "models/exchange/a.h", "#include \"models/storage/b.h\""},
        {"layers", "models/workspace/a.h", "#include \"models/workspace/commands/b.h\""},
        {"layers", "models/workspace/a.h", "#include \"models/exchange/b.h\""},
        {"layers", "models/workspace/commands/a.h", "#  include \"models/items/b.h\""},
        {"layers", "models/items/a.h", "#include \"views/b.h\""},
        {"layers", "models/items/a.h", "#include \"models/exchange/b.h\""},
        {"layers", "views/a.h", "#include \"app/b.h\""},
        {"layers", "views/a.h", "#include <app/b.h>"},
        {"root-relative", "views/a.cpp", "#include \"a.h\""},
        {"root-relative", "views/a.cpp", "#include \"views/no/such/file.h\""},
        {"root-relative", "views/a.cpp", "#include \"tests/support/registry.h\""},
        {"pure domain", "models/domain/a.h", "#include <QObject>"},
        {"pure domain", "models/domain/a.h", "#include <QFile>"},
        {"pure domain", "models/domain/a.h", "#include <QtSql/QSqlQuery>"},
        {"pure domain", "models/domain/a.h", "#include <fstream>"},
        {"pure domain", "models/domain/a.cpp", "auto now = QDateTime::currentDateTimeUtc();"},
        {"pure domain", "models/domain/a.cpp", "auto now = std::chrono::system_clock::now();"},
        {"pure domain", "models/domain/a.cpp", "std::random_device chance;"},
        {"no widgets in models", "models/items/a.h", "#include <QWidget>"},
        {"no widgets in models", "models/items/a.h", "#include <QtCharts/QChartView>"},
        {"sql only in storage", "views/a.cpp", "f(\"SELECT id FROM lot\");"},
        {"sql only in storage", "views/a.cpp", "f(\"INSERT INTO lot VALUES (1)\");"},
        {"sql only in storage", "models/items/a.cpp", "f(\"UPDATE lot SET name = ?\");"},
        {"sql only in storage", "models/items/a.cpp", "f(\"delete from lot where id = 1\");"},
        {"sql only in storage", "models/workspace/a.cpp", "f(R\"(CREATE TABLE lot (id))\");"},
        {"sql only in storage", "app/a.cpp", "f(\"PRAGMA user_version\");"},
        {"sql only in storage", "app/a.cpp", "QSqlQuery query;"},
        {"colours only in theme", "views/a.cpp", "auto c = QColor(12, 34, 56);"},
        {"colours only in theme", "views/a.cpp", "const QColor c{0x123456};"},
        {"colours only in theme", "views/a.cpp", "const QColor c(\"tomato\");"},
        {"colours only in theme", "views/a.cpp", "painter.setPen(Qt::darkRed);"},
        {"colours only in theme", "app/a.cpp", "f(\"color: #1a2b3c\");"},
        {"colours only in theme", "app/a.cpp", "f(\"QLabel { color: red }\");"},
        {"colours only in theme", "models/items/a.cpp", "return qRgb(1, 2, 3);"},
        {"plain text", "views/a.cpp", "label->setTextFormat(Qt::RichText);"},
        {"plain text", "views/reports/a.cpp", "document.setHtml(name);"},
        {"no OpenGL", "views/a.cpp", "series->setUseOpenGL(true);"},
        {"no globals", "views/a.h", "    static Yard &instance();"},
        {"no globals", "views/a.cpp", "Yard::instance().close();"},
        {"no globals", "views/a.cpp", "    static int count = 0;"},
        {"no globals", "views/a.cpp", "static QMap<int, QString> cache;"},
        {"no globals", "views/a.cpp", "QString lastMessage;"},
        {"no globals", "views/a.cpp", "int count = 0;"},
    };
    return examples;
}

// What stands close to a rule and is allowed.
const QVector<Example> &goodExamples()
{
    static const QVector<Example> examples = {
        {"layers", "models/workspace/commands/a.h", "#include \"models/workspace/b.h\""},
        {"layers", "models/items/a.h", "#include \"models/workspace/commands/b.h\""},
        {"layers", "views/a.h", "#include \"models/exchange/b.h\""},
        {"layers", "models/domain/a.h", "// #include \"views/b.h\""},
        {"layers", "models/domain/a.h", "/*\n#include \"views/b.h\"\n*/"},
        {"root-relative", "views/a.cpp", "#include \"a.moc\""},
        {"pure domain", "models/domain/a.h", "#include <QString>\n#include <Eigen/QR>"},
        {"pure domain", "models/storage/a.h", "#include <QFile>"},
        {"pure domain", "models/domain/a.h", "f(\"QRandomGenerator\"); // system_clock::now"},
        {"no widgets in models", "views/a.h", "#include <QWidget>"},
        {"sql only in storage", "models/storage/a.cpp", "f(\"SELECT 1\");"},
        {"sql only in storage", "views/a.cpp", "f(\"Select the lot from the list\");"},
        {"sql only in storage", "views/a.cpp", "f(\"Update all, then set the hour\");"},
        {"colours only in theme", "views/theme/a.cpp", "auto c = QColor(12, 34, 56);"},
        {"colours only in theme", "views/a.cpp", "QColor c(theme.accent()); f(\"#%1\");"},
        {"plain text", "views/a.cpp", "label->setTextFormat(Qt::PlainText);"},
        {"plain text", "views/reports/a.cpp", "document.setHtml(name.toHtmlEscaped());"},
        {"no globals", "views/a.cpp",
         "static const QString kName;\nstatic void f();\n"
         "constexpr int kCount = 3;\nconst int kMost = 4;"},
        {"no globals", "views/a.cpp", "    auto *a = QCoreApplication::instance();"},
        {"no globals", "views/a.cpp",
         "    int count = 0;\nusing A = B;\nstruct C;\nint f();\n"
         "QString g(int a,\n          int b);"},
    };
    return examples;
}

void addExamples(const QVector<Example> &examples)
{
    QTest::addColumn<QString>("rule");
    QTest::addColumn<QString>("path");
    QTest::addColumn<QString>("text");
    int number = 0;
    for (const Example &e : examples)
        QTest::addRow("%02d %s", ++number, e.rule)
            << QString::fromUtf8(e.rule) << QString::fromUtf8(e.path) << QString::fromUtf8(e.text);
}

} // namespace

class TstIncludes : public QObject
{
    Q_OBJECT

private slots:
    void splitterSeparatesCodeFromTheRest()
    {
        const SourceText source =
            splitSource(QStringLiteral("int a = 1'000; // \"not this\"\nf(\"a \\\" // b\", "
                                       "'\"');\n/* x\n */ g(R\"-(y)z)-\");"));
        QCOMPARE(source.literals.size(), 2);
        QCOMPARE(source.literals.at(0).line, 2);
        QCOMPARE(source.literals.at(0).text, QStringLiteral("a \\\" // b"));
        QCOMPARE(source.literals.at(1).line, 4);
        QCOMPARE(source.literals.at(1).text, QStringLiteral("y)z"));
        QVERIFY(source.code.contains(QStringLiteral("int a = 1'000;")));
        QVERIFY(!source.code.contains(u'x'));
        QCOMPARE(source.code.count(u'\n'), 3);
    }

    void everyRuleHasAnExample()
    {
        for (const Rule &rule : sourceRules()) {
            const bool shown =
                std::any_of(badExamples().begin(), badExamples().end(), [&](const Example &e) {
                    return QLatin1String(e.rule) == QLatin1String(rule.name);
                });
            // The length rule needs a long text and has its own test below.
            QVERIFY2(shown || QLatin1String(rule.name) == QLatin1String("short enough"), rule.name);
        }
    }

    void ruleFinds_data() { addExamples(badExamples()); }
    void ruleFinds()
    {
        QFETCH(QString, rule);
        QFETCH(QString, path);
        QFETCH(QString, text);
        const Check check = checkNamed(rule);
        QVERIFY(check);
        const QString file = QStringLiteral("// A comment.\n\n%1\n").arg(text);
        const QStringList found = check(path, file);
        QVERIFY2(!found.isEmpty(), qPrintable(text));
        QVERIFY2(found.first().startsWith(QStringLiteral("3: ")), qPrintable(found.first()));
    }

    void ruleLeavesAlone_data() { addExamples(goodExamples()); }
    void ruleLeavesAlone()
    {
        QFETCH(QString, rule);
        QFETCH(QString, path);
        QFETCH(QString, text);
        const Check check = checkNamed(rule);
        QVERIFY(check);
        const QStringList found = check(path, text);
        QVERIFY2(found.isEmpty(), qPrintable(found.join(u'\n')));
    }

    void longFilesAreFound()
    {
        const Check check = checkNamed(QStringLiteral("short enough"));
        QVERIFY(check(QStringLiteral("views/a.cpp"), QString(600, u'\n')).isEmpty());
        QVERIFY(!check(QStringLiteral("views/a.cpp"), QString(601, u'\n')).isEmpty());
    }

    void machinePathsAreFound()
    {
        // Put together here, so that this file does not break the rule itself.
        const QString path = QStringLiteral("/%1/yard.db").arg(QStringLiteral("work"));
        QCOMPARE(machinePaths({}, QStringLiteral("see ") + path).size(), 1);
        QVERIFY(machinePaths({}, QStringLiteral("docs") + path).isEmpty());
    }

    void strangersAreFound()
    {
        QCOMPARE(strangersAtTheTop({QStringLiteral("app"), QStringLiteral(".ci"),
                                    QStringLiteral("build"), QStringLiteral("scripts")}),
                 QStringList{QStringLiteral("scripts")});
    }

    void file_data()
    {
        QTest::addColumn<QString>("path");
        const QStringList files =
            filesUnder({QStringLiteral("models"), QStringLiteral("views"), QStringLiteral("app")},
                       {QStringLiteral("*.h"), QStringLiteral("*.cpp")});
        QVERIFY2(files.size() > 20, "the sources were not found");
        for (const QString &file : files)
            QTest::newRow(qPrintable(file)) << file;
    }
    void file()
    {
        QFETCH(QString, path);
        const QString text = read(path);
        QVERIFY2(!text.isEmpty(), "empty or unreadable");
        QVERIFY2(!layerOf(path).isEmpty(), "outside every layer");
        QStringList found;
        for (const Rule &rule : sourceRules()) {
            const QStringList here = rule.check(path, text);
            for (const QString &what : here)
                found += QStringLiteral("%1:%2 [%3]").arg(path, what, QLatin1String(rule.name));
        }
        QVERIFY2(found.isEmpty(), qPrintable(found.join(u'\n')));
    }

    void nothingNamesAMachine()
    {
        const QStringList patterns = {
            QStringLiteral("*.h"),    QStringLiteral("*.cpp"), QStringLiteral("*.md"),
            QStringLiteral("*.txt"),  QStringLiteral("*.sql"), QStringLiteral("*.svg"),
            QStringLiteral("*.json"), QStringLiteral("*.ts"),  QStringLiteral("*.desktop"),
            QStringLiteral("run"),    QStringLiteral("*.sh"),  QStringLiteral("*.csv")};
        QStringList files =
            filesUnder({QStringLiteral("models"), QStringLiteral("views"), QStringLiteral("app"),
                        QStringLiteral("resources"), QStringLiteral("tests"),
                        QStringLiteral("docs"), QStringLiteral(".ci")},
                       patterns);
        files += {QStringLiteral("CMakeLists.txt"), QStringLiteral("README.md"),
                  QStringLiteral("DEVELOPERS.md")};
        QStringList found;
        for (const QString &file : files) {
            const QStringList here = machinePaths(file, read(file));
            for (const QString &what : here)
                found += QStringLiteral("%1:%2").arg(file, what);
        }
        QVERIFY2(found.isEmpty(), qPrintable(found.join(u'\n')));
    }

    // A source's own path is relative to the folder it was built in: what is opened by it is found
    // in that folder alone. Data lies under RICKYARD_TEST_DATA.
    void nothingIsOpenedByTheSourcesPath()
    {
        QStringList found;
        for (const QString &file : filesUnder({QStringLiteral("models"), QStringLiteral("views"),
                                               QStringLiteral("app"), QStringLiteral("tests")},
                                              {QStringLiteral("*.h"), QStringLiteral("*.cpp")})) {
            const QStringList here = ownPaths(file, read(file));
            for (const QString &what : here)
                found += QStringLiteral("%1:%2").arg(file, what);
        }
        QVERIFY2(found.isEmpty(), qPrintable(found.join(u'\n')));
        QVERIFY(!ownPaths({}, QStringLiteral("QFile f(__FILE__);")).isEmpty());
        QVERIFY(ownPaths({}, QStringLiteral("f(); // __FILE__")).isEmpty());
    }

    void theTopHoldsNothingElse()
    {
        const QStringList found =
            strangersAtTheTop(QDir(root()).entryList(QDir::AllEntries | QDir::NoDotAndDotDot));
        QVERIFY2(found.isEmpty(), qPrintable(found.join(u' ')));
    }
};

RICKYARD_TEST(TstIncludes)
#include "tst_includes.moc"
