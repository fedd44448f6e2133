// What must hold of the paths whatever the plan: more wood and earlier orders help, cold hurts, the
// same seed says the same, and what is wrong or past is told apart.
#include "tests/domain/stock_plans.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

class TstStockProperties : public QObject
{
    Q_OBJECT
private slots:
    void moreWoodNeverRaisesARisk();
    void earlierOrderNeverRaisesTheShortage();
    void colderNeverLowersARisk();
    void sameSeedSameAnswer();
    void oneRecordMoreLeavesTheOthersAlone();
    void shownDigitsAreStable();
    void courseAgreesWithItself();
    void edges();
    void refuses();
    void cancels();
};

void TstStockProperties::moreWoodNeverRaisesARisk()
{
    bool mattered = false;
    for (int which = 0; which < 12; ++which) {
        const auto drawn = StockPaths::draw(variedPlan(which), 100U + unsigned(which), 1000);
        QVERIFY(drawn.ok());
        std::vector<double> before(5, 2.0);
        for (const double heat : {0.0, 50.0, 51.0, 130.0, 400.0, 2000.0}) {
            WhatIf whatIf;
            whatIf.orders.push_back({0, 1, heat, 0, 0});
            const StockOutcome o = drawn.value().run(whatIf);
            for (size_t e = 0; e < before.size(); ++e) {
                QVERIFY(o.events[e].chance <= before[e]);
                mattered = mattered || (heat > 0 && o.events[e].chance < before[e]);
                before[e] = o.events[e].chance;
            }
        }
    }
    QVERIFY(mattered);
}

// The wood missing up to and including any event never grows when the order is placed earlier. Of
// a single event that is not true: wood that comes in time for one event is burned there, and the
// next may go without.
void TstStockProperties::earlierOrderNeverRaisesTheShortage()
{
    bool grew = false;
    for (int which = 0; which < 12; ++which) {
        StockPlan plan = variedPlan(which);
        for (size_t i = 0; i < plan.needs.size(); ++i)
            plan.needs[i].event = plan.needs[i].day / 11;
        for (StockLot &lot : plan.lots)
            lot.reservedFor = -1;
        plan.unplanned = {};
        const auto drawn = StockPaths::draw(plan, 200U + unsigned(which), 1000);
        QVERIFY(drawn.ok());
        std::vector<double> before(5, 0.0);
        double firstEvent = 0;
        for (int day = 0; day < 50; day += 3) {
            WhatIf whatIf;
            whatIf.orders.push_back({0, day, 250, 0, 0});
            const StockOutcome o = drawn.value().run(whatIf);
            double missing = 0;
            for (size_t e = 0; e < before.size(); ++e) {
                missing += o.events[e].meanShort;
                QVERIFY(missing >= before[e] - 1e-9);
                grew = grew || missing > before[e] + 1e-9;
                before[e] = missing;
            }
            QVERIFY(o.events[0].chance >= firstEvent); // it has nobody before it
            firstEvent = o.events[0].chance;
        }
    }
    QVERIFY(grew);
}

void TstStockProperties::colderNeverLowersARisk()
{
    for (int which = 0; which < 12; ++which) {
        const auto drawn = StockPaths::draw(variedPlan(which), 300U + unsigned(which), 1000);
        QVERIFY(drawn.ok());
        std::vector<double> before(5, -1.0);
        for (const double factor : {1.0, 1.03, 1.1, 1.25, 1.6}) {
            WhatIf whatIf;
            whatIf.orders.push_back({0, 5, 200, 0, 0});
            whatIf.needFactor.assign(9, 1.0);
            for (size_t i = 0; i < 9; i += 2)
                whatIf.needFactor[i] = factor;
            const StockOutcome o = drawn.value().run(whatIf);
            for (size_t e = 0; e < before.size(); ++e) {
                QVERIFY(o.events[e].chance >= before[e]);
                before[e] = o.events[e].chance;
            }
        }
    }
}

void TstStockProperties::sameSeedSameAnswer()
{
    WhatIf whatIf;
    whatIf.orders.push_back({0, 3, 200, 0, 0});
    whatIf.course = true;
    const StockOutcome a = outcomeOf(variedPlan(1), whatIf, 42);
    const StockOutcome b = outcomeOf(variedPlan(1), whatIf, 42);
    const StockOutcome c = outcomeOf(variedPlan(1), whatIf, 43);
    bool differs = false;
    for (size_t e = 0; e < a.events.size(); ++e) {
        QCOMPARE(a.events[e].meanShort, b.events[e].meanShort);
        differs = differs || a.events[e].meanShort != c.events[e].meanShort;
    }
    for (size_t day = 0; day < a.course.size(); ++day)
        QCOMPARE(a.course[day].lower, b.course[day].lower);
    QVERIFY(differs);
}

// A supplier more, a cook at the end more: what was drawn for the others stays as it was.
void TstStockProperties::oneRecordMoreLeavesTheOthersAlone()
{
    StockPlan plan = variedPlan(2);
    const StockOutcome a = outcomeOf(plan, {}, 7, 1000);
    plan.offers.push_back(plan.offers.front());
    plan.offers.back().key = 99;
    plan.needs.push_back(needOn(plan.days - 1, 4, Spread::normal(50, 5), 99));
    plan.days += 1;
    const StockOutcome b = outcomeOf(plan, {}, 7, 1000);
    for (size_t e = 0; e < 4; ++e)
        QCOMPARE(a.events[e].meanShort, b.events[e].meanShort);
}

