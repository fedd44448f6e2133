#include "models/domain/wood/wood_names.h"

#include <QStringList>

namespace rickyard::domain {

namespace {

bool hasAny(const QString &name, std::initializer_list<const char *> words)
{
    for (const char *word : words)
        if (name.contains(QLatin1String(word)))
            return true;
    return false;
}

} // namespace

WoodGroup woodGroupOf(const QString &name)
{
    const QString words = name.toLower();
    if (words.contains(QLatin1String("oak")))
        return hasAny(words, {"white", "post", "bur", "live", "chestnut", "overcup", "swamp"})
                   ? WoodGroup::WhiteOak
                   : WoodGroup::RedOak;
    if (hasAny(words, {"hickory", "pecan"}))
        return WoodGroup::Hickory;
    if (hasAny(words, {"sugar maple", "hard maple", "black maple"}))
        return WoodGroup::HardMaple;
    if (hasAny(words, {"walnut"}))
        return WoodGroup::Walnut;
    if (hasAny(words, {"beech"}))
        return WoodGroup::Beech;
    if (hasAny(words, {"cherry"}))
        return WoodGroup::Cherry;
    if (hasAny(words, {"douglas"}))
        return WoodGroup::DouglasFir;
    if (words == QLatin1String("ash") || words.endsWith(QLatin1String(" ash")) ||
        words.startsWith(QLatin1String("ash ")))
        return WoodGroup::Ash;
    return WoodGroup::Other;
}

} // namespace rickyard::domain
