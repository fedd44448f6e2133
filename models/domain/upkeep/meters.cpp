#include "models/domain/upkeep/meters.h"

#include "models/domain/upkeep/meter_use.h"
#include "models/domain/upkeep/occasions.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

std::optional<Instant> lastDoneEnd(const Books &books, RecordId task, Instant now)
{
    std::optional<Instant> last;
    for (const Visit &v : books.visits) {
        const Instant at = v.end.value_or(v.start);
        if (v.task == task && v.state == VisitState::Done && at <= now && (!last || at > *last))
            last = at;
    }
    return last;
}

void consider(DueForecast &best, const DueForecast &candidate)
{
    if (candidate.known && (!best.known || candidate.at < best.at))
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
    due.reason = QStringLiteral("after ") % limitWords(*task.everyDays, "day", "days");
    return due;
}

QString occasionWords(Occasion occasion)
{
    switch (occasion) {
    case Occasion::BeforeCook:
        return QStringLiteral("before each cook");
    case Occasion::BeforeTowing:
        return QStringLiteral("before towing");
    case Occasion::BeforeSeason:
        return QStringLiteral("before the season");
    case Occasion::None:
    case Occasion::AfterCook:
        break;
    }
    return {};
}

DueForecast dueByOccasion(const Books &books, const UpkeepTask &task, Instant now,
                          const LocalTime &local, double fraction)
{
    const NextOccasion next = nextOccasion(books, task, now, local);
    DueForecast due;
    due.known = next.known;
    if (!due.known)
        return due;
    const qint64 early = fraction < 1.0 ? kOccasionLeadDays : 0;
    due.byDays = task.occasion != Occasion::BeforeCook;
    due.day = next.day.addDays(-early);
    due.at = early > 0 ? local.startOf(due.day) : next.at;
    due.reason = occasionWords(task.occasion);
    due.beforeCook = next.plannedCook;
    due.beforeEvent = next.event;
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

Instant startOfCount(const Books &books, const UpkeepTask &task, Instant now,
                     const LocalTime &local)
{
    if (const auto last = lastDoneEnd(books, task.id, now))
        return *last;
    return task.since.isValid() ? local.startOf(task.since) : Instant();
}

TaskMeters metersOf(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task, Instant now,
                    const LocalTime &local)
{
    TaskMeters result;
    result.lastDone = lastDoneEnd(books, task.id, now);
    result.from = startOfCount(books, task, now, local);
    MeterSums sums;
    if (runsWithFire(task))
        for (const Burn &burn : burnsForTask(books, task, now)) {
            if (burn.cook == 0 || burn.end <= result.from)
                continue;
            const BurnUse use = usedOf(books, burn, fuel, result.from, now);
            sums.add(use);
            if ((task.everySeasoned || task.everyAsh) && !use.heatKnown)
                ++result.withoutHeat;
        }
    const auto add = [&result](const char *unit, double used, double limit) {
        result.meters << Meter{QString::fromUtf8(unit), used, limit};
        if (limit > 0)
            result.worst = std::max(result.worst, used / limit);
    };
    if (task.everyDays)
        add("days",
            static_cast<double>(
                std::max<qint64>(0, local.dateOf(result.from).daysTo(local.dateOf(now)))),
            *task.everyDays);
    if (task.everyCooks)
        add("cooks", sums.cooks, *task.everyCooks);
    if (task.everyFireHours)
        add("fire hours", sums.hours, hours(*task.everyFireHours));
    if (task.everySeasoned)
        add("seasoned lb", seasonedPounds(Heat::rounded(sums.heat)),
            seasonedPounds(*task.everySeasoned));
    const bool metric = books.yard().metric;
    if (task.everyAsh && metric)
        add("kg of ash", sums.ash, kilograms(*task.everyAsh));
    else if (task.everyAsh)
        add("lb of ash", sums.ash / kKilogramsPerPound, pounds(*task.everyAsh));
    if (task.occasion == Occasion::AfterCook && !task.everyCooks)
        add("cooks", sums.fires, 1);
    return result;
}

DueForecast forecastByCalendar(const Books &books, const UpkeepTask &task, Instant now,
                               const LocalTime &local, double fraction)
{
    DueForecast best;
    if (task.everyDays)
        consider(best, dueByDays(task, startOfCount(books, task, now, local), local, fraction));
    consider(best, dueByOccasion(books, task, now, local, fraction));
    return best;
}

DueForecast forecastDue(const Books &books, const FuelAnswer &fuel, const UpkeepTask &task,
                        Instant now, const LocalTime &local, double fraction)
{
    DueForecast best = forecastByCalendar(books, task, now, local, fraction);
    if (!runsWithFire(task))
        return best;
    const Instant from = startOfCount(books, task, now, local);
    QMap<RecordId, UseRates> rates;
    QVector<BurnUse> uses;
    for (const Burn &burn : burnsForTask(books, task, now)) {
        if (burn.end <= from)
            continue;
        if ((task.everySeasoned || task.everyAsh) && !rates.contains(burn.pit))
            rates.insert(burn.pit, ratesOf(books, fuel, burn.pit));
        uses << wholeOf(books, burn, fuel, rates.value(burn.pit), from, now);
    }
    std::stable_sort(uses.begin(), uses.end(),
                     [](const BurnUse &a, const BurnUse &b) { return a.end < b.end; });
    MeterSums sums;
    for (const BurnUse &use : uses) {
        sums.add(use);
        const auto trigger = reachedBy(task, sums, fraction);
        if (!trigger)
            continue;
        DueForecast due;
        due.known = true;
        due.day = local.dateOf(use.end);
        due.at = use.end;
        due.reason = triggerWords(task, *trigger, books.yard().metric);
        consider(best, due);
        break;
    }
    return best;
}

} // namespace rickyard::domain
