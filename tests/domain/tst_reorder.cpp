// The wood answer as a whole: against closed forms, against the engine run by hand, and its words.
// Its what-ifs and what must hold of any: tst_reorder_properties.cpp.
#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/plan/order_question.h"
#include "models/domain/plan/reorder_words.h"
#include "tests/domain/wood_plan_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::test;

class TstReorder : public QObject
{
    Q_OBJECT
private slots:
    void chancesAreThoseOfTheNormal();
    void isTheEnginesOwnAnswer();
    void saysWhatToOrderByWhen();
    void enoughWood();
    void oneCookIsNamedSo();
    void tooLateForOneInTimeForAnother();
    void nothingComesInTime();
    void wetWoodIsNoHelpNow();
    void nothingToGoBy();
    void unreadWoodIsReadFirst();
    void suppliersSideBySide();
    void sellersUnits();
    void courseRunsDown();
    void textbookStandsBesideIt();
    void chancesInWords();
    void everyNoteIsAReason();
    void onlyCooksAheadAreCounted();
    void plannedUsesAreOrderedAndSound();
    void wordingFollowsTheYard();
};

// One lot of 1,000 seasoned pounds, stacked 30 days ago and never counted: its error is the root of
// 8.544 % and 29/30.4 hundredths squared, as tst_order_question works out. Needs are fixed, so the
// chance of running short is that of a normal number: closed form, no source needed beyond erfc.
void TstReorder::chancesAreThoseOfTheNormal()
{
    const Books books = yardWith(1000);
    const QVector<PlannedUse> uses = {need(1, day(4), 500), need(2, day(10), 420, 1, 1),
                                      need(3, day(16), 180, 1, 2)};
    const WoodAnswer answer = answerOf(books, uses);
    const double sd = 1000 * std::hypot(0.0854400, 0.01 * 29 / 30.4);
    for (const auto &[index, total] : {std::pair{0, 500.0}, {1, 920.0}, {2, 1100.0}}) {
        const WoodRisk &risk = answer.risks.at(index);
        const double exact = phi((total - 1000) / sd);
        QVERIFY2(std::abs(risk.chance - exact) <= 4 * std::max(risk.error, 1e-4),
                 qPrintable(QStringLiteral("%1 against %2").arg(risk.chance).arg(exact)));
    }
    // Mean missing of a normal stock: sd (phi(z) + z Phi(z)), z = (1100 − 1000) / sd; the first two
    // cooks' shortages are theirs, so the last event's is the rest.
    const auto missing = [&](double total) {
        const double z = (total - 1000) / sd;
        return sd * (std::exp(-z * z / 2) / std::sqrt(2 * M_PI) + z * phi(z));
    };
    QVERIFY(nearly(answer.risks.at(2).meanShort, missing(1100) - missing(920), 2.5));
    QVERIFY(
        nearly(answer.risks.at(2).whenShort, (missing(1100) - missing(920)) / phi(100 / sd), 3));
}

