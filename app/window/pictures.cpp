#include "app/window/pictures.h"

#include "app/demo/demo.h"
#include "app/window/main_window.h"
#include "views/theme/theme_hub.h"

#include <QApplication>
#include <QDateTime>
#include <QDeadlineTimer>
#include <QDir>
#include <QTemporaryDir>
#include <QTextStream>
#include <QTimeZone>

namespace rickyard::app {

namespace {

// A Wednesday afternoon before a busy December, in the demo's zone.
domain::Instant pictureMoment()
{
    const QDateTime local(QDate(2026, 11, 25), QTime(15, 0), QTimeZone("America/Chicago"));
    return domain::Instant::ofSeconds(local.toSecsSinceEpoch());
}

void settle(int milliseconds)
{
    QDeadlineTimer deadline(milliseconds);
    while (!deadline.hasExpired())
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
}

bool grabPages(MainWindow &window, const QDir &folder, const QString &mode)
{
    static const char *const names[] = {"ahead",  "wood",   "fire",   "pits",
                                        "events", "upkeep", "weather"};
    for (int i = 0; i < 7; ++i) {
        window.openPage(i);
        settle(700);
        const QString file =
            QStringLiteral("%1-%2-%3.png").arg(i + 1).arg(QLatin1String(names[i]), mode);
        if (!window.grab().save(folder.filePath(file)))
            return false;
    }
    return true;
}

} // namespace

int makePictures(QApplication &application, const Launch &launch)
{
    QTextStream err(stderr);
    const QDir folder(launch.operands.value(0, QStringLiteral(".")));
    QTemporaryDir scratch;
    if (!scratch.isValid() || !QDir().mkpath(folder.absolutePath())) {
        err << "The folder " << folder.absolutePath() << " cannot be written.\n";
        return 1;
    }
    const QString yard = scratch.filePath(QStringLiteral("demo.rickyard"));
    const auto made = makeDemoFile(yard, kDemoSeed, pictureMoment());
    if (!made) {
        err << made.message() << '\n';
        return 1;
    }
    for (const QString &mode : {QStringLiteral("light"), QStringLiteral("dark")}) {
        auto workspace = workspace::Workspace::open(yard, QDateTime::currentDateTimeUtc());
        if (!workspace) {
            err << workspace.message() << '\n';
            return 3;
        }
        auto settings = std::make_unique<QSettings>(
            scratch.filePath(QString(mode + QStringLiteral(".ini"))), QSettings::IniFormat);
        settings->setValue(QStringLiteral("look/mode"), mode);
        MainWindow window(
            std::move(workspace.value()), [] { return pictureMoment(); }, std::move(settings));
        window.resize(1280, 800);
        window.show();
        constexpr int kPatience = 120; // half seconds, on a machine that is busy otherwise
        for (int i = 0; i < kPatience && !window.answersCurrent(); ++i)
            settle(500);
        settle(1500);
        if (!grabPages(window, folder, mode)) {
            err << "A picture could not be written to " << folder.absolutePath() << ".\n";
            return 1;
        }
    }
    Q_UNUSED(application);
    return 0;
}

} // namespace rickyard::app
