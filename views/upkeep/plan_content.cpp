#include "views/upkeep/plan_content.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/due_words.h"
#include "models/items/wording.h"
#include "views/upkeep/upkeep_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString say(const char *text)
{
    return QCoreApplication::translate("PlanContent", text);
}

LocalTime localOf(const Books &books)
{
    return LocalTime(books.yard().timeZone);
}

const Visit *visitOf(const Books &books, const Placement &p)
{
    for (const Visit &visit : books.visits)
        if (visit.task == p.task && visit.start == p.start &&
            (visit.state == VisitState::Placed || visit.state == VisitState::Started))
            return &visit;
    return nullptr;
}

class PlanGatherer
{
public:
    PlanGatherer(const Books &books, const UpkeepAnswer &answer, Instant now, int days)
        : m_books(books), m_answer(answer), m_now(now), m_local(localOf(books))
    {
        const QDate today = m_local.dateOf(now);
        m_from = m_local.startOf(today);
        m_until = m_local.startOf(today.addDays(days));
    }

    PlanContent gather()
    {
        lanes();
        blocks();
        m_content.crew = crewWindows(m_books, m_now, m_until, m_local);
        return m_content;
    }

private:
    void lanes()
    {
        int hue = 0;
        for (const Pit &pit : m_books.pits) {
            const int own = hue++;
            if (!pit.retired)
                m_content.lanes.append({pit.id, pit.name, own, firesOf(pit.id)});
        }
        const bool kit =
            std::any_of(m_books.tasks.cbegin(), m_books.tasks.cend(),
                        [](const UpkeepTask &task) { return !task.pit && !task.retired; });
        if (kit)
            m_content.lanes.append({0, pitName(m_books, 0), -1, {}});
    }

    [[nodiscard]] QVector<PlanFire> firesOf(RecordId pit) const
    {
        QVector<PlanFire> fires;
        for (const Burn &burn : burnsOf(m_books, pit, m_now)) {
            if (burn.end + Duration::ofBase(2 * 86400) < m_from || burn.start >= m_until)
                continue;
            PlanFire fire;
            fire.link = burn.cook != 0 ? Link{TableId::Cook, burn.cook}
                                       : Link{TableId::PlannedCook, burn.planned};
            fire.start = burn.start;
            fire.end = burn.end;
            fire.coldAt = burn.end + coldAfter(pit, burn.end);
            fire.name = burnName(m_books, burn);
            fire.words =
                say("%1\nFire %2\nCold enough for the next work %3")
                    .arg(fire.name, spanText(m_books, fire.start, fire.end),
                         items::timeText(m_books, fire.coldAt, QLocale(QStringLiteral("en_US"))));
            fires << fire;
        }
        return fires;
    }

    // What the next work on the pit asks for; without one, what the least of its tasks does.
    [[nodiscard]] Duration coldAfter(RecordId pit, Instant out) const
    {
        const Placement *next = nullptr;
        for (const Placement &p : m_answer.placements)
            if (m_books.tasks.value(p.task).pit.value_or(0) == pit && p.end > out &&
                (next == nullptr || p.start < next->start))
                next = &p;
        if (next != nullptr)
            return m_books.tasks.value(next->task).coldBefore;
        std::optional<Duration> least;
        for (const UpkeepTask &task : m_books.tasks)
            if (task.pit.value_or(0) == pit && !task.retired && !task.coldBefore.isZero() &&
                (!least || task.coldBefore < *least))
                least = task.coldBefore;
        return least.value_or(Duration());
    }

