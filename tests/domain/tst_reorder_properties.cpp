// What must hold of any wood answer: more need never lowers a risk, another seed says the same, and
// what-ifs agree with the answer they are asked of.
#include "tests/domain/wood_plan_builder.h"
#include "tests/support/registry.h"

#include <QRandomGenerator>
#include <QTest>

using namespace rickyard::test;

class TstReorderProperties : public QObject
{
    Q_OBJECT
private slots:
    void moreAcceptedRiskNeverOrdersEarlier();
    void moreNeedAndLessWoodNeverLowerARisk();
    void steadyOverSeeds();
    void sameBooksSameAnswer();
    void shiftByWeeksChangesNothing();
    void whatIfsAreTheAnswersOwn();
    void whatIfOfNothingIsTheAnswer();
    void adviceAtAnotherRisk();
};

namespace {

QVector<PlannedUse> randomUses(quint32 seed)
{
    QRandomGenerator random(seed);
    QVector<PlannedUse> uses;
    int d = 2;
    for (RecordId id = 1; id <= 6; ++id) {
        d += 1 + random.bounded(7);
        uses << need(id, day(d, 6 + random.bounded(12)), 100 + random.bounded(300),
                     1.05 + 0.4 * random.generateDouble());
    }
    return uses;
}

WoodAnswerSettings fewer(int paths = 2000)
{
    WoodAnswerSettings settings;
    settings.paths = paths;
    return settings;
}

} // namespace

addRecord(books, 1, {0, 3, 0, 9, 0, 1, 0, 0});
const QVector<PlannedUse> uses = randomUses(seed);
QDate before;
for (const double accepted : {0.02, 0.05, 0.10, 0.20, 0.40}) {
    WoodAnswerSettings settings = fewer();
    settings.acceptedRisk = accepted;
    const WoodAnswer answer = answerOf(books, uses, settings);
    // Nothing to order is later than any day. The amount may shrink with the risk, and a
    // smaller order has to be there no later: so days are compared for the same amount.
    if (answer.orders.isEmpty())
        break;
    const auto planner = answer.planner->withRisk(accepted);
    const auto goal = planner.goalOf(0);
    const int day = planner.latestDay(0, 12, goal);
    if (goal.late || day < 0)
        continue;
    const QDate latest = answer.today.addDays(day);
    QVERIFY(!before.isValid() || latest >= before);
    before = latest;
}
}
}

void TstReorderProperties::moreNeedAndLessWoodNeverLowerARisk()
{
    for (quint32 seed = 1; seed <= 6; ++seed) {
        const QVector<PlannedUse> uses = randomUses(seed);
        er(books, 1, SellUnit::QuarterCord, 6, 10000);
        answer = answerOf(books, uses);
        QVERIF
        const WoodAnswer answer = answerOf(yardWith(900), uses, fewer());
        QVector<PlannedUse> more = uses;
        PlannedUse &one = more[seed % 6];
        one.middle = one.middle * 1.3;
        one.lower = one.lower * 1.3;
        one.upper = one.upper * 1.3;
        const WoodAnswer hungrier = answerOf(yardWith(900), more, fewer());
        const WoodAnswer poorer = answerOf(yardWith(850), uses, fewer());
        double sum = 0;
        double sumMore = 0;
        for (int i = 0; i < answer.risks.size(); ++i) {
            QVERIFY(poorer.risks.at(i).chance >= answer.risks.at(i).chance);
            QVERIFY(hungrier.risks.at(i).chance >= answer.risks.at(i).chance);
            sum += seasonedPounds(answer.risks.at(i).meanShort);
            sumMore += seasonedPounds(hungrier.risks.at(i).meanShort);
        }
        QVERIFY(sumMore >= sum);
        QVERIFY(poorer.units >= answer.units || poorer.orders.isEmpty());
    }
}

