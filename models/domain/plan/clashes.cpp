#include "models/domain/plan/clashes.h"

#include "models/domain/plan/clashes_search.h"

#include <algorithm>

namespace rickyard::domain {

ClashGround::ClashGround(const Books &allBooks, Instant at, const LocalTime &clock,
                         const UpkeepAnswer &answer)
    : books(allBooks), now(at), local(clock), upkeep(answer)
{
    for (const Burn &burn : burnsOf(books, 0, now))
        if (burn.end > now)
            burns << burn;
    for (const Event &event : books.events) {
        const Duration way = event.travel.value_or(Duration());
        const bool over = event.state == EventState::Done || event.state == EventState::Cancelled;
        if (!over && event.end + way > now)
            trips << Trip{&event, event.start - way, event.end + way};
    }
}

RecordId ClashGround::eventOf(const Burn &burn) const
{
    RecordId planned = burn.planned;
    if (planned == 0)
        planned = books.cooks.value(burn.cook).planned.value_or(0);
    return books.plannedCooks.value(planned).event.value_or(0);
}

QString ClashGround::cookText(const Burn &burn) const
{
    const QString event = books.events.value(eventOf(burn)).name;
    return event.isEmpty() ? QString(QStringLiteral("the cook lit ") % local.timeText(burn.start))
                           : QString(QStringLiteral("the cook for ") % event);
}

namespace {

class Search
{
public:
    explicit Search(const ClashGround &ground)
        : m_ground(ground), m_books(ground.books), m_local(ground.local), m_burns(ground.burns),
          m_trips(ground.trips)
    {
    }
    QVector<Clash> all()
    {
        samePit();
        crewAway();
        twoEvents();
        litTooLate();
        findUpkeepClashes(m_ground, m_found);
        findCrewClashes(m_ground, m_found);
        std::stable_sort(m_found.begin(), m_found.end(),
                         [](const Clash &a, const Clash &b) { return a.at < b.at; });
        return m_found;
    }

private:
    void samePit();
    void crewAway();
    void twoEvents();
    void litTooLate();

    [[nodiscard]] static Link linkOf(const Burn &burn) { return ClashGround::linkOf(burn); }
    [[nodiscard]] RecordId eventOf(const Burn &burn) const { return m_ground.eventOf(burn); }
    [[nodiscard]] QString cookText(const Burn &burn) const { return m_ground.cookText(burn); }
    [[nodiscard]] QString pitText(const Burn &burn) const { return m_ground.pitText(burn); }

    const ClashGround &m_ground;
    const Books &m_books;
    const LocalTime &m_local;
    const QVector<Burn> &m_burns;
    const QVector<Trip> &m_trips;
    QVector<Clash> m_found;
};

void Search::samePit()
{
    for (qsizetype i = 0; i < m_burns.size(); ++i)
        for (qsizetype j = i + 1; j < m_burns.size(); ++j) {
            const Burn &a = m_burns.at(i);
            const Burn &b = m_burns.at(j);
            if (a.pit != b.pit || a.end <= b.start || b.end <= a.start)
                continue;
            m_found << Clash{
                ClashKind::SamePit,
                pitText(a) % QStringLiteral(" is asked for twice: ") % cookText(a) %
                    QStringLiteral(" burns until ") % m_local.timeText(a.end) %
                    QStringLiteral(", and ") % cookText(b) % QStringLiteral(" is to be lit at ") %
                    m_local.timeText(b.start) % QLatin1Char('.'),
                QStringLiteral("Take another pit for one of them, or move the later one."),
                linkOf(b),
                linkOf(a),
                b.start};
        }
}

void Search::crewAway()
{
    for (const Burn &burn : m_burns)
        for (const Trip &trip : m_trips) {
            if (eventOf(burn) == trip.event->id || burn.end <= trip.from ||
                trip.until <= burn.start)
                continue;
            m_found << Clash{ClashKind::CrewAway,
                             pitText(burn) % QStringLiteral(" burns for ") % cookText(burn) %
                                 QStringLiteral(" while the crew is away at ") % trip.event->name %
                                 QStringLiteral(" (") % m_local.timeText(trip.from) %
                                 QStringLiteral(" to ") % m_local.timeText(trip.until) %
                                 QStringLiteral(")."),
                             QStringLiteral("Say who tends the fire, or move the cook."),
                             linkOf(burn),
                             {TableId::Event, trip.event->id},
                             std::max(burn.start, trip.from)};
        }
}

void Search::twoEvents()
{
    for (qsizetype i = 0; i < m_trips.size(); ++i)
        for (qsizetype j = i + 1; j < m_trips.size(); ++j) {
            const Trip &a = m_trips.at(i);
            const Trip &b = m_trips.at(j);
            if (a.until <= b.from || b.until <= a.from)
                continue;
            m_found << Clash{ClashKind::TwoEvents,
                             a.event->name % QStringLiteral(" and ") % b.event->name %
                                 QStringLiteral(" want the crew at the same time, from ") %
                                 m_local.timeText(std::max(a.from, b.from)) %
                                 QStringLiteral(" with the way there and back."),
                             QStringLiteral("Split the crew on purpose, or move or decline one."),
                             {TableId::Event, b.event->id},
                             {TableId::Event, a.event->id},
                             std::max(a.from, b.from)};
        }
}

void Search::litTooLate()
{
    for (const Burn &burn : m_burns) {
        if (burn.cook != 0)
            continue;
        const Link link = linkOf(burn);
        if (m_books.pits.value(burn.pit).retired)
            m_found << Clash{ClashKind::RetiredPit,
                             pitText(burn) % QStringLiteral(" is retired, but ") % cookText(burn) %
                                 QStringLiteral(" is planned on it."),
                             QStringLiteral("Choose another pit."),
                             link,
                             {TableId::Pit, burn.pit},
                             burn.start};
        const auto event = m_books.events.constFind(eventOf(burn));
        if (event == m_books.events.constEnd() || burn.start < event->start)
            continue;
        m_found << Clash{ClashKind::LitTooLate,
                         QStringLiteral("The cook for ") % event->name % QStringLiteral(" on ") %
                             pitText(burn) % QStringLiteral(" is lit at ") %
                             m_local.timeText(burn.start) %
                             QStringLiteral(", when serving has begun (") %
                             m_local.timeText(event->start) % QStringLiteral(")."),
                         QStringLiteral("Light earlier, or check the event's time."),
                         link,
                         {TableId::Event, event->id},
                         burn.start};
    }
}

} // namespace

QVector<Clash> clashesOf(const Books &books, Instant now, const LocalTime &local,
                         const UpkeepAnswer &upkeep)
{
    return Search(ClashGround(books, now, local, upkeep)).all();
}

QString clashWord(ClashKind kind)
{
    switch (kind) {
    case ClashKind::SamePit:
        return QStringLiteral("One pit twice");
    case ClashKind::CrewAway:
        return QStringLiteral("Crew away");
    case ClashKind::TwoEvents:
        return QStringLiteral("Two events at once");
    case ClashKind::LitTooLate:
        return QStringLiteral("Lit too late");
    case ClashKind::RetiredPit:
        return QStringLiteral("Retired pit");
    case ClashKind::UpkeepAtFire:
        return QStringLiteral("Upkeep at a fire");
    case ClashKind::PitBlocked:
        return QStringLiteral("Pit blocked");
    case ClashKind::NoTowing:
        return QStringLiteral("Not to be towed");
    case ClashKind::CrewHours:
        return QStringLiteral("Crew hours");
    case ClashKind::CrewBusy:
        break;
    }
    return QStringLiteral("Crew busy");
}

} // namespace rickyard::domain
