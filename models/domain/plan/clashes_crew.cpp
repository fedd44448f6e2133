#include "models/domain/plan/clashes_search.h"
#include "models/domain/upkeep/due_words.h"
#include "models/domain/upkeep/windows.h"

#include <algorithm>

namespace rickyard::domain {

namespace {

struct PlacedVisit {
    RecordId visit;
    RecordId task;
    Instant start;
    Instant end;
    int people;
};

QVector<PlacedVisit> placedVisits(const ClashGround &ground)
{
    QVector<PlacedVisit> placed;
    for (const Visit &visit : ground.books.visits) {
        if (visit.state != VisitState::Placed)
            continue;
        const UpkeepTask task = ground.books.tasks.value(visit.task);
        const Instant end = visit.end.value_or(visit.start + task.work);
        if (end > ground.now)
            placed << PlacedVisit{visit.id, visit.task, visit.start, end, std::max(1, task.people)};
    }
    std::stable_sort(placed.begin(), placed.end(),
                     [](const PlacedVisit &a, const PlacedVisit &b) { return a.start < b.start; });
    return placed;
}

QString visitText(const ClashGround &ground, const PlacedVisit &visit)
{
    return QString(QStringLiteral("The ") % taskPhrase(ground.books, visit.task) %
                   QStringLiteral(" is placed at ") % ground.local.timeText(visit.start));
}

// Whether crew hours hold the whole visit, and with how many people at its start.
int peopleFor(const PlacedVisit &visit, const QVector<WorkWindow> &windows)
{
    int people = 0;
    for (const WorkWindow &window : windows)
        if (window.start <= visit.start && visit.end <= window.end)
            people += window.people;
    return people;
}

void findHours(const ClashGround &ground, QVector<Clash> &found)
{
    const QVector<PlacedVisit> placed = placedVisits(ground);
    if (ground.books.crewTimes.isEmpty() || placed.isEmpty())
        return;
    Instant last = placed.first().end;
    for (const PlacedVisit &visit : placed)
        last = std::max(last, visit.end);
    const QVector<WorkWindow> windows = crewWindows(ground.books, placed.first().start,
                                                    last + Duration::ofBase(86400), ground.local);
    for (const PlacedVisit &visit : placed) {
        const int people = peopleFor(visit, windows);
        const Link own{TableId::Visit, visit.visit};
        if (people == 0) {
            found << Clash{ClashKind::CrewHours,
                           visitText(ground, visit) %
                               QStringLiteral(", outside the hours of the crew."),
                           QStringLiteral("Move the visit, or enter the crew's hours of that day."),
                           own,
                           {},
                           visit.start};
            continue;
        }
        // Counted at the start of each visit: there the number at work rises.
        int wanted = 0;
        const PlacedVisit *other = nullptr;
        for (const PlacedVisit &one : placed) {
            if (one.start > visit.start || one.end <= visit.start)
                continue;
            wanted += one.people;
            if (one.visit != visit.visit && other == nullptr)
                other = &one;
        }
        if (wanted <= people)
            continue;
        found << Clash{ClashKind::CrewHours,
                       visitText(ground, visit) %
                           (other == nullptr
                                ? QString(QStringLiteral(" and asks for ") %
                                          QString::number(wanted) % QStringLiteral(" people"))
                                : QString(QStringLiteral(", while the ") %
                                          taskPhrase(ground.books, other->task) %
                                          QStringLiteral(" goes on: together they ask for ") %
                                          QString::number(wanted) % QStringLiteral(" people"))) %
                           QStringLiteral(", and the crew's hours then have ") %
                           QString::number(people) % QLatin1Char('.'),
                       QStringLiteral("Do one after the other, or enter who comes along."),
                       own,
                       other == nullptr ? Link{} : Link{TableId::Visit, other->visit},
                       visit.start};
    }
}

QString busyText(const ClashGround &ground, const BusyTime &busy)
{
    const QString what = busy.summary.isEmpty() ? QStringLiteral("something else") : busy.summary;
    return QString(QStringLiteral("is busy with ") % what % QStringLiteral(" (") %
                   ground.local.timeText(busy.start) % QStringLiteral(" to ") %
                   ground.local.timeText(busy.end) % QStringLiteral(")."));
}

void findBusy(const ClashGround &ground, QVector<Clash> &found)
{
    const QString help = QStringLiteral("Ask who stands in, or move one of the two.");
    const QVector<PlacedVisit> placed = placedVisits(ground);
    for (const BusyTime &busy : ground.books.busyTimes) {
        if (busy.end <= ground.now)
            continue;
        const Link other{TableId::BusyTime, busy.id};
        const auto add = [&](const QString &what, Link first, Instant at) {
            found << Clash{
                ClashKind::CrewBusy,
                QString(what % QStringLiteral(" somebody of the crew ") % busyText(ground, busy)),
                help,
                first,
                other,
                std::max(at, busy.start)};
        };
        for (const Trip &trip : ground.trips)
            if (trip.from < busy.end && busy.start < trip.until)
                add(QString(QStringLiteral("For ") % trip.event->name %
                            QStringLiteral(" the crew is wanted from ") %
                            ground.local.timeText(trip.from) % QStringLiteral(", and")),
                    {TableId::Event, trip.event->id}, trip.from);
        for (const Burn &burn : ground.burns)
            if (burn.cook == 0 && busy.start <= burn.start && burn.start < busy.end)
                add(QString(ground.pitText(burn) % QStringLiteral(" is to be lit at ") %
                            ground.local.timeText(burn.start) % QStringLiteral(", and")),
                    ClashGround::linkOf(burn), burn.start);
        for (const PlacedVisit &visit : placed)
            if (visit.start < busy.end && busy.start < visit.end)
                add(QString(visitText(ground, visit) % QStringLiteral(", and")),
                    {TableId::Visit, visit.visit}, visit.start);
    }
}

} // namespace

void findCrewClashes(const ClashGround &ground, QVector<Clash> &found)
{
    findHours(ground, found);
    findBusy(ground, found);
}

} // namespace rickyard::domain
