#include "models/exchange/ics/calendar_of.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/starter_tasks.h"

#include <algorithm>

namespace rickyard::exchange {

using domain::Books;
using domain::Duration;
using domain::Event;
using domain::EventState;
using domain::Instant;
using domain::PlannedCook;
using domain::TableId;
using domain::UpkeepTask;
using domain::Visit;
using domain::VisitState;
using State = CalendarEntry::State;

namespace {

// Our own choices, no source: the day before an event, an hour before a drive, two hours before a
// fire or a visit, and at six in the evening before the day a task is due.
constexpr Duration kBeforeEvent = Duration::ofBase(24 * 3600);
constexpr Duration kBeforeDrive = Duration::ofBase(3600);
constexpr Duration kBeforeWork = Duration::ofBase(2 * 3600);
constexpr Duration kBeforeDue = Duration::ofBase(6 * 3600);

QString lineOf(const char *label, const QString &value)
{
    return value.isEmpty() ? QString()
                           : QString(QString::fromUtf8(label) + QStringLiteral(": ") + value);
}

QString text(QStringList lines)
{
    lines.removeAll(QString());
    return lines.join(QLatin1Char('\n'));
}

QString taskTitle(const Books &books, const UpkeepTask &task)
{
    if (!task.pit || !books.pits.contains(*task.pit))
        return task.name;
    return QStringLiteral("%1 on %2").arg(task.name, books.pits.value(*task.pit).name);
}

QString taskText(const UpkeepTask &task)
{
    return text({lineOf("Tools", task.tools), task.steps, task.cautions});
}

class YardCalendar
{
public:
    YardCalendar(const Books &books, const domain::UpkeepAnswer &upkeep, Instant now)
        : m_books(books), m_upkeep(upkeep), m_now(now)
    {
        m_calendar.yard = books.yard().name;
        m_calendar.mark = books.yard().mark;
        m_calendar.timeZone = books.yard().timeZone;
        m_calendar.written = now;
    }

    Calendar make()
    {
        for (const Event &event : m_books.events)
            if (event.end > m_now && event.state != EventState::Done)
                addEvent(event);
        for (const PlannedCook &cook : m_books.plannedCooks)
            if (cook.light + cook.length > m_now)
                addCook(cook);
        for (const Visit &visit : m_books.visits)
            addVisit(visit);
        for (const domain::TaskDue &due : m_upkeep.tasks)
            addDue(due);
        return std::move(m_calendar);
    }

private:
    CalendarEntry &add(TableId table, domain::RecordId id, const char *category)
    {
        CalendarEntry entry;
        entry.table = table;
        entry.record = id;
        entry.categories = {QString::fromUtf8(category)};
        m_calendar.entries << entry;
        return m_calendar.entries.last();
    }

    static State stateOf(EventState state)
    {
        return state == EventState::Cancelled  ? State::Cancelled
               : state == EventState::Proposed ? State::Tentative
                                               : State::Confirmed;
    }

    void addEvent(const Event &event)
    {
        CalendarEntry &entry = add(TableId::Event, event.id, "Event");
        entry.state = stateOf(event.state);
        entry.summary = event.name;
        entry.place = event.place;
        entry.start = event.start;
        entry.end = event.end;
        entry.remind = kBeforeEvent;
        entry.description =
            text({event.covers ? lineOf("Covers", QString::number(*event.covers)) : QString(),
                  lineOf("Site rules", event.siteRules), event.note});
        if (!event.travel || event.travel->base() <= 0)
            return;
        addDrive(event, "drive-out", QStringLiteral("Drive to %1"), event.start - *event.travel,
                 event.start);
        addDrive(event, "drive-back", QStringLiteral("Drive back from %1"), event.end,
                 event.end + *event.travel);
    }

