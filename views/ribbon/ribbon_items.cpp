#include "views/ribbon/ribbon_items.h"

#include "models/domain/upkeep/burns.h"
#include "models/domain/upkeep/due_words.h"
#include "models/items/wording.h"

#include <QCoreApplication>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kNamesShown = 6; // in the words of a group

QString tr(const char *text)
{
    return QCoreApplication::translate("Ribbon", text);
}

class Gatherer
{
public:
    Gatherer(const Books &books, const Answers &answers, QDate from, int days)
        : m_books(books), m_answers(answers), m_from(from), m_until(from.addDays(days))
    {
    }
    QVector<RibbonItem> all()
    {
        cooks();
        events();
        visits();
        wood();
        dueTasks();
        std::stable_sort(m_items.begin(), m_items.end(),
                         [](const RibbonItem &a, const RibbonItem &b) {
                             return a.start != b.start ? a.start < b.start : a.lane < b.lane;
                         });
        return m_items;
    }

private:
    void cooks();
    void events();
    void visits();
    void wood();
    void orders();
    void ripening();
    void dueTasks();
    void put(RibbonItem item);

    [[nodiscard]] QDateTime local(Instant t) const { return items::toLocal(m_books, t); }
    [[nodiscard]] static QDateTime noon(QDate day) { return {day, QTime(12, 0), Qt::UTC}; }
    [[nodiscard]] QString when(Instant t) const { return items::timeText(m_books, t, m_locale); }
    [[nodiscard]] QString day(QDate d) const { return items::dayText(d, m_locale); }
    [[nodiscard]] QString taskName(RecordId task) const
    {
        QString name = taskPhrase(m_books, task);
        name[0] = name.at(0).toUpper();
        return name;
    }

    const Books &m_books;
    const Answers &m_answers;
    QDate m_from;
    QDate m_until; // not included
    QLocale m_locale = QLocale(QStringLiteral("en_US"));
    QVector<RibbonItem> m_items;
};

// Wall-clock times only, so that a day is as wide as any other when the clocks change.
QDateTime wall(const QDateTime &time)
{
    return {time.date(), time.time(), Qt::UTC};
}

void Gatherer::put(RibbonItem item)
{
    item.start = wall(item.start);
    item.end = wall(item.end);
    if (item.end.date() < m_from || item.start.date() >= m_until)
        return;
    m_items << item;
}

void Gatherer::cooks()
{
    const QList<RecordId> pits = m_books.pits.keys();
    for (const Burn &burn : burnsOf(m_books, 0, m_answers.asOf)) {
        if (burn.planned != 0 && burn.cook == 0 && burn.end <= m_answers.asOf)
            continue;
        RibbonItem item;
        item.lane = Lane::Cooks;
        item.link = burn.cook != 0 ? Link{TableId::Cook, burn.cook}
                                   : Link{TableId::PlannedCook, burn.planned};
        item.start = local(burn.start);
        item.end = local(burn.end);
        item.hue = static_cast<int>(pits.indexOf(burn.pit));
        item.mark = pitMark(m_books, burn.pit);
        const QString pit = m_books.pits.value(burn.pit).name;
        item.label = pit;
        item.detail = tr("%1 on %2\nLight %3, fire out %4")
                          .arg(burnName(m_books, burn), pit, when(burn.start), when(burn.end));
        if (burn.running)
            item.detail += QString(QLatin1Char('\n') + tr("Burning now"));
        for (const PlannedUse &use : m_answers.wood.uses) {
            if (burn.cook != 0 || use.plannedCook != burn.planned || !use.shortOf)
                continue;
            item.standing = Standing::Act;
            item.label = tr("%1: dry wood short").arg(pit);
            item.detail += QString(QLatin1Char('\n') + tr("Dry wood runs short"));
        }
        put(item);
    }
}

