#include "models/domain/upkeep/ash.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/meter_use.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

QString canName(const AshLoad &load)
{
    const QString can = load.can.trimmed();
    if (can.isEmpty())
        return QStringLiteral("a can");
    // Whoever writes "1" means can 1.
    return can.size() <= 2 || can.at(0).isDigit() ? QString(QStringLiteral("can ") % can) : can;
}

// Cans are told apart by what people write on them.
bool sameCan(const AshLoad &a, const AshLoad &b)
{
    return a.can.trimmed().compare(b.can.trimmed(), Qt::CaseInsensitive) == 0;
}

QString hoursText(Duration length)
{
    return QString::number(static_cast<qint64>(std::floor(hours(length)))) % QStringLiteral(" h");
}

// When hot ash was last added to the can that this load lies in.
Instant lastAdded(const Books &books, const AshLoad &load, Instant now)
{
    Instant last = load.takenOut;
    const Instant until = load.tipped && *load.tipped <= now ? *load.tipped : now;
    for (const AshLoad &other : books.ashLoads)
        if (sameCan(other, load) && other.takenOut <= until &&
            (!other.tipped || *other.tipped > load.takenOut))
            last = std::max(last, other.takenOut);
    return last;
}

QString stateWords(const AshLoad &load, const AshState &state, Instant added,
                   const LocalTime &local, Instant now)
{
    const QString least = hoursText(kAshCooling) % QStringLiteral(" at the least");
    QString text = QStringLiteral("in ") % canName(load) % QStringLiteral(" since ") %
                   local.timeText(load.takenOut);
    if (state.tipped) {
        text = QStringLiteral("tipped ") % local.timeText(*load.tipped);
        if (!load.where.trimmed().isEmpty())
            text += QStringLiteral(", ") % load.where.trimmed();
        if (state.tippedEarly)
            text += QStringLiteral("; only ") % hoursText(*load.tipped - added) %
                    QStringLiteral(" after hot ash came into the can, not ") % least %
                    QStringLiteral(": look for embers where it lies, and wet it");
        return text;
    }
    if (added > load.takenOut)
        text += QStringLiteral(", hot ash added ") % local.timeText(added);
    if (state.waiting)
        return text % QStringLiteral("; not to be tipped before ") %
               local.timeText(state.notBefore) % QStringLiteral(", ") % least %
               QStringLiteral("; local code decides");
    return text % QStringLiteral("; its ") % hoursText(now - added) %
           QStringLiteral(" are more than the ") % hoursText(kAshCooling) %
           QStringLiteral(" that are the least: treat it as hot all the same, wet it and stir it "
                          "before it is tipped; local code decides");
}

} // namespace

QVector<AshState> ashStates(const Books &books, Instant now, const LocalTime &local)
{
    QVector<AshLoad> loads;
    for (const AshLoad &load : books.ashLoads)
        if (load.takenOut <= now)
            loads << load;
    std::stable_sort(loads.begin(), loads.end(), [now](const AshLoad &a, const AshLoad &b) {
        const bool outA = a.tipped && *a.tipped <= now;
        const bool outB = b.tipped && *b.tipped <= now;
        return outA != outB ? outB : a.takenOut > b.takenOut;
    });
    QVector<AshState> states;
    for (const AshLoad &load : std::as_const(loads)) {
        const Instant added = lastAdded(books, load, now);
        AshState state;
        state.load = load.id;
        state.pit = load.pit;
        state.can = load.can;
        state.tipped = load.tipped && *load.tipped <= now;
        state.notBefore = added + kAshCooling;
        state.waiting = !state.tipped && now < state.notBefore;
        state.tippedEarly = state.tipped && *load.tipped < state.notBefore;
        state.words = stateWords(load, state, added, local, now);
        states << state;
    }
    return states;
}

AshInPit ashInPit(const Books &books, const FuelAnswer &fuel, RecordId pit, Instant now,
                  const LocalTime &local)
{
    AshInPit ash;
    ash.pit = pit;
    for (const AshLoad &load : books.ashLoads)
        if (load.pit == pit && load.takenOut <= now && (!ash.since || load.takenOut > *ash.since))
            ash.since = load.takenOut;
    MeterSums sums;
    for (const Burn &burn : burnsOf(books, pit, now)) {
        if (burn.cook == 0 || (ash.since && burn.end <= *ash.since))
            continue;
        const BurnUse use = usedOf(books, burn, fuel, ash.since.value_or(Instant()), now);
        sums.add(use);
        ++ash.cooks;
        ash.withoutWood += use.heatKnown ? 0 : 1;
        ash.burning = ash.burning || burn.running;
    }
    ash.ash = massFromKilograms(sums.ash);
    const bool metric = books.yard().metric;
    const QString amount =
        show(ash.ash, metric ? UnitSystem::Metric : UnitSystem::UsCustomary, local.locale(), 1);
    ash.words =
        ash.cooks == 0
            ? QStringLiteral("no fire since ash was last taken out")
            : QString(QStringLiteral("about ") % amount % QStringLiteral(" of ash from ") %
                      limitWords(ash.cooks, "cook", "cooks") % QStringLiteral(", char on top"));
    ash.words += ash.since ? QStringLiteral("; last taken out ") % local.timeText(*ash.since)
                           : QStringLiteral("; never recorded as taken out");
    if (ash.withoutWood > 0)
        ash.words += QStringLiteral("; ") %
                     limitWords(ash.withoutWood, "cook without a wood figure is not counted",
                                "cooks without a wood figure are not counted");
    if (ash.burning)
        ash.words += QStringLiteral("; it burns now");
    return ash;
}

} // namespace rickyard::domain
