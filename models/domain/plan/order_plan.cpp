#include "models/domain/plan/order_plan.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

constexpr int kMostLoads = 6;

// The smallest n in (low, high] for which `ok` holds; it holds at `high` and from there on.
template <class Holds>
int smallest(int low, int high, const Holds &ok)
{
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        (ok(middle) ? high : low) = middle;
    }
    return high;
}

Problem wrongQuestion(const QString &message)
{
    return {QStringLiteral("order"), message};
}

} // namespace

OrderPlanner::OrderPlanner(OrderQuestion question, StockPaths paths)
    : m_question(std::move(question)), m_paths(std::move(paths))
{
    const StockPlan &plan = m_paths.plan();
    m_when.assign(static_cast<size_t>(plan.events), When::Now);
    std::vector<int> first(m_when.size(), INT_MAX);
    for (const StockNeed &need : plan.needs) {
        if (need.day < 0 || need.day >= plan.days)
            continue;
        m_lastDay = std::max(m_lastDay, need.day);
        if (need.event < 0)
            continue;
        const auto event = static_cast<size_t>(need.event);
        first[event] = std::min(first[event], need.day);
        if (need.day >= m_question.nextSeason)
            m_when[event] = When::Next;
    }
    for (size_t e = 0; e < first.size(); ++e)
        if (m_when[e] == When::Now && first[e] != INT_MAX && first[e] >= m_question.judgedUntil)
            m_when[e] = When::Far;
    m_nothing = run({}, std::isfinite(m_question.storage));
}

Outcome<OrderPlanner> OrderPlanner::start(OrderQuestion question)
{
    if (!(question.acceptedRisk > 0 && question.acceptedRisk < 1))
        return wrongQuestion(QStringLiteral("The accepted risk must lie between 0 and 100 %."));
    question.plan.offers.clear();
    for (const OfferTerms &offer : question.offers) {
        if (!(offer.unitHeat > 0 && std::isfinite(offer.unitHeat)) || !(offer.unitRoom >= 0))
            return wrongQuestion(QStringLiteral("What a unit of %1's wood holds is not known; give "
                                                "its unit and species.")
                                     .arg(offer.supplier));
        question.plan.offers.push_back(offer.load);
    }
    auto drawn = StockPaths::draw(question.plan, question.seed, question.paths);
    if (!drawn)
        return drawn.problems();
    return OrderPlanner(std::move(question), std::move(drawn.value()));
}

OrderPlanner OrderPlanner::withRisk(double acceptedRisk) const
{
    OrderPlanner other = *this;
    other.m_question.acceptedRisk = acceptedRisk;
    return other;
}

StockOutcome OrderPlanner::run(const std::vector<PlacedOrder> &orders, bool course,
                               bool colder) const
{
    WhatIf whatIf;
    whatIf.orders = m_before;
    whatIf.orders.insert(whatIf.orders.end(), orders.begin(), orders.end());
    whatIf.course = course;
    if (colder)
        whatIf.needFactor = m_question.colder;
    return m_paths.run(whatIf);
}

OrderPlanner::Worst OrderPlanner::worst(const StockOutcome &outcome, bool green,
                                        const std::vector<int> &leftAside) const
{
    const auto aside = [&leftAside](size_t event) {
        return std::find(leftAside.cbegin(), leftAside.cend(), int(event)) != leftAside.cend();
    };
    Worst worst;
    for (size_t e = 0; e < outcome.events.size(); ++e) {
        const EventRisk &risk = outcome.events[e];
        if (risk.judged && judges(green, e) && !aside(e) &&
            (worst.event < 0 || risk.chance > worst.risk.chance))
            worst = {risk, static_cast<int>(e)};
    }
    return worst;
}

OrderPlanner::Worst OrderPlanner::riskIf(size_t offer, int units, int day, double lateBy) const
{
    const OfferTerms &terms = m_question.offers.at(offer);
    return worst(run({{offer, day, units * terms.unitHeat, lateBy, 0}}), terms.green);
}

// More than all cooks together can take.
double OrderPlanner::enoughHeat(bool green) const
{
    double heat = 0;
    const StockPlan &plan = m_paths.plan();
    for (const StockNeed &need : plan.needs)
        if (need.day >= 0 && need.day < plan.days &&
            (green || need.day < std::min(m_question.nextSeason, m_question.judgedUntil)))
            heat += std::max(0.0, need.heat.quantile(0.99));
    heat += 2.0 * plan.unplanned.chance * plan.days * plan.unplanned.heat.quantile(0.9);
    return 1.3 * heat;
}

StockOutcome OrderPlanner::outcomeIf(size_t offer, int units, int day) const
{
    return run({{offer, day, units * m_question.offers.at(offer).unitHeat, 0, 0}});
}

