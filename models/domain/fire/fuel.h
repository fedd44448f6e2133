// What each cook burned against what its pit usually burns in such weather, and which pit is
// burning more than it should.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <memory>
#include <optional>

namespace rickyard::domain {

struct NormLine; // the fitted line of a pit, see fuel_norm.h

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
    std::optional<Heat> expected; // by the pit's norm
    std::optional<Heat> lower;    // prediction interval
    std::optional<Heat> upper;
    std::optional<double> excess; // actual over expected, minus one
    QStringList missing;          // what kept it out, in words
    QStringList assumptions;
    StartKind start = StartKind::Cold;
    std::optional<Moisture> meanMoisture; // of the wood burned, by dry mass
    QVector<RecordId> lots;               // burned
    bool inNorm = false;                  // the pit's norm learned from it

    // Finished, and everything that the norm needs is known.
    [[nodiscard]] bool complete() const
    {
        return finished && missing.isEmpty() && degreeHours && *degreeHours > 0 && netHeat > Heat();
    }
};

struct PitNorm {
    RecordId pit = 0;
    int cooks = 0; // that the norm was fitted on
    bool fitted = false;
    QString why;                 // when not fitted
    Heat start;                  // heat of lighting
    Heat perDegreeHour;          // joules a kelvin-hour
    double residualSd = 0;       // joules
    double meanExcessOfLast = 0; // fraction, of the last three cooks
    double lowerExcess = 0;      // rough 95 % bounds of that mean excess
    double upperExcess = 0;
    bool named = false;
    RecordId sinceCook = 0; // first of the unbroken run above half the limit
    Heat extraPerCook;      // mean of the last three, burned less expected

    int completeCooks = 0;                // finished with complete data since the last mending
    std::optional<Heat> coldExtra;        // what a cold start takes on top, when the norm tells
    Heat extraOfLast;                     // of the last three together
    std::optional<Instant> mended;        // the norm starts anew after it
    std::shared_ptr<const NormLine> line; // null when not fitted
};

struct ExpectedUse {
    Heat middle;
    Heat lower; // 90 % prediction interval
    Heat upper;
    bool fromNorm = false; // false: the crew's pooled figure or the working default
    QString basis;         // in words
};

struct FuelAnswer {
    Headline headline;
    QVector<CookFuel> cooks; // by lighting time
    QVector<PitNorm> pits;
};

// The limit of the first method: the mean excess of the last three cooks.
constexpr double kNamedExcess = 0.15;
constexpr int kLastCooks = 3;

FuelAnswer fuelAnswer(const Books &books, Instant now, const Wording &wording);
// What a cook of that length and pit-minus-outside difference should take on a pit.
ExpectedUse expectedUse(const Books &books, const FuelAnswer &fuel, RecordId pit, Duration length,
                        Temperature target, Temperature outside);

} // namespace rickyard::domain
