// The wish: 2,000 cooks on 6 pits replayed by the watch at least ten times faster than R's lm and
// predict do the one-step-ahead replay of the same rows. Both in processor time, so that a busy
// machine does not decide; R's without its start and the reading of the file. Also: what one more
// cook takes.
#include "tests/domain/watch_season.h"

#include <QFile>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTextStream>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>

using namespace rickyard;
using namespace rickyard::test;

namespace {

constexpr int kPits = 6;
constexpr int kCooks = 2000;

std::vector<SeasonCook> rows()
{
    SeasonPlan plan;
    plan.pits = kPits;
    plan.cooksEach = kCooks / kPits + 1;
    auto season = inventedSeason(plan);
    season.resize(kCooks);
    return season;
}

double milliseconds(std::clock_t ticks)
{
    return 1e3 * double(ticks) / CLOCKS_PER_SEC;
}

// Best of three, milliseconds; the forecasts of the last round.
double replay(const std::vector<SeasonCook> &season, std::vector<double> &forecasts)
{
    double best = INFINITY;
    for (int round = 0; round < 3; ++round) {
        forecasts.clear();
        const std::clock_t start = std::clock();
        domain::FuelWatch watch;
        for (const SeasonCook &c : season)
            forecasts.push_back(watch.add(c.cook).forecast.expected);
        best = std::min(best, milliseconds(std::clock() - start));
    }
    return best;
}

double oneMoreCook(const std::vector<SeasonCook> &season)
{
    domain::FuelWatch watch;
    for (const SeasonCook &c : season)
        watch.add(c.cook);
    const std::clock_t start = std::clock();
    watch.add(season.front().cook);
    return milliseconds(std::clock() - start);
}

// Columns over the crude expectation, so that the scatter is a share, as in the watch; a slope for
// each column and, on the whole, for each pit.
constexpr auto kScript = R"R(
d <- read.csv(commandArgs(TRUE)[1])
d$pit <- factor(d$pit)
first <- 30
p <- rep(NA_real_, nrow(d))
took <- system.time(for (i in first:nrow(d)) {
  m <- lm(relative ~ 0 + pit:whole + wind + lighting + food + rain, data = d[seq_len(i - 1), ])
  p[i] <- suppressWarnings(predict(m, d[i, ], interval = "prediction", level = 0.9))[1]
})
cat(sprintf("%.3f\n", took[["user.self"]] + took[["sys.self"]]))
write.csv(data.frame(expected = p * d$crude), commandArgs(TRUE)[2], row.names = FALSE)
)R";

bool write(const QString &path, const std::vector<SeasonCook> &season)
{
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly))
        return false;
    QTextStream out(&file);
    out.setRealNumberPrecision(12);
    out << "pit,relative,whole,wind,lighting,food,rain,crude\n";
    for (const SeasonCook &c : season) {
        const auto &h = c.cook.columns;
        const double crude = domain::totalHeat(h);
        out << c.cook.pit << ',' << c.cook.actual / crude << ",1," << h[domain::WindColumn] / crude
            << ',' << h[domain::LightingColumn] / crude << ',' << h[domain::FoodColumn] / crude
            << ',' << h[domain::RainColumn] / crude << ',' << crude << '\n';
    }
    return true;
}

// Median distance of the two forecasts over the second half, as a share.
double apart(const QString &path, const std::vector<double> &ours)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return NAN;
    file.readLine();
    std::vector<double> off;
    for (std::size_t i = 0; !file.atEnd() && i < ours.size(); ++i) {
        bool ok = false;
        const double theirs = file.readLine().trimmed().toDouble(&ok);
        if (ok && i > ours.size() / 2)
            off.push_back(std::abs(ours[i] / theirs - 1.0));
    }
    if (off.empty())
        return NAN;
    std::sort(off.begin(), off.end());
    return off[off.size() / 2];
}

} // namespace

int main()
{
    const auto season = rows();
    std::vector<double> forecasts;
    const double ours = replay(season, forecasts);
    std::printf("watch: %d cooks on %d pits replayed in %.1f ms; one more cook %.3f ms\n", kCooks,
                kPits, ours, oneMoreCook(season));
    const QString program = QStandardPaths::findExecutable(QStringLiteral("Rscript"));
    if (program.isEmpty()) {
        std::printf("R is not installed: nothing to compare with\n");
        return 0;
    }
    const QTemporaryDir folder;
    const QString script = folder.filePath(QStringLiteral("replay.R"));
    const QString data = folder.filePath(QStringLiteral("rows.csv"));
    const QString result = folder.filePath(QStringLiteral("expected.csv"));
    QFile file(script);
    if (!file.open(QIODevice::WriteOnly) || file.write(kScript) < 0 || !write(data, season)) {
        std::fprintf(stderr, "the temporary folder cannot be written\n");
        return 1;
    }
    file.close();
    QProcess r;
    r.start(program, {script, data, result});
    if (!r.waitForFinished(-1) || r.exitCode() != 0) {
        std::fprintf(stderr, "R failed: %s\n", r.readAllStandardError().constData());
        return 1;
    }
    const double theirs = 1e3 * r.readAllStandardOutput().trimmed().toDouble();
    std::printf("R: lm and predict, one step ahead, in %.0f ms: %.0f times as long (wanted: 10); "
                "median distance of the forecasts %.1f %%\n",
                theirs, theirs / ours, 100.0 * apart(result, forecasts));
    return 0;
}
