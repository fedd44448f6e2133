#include "models/domain/plan/order_life.h"

#include "models/domain/answers/wording.h"
#include "models/domain/plan/supply.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/density.h"
#include "models/domain/wood/moisture.h"
#include "models/domain/wood/sale.h"
#include "models/domain/wood/stock.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

QString stateWord(OrderState state)
{
    switch (state) {
    case OrderState::Draft:
        return QStringLiteral("a draft");
    case OrderState::Sent:
        return QStringLiteral("sent");
    case OrderState::Promised:
        return QStringLiteral("promised");
    case OrderState::Received:
        return QStringLiteral("received");
    case OrderState::Cancelled:
        return QStringLiteral("cancelled");
    }
    return {};
}

QString stepRefused(OrderState state, OrderStep step)
{
    if (state == OrderState::Received)
        return QStringLiteral("This order has come: nothing more follows. Write a new one.");
    if (state == OrderState::Cancelled)
        return QStringLiteral("This order is cancelled: nothing more follows. Write a new one.");
    if (step == OrderStep::Send)
        return QString(QStringLiteral("This order is ") + stateWord(state) +
                       QStringLiteral(" already: it is sent once."));
    return QStringLiteral("This order is still a draft: send it first.");
}

SoldAmount amountOf(const Books &books, const WoodOrder &order)
{
    if (!order.count)
        return {SellUnit::Cord, std::round(100 * cords(order.volume)) / 100, {}, {}};
    const Supplier supplier = books.suppliers.value(order.supplier);
    return {order.unit, number(*order.count), supplier.stickLength, supplier.bundleVolume};
}

Moisture moistureWished(const Books &books, const WoodOrder &order)
{
    if (order.promisedMoisture)
        return *order.promisedMoisture;
    return books.suppliers.value(order.supplier).promised.value_or(kDryEnough);
}

QString askedWords(const WoodOrder &order, QDate today)
{
    if (!order.chased.isValid())
        return QStringLiteral("not asked yet");
    const qint64 ago = order.chased.daysTo(today);
    return ago <= 0
               ? QStringLiteral("asked today")
               : QString(QStringLiteral("last asked ") + daysWords(ago) + QStringLiteral(" ago"));
}

} // namespace

bool orderIsOpen(const WoodOrder &order)
{
    return order.state == OrderState::Sent || order.state == OrderState::Promised;
}

bool mayFollow(OrderState state, OrderStep step)
{
    const bool open = state == OrderState::Sent || state == OrderState::Promised;
    switch (step) {
    case OrderStep::Send:
        return state == OrderState::Draft;
    case OrderStep::Promise:
    case OrderStep::Ask:
    case OrderStep::Receive:
        return open;
    case OrderStep::Cancel:
        return open || state == OrderState::Draft;
    }
    return false;
}

Outcome<WoodOrder> afterStep(const WoodOrder &order, OrderStep step, QDate day, QDate promised)
{
    if (!mayFollow(order.state, step))
        return Outcome<WoodOrder>::failed(stepRefused(order.state, step), QStringLiteral("state"));
    WoodOrder next = order;
    switch (step) {
    case OrderStep::Send:
        next.state = OrderState::Sent;
        next.ordered = day;
        break;
    case OrderStep::Promise:
        if (!promised.isValid())
            return Outcome<WoodOrder>::failed(
                QStringLiteral("Enter the day they promised to come."), QStringLiteral("promised"));
        if (order.ordered.isValid() && promised < order.ordered)
            return Outcome<WoodOrder>::failed(
                QStringLiteral("The day promised lies before the order was sent. Enter the day "
                               "they will come."),
                QStringLiteral("promised"));
        next.state = OrderState::Promised;
        next.promised = promised;
        break;
    case OrderStep::Ask:
        next.chased = day;
        break;
    case OrderStep::Receive:
        if (order.ordered.isValid() && day < order.ordered)
            return Outcome<WoodOrder>::failed(
                QStringLiteral("The day received lies before the order was sent."),
                QStringLiteral("received"));
        next.state = OrderState::Received;
        next.received = day;
        break;
    case OrderStep::Cancel:
        next.state = OrderState::Cancelled;
        break;
    }
    return next;
}

std::optional<Volume> volumeOrdered(const Books &books, const WoodOrder &order)
{
    if (!order.count)
        return order.volume.base() > 0 ? std::optional(order.volume) : std::nullopt;
    const SoldAmount amount = amountOf(books, order);
    if (const auto weight = weightOf(amount)) {
        if (!books.species.contains(order.species))
            return std::nullopt;
        const Moisture moisture = moistureWished(books, order);
        return stackedFromSolid(solidVolume(dryFromAsIs(*weight, moisture),
                                            books.species.value(order.species), moisture));
    }
    return stackedOf(amount);
}

