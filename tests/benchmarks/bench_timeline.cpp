// The wish: a timeline of a million readings pans and zooms at 30 frames a second or better. Each
// frame is drawn into a picture of the size of a window, as the window would draw it, and the time
// until it stands there is taken. No frame may take 100 ms.
#include "app/demo/demo.h"
#include "models/workspace/commands/verbs.h"
#include "views/fire/cook_timeline.h"
#include "views/theme/theme_hub.h"

#include <QApplication>
#include <QDateTime>
#include <QElapsedTimer>
#include <QImage>
#include <QTemporaryDir>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <functional>

using namespace rickyard;
using namespace rickyard::domain;

namespace {

constexpr int kSamples = 1000000;
constexpr int kFrames = 240;

// A fire that swings and flickers every second, eleven days long: no two neighbours are equal, so
// nothing is saved by a kind series.
QByteArray traceBlock(double level)
{
    QVector<TracePoint> points;
    points.reserve(kSamples);
    quint32 chance = 12345;
    for (int i = 0; i < kSamples; ++i) {
        chance = chance * 1664525U + 1013904223U;
        const double noise = static_cast<double>(chance >> 16U) / 65536.0 - 0.5;
        points.append({i, temperatureFromFahrenheit(level + 12 * std::sin(i / 900.0) +
                                                    20 * std::sin(i / 40000.0) + 8 * noise)});
    }
    return encodeTrace(points).value();
}

// By the clock on the wall, and by the processor's own count, which other work of the machine does
// not touch.
void report(const char *name, std::vector<double> &wall, std::vector<double> &busy)
{
    std::sort(wall.begin(), wall.end());
    std::sort(busy.begin(), busy.end());
    const std::size_t half = wall.size() / 2;
    std::printf("%-22s median %6.1f frames/s, slowest %6.1f (%.1f ms); processor: median %6.1f, "
                "slowest %6.1f (%.1f ms)\n",
                name, 1000 / wall[half], 1000 / wall.back(), wall.back(), 1000 / busy[half],
                1000 / busy.back(), busy.back());
}

double processorMilliseconds()
{
    return 1000.0 * static_cast<double>(std::clock()) / static_cast<double>(CLOCKS_PER_SEC);
}

void measure(const char *name, views::TimelineView &view, const std::function<void(int)> &move)
{
    QImage image(view.size(), QImage::Format_ARGB32_Premultiplied);
    std::vector<double> wall;
    std::vector<double> busy;
    for (int i = 0; i < kFrames; ++i) {
        QElapsedTimer timer;
        timer.start();
        const double before = processorMilliseconds();
        move(i);
        view.render(&image);
        busy.push_back(std::max(0.001, processorMilliseconds() - before));
        wall.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    report(name, wall, busy);
}

} // namespace

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    views::ThemeHub::apply(*qApp, views::Mode::Light);
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("yard.rickyard"));
    const Instant now = Instant::ofSeconds(1790000000);
    if (!app::makeDemoFile(path, 1, now).ok())
        return 1;
    auto yard = workspace::Workspace::open(path, QDateTime::currentDateTimeUtc());
    if (!yard)
        return 1;
    commands::Verbs verbs(*yard.value());
    Cook cook = *verbs.books().cooks.cbegin();
    cook.fireOut = cook.lit + Duration::ofBase(kSamples);
    QVector<Row> rows{toRow(cook)};
    for (const auto &[probe, level] : {std::pair("grate", 250.0), std::pair("meat", 150.0)}) {
        Trace trace;
        trace.cook = cook.id;
        trace.probe = QString::fromLatin1(probe);
        trace.start = cook.lit;
        trace.points = kSamples;
        trace.block = traceBlock(level);
        rows << toRow(trace);
    }
    if (const auto put = verbs.putAll(rows, QStringLiteral("long log")); !put) {
        std::printf("%s\n", qPrintable(put.message()));
        return 1;
    }
    views::CookTimeline timeline;
    timeline.resize(1200, 700);
    timeline.show();
    QElapsedTimer timer;
    timer.start();
    timeline.setCook(verbs.books(), cook.id, now);
    std::printf("window held while traces are asked for: %.1f ms\n",
                static_cast<double>(timer.nsecsElapsed()) / 1e6);
    while (!timeline.curves())
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    std::printf("2 probes x %d readings read on a thread: %lld ms\n", kSamples,
                static_cast<long long>(timer.elapsed()));
    views::TimelineView &view = timeline.view();
    std::printf("timeline %d x %d, 2 probes x %d readings\n", view.width(), view.height(),
                kSamples);
    measure("whole, still", view, [](int) {});
    measure("zoom in to seconds", view, [&view](int) { view.zoom(1.05, 500000); });
    measure("zoom out again", view, [&view](int) { view.zoom(1 / 1.05, 500000); });
    view.showStretch(100000, 600000);
    measure("pan, half in sight", view, [&view](int) { view.moveBy(1500); });
    view.showStretch(100000, 150000);
    measure("pan, 14 hours", view, [&view](int) { view.moveBy(500); });
    view.showStretch(100000, 100600);
    measure("pan, 10 minutes", view, [&view](int) { view.moveBy(7); });
    return 0;
}
