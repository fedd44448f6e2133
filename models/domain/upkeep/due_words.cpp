#include "models/domain/upkeep/due_words.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/due_paths.h"
#include "models/domain/upkeep/placement.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr int kReasonsShown = 8;

class Sentence
{
public:
    Sentence &say(const QString &text)
    {
        m_parts << SentencePart{text, false};
        return *this;
    }
    Sentence &stress(const QString &text)
    {
        m_parts << SentencePart{text, true};
        return *this;
    }
    [[nodiscard]] QVector<SentencePart> parts() const { return m_parts; }

private:
    QVector<SentencePart> m_parts;
};

// "Grease drain" -> "grease drain", but "CO alarm" stays.
QString midSentence(const QString &name)
{
    if (name.size() < 2 || name.at(1).isUpper() || name.at(1).isDigit())
        return name;
    QString text = name;
    text[0] = text.at(0).toLower();
    return text;
}

const Placement *placementOf(const UpkeepAnswer &answer, RecordId task)
{
    for (const Placement &p : answer.placements)
        if (p.task == task)
            return &p;
    return nullptr;
}

const Unplaced *unplacedOf(const UpkeepAnswer &answer, RecordId task)
{
    for (const Unplaced &u : answer.unplaced)
        if (u.task == task)
            return &u;
    return nullptr;
}

void sayWhen(Sentence &s, const UpkeepAnswer &answer, RecordId task, const LocalTime &local)
{
    if (const Placement *p = placementOf(answer, task)) {
        s.say(p->booked ? QStringLiteral("; it is placed on ")
                        : QStringLiteral("; there is time on "));
        s.stress(local.timeText(p->start)).say(QStringLiteral("."));
    } else if (unplacedOf(answer, task) != nullptr) {
        s.say(QStringLiteral("; no free crew hours fit it."));
    } else {
        s.say(QStringLiteral("."));
    }
}

QString beforeText(const Books &books, const TaskDue &due, const LocalTime &local)
{
    if (due.beforeEvent != 0)
        return QStringLiteral(", before the ") % books.events.value(due.beforeEvent).name;
    if (due.beforeCook == 0)
        return QString();
    const Instant light = books.plannedCooks.value(due.beforeCook).light;
    return QStringLiteral(", before the cook of ") % local.dayText(local.dateOf(light));
}

QDate lightingDay(const Books &books, const TaskDue &due, Instant now, const LocalTime &local)
{
    if (due.beforeCook == 0)
        return {};
    return local.dateOf(std::max(now, books.plannedCooks.value(due.beforeCook).light));
}

QString usedText(const TaskDue &due, const QLocale &numbers)
{
    QStringList parts;
    for (const Meter &m : due.meters)
        parts << QString(formatNumber(m.used, 0, numbers) % QStringLiteral(" of ") %
                         formatNumber(m.limit, 0, numbers) % QLatin1Char(' ') % m.unitBy(m.limit));
    return parts.join(QStringLiteral(", "));
}

void overdueSentence(Headline &headline, const Books &books, const UpkeepAnswer &answer,
                     qsizetype overdue, Instant now, const LocalTime &local)
{
    const TaskDue &first = answer.tasks.first();
    Sentence s;
    s.stress(overdue == 1 ? QStringLiteral("1 task")
                          : QString(QString::number(overdue) % QStringLiteral(" tasks")));
    s.say(overdue == 1 ? QStringLiteral(" is overdue: do the ")
                       : QStringLiteral(" are overdue: do the "));
    s.stress(taskPhrase(books, first.task));
    const QDate light = lightingDay(books, first, now, local);
    if (light.isValid())
        s.say(QStringLiteral(" before ")).stress(local.dayText(light));
    else
        s.say(QStringLiteral(" first"));
    sayWhen(s, answer, first.task, local);
    headline.sentence = s.parts();
    headline.standing = Standing::Act;
    headline.figure = QString::number(overdue);
    headline.figureUnit = QStringLiteral("overdue");
}

void comingSentence(Headline &headline, const Books &books, const UpkeepAnswer &answer, Instant now,
                    const LocalTime &local)
{
    const TaskDue &first = answer.tasks.first();
    const qint64 days = local.dateOf(now).daysTo(first.due);
    Sentence s;
    s.say(QStringLiteral("Nothing recorded as overdue; the "));
    s.stress(taskPhrase(books, first.task));
    if (days <= 0) {
        s.say(QStringLiteral(" is due ")).stress(QStringLiteral("today"));
    } else {
        s.say(QStringLiteral(" falls due about "));
        s.stress(local.shortDayText(first.due));
    }
    const QString band = dueBandText(first, local);
    if (!band.isEmpty())
        s.say(QStringLiteral(" (") % band % QLatin1Char(')'));
    s.say(beforeText(books, first, local));
    sayWhen(s, answer, first.task, local);
    headline.sentence = s.parts();
    const bool watch = first.blocksNextCook || !answer.unplaced.isEmpty();
    headline.standing = watch ? Standing::Watch : Standing::Good;
    headline.figure = QString::number(std::max<qint64>(0, days));
    headline.figureUnit =
        days == 1 ? QStringLiteral("day to the next") : QStringLiteral("days to the next");
}

