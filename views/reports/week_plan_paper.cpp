#include "views/reports/week_plan_paper.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/field_words.h"
#include "models/domain/answers/wording.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/domain/wood/sale.h"
#include "views/reports/report_words.h"
#include "views/upkeep/upkeep_words.h"

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

struct PlanLine {
    Instant start;
    QString when;
    QString what;
    QString where; // and who
};

class WeekWriter
{
public:
    WeekWriter(const Books &books, const UpkeepAnswer &upkeep, Instant now)
        : m_books(books), m_upkeep(upkeep), m_now(now), m_first(toLocal(books, now).date()),
          m_last(m_first.addDays(kWeekPlanDays - 1))
    {
    }

    Paper write()
    {
        collect();
        Paper paper;
        paper.title = reportWords("Week plan");
        paper.subtitle = reportWords("%1 to %2 · %3")
                             .arg(reportDay(m_first), reportDay(m_last), m_books.yard().name);
        paper.foot =
            reportWords("%1 · as of %2").arg(reportFoot(m_books), reportDayTime(m_books, m_now));
        paper.sections << planSection();
        paper.sections << dueSection();
        paper.sections << PaperSection{
            reportWords("Every time"),
            {reportWords("A fire: outdoors, an extinguisher at hand, somebody with it. Carbon "
                         "monoxide has no smell."),
             reportWords("A tow: the pit cold and empty of ash; hitch, chains, lights and tyres "
                         "looked at."),
             ashCaution(), authorityCaution()}};
        return paper;
    }

private:
    [[nodiscard]] bool inWeek(const QDate &day) const { return day >= m_first && day <= m_last; }

    void put(Instant start, Instant end, const QString &what, QStringList where)
    {
        const QDate first = toLocal(m_books, start).date();
        const QDate last = toLocal(m_books, end).date();
        where.removeAll(QString());
        if (inWeek(first))
            m_days[first] << PlanLine{start, spanText(m_books, start, end, false), what,
                                      where.join(QStringLiteral(", "))};
        else if (first < m_first && last >= m_first)
            m_days[m_first] << PlanLine{start, spanText(m_books, start, end), what,
                                        where.join(QStringLiteral(", "))};
    }

    void collect()
    {
        for (const Event &event : m_books.events)
            if (event.state == EventState::Booked || event.state == EventState::Proposed)
                putEvent(event);
        for (const PlannedCook &cook : m_books.plannedCooks) {
            const Event event = m_books.events.value(cook.event.value_or(0));
            if (cook.cancelled || event.state == EventState::Cancelled)
                continue;
            const QString pit = m_books.pits.value(cook.pit).name;
            put(cook.light, cook.light + cook.length, reportWords("Fire on %1").arg(pit),
                {cook.foods, event.name});
        }
        for (const Visit &visit : m_books.visits) {
            if (visit.state != VisitState::Placed && visit.state != VisitState::Started)
                continue;
            const UpkeepTask task = m_books.tasks.value(visit.task);
            m_booked << visit.task;
            put(visit.start, visit.end.value_or(visit.start + task.work),
                reportTaskAndPit(m_books, visit.task), {task.target, visit.who});
        }
        for (const BusyTime &busy : m_books.busyTimes)
            put(busy.start, busy.end,
                busy.summary.isEmpty() ? reportWords("Taken")
                                       : reportWords("Taken: %1").arg(busy.summary),
                {busy.source});
        putDeliveries();
        for (QVector<PlanLine> &lines : m_days)
            std::stable_sort(lines.begin(), lines.end(), [](const PlanLine &a, const PlanLine &b) {
                return a.start < b.start;
            });
    }

    void putEvent(const Event &event)
    {
        const QString name = event.state == EventState::Proposed
                                 ? reportWords("%1 (not yet booked)").arg(event.name)
                                 : event.name;
        QStringList where{event.place};
        if (event.covers)
            where << reportWords("%1 covers").arg(*event.covers);
        put(event.start, event.end, name, where);
        if (!event.travel || event.travel->base() <= 0)
            return;
        const QString tow = event.towed ? reportWords("a pit is towed") : QString();
        put(event.start - *event.travel, event.start, reportWords("Drive to %1").arg(event.name),
            {event.place, tow});
        put(event.end, event.end + *event.travel, reportWords("Drive back from %1").arg(event.name),
            {tow});
    }

    // By the day, without an hour: first of all. What was promised for a day that is past counts
    // as today's.
    void putDeliveries()
    {
        for (const WoodOrder &order : m_books.orders) {
            const bool open =
                order.state == OrderState::Sent || order.state == OrderState::Promised;
            if (!open || !order.promised.isValid() || order.promised > m_last)
                continue;
            const bool late = order.promised < m_first;
            const QString supplier = m_books.suppliers.value(order.supplier).name;
            const QString amount = order.count ? unitWords(order.unit, number(*order.count))
                                               : stackedWords(order.volume, wordingOf(m_books));
            m_days[std::max(order.promised, m_first)] << PlanLine{
                Instant(), late ? reportWords("late delivery") : reportWords("delivery"),
                reportWords("%1, %2").arg(amount, m_books.species.value(order.species).name),
                late ? reportWords("%1, promised for %2").arg(supplier, reportDay(order.promised))
                     : supplier};
        }
    }

    // The day stands in every row: a page may end between two of them.
    [[nodiscard]] PaperSection planSection() const
    {
        PaperSection section{reportWords("Day by day")};
        section.table.head = {reportWords("Day"), reportWords("When"), reportWords("What"),
                              reportWords("Where, who")};
        section.table.widths = {14, 26, 34, 26};
        for (QDate day = m_first; day <= m_last; day = day.addDays(1)) {
            const QVector<PlanLine> lines = m_days.value(day);
            for (const PlanLine &line : lines)
                section.table.rows << QStringList{reportDay(day), line.when, line.what, line.where};
            if (lines.isEmpty())
                section.table.rows << QStringList{reportDay(day), QString(),
                                                  reportWords("Nothing planned"), QString()};
        }
        return section;
    }

    [[nodiscard]] PaperSection dueSection() const
    {
        PaperSection section{reportWords("Due by %1, and not booked").arg(reportDay(m_last))};
        section.boxes = true;
        for (const TaskDue &due : m_upkeep.tasks) {
            if (m_booked.contains(due.task) || !due.due.isValid() || due.due > m_last)
                continue;
            const UpkeepTask task = m_books.tasks.value(due.task);
            QString line = QString(reportTaskAndPit(m_books, due.task) + QStringLiteral(": ") +
                                   (due.overdue ? reportWords("overdue, ") : QString()) +
                                   dueText(m_books, due, m_now));
            if (task.blocksLighting)
                line += reportWords("; blocks lighting");
            if (task.blocksTowing)
                line += reportWords("; blocks towing");
            section.lines << line;
        }
        if (section.lines.isEmpty()) {
            section.boxes = false;
            section.lines << reportWords("Nothing.");
        }
        return section;
    }

    const Books &m_books;
    const UpkeepAnswer &m_upkeep;
    Instant m_now;
    QDate m_first;
    QDate m_last;
    QMap<QDate, QVector<PlanLine>> m_days;
    QSet<RecordId> m_booked;
};

} // namespace

Paper weekPlanPaper(const Books &books, const UpkeepAnswer &upkeep, Instant now)
{
    return WeekWriter(books, upkeep, now).write();
}

} // namespace rickyard::views
