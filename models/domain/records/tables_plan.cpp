#include "models/domain/records/books.h"

namespace rickyard::domain {

template <>
const Binder<Yard> &binderOf<Yard>()
{
    static const Binder<Yard> binder = [] {
        Binder<Yard> b(TableId::Yard, "yard", "yard", "yards", "name");
        b.text("name", "Name", &Yard::name).required();
        b.text("time_zone", "Time zone", &Yard::timeZone)
            .required()
            .startsWith(QStringLiteral("America/Chicago"));
        b.flag("metric", "Metric units", &Yard::metric);
        b.flag("invented", "Invented data", &Yard::invented).derived();
        b.text("mark", "Mark", &Yard::mark).derived();
        b.quantity("elevation", "Elevation", &Yard::elevation, "ft")
            .between(Length::ofBase(-500000000), Length::ofBase(6000000000));
        b.quantity("accepted_risk", "Accepted chance of running short", &Yard::acceptedRisk)
            .required()
            .between(Ratio::ofBase(1000), Ratio::ofBase(500000))
            .startsWith(qint64{50000})
            .help("For each event: what the day and the amount of an order are worked out for.");
        b.count("false_alarm_cooks", "One false fuel flag in … cooks", &Yard::falseAlarmCooks)
            .required()
            .atLeast(20)
            .atMost(5000)
            .startsWith(qint64{200})
            .help("Of a pit that is in order. Fewer: a fault is seen sooner, and more often "
                  "wrongly.");
        b.quantity("order_lead", "Lead time when a supplier has none", &Yard::orderLead, "d")
            .required()
            .between(Duration::ofBase(0), Duration::ofBase(365LL * 86400))
            .startsWith(qint64{14 * 86400});
        b.quantity("wood_room", "Room for wood, stacked", &Yard::woodRoom, "cord")
            .between(volumeFromCubicFeet(1), volumeFromCubicFeet(12800))
            .help("Left empty: no limit is looked at.");
        b.count("season_month", "A season starts with month", &Yard::seasonMonth)
            .atLeast(1)
            .atMost(12)
            .help("1 to 12. Left empty: there is no season.");
        b.section("Going out");
        b.quantity("box_mass", "Wood in one box", &Yard::boxMass)
            .between(massFromPounds(1), massFromPounds(2000));
        b.quantity("kindling", "Kindling for one fire", &Yard::kindling)
            .between(Mass(), massFromPounds(200));
        b.quantity("trailer_empty", "Trailer without wood and food", &Yard::trailerEmpty)
            .between(Mass(), massFromPounds(60000))
            .help("With the pits and the gear on it, as weighed.");
        b.quantity("trailer_limit", "The most it may weigh", &Yard::trailerLimit)
            .between(massFromPounds(100), massFromPounds(60000))
            .help("From its plate: trailer, tow vehicle and hitch each have a limit.");
        b.section("Moisture meter");
        b.flag("correct_temperature", "Correct for temperature", &Yard::correctTemperature)
            .startsWith(qint64{1})
            .help("0.1 point a degree Celsius from 20 °C, as two makers' manuals give it.");
        b.flag("correct_species", "Correct for species", &Yard::correctSpecies)
            .help("By resistance figures that are from memory: check them with an oven-dry test.");
        b.text("meter_scale", "The meter is usually set to", &Yard::meterScale)
            .help("Douglas-fir is the usual factory setting.");
        b.section("");
        b.longText("note", "Note", &Yard::note);
        b.typed(&Yard::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<CrewTime> &binderOf<CrewTime>()
{
    static const Binder<CrewTime> binder = [] {
        Binder<CrewTime> b(TableId::CrewTime, "crew_time", "crew time", "crew times", "");
        b.choice("weekday", "Weekday", &CrewTime::weekday,
                 {{QStringLiteral("mon"), QStringLiteral("Monday")},
                  {QStringLiteral("tue"), QStringLiteral("Tuesday")},
                  {QStringLiteral("wed"), QStringLiteral("Wednesday")},
                  {QStringLiteral("thu"), QStringLiteral("Thursday")},
                  {QStringLiteral("fri"), QStringLiteral("Friday")},
                  {QStringLiteral("sat"), QStringLiteral("Saturday")},
                  {QStringLiteral("sun"), QStringLiteral("Sunday")}})
            .listed();
        b.quantity("start", "From, after midnight", &CrewTime::start, "h")
            .required()
            .listed()
            .between(Duration::ofBase(0), Duration::ofBase(86400));
        b.quantity("length", "Length", &CrewTime::length, "h")
            .required()
            .listed()
            .between(Duration::ofBase(600), Duration::ofBase(86400));
        b.count("people", "People", &CrewTime::people)
            .required()
            .atLeast(1)
            .atMost(20)
            .startsWith(qint64{1})
            .listed();
        b.longText("note", "Note", &CrewTime::note);
        b.typed(&CrewTime::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<ImportProfile> &binderOf<ImportProfile>()
{
    static const Binder<ImportProfile> binder = [] {
        Binder<ImportProfile> b(TableId::ImportProfile, "import_profile", "import profile",
                                "import profiles", "name");
        b.text("name", "Name", &ImportProfile::name).required().listed();
        b.text("kind", "Kind", &ImportProfile::kind).required().listed();
        b.longText("mapping", "Mapping", &ImportProfile::mapping).required();
        b.typed(&ImportProfile::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Event> &binderOf<Event>()
{
    static const Binder<Event> binder = [] {
        Binder<Event> b(TableId::Event, "event", "event", "events", "name");
        b.text("name", "Name", &Event::name).required().listed();
        b.text("place", "Place", &Event::place);
        b.time("start", "Serving from", &Event::start).required().listed();
        b.time("end", "Serving until", &Event::end).required();
        b.choice("state", "State", &Event::state,
                 {{QStringLiteral("proposed"), QStringLiteral("Proposed")},
                  {QStringLiteral("booked"), QStringLiteral("Booked")},
                  {QStringLiteral("done"), QStringLiteral("Done")},
                  {QStringLiteral("cancelled"), QStringLiteral("Cancelled")}})
            .startsWith(QStringLiteral("booked"))
            .listed();
        b.count("covers", "Covers", &Event::covers).atMost(100000).listed();
        b.section("Getting there");
        b.quantity("travel", "Travel, one way", &Event::travel, "min")
            .between(Duration::ofBase(0), Duration::ofBase(3 * 86400));
        b.flag("towed", "A pit is towed there", &Event::towed);
        b.longText("site_rules", "Site rules", &Event::siteRules);
        b.section("");
        b.text("repeat_rule", "Repeats by", &Event::repeatRule).derived();
        b.text("series", "Series", &Event::series).derived();
        b.longText("note", "Note", &Event::note);
        b.typed(&Event::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<PlannedCook> &binderOf<PlannedCook>()
{
    static const Binder<PlannedCook> binder = [] {
        Binder<PlannedCook> b(TableId::PlannedCook, "planned_cook", "planned cook", "planned cooks",
                              "");
        b.reference("event", "Event", &PlannedCook::event, TableId::Event, OnDelete::Cascade)
            .listed();
        b.reference("pit", "Pit", &PlannedCook::pit, TableId::Pit, OnDelete::Refuse)
            .required()
            .listed();
        b.time("light", "Light at", &PlannedCook::light).required().listed();
        b.quantity("length", "Lighting to fire out", &PlannedCook::length, "h")
            .required()
            .between(Duration::ofBase(1800), Duration::ofBase(72 * 3600))
            .listed();
        b.quantity("target", "Target temperature", &PlannedCook::target)
            .between(temperatureFromFahrenheit(120), temperatureFromFahrenheit(900))
            .listed();
        b.section("Food and wood");
        b.text("foods", "Food", &PlannedCook::foods).listed();
        b.quantity("food_mass", "Food weight", &PlannedCook::foodMass)
            .atLeast(0)
            .atMost(massFromPounds(4000).base());
        b.reference("species", "Preferred wood", &PlannedCook::species, TableId::Species,
                    OnDelete::Clear);
        b.quantity("outside", "Forecast: outside", &PlannedCook::outside)
            .between(temperatureFromCelsius(-60), temperatureFromCelsius(60))
            .help("Leave empty to take what is usual for the date.");
        b.quantity("wind", "Forecast: wind", &PlannedCook::wind)
            .between(Speed::ofBase(0), Speed::ofBase(60000));
        b.flag("cancelled", "Cancelled", &PlannedCook::cancelled).listed();
        b.longText("note", "Note", &PlannedCook::note);
        b.typed(&PlannedCook::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<BusyTime> &binderOf<BusyTime>()
{
    static const Binder<BusyTime> binder = [] {
        Binder<BusyTime> b(TableId::BusyTime, "busy_time", "busy time", "busy times", "summary");
        b.text("summary", "What", &BusyTime::summary).listed();
        b.time("start", "From", &BusyTime::start).required().listed();
        b.time("end", "Until", &BusyTime::end).required().listed();
        b.text("source", "Calendar", &BusyTime::source).required().listed();
        b.text("uid", "Its mark in the calendar", &BusyTime::uid).required().derived();
        b.typed(&BusyTime::typed);
        return b;
    }();
    return binder;
}

} // namespace rickyard::domain