void TstReorder::isTheEnginesOwnAnswer()
{
    Books books = yardWith(450);
    addPunctual(books, 1, SellUnit::QuarterCord, 5, 15000);
    addSupplier(books, 2, SellUnit::HalfCord, 3, 40000);
    stockUp(books, 300, 2);
    addOrder(books, 1, 16, date(9));
    const QVector<PlannedUse> uses = threeCooks();
    const WoodAnswer answer = answerOf(books, uses);
    const Stock stock = stockAt(books, day(0));
    const Wording wording;
    const FuelAnswer fuel;
    const QMap<RecordId, SeasoningForecast> seasoning;
    const BookQuestion asked =
        orderQuestion({books, uses, fuel, seasoning, stock, day(0), wording}, 0.05);
    const auto planner = OrderPlanner::start(asked.question);
    QVERIFY(planner.ok());
    const OrderAnswer found = planner.value().answer();
    QCOMPARE(answer.needed, found.needed);
    QCOMPARE(answer.worst, found.nothingWorst);
    for (int i = 0; i < answer.risks.size(); ++i) {
        QCOMPARE(answer.risks.at(i).chance, found.nothing.events.at(size_t(i)).chance);
        QCOMPARE(answer.risks.at(i).error, found.nothing.events.at(size_t(i)).error);
        QVERIFY(nearly(answer.risks.at(i).meanShort, found.nothing.events.at(size_t(i)).meanShort));
    }
    QCOMPARE(answer.orders.size(), int(found.dry.size()));
    QCOMPARE(answer.orders.size(), 2);
    for (int i = 0; i < answer.orders.size(); ++i) {
        const WoodOrderChoice &ours = answer.orders.at(i);
        const OrderChoice &theirs = found.dry.at(size_t(i));
        QCOMPARE(ours.source, int(theirs.offer));
        QCOMPARE(ours.units, theirs.units);
        QCOMPARE(ours.orderBy, date(theirs.orderBy));
        QCOMPARE(ours.keeps, theirs.keeps);
        QCOMPARE(ours.chance, theirs.risk.chance);
        QCOMPARE(ours.chanceToday, theirs.riskToday);
        QCOMPARE(ours.chanceLate, theirs.riskLate);
        QCOMPARE(ours.chanceColder, theirs.riskColder);
        QCOMPARE(ours.cost.has_value(), theirs.cost.has_value());
        QCOMPARE(ours.cost->toDouble(), *theirs.cost);
    }
    QCOMPARE(answer.orderBy, answer.orders.first().orderBy);
    QCOMPARE(answer.units, answer.orders.first().units);
    QCOMPARE(answer.course.size(), kCourseDays + 1);
    for (int d = 0; d <= kCourseDays; ++d) {
        QVERIFY(nearly(answer.course.at(d).middle, found.nothing.course.at(size_t(d)).middle));
        QVERIFY(nearly(answer.withOrder.at(d).lower, found.with.course.at(size_t(d)).lower));
    }
    QCOMPARE(answer.uses.at(1).chanceShort, found.nothing.needChance.at(1));
}

// Dry wood: 1,000 seasoned pounds for three cooks of 400 give or take 15 %. The third is the one at
// risk; the supplier takes ten days and always came on the day, so the order must go out ten days
// and a morning before the 17th at the latest: Sat 6 Dec, or a day before it if chance wants so.
void TstReorder::saysWhatToOrderByWhen()
{
    Books books = yardWith(1000);
    addPunctual(books, 1, SellUnit::HalfCord, 10, 30000);
    const WoodAnswer answer = answerOf(books, threeCooks());
    QVERIFY(answer.needed);
    QCOMPARE(answer.firstShortEvent, 2);
    QCOMPARE(answer.firstShortCook, 3);
    QCOMPARE(answer.worst, 2);
    QCOMPARE(answer.orderBy, date(5));
    QCOMPARE(answer.units, 1);
    QCOMPARE(answer.amountInUnit, QStringLiteral("1 half cord (64\u202Fft³)"));
    QVERIFY(answer.orders.first().keeps);
    QCOMPARE(answer.orders.first().arrival, date(15));
    QCOMPARE(*answer.orders.first().cost, Money::ofBase(30000));
    QCOMPARE(answer.headline.standing, Standing::Act); // within a week
    QCOMPARE(answer.headline.figure, QStringLiteral("6 Dec"));
    QCOMPARE(answer.headline.figureUnit, QStringLiteral("order by"));
    const QString chance =
        chanceWords(answer.risks.at(2).chance, answer.risks.at(2).error, Wording());
    QCOMPARE(answer.headline.plainSentence(),
             QString(QStringLiteral("Order 1 half cord of post oak from Invented supplier 1 by Sat "
                                    "6 Dec; without it, Mill Field Supper on 19 Dec runs short of "
                                    "dry wood with a chance of ") +
                     chance + QLatin1Char('.')));
    QVERIFY(!answer.withOrder.isEmpty());
    QVERIFY(answer.withOrder.at(17).middle > answer.course.at(17).middle);
}

