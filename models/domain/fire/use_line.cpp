#include "models/domain/fire/use_line.h"

#include "models/domain/statistics/distributions.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

std::optional<double> acrossOf(const CookFuel &cook, UseAgainst against)
{
    switch (against) {
    case UseAgainst::Hours:
        return hours(cook.length);
    case UseAgainst::Outside:
        return cook.meanOutside ? std::optional(celsius(*cook.meanOutside)) : std::nullopt;
    case UseAgainst::Wind:
        break;
    }
    return cook.meanWind ? std::optional(metresPerSecond(*cook.meanWind)) : std::nullopt;
}

} // namespace

QVector<UsePoint> usePoints(const QVector<CookFuel> &cooks, UseAgainst against)
{
    QVector<UsePoint> points;
    for (const CookFuel &cook : cooks) {
        const std::optional<double> across = acrossOf(cook, against);
        const double length = hours(cook.length);
        if (!cook.finished || cook.netHeat <= Heat() || length <= 0 || !across)
            continue;
        const double heat = cook.netHeat.toDouble();
        points.append({cook.cook, cook.pit, *across,
                       against == UseAgainst::Hours ? heat : heat / length,
                       !cook.assumptions.isEmpty()});
    }
    return points;
}

std::optional<statistics::Interval> UseLine::at(double across) const
{
    if (!fit)
        return std::nullopt;
    const auto interval =
        statistics::predict(*fit, Eigen::VectorXd::Constant(1, across), kUseLevel);
    return interval ? std::optional(interval.value()) : std::nullopt;
}

UseLine useLine(RecordId pit, const QVector<UsePoint> &points)
{
    UseLine line;
    line.pit = pit;
    std::vector<double> across;
    std::vector<double> use;
    for (const UsePoint &point : points) {
        if (point.pit != pit)
            continue;
        across.push_back(point.across);
        use.push_back(point.use);
    }
    line.cooks = static_cast<int>(across.size());
    if (line.cooks > 0) {
        const auto [least, most] = std::minmax_element(across.cbegin(), across.cend());
        line.first = *least;
        line.last = *most;
    }
    if (line.cooks < kLeastCooksForLine) {
        line.why = QStringLiteral("a line needs %1 cooks").arg(kLeastCooksForLine);
        return line;
    }
    const auto rows = static_cast<Eigen::Index>(across.size());
    const auto fit = statistics::leastSquares(Eigen::Map<Eigen::MatrixXd>(across.data(), rows, 1),
                                              Eigen::Map<Eigen::VectorXd>(use.data(), rows));
    const auto t =
        statistics::twoSided(statistics::StudentT{static_cast<double>(line.cooks - 2)}, kUseLevel);
    if (!fit || !t) {
        line.why = QStringLiteral("its cooks are all alike there");
        return line;
    }
    const double slope = fit->coefficients(1);
    const double half = t.value() * fit->standardErrors(1);
    line.slope = {slope, slope - half, slope + half, kUseLevel};
    line.fit = fit.value();
    return line;
}

QVector<UseLine> useLines(const QVector<UsePoint> &points)
{
    QMap<RecordId, bool> pits;
    for (const UsePoint &point : points)
        pits.insert(point.pit, true);
    QVector<UseLine> lines;
    for (auto it = pits.cbegin(); it != pits.cend(); ++it)
        lines << useLine(it.key(), points);
    return lines;
}

} // namespace rickyard::domain
