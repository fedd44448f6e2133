// What the crew reads off and keeps beside the work itself: values of checks, ash in its cans, and
// the visits they have agreed on for the coming days. Invented.
#include "app/demo/draft.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/domain/upkeep/windows.h"

#include <algorithm>
#include <cmath>

namespace rickyard::app::demo {

using domain::AshLoad;
using domain::CheckReading;
using domain::ReadingKind;
using domain::UpkeepTask;
using domain::Visit;

namespace {

domain::Plain plain(double value)
{
    return domain::Plain::rounded(value * 1e6);
}

// The crew's own limits for the two checks that they read off.
void askForReadings(UpkeepTask &task)
{
    if (task.reading != ReadingKind::None)
        return;
    if (task.name == QLatin1String("Gasket test")) {
        task.reading = ReadingKind::PaperTest;
        task.readingUnit = QStringLiteral("of 3");
        task.readingPoints = 6;
        task.readingLow = plain(2);
    } else if (task.name == QLatin1String("Pit gauge check")) {
        task.reading = ReadingKind::BoilingPoint;
        task.readingUnit = QStringLiteral("°F");
        task.readingLow = plain(207);
        task.readingHigh = plain(217);
    }
}

double valueRead(const UpkeepTask &task, int point, double age, Dice &dice)
{
    if (task.reading == ReadingKind::PaperTest) {
        // Point 3 of the middle pit's gasket wears: the latch side at the bottom.
        const bool wearing = task.pit == kMiddlePit && point == 3;
        const double firm = wearing ? 3.0 - 2.2 * age : 2.8;
        return std::clamp(std::round(firm + 0.5 * (dice.uniform() - 0.5)), 0.0, 3.0);
    }
    return std::round((211.2 + 2.5 * age + 1.5 * (dice.uniform() - 0.5)) * 2) / 2;
}

void addReadings(Draft &draft, Dice dice)
{
    const double whole = static_cast<double>((draft.now - draft.begin).base());
    for (UpkeepTask &task : draft.books.tasks)
        askForReadings(task);
    for (const Visit &visit : std::as_const(draft.books.visits)) {
        const UpkeepTask task = draft.books.tasks.value(visit.task);
        if (task.reading != ReadingKind::PaperTest && task.reading != ReadingKind::BoilingPoint)
            continue;
        const double age = static_cast<double>((visit.start - draft.begin).base()) / whole;
        for (int point = 1; point <= task.readingPoints; ++point) {
            CheckReading reading;
            reading.task = task.id;
            reading.visit = visit.id;
            reading.time = visit.start + Duration::ofBase(120LL * point);
            reading.point = point;
            reading.value = plain(valueRead(task, point, age, dice));
            shelve(draft.books.checkReadings, reading);
        }
    }
}

void addAsh(Draft &draft, Dice dice)
{
    const Duration shown = Duration::ofBase(60LL * 86400);
    int number = 0;
    for (const Visit &visit : std::as_const(draft.books.visits)) {
        const UpkeepTask task = draft.books.tasks.value(visit.task);
        if (task.name != QLatin1String("Ash removal") || !task.pit || !visit.end ||
            *visit.end + shown < draft.now)
            continue;
        AshLoad load;
        load.pit = *task.pit;
        load.takenOut = *visit.end;
        load.can = QStringLiteral("Can %1").arg(number++ % 3 + 1);
        load.mass = domain::massFromPounds(4 + 5 * dice.uniform());
        const Instant tipped = draft.at(draft.local.dateOf(load.takenOut).addDays(5), 17.5);
        if (tipped < draft.now) {
            load.tipped = tipped;
            load.where = QStringLiteral("Steel bin behind the shed");
        }
        shelve(draft.books.ashLoads, load);
    }
    // The last can still stands there, its hours over; another was filled yesterday.
    if (draft.books.ashLoads.isEmpty())
        return;
    AshLoad last = draft.books.ashLoads.last();
    last.tipped.reset();
    last.where.clear();
    draft.books.ashLoads[last.id] = last;
    AshLoad fresh;
    fresh.pit = kLargePit;
    fresh.takenOut = draft.at(draft.today().addDays(-1), 18.5);
    fresh.can = QStringLiteral("Can %1").arg(number % 3 + 1);
    fresh.mass = domain::massFromPounds(6);
    shelve(draft.books.ashLoads, fresh);
}

// Work agreed for the crew's next hours: the first that the pit allows.
void agree(Draft &draft, RecordId pit, const char *name, bool byHand, int evening)
{
    for (const UpkeepTask &task : std::as_const(draft.books.tasks)) {
        if (task.pit.value_or(0) != pit || task.name != QLatin1String(name))
            continue;
        const auto crew = domain::crewWindows(
            draft.books, draft.now, draft.now + Duration::ofBase(21LL * 86400), draft.local);
        const auto fires =
            pit == 0 ? QVector<domain::Burn>() : domain::burnsOf(draft.books, pit, draft.now);
        for (const domain::WorkWindow &w :
             domain::freeWindows(crew, fires, task.coldBefore, task.cureAfter)) {
            if (w.start + task.work > w.end || evening-- > 0)
                continue;
            Visit visit;
            visit.task = task.id;
            visit.state = domain::VisitState::Placed;
            visit.start = w.start;
            visit.end = w.start + task.work;
            visit.pinned = byHand;
            shelve(draft.books.visits, visit);
            return;
        }
    }
}

} // namespace

void addCare(Draft &draft)
{
    addReadings(draft, draft.dice.fork(11));
    addAsh(draft, draft.dice.fork(12));
    agree(draft, kSmallPit, "Rust look and touch-up", true, 0);
    agree(draft, 0, "Extinguisher look", false, 1);
}

} // namespace rickyard::app::demo
