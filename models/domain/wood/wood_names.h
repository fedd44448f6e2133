// Which kind a wood is, by the name a person gave it: what tables of few species are looked up by.
#pragma once

#include <QString>

namespace rickyard::domain {

enum class WoodGroup {
    WhiteOak,
    RedOak,
    Hickory,
    HardMaple,
    Ash,
    Walnut,
    Beech,
    Cherry,
    DouglasFir,
    Other,
};
// "Post oak", "bur oak", "live oak" are white oaks, "black oak" a red one, "pecan" a hickory. An
// oak of no said colour counts as red, which dries faster and reads nearer to the factory scale.
WoodGroup woodGroupOf(const QString &name);

} // namespace rickyard::domain
