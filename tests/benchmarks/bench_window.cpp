// How long the window stands still: the longest time that the event loop does not turn while the
// demo yard is worked with. The wish: never longer than 100 ms. Offscreen, optimised build.
#include "app/demo/demo.h"
#include "app/window/main_window.h"
#include "models/domain/wood/stock.h"
#include "views/records/record_list.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QSettings>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <cmath>
#include <cstdio>

using namespace rickyard;

namespace {

// A timer that should fire every 2 ms says how late it was.
class Pulse : public QObject
{
public:
    Pulse()
    {
        m_timer.setTimerType(Qt::PreciseTimer);
        m_timer.setInterval(2);
        connect(&m_timer, &QTimer::timeout, this,
                [this] { m_worst = std::max(m_worst, m_clock.restart()); });
        m_timer.start();
        m_clock.start();
    }
    qint64 take()
    {
        const qint64 worst = std::max(m_worst, m_clock.restart());
        m_worst = 0;
        return worst;
    }

private:
    QTimer m_timer;
    QElapsedTimer m_clock;
    qint64 m_worst = 0;
};

// Runs an act and everything it sets off, until the window is quiet.
void measure(Pulse &pulse, const char *what, const std::function<void()> &act,
             const std::function<bool()> &done = {}, int quietMs = 700)
{
    QCoreApplication::processEvents();
    pulse.take();
    act();
    QElapsedTimer all;
    all.start();
    while (done && !done() && all.elapsed() < 120000)
        QTest::qWait(5);
    QTest::qWait(quietMs);
    std::printf("%-46s longest standstill %5lld ms\n", what, static_cast<long long>(pulse.take()));
    std::fflush(stdout);
}

QVector<domain::Row> yearOfWeather()
{
    QVector<domain::Row> rows;
    for (int hour = 0; hour < 8760; ++hour) {
        domain::Weather w;
        w.place = QStringLiteral("Elsewhere");
        w.time = domain::Instant::ofSeconds(1600000000 + hour * 3600LL);
        w.temperature = domain::temperatureFromCelsius(15 + 10 * std::sin(hour / 100.0));
        w.dewPoint = domain::temperatureFromCelsius(2);
        w.wind = domain::Speed::ofBase(3000);
        rows << domain::toRow(w);
    }
    return rows;
}

} // namespace

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("demo.rickyard"));
    const commands::Instant now = commands::systemClock();
    if (!app::makeDemoFile(file, 1, now))
        return 1;
    auto yard = workspace::Workspace::open(file, QDateTime::currentDateTimeUtc());
    if (!yard)
        return 1;
    app::MainWindow window(
        std::move(yard.value()), [now] { return now; },
        std::make_unique<QSettings>(folder.filePath(QStringLiteral("settings.ini")),
                                    QSettings::IniFormat));
    Pulse pulse;
    measure(
        pulse, "the window opens", [&] { window.show(); }, {}, 3000);
    const char *names[] = {"Ahead", "Wood", "Fire", "Pits", "Events", "Upkeep", "Weather"};
    for (int page = 0; page < 7; ++page)
        measure(pulse, names[page], [&] { window.openPage(page); });
    for (int page = 0; page < 7; ++page)
        measure(pulse, qPrintable(QStringLiteral("%1, again").arg(QLatin1String(names[page]))),
                [&] { window.openPage(page); });

    const domain::Books &books = window.verbs().books();
    window.openPage(2);
    domain::Cook cook;
    cook.pit = books.pits.firstKey();
    domain::RecordId lit = 0;
    measure(pulse, "light a cook", [&] {
        const auto done = window.verbs().lightCook(cook);
        lit = done ? done.value() : 0;
    });
    domain::RecordId lot = 0;
    for (const domain::LotStock &stock : domain::stockAt(books, now).lots)
        if (stock.readiness == domain::Readiness::Dry)
            lot = stock.lot;
    for (int i = 0; i < 3; ++i)
        measure(pulse, "feed", [&] { (void)window.verbs().feed(lit, lot, 1); });
    window.openPage(3);
    domain::Cook night = books.cooks.value(lit);
    night.lit = now - domain::durationFromHours(11);
    (void)window.verbs().edit(night);
    measure(pulse, "a cook finished, on the Pits page",
            [&] { (void)window.verbs().mark(lit, commands::Verbs::Mark::FireOut); });
    window.openPage(1);
    measure(pulse, "a moisture reading", [&] {
        domain::MoistureReading r;
        r.lot = lot;
        r.time = now;
        r.pieces = {domain::Moisture::ofBase(17000), domain::Moisture::ofBase(18000)};
        (void)window.verbs().add(r);
    });

    window.openPage(6);
    const QVector<domain::Row> rows = yearOfWeather();
    bool done = false;
    measure(
        pulse, "import 8,760 rows into the shown list",
        [&] {
            window.verbs().putAllInBackground(
                rows, QStringLiteral("import"),
                [&](const domain::Outcome<domain::Done> &) { done = true; });
        },
        [&] { return done; }, 4000);
    measure(
        pulse, "undo it",
        [&] { window.verbs().undoInBackground([](const domain::Outcome<domain::Done> &) {}); },
        [&] { return !window.verbs().yard().busy(); }, 4000);
    auto *list = window.page(6)->findChild<views::RecordList *>();
    measure(pulse, "sort the list by temperature", [&] {
        const int column = list->model().columnOfField(QStringLiteral("temperature"));
        list->view().sortByColumn(column, Qt::AscendingOrder);
    });
    done = false;
    measure(
        pulse, "import 8,760 rows into the sorted list",
        [&] {
            window.verbs().putAllInBackground(
                rows, QStringLiteral("import"),
                [&](const domain::Outcome<domain::Done> &) { done = true; });
        },
        [&] { return done; }, 4000);
    return 0;
}
