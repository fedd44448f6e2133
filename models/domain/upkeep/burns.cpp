#include "models/domain/upkeep/burns.h"

#include "models/domain/upkeep/local_time.h"

#include <algorithm>

namespace rickyard::domain
{

namespace
{

Duration meanBurn(const Books &books, RecordId pit, Instant now, bool &assumed)
{
    qint64 sum = 0;
    qint64 count = 0;
    for (const Cook &c : books.cooks)
        if (c.pit == pit && c.fireOut && *c.fireOut <= now) {
            sum += (*c.fireOut - c.lit).base();
            ++count;
        }
    assumed = true;
    return count > 0 ? Duration::ofBase(sum / count) : kAssumedBurn;
}

Burn burnOfCook(const Books &books, const Cook &cook, Instant now)
{
    Burn burn;
    burn.pit = cook.pit;
    burn.cook = cook.id;
    burn.planned = cook.planned.value_or(0);
    burn.start = cook.lit;
    if (cook.fireOut && *cook.fireOut <= now) {
        burn.end = *cook.fireOut;
        return burn;
    }
    burn.running = true;
    const auto plan = books.plannedCooks.constFind(burn.planned);
    const Duration length = plan != books.plannedCooks.constEnd()
                                ? plan->length
                                : meanBurn(books, cook.pit, now, burn.endAssumed);
    burn.end = std::max(now, cook.lit + length);
    return burn;
}

bool stillPlanned(const Books &books, const PlannedCook &plan, Instant now)
{
    if (plan.cancelled || plan.light + plan.length <= now)
        return false;
    if (!plan.event)
        return true;
    const Event event = books.events.value(*plan.event);
    return event.state != EventState::Cancelled && event.state != EventState::Done;
}

bool fulfilled(const QVector<Burn> &cooks, const PlannedCook &plan)
{
    return std::any_of(cooks.begin(), cooks.end(), [&plan](const Burn &b) {
        return b.planned == plan.id ||
               (b.pit == plan.pit && b.start < plan.light + plan.length && plan.light < b.end);
    });
}

} // namespace

QVector<Burn> burnsOf(const Books &books, RecordId pit, Instant now)
{
    QVector<Burn> burns;
    for (const Cook &c : books.cooks)
        if ((pit == 0 || c.pit == pit) && c.lit <= now)
            burns << burnOfCook(books, c, now);
    const QVector<Burn> cooks = burns;
    for (const PlannedCook &p : books.plannedCooks) {
        if ((pit != 0 && p.pit != pit) || !stillPlanned(books, p, now) || fulfilled(cooks, p))
            continue;
        Burn burn;
        burn.pit = p.pit;
        burn.planned = p.id;
        burn.start = std::max(p.light, now);
        burn.end = p.light + p.length;
        burns << burn;
    }
    std::stable_sort(burns.begin(), burns.end(),
                     [](const Burn &a, const Burn &b) { return a.start < b.start; });
    return burns;
}

QVector<Burn> burnsForTask(const Books &books, const UpkeepTask &task, Instant now)
{
    return burnsOf(books, task.pit.value_or(0), now);
}

QString burnName(const Books &books, const Burn &burn)
{
    const PlannedCook plan = books.plannedCooks.value(burn.planned);
    if (plan.event && books.events.contains(*plan.event))
        return books.events.value(*plan.event).name;
    const LocalTime local(books.yard().timeZone);
    return QStringLiteral("cook of ") % local.dayText(local.dateOf(burn.start));
}

} // namespace rickyard::domain
