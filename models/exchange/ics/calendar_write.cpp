#include "models/exchange/ics/calendar_write.h"

#include "models/exchange/ics/calendar_zone.h"

#include <QSet>

#include <algorithm>

namespace rickyard::exchange {

using domain::Instant;
using domain::Outcome;
using Bytes = Outcome<QByteArray>;

namespace {

// Text of RFC 5545 (section 3.3.11) has no control characters but line breaks, which libical
// escapes with commas, semicolons and backslashes.
QByteArray calendarText(const QString &text)
{
    QString clean;
    QString lines = text;
    lines.replace(QStringLiteral("\r\n"), QStringLiteral("\n"));
    for (const QChar c : std::as_const(lines)) {
        if (c == QLatin1Char('\r') || c == QLatin1Char('\n'))
            clean += QLatin1Char('\n');
        else if (c == QLatin1Char('\t'))
            clean += QLatin1Char(' ');
        else if (c.category() != QChar::Other_Control)
            clean += c;
    }
    return clean.trimmed().toUtf8();
}

icaltimetype utcTime(Instant instant)
{
    icaltimetype time = digitsOf(QDateTime::fromSecsSinceEpoch(instant.seconds(), Qt::UTC));
    time.zone = icaltimezone_get_utc_timezone();
    return time;
}

class CalendarWriter
{
public:
    explicit CalendarWriter(const Calendar &calendar)
        : m_calendar(calendar), m_zone(calendar.timeZone.toUtf8()),
          m_utc(m_zone.id() == "UTC" || m_zone.id() == "Etc/UTC")
    {
    }

    Bytes write()
    {
        if (const QString why = problem(); !why.isEmpty())
            return Bytes::failed(why);
        ComponentHandle root(icalcomponent_new_vcalendar());
        add(root, icalproperty_new_prodid("-//Rickyard//Rickyard//EN"));
        add(root, icalproperty_new_version("2.0"));
        add(root, icalproperty_new_calscale("GREGORIAN"));
        icalproperty *name = icalproperty_new_x(calendarText(m_calendar.yard).constData());
        icalproperty_set_x_name(name, "X-WR-CALNAME"); // of no standard, but read everywhere
        add(root, name);
        if (!m_utc)
            addZone(root);
        for (const CalendarEntry &entry : m_calendar.entries)
            icalcomponent_add_component(root.get(), entry.kind == CalendarEntry::Kind::ToDo
                                                        ? toDo(entry).release()
                                                        : appointment(entry).release());
        const TextHandle text(icalcomponent_as_ical_string_r(root.get()));
        return QByteArray(text.get());
    }

private:
    static void add(const ComponentHandle &to, icalproperty *property)
    {
        icalcomponent_add_property(to.get(), property);
    }

    [[nodiscard]] QString problem() const
    {
        if (!m_zone.isValid())
            return QStringLiteral("There is no time zone \"%1\". Set the yard's zone, as "
                                  "America/Chicago.")
                .arg(m_calendar.timeZone);
        QSet<QString> uids;
        for (const CalendarEntry &entry : m_calendar.entries) {
            const QString uid = calendarUid(m_calendar.mark, entry);
            if (uids.contains(uid))
                return QStringLiteral("Two entries of the calendar have one name, %1.").arg(uid);
            uids << uid;
            if (calendarText(entry.summary).isEmpty())
                return QStringLiteral("The entry %1 of the calendar has no words.").arg(uid);
            if (entry.kind == CalendarEntry::Kind::ToDo && !entry.due.isValid())
                return QStringLiteral("\"%1\" has no day it is due on.").arg(entry.summary);
        }
        return {};
    }

    void addZone(const ComponentHandle &root) const
    {
        QDate first = QDateTime::fromSecsSinceEpoch(m_calendar.written.seconds(), Qt::UTC).date();
        QDate last = first;
        for (const CalendarEntry &entry : m_calendar.entries) {
            if (entry.kind == CalendarEntry::Kind::ToDo)
                continue;
            const auto day = [](Instant at) {
                return QDateTime::fromSecsSinceEpoch(at.seconds(), Qt::UTC).date();
            };
            first = std::min(first, day(entry.start));
            last = std::max({last, day(entry.start), day(entry.end)});
        }
        icalcomponent_add_component(root.get(), zoneComponent(m_zone, first, last).release());
    }

