#include "models/domain/plan/order_supply.h"

#include "models/domain/answers/wording.h"
#include "models/domain/fire/wood_measure.h"
#include "models/domain/plan/order_life.h"
#include "models/domain/wood/burn_first.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/sale.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr double kNotWithin = std::numeric_limits<double>::infinity();
// Standard errors of a delivery that was not stacked (common practice, no source): loose loads,
// weighed ones (their moisture), and what only the invoice says.
constexpr double kLooseError = 0.10;
constexpr double kWeighedError = 0.03;
constexpr double kClaimedError = 0.15;
constexpr double kUnbookedAMonth = 0.01;
constexpr double kPoorlyKnown = 0.25;
constexpr int kPatience = 7; // days after the day a load is due, then it is ordered once more

// A stack of fair size against the usual cord, for room when nothing is on hand.
double usualRoomPerHeat()
{
    const Volume cord = volumeFromCubicFeet(kCubicFeetPerCord);
    return kCubicFeetPerCord / seasonedPounds(heatOnceDry(cord, speciesOrOak({}, 0), kDryEnough));
}

double deliveryError(Measure measure)
{
    switch (measure) {
    case Measure::Stack:
        return std::hypot(kStackMeasure, kStackFill);
    case Measure::Loose:
        return kLooseError;
    case Measure::Weighed:
        return kWeighedError;
    case Measure::Claimed:
        break;
    }
    return kClaimedError;
}

int indexOf(const BookQuestion &asked, RecordId event)
{
    for (qsizetype i = 0; i < asked.events.size(); ++i)
        if (event != 0 && asked.events.at(i).event == event)
            return static_cast<int>(i);
    return -1;
}

Link toLot(RecordId lot)
{
    return {TableId::Lot, lot};
}

// Whom a lot is kept for.
void reserve(StockLot &stock, const Lot &lot, BookQuestion &asked, const QuestionGrounds &grounds)
{
    if (!lot.reservedFor)
        return;
    const Event event = grounds.books.events.value(*lot.reservedFor);
    stock.reservedFor = indexOf(asked, *lot.reservedFor);
    if (stock.reservedFor >= 0) {
        asked.reasons << Reason{lot.name, QString(QStringLiteral("kept for ") + event.name), false,
                                toLot(lot.id)};
        return;
    }
    const bool ahead = (event.state == EventState::Booked || event.state == EventState::Proposed) &&
                       event.end > grounds.now;
    stock.held = stock.held || ahead;
    if (ahead)
        asked.reasons << Reason{lot.name,
                                QString(QStringLiteral("not counted: kept for ") + event.name +
                                        QStringLiteral(", which has no cook booked")),
                                false, toLot(lot.id)};
    else
        asked.notes << QString(lot.name + QStringLiteral(" is kept for ") +
                               (event.name.isEmpty() ? QStringLiteral("an event") : event.name) +
                               QStringLiteral(", which is over or called off: it counts for any "
                                              "cook. Set it free."));
}

Spread readyOf(const LotStock &lot, const QuestionGrounds &grounds)
{
    if (lot.readiness == Readiness::Dry)
        return {};
    const auto forecast = grounds.seasoning.constFind(lot.lot);
    return forecast == grounds.seasoning.cend() ? Spread::fixed(kNotWithin) : readyDays(*forecast);
}

// What keeps a lot from being counted as it stands, or how well it is known.
void sayLot(const LotStock &lot, const StockLot &stock, BookQuestion &asked,
            const QuestionGrounds &grounds, double error)
{
    const Lot record = grounds.books.lots.value(lot.lot);
    const auto forecast = grounds.seasoning.constFind(lot.lot);
    const QString ready =
        forecast == grounds.seasoning.cend()
            ? QStringLiteral("no forecast, so it is not counted")
            : QString(QStringLiteral("counted as it dries, ") + readyWords(*forecast));
    const auto say = [&](const QString &value, bool assumption) {
        asked.reasons << Reason{record.name, value, assumption, toLot(lot.lot)};
    };
    if (lot.readiness == Readiness::NoReading && !stock.held)
        say(QString(QStringLiteral("no moisture reading: ") + ready + QStringLiteral(". Read it.")),
            true);
    if (lot.readiness == Readiness::Wet && !stock.held)
        say(QString(QStringLiteral("too wet now: ") + ready), true);
    if (lot.readiness == Readiness::OnHold)
        say(QString(QStringLiteral("not counted: on hold, ") + record.holdReason), false);
    if (lot.readiness == Readiness::Dry && !lot.moistureNote.isEmpty())
        say(lot.moistureNote, true);
    if (error > kPoorlyKnown && !stock.held)
        say(QString(QStringLiteral("what is left is known to within ") +
                    QString::number(std::lround(100 * error)) +
                    QStringLiteral(" % only: count the rick")),
            true);
}

