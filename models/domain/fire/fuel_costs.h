// What the fires cost and what they did for it: by pit, by event and by month, per cook, per hour
// and per pound of food. Wood is priced as its lot came in (wood/lot_price.h).
#pragma once

#include "models/domain/fire/fuel.h"

#include <QDate>

namespace rickyard::domain {

// Sums over finished cooks. Money only over those whose wood has a price, and then with the food,
// hours and cooks of the same: a figure per pound never mixes cooks with and without.
struct FireWork {
    RecordId pit = 0;   // of byPit
    RecordId event = 0; // of byEvent; 0: cooks of no event
    QDate month;        // of byMonth, its first day

    int cooks = 0;
    double hours = 0;
    Heat heat;              // burned
    Mass dry;               // wood burned
    Mass food;              // of cooks whose food was weighed
    Heat heatOfFood;        // burned by those
    double degreeHours = 0; // kelvin-hours, of cooks where they are known
    Heat heatOfDegreeHours; // burned by those
    double balance = 0;     // joules that pit and food had to get by the heat balance, of those

    int pricedCooks = 0;
    double cents = 0;
    Mass pricedFood; // of priced cooks whose food was weighed
    double centsOfFood = 0;

    // Work done over heat burned: the share that did not go up the stack. Needs known balances.
    [[nodiscard]] std::optional<double> efficiency() const;
    [[nodiscard]] std::optional<double> joulesPerDegreeHour() const;
    [[nodiscard]] std::optional<double> joulesPerHour() const;
    [[nodiscard]] std::optional<double> joulesPerFood() const; // a milligram
    [[nodiscard]] std::optional<double> centsPerCook() const;
    [[nodiscard]] std::optional<double> centsPerFood() const; // a milligram
};

// By id; newest event first, cooks of none last; newest month first.
QVector<FireWork> workByPit(const Books &books, const FuelAnswer &fuel);
QVector<FireWork> workByEvent(const Books &books, const FuelAnswer &fuel);
QVector<FireWork> workByMonth(const Books &books, const FuelAnswer &fuel);

} // namespace rickyard::domain
