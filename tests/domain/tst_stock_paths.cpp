// The paths of the stock against closed forms and full enumeration. Every comparison of a simulated
// figure allows four of its own Monte Carlo standard errors.
#include "models/domain/statistics/distributions.h"
#include "tests/domain/stock_plans.h"
#include "tests/support/reference_table.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>
#include <limits>
#include <numeric>

using namespace rickyard::domain;
using namespace rickyard::test;

class TstStockPaths : public QObject
{
    Q_OBJECT
private slots:
    void spreadsMeetTheirNumbers();
    void oneNormalNeedIsTheLossTable();
    void newsvendorCost();
    void reorderPointHoldsItsRisk();
    void randomLeadTime();
    void lumpyLeadTimeAgainstEnumeration();
    void twoSuppliersAgainstEnumeration();
    void orderedAgainWhenLate();
    void handWorkedPath();
    void reservedAndHeld();
    void greenWoodWaits();
    void steadyUnplannedUse();
    void unplannedFiresComeAtTheirRate();
    void sharedErrorWidensTheSum();
};

void TstStockPaths::spreadsMeetTheirNumbers()
{
    const auto meets = [](const Spread &s, double chance, double value) {
        return std::abs(s.quantile(chance) - value) < 1e-3 * std::max(1.0, std::abs(value));
    };
    for (const Spread &s : {Spread::lognormal(100, 85, 125), Spread::studentT(100, 85, 125, 6)}) {
        QVERIFY(meets(s, 0.05, 85));
        QVERIFY(meets(s, 0.5, 100));
        QVERIFY(meets(s, 0.95, 125));
    }
    // A hundred days at 10 %, 40 % of never within the horizon.
    const Spread days = Spread::quantiles({{0.1, 100}, {0.6, 150}});
    QCOMPARE(days.quantile(0.05), 100.0);
    QVERIFY(meets(days, 0.35, 125));
    QVERIFY(std::isinf(days.quantile(0.61)));
    const Spread rolls = Spread::sample({{21, 1}, {7, 3}, {5, 0}});
    QCOMPARE(rolls.quantile(0.74), 7.0);
    QCOMPARE(rolls.quantile(0.76), 21.0);
    QVERIFY(Spread().isFixed());
    // Student t: published two-sided 90 % point of 4 degrees of freedom, 2.132 (any table).
    QVERIFY(std::abs(Spread::studentT(0, -2.132, 2.132, 4).quantile(0.9) - 1.533) < 1e-3);
    // The curve that stands in for the quantile of Student t, against the exact one.
    double worst = 0;
    for (const double nu : {1.5, 3.0, 4.7, 12.0, 80.0})
        for (double p = 0.0004; p < 1.0; p += 0.0131) {
            const double exact = statistics::quantile(statistics::StudentT{nu}, p).value();
            const double half = statistics::twoSided(statistics::StudentT{nu}, 0.90).value();
            const double t = Spread::studentT(0, -half, half, nu).quantile(p);
            worst = std::max(worst, std::abs(t - exact) / std::max(1.0, std::abs(exact)));
        }
    QVERIFY2(worst < 2e-3, qPrintable(QString::number(worst)));
    for (const Spread &s : {Spread::lognormal(100, 85, 125), Spread::studentT(100, 85, 125, 6),
                            Spread::sample({{3, 1}, {4, 2}}), Spread::normal(5, 2)})
        for (const double p : {0.1, 0.5, 0.97})
            QVERIFY(std::abs(s.times(2.5).quantile(p) - 2.5 * s.quantile(p)) < 1e-9);
    DrawStream stream(1, DrawSubject::Need);
    std::vector<double> draws(100000);
    Spread::normal(50, 8).fill(stream, draws.data(), 100000);
    const double mean = std::accumulate(draws.begin(), draws.end(), 0.0) / 1e5;
    double squares = 0;
    for (const double x : draws)
        squares += (x - mean) * (x - mean);
    QVERIFY(within(mean, 50, 8 / std::sqrt(1e5)));
    QVERIFY(within(std::sqrt(squares / 1e5), 8, 8 / std::sqrt(2e5)));
}

