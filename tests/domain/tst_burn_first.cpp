#include "models/domain/wood/burn_first.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

// Two dry lots of post oak (1 the older), a dry lot of pecan (3, oldest of all), a wet one (4).
Books yard()
{
    Books books = emptyYard();
    Species pecan = books.species.value(1);
    pecan.id = 2;
    pecan.name = QStringLiteral("Pecan");
    books.species.insert(2, pecan);
    Pit pit;
    pit.id = 1;
    pit.name = QStringLiteral("Long pit");
    books.pits.insert(1, pit);
    addLot(books, 1, day(5));
    addLot(books, 2, day(9));
    addLot(books, 3, day(0)).species = 2;
    addLot(books, 4, day(1));
    for (const RecordId lot : {1, 2, 3, 4}) {
        addMovement(books, lot, day(10), massFromPounds(500));
        addReading(books, lot, day(11), {lot == 4 ? 40.0 : 18.0});
    }
    return books;
}

PlannedUse use(Books &books, RecordId id, int when, std::optional<RecordId> species, double pounds)
{
    PlannedCook cook;
    cook.id = id;
    cook.pit = 1;
    cook.light = day(when);
    cook.species = species;
    books.plannedCooks.insert(id, cook);
    PlannedUse use;
    use.plannedCook = id;
    use.pit = 1;
    use.light = cook.light;
    use.middle = heatFromSeasonedPounds(pounds);
    use.upper = heatFromSeasonedPounds(pounds * 1.2);
    return use;
}

QVector<RecordId> ranked(const QVector<BurnChoice> &order)
{
    QVector<RecordId> lots;
    for (const BurnChoice &choice : order)
        if (choice.rank > 0)
            lots << choice.lot;
    return lots;
}

} // namespace

class TstBurnFirst : public QObject
{
    Q_OBJECT

private slots:
    void theOldestDryLot();
    void whatTheNextCookAsksFor();
    void keptForALaterCook();
    void partlyKept();
    void neverWetHeldOrBarred();
};

void TstBurnFirst::theOldestDryLot()
{
    const Books books = yard();
    const auto order = burnFirst(books, stockAt(books, day(20)), {});
    QCOMPARE(ranked(order), (QVector<RecordId>{3, 1, 2}));
    QCOMPARE(order.last().lot, 4);
    QCOMPARE(order.last().rank, 0);
    QVERIFY(order.last().reason.contains(QStringLiteral("too wet")));
}

void TstBurnFirst::whatTheNextCookAsksFor()
{
    Books books = yard();
    const auto first = use(books, 1, 21, RecordId{1}, 100);
    const auto order = burnFirst(books, stockAt(books, day(20)), {first});
    QCOMPARE(ranked(order), (QVector<RecordId>{1, 2, 3}));
    QVERIFY(order.first().reason.contains(QStringLiteral("asks for")));
}

// The pecan is the oldest, but the feast next week asks for more pecan than there is.
void TstBurnFirst::keptForALaterCook()
{
    Books books = yard();
    const auto now = use(books, 1, 21, std::nullopt, 100);
    const auto later = use(books, 2, 28, RecordId{2}, 700);
    const auto order = burnFirst(books, stockAt(books, day(20)), {now, later});
    QCOMPARE(ranked(order), (QVector<RecordId>{1, 2, 3}));
    QCOMPARE(order.at(2).keptFor, 2);
    QVERIFY2(order.at(2).reason.startsWith(QStringLiteral("kept for Long pit on ")),
             qPrintable(order.at(2).reason));
    QVERIFY(order.at(2).free.base() == 0);
}

void TstBurnFirst::partlyKept()
{
    Books books = yard();
    const auto now = use(books, 1, 21, std::nullopt, 100);
    const auto later = use(books, 2, 28, RecordId{2}, 200);
    const auto order = burnFirst(books, stockAt(books, day(20)), {now, later});
    QCOMPARE(ranked(order).first(), 3);
    // 200 lb by their upper bound, 240, are spoken for.
    QVERIFY(std::abs(seasonedPounds(order.first().spokenFor) - 240) < 0.01);
    QCOMPARE(order.first().spokenFor + order.first().free, lotStockAt(books, 3, day(20)).netHeat);
}

void TstBurnFirst::neverWetHeldOrBarred()
{
    Books books = yard();
    books.lots[1].hold = true;
    books.lots[1].holdReason = QStringLiteral("mould");
    books.species[2].neverBurn = true;
    books.readings.remove(books.readings.firstKey() + 1); // lot 2 is not read
    const auto order = burnFirst(books, stockAt(books, day(20)), {});
    QVERIFY(ranked(order).isEmpty());
    QCOMPARE(order.size(), 4);
    for (const BurnChoice &choice : order)
        QVERIFY(!choice.reason.isEmpty());
}

RICKYARD_TEST(TstBurnFirst)
#include "tst_burn_first.moc"
