// How a supplier keeps to a day, and what that leads one to expect of the next load.
#pragma once

#include "models/domain/plan/spread.h"

#include <QString>

#include <vector>

namespace rickyard::domain {

struct LeadRecord {
    std::vector<double> daysLate; // one a delivery, against the day promised or their usual time
    int neverCame = 0;            // orders that were never delivered
};

struct Lateness {
    Spread days;      // on top of what is promised
    double never = 0; // chance that the load does not come
    int orders = 0;   // it rests on; 0: the default alone
    QString basis;    // in words
};

// The default counts as two orders. Its lateness (common practice, no source, and wide on purpose):
// on the day half the time, then 2, 5, 10, 21 and 42 days late, and three in a hundred never come.
constexpr double kDefaultOrders = 2.0;
constexpr double kDefaultNever = 0.03;

// The next order's lateness is drawn from the record and the default mixed in proportion to their
// number: the predictive distribution of a Dirichlet process (Ferguson 1973, Annals of Statistics
// 1:209; from memory). So a supplier without history has the default, stated in `basis`, and a
// long record speaks for itself.
Lateness latenessOf(const LeadRecord &record);

// The day on which an open order arrives, given that it has not come before today (day 0): what the
// record says of delays that long. An order later than anything on record counts as lost.
struct ExpectedArrival {
    Spread day;
    double never = 0;
};
ExpectedArrival arrivalOf(const LeadRecord &record, double promisedDay);

// Lead time of a new order: the promised days plus the lateness.
Spread leadDays(const LeadRecord &record, double promisedDays);

} // namespace rickyard::domain
