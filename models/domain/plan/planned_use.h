// What every cook still ahead should take, foretold by the fuel watch under the weather of its
// date.
#pragma once

#include "models/domain/fire/fuel.h"

namespace rickyard::domain {

struct PlannedUse {
    RecordId plannedCook = 0;
    RecordId event = 0; // 0: none
    RecordId pit = 0;
    Instant light;
    Heat middle; // mean
    Heat lower;  // 90 % prediction interval, with the weather as expected for the date
    Heat upper;
    Heat colder;           // mean, 20 °F colder than expected
    double normShare = 0;  // of that interval's variance: the error of the norm, common to the pit
    double weatherSd = 0;  // relative: how far the weather of such a date strays, besides
    Temperature outside;   // expected for the date
    bool forecast = false; // the weather was typed in, not taken from the time of year
    QString weatherBasis;  // in words
    QString useBasis;      // in words
    QStringList standIns;  // what was assumed for lack of a record, in words
    // Filled in by the wood answer.
    double chanceShort = 0; // that it finds too little dry wood when nothing more is ordered
    Heat stockAfter;        // dry stock at the end of its day, middle, when nothing more is ordered
    bool shortOf = false;   // that chance is over the accepted risk
    Heat shortfall;         // of its event, on average when it runs short; 0 when it never does

    [[nodiscard]] bool assumed() const { return !standIns.isEmpty(); }
};

// Cooks not cancelled, not lit and not over, of events not cancelled or done; by lighting time.
QVector<PlannedUse> plannedUses(const Books &books, const FuelAnswer &fuel, Instant now);

// "20 °F colder": the step of PlannedUse::colder, in kelvin.
constexpr double kColderKelvin = 20.0 * 5.0 / 9.0;

} // namespace rickyard::domain
