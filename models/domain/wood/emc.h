// Equilibrium moisture content: where wood left in air of a temperature and humidity ends up.
//
// Hailwood-Horrobin two-hydrate form, Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190,
// 2010) eq. 4-5 with the Celsius coefficients of Simpson 1998 (FPL-RN-0268). Its table 4-2 covers
// -1.1 to 93.3 degrees Celsius and 5 to 95 % humidity and serves wood of any species; outside that
// the formula extrapolates.
#pragma once

#include "models/domain/quantities/quantity.h"

namespace rickyard::domain
{

// Per cent of oven-dry mass; humidity as a fraction, held to 0 ... 1.
double equilibriumMoisturePercent(double celsius, double humidity);
Moisture equilibriumMoisture(Temperature temperature, Ratio humidity);

} // namespace rickyard::domain