void emptySentence(Headline &headline, bool anyTask, qsizetype snoozed)
{
    if (snoozed > 0) {
        headline.figure = QString::number(snoozed);
        headline.figureUnit = QStringLiteral("put off");
        headline.standing = Standing::Watch;
        headline.sentence = {
            {snoozed == 1
                 ? QStringLiteral("1 task is put off")
                 : QString(QString::number(snoozed) % QStringLiteral(" tasks are put off")),
             true},
            {QStringLiteral("; nothing else is due over the planned cooks."), false}};
        return;
    }
    headline.figure = QStringLiteral("–");
    headline.standing = anyTask ? Standing::Good : Standing::Unknown;
    headline.sentence = {{anyTask ? QStringLiteral("Nothing recorded as overdue, and nothing falls "
                                                   "due over the planned cooks.")
                                  : QStringLiteral("No upkeep tasks yet: add the starter set on "
                                                   "the Upkeep page, or your own."),
                          false}};
}

void taskReasons(Headline &headline, const Books &books, const UpkeepAnswer &answer,
                 const LocalTime &local)
{
    const QLocale numbers = local.locale();
    int shown = 0;
    for (const TaskDue &due : answer.tasks) {
        if (shown == kReasonsShown)
            break;
        if (!due.due.isValid())
            continue;
        const QString state =
            due.overdue ? QStringLiteral("overdue since ") : QStringLiteral("due ");
        QString value = state % local.shortDayText(due.due);
        const QString band = dueBandText(due, local);
        if (!band.isEmpty())
            value += QStringLiteral(", ") % band % QLatin1Char(',');
        value += QLatin1Char(' ') % due.dueReason;
        const QString used = usedText(due, numbers);
        if (!used.isEmpty())
            value += QStringLiteral(" (") % used % QLatin1Char(')');
        if (due.snoozed)
            value += QStringLiteral("; ") % snoozeText(books, due, local);
        QString label = taskPhrase(books, due.task);
        label[0] = label.at(0).toUpper();
        headline.reasons << Reason{label, value, false, {TableId::UpkeepTask, due.task}};
        ++shown;
    }
    const qsizetype rest = answer.tasks.size() - shown;
    if (rest > 0)
        headline.reasons << Reason{
            QStringLiteral("Further tasks"), QString::number(rest), false, {}};
    if (const QString gap = gapWords(answer.provenGap); !gap.isEmpty())
        headline.reasons << Reason{QStringLiteral("The plan of work"), gap, false, {}};
    for (const Unplaced &u : answer.unplaced) {
        QString label = taskPhrase(books, u.task);
        label[0] = label.at(0).toUpper();
        headline.reasons << Reason{
            label, u.why % QStringLiteral(". ") % u.help, false, {TableId::UpkeepTask, u.task}};
    }
}

// What the spread of the dates is made of beside the planned cooks' own.
void spreadReasons(Headline &headline, const Books &books, const UpkeepAnswer &answer, Instant now)
{
    if (std::all_of(answer.tasks.begin(), answer.tasks.end(),
                    [](const TaskDue &due) { return due.certain; }))
        return;
    QStringList rates;
    for (const Pit &pit : books.pits) {
        const UnplannedRate rate = unplannedRate(books, pit.id, now);
        if (!pit.retired && rate.perDay() > 0)
            rates << QStringLiteral("%1 on %2").arg(rate.cooks).arg(pit.name);
    }
    if (!rates.isEmpty())
        headline.reasons << Reason{
            QStringLiteral("Cooks that nobody planned"),
            QStringLiteral("%1 in %2 days; the dates count on as many to come")
                .arg(rates.join(QStringLiteral(", ")))
                .arg(std::lround(unplannedRate(books, books.pits.firstKey(), now).days)),
            false,
            {}};
    if (lengthRatios(books, now).size() < size_t(kPlannedLengths))
        headline.reasons << Reason{QStringLiteral("Length of planned cooks"),
                                   QStringLiteral("as planned: fewer than %1 cooks of the log "
                                                  "fulfilled a plan")
                                       .arg(kPlannedLengths),
                                   true,
                                   {}};
}

