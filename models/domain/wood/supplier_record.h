// How a supplier kept to their word: short deliveries, wet wood, late days; and what that leads one
// to expect of their next load.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// A few figures of one kind, one a delivery.
struct Tally {
    int count = 0;
    double mean = 0;    // 0 without any
    double squares = 0; // sum of squared differences from the mean
    double worst = 0;   // the largest; 0 without any

    [[nodiscard]] std::optional<double> sd() const; // missing with fewer than two
};
Tally tallyOf(const QVector<double> &values);

struct SupplierRecord {
    RecordId supplier = 0;
    int deliveries = 0;
    int shortDeliveries = 0; // by more than the check of a delivery lets pass
    Tally shortBy;           // fraction of what was paid for; negative: more came
    Tally wetPoints;         // moisture less promise, in points of dry basis; negative: drier
    Tally daysLate;          // 0 when on the day or before it

    [[nodiscard]] bool empty() const { return deliveries == 0 && daysLate.count == 0; }
};

// A reading tells of the wood that came when it was taken within this time; later it has dried.
constexpr qint64 kReadingOfDeliveryDays = 14;

// Amounts that were measured against what was paid for, readings of fresh faces within
// kReadingOfDeliveryDays against the promise, days of arrival (of the order, else of its lot)
// against the day promised.
SupplierRecord supplierRecord(const Books &books, RecordId supplier, const Wording &wording);

// What the next delivery will be like: a Student t about `mean`.
struct Expectation {
    double mean = 0;
    double scale = 0;
    double degreesOfFreedom = 0;
    int deliveries = 0; // it rests on; 0: the default alone
};

// The scatter taken when nothing is known of a supplier (common practice, no source): 6 % of the
// amount and 5 points of moisture from delivery to delivery. The default expects what was promised.
constexpr double kDefaultShortScatter = 0.06;
constexpr double kDefaultWetScatter = 5.0;

// Normal-inverse-gamma updating from a prior mean of 0 that counts as one delivery and a prior
// scatter that counts as four (Gelman et al., Bayesian Data Analysis, section 3.3: from memory):
//   mean = n x / (n + 1), nu = 4 + n, s^2 = (4 s0^2 + S + n x^2 / (n + 1)) / nu,
//   scale^2 = s^2 (1 + 1 / (n + 1)).
// With no delivery it is the wide default: scale s0 sqrt 2 with 4 degrees of freedom.
Expectation expectationOf(const Tally &tally, double defaultScatter);
Expectation expectedShort(const SupplierRecord &record);
Expectation expectedWetPoints(const SupplierRecord &record);

// Each in a sentence part: "2 of 5 short, 7 % short on average"; without history it says so and
// names the default.
QString shortWords(const SupplierRecord &record, const Wording &wording);
QString wetWords(const SupplierRecord &record, const Wording &wording);
QString lateWords(const SupplierRecord &record, const Wording &wording);
// All three.
QString supplierRecordWords(const SupplierRecord &record, const Wording &wording);

} // namespace rickyard::domain
