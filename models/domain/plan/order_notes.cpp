// What the plan of an order leaves out, assumes or cannot do, in words.
#include "models/domain/plan/order_plan.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

QString OrderPlanner::eventName(int event) const
{
    const QString name = m_question.eventNames.value(event);
    return name.isEmpty() ? QString(QStringLiteral("event ") + QString::number(event + 1)) : name;
}

QStringList OrderPlanner::inputNotes() const
{
    QStringList notes;
    const StockPlan &plan = m_paths.plan();
    std::vector<bool> past(static_cast<size_t>(plan.events), false);
    for (const StockNeed &need : plan.needs)
        if (need.day < 0 && need.event >= 0)
            past[static_cast<size_t>(need.event)] = true;
    for (size_t e = 0; e < past.size(); ++e)
        if (past[e] && !m_nothing.events[e].judged)
            notes << QStringLiteral("%1 is over; it takes no wood.").arg(eventName(int(e)));
    for (size_t i = 0; i < plan.lots.size(); ++i)
        if (plan.lots[i].heat.quantile(0.5) < 0) {
            const QString name = m_question.lotNames.value(qsizetype(i));
            notes << QStringLiteral("%1 is booked below zero and counts as empty; count it again.")
                         .arg(name.isEmpty()
                                  ? QString(QStringLiteral("Lot ") + QString::number(i + 1))
                                  : name);
        }
    for (const OfferTerms &offer : m_question.offers)
        if (offer.leadAssumed)
            notes << QStringLiteral("%1 has no delivery on record; a wide default stands in for "
                                    "their lead time.")
                         .arg(offer.supplier);
    notes.removeDuplicates(); // of a supplier with several offers
    if (m_question.offers.empty())
        notes << QStringLiteral("No supplier is on record, so nothing can be proposed; add one.");
    return notes;
}

// An event that takes more than the yard can stack, and orders that do not fit.
void OrderPlanner::addRoomNotes(OrderAnswer &answer) const
{
    const StockPlan &plan = m_paths.plan();
    std::vector<double> need(static_cast<size_t>(plan.events), 0.0);
    for (const StockNeed &n : plan.needs)
        if (n.event >= 0 && n.day >= 0 && n.day < plan.days)
            need[static_cast<size_t>(n.event)] += n.heat.quantile(0.95);
    for (size_t e = 0; e < need.size(); ++e) {
        const double room = need[e] * m_question.roomPerHeat;
        if (room <= m_question.storage)
            continue;
        answer.notes << QStringLiteral(
                            "%1 may take %2 times the wood that the yard can stack: have "
                            "it brought in %3 loads or more, the last straight to the "
                            "event.")
                            .arg(eventName(int(e)),
                                 QString::number(room / m_question.storage, 'f', 1),
                                 QString::number(std::ceil(room / m_question.storage)));
    }
    const auto splitNote = [&](const std::vector<OrderChoice> &choices) {
        if (!choices.empty() && choices.front().loads.size() > 1)
            answer.notes << QStringLiteral("There is no room for the whole order at once; it is "
                                           "split into %1 loads.")
                                .arg(choices.front().loads.size());
    };
    splitNote(answer.dry);
    splitNote(answer.green);
    addTooLate(answer);
}

// What no order can be counted on to come in time for.
void OrderPlanner::addTooLate(OrderAnswer &answer) const
{
    const bool kept = std::any_of(answer.dry.cbegin(), answer.dry.cend(),
                                  [](const OrderChoice &choice) { return choice.keeps; });
    if (!answer.needed || m_question.offers.empty() || kept)
        return;
    QStringList names;
    if (answer.dry.empty()) {
        names << eventName(answer.nothingWorst);
    } else {
        for (const int event : answer.dry.front().lost)
            names << eventName(event);
        if (answer.dry.front().risk.chance > m_question.acceptedRisk)
            names << eventName(answer.dry.front().worstEvent);
    }
    answer.notes << QStringLiteral("No order placed today can be counted on to come in time for "
                                   "%1. Ask for a fixed day, fetch wood, or move or shorten it.")
                        .arg(names.join(QStringLiteral(" and ")));
}

} // namespace rickyard::domain
