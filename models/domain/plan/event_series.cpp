#include "models/domain/plan/event_series.h"

#include "models/domain/answers/field_words.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

// The wall clock's reading, counted like UTC: differences of it know no clock change.
qint64 wallClock(const Books &books, Instant time)
{
    const QDateTime local = toLocal(books, time);
    return QDateTime(local.date(), local.time(), Qt::UTC).toSecsSinceEpoch();
}

QDate localDay(const Books &books, Instant time)
{
    return toLocal(books, time).date();
}

const Cook *cookThatFulfils(const Books &books, RecordId planned)
{
    for (const Cook &cook : books.cooks)
        if (cook.planned == planned && cook.fireOut)
            return &cook;
    return nullptr;
}

void takeAsCooked(PlannedCook &plan, const Cook &cook)
{
    plan.light = cook.lit;
    // Whole quarters of an hour: a plan is not made to the second.
    plan.length = Duration::ofBase(((*cook.fireOut - cook.lit).base() + 450) / 900 * 900);
    if (!cook.foods.isEmpty())
        plan.foods = cook.foods;
    if (cook.foodMass)
        plan.foodMass = cook.foodMass;
}

// Copies put on the shelf for a look, each with ids of its own.
class Trial
{
public:
    explicit Trial(const Books &books)
        : m_books(books), m_nextEvent(highestId(books, TableId::Event) + 1),
          m_nextCook(highestId(books, TableId::PlannedCook) + 1)
    {
    }
    void put(EventCopy copy, int index)
    {
        copy.event.id = m_nextEvent++;
        m_books.events.insert(copy.event.id, copy.event);
        m_events.insert(copy.event.id, index);
        for (PlannedCook &cook : copy.cooks) {
            cook.id = m_nextCook++;
            cook.event = copy.event.id;
            m_books.plannedCooks.insert(cook.id, cook);
            m_cooks.insert(cook.id, index);
        }
    }
    // By the index of the copy.
    [[nodiscard]] QMultiMap<int, Clash> clashes(Instant now, const UpkeepAnswer &upkeep) const
    {
        const LocalTime local(m_books.yard().timeZone);
        QMultiMap<int, Clash> found;
        for (const Clash &clash : clashesOf(m_books, now, local, upkeep)) {
            const int first = indexOf(clash.first);
            const int second = indexOf(clash.second);
            if (first >= 0)
                found.insert(first, clash);
            if (second >= 0 && second != first)
                found.insert(second, clash);
        }
        return found;
    }

private:
    [[nodiscard]] int indexOf(const Link &link) const
    {
        if (link.table == TableId::Event)
            return m_events.value(link.id, -1);
        return link.table == TableId::PlannedCook ? m_cooks.value(link.id, -1) : -1;
    }

    Books m_books;
    RecordId m_nextEvent;
    RecordId m_nextCook;
    QMap<RecordId, int> m_events;
    QMap<RecordId, int> m_cooks;
};

QVector<Clash> inOrder(QVector<Clash> clashes)
{
    std::stable_sort(clashes.begin(), clashes.end(),
                     [](const Clash &a, const Clash &b) { return a.at < b.at; });
    return clashes;
}

// Fields that are each record's own.
bool ownField(const QString &key)
{
    static const QStringList own{
        QStringLiteral("start"), QStringLiteral("end"),     QStringLiteral("light"),
        QStringLiteral("event"), QStringLiteral("series"),  QStringLiteral("repeat_rule"),
        QStringLiteral("typed"), QStringLiteral("outside"), QStringLiteral("wind")};
    return own.contains(key);
}

void copyChangedFields(const Row &before, const Row &after, Row &to)
{
    const TableSpec &spec = specOf(after.table);
    for (const FieldSpec &field : spec.fields) {
        const Value value = valueOf(after, field.key);
        if (!ownField(field.key) && value != valueOf(before, field.key))
            setValue(to, field.key, value);
    }
}

LaterChange laterEvents(const Books &books, const Row &beforeRow, const Row &afterRow)
{
    const auto before = fromRow<Event>(beforeRow);
    const auto after = fromRow<Event>(afterRow);
    const qint64 start = wallSeconds(books, before.start, after.start);
    const qint64 end = wallSeconds(books, before.end, after.end);
    LaterChange change;
    for (const RecordId id : laterInSeries(books, after.id)) {
        Row row = toRow(books.events.value(id));
        copyChangedFields(beforeRow, afterRow, row);
        auto event = fromRow<Event>(row);
        event.start = wallShifted(books, event.start, start);
        event.end = wallShifted(books, event.end, end);
        change.rows << toRow(event);
    }
    return change;
}

std::optional<PlannedCook> sameCookIn(const Books &books, const Event &event, RecordId pit,
                                      qint64 beforeServing)
{
    for (const PlannedCook &cook : books.plannedCooks)
        if (cook.event == event.id && cook.pit == pit && !cook.cancelled &&
            wallSeconds(books, cook.light, event.start) == beforeServing)
            return cook;
    return std::nullopt;
}

