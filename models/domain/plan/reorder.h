// Whether there is dry wood for every booked cook, and if not, what to order, from whom and by
// which day. The books become an OrderQuestion (order_question.h), the question is drawn 10,000
// times (order_plan.h), and here the figures become days, amounts and words.
#pragma once

#include "models/domain/plan/order_plan.h"
#include "models/domain/plan/planned_use.h"
#include "models/domain/plan/supply.h"
#include "models/domain/wood/seasoning.h"
#include "models/domain/wood/stock.h"

#include <memory>

namespace rickyard::domain {

// An event, or a cook that belongs to none, and its chance of running short of dry wood.
struct WoodRisk {
    RecordId event = 0;       // 0: a cook on its own
    RecordId plannedCook = 0; // the first cook of it still ahead
    QDate day;                // of that cook's lighting
    QString name;             // "Mill Field Supper", "the cook on Long Pit"
    double chance = 0;        // 0 to 1
    double error = 0;         // Monte Carlo standard error of the chance
    Heat meanShort;           // missing, over all paths
    Heat whenShort;           // missing, on average when it runs short
    // Too far off to be ordered for now (it takes wood, but starts no order), or of the next
    // season (judged by the green orders).
    bool farOff = false;
    bool nextSeason = false;
};

struct StockPoint {
    QDate day;
    Heat middle; // dry stock at the end of the day
    Heat lower;  // 5 %
    Heat upper;  // 95 %
};

struct WoodLoad {
    QDate order;
    int units = 0;
    bool straightToEvent = false; // the yard has no room for it before
};

struct WoodOrderChoice {
    int source = -1; // in WoodAnswer::sources
    RecordId supplier = 0;
    RecordId species = 0;
    bool green = false;
    int units = 0;
    QString amount;          // "2 half cords (64 ft³ each)"
    Volume stacked;          // of all units
    QVector<WoodLoad> loads; // more than one: split, because the yard has no room for all
    QDate orderBy;           // latest safe day; today when even that is late
    QDate arrival;           // likely
    bool keeps = false;      // ordered by that day it keeps every event at the accepted risk
    QVector<int> lost;       // in WoodAnswer::risks: it comes too late for these, and what
                             // follows leaves them aside
    RecordId worstEvent = 0; // the event most at risk then ...
    QString worst;           // ... in words, also for a cook on its own
    double chance = 0;       // of that event
    double chanceError = 0;
    double chanceToday = 0;             // ordered today instead
    double chanceLate = 0;              // it comes a week late on top
    std::optional<double> chanceColder; // every cook 20 °F colder
    std::optional<Money> cost;          // with delivery; missing without a price
};

// The textbook's reorder point beside the answer.
struct ReorderPointCheck {
    bool known = false;
    Heat point;           // order when the dry stock is under it
    double simulated = 0; // chance of running short over a lead time, by the supplier's own days
    bool misleading = false;
    QString words; // "312 seasoned lb: the dry stock is over it."
    QString note;  // why it misleads with these lead times; empty otherwise
};

struct WoodAnswer {
    Headline headline;
    Stock stock;
    QVector<PlannedUse> uses;
    QVector<WoodRisk> risks;      // by day; when nothing more is ordered
    RecordId firstShortEvent = 0; // first over the accepted risk; 0 also for a cook on its own
    RecordId firstShortCook = 0;  // its first cook ahead; 0: none is
    int worst = -1;               // in `risks`, of this season and not far off; -1: none
    bool needed = false;          // some event is over the accepted risk
    double acceptedRisk = 0.05;
    QVector<StockPoint> course;    // nothing more ordered: today to the last event judged, six
    QVector<StockPoint> withOrder; // weeks at least; and with the first of `orders`, else empty

    QVector<WoodSource> sources;
    QVector<WoodOrderChoice> orders;      // dry, one a source, best first; empty when not needed
    QVector<WoodOrderChoice> greenOrders; // likewise, for the next season
    ReorderPointCheck crossCheck;
    QStringList notes; // what was left out, cannot be done or does not fit, in sentences

    // The first of `orders`, flat.
    QDate orderBy; // invalid: nothing to order
    RecordId supplier = 0;
    RecordId species = 0;
    int units = 0;
    Volume amount; // stacked
    QString amountInUnit;
    Duration leadTime;
    Heat missing; // at the worst event, on average when it runs short

    // What drew it, for what-ifs; null when the books could not be drawn (the notes say why).
    std::shared_ptr<const OrderPlanner> planner;
    QDate today;
};

// Days, at most, to the order-by day from which the answer stands at Act.
constexpr int kActWithinDays = 7;
// The course is drawn this far at least.
constexpr int kCourseDays = 42;

struct WoodAnswerSettings {
    std::optional<double> acceptedRisk; // missing: the yard's
    std::optional<quint64> seed;        // missing: the yard's own, always the same
    int paths = kStockPaths;
    CancelCheck cancel; // once it says yes, the answer has its stock, uses and sources alone
};

WoodAnswer woodAnswer(const Books &books, const FuelAnswer &fuel,
                      const QMap<RecordId, SeasoningForecast> &seasoning, Instant now,
                      const Wording &wording, const WoodAnswerSettings &settings = {});
// From needs that are known already.
WoodAnswer woodAnswerFrom(const Books &books, const QVector<PlannedUse> &uses,
                          const FuelAnswer &fuel,
                          const QMap<RecordId, SeasoningForecast> &seasoning, Instant now,
                          const Wording &wording, const WoodAnswerSettings &settings = {});

// A what-if on the answer's own draw, so that differences are of the question and not of luck.
// About one run of the paths (12 ms for a large plan): put it on a thread while a slider moves. The
// answer may be copied into it.
struct WoodWhatIf {
    int source = -1; // in WoodAnswer::sources; -1: nothing is ordered
    int units = 0;
    QDate orderDay;                     // before today counts as today
    int daysLate = 0;                   // on top of what is drawn
    double colderKelvin = 0;            // every cook; below 0: milder
    std::optional<double> acceptedRisk; // missing: the answer's
    bool advise = false; // also what to order at that accepted risk: some twenty runs a source
};

struct WoodWhatIfAnswer {
    bool cancelled = false;     // nothing else is filled in then
    QVector<WoodRisk> risks;    // as in the answer
    int worst = -1;             // in `risks`, of those the source is judged by
    bool keeps = false;         // that one is at or under the accepted risk
    QVector<StockPoint> course; // fan, as many days as the answer's
    QDate arrival;              // likely; invalid when nothing is ordered
    std::optional<Money> cost;
    QVector<WoodOrderChoice> orders; // when advice was asked for
};

WoodWhatIfAnswer woodWhatIf(const WoodAnswer &answer, const WoodWhatIf &ask, const Wording &wording,
                            const CancelCheck &cancel = {});

// A chance to the digits that another seed would show too: "38 %", "0.4 %", "under 0.2 %",
// "over 99 %". `error`: its standard error; without one that of kStockPaths paths is taken.
QString chanceWords(double chance, std::optional<double> error, const Wording &wording);

} // namespace rickyard::domain
