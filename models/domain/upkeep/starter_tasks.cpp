#include "models/domain/upkeep/starter_tasks.h"

namespace rickyard::domain
{

namespace
{

enum Blocks { Nothing = 0, Lighting = 1, Towing = 2 };
constexpr auto kCode = IntervalSource::LocalCode;
constexpr auto kPractice = IntervalSource::CommonPractice;

struct Starter {
    const char *name;
    const char *target;
    int days;      // 0: no such trigger
    int cooks;     // 0: no such trigger
    int minutes;   // of one person
    int coldHours; // before the work
    int cureHours; // before the next fire
    int priority;
    int blocks;
    IntervalSource from;
    const char *tools;
    const char *steps;
    const char *cautions;
    bool ash = false;
};

// clang-format off
constexpr Starter kPitTasks[] = {
    {"Ash removal", "firebox", 0, 1, 20, 12, 0, 8, Lighting, kCode,
     "Metal can with a tight metal lid, shovel, ash rake, gloves, water",
     "Rake through for live coals. Shovel the ash into the can, wet it down, close the lid. Note the time on the lid. Wet ash left in the firebox rusts it.",
     "", true},
    {"Grease drain and bucket", "grease drain", 0, 1, 10, 8, 0, 9, Lighting, kPractice,
     "Drain rod, scraper, spare bucket, rags",
     "Empty the bucket. Push the rod through the drain from both ends. Pour a cup of water and see it run out. Look again in the middle of a long cook.",
     "A blocked drain is the usual start of a grease fire. Grease fire: lid and air shut, no water. Keep the bucket clear of the firebox."},
    {"Grate brush and oil", "cooking grate", 0, 1, 15, 8, 0, 4, Nothing, kPractice,
     "Stiff brush, scraper, cloth, light cooking oil",
     "Scrape and brush both sides. Look for loose wire bristles and wipe them off. Oil lightly.",
     "A wire bristle left on the grate can end up in food."},
    {"Water pan wash", "water pan", 0, 1, 5, 8, 0, 3, Nothing, kPractice,
     "Bucket, hot water, soap", "Empty, wash, dry and leave open: a wet pan grows mould.", ""},
    {"Chamber floor scrape", "cook chamber", 0, 3, 30, 12, 0, 6, Nothing, kPractice,
     "Long scraper, shop brush, pan, respirator, lamp",
     "Scrape floor and baffle toward the drain. Bag the scrapings. Rod the drain after.",
     "Long tools; do not lean into the chamber."},
    {"Firebox scrape and look", "firebox", 7, 4, 30, 12, 0, 6, Nothing, kCode,
     "Scraper, wire brush, lamp, straight edge",
     "Scrape walls and grate to bare surface. Look for cracks, thin or bowed plate and a sagging coal grate.",
     "Ash and scrapings go into the lidded metal can."},
    {"Stack look", "stack", 7, 4, 10, 8, 0, 5, Nothing, kPractice,
     "Lamp, mirror", "Look up the stack and under the cap. Sweep it when a deposit of 1/8 in shows.",
     "Chairs and wheels are not ladders."},
    {"Stack sweep", "stack", 365, 12, 40, 12, 0, 6, Lighting, kPractice,
     "Flue brush, rods, ladder, bag, respirator",
     "Take off the cap. Brush top to bottom. Bag what falls and clear the smoke outlet.",
     "A second person holds the ladder."},
    {"Spark screen clean", "spark arrestor", 30, 0, 10, 8, 0, 5, Nothing, kPractice,
     "Wire brush, spare screen", "Brush both sides; renew a screen with holes. A clogged one weakens the draught.", ""},
    {"Full cleanout and burn-out", "cook chamber", 180, 10, 180, 12, 12, 6, Nothing, kPractice,
     "Scrapers, brushes, lamp, respirator, firewood, water, extinguisher",
     "Scrape roof, walls, floor and baffle. Empty the bucket. Burn out empty at 300 to 400 °F for one to two hours. Oil when it has cooled.",
     "Stay with the burn-out throughout, bucket empty, extinguisher and water at hand.", true},
    {"Gasket test", "door gasket", 30, 0, 15, 12, 0, 5, Nothing, kPractice,
     "Strip of paper, lamp",
     "Close the door on a strip of paper at six places and pull. Look for light round the edge with a lamp inside. Note where it is loose.", ""},
    {"Gasket renewal", "door gasket", 540, 0, 90, 24, 24, 5, Nothing, kPractice,
     "Gasket rope or tape, high-temperature cement, scraper, wire brush, solvent, gloves",
     "Scrape and clean the seat. Lay cement and gasket without stretching. Close the door and let it cure for as long as the cement's label says.",
     "Solvent and fire do not meet: air the pit before lighting."},
    {"Door and hinges", "doors", 30, 0, 15, 8, 0, 4, Nothing, kPractice,
     "High-temperature grease, spanner, level",
     "Grease hinges and latch on the outside. See that the door closes flush and the counterweight is fast.",
     "A large door weighs 50 lb and more: prop it. Grease stays off the food side."},
    {"Dampers and plates", "dampers", 30, 0, 15, 8, 0, 4, Nothing, kPractice,
     "Pliers, wire brush, marker",
     "Move every damper through its range; free what sticks; renew the marks. See that baffle and plates sit where they should.", ""},
    {"Pit gauge check", "dial gauge", 30, 0, 15, 8, 0, 5, Nothing, kPractice,
     "Crushed ice, kettle, jug, spanner",
     "Ice water for half a minute: 32 °F. Rolling boil: 212 °F less 1.77 °F each 1,000 ft. Write as found and as left. Renew a dial that is more than 25 °F off.",
     "Steam and boiling water scald."},
    {"Rust look and touch-up", "outside steel", 30, 0, 60, 24, 24, 3, Nothing, kPractice,
     "Sandpaper, wire brush, rags, high-heat paint, respirator",
     "Sand, wipe and paint bare spots; oil unpainted steel. Let paint dry for as long as the label says.",
     "Paint and solvent away from any ember; air well."},
    {"Firebox floor and bricks", "firebox", 90, 0, 20, 12, 0, 5, Nothing, kPractice,
     "Lamp, straight edge, hammer",
     "Take out ash and grate. Tap the floor plate for thin places; look at bricks, welds and legs.", "", true},
};

constexpr Starter kTrailerTasks[] = {
    {"Tyres, lights and hitch", "trailer", 0, 1, 30, 0, 0, 9, Towing, kPractice,
     "Pressure gauge, torque wrench, lamp, wheel chocks",
     "Tyres cold, with the spare: pressure, tread, cracks. Wheel nuts to torque. Lights, plug and plate lamp. Coupler, pin, ball size, chains crossed, breakaway lanyard. Feel each hub at the first stop.",
     "Before every tow. Chock the wheels before unhitching."},
    {"Load and latches", "trailer", 0, 1, 10, 0, 0, 9, Towing, kPractice,
     "Straps, pins",
     "Doors latched, dampers pinned, stack capped, wood strapped, ash can empty, fire dead out. Tongue weight 10 to 15 % of the whole.",
     "Never tow with fire or warm ash on board.", true},
    {"Bearings repacked", "axles", 365, 0, 180, 0, 0, 6, Towing, kPractice,
     "Jack, stands, grease, seals, split pins, torque wrench",
     "Clean, look for pitting, repack and renew the seals. Set the play. 12 months or 10,000 to 12,000 miles, sooner on gravel.",
     "Stands under the frame before a wheel comes off."},
    {"Brakes and breakaway battery", "trailer", 365, 0, 60, 0, 0, 6, Towing, kPractice,
     "Jack, stands, brake spoon, meter",
     "Adjust the brakes, look at shoes and wires, test the breakaway battery under load.",
     "Stands under the frame before a wheel comes off."},
    {"Frame and springs", "trailer", 365, 0, 30, 0, 0, 5, Towing, kPractice,
     "Lamp, wire brush", "Look at welds, spring hangers, coupler and jack for cracks. Tyres older than five to six years go whatever the tread.", ""},
    {"Registration and insurance", "papers", 365, 0, 20, 0, 0, 5, Towing, kCode,
     "Papers", "See that registration, insurance and state inspection are in date; copies in the truck.", ""},
};

constexpr Starter kKitTasks[] = {
    {"Extinguisher look", "extinguishers", 30, 0, 10, 0, 0, 9, Lighting, kCode,
     "Tag, pen",
     "Each one: in place, easy to reach, seal and pin whole, gauge in range, no damage, nozzle clear, weight, label readable. Sign the tag.",
     "An extinguisher that was used, even briefly, goes to service."},
    {"Extinguisher service", "extinguishers", 365, 0, 30, 0, 0, 9, Lighting, kCode,
     "The certified person's number",
     "Have a certified person service and tag each one. Stored-pressure dry chemical: inside look at 6 years, pressure test at 12; water, CO2 and wet chemical: 5 years (from memory, ask). Some places want the class K tag every 6 months.",
     "Class A wood, B liquids, C electrical, K cooking fat."},
    {"CO alarm test", "CO alarms", 30, 0, 5, 0, 0, 8, Nothing, kPractice,
     "Spare batteries", "Press the test button of each alarm in the truck, trailer and where the crew sleeps. Note the renew-by date.",
     "No fire, no coals and no cooling pit in a garage, tent, camper or van. Headache or dizziness: fresh air, call emergency."},
    {"Probe and thermometer check", "probes", 7, 0, 15, 0, 0, 6, Nothing, kPractice,
     "Crushed ice, kettle, jug",
     "Each food probe in ice water (32 °F) and boiling water (212 °F less 1.77 °F each 1,000 ft): within 2 °F, or out of use.",
     "A wrong probe makes food unsafe unseen."},
    {"Propane starter leak test", "propane starter", 30, 0, 10, 0, 0, 7, Nothing, kPractice,
     "Soap and water, one to two",
     "Look at hose and regulator, then brush with soapy water under pressure: a bubble means shut off. Also at every cylinder change.",
     "Outside, no flame near. Store cylinders upright and outside."},
    {"First aid and burn kit", "first aid kit", 30, 0, 10, 0, 0, 6, Nothing, kPractice,
     "Kit list", "Fill up burn dressings, gloves and eye wash; see the dates.", ""},
};
// clang-format on

UpkeepTask taskOf(const Starter &s, QDate since)
{
    UpkeepTask t;
    t.name = QString::fromUtf8(s.name);
    t.target = QString::fromUtf8(s.target);
    t.since = since;
    if (s.days > 0)
        t.everyDays = s.days;
    if (s.cooks > 0)
        t.everyCooks = s.cooks;
    t.work = Duration::ofBase(s.minutes * 60LL);
    t.coldBefore = Duration::ofBase(s.coldHours * 3600LL);
    t.cureAfter = Duration::ofBase(s.cureHours * 3600LL);
    t.priority = s.priority;
    t.blocksLighting = (s.blocks & Lighting) != 0;
    t.blocksTowing = (s.blocks & Towing) != 0;
    t.intervalFrom = s.from;
    t.tools = QString::fromUtf8(s.tools);
    t.steps = QString::fromUtf8(s.steps);
    QStringList cautions;
    if (s.ash)
        cautions << ashCaution();
    if (*s.cautions != '\0')
        cautions << QString::fromUtf8(s.cautions);
    cautions << authorityCaution();
    t.cautions = cautions.join(QLatin1Char('\n'));
    return t;
}

} // namespace

QString authorityCaution()
{
    return QStringLiteral("Local code and the authority having jurisdiction decide.");
}

QString ashCaution()
{
    return QStringLiteral("Treat ash as hot: metal can with a tight metal lid, outside on ground "
                          "that cannot burn, at least 10 ft from any building, 96 hours at the "
                          "least before it is tipped. Never paper, plastic, a deck, a garage or a "
                          "vacuum cleaner.");
}

QVector<UpkeepTask> starterTasks(const QVector<Pit> &pits, QDate since)
{
    QVector<UpkeepTask> tasks;
    for (const Pit &pit : pits) {
        if (pit.retired)
            continue;
        for (const Starter &s : kPitTasks) {
            UpkeepTask t = taskOf(s, since);
            t.pit = pit.id;
            tasks << t;
        }
    }
    for (const Starter &s : kTrailerTasks)
        tasks << taskOf(s, since);
    for (const Starter &s : kKitTasks)
        tasks << taskOf(s, since);
    return tasks;
}

} // namespace rickyard::domain
