// The classic closed forms of stock keeping. They take demand as normal and steady and the lead
// time as one number or a normal one; a cross-check of the simulated paths, never the answer where
// loads come late in lumps. Sources: Snyder and Shen, Fundamentals of Supply Chain Theory, chapters
// 3 to 5; Hadley and Whitin 1963 (from memory); the tests name the worked examples.
#pragma once

#include "models/domain/plan/stock_paths.h"
#include "models/domain/statistics/answer.h"

#include <QString>

namespace rickyard::domain {

// Standard normal loss, E[(Z - z)+] = phi(z) - z (1 - Phi(z)).
double normalLoss(double z);
// Second loss, E[((Z - z)+)^2] / 2 = ((z^2 + 1)(1 - Phi(z)) - z phi(z)) / 2.
double normalSecondLoss(double z);
// Mean of what N(mean, sd) asks beyond a stock, and of what is left of it.
double meanShortOf(double stock, double mean, double sd);
double meanLeftOf(double stock, double mean, double sd);

// Economic order quantity, sqrt(2 K rate / h): `orderCost` K an order, `holdingCost` h a unit and
// time, `rate` units a time. Refused unless all are above 0.
statistics::Answer<double> economicOrderQuantity(double orderCost, double holdingCost, double rate);
// K rate / Q + h Q / 2, a time.
double orderingAndHoldingCost(double quantity, double orderCost, double holdingCost, double rate);

// The stock for one selling of N(mean, sd) that costs least: the quantile at p / (p + h). Over a
// lead time and review of n periods it is the base stock with mean n mu and sd sqrt(n) sigma.
// Refused unless sd, h (a unit left) and p (a unit missing) are above 0.
statistics::Answer<double> newsvendorStock(double mean, double sd, double leftCost,
                                           double missingCost);
double newsvendorCost(double stock, double mean, double sd, double leftCost, double missingCost);

// Demand a day and lead time in days, each with its standard deviation.
struct LeadDemand {
    double daily = 0;
    double dailySd = 0;
    double lead = 0;
    double leadSd = 0;

    [[nodiscard]] double mean() const { return daily * lead; }
    // sqrt(L sigma_d^2 + d^2 sigma_L^2).
    [[nodiscard]] double sd() const;
};
// Mean of the demand over the lead time plus z standard deviations, z the normal quantile of 1 -
// risk. Refused: a risk not inside (0, 1), a negative or missing number.
statistics::Answer<double> reorderPoint(const LeadDemand &demand, double risk);

// The point set against the paths: the chance that the demand over a lead time drawn from `lead`
// (days; infinite counts as short) exceeds it.
struct PointCheck {
    double point = 0;
    double nominal = 0;      // risk that the formula promises
    double simulated = 0;    // over the supplier's real lead times
    double error = 0;        // Monte Carlo
    bool misleading = false; // off by more than a quarter of the nominal risk and four errors
    QString note;            // in words; empty when the two agree
};
// Daily demand is normal; the lead time's mean and sd are taken from the drawn ones.
// `never`: chance that the load does not come at all; it is in the simulation alone, as the
// formula has no place for it. Refused as reorderPoint; also when every load never comes.
statistics::Answer<PointCheck> checkReorderPoint(double daily, double dailySd, const Spread &lead,
                                                 double never, double risk, quint64 seed,
                                                 int paths = kStockPaths);

} // namespace rickyard::domain
