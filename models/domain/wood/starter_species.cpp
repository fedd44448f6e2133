#include "models/domain/wood/starter_species.h"

namespace rickyard::domain
{

namespace
{

enum class Shrinkage { Handbook, SecondSource, Memory, None };

struct Figures {
    const char *name;
    const char *scientific;
    double basicGravity;
    double shrinkage; // per cent in volume, green to oven-dry; negative: not known
    double green;     // per cent, dry basis
    Shrinkage from;
    bool averaged; // FIADB gives the average of related species
};

// clang-format off
constexpr Figures kCooking[] = {
    {"Post oak", "Quercus stellata", 0.60, 16.2, 70.9, Shrinkage::Handbook, false},
    {"White oak", "Quercus alba", 0.60, 16.3, 68.3, Shrinkage::Handbook, false},
    {"Northern red oak", "Quercus rubra", 0.56, 13.7, 83.1, Shrinkage::Memory, false},
    {"Southern red oak", "Quercus falcata", 0.52, 16.1, 97.2, Shrinkage::Memory, false},
    {"Live oak", "Quercus virginiana", 0.80, 14.7, 52.2, Shrinkage::Handbook, false},
    {"Black oak", "Quercus velutina", 0.56, 15.1, 83.1, Shrinkage::Memory, false},
    {"Bur oak", "Quercus macrocarpa", 0.58, 12.7, 74.1, Shrinkage::Memory, false},
    {"Pecan", "Carya illinoinensis", 0.60, 13.6, 65.6, Shrinkage::Handbook, false},
    {"Shagbark hickory", "Carya ovata", 0.64, 16.7, 60.2, Shrinkage::SecondSource, false},
    {"Mockernut hickory", "Carya alba", 0.64, 17.8, 62.8, Shrinkage::Handbook, false},
    {"Pignut hickory", "Carya glabra", 0.66, 17.9, 65.1, Shrinkage::Handbook, false},
    {"Honey mesquite", "Prosopis glandulosa", 0.78, 4.8, 21.0, Shrinkage::SecondSource, true},
    {"Sugar maple", "Acer saccharum", 0.56, 14.7, 57.4, Shrinkage::Memory, false},
    {"Black cherry", "Prunus serotina", 0.47, 11.5, 53.4, Shrinkage::Handbook, false},
    {"Apple", "Malus spp.", 0.61, 17.6, 78.0, Shrinkage::Memory, false},
    {"Peach", "Prunus persica", 0.47, -1, 53.0, Shrinkage::None, true},
    {"American beech", "Fagus grandifolia", 0.56, 17.2, 54.5, Shrinkage::Handbook, false},
    {"White ash", "Fraxinus americana", 0.55, 13.3, 45.7, Shrinkage::Handbook, false},
    {"Black walnut", "Juglans nigra", 0.51, 12.8, 79.1, Shrinkage::Handbook, false},
    {"Hackberry", "Celtis occidentalis", 0.49, 13.8, 63.5, Shrinkage::Handbook, false},
    {"Sweetgum", "Liquidambar styraciflua", 0.46, 15.8, 74.2, Shrinkage::Handbook, false},
    {"Honeylocust", "Gleditsia triacanthos", 0.60, 10.8, 60.2, Shrinkage::Memory, false},
    {"Black locust", "Robinia pseudoacacia", 0.66, 10.2, 40.8, Shrinkage::Memory, false},
    {"Osage-orange", "Maclura pomifera", 0.76, 9.2, 30.7, Shrinkage::Memory, false},
};

constexpr Figures kResinous[] = {
    {"Eastern redcedar", "Juniperus virginiana", 0.44, 7.8, 34.8, Shrinkage::Handbook, false},
    {"Loblolly pine", "Pinus taeda", 0.47, 12.3, 80.7, Shrinkage::Memory, false},
    {"Shortleaf pine", "Pinus echinata", 0.47, 12.3, 77.3, Shrinkage::Memory, false},
    {"Eastern white pine", "Pinus strobus", 0.34, 8.2, 65.0, Shrinkage::Memory, false},
};
// clang-format on

QString sourceOf(const Figures &f)
{
    QString text = QStringLiteral("Gravity and green moisture: FIADB species table");
    text += f.averaged ? QStringLiteral(" (average of related species: take as ±10 %).")
                       : QStringLiteral(".");
    switch (f.from) {
    case Shrinkage::Handbook:
        text += QStringLiteral(" Shrinkage: Wood Handbook FPL-GTR-190 (2010), table 4-3.");
        break;
    case Shrinkage::SecondSource:
        text += QStringLiteral(" Shrinkage: a second source, not the Wood Handbook itself.");
        break;
    case Shrinkage::Memory:
        text += QStringLiteral(" Shrinkage: from memory.");
        break;
    case Shrinkage::None:
        text += QStringLiteral(" Shrinkage: no figure found.");
        break;
    }
    return text;
}

Species speciesOf(const Figures &f)
{
    Species s;
    s.name = QString::fromUtf8(f.name);
    s.scientific = QString::fromUtf8(f.scientific);
    s.basicGravity = Plain::rounded(f.basicGravity * 1e6);
    if (f.shrinkage >= 0)
        s.shrinkage = Ratio::rounded(f.shrinkage * 1e4);
    s.green = Moisture::rounded(f.green * 1e3);
    s.source = sourceOf(f);
    return s;
}

} // namespace

QVector<Species> starterSpecies()
{
    QVector<Species> all;
    for (const Figures &f : kCooking) {
        Species s = speciesOf(f);
        if (s.scientific == QLatin1String("Quercus rubra")) {
            // Oven-dry sawdust: 0.31 % ash; Miles et al., Alkali Deposits Found in Biomass Power
            // Plants, data table. Bark is about 5 % ash; splits with bark lie between.
            s.ash = Ratio::ofBase(3100);
            s.source += QStringLiteral(" Ash of red oak without bark: Miles et al., Alkali "
                                       "Deposits Found in Biomass Power Plants.");
        }
        if (s.scientific == QLatin1String("Maclura pomifera") ||
            s.scientific == QLatin1String("Robinia pseudoacacia"))
            s.source += QStringLiteral(" Not burned for food as a rule: it throws sparks "
                                       "(common practice).");
        all << s;
    }
    for (const Figures &f : kResinous) {
        Species s = speciesOf(f);
        s.neverBurn = true;
        s.neverBurnReason = QStringLiteral(
            "Resinous softwood: sooty, bitter smoke and tar in the stack. Common practice.");
        all << s;
    }
    return all;
}

QVector<NeverBurn> neverBurnMaterials()
{
    // Treated and painted wood: city fire codes. The rest is common practice, no source.
    return {
        {QStringLiteral("Treated, painted, stained or glued wood, plywood, railway ties"),
         QStringLiteral("Preservatives, paint and glue burn to toxic smoke and ash.")},
        {QStringLiteral("Pallets of unknown treatment"),
         QStringLiteral("Nobody knows what they were treated with or carried.")},
        {QStringLiteral("Driftwood"), QStringLiteral("The salt in it makes harmful smoke.")},
        {QStringLiteral("Oleander, yew, laburnum"), QStringLiteral("The plants are toxic.")},
        {QStringLiteral("Wood grown over with poison ivy or poison oak"),
         QStringLiteral("The smoke carries the irritant to skin, eyes and lungs.")},
        {QStringLiteral("Resinous softwood: pine, fir, spruce, cedar"),
         QStringLiteral("Sooty, bitter smoke and tar in the stack.")},
    };
}

} // namespace rickyard::domain
