// A yard and what is asked of it, for the tests of the question behind the wood answer.
#pragma once

#include "models/domain/plan/order_question.h"
#include "tests/domain/wood_plan_builder.h"

#include <algorithm>

namespace rickyard::test {

struct Asked {
    Books books;
    QVector<PlannedUse> uses;
    FuelAnswer fuel;
    QMap<RecordId, SeasoningForecast> seasoning;
    double accepted = 0.05;

    [[nodiscard]] BookQuestion question() const
    {
        const Stock stock = stockAt(books, day(0));
        const Wording wording;
        return orderQuestion({books, uses, fuel, seasoning, stock, day(0), wording}, accepted);
    }
    [[nodiscard]] WoodAnswer answer() const
    {
        return woodAnswerFrom(books, uses, fuel, seasoning, day(0), {});
    }
    [[nodiscard]] double chance(int risk = 0) const { return answer().risks.at(risk).chance; }
};

inline Asked plain(double stock = 500)
{
    Asked asked;
    asked.books = emptyYard();
    if (stock > 0)
        stockUp(asked.books, stock);
    addSupplier(asked.books, 1, SellUnit::QuarterCord, 7, 12000);
    addEvent(asked.books, 1, QStringLiteral("River Lane Lunch"), day(12, 16));
    addEvent(asked.books, 2, QStringLiteral("Mill Field Supper"), day(20, 16));
    asked.uses = {need(1, day(11), 300, 1.2, 1), need(2, day(19), 300, 1.2, 2)};
    return asked;
}

inline bool has(const QVector<Reason> &reasons, const QString &label, const QString &part,
                bool assumption)
{
    return std::any_of(reasons.cbegin(), reasons.cend(), [&](const Reason &reason) {
        return reason.label == label && reason.value.contains(part) &&
               reason.assumption == assumption;
    });
}

// A forecast made up: dry with chance 0.2 now, 0.6 in 5 days, 0.95 in 30.
inline SeasoningForecast drying()
{
    SeasoningForecast forecast;
    forecast.today = 20423;
    forecast.curve = {
        {20423, 19, 22, 25, 0.2}, {20428, 17, 19, 22, 0.6}, {20453, 15, 17, 19, 0.95}};
    forecast.chanceNow = 0.2;
    forecast.readyEarly = 20423;
    forecast.readyLikely = 20427;
    forecast.readyLate = 20451;
    return forecast;
}

} // namespace rickyard::test
