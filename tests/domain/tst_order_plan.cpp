// What the plan of an order proposes, checked by running the proposal, its neighbours and cases
// whose answer can be worked out by hand. Chances computed here are exact.
#include "models/domain/plan/lead_record.h"
#include "models/domain/plan/order_plan.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;

namespace {

// Five events a fortnight apart from day 12, one cook each, of about 100; the stock covers two.
OrderQuestion fortnightly()
{
    OrderQuestion q;
    q.plan.days = 90;
    q.plan.events = 5;
    for (int i = 0; i < 5; ++i) {
        StockNeed need;
        need.day = 12 + 14 * i;
        need.event = i;
        need.heat = Spread::lognormal(100, 85, 118);
        need.key = i + 1;
        q.plan.needs.push_back(need);
        q.eventNames << QStringLiteral("Supper %1").arg(i + 1);
    }
    StockLot lot;
    lot.heat = Spread::normal(240, 6);
    lot.key = 1;
    q.plan.lots.push_back(lot);
    q.lotNames << QStringLiteral("North rick");
    OfferTerms near;
    near.supplier = QStringLiteral("Invented Wood A");
    near.load.leadDays = Spread::sample({{7, 0.8}, {10, 0.14}, {24, 0.06}});
    near.load.share = Spread::normal(0.97, 0.03);
    near.load.key = 1;
    near.unitHeat = 45;
    near.unitRoom = 45;
    near.unitPrice = 70;
    near.deliveryPrice = 30;
    q.offers.push_back(near);
    return q;
}

OrderPlanner plannerOf(const OrderQuestion &question)
{
    auto planner = OrderPlanner::start(question);
    if (!planner)
        qFatal("%s", qPrintable(planner.message()));
    return planner.value();
}

OrderAnswer answerTo(const OrderQuestion &question)
{
    return plannerOf(question).answer();
}

bool mentions(const OrderAnswer &answer, const QString &words)
{
    for (const QString &note : answer.notes)
        if (note.contains(words))
            return true;
    return false;
}

} // namespace

class TstOrderPlan : public QObject
{
    Q_OBJECT
private slots:
    void certainCaseByHand();
    void nothingNeeded();
    void proposalKeepsTheRiskAndItsNeighboursDoNot();
    void latestDayAgainstAScan();
    void whatIfs();
    void suppliersCompared();
    void greenIsForNextSeason();
    void storageSmallerThanAnEvent();
    void splitWhenTheYardIsFull();
    void tooLateIsSaid();
    void noLotteryOfLoads();
    void supplierWithoutHistory();
    void latenessMixesRecordAndDefault();
    void overdueOrder();
    void pastEventAndNegativeLot();
    void sameSeedSameAnswer();
    void refusesAndCancels();
};

// No chance anywhere: 250 on the ricks, needs of 100 on days 10, 20, 30; a load takes 7 days and
// serves the day after. It must be there by the 29th: ordered by day 22, and 50 are missing, which
// is two units of 30.
void TstOrderPlan::certainCaseByHand()
{
    OrderQuestion q;
    q.plan.days = 40;
    q.plan.events = 3;
    for (int i = 0; i < 3; ++i) {
        StockNeed need;
        need.day = 10 * (i + 1);
        need.event = i;
        need.heat = Spread::fixed(100);
        q.plan.needs.push_back(need);
    }
    StockLot lot;
    lot.heat = Spread::fixed(250);
    q.plan.lots.push_back(lot);
    OfferTerms offer;
    offer.load.leadDays = Spread::fixed(7);
    offer.unitHeat = 30;
    offer.unitPrice = 40;
    offer.deliveryPrice = 25;
    q.offers.push_back(offer);
    const OrderAnswer a = answerTo(q);
    QVERIFY(a.needed);
    QCOMPARE(a.nothingWorst, 2);
    QCOMPARE(a.nothingRisk.chance, 1.0);
    QCOMPARE(a.nothingRisk.meanShort, 50.0);
    QCOMPARE(int(a.dry.size()), 1);
    const OrderChoice &c = a.dry.front();
    QCOMPARE(c.units, 2);
    QCOMPARE(c.orderBy, 22);
    QVERIFY(c.keeps);
    QCOMPARE(c.cost.value(), 105.0);
    QCOMPARE(c.risk.chance, 0.0);
    QCOMPARE(c.riskLate, 1.0); // a week late is day 36
    QCOMPARE(c.arrivesLikely, 29.0);
    QCOMPARE(a.with.any.chance, 0.0);
    QCOMPARE(a.with.allLeft, 10.0);
}

