// Small plans of the stock for tests, and what they come to.
#pragma once

#include "models/domain/plan/stock_paths.h"

#include <QtGlobal>

#include <cmath>
#include <limits>

namespace rickyard::test {

using namespace domain;

constexpr double kNeverDry = std::numeric_limits<double>::infinity();

inline StockNeed needOn(int day, int event, const Spread &heat, qint64 key)
{
    StockNeed need;
    need.day = day;
    need.event = event;
    need.heat = heat;
    need.key = key;
    return need;
}

inline StockLot lotOf(const Spread &heat, const Spread &ready, qint64 key)
{
    StockLot lot;
    lot.heat = heat;
    lot.readyDay = ready;
    lot.key = key;
    return lot;
}

inline StockOutcome outcomeOf(const StockPlan &plan, const WhatIf &whatIf = {}, quint64 seed = 1,
                              int paths = kStockPaths)
{
    const auto drawn = StockPaths::draw(plan, seed, paths);
    if (!drawn)
        qFatal("%s", qPrintable(drawn.message()));
    return drawn.value().run(whatIf);
}

inline double phi(double z)
{
    return 0.5 * std::erfc(-z * M_SQRT1_2);
}

inline bool within(double simulated, double exact, double error)
{
    const bool ok = std::abs(simulated - exact) <= 4.0 * error;
    if (!ok)
        qWarning("%.5f simulated, %.5f exact, error %.5f", simulated, exact, error);
    return ok;
}

// A plan with everything in it, for properties. Small whole numbers from `which`.
inline StockPlan variedPlan(int which)
{
    StockPlan plan;
    plan.days = 60 + 10 * (which % 3);
    plan.events = 5;
    for (int i = 0; i < 9; ++i) {
        StockNeed need = needOn((i * 7 + which * 3) % 55, i % 5,
                                Spread::lognormal(90 + 5 * (i % 4), 75, 130), i + 1);
        need.group = i % 2;
        need.shared = 0.3;
        plan.needs.push_back(need);
    }
    for (int i = 0; i < 6; ++i) {
        const double ready = (i * 11 + which * 5) % 50;
        StockLot lot = lotOf(Spread::normal(100, 12),
                             i % 3 == 0 ? Spread::fixed(0)
                                        : Spread::quantiles({{0.1, ready}, {0.9, ready + 25}}),
                             i + 1);
        lot.reservedFor = i == 2 ? which % 5 : -1;
        lot.held = i == 4;
        plan.lots.push_back(lot);
    }
    StockDelivery coming;
    coming.heat = Spread::studentT(120, 100, 130, 4);
    coming.arrivalDay = Spread::sample({{10, 2}, {14, 1}, {30, 1}});
    coming.never = 0.05;
    coming.key = 1;
    plan.deliveries.push_back(coming);
    StockOffer offer;
    offer.share = Spread::studentT(0.97, 0.88, 1.02, 5);
    offer.leadDays = Spread::sample({{7, 4}, {10, 2}, {28, 1}});
    offer.never = 0.03;
    offer.dryingDays = Spread::fixed(which % 2 == 0 ? 0 : 5);
    offer.key = 7;
    plan.offers.push_back(offer);
    plan.unplanned = {0.05, Spread::lognormal(30, 20, 45)};
    return plan;
}

} // namespace rickyard::test
