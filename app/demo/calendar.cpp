#include "app/demo/draft.h"

#include <array>

namespace rickyard::app::demo {

namespace {

using domain::Cook;
using domain::Event;
using domain::PlannedCook;

constexpr int kEventsAhead = 8;
// Cooks a week, on average: about 120 in two years.
constexpr double kCooksAWeek = 1.17;
// The last fire is out this long before the end, so that the crew had an evening for the pits.
constexpr int kQuietDays = 7;

constexpr std::array kOccasions = {"Supper",        "Lunch",         "Market",    "Fish Fry Night",
                                   "Barn Dance",    "Harvest Table", "Open Gate", "Ball Game Lunch",
                                   "Wedding Lunch", "Music Evening"};
constexpr std::array kPlaces = {"Nowhere Hall",        "Made-Up Meadow",  "Pretend Creek Landing",
                                "Fable Corner Church", "Notional Square", "Storybook Orchard",
                                "Hearsay Grange"};

// How long the crew burns a pit for, lighting to fire out, and when it lights for a Saturday noon.
struct Habit {
    RecordId pit;
    double shortest;
    double longest;
    double poundsOfFood;
    const char *foods;
};
constexpr std::array kHabits = {Habit{kSmallPit, 7.5, 11, 30, "Ribs, chicken, beans"},
                                Habit{kMiddlePit, 10, 14.5, 85, "Briskets, sausage"},
                                Habit{kLargePit, 11.5, 16, 190, "Briskets, shoulders, turkeys"}};

const Habit &habitOf(RecordId pit)
{
    return kHabits.at(static_cast<std::size_t>(pit - 1));
}

QDate saturdayFrom(QDate day)
{
    return day.addDays((6 - day.dayOfWeek() + 7) % 7);
}

RecordId addEvent(Draft &draft, Dice &dice, QDate day, bool ahead, int number)
{
    Event e;
    const auto what = static_cast<std::size_t>(number) % kOccasions.size();
    const auto where = static_cast<std::size_t>(number * 3) % kPlaces.size();
    e.name = QString::fromUtf8(kPlaces.at(where)) + QLatin1Char(' ') +
             QString::fromUtf8(kOccasions.at(what));
    e.place = QString(QString::fromUtf8(kPlaces.at(where)) + QStringLiteral(" (invented)"));
    e.start = draft.at(day, dice.whole(0, 1) == 0 ? 11.5 : 12.0);
    e.end = draft.at(day, dice.whole(15, 17));
    e.state = ahead ? domain::EventState::Booked : domain::EventState::Done;
    e.travel = Duration::ofBase(dice.whole(2, 9) * 600LL);
    e.towed = dice.chance(0.3);
    e.covers = dice.whole(6, 22) * 10;
    e.siteRules = QStringLiteral("Ask the host where ash and grease go. Local code and the "
                                 "authority having jurisdiction decide.");
    return shelve(draft.books.events, e);
}

PlannedCook planned(Draft &draft, Dice &dice, RecordId pit, QDate day, RecordId event)
{
    const Habit &habit = habitOf(pit);
    PlannedCook p;
    if (event != 0)
        p.event = event;
    p.pit = pit;
    const double length = std::round(dice.between(habit.shortest, habit.longest) * 4) / 4;
    p.length = domain::durationFromHours(length);
    // The fire is out half an hour after serving begins; a practice cook starts in the morning.
    const Instant serving = event != 0 ? draft.books.events.value(event).start : draft.at(day, 18);
    p.light = serving + Duration::ofBase(1800) - p.length;
    p.target = domain::temperatureFromFahrenheit(pit == kSmallPit ? 265 : 250);
    p.foods = QString::fromUtf8(habit.foods);
    p.foodMass = domain::massFromPounds(std::round(habit.poundsOfFood * dice.between(0.7, 1.3)));
    return p;
}

// What came of a plan: lit a little late, out a little later.
void addCook(Draft &draft, Dice &dice, const PlannedCook &plan)
{
    const auto minutes = [&dice](int low, int high) {
        return Duration::ofBase(dice.whole(low, high) * 60LL);
    };
    Cook c;
    c.name = plan.event
                 ? draft.books.events.value(*plan.event).name
                 : QStringLiteral("Practice on %1").arg(draft.books.pits.value(plan.pit).name);
    c.pit = plan.pit;
    if (plan.id != 0)
        c.planned = plan.id;
    c.lit = plan.light + minutes(-15, 25);
    const double size = static_cast<double>(plan.pit);
    c.atTemperature = c.lit + Duration::ofBase(std::llround(40 + 22 * size) * 60) + minutes(0, 30);
    c.foodOn = *c.atTemperature + minutes(5, 25);
    c.fireOut = plan.light + plan.length + minutes(-10, 35);
    c.foodOff = *c.fireOut - minutes(35, 70);
    c.target = plan.target;
    c.foods = plan.foods;
    c.foodMass = plan.foodMass;
    shelve(draft.books.cooks, c);
}

// The pit with the fewest cooks of those allowed, so that each gets its share.
RecordId nextPit(const QMap<RecordId, int> &cooks, RecordId not1)
{
    RecordId best = 0;
    for (RecordId pit : {kMiddlePit, kSmallPit, kLargePit})
        if (pit != not1 && (best == 0 || cooks.value(pit) < cooks.value(best)))
            best = pit;
    return best;
}

void addPast(Draft &draft, QDate last)
{
    Dice dice = draft.dice.fork(2);
    const QDate first = saturdayFrom(draft.local.dateOf(draft.begin).addDays(14));
    QMap<RecordId, int> cooks;
    double owed = 1;
    int events = 0;
    for (QDate day = first; day <= last; day = day.addDays(7)) {
        owed += kCooksAWeek * dice.between(0.6, 1.4);
        const bool two = owed >= 2 && dice.chance(0.8);
        if (owed < 1)
            continue;
        const bool practice = !two && dice.chance(0.35);
        const RecordId event = practice ? 0 : addEvent(draft, dice, day, false, events++);
        RecordId before = 0;
        for (int i = 0; i < (two ? 2 : 1); ++i) {
            const RecordId pit = nextPit(cooks, before);
            PlannedCook plan = planned(draft, dice, pit, day, event);
            if (!practice)
                plan.id = shelve(draft.books.plannedCooks, plan);
            addCook(draft, dice, plan);
            ++cooks[pit];
            before = pit;
            owed -= 1;
        }
    }
}

void addAhead(Draft &draft, QDate first)
{
    Dice dice = draft.dice.fork(3);
    const QVector<QVector<RecordId>> pits = {
        {kMiddlePit, kSmallPit}, {kLargePit}, {kMiddlePit}, {kLargePit, kSmallPit},
        {kMiddlePit, kSmallPit}, {kLargePit}, {kMiddlePit}, {kMiddlePit, kLargePit}};
    for (int i = 0; i < kEventsAhead; ++i) {
        const QDate day = first.addDays(7LL * i);
        const RecordId event = addEvent(draft, dice, day, true, i * 11 + 4);
        if (i == kEventsAhead - 1)
            draft.books.events[event].state = domain::EventState::Proposed;
        for (RecordId pit : pits.at(i))
            shelve(draft.books.plannedCooks, planned(draft, dice, pit, day, event));
    }
}

} // namespace

void addCalendar(Draft &draft)
{
    const QDate today = draft.today();
    const QDate last = saturdayFrom(today.addDays(-kQuietDays - 6));
    addPast(draft, last);
    addAhead(draft, saturdayFrom(today.addDays(3)));
}

} // namespace rickyard::app::demo
