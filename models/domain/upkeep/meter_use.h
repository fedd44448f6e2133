// What a burn adds to the meters of a task, and which trigger is reached: shared by the meters, the
// forecast by the plan and the paths with their spread.
#pragma once

#include "models/domain/fire/fuel.h"
#include "models/domain/upkeep/burns.h"

namespace rickyard::domain {

struct BurnUse {
    Instant start;
    Instant end;
    int cooks = 0; // lit since the count began, fire out
    int fires = 0; // out since then, whenever it was lit
    double hours = 0;
    double heat = 0; // J
    double ash = 0;  // kg
    bool heatKnown = true;
};

struct MeterSums {
    double cooks = 0;
    double fires = 0;
    double hours = 0;
    double heat = 0; // J
    double ash = 0;  // kg

    void add(const BurnUse &use);
};

// What the pit's fires usually take, else those of all pits.
struct UseRates {
    std::optional<double> heatPerHour; // J; nothing when no finished cook has a figure
    double ashPerHeat = 0;             // kg a joule
    bool ashAssumed = false;           // of the default hardwood: no cook has a figure
};
UseRates ratesOf(const Books &books, const FuelAnswer &fuel, RecordId pit);

// Estimated ash of what a cook burned: the ash share of each lot's species times its oven-dry mass.
// The mineral ash alone; char and coals that are left come on top.
Mass ashOf(const Books &books, const CookFuel &cook);

// Up to `now`, what the records say; a burn that was under way at `from` counts in proportion to
// its time.
BurnUse usedOf(const Books &books, const Burn &burn, const FuelAnswer &fuel, Instant from,
               Instant now);
// To its end: a running burn goes on to its expected end, a planned one is all to come, at these
// rates.
BurnUse wholeOf(const Books &books, const Burn &burn, const FuelAnswer &fuel, const UseRates &rates,
                Instant from, Instant now);
// The share of a burn that lies between two moments.
double shareOf(Instant start, Instant end, Instant from, Instant to);

// The triggers that fires run up.
enum class Trigger { Cooks, FireHours, Seasoned, Ash, AfterCook };
// The first of them (in the order of the enumerator) that stands at `fraction` of its limit.
std::optional<Trigger> reachedBy(const UpkeepTask &task, const MeterSums &sums, double fraction);
QString triggerWords(const UpkeepTask &task, Trigger trigger, bool metric); // "after 10 cooks"
bool runsWithFire(const UpkeepTask &task); // has one of these triggers
// "1 day", "1.5 days": a limit with its unit.
QString limitWords(double limit, const char *one, const char *many);

} // namespace rickyard::domain