// What is shown of a chance moves by one step at most from seed to seed, the day by one day, the
// amount by one unit.
void TstReorderProperties::steadyOverSeeds()
{
    Books books = yardWith(1000);
    addSuppli addRecord(books, 1, {0, 2, 0, 6, 0, 0, 1, 0, 0, 0});
    WoodAnswerSettings settings;
    const WoodAnswer first = answerOf(books, threeCooks());
    for (quint64 seed = 2; seed <= 9; ++seed) {
        settings.seed = seed;
        const WoodAnswer other = answerOf(books, threeCooks(), settings);
        for (int i = 0; i < first.risks.size(); ++i) {
            const auto shown = [](const WoodRisk &risk) {
                EventRisk r;
                r.chance = risk.chance;
                r.error = risk.error;
                return shownChance(r);
            };
            const WoodRisk &a = first.risks.at(i);
            const WoodRisk &b = other.risks.at(i);
            const double step = std::max(shownStep(a.error), shownStep(b.error));
            QVERIFY2(std::abs(shown(a) - shown(b)) <= step * 1.001,
                     qPrintable(QStringLiteral("%1 %2").arg(shown(a)).arg(shown(b))));
        }
        QVERIFY(std::abs(first.orderBy.daysTo(other.orderBy)) <= 1);
        QVERIFY(std::abs(first.units - other.units) <= 1);
        QCOMPARE(other.supplier, first.supplier);
    }
}

void TstReorderProperties::sameBooksSameAnswer()
{
    Books books = yardWith(900);
    addSupplier(books, 1, SellUnit::QuarterCord, 6, 10000);
ay(1 + i), 30, 1.05);
const WoodAnswer const WoodAnswer a = answerOf(books, threeCooks());
// An hour later on the same day, nothing but the clock has moved.
const WoodAnswer b = answerOf(books, threeCooks(), {}, day(0, 13));
QCOMPARE(b.headline.plainSentence(), a.headline.plainSentence());
QCOMPARE(b.headline.reasons.size(), a.headline.reasons.size());
// The lot has aged by an hour: a joule or so of its error.
for (int i = 0; i < a.risks.size(); ++i)
    QVERIFY(std::abs(a.risks.at(i).chance - b.risks.at(i).chance) < 2e-3);
const WoodAnswer c = answerOf(books, threeCooks());
for (int i = 0; i < a.risks.size(); ++i)
    QCOMPARE(c.risks.at(i).chance, a.risks.at(i).chance);
}

void TstReorderProperties::shiftByWeeksChangesNothing()
{
    constexpr int kDays = 7 * 9;
    ;
    for (int i = 0; i < 40; ++i)
        uses << need(i + 1, d
    const Duration shift = Duration::ofBase(kDays * 86400LL);
    for (quint32 seed = 1; seed <= 3; ++seed) {
            Books books = emptyYard();
            stockUp(books, 900);
            addSupplier(books, 1, SellUnit::CubicFoot, 6, 0);
            addOrder(books, 1, 16, date(8));
            QVector<PlannedUse> uses = randomUses(seed);
            const WoodAnswer a = answerOf(books, uses, fewer());
            for (PlannedUse &u : uses)
                u.light = u.light + shift;
            books.lots[1].received = books.lots[1].received + shift;
            books.movements[1].time = books.movements[1].time + shift;
            books.readings[1].time = books.readings[1].time + shift;
            books.orders[1].promised = books.orders[1].promised.addDays(kDays);
            const WoodAnswer b = answerOf(books, uses, fewer(), day(0) + shift);
            QCOMPARE(b.missing, a.missing);
            QCOMPARE(b.units, a.units);
            QCOMPARE(b.firstShortCook, a.firstShortCook);
            QCOMPARE(b.orderBy, a.orderBy.isValid() ? a.orderBy.addDays(kDays) : QDate());
            QCOMPARE(b.course.size(), a.course.size());
            for (qsizetype i = 0; i < a.course.size(); ++i)
                QCOMPARE(b.course.at(i).middle, a.course.at(i).middle);
    }
}

void TstReorderProperties::whatIfsAreTheAnswersOwn()
{
1, SellUnit::QuarterCord, 7, 0);
QVector<PlannedUse> uses Books books = yardWith(900);
addSupplier(books, 1, SellUnit::QuarterCord, 5, 15000).delivery = Money::ofBase(2500);
const WoodAnswer answer = answerOf(books, threeCooks());
const WoodOrderChoice &order = answer.orders.first();
QVERIFY(order.lost.isEmpty());
WoodWhatIf ask;
ask.source = order.source;
ask.units = order.units;
ask.orderDay = order.orderBy;
const auto chance = [&] {
    const WoodWhatIfAnswer said = woodWhatIf(answer, ask, {});
    return said.risks.at(said.worst).chance;
};
QCOMPARE(chance(), order.chance);
const WoodWhatIfAnswer said = woodWhatIf(answer, ask, {});
QCOMPARE(said.keeps, order.keeps);
QCOMPARE(said.arrival, order.arrival);
QCOMPARE(said.cost, order.cost);
QCOMPARE(said.course.size(), answer.withOrder.size());
for (int d = 0; d < said.course.size(); ++d)
    QCOMPARE(said.course.at(d).middle, answer.withOrder.at(d).middle);
ask.daysLate = 7;
QCOMPARE(chance(), order.chanceLate);
ask.daysLate = 0;
ask.colderKelvin = kColderKelvin;
QCOMPARE(chance(), *order.chanceColder);
ask.colderKelvin = 0;
ask.orderDay = answer.today;
QCOMPARE(chance(), order.chanceToday);
ask.orderDay = answer.today.addDays(-3); // what is past counts as today
QCOMPARE(chance(), order.chanceToday);
ask.acceptedRisk = order.chanceToday + 1e-9;
QVERIFY(woodWhatIf(answer, ask, {}).keeps);
ask.acceptedRisk = order.chanceToday / 2;
QVERIFY(order.chanceToday == 0 || !woodWhatIf(answer, ask, {}).keeps);
ask.units = order.units + 2;
QVERIFY(chance() <= order.chanceToday);
// Cancelled at once: nothing is filled in.
QVERIFY(woodWhatIf(answer, ask, {}, [] { return true; }).cancelled);
}