void TstOrderPlan::nothingNeeded()
{
    OrderQuestion q = fortnightly();
    q.plan.lots[0].heat = Spread::fixed(900);
    const OrderAnswer a = answerTo(q);
    QVERIFY(!a.needed);
    QVERIFY(a.dry.empty());
    QCOMPARE(a.nothingRisk.chance, 0.0);
    QCOMPARE(int(a.nothing.course.size()), 90);
}

void TstOrderPlan::proposalKeepsTheRiskAndItsNeighboursDoNot()
{
    const OrderQuestion q = fortnightly();
    const OrderPlanner planner = plannerOf(q);
    const OrderAnswer a = planner.answer();
    QVERIFY(a.needed);
    const OrderChoice &c = a.dry.front();
    QVERIFY(c.keeps);
    QVERIFY(c.orderBy > 0);
    QVERIFY(c.risk.chance <= q.acceptedRisk);
    QVERIFY(planner.riskIf(0, c.units, c.orderBy + 1).risk.chance > q.acceptedRisk);
    // One unit less misses half the accepted risk, the part that is for the amount.
    QVERIFY(planner.riskIf(0, c.units, 0).risk.chance <= q.acceptedRisk / 2);
    QVERIFY(planner.riskIf(0, c.units - 1, 0).risk.chance > q.acceptedRisk / 2);
    QVERIFY(c.riskToday <= c.risk.chance);
    // A smaller accepted risk never means less wood or more time.
    OrderQuestion careful = q;
    careful.acceptedRisk = 0.02;
    const OrderChoice d = answerTo(careful).dry.front();
    QVERIFY(d.units >= c.units);
    QVERIFY(d.orderBy <= c.orderBy);
    // The proposal holds on other luck, within the error of the draw.
    OrderQuestion other = q;
    other.seed = 77;
    const auto again = plannerOf(other).riskIf(0, c.units, c.orderBy);
    QVERIFY(again.risk.chance < q.acceptedRisk + 4 * again.risk.error);
}

void TstOrderPlan::latestDayAgainstAScan()
{
    const OrderQuestion q = fortnightly();
    const OrderPlanner planner = plannerOf(q);
    const auto goal = planner.goalOf(0);
    QVERIFY(goal.useful && !goal.late);
    for (const int units : {8, 9, 12}) {
        int latest = -1;
        for (int day = 0; day <= 70; ++day)
            if (planner.riskIf(0, units, day).risk.chance <= q.acceptedRisk)
                latest = day;
        QCOMPARE(planner.latestDay(0, units, goal), latest);
    }
    QCOMPARE(planner.latestDay(0, 1, goal), -1); // one unit never does
}

void TstOrderPlan::whatIfs()
{
    OrderQuestion q = fortnightly();
    q.colder.assign(5, 1.0);
    q.colder[2] = 1.2;
    const OrderAnswer a = answerTo(q);
    const OrderChoice &c = a.dry.front();
    QVERIFY(c.riskLate > c.risk.chance);
    QVERIFY(c.riskColder.has_value());
    QVERIFY(*c.riskColder >= c.risk.chance);
    q.colder.assign(5, 1.0);
    QCOMPARE(*answerTo(q).dry.front().riskColder, c.risk.chance);
    // Nothing ordered: the third supper burns what two left over.
    QVERIFY(a.nothing.events[0].chance < 0.001);
    QVERIFY(a.nothing.events[2].chance > 0.99);
}

