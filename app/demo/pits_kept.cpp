#include "app/demo/draft.h"
#include "models/domain/upkeep/starter_tasks.h"

#include <algorithm>

namespace rickyard::app::demo {

namespace {

using domain::Cook;
using domain::UpkeepTask;
using domain::Visit;

// The story's two overdue tasks: nobody has tested the middle pit's gasket for weeks, and the large
// pit's grease drain was left after its last cook.
bool letSlide(const Draft &draft, const UpkeepTask &task, QDate day)
{
    if (task.pit == kMiddlePit && task.name == QLatin1String("Gasket test"))
        return day > draft.today().addDays(-71);
    if (task.pit != kLargePit || task.name != QLatin1String("Grease drain and bucket"))
        return false;
    Instant last = draft.begin;
    for (const Cook &cook : draft.books.cooks)
        if (cook.pit == kLargePit)
            last = std::max(last, cook.lit);
    return draft.local.startOf(day) > last;
}

// An evening or a Sunday morning of the crew.
struct Slot {
    Instant start;
    Duration length;
    int people = 1;
};

QVector<Slot> slotsOf(const Draft &draft)
{
    QVector<Slot> all;
    const QDate first = draft.local.dateOf(draft.begin).addDays(1);
    for (QDate day = first; day <= draft.today(); day = day.addDays(1))
        for (const domain::CrewTime &t : draft.books.crewTimes)
            if (static_cast<int>(t.weekday) + 1 == day.dayOfWeek())
                all << Slot{draft.local.at(day, t.start), t.length, t.people};
    return all;
}

class Upkeep
{
public:
    explicit Upkeep(Draft &draft) : m_draft(draft), m_dice(draft.dice.fork(8)) {}

    void keep()
    {
        for (const Slot &slot : slotsOf(m_draft))
            work(slot);
    }

private:
    void work(const Slot &slot);
    [[nodiscard]] double used(const UpkeepTask &task, Instant at) const;
    [[nodiscard]] bool coldEnough(const UpkeepTask &task, Instant start, Instant end) const;
    void visit(const UpkeepTask &task, Instant start);
    void takeAshOut(RecordId pit, Instant start, Instant end);