BesideIt()
{
    Books books = yardWith(1000);
    addSupplier(books, 
void TstReorderProperties::whatIfOfNothingIsTheAnswer()
{
        Books books = yardWith(900);
        addSupplier(books, 1, SellUnit::QuarterCord, 5, 15000);
        const WoodAnswer answer = answerOf(books, threeCooks());
        const WoodWhatIfAnswer said = woodWhatIf(answer, {}, {});
        QCOMPARE(said.worst, answer.worst);
        for (int i = 0; i < answer.risks.size(); ++i)
            QCOMPARE(said.risks.at(i).chance, answer.risks.at(i).chance);
        for (int d = 0; d < said.course.size(); ++d)
            QCOMPARE(said.course.at(d).lower, answer.course.at(d).lower);
        QVERIFY(!said.arrival.isValid());
        QVERIFY(!said.cost);
        // Colder weather takes more, milder less.
        WoodWhatIf ask;
        ask.colderKelvin = 5;
        QVERIFY(woodWhatIf(answer, ask, {}).risks.at(2).chance >= answer.risks.at(2).chance);
        ask.colderKelvin = -5;
        QVERIFY(woodWhatIf(answer, ask, {}).risks.at(2).chance <= answer.risks.at(2).chance);
        // A source that is not there orders nothing.
        ask = {};
        ask.source = 7;
        ask.units = 3;
        QCOMPARE(woodWhatIf(answer, ask, {}).risks.at(2).chance, answer.risks.at(2).chance);
}

void TstReorderProperties::textbookStands
void TstReorderProperties::adviceAtAnotherRisk()
{
        Books books = yardWith(900);
        addPunctual(books, 1, SellUnit::QuarterCord, 5, 15000);
        const WoodAnswer answer = answerOf(books, threeCooks());
        WoodWhatIf ask;
        ask.advise = true;
        ask.acceptedRisk = 0.2;
        const WoodWhatIfAnswer said = woodWhatIf(answer, ask, {});
        WoodAnswerSettings settings;
        settings.acceptedRisk = 0.2;
        const WoodAnswer other = answerOf(books, threeCooks(), settings);
        QCOMPARE(said.orders.size(), other.orders.size());
        QVERIFY(!said.orders.isEmpty());
        QCOMPARE(said.orders.first().orderBy, other.orders.first().orderBy);
        QCOMPARE(said.orders.first().units, other.orders.first().units);
        QCOMPARE(said.orders.first().chance, other.orders.first().chance);
        QVERIFY(said.orders.first().orderBy >= answer.orders.first().orderBy);
}

RICKYARD_TEST(TstReorderProperties)
#include "tst_reorder_properties.moc"
