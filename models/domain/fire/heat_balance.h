// Where a cook's heat goes: what the pit must give over one cook, in joules, term by term, from its
// size, the cook's own hours and the weather over them. The terms are the columns on which the
// expected use is fitted; the net heat of the wood is their sum over the efficiency.
//
// Model (energy per cook): shell loss by natural convection and radiation in still air; what wind
// adds to it; warming the steel and making the coal bed; heating food and driving off its water;
// drying the rain that falls on it. What goes up the stack is not a term: it is in the efficiency.
// Formulas: SI units, air at about one atmosphere. Sources stand at each.
#pragma once

#include "models/domain/records/fire.h"

#include <QStringList>

#include <array>
#include <optional>
#include <vector>

namespace rickyard::domain {

// --- Heat transfer -------------------------------------------------------------------------------

constexpr double kStefanBoltzmann = 5.670374419e-8; // W/m2K4, CODATA 2018
constexpr double kZeroCelsius = 273.15;             // kelvin
constexpr double kPaintedEmissivity = 0.90; // painted or sooted steel; tables give 0.87 to 0.96

// W/m2K for a difference of dT kelvin (its size counts), turbulent air. Holman, Heat Transfer,
// table 7-2 (from memory).
double stillAirCylinder(double dT); // horizontal cylinder, 1.24 dT^(1/3)
double stillAirWall(double dT);     // vertical plate, 1.31 dT^(1/3)
// W/m2K at v m/s, radiation left out: 2.8 + 3.0 v (Watmuff et al. 1977, from memory), 0 to 7 m/s.
double windOverFlat(double v);
// The part of it that wind alone brings, 3.0 v: the 2.8 is still air, which is counted by itself.
double windAlone(double v);
// Natural and forced convection together, (a^3 + b^3)^(1/3): Churchill's rule (from memory).
double mixedConvection(double natural, double forced);
// W/m2 from a surface at `surface` to surroundings at `around`, both kelvin.
double radiated(double emissivity, double surface, double around);

// --- The pit -------------------------------------------------------------------------------------

// A pit as the balance sees it. Areas in square metres, masses in kilograms.
struct HeatShape {
    double chamberArea = 0.0; // closed cylinder
    double fireboxArea = 0.0; // five sides of a cube
    double topArea = 0.0;     // what rain falls on
    double floorArea = 0.0;   // of the firebox: the coal bed lies on it
    double chamberSteel = 0.0;
    double fireboxSteel = 0.0;
    double chamberLoss = 1.0; // share of the bare loss that insulation lets through
    double fireboxLoss = 1.0;
    double windShare = 0.5; // of the wind of the weather record that reaches the steel
    double rainShare = 0.5;
    QStringList assumptions; // what was not measured
};

// Assumed when not measured: a 40 x 20 in chamber, a firebox as wide as the chamber, 1/4 in plate
// (7850 kg/m3). Wind at the pit: the record is taken 10 m up in the open, where it is about half
// again what it is at a pit's height; of that an open stand gets all, a half-sheltered one 55 %, a
// sheltered one 25 % (working figures, no source; the fitted wind coefficient corrects them).
// Insulated steel lets 0.4 of the loss through (common practice, no source).
HeatShape heatShape(const Pit &pit);

// --- The cook ------------------------------------------------------------------------------------

// One stretch of a cook over which things are taken as steady.
struct HeatStretch {
    double seconds = 0.0;
    double pit = 0.0;     // degrees Celsius, air at the grate
    double outside = 0.0; // degrees Celsius
    double wind = 0.0;    // m/s as recorded
    double rain = 0.0;    // mm fallen in the stretch
};

struct HeatCook {
    std::vector<HeatStretch> course; // lighting to fire out
    double target = 0.0;             // degrees Celsius that the steel is brought to
    double outsideAtStart = 0.0;     // degrees Celsius
    StartKind start = StartKind::Cold;
    double foodMass = 0.0; // kilograms, raw
};

enum HeatColumn { ShellColumn, WindColumn, LightingColumn, FoodColumn, RainColumn };
constexpr int kHeatColumns = 5;
// Joules that the pit must give, by HeatColumn; before efficiency.
using HeatColumns = std::array<double, kHeatColumns>;

// Share of the wood's net heat that reaches chamber and steel, the rest goes up the stack with the
// air that an offset draws: about a half (common practice, no source), and anything from 0.35 to
// 0.75 must be reckoned with until a pit has its own log.
constexpr double kEfficiency = 0.5;
constexpr double kEfficiencySpread = 0.35; // relative standard deviation of one over it

// Steel of the chamber stands `kSkinShare` of the pit's difference above the outside, that of the
// firebox `kFireboxShare` of it: 250 F in the pit at 70 F outside gives a skin of 205 F and a
// firebox of 340 F. Working figures (no source) that bring pits of 50 to 1000 gallons into the
// usual pounds an hour.
constexpr double kSkinShare = 0.75;
constexpr double kFireboxShare = 1.5;

// A negative difference (pit colder than outside) counts as none.
HeatColumns heatColumns(const HeatShape &shape, const HeatCook &cook);
double totalHeat(const HeatColumns &columns);

} // namespace rickyard::domain