LaterChange laterCooks(const Books &books, const std::optional<Row> &beforeRow, const Row &afterRow)
{
    LaterChange change;
    const auto after = fromRow<PlannedCook>(afterRow);
    const Event event = books.events.value(after.event.value_or(0));
    for (const RecordId id : laterInSeries(books, event.id)) {
        const Event later = books.events.value(id);
        if (!beforeRow) {
            PlannedCook cook = after;
            cook.id = 0;
            cook.event = id;
            cook.light =
                wallShifted(books, later.start, wallSeconds(books, event.start, after.light));
            cook.typed.clear();
            change.rows << toRow(cook);
            continue;
        }
        const auto before = fromRow<PlannedCook>(*beforeRow);
        const auto same =
            sameCookIn(books, later, before.pit, wallSeconds(books, before.light, event.start));
        if (!same) {
            ++change.without;
            continue;
        }
        Row row = toRow(*same);
        copyChangedFields(*beforeRow, afterRow, row);
        auto cook = fromRow<PlannedCook>(row);
        cook.light = wallShifted(books, cook.light, wallSeconds(books, before.light, after.light));
        change.rows << toRow(cook);
    }
    return change;
}

} // namespace

qint64 wallSeconds(const Books &books, Instant from, Instant to)
{
    return wallClock(books, to) - wallClock(books, from);
}

Instant wallShifted(const Books &books, Instant time, qint64 seconds)
{
    if (seconds == 0)
        return time;
    const QDateTime wall = QDateTime::fromSecsSinceEpoch(wallClock(books, time) + seconds, Qt::UTC);
    return LocalTime(books.yard().timeZone)
        .at(wall.date(), Duration::ofBase(wall.time().msecsSinceStartOfDay() / 1000));
}

EventCopy copyOf(const Books &books, RecordId id, Instant start, CopyHours hours)
{
    EventCopy copy;
    copy.event = books.events.value(id);
    const qint64 shift = wallSeconds(books, copy.event.start, start);
    copy.event.id = 0;
    copy.event.start = start;
    copy.event.end = wallShifted(books, copy.event.end, shift);
    copy.event.repeatRule.clear();
    copy.event.series.clear();
    copy.event.typed.clear();
    if (copy.event.state == EventState::Done || copy.event.state == EventState::Cancelled)
        copy.event.state = EventState::Booked;
    for (PlannedCook cook : books.plannedCooks) {
        if (cook.event != id || cook.cancelled)
            continue;
        if (hours == CopyHours::AsCooked)
            if (const Cook *done = cookThatFulfils(books, cook.id))
                takeAsCooked(cook, *done);
        cook.id = 0;
        cook.event.reset();
        cook.light = wallShifted(books, cook.light, shift);
        cook.outside.reset();
        cook.wind.reset();
        cook.typed.clear();
        copy.cooks << cook;
    }
    std::stable_sort(copy.cooks.begin(), copy.cooks.end(),
                     [](const PlannedCook &a, const PlannedCook &b) { return a.light < b.light; });
    return copy;
}

QVector<SeriesDay> seriesDays(const Books &books, RecordId event, const QVector<Instant> &starts,
                              Instant now, const UpkeepAnswer &upkeep)
{
    const Event first = books.events.value(event);
    QSet<QDate> taken;
    for (const Event &other : books.events)
        if (!first.series.isEmpty() && other.series == first.series && other.id != event &&
            other.state != EventState::Cancelled)
            taken.insert(localDay(books, other.start));
    QVector<SeriesDay> days;
    Trial trial(books);
    for (const Instant start : starts) {
        if (localDay(books, start) == localDay(books, first.start))
            continue;
        SeriesDay day;
        day.start = start;
        const EventCopy copy = copyOf(books, event, start);
        day.past = copy.event.end <= now;
        day.there = taken.contains(localDay(books, start));
        if (!day.past && !day.there)
            trial.put(copy, static_cast<int>(days.size()));
        days << day;
    }
    const auto clashes = trial.clashes(now, upkeep);
    for (int i = 0; i < days.size(); ++i)
        days[i].clashes = inOrder(clashes.values(i));
    return days;
}

QVector<Clash> clashesOfCopy(const Books &books, const EventCopy &copy, Instant now)
{
    Trial trial(books);
    trial.put(copy, 0);
    return inOrder(trial.clashes(now, {}).values(0));
}

QVector<RecordId> laterInSeries(const Books &books, RecordId id)
{
    QVector<RecordId> later;
    const Event event = books.events.value(id);
    if (event.series.isEmpty())
        return later;
    QVector<Event> found;
    for (const Event &other : books.events)
        if (other.series == event.series && other.id != id && other.start > event.start &&
            other.state != EventState::Done && other.state != EventState::Cancelled)
            found << other;
    std::stable_sort(found.begin(), found.end(),
                     [](const Event &a, const Event &b) { return a.start < b.start; });
    for (const Event &other : found)
        later << other.id;
    return later;
}

LaterChange sameOnLater(const Books &books, const std::optional<Row> &before, const Row &after)
{
    if (after.table == TableId::PlannedCook)
        return laterCooks(books, before, after);
    if (after.table == TableId::Event && before)
        return laterEvents(books, *before, after);
    return {};
}

} // namespace rickyard::domain
