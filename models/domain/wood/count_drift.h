// A count of a rick against the books: what was counted as dry wood, how far off it may be, and
// why it may differ.
//
// The causes are weighed against each other by Bayes' rule: each says what difference it would make
// and how sure that is, and has a share beforehand. The differences come from the records (feeds
// and their gaps, how the delivery was measured, how many splits were weighed, how the wood has
// dried); the shares beforehand and the scatters named here are our own rule, no source.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

#include <optional>

namespace rickyard::domain {

enum class CountWay { Stack, Splits, Weight, Nothing };

// What a person found at one rick.
struct RickCount {
    RecordId lot = 0;
    CountWay way = CountWay::Stack;
    StackSizes stacks;            // of a Stack
    std::optional<qint64> splits; // of Splits
    std::optional<Mass> weight;   // of Weight, as it is
};

struct CountedWood {
    Mass dry;
    Mass error;                       // standard error of the count itself
    std::optional<Moisture> moisture; // reckoned with; missing when none was needed
    QString words;                    // what it rests on
};
// Refused in words: nothing entered, less than nothing, a lot that is gone.
Outcome<CountedWood> countedWood(const Books &books, const RickCount &count, Instant now);

// Standard errors of a count, our own rule: a stack by how close the splits lie (70 to 90 ft³ of
// wood in 128, delivery.h, taken as a triangle about 85), a weight by scale and moisture.
constexpr double kCountStackError = 0.05;
constexpr double kCountWeightError = 0.03;

enum class DriftCause {
    CountError,     // no more than counting leaves open
    FeedsNotLogged, // burned, not written down
    Delivery,       // less or more came than was booked
    SplitWeight,    // splits heavier or lighter than those weighed
    DriedOut,       // the moisture reckoned with is old
    TakenOrLost,    // taken, sold or lost without an entry
    PutThere,       // added without an entry
};

struct DriftClue {
    DriftCause cause = DriftCause::CountError;
    double share = 0; // of all causes, by our own rule; together 1
    QString words;    // a sentence that says what points to it, and what to do
};

struct CountDrift {
    Mass book;
    Mass counted;
    Mass error;               // of the count
    bool withinError = false; // no more than two standard errors of the count
    QVector<DriftClue> clues; // likeliest first; those under kLeastShare are left out

    [[nodiscard]] Mass drift() const { return counted - book; }
};
constexpr double kLeastShare = 0.07;

// `moistureNow`: what the forecast expects of the lot's moisture today, where there is one.
CountDrift countDrift(const Books &books, RecordId lot, const CountedWood &counted, CountWay way,
                      Instant now, std::optional<Moisture> moistureNow, const Wording &wording);
// "most likely", "may well be", "possible".
QString shareWord(double share);

} // namespace rickyard::domain
