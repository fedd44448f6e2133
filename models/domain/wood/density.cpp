#include "models/domain/wood/density.h"

#include "models/domain/wood/stock.h"

#include <algorithm>

namespace rickyard::domain
{

double fullShrinkage(const Species &species)
{
    return species.shrinkage ? fraction(*species.shrinkage) : 0.265 * number(species.basicGravity);
}

double shrinkageAt(const Species &species, Moisture moisture)
{
    return fullShrinkage(species) * std::max(0.0, 1.0 - moisture / kFibreSaturation);
}

double gravityAt(const Species &species, Moisture moisture)
{
    return number(species.basicGravity) / (1.0 - shrinkageAt(species, moisture));
}

double densityAt(double gravity, Moisture moisture)
{
    return 1000.0 * gravity * (1.0 + dryFraction(moisture));
}

double densityAt(const Species &species, Moisture moisture)
{
    return densityAt(gravityAt(species, moisture), moisture);
}

Volume solidVolume(Mass dryMass, const Species &species, Moisture moisture)
{
    const double gravity = gravityAt(species, moisture);
    // A kilogram at gravity 1 is a litre. Without a gravity there is no volume to speak of.
    return gravity > 0 ? Volume::rounded(1000.0 * kilograms(dryMass) / gravity) : Volume();
}

Mass dryMassOfSolid(Volume solid, const Species &species, Moisture moisture)
{
    return massFromKilograms(solid.toDouble() / 1000.0 * gravityAt(species, moisture));
}

Volume stackedFromSolid(Volume solid)
{
    return solid * (1.0 / kStackedSolidFraction);
}

Volume solidFromStacked(Volume stacked)
{
    return stacked * kStackedSolidFraction;
}

Volume looseFromSolid(Volume solid)
{
    return solid * (1.0 / kLooseSolidFraction);
}

Volume solidFromLoose(Volume loose)
{
    return loose * kLooseSolidFraction;
}

Volume stackVolume(Length length, Length height, Length depth)
{
    return Volume::rounded(metres(length) * metres(height) * metres(depth) * 1e6);
}

Mass asIsFromDry(Mass dryMass, Moisture moisture)
{
    return dryMass * (1.0 + dryFraction(moisture));
}

Mass dryFromAsIs(Mass asIs, Moisture moisture)
{
    return asIs * (1.0 / (1.0 + dryFraction(moisture)));
}

} // namespace rickyard::domain
