// Readings of upkeep visits: when water boils, thermometers, the paper test, the wear of a plate.
#include "models/domain/statistics/least_squares.h"
#include "models/domain/upkeep/boiling.h"
#include "models/domain/upkeep/readings.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

#include <boost/math/distributions/students_t.hpp>

using namespace rickyard::test;

class TstReadings : public QObject
{
    Q_OBJECT

    static UpkeepTask &thermometer(UpkeepBooks &y, ReadingKind kind, const char *unit, double low,
                                   double high)
    {
        UpkeepTask &task = y.task("Probe check", std::nullopt, QDate(2026, 11, 1));
        task.everyDays = 7;
        task.reading = kind;
        task.readingUnit = QString::fromUtf8(unit);
        task.readingLow = Plain::rounded(low * 1e6);
        task.readingHigh = Plain::rounded(high * 1e6);
        return task;
    }

    static UpkeepTask &plate(UpkeepBooks &y, double low)
    {
        UpkeepTask &task = y.task("Floor thickness", y.pit("Long Tom"), QDate(2020, 1, 1));
        task.everyDays = 365;
        task.reading = ReadingKind::PlateThickness;
        task.readingUnit = QStringLiteral("in");
        task.readingLow = Plain::rounded(low * 1e6);
        return task;
    }

private slots:
    // IAPWS R7-97(2012), table 36: the release's own check values of the backward equation.
    void boilingPointByPressure()
    {
        const auto kelvin = [](double megapascal) {
            return celsius(boilingPoint(Pressure::rounded(megapascal * 1e6))) + 273.15;
        };
        QVERIFY(std::abs(kelvin(0.1) - 372.755919) < 0.0006); // kept to a thousandth of a degree
        QVERIFY(std::abs(kelvin(1.0) - 453.035632) < 0.0006);
        QVERIFY(std::abs(kelvin(10.0) - 584.149488) < 0.0006);
        // Steam tables, to a hundredth (from memory): 70, 80 and 90 kPa.
        QVERIFY(std::abs(kelvin(0.07) - 273.15 - 89.93) < 0.02);
        QVERIFY(std::abs(kelvin(0.08) - 273.15 - 93.49) < 0.02);
        QVERIFY(std::abs(kelvin(0.09) - 273.15 - 96.69) < 0.02);
        // ITS-90: 99.974 °C at 101.325 kPa.
        QVERIFY(std::abs(celsius(boilingPoint(Pressure::ofBase(101325))) - 99.974) < 0.002);
    }

    // ISO 2533:1975, the table of the standard atmosphere by geopotential height (from memory).
    void pressureOfTheStandardAtmosphere()
    {
        const auto at = [](double m) {
            return standardPressure(Length::rounded(m * 1e6)).toDouble();
        };
        QCOMPARE(at(0), 101325.0);
        QVERIFY(std::abs(at(1000) - 89874.6) < 1.0);
        QVERIFY(std::abs(at(2000) - 79495.2) < 1.0);
        QVERIFY(std::abs(at(3000) - 70108.5) < 1.0);
        QVERIFY(std::abs(at(5000) - 54019.9) < 1.0);
        QVERIFY(at(-100) > 101325.0);
    }

    // The altitude table of thermometer leaflets (state extension services): 212 °F less 1.77 °F
    // each 1,000 ft, rounded; 1,000 to 7,000 ft. A straight line from 212.0; water bends below it,
    // 0.4 °F at 5,000 ft (its figure for 6,000 ft is 0.2 off its own rule).
    void boilingPointByHeight()
    {
        const double table[] = {210.2, 208.5, 206.7, 204.9, 203.2, 201.6, 199.7};
        for (int i = 0; i < 7; ++i) {
            const double got = fahrenheit(boilingPoint(Length::rounded((i + 1) * 304.8e6)));
            QVERIFY2(std::abs(got - table[i]) < 0.65, QByteArray::number(got));
        }
    }

