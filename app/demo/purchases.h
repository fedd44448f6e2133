// Which wood the crew bought, from whom and when: planned backwards from what the cooks took, so
// that each rick is there before it is needed and a known amount is left at the end.
#pragma once

#include "app/demo/draft.h"

namespace rickyard::app::demo {

struct Purchase {
    RecordId supplier = 0; // 0: there when the books began
    RecordId species = 0;
    double paidCords = 0;
    double measuredCords = 0;
    double promised = 20; // per cent, dry basis, like the next two
    double arrived = 18;
    double settles = 18; // where its moisture goes while it stands
    Instant received;
};

// Oven-dry kilograms of a stacked cord, and of wood that gives that net heat.
double dryKilogramsPerCord(const domain::Species &species, double percent);
double dryKilogramsFor(double joules);

// In the order in which they are burned: what was there, the deliveries, the short one last; then
// the wet one, which is not burned.
QVector<Purchase> planPurchases(Draft &draft, Dice &dice, double keepKilograms);
// Dry wood to be left at the end: enough for three of the coming events and a part of the fourth.
double kilogramsToKeep(const Draft &draft);

// Writes the orders, lots and readings of the purchases; lot ids are 1, 2, ... in their order.
void writePurchases(Draft &draft, Dice dice, const QVector<Purchase> &purchases);

} // namespace rickyard::app::demo
