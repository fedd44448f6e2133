// What a pit without a norm of its own should take: the crew's pooled figure, else a default from
// the pit's size.
#pragma once

#include "models/domain/fire/fuel.h"

namespace rickyard::domain
{

// Outer steel in square metres: the cook chamber as a closed cylinder and five sides of a cubic
// firebox (the sixth is joined to the chamber); a firebox not measured is taken as wide as the
// chamber. Only a measure of size: it lets pits of different size lend each other their figures.
double shellArea(const Pit &pit);

// Volume of the cook chamber in US gallons, the trade's measure of a pit.
double chamberGallons(const Pit &pit);

struct WorkingDefault {
    Heat start;  // lighting and coal bed
    Heat hourly; // at 250 °F inside and 70 °F outside, per hour
    Heat startLower;
    Heat startUpper;
    Heat hourlyLower; // range to accept
    Heat hourlyUpper;
};

// Start values until a pit has its own log. From a small heat balance, not from measurements
// (assumed: 250 °F inside, 70 °F outside, 3 mph, wood at 17 % wet basis, bare steel, firebox skin
// at 500 °F, six times the air needed); lighting is common practice, no source. Between the sizes
// of the table it runs straight on logarithmic scales, beyond them the last stretch goes on. An
// insulated firebox takes 0.6 of it, a wholly insulated pit 0.5 (a third to a half less: common
// practice, no source).
WorkingDefault workingDefault(const Pit &pit);

// Joules a kelvin-hour a square metre over every complete cook, with how it scatters.
struct PooledUse {
    int cooks = 0;
    int pits = 0;
    double mean = 0;
    double sd = 0; // from cook to cook; 0 with one
};
PooledUse pooledUse(const Books &books, const QVector<CookFuel> &cooks);

} // namespace rickyard::domain
