// The wood answer in words: its sentence, its figure and its reasons.
#pragma once

#include "models/domain/plan/reorder.h"
#include "models/domain/plan/supply.h"

namespace rickyard::domain {

// What the answer was made from, beside the answer itself.
struct WoodGrounds {
    QDate today;
    QVector<OnTheWay> coming;
    Heat needMiddle; // of all booked cooks
    Heat needLower;
    Heat needUpper;
    std::optional<Purchase> purchase; // chosen; missing when nothing is to be ordered
};

Headline woodHeadline(const Books &books, const WoodAnswer &answer, const WoodGrounds &grounds,
                      const Wording &wording);
// The same answer's reasons; part of the headline.
QVector<Reason> woodReasons(const Books &books, const WoodAnswer &answer,
                            const WoodGrounds &grounds, const Wording &wording);

} // namespace rickyard::domain
