#include "models/domain/upkeep/dry_days.h"

#include <QHash>

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr int kAround = 15; // days before and after
constexpr qint64 kDaySeconds = 86400;

// Several stations, or several reports of one: an hour has the most that any of them says.
struct RainOfDay {
    QHash<int, double> hours; // millimetres
    [[nodiscard]] bool dry() const
    {
        double sum = 0;
        for (const double hour : hours)
            sum += hour;
        return sum < kWetDayMillimetres;
    }
};

QMap<qint64, RainOfDay> rainByDay(const Books &books, qint64 offset)
{
    QMap<qint64, RainOfDay> days;
    for (const Weather &record : books.weather) {
        if (!record.rain || record.normal)
            continue;
        const qint64 at = record.time.seconds() + offset;
        const qint64 day = at / kDaySeconds;
        double &hour = days[day].hours[static_cast<int>(at % kDaySeconds / 3600)];
        hour = std::max(hour, 1000.0 * metres(*record.rain));
    }
    return days;
}

// Share of the known days of the past near a date that were dry; nothing when there are none.
std::optional<double> shareDry(const QMap<qint64, RainOfDay> &days, qint64 today, qint64 day)
{
    constexpr double kYear = 365.25;
    int known = 0;
    int dry = 0;
    for (auto it = days.cbegin(); it != days.cend() && it.key() < today; ++it) {
        const double years = std::round(static_cast<double>(day - it.key()) / kYear);
        const double apart = static_cast<double>(day - it.key()) - years * kYear;
        if (std::abs(apart) > kAround || it->hours.size() < kKnownHours)
            continue;
        ++known;
        dry += it->dry() ? 1 : 0;
    }
    return known > 0 ? std::optional(static_cast<double>(dry) / known) : std::nullopt;
}

} // namespace

std::optional<QVector<WorkWindow>> dryDays(const Books &books, Instant now, Instant until,
                                           const LocalTime &local)
{
    const QDate first = local.dateOf(now);
    const QDate epoch(1970, 1, 1);
    const qint64 today = epoch.daysTo(first);
    const qint64 offset = today * kDaySeconds - local.startOf(first).seconds();
    const QMap<qint64, RainOfDay> days = rainByDay(books, offset);
    if (days.isEmpty())
        return std::nullopt;
    QVector<WorkWindow> dry;
    for (QDate date = first; local.startOf(date) < until; date = date.addDays(1)) {
        const qint64 day = epoch.daysTo(date);
        const auto entered = days.constFind(day);
        const bool isDry = entered != days.cend() ? entered->dry()
                                                  : shareDry(days, today, day).value_or(1.0) >= 0.5;
        if (!isDry)
            continue;
        const Instant start = local.startOf(date);
        const Instant end = local.startOf(date.addDays(1));
        if (!dry.isEmpty() && dry.last().end == start)
            dry.last().end = end;
        else
            dry << WorkWindow{start, end, 1};
    }
    return dry;
}

} // namespace rickyard::domain