    Draft &m_draft;
    Dice m_dice;
    QMap<RecordId, Instant> m_lastDone;
};

// The highest share of an interval that has run, seen from a moment.
double Upkeep::used(const UpkeepTask &task, Instant at) const
{
    const Instant from = m_lastDone.value(task.id, m_draft.local.startOf(task.since));
    double most = 0;
    if (task.everyDays)
        most = static_cast<double>(m_draft.local.dateOf(from).daysTo(m_draft.local.dateOf(at))) /
               *task.everyDays;
    int cooks = 0;
    for (const Cook &cook : m_draft.books.cooks)
        if ((!task.pit || cook.pit == *task.pit) && cook.lit >= from && *cook.fireOut <= at)
            ++cooks;
    if (task.everyCooks)
        most = std::max(most, static_cast<double>(cooks) / *task.everyCooks);
    if (task.occasion == domain::Occasion::AfterCook)
        most = std::max(most, static_cast<double>(cooks));
    // The cans are tipped every other month: long before they are full.
    if (task.everyAsh)
        most = m_draft.local.dateOf(from).daysTo(m_draft.local.dateOf(at)) / 60.0;
    return most;
}

bool Upkeep::coldEnough(const UpkeepTask &task, Instant start, Instant end) const
{
    if (!task.pit)
        return true;
    const Duration hour = Duration::ofBase(3600);
    for (const Cook &cook : m_draft.books.cooks)
        if (cook.pit == *task.pit && start < *cook.fireOut + task.coldBefore &&
            cook.lit < end + std::max(task.cureAfter, hour))
            return false;
    return true;
}

void Upkeep::visit(const UpkeepTask &task, Instant start)
{
    static const QStringList crew = {QStringLiteral("Pim"), QStringLiteral("Odo"),
                                     QStringLiteral("Tansy")};
    Visit v;
    v.task = task.id;
    v.state = domain::VisitState::Done;
    v.start = start;
    v.end = start + task.work;
    v.who = crew.at(m_dice.whole(0, 2));
    if (task.name == QLatin1String("Gasket renewal"))
        v.cost = domain::Money::ofBase(2850);
    if (task.name == QLatin1String("Extinguisher service"))
        v.cost = domain::Money::ofBase(6400);
    shelve(m_draft.books.visits, v);
    m_lastDone[task.id] = *v.end;
    if (task.name == QLatin1String("Ash removal"))
        takeAshOut(*task.pit, start, *v.end);
}

// Two cans a pit, filled in turn: what is in the one is tipped when it is that one's turn again and
// its hours are over.
void Upkeep::takeAshOut(RecordId pit, Instant start, Instant end)
{
    const auto turn = std::count_if(m_draft.books.ashLoads.cbegin(), m_draft.books.ashLoads.cend(),
                                    [pit](const domain::AshLoad &a) { return a.pit == pit; });
    domain::AshLoad load;
    load.pit = pit;
    load.takenOut = end;
    load.can = QString::number(2 * pit - 1 + turn % 2);
    const auto inCan = [&](const domain::AshLoad &a) { return a.can == load.can && !a.tipped; };
    const bool over = std::all_of(m_draft.books.ashLoads.cbegin(), m_draft.books.ashLoads.cend(),
                                  [&](const domain::AshLoad &a) {
                                      return !inCan(a) || start - a.takenOut >= domain::kAshCooling;
                                  });
    for (domain::AshLoad &a : m_draft.books.ashLoads)
        if (over && inCan(a)) {
            a.tipped = start;
            a.where = QStringLiteral("bare ground behind the yard");
        }
    shelve(m_draft.books.ashLoads, load);
}

void Upkeep::work(const Slot &slot)
{
    QVector<QPair<double, RecordId>> due;
    for (const UpkeepTask &task : m_draft.books.tasks) {
        const double share = used(task, slot.start);
        // Weekly things are taken at the next evening, or they would run over by the one after.
        const double ready = task.everyDays.value_or(30) <= 7 ? 0.55 : 0.87;
        const bool longJob = task.work > Duration::ofBase(3600);
        if (share >= (longJob ? 0.8 : ready) &&
            !letSlide(m_draft, task, m_draft.local.dateOf(slot.start)))
            due << QPair<double, RecordId>{share, task.id};
    }
    std::stable_sort(due.begin(), due.end(),
                     [](const auto &a, const auto &b) { return a.first > b.first; });
    // Everybody takes the next task on the list as soon as they are free.
    QVector<Instant> freeAt(slot.people, slot.start);
    for (const auto &[share, id] : due) {
        const UpkeepTask task = m_draft.books.tasks.value(id);
        const auto next = std::min_element(freeAt.begin(), freeAt.end());
        const Instant end = *next + task.work;
        // A job longer than the evening is finished late, when it is the first one.
        const bool fits = end <= slot.start + slot.length || *next == slot.start;
        if (!fits || end > m_draft.now || !coldEnough(task, *next, end))
            continue;
        visit(task, *next);
        *next = end;
    }
}

RecordId taskNamed(const domain::Books &books, RecordId pit, const char *name)
{
    for (const UpkeepTask &task : books.tasks)
        if (task.pit.value_or(0) == pit && task.name == QLatin1String(name))
            return task.id;
    return 0;
}

// The visit of a task nearest to a day.
RecordId visitNear(const Draft &draft, RecordId task, QDate day)
{
    RecordId best = 0;
    qint64 least = 0;
    for (const Visit &v : draft.books.visits) {
        const qint64 off = std::abs(draft.local.dateOf(v.start).daysTo(day));
        if (v.task == task && (best == 0 || off < least)) {
            best = v.id;
            least = off;
        }
    }
    return best;
}

void addFinding(Draft &draft, RecordId pit, Instant opened, domain::FindingState state,
                const char *text, RecordId mendedBy = 0)
{
    domain::Finding f;
    f.pit = pit;
    f.opened = opened;
    f.state = state;
    f.text = QString::fromUtf8(text);
    if (mendedBy != 0)
        f.mendedBy = mendedBy;
    shelve(draft.books.findings, f);
}

void addFindings(Draft &draft)
{
    const QDate today = draft.today();
    const RecordId hinges = taskNamed(draft.books, kSmallPit, "Door and hinges");
    const RecordId mended = visitNear(draft, hinges, today.addDays(-610));
    const Instant when = draft.books.visits.value(mended).start;
    addFinding(draft, kSmallPit, when - Duration::ofBase(9 * 86400LL), domain::FindingState::Mended,
               "Door hangs low and does not close flush", mended);
    addFinding(draft, kLargePit, draft.at(today.addDays(-88), 19), domain::FindingState::Watched,
               "Rust under the paint on the firebox floor edge, size of a hand");
    addFinding(draft, kMiddlePit, draft.at(today.addDays(-17), 14), domain::FindingState::Open,
               "Smoke stains along the lower door edge, latch side");
}

} // namespace

void addUpkeep(Draft &draft)
{
    const QVector<domain::Pit> pits(draft.books.pits.cbegin(), draft.books.pits.cend());
    const RecordId first = draft.books.tasks.isEmpty() ? 1 : draft.books.tasks.lastKey() + 1;
    for (const UpkeepTask &task :
         domain::starterTasks(pits, draft.local.dateOf(draft.begin), first))
        shelve(draft.books.tasks, task);
    Upkeep(draft).keep();
    addFindings(draft);
    domain::KnownGood good;
    good.pit = kMiddlePit;
    good.from = draft.today().addDays(-640);
    good.to = draft.today().addDays(-170);
    good.reason = QStringLiteral("Went over the whole pit; door, dampers and stack in order.");
    shelve(draft.books.knownGood, good);
}

} // namespace rickyard::app::demo