std::optional<Money> usualPrice(const Books &books, const WoodOrder &order)
{
    const Supplier supplier = books.suppliers.value(order.supplier);
    if (!supplier.price || !order.count || order.unit != supplier.unit)
        return std::nullopt;
    return *supplier.price * number(*order.count) + supplier.delivery.value_or(Money());
}

OrderDue orderDue(const Books &books, const WoodOrder &order, const Wording &wording)
{
    if (order.state == OrderState::Promised && order.promised.isValid())
        return {order.promised,
                QString(QStringLiteral("promised for ") + dayWithWeekday(order.promised, wording))};
    if (!orderIsOpen(order) || !order.ordered.isValid())
        return {};
    const LeadTime lead = leadTimeOf(books, order.supplier);
    const QDate usual = order.ordered.addDays(lead.days());
    const QString sent = QString(QStringLiteral("sent ") + dayWithWeekday(order.ordered, wording));
    if (order.promised.isValid() && order.promised > usual)
        return {order.promised, QString(sent + QStringLiteral(", wished for ") +
                                        dayWithWeekday(order.promised, wording))};
    return {usual, QString(sent +
                           (lead.assumed ? QStringLiteral(", taken to need ")
                                         : QStringLiteral(", usually ")) +
                           daysWords(lead.days()))};
}

std::optional<LateOrder> lateness(const Books &books, const WoodOrder &order, QDate today,
                                  const Wording &wording)
{
    LateOrder late;
    late.order = order.id;
    late.due = orderDue(books, order, wording);
    if (!late.due.day.isValid() || late.due.day >= today)
        return std::nullopt;
    late.days = late.due.day.daysTo(today);
    late.asked = askedWords(order, today);
    late.askedToday = order.chased.isValid() && order.chased >= today;
    late.sentence = QString(books.species.value(order.species).name + QStringLiteral(" from ") +
                            books.suppliers.value(order.supplier).name + QStringLiteral(" is ") +
                            daysWords(late.days) + QStringLiteral(" late: ") + late.due.basis +
                            QLatin1Char('.'));
    return late;
}

QVector<LateOrder> lateOrders(const Books &books, QDate today, const Wording &wording)
{
    QVector<LateOrder> all;
    for (const WoodOrder &order : books.orders)
        if (isOnTheWay(books, order))
            if (const auto late = lateness(books, order, today, wording))
                all << *late;
    std::stable_sort(all.begin(), all.end(),
                     [](const LateOrder &a, const LateOrder &b) { return a.days > b.days; });
    return all;
}

QString orderAmountWords(const Books &books, const WoodOrder &order, const Wording &wording)
{
    return soldWords(amountOf(books, order), wording.metric, localeOf(wording));
}

QString orderMessage(const Books &books, const WoodOrder &order, const Wording &wording)
{
    const QString yard = books.yard().name.trimmed();
    const QString us = yard.isEmpty() ? QStringLiteral("we") : yard;
    QStringList lines;
    lines << QString(QStringLiteral("Hello ") + books.suppliers.value(order.supplier).name +
                     QLatin1Char(','))
          << QString()
          << QString(us + QStringLiteral(" would like to order ") +
                     orderAmountWords(books, order, wording) + QStringLiteral(" of ") +
                     books.species.value(order.species).name.toLower() +
                     QStringLiteral(", split, for cooking."));
    if (order.promisedMoisture)
        lines << QString(QStringLiteral("Moisture wished: ") +
                         bothBases(*order.promisedMoisture, wording) +
                         QStringLiteral(" or drier."));
    if (order.promised.isValid())
        lines << QString(
            QStringLiteral("Day wished: ") +
            localeOf(wording).toString(order.promised, QStringLiteral("dddd d MMMM yyyy")) +
            QStringLiteral(", or before."));
    if (order.price)
        lines << QString(QStringLiteral("Price as we have it: ") +
                         moneyWords(order.price->toDouble(), wording) + QLatin1Char('.'));
    lines << QString() << QStringLiteral("Please tell us which day you can bring it.")
          << (yard.isEmpty() ? QStringLiteral("Thank you.") : QStringLiteral("Thank you,"));
    if (!yard.isEmpty())
        lines << yard;
    // Plain spaces: it is pasted into whatever they write in.
    QString text = lines.join(QLatin1Char('\n'));
    for (const char16_t space : {u'\u202F', u'\u2009', u'\u00A0'})
        text.replace(QChar(space), QLatin1Char(' '));
    return text;
}

} // namespace rickyard::domain
