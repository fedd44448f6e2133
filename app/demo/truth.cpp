#include "app/demo/truth.h"

#include <algorithm>

namespace rickyard::app::demo {

namespace {

constexpr double kEfficiency = 0.40;
constexpr double kStillAir = 9.5;      // W/(m² K), convection and radiation together
constexpr double kPerWind = 1.3;       // W/(m² K) for each m/s at the shell
constexpr double kSteelHeat = 490;     // J/(kg K)
constexpr double kSteelShare = 0.75;   // of the steel comes near the pit's temperature
constexpr double kFoodHeat = 1.05e6;   // J/kg: warming it, and the water that leaves it
constexpr double kLightingHeat = 18e6; // J: kindling of the coal bed, each m² of shell

double shellOf(const domain::Pit &pit)
{
    const double d = domain::metres(pit.diameter);
    const double l = domain::metres(pit.length);
    const double box = pit.fireboxSide ? domain::metres(*pit.fireboxSide) : d;
    return std::numbers::pi * d * (l + d / 2) + 5 * box * box;
}

double windShare(domain::Shelter shelter)
{
    switch (shelter) {
    case domain::Shelter::Open:
        return 0.7;
    case domain::Shelter::Half:
        return 0.4;
    case domain::Shelter::Sheltered:
        return 0.2;
    }
    return 0.4;
}

// Everything but the shell loss.
double standingNeed(const domain::Pit &pit, double rise, std::optional<domain::Mass> food)
{
    const double steel = pit.steel ? domain::kilograms(*pit.steel) : 100 * shellOf(pit);
    return steel * kSteelShare * kSteelHeat * rise + kLightingHeat * shellOf(pit) * 0.25 +
           (food ? domain::kilograms(*food) * kFoodHeat : 0.0);
}

} // namespace

Course courseOf(Dice &dice, const domain::Cook &cook, const Air &air)
{
    const double target = domain::celsius(*cook.target);
    const double outside = air.celsiusAt(cook.lit);
    const double toHeat = (*cook.atTemperature - cook.lit).toDouble();
    const double length = (*cook.fireOut - cook.lit).toDouble();
    Course course;
    double drift = 0;
    double door = 0;
    for (double t = 0; t <= length; t += kStep) {
        drift = 0.93 * drift + 1.6 * dice.normal();
        door *= 0.72;
        const bool holding = t > toHeat && t < length - 2400;
        if (holding && dice.chance(0.028))
            door = dice.between(-28, -10);
        // Reaches 95 % of the way at the time the crew called it hot.
        double degrees = outside + (target - outside) * (1 - std::exp(-3.0 * t / toHeat));
        if (t > length - 2400)
            degrees -= 0.35 * (degrees - outside) * (t - (length - 2400)) / 2400;
        course << std::clamp(degrees + drift + door, outside - 2, 400.0);
    }
    return course;
}

double heatNeeded(const domain::Pit &pit, const domain::Cook &cook, const Course &course,
                  const Air &air)
{
    double loss = 0;
    domain::Instant t = cook.lit;
    for (const double degrees : course) {
        const double perKelvin = kStillAir + kPerWind * windShare(pit.shelter) * air.windAt(t);
        const double wet = air.rainAt(t) && pit.shelter != domain::Shelter::Sheltered ? 1.15 : 1.0;
        loss += perKelvin * shellOf(pit) * (degrees - air.celsiusAt(t)) * kStep * wet;
        t = t + domain::Duration::ofBase(kStep);
    }
    const double rise = domain::celsius(*cook.target) - air.celsiusAt(cook.lit);
    return (loss + standingNeed(pit, rise, cook.foodMass)) / kEfficiency;
}

double heatForeseen(const domain::Pit &pit, const domain::PlannedCook &plan)
{
    const double target = domain::celsius(*plan.target);
    double loss = 0;
    for (qint64 s = 0; s < plan.length.base(); s += 3600) {
        const domain::Instant t = plan.light + domain::Duration::ofBase(s);
        const double perKelvin = kStillAir + kPerWind * windShare(pit.shelter) * 3.2;
        loss += perKelvin * shellOf(pit) * (target - Air::usualCelsius(t)) * 3600;
    }
    const double rise = target - Air::usualCelsius(plan.light);
    return (0.95 * loss + standingNeed(pit, rise, plan.foodMass)) / kEfficiency;
}

} // namespace rickyard::app::demo
