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
    int nextSeason = INT_MAX;   // first day of the next season
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
    int units = 0;
    std::vector<OrderLoad> loads; // more than one: split, because the yard has no room for all
    bool keeps = false;           // the accepted risk is kept when it is ordered by `orderBy`
    int orderBy = 0;              // latest safe day; today (0) when even that is late
    EventRisk risk;               // of the event most at risk when ordered on that day
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
    bool needed = false;            // dry wood must be ordered to keep the accepted risk
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
    [[nodiscard]] Worst worst(const StockOutcome &outcome, bool green) const;
    // The risk when that much is ordered of an offer on a day.
    [[nodiscard]] Worst riskIf(size_t offer, int units, int day, double lateBy = 0) const;
    // Smallest number of units, ordered on the day, that keeps the risk at half of what is accepted
    // (the other half is for lateness); where half cannot be had, what is accepted; where that
    // cannot either, what more wood would not better by a tenth of it.
    [[nodiscard]] int unitsFor(size_t offer, int day) const;
    // Largest day on which ordering so much keeps the risk, by bisection; -1 when today does not.
    [[nodiscard]] int latestDay(size_t offer, int units) const;
    // Units for which there is room when they arrive, on average.
    [[nodiscard]] int unitsThatFit(size_t offer, int day) const;
    [[nodiscard]] OrderChoice choice(size_t offer) const;
    [[nodiscard]] const StockPaths &paths() const { return m_paths; }

private:
    OrderPlanner(OrderQuestion question, StockPaths paths);
    [[nodiscard]] StockOutcome run(const std::vector<PlacedOrder> &orders, bool course = false,
                                   bool colder = false) const;
    [[nodiscard]] std::vector<PlacedOrder> placed(const OrderChoice &choice, double lateBy) const;
    [[nodiscard]] double enoughHeat(bool green) const;
    [[nodiscard]] int roomFor(size_t offer, int day, const StockOutcome &outcome) const;
    [[nodiscard]] std::vector<OrderLoad> split(size_t offer, int units) const;
    void judge(OrderChoice &choice) const;
    [[nodiscard]] std::vector<OrderChoice> choices(bool green, const CancelCheck &cancel) const;
    [[nodiscard]] QStringList inputNotes() const;
    void addRoomNotes(OrderAnswer &answer) const;
    [[nodiscard]] QString eventName(int event) const;

    OrderQuestion m_question;
    StockPaths m_paths;
    std::vector<bool> m_nextSeason;    // by event
    int m_lastDay = 0;                 // of the needs looked at
    std::vector<PlacedOrder> m_before; // ordered anyway: the dry choice, while green is looked at
    StockOutcome m_nothing;            // with the course
};

} // namespace rickyard::domain
