// The watch: every finished cook of the crew against what was to be expected from earlier cooks
// only, and a chart for each pit that says when one burns more (or less) than it should.
//
// Expected use. Net heat = sum of the heat-balance columns over the efficiency, each with a
// dimensionless coefficient. One coefficient for the whole (how the crew's fires compare with the
// balance, prior 1), one each for wind, lighting, food and rain (prior 0 on top of it), shared by
// all pits; and for each pit its own whole, wind and lighting, prior 0, so that it is drawn to the
// crew's. Errors are proportional to size: rows are divided by their expectation. All of it is one
// conjugate regression (statistics/bayes_regression.h).
//
// Scatter is multiplicative (a cook burns 8 % more or 8 % less), so the score is taken on the
// logarithm: t = (ln(actual / expected) + v / 2) / sqrt(v), v = ln(1 + relative variance), then
// Student t to normal, then the one-sided sum of statistics/cusum.h and its mirror.
//
// What is learned. A cook whose pit stands above `holdAbove` is held back from the norm, and given
// back when the sum has fallen to zero or when the crew looked and found nothing; so a fault is not
// learned as normal, and the scatter is not cut short by throwing the high cooks away. A cook
// beyond `kSurprise` scores is learned as one just that far off, with less weight the farther it
// lay; on the chart it counts no more than that either, so that one absurd cook raises no flag by
// itself. After a repair the pit's own coefficients are loosened, its sum starts at zero, and cooks
// still held back stay out.
//
// The limit. A norm held still carries its own error into every score of a climb. The limit is
// therefore raised by the share rho = leverage / (1 + leverage) that this error has in the variance
// of a score; as the pit's log grows, rho goes to 0 and the limit to the textbook's. Calibrated by
// simulation: docs/method-fuel-watch.md.
#pragma once

#include "models/domain/fire/watch_verdict.h"
#include "models/domain/statistics/bayes_regression.h"
#include "models/domain/statistics/cusum.h"

#include <QHash>
#include <QVector>

#include <optional>

namespace rickyard::domain {

struct WatchSettings {
    double cooksPerFalseAlarm = 200.0; // per pit and direction
    double holdAbove = 2.5;            // of the sum, in standard deviations
    double limitPerShare = 11.0;       // how much rho raises the limit
    double level = 0.90;               // of the interval
    double scatter = 0.11;             // believed relative scatter of a cook
    double scatterWorth = 5.0;         // in cooks
    double efficiency = kEfficiency;
    // Relative standard deviations of the beliefs.
    double crewWhole = kEfficiencySpread;
    double crewTerm = 0.40; // wind, lighting, food, rain
    double pitWhole = 0.20;
    double pitTerm = 0.20; // wind, lighting
    double repairWhole = 0.15;
    double repairTerm = 0.10;
};

class FuelWatch
{
public:
    explicit FuelWatch(WatchSettings settings = {});

    // The next finished cook. Left out, with the reason, when a number is missing or not above 0.
    WatchVerdict add(const WatchCook &cook);
    // The crew looked at the pit and found nothing: its cooks are given back, its sums start anew.
    void nothingFound(RecordId pit);
    // The pit was mended.
    void repaired(RecordId pit);

    // What a cook with these columns should take on a pit, by all that is learned so far. A pit
    // never seen has the crew's coefficients and their width.
    [[nodiscard]] std::optional<WatchForecast> expect(RecordId pit, const HeatColumns &columns,
                                                      double trust = 1.0) const;
    // The same, split by column (their sum is `expected`).
    [[nodiscard]] std::optional<HeatColumns> expectedParts(RecordId pit,
                                                           const HeatColumns &columns) const;
    // The climb that the pit is on (or, for Less, the mirror's), flagged or not.
    [[nodiscard]] std::optional<WatchExcess> excess(RecordId pit,
                                                    WatchFlag direction = WatchFlag::More) const;
    [[nodiscard]] WatchFlag flag(RecordId pit) const;
    // Cooks of the pit that the norm has not learned yet.
    [[nodiscard]] int heldBack(RecordId pit) const;
    [[nodiscard]] const statistics::BayesRegression &norm() const { return m_norm; }
    // Limit of the sum for a norm that is known exactly.
    [[nodiscard]] double baseLimit() const { return m_baseLimit; }

private:
    // A cook ready for the regression: its columns and heat over what was expected of it.
    struct Row {
        RecordId cook = 0;
        HeatColumns shares{};
        double relative = 0.0; // actual over expected
        double learned = 0.0;  // the same, no further off than a surprise
        double weight = 1.0;   // in the norm
        double trust = 1.0;
        double size = 0.0;  // joules expected
        double score = 0.0; // cut at a surprise
    };
    struct PitBook {
        int block = -1; // first of its coefficients
        statistics::Cusum chart;
        QVector<Row> held;
        QVector<Row> up; // of the climb under way
        QVector<Row> down;
        WatchFlag flag = WatchFlag::None;
    };

    void openBlock(PitBook &book);
    // Moves the pit's chart by the (clipped) score and decides what becomes of the row.
    void chart(PitBook &book, const WatchCook &cook, const Row &row, double score,
               WatchVerdict &verdict);
    void learn(const PitBook &book, const Row &row);
    void giveBack(PitBook &book);
    static qsizetype startOfShift(const QVector<Row> &climb, double sign);
    [[nodiscard]] std::vector<double> rowFor(int block, const HeatColumns &shares) const;
    [[nodiscard]] std::optional<statistics::PredictiveT>
    predictive(int block, const HeatColumns &shares, double weight) const;
    [[nodiscard]] double limitFor(double leverage, double weight) const;

    WatchSettings m_settings;
    double m_baseLimit = 0.0;
    statistics::BayesRegression m_norm;
    QHash<RecordId, PitBook> m_pits;
};

} // namespace rickyard::domain