    void limitsOfBoilingWaterMoveWithTheHeight()
    {
        UpkeepBooks y;
        UpkeepTask &task = thermometer(y, ReadingKind::BoilingPoint, "°F", 210, 214);
        const Instant at = y.at(QDate(2026, 11, 24), 18);
        y.reading(task.id, at, 208.6);
        const auto judged = [&] {
            return judgeReadings(y.books, task, y.books.checkReadings.values());
        };
        ReadingVerdict verdict = judged();
        QVERIFY(verdict.judged && verdict.failed); // at sea level, where nothing says otherwise
        QVERIFY(verdict.words.contains(QStringLiteral("height is not recorded")));
        QVERIFY(!verdict.finding.isEmpty());
        y.books.yards[1].elevation = Length::rounded(2000 * 304800.0); // 2,000 ft
        verdict = judged();
        QVERIFY2(!verdict.failed, qPrintable(verdict.words));
        QVERIFY(verdict.finding.isEmpty());
        // 208.3 °F by the equation; the leaflets' 208.5 starts from 212.0.
        QVERIFY2(verdict.words.startsWith(
                     QStringLiteral("reads 208.6 °F, 0.3 °F above 208.3 °F of boiling water")),
                 qPrintable(verdict.words));
        // The same in degrees Celsius.
        UpkeepTask &metric = thermometer(y, ReadingKind::BoilingPoint, "°C", 99, 101);
        const ReadingLimits limits = readingLimits(y.books, metric);
        QVERIFY(std::abs(limits.moved - (97.95 - 99.974)) < 0.01);
        y.reading(metric.id, at, 101.0);
        QVERIFY(judgeReadings(y.books, metric, y.books.checkReadings.values()).failed);
    }

    void iceIsThirtyTwoEverywhere()
    {
        UpkeepBooks y;
        y.books.yards[1].elevation = Length::rounded(7000 * 304800.0);
        UpkeepTask &task = thermometer(y, ReadingKind::IcePoint, "°F", 30, 34);
        const Instant at = y.at(QDate(2026, 11, 24), 18);
        y.reading(task.id, at, 34.5);
        ReadingVerdict verdict = judgeReadings(y.books, task, y.books.checkReadings.values());
        QVERIFY(verdict.failed);
        QCOMPARE(verdict.words,
                 QStringLiteral("reads 34.5 °F, 2.5 °F above 32 °F of ice water. Allowed: 30 to "
                                "34 °F. Out of use until it is mended or renewed."));
        QCOMPARE(verdict.finding, QStringLiteral("Probe check: 34.5 °F"));
        // As left counts, not as found.
        y.reading(task.id, at + hoursOf(0.2), 32.0);
        verdict = judgeReadings(y.books, task, y.books.checkReadings.values());
        QVERIFY(!verdict.failed);
        QVERIFY(verdict.words.contains(QStringLiteral("the same as the water")));
        QVERIFY(!verdict.words.contains(QStringLiteral("safe"), Qt::CaseInsensitive));
        QCOMPARE(readingCourse(y.books, task).size(), 2);
        QVERIFY(readingCourse(y.books, task).first().failed);
    }

    void thePaperTestNamesItsPoints()
    {
        UpkeepBooks y;
        UpkeepTask &task = y.task("Gasket test", y.pit("Long Tom"), QDate(2026, 11, 1));
        task.everyDays = 30;
        task.reading = ReadingKind::PaperTest;
        task.readingUnit = QStringLiteral("of 3");
        task.readingPoints = 8;
        task.readingLow = Plain::ofBase(2000000);
        const Instant at = y.at(QDate(2026, 11, 24), 18);
        const RecordId visit = y.visit(task.id, VisitState::Done, at, 0.25);
        for (int point = 1; point <= 8; ++point)
            y.reading(task.id, at, point == 3 || point == 5 ? 1 : 2 + point % 2, point, visit);
        const auto all = readingsOfVisit(y.books, visit);
        ReadingVerdict verdict = judgeReadings(y.books, task, all);
        QVERIFY(verdict.failed);
        QCOMPARE(verdict.points.size(), 8);
        QVERIFY(verdict.points.at(2).failed && verdict.points.at(4).failed);
        QCOMPARE(verdict.words, QStringLiteral("6 of 8 points hold the paper; loose at 3 and 5. "
                                               "Allowed: at least 2 of 3"));
        QCOMPARE(verdict.finding, QStringLiteral("Gasket test: loose at points 3 and 5 of 8"));
        verdict = judgeReadings(y.books, task, all.mid(0, 2));
        QVERIFY(!verdict.failed);
        QCOMPARE(verdict.missing, 6);
        QVERIFY(verdict.words.contains(QStringLiteral("Not read: 6 of 8 points")));
        verdict = judgeReadings(y.books, task, {});
        QVERIFY(!verdict.judged);
        QCOMPARE(verdict.words, QStringLiteral("nothing read"));
        task.readingLow.reset();
        QVERIFY(!judgeReadings(y.books, task, all).judged);
    }

    void tooFewValuesForARate()
    {
        UpkeepBooks y;
        UpkeepTask &task = plate(y, 0.125);
        const Instant now = y.at(QDate(2026, 11, 24));
        QCOMPARE(plateWear(y.books, task, now, y.local).words, QStringLiteral("Nothing read yet"));
        y.reading(task.id, y.at(QDate(2024, 1, 10)), 0.250);
        y.reading(task.id, y.at(QDate(2024, 1, 10), 1), 0.247, 2); // the same day: the thinnest
        y.reading(task.id, y.at(QDate(2025, 1, 10)), 0.240);
        const PlateWear wear = plateWear(y.books, task, now, y.local);
        QCOMPARE(wear.values, 2);
        QVERIFY(!wear.perYear && !wear.limitDay.isValid());
        QCOMPARE(wear.words, QStringLiteral("0.240 in at the last reading. Readings of 2 days so "
                                            "far: a rate of loss needs readings of three days"));
    }

