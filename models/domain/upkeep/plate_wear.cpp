// How a plate wears, of readings.h.
#include "models/domain/quantities/units.h"
#include "models/domain/statistics/distributions.h"
#include "models/domain/statistics/least_squares.h"
#include "models/domain/upkeep/readings.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kYearDays = 365.25;
constexpr double kFarYears = 100; // later is "not in sight"

struct WearLine {
    double meanDay = 0; // of the days, from the first
    double meanValue = 0;
    double slope = 0;  // a day
    double se = 0;     // of the slope
    double sd = 0;     // of a value about the line
    double factor = 0; // Student t for kWearLevel
    int values = 0;
};

struct WearRoots {
    std::optional<double> early; // days from the first
    std::optional<double> late;
};

// Where the band of the line meets the limit: Fieller (1954, JRSS B 16:175), from memory; the
// tests find the same by bisection of the band. A line that may be level has no late end.
WearRoots fieller(const WearLine &line, double limit)
{
    const double gap = line.meanValue - limit;
    const double q2 = line.factor * line.factor;
    const double a = line.slope * line.slope - q2 * line.se * line.se;
    const double b = 2.0 * line.slope * gap;
    const double c = gap * gap - q2 * line.sd * line.sd / line.values;
    const double root = b * b - 4.0 * a * c;
    WearRoots roots;
    if (root < 0 || a == 0.0)
        return roots;
    const double one = (-b - std::sqrt(root)) / (2.0 * a);
    const double two = (-b + std::sqrt(root)) / (2.0 * a);
    if (a > 0) {
        roots.early = line.meanDay + std::min(one, two);
        roots.late = line.meanDay + std::max(one, two);
    } else {
        roots.early = line.meanDay + std::max(one, two);
    }
    return roots;
}

std::optional<WearLine> lineOf(const QVector<std::pair<double, double>> &values)
{
    const auto count = static_cast<Eigen::Index>(values.size());
    Eigen::MatrixXd days(count, 1);
    Eigen::VectorXd thickness(count);
    WearLine line;
    for (Eigen::Index i = 0; i < count; ++i) {
        days(i, 0) = values.at(i).first;
        thickness(i) = values.at(i).second;
        line.meanDay += values.at(i).first / double(count);
        line.meanValue += values.at(i).second / double(count);
    }
    const auto fit = statistics::leastSquares(days, thickness);
    const auto factor =
        statistics::twoSided(statistics::StudentT{std::max(1.0, double(count) - 2.0)}, kWearLevel);
    if (!fit || !factor)
        return std::nullopt;
    line.slope = fit->coefficients(1);
    line.se = fit->standardErrors(1);
    line.sd = fit->residualSd;
    line.factor = factor.value();
    line.values = static_cast<int>(count);
    return line;
}

QString thick(double value, const QString &unit)
{
    const int digits = findUnit(Dimension::Length, unit.trimmed()) != nullptr &&
                               unit.trimmed() == QLatin1String("in")
                           ? 3
                           : 2;
    return formatNumber(value, digits, QLocale(QStringLiteral("en_US"))) % QLatin1Char(' ') %
           unit.trimmed();
}

QString monthText(QDate day, const LocalTime &local)
{
    return local.locale().toString(day, QStringLiteral("MMM yyyy"));
}

void sayWear(const UpkeepTask &task, const LocalTime &local, PlateWear &wear)
{
    const QString unit = task.readingUnit;
    QString text = QStringLiteral("%1 at the last reading").arg(thick(wear.latest, unit));
    if (task.readingLow && wear.reached)
        text += QStringLiteral(", at or below the limit of %1: do not light it before somebody who "
                               "knows steel has looked at it")
                    .arg(thick(number(*task.readingLow), unit));
    if (!wear.perYear) {
        text += QStringLiteral(". %1 so far: a rate of loss needs readings of three days")
                    .arg(wear.values == 1 ? QStringLiteral("Readings of 1 day")
                                          : QStringLiteral("Readings of %1 days").arg(wear.values));
        wear.words = text;
        return;
    }
    if (*wear.perYear <= 0) {
        text += QStringLiteral(". No loss to be seen in readings of %1 days").arg(wear.values);
        wear.words = text;
        return;
    }
    text += QStringLiteral(". Loses %1 a year (8 in 10 between %2 and %3)")
                .arg(thick(*wear.perYear, unit), thick(std::max(0.0, *wear.perYearLow), unit),
                     thick(*wear.perYearHigh, unit));
    if (task.readingLow && !wear.reached && wear.limitDay.isValid()) {
        text += QStringLiteral("; at %1 about %2")
                    .arg(thick(number(*task.readingLow), unit), monthText(wear.limitDay, local));
        if (wear.limitDayEarly.isValid() && wear.limitDayLate.isValid())
            text +=
                QStringLiteral(", 8 in 10 between %1 and %2")
                    .arg(monthText(wear.limitDayEarly, local), monthText(wear.limitDayLate, local));
        else if (wear.limitDayEarly.isValid())
            text +=
                QStringLiteral(", 9 in 10 not before %1").arg(monthText(wear.limitDayEarly, local));
        else
            text += QStringLiteral(", but the readings are too few or too uneven for an interval");
    } else if (task.readingLow && !wear.reached) {
        text += QStringLiteral("; its limit is not in sight");
    }
    wear.words = text;
}

} // namespace

PlateWear plateWear(const Books &books, const UpkeepTask &task, Instant now, const LocalTime &local)
{
    QMap<QDate, double> thinnest;
    for (const CheckReading &reading : books.checkReadings) {
        if (reading.task != task.id || reading.time > now)
            continue;
        const QDate day = local.dateOf(reading.time);
        const double value = number(reading.value);
        thinnest.insert(day, std::min(value, thinnest.value(day, value)));
    }
    PlateWear wear;
    wear.values = static_cast<int>(thinnest.size());
    if (wear.values == 0) {
        wear.words = QStringLiteral("Nothing read yet");
        return wear;
    }
    wear.latest = thinnest.last();
    wear.reached = task.readingLow && wear.latest <= number(*task.readingLow);
    const QDate first = thinnest.firstKey();
    QVector<std::pair<double, double>> values;
    for (auto it = thinnest.cbegin(); it != thinnest.cend(); ++it)
        values.append({static_cast<double>(first.daysTo(it.key())), it.value()});
    const std::optional<WearLine> line = wear.values >= 3 ? lineOf(values) : std::nullopt;
    if (line) {
        const double half = line->factor * line->se;
        wear.perYear = -line->slope * kYearDays;
        wear.perYearLow = (-line->slope - half) * kYearDays;
        wear.perYearHigh = (-line->slope + half) * kYearDays;
    }
    if (line && task.readingLow && line->slope < 0) {
        const double limit = number(*task.readingLow);
        const auto dayAt = [&](std::optional<double> days) {
            return days && *days >= 0 && *days < kFarYears * kYearDays
                       ? first.addDays(std::llround(*days))
                       : QDate();
        };
        wear.limitDay = dayAt(line->meanDay + (limit - line->meanValue) / line->slope);
        const WearRoots roots = fieller(*line, limit);
        wear.limitDayEarly = dayAt(roots.early);
        wear.limitDayLate = dayAt(roots.late);
    }
    sayWear(task, local, wear);
    return wear;
}

} // namespace rickyard::domain