void Gatherer::events()
{
    for (const Event &event : m_books.events) {
        if (event.state == EventState::Cancelled)
            continue;
        RibbonItem item;
        item.lane = Lane::Events;
        item.link = {TableId::Event, event.id};
        item.start = local(event.start);
        item.end = local(event.end);
        item.label = event.name;
        item.tentative = event.state == EventState::Proposed;
        item.detail = tr("%1\nServing %2").arg(event.name, when(event.start));
        if (!event.place.isEmpty())
            item.detail += QString(QLatin1Char('\n') + event.place);
        if (item.tentative)
            item.detail += QString(QLatin1Char('\n') + tr("Proposed, not booked"));
        put(item);
    }
}

// Upkeep comes in evenings of several tasks: a day's tasks are one bar.
void Gatherer::visits()
{
    struct Day {
        QVector<Placement> work;
        Instant start, end;
    };
    QMap<std::pair<QDate, bool>, Day> groups; // day, booked
    for (const Placement &p : m_answers.upkeep.placements) {
        Day &group = groups[{local(p.start).date(), p.booked}];
        group.start = group.work.isEmpty() ? p.start : std::min(group.start, p.start);
        group.end = std::max(group.end, p.end);
        group.work << p;
    }
    for (auto it = groups.cbegin(); it != groups.cend(); ++it) {
        const bool booked = it.key().second;
        const Day &group = it.value();
        RibbonItem item;
        item.lane = Lane::Upkeep;
        item.link = {TableId::UpkeepTask, group.work.first().task};
        item.start = local(group.start);
        item.end = local(group.end);
        item.tentative = !booked;
        const auto count = group.work.size();
        item.label = count == 1 ? taskName(group.work.first().task) : tr("%1 tasks").arg(count);
        item.detail = QString(
            (booked ? tr("Upkeep placed, %1") : tr("Upkeep proposed, %1")).arg(when(group.start)));
        for (qsizetype i = 0; i < std::min<qsizetype>(count, kNamesShown); ++i)
            item.detail += QString(QLatin1Char('\n') + taskName(group.work.at(i).task));
        if (count > kNamesShown)
            item.detail += QString(QLatin1Char('\n') + tr("and %1 more").arg(count - kNamesShown));
        put(item);
    }
}

void Gatherer::wood()
{
    orders();
    ripening();
    const WoodAnswer &answer = m_answers.wood;
    if (!answer.orderBy.isValid())
        return;
    RibbonItem item;
    item.lane = Lane::Wood;
    item.link = {TableId::WoodOrder, 0};
    item.start = item.end = noon(std::max(answer.orderBy, m_from));
    item.standing = answer.headline.standing;
    item.label = tr("Order wood");
    item.detail = tr("Order wood by %1").arg(day(answer.orderBy));
    if (!answer.amountInUnit.isEmpty())
        item.detail += QString(QLatin1Char('\n') + answer.amountInUnit);
    put(item);
}

// Ricks that will likely be dry within the ribbon: a mark at the day of an even chance.
void Gatherer::ripening()
{
    for (auto it = m_answers.seasoning.cbegin(); it != m_answers.seasoning.cend(); ++it) {
        if (!it->readyLikely || it->chanceNow >= 0.5)
            continue;
        RibbonItem item;
        item.lane = Lane::Wood;
        item.link = {TableId::Lot, it.key()};
        item.start = item.end = noon(dateOfDay(*it->readyLikely));
        item.tentative = true;
        const QString name = m_books.lots.value(it.key()).name;
        item.label = tr("%1 dry").arg(name);
        item.detail = QString(name + QLatin1Char('\n') + readyWords(*it));
        put(item);
    }
}