void TstOrderPlan::suppliersCompared()
{
    OrderQuestion q = fortnightly();
    OfferTerms dear = q.offers[0];
    dear.supplier = QStringLiteral("Invented Wood B");
    dear.load.leadDays = Spread::fixed(2);
    dear.load.key = 2;
    dear.unitPrice = 110;
    OfferTerms never = q.offers[0];
    never.supplier = QStringLiteral("Invented Wood C");
    never.load.never = 0.3;
    never.load.key = 3;
    never.unitPrice = 10;
    OfferTerms unpriced = dear;
    unpriced.supplier = QStringLiteral("Invented Wood D");
    unpriced.load.key = 4;
    unpriced.unitPrice.reset();
    q.offers = {never, dear, q.offers[0], unpriced};
    const OrderAnswer a = answerTo(q);
    QCOMPARE(int(a.dry.size()), 4);
    QCOMPARE(int(a.dry[0].offer), 2); // keeps the risk and is cheapest
    QCOMPARE(int(a.dry[1].offer), 1);
    QCOMPARE(int(a.dry[2].offer), 3); // no price: after those that have one
    QVERIFY(!a.dry[2].cost.has_value());
    QCOMPARE(int(a.dry[3].offer), 0); // cheap, and three loads in ten never come
    QVERIFY(!a.dry[3].keeps);
    QVERIFY(a.dry[3].risk.chance > 0.29);
    QVERIFY(a.dry[1].orderBy > a.dry[0].orderBy); // two days of lead time leave more time
}

// Green wood that needs 120 to 160 days is no help to this season and enough for the next, which
// begins on day 200.
void TstOrderPlan::greenIsForNextSeason()
{
    OrderQuestion q = fortnightly();
    q.plan.days = 260;
    q.plan.events = 7;
    q.nextSeason = 200;
    for (int i = 0; i < 2; ++i) {
        StockNeed need = q.plan.needs.front();
        need.day = 210 + 14 * i;
        need.event = 5 + i;
        need.key = 50 + i;
        q.plan.needs.push_back(need);
    }
    OfferTerms green = q.offers[0];
    green.supplier = QStringLiteral("Invented Wood G");
    green.green = true;
    green.load.dryingDays = Spread::quantiles({{0, 120}, {1, 160}});
    green.load.key = 9;
    green.unitPrice = 35;
    q.offers.push_back(green);
    const OrderAnswer a = answerTo(q);
    QVERIFY(a.needed);
    QVERIFY(a.greenNeeded);
    QCOMPARE(int(a.dry.size()), 1);
    QCOMPARE(int(a.green.size()), 1);
    QCOMPARE(int(a.dry.front().offer), 0);
    const OrderChoice &g = a.green.front();
    QCOMPARE(int(g.offer), 1);
    QVERIFY(g.keeps);
    QVERIFY(g.worstEvent >= 5);
    QVERIFY(a.dry.front().worstEvent < 5);
    // Dry by day 210 for sure means on the yard by day 50, and lead times go up to 24 days.
    QVERIFY(g.orderBy >= 20 && g.orderBy < 60);
    // The dry order is the same as without a next season.
    QCOMPARE(a.dry.front().units, answerTo(fortnightly()).dry.front().units);
}

// One event of two nights takes 600; the yard stacks 400.
void TstOrderPlan::storageSmallerThanAnEvent()
{
    OrderQuestion q = fortnightly();
    q.plan.events = 1;
    q.plan.needs.clear();
    q.eventNames = QStringList{QStringLiteral("Big supper")};
    for (int i = 0; i < 2; ++i) {
        StockNeed need;
        need.day = 30 + i;
        need.event = 0;
        need.heat = Spread::lognormal(300, 270, 330);
        need.key = i + 1;
        q.plan.needs.push_back(need);
    }
    q.storage = 400;
    q.plan.lots[0].heat = Spread::fixed(100);
    const OrderAnswer a = answerTo(q);
    QVERIFY2(mentions(a, QStringLiteral("Big supper may take 1.6 times")),
             qPrintable(a.notes.join('|')));
    const OrderChoice &c = a.dry.front();
    QCOMPARE(int(c.loads.size()), 2);
    QCOMPARE(c.loads[0].units, 6); // 6 x 45 on the 100 that stand there: 370 of 400
    QVERIFY(!c.loads[0].straightToEvent);
    QVERIFY(c.loads[1].straightToEvent);
    QCOMPARE(c.loads[0].units + c.loads[1].units, c.units);
}

// Five suppers want more than the yard takes at once, but not each by itself: the second load comes
// when there is room for it, and the yard is never overfilled on average.
void TstOrderPlan::splitWhenTheYardIsFull()
{
    OrderQuestion q = fortnightly();
    q.storage = 300;
    const OrderPlanner planner = plannerOf(q);
    const OrderAnswer a = planner.answer();
    const OrderChoice &c = a.dry.front();
    QVERIFY(c.loads.size() > 1);
    QVERIFY(mentions(a, QStringLiteral("split into")));
    WhatIf whatIf;
    whatIf.course = true;
    for (size_t i = 0; i < c.loads.size(); ++i) {
        QVERIFY(!c.loads[i].straightToEvent);
        whatIf.orders.push_back({0, c.loads[i].day, 45.0 * c.loads[i].units, 0, int(i)});
    }
    const StockOutcome o = planner.paths().run(whatIf);
    for (const double onYard : o.meanOnYard)
        QVERIFY(onYard <= 300.0 + 1e-6);
    QVERIFY(c.risk.chance < 0.10);
}

