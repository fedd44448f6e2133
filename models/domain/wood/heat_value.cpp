#include "models/domain/wood/heat_value.h"

namespace rickyard::domain
{

namespace
{

// ISO 18125 constants, from memory, J/g for each per cent.
constexpr double kPerHydrogen = 212.2;
constexpr double kPerOxygenAndNitrogen = 0.8;
constexpr double kPerMoisture = 24.43;

} // namespace

WoodAnalysis analysisOf(const Species &species)
{
    WoodAnalysis analysis;
    if (species.grossHeat)
        analysis.grossHeat = species.grossHeat->toDouble();
    return analysis;
}

double netHeatAsIs(const WoodAnalysis &analysis, Moisture moisture)
{
    const double wetPercent = 100.0 * wetFraction(moisture);
    const double dry = analysis.grossHeat / 1000.0 - kPerHydrogen * analysis.hydrogen -
                       kPerOxygenAndNitrogen * (analysis.oxygen + analysis.nitrogen);
    return 1000.0 * (dry * (1.0 - 0.01 * wetPercent) - kPerMoisture * wetPercent);
}

double netHeatPerDryKilogram(const WoodAnalysis &analysis, Moisture moisture)
{
    return netHeatAsIs(analysis, moisture) * (1.0 + dryFraction(moisture));
}

Heat netHeatOf(Mass dryMass, Moisture moisture, const WoodAnalysis &analysis)
{
    return Heat::rounded(kilograms(dryMass) * netHeatPerDryKilogram(analysis, moisture));
}

Mass ashOf(Mass dryMass, const Species &species)
{
    return dryMass * (species.ash ? fraction(*species.ash) : kDefaultAsh);
}

} // namespace rickyard::domain
