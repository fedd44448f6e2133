// What to order, how much, from whom and by which day, from the paths of the stock: the latest safe
// order day and the smallest amount that keep every event's chance of running short under the
// accepted risk. All what-ifs run on one draw.
#pragma once

#include "models/domain/plan/stock_paths.h"

#include <QStringList>

#include <climits>
#include <optional>

namespace rickyard::domain {

// What one supplier sells. Heat in the unit of the plan.
struct OfferTerms {
    QString supplier;
    StockOffer load;
    // Green wood is judged by the events of the next season alone, dry wood by those before it.
    bool green = false;
    double unitHeat = 0; // net heat of one unit as sold, once dry
    double unitRoom = 0; // what one unit takes of the storage
    int mostUnits = 0;   // in one load; 0: no limit
    std::optional<double> unitPrice;
    double deliveryPrice = 0; // a load
    bool leadAssumed = false; // no history: the lead time is a default
};

struct OrderQuestion {
    StockPlan plan; // `offers` is filled in from here
    QStringList eventNames;
    QStringList lotNames;
    std::vector<OfferTerms> offers;
    double acceptedRisk = 0.05; // for each event
    // Room that the yard has for wood, and what a unit of heat on the ricks takes of it (any one
    // measure, that of unitRoom).
    double storage = std::numeric_limits<double>::infinity();
    double roomPerHeat = 1;
    int nextSeason = INT_MAX; // first day of the next season
    // Events before it that start on this day or later take wood but are too far off to be ordered
    // for now.
    int judgedUntil = INT_MAX;
    double lateDays = 7;        // of the what-if "it comes late"
    std::vector<double> colder; // factor of each need in the what-if "colder"; empty: not asked
    quint64 seed = 1;
    int paths = kStockPaths;
};

struct OrderLoad {
    int day = 0; // of the order
    int units = 0;
    bool straightToEvent = false; // the yard has no room for it before
};

struct OrderChoice {
    size_t offer = 0;
    int units = 0;                // 0: an order is of no use
    std::vector<OrderLoad> loads; // more than one: split, because the yard has no room for all
    bool keeps = false;           // the accepted risk is kept when it is ordered by `orderBy`
    int orderBy = 0;              // latest safe day; today (0) when even that is late
    // Events at risk that it comes too late for; the risks below leave them aside.
    std::vector<int> lost;
    EventRisk risk; // of the event most at risk when ordered on that day
    int worstEvent = -1;
    double riskToday = 0; // the same when ordered today
    double riskLate = 0;  // when it then comes `lateDays` late
    std::optional<double> riskColder;
    std::optional<double> cost;
    double arrivesLikely = 0; // day, middle of the lead time
};

struct OrderAnswer {
    bool cancelled = false;         // nothing else is filled in then
    StockOutcome nothing;           // nothing more is ordered; with the course
    EventRisk nothingRisk;          // of the event most at risk this season
    int nothingWorst = -1;          // that event
    bool needed = false;            // an event of this season is over the accepted risk
    bool greenNeeded = false;       // wood for the next season must be
    std::vector<OrderChoice> dry;   // one an offer, best first; none when not needed
    std::vector<OrderChoice> green; // likewise
    StockOutcome with;              // the best dry choice as proposed, with the course
    QStringList notes;              // what was left out, assumed or cannot be done, in words
};

// Holds the draw; each question is a run on it.
class OrderPlanner
{
public:
    // Refused as StockPaths::draw; also an offer without heat and a risk not inside (0, 1).
    static Outcome<OrderPlanner> start(OrderQuestion question);

    [[nodiscard]] OrderAnswer answer(const CancelCheck &cancel = {}) const;

    // Its parts. The event most at risk among those an offer is judged by.
    struct Worst {
        EventRisk risk;
        int event = -1;
    };
    [[nodiscard]] Worst worst(const StockOutcome &outcome, bool green,
                              const std::vector<int> &leftAside = {}) const;
    // The risk when that much is ordered of an offer on a day.
    [[nodiscard]] Worst riskIf(size_t offer, int units, int day, double lateBy = 0) const;