void Gatherer::orders()
{
    for (const WoodOrder &order : m_books.orders) {
        if (order.state != OrderState::Sent && order.state != OrderState::Promised)
            continue;
        const Supplier supplier = m_books.suppliers.value(order.supplier);
        QDate expected = order.promised;
        const bool promised = expected.isValid();
        if (!promised && order.ordered.isValid()) {
            const Duration lead = supplier.leadTime.value_or(m_books.yard().orderLead);
            expected = order.ordered.addDays((lead.base() + 86399) / 86400);
        }
        if (!expected.isValid())
            continue;
        RibbonItem item;
        item.lane = Lane::Wood;
        item.link = {TableId::WoodOrder, order.id};
        const bool late = expected < m_from;
        item.start = item.end = noon(late ? m_from : expected);
        item.tentative = !promised;
        const QString species = m_books.species.value(order.species).name;
        item.label = late ? tr("%1 late").arg(species) : species;
        item.standing = late ? Standing::Watch : Standing::Good;
        item.detail = tr("%1 from %2\n%3")
                          .arg(species, supplier.name,
                               (promised ? tr("Promised for %1")
                                         : tr("No day promised; by the lead time, %1"))
                                   .arg(day(expected)));
        if (late)
            item.detail += QString(QLatin1Char('\n') + tr("Not recorded as received"));
        put(item);
    }
}

void Gatherer::dueTasks()
{
    struct Day {
        QVector<RecordId> tasks;
        bool overdue = false;
        bool blocks = false;
    };
    QMap<QDate, Day> days;
    for (const TaskDue &task : m_answers.upkeep.tasks) {
        if (!task.overdue && !task.due.isValid())
            continue;
        Day &group = days[task.overdue ? m_from : std::max(task.due, m_from)];
        group.tasks << task.task;
        group.overdue = group.overdue || task.overdue;
        group.blocks = group.blocks || task.blocksNextCook;
    }
    for (auto it = days.cbegin(); it != days.cend(); ++it) {
        const Day &group = it.value();
        const auto count = group.tasks.size();
        RibbonItem item;
        item.lane = Lane::Due;
        item.link = {TableId::UpkeepTask, group.tasks.first()};
        item.start = item.end = noon(it.key());
        item.standing = group.overdue  ? Standing::Act
                        : group.blocks ? Standing::Watch
                                       : Standing::Good;
        if (group.overdue)
            item.label =
                count == 1 ? taskName(group.tasks.first()) : tr("%1 overdue or due").arg(count);
        else
            item.label = count == 1 ? taskName(group.tasks.first()) : tr("%1 due").arg(count);
        item.detail = group.overdue ? tr("Overdue or due today")
                                    : QString(tr("Due about %1").arg(day(it.key())));
        for (qsizetype i = 0; i < std::min<qsizetype>(count, kNamesShown); ++i)
            item.detail += QString(QLatin1Char('\n') + taskName(group.tasks.at(i)));
        if (count > kNamesShown)
            item.detail += QString(QLatin1Char('\n') + tr("and %1 more").arg(count - kNamesShown));
        put(item);
    }
}

QString initials(const QString &name)
{
    QString letters;
    for (const QString &word : name.split(QLatin1Char(' '), Qt::SkipEmptyParts))
        if (letters.size() < 2 && word.at(0).isLetterOrNumber())
            letters += word.at(0).toUpper();
    return letters;
}

} // namespace

QString pitMark(const Books &books, RecordId pit)
{
    const QString own = initials(books.pits.value(pit).name);
    bool sharedFirst = own.isEmpty();
    bool sharedAll = own.isEmpty();
    int place = 0;
    int index = 0;
    for (const Pit &other : books.pits) {
        ++index;
        if (other.id == pit) {
            place = index;
            continue;
        }
        const QString letters = initials(other.name);
        sharedFirst = sharedFirst || letters.left(1) == own.left(1);
        sharedAll = sharedAll || letters == own;
    }
    if (!sharedFirst)
        return own.left(1);
    return sharedAll ? QString(own.left(1) + QString::number(place)) : own;
}

QVector<RibbonItem> ribbonItems(const Books &books, const Answers &answers, QDate from, int days)
{
    return Gatherer(books, answers, from, days).all();
}

} // namespace rickyard::views