void addLot(const LotStock &lot, BookQuestion &asked, const QuestionGrounds &grounds)
{
    const Lot record = grounds.books.lots.value(lot.lot);
    const double heat = seasonedPounds(lot.netHeat);
    const double error = errorOfLot(grounds.books, record, lot.dryMass, grounds.now) / lot.dryMass;
    StockLot stock;
    stock.key = lot.lot;
    stock.heat = Spread::normal(heat, heat * error);
    stock.readyDay = readyOf(lot, grounds);
    stock.held = lot.readiness == Readiness::OnHold || lot.readiness == Readiness::NeverBurn;
    reserve(stock, record, asked, grounds);
    sayLot(lot, stock, asked, grounds, error);
    asked.question.plan.lots.push_back(stock);
    asked.question.lotNames << record.name;
    asked.lots << lot.lot;
}

// Booked below zero: it counts as empty, and the engine names it.
void addOverdrawn(const LotStock &lot, BookQuestion &asked, const QuestionGrounds &grounds)
{
    StockLot stock;
    stock.key = lot.lot;
    stock.heat = Spread::fixed(pounds(lot.dryMass));
    asked.question.plan.lots.push_back(stock);
    asked.question.lotNames << grounds.books.lots.value(lot.lot).name;
    asked.lots << lot.lot;
}

Volume orderedVolume(const Books &books, const WoodOrder &order)
{
    return order.volume > Volume() ? order.volume : volumeOrdered(books, order).value_or(Volume());
}

// Promised dry: at once, or as long as a load that came too wet; promised green: as long as that.
Spread dryingOf(const SupplierOutlook &outlook, RecordId species, Moisture moisture, int arrival,
                DryingAhead &drying)
{
    constexpr int kParts = 9;
    if (moisture > kDryEnough)
        return drying.daysOf(species, moisture, arrival);
    if (!(outlook.wet > 0))
        return {};
    const Spread &wet = drying.daysOf(species, outlook.wetAt, arrival);
    std::vector<std::pair<double, double>> days{{0.0, 1.0 - outlook.wet}};
    for (int i = 0; i < kParts; ++i)
        days.emplace_back(std::max(1.0, wet.quantile((i + 0.5) / kParts)), outlook.wet / kParts);
    return Spread::sample(days);
}

// The day on which an order is due, from today, and where that comes from.
int dueDay(const QuestionGrounds &grounds, const WoodOrder &order, QDate today, QString &words)
{
    const OrderDue due = orderDue(grounds.books, order, grounds.wording);
    if (due.day.isValid()) {
        words = due.basis;
        return static_cast<int>(today.daysTo(due.day));
    }
    const int lead = leadTimeOf(grounds.books, order.supplier).days();
    words = QString(QStringLiteral("no day known, reckoned for ") +
                    shortDay(today.addDays(lead), grounds.wording));
    return lead;
}

void addDelivery(const WoodOrder &order, BookQuestion &asked, const QuestionGrounds &grounds,
                 DryingAhead &drying)
{
    const Books &books = grounds.books;
    const Link link{TableId::WoodOrder, order.id};
    if (books.species.contains(order.species) && !burnable(books, order.species)) {
        asked.reasons << Reason{QStringLiteral("On the way"),
                                QStringLiteral("not counted: its species is not burned for food"),
                                false, link};
        return;
    }
    std::optional<Moisture> promised = order.promisedMoisture;
    if (!promised)
        promised = books.suppliers.value(order.supplier).promised;
    const Moisture moisture = promised.value_or(kDryEnough);
    const Heat heat =
        heatOnceDry(orderedVolume(books, order), speciesOrOak(books, order.species), moisture);
    const SupplierOutlook outlook = supplierOutlook(books, order.supplier, grounds.wording);
    QString due;
    const int day = dueDay(grounds, order, asked.today, due);
    const ExpectedArrival arrival = arrivalOf(outlook.lead, day);
    StockDelivery delivery;
    delivery.key = order.id;
    delivery.arrivalDay = arrival.day;
    delivery.never = arrival.never;
    delivery.dryingDays = dryingOf(outlook, order.species, moisture, std::max(day, 0), drying);
    QString value =
        QString(heatWords(heat, grounds.wording) + QStringLiteral(" from ") +
                books.suppliers.value(order.supplier).name + QStringLiteral(", ") + due);
    if (day < 0)
        value += QStringLiteral(", overdue: ask where it is");
    value += QStringLiteral("; ") + latenessOf(outlook.lead).basis;
    if (moisture > kDryEnough)
        value += QStringLiteral("; comes green, at ") + moistureWords(moisture, grounds.wording) +
                 QStringLiteral(", and counts as it dries");
    if (!promised)
        value += QStringLiteral("; no moisture promised, taken as dry: read it when it comes");
    if (!outlook.wetWords.isEmpty() && moisture <= kDryEnough)
        value += QStringLiteral("; ") + outlook.wetWords;
    asked.reasons << Reason{QStringLiteral("On the way"), value, true, link};
    if (heat <= Heat()) {
        asked.notes << QString(QStringLiteral("An order from ") +
                               books.suppliers.value(order.supplier).name +
                               QStringLiteral(" has no amount and is not counted."));
        return;
    }
    delivery.heat = outlook.share.times(seasonedPounds(heat));
    asked.question.plan.deliveries.push_back(delivery);
}

} // namespace

