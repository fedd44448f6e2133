// Two years of a crew, replayed: invented events, needs from the heat balance under real weather
// (Newark 2013, each day drawn from within a fortnight of its date), a supplier who is late in
// lumps. Two ways of ordering meet the same luck: the program's advice, looked at every morning,
// and "order a cord when half a cord is left". Heat is in seasoned pounds.
#pragma once

#include "models/domain/fire/heat_balance.h"
#include "models/domain/plan/lead_record.h"
#include "models/domain/plan/order_plan.h"
#include "models/domain/quantities/quantity.h"
#include "models/domain/statistics/distributions.h"
#include "models/domain/wood/supplier_record.h"
#include "tests/domain/watch_season.h"

#include <QFile>

#include <algorithm>
#include <cmath>
#include <deque>
#include <functional>
#include <string>
#include <vector>

namespace rickyard::test {

constexpr double kCordPounds = 3500.0; // seasoned pounds a cord, about that of oak at 20 %
constexpr int kSeasonDays = 730;
constexpr int kPromisedDays = 7;
constexpr int kWrittenOff = 35; // days past the promise after which a load is given up
constexpr double kScatterOfCooks = 0.10;

struct DayWeather {
    double celsius = 0;
    double wind = 0; // m/s
};

// Empty when the file cannot be read: tests assert on it.
inline std::vector<DayWeather> newarkDays()
{
    QFile file(QStringLiteral(RICKYARD_TEST_DATA "/weather/newark-2013-daily.csv"));
    std::vector<DayWeather> days;
    if (!file.open(QIODevice::ReadOnly))
        return days;
    for (const QByteArray &line : file.readAll().split('\n')) {
        const auto cells = line.split(',');
        bool ok = false;
        if (cells.size() == 3 && cells[1].toDouble(&ok) > -100 && ok)
            days.push_back({(cells[1].toDouble() - 32) / 1.8, cells[2].toDouble() * 0.44704});
    }
    return days;
}

struct ReplayCook {
    int day = 0;
    int event = 0;
    domain::Spread expected; // what the plan knows
    double need = 0;         // what it takes
};

struct ReplaySeason {
    std::vector<ReplayCook> cooks; // by day
    int events = 0;
    std::vector<double> unplanned; // by day
    std::uint64_t seed = 0;
};

// Chance and size of a small fire that nobody planned.
constexpr double kUnplannedChance = 0.03;
inline domain::Spread unplannedHeat()
{
    return domain::Spread::lognormal(40, 25, 64);
}

inline double cookPounds(const domain::HeatShape &shape, const DayWeather &weather, double hours)
{
    domain::HeatCook cook;
    cook.target = 121.0;
    cook.outsideAtStart = weather.celsius;
    cook.foodMass = 60.0;
    cook.course.push_back({3600.0 * hours, cook.target, weather.celsius, weather.wind, 0.0});
    return domain::totalHeat(domain::heatColumns(shape, cook)) / domain::kEfficiency /
           domain::kJoulesPerSeasonedPound;
}

inline ReplayCook replayCook(Dice &dice, const std::vector<DayWeather> &days,
                             const domain::HeatShape &shape, int day, int event)
{
    const double hours = std::round(dice.between(10.0, 14.0));
    const auto size = static_cast<int>(days.size());
    double mean = 0;
    double squares = 0;
    const auto heatOn = [&](int offset) {
        const auto index = static_cast<size_t>(((day + offset) % size + size) % size);
        return cookPounds(shape, days[index], hours);
    };
    for (int offset = -15; offset <= 15; ++offset) {
        const double x = std::log(heatOn(offset));
        mean += x / 31;
        squares += x * x / 31;
    }
    const double sd =
        std::sqrt(squares - mean * mean + kScatterOfCooks * kScatterOfCooks) * 1.6448536;
    ReplayCook cook;
    cook.day = day;
    cook.event = event;
    cook.expected =
        domain::Spread::lognormal(std::exp(mean), std::exp(mean - sd), std::exp(mean + sd));
    cook.need =
        heatOn(int(std::floor(dice.between(-15.0, 16.0)))) * dice.lognormal(kScatterOfCooks);
    return cook;
}

// Every second Saturday, or with irregular gaps of 5 to 30 days; two pits as a rule, now and then
// one or three.
inline ReplaySeason replaySeason(std::uint64_t seed, bool irregular,
                                 const std::vector<DayWeather> &days)
{
    Dice dice(seed);
    ReplaySeason season;
    season.seed = seed;
    const domain::HeatShape shape = domain::heatShape(inventedPit(1));
    int day = 12;
    while (day < kSeasonDays) {
        const double roll = dice.uniform();
        const int pits = roll < 0.2 ? 1 : roll < 0.85 ? 2 : 3;
        for (int p = 0; p < pits; ++p)
            season.cooks.push_back(replayCook(dice, days, shape, day, season.events));
        ++season.events;
        day += irregular ? int(std::floor(dice.between(5.0, 31.0))) : 14;
    }
    for (int d = 0; d < kSeasonDays; ++d)
        season.unplanned.push_back(
            dice.uniform() < kUnplannedChance ? unplannedHeat().atScore(dice.normal()) : 0.0);
    return season;
}

struct ReplayOrder {
    int placed = 0;
    int promised = 0;
    int arrives = 0; // the truth; never: beyond any day
    double heat = 0; // ordered
    double brings = 0;
};

// The supplier as they really are; nobody in the yard knows these numbers.
inline ReplayOrder replayOrder(std::uint64_t seed, int number, int day, double heat)
{
    Dice dice(seed * 7919U + static_cast<std::uint64_t>(number) + 500000U);
    const double roll = dice.uniform();
    const int late = roll < 0.55 ? 0 : roll < 0.75 ? 3 : roll < 0.87 ? 10 : roll < 0.97 ? 24 : 9999;
    ReplayOrder order;
    order.placed = day;
    order.promised = day + kPromisedDays;
    order.arrives = order.promised + late;
    order.heat = heat;
    order.brings = heat * std::clamp(0.96 + 0.05 * dice.normal(), 0.75, 1.05);
    return order;
}

// What the crew sees in the morning.
struct ReplayMorning {
    int day = 0;
    double stock = 0;
    std::deque<ReplayOrder> open;
    domain::LeadRecord record;
    QVector<double> shortBy; // fraction, one a delivery
};

// Says how much to order today; 0: nothing.
using ReplayPolicy = std::function<double(const ReplaySeason &, const ReplayMorning &)>;

struct ReplayResult {
    int events = 0;
    int shortEvents = 0;
    double meanStock = 0; // seasoned pounds, over the evenings
    double orders = 0;    // a year
    double ordered = 0;   // pounds an order
    [[nodiscard]] double share() const { return double(shortEvents) / events; }
};

inline double burnFrom(double &stock, double need)
{
    const double taken = std::min(stock, need);
    stock -= taken;
    return need - taken;
}

inline ReplayResult replay(const ReplaySeason &season, const ReplayPolicy &policy)
{
    ReplayResult result;
    result.events = season.events;
    ReplayMorning morning;
    morning.stock = kCordPounds;
    std::vector<bool> isShort(static_cast<size_t>(season.events), false);
    int number = 0;
    size_t next = 0;
    for (int day = 0; day < kSeasonDays; ++day) {
        morning.day = day;
        const double heat = policy(season, morning);
        if (heat > 0) {
            morning.open.push_back(replayOrder(season.seed, number++, day, heat));
            result.ordered += heat;
        }
        for (; next < season.cooks.size() && season.cooks[next].day == day; ++next)
            if (burnFrom(morning.stock, season.cooks[next].need) > 1e-9)
                isShort[static_cast<size_t>(season.cooks[next].event)] = true;
        burnFrom(morning.stock, season.unplanned[static_cast<size_t>(day)]);
        // Loads come in the day; those given up are told from those only late.
        for (size_t i = morning.open.size(); i-- > 0;) {
            const ReplayOrder order = morning.open[i];
            if (order.arrives != day && day < order.promised + kWrittenOff)
                continue;
            if (order.arrives == day) {
                morning.stock += order.brings;
                morning.record.daysLate.push_back(order.arrives - order.promised);
                morning.shortBy << 1.0 - order.brings / order.heat;
            } else {
                ++morning.record.neverCame;
            }
            morning.open.erase(morning.open.begin() + static_cast<std::ptrdiff_t>(i));
        }
        result.meanStock += morning.stock / kSeasonDays;
    }
    result.shortEvents = int(std::count(isShort.cbegin(), isShort.cend(), true));
    result.ordered = number > 0 ? result.ordered / number : 0.0;
    result.orders = number / 2.0;
    return result;
}

// "Order a cord when half a cord is left", what is on its way counted as left.
inline ReplayPolicy ruleOfThumb(double thresholdCords, double orderCords)
{
    return [=](const ReplaySeason &, const ReplayMorning &morning) {
        double position = morning.stock;
        for (const ReplayOrder &order : morning.open)
            position += order.heat;
        return position <= thresholdCords * kCordPounds ? orderCords * kCordPounds : 0.0;
    };
}

struct AdviceSettings {
    double accepted = 0.05;
    int lookAhead = 45; // days whose events an order is to serve
    double unitCords = 0.25;
    int paths = 1000;
    int againAfterPromise = 4; // days, then a load is ordered once more
};

// What of an order will come, from the deliveries so far.
inline domain::Spread expectedShare(const QVector<double> &soFar)
{
    const auto shortBy =
        domain::expectationOf(domain::tallyOf(soFar), domain::kDefaultShortScatter);
    const domain::statistics::StudentT t{shortBy.degreesOfFreedom};
    const double half = shortBy.scale * domain::statistics::twoSided(t, 0.90).value();
    const double middle = 1.0 - shortBy.mean;
    return domain::Spread::studentT(middle, middle - half, middle + half, t.degreesOfFreedom);
}

// The question as the program would put it on that morning, from what the crew can know.
inline domain::OrderQuestion replayQuestion(const ReplaySeason &season,
                                            const ReplayMorning &morning,
                                            const domain::Spread &share,
                                            const AdviceSettings &settings)
{
    domain::OrderQuestion q;
    q.acceptedRisk = settings.accepted;
    q.seed = season.seed;
    q.paths = settings.paths;
    q.plan.days = settings.lookAhead;
    q.plan.events = season.events;
    for (size_t i = 0; i < season.cooks.size(); ++i) {
        const ReplayCook &cook = season.cooks[i];
        if (cook.day < morning.day || cook.day >= morning.day + settings.lookAhead)
            continue;
        domain::StockNeed need;
        need.day = cook.day - morning.day;
        need.event = cook.event;
        need.heat = cook.expected;
        need.key = qint64(i);
        q.plan.needs.push_back(need);
    }
    domain::StockLot lot;
    lot.heat = domain::Spread::normal(morning.stock, 0.02 * morning.stock);
    q.plan.lots.push_back(lot);
    const auto outlook = domain::latenessOf(morning.record);
    for (const ReplayOrder &order : morning.open) {
        domain::StockDelivery delivery;
        const auto arrival = domain::arrivalOf(morning.record, order.promised - morning.day);
        delivery.heat = share.times(order.heat);
        delivery.arrivalDay = arrival.day;
        delivery.never = arrival.never;
        delivery.key = order.placed;
        q.plan.deliveries.push_back(delivery);
    }
    q.plan.unplanned = {kUnplannedChance, unplannedHeat()};
    domain::OfferTerms offer;
    offer.load.leadDays = domain::leadDays(morning.record, kPromisedDays);
    offer.load.never = outlook.never;
    offer.load.share = share;
    offer.load.againAfter = kPromisedDays + settings.againAfterPromise;
    offer.unitHeat = settings.unitCords * kCordPounds;
    q.offers.push_back(offer);
    return q;
}

// Orders what the program proposes on the day that it names as the last safe one. Whether it is
// safe to wait another day with what was proposed last is asked first: that is one run and not a
// dozen.
inline ReplayPolicy advice(const AdviceSettings &settings)
{
    struct Known { // worked out anew only when another load has come
        std::uint64_t season = 0;
        qsizetype loads = -1;
        domain::Spread share;
    };
    return [settings, units = 4, known = Known()](const ReplaySeason &season,
                                                  const ReplayMorning &morning) mutable {
        if (known.season != season.seed || known.loads != morning.shortBy.size())
            known = {season.seed, morning.shortBy.size(), expectedShare(morning.shortBy)};
        const auto planner =
            domain::OrderPlanner::start(replayQuestion(season, morning, known.share, settings))
                .value();
        if (planner.worst(planner.nothing(), false).risk.chance <= settings.accepted ||
            planner.riskIf(0, units, 1).risk.chance <= settings.accepted)
            return 0.0;
        const domain::OrderChoice choice = planner.choice(0);
        units = std::max(1, choice.units);
        return choice.orderBy > 0 ? 0.0 : choice.units * settings.unitCords * kCordPounds;
    };
}

inline ReplayResult replayAll(int seasons, bool irregular, const std::vector<DayWeather> &days,
                              const ReplayPolicy &policy)
{
    ReplayResult sum;
    for (int i = 0; i < seasons; ++i) {
        const auto one =
            replay(replaySeason(9000U + static_cast<std::uint64_t>(i), irregular, days), policy);
        sum.events += one.events;
        sum.shortEvents += one.shortEvents;
        sum.meanStock += one.meanStock / seasons;
        sum.orders += one.orders / seasons;
        sum.ordered += one.ordered / seasons;
    }
    return sum;
}

// The lowest threshold of the rule, in steps of a fiftieth of a cord, whose share of short events
// is no more than `share`; by bisection.
inline double thresholdFor(int seasons, bool irregular, const std::vector<DayWeather> &days,
                           double orderCords, double share)
{
    int low = 0;
    int high = 250;
    while (high - low > 1) {
        const int middle = (low + high) / 2;
        const auto result =
            replayAll(seasons, irregular, days, ruleOfThumb(middle / 50.0, orderCords));
        (result.share() <= share ? high : low) = middle;
    }
    return high / 50.0;
}

} // namespace rickyard::test
