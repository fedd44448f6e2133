// The log of cooks: use against one thing at a time, the cook most like another, and the wood of
// one cook with its money. Invented data where no source is named.
#include "models/domain/fire/cook_likeness.h"
#include "models/domain/fire/cook_summary.h"
#include "models/domain/fire/cook_wood.h"
#include "models/domain/fire/use_line.h"
#include "tests/domain/least_squares_data.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QtTest/QTest>

using namespace rickyard::test;

namespace {

CookFuel finishedFuel(RecordId cook, RecordId pit, double length, double joules)
{
    CookFuel fuel;
    fuel.cook = cook;
    fuel.pit = pit;
    fuel.finished = true;
    fuel.length = durationFromHours(length);
    fuel.netHeat = Heat::rounded(joules);
    fuel.lit = day(static_cast<int>(cook));
    return fuel;
}

// The cars as cooks: a mile an hour is an hour, a foot is a megajoule.
QVector<CookFuel> carsAsCooks(RecordId pit)
{
    const Data data = cars();
    QVector<CookFuel> cooks;
    for (Eigen::Index i = 0; i < data.response.size(); ++i)
        cooks << finishedFuel(i + 1, pit, data.design(i, 0), 1e6 * data.response(i));
    return cooks;
}

double ofCars(const QString &quantity)
{
    const ReferenceTable table(QStringLiteral("cars_ols.csv"));
    for (qsizetype row = 0; row < table.rows(); ++row)
        if (table.text(row, QStringLiteral("quantity")) == quantity)
            return table.text(row, QStringLiteral("value")).trimmed().toDouble();
    return std::nan("");
}

// Student's t with 48 degrees of freedom at 0.95 and 0.975: NIST/SEMATECH e-Handbook of
// Statistical Methods, section 1.3.6.7.2, which prints three decimals.
constexpr double kT95 = 1.677;
constexpr double kT975 = 2.011;

bool near(double a, double b, double relative)
{
    return std::abs(a - b) <= relative * std::abs(b);
}

struct LikeYard {
    Books books = emptyYard();
    QVector<CookFuel> cooks;

    void add(RecordId id, RecordId pit, double length, std::optional<double> outsideF,
             std::optional<double> foodLb)
    {
        Cook cook;
        cook.id = id;
        cook.pit = pit;
        if (foodLb)
            cook.foodMass = massFromPounds(*foodLb);
        books.cooks.insert(id, cook);
        CookFuel fuel = finishedFuel(id, pit, length, 1e9);
        if (outsideF)
            fuel.meanOutside = temperatureFromFahrenheit(*outsideF);
        cooks << fuel;
    }
    [[nodiscard]] QVector<RecordId> order(const CookWish &wish, RecordId except = 0) const
    {
        QVector<RecordId> ids;
        for (const CookLikeness &one : mostLike(books, cooks, wish, except, 10))
            ids << one.cook;
        return ids;
    }
};

CookWish wishFor(RecordId pit, double length, double outsideF, double foodLb)
{
    CookWish wish;
    wish.pit = pit;
    wish.length = durationFromHours(length);
    wish.outside = temperatureFromFahrenheit(outsideF);
    wish.food = massFromPounds(foodLb);
    return wish;
}

} // namespace

class TstCookLog : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void theLineIsThatOfR();
    void pitsHaveTheirOwnLines();
    void aLineThatCannotBeDrawnSaysWhy();
    void whatIsNotKnownHasNoPoint();
    void useAnHourAgainstAirAndWind();
    void eachStepCountsOne();
    void theLaterOfTwoAlikeComesFirst();
    void onlyWhatIsAskedIsLookedAt();
    void notKnownCountsOneStep();
    void woodOfACookByLot();
    void moneyNeedsAPrice();
    void rhythmOfTheFeeds();
};

