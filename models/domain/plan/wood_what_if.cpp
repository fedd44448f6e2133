// What-ifs on the wood answer's own draw.
#include "models/domain/answers/wording.h"
#include "models/domain/plan/wood_choices.h"
#include "models/domain/quantities/units.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// One factor a need; what a cook takes goes nearly straight with how cold it is.
std::vector<double> factorsAt(const OrderQuestion &question, double kelvin)
{
    constexpr double kLeast = 0.05;
    std::vector<double> factors;
    for (const double colder : question.colder)
        factors.push_back(std::max(kLeast, 1.0 + (colder - 1.0) * kelvin / kColderKelvin));
    return factors;
}

bool isSource(const WoodAnswer &answer, const WoodWhatIf &ask)
{
    return ask.source >= 0 && ask.source < answer.sources.size() && ask.units > 0;
}

PlacedOrder placedOrder(const WoodAnswer &answer, const WoodWhatIf &ask)
{
    const double heat = answer.planner->question().offers.at(size_t(ask.source)).unitHeat;
    PlacedOrder order;
    order.offer = static_cast<size_t>(ask.source);
    order.day =
        static_cast<int>(std::clamp<qint64>(answer.today.daysTo(ask.orderDay), 0, kMostStockDays));
    order.heat = ask.units * heat;
    order.lateBy = std::max(0, ask.daysLate);
    return order;
}

std::optional<Money> costOf(const WoodSource &source, int units)
{
    if (!source.price)
        return std::nullopt;
    const int loads = source.mostUnits > 0 ? (units + source.mostUnits - 1) / source.mostUnits : 1;
    return *source.price * static_cast<double>(units) +
           source.delivery.value_or(Money()) * static_cast<double>(loads);
}

} // namespace

WoodWhatIfAnswer woodWhatIf(const WoodAnswer &answer, const WoodWhatIf &ask, const Wording &wording,
                            const CancelCheck &cancel)
{
    WoodWhatIfAnswer said;
    if (!answer.planner)
        return said;
    const OrderPlanner &planner = *answer.planner;
    const bool ordering = isSource(answer, ask);
    const bool green = ordering && answer.sources.at(ask.source).green;
    WhatIf whatIf;
    whatIf.course = true;
    if (ordering)
        whatIf.orders.push_back(placedOrder(answer, ask));
    if (ask.colderKelvin != 0)
        whatIf.needFactor = factorsAt(planner.question(), ask.colderKelvin);
    const StockOutcome outcome = planner.paths().run(whatIf, cancel);
    said.cancelled = outcome.cancelled;
    if (said.cancelled)
        return said;
    const double accepted = ask.acceptedRisk.value_or(answer.acceptedRisk);
    const OrderPlanner::Worst worst = planner.worst(outcome, green);
    said.risks = withFigures(answer.risks, outcome);
    said.worst = worst.event;
    said.keeps = worst.risk.chance <= accepted;
    said.course = courseOf(outcome, answer.today, answer.course.size());
    if (ordering) {
        const OfferTerms &terms = planner.question().offers.at(size_t(ask.source));
        said.arrival =
            dayAt(answer.today, whatIf.orders.front().day + whatIf.orders.front().lateBy +
                                    terms.load.leadDays.quantile(0.5));
        said.cost = costOf(answer.sources.at(ask.source), ask.units);
    }
    if (!ask.advise)
        return said;
    const OrderAnswer advice = planner.withRisk(accepted).answer(cancel);
    said.cancelled = advice.cancelled;
    said.orders = choicesOf(advice.dry, answer, wording);
    return said;
}

QString chanceWords(double chance, std::optional<double> error, const Wording &wording)
{
    // Of a chance that n paths gave, pulled a little from the ends.
    const double n = kStockPaths;
    const double pulled = (chance * n + 2.0) / (n + 4.0);
    EventRisk risk;
    risk.chance = chance;
    risk.error = error.value_or(std::sqrt(pulled * (1.0 - pulled) / (n + 4.0)));
    const double step = shownStep(risk.error);
    const double shown = shownChance(risk);
    const int decimals = step < 0.0099 ? 1 : 0;
    const auto percent = [&](double part) {
        return QString(formatNumber(100.0 * part, decimals, localeOf(wording)) +
                       QStringLiteral(" %"));
    };
    if (shown < step / 2)
        return QString(QStringLiteral("under ") + percent(step));
    if (shown > 1.0 - step / 2)
        return QString(QStringLiteral("over ") + percent(1.0 - step));
    return percent(shown);
}

} // namespace rickyard::domain
