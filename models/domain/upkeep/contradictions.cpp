#include "models/domain/upkeep/contradictions.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/meters.h"
#include "models/domain/upkeep/occasions.h"

#include <QSet>

namespace rickyard::domain {

namespace {

Problem contradiction(const char *field, const QString &message)
{
    return {QString::fromUtf8(field), message};
}

void checkTriggers(const Books &books, const UpkeepTask &task, Problems &problems)
{
    const bool eachCook =
        task.occasion == Occasion::BeforeCook || task.occasion == Occasion::AfterCook;
    if (eachCook && task.everyCooks)
        problems << contradiction(
            "every_cooks", *task.everyCooks == 1
                               ? QStringLiteral("It is due with each cook already: leave the "
                                                "number of cooks empty.")
                               : QStringLiteral("Due with each cook, it never gets to %1 cooks. "
                                                "Leave one of the two empty.")
                                     .arg(*task.everyCooks));
    if (task.occasion == Occasion::AfterCook && (task.everyFireHours || task.everySeasoned))
        problems << contradiction(
            task.everyFireHours ? "every_fire_hours" : "every_seasoned",
            QStringLiteral("Due after each cook, it never gets to that. Leave one "
                           "of the two empty."));
    const bool intervals = task.everyDays || task.everyCooks || task.everyFireHours ||
                           task.everySeasoned || task.everyAsh;
    if (task.occasion == Occasion::BeforeSeason && !books.yard().seasonMonth && !intervals)
        problems << contradiction(
            "occasion", QStringLiteral("The yard has no season, so it would never be due: give "
                                       "the season's month under Yard, or an interval."));
    if (task.once && eachCook)
        problems << contradiction("once",
                                  QStringLiteral("A task for each cook cannot be done once only. "
                                                 "Take one of the two away."));
}

void checkReading(const UpkeepTask &task, Problems &problems)
{
    if (task.readingLow && task.readingHigh && *task.readingLow > *task.readingHigh)
        problems << contradiction(
            "reading_high", QStringLiteral("The lower limit %1 lies above the upper limit %2: no "
                                           "reading could pass. Exchange them.")
                                .arg(number(*task.readingLow))
                                .arg(number(*task.readingHigh)));
    if (task.reading == ReadingKind::None &&
        (task.readingLow || task.readingHigh || task.readingPoints > 1))
        problems << contradiction("reading",
                                  QStringLiteral("There are limits or points, but nothing "
                                                 "that is read. Say what is read."));
    const bool temperature =
        task.reading == ReadingKind::IcePoint || task.reading == ReadingKind::BoilingPoint;
    const Unit *unit = findUnit(Dimension::Temperature, task.readingUnit.trimmed());
    if (temperature && unit == nullptr)
        problems << contradiction("reading_unit",
                                  QStringLiteral("A thermometer is read in °F or °C. "
                                                 "Write one of them as the unit."));
    if (task.reading == ReadingKind::PlateThickness &&
        findUnit(Dimension::Length, task.readingUnit.trimmed()) == nullptr)
        problems << contradiction(
            "reading_unit", QStringLiteral("A thickness is read in in or mm. Write one of them as "
                                           "the unit."));
}

// A task that has to be done before itself, by way of others.
void checkOrder(const Books &books, const UpkeepTask &task, Problems &problems)
{
    QSet<RecordId> seen{task.id};
    std::optional<RecordId> next = task.after;
    while (next && *next != 0) {
        if (task.id != 0 && *next == task.id) {
            problems << contradiction("after",
                                      QStringLiteral("These tasks wait for each other in a "
                                                     "ring. Choose another task to go first."));
            return;
        }
        if (seen.contains(*next))
            return;
        seen.insert(*next);
        const auto before = books.tasks.constFind(*next);
        if (before == books.tasks.constEnd())
            return;
        if (next == task.after && before->retired)
            problems << contradiction("after",
                                      QStringLiteral("%1, which is to be done before it, is "
                                                     "retired. Choose another, or none.")
                                          .arg(before->name));
        next = before->after;
    }
}

Instant newestRecord(const Books &books, const UpkeepTask &task)
{
    Instant newest;
    for (const Cook &cook : books.cooks)
        newest = std::max(newest, cook.fireOut.value_or(cook.lit));
    for (const Visit &visit : books.visits)
        if (visit.state == VisitState::Done)
            newest = std::max(newest, visit.end.value_or(visit.start));
    const LocalTime local(books.yard().timeZone);
    return task.since.isValid() ? std::max(newest, local.startOf(task.since)) : newest;
}

// Put off past a fire or a departure that the task blocks by then.
void checkSnooze(const Books &books, const UpkeepTask &task, Problems &problems)
{
    if (!task.snoozedUntil.isValid() || (!task.blocksLighting && !task.blocksTowing))
        return;
    const LocalTime local(books.yard().timeZone);
    const Instant from = newestRecord(books, task);
    const Instant until = local.startOf(task.snoozedUntil);
    const DueForecast due = forecastDue(books, FuelAnswer(), task, from, local);
    if (!due.known)
        return;
    const auto say = [&](const QString &what, Instant at) {
        problems << contradiction(
            "snoozed_until",
            QStringLiteral("%1 on %2, and this blocks it from %3 on: putting it "
                           "off does not lift the block. Put it off to that day "
                           "at most, or do it before.")
                .arg(what, local.dayText(local.dateOf(at)), local.dayText(local.dateOf(due.at))));
    };
    if (task.blocksLighting)
        for (const Burn &burn : burnsForTask(books, task, from))
            if (burn.cook == 0 && burn.start >= std::max(from, due.at) && burn.start < until) {
                say(QStringLiteral("%1 is to be lit").arg(books.pits.value(burn.pit).name),
                    burn.start);
                return;
            }
    if (task.blocksTowing)
        for (const Departure &departure : departuresOf(books, task.pit.value_or(0)))
            if (departure.leaves >= std::max(from, due.at) && departure.leaves < until) {
                say(QStringLiteral("The trailer leaves for %1")
                        .arg(books.events.value(departure.event).name),
                    departure.leaves);
                return;
            }
}

} // namespace

Problems taskContradictions(const Books &books, const UpkeepTask &task)
{
    Problems problems;
    checkTriggers(books, task, problems);
    checkReading(task, problems);
    checkOrder(books, task, problems);
    checkSnooze(books, task, problems);
    return problems;
}

} // namespace rickyard::domain
