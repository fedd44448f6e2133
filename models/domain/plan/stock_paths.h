// The stock of dry wood drawn forward many times over: every planned cook takes what it happens to
// need from the ricks that happen to be dry by then, in burn-first order, and what it does not find
// is a shortage of its event. Monte Carlo on plain arrays; nothing here knows the books.
//
// Days count from today, which is 0. Heat is in any one unit. Whatever is drawn hangs on the seed
// and on the key of its record alone, never on the rest of the plan: what-ifs of one draw (an
// order more, a day later, colder) meet the very same luck, so their differences are smooth.
#pragma once

#include "models/domain/outcome.h"
#include "models/domain/plan/spread.h"

#include <functional>
#include <limits>
#include <vector>

namespace rickyard::domain {

struct StockNeed {
    int day = 0;    // of lighting; before today: over, left out
    int event = -1; // index of its event; -1: none
    Spread heat;
    qint64 key = 0; // the record's id
    // Cooks of a group (a pit: the error of its norm) and cooks of a spell (one stretch of weather)
    // go astray together: these shares of the variance of the normal score are common to all of
    // them, together 1 at most. -1: none.
    int group = -1;
    double shared = 0;
    int spell = -1;
    double spellShared = 0;
};

// In burn-first order.
struct StockLot {
    Spread heat;          // below 0 counts as 0
    Spread readyDay;      // dry from this day on; infinite: never
    bool held = false;    // stands there and is not burned
    int reservedFor = -1; // index of the event that alone may burn it
    qint64 key = 0;
};

// An open order. A load comes in the day, a fire is lit before dawn: wood that comes on a day
// serves the fires of the days after it.
struct StockDelivery {
    Spread heat;
    Spread arrivalDay; // before today counts as today
    double never = 0;  // chance that it does not come at all
    Spread dryingDays; // from arrival until dry
    int reservedFor = -1;
    qint64 key = 0;
};

// What a supplier's next load is like.
struct StockOffer {
    Spread share = Spread::fixed(1); // of the heat ordered that comes
    Spread leadDays;                 // from the order to the load
    double never = 0;
    Spread dryingDays;
    // A load that has not come by so many days after its order is ordered once more, on luck of its
    // own; both may come. Infinite: the crew just waits.
    double againAfter = std::numeric_limits<double>::infinity();
    bool againWhenWet = false; // also on the day it comes, when it has to dry first
    qint64 key = 0;
};

struct StockUnplanned {
    double chance = 0; // of such a fire on any one day
    Spread heat;
};

struct StockPlan {
    int days = 0;   // looked ahead; needs from `days` on are left out
    int events = 0; // how many indices there are
    std::vector<StockNeed> needs;
    std::vector<StockLot> lots;
    std::vector<StockDelivery> deliveries;
    std::vector<StockOffer> offers;
    StockUnplanned unplanned;
};

struct PlacedOrder {
    size_t offer = 0;
    int day = 0;
    double heat = 0;   // ordered
    double lateBy = 0; // days on top of what is drawn
    int load = 0;      // loads of one supplier with different numbers have luck of their own
};

struct WhatIf {
    std::vector<PlacedOrder> orders;
    std::vector<double> needFactor; // one a need; empty: all 1
    double unplannedFactor = 1;
    bool course = false; // fan and means by day are wanted
};

struct EventRisk {
    bool judged = false;       // has a need within the days looked at
    double chance = 0;         // of running short of dry wood at it
    double error = 0;          // Monte Carlo standard error of the chance
    double meanShort = 0;      // heat missing, over all paths
    double shortWhenShort = 0; // heat missing in the paths that run short; 0 without any
};

// Dry wood at the end of a day: 5 %, the middle, 95 %; to a two-thousandth of the most there is.
struct StockBand {
    double lower = 0;
    double middle = 0;
    double upper = 0;
};

struct StockOutcome {
    bool cancelled = false; // nothing else is filled in then
    int paths = 0;
    std::vector<EventRisk> events;
    std::vector<double> needChance; // of running short at each need
    EventRisk unplanned;            // any unplanned fire short
    EventRisk any;                  // any event short; heat: of all events together
    std::vector<double> lotLeft;    // mean at the end, one a lot
    double allLeft = 0;             // likewise, lots not held and deliveries together
    std::vector<StockBand> course;  // only when asked for, one a day
    std::vector<double> meanDry;    // likewise
    std::vector<double> meanOnYard; // likewise: dry, wet and held together

    // The event most at risk; -1 without any.
    [[nodiscard]] int worstEvent() const;
    [[nodiscard]] double worstChance() const; // 0 without any
};

using CancelCheck = std::function<bool()>;

constexpr int kStockPaths = 10000;
constexpr int kMostStockDays = 1500;

class StockPaths
{
public:
    // Refused: a missing number, an index or a chance out of range, fewer than 100 paths.
    static Outcome<StockPaths> draw(StockPlan plan, quint64 seed, int paths = kStockPaths);

    // Linear in paths and in days + cooks x lots; most of it is skipped where lots are used up, not
    // yet dry, or not needed.
    [[nodiscard]] StockOutcome run(const WhatIf &whatIf, const CancelCheck &cancel = {}) const;

    [[nodiscard]] const StockPlan &plan() const { return m_plan; }
    [[nodiscard]] int paths() const { return m_paths; }

private:
    // One number a path, padded to whole blocks.
    using Row = std::vector<double>;
    struct Source {
        Row heat;
        Row ready;   // usable by the fires of this day and later
        Row arrival; // stands on the yard from the end of this day
        int reservedFor = -1;
    };

    StockPaths() = default;
    void drawNeeds();
    void drawUnplanned();
    void drawSources();
    void drawOrder(const PlacedOrder &order, std::vector<Source> &sources) const;
    [[nodiscard]] Source arriving(DrawStream &stream, const Spread &amount, double times,
                                  const Spread &day, double plus, double never,
                                  const Spread &drying) const;

    friend class StockRun;

    StockPlan m_plan;
    quint64 m_seed = 0;
    int m_paths = 0;
    qsizetype m_padded = 0;
    std::vector<size_t> m_order; // needs looked at, by day
    std::vector<Row> m_needs;    // one a need; empty when left out
    // Unplanned fires path by path, each path's by day: those of path i from m_firstFire[i] up to
    // m_firstFire[i + 1]. Empty when their chance is 0.
    std::vector<size_t> m_firstFire;
    std::vector<int> m_fireDay;
    Row m_fireHeat;
    std::vector<Source> m_lots;    // one a lot, held ones too
    std::vector<Source> m_comings; // one a delivery
};

// A chance to the step that its error allows: of 0.1, 0.2, 0.5, 1, 2, 5 % ... the smallest that is
// at least four standard errors, so that another seed says the same or its neighbour.
double shownStep(double error);
double shownChance(const EventRisk &risk);

} // namespace rickyard::domain