OrderPlanner::Goal OrderPlanner::goalOf(size_t offer) const
{
    const OfferTerms &terms = m_question.offers.at(offer);
    const double accepted = m_question.acceptedRisk;
    Goal goal;
    goal.enough = std::max(
        1, static_cast<int>(std::ceil(std::min(1e6, enoughHeat(terms.green) / terms.unitHeat))));
    const StockOutcome best = outcomeIf(offer, goal.enough, 0);
    goal.use.assign(best.events.size(), Use::None);
    goal.judged.assign(best.events.size(), false);
    goal.forUnits.assign(best.events.size(), 1.0);
    for (size_t e = 0; e < best.events.size(); ++e) {
        if (!best.events[e].judged || !judges(terms.green, e))
            continue;
        goal.judged[e] = true;
        const double without = m_nothing.events[e].chance;
        const double with = best.events[e].chance;
        if (with <= accepted) {
            goal.use[e] = Use::Saved;
            goal.forUnits[e] = with <= accepted / 2 ? accepted / 2 : accepted;
            goal.useful = goal.useful || without > accepted;
        } else if (with <= without / 2) {
            goal.use[e] = Use::Helped;
            goal.forUnits[e] = with + (without - with) / 10;
            goal.useful = goal.late = true;
        }
    }
    return goal;
}

std::vector<int> OrderPlanner::lostTo(const Goal &goal) const
{
    std::vector<int> lost;
    for (size_t e = 0; e < goal.use.size(); ++e)
        if (goal.judged[e] && goal.use[e] == Use::None &&
            m_nothing.events[e].chance > m_question.acceptedRisk)
            lost.push_back(static_cast<int>(e));
    return lost;
}

int OrderPlanner::unitsFor(size_t offer, const Goal &goal) const
{
    if (!goal.useful)
        return 0;
    return smallest(0, goal.enough, [&](int units) {
        const StockOutcome outcome = outcomeIf(offer, units, 0);
        for (size_t e = 0; e < outcome.events.size(); ++e)
            if (outcome.events[e].chance > goal.forUnits[e])
                return false;
        return true;
    });
}

int OrderPlanner::latestDay(size_t offer, int units, const Goal &goal) const
{
    const auto late = [&](int day) {
        const StockOutcome outcome = outcomeIf(offer, units, day);
        for (size_t e = 0; e < outcome.events.size(); ++e)
            if (goal.use[e] == Use::Saved && outcome.events[e].chance > m_question.acceptedRisk)
                return true;
        return false;
    };
    if (goal.late || late(0))
        return -1;
    if (!late(m_lastDay))
        return m_lastDay;
    return smallest(0, m_lastDay, late) - 1;
}

int OrderPlanner::roomFor(size_t offer, int day, const StockOutcome &outcome) const
{
    const OfferTerms &terms = m_question.offers.at(offer);
    int most = terms.mostUnits > 0 ? terms.mostUnits : INT_MAX;
    if (!std::isfinite(m_question.storage) || terms.unitRoom <= 0)
        return most;
    const double arrival = day + terms.load.leadDays.quantile(0.5);
    const auto last = static_cast<double>(outcome.meanOnYard.size()) - 1;
    const auto on = static_cast<size_t>(std::clamp(arrival, 0.0, last));
    const double free = m_question.storage - m_question.roomPerHeat * outcome.meanOnYard[on];
    return std::clamp(static_cast<int>(std::floor(free / terms.unitRoom + 1e-9)), 0, most);
}

int OrderPlanner::unitsThatFit(size_t offer, int day) const
{
    return roomFor(offer, day, m_nothing);
}

// As many as fit as soon as they fit; what never fits in time goes straight to the event.
std::vector<OrderLoad> OrderPlanner::split(size_t offer, int units) const
{
    const double unitHeat = m_question.offers.at(offer).unitHeat;
    const double slow =
        m_question.offers.at(offer).load.leadDays.quantile(1.0 - m_question.acceptedRisk);
    std::vector<OrderLoad> loads;
    std::vector<PlacedOrder> orders;
    int day = 0;
    while (units > 0 && int(loads.size()) < kMostLoads - 1) {
        const StockOutcome so = run(orders, true);
        int fit = 0;
        // A load is worth its way when it brings half of what is still missing, or a third of what
        // the yard holds.
        const double third =
            m_question.storage / 3 / std::max(1e-9, m_question.offers.at(offer).unitRoom);
        const int worthIt = std::max(1, std::min((units + 1) / 2, int(std::min(third, 1e6))));
        for (; day + slow < m_lastDay; ++day) {
            fit = std::min(units, roomFor(offer, day, so));
            if (fit >= worthIt)
                break;
        }
        if (fit < worthIt)
            break;
        loads.push_back({day, fit, false});
        orders.push_back({offer, day, fit * unitHeat, 0, int(loads.size()) - 1});
        units -= fit;
        ++day;
    }
    if (units > 0)
        loads.push_back({0, units, true});
    return loads;
}