void TstReorder::enoughWood()
{
    const Books books = yardWith(3000);
    const WoodAnswer answer = answerOf(books, threeCooks());
    QCOMPARE(answer.headline.standing, Standing::Good);
    QVERIFY(!answer.needed);
    QVERIFY(!answer.orderBy.isValid());
    QVERIFY(answer.withOrder.isEmpty());
    QCOMPARE(answer.headline.figure, QStringLiteral("3"));
    QVERIFY2(answer.headline.plainSentence().startsWith(QStringLiteral(
                 "No order needed: dry wood covers all 3 booked cooks until 17 Dec; most at risk")),
             qPrintable(answer.headline.plainSentence()));
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("under 0.")));
}

void TstReorder::oneCookIsNamedSo()
{
    Books books = emptyYard();
    stockUp(books, 900);
    const WoodAnswer answer = answerOf(books, {need(1, day(4), 400, 1.1)});
    QVERIFY2(answer.headline.plainSentence().startsWith(
                 QStringLiteral("No order needed: dry wood covers the one booked cook on 5 Dec")),
             qPrintable(answer.headline.plainSentence()));
    QCOMPARE(answer.risks.first().event, 0);
    QCOMPARE(answer.risks.first().plannedCook, 1);
}

// The first cook is in four days and the supplier takes seven: lost to it. The others are not.
void TstReorder::tooLateForOneInTimeForAnother()
{
    Books books = yardWith(0);
    stockUp(books, 100);
    addPunctual(books, 1, SellUnit::QuarterCord, 7, 0);
    const WoodAnswer answer = answerOf(books, threeCooks());
    QCOMPARE(answer.orders.first().lost, QVector<int>{0});
    QVERIFY(!answer.orders.first().keeps);
    QVERIFY(answer.orders.first().chance <= 0.05); // of the others
    const QString sentence = answer.headline.plainSentence();
    QVERIFY2(sentence.contains(QStringLiteral("without it, River Lane Lunch on 13 Dec")),
             qPrintable(sentence));
    QVERIFY2(sentence.contains(QStringLiteral("For the cook on 5 Dec it comes too late")),
             qPrintable(sentence));
    QCOMPARE(answer.headline.standing, Standing::Act);
    QVERIFY(answer.notes.join(QLatin1Char(' '))
                .contains(QStringLiteral("No order placed today can be counted on")));
}

void TstReorder::nothingComesInTime()
{
    Books books = yardWith(100);
    addPunctual(books, 1, SellUnit::Cord, 30, 0);
    const WoodAnswer answer = answerOf(books, {need(1, day(4), 400, 1.1, 1)});
    QVERIFY(answer.orders.isEmpty());
    QVERIFY(!answer.orderBy.isValid());
    QCOMPARE(answer.headline.standing, Standing::Act);
    QCOMPARE(answer.headline.figureUnit, QStringLiteral("chance of running short"));
    const QString sentence = answer.headline.plainSentence();
    QVERIFY2(sentence.startsWith(QStringLiteral("River Lane Lunch on 13 Dec runs short of dry wood "
                                                "with a chance of over 99")),
             qPrintable(sentence));
    QVERIFY2(sentence.contains(QStringLiteral("fetch wood")), qPrintable(sentence));
}

void TstReorder::wetWoodIsNoHelpNow()
{
    Books books = yardWith(100);
    addPunctual(books, 1, SellUnit::Cord, 3, 0).promised = dryBasis(45);
    const WoodAnswer answer = answerOf(books, threeCooks());
    QVERIFY(answer.orders.isEmpty());
    QVERIFY2(
        answer.headline.plainSentence().contains(QStringLiteral("No supplier promises it dry")),
        qPrintable(answer.headline.plainSentence()));
}