// A stock of mu + z sigma against one need of N(mu, sigma): chance 1 - Phi(z), mean shortage
// sigma L(z), by the normal loss table.
void TstStockPaths::oneNormalNeedIsTheLossTable()
{
    const ReferenceTable table(QStringLiteral("normal_loss_table.csv"));
    QVERIFY(table.rows() > 30);
    int compared = 0;
    for (qsizetype i = 0; i < table.rows(); i += 4) {
        const double z = table.number(i, QStringLiteral("z"));
        StockPlan plan;
        plan.days = 10;
        plan.events = 1;
        plan.needs.push_back(needOn(3, 0, Spread::normal(100, 10), 1));
        plan.lots.push_back(lotOf(Spread::fixed(100 + 10 * z), Spread::fixed(0), 1));
        const EventRisk risk = outcomeOf(plan, {}, 11, 40000).events.front();
        const double loss = table.number(i, QStringLiteral("L"));
        const double second = table.number(i, QStringLiteral("L2"));
        // Var of (Z - z)+ is 2 L2 - L^2.
        const double lossError = 10 * std::sqrt((2 * second - loss * loss) / 40000);
        QVERIFY(within(risk.chance, 1 - table.number(i, QStringLiteral("Phi")), risk.error));
        QVERIFY(within(risk.meanShort, 10 * loss, lossError));
        ++compared;
    }
    QVERIFY(compared > 10);
}

// Snyder and Shen, example 4.3 (inventory_examples.csv): h 0.18, p 0.70, N(50, 8): at the stock
// 56.6039559274 the cost is 1.99760519318 and the chance of running short h / (h + p).
void TstStockPaths::newsvendorCost()
{
    const ReferenceTable t(QStringLiteral("inventory_examples.csv"));
    const double stock = t.lookup(QStringLiteral("newsvendor stock"), QStringLiteral("value"));
    const double cost = t.lookup(QStringLiteral("newsvendor cost"), QStringLiteral("value"));
    StockPlan plan;
    plan.days = 1;
    plan.events = 1;
    plan.needs.push_back(needOn(0, 0, Spread::normal(50, 8), 1));
    plan.lots.push_back(lotOf(Spread::fixed(stock), Spread::fixed(0), 1));
    constexpr int n = 100000;
    const StockOutcome o = outcomeOf(plan, {}, 5, n);
    const EventRisk risk = o.events.front();
    QVERIFY(within(risk.chance, 0.18 / 0.88, risk.error));
    // The cost of a path is 0.18 or 0.70 times |stock - need|: its scatter is below 0.7 x 8.
    QVERIFY(within(0.18 * o.lotLeft.front() + 0.70 * risk.meanShort, cost,
                   0.7 * 8 / std::sqrt(double(n))));
}

// Ten days of N(30, 5) on a stock of the reorder point (carpet store, Taylor): short in 5 %.
void TstStockPaths::reorderPointHoldsItsRisk()
{
    const ReferenceTable t(QStringLiteral("inventory_examples.csv"));
    const double point =
        t.lookup(QStringLiteral("carpet reorder point exact z"), QStringLiteral("value"));
    StockPlan plan;
    plan.days = 10;
    plan.events = 1;
    for (int day = 0; day < 10; ++day)
        plan.needs.push_back(needOn(day, 0, Spread::normal(30, 5), day + 1));
    plan.lots.push_back(lotOf(Spread::fixed(point), Spread::fixed(0), 1));
    const EventRisk risk = outcomeOf(plan, {}, 3, 40000).events.front();
    QVERIFY(within(risk.chance, 0.05, risk.error));
}

// The same with a lead time of about N(10, 3): the sum over whole lead times is exact.
void TstStockPaths::randomLeadTime()
{
    constexpr double stock = 450.774251781;
    std::vector<std::pair<double, double>> lead;
    double exact = 0;
    for (int days = 1; days <= 24; ++days) {
        const double weight = phi((days + 0.5 - 10) / 3) - phi((days - 0.5 - 10) / 3);
        lead.emplace_back(days, weight);
        exact += weight * (1 - phi((stock - 30 * days) / (5 * std::sqrt(days))));
    }
    // The load serves the fires of the day after it: `days` fires are lit on the stock alone, the
    // first of them on the day of the order plus one.
    StockPlan plan;
    plan.days = 30;
    plan.events = 24;
    for (int day = 1; day <= 24; ++day)
        plan.needs.push_back(needOn(day, day - 1, Spread::normal(30, 5), day));
    plan.lots.push_back(lotOf(Spread::fixed(stock), Spread::fixed(0), 1));
    StockOffer offer;
    offer.leadDays = Spread::sample(lead);
    plan.offers.push_back(offer);
    WhatIf whatIf;
    whatIf.orders.push_back({0, 0, 10000, 0, 0});
    const EventRisk risk = outcomeOf(plan, whatIf, 3, 40000).any;
    QVERIFY(within(risk.chance, exact, risk.error));
    qInfo("lead time N(10, 3): nominal 5 %%, exact %.2f %%, simulated %.2f %%", 100 * exact,
          100 * risk.chance);
}

