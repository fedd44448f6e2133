#include "models/domain/wood/meter.h"
#include "models/domain/wood/moisture.h"
#include "tests/domain/yard_builder.h"
#include "tests/support/registry.h"

#include <QTest>

#include <cmath>

using namespace rickyard::domain;
using namespace rickyard::test;

class TstMeter : public QObject
{
    Q_OBJECT

private slots:
    void temperatureRule_data();
    void temperatureRule();
    void speciesByResistance_data();
    void speciesByResistance();
    void theSameScaleChangesNothing();
    void resistanceFallsWithMoisture();
    void woodsByName_data();
    void woodsByName();
    void switchesAndRecord();
    void oddJumpIsAskedAbout_data();
    void oddJumpIsAskedAbout();
};

// "Add 0.5 % for every 5 °C below 20 °C, subtract 0.5 % for every 5 °C above, once more than 5 °C
// away": two instrument manuals.
void TstMeter::temperatureRule_data()
{
    QTest::addColumn<double>("shown");
    QTest::addColumn<double>("celsius");
    QTest::addColumn<double>("moisture");
    QTest::newRow("hot") << 22.0 << 35.0 << 20.5;
    QTest::newRow("cold") << 22.0 << 5.0 << 23.5;
    QTest::newRow("frost") << 20.0 << -10.0 << 23.0;
    QTest::newRow("near") << 22.0 << 24.0 << 22.0;
    QTest::newRow("at the edge") << 22.0 << 15.0 << 22.0;
}

void TstMeter::temperatureRule()
{
    QFETCH(double, shown);
    QFETCH(double, celsius);
    QFETCH(double, moisture);
    QVERIFY(std::abs(correctedForTemperature(shown, celsius) - moisture) < 1e-9);
}

// What a meter on the Douglas-fir scale shows for wood that is truly at 20 %, by log interpolation
// of James's table (FPL-GTR-6; the table from memory): white oak 1.15 megohms reads as 21.9 %.
void TstMeter::speciesByResistance_data()
{
    QTest::addColumn<int>("wood");
    QTest::addColumn<double>("shown");
    const auto row = [](const char *name, MeterScale wood, double shown) {
        QTest::newRow(name) << static_cast<int>(wood) << shown;
    };
    row("white oak", MeterScale::WhiteOak, 21.9);
    row("hickory", MeterScale::Hickory, 23.4);
    row("white ash", MeterScale::WhiteAsh, 22.6);
    row("hard maple", MeterScale::HardMaple, 19.9);
    row("red oak", MeterScale::RedOak, 20.1);
}

void TstMeter::speciesByResistance()
{
    QFETCH(int, wood);
    QFETCH(double, shown);
    const double moisture =
        correctedForSpecies(shown, MeterScale::DouglasFir, static_cast<MeterScale>(wood));
    QVERIFY2(std::abs(moisture - 20) < 0.1, qPrintable(QString::number(moisture)));
}

void TstMeter::theSameScaleChangesNothing()
{
    for (const MeterScale scale : meterScales())
        for (double percent = 5; percent < 40; percent += 0.7) {
            const double same = correctedForSpecies(percent, scale, scale);
            QVERIFY2(std::abs(same - percent) < 1e-9, qPrintable(scaleName(scale)));
        }
}

void TstMeter::resistanceFallsWithMoisture()
{
    for (const MeterScale scale : meterScales()) {
        double last = 1e9;
        for (double percent = 9; percent <= 24; percent += 0.25) {
            const auto here = megohms(scale, percent);
            QVERIFY(here.has_value());
            QVERIFY2(*here <= last, qPrintable(scaleName(scale)));
            last = *here;
        }
        QVERIFY(!megohms(scale, 30));
    }
}

void TstMeter::woodsByName_data()
{
    QTest::addColumn<QString>("name");
    QTest::addColumn<int>("scale"); // -1: none
    const auto row = [](const char *name, std::optional<MeterScale> scale) {
        QTest::newRow(name) << QString::fromLatin1(name) << (scale ? static_cast<int>(*scale) : -1);
    };
    row("Post oak", MeterScale::WhiteOak);
    row("Northern red oak", MeterScale::RedOak);
    row("Pecan", MeterScale::Hickory);
    row("White ash", MeterScale::WhiteAsh);
    row("Ash", MeterScale::WhiteAsh);
    row("Mashed", std::nullopt);
    row("Apple", std::nullopt);
    row("Douglas-fir", MeterScale::DouglasFir);
}

void TstMeter::woodsByName()
{
    QFETCH(QString, name);
    QFETCH(int, scale);
    const auto found = scaleOf(name);
    QCOMPARE(found ? static_cast<int>(*found) : -1, scale);
}

// The record keeps what the meter showed; each correction has its switch.
void TstMeter::switchesAndRecord()
{
    Books books = emptyYard();
    addLot(books, 1, day(0));
    MoistureReading reading;
    reading.id = 1;
    reading.lot = 1;
    reading.time = day(1);
    reading.pieces = {dryBasis(22), dryBasis(24)};
    reading.woodTemperature = temperatureFromCelsius(0);
    reading.scale = QStringLiteral("Douglas-fir");
    books.readings.insert(1, reading);
    const auto mean = [&] { return latestMoisture(books, 1, day(2))->mean().toDouble() / 1000; };
    books.yards[1].correctTemperature = false;
    books.yards[1].correctSpecies = false;
    QVERIFY(std::abs(mean() - 23) < 1e-6);
    books.yards[1].correctTemperature = true;
    QVERIFY(std::abs(mean() - 25) < 1e-6);
    QVERIFY(latestMoisture(books, 1, day(2))->correction.contains(QStringLiteral("+2.0 points")));
    books.yards[1].correctTemperature = false;
    books.yards[1].correctSpecies = true;
    QVERIFY(mean() < 22.5); // post oak reads wet on the factory scale
    QCOMPARE(books.readings.value(1).pieces.first(), dryBasis(22));
    books.readings[1].scale = QStringLiteral("white oak");
    QVERIFY(std::abs(mean() - 23) < 1e-6);
}

void TstMeter::oddJumpIsAskedAbout_data()
{
    QTest::addColumn<double>("percent");
    QTest::addColumn<int>("days");
    QTest::addColumn<QString>("words"); // empty: no question
    QTest::newRow("drier by little") << 33.0 << 5 << QString();
    QTest::newRow("wetter by ten") << 50.0 << 5 << QStringLiteral("10 points wetter");
    QTest::newRow("long ago") << 60.0 << 8 << QString();
    // 40 % dry is 28.6 % wet.
    QTest::newRow("the other basis") << 28.6 << 3 << QStringLiteral("Is the basis of the meter");
}

void TstMeter::oddJumpIsAskedAbout()
{
    QFETCH(double, percent);
    QFETCH(int, days);
    QFETCH(QString, words);
    Books books = emptyYard();
    addLot(books, 1, day(0));
    addReading(books, 1, day(1), {40, 40, 40});
    MoistureReading reading;
    reading.lot = 1;
    reading.time = day(1 + days);
    reading.pieces = {dryBasis(percent)};
    const auto question = oddReading(books, reading);
    QCOMPARE(question.has_value(), !words.isEmpty());
    if (question)
        QVERIFY2(question->contains(words), qPrintable(*question));
}

RICKYARD_TEST(TstMeter)
#include "tst_meter.moc"