void TstReorder::nothingToGoBy()
{
    Books books = emptyYard();
    WoodAnswer answer = answerOf(books, {need(1, day(4), 400)});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("enter the deliveries")));
    stockUp(books, 500);
    answer = answerOf(books, {});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("enter the next event")));
    QCOMPARE(answer.headline.figure, QStringLiteral("500"));
    QCOMPARE(answer.course.size(), kCourseDays + 1);
    QVERIFY(answer.risks.isEmpty());
    QCOMPARE(answer.worst, -1);
    // A wrong number in the books is named, not answered.
    PlannedUse broken = need(1, day(4), 400, 1.1);
    broken.weatherSd = std::nan("");
    answer = answerOf(books, {broken});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.planner == nullptr);
    QVERIFY(!answer.notes.isEmpty());
    QVERIFY(woodWhatIf(answer, {}, {}).risks.isEmpty());
}

void TstReorder::unreadWoodIsReadFirst()
{
    Books books = emptyYard();
    stockUp(books, 500);
    books.readings.clear();
    const WoodAnswer answer = answerOf(books, {need(1, day(4), 400)});
    QCOMPARE(answer.headline.standing, Standing::Unknown);
    QVERIFY(answer.headline.plainSentence().contains(QStringLiteral("Read the moisture of 1 lot")));
    QVERIFY(nearly(answer.missing, 400)); // and what hangs on it is still reckoned
}

void TstReorder::suppliersSideBySide()
{
    Books books = yardWith(100);
    addPunctual(books, 1, SellUnit::Cord, 30, 20000); // cheap and slow
    addPunctual(books, 2, SellUnit::Cord, 5, 60000);
    addPunctual(books, 3, SellUnit::HalfCord, 5, 25000); // half is enough: cheaper than 2
    const WoodAnswer soon = answerOf(books, {need(1, day(12), 400, 1.1, 1)});
    QCOMPARE(soon.supplier, 3);
    QVERIFY(soon.orders.first().keeps);
    QCOMPARE(soon.orders.size(), 2); // the slow one is of no use
    const WoodAnswer later = answerOf(books, {need(1, day(40), 400, 1.1, 1)});
    QCOMPARE(later.supplier, 1);
    QCOMPARE(later.orders.size(), 3);
    QVERIFY(later.orders.at(0).orderBy < later.orders.at(1).orderBy);
    books.suppliers[1].delivery = Money::ofBase(7000); // asks for the way: dearer now
    QCOMPARE(answerOf(books, {need(1, day(40), 400, 1.1, 1)}).supplier, 3);
}

void TstReorder::sellersUnits()
{
    Books books = yardWith(1);
    addPunctual(books, 1, SellUnit::FaceCord, 5, 0).stickLength =
        Length::rounded(16 * kMicrometresPerInch);
    // 42.667 ft³ hold a third of 4,038.7 seasoned pounds: 1,346.2. Some 3,000 needed, and what a
    // load may lack on top: three.
    const QVector<PlannedUse> uses = {need(1, day(20), 3000, 1.01, 1)};
    const auto amount = [&](SellUnit unit) {
        books.suppliers[1].unit = unit;
        return answerOf(books, uses).amountInUnit;
    };
    QCOMPARE(amount(SellUnit::FaceCord), QStringLiteral("3 face cords (42.7\u202Fft³ each)"));
    QCOMPARE(amount(SellUnit::Cord), QStringLiteral("1 cord (128\u202Fft³)"));
    QCOMPARE(amount(SellUnit::QuarterCord), QStringLiteral("4 quarter cords (32\u202Fft³ each)"));
    const WoodAnswer answer = answerOf(books, uses);
    QVERIFY(std::abs(cords(answer.amount) - 1.0) < 1e-6);
    books.suppliers[1].unit = SellUnit::Pound;
    const int poundsOrdered = answerOf(books, uses).units;
    QVERIFY2(poundsOrdered > 3000 && poundsOrdered < 4000,
             qPrintable(QString::number(poundsOrdered)));
}

