#include "models/domain/upkeep/placement_help.h"

#include "models/domain/quantities/units.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

constexpr Duration kChangeStep = Duration::ofBase(1800); // changes are tried in half hours
constexpr int kChangeSteps = 48;
constexpr int kStretchSteps = 12; // crew hours more than six hours longer are other crew hours
constexpr int kSolvedAgain = 3;   // changes of one piece of work that are solved again at most
constexpr int kSolvedInAll = 12;  // and of all work together
constexpr int kHelpNodes = 50;    // of each of those
constexpr int kHelpWork = 20000;  // likewise

Instant roundedUp(Instant at)
{
    const qint64 grid = kPlacementGrid.base();
    return Instant::ofSeconds((at.seconds() + grid - 1) / grid * grid);
}

} // namespace

PlacementGap longestGap(const Work &work, const QVector<Burn> &fires, Instant now, Instant limit)
{
    std::optional<PlacementGap> best;
    PlacementGap gap;
    gap.from = now;
    const auto close = [&](Instant to, const std::optional<Burn> &next) {
        gap.to = to;
        gap.next = next;
        if (to > now && (!best || gap.length() > best->length()))
            best = gap;
    };
    for (const Burn &b : fires) {
        const Instant clear = b.start - clearBeforeLighting(work.cureAfter);
        if (b.start > now && b.start <= limit)
            close(clear, b);
        if (b.start <= limit && b.end + work.coldBefore > gap.from) {
            gap.from = b.end + work.coldBefore;
            gap.last = b;
        }
    }
    if (gap.from < limit && (fires.isEmpty() || fires.last().start < limit))
        close(limit, std::nullopt);
    if (!best)
        close(limit, std::nullopt);
    return best.value_or(gap);
}

PlacementHelp::PlacementHelp(const Books &books, const QVector<Work> &work,
                             const QVector<RecordId> &leftOut, const QVector<RecordId> &barred,
                             const QVector<Agreed> &agreed, const QVector<Agreed> &taken,
                             const Yardtime &time, Instant now, const LocalTime &local,
                             const SolverLimits &limits)
    : m_books(books), m_work(work), m_leftOut(leftOut), m_barred(barred), m_agreed(agreed),
      m_taken(taken), m_time(time), m_now(now), m_local(local), m_limits(limits)
{
    m_limits.latenessOnly = true;
    m_limits.nodes = std::min(m_limits.nodes, kHelpNodes);
    m_limits.steps = std::min(m_limits.steps, 500);
    m_limits.work = std::min(m_limits.work, kHelpWork);
}

LeftOutSpan PlacementHelp::spanOf(const Work &work) const
{
    LeftOutSpan span{std::max(m_now, work.release), placementHorizon(m_now, m_local)};
    if (work.required && work.before)
        span.limit = std::min(span.limit, *work.before);
    for (const Agreed &a : m_taken)
        if (work.after != 0 && a.task == work.after)
            span.from = std::max(span.from, a.end);
    return span;
}

// The whole solved again: the work has a place, and what is left out weighs less than before.
bool PlacementHelp::helps(const Change &change, RecordId task) const
{
    const PlacementProblem problem =
        placementProblem(change.work, m_barred, m_agreed, change.time, m_now, m_local);
    const PlacementPlan plan = solvePlacement(problem, m_limits);
    bool placed = false;
    qint64 before = 0;
    qint64 after = 0;
    for (qsizetype i = 0; i < change.work.size(); ++i) {
        const Work &w = change.work.at(i);
        if (m_leftOut.contains(w.task) || m_barred.contains(w.task))
            before += w.priority;
        if (!plan.starts.at(i))
            after += w.priority;
        else if (w.task == task)
            placed = true;
    }
    return placed && after < before;
}

QVector<PlacementHelp::Change> PlacementHelp::morePeople(const Work &work,
                                                         const LeftOutSpan &span) const
{
    QVector<Change> changes;
    for (qsizetype i = 0; i < m_time.windows.size(); ++i) {
        const WorkWindow &w = m_time.windows.at(i);
        if (w.start >= span.limit || w.end <= span.from)
            continue;
        Change change{m_time, m_work, {}};
        const int more = std::max(1, work.people - w.people);
        change.time.windows[i].people += more;
        if (!earliestStart(work, change.time, m_taken, span.from, span.limit))
            continue;
        change.words =
            (more == 1 ? QString(QStringLiteral("One more person on "))
                       : QString(QString::number(more) % QStringLiteral(" more people on "))) %
            m_local.timeText(w.start) % QStringLiteral(" would do.");
        changes << change;
        break;
    }
    return changes;
}

// A quick look at one window: whether the work could lie in it at all.
bool PlacementHelp::roomIn(const WorkWindow &window, const Work &work,
                           const LeftOutSpan &span) const
{
    if (window.end - window.start < work.length)
        return false;
    Yardtime alone;
    alone.windows = {window};
    alone.fires.insert(work.pit, m_time.fires.value(work.pit));
    alone.daylight = m_time.daylight;
    alone.dryDays = m_time.dryDays;
    const QVector<WorkWindow> open = openFor(work, alone, m_taken);
    return std::any_of(open.begin(), open.end(), [&](const WorkWindow &w) {
        return std::min(w.end, span.limit) - std::max(w.start, span.from) >= work.length;
    });
}