// Nobody can deliver before the first supper: it is lost to any order, which is said, and the order
// proposed is the one that the other four need.
void TstOrderPlan::tooLateIsSaid()
{
    OrderQuestion q = fortnightly();
    q.plan.lots[0].heat = Spread::fixed(0);
    q.plan.needs[0].day = 5;
    q.plan.needs[1].day = 40;
    const OrderAnswer a = answerTo(q);
    const OrderChoice &c = a.dry.front();
    QVERIFY(!c.keeps);
    QCOMPARE(c.lost, std::vector<int>{0});
    QVERIFY(c.worstEvent > 0); // of those that it can do something for
    QVERIFY(c.risk.chance <= q.acceptedRisk);
    QVERIFY(mentions(a, QStringLiteral("in time for Supper 1")));
    OrderQuestion rest = q;
    rest.plan.needs.erase(rest.plan.needs.begin());
    const OrderChoice d = answerTo(rest).dry.front();
    QVERIFY(d.keeps);
    QVERIFY(d.lost.empty());
    QCOMPARE(c.units, d.units);
    QCOMPARE(c.orderBy, d.orderBy);
    // A helped event: four loads in five come in time, so one is ordered today, late as it is.
    q.plan.needs[0].day = 8;
    const OrderChoice e = answerTo(q).dry.front();
    QVERIFY(!e.keeps);
    QCOMPARE(e.orderBy, 0);
    QVERIFY(std::abs(e.risk.chance - 0.2) < 0.03);
}

// A supper in eight days that one load in four reaches in time, with one already ordered: a second
// load is no answer, and none is proposed. If it were three in four, it would be.
void TstOrderPlan::noLotteryOfLoads()
{
    OrderQuestion q = fortnightly();
    q.plan.needs.resize(1);
    q.plan.needs[0].day = 8;
    q.plan.lots.clear();
    q.offers[0].load.leadDays = Spread::sample({{7, 0.25}, {20, 0.75}});
    StockDelivery coming;
    coming.heat = Spread::fixed(300);
    coming.arrivalDay = Spread::sample({{7, 0.25}, {20, 0.75}});
    q.plan.deliveries.push_back(coming);
    OrderAnswer a = answerTo(q);
    QVERIFY(a.needed);
    QVERIFY(a.dry.empty());
    QVERIFY(mentions(a, QStringLiteral("in time for Supper 1")));
    q.offers[0].load.leadDays = Spread::sample({{7, 0.75}, {20, 0.25}});
    a = answerTo(q);
    QCOMPARE(int(a.dry.size()), 1);
    QCOMPARE(a.dry.front().orderBy, 0);
    QVERIFY(!a.dry.front().keeps);
    QVERIFY(std::abs(a.dry.front().risk.chance - 0.75 * 0.25) < 0.02);
}

void TstOrderPlan::supplierWithoutHistory()
{
    OrderQuestion q = fortnightly();
    q.offers[0].leadAssumed = true;
    q.offers[0].load.leadDays = leadDays({}, 7);
    const Lateness known = latenessOf({});
    q.offers[0].load.never = known.never;
    const OrderAnswer a = answerTo(q);
    QVERIFY(mentions(a, QStringLiteral("no delivery on record")));
    QVERIFY(known.basis.contains(QStringLiteral("default")));
    // Wider than the supplier that is known: earlier, for the same wood.
    QVERIFY(a.dry.front().orderBy < answerTo(fortnightly()).dry.front().orderBy);
}

