#include "views/events/calendar_items.h"

#include "models/items/wording.h"
#include "views/ribbon/ribbon_items.h"

#include <QCoreApplication>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString say(const char *text)
{
    return QCoreApplication::translate("Calendar", text);
}

QDateTime wallTime(const Books &books, Instant time)
{
    const QDateTime local = items::toLocal(books, time);
    return {local.date(), local.time(), Qt::UTC};
}

bool sameLink(const Link &a, const Link &b)
{
    return a.table == b.table && a.id == b.id && a.id != 0;
}

// A clash names visits; an evening's bar opens their first task.
bool concerns(const Books &books, const Clash &clash, const RibbonItem &item)
{
    if (sameLink(clash.first, item.link) || sameLink(clash.second, item.link))
        return true;
    if (item.lane != Lane::Upkeep)
        return false;
    for (const Link &link : {clash.first, clash.second}) {
        if (link.table != TableId::Visit)
            continue;
        const QDateTime start = wallTime(books, books.visits.value(link.id).start);
        if (!item.tentative && start >= item.start && start <= item.end)
            return true;
    }
    return false;
}

void addTravel(const Books &books, CalendarItem &shown)
{
    const Event event = books.events.value(shown.item.link.id);
    const Duration way = event.travel.value_or(Duration());
    if (way <= Duration())
        return;
    shown.item.start = wallTime(books, event.start - way);
    shown.item.end = wallTime(books, event.end + way);
    const QLocale locale(QStringLiteral("en_US"));
    shown.item.detail +=
        QString(QLatin1Char('\n') + say("The crew leaves %1 and is back %2")
                                        .arg(items::timeText(books, event.start - way, locale),
                                             items::timeText(books, event.end + way, locale)));
}

void addClashes(const Books &books, const QVector<Clash> &clashes, CalendarItem &shown)
{
    for (const Clash &clash : clashes)
        if (concerns(books, clash, shown.item))
            shown.clashes << clash;
    if (shown.clashes.isEmpty())
        return;
    shown.item.standing = Standing::Act;
    shown.item.label = say("%1: %2").arg(clashWord(shown.clashes.first().kind), shown.item.label);
    for (const Clash &clash : std::as_const(shown.clashes))
        shown.item.detail += QString(QLatin1Char('\n') + clash.what);
}

// What takes the crew elsewhere, from an imported calendar.
QVector<RibbonItem> busyItems(const Books &books, QDate from, QDate until)
{
    QVector<RibbonItem> items;
    for (const BusyTime &busy : books.busyTimes) {
        RibbonItem item;
        item.link = {TableId::BusyTime, busy.id};
        item.lane = Lane::Upkeep;
        item.start = wallTime(books, busy.start);
        item.end = wallTime(books, busy.end);
        item.tentative = true;
        item.label = busy.summary.isEmpty() ? say("Busy") : say("Busy: %1").arg(busy.summary);
        item.detail =
            QString(item.label + QLatin1Char('\n') +
                    say("Until %1")
                        .arg(items::timeText(books, busy.end, QLocale(QStringLiteral("en_US")))) +
                    QLatin1Char('\n') + say("From the calendar %1").arg(busy.source));
        if (item.end.date() >= from && item.start.date() < until)
            items << item;
    }
    return items;
}

bool isMovable(const Books &books, const RibbonItem &item)
{
    if (item.link.table == TableId::PlannedCook)
        return true;
    if (item.link.table != TableId::Event)
        return false;
    return books.events.value(item.link.id).state != EventState::Done;
}

} // namespace

QVector<CalendarItem> calendarItems(const Books &books, const Answers &answers,
                                    const QVector<Clash> &clashes, QDate from, QDate until,
                                    QDate today)
{
    QVector<RibbonItem> all;
    const int days = static_cast<int>(from.daysTo(until));
    for (const RibbonItem &item : ribbonItems(books, answers, from, days))
        if (item.lane != Lane::Wood && item.lane != Lane::Due &&
            !(item.lane == Lane::Upkeep && item.tentative))
            all << item;
    all << busyItems(books, from, until);
    // The ribbon puts an order that is late at its first day: that is today here.
    if (today < until)
        for (const RibbonItem &item :
             ribbonItems(books, answers, today, static_cast<int>(today.daysTo(until))))
            if (item.lane == Lane::Wood && item.start.date() >= from)
                all << item;
    QVector<CalendarItem> shown;
    for (const RibbonItem &item : std::as_const(all)) {
        CalendarItem one;
        one.item = item;
        one.item.detail[0] = one.item.detail.at(0).toUpper();
        one.start = item.start;
        one.end = item.end;
        one.movable = isMovable(books, item);
        if (item.link.table == TableId::Event)
            addTravel(books, one);
        addClashes(books, clashes, one);
        shown << one;
    }
    std::stable_sort(shown.begin(), shown.end(), [](const CalendarItem &a, const CalendarItem &b) {
        return a.start != b.start ? a.start < b.start : a.item.lane < b.item.lane;
    });
    return shown;
}

QVector<int> itemsOn(const QVector<CalendarItem> &items, QDate day)
{
    QVector<int> on;
    for (int i = 0; i < items.size(); ++i) {
        const CalendarItem &item = items.at(i);
        // What ends at midnight does not touch the day that begins.
        const QDate last = item.item.end > item.item.start ? item.item.end.addSecs(-1).date()
                                                           : item.item.end.date();
        if (item.item.start.date() <= day && day <= last)
            on << i;
    }
    return on;
}

} // namespace rickyard::views
