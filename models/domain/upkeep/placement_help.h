// The smallest change that gives left-out work a place. Each is tried on the plan as it stands
// (other work where it is, which is quick), and what seems to do is solved again as a whole before
// it is said.
#pragma once

#include "models/domain/upkeep/placement.h"

namespace rickyard::domain {

// When left-out work could at best be done, crew and fires apart.
struct LeftOutSpan {
    Instant from;
    Instant limit;
};

// A stretch between two fires in which the work could lie, whether or not anybody is there; its
// length may be negative.
struct PlacementGap {
    Instant from; // cold
    Instant to;   // to be cleared for the next lighting
    std::optional<Burn> last;
    std::optional<Burn> next;
    [[nodiscard]] Duration length() const { return to - from; }
};
PlacementGap longestGap(const Work &work, const QVector<Burn> &fires, Instant now, Instant limit);

class PlacementHelp
{
public:
    // `taken`: the agreed work and the plan as it stands.
    PlacementHelp(const Books &books, const QVector<Work> &work, const QVector<RecordId> &leftOut,
                  const QVector<RecordId> &barred, const QVector<Agreed> &agreed,
                  const QVector<Agreed> &taken, const Yardtime &time, Instant now,
                  const LocalTime &local, const SolverLimits &limits);

    [[nodiscard]] LeftOutSpan spanOf(const Work &work) const;
    // A sentence; where nothing tried helps it says so.
    [[nodiscard]] QString smallestChange(const Work &work, const LeftOutSpan &span) const;

private:
    struct Change {
        Yardtime time;
        QVector<Work> work;
        QString words;
    };

    [[nodiscard]] bool helps(const Change &change, RecordId task) const;
    [[nodiscard]] QVector<Change> morePeople(const Work &work, const LeftOutSpan &span) const;
    [[nodiscard]] bool roomIn(const WorkWindow &window, const Work &work,
                              const LeftOutSpan &span) const;
    [[nodiscard]] QVector<Change> longerHours(const Work &work, const LeftOutSpan &span,
                                              Duration by) const;
    [[nodiscard]] QVector<Change> laterLighting(const Work &work, const LeftOutSpan &span,
                                                Duration by) const;
    [[nodiscard]] Change lightLater(RecordId pit, const Burn &burn, Duration by) const;
    [[nodiscard]] QVector<Change> someoneThere(const Work &work, const LeftOutSpan &span) const;

    const Books &m_books;
    const QVector<Work> &m_work;
    const QVector<RecordId> &m_leftOut;
    const QVector<RecordId> &m_barred;
    const QVector<Agreed> &m_agreed;
    const QVector<Agreed> &m_taken;
    const Yardtime &m_time;
    Instant m_now;
    const LocalTime &m_local;
    SolverLimits m_limits;
    mutable int m_solved = 0; // changes solved again so far
};

} // namespace rickyard::domain
