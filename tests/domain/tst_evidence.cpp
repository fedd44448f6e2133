// What the log tells of a cook, by hand: rows of small logs with the figure that follows from the
// definition in evidence.h.
#include "models/domain/fire/evidence.h"
#include "models/domain/fire/feedings.h"
#include "models/domain/fire/trace_codec.h"
#include "tests/domain/fire_yard.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using rickyard::test::FireYard;
using rickyard::test::utc;

namespace {

const Instant kLit = utc(2026, 5, 2, 4);

Instant after(double minutes)
{
    return kLit + Duration::rounded(minutes * 60);
}

// One cook of ten hours whose verdict is given.
struct OneCook {
    FireYard yard;
    FuelAnswer fuel;

    OneCook()
    {
        yard.addPit(QStringLiteral("Long Tom"));
        const Cook cook = yard.addCook(1, kLit, 10, 15);
        CookFuel f;
        f.cook = cook.id;
        f.pit = 1;
        f.lit = kLit;
        f.finished = true;
        f.length = durationFromHours(10);
        f.verdict = WatchVerdict();
        f.verdict->excess = 0.25;
        f.verdict->forecast.relativeSd = 0.1;
        fuel.cooks << f;
    }
    void feed(double minutes)
    {
        Feed f;
        f.id = RecordId(yard.books.feeds.size()) + 1;
        f.cook = 1;
        f.lot = 1;
        f.time = after(minutes);
        f.pieces = 1;
        yard.books.feeds.insert(f.id, f);
    }
    void note(NoteKind kind)
    {
        CookNote n;
        n.id = RecordId(yard.books.notes.size()) + 1;
        n.cook = 1;
        n.time = after(60);
        n.kind = kind;
        yard.books.notes.insert(n.id, n);
    }
    void dial(double minutes, double celsius, const QString &probe = {})
    {
        CookTemperature t;
        t.id = RecordId(yard.books.temperatures.size()) + 1;
        t.cook = 1;
        t.time = after(minutes);
        t.probe = probe;
        t.temperature = temperatureFromCelsius(celsius);
        yard.books.temperatures.insert(t.id, t);
    }
    // A probe that swings by a degree, as a live one does: a flat one is left out.
    void probe(double celsius)
    {
        QVector<TracePoint> points;
        for (int minute = 0; minute <= 600; ++minute)
            points.append(
                {qint64{minute} * 60, temperatureFromCelsius(celsius + std::sin(minute / 7.0))});
        Trace trace;
        trace.id = 1;
        trace.cook = 1;
        trace.probe = QStringLiteral("pit");
        trace.start = kLit;
        trace.points = int(points.size());
        const auto block = encodeTrace(points);
        QVERIFY(block.ok());
        trace.block = block.value();
        yard.books.traces.insert(1, trace);
    }
    [[nodiscard]] EvidenceCook evidence() const { return evidenceOf(yard.books, fuel).value(0); }
};

bool near(std::optional<double> value, double wanted, double within = 1e-9)
{
    return value && std::abs(*value - wanted) < within;
}

} // namespace

class TstEvidence : public QObject
{
    Q_OBJECT

private slots:
    void feedingsBegin_data();
    void feedingsBegin();
    void whatTheVerdictSays();
    void onlyJudgedCooks();
    void theLongestGap();
    void doorsAnHour();
    void preheatIsFromTheMark();
    void theDialAgainstTheProbe();
    void theQuestionFollowsTheFlag();
};

void TstEvidence::feedingsBegin_data()
{
    QTest::addColumn<QVector<int>>("feeds"); // seconds after lighting
    QTest::addColumn<QVector<int>>("starts");
    QTest::newRow("none") << QVector<int>{} << QVector<int>{};
    QTest::newRow("two minutes are one") << QVector<int>{0, 120} << QVector<int>{0};
    QTest::newRow("a second more are two") << QVector<int>{0, 121} << QVector<int>{0, 121};
    QTest::newRow("each within two minutes of the last")
        << QVector<int>{0, 100, 200, 300} << QVector<int>{0};
    QTest::newRow("in any order") << QVector<int>{1800, 0, 30, 3600} << QVector<int>{0, 1800, 3600};
}

void TstEvidence::feedingsBegin()
{
    QFETCH(QVector<int>, feeds);
    QFETCH(QVector<int>, starts);
    const auto times = [](const QVector<int> &seconds) {
        QVector<Instant> all;
        for (const int s : seconds)
            all << kLit + Duration::ofBase(s);
        return all;
    };
    QCOMPARE(feedingStarts(times(feeds)), times(starts));
}

