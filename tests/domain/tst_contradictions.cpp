// What cannot all be meant of a task: each case has a field and words, and its mended twin none.
#include "models/domain/upkeep/contradictions.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::test;

class TstContradictions : public QObject
{
    Q_OBJECT

    static UpkeepTask plain()
    {
        UpkeepTask t;
        t.name = QStringLiteral("Task");
        t.pit = 1;
        t.since = QDate(2026, 11, 1);
        return t;
    }
    static QString fields(const UpkeepBooks &y, const UpkeepTask &task)
    {
        QStringList keys;
        for (const Problem &p : taskContradictions(y.books, task)) {
            keys << p.field;
            if (!p.message.endsWith(QLatin1Char('.')) || p.message.size() < 20)
                keys << QStringLiteral("no sentence");
        }
        return keys.join(QLatin1Char(','));
    }

private slots:
    void triggers()
    {
        UpkeepBooks y;
        y.pit("Long Tom");
        UpkeepTask t = plain();
        t.everyDays = 30;
        t.everyCooks = 10;
        t.everyFireHours = hoursOf(100);
        QCOMPARE(fields(y, t), QString()); // several at once are lawful
        t.occasion = Occasion::AfterCook;
        QCOMPARE(fields(y, t), QStringLiteral("every_cooks,every_fire_hours"));
        t.everyFireHours.reset();
        t.occasion = Occasion::BeforeCook;
        QCOMPARE(fields(y, t), QStringLiteral("every_cooks"));
        t.everyCooks.reset();
        QCOMPARE(fields(y, t), QString());
        t.once = true;
        QCOMPARE(fields(y, t), QStringLiteral("once"));
        t.once = false;
        t.everyDays.reset();
        t.occasion = Occasion::BeforeSeason;
        QCOMPARE(fields(y, t), QStringLiteral("occasion"));
        t.everyDays = 365;
        QCOMPARE(fields(y, t), QString());
        t.everyDays.reset();
        y.books.yards[1].seasonMonth = 4;
        QCOMPARE(fields(y, t), QString());
    }

    void readings()
    {
        UpkeepBooks y;
        UpkeepTask t = plain();
        t.everyDays = 30;
        t.reading = ReadingKind::IcePoint;
        t.readingUnit = QStringLiteral("°F");
        t.readingLow = Plain::ofBase(34000000);
        t.readingHigh = Plain::ofBase(30000000);
        QCOMPARE(fields(y, t), QStringLiteral("reading_high"));
        std::swap(t.readingLow, t.readingHigh);
        QCOMPARE(fields(y, t), QString());
        t.readingUnit = QStringLiteral("mm");
        QCOMPARE(fields(y, t), QStringLiteral("reading_unit"));
        t.reading = ReadingKind::PlateThickness;
        QCOMPARE(fields(y, t), QString());
        t.readingUnit = QString();
        QCOMPARE(fields(y, t), QStringLiteral("reading_unit"));
        t.reading = ReadingKind::None;
        QCOMPARE(fields(y, t), QStringLiteral("reading"));
    }

    void tasksThatWaitForEachOther()
    {
        UpkeepBooks y;
        for (const char *name : {"A", "B", "C"})
            y.task(name, std::nullopt, QDate(2026, 11, 1)).everyDays = 30;
        y.books.tasks[1].after = 2;
        y.books.tasks[2].after = 3;
        QCOMPARE(fields(y, y.books.tasks[1]), QString());
        UpkeepTask c = y.books.tasks[3];
        c.after = 1;
        QCOMPARE(fields(y, c), QStringLiteral("after"));
        c.after = 3;
        QCOMPARE(fields(y, c), QStringLiteral("after"));
        // A ring of others ends the search.
        y.books.tasks[3].after = 2;
        QCOMPARE(fields(y, y.books.tasks[1]), QString());
        y.books.tasks[2].retired = true;
        QVERIFY(taskContradictions(y.books, y.books.tasks[1])
                    .first()
                    .message.contains(QStringLiteral("retired")));
    }

    void putOffPastAFireThatItBlocks()
    {
        UpkeepBooks y;
        const RecordId tom = y.pit("Long Tom");
        y.cook(tom, y.at(QDate(2026, 11, 21), 6), y.at(QDate(2026, 11, 21), 18));
        y.plan(tom, y.at(QDate(2026, 12, 12), 4), 12);
        UpkeepTask &t = y.task("Gasket test", tom, QDate(2026, 11, 1));
        t.everyDays = 30; // 1 December
        t.blocksLighting = true;
        QCOMPARE(fields(y, t), QString());
        t.snoozedUntil = QDate(2026, 12, 12);
        QCOMPARE(fields(y, t), QString());
        t.snoozedUntil = QDate(2026, 12, 13);
        QCOMPARE(fields(y, t), QStringLiteral("snoozed_until"));
        QVERIFY2(
            taskContradictions(y.books, t)
                .first()
                .message.startsWith(QStringLiteral(
                    "Long Tom is to be lit on Sat 12 Dec, and this blocks it from Wed 2 Dec on")),
            qPrintable(taskContradictions(y.books, t).first().message));
        t.blocksLighting = false;
        QCOMPARE(fields(y, t), QString());
        t.blocksTowing = true;
        const RecordId fair = y.event("Quarry Fair", y.at(QDate(2026, 12, 5), 12), 4, 2);
        QCOMPARE(fields(y, t), QString()); // not towed
        y.books.events[fair].towed = true;
        QCOMPARE(fields(y, t), QStringLiteral("snoozed_until"));
        // Not due by then, it may be put off as long as one likes.
        t.everyDays = 300;
        QCOMPARE(fields(y, t), QString());
    }
};

RICKYARD_TEST(TstContradictions)
#include "tst_contradictions.moc"
