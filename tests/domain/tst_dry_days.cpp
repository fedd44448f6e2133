// Days for work that wants dry weather, from small records by hand.
#include "models/domain/upkeep/dry_days.h"
#include "tests/domain/upkeep_fixture.h"
#include "tests/support/registry.h"

#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::test;

class TstDryDays : public QObject
{
    Q_OBJECT

private:
    UpkeepBooks y;
    const QDate m_today{2026, 11, 23};

    // Every hour of a day says `millimetres`, divided.
    void rain(QDate day, double millimetres, int hoursKnown = 24)
    {
        for (int hour = 0; hour < hoursKnown; ++hour)
            report(day, hour, millimetres / hoursKnown);
    }
    void report(QDate day, double hour, double millimetres)
    {
        Weather record;
        record.id = RecordId(y.books.weather.size()) + 1;
        record.time = y.at(day, hour);
        record.rain = Length::rounded(millimetres * 1000);
        y.books.weather.insert(record.id, record);
    }
    [[nodiscard]] QStringList dryFor(int days) const
    {
        const auto dry = dryDays(y.books, y.at(m_today), y.at(m_today.addDays(days)), y.local);
        QStringList text;
        for (const WorkWindow &w : dry.value_or(QVector<WorkWindow>()))
            text << QString(y.local.shortDayText(y.local.dateOf(w.start)) + QStringLiteral("-") +
                            y.local.shortDayText(y.local.dateOf(w.end)));
        return dry ? text : QStringList{QStringLiteral("unknown")};
    }

private slots:
    void init() { y = UpkeepBooks(); }

    void withoutRainOnRecordNothingIsKnown()
    {
        QCOMPARE(dryFor(3), QStringList{QStringLiteral("unknown")});
        Weather dryRecord;
        dryRecord.id = 1;
        dryRecord.time = y.at(m_today.addDays(-365));
        y.books.weather.insert(1, dryRecord); // says nothing of rain
        QCOMPARE(dryFor(3), QStringList{QStringLiteral("unknown")});
    }

    void whatIsEnteredAheadDecides()
    {
        report(m_today.addDays(1), 12, 4.0);
        report(m_today.addDays(2), 12, 0.9); // under a millimetre is no wet day
        // Nothing is on record near the others: they are not barred.
        QCOMPARE(dryFor(4),
                 QStringList({QStringLiteral("23 Nov-24 Nov"), QStringLiteral("25 Nov-27 Nov")}));
    }

    void otherYearsStandIn()
    {
        for (int day = -15; day <= 3; ++day) // two of three were wet, last year
            rain(m_today.addDays(day - 365), day % 3 == 0 ? 0.0 : 5.0);
        QCOMPARE(dryFor(3), QStringList{});
        for (int day = -15; day <= 3; ++day) // the year before every day was dry
            rain(m_today.addDays(day - 730), 0.0);
        QCOMPARE(dryFor(3), QStringList{QStringLiteral("23 Nov-26 Nov")});
    }

    void aDayOfFewHoursDoesNotCount()
    {
        rain(m_today.addDays(-365), 5.0, 7);
        QCOMPARE(dryFor(1), QStringList{QStringLiteral("23 Nov-24 Nov")});
        rain(m_today.addDays(-365), 5.0, 8);
        QCOMPARE(dryFor(1), QStringList{});
    }

    void twoReportsOfAnHourAreOne()
    {
        report(m_today, 8, 0.6);
        report(m_today, 8.5, 0.6);
        QCOMPARE(dryFor(1), QStringList{QStringLiteral("23 Nov-24 Nov")});
        report(m_today, 9, 0.6);
        QCOMPARE(dryFor(1), QStringList{});
    }

    void farFromTheDateSaysNothing()
    {
        rain(m_today.addDays(-365 - 40), 5.0);
        QCOMPARE(dryFor(1), QStringList{QStringLiteral("23 Nov-24 Nov")});
    }
};

RICKYARD_TEST(TstDryDays)
#include "tst_dry_days.moc"