QVector<PlacementHelp::Change> PlacementHelp::longerHours(const Work &work, const LeftOutSpan &span,
                                                          Duration by) const
{
    QVector<Change> changes;
    for (qsizetype i = 0; i < m_time.windows.size(); ++i) {
        const WorkWindow &w = m_time.windows.at(i);
        if (w.start - by >= span.limit || w.end + by <= span.from)
            continue;
        Change longer{m_time, m_work, {}};
        longer.time.windows[i].end = w.end + by;
        longer.words = QStringLiteral("Have the crew stay ") % formatDuration(by) %
                       QStringLiteral(" longer on ") % m_local.timeText(w.start) % QLatin1Char('.');
        Change sooner{m_time, m_work, {}};
        sooner.time.windows[i].start = w.start - by;
        sooner.words = QStringLiteral("Have the crew start ") % formatDuration(by) %
                       QStringLiteral(" earlier on ") % m_local.timeText(w.start) %
                       QLatin1Char('.');
        for (const Change &change : {longer, sooner})
            if (change.time.windows.at(i).start >= m_now &&
                roomIn(change.time.windows.at(i), work, span) &&
                earliestStart(work, change.time, m_taken, span.from, span.limit))
                changes << change;
        if (!changes.isEmpty())
            break;
    }
    return changes;
}

// A lighting moved, and the limit of all that has to be over by it.
PlacementHelp::Change PlacementHelp::lightLater(RecordId pit, const Burn &burn, Duration by) const
{
    Change change{m_time, m_work, {}};
    for (Burn &b : change.time.fires[pit])
        if (b.planned == burn.planned && b.cook == 0) {
            b.start = b.start + by;
            b.end = b.end + by;
        }
    for (Work &w : change.work)
        if (w.blockedCook == burn.planned && w.before)
            w.before = *w.before + by;
    change.words = QStringLiteral("Light the ") % burnName(m_books, burn) % QLatin1Char(' ') %
                   formatDuration(by) % QStringLiteral(" later");
    return change;
}

QVector<PlacementHelp::Change>
PlacementHelp::laterLighting(const Work &work, const LeftOutSpan &span, Duration by) const
{
    QVector<Change> changes;
    const QVector<Burn> fires = m_time.fires.value(work.pit);
    for (qsizetype i = 0; work.pit != 0 && i < fires.size(); ++i) {
        const Burn &burn = fires.at(i);
        if (burn.cook != 0 || burn.start > span.limit ||
            (i + 1 < fires.size() && burn.end + by > fires.at(i + 1).start))
            continue;
        Change change = lightLater(work.pit, burn, by);
        const Instant until =
            work.required && work.blockedCook == burn.planned ? span.limit + by : span.limit;
        if (!earliestStart(work, change.time, m_taken, span.from, until))
            continue;
        change.words += QLatin1Char('.');
        changes << change;
        break;
    }
    return changes;
}

// Hands there when the pit is cold; where the gap itself is too short, with the lighting moved.
QVector<PlacementHelp::Change> PlacementHelp::someoneThere(const Work &work,
                                                           const LeftOutSpan &span) const
{
    PlacementGap gap{span.from, span.limit, {}, {}};
    if (work.pit != 0)
        gap = longestGap(work, m_time.fires.value(work.pit), span.from, span.limit);
    Change change{m_time, m_work, {}};
    const Duration missing = work.length - gap.length();
    if (missing.base() > 0 && gap.next)
        change = lightLater(work.pit, *gap.next, missing);
    // Where there is room, a quarter hour and not an odd minute, and daylight where it is wanted.
    Instant start = gap.from;
    if (roundedUp(start) + work.length <= gap.to)
        start = roundedUp(start);
    for (const WorkWindow &day : m_time.daylight)
        if (work.daylight && day.end >= start + work.length) {
            start = std::max(start, day.start);
            break;
        }
    change.time.windows << WorkWindow{start, start + work.length, work.people};
    const QString whom = work.people == 1
                             ? QString(QStringLiteral("one person"))
                             : QString(QString::number(work.people) % QStringLiteral(" people"));
    change.words =
        (change.words.isEmpty() ? QString(QStringLiteral("Have "))
                                : QString(change.words % QStringLiteral(", and have "))) %
        whom % QStringLiteral(" there from ") % m_local.timeText(start) % QStringLiteral(" for ") %
        formatDuration(work.length) % QLatin1Char('.');
    return {change};
}

QString PlacementHelp::smallestChange(const Work &work, const LeftOutSpan &span) const
{
    int tries = 0;
    const auto first = [&](const QVector<Change> &changes) {
        for (const Change &change : changes)
            if (tries < kSolvedAgain && m_solved < kSolvedInAll &&
                !(m_limits.stop && m_limits.stop()) &&
                (++tries, ++m_solved, helps(change, work.task)))
                return change.words;
        return QString();
    };
    // Too much is left out for one change to be worth looking for.
    const QString many = QStringLiteral("So much has no place that more crew hours come first; a "
                                        "change for this alone was not looked for.");
    if (m_solved >= kSolvedInAll)
        return many;
    QString words = first(morePeople(work, span));
    for (int step = 1; step <= kChangeSteps && words.isEmpty(); ++step) {
        const Duration by = Duration::ofBase(kChangeStep.base() * step);
        if (step <= kStretchSteps)
            words = first(longerHours(work, span, by));
        if (words.isEmpty())
            words = first(laterLighting(work, span, by));
    }
    if (words.isEmpty()) {
        tries = 0;
        words = first(someoneThere(work, span));
    }
    return words.isEmpty() ? QStringLiteral("No single change was found that gives it a place; it "
                                            "needs more crew hours or a longer time without fire.")
                           : words;
}

} // namespace rickyard::domain
