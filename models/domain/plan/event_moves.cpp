#include "models/domain/plan/event_moves.h"

#include "models/domain/answers/field_words.h"
#include "models/domain/plan/event_series.h"

#include <QCoreApplication>

#include <algorithm>

namespace rickyard::domain {

namespace {

struct MoveWords {
    Q_DECLARE_TR_FUNCTIONS(EventMoves)
};

constexpr qint64 kDaySeconds = 86400;

qint64 daysTo(const Books &books, Instant from, QDate day)
{
    return toLocal(books, from).date().daysTo(day);
}

// The fire that was lit for a planned cook.
const Cook *fireOf(const Books &books, RecordId planned)
{
    for (const Cook &cook : books.cooks)
        if (cook.planned == planned)
            return &cook;
    return nullptr;
}

QString litWords(const Books &books, const PlannedCook &planned, const Cook &fire)
{
    return MoveWords::tr("%1 was lit for it on %2. What burns or has burned stays on its day: "
                         "change the plan's time in its form if it is wrong.")
        .arg(books.pits.value(planned.pit).name,
             LocalTime(books.yard().timeZone).timeText(fire.lit));
}

QString notMovable(const Event &event)
{
    if (event.state == EventState::Done)
        return MoveWords::tr("%1 is done and stays on the day it was. To hold it again, copy it.")
            .arg(event.name);
    if (event.state == EventState::Cancelled)
        return MoveWords::tr("%1 is cancelled. Set it to proposed or booked first, then move it.")
            .arg(event.name);
    return {};
}

QString lightingPast(const Books &books, const PlannedCook &cook, Instant now)
{
    const LocalTime local(books.yard().timeZone);
    if (cook.light + cook.length < now)
        return MoveWords::tr("%1 is past. The cook on %2 then counts as over: no wood is set aside "
                             "for it, and it is no longer planned.")
            .arg(local.dayText(local.dateOf(cook.light)), books.pits.value(cook.pit).name);
    return MoveWords::tr("The time to light %1, %2, has passed. It still counts as planned until "
                         "%3: light it at once, or give it another time.")
        .arg(books.pits.value(cook.pit).name, local.timeText(cook.light),
             local.timeText(cook.light + cook.length));
}

QString eventPast(const Books &books, const Event &event, const QVector<PlannedCook> &cooks,
                  Instant now)
{
    const LocalTime local(books.yard().timeZone);
    if (event.end <= now) {
        const QString wood =
            cooks.isEmpty() ? QString()
                            : MoveWords::tr(" Its cooks drop out of the plan, and no wood is set "
                                            "aside for them any more.");
        return MoveWords::tr("%1 is past. %2 then counts as over.%3")
            .arg(local.dayText(local.dateOf(event.start)), event.name, wood);
    }
    for (const PlannedCook &cook : cooks)
        if (cook.light < now)
            return lightingPast(books, cook, now);
    return {};
}

} // namespace

Outcome<Moved> movedEvent(const Books &books, RecordId id, QDate day, Instant now)
{
    const auto found = books.events.constFind(id);
    if (found == books.events.constEnd())
        return Outcome<Moved>::failed(MoveWords::tr("This event was deleted meanwhile."));
    Event event = *found;
    if (const QString why = notMovable(event); !why.isEmpty())
        return Outcome<Moved>::failed(why);
    const qint64 seconds = daysTo(books, event.start, day) * kDaySeconds;
    Moved moved;
    if (seconds == 0)
        return moved;
    event.start = wallShifted(books, event.start, seconds);
    event.end = wallShifted(books, event.end, seconds);
    moved.rows << toRow(event);
    for (const PlannedCook &cook : books.plannedCooks)
        if (cook.event == id)
            if (const Cook *fire = fireOf(books, cook.id))
                return Outcome<Moved>::failed(litWords(books, cook, *fire));
    QVector<PlannedCook> cooks = cooksAlong(books, *found, event);
    for (const PlannedCook &cook : std::as_const(cooks))
        moved.rows << toRow(cook);
    cooks.removeIf([](const PlannedCook &cook) { return cook.cancelled; });
    moved.cooks = static_cast<int>(cooks.size());
    moved.past = eventPast(books, event, cooks, now);
    return moved;
}

QVector<PlannedCook> cooksAlong(const Books &books, const Event &before, const Event &after)
{
    QVector<PlannedCook> cooks;
    const qint64 seconds = wallSeconds(books, before.start, after.start);
    for (PlannedCook cook : books.plannedCooks) {
        if (seconds == 0 || cook.event != after.id || fireOf(books, cook.id) != nullptr)
            continue;
        cook.light = wallShifted(books, cook.light, seconds);
        cooks << cook;
    }
    return cooks;
}

Outcome<Moved> movedCook(const Books &books, RecordId id, QDate day, Instant now)
{
    const auto found = books.plannedCooks.constFind(id);
    if (found == books.plannedCooks.constEnd())
        return Outcome<Moved>::failed(MoveWords::tr("This planned cook was deleted meanwhile."));
    PlannedCook cook = *found;
    if (cook.cancelled)
        return Outcome<Moved>::failed(
            MoveWords::tr("This cook is cancelled. Take “Cancelled” away first, then move it."));
    const auto event = books.events.constFind(cook.event.value_or(0));
    if (event != books.events.constEnd())
        if (const QString why = notMovable(*event); !why.isEmpty())
            return Outcome<Moved>::failed(why);
    if (const Cook *fire = fireOf(books, cook.id))
        return Outcome<Moved>::failed(litWords(books, cook, *fire));
    const qint64 days = daysTo(books, cook.light, day);
    Moved moved;
    if (days == 0)
        return moved;
    cook.light = wallShifted(books, cook.light, days * kDaySeconds);
    moved.rows << toRow(cook);
    if (cook.light < now)
        moved.past = lightingPast(books, cook, now);
    return moved;
}

} // namespace rickyard::domain