// A lead time of 5 days, or 25 when the supplier lets one down; Bernoulli cooks. All outcomes are
// enumerated.
void TstStockPaths::lumpyLeadTimeAgainstEnumeration()
{
    const std::vector<int> days = {4, 7, 12, 20, 26, 33};
    const std::vector<std::pair<double, double>> use = {{60, 0.5}, {90, 0.3}, {150, 0.2}};
    const std::vector<std::pair<double, double>> lead = {{5, 0.75}, {12, 0.15}, {25, 0.10}};
    constexpr double stock = 220;
    constexpr double load = 480;
    constexpr double never = 0.04;
    std::vector<double> exact(days.size(), 0.0);
    const auto paths = static_cast<int>(std::pow(use.size(), days.size()));
    for (int code = 0; code < paths; ++code) {
        for (size_t l = 0; l <= lead.size(); ++l) {
            const bool comes = l < lead.size();
            double chance = comes ? lead[l].second * (1 - never) : never;
            double dry = stock;
            bool came = false;
            int rest = code;
            std::vector<bool> isShort(days.size(), false);
            for (size_t i = 0; i < days.size(); ++i, rest /= int(use.size())) {
                const auto &[heat, p] = use[size_t(rest) % use.size()];
                chance *= p;
                if (comes && !came && days[i] > lead[l].first) {
                    dry += load;
                    came = true;
                }
                isShort[i] = dry < heat;
                dry = std::max(0.0, dry - heat);
            }
            for (size_t i = 0; i < days.size(); ++i)
                exact[i] += isShort[i] ? chance : 0.0;
        }
    }
    StockPlan plan;
    plan.days = 40;
    plan.events = int(days.size());
    for (size_t i = 0; i < days.size(); ++i)
        plan.needs.push_back(needOn(days[i], int(i), Spread::sample(use), qint64(i) + 1));
    plan.lots.push_back(lotOf(Spread::fixed(stock), Spread::fixed(0), 1));
    StockOffer offer;
    offer.leadDays = Spread::sample(lead);
    offer.never = never;
    plan.offers.push_back(offer);
    WhatIf whatIf;
    whatIf.orders.push_back({0, 0, load, 0, 0});
    const StockOutcome o = outcomeOf(plan, whatIf, 8, 40000);
    for (size_t i = 0; i < days.size(); ++i) {
        QVERIFY(within(o.events[i].chance, exact[i], o.events[i].error));
        QCOMPARE(o.needChance[i], o.events[i].chance);
    }
    QVERIFY(exact[2] > 0.05 && exact[3] > exact[1]); // the case is not an empty one
}

// Two open orders that may each come late or never: four outcomes each.
void TstStockPaths::twoSuppliersAgainstEnumeration()
{
    StockPlan plan;
    plan.days = 30;
    plan.events = 1;
    plan.needs.push_back(needOn(15, 0, Spread::fixed(100), 1));
    for (int i = 0; i < 2; ++i) {
        StockDelivery d;
        d.heat = Spread::fixed(i == 0 ? 60 : 40);
        d.arrivalDay = Spread::sample({{10, 0.7}, {15, 0.3}}); // the 15th is a day too late
        d.never = 0.1;
        d.key = i + 1;
        plan.deliveries.push_back(d);
    }
    const double inTime = 0.7 * 0.9;
    const EventRisk risk = outcomeOf(plan, {}, 2, 40000).events.front();
    QVERIFY(within(risk.chance, 1 - inTime * inTime, risk.error));
    QVERIFY(within(risk.meanShort, 100 * (1 - inTime), 60 / std::sqrt(40000.0)));
}