void TstCookLog::theLineIsThatOfR()
{
    const UseLine line = useLine(7, usePoints(carsAsCooks(7), UseAgainst::Hours));
    QVERIFY(line.drawn());
    QCOMPARE(line.cooks, 50);
    QCOMPARE(line.first, 4.0);
    QCOMPARE(line.last, 25.0);
    QVERIFY(near(line.slope.centre, 1e6 * ofCars(QStringLiteral("coef[speed]")), 1e-9));
    const double error = 1e6 * ofCars(QStringLiteral("se[speed]"));
    QVERIFY(near(line.slope.upper - line.slope.centre, kT95 * error, 5e-4));
    QVERIFY(near(line.slope.centre - line.slope.lower, kT95 * error, 5e-4));
    QVERIFY(!line.flat());
    const auto at = line.at(10);
    QVERIFY(at.has_value());
    const double fit = ofCars(QStringLiteral("prediction95[speed=10]:fit"));
    const double upper = ofCars(QStringLiteral("prediction95[speed=10]:upr"));
    QVERIFY(near(at->centre, 1e6 * fit, 1e-9));
    QVERIFY(near(at->upper - at->centre, 1e6 * (upper - fit) * kT95 / kT975, 1e-3));
}

void TstCookLog::pitsHaveTheirOwnLines()
{
    QVector<CookFuel> cooks;
    // Whole numbers on two straight lines: 5 + 2 h and 1 + 3 h, in gigajoules.
    for (int i = 1; i <= 6; ++i) {
        cooks << finishedFuel(i, 4, i, (5 + 2 * i) * 1e9);
        cooks << finishedFuel(10 + i, 2, i, (1 + 3 * i) * 1e9);
    }
    const QVector<UseLine> lines = useLines(usePoints(cooks, UseAgainst::Hours));
    QCOMPARE(lines.size(), 2);
    QCOMPARE(lines.at(0).pit, RecordId(2));
    QVERIFY(near(lines.at(0).slope.centre, 3e9, 1e-9));
    QVERIFY(near(lines.at(1).slope.centre, 2e9, 1e-9));
    QVERIFY(near(lines.at(1).at(0)->centre, 5e9, 1e-9));
}

void TstCookLog::aLineThatCannotBeDrawnSaysWhy()
{
    QVector<CookFuel> cooks;
    for (int i = 1; i <= 5; ++i)
        cooks << finishedFuel(i, 1, i, i * 1e9);
    UseLine line = useLine(1, usePoints(cooks, UseAgainst::Hours));
    QVERIFY(!line.drawn());
    QVERIFY(line.why.contains(QStringLiteral("6 cooks")));
    QVERIFY(!line.at(3));
    for (int i = 1; i <= 8; ++i)
        cooks << finishedFuel(20 + i, 2, 12, i * 1e9); // all of one length
    line = useLine(2, usePoints(cooks, UseAgainst::Hours));
    QVERIFY(!line.drawn());
    QVERIFY(line.why.contains(QStringLiteral("alike")));
    // A use that goes up and down alike has no slope that can be told.
    cooks.clear();
    const double use[] = {5, 9, 4, 8, 6, 9, 5, 7};
    for (int i = 0; i < 8; ++i)
        cooks << finishedFuel(i + 1, 3, i + 1, use[i] * 1e9);
    QVERIFY(useLine(3, usePoints(cooks, UseAgainst::Hours)).flat());
}

void TstCookLog::whatIsNotKnownHasNoPoint()
{
    CookFuel whole = finishedFuel(1, 1, 10, 1e9);
    whole.meanOutside = temperatureFromCelsius(5);
    whole.meanWind = Speed::ofBase(3000);
    CookFuel noWeather = finishedFuel(2, 1, 10, 1e9);
    CookFuel burning = whole;
    burning.cook = 3;
    burning.finished = false;
    CookFuel noWood = whole;
    noWood.cook = 4;
    noWood.netHeat = Heat();
    const QVector<CookFuel> cooks{whole, noWeather, burning, noWood};
    QCOMPARE(usePoints(cooks, UseAgainst::Hours).size(), 2);
    QCOMPARE(usePoints(cooks, UseAgainst::Outside).size(), 1);
    QCOMPARE(usePoints(cooks, UseAgainst::Wind).size(), 1);
}

void TstCookLog::useAnHourAgainstAirAndWind()
{
    CookFuel fuel = finishedFuel(1, 1, 8, 4e9);
    fuel.meanOutside = temperatureFromCelsius(-3.5);
    fuel.meanWind = Speed::ofBase(4200);
    fuel.assumptions << QStringLiteral("weights");
    const UsePoint air = usePoints({fuel}, UseAgainst::Outside).first();
    QCOMPARE(air.across, -3.5);
    QCOMPARE(air.use, 5e8);
    QVERIFY(air.assumed);
    QCOMPARE(usePoints({fuel}, UseAgainst::Wind).first().across, 4.2);
}