    void anExactLineMeetsItsLimitOnTheDay()
    {
        UpkeepBooks y;
        UpkeepTask &task = plate(y, 0.150);
        const QDate first(2022, 3, 1);
        // A hundredth of an inch in a thousand days, from 0.2 in: the limit after 5,000 days.
        for (int i = 0; i < 4; ++i)
            y.reading(task.id, y.at(first.addDays(300 * i), 12), 0.200 - 0.003 * i);
        const PlateWear wear = plateWear(y.books, task, y.at(QDate(2026, 11, 24)), y.local);
        QVERIFY(std::abs(*wear.perYear - 365.25e-5) < 1e-9);
        QCOMPARE(wear.limitDay, first.addDays(5000));
        QCOMPARE(wear.limitDayEarly, wear.limitDay);
        QCOMPARE(wear.limitDayLate, wear.limitDay);
    }

    // Fieller's interval is where the band of the line (checked against R's predict.lm in
    // tst_least_squares) meets the limit: found here by bisection, with Boost's Student t.
    void theIntervalIsThatOfTheBand()
    {
        UpkeepBooks y;
        UpkeepTask &task = plate(y, 0.200);
        const QDate first(2021, 5, 1);
        const double values[] = {0.251, 0.246, 0.243, 0.239, 0.236, 0.231};
        Eigen::MatrixXd days(6, 1);
        Eigen::VectorXd read(6);
        for (int i = 0; i < 6; ++i) {
            y.reading(task.id, y.at(first.addDays(350 * i), 12), values[i]);
            days(i, 0) = 350 * i;
            read(i) = values[i];
        }
        const PlateWear wear = plateWear(y.books, task, y.at(QDate(2026, 11, 24)), y.local);
        const auto fit = rickyard::domain::statistics::leastSquares(days, read);
        QVERIFY(fit.ok());
        const auto crossing = [&](bool lower) {
            double low = 0;
            double high = 20000;
            while (high - low > 0.01) {
                const double mid = (low + high) / 2;
                const auto band = rickyard::domain::statistics::meanResponse(
                    fit.value(), Eigen::VectorXd::Constant(1, mid), kWearLevel);
                ((lower ? band->lower : band->upper) > 0.200 ? low : high) = mid;
            }
            return first.addDays(std::llround(low));
        };
        QVERIFY(std::abs(wear.limitDayEarly.daysTo(crossing(true))) <= 1);
        QVERIFY(std::abs(wear.limitDayLate.daysTo(crossing(false))) <= 1);
        QVERIFY(wear.limitDayEarly < wear.limitDay && wear.limitDay < wear.limitDayLate);
        const double t = boost::math::quantile(boost::math::students_t(4), 0.9);
        QVERIFY(std::abs((*wear.perYearHigh - *wear.perYear) / 365.25 -
                         t * fit->standardErrors(1)) < 1e-9);
        QVERIFY2(wear.words.contains(QStringLiteral("8 in 10 between")), qPrintable(wear.words));
    }

    void aSlopeThatMayBeNoneHasNoLateEnd()
    {
        UpkeepBooks y;
        UpkeepTask &task = plate(y, 0.100);
        const double values[] = {0.250, 0.245, 0.252, 0.244};
        for (int i = 0; i < 4; ++i)
            y.reading(task.id, y.at(QDate(2022, 3, 1).addDays(300 * i), 12), values[i]);
        const PlateWear wear = plateWear(y.books, task, y.at(QDate(2026, 11, 24)), y.local);
        QVERIFY(*wear.perYear > 0 && *wear.perYearLow < 0);
        QVERIFY(!wear.limitDayLate.isValid());
    }

    void atItsLimitItSaysWhatToDo()
    {
        UpkeepBooks y;
        UpkeepTask &task = plate(y, 0.125);
        for (int i = 0; i < 3; ++i)
            y.reading(task.id, y.at(QDate(2022, 3, 1).addDays(300 * i)), 0.19 - 0.035 * i);
        const PlateWear wear = plateWear(y.books, task, y.at(QDate(2026, 11, 24)), y.local);
        QVERIFY(wear.reached);
        QVERIFY(wear.words.contains(QStringLiteral("do not light it")));
        QVERIFY(!wear.words.contains(QStringLiteral("safe"), Qt::CaseInsensitive));
    }
};

RICKYARD_TEST(TstReadings)
#include "tst_readings.moc"
