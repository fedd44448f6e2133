#include "models/domain/fire/hand_over.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::test;

namespace {

QString plainText(const HandOver &sheet)
{
    QString text = QString(sheet.title + QLatin1Char('\n'));
    for (const HandOverSection &section : sheet.sections)
        text += QString(section.heading + QLatin1Char('\n') +
                        section.lines.join(QLatin1Char('\n')) + QLatin1Char('\n'));
    return text;
}

// A fire of six hours, fed every half hour from a lot of some size.
struct Night {
    FireYard yard;
    RecordId cook = 0;
    Instant now = utc(2026, 3, 2, 0, 20);

    explicit Night(double lotJoules)
    {
        const RecordId pit = yard.addPit(QStringLiteral("Long pit"));
        Lot &lot = yard.books.lots[1];
        lot.name = QStringLiteral("Oak, spring");
        lot.received = utc(2026, 1, 1, 12);
        MoistureReading r;
        r.id = 1;
        r.lot = 1;
        r.time = utc(2026, 2, 1, 12);
        r.pieces = {Moisture::ofBase(18000)};
        yard.books.readings.insert(1, r);
        Movement in;
        in.id = 1000;
        in.lot = 1;
        in.time = lot.received;
        in.dryMass = massFromKilograms(lotJoules / netHeatPerDryKilogram(WoodAnalysis(), {}));
        yard.books.movements.insert(in.id, in);
        Cook &burning = yard.addCook(pit, utc(2026, 3, 1, 18), 12, 5);
        burning.fireOut.reset();
        burning.foods = QStringLiteral("brisket");
        cook = burning.id;
        for (int i = 0; i < 12; ++i) {
            const Instant time = burning.lit + Duration::ofBase(60 * (10 + 30 * i));
            yard.burn(burning, 30e6).time = time;
            Feed feed;
            feed.id = i + 1;
            feed.cook = cook;
            feed.lot = 1;
            feed.time = time;
            yard.books.feeds.insert(feed.id, feed);
        }
    }
    void note(NoteKind kind, Instant time, const QString &text = {})
    {
        CookNote n;
        n.id = static_cast<RecordId>(yard.books.notes.size()) + 1;
        n.cook = cook;
        n.time = time;
        n.kind = kind;
        n.text = text;
        yard.books.notes.insert(n.id, n);
    }
    [[nodiscard]] QString text(const UpkeepAnswer &upkeep = {}) const
    {
        return plainText(
            handOver(yard.books, {}, upkeep, yard.books.cooks.value(cook), 0, now, Wording{}));
    }
};

} // namespace

class TstHandOver : public QObject
{
    Q_OBJECT

private slots:
    void saysWhatBurnsAndWhatIsNext();
    void warnsWhenTheWoodRunsShort();
    void notesSinceTheLastHandOver();
    void worriesOfThePit();
    void noEmptyHeadings();
};

void TstHandOver::saysWhatBurnsAndWhatIsNext()
{
    const Night night(2e9);
    const QString text = night.text();
    for (const char *words : {"Long pit, Mon 2 Mar, 12:20 AM", "Lit 6:00 PM", "brisket",
                              "Last fed 11:40 PM, next about 12:10 AM", "every 30 min",
                              "From Oak, spring:", "Fire out about 6:00 AM (assumed"})
        QVERIFY2(text.contains(QString::fromUtf8(words)), qPrintable(text));
}

// 360 MJ are burned and half an hour is 30: five and a half hours to go need about 330.
void TstHandOver::warnsWhenTheWoodRunsShort()
{
    const QString plenty = Night(2e9).text();
    QVERIFY2(!plenty.contains(QStringLiteral("may run out")), qPrintable(plenty));
    const QString scarce = Night(500e6).text();
    QVERIFY2(scarce.contains(QStringLiteral("The wood may run out")), qPrintable(scarce));
}

void TstHandOver::notesSinceTheLastHandOver()
{
    Night night(2e9);
    night.note(NoteKind::Door, utc(2026, 3, 1, 19), QStringLiteral("early"));
    night.note(NoteKind::HandOver, utc(2026, 3, 1, 20));
    night.note(NoteKind::Remark, utc(2026, 3, 1, 22, 15), QStringLiteral("smoke turned white"));
    night.note(NoteKind::Grease, utc(2026, 3, 1, 23));
    const QString text = night.text();
    QVERIFY(!text.contains(QStringLiteral("early")));
    QVERIFY2(text.contains(QStringLiteral("10:15 PM smoke turned white")), qPrintable(text));
    QVERIFY(text.contains(QStringLiteral("11:00 PM ")));
    QVERIFY(!text.contains(QStringLiteral("Nobody has noted")));
}

void TstHandOver::worriesOfThePit()
{
    Night night(2e9);
    UpkeepTask task;
    task.id = 7;
    task.name = QStringLiteral("Empty the grease bucket");
    night.yard.books.tasks.insert(7, task);
    UpkeepAnswer upkeep;
    TaskDue due;
    due.task = 7;
    due.pit = 1;
    due.overdue = true;
    upkeep.tasks << due;
    const QString text = night.text(upkeep);
    QVERIFY2(text.contains(QStringLiteral("Overdue: Empty the grease bucket")), qPrintable(text));
    // 26 hours ahead, within a wide band: each with its day.
    QVERIFY2(
        text.contains(QStringLiteral("lasts until about Tue 2:51 AM (between Mon 3:54 PM and")),
        qPrintable(text));
    QVERIFY(text.contains(QStringLiteral("grease drain")));
    // What was passed over to light it is said, with the reason; another pit's is not.
    Override despite;
    despite.id = 1;
    despite.task = 7;
    despite.time = night.yard.books.cooks.value(night.cook).lit;
    despite.reason = QStringLiteral("emptied by eye");
    night.yard.books.overrides.insert(1, despite);
    const QString words =
        QStringLiteral("Lit all the same, without: empty the grease bucket. emptied by eye");
    QVERIFY2(night.text().contains(words), qPrintable(night.text()));
    night.yard.books.tasks[7].pit = 99;
    QVERIFY(!night.text().contains(QStringLiteral("emptied by eye")));
    // Wet wood in the firebox is said.
    night.yard.books.readings[1].pieces = {Moisture::ofBase(35000)};
    QVERIFY(night.text().contains(QStringLiteral("too wet to burn clean")));
}

void TstHandOver::noEmptyHeadings()
{
    FireYard yard;
    const RecordId pit = yard.addPit(QStringLiteral("Small pit"));
    Cook &cook = yard.addCook(pit, utc(2026, 3, 1, 18), 12, 5);
    cook.fireOut.reset();
    const HandOver sheet = handOver(yard.books, {}, {}, cook, 0, utc(2026, 3, 1, 18, 5), Wording{});
    for (const HandOverSection &section : sheet.sections)
        QVERIFY2(!section.lines.isEmpty(), qPrintable(section.heading));
    QVERIFY(!sheet.sections.isEmpty());
}

RICKYARD_TEST(TstHandOver)
#include "tst_hand_over.moc"