    // A time of the yard's clock, with the name of its zone; in UTC when that is the zone.
    void addTime(const ComponentHandle &to, Instant instant,
                 icalproperty *(*make)(icaltimetype)) const
    {
        if (m_utc) {
            add(to, make(utcTime(instant)));
            return;
        }
        icalproperty *property =
            make(digitsOf(QDateTime::fromSecsSinceEpoch(instant.seconds(), m_zone)));
        icalproperty_add_parameter(property, icalparameter_new_tzid(m_zone.id().constData()));
        add(to, property);
    }

    void addCommon(const ComponentHandle &to, const CalendarEntry &entry) const
    {
        add(to, icalproperty_new_uid(calendarUid(m_calendar.mark, entry).toUtf8().constData()));
        add(to, icalproperty_new_dtstamp(utcTime(m_calendar.written)));
        add(to, icalproperty_new_summary(calendarText(entry.summary).constData()));
        if (const QByteArray text = calendarText(entry.description); !text.isEmpty())
            add(to, icalproperty_new_description(text.constData()));
        if (const QByteArray text = calendarText(entry.place); !text.isEmpty())
            add(to, icalproperty_new_location(text.constData()));
        for (const QString &category : entry.categories)
            add(to, icalproperty_new_categories(calendarText(category).constData()));
    }

    static void addAlarm(const ComponentHandle &to, const CalendarEntry &entry)
    {
        if (!entry.remind || entry.state == CalendarEntry::State::Cancelled)
            return;
        ComponentHandle alarm(icalcomponent_new_valarm());
        add(alarm, icalproperty_new_action(ICAL_ACTION_DISPLAY));
        add(alarm, icalproperty_new_description(calendarText(entry.summary).constData()));
        const icaltriggertype trigger =
            icaltriggertype_from_int(-static_cast<int>(entry.remind->base()));
        icalproperty *property = icalproperty_new_trigger(trigger);
        if (entry.kind == CalendarEntry::Kind::ToDo) // it has an end, and no start
            icalproperty_add_parameter(property, icalparameter_new_related(ICAL_RELATED_END));
        add(alarm, property);
        icalcomponent_add_component(to.get(), alarm.release());
    }

    [[nodiscard]] ComponentHandle appointment(const CalendarEntry &entry) const
    {
        using State = CalendarEntry::State;
        ComponentHandle event(icalcomponent_new_vevent());
        addCommon(event, entry);
        addTime(event, entry.start, icalproperty_new_dtstart);
        if (entry.end > entry.start)
            addTime(event, entry.end, icalproperty_new_dtend);
        add(event,
            icalproperty_new_status(entry.state == State::Cancelled   ? ICAL_STATUS_CANCELLED
                                    : entry.state == State::Tentative ? ICAL_STATUS_TENTATIVE
                                                                      : ICAL_STATUS_CONFIRMED));
        add(event, icalproperty_new_transp(entry.state == State::Cancelled ? ICAL_TRANSP_TRANSPARENT
                                                                           : ICAL_TRANSP_OPAQUE));
        addAlarm(event, entry);
        return event;
    }

    [[nodiscard]] ComponentHandle toDo(const CalendarEntry &entry) const
    {
        ComponentHandle task(icalcomponent_new_vtodo());
        addCommon(task, entry);
        icaltimetype due = icaltime_null_date();
        due.year = entry.due.year();
        due.month = entry.due.month();
        due.day = entry.due.day();
        add(task, icalproperty_new_due(due));
        if (entry.priority > 0)
            add(task, icalproperty_new_priority(std::min(entry.priority, 9)));
        add(task, icalproperty_new_status(ICAL_STATUS_NEEDSACTION));
        addAlarm(task, entry);
        return task;
    }

    const Calendar &m_calendar;
    QTimeZone m_zone;
    bool m_utc;
};

} // namespace

QString calendarUid(const QString &mark, const CalendarEntry &entry)
{
    QString uid = QStringLiteral("%1-%2").arg(domain::specOf(entry.table).key).arg(entry.record);
    if (!entry.part.isEmpty())
        uid += QString(QLatin1Char('-') + entry.part);
    return QStringLiteral("%1@%2.rickyard").arg(uid, mark);
}

Bytes writeCalendar(const Calendar &calendar)
{
    return CalendarWriter(calendar).write();
}

} // namespace rickyard::exchange