// 7 days or, one time in five, 30; ordered again after 9. The second of two such loads comes on day
// 16 or 39: a need on day 17 goes short in one of 25 paths, and one on day 16 in one of 5.
void TstStockPaths::orderedAgainWhenLate()
{
    for (const int day : {16, 17, 31}) {
        StockPlan plan;
        plan.days = 40;
        plan.events = 1;
        plan.needs.push_back(needOn(day, 0, Spread::fixed(100), 1));
        StockOffer offer;
        offer.leadDays = Spread::sample({{7, 0.8}, {30, 0.2}});
        offer.againAfter = 9;
        plan.offers.push_back(offer);
        WhatIf whatIf;
        whatIf.orders.push_back({0, 0, 100, 0, 0});
        const StockOutcome o = outcomeOf(plan, whatIf, 9, 40000);
        const double exact = day == 16 ? 0.2 : day == 17 ? 0.04 : 0.0;
        QVERIFY(within(o.events[0].chance, exact, o.events[0].error));
        // In the end both loads are there where two were ordered.
        QVERIFY(day < 31 || std::abs(o.allLeft - 20.0) < 4 * 40 / std::sqrt(40000.0));
    }
}

// Certain numbers, worked by hand: lots 50 (dry), 30 (dry on day 6), 40 held; needs 45 on day 2,
// 20 on day 5 (finds 5), 25 on day 6 (the second lot, burned to 5), and a load of 10 that comes on
// day 8 for a need of 12 on day 9 (5 + 10: 3 left).
void TstStockPaths::handWorkedPath()
{
    StockPlan plan;
    plan.days = 12;
    plan.events = 4;
    plan.needs = {needOn(9, 3, Spread::fixed(12), 4), needOn(2, 0, Spread::fixed(45), 1),
                  needOn(5, 1, Spread::fixed(20), 2), needOn(6, 2, Spread::fixed(25), 3)};
    plan.lots = {lotOf(Spread::fixed(50), Spread::fixed(0), 1),
                 lotOf(Spread::fixed(30), Spread::fixed(6), 2),
                 lotOf(Spread::fixed(40), Spread::fixed(0), 3)};
    plan.lots[2].held = true;
    StockDelivery load;
    load.heat = Spread::fixed(10);
    load.arrivalDay = Spread::fixed(8);
    plan.deliveries.push_back(load);
    WhatIf whatIf;
    whatIf.course = true;
    const StockOutcome o = outcomeOf(plan, whatIf, 1, 100);
    const std::vector<double> missing = {0, 15, 0, 0};
    for (size_t e = 0; e < 4; ++e) {
        QCOMPARE(o.events[e].meanShort, missing[e]);
        QCOMPARE(o.events[e].chance, missing[e] > 0 ? 1.0 : 0.0);
    }
    QCOMPARE(o.lotLeft, (std::vector<double>{0, 0, 40}));
    QCOMPARE(o.allLeft, 3.0);
    const std::vector<double> dry = {50, 50, 5, 5, 5, 30, 5, 5, 15, 3, 3, 3};
    const std::vector<double> all = {120, 120, 75, 75, 75, 70, 45, 45, 55, 43, 43, 43};
    for (size_t day = 0; day < dry.size(); ++day) {
        QVERIFY(std::abs(o.course[day].middle - dry[day]) < 1e-9);
        QVERIFY(std::abs(o.meanDry[day] - dry[day]) < 1e-9);
        QVERIFY(std::abs(o.meanOnYard[day] - all[day]) < 1e-9);
    }
}