std::vector<PlacedOrder> OrderPlanner::placed(const OrderChoice &choice, double lateBy) const
{
    std::vector<PlacedOrder> orders;
    for (const OrderLoad &load : choice.loads)
        orders.push_back({choice.offer, load.day,
                          load.units * m_question.offers.at(choice.offer).unitHeat, lateBy,
                          int(orders.size())});
    return orders;
}

void OrderPlanner::judge(OrderChoice &choice) const
{
    const OfferTerms &terms = m_question.offers.at(choice.offer);
    const auto worstOf = [&](const StockOutcome &outcome) {
        return worst(outcome, terms.green, choice.lost);
    };
    const Worst found = worstOf(run(placed(choice, 0)));
    choice.risk = found.risk;
    choice.worstEvent = found.event;
    choice.keeps = choice.lost.empty() && found.risk.chance <= m_question.acceptedRisk;
    choice.riskLate = worstOf(run(placed(choice, m_question.lateDays))).risk.chance;
    if (!m_question.colder.empty())
        choice.riskColder = worstOf(run(placed(choice, 0), false, true)).risk.chance;
    if (terms.unitPrice)
        choice.cost =
            *terms.unitPrice * choice.units + terms.deliveryPrice * double(choice.loads.size());
    choice.arrivesLikely = choice.loads.front().day + terms.load.leadDays.quantile(0.5);
}

OrderChoice OrderPlanner::choice(size_t offer) const
{
    OrderChoice choice;
    choice.offer = offer;
    const Goal goal = goalOf(offer);
    choice.units = unitsFor(offer, goal);
    if (choice.units == 0)
        return choice;
    choice.lost = lostTo(goal);
    choice.orderBy = std::max(0, latestDay(offer, choice.units, goal));
    // The yard is emptier on the latest safe day than today.
    if (choice.units <= unitsThatFit(offer, choice.orderBy)) {
        choice.loads = {{choice.orderBy, choice.units, false}};
    } else {
        choice.loads = split(offer, choice.units);
        for (const OrderLoad &load : choice.loads)
            choice.orderBy = std::min(choice.orderBy, load.day);
    }
    judge(choice);
    choice.riskToday = choice.loads.size() == 1
                           ? worst(outcomeIf(offer, choice.units, 0),
                                   m_question.offers.at(offer).green, choice.lost)
                                 .risk.chance
                           : choice.risk.chance;
    return choice;
}

std::vector<OrderChoice> OrderPlanner::choices(bool green, const CancelCheck &cancel) const
{
    std::vector<OrderChoice> all;
    for (size_t i = 0; i < m_question.offers.size(); ++i) {
        if (m_question.offers[i].green != green)
            continue;
        if (cancel && cancel())
            return {};
        all.push_back(choice(i));
        if (all.back().units == 0)
            all.pop_back();
    }
    // Those that keep the risk by price, then those that leave more time; the others by the events
    // they come too late for, then by risk.
    std::stable_sort(all.begin(), all.end(), [](const OrderChoice &a, const OrderChoice &b) {
        if (a.keeps != b.keeps)
            return a.keeps;
        if (a.lost.size() != b.lost.size())
            return a.lost.size() < b.lost.size();
        if (!a.keeps && a.risk.chance != b.risk.chance)
            return a.risk.chance < b.risk.chance;
        const double costA = a.cost.value_or(HUGE_VAL);
        const double costB = b.cost.value_or(HUGE_VAL);
        return costA != costB ? costA < costB : a.orderBy > b.orderBy;
    });
    return all;
}

OrderAnswer OrderPlanner::answer(const CancelCheck &cancel) const
{
    OrderAnswer answer;
    answer.nothing = m_nothing.course.empty() ? run({}, true) : m_nothing;
    const Worst now = worst(m_nothing, false);
    answer.nothingRisk = now.risk;
    answer.nothingWorst = now.event;
    answer.needed = now.risk.chance > m_question.acceptedRisk;
    answer.notes = inputNotes();
    if (answer.needed)
        answer.dry = choices(false, cancel);
    // Green wood is looked at with the dry wood on its way: what is left of it counts next season.
    OrderPlanner next = *this;
    if (!answer.dry.empty())
        next.m_before = placed(answer.dry.front(), 0);
    next.m_nothing = answer.dry.empty() ? answer.nothing : next.run({}, true);
    answer.with = next.m_nothing; // nothing but what was ordered
    answer.greenNeeded = worst(next.m_nothing, true).risk.chance > m_question.acceptedRisk;
    if (answer.greenNeeded)
        answer.green = next.choices(true, cancel);
    if (cancel && cancel()) {
        OrderAnswer stopped;
        stopped.cancelled = true;
        return stopped;
    }
    addRoomNotes(answer);
    return answer;
}

} // namespace rickyard::domain
