// The species that a new yard starts with.
#pragma once

#include "models/domain/records/wood.h"

namespace rickyard::domain
{

// Cooking hardwoods, then woods never to burn for food. Ids are 0; names are unique. Basic gravity
// and green moisture are those of the FIADB species table (US Forest Service, Forest Inventory and
// Analysis); volumetric shrinkage of the Wood Handbook, FPL-GTR-190 (2010), table 4-3, or from
// memory where `source` says so. Gross heat is left out: no species figure with a proper source
// is known, and the default hardwood stands in. Ash is clean stemwood's, for red oak only.
QVector<Species> starterSpecies();

// Woods that are never burned for food but for which no single density is true (driftwood,
// pallets, painted wood), or none was found (oleander): a caution, not a record.
struct NeverBurn {
    QString what;
    QString reason;
};
QVector<NeverBurn> neverBurnMaterials();

} // namespace rickyard::domain