void TstReorder::courseRunsDown()
{
    Books books = yardWith(1000);
    const WoodAnswer answer =
        answerOf(books, {need(1, day(4), 400, 1.15), need(2, day(48), 400, 1.15)});
    QCOMPARE(answer.course.first().day, date(0));
    QCOMPARE(answer.course.last().day, date(48)); // past six weeks, to the last cook judged
    for (int d = 0; d < answer.course.size(); ++d) {
        const StockPoint &point = answer.course.at(d);
        QCOMPARE(point.day, date(d));
        QVERIFY(nearly(point.middle, d < 4 ? 1000 : d < 48 ? 600 : 200, 12));
        QVERIFY(point.lower <= point.middle && point.middle <= point.upper);
    }
    QVERIFY(nearly(answer.uses.at(0).stockAfter, 600, 12));
    // Too far off to be ordered for: the course does not wait for it.
    QCOMPARE(answerOf(books, {need(1, day(4), 400), need(2, day(120), 400)}).course.size(),
             kCourseDays + 1);
}

void TstReorder::moreAcceptedRiskNeverOrdersEarlier()
{
    for (quint32 seed = 1; seed <= 6; ++seed) {
        Books books = yardWith(700);
        addSupplier(books, 1, SellUnit::QuarterCord, 4, 10000);
        Y(answer.crossCheck.known);
        QVERIFY(
            answer.crossCheck.words.contains(QStringLiteral("order when the dry stock is under")));
        // 30 a day for 40 of the 51 days judged and a wide lead time: far above a week's use.
        QVERIFY(seasonedPounds(answer.crossCheck.point) > 7 * 30 * 40 / 51.0);
        const auto said =
            std::find_if(answer.headline.reasons.cbegin(), answer.headline.reasons.cend(),
                         [](const Reason &reason) {
                             return reason.label == QStringLiteral("Textbook reorder point");
                         });
        QVERIFY(said != answer.headline.reasons.cend());
        // Loads that come late in lumps: the note says why it misleads.
        addRecord(books, 1, {0, 0, 0, 0, 28, 0, 0, 0, 0, 28});
        const ReorderPointCheck lumpy = answerOf(books, uses).crossCheck;
        QVERIFY(lumpy.misleading);
        QVERIFY(lumpy.note.contains(QStringLiteral("lumps")) ||
                lumpy.note.contains(QStringLiteral("bell curve")));
        QVERIFY(!answerOf(books, {}).crossCheck.known);
    }

    void TstReorder::chancesInWords()
    {
        const Wording wording;
        QCOMPARE(chanceWords(0.3812, 0.0049, wording), QStringLiteral("38 %"));
        QCOMPARE(chanceWords(0.0521, 0.0022, wording), QStringLiteral("5 %"));
        QCOMPARE(chanceWords(0.0043, 0.0007, wording), QStringLiteral("0.5 %"));
        QCOMPARE(chanceWords(0.0, 0.00014, wording), QStringLiteral("under 0.1 %"));
        QCOMPARE(chanceWords(1.0, 0.00014, wording), QStringLiteral("over 99.9 %"));
        // Without an error, that of ten thousand paths: 0.5 has 0.005, so a step of 2 %.
        QCOMPARE(chanceWords(0.507, {}, wording), QStringLiteral("50 %"));
        QCOMPARE(chanceWords(0.0, {}, wording), QStringLiteral("under 0.1 %"));
    }

    void TstReorder::everyNoteIsAReason()
    {
        Books books = yardWith(500);
        addMovement(books, 1, day(-2), massFromPounds(-900), MovementKind::Burned);
        addSupplier(books, 1, SellUnit::Cord, 7, 0);
        const WoodAnswer answer = answerOf(books, threeCooks());
        QVERIFY(answer.notes.join(QLatin1Char(' '))
                    .contains(QStringLiteral("Lot 1 is booked below zero and counts as empty")));
        for (const QString &note : answer.notes)
            QVERIFY2(std::any_of(answer.headline.reasons.cbegin(), answer.headline.reasons.cend(),
                                 [&](const Reason &reason) { return reason.value == note; }),
                     qPrintable(note));
        for (const Reason &reason : answer.headline.reasons)
            QVERIFY(!reason.label.isEmpty() && !reason.value.isEmpty());
    }

    namespace {

    Books yardWithPlan()
    {
        Books books = emptyYard();
        Pit pit;
        pit.id = 1;
        pit.name = QStringLiteral("Long Pit");
        pit.diameter = Length::ofBase(610000);
        pit.length = Length::ofBase(1500000);
        books.pits.insert(1, pit);
        addEvent(books, 1, QStringLiteral("Mill Field Supper"), day(12));
        for (RecordId id = 1; id <= 3; ++id) {
            PlannedCook planned;
            planned.id = id;
            planned.event = 1;
            planned.pit = 1;
            planned.light = day(12 - static_cast<int>(id), 4); // entered latest first
            planned.length = durationFromHours(12);
            books.plannedCooks.insert(id, planned);
        }
        return books;
    }

    QVector<RecordId> ahead(const Books &books, Instant now)
    {
        QVector<RecordId> ids;
        const QVector<PlannedUse> uses = plannedUses(books, {}, now);
        for (const PlannedUse &u : uses)
            ids << u.plannedCook;
        return ids;
    }

    } // namespace

    void TstReorder::onlyCooksAheadAreCounted()
    {
        Books books = yardWithPlan();
        QCOMPARE(ahead(books, day(0)), (QVector<RecordId>{3, 2, 1}));
        QCOMPARE(ahead(books, day(9, 20)), (QVector<RecordId>{2, 1})); // 3 was to be out by 16:00
        QCOMPARE(ahead(books, day(9, 8)),
                 (QVector<RecordId>{3, 2, 1})); // late to be lit, still needed
        books.plannedCooks[2].cancelled = true;
        QCOMPARE(ahead(books, day(0)), (QVector<RecordId>{3, 1}));
        Cook cook;
        cook.id = 1;
        cook.pit = 1;
        cook.planned = 3;
        books.cooks.insert(1, cook);
        QCOMPARE(ahead(books, day(0)), QVector<RecordId>{1});
        books.events[1].state = EventState::Cancelled;
        QVERIFY(ahead(books, day(0)).isEmpty());
        books.events[1].state = EventState::Proposed;
        QCOMPARE(ahead(books, day(0)), QVector<RecordId>{1});
        books.plannedCooks[1].event.reset();
        QCOMPARE(ahead(books, day(0)), QVector<RecordId>{1});
    }

    void TstReorder::plannedUsesAreOrderedAndSound()
    {
        const QVector<PlannedUse> uses = plannedUses(yardWithPlan(), {}, day(0));
        QCOMPARE(uses.size(), 3);
        for (const PlannedUse &u : uses) {
            QVERIFY(u.middle.base() > 0);
            QVERIFY(u.lower.base() >= 0 && u.lower <= u.middle && u.middle <= u.upper);
            QVERIFY(u.colder > u.middle); // more to give to colder air
            QVERIFY(!u.useBasis.isEmpty());
            QVERIFY(!u.weatherBasis.isEmpty()); // there is none on record: it says what was assumed
            QVERIFY(u.assumed());
        }
        QVERIFY(uses.at(0).light < uses.at(1).light && uses.at(1).light < uses.at(2).light);
    }

    void TstReorder::wordingFollowsTheYard()
    {
        Books books = emptyYard();
        stockUp(books, 100);
        books.yards[1].metric = true;
        books.yards[1].timeZone = QStringLiteral("America/Chicago");
        const Wording wording = wordingOf(books);
        QVERIFY(wording.metric);
        // 3:00 UTC on the 12th is still the 11th in Chicago: the wood must be there on the 10th.
        addPunctual(books, 1, SellUnit::HalfCord, 2, 0);
        const WoodAnswer answer =
            woodAnswerFrom(books, {need(1, day(11, 3), 400)}, {}, {}, day(0), wording);
        QCOMPARE(answer.risks.first().day, date(10));
        QCOMPARE(answer.orderBy, date(7)); // lit on the 11th: 10 Dec less two days
        QCOMPARE(answer.amountInUnit, QStringLiteral("1 half cord (1.81\u202Fm³)"));
        QVERIFY(answer.headline.reasons.first().value.contains(QStringLiteral("MJ")));
    }

    RICKYARD_TEST(TstReorder)
#include "tst_reorder.moc"
