#include "models/domain/upkeep/starter_table.h"

namespace rickyard::domain {

namespace {

constexpr auto kCode = IntervalSource::LocalCode;
constexpr auto kMaker = IntervalSource::MakersManual;
constexpr auto kTow = Occasion::BeforeTowing;

// clang-format off
constexpr Starter kTrailerTasks[] = {
    {.name = "Tyres", .target = "tyres", .occasion = kTow, .minutes = 10, .priority = 9, .blocks = Starter::Towing,
     .tools = "Pressure gauge, pump, lamp",
     .steps = "Pressure cold, the spare too.\nTread and side walls: cracks, bulges, nails.\nValve caps on.",
     .cautions = "Chock the wheels before unhitching."},
    {.name = "Wheel nuts", .target = "wheels", .occasion = kTow, .minutes = 10, .priority = 8, .blocks = Starter::Towing, .from = kMaker,
     .tools = "Torque wrench",
     .steps = "Enter the torque from the maker's manual here.\nTighten crosswise to it.\nAgain 50 miles after a wheel was changed."},
    {.name = "Lights and plug", .target = "lights", .occasion = kTow, .minutes = 5, .priority = 8, .blocks = Starter::Towing, .from = kCode,
     .tools = "Helper or mirror, spare bulbs, contact spray",
     .steps = "Tail, brake, turn and plate lamps.\nPlug and lead whole, not dragging."},
    {.name = "Coupler, chains and breakaway", .target = "hitch", .occasion = kTow, .minutes = 5, .priority = 9, .blocks = Starter::Towing, .from = kCode,
     .tools = "Lock pin, grease",
     .steps = "Ball of the right size, coupler closed, pin in.\nSafety chains crossed under it, not dragging.\nBreakaway lanyard on the truck, not on the hitch."},
    {.name = "Jack, stands and chocks", .target = "trailer", .occasion = kTow, .minutes = 3, .priority = 6, .blocks = Starter::Towing,
     .tools = "Chocks",
     .steps = "Jack and stabilisers up and pinned.\nChocks on board."},
    {.name = "Load and latches", .target = "trailer", .occasion = kTow, .minutes = 10, .priority = 9, .blocks = Starter::Towing,
     .tools = "Straps, pins",
     .steps = "Fire dead out.\nAsh can empty.\nDoors latched, dampers pinned, stack capped.\nWood strapped, nothing loose.\nStop after the first miles: look at the straps and feel each hub, and again at every stop.",
     .cautions = "Never tow with fire or warm ash on board.", .ash = true},
    {.name = "Weights", .target = "trailer", .days = 365, .occasion = Occasion::BeforeSeason, .minutes = 45, .priority = 5, .blocks = Starter::Towing, .from = kMaker,
     .tools = "Public scale, tongue scale",
     .steps = "Weigh it loaded as for an event.\nCompare with the maker's limit and enter it under Yard.\nTongue weight 10 to 15 % of the whole.\nAgain when the load changes: a quarter cord adds about 900 lb."},
    {.name = "Breakaway battery", .target = "breakaway battery", .days = 30, .minutes = 5, .priority = 6, .blocks = Starter::Towing,
     .tools = "Meter, charger",
     .steps = "Test it under load.\nCharge it or renew it."},
    {.name = "Bearings repacked", .target = "axles", .days = 365, .minutes = 180, .priority = 6, .blocks = Starter::Towing, .daylight = true,
     .tools = "Jack, stands, grease, seals, split pins, torque wrench",
     .steps = "Clean and look for pitting.\nRepack and renew the seals.\nSet the play.\nWrite down the miles: 12 months or 10,000 to 12,000 miles, sooner on gravel or overloaded.",
     .cautions = "Stands under the frame before a wheel comes off."},
    {.name = "Brakes", .target = "brakes", .days = 365, .minutes = 60, .priority = 6, .blocks = Starter::Towing, .daylight = true, .after = "Bearings repacked",
     .tools = "Jack, stands, brake spoon, meter",
     .steps = "Adjust the brakes.\nLook at shoes, magnets and wires.\nEvery 3,000 miles or once a year (from memory).",
     .cautions = "Stands under the frame before a wheel comes off."},
    {.name = "Tyre age", .target = "tyres", .days = 365, .minutes = 10, .priority = 5, .blocks = Starter::Towing,
     .tools = "Lamp",
     .steps = "Read the week and year in the stamp of each tyre.\nPlan new ones at five to six years, whatever the tread (from memory)."},
    {.name = "Frame and springs", .target = "frame", .days = 365, .minutes = 30, .priority = 5, .blocks = Starter::Towing, .daylight = true,
     .tools = "Lamp, wire brush",
     .steps = "Look at welds, spring hangers, coupler and jack for cracks.\nLook under the pit's saddles."},
    {.name = "Registration and insurance", .target = "papers", .days = 365, .minutes = 20, .priority = 5, .blocks = Starter::Towing, .from = kCode,
     .tools = "Papers",
     .steps = "Registration, insurance and state inspection in date.\nCopies in the truck."},
};

constexpr Starter kKitTasks[] = {
    {.name = "Kit on board", .target = "safety kit", .occasion = kTow, .minutes = 10, .priority = 8, .from = kCode,
     .tools = "Load list",
     .steps = "Extinguishers with tags in date: 2A:10B:C seen as a least for mobile food, class K too where there is frying.\nFor a firebox of 5 cu ft or less: 2-1/2 gal of water or class K within 20 ft (a summary of NFPA 10 and 96).\nLidded ash can, shovel, gloves, first aid and burn kit.\nPermits and health papers.",
     .cautions = "Ask the fire marshal of the event what is asked there."},
    {.name = "Extinguisher look", .target = "extinguishers", .days = 30, .minutes = 10, .priority = 9, .blocks = Starter::Lighting, .from = kCode,
     .tools = "Tag, pen",
     .steps = "In its place and easy to reach.\nSeal and pin whole, gauge in range.\nNo damage, nozzle clear, weight right, label readable.\nSign the tag.",
     .cautions = "An extinguisher that was used, even briefly, goes to service."},
    {.name = "Extinguisher service", .target = "extinguishers", .days = 365, .minutes = 30, .priority = 9, .blocks = Starter::Lighting, .from = kCode,
     .tools = "The certified person's number",
     .steps = "Have a certified person service and tag each one.\nSome places want the tag of class K every 6 months: ask.",
     .cautions = "Class A wood, B liquids, C electrical, K cooking fat."},
    {.name = "Extinguisher inside look, 6 years", .target = "stored-pressure dry chemical", .days = 2190, .minutes = 30, .priority = 7, .blocks = Starter::Lighting, .from = kCode,
     .tools = "The certified person's number",
     .steps = "Count from the date on the label: change Counted from.\nHave each stored-pressure dry chemical extinguisher opened and looked at.\nA disposable one goes 12 years after it was made."},
    {.name = "Extinguisher pressure test, 5 years", .target = "water, CO2 and class K", .days = 1825, .minutes = 30, .priority = 7, .blocks = Starter::Lighting, .from = kCode,
     .tools = "The certified person's number",
     .steps = "Count from the date on the label: change Counted from.\nHave water, CO2 and wet chemical extinguishers pressure-tested (which type gets 5 years is from memory: ask)."},
    {.name = "Extinguisher pressure test, 12 years", .target = "dry chemical", .days = 4380, .minutes = 30, .priority = 7, .blocks = Starter::Lighting, .from = kCode,
     .tools = "The certified person's number",
     .steps = "Count from the date on the label: change Counted from.\nHave dry chemical extinguishers pressure-tested, or renew them."},
    {.name = "Ash can emptied", .target = "ash can", .ashLb = 40, .minutes = 20, .priority = 6, .from = kCode,
     .tools = "Metal shovel, water, gloves",
     .steps = "Look in the yard when ash was last put into this can.\nWait until 96 hours at the least have passed since.\nWet it and stir it, feel for warmth with the back of a gloved hand held near.\nTip it where local code allows, and write where.",
     .cautions = "A 20-gallon can holds about this much with its char: common practice, no source.", .ash = true},
    {.name = "CO alarm test", .target = "CO alarms", .days = 30, .minutes = 5, .priority = 8, .from = kMaker,
     .tools = "Spare batteries",
     .steps = "Press the test button of each alarm in the truck, the trailer and where the crew sleeps.\nNote the renew-by date: 5 to 10 years by the maker's manual.",
     .cautions = "No fire, no coals and no cooling pit in a garage, tent, camper or van. Headache or dizziness: fresh air, call emergency."},
    {.name = "Probes in ice water", .target = "probes", .days = 7, .minutes = 5, .priority = 6, .reading = ReadingKind::IcePoint, .unit = "°F", .low = 30, .high = 34,
     .tools = "Crushed ice, jug",
     .steps = "Fill the jug with crushed ice, then water; stir.\nHold each food probe in the middle for half a minute.\nWrite the one that is furthest off, or set Values each time to the number of probes.\nOut of use when more than 2 °F off.\nDaily in a food business.",
     .cautions = "A wrong probe spoils food unseen."},
    {.name = "Probes in boiling water", .target = "probes", .days = 7, .minutes = 5, .priority = 6, .after = "Probes in ice water", .reading = ReadingKind::BoilingPoint, .unit = "°F", .low = 210, .high = 214,
     .tools = "Kettle, jug",
     .steps = "Bring the water to a rolling boil.\nHold each food probe in it, touching nothing.\nWrite what it shows: the limit is corrected for the yard's height.\nOut of use when more than 2 °F off.",
     .cautions = "Steam and boiling water scald. A wrong probe spoils food unseen."},
    {.name = "Propane starter leak test", .target = "propane starter", .days = 30, .minutes = 10, .priority = 7,
     .tools = "Soap and water, one to two",
     .steps = "Look at hose and regulator.\nBrush with soapy water under pressure: a bubble means shut off.\nAlso at every cylinder change.",
     .cautions = "Outside, no flame near. Store cylinders upright and outside."},
    {.name = "Propane hose and regulator renewal", .target = "propane starter", .days = 1095, .minutes = 20, .priority = 6, .from = kMaker,
     .tools = "New hose and regulator, spanner",
     .steps = "Renew both every 3 to 5 years, by the maker's manual.\nLeak test after."},
    {.name = "Propane cylinder date", .target = "propane cylinder", .days = 365, .minutes = 5, .priority = 6, .from = kCode,
     .tools = "Lamp",
     .steps = "Read the date stamped on the collar.\nHave it requalified in time; how often depends on the method (from memory: ask the filler).\nExchange a dented or rusty one."},
    {.name = "First aid and burn kit", .target = "first aid kit", .days = 30, .minutes = 10, .priority = 6,
     .tools = "Kit list",
     .steps = "Fill up burn dressings, gloves and eye wash.\nSee the dates."},
    {.name = "Hood and duct, where there is one", .target = "hood", .days = 30, .minutes = 60, .coldHours = 0, .priority = 4, .from = kCode,
     .tools = "Scraper, degreaser, bucket, lamp",
     .steps = "Indoors and on trucks only; without a hood, retire this task.\nClean filters, hood and duct.\nLook for grease behind the filters.",
     .cautions = "Solid fuel under a hood: monthly by summaries of NFPA 96."},
};
// clang-format on

} // namespace

std::span<const Starter> starterTrailerTasks()
{
    return kTrailerTasks;
}

std::span<const Starter> starterKitTasks()
{
    return kKitTasks;
}

} // namespace rickyard::domain
