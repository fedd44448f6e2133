// The wish: a log of 1,000,000 rows (a time and two probes) imported into a yard at least as fast
// as the sqlite3 shell reads the same file into a bare table. Both are timed from an open file to
// a closed database, one after the other.
#include "app/cli/command_line.h"
#include "app/demo/demo.h"
#include "models/workspace/commands/verbs.h"

#include <QDateTime>
#include <QElapsedTimer>
#include <QFile>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTextStream>

#include <cmath>
#include <cstdio>

using namespace rickyard;
using namespace rickyard::domain;

namespace {

constexpr int kRows = 1000000;
constexpr qint64 kLit = 1790000000;

bool writeLog(const QString &path)
{
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly))
        return false;
    file.write("time,grate F,meat F\n");
    for (int i = 0; i < kRows; ++i) {
        const double fire = 250 + 12 * std::sin(i / 300.0) + 3 * std::sin(i / 41.0);
        file.write(
            QDateTime::fromSecsSinceEpoch(kLit + i, Qt::UTC).toString(Qt::ISODate).toLatin1());
        file.write(QByteArray(",") + QByteArray::number(fire, 'f', 1) + ',' +
                   QByteArray::number(70 + i / 10000.0, 'f', 1) + '\n');
    }
    return true;
}

// A yard with one cook that is long enough; its id, or 0.
RecordId makeYard(const QString &path)
{
    if (!app::makeDemoFile(path, 1, Instant::ofSeconds(kLit)).ok())
        return 0;
    auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc());
    if (!yard)
        return 0;
    commands::Verbs verbs(*yard.value());
    Cook cook;
    cook.name = QStringLiteral("Long log");
    cook.pit = verbs.books().pits.firstKey();
    cook.lit = Instant::ofSeconds(kLit);
    cook.fireOut = Instant::ofSeconds(kLit + kRows);
    const auto added = verbs.putAll({toRow(cook)}, QStringLiteral("cook"));
    if (!added)
        std::printf("%s\n", qPrintable(added.message()));
    return added ? added.value().first() : 0;
}

} // namespace

int main()
{
    const QTemporaryDir folder;
    const QString log = folder.filePath(QStringLiteral("log.csv"));
    const QString yard = folder.filePath(QStringLiteral("yard.rickyard"));
    const RecordId cook = writeLog(log) ? makeYard(yard) : 0;
    if (cook == 0)
        return 1;
    QElapsedTimer timer;
    timer.start();
    QString said;
    QTextStream out(&said);
    const auto code = app::runCommandLine({QStringLiteral("rickyard"), QStringLiteral("--yard"),
                                           yard, QStringLiteral("import"), QStringLiteral("trace"),
                                           log, QStringLiteral("--cook"), QString::number(cook)},
                                          out, out);
    const qint64 ours = timer.elapsed();
    out.flush();
    std::printf("%s\n%d rows into the yard: %lld ms (exit %d)\n", qPrintable(said), kRows,
                static_cast<long long>(ours), code.value_or(-1));
    const QString shell = QStandardPaths::findExecutable(QStringLiteral("sqlite3"));
    if (shell.isEmpty()) {
        std::printf("no sqlite3 shell to compare with\n");
        return code.value_or(1);
    }
    timer.restart();
    QProcess::execute(shell,
                      {folder.filePath(QStringLiteral("bare.db")), QStringLiteral(".mode csv"),
                       QStringLiteral(".import \"%1\" log").arg(log)});
    const qint64 theirs = timer.elapsed();
    std::printf("sqlite3 .import of the same file: %lld ms; ours takes %.2f of that\n",
                static_cast<long long>(theirs),
                static_cast<double>(ours) / static_cast<double>(theirs));
    return code.value_or(1);
}
