#include "models/domain/wood/emc.h"

#include <algorithm>

namespace rickyard::domain
{

double equilibriumMoisturePercent(double t, double humidity)
{
    const double h = std::clamp(humidity, 0.0, 1.0);
    const double w = 349.0 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * h;
    const double hydrates = k1 * kh + 2.0 * k1 * k2 * kh * kh;
    const double dissolved = kh / (1.0 - kh);
    return 1800.0 / w * (dissolved + hydrates / (1.0 + k1 * kh + k1 * k2 * kh * kh));
}

Moisture equilibriumMoisture(Temperature temperature, Ratio humidity)
{
    return moistureFromDryFraction(
        equilibriumMoisturePercent(celsius(temperature), fraction(humidity)) / 100.0);
}

} // namespace rickyard::domain
