// The life of a wood order: what may follow what, the day it should have come by, and the words
// that go to the supplier.
#pragma once

#include "models/domain/answers/headline.h"
#include "models/domain/outcome.h"
#include "models/domain/records/books.h"

#include <QDate>

#include <optional>

namespace rickyard::domain {

enum class OrderStep { Send, Promise, Ask, Receive, Cancel };

// Sent or promised: the wood is still to come.
bool orderIsOpen(const WoodOrder &order);
bool mayFollow(OrderState state, OrderStep step);
// The order after a step that happens on `day`: sending stamps the day ordered, asking the day last
// asked, receiving the day received. A promise is for `promised`, which takes the place of the day
// wished. Refused, in words, when the step does not follow or the days do not fit.
Outcome<WoodOrder> afterStep(const WoodOrder &order, OrderStep step, QDate day,
                             QDate promised = {});

// Stacked volume of so many units of that supplier. A pound has none of its own: it is that much
// wood at the moisture wished (else promised by the supplier, else the limit of dry). Missing when
// the unit's volume or the wood is not known.
std::optional<Volume> volumeOrdered(const Books &books, const WoodOrder &order);
// What the supplier asks for the order by their price a unit and their delivery; missing without a
// price a unit.
std::optional<Money> usualPrice(const Books &books, const WoodOrder &order);

// The day an open order should have come by; invalid for any other. A promise holds to its day.
// Without one it is the supplier's usual time after it was sent, or the day wished when that is
// later: nobody is late for having been asked to come soon.
struct OrderDue {
    QDate day;
    QString basis; // "promised for Sat 21 Nov", "sent Mon 2 Nov, usually 10 days"
};
OrderDue orderDue(const Books &books, const WoodOrder &order, const Wording &wording);

struct LateOrder {
    RecordId order = 0;
    qint64 days = 0; // late, at least 1
    OrderDue due;
    QString sentence; // "Post oak from Dry Creek is 4 days late: promised for Sat 21 Nov."
    QString asked;    // "asked today", "last asked 3 days ago", "not asked yet"
    bool askedToday = false;
};
std::optional<LateOrder> lateness(const Books &books, const WoodOrder &order, QDate today,
                                  const Wording &wording);
// All that are late and not yet on the books as a lot, the latest first.
QVector<LateOrder> lateOrders(const Books &books, QDate today, const Wording &wording);

// "2 half cords (64 ft³)": in the unit ordered, else in cords.
QString orderAmountWords(const Books &books, const WoodOrder &order, const Wording &wording);
// The order as plain text to be pasted into a message, signed with the yard's name.
QString orderMessage(const Books &books, const WoodOrder &order, const Wording &wording);

} // namespace rickyard::domain
