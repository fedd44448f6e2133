// Which past cook was most like one: "what did we do last time, in this weather, on this pit, with
// this much meat?"
//
// A plain distance. Each thing that is asked for adds its own difference, in units that a cook
// would call one step: another pit; a quarter longer or shorter; 10 °F (5.6 K) warmer or colder;
// half as much meat again. What is asked for and not known of the past cook counts one step. The
// distance is the root of the sum of the squares. The steps are our own, without a source.
#pragma once

#include "models/domain/fire/fuel.h"

namespace rickyard::domain {

// Only what is given is looked at.
struct CookWish {
    std::optional<RecordId> pit;
    std::optional<Duration> length; // lighting to fire out
    std::optional<Temperature> outside;
    std::optional<Mass> food; // zero: none at all

    [[nodiscard]] bool empty() const { return !pit && !length && !outside && !food; }
};
// A cook asks for what it was itself. Length only when it is finished.
CookWish wishOf(const Cook &cook, const CookFuel &fuel);

struct CookLikeness {
    RecordId cook = 0;
    double distance = 0; // steps; 0: alike in all that was asked for
};

// The `most` finished cooks nearest to the wish, nearest first, of two equally near the later one
// first; without the cook `except`. Nothing is asked, nothing is found.
QVector<CookLikeness> mostLike(const Books &books, const QVector<CookFuel> &cooks,
                               const CookWish &wish, RecordId except = 0, int most = 3);

} // namespace rickyard::domain
