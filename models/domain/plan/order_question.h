// How the books become the question of what to order: needs, lots, open orders and suppliers as
// spreads, with every stand-in named. Heat in seasoned pounds, room in stacked cubic feet, days
// from today.
#pragma once

#include "models/domain/plan/order_plan.h"
#include "models/domain/plan/planned_use.h"
#include "models/domain/plan/supply.h"
#include "models/domain/wood/seasoning.h"
#include "models/domain/wood/stock.h"

namespace rickyard::domain {

// What the question is asked from.
struct QuestionGrounds {
    const Books &books;
    const QVector<PlannedUse> &uses; // by lighting time
    const FuelAnswer &fuel;
    const QMap<RecordId, SeasoningForecast> &seasoning;
    const Stock &stock;
    Instant now;
    const Wording &wording;
};

// An event with the cooks still ahead of it, or a cook on its own.
struct AskedEvent {
    RecordId event = 0;       // 0: a cook on its own
    RecordId plannedCook = 0; // its first cook ahead
    QDate day;                // of that cook's lighting
    QString name;             // "Mill Field Supper", "the cook on Long Pit"
};

struct BookQuestion {
    OrderQuestion question;
    QDate today;
    QVector<AskedEvent> events;  // by the question's index: by day
    QVector<WoodSource> sources; // by the index of its offers
    QVector<RecordId> lots;      // by the index of its lots
    double dailyNeed = 0;        // seasoned pounds over the days judged, unplanned fires included
    double dailyNeedSd = 0;      // from day to day
    QVector<Reason> reasons;     // what the figures rest on
    QStringList notes;           // what was left out or cannot be, in sentences
};

// An order is to serve the events of so many days after the slowest supplier's usual lead time;
// events beyond take wood but start no order yet.
constexpr int kServedDays = 42;
// Further ahead nothing is looked at.
constexpr int kMostDaysAhead = 730;

BookQuestion orderQuestion(const QuestionGrounds &grounds, double acceptedRisk);

// How well what is left of a lot is known: standard error of its dry mass. The last count or the
// delivery by how it was measured; what was burned since by how splits were weighed; a part in a
// hundred a month for what goes unbooked.
Mass errorOfLot(const Books &books, const Lot &lot, Mass left, Instant now);

// The distribution of a cook's need, its weather included: lognormal. And which parts of the
// variance of its logarithm it shares: with the cooks of its pit, with those in the same weather.
struct NeedSpread {
    Spread heat;
    double ofPit = 0;
    double ofWeather = 0;
};
NeedSpread needSpread(const PlannedUse &use);

// A fire nobody planned: chance a day and size, from the log.
struct UnplannedFires {
    StockUnplanned fires;
    int count = 0;
    int days = 0; // looked back over; 0: the log does not tell planned from unplanned
};
UnplannedFires unplannedFires(const Books &books, const FuelAnswer &fuel, Instant now);

} // namespace rickyard::domain
