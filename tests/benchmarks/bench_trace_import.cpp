// The wish: a log of 1,000,000 rows (a time and two probes) imported into a yard at least as fast
// as the sqlite3 shell reads the same file into a bare table. Both are timed from an open file to
// a closed database, by turns, five times; besides the clock on the wall the processor's own count
// is given, which other work of the machine does not touch.
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

#include <sys/resource.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

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

struct Took {
    double wall = 0; // milliseconds
    double processor = 0;
};

double processorOf(int who)
{
    rusage usage{};
    getrusage(who, &usage);
    const auto milliseconds = [](const timeval &t) {
        return 1000.0 * static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1000.0;
    };
    return milliseconds(usage.ru_utime) + milliseconds(usage.ru_stime);
}

template <class Work>
Took timed(int who, Work work)
{
    QElapsedTimer timer;
    timer.start();
    const double before = processorOf(who);
    work();
    return {static_cast<double>(timer.elapsed()), processorOf(who) - before};
}

Took best(const std::vector<Took> &turns)
{
    Took best = turns.front();
    for (const Took &one : turns)
        best = {std::min(best.wall, one.wall), std::min(best.processor, one.processor)};
    return best;
}

int importInto(const QString &yard, const QString &log, RecordId cook, QString &said)
{
    QTextStream out(&said);
    const auto code = app::runCommandLine({QStringLiteral("rickyard"), QStringLiteral("--yard"),
                                           yard, QStringLiteral("import"), QStringLiteral("trace"),
                                           log, QStringLiteral("--cook"), QString::number(cook)},
                                          out, out);
    out.flush();
    return code.value_or(1);
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
    const QString shell = QStandardPaths::findExecutable(QStringLiteral("sqlite3"));
    if (shell.isEmpty())
        std::printf("no sqlite3 shell to compare with\n");
    std::vector<Took> ours;
    std::vector<Took> theirs;
    for (int turn = 0; turn < 5; ++turn) {
        // Each turn into a yard that has no trace of this cook yet.
        const QString fresh = folder.filePath(QStringLiteral("yard%1.rickyard").arg(turn));
        if (!QFile::copy(yard, fresh))
            return 1;
        QString said;
        int code = 1;
        ours.push_back(timed(RUSAGE_SELF, [&] { code = importInto(fresh, log, cook, said); }));
        if (code != 0 || turn == 0)
            std::printf("%s\n", qPrintable(said));
        if (code != 0)
            return code;
        if (shell.isEmpty())
            continue;
        const QString bare = folder.filePath(QStringLiteral("bare%1.db").arg(turn));
        theirs.push_back(timed(RUSAGE_CHILDREN, [&] {
            QProcess::execute(shell, {bare, QStringLiteral(".mode csv"),
                                      QStringLiteral(".import \"%1\" log").arg(log)});
        }));
    }
    const Took mine = best(ours);
    std::printf("%d rows into the yard: %.0f ms (processor %.0f ms), best of 5\n", kRows, mine.wall,
                mine.processor);
    if (theirs.empty())
        return 0;
    const Took shells = best(theirs);
    std::printf("sqlite3 .import of the same file: %.0f ms (processor %.0f ms); ours takes %.2f of "
                "that (processor %.2f)\n",
                shells.wall, shells.processor, mine.wall / shells.wall,
                mine.processor / shells.processor);
    return 0;
}
