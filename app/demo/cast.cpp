#include "app/demo/draft.h"
#include "models/domain/wood/starter_species.h"

namespace rickyard::app::demo {

namespace {

using domain::Length;
using domain::Pit;
using domain::Supplier;

Length inchesLong(double in)
{
    return Length::rounded(in * domain::kMicrometresPerInch);
}

Pit pit(const char *name, double diameter, double length, double firebox, double plate,
        double pounds, domain::Shelter shelter, const char *note)
{
    Pit p;
    p.name = QString::fromUtf8(name);
    p.diameter = inchesLong(diameter);
    p.length = inchesLong(length);
    p.fireboxSide = inchesLong(firebox);
    p.plate = inchesLong(plate);
    p.steel = domain::massFromPounds(pounds);
    p.shelter = shelter;
    p.usualTemperature = domain::temperatureFromFahrenheit(250);
    p.note = QString::fromUtf8(note);
    return p;
}

Supplier supplier(const char *name, const char *contact, int leadDays, domain::SellUnit unit,
                  double dollars, double promised, const char *note)
{
    Supplier s;
    s.name = QString::fromUtf8(name);
    s.contact = QString::fromUtf8(contact);
    s.leadTime = Duration::ofBase(leadDays * 86400LL);
    s.unit = unit;
    if (unit == domain::SellUnit::FaceCord)
        s.stickLength = inchesLong(16);
    s.price = domain::Money::rounded(dollars * 100);
    s.promised = Moisture::rounded(promised * 1000);
    s.note = QString::fromUtf8(note);
    return s;
}

void addCrewTime(Draft &draft, domain::Weekday day, double start, double length, int people)
{
    domain::CrewTime t;
    t.weekday = day;
    t.start = domain::durationFromHours(start);
    t.length = domain::durationFromHours(length);
    t.people = people;
    shelve(draft.books.crewTimes, t);
}

} // namespace

void addCast(Draft &draft)
{
    domain::Books &books = draft.books;
    domain::Yard yard;
    yard.name = QStringLiteral("Pretend Creek Cook Yard (invented)");
    yard.timeZone = QStringLiteral("America/Chicago");
    yard.invented = true;
    yard.mark = QStringLiteral("invented");
    yard.elevation = inchesLong(590 * 12);
    yard.note = QStringLiteral("Everything in this yard is invented: the crew, the pits, the "
                               "suppliers, the events, the weather and every figure.");
    books.yards.insert(1, yard);

    shelve(books.pits, pit("Aunt Tilda", 20, 40, 20, 0.25, 420, domain::Shelter::Sheltered,
                           "The backyard pit, under the lean-to."));
    shelve(books.pits, pit("Deacon", 30, 82, 26, 0.25, 1150, domain::Shelter::Half,
                           "250 gallons, on the trailer."));
    shelve(books.pits, pit("Barge", 37, 108, 32, 0.3125, 2300, domain::Shelter::Open,
                           "500 gallons, stands in the open at the fence."));

    shelve(books.suppliers, supplier("Nowhere Hollow Wood (invented)", "Text Odo's cousin", 12,
                                     domain::SellUnit::HalfCord, 210, 20,
                                     "Usually dry. Answers after a day or two."));
    shelve(books.suppliers,
           supplier("Made-Up Mill Splits (invented)", "Call in the evening", 20,
                    domain::SellUnit::Cord, 360, 20, "Cheapest by the cord. Measure what comes."));
    shelve(books.suppliers,
           supplier("Example Ridge Firewood (invented)", "Web form", 7, domain::SellUnit::FaceCord,
                    185, 18, "Quick and dear. Heat-treated splits on request."));

    for (const domain::Species &species : domain::starterSpecies())
        shelve(books.species, species);

    addCrewTime(draft, domain::Weekday::Tuesday, 18, 2.5, 2);
    addCrewTime(draft, domain::Weekday::Wednesday, 18, 2.5, 2);
    addCrewTime(draft, domain::Weekday::Thursday, 18, 3, 2);
    addCrewTime(draft, domain::Weekday::Sunday, 9, 3.5, 3);
}

} // namespace rickyard::app::demo