    void blocks()
    {
        QMap<std::pair<int, std::pair<QDate, bool>>, PlanBlock> found;
        for (const Placement &p : m_answer.placements) {
            const int lane = laneOf(m_books.tasks.value(p.task).pit.value_or(0));
            if (lane < 0 || p.start >= m_until || p.end < m_from)
                continue;
            PlanBlock &block = found[{lane, {m_local.dateOf(p.start), p.booked}}];
            block.lane = lane;
            block.booked = p.booked;
            block.late = block.late || p.late;
            PlanVisit visit{p.task, 0,          p.start,
                            p.end,  p.freeFrom, m_books.tasks.value(p.task).name};
            if (p.booked)
                if (const Visit *record = visitOf(m_books, p)) {
                    visit.visit = record->id;
                    block.pinned = block.pinned || record->pinned;
                    block.started = block.started || record->state == VisitState::Started;
                }
            block.start = block.visits.isEmpty() ? p.start : std::min(block.start, p.start);
            block.end = std::max(block.end, p.end);
            block.freeFrom = std::max({block.freeFrom, p.freeFrom, p.end});
            block.visits << visit;
        }
        m_content.blocks = found.values();
        for (PlanBlock &block : m_content.blocks) {
            std::stable_sort(
                block.visits.begin(), block.visits.end(),
                [](const PlanVisit &a, const PlanVisit &b) { return a.start < b.start; });
            block.words = wordsOf(block);
        }
        std::stable_sort(m_content.blocks.begin(), m_content.blocks.end(),
                         [](const PlanBlock &a, const PlanBlock &b) { return a.start < b.start; });
    }

    [[nodiscard]] int laneOf(RecordId pit) const
    {
        for (int i = 0; i < m_content.lanes.size(); ++i)
            if (m_content.lanes.at(i).pit == pit)
                return i;
        return -1;
    }

    [[nodiscard]] QString wordsOf(const PlanBlock &block) const
    {
        const PlanLane &lane = m_content.lanes.at(block.lane);
        QString text = say("%1, %2").arg(lane.name, spanText(m_books, block.start, block.end));
        text += block.started  ? say(": under way")
                : block.pinned ? say(": placed by hand")
                : block.booked ? say(": placed")
                               : say(": proposed");
        if (block.late)
            text += say(", late");
        for (const PlanVisit &visit : block.visits)
            text += QString(QLatin1Char('\n') + visit.name);
        if (block.freeFrom > block.end)
            text += QString(QLatin1Char('\n') +
                            say("Cures until %1")
                                .arg(items::timeText(m_books, block.freeFrom,
                                                     QLocale(QStringLiteral("en_US")))));
        return text;
    }

    const Books &m_books;
    const UpkeepAnswer &m_answer;
    Instant m_now;
    LocalTime m_local;
    Instant m_from;
    Instant m_until;
    PlanContent m_content;
};

} // namespace

PlanContent planContent(const Books &books, const UpkeepAnswer &answer, Instant now, int days)
{
    return PlanGatherer(books, answer, now, days).gather();
}

QString planTrouble(const Books &books, RecordId taskId, Instant start, Instant end, Instant now)
{
    const UpkeepTask task = books.tasks.value(taskId);
    const QLocale locale(QStringLiteral("en_US"));
    if (end <= now)
        return say("That is past.");
    if (task.pit) {
        const QString pit = books.pits.value(*task.pit).name;
        for (const Burn &burn : burnsOf(books, *task.pit, now)) {
            if (burn.start < end && start < burn.end)
                return say("%1 burns then: %2.").arg(pit, burnName(books, burn));
            if (burn.end <= start && start < burn.end + task.coldBefore)
                return say("%1 is not cold then: %2 after its fire, that is %3.")
                    .arg(pit, formatDuration(task.coldBefore),
                         items::timeText(books, burn.end + task.coldBefore, locale));
            if (burn.start >= end && burn.start < end + clearBeforeLighting(task.cureAfter))
                return say("%1 is lit %2, too soon after it: it needs %3 before.")
                    .arg(pit, items::timeText(books, burn.start, locale),
                         formatDuration(clearBeforeLighting(task.cureAfter)));
        }
    }
    const auto windows = crewWindows(books, now, end + Duration::ofBase(86400), localOf(books));
    const bool crew = std::any_of(windows.begin(), windows.end(), [&](const WorkWindow &w) {
        return w.start <= std::max(start, now) && end <= w.end;
    });
    return crew ? QString() : say("Outside the crew's hours.");
}

} // namespace rickyard::views