    // What an order of that offer can still do for each event. A `Saved` event is kept under the
    // accepted risk by an ample order today; for a `Helped` one it is too late for that, but such
    // an order at least halves its risk; the others an order does nothing for worth its price, be
    // it that they are safe anyway or that they are lost to it. Without this line every morning of
    // a shortage would propose one more load that will most likely come too late.
    enum class Use { None, Saved, Helped };
    struct Goal {
        std::vector<Use> use;         // by event
        std::vector<bool> judged;     // likewise: this offer is judged by it
        std::vector<double> forUnits; // chance allowed to an event when the amount is sized
        int enough = 1;               // units of an ample order
        bool useful = false;          // some event over the accepted risk is saved or helped
        bool late = false;            // some event is only helped
    };
    [[nodiscard]] Goal goalOf(size_t offer) const;
    // Events over the accepted risk that such an order neither saves nor helps.
    [[nodiscard]] std::vector<int> lostTo(const Goal &goal) const;
    // Smallest number of units, ordered today, that keeps every saved event at half of the accepted
    // risk (the other half is for lateness), or at all of it where half cannot be had, and gives
    // the helped ones nine tenths of what can be done.
    [[nodiscard]] int unitsFor(size_t offer, const Goal &goal) const;
    // Largest day on which ordering so much keeps the saved events, by bisection; -1 when today
    // does not.
    [[nodiscard]] int latestDay(size_t offer, int units, const Goal &goal) const;
    // Units for which there is room when they arrive, on average.
    [[nodiscard]] int unitsThatFit(size_t offer, int day) const;
    [[nodiscard]] OrderChoice choice(size_t offer) const;
    // What happens when nothing more is ordered; with the course when the storage is limited.
    [[nodiscard]] const StockOutcome &nothing() const { return m_nothing; }
    [[nodiscard]] const StockPaths &paths() const { return m_paths; }
    [[nodiscard]] const OrderQuestion &question() const { return m_question; }
    // Of an event: not yet to be ordered for, of the next season.
    [[nodiscard]] bool isFarOff(int event) const { return m_when.at(size_t(event)) == When::Far; }
    [[nodiscard]] bool isNextSeason(int event) const
    {
        return m_when.at(size_t(event)) == When::Next;
    }
    // The same draw under another accepted risk, inside (0, 1).
    [[nodiscard]] OrderPlanner withRisk(double acceptedRisk) const;

private:
    OrderPlanner(OrderQuestion question, StockPaths paths);
    [[nodiscard]] StockOutcome run(const std::vector<PlacedOrder> &orders, bool course = false,
                                   bool colder = false) const;
    [[nodiscard]] std::vector<PlacedOrder> placed(const OrderChoice &choice, double lateBy) const;
    [[nodiscard]] StockOutcome outcomeIf(size_t offer, int units, int day) const;
    [[nodiscard]] bool judges(bool green, size_t event) const
    {
        return m_when[event] == (green ? When::Next : When::Now);
    }
    [[nodiscard]] double enoughHeat(bool green) const;
    [[nodiscard]] int roomFor(size_t offer, int day, const StockOutcome &outcome) const;
    [[nodiscard]] std::vector<OrderLoad> split(size_t offer, int units) const;
    void judge(OrderChoice &choice) const;
    [[nodiscard]] std::vector<OrderChoice> choices(bool green, const CancelCheck &cancel) const;
    [[nodiscard]] QStringList inputNotes() const;
    void addRoomNotes(OrderAnswer &answer) const;
    void addTooLate(OrderAnswer &answer) const;
    [[nodiscard]] QString eventName(int event) const;

    OrderQuestion m_question;
    StockPaths m_paths;
    enum class When { Now, Far, Next };
    std::vector<When> m_when;          // by event
    int m_lastDay = 0;                 // of the needs looked at
    std::vector<PlacedOrder> m_before; // ordered anyway: the dry choice, while green is looked at
    StockOutcome m_nothing;            // see nothing()
};

} // namespace rickyard::domain
