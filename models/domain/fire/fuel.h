// What each cook burned against what was to be expected of it from earlier cooks, which pit is
// burning more than it should, and what a fire to come should take.
//
// Every finished cook is laid out as a heat balance (heat_balance.h) and shown to the fuel watch
// (watch.h) in the order of time, between mendings and looks that found nothing. The watch is all
// that judges and foretells; this file is the way from the books to it and back.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/fire/watch_verdict.h"
#include "models/domain/records/books.h"

#include <memory>
#include <optional>

namespace rickyard::domain {

class FuelWatch;

struct CookFuel {
    RecordId cook = 0;
    RecordId pit = 0;
    Instant lit;
    bool finished = false;
    Mass dryMass; // burned, from the ledger
    Heat netHeat; // burned
    Duration length;
    std::optional<double> degreeHours; // kelvin-hours of pit minus outside, lighting to fire out
    std::optional<Temperature> meanPit;
    std::optional<Temperature> meanOutside;
    std::optional<Speed> meanWind;
    QStringList missing; // what kept it out, in words
    QStringList assumptions;
    StartKind start = StartKind::Cold;
    std::optional<Moisture> meanMoisture; // of the wood burned, by dry mass
    QMap<RecordId, double> lots;          // burned: share of the dry mass
    double cost = 0;                      // of the wood, cents; 0 where no price is known
    double priced = 0;                    // share of the dry mass that has a price

    HeatColumns columns{}; // what the pit had to give, joules before efficiency
    // Relative variance that its poorly known wood, temperatures and weather add to that of an
    // ordinary cook.
    double doubt = 0;
    bool knownGood = false; // lies in a declared period

    // By the watch, from earlier cooks only; for one that burns, by all cooks so far.
    std::optional<Heat> expected;
    std::optional<Heat> lower; // 90 % prediction interval
    std::optional<Heat> upper;
    std::optional<double> excess;        // actual over expected, less one; finished cooks only
    std::optional<WatchVerdict> verdict; // of a judged cook

    // Finished, and everything that the watch needs is known.
    [[nodiscard]] bool complete() const
    {
        return finished && missing.isEmpty() && degreeHours && *degreeHours > 0 && netHeat > Heat();
    }
    // Above its interval.
    [[nodiscard]] bool high() const { return finished && upper && netHeat > *upper; }
};

// A fire to come, or one thought up.
struct PlannedFire {
    RecordId pit = 0;
    Duration length; // lighting to fire out
    Temperature target;
    Temperature outside;
    std::optional<Speed> wind; // as recorded in the open; missing: kUsualWind
    double rain = 0;           // millimetres over the fire
    std::optional<Mass> food;
    StartKind start = StartKind::Cold;
};
// Common practice, no source: a cook is held near 250 °F when nobody says otherwise.
inline Temperature usualPit()
{
    return temperatureFromFahrenheit(250);
}
// Without any weather record; an assumption that is always said.
inline Temperature mildDay()
{
    return temperatureFromFahrenheit(60);
}
constexpr double kUsualHours = 12;                // common practice, no source
constexpr Speed kUsualWind = Speed::ofBase(2500); // about 5.6 mph; a working figure, no source

// How a pit stands after its last cook.
struct PitFuel {
    RecordId pit = 0;
    int cooks = 0;           // judged, since its last mending
    int cooksEver = 0;       // judged
    QVector<RecordId> last;  // of its judged cooks, up to kLastCooks, oldest first
    double excessOfLast = 0; // of these together: burned over expected, less one
    Heat extraOfLast;        // of these together
    double up = 0;           // sum of the chart, in standard deviations
    double down = 0;         // of its mirror
    double limit = 0;
    WatchFlag flag = WatchFlag::None;
    RecordId raisedBy = 0;             // the cook that raised the flag
    std::optional<WatchExcess> climb;  // how far it moved, while it climbs
    std::optional<WatchExcess> fall;   // of the mirror
    int heldBack = 0;                  // cooks that the norm has not learned
    std::optional<Instant> mended;     // last
    std::optional<Instant> foundSound; // last look that found nothing
    // What each hour of a fire takes at the pit's usual temperature in the usual weather of the
    // day, and that fire.
    Heat hourly;
    PlannedFire usual;

    // How near the chart is to its limit, 0 to 1 and above.
    [[nodiscard]] double nearness() const { return limit > 0 ? up / limit : 0.0; }
    // Flagged, and the evidence still stands: the interval of the excess lies above zero and the
    // sum above two thirds of its limit. The flag itself only falls when the sum is at zero.
    [[nodiscard]] bool named() const;
};

struct ExpectedUse {
    Heat middle;
    Heat lower; // 90 % prediction interval
    Heat upper;
    double relativeSd = 0;
    double dof = 0;        // of the Student t behind the interval
    HeatColumns parts{};   // joules, their sum is `middle`
    bool fromNorm = false; // cooks of this very pit have been learned
    QString basis;         // in words
};

struct FuelAnswer {
    Headline headline;
    QVector<CookFuel> cooks; // by lighting time
    QVector<PitFuel> pits;
    std::shared_ptr<const FuelWatch> watch; // after the last cook
};

constexpr int kLastCooks = 3;

FuelAnswer fuelAnswer(const Books &books, Instant now, const Wording &wording);
// What a fire should take. A pit without a cook has the crew's coefficients, a crew without one the
// heat balance alone; the interval is as wide as that deserves.
ExpectedUse expectedUse(const Books &books, const FuelAnswer &fuel, const PlannedFire &fire);
// The middle one of a pit's judged cooks (medians of length, pit, air, wind and food), else its
// usual fire for kUsualHours.
PlannedFire middleFire(const Books &books, const FuelAnswer &fuel, RecordId pit);
// What each further hour of such a fire takes, once it is lit; `length` is not looked at.
Heat hourlyUse(const Books &books, const FuelAnswer &fuel, PlannedFire fire);
// Price of heat, from what the pit's (0: any pit's) last cooks burned; 0 where no price is known.
double centsPerJoule(const FuelAnswer &fuel, RecordId pit);

} // namespace rickyard::domain