void TstStockPaths::reservedAndHeld()
{
    StockPlan plan;
    plan.days = 12;
    plan.events = 2;
    plan.needs = {needOn(2, 0, Spread::fixed(40), 1), needOn(5, 1, Spread::fixed(40), 2)};
    plan.lots = {lotOf(Spread::fixed(50), Spread::fixed(0), 1),
                 lotOf(Spread::fixed(30), Spread::fixed(0), 2)};
    plan.lots[1].reservedFor = 1;
    StockOutcome o = outcomeOf(plan, {}, 1, 100);
    QCOMPARE(o.any.chance, 0.0);
    QCOMPARE(o.lotLeft, (std::vector<double>{0, 0})); // 30 of its own, then the 10 left
    plan.lots[1].reservedFor = 0; // now the first event burns it and spares the other lot
    o = outcomeOf(plan, {}, 1, 100);
    QCOMPARE(o.any.chance, 0.0);
    plan.lots[0].reservedFor = 0;
    o = outcomeOf(plan, {}, 1, 100);
    QCOMPARE(o.events[1].meanShort, 40.0);
    QCOMPARE(o.lotLeft, (std::vector<double>{10, 30}));
    plan.lots[0].reservedFor = -1;
    plan.lots[0].held = true;
    o = outcomeOf(plan, {}, 1, 100);
    QCOMPARE(o.events[0].meanShort, 10.0);
    QCOMPARE(o.events[1].meanShort, 40.0);
}

// A green load that is a fortnight under way and dries for 100 to 200 days serves a cook on day 165
// when it has dried within 150 days of standing there: half the time.
void TstStockPaths::greenWoodWaits()
{
    StockPlan plan;
    plan.days = 300;
    plan.events = 1;
    plan.needs.push_back(needOn(165, 0, Spread::fixed(100), 1));
    StockOffer green;
    green.leadDays = Spread::fixed(14);
    green.dryingDays = Spread::quantiles({{0, 100}, {1, 200}});
    plan.offers.push_back(green);
    WhatIf whatIf;
    whatIf.orders.push_back({0, 0, 100, 0, 0});
    const EventRisk risk = outcomeOf(plan, whatIf).events.front();
    QVERIFY(within(risk.chance, 0.5, risk.error));
}

// A chance of one a day of a fixed amount is a plain rate: 10 a day on a stock of 95 is short from
// the tenth day on.
void TstStockPaths::steadyUnplannedUse()
{
    StockPlan plan;
    plan.days = 12;
    plan.events = 1;
    plan.unplanned = {1.0, Spread::fixed(10)};
    plan.needs.push_back(needOn(8, 0, Spread::fixed(20), 1)); // finds 95 - 80
    plan.lots.push_back(lotOf(Spread::fixed(95), Spread::fixed(0), 1));
    const StockOutcome o = outcomeOf(plan, {}, 1, 100);
    QCOMPARE(o.events[0].meanShort, 5.0);
    QCOMPARE(o.unplanned.meanShort, 40.0); // days 8 to 11
}

// Twelve days at a chance of 0.2 a day: the number of fires is binomial.
void TstStockPaths::unplannedFiresComeAtTheirRate()
{
    StockPlan plan;
    plan.days = 12;
    plan.events = 0;
    plan.unplanned = {0.2, Spread::fixed(1)};
    plan.lots.push_back(lotOf(Spread::fixed(3), Spread::fixed(0), 1));
    double exact = 1; // chance of more than three fires
    double left = 0;
    double term = std::pow(0.8, 12);
    for (int k = 0; k <= 3; ++k) {
        exact -= term;
        left += (3 - k) * term;
        term *= (12.0 - k) / (k + 1) * 0.25;
    }
    const StockOutcome o = outcomeOf(plan, {}, 4, 40000);
    QVERIFY(within(o.unplanned.chance, exact, o.unplanned.error));
    QVERIFY(within(o.lotLeft.front(), left, 1.5 / std::sqrt(40000.0)));
}

// Four needs N(100, 10) that share half the variance: the sum has variance 4 x 50 + 16 x 50.
void TstStockPaths::sharedErrorWidensTheSum()
{
    StockPlan plan;
    plan.days = 10;
    plan.events = 1;
    for (int i = 0; i < 4; ++i) {
        plan.needs.push_back(needOn(i, 0, Spread::normal(100, 10), i + 1));
        plan.needs.back().group = 3;
        plan.needs.back().shared = 0.5;
    }
    plan.lots.push_back(lotOf(Spread::fixed(430), Spread::fixed(0), 1));
    const EventRisk risk = outcomeOf(plan, {}, 6, 40000).events.front();
    QVERIFY(within(risk.chance, 1 - phi(30 / std::sqrt(1000.0)), risk.error));
}

RICKYARD_TEST(TstStockPaths)
#include "tst_stock_paths.moc"