// What the answer rests on without a record.
void assumptions(Headline &headline, const Books &books, const FuelAnswer &fuel,
                 const UpkeepAnswer &answer, Instant now, const LocalTime &local)
{
    bool hoursAssumed = false;
    crewTimesOrAssumed(books, &hoursAssumed);
    if (hoursAssumed)
        headline.reasons << Reason{
            QStringLiteral("Crew hours"),
            QStringLiteral("none recorded: Tuesday to Thursday, 6:00 PM to 9:00 PM, one person"),
            true,
            {TableId::CrewTime, 0}};
    const auto wants = [&](bool UpkeepTask::*what) {
        return std::any_of(answer.placements.cbegin(), answer.placements.cend(),
                           [&](const Placement &p) { return books.tasks.value(p.task).*what; });
    };
    if (wants(&UpkeepTask::daylight))
        headline.reasons << Reason{
            QStringLiteral("Daylight"), QStringLiteral("taken as 8:00 AM to 5:00 PM"), true, {}};
    if (wants(&UpkeepTask::dryWeather))
        headline.reasons << Reason{QStringLiteral("Dry weather"),
                                   QStringLiteral("a day ahead with rain entered goes by that, any "
                                                  "other by the days on record near its date: look "
                                                  "at the forecast"),
                                   true,
                                   {TableId::Weather, 0}};
    if (!local.valid())
        headline.reasons << Reason{QStringLiteral("Time zone"),
                                   QStringLiteral("the yard's zone is not known here: UTC"),
                                   true,
                                   {TableId::Yard, 1}};
    for (const Burn &b : burnsOf(books, 0, now))
        if (b.running && b.endAssumed)
            headline.reasons << Reason{QStringLiteral("End of the running cook on ") %
                                           books.pits.value(b.pit).name,
                                       local.timeText(b.end) % QStringLiteral(", no plan to go by"),
                                       true,
                                       {TableId::Cook, b.cook}};
    int withoutHeat = 0;
    for (const TaskDue &due : answer.tasks)
        withoutHeat =
            std::max(withoutHeat,
                     metersOf(books, fuel, books.tasks.value(due.task), now, local).withoutHeat);
    if (withoutHeat > 0)
        headline.reasons << Reason{QStringLiteral("Wood burned"),
                                   limitWords(withoutHeat, "cook without a wood figure is",
                                              "cooks without a wood figure are") %
                                       QStringLiteral(" counted as nothing burned"),
                                   true,
                                   {}};
}

} // namespace

QString taskPhrase(const Books &books, RecordId task)
{
    const UpkeepTask record = books.tasks.value(task);
    QString text = midSentence(record.name);
    if (record.pit)
        text += QStringLiteral(" on ") % books.pits.value(*record.pit).name;
    return text.isEmpty() ? QStringLiteral("task") : text;
}

QString dueBandText(const TaskDue &due, const LocalTime &local)
{
    if (due.certain || !due.dueEarly.isValid() || due.dueEarly == due.dueLate)
        return {};
    if (!due.dueLate.isValid())
        return QStringLiteral("9 in 10 not before ") % local.shortDayText(due.dueEarly);
    return QStringLiteral("8 in 10 between ") % local.shortDayText(due.dueEarly) %
           QStringLiteral(" and ") % local.shortDayText(due.dueLate);
}

QString snoozeText(const Books &books, const TaskDue &due, const LocalTime &local)
{
    if (!due.snoozed)
        return {};
    QString text = QStringLiteral("put off until ") % local.shortDayText(due.snoozedUntil);
    if (!due.snoozeReason.trimmed().isEmpty())
        text += QStringLiteral(": ") % due.snoozeReason.trimmed();
    const UpkeepTask task = books.tasks.value(due.task);
    if (task.blocksLighting || task.blocksTowing)
        text += task.blocksTowing && !task.blocksLighting
                    ? QStringLiteral(" (it blocks towing all the same)")
                    : QStringLiteral(" (it blocks lighting all the same)");
    return text;
}

Headline upkeepHeadline(const Books &books, const FuelAnswer &fuel, const UpkeepAnswer &answer,
                        Instant now, const LocalTime &local)
{
    Headline headline;
    // Tasks that are put off come last.
    const qsizetype snoozed = std::count_if(answer.tasks.begin(), answer.tasks.end(),
                                            [](const TaskDue &d) { return d.snoozed; });
    const qsizetype overdue =
        std::count_if(answer.tasks.begin(), answer.tasks.end(),
                      [](const TaskDue &d) { return d.overdue && !d.snoozed; });
    const bool asked = !answer.tasks.isEmpty() && !answer.tasks.first().snoozed;
    if (overdue > 0)
        overdueSentence(headline, books, answer, overdue, now, local);
    else if (asked && answer.tasks.first().due.isValid())
        comingSentence(headline, books, answer, now, local);
    else
        emptySentence(headline, !answer.tasks.isEmpty(), snoozed);
    taskReasons(headline, books, answer, local);
    spreadReasons(headline, books, answer, now);
    assumptions(headline, books, fuel, answer, now, local);
    return headline;
}

} // namespace rickyard::domain
