#include "models/domain/upkeep/boiling.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

Pressure standardPressure(Length height)
{
    constexpr double kLapse = 0.0065;    // K/m
    constexpr double kSeaLevel = 288.15; // K
    constexpr double kGravity = 9.80665; // m/s2
    constexpr double kGas = 287.05287;   // J/(kg K)
    const double h = std::clamp(metres(height), -5000.0, 11000.0);
    return Pressure::rounded(101325.0 *
                             std::pow(1.0 - kLapse * h / kSeaLevel, kGravity / (kGas * kLapse)));
}

Temperature boilingPoint(Pressure pressure)
{
    // Table 34 of the release; n[0] is its n1.
    constexpr double n[] = {0.11670521452767e4,  -0.72421316703206e6, -0.17073846940092e2,
                            0.12020824702470e5,  -0.32325550322333e7, 0.14915108613530e2,
                            -0.48232657361591e4, 0.40511340542057e6,  -0.23855557567849,
                            0.65017534844798e3};
    const double p = std::clamp(pressure.toDouble() / 1e6, 611.213e-6, 22.064); // MPa
    const double beta = std::pow(p, 0.25);
    const double e = beta * beta + n[2] * beta + n[5];
    const double f = n[0] * beta * beta + n[3] * beta + n[6];
    const double g = n[1] * beta * beta + n[4] * beta + n[7];
    const double d = 2.0 * g / (-f - std::sqrt(f * f - 4.0 * e * g));
    const double kelvin =
        (n[9] + d - std::sqrt((n[9] + d) * (n[9] + d) - 4.0 * (n[8] + n[9] * d))) / 2.0;
    return temperatureFromCelsius(kelvin - 273.15);
}

Temperature boilingPoint(Length height)
{
    return boilingPoint(standardPressure(height));
}

} // namespace rickyard::domain
