// The net heat of firewood at its moisture, and its ash.
//
// Net heat at constant pressure in the form of ISO 18125:2017 (constants from memory):
//   q = [qgr - 212.2 H - 0.8 (O + N)] (1 - 0.01 M) - 24.43 M      J/g
// with qgr the gross heat of oven-dry wood in J/g, H, O, N in per cent of dry mass and M the
// moisture in per cent, wet basis.
#pragma once

#include "models/domain/records/wood.h"
#include "models/domain/wood/density.h"

namespace rickyard::domain
{

// What the net heat is computed from. The default is a broad-leaved wood: 19.8 MJ/kg gross and the
// typical composition of ISO 17225-1 annex B (from memory).
struct WoodAnalysis {
    double grossHeat = 19.8e6; // J per kg of oven-dry wood
    double hydrogen = 6.2;     // per cent of oven-dry mass, as are the next two
    double oxygen = 44.0;
    double nitrogen = 0.1;
};

// The default analysis with the species' own gross heat where it has one.
WoodAnalysis analysisOf(const Species &species);

// Joules a kilogram of wood as it is, water included. Negative beyond about 88 % wet basis.
double netHeatAsIs(const WoodAnalysis &analysis, Moisture moisture);
// Joules a kilogram of oven-dry wood that carries that moisture.
double netHeatPerDryKilogram(const WoodAnalysis &analysis, Moisture moisture);
// Net heat of an oven-dry mass that carries that moisture. Keeps the sign of the mass.
Heat netHeatOf(Mass dryMass, Moisture moisture, const WoodAnalysis &analysis = {});

// Ash of oven-dry mass when the species does not say: 84 % clean wood at 0.31 % and 16 % bark at
// 5.3 % (published oak analyses; the bark share is that of post oak) make about 1.1 %.
constexpr double kDefaultAsh = 0.011;
Mass ashOf(Mass dryMass, const Species &species);

} // namespace rickyard::domain