// n deliveries and a default worth two: after 18 loads on the day, 2 of 20 parts are the default.
void TstOrderPlan::latenessMixesRecordAndDefault()
{
    QVERIFY(std::abs(latenessOf({}).never - 0.03) < 1e-12);
    QVERIFY(std::abs(latenessOf({}).days.quantile(0.9) - 21) < 1e-9);
    LeadRecord good;
    good.daysLate.assign(18, 0.0);
    const Lateness kept = latenessOf(good);
    QVERIFY(std::abs(kept.never - 0.06 / 20) < 1e-12);
    QCOMPARE(kept.days.quantile(0.94), 0.0);
    QCOMPARE(kept.days.quantile(0.97), 5.0);
    QCOMPARE(kept.orders, 18);
    LeadRecord bad = good;
    bad.neverCame = 5;
    QVERIFY(std::abs(latenessOf(bad).never - 5.06 / 25) < 1e-12);
    QVERIFY(latenessOf(bad).basis.contains(QStringLiteral("5 never")));
    // Early loads of a supplier who promises tomorrow do not come yesterday.
    LeadRecord early;
    early.daysLate.assign(8, -3.0);
    QCOMPARE(leadDays(early, 1).quantile(0.2), 0.0);
}

// Promised for 12 days ago: only delays of 12 days and more are left. Weights: 20 days once, and of
// the default 21 (0.16) and 42 (0.10); never 0.06.
void TstOrderPlan::overdueOrder()
{
    LeadRecord record;
    record.daysLate = {0, 0, 3, 20};
    const ExpectedArrival due = arrivalOf(record, -12);
    QVERIFY(std::abs(due.never - 0.06 / 1.32) < 1e-12);
    QCOMPARE(due.day.quantile(0.5), 8.0);
    QCOMPARE(due.day.quantile(0.85), 9.0);
    QCOMPARE(due.day.quantile(0.95), 30.0);
    // Later than anything on record: lost.
    QCOMPARE(arrivalOf(record, -60).never, 1.0);
    QVERIFY(arrivalOf(record, 5).never < 0.02);
}

void TstOrderPlan::pastEventAndNegativeLot()
{
    OrderQuestion q = fortnightly();
    const OrderAnswer before = answerTo(q);
    q.plan.events = 6;
    q.plan.needs.push_back(q.plan.needs.front());
    q.plan.needs.back().day = -4;
    q.plan.needs.back().event = 5;
    q.plan.needs.back().key = 66;
    q.eventNames << QStringLiteral("Last week");
    StockLot lot;
    lot.heat = Spread::fixed(-70);
    lot.key = 2;
    q.plan.lots.push_back(lot);
    q.lotNames << QStringLiteral("South rick");
    const OrderAnswer a = answerTo(q);
    QVERIFY(mentions(a, QStringLiteral("Last week is over")));
    QVERIFY(mentions(a, QStringLiteral("South rick is booked below zero")));
    QCOMPARE(a.dry.front().units, before.dry.front().units);
    QCOMPARE(a.dry.front().orderBy, before.dry.front().orderBy);
}

void TstOrderPlan::sameSeedSameAnswer()
{
    const OrderChoice a = answerTo(fortnightly()).dry.front();
    const OrderChoice b = answerTo(fortnightly()).dry.front();
    QCOMPARE(a.orderBy, b.orderBy);
    QCOMPARE(a.risk.chance, b.risk.chance);
    QCOMPARE(a.risk.meanShort, b.risk.meanShort);
    // Over seeds the day moves by a day at most and the amount by a unit.
    for (quint64 seed = 2; seed < 8; ++seed) {
        OrderQuestion q = fortnightly();
        q.seed = seed;
        const OrderChoice c = answerTo(q).dry.front();
        QVERIFY(std::abs(c.orderBy - a.orderBy) <= 1);
        QVERIFY(std::abs(c.units - a.units) <= 1);
    }
}

void TstOrderPlan::refusesAndCancels()
{
    OrderQuestion q = fortnightly();
    q.acceptedRisk = 0;
    QVERIFY(!OrderPlanner::start(q).ok());
    q = fortnightly();
    q.offers[0].unitHeat = 0;
    QVERIFY(OrderPlanner::start(q).message().contains(QStringLiteral("Invented Wood A")));
    q = fortnightly();
    q.offers[0].load.never = 7;
    QVERIFY(!OrderPlanner::start(q).ok());
    const OrderAnswer stopped = plannerOf(fortnightly()).answer([] { return true; });
    QVERIFY(stopped.cancelled);
    QVERIFY(stopped.dry.empty());
    q = fortnightly();
    q.offers.clear();
    QVERIFY(mentions(answerTo(q), QStringLiteral("No supplier is on record")));
}

RICKYARD_TEST(TstOrderPlan)
#include "tst_order_plan.moc"