    void addDrive(const Event &event, const char *part, const QString &words, Instant from,
                  Instant to)
    {
        CalendarEntry &entry = add(TableId::Event, event.id, "Drive");
        entry.part = QString::fromUtf8(part);
        entry.state = stateOf(event.state);
        entry.summary = words.arg(event.name);
        entry.place = event.place;
        entry.start = from;
        entry.end = to;
        entry.remind = kBeforeDrive;
        if (event.towed)
            entry.description =
                QString(QStringLiteral("A pit is towed: cold and empty of ash. Hitch, chains, "
                                       "lights and tyres are looked at before every trip. ") +
                        domain::authorityCaution());
    }

    void addCook(const PlannedCook &cook)
    {
        const domain::Yard yard = m_books.yard();
        const auto units =
            yard.metric ? domain::UnitSystem::Metric : domain::UnitSystem::UsCustomary;
        CalendarEntry &entry = add(TableId::PlannedCook, cook.id, "Fire");
        const Event event = cook.event ? m_books.events.value(*cook.event) : Event();
        entry.state = cook.cancelled || event.state == EventState::Cancelled ? State::Cancelled
                      : event.state == EventState::Proposed                  ? State::Tentative
                                                                             : State::Confirmed;
        entry.summary = QStringLiteral("Fire on %1").arg(m_books.pits.value(cook.pit).name);
        if (!cook.foods.isEmpty())
            entry.summary += QString(QStringLiteral(": ") + cook.foods);
        entry.start = cook.light;
        entry.end = cook.light + cook.length;
        entry.remind = kBeforeWork;
        const QString target =
            cook.target ? domain::show(*cook.target, units, QLocale::c()) : QString();
        entry.description =
            text({lineOf("For", event.name), lineOf("Target", target), cook.note,
                  QString(QStringLiteral("Outdoors, away from doors and windows: carbon monoxide "
                                         "has no smell. Extinguisher at hand; somebody stays with "
                                         "the fire. ") +
                          domain::authorityCaution())});
    }

    void addVisit(const Visit &visit)
    {
        if (visit.state != VisitState::Placed && visit.state != VisitState::Started)
            return;
        const UpkeepTask task = m_books.tasks.value(visit.task);
        const Instant end = visit.end.value_or(visit.start + task.work);
        if (end <= m_now)
            return;
        m_booked << visit.task;
        CalendarEntry &entry = add(TableId::Visit, visit.id, "Upkeep");
        entry.summary = taskTitle(m_books, task);
        entry.start = visit.start;
        entry.end = end;
        entry.remind = kBeforeWork;
        entry.description = text({lineOf("Who", visit.who), visit.note, taskText(task)});
    }

    void addDue(const domain::TaskDue &due)
    {
        const UpkeepTask task = m_books.tasks.value(due.task);
        const QDate today = domain::dayOf(m_now, QTimeZone(m_calendar.timeZone.toUtf8()));
        if (!due.due.isValid() || task.retired || m_booked.contains(due.task) ||
            due.due > today.addDays(kCalendarDays))
            return;
        CalendarEntry &entry = add(TableId::UpkeepTask, due.task, "Upkeep");
        entry.kind = CalendarEntry::Kind::ToDo;
        entry.summary = taskTitle(m_books, task);
        entry.due = task.snoozedUntil.isValid() ? std::max(due.due, task.snoozedUntil) : due.due;
        entry.priority = std::clamp(10 - task.priority, 1, 9); // theirs counts from the first
        entry.remind = kBeforeDue;
        entry.description = text(
            {due.overdue ? QStringLiteral("Overdue.") : QString(), lineOf("Due", due.dueReason),
             task.blocksLighting
                 ? QStringLiteral("Once it is overdue, its pit is not lit before it is done.")
                 : QString(),
             task.blocksTowing
                 ? QStringLiteral("Once it is overdue, nothing is towed before it is done.")
                 : QString(),
             taskText(task)});
    }

    const Books &m_books;
    const domain::UpkeepAnswer &m_upkeep;
    Instant m_now;
    Calendar m_calendar;
    QSet<domain::RecordId> m_booked;
};

} // namespace

Calendar calendarOf(const Books &books, const domain::UpkeepAnswer &upkeep, Instant now)
{
    return YardCalendar(books, upkeep, now).make();
}

} // namespace rickyard::exchange
