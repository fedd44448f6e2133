// Wood between mass and volume: shrinkage, specific gravity and density at a moisture, and solid,
// stacked and loose volumes. Wood Handbook (FPL-GTR-190) chapter 4; the shrinkage and gravity
// equations are from memory, the density equation was checked against a published example.
#pragma once

#include "models/domain/records/wood.h"

namespace rickyard::domain
{

// Fibre saturation: above it wood neither swells nor shrinks. "Averages about 30 %" (FPL-GTR-190
// page 4-2).
constexpr Moisture kFibreSaturation = Moisture::ofBase(30000);

// Volumetric shrinkage from green to oven-dry, a fraction: the species' own, else 26.5 % times the
// basic gravity (from memory).
double fullShrinkage(const Species &species);
// S_x = S_0 (1 - x / 30 %) below fibre saturation, else 0.
double shrinkageAt(const Species &species, Moisture moisture);
// Oven-dry mass over the volume at that moisture, relative to water: G_x = Gb / (1 - S_x).
double gravityAt(const Species &species, Moisture moisture);
// Kilograms of wood with its water in a cubic metre of wood: 1000 G_x (1 + x).
double densityAt(double gravity, Moisture moisture);
double densityAt(const Species &species, Moisture moisture);

// Oven-dry mass and the volume of solid wood at that moisture.
Volume solidVolume(Mass dryMass, const Species &species, Moisture moisture);
Mass dryMassOfSolid(Volume solid, const Species &species, Moisture moisture);

// Solid, stacked and loose thrown volumes, by the usual fractions of stock.h.
Volume stackedFromSolid(Volume solid);
Volume solidFromStacked(Volume stacked);
Volume looseFromSolid(Volume solid);
Volume solidFromLoose(Volume loose);
Volume stackVolume(Length length, Length height, Length depth);

// Water on and off: as-is mass = dry mass (1 + u).
Mass asIsFromDry(Mass dryMass, Moisture moisture);
Mass dryFromAsIs(Mass asIs, Moisture moisture);

} // namespace rickyard::domain
