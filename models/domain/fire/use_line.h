// The wood use of past cooks against one thing at a time: how long they ran, how cold it was, how
// windy. A plain straight line through each pit's own cooks, which takes out nothing else that
// changed along with it: it shows what was, and is not the expected use (fuel.h).
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/statistics/least_squares.h"

namespace rickyard::domain {

enum class UseAgainst { Hours, Outside, Wind };

struct UsePoint {
    RecordId cook = 0;
    RecordId pit = 0;
    double across = 0; // hours; degrees Celsius; metres a second
    double use = 0;    // joules net against length, else joules net an hour
    bool assumed = false;
};

// Finished cooks with wood, by lighting time. Those whose air or wind is not known have no point
// there.
QVector<UsePoint> usePoints(const QVector<CookFuel> &cooks, UseAgainst against);

constexpr int kLeastCooksForLine = 6; // fewer scatter too much to draw through; our own
constexpr double kUseLevel = 0.90;

// The line of one pit by ordinary least squares (statistics/least_squares.h).
struct UseLine {
    RecordId pit = 0;
    int cooks = 0;
    double first = 0; // the cooks' range across: it is not drawn beyond
    double last = 0;
    QString why;                // no line, in words; else empty
    statistics::Interval slope; // joules (an hour) for each hour, kelvin or metre a second
    std::optional<statistics::Fit> fit;

    [[nodiscard]] bool drawn() const { return fit.has_value(); }
    // The interval of the slope leaves its sign open.
    [[nodiscard]] bool flat() const { return slope.lower <= 0 && slope.upper >= 0; }
    // Where a single cook lies, with probability kUseLevel; only when drawn.
    [[nodiscard]] std::optional<statistics::Interval> at(double across) const;
};

UseLine useLine(RecordId pit, const QVector<UsePoint> &points);
// One a pit that has points, by the pit's id.
QVector<UseLine> useLines(const QVector<UsePoint> &points);

} // namespace rickyard::domain
