#include "models/domain/records/books.h"
#include "models/domain/records/tables.h"

namespace rickyard::domain {

template <>
const Binder<Species> &binderOf<Species>()
{
    static const Binder<Species> binder = [] {
        Binder<Species> b(TableId::Species, "species", "species", "species", "name");
        b.text("name", "Name", &Species::name).required().listed();
        b.text("scientific", "Scientific name", &Species::scientific);
        b.quantity("basic_gravity", "Basic specific gravity", &Species::basicGravity)
            .required()
            .between(Plain::ofBase(200000), Plain::ofBase(1200000))
            .listed()
            .help("Oven-dry mass over green volume, relative to water; 0.60 for post oak.");
        b.quantity("shrinkage", "Shrinkage in volume", &Species::shrinkage)
            .between(Ratio::ofBase(0), Ratio::ofBase(300000));
        b.quantity("green", "Moisture when green", &Species::green)
            .between(Moisture::ofBase(0), Moisture::ofBase(250000))
            .listed();
        b.quantity("gross_heat", "Gross heat, oven-dry", &Species::grossHeat)
            .between(HeatContent::ofBase(14000000), HeatContent::ofBase(25000000));
        b.quantity("ash", "Ash", &Species::ash).between(Ratio::ofBase(0), Ratio::ofBase(100000));
        b.section("Use");
        b.flag("never_burn", "Never burn for food", &Species::neverBurn).listed();
        b.text("never_burn_reason", "Reason", &Species::neverBurnReason);
        b.longText("source", "Where the figures come from", &Species::source);
        b.typed(&Species::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Supplier> &binderOf<Supplier>()
{
    static const Binder<Supplier> binder = [] {
        Binder<Supplier> b(TableId::Supplier, "supplier", "supplier", "suppliers", "name");
        b.text("name", "Name", &Supplier::name).required().listed();
        b.text("contact", "How to reach them", &Supplier::contact).listed();
        b.section("Terms");
        b.quantity("lead_time", "Order to delivery", &Supplier::leadTime, "d")
            .between(Duration::ofBase(0), Duration::ofBase(365 * 86400LL))
            .listed();
        b.choice("sells_by", "Sells by", &Supplier::unit, sellUnitChoices()).listed();
        b.quantity("stick_length", "Stick length of a face cord", &Supplier::stickLength)
            .between(Length::ofBase(100000), Length::ofBase(1300000));
        b.quantity("bundle_volume", "Volume of a bundle, stacked", &Supplier::bundleVolume, "ft3")
            .between(volumeFromCubicFeet(0.1), volumeFromCubicFeet(16));
        b.quantity("price", "Price per unit", &Supplier::price).atLeast(0).listed();
        b.quantity("delivery", "Delivery, for one load", &Supplier::delivery).atLeast(0);
        b.count("most_units", "Most units in one load", &Supplier::mostUnits)
            .atLeast(1)
            .atMost(10000);
        b.quantity("promised", "Moisture promised", &Supplier::promised)
            .between(Moisture::ofBase(0), Moisture::ofBase(250000));
        b.longText("note", "Note", &Supplier::note);
        b.typed(&Supplier::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Offer> &binderOf<Offer>()
{
    static const Binder<Offer> binder = [] {
        Binder<Offer> b(TableId::Offer, "offer", "offer", "offers", "");
        b.reference("supplier", "Supplier", &Offer::supplier, TableId::Supplier, OnDelete::Cascade)
            .required()
            .listed();
        b.reference("species", "Species", &Offer::species, TableId::Species, OnDelete::Refuse)
            .required()
            .listed();
        b.section("What is offered");
        b.quantity("count", "How many", &Offer::count)
            .required()
            .between(Plain::ofBase(1000), Plain::ofBase(100000000000LL))
            .startsWith(qint64{1000000})
            .listed();
        b.choice("sold_by", "Sold by", &Offer::unit, sellUnitChoices()).listed();
        b.quantity("stick_length", "Stick length of a face cord", &Offer::stickLength)
            .between(Length::ofBase(100000), Length::ofBase(1300000));
        b.quantity("bundle_volume", "Volume of a bundle, stacked", &Offer::bundleVolume, "ft3")
            .between(volumeFromCubicFeet(0.1), volumeFromCubicFeet(16));
        b.quantity("promised", "Moisture promised", &Offer::promised)
            .between(Moisture::ofBase(0), Moisture::ofBase(250000))
            .listed();
        b.section("Price");
        b.quantity("price", "Price of it all", &Offer::price)
            .required()
            .between(Money::ofBase(0), Money::ofBase(100000000))
            .listed();
        b.quantity("delivery", "Delivery on top", &Offer::delivery).atLeast(0).listed();
        b.date("made", "Made on", &Offer::made).listed();
        b.flag("closed", "No longer open", &Offer::closed);
        b.longText("note", "Note", &Offer::note);
        b.typed(&Offer::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<WoodOrder> &binderOf<WoodOrder>()
{
    static const Binder<WoodOrder> binder = [] {
        Binder<WoodOrder> b(TableId::WoodOrder, "wood_order", "wood order", "wood orders", "");
        b.reference("supplier", "Supplier", &WoodOrder::supplier, TableId::Supplier,
                    OnDelete::Refuse)
            .required()
            .listed();
        b.reference("species", "Species", &WoodOrder::species, TableId::Species, OnDelete::Refuse)
            .required()
            .listed();
        b.choice("state", "State", &WoodOrder::state,
                 {{QStringLiteral("draft"), QStringLiteral("Draft")},
                  {QStringLiteral("sent"), QStringLiteral("Sent")},
                  {QStringLiteral("promised"), QStringLiteral("Promised")},
                  {QStringLiteral("received"), QStringLiteral("Received")},
                  {QStringLiteral("cancelled"), QStringLiteral("Cancelled")}})
            .listed();
        b.quantity("volume", "Amount, stacked", &WoodOrder::volume, "cord")
            .required()
            .between(Volume::ofBase(1), volumeFromCubicFeet(12800))
            .listed();
        b.quantity("count", "How many", &WoodOrder::count)
            .between(Plain::ofBase(1000), Plain::ofBase(100000000000LL));
        b.choice("sold_by", "Of which unit", &WoodOrder::unit, sellUnitChoices());
        b.quantity("price", "Price", &WoodOrder::price).atLeast(0).listed();
        b.quantity("promised_moisture", "Moisture promised", &WoodOrder::promisedMoisture)
            .between(Moisture::ofBase(0), Moisture::ofBase(250000));
        b.section("Days");
        b.date("ordered", "Ordered", &WoodOrder::ordered).listed();
        b.date("promised", "Promised for", &WoodOrder::promised).listed();
        b.date("received", "Received", &WoodOrder::received);
        b.date("chased", "Last asked where it is", &WoodOrder::chased);
        b.longText("note", "Note", &WoodOrder::note);
        b.typed(&WoodOrder::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Lot> &binderOf<Lot>()
{
    static const Binder<Lot> binder = [] {
        Binder<Lot> b(TableId::Lot, "lot", "lot", "lots", "name");
        b.text("name", "Name", &Lot::name).required().listed();
        b.reference("species", "Species", &Lot::species, TableId::Species, OnDelete::Refuse)
            .required()
            .listed();
        b.reference("supplier", "Supplier", &Lot::supplier, TableId::Supplier, OnDelete::Refuse)
            .listed();
        b.reference("wood_order", "Order", &Lot::order, TableId::WoodOrder, OnDelete::Clear);
        b.time("received", "Received", &Lot::received).required().listed();
        b.section("What came");
        b.choice("measured_by", "Measured by", &Lot::measuredBy,
                 {{QStringLiteral("stack"), QStringLiteral("Stack, length × height × depth")},
                  {QStringLiteral("loose"), QStringLiteral("Loose volume")},
                  {QStringLiteral("weighed"), QStringLiteral("Weighed")},
                  {QStringLiteral("claimed"), QStringLiteral("Not measured: as claimed")}});
        b.stackList("stacks", "Stacks, length × height × depth", &Lot::stacks)
            .between(Length::ofBase(10000), Length::ofBase(60000000))
            .help("One stack: 8 ft × 4 ft × 16 in. Several: a semicolon between them.");
        b.quantity("loose_volume", "Loose volume", &Lot::looseVolume).atLeast(0);
        b.quantity("weight", "Weight as received", &Lot::weight)
            .atLeast(1)
            .atMost(massFromPounds(60000).base());
        b.quantity("paid_count", "Amount paid for", &Lot::paidCount)
            .between(Plain::ofBase(1000), Plain::ofBase(100000000000LL))
            .listed();
        b.choice("paid_unit", "Of which unit", &Lot::paidUnit, sellUnitChoices()).listed();
        b.quantity("bundle_volume", "Volume of a bundle, stacked", &Lot::bundleVolume, "ft3")
            .between(volumeFromCubicFeet(0.1), volumeFromCubicFeet(16));
        b.quantity("price", "Price with delivery", &Lot::price).atLeast(0).listed();
        b.quantity("promised_moisture", "Moisture promised", &Lot::promisedMoisture)
            .between(Moisture::ofBase(0), Moisture::ofBase(250000));
        b.section("Splits");
        b.quantity("stick_length", "Stick length", &Lot::stickLength)
            .between(Length::ofBase(50000), Length::ofBase(1300000));
        b.quantity("split_thickness", "Split thickness", &Lot::splitThickness)
            .between(Length::ofBase(10000), Length::ofBase(500000));
        b.quantity("split_mass", "Mean weight of a split", &Lot::splitMass)
            .between(massFromPounds(0.1), massFromPounds(60));
        b.count("splits_weighed", "Splits weighed for the mean", &Lot::splitsWeighed)
            .startsWith(qint64{0})
            .required();
        b.quantity("split_spread", "Spread of their weights", &Lot::splitSpread)
            .between(Mass(), massFromPounds(60))
            .help("Standard deviation.");
        b.time("splits_weighed_at", "Splits weighed at", &Lot::splitsWeighedAt)
            .help("Left empty: when the lot came.");
        b.section("Keeping");
        b.choice("cover", "Cover", &Lot::cover,
                 {{QStringLiteral("open"), QStringLiteral("Open rick")},
                  {QStringLiteral("top"), QStringLiteral("Top cover, open sides")},
                  {QStringLiteral("shed"), QStringLiteral("Shed")},
                  {QStringLiteral("kiln"), QStringLiteral("Kiln-dried, kept dry")}})
            .startsWith(QStringLiteral("top"));
        b.text("place", "Where it stands", &Lot::place);
        b.text("origin", "Origin", &Lot::origin).help("County and state where it was cut.");
        b.text("certificate", "Heat-treatment certificate", &Lot::certificate);
        b.flag("hold", "On hold", &Lot::hold).listed();
        b.text("hold_reason", "Reason for the hold", &Lot::holdReason);
        b.reference("reserved_for", "Kept for", &Lot::reservedFor, TableId::Event, OnDelete::Clear);
        b.longText("note", "Note", &Lot::note);
        b.typed(&Lot::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<MoistureReading> &binderOf<MoistureReading>()
{
    static const Binder<MoistureReading> binder = [] {
        Binder<MoistureReading> b(TableId::MoistureReading, "moisture_reading", "moisture reading",
                                  "moisture readings", "");
        b.reference("lot", "Lot", &MoistureReading::lot, TableId::Lot, OnDelete::Cascade)
            .required()
            .listed();
        b.time("time", "Read at", &MoistureReading::time).required().listed();
        b.choice("basis", "The meter shows", &MoistureReading::basis,
                 {{QStringLiteral("dry"), QStringLiteral("Dry basis (water over dry wood)")},
                  {QStringLiteral("wet"), QStringLiteral("Wet basis (water over all)")}})
            .listed();
        b.moistureList("pieces", "Pieces", &MoistureReading::pieces)
            .required()
            .listed()
            .help("One number a split, read on the fresh inner face.");
        b.choice("face", "Face read", &MoistureReading::face,
                 {{QStringLiteral("fresh"), QStringLiteral("Fresh inner face")},
                  {QStringLiteral("old"), QStringLiteral("Old face (reads low)")},
                  {QStringLiteral("end"), QStringLiteral("End grain (unreliable)")}})
            .listed();
        b.quantity("wood_temperature", "Wood temperature", &MoistureReading::woodTemperature)
            .between(temperatureFromCelsius(-40), temperatureFromCelsius(80));
        b.text("scale", "Meter scale", &MoistureReading::scale);
        b.longText("note", "Note", &MoistureReading::note);
        b.typed(&MoistureReading::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<OvenTest> &binderOf<OvenTest>()
{
    static const Binder<OvenTest> binder = [] {
        Binder<OvenTest> b(TableId::OvenTest, "oven_test", "oven-dry test", "oven-dry tests", "");
        b.reference("lot", "Lot", &OvenTest::lot, TableId::Lot, OnDelete::Cascade)
            .required()
            .listed();
        b.time("time", "Time", &OvenTest::time).required().listed();
        b.choice("method", "The dry weight", &OvenTest::method,
                 {{QStringLiteral("oven"), QStringLiteral("Dried in an oven to constant weight")},
                  {QStringLiteral("reference"),
                   QStringLiteral("Of a marked piece, known from before")}})
            .listed();
        b.text("piece", "Mark of the piece", &OvenTest::piece).listed();
        b.quantity("wet", "Weight before", &OvenTest::wet, "g")
            .required()
            .listed()
            .between(Mass::ofBase(1000), massFromKilograms(20));
        b.quantity("dry", "Weight oven-dry", &OvenTest::dry, "g")
            .required()
            .listed()
            .between(Mass::ofBase(1000), massFromKilograms(20));
        b.longText("note", "Note", &OvenTest::note);
        b.typed(&OvenTest::typed);
        return b;
    }();
    return binder;
}

template <>
const Binder<Movement> &binderOf<Movement>()
{
    static const Binder<Movement> binder = [] {
        Binder<Movement> b(TableId::Movement, "movement", "ledger entry", "ledger entries", "");
        b.reference("lot", "Lot", &Movement::lot, TableId::Lot, OnDelete::Cascade)
            .required()
            .listed();
        b.time("time", "Time", &Movement::time).required().listed();
        b.choice("kind", "Kind", &Movement::kind,
                 {{QStringLiteral("received"), QStringLiteral("Received")},
                  {QStringLiteral("burned"), QStringLiteral("Burned")},
                  {QStringLiteral("counted"), QStringLiteral("Counted")},
                  {QStringLiteral("given"), QStringLiteral("Given away")},
                  {QStringLiteral("sold"), QStringLiteral("Sold")},
                  {QStringLiteral("lost"), QStringLiteral("Lost")}})
            .listed();
        b.quantity("dry_mass", "Dry wood", &Movement::dryMass)
            .required()
            .listed()
            .between(-massFromPounds(60000), massFromPounds(60000));
        b.count("pieces", "Splits", &Movement::pieces).listed();
        b.quantity("as_is", "Weight as is", &Movement::asIs).atLeast(0).listed();
        b.quantity("moisture", "Moisture used", &Movement::moisture)
            .between(Moisture::ofBase(0), Moisture::ofBase(250000))
            .listed();
        b.reference("cook", "Cook", &Movement::cook, TableId::Cook, OnDelete::Cascade);
        b.reference("feed", "Feed", &Movement::feed, TableId::Feed, OnDelete::Cascade).derived();
        b.flag("assumed", "Rests on an assumption", &Movement::assumed).derived();
        b.longText("note", "Note", &Movement::note);
        b.typed(&Movement::typed);
        return b;
    }();
    return binder;
}

} // namespace rickyard::domain
