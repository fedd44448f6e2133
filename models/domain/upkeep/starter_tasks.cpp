#include "models/domain/upkeep/starter_tasks.h"

#include "models/domain/upkeep/starter_table.h"

#include <QHash>

namespace rickyard::domain {

namespace {

Plain plainOf(double value)
{
    return Plain::rounded(value * 1e6);
}

void setReading(UpkeepTask &task, const Starter &s, const Pit &pit)
{
    task.reading = s.reading;
    task.readingUnit = QString::fromUtf8(s.unit);
    task.readingPoints = s.points;
    if (s.low)
        task.readingLow = plainOf(*s.low);
    if (s.high)
        task.readingHigh = plainOf(*s.high);
    if (s.lowFrom == Starter::HalfThePlate && pit.plate)
        task.readingLow = plainOf(inches(*pit.plate) / 2);
}

UpkeepTask taskOf(const Starter &s, const Pit &pit, QDate since)
{
    UpkeepTask t;
    t.name = QString::fromUtf8(s.name);
    t.target = QString::fromUtf8(s.target);
    if (pit.id != 0)
        t.pit = pit.id;
    t.since = since;
    if (s.days > 0)
        t.everyDays = s.days;
    if (s.cooks > 0)
        t.everyCooks = s.cooks;
    if (s.ashLb > 0)
        t.everyAsh = massFromPounds(s.ashLb);
    t.occasion = s.occasion;
    t.work = Duration::ofBase(s.minutes * 60LL);
    t.people = s.people;
    t.coldBefore = Duration::ofBase(s.coldHours * 3600LL);
    t.cureAfter = Duration::ofBase(s.cureHours * 3600LL);
    t.priority = s.priority;
    t.blocksLighting = s.blocks == Starter::Lighting;
    t.blocksTowing = s.blocks == Starter::Towing;
    t.daylight = s.daylight;
    t.dryWeather = s.dry;
    t.intervalFrom = s.from;
    setReading(t, s, pit);
    t.tools = QString::fromUtf8(s.tools);
    t.steps = QString::fromUtf8(s.steps);
    QStringList cautions;
    if (s.ash)
        cautions << ashCaution();
    if (*s.cautions != '\0')
        cautions << QString::fromUtf8(s.cautions);
    cautions << authorityCaution();
    t.cautions = cautions.join(QLatin1Char('\n'));
    return t;
}

// The tasks of one pit, or of the trailer or the kit (a pit of id 0), with their order.
void appendStarters(QVector<UpkeepTask> &tasks, std::span<const Starter> table, const Pit &pit,
                    QDate since, RecordId firstId)
{
    const qsizetype start = tasks.size();
    QHash<QString, RecordId> ids;
    for (const Starter &s : table) {
        UpkeepTask task = taskOf(s, pit, since);
        if (firstId > 0)
            task.id = firstId + tasks.size();
        ids.insert(task.name, task.id);
        tasks << task;
    }
    for (qsizetype i = 0; firstId > 0 && i < qsizetype(table.size()); ++i)
        if (const char *after = table[size_t(i)].after)
            tasks[start + i].after = ids.value(QString::fromUtf8(after));
}

} // namespace

QString authorityCaution()
{
    return QStringLiteral("Local code and the authority having jurisdiction decide.");
}

QString ashCaution()
{
    return QStringLiteral("Treat ash as hot: metal can with a tight metal lid, outside on ground "
                          "that cannot burn, at least 10 ft from any building, 96 hours at the "
                          "least before it is tipped. Never paper, plastic, a deck, a garage or a "
                          "vacuum cleaner.");
}

QVector<UpkeepTask> starterTasks(const QVector<Pit> &pits, QDate since, RecordId firstId)
{
    QVector<UpkeepTask> tasks;
    for (const Pit &pit : pits)
        if (!pit.retired)
            appendStarters(tasks, starterPitTasks(), pit, since, firstId);
    appendStarters(tasks, starterTrailerTasks(), Pit(), since, firstId);
    appendStarters(tasks, starterKitTasks(), Pit(), since, firstId);
    return tasks;
}

} // namespace rickyard::domain
