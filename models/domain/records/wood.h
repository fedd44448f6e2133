// Wood: species, suppliers, orders, lots (one delivery of one wood), readings and the ledger.
#pragma once

#include "models/domain/records/value.h"

namespace rickyard::domain {

struct Species {
    RecordId id = 0;
    QString name;
    QString scientific;
    Plain basicGravity;                   // oven-dry mass over green volume, relative to water
    std::optional<Ratio> shrinkage;       // volumetric, green to oven-dry
    std::optional<Moisture> green;        // usual moisture of the living tree
    std::optional<HeatContent> grossHeat; // oven-dry, gross; missing: the default hardwood
    std::optional<Ratio> ash;             // of oven-dry mass
    bool neverBurn = false;               // never burn for food
    QString neverBurnReason;
    QString source;
    QString typed;
};

// Units that wood is sold by. A bundle has a volume of its own (NIST Handbook 130 wants packaged
// wood under an eighth of a cord sold by volume); a loose cubic foot is thrown, not stacked.
enum class SellUnit {
    Cord,
    HalfCord,
    QuarterCord,
    EighthCord,
    FaceCord,
    CubicFoot,
    LooseCubicFoot,
    Pound,
    Bundle,
};

struct Supplier {
    RecordId id = 0;
    QString name;
    QString contact;
    std::optional<Duration> leadTime; // usual time from order to delivery
    SellUnit unit = SellUnit::Cord;
    std::optional<Length> stickLength;  // of a face cord
    std::optional<Volume> bundleVolume; // stacked, of one bundle
    std::optional<Money> price;         // per unit
    std::optional<Money> delivery;      // asked on top, for one load
    std::optional<int> mostUnits;       // in one load
    std::optional<Moisture> promised;   // moisture they promise
    QString note;
    QString typed;
};

// What a supplier asks for an amount of wood: one line of a comparison.
struct Offer {
    RecordId id = 0;
    RecordId supplier = 0;
    RecordId species = 0;
    SellUnit unit = SellUnit::Cord;
    Plain count = Plain::ofBase(1000000);
    std::optional<Length> stickLength;
    std::optional<Volume> bundleVolume;
    Money price;                   // for the whole amount, without delivery
    std::optional<Money> delivery; // asked on top
    std::optional<Moisture> promised;
    QDate made;
    bool closed = false; // taken, refused or out of date: kept, but not compared
    QString note;
    QString typed;
};

enum class OrderState { Draft, Sent, Promised, Received, Cancelled };

struct WoodOrder {
    RecordId id = 0;
    RecordId supplier = 0;
    RecordId species = 0;
    OrderState state = OrderState::Draft;
    Volume volume; // stacked, as ordered
    SellUnit unit = SellUnit::Cord;
    std::optional<Plain> count; // of that unit; missing: only the volume is known
    std::optional<Money> price;
    std::optional<Moisture> promisedMoisture;
    QDate ordered;
    QDate promised;
    QDate received;
    QDate chased; // when they were last asked where it is
    QString note;
    QString typed;
};

enum class Measure { Stack, Loose, Weighed, Claimed };
enum class Cover { Open, TopCover, Shed, KilnDried };

struct Lot {
    RecordId id = 0;
    QString name;
    RecordId species = 0;
    std::optional<RecordId> supplier;
    std::optional<RecordId> order;
    Instant received;
    Measure measuredBy = Measure::Stack;
    SellUnit paidUnit = SellUnit::Cord; // on the invoice
    std::optional<Plain> paidCount;     // of those units; missing: not known
    std::optional<Volume> bundleVolume; // stacked, of one bundle paid for
    StackSizes stacks;
    std::optional<Volume> looseVolume;
    std::optional<Mass> weight; // as received
    std::optional<Money> price; // with delivery
    std::optional<Moisture> promisedMoisture;
    std::optional<Length> stickLength;
    std::optional<Length> splitThickness;
    std::optional<Mass> splitMass; // mean of those weighed, as is
    int splitsWeighed = 0;
    std::optional<Mass> splitSpread;        // standard deviation between those weighed
    std::optional<Instant> splitsWeighedAt; // missing: when the lot was received
    Cover cover = Cover::TopCover;
    QString origin;
    QString certificate;
    bool hold = false;
    QString holdReason;
    std::optional<RecordId> reservedFor; // the event it is kept for
    QString place;                       // where it is stacked
    QString note;
    QString typed;
};

enum class MeterBasis { DryBasis, WetBasis };
enum class Face { Fresh, Old, End };

// One session with a pin meter on one lot; one value a piece, kept as dry basis.
struct MoistureReading {
    RecordId id = 0;
    RecordId lot = 0;
    Instant time;
    MeterBasis basis = MeterBasis::DryBasis; // what the meter showed
    QString scale;                           // the meter's species setting
    std::optional<Temperature> woodTemperature;
    Face face = Face::Fresh;
    PieceMoistures pieces;
    QString note;
    QString typed;
};

// How the dry weight of a test is known: dried in an oven now, or a marked reference piece whose
// oven-dry weight is known from before and which is weighed again and again.
enum class DryWeight { Oven, Reference };

// A moisture by two weighings of one piece.
struct OvenTest {
    RecordId id = 0;
    RecordId lot = 0;
    Instant time;
    DryWeight method = DryWeight::Oven;
    QString piece; // mark of the reference piece
    Mass wet;
    Mass dry;
    QString note;
    QString typed;
};

enum class MovementKind { Received, Burned, Counted, Given, Sold, Lost };

// The ledger: stock is the sum of movements in oven-dry mass. Received adds, all others but a
// count take away (negative dry mass); a count carries the signed difference it found.
struct Movement {
    RecordId id = 0;
    RecordId lot = 0;
    Instant time;
    MovementKind kind = MovementKind::Received;
    Mass dryMass; // signed
    std::optional<int> pieces;
    std::optional<Mass> asIs;         // weight as handled, positive
    std::optional<Moisture> moisture; // used for the conversion
    std::optional<RecordId> cook;
    std::optional<RecordId> feed; // set by the feed that made it
    bool assumed = false;         // rests on an assumption (no moisture or weight known)
    QString note;
    QString typed;
};

} // namespace rickyard::domain
