#include "models/domain/upkeep/starter_table.h"

namespace rickyard::domain {

namespace {

constexpr auto kFromCode = IntervalSource::LocalCode;

// clang-format off
constexpr Starter kPitTasks[] = {
    // With every cook.
    {.name = "Fire kit and site", .target = "site", .occasion = Occasion::BeforeCook, .minutes = 10, .priority = 7, .from = kFromCode,
     .tools = "Extinguisher, water or hose, gloves, long tongs, lidded ash can, chocks",
     .steps = "Stand the pit 10 ft from buildings, vehicles, tents and other cooks.\nChock the wheels.\nWater and extinguisher within reach, the way to them free.\nWood 3 ft from the pit and 6 ft from its door, none above.\nAsk about a burn ban and look at the wind.\nSay who watches the fire, and who takes over.",
     .cautions = "Never under a roof, in a garage or a tent that people are in: carbon monoxide."},
    {.name = "Ash removal", .target = "firebox", .occasion = Occasion::AfterCook, .minutes = 20, .coldHours = 12, .priority = 8, .blocks = Starter::Lighting, .from = kFromCode,
     .tools = "Metal can with a tight metal lid, shovel, ash rake, gloves, water",
     .steps = "Rake through for live coals.\nShovel the ash into the can.\nWet it down and close the lid.\nWrite the time on the lid and in the yard.\nLeave no wet ash behind: it rusts the floor.",
     .cautions = "In the middle of a long cook too, before it nears the grate.", .ash = true},
    {.name = "Chamber floor scrape", .target = "cook chamber", .cooks = 3, .minutes = 30, .coldHours = 12, .priority = 6,
     .tools = "Long scraper, shop brush, pan, respirator, lamp",
     .steps = "Scrape floor and baffle toward the drain.\nBag the scrapings.\nRod the drain after.",
     .cautions = "Long tools: do not lean into the chamber."},
    {.name = "Grease drain and bucket", .target = "grease drain", .occasion = Occasion::AfterCook, .minutes = 10, .coldHours = 8, .priority = 9, .blocks = Starter::Lighting, .after = "Chamber floor scrape",
     .tools = "Drain rod, scraper, spare bucket, rags",
     .steps = "Empty the bucket.\nPush the rod through the drain from both ends.\nPour a cup of water and see it run out.\nHang the bucket back, clear of the firebox.\nLook again in the middle of a long cook.",
     .cautions = "A blocked drain is the usual start of a grease fire. Grease fire: lid and air shut, no water."},
    {.name = "Grate brush and oil", .target = "cooking grate", .occasion = Occasion::AfterCook, .minutes = 15, .coldHours = 8, .priority = 4,
     .tools = "Stiff brush, scraper, cloth, light cooking oil",
     .steps = "Scrape and brush both sides.\nLook for loose wire bristles and wipe them off.\nOil lightly.",
     .cautions = "A wire bristle left on the grate can end up in food."},
    {.name = "Water pan wash", .target = "water pan", .occasion = Occasion::AfterCook, .minutes = 5, .coldHours = 8, .priority = 3,
     .tools = "Bucket, hot water, soap",
     .steps = "Empty the pan.\nWash and dry it.\nLeave it open: a wet pan grows mould."},
    {.name = "Outside wiped and covered", .target = "outside steel", .occasion = Occasion::AfterCook, .minutes = 10, .coldHours = 6, .priority = 2,
     .tools = "Rags, cooking oil, cover, stack cap, drain cap",
     .steps = "Wipe unpainted steel with oil while it is hand-warm.\nCap the stack and the drain.\nCover the pit once it is cold.",
     .cautions = "No cover on a warm pit. Oily rags burn by themselves: spread them out to dry outside."},
    // By cooks or weeks in use.
    {.name = "Firebox scrape and look", .target = "firebox", .days = 7, .cooks = 4, .minutes = 30, .coldHours = 12, .priority = 6, .from = kFromCode, .after = "Ash removal",
     .tools = "Scraper, wire brush, lamp, straight edge",
     .steps = "Scrape walls and grate to the bare surface.\nLook for cracks and for thin or bowed plate.\nLook whether the coal grate sags.",
     .cautions = "Ash and scrapings go into the lidded metal can."},
    {.name = "Stack look", .target = "stack", .days = 7, .cooks = 4, .minutes = 10, .coldHours = 8, .daylight = true,
     .tools = "Lamp, mirror",
     .steps = "Look up the stack and under the cap.\nSweep it when the deposit is an eighth of an inch thick.",
     .cautions = "Chairs and wheels are not ladders."},
    {.name = "Full cleanout and burn-out", .target = "cook chamber", .days = 180, .cooks = 10, .occasion = Occasion::BeforeSeason, .minutes = 180, .coldHours = 12, .cureHours = 12, .priority = 6, .after = "Ash removal",
     .tools = "Scrapers, brushes, lamp, respirator, firewood, water, extinguisher",
     .steps = "Scrape roof, walls, floor and baffle.\nEmpty the bucket and rod the drain.\nBurn out empty at 300 to 400 °F for one to two hours.\nLet it cool.\nOil inside.",
     .cautions = "Stay with the burn-out throughout, bucket empty, extinguisher and water at hand.", .ash = true},
    {.name = "Stack sweep", .target = "stack", .days = 365, .cooks = 12, .minutes = 40, .people = 2, .coldHours = 12, .priority = 6, .blocks = Starter::Lighting, .daylight = true,
     .tools = "Flue brush, rods, ladder, bag, respirator",
     .steps = "Take off the cap.\nBrush top to bottom.\nBag what falls.\nClear the smoke outlet.\nPut the cap back.",
     .cautions = "The second person holds the ladder."},
    // By months.
    {.name = "Spark screen clean", .target = "spark arrestor", .days = 30, .minutes = 10, .coldHours = 8,
     .tools = "Wire brush, spare screen",
     .steps = "Brush both sides.\nRenew a screen with holes.\nA clogged one weakens the draught."},
    {.name = "Roof and wall flakes", .target = "cook chamber", .days = 30, .minutes = 30, .coldHours = 12, .priority = 4,
     .tools = "Long scraper, brush, pan, respirator, lamp",
     .steps = "Scrape loose flakes off roof and walls: they fall on the food.\nSweep them out.\nLook for bare and rusty places.",
     .cautions = "Long tools: do not lean into the chamber."},
    {.name = "Gasket test", .target = "door gasket", .days = 30, .minutes = 15, .coldHours = 12, .daylight = false, .reading = ReadingKind::PaperTest, .unit = "of 3", .low = 2, .points = 8,
     .tools = "Strip of paper, lamp",
     .steps = "Number eight points clockwise from the upper hinge.\nClose the door on a strip of paper at each and pull.\nWrite 0 when it falls out, 1 when it slides, 2 when it holds, 3 when it tears.\nPut a lamp inside and look for light round the edge."},
    {.name = "Door and hinges", .target = "doors", .days = 30, .minutes = 15, .coldHours = 8, .priority = 4,
     .tools = "High-temperature grease, spanner, level",
     .steps = "Grease hinges and latch on the outside.\nSee that the door closes flush.\nSee that the counterweight is fast.",
     .cautions = "A large door weighs 50 lb and more: prop it. Grease stays off the food side."},
    {.name = "Dampers", .target = "dampers", .days = 30, .minutes = 10, .coldHours = 8, .priority = 4,
     .tools = "Pliers, wire brush, marker",
     .steps = "Move every damper through its range.\nFree what sticks.\nRenew the marks."},
    {.name = "Baffle and tuning plates", .target = "plates", .days = 30, .minutes = 10, .coldHours = 12, .priority = 3,
     .tools = "Lamp, gloves, straight edge",
     .steps = "See that baffle and plates sit where they should.\nLook for warped ones."},
    {.name = "Pit gauge in boiling water", .target = "dial gauge", .days = 30, .occasion = Occasion::BeforeSeason, .minutes = 15, .coldHours = 8, .reading = ReadingKind::BoilingPoint, .unit = "°F", .low = 202, .high = 222,
     .tools = "Kettle, jug, spanner",
     .steps = "Take the gauge out.\nHold its stem in water at a rolling boil, touching nothing.\nWrite what it shows: as found.\nSet it and write what it shows then: as left.\nRenew a dial that is more than 25 °F off.",
     .cautions = "Steam and boiling water scald. After a knock or a drop too."},
    {.name = "Rust look and touch-up", .target = "outside steel", .days = 30, .minutes = 60, .coldHours = 24, .cureHours = 24, .priority = 3, .daylight = true, .dry = true,
     .tools = "Sandpaper, wire brush, rags, high-heat paint, respirator",
     .steps = "Sand bare spots and wipe them.\nPaint them, or oil unpainted steel.\nLet the paint dry for as long as its label says.",
     .cautions = "Paint and solvent away from any ember: air well."},
    // By seasons and years.
    {.name = "Firebox floor and bricks", .target = "firebox", .days = 90, .minutes = 20, .coldHours = 12, .after = "Firebox scrape and look",
     .tools = "Lamp, straight edge, hammer",
     .steps = "Take out ash and grate.\nTap the floor plate for thin places.\nLook at bricks, welds and legs.", .ash = true},
    {.name = "Firebox plate thickness", .target = "firebox", .days = 365, .minutes = 30, .coldHours = 24, .priority = 5, .blocks = Starter::Lighting, .after = "Firebox scrape and look", .reading = ReadingKind::PlateThickness, .unit = "in", .lowFrom = Starter::HalfThePlate, .points = 4,
     .tools = "Thickness gauge or caliper, wire brush, chalk",
     .steps = "Brush four places of the floor bright: front, back, left, right.\nMeasure each and write it down, always the same four.\nMark the thinnest with chalk.",
     .cautions = "A thin floor drops the fire. The limit is half of the plate when new: our own rule, ask a welder."},
    {.name = "Oiled and seasoned inside", .target = "cook chamber", .days = 365, .minutes = 90, .coldHours = 12, .cureHours = 2, .priority = 3, .after = "Full cleanout and burn-out",
     .tools = "Cooking oil, sprayer or rags, firewood",
     .steps = "Wipe or spray all inside steel thinly.\nHold 250 to 300 °F for an hour, empty.\nAlso after every wash and every repair.",
     .cautions = "Oil mist burns: no spraying at a fire. Stay with it."},
    {.name = "Gasket renewal", .target = "door gasket", .days = 540, .minutes = 90, .coldHours = 24, .cureHours = 24, .after = "Gasket test",
     .tools = "Gasket rope or tape, high-temperature cement, scraper, wire brush, solvent, gloves",
     .steps = "Scrape and clean the seat.\nLay cement and gasket without stretching.\nClose the door.\nLet it cure for as long as the cement's label says.",
     .cautions = "Solvent and fire do not meet: air the pit before lighting."},
    {.name = "Whole repaint", .target = "outside steel", .days = 540, .minutes = 480, .people = 2, .coldHours = 24, .cureHours = 48, .priority = 2, .daylight = true, .dry = true, .after = "Rust look and touch-up",
     .tools = "Sander, wire brush, degreaser, high-heat paint, respirator, masking tape",
     .steps = "Wash off grease and let it dry.\nSand or brush to sound paint or bare steel.\nMask gauge, gasket and food side.\nPaint in thin coats.\nLet it dry and cure for as long as its label says.",
     .cautions = "Paint and solvent away from any ember: air well. First fire empty."},
};
// clang-format on

} // namespace

std::span<const Starter> starterPitTasks()
{
    return kPitTasks;
}

} // namespace rickyard::domain
