#include "models/workspace/commands/event_verbs.h"

#include "models/domain/plan/event_moves.h"

namespace rickyard::commands {

using namespace rickyard::domain;

namespace {

// The rows of a copy, under a fresh id.
QVector<Row> rowsOf(Verbs &verbs, EventCopy copy)
{
    QVector<Row> rows;
    copy.event.id = verbs.yard().nextId(TableId::Event);
    rows << toRow(copy.event);
    for (PlannedCook &cook : copy.cooks) {
        cook.event = copy.event.id;
        rows << toRow(cook);
    }
    return rows;
}

Outcome<Done> write(Verbs &verbs, const Outcome<Moved> &moved, const QString &name)
{
    if (!moved)
        return Outcome<Done>(moved.problems());
    const auto put = verbs.putAll(moved->rows, name, Verbs::Origin::ByHand);
    return put ? Outcome<Done>(Done{}) : Outcome<Done>(put.problems());
}

} // namespace

Outcome<QVector<RecordId>> repeatEvent(Verbs &verbs, RecordId id, const QVector<Instant> &starts,
                                       const QString &rule)
{
    using Ids = Outcome<QVector<RecordId>>;
    const Books &books = verbs.books();
    const auto found = books.events.constFind(id);
    if (found == books.events.constEnd())
        return Ids::failed(Verbs::tr("This event was deleted meanwhile."));
    if (starts.isEmpty())
        return Ids::failed(Verbs::tr("Choose one day at least to repeat it on."));
    if (starts.size() > kMostRepeats)
        return Ids::failed(Verbs::tr("%1 days are too many at once. Repeat it %2 times at most, "
                                     "and go on from the last one later.")
                               .arg(starts.size())
                               .arg(kMostRepeats));
    Event first = *found;
    const QString series = first.series.isEmpty()
                               ? QString(QStringLiteral("event-") % QString::number(id))
                               : first.series;
    first.series = series;
    first.repeatRule = rule;
    QVector<Row> rows{toRow(first)};
    QVector<RecordId> made;
    for (const Instant start : starts) {
        EventCopy copy = copyOf(books, id, start);
        if (copy.event.end <= verbs.now())
            return Ids::failed(
                Verbs::tr("%1 is past. Leave it out, or begin the repeats later.")
                    .arg(LocalTime(books.yard().timeZone).timeText(copy.event.start)));
        copy.event.series = series;
        copy.event.repeatRule = rule;
        const QVector<Row> more = rowsOf(verbs, copy);
        made << more.first().id;
        rows << more;
    }
    const auto put = verbs.putAll(rows, Verbs::tr("repeat %1").arg(first.name));
    if (!put)
        return Ids(put.problems());
    return made;
}

Outcome<RecordId> addEventCopy(Verbs &verbs, const EventCopy &copy)
{
    const QVector<Row> rows = rowsOf(verbs, copy);
    const auto put = verbs.putAll(rows, Verbs::tr("copy %1").arg(copy.event.name));
    if (!put)
        return Outcome<RecordId>(put.problems());
    return rows.first().id;
}

Outcome<Done> moveEvent(Verbs &verbs, RecordId event, QDate day)
{
    return write(verbs, movedEvent(verbs.books(), event, day, verbs.now()),
                 Verbs::tr("move %1").arg(verbs.books().events.value(event).name));
}

Outcome<Done> moveCook(Verbs &verbs, RecordId cook, QDate day)
{
    const RecordId pit = verbs.books().plannedCooks.value(cook).pit;
    return write(verbs, movedCook(verbs.books(), cook, day, verbs.now()),
                 Verbs::tr("move the cook on %1").arg(verbs.books().pits.value(pit).name));
}

Outcome<int> changeLater(Verbs &verbs, const std::optional<Row> &before, const Row &after)
{
    const LaterChange change = sameOnLater(verbs.books(), before, after);
    if (change.rows.isEmpty())
        return Outcome<int>::failed(Verbs::tr("No later one of the series has it."));
    const auto put =
        verbs.putAll(change.rows, Verbs::tr("change the later ones too"), Verbs::Origin::ByHand);
    if (!put)
        return Outcome<int>(put.problems());
    return static_cast<int>(put.value().size());
}

Outcome<int> endSeriesAt(Verbs &verbs, RecordId event)
{
    QVector<RecordId> gone = laterInSeries(verbs.books(), event);
    gone.prepend(event);
    const auto removed = verbs.remove(TableId::Event, gone);
    if (!removed)
        return Outcome<int>(removed.problems());
    return static_cast<int>(gone.size());
}

} // namespace rickyard::commands