// Over seeds the chance shown is the same or one step away.
void TstStockProperties::shownDigitsAreStable()
{
    QCOMPARE(shownStep(0.0002), 0.001);
    QCOMPARE(shownStep(0.0022), 0.01);
    QVERIFY(shownStep(0.0003) > 0.0015);
    double least = 1;
    double most = 0;
    double step = 0;
    for (quint64 seed = 1; seed <= 40; ++seed) {
        StockPlan plan;
        plan.days = 5;
        plan.events = 1;
        plan.needs.push_back(needOn(3, 0, Spread::normal(100, 10), 1));
        plan.lots.push_back(lotOf(Spread::fixed(116.45), Spread::fixed(0), 1));
        const EventRisk risk = outcomeOf(plan, {}, seed).events.front();
        step = shownStep(risk.error);
        least = std::min(least, shownChance(risk));
        most = std::max(most, shownChance(risk));
    }
    QCOMPARE(step, 0.01);
    QVERIFY(most - least < 1.5 * step);
    QVERIFY(std::abs(least - 0.05) < 1.5 * step);
}

void TstStockProperties::courseAgreesWithItself()
{
    WhatIf whatIf;
    whatIf.orders.push_back({0, 3, 200, 0, 0});
    const StockOutcome plain = outcomeOf(variedPlan(3), whatIf, 42);
    whatIf.course = true;
    const StockOutcome o = outcomeOf(variedPlan(3), whatIf, 42);
    QCOMPARE(plain.any.meanShort, o.any.meanShort);
    QVERIFY(plain.course.empty());
    QCOMPARE(int(o.course.size()), variedPlan(3).days);
    for (size_t day = 0; day < o.course.size(); ++day) {
        QVERIFY(o.course[day].lower <= o.course[day].middle);
        QVERIFY(o.course[day].middle <= o.course[day].upper);
        QVERIFY(o.meanDry[day] <= o.meanOnYard[day] + 1e-6);
    }
    QVERIFY(o.course[2].upper > o.course[2].lower);
    // A single lot of N(100, 10): its quantiles.
    StockPlan one;
    one.days = 2;
    one.lots.push_back(lotOf(Spread::normal(100, 10), Spread::fixed(0), 1));
    const StockOutcome fan =
        outcomeOf(one, whatIf.orders.empty() ? whatIf : WhatIf{{}, {}, 1, true});
    QVERIFY(std::abs(fan.course[0].lower - (100 - 16.4485)) < 4 * 0.21);
    QVERIFY(std::abs(fan.course[0].middle - 100) < 4 * 0.125);
    QVERIFY(std::abs(fan.course[0].upper - (100 + 16.4485)) < 4 * 0.21);
}

void TstStockProperties::edges()
{
    StockPlan plan;
    plan.days = 10;
    plan.events = 3;
    plan.needs = {needOn(-2, 0, Spread::fixed(50), 1), needOn(4, 1, Spread::fixed(50), 2),
                  needOn(10, 2, Spread::fixed(50), 3)};
    plan.lots = {lotOf(Spread::fixed(-30), Spread::fixed(0), 1), // counted below zero
                 lotOf(Spread::fixed(50), Spread::fixed(0), 2),
                 lotOf(Spread::fixed(500), Spread::fixed(kNeverDry), 3)};
    const StockOutcome o = outcomeOf(plan, {}, 1, 1000);
    QVERIFY(!o.events[0].judged); // over
    QVERIFY(!o.events[2].judged); // not looked at
    QCOMPARE(o.events[1].chance, 0.0);
    QVERIFY(o.events[1].error > 0.0); // no short path of a thousand is no certainty
    QCOMPARE(o.worstEvent(), 1);
    // Nothing at all planned.
    StockPlan empty;
    empty.days = 5;
    const StockOutcome none = outcomeOf(empty, {}, 1, 100);
    QCOMPARE(none.worstEvent(), -1);
    QCOMPARE(none.worstChance(), 0.0);
}

void TstStockProperties::refuses()
{
    const auto refused = [](const StockPlan &plan, int paths = 1000) {
        return !StockPaths::draw(plan, 1, paths).ok();
    };
    const StockPlan good = variedPlan(0);
    QVERIFY(!refused(good));
    QVERIFY(refused(good, 20));
    StockPlan bad = good;
    bad.days = 0;
    QVERIFY(refused(bad));
    bad = good;
    bad.needs[1].heat = Spread::normal(std::nan(""), 1);
    QVERIFY(refused(bad));
    bad = good;
    bad.needs[1].event = 5;
    QVERIFY(refused(bad));
    bad = good;
    bad.offers[0].never = 1.2;
    QVERIFY(refused(bad));
    bad = good;
    bad.lots[1].reservedFor = -2;
    QVERIFY(refused(bad));
    QVERIFY(StockPaths::draw(bad, 1).message().contains(QStringLiteral("lot")));
}

void TstStockProperties::cancels()
{
    const auto drawn = StockPaths::draw(variedPlan(0), 1);
    int asked = 0;
    const StockOutcome o = drawn.value().run({}, [&] { return ++asked > 3; });
    QVERIFY(o.cancelled);
    QCOMPARE(asked, 4);
    QVERIFY(o.events.empty());
}

RICKYARD_TEST(TstStockProperties)
#include "tst_stock_properties.moc"
