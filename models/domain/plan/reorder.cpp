#include "models/domain/plan/reorder.h"

#include "models/domain/answers/wording.h"
#include "models/domain/plan/reorder_words.h"
#include "models/domain/plan/supply.h"

#include <algorithm>
#include <cmath>

namespace rickyard::domain {

namespace {

// The need of several cooks with its band. The half-widths of the single prediction intervals are
// added as variances, which takes the cooks as independent. They are not quite: cooks on one pit
// share the error of its norm, and a cold spell falls on all of them, so the band of a long sum is
// somewhat too narrow. The simulation that comes later will draw what they share.
class Need
{
public:
    void add(const PlannedUse &use)
    {
        m_middle += use.middle;
        m_above += std::pow((use.upper - use.middle).toDouble(), 2);
        m_below += std::pow((use.middle - use.lower).toDouble(), 2);
    }
    [[nodiscard]] Heat middle() const { return m_middle; }
    [[nodiscard]] Heat upper() const { return m_middle + Heat::rounded(std::sqrt(m_above)); }
    [[nodiscard]] Heat lower() const { return m_middle - Heat::rounded(std::sqrt(m_below)); }

private:
    Heat m_middle;
    double m_above = 0;
    double m_below = 0;
};

// Dry wood now and the orders that may be counted on.
struct Supply {
    Heat now;
    QVector<OnTheWay> coming;

    // A load comes in the day, a fire is lit before dawn: wood that comes on a day serves the fires
    // of the days after it.
    [[nodiscard]] Heat before(QDate day) const
    {
        Heat sum = now;
        for (const OnTheWay &order : coming)
            if (order.counted && order.day < day)
                sum += order.heat;
        return sum;
    }
    [[nodiscard]] Heat atEndOf(QDate day) const { return before(day.addDays(1)); }
};

QDate lightingDay(const PlannedUse &use, const QTimeZone &zone, QDate today)
{
    return std::max(dayOf(use.light, zone), today);
}

Need runDown(QVector<PlannedUse> &uses, const Supply &supply, const QTimeZone &zone, QDate today)
{
    Need need;
    for (PlannedUse &use : uses) {
        need.add(use);
        const Heat stock = supply.before(lightingDay(use, zone, today));
        use.stockAfter = stock - need.middle();
        use.shortfall = std::max(need.upper() - stock, Heat());
        use.shortOf = use.shortfall.base() > 0;
    }
    return need;
}

QVector<StockPoint> courseOf(const QVector<PlannedUse> &uses, const Supply &supply,
                             const QTimeZone &zone, QDate today)
{
    QDate last = today.addDays(kCourseDays);
    if (!uses.isEmpty())
        last = std::max(last, lightingDay(uses.last(), zone, today));
    QVector<StockPoint> course;
    Need need;
    qsizetype next = 0;
    for (QDate day = today; day <= last; day = day.addDays(1)) {
        while (next < uses.size() && lightingDay(uses.at(next), zone, today) <= day)
            need.add(uses.at(next++));
        const Heat stock = supply.atEndOf(day);
        course << StockPoint{day, stock - need.middle(), stock - need.upper(),
                             stock - need.lower()};
    }
    return course;
}

// The amount must close the gap at every cook before other wood comes, not only at the last.
Heat worstShortfall(const QVector<PlannedUse> &uses)
{
    Heat worst;
    for (const PlannedUse &use : uses)
        worst = std::max(worst, use.shortfall);
    return worst;
}

void order(WoodAnswer &answer, const Books &books, const PlannedUse &first, QDate today,
           QDate cookDay, WoodGrounds &grounds, const Wording &wording)
{
    answer.firstShortCook = first.plannedCook;
    answer.firstShortEvent = first.event;
    const QDate latestArrival = cookDay.addDays(-1);
    const RecordId wanted = books.plannedCooks.value(first.plannedCook).species.value_or(0);
    const Purchase purchase = bestPurchase(purchasesOf(books, wanted), today, latestArrival);
    answer.supplier = purchase.supplier;
    answer.species = purchase.species;
    answer.leadTime = purchase.lead.duration;
    answer.units = unitsFor(answer.missing, purchase);
    answer.amount = purchase.volume * static_cast<double>(answer.units);
    answer.amountInUnit = amountWords(purchase, answer.units, wording);
    answer.orderBy = latestArrival.addDays(-purchase.lead.days());
    answer.lateDays = std::max<qint64>(0, answer.orderBy.daysTo(today));
    answer.orderBy = std::max(answer.orderBy, today);
    grounds.purchase = purchase;
}

} // namespace

WoodAnswer woodAnswerFrom(const Books &books, const QVector<PlannedUse> &uses, Instant now,
                          const Wording &wording)
{
    const QTimeZone zone = zoneOf(wording);
    WoodGrounds grounds;
    grounds.today = dayOf(now, zone);
    grounds.coming = ordersOnTheWay(books, grounds.today);
    WoodAnswer answer;
    answer.stock = stockAt(books, now);
    answer.uses = uses;
    const Supply supply{answer.stock.readyHeat, grounds.coming};
    const Need need = runDown(answer.uses, supply, zone, grounds.today);
    grounds.needMiddle = need.middle();
    grounds.needLower = need.lower();
    grounds.needUpper = need.upper();
    answer.course = courseOf(answer.uses, supply, zone, grounds.today);
    answer.missing = worstShortfall(answer.uses);
    const auto first = std::find_if(answer.uses.cbegin(), answer.uses.cend(),
                                    [](const PlannedUse &use) { return use.shortOf; });
    if (first != answer.uses.cend())
        order(answer, books, *first, grounds.today, lightingDay(*first, zone, grounds.today),
              grounds, wording);
    answer.headline = woodHeadline(books, answer, grounds, wording);
    return answer;
}

WoodAnswer woodAnswer(const Books &books, const FuelAnswer &fuel, Instant now,
                      const Wording &wording)
{
    return woodAnswerFrom(books, plannedUses(books, fuel, now), now, wording);
}

} // namespace rickyard::domain