void TstCookLog::eachStepCountsOne()
{
    LikeYard yard;
    yard.add(1, 1, 12, 40, 60); // the same
    yard.add(2, 2, 12, 40, 60); // another pit
    yard.add(3, 1, 15, 40, 60); // a quarter longer
    yard.add(4, 1, 12, 30, 60); // 10 °F colder
    yard.add(5, 1, 12, 40, 90); // half as much food again
    yard.add(6, 1, 15, 30, 90); // three of them
    const CookWish wish = wishFor(1, 12, 40, 60);
    const auto found = mostLike(yard.books, yard.cooks, wish, 0, 10);
    QCOMPARE(found.size(), 6);
    QCOMPARE(found.first().cook, RecordId(1));
    QVERIFY(found.first().distance < 1e-9);
    for (int i = 1; i <= 4; ++i)
        QVERIFY(std::abs(found.at(i).distance - 1) < 1e-4);
    QCOMPARE(found.last().cook, RecordId(6));
    QVERIFY(std::abs(found.last().distance - std::sqrt(3.0)) < 1e-4);
    QCOMPARE(mostLike(yard.books, yard.cooks, wish, 0, 2).size(), 2);
    QVERIFY(!yard.order(wish, 1).contains(1));
}

void TstCookLog::theLaterOfTwoAlikeComesFirst()
{
    LikeYard yard;
    yard.add(1, 1, 12, 40, 60);
    yard.add(2, 1, 12, 40, 60);
    yard.cooks[1].lit = day(-30); // the second on the books, but the earlier fire
    QCOMPARE(yard.order(wishFor(1, 12, 40, 60)), (QVector<RecordId>{1, 2}));
    yard.cooks[1].lit = day(30);
    QCOMPARE(yard.order(wishFor(1, 12, 40, 60)), (QVector<RecordId>{2, 1}));
    yard.cooks[1].finished = false;
    QCOMPARE(yard.order(wishFor(1, 12, 40, 60)), (QVector<RecordId>{1}));
}

void TstCookLog::onlyWhatIsAskedIsLookedAt()
{
    LikeYard yard;
    yard.add(1, 2, 30, 95, 400);
    yard.add(2, 1, 12, 40, 60);
    CookWish wish;
    QVERIFY(wish.empty());
    QVERIFY(yard.order(wish).isEmpty());
    wish.outside = temperatureFromFahrenheit(93);
    QCOMPARE(yard.order(wish), (QVector<RecordId>{1, 2}));
    const CookWish own = wishOf(yard.books.cooks.value(2), yard.cooks.at(1));
    QCOMPARE(*own.pit, RecordId(1));
    QCOMPARE(hours(*own.length), 12.0);
    QCOMPARE(own.food->base(), massFromPounds(60).base());
}

void TstCookLog::notKnownCountsOneStep()
{
    LikeYard yard;
    yard.add(1, 1, 12, {}, {}); // neither air nor food is known: the root of two
    yard.add(2, 1, 12, 60, 60); // two steps too warm
    yard.add(3, 1, 12, 40, 0);  // no food at all: three steps
    const auto found = mostLike(yard.books, yard.cooks, wishFor(1, 12, 40, 60), 0, 10);
    QCOMPARE(found.at(0).cook, RecordId(1));
    QVERIFY(std::abs(found.at(0).distance - std::sqrt(2.0)) < 1e-9);
    QCOMPARE(found.at(1).cook, RecordId(2));
    QVERIFY(std::abs(found.at(1).distance - 2) < 1e-3);
    QVERIFY(std::abs(found.at(2).distance - 3) < 1e-9);
}