Mass errorOfLot(const Books &books, const Lot &lot, Mass left, Instant now)
{
    const Movement *counted = nullptr;
    for (const Movement &m : books.movements)
        if (m.lot == lot.id && m.kind == MovementKind::Counted && m.time <= now &&
            (counted == nullptr || m.time >= counted->time))
            counted = &m;
    const Instant since = counted != nullptr ? counted->time : lot.received;
    double known = 0;
    double bySplits = 0;
    double taken = 0;
    for (const Movement &m : books.movements) {
        if (m.lot != lot.id || m.time > now)
            continue;
        const double mass = m.dryMass.toDouble();
        const bool later = m.time > since && &m != counted && m.kind != MovementKind::Received;
        if (!later) {
            known += mass;
        } else if (m.kind == MovementKind::Burned) {
            taken -= mass;
            const bool weighed = m.feed && books.feeds.value(*m.feed).weight;
            bySplits -= weighed ? 0.0 : mass;
        }
    }
    const double first =
        counted != nullptr ? deliveryError(Measure::Stack) : deliveryError(lot.measuredBy);
    const double months = std::max(0.0, hours(now - since) / (24 * 30.4));
    const double squares = std::pow(first * known, 2) + std::pow(kMiscount * taken, 2) +
                           std::pow(splitWeight(books, lot).error * bySplits, 2) +
                           std::pow(kUnbookedAMonth * months * left.toDouble(), 2);
    return Mass::rounded(std::sqrt(squares));
}

void addLots(BookQuestion &asked, const QuestionGrounds &grounds)
{
    double heat = 0;
    double room = 0;
    for (const BurnChoice &choice : burnFirst(grounds.books, grounds.stock, grounds.uses))
        for (const LotStock &lot : grounds.stock.lots)
            if (lot.lot == choice.lot) {
                addLot(lot, asked, grounds);
                heat += seasonedPounds(lot.netHeat);
                room += cubicFeet(lot.stacked);
            }
    for (const LotStock &lot : grounds.stock.lots)
        if (lot.dryMass < -kLeastWood)
            addOverdrawn(lot, asked, grounds);
    asked.question.roomPerHeat = heat > 0 && room > 0 ? room / heat : usualRoomPerHeat();
}

void addDeliveries(BookQuestion &asked, const QuestionGrounds &grounds, DryingAhead &drying)
{
    for (const WoodOrder &order : grounds.books.orders)
        if (isOnTheWay(grounds.books, order))
            addDelivery(order, asked, grounds, drying);
}

void addOffers(BookQuestion &asked, const QuestionGrounds &grounds, DryingAhead &drying)
{
    std::map<RecordId, SupplierOutlook> outlooks;
    for (const WoodSource &source : asked.sources) {
        const auto [found, fresh] = outlooks.try_emplace(source.supplier);
        if (fresh)
            found->second = supplierOutlook(grounds.books, source.supplier, grounds.wording);
        const SupplierOutlook &outlook = found->second;
        OfferTerms terms;
        terms.supplier = source.supplierName;
        terms.green = source.green;
        terms.unitHeat = seasonedPounds(source.unitHeat);
        terms.unitRoom = cubicFeet(source.unitStacked);
        terms.mostUnits = source.mostUnits;
        if (source.price)
            terms.unitPrice = source.price->toDouble();
        terms.deliveryPrice = source.delivery ? source.delivery->toDouble() : 0.0;
        terms.leadAssumed = source.leadAssumed;
        terms.load.share = outlook.share;
        terms.load.leadDays = leadDays(outlook.lead, source.leadDays);
        terms.load.never = latenessOf(outlook.lead).never;
        terms.load.dryingDays =
            dryingOf(outlook, source.species, source.moisture, source.leadDays, drying);
        terms.load.againAfter = source.leadDays + kPatience;
        terms.load.againWhenWet = !source.green;
        // Offers of one supplier meet the same luck on the road.
        terms.load.key = source.supplier;
        asked.question.offers.push_back(terms);
    }
}

} // namespace rickyard::domain