void TstEvidence::whatTheVerdictSays()
{
    OneCook one;
    CookFuel &f = one.fuel.cooks.first();
    f.lots = {{1, 0.75}, {2, 0.25}};
    f.meanMoisture = Moisture::ofBase(31000);
    f.meanWind = Speed::ofBase(4200);
    f.start = StartKind::Warm;
    f.columns.fill(1e6);
    f.columns[WindColumn] = 3e6;
    const EvidenceCook e = one.evidence();
    QVERIFY(near(e.logRatio, std::log(1.25)));
    QVERIFY(near(e.sd, 0.1));
    QCOMPARE(e.lots, f.lots);
    QVERIFY(near(e.moisture, 0.31));
    QVERIFY(near(e.wind, 4.2));
    QVERIFY(!e.startCold);
    QVERIFY(near(e.windShare, 3.0 / (double(f.columns.size()) + 2.0)));
}

void TstEvidence::onlyJudgedCooks()
{
    OneCook one;
    one.fuel.cooks.first().verdict.reset();
    QVERIFY(evidenceOf(one.yard.books, one.fuel).isEmpty());
}

void TstEvidence::theLongestGap()
{
    OneCook one;
    for (const double minute : {0.0, 40.0, 80.0, 80.5, 120.0})
        one.feed(minute);
    QVERIFY(near(one.evidence().feedGap, 1.0));
    one.feed(240); // two hours after the last, against a median of 40 minutes
    QVERIFY(near(one.evidence().feedGap, 3.0));
    one.feed(590); // in the last hour: the fire is let burn down
    QVERIFY(near(one.evidence().feedGap, 3.0));
    OneCook few;
    for (const double minute : {0.0, 40.0, 90.0})
        few.feed(minute);
    QVERIFY(!few.evidence().feedGap); // two gaps say nothing
}

void TstEvidence::doorsAnHour()
{
    OneCook one;
    one.note(NoteKind::Wrapped);
    QVERIFY(!one.evidence().doors); // none noted is not none opened
    for (int i = 0; i < 5; ++i)
        one.note(NoteKind::Door);
    QVERIFY(near(one.evidence().doors, 0.5));
}

void TstEvidence::preheatIsFromTheMark()
{
    OneCook one;
    QVERIFY(!one.evidence().preheat);
    one.yard.books.cooks[1].atTemperature = after(90);
    QVERIFY(near(one.evidence().preheat, 1.5));
}

void TstEvidence::theDialAgainstTheProbe()
{
    OneCook one;
    one.probe(130);
    one.dial(100, 118);
    one.dial(200, 120);
    QVERIFY(!one.evidence().dialOff); // two readings are not enough
    one.dial(300, 127, QStringLiteral("Door gauge"));
    one.dial(400, 60, QStringLiteral("meat")); // no dial
    QVERIFY2(near(one.evidence().dialOff, 10.0, 1.0),
             qPrintable(QString::number(one.evidence().dialOff.value_or(-99))));
    one.dial(700, 20); // after the probe's last reading
    QVERIFY(near(one.evidence().dialOff, 10.0, 1.0));
}

void TstEvidence::theQuestionFollowsTheFlag()
{
    FuelAnswer fuel;
    PitFuel pit;
    pit.pit = 4;
    pit.up = 1.0;
    fuel.pits << pit;
    QVERIFY(!questionOf(fuel, 4)); // it does not climb
    QVERIFY(!questionOf(fuel, 5));
    PitFuel &one = fuel.pits.first();
    one.climb = WatchExcess();
    one.climb->since = 11;
    one.fall = WatchExcess();
    one.fall->since = 12;
    auto question = questionOf(fuel, 4);
    QVERIFY(question && !question->flagged);
    QCOMPARE(question->since, RecordId(11));
    QCOMPARE(question->direction, WatchFlag::More);
    one.down = 2.0; // falls further than it climbs
    QCOMPARE(questionOf(fuel, 4)->since, RecordId(12));
    one.flag = WatchFlag::More; // but a flag says what is asked
    question = questionOf(fuel, 4);
    QVERIFY(question->flagged);
    QCOMPARE(question->since, RecordId(11));
}

RICKYARD_TEST(TstEvidence)
#include "tst_evidence.moc"
