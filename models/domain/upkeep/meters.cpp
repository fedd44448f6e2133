#include "models/domain/upkeep/meters.h"

#include <algorithm>

namespace rickyard::domain
{

namespace
{

struct Start {
    std::optional<Instant> lastDone;
    Instant from;
};

Start startOfCount(const Books &books, const UpkeepTask &task, Instant now, const LocalTime &local)
{
    Start start;
    for (const Visit &v : books.visits) {
        const Instant at = v.end.value_or(v.start);
        if (v.task == task.id && v.state == VisitState::Done && at <= now &&
            (!start.lastDone || at > *start.lastDone))
            start.lastDone = at;
    }
    if (start.lastDone)
        start.from = *start.lastDone;
    else if (task.since.isValid())
        start.from = local.startOf(task.since);
    return start;
}

// What one burn adds to the meters after `from`.
struct Use {
    Instant end;
    int cooks = 0;
    double hours = 0;
    double heat = 0;
    bool heatKnown = true;
};

const CookFuel *fuelOf(const FuelAnswer &fuel, RecordId cook)
{
    for (const CookFuel &c : fuel.cooks)
        if (c.cook == cook)
            return &c;
    return nullptr;
}

double share(const Burn &burn, Instant from, Instant to)
{
    const double whole = hours(burn.end - burn.start);
    const Instant start = std::max(burn.start, from);
    const double part = hours(std::min(burn.end, to) - start);
    return whole > 0 ? std::clamp(part / whole, 0.0, 1.0) : (burn.start >= from ? 1.0 : 0.0);
}

// Up to `now`: what the records say.
Use usedOf(const Burn &burn, const FuelAnswer &fuel, Instant from, Instant now)
{
    Use use;
    use.end = std::min(burn.end, now);
    Burn soFar = burn;
    soFar.end = use.end;
    const double part = share(soFar, from, now);
    use.cooks = burn.start >= from && !burn.running ? 1 : 0;
    use.hours = hours(soFar.end - soFar.start) * part;
    const CookFuel *known = fuelOf(fuel, burn.cook);
    use.heatKnown = known != nullptr && !known->netHeat.isZero();
    use.heat = use.heatKnown ? known->netHeat.toDouble() * part : 0.0;
    return use;
}

// To its end: a running burn goes on to its expected end, a planned one is all to come.
Use wholeOf(const Burn &burn, const FuelAnswer &fuel, Instant from, Instant now)
{
    Use use;
    if (burn.cook != 0)
        use = usedOf(burn, fuel, from, now);
    if (burn.cook != 0 && !burn.running)
        return use;
    const double rest = std::max(0.0, hours(burn.end - std::max({burn.start, from, now})));
    use.end = burn.end;
    use.cooks = burn.start >= from ? 1 : 0;
    use.hours += rest;
    use.heat += rest * meanHeatPerHour(fuel, burn.pit).value_or(0.0);
    return use;
}

QString limitText(double limit)
{
    return QString::number(limit, 'f', limit < 10 && limit != std::floor(limit) ? 1 : 0);
}

QString plural(double n, const char *one, const char *many)
{
    return limitText(n) % QLatin1Char(' ') % QString::fromUtf8(n == 1.0 ? one : many);
}

void consider(DueForecast &best, const DueForecast &candidate)
{
    if (!best.known || candidate.at < best.at)
        best = candidate;
}

DueForecast dueByDays(const UpkeepTask &task, Instant from, const LocalTime &local, double fraction)
{
    DueForecast due;
    due.known = true;
    due.byDays = true;
    due.day = local.dateOf(from).addDays(
        static_cast<qint64>(std::ceil(fraction * static_cast<double>(*task.everyDays))));
    due.at = local.startOf(due.day.addDays(1));
    due.reason = QStringLiteral("after ") % plural(*task.everyDays, "day", "days");
    return due;
}

} // namespace

std::optional<double> meanHeatPerHour(const FuelAnswer &fuel, RecordId pit)
{
    double heat = 0, time = 0, allHeat = 0, allTime = 0;
    for (const CookFuel &c : fuel.cooks) {
        if (!c.finished || c.netHeat.isZero() || c.length.base() <= 0)
            continue;
        allHeat += c.netHeat.toDouble();
        allTime += hours(c.length);
        if (c.pit == pit) {
            heat += c.netHeat.toDouble();
            time += hours(c.length);
        }
    }
    if (time > 0)
        return heat / time;
    return allTime > 0 ? std::optional<double>(allHeat / allTime) : std::nullopt;
}

TaskMeters metersOf(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task, Instant now,
                    const LocalTime &local)
{
    const Start start = startOfCount(books, task, now, local);
    TaskMeters result;
    result.lastDone = start.lastDone;
    result.from = start.from;
    Use sum;
    for (const Burn &burn : burnsForTask(books, task, now)) {
        if (burn.cook == 0 || burn.end <= start.from)
            continue;
        const Use use = usedOf(burn, fuel, start.from, now);
        sum.cooks += use.cooks;
        sum.hours += use.hours;
        sum.heat += use.heat;
        if (task.everySeasoned && !use.heatKnown)
            ++result.withoutHeat;
    }
    const auto add = [&result](const char *unit, double used, double limit) {
        result.meters << Meter{QString::fromUtf8(unit), used, limit};
        if (limit > 0)
            result.worst = std::max(result.worst, used / limit);
    };
    if (task.everyDays)
        add("days",
            static_cast<double>(std::max(0LL, local.dateOf(start.from).daysTo(local.dateOf(now)))),
            *task.everyDays);
    if (task.everyCooks)
        add("cooks", sum.cooks, *task.everyCooks);
    if (task.everyFireHours)
        add("fire hours", sum.hours, hours(*task.everyFireHours));
    if (task.everySeasoned)
        add("seasoned lb", seasonedPounds(Heat::rounded(sum.heat)),
            seasonedPounds(*task.everySeasoned));
    return result;
}

DueForecast forecastDue(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task,
                        Instant now, const LocalTime &local, double fraction)
{
    const Instant from = startOfCount(books, task, now, local).from;
    DueForecast best;
    if (task.everyDays)
        consider(best, dueByDays(task, from, local, fraction));
    QVector<Use> uses;
    for (const Burn &burn : burnsForTask(books, task, now))
        if (burn.end > from)
            uses << wholeOf(burn, fuel, from, now);
    std::stable_sort(uses.begin(), uses.end(),
                     [](const Use &a, const Use &b) { return a.end < b.end; });
    Use sum;
    for (const Use &use : uses) {
        sum.cooks += use.cooks;
        sum.hours += use.hours;
        sum.heat += use.heat;
        // A hair's tolerance: hours are sums of whole seconds, but added as doubles.
        const auto reached = [fraction](double used, double limit) {
            return used >= fraction * limit * (1 - 1e-12);
        };
        DueForecast due;
        due.day = local.dateOf(use.end);
        due.at = use.end;
        if (task.everyCooks && reached(sum.cooks, *task.everyCooks)) {
            due.reason = QStringLiteral("after ") % plural(*task.everyCooks, "cook", "cooks");
        } else if (task.everyFireHours && reached(sum.hours, hours(*task.everyFireHours))) {
            due.reason = QStringLiteral("after ") %
                         plural(hours(*task.everyFireHours), "fire hour", "fire hours");
        } else if (task.everySeasoned && reached(sum.heat, task.everySeasoned->toDouble())) {
            due.reason = QStringLiteral("after ") %
                         limitText(std::round(seasonedPounds(*task.everySeasoned))) %
                         QStringLiteral(" seasoned lb");
        } else {
            continue;
        }
        due.known = true;
        consider(best, due);
        break;
    }
    return best;
}

} // namespace rickyard::domain
