// The wood of one cook, measured up to three ways: a tally of splits, a crate weighed before and
// after, and the stack at the pit by difference. Each way has its own error; together they say more
// than any of them, and whether they agree.
//
// The reconciled figure is the mean weighted by one over the squared error; whether the ways agree
// is the chi-square of their deviations from it on one degree of freedom less than there are ways
// (least squares of one quantity measured several ways: any textbook of errors; the JCGM 100 guide
// to uncertainty, from memory). Moisture is taken alike for all ways, so its error is left out: it
// does not tell between them.
#pragma once

#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

// Standard errors, common practice, no source.
constexpr double kMiscount = 0.02;     // of a tally at night
constexpr double kFeedScale = 0.01;    // of a feed that was weighed
constexpr double kSplitScatter = 0.25; // of single splits, where it was not measured
constexpr double kCrateScale = 0.3;    // kilograms, of each weighing
constexpr double kStackMeasure = 0.03; // of each measuring of a stack
constexpr double kStackFill = 0.08;    // of the share of a stack that is wood
constexpr double kTooFarApart = 0.01;  // chance under which the ways are said not to agree

enum class WoodWay { Tally, Crate, Stack };

struct WoodEstimate {
    WoodWay way = WoodWay::Tally;
    Mass dry;
    Mass error;    // standard error
    QString words; // "42 splits and 3 weighed feeds"
};

struct WoodReckoning {
    QVector<WoodEstimate> ways; // those that were measured
    std::optional<Mass> dry;    // of all of them together; missing when none was measured
    Mass error;                 // standard error
    double agreement = 1;       // chance of ways this far apart by their errors alone
    Mass booked;                // burned by the ledger
    QStringList problems;       // what could not be used, in words

    [[nodiscard]] bool agree() const { return agreement >= kTooFarApart; }
    [[nodiscard]] Mass difference() const { return dry.value_or(booked) - booked; }
};
WoodReckoning woodReckoning(const Books &books, const Cook &cook);

// The ledger entries that bring what is booked to the reckoned figure: on the lot of the crate or
// stack, else on the lots fed, by their shares. Empty when nothing is to be moved or no lot is
// known.
QVector<Movement> trueUpOf(const Books &books, const Cook &cook, const WoodReckoning &reckoning,
                           Instant at);

} // namespace rickyard::domain
