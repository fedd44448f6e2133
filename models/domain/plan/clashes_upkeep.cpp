#include "models/domain/plan/clashes_search.h"
#include "models/domain/upkeep/due_words.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

QString listed(const QStringList &names)
{
    if (names.size() < 2)
        return names.join(QString());
    return QString(QStringList(names.mid(0, names.size() - 1)).join(QStringLiteral(", ")) %
                   QStringLiteral(" and ") % names.last());
}

Instant endOf(const Visit &visit, const UpkeepTask &task)
{
    return visit.end.value_or(visit.start + task.work);
}

class UpkeepSearch
{
public:
    UpkeepSearch(const ClashGround &ground, QVector<Clash> &found)
        : m_ground(ground), m_found(found)
    {
    }
    void all()
    {
        for (const Visit &visit : m_ground.books.visits) {
            const UpkeepTask task = m_ground.books.tasks.value(visit.task);
            if (visit.state == VisitState::Placed && task.pit)
                againstFires(visit, task);
        }
        barredLightings();
        barredTows();
    }

private:
    void againstFires(const Visit &visit, const UpkeepTask &task);
    void barredLightings();
    void barredTows();
    void barLighting(const Burn &burn, const QVector<RecordId> &tasks);
    void add(ClashKind kind, const QString &what, const QString &help, Link first, Link second,
             Instant at)
    {
        m_found << Clash{kind, what, help, first, second, at};
    }
    // Agreed or proposed so that it is over, and cured, by then.
    [[nodiscard]] bool doneBy(RecordId task, Instant by) const
    {
        const auto &placements = m_ground.upkeep.placements;
        return std::any_of(placements.begin(), placements.end(), [&](const Placement &p) {
            return p.task == task && std::max(p.end, p.freeFrom) <= by;
        });
    }
    [[nodiscard]] bool dueBy(const TaskDue &due, Instant moment) const
    {
        return due.overdue || (due.due.isValid() && m_ground.local.dateOf(moment) > due.due);
    }
    [[nodiscard]] QString names(const QVector<RecordId> &tasks) const
    {
        QStringList all;
        for (const RecordId task : tasks)
            all << QString(QStringLiteral("the ") % taskPhrase(m_ground.books, task));
        return listed(all);
    }

    const ClashGround &m_ground;
    QVector<Clash> &m_found;
};

// One sentence a visit: the first fire it meets.
void UpkeepSearch::againstFires(const Visit &visit, const UpkeepTask &task)
{
    const Instant end = endOf(visit, task);
    if (end + task.cureAfter <= m_ground.now)
        return;
    const QString what =
        QString(QStringLiteral("The ") % taskPhrase(m_ground.books, task.id) %
                QStringLiteral(" is placed at ") % m_ground.local.timeText(visit.start));
    const Link own{TableId::Visit, visit.id};
    for (const Burn &burn : m_ground.burns) {
        if (burn.pit != *task.pit)
            continue;
        const QString cook = m_ground.cookText(burn);
        if (burn.start < end && visit.start < burn.end) {
            add(ClashKind::UpkeepAtFire,
                what % QStringLiteral(", when the pit burns for ") % cook % QLatin1Char('.'),
                QStringLiteral("Move the visit to a time when the pit is out and cold."), own,
                ClashGround::linkOf(burn), visit.start);
            return;
        }
        if (burn.end <= visit.start && visit.start < burn.end + task.coldBefore) {
            add(ClashKind::UpkeepAtFire,
                what % QStringLiteral(", but the pit is not cold before ") %
                    m_ground.local.timeText(burn.end + task.coldBefore) %
                    QStringLiteral(", after ") % cook % QLatin1Char('.'),
                QStringLiteral("Move the visit to a time when the pit is out and cold."), own,
                ClashGround::linkOf(burn), visit.start);
            return;
        }
        if (end <= burn.start && burn.start < end + task.cureAfter && burn.cook == 0) {
            add(ClashKind::PitBlocked,
                QString(m_ground.pitText(burn) % QStringLiteral(" cures until ") %
                        m_ground.local.timeText(end + task.cureAfter) %
                        QStringLiteral(" after the ") % taskPhrase(m_ground.books, task.id) %
                        QStringLiteral(", and ") % cook % QStringLiteral(" is to be lit at ") %
                        m_ground.local.timeText(burn.start) % QLatin1Char('.')),
                QStringLiteral("Do the work earlier, or light another pit."),
                ClashGround::linkOf(burn), own, burn.start);
            return;
        }
    }
}

void UpkeepSearch::barLighting(const Burn &burn, const QVector<RecordId> &tasks)
{
    const bool one = tasks.size() == 1;
    add(ClashKind::PitBlocked,
        QString(m_ground.pitText(burn) % QStringLiteral(" is not to be lit for ") %
                m_ground.cookText(burn) % QStringLiteral(" on ") %
                m_ground.local.timeText(burn.start) % QStringLiteral(": ") % names(tasks) %
                (one ? QStringLiteral(" is overdue by then, and no time for it is found before.")
                     : QStringLiteral(" are overdue by then, and no time for them is found "
                                      "before."))),
        QStringLiteral("Make time for the work, or take another pit."), ClashGround::linkOf(burn),
        {TableId::UpkeepTask, tasks.first()}, burn.start);
}

// A task bars the first lighting that finds it overdue; the ones after it are not named again.
void UpkeepSearch::barredLightings()
{
    QMap<qsizetype, QVector<RecordId>> barred; // by burn
    for (const TaskDue &due : m_ground.upkeep.tasks) {
        const UpkeepTask task = m_ground.books.tasks.value(due.task);
        if (!task.blocksLighting)
            continue;
        for (qsizetype i = 0; i < m_ground.burns.size(); ++i) {
            const Burn &burn = m_ground.burns.at(i);
            if (burn.cook != 0 || burn.start < m_ground.now ||
                (due.pit != 0 && burn.pit != due.pit))
                continue;
            if (!dueBy(due, burn.start) && !due.blocksNextCook)
                continue;
            if (!doneBy(due.task, burn.start))
                barred[i] << due.task;
            break;
        }
    }
    for (auto it = barred.cbegin(); it != barred.cend(); ++it)
        barLighting(m_ground.burns.at(it.key()), it.value());
}

void UpkeepSearch::barredTows()
{
    for (const Trip &trip : m_ground.trips) {
        if (!trip.event->towed || trip.from < m_ground.now)
            continue;
        QVector<RecordId> tasks;
        for (const TaskDue &due : m_ground.upkeep.tasks)
            if (m_ground.books.tasks.value(due.task).blocksTowing && dueBy(due, trip.from) &&
                !doneBy(due.task, trip.from))
                tasks << due.task;
        if (tasks.isEmpty())
            continue;
        const bool one = tasks.size() == 1;
        add(ClashKind::NoTowing,
            QString(QStringLiteral("Nothing is to be towed to ") % trip.event->name %
                    QStringLiteral(" on ") % m_ground.local.timeText(trip.from) %
                    QStringLiteral(": ") % names(tasks) %
                    (one ? QStringLiteral(" is overdue by then.")
                         : QStringLiteral(" are overdue by then."))),
            QStringLiteral("Do the work before the crew leaves."), {TableId::Event, trip.event->id},
            {TableId::UpkeepTask, tasks.first()}, trip.from);
    }
}

} // namespace

void findUpkeepClashes(const ClashGround &ground, QVector<Clash> &found)
{
    UpkeepSearch(ground, found).all();
}

} // namespace rickyard::domain
