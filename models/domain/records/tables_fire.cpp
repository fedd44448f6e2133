#include "models/domain/records/books.h"

namespace rickyard::domain {

namespace {
const Temperature kColdest = temperatureFromCelsius(-60);
const Temperature kHottestAir = temperatureFromCelsius(60);
const Temperature kHottestPit = temperatureFromFahrenheit(900);
} // namespace

template <>
const Binder<Pit> &binderOf<Pit>()
{
    static const Binder<Pit> binder = [] {
        Binder<Pit> b(TableId::Pit, "pit", "pit", "pits", "name");
        b.text("name", "Name", &Pit::name).required().listed();
        b.quantity("diameter", "Cook chamber diameter", &Pit::diameter)
            .required()
            .listed()
            .between(Length::ofBase(200000), Length::ofBase(3000000));
        b.quantity("length", "Cook chamber length", &Pit::length)
            .required()
            .listed()
            .between(Length::ofBase(300000), Length::ofBase(12000000));
        b.quantity("firebox", "Firebox edge", &Pit::fireboxSide)
            .between(Length::ofBase(150000), Length::ofBase(3000000))
            .help("The edge of a cube of the same size.");
        b.quantity("plate", "Plate thickness", &Pit::plate)
            .between(Length::ofBase(500), Length::ofBase(60000));
        b.quantity("steel", "Steel in all", &Pit::steel)
            .between(massFromPounds(20), massFromPounds(20000));
        b.section("Use");
        b.choice("insulation", "Insulation", &Pit::insulation,
                 {{QStringLiteral("bare"), QStringLiteral("Bare steel")},
                  {QStringLiteral("firebox"), QStringLiteral("Insulated firebox")},
                  {QStringLiteral("whole"), QStringLiteral("Insulated all over")}})
            .listed();
        b.choice("shelter", "Shelter from the wind", &Pit::shelter,
                 {{QStringLiteral("open"), QStringLiteral("Open")},
                  {QStringLiteral("half"), QStringLiteral("Half sheltered")},
                  {QStringLiteral("sheltered"), QStringLiteral("Sheltered")}})
            .startsWith(QStringLiteral("half"))
            .listed();
        b.quantity("usual_temperature", "Usual temperature", &Pit::usualTemperature)
            .between(temperatureFromFahrenheit(120), kHottestPit)
            .listed();
        b.flag("retired", "Retired", &Pit::retired);
        b.longText("note", "Note", &Pit::note);
        b.typed(&Pit::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Cook> &binderOf<Cook>()
{
    static const Binder<Cook> binder = [] {
        Binder<Cook> b(TableId::Cook, "cook", "cook", "cooks", "name");
        b.text("name", "Name", &Cook::name).listed();
        b.reference("pit", "Pit", &Cook::pit, TableId::Pit, OnDelete::Refuse).required().listed();
        b.reference("planned", "Planned as", &Cook::planned, TableId::PlannedCook, OnDelete::Clear);
        b.section("Times");
        b.time("lit", "Lit", &Cook::lit).required().listed();
        b.time("at_temperature", "At temperature", &Cook::atTemperature);
        b.time("food_on", "Food on", &Cook::foodOn);
        b.time("food_off", "Food off", &Cook::foodOff);
        b.time("fire_out", "Fire out", &Cook::fireOut).listed().help("Leave empty while it burns.");
        b.section("Cook");
        b.quantity("target", "Target temperature", &Cook::target)
            .listed()
            .between(temperatureFromFahrenheit(120), kHottestPit);
        b.choice("start", "Start", &Cook::start,
                 {{QStringLiteral("cold"), QStringLiteral("Cold steel")},
                  {QStringLiteral("warm"), QStringLiteral("Warm steel")}});
        b.text("foods", "Food", &Cook::foods).listed();
        b.quantity("food_mass", "Food weight", &Cook::foodMass)
            .atLeast(0)
            .atMost(massFromPounds(4000).base());
        b.section("Wood and weather");
        b.choice("measured_by", "Wood measured by", &Cook::measuredBy,
                 {{QStringLiteral("tally"), QStringLiteral("Tally of splits")},
                  {QStringLiteral("weighed"), QStringLiteral("Weighed crate, before and after")},
                  {QStringLiteral("difference"), QStringLiteral("By difference of the stack")}});
        b.quantity("crate_before", "Crate before", &Cook::crateBefore)
            .atLeast(0)
            .atMost(massFromPounds(10000).base());
        b.quantity("crate_after", "Crate after", &Cook::crateAfter)
            .atLeast(0)
            .atMost(massFromPounds(10000).base());
        b.quantity("stack_before", "Stack at the pit before", &Cook::stackBefore)
            .atLeast(0)
            .atMost(volumeFromCubicFeet(1280).base());
        b.quantity("stack_after", "Stack at the pit after", &Cook::stackAfter)
            .atLeast(0)
            .atMost(volumeFromCubicFeet(1280).base());
        b.reference("wood_lot", "Lot of crate or stack", &Cook::woodLot, TableId::Lot,
                    OnDelete::Refuse)
            .help("Leave empty when it held what the feeds name.");
        b.quantity("outside", "Outside temperature", &Cook::outside)
            .between(kColdest, kHottestAir)
            .help("Used when no weather record covers the cook.");
        b.quantity("wind", "Wind", &Cook::wind).between(Speed::ofBase(0), Speed::ofBase(60000));
        b.longText("note", "Note", &Cook::note);
        b.typed(&Cook::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Feed> &binderOf<Feed>()
{
    static const Binder<Feed> binder = [] {
        Binder<Feed> b(TableId::Feed, "feed", "feed", "feeds", "");
        b.reference("cook", "Cook", &Feed::cook, TableId::Cook, OnDelete::Cascade)
            .required()
            .listed();
        b.time("time", "Time", &Feed::time).required().listed();
        b.reference("lot", "Lot", &Feed::lot, TableId::Lot, OnDelete::Refuse).required().listed();
        b.count("pieces", "Splits", &Feed::pieces)
            .required()
            .atLeast(0)
            .atMost(500)
            .startsWith(qint64{1})
            .listed();
        b.quantity("weight", "Weight as is", &Feed::weight)
            .atLeast(1)
            .atMost(massFromPounds(1000).base())
            .listed()
            .help("Leave empty to take the lot's mean split.");
        b.longText("note", "Note", &Feed::note);
        b.typed(&Feed::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<CookTemperature> &binderOf<CookTemperature>()
{
    static const Binder<CookTemperature> binder = [] {
        Binder<CookTemperature> b(TableId::CookTemperature, "cook_temperature", "temperature",
                                  "temperatures", "");
        b.reference("cook", "Cook", &CookTemperature::cook, TableId::Cook, OnDelete::Cascade)
            .required()
            .listed();
        b.time("time", "Time", &CookTemperature::time).required().listed();
        b.text("probe", "Where", &CookTemperature::probe)
            .startsWith(QStringLiteral("grate"))
            .listed();
        b.quantity("temperature", "Temperature", &CookTemperature::temperature)
            .required()
            .between(kColdest, kHottestPit)
            .listed();
        b.typed(&CookTemperature::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<CookNote> &binderOf<CookNote>()
{
    static const Binder<CookNote> binder = [] {
        Binder<CookNote> b(TableId::CookNote, "cook_note", "note", "notes", "text");
        b.reference("cook", "Cook", &CookNote::cook, TableId::Cook, OnDelete::Cascade)
            .required()
            .listed();
        b.time("time", "Time", &CookNote::time).required().listed();
        b.choice("kind", "Kind", &CookNote::kind,
                 {{QStringLiteral("remark"), QStringLiteral("Remark")},
                  {QStringLiteral("door"), QStringLiteral("Door opened")},
                  {QStringLiteral("wrapped"), QStringLiteral("Wrapped")},
                  {QStringLiteral("turned"), QStringLiteral("Turned")},
                  {QStringLiteral("rain"), QStringLiteral("Rain began")},
                  {QStringLiteral("wind"), QStringLiteral("Wind turned")},
                  {QStringLiteral("grease"), QStringLiteral("Grease drain looked at")},
                  {QStringLiteral("ash"), QStringLiteral("Ash raked")},
                  {QStringLiteral("hand_over"), QStringLiteral("Hand-over")}})
            .listed();
        b.text("text", "Text", &CookNote::text).listed();
        b.typed(&CookNote::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<CookChange> &binderOf<CookChange>()
{
    static const Binder<CookChange> binder = [] {
        Binder<CookChange> b(TableId::CookChange, "cook_change", "change", "changes", "what");
        b.reference("cook", "Cook", &CookChange::cook, TableId::Cook, OnDelete::Cascade)
            .required()
            .derived()
            .listed();
        b.time("time", "Changed", &CookChange::time).required().derived().listed();
        b.text("what", "What", &CookChange::what).required().derived().listed();
        b.text("before", "Before", &CookChange::before).derived().listed();
        b.text("after", "After", &CookChange::after).derived().listed();
        b.typed(&CookChange::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Trace> &binderOf<Trace>()
{
    static const Binder<Trace> binder = [] {
        Binder<Trace> b(TableId::Trace, "trace", "trace", "traces", "probe");
        b.reference("cook", "Cook", &Trace::cook, TableId::Cook, OnDelete::Cascade)
            .required()
            .listed();
        b.text("probe", "Probe", &Trace::probe).required().listed();
        b.time("start", "Start", &Trace::start).required().listed();
        b.count("points", "Points", &Trace::points).required().derived().listed();
        b.field(FieldKind::Blob, "block", "Block", &Trace::block).derived();
        b.text("source", "Source", &Trace::source);
        b.typed(&Trace::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Weather> &binderOf<Weather>()
{
    static const Binder<Weather> binder = [] {
        Binder<Weather> b(TableId::Weather, "weather", "weather record", "weather records", "");
        b.text("place", "Place", &Weather::place).required().listed();
        b.time("time", "Time", &Weather::time).required().listed();
        b.quantity("temperature", "Temperature", &Weather::temperature)
            .listed()
            .between(kColdest, kHottestAir);
        b.quantity("dew_point", "Dew point", &Weather::dewPoint)
            .between(temperatureFromCelsius(-80), temperatureFromCelsius(40))
            .listed();
        b.quantity("humidity", "Relative humidity", &Weather::humidity)
            .between(Ratio::ofBase(0), Ratio::ofBase(1050000))
            .listed();
        b.quantity("wind", "Wind", &Weather::wind)
            .listed()
            .between(Speed::ofBase(0), Speed::ofBase(120000));
        b.quantity("gust", "Gust", &Weather::gust)
            .between(Speed::ofBase(0), Speed::ofBase(150000))
            .listed();
        b.quantity("wind_from", "Wind from", &Weather::windFrom)
            .between(Angle::ofBase(0), Angle::ofBase(360));
        b.quantity("rain", "Rain", &Weather::rain)
            .between(Length::ofBase(0), Length::ofBase(500000))
            .listed();
        b.quantity("pressure", "Pressure", &Weather::pressure)
            .between(Pressure::ofBase(50000), Pressure::ofBase(110000));
        b.flag("normal", "Climate normal", &Weather::normal);
        b.text("source", "Source", &Weather::source);
        b.typed(&Weather::typed);
        return b;
    }();
    return binder;
}

} // namespace rickyard::domain
