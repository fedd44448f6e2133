#include "models/domain/plan/wood_choices.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

WoodOrderChoice choiceOf(const OrderChoice &found, const WoodAnswer &answer, const Wording &wording)
{
    const int index = static_cast<int>(found.offer);
    const WoodSource &source = answer.sources.at(index);
    WoodOrderChoice choice;
    choice.source = index;
    choice.supplier = source.supplier;
    choice.species = source.species;
    choice.green = source.green;
    choice.units = found.units;
    choice.amount = amountWords(source, found.units, wording);
    choice.stacked = source.unitStacked * static_cast<double>(found.units);
    for (const OrderLoad &load : found.loads)
        choice.loads << WoodLoad{answer.today.addDays(load.day), load.units, load.straightToEvent};
    choice.orderBy = answer.today.addDays(found.orderBy);
    choice.arrival = dayAt(answer.today, found.arrivesLikely);
    choice.keeps = found.keeps;
    for (const int event : found.lost)
        choice.lost << event;
    if (found.worstEvent >= 0) {
        choice.worstEvent = answer.risks.at(found.worstEvent).event;
        choice.worst = answer.risks.at(found.worstEvent).name;
    }
    choice.chance = found.risk.chance;
    choice.chanceError = found.risk.error;
    choice.chanceToday = found.riskToday;
    choice.chanceLate = found.riskLate;
    choice.chanceColder = found.riskColder;
    if (found.cost)
        choice.cost = Money::rounded(*found.cost);
    return choice;
}

} // namespace

QDate dayAt(QDate today, double days)
{
    constexpr double kMost = 3650;
    return today.addDays(static_cast<qint64>(std::floor(std::clamp(days, 0.0, kMost))));
}

QVector<WoodRisk> withFigures(QVector<WoodRisk> risks, const StockOutcome &outcome)
{
    for (qsizetype i = 0; i < risks.size(); ++i) {
        const EventRisk &risk = outcome.events.at(static_cast<size_t>(i));
        risks[i].chance = risk.chance;
        risks[i].error = risk.error;
        risks[i].meanShort = heatFromSeasonedPounds(risk.meanShort);
        risks[i].whenShort = heatFromSeasonedPounds(risk.shortWhenShort);
    }
    return risks;
}

QVector<StockPoint> courseOf(const StockOutcome &outcome, QDate today, qsizetype days)
{
    QVector<StockPoint> course;
    const auto count = std::min(days, static_cast<qsizetype>(outcome.course.size()));
    for (qsizetype d = 0; d < count; ++d) {
        const StockBand &band = outcome.course[static_cast<size_t>(d)];
        course << StockPoint{today.addDays(d), heatFromSeasonedPounds(band.middle),
                             heatFromSeasonedPounds(band.lower),
                             heatFromSeasonedPounds(band.upper)};
    }
    return course;
}

QVector<WoodOrderChoice> choicesOf(const std::vector<OrderChoice> &found, const WoodAnswer &answer,
                                   const Wording &wording)
{
    QVector<WoodOrderChoice> choices;
    for (const OrderChoice &one : found)
        choices << choiceOf(one, answer, wording);
    return choices;
}

} // namespace rickyard::domain
