#include "models/domain/fire/heat_balance.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace rickyard::domain {
namespace {

struct BalanceWords {
    Q_DECLARE_TR_FUNCTIONS(HeatBalance)
};

constexpr double kSteelHeat = 490.0;     // J/kgK between 20 and 150 C (wood.md: 460 to 500)
constexpr double kSteelDensity = 7850.0; // kg/m3
constexpr double kDefaultPlate = 0.00635;
constexpr double kInsulated = 0.4;
constexpr double kPitHeightWind = 0.65; // wind at 2 m over that at 10 m, open ground

// Food (Incropera appendix and Holman, from memory): lean meat, water driven off at the boil.
constexpr double kFoodHeat = 3400.0;    // J/kgK
constexpr double kFoodFrom = 4.0;       // C, out of the cold box
constexpr double kFoodTo = 93.0;        // C, done
constexpr double kFoodDried = 0.25;     // share of its mass that leaves as water
constexpr double kVapourHeat = 2.257e6; // J/kg at 100 C
constexpr double kRainHeat = 2.45e6;    // J/kg near 20 C
constexpr double kRainStays = 0.5;      // the rest runs off; working figure

// The coal bed, joules a square metre of firebox floor, before efficiency: some three pounds of
// wood on a 20 in firebox (common practice, no source).
constexpr double kCoalBed = 3.5e7;
constexpr double kWarmSteel = 0.35; // what a warm start still has to warm
constexpr double kWarmBed = 0.5;

double metresOf(Length length)
{
    return length.toDouble() / 1e6;
}

double windShareOf(Shelter shelter)
{
    switch (shelter) {
    case Shelter::Open:
        return 1.0;
    case Shelter::Half:
        return 0.55;
    case Shelter::Sheltered:
        return 0.25;
    }
    return 0.55;
}

// Watts a square metre in still air, and what wind adds.
struct Loss {
    double still = 0.0;
    double wind = 0.0;
};

Loss lossOf(double natural, double dT, double outside, double wind)
{
    const double around = outside + kZeroCelsius;
    Loss loss;
    loss.still = natural * dT + radiated(kPaintedEmissivity, around + dT, around);
    // Without wind exactly nothing, whatever the cube root rounds to.
    if (wind > 0.0)
        loss.wind = (mixedConvection(natural, windAlone(wind)) - natural) * dT;
    return loss;
}

} // namespace

double stillAirCylinder(double dT)
{
    return 1.24 * std::cbrt(std::abs(dT));
}

double stillAirWall(double dT)
{
    return 1.31 * std::cbrt(std::abs(dT));
}

double windOverFlat(double v)
{
    return 2.8 + windAlone(v);
}

double windAlone(double v)
{
    return 3.0 * std::max(0.0, v);
}

double mixedConvection(double natural, double forced)
{
    return std::cbrt(natural * natural * natural + forced * forced * forced);
}

double radiated(double emissivity, double surface, double around)
{
    const double s2 = surface * surface;
    const double a2 = around * around;
    return emissivity * kStefanBoltzmann * (s2 - a2) * (s2 + a2);
}

HeatShape heatShape(const Pit &pit)
{
    HeatShape shape;
    double d = metresOf(pit.diameter);
    double l = metresOf(pit.length);
    if (d <= 0.0 || l <= 0.0) {
        d = 0.508;
        l = 1.016;
        shape.assumptions << BalanceWords::tr("The pit's size is not recorded; 20 by 40 in taken.");
    }
    if (!pit.fireboxSide)
        shape.assumptions << BalanceWords::tr(
            "Firebox not measured; taken as wide as the chamber.");
    const double side = pit.fireboxSide ? metresOf(*pit.fireboxSide) : d;
    shape.chamberArea = std::numbers::pi * d * l + std::numbers::pi * d * d / 2.0;
    shape.fireboxArea = 5.0 * side * side;
    shape.floorArea = side * side;
    shape.topArea = d * l + side * side;
    if (!pit.plate && !pit.steel)
        shape.assumptions << BalanceWords::tr("Plate not measured; 1/4 in taken.");
    const double area = shape.chamberArea + shape.fireboxArea;
    const double steel =
        pit.steel ? pit.steel->toDouble() / 1e6
                  : area * kSteelDensity * (pit.plate ? metresOf(*pit.plate) : kDefaultPlate);
    shape.chamberSteel = steel * shape.chamberArea / area;
    shape.fireboxSteel = steel * shape.fireboxArea / area;
    shape.chamberLoss = pit.insulation == Insulation::Whole ? kInsulated : 1.0;
    shape.fireboxLoss = pit.insulation == Insulation::Bare ? 1.0 : kInsulated;
    shape.windShare = kPitHeightWind * windShareOf(pit.shelter);
    shape.rainShare = windShareOf(pit.shelter);
    return shape;
}

HeatColumns heatColumns(const HeatShape &shape, const HeatCook &cook)
{
    HeatColumns columns{};
    double rain = 0.0;
    for (const HeatStretch &s : cook.course) {
        const double dT = std::max(0.0, s.pit - s.outside);
        const double wind = s.wind * shape.windShare;
        const double skin = kSkinShare * dT;
        const double box = kFireboxShare * dT;
        const Loss chamber = lossOf(stillAirCylinder(skin), skin, s.outside, wind);
        const Loss firebox = lossOf(stillAirWall(box), box, s.outside, wind);
        const double chamberShare = shape.chamberArea * shape.chamberLoss * s.seconds;
        const double fireboxShare = shape.fireboxArea * shape.fireboxLoss * s.seconds;
        columns[ShellColumn] += chamber.still * chamberShare + firebox.still * fireboxShare;
        columns[WindColumn] += chamber.wind * chamberShare + firebox.wind * fireboxShare;
        rain += s.rain;
    }
    const double rise = std::max(0.0, cook.target - cook.outsideAtStart);
    const bool warm = cook.start == StartKind::Warm;
    const double steel =
        kSteelHeat * rise * (kSkinShare * shape.chamberSteel + kFireboxShare * shape.fireboxSteel);
    columns[LightingColumn] =
        steel * (warm ? kWarmSteel : 1.0) + kCoalBed * shape.floorArea * (warm ? kWarmBed : 1.0);
    columns[FoodColumn] =
        cook.foodMass * (kFoodHeat * (kFoodTo - kFoodFrom) + kFoodDried * kVapourHeat);
    columns[RainColumn] = rain * shape.topArea * shape.rainShare * kRainStays * kRainHeat;
    return columns;
}

double totalHeat(const HeatColumns &columns)
{
    return std::accumulate(columns.begin(), columns.end(), 0.0);
}

} // namespace rickyard::domain