void TstCookLog::woodOfACookByLot()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addLot(books, 2, day(0));
    addMovement(books, 1, day(0), massFromPounds(1000));
    addMovement(books, 2, day(0), massFromPounds(800));
    books.lots[1].price = Money::ofBase(30000);
    const auto burn = [&](RecordId lot, double dry, double percent, double asIs, int pieces,
                          RecordId cook) {
        addMovement(books, lot, day(5), -massFromPounds(dry), MovementKind::Burned);
        Movement &m = books.movements.last();
        m.cook = cook;
        m.moisture = dryBasis(percent);
        m.asIs = massFromPounds(asIs);
        m.pieces = pieces;
    };
    burn(1, 30, 20, 36, 6, 9);
    burn(2, 100, 40, 140, 20, 9);
    burn(1, 70, 30, 91, 14, 9);
    burn(1, 500, 20, 600, 100, 8); // another cook
    Cook cook;
    cook.id = 9;
    cook.pit = 1;
    cook.lit = day(5, 6);
    cook.fireOut = day(5, 20);
    books.cooks.insert(9, cook);
    const CookWood wood = cookWood(books, 9, day(6));
    QCOMPARE(wood.lots.size(), 2);
    QCOMPARE(wood.lots.first().lot, RecordId(1)); // as much dry mass, but drier: more heat
    const CookWoodLine &line = wood.lots.first();
    QCOMPARE(*line.pieces, 20);
    QVERIFY(near(pounds(*line.asIs), 127, 1e-6));
    QVERIFY(near(pounds(line.dryMass), 100, 1e-6));
    // (30 * 20 + 70 * 30) / 100 by hand.
    QVERIFY(std::abs(100 * dryFraction(*line.moisture) - 27.0) < 2e-3);
    // 30,000 cents for 1,000 lb dry: 3,000 for 100 lb.
    QVERIFY(near(*line.cents, 3000, 1e-6));
    QVERIFY(!wood.lots.last().cents);
    QCOMPARE(*wood.whole.pieces, 40);
    QVERIFY(near(pounds(wood.whole.dryMass), 200, 1e-6));
    // The sum that the fuel answer makes of the same entries, on its own way.
    const WeatherSeries air(books);
    const CookFuel fuel = cookSummary(books, air, cook, day(6));
    QVERIFY(std::abs(fuel.netHeat.toDouble() - wood.whole.netHeat.toDouble()) <= 4);
    QCOMPARE(fuel.dryMass, wood.whole.dryMass);
    QVERIFY(cookWood(books, 9, day(4)).lots.isEmpty());
}

void TstCookLog::moneyNeedsAPrice()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addMovement(books, 1, day(0), massFromPounds(1000));
    addMovement(books, 1, day(5), -massFromPounds(100), MovementKind::Burned);
    books.movements.last().cook = 9;
    CookWood wood = cookWood(books, 9, day(6));
    QCOMPARE(wood.unpriced, 1);
    QVERIFY(!wood.whole.cents);
    QVERIFY(!wood.whole.moisture); // and nothing else is made up
    QVERIFY(!wood.whole.pieces);
    QVERIFY(!wood.whole.asIs);
    books.lots[1].price = Money::ofBase(25000);
    wood = cookWood(books, 9, day(6));
    QCOMPARE(wood.unpriced, 0);
    QVERIFY(near(*wood.whole.cents, 2500, 1e-6));
}

void TstCookLog::rhythmOfTheFeeds()
{
    Books books = emptyYard();
    const auto feed = [&](int minute, int pieces) {
        Feed f;
        f.id = books.feeds.size() + 1;
        f.cook = 9;
        f.pieces = pieces;
        f.time = day(5, 0) + Duration::ofBase(60LL * minute);
        books.feeds.insert(f.id, f);
    };
    QCOMPARE(feedRhythm(books, 9, day(6)).feedings, 0);
    feed(100, 2);
    QVERIFY(!feedRhythm(books, 9, day(6)).meanInterval);
    feed(0, 1); // entered later
    feed(101, 1);
    feed(130, 1);
    const FeedRhythm rhythm = feedRhythm(books, 9, day(6));
    QCOMPARE(rhythm.feedings, 3);
    QCOMPARE(rhythm.pieces, 5);
    QCOMPARE(rhythm.meanInterval->base(), 65 * 60); // 130 minutes in two intervals
    QCOMPARE(rhythm.longestGap->base(), 100 * 60);
    QCOMPARE(rhythm.gapFrom->seconds(), day(5, 0).seconds());
}

RICKYARD_TEST(TstCookLog)
#include "tst_cook_log.moc"
