#include "models/domain/wood/emc.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QTest>

using namespace rickyard::domain;

class TstEmc : public QObject
{
    Q_OBJECT

private slots:
    void everyCellOfTheHandbook();
    void otherPublishedValues();
    void quantities();
    void heldToPossibleHumidity();
};

// Wood Handbook FPL-GTR-190 (2010), table 4-2: 18 temperatures by 19 humidities, to a tenth.
void TstEmc::everyCellOfTheHandbook()
{
    QFile file(QStringLiteral(RICKYARD_TEST_DATA "/reference/emc_table_4_2.csv"));
    QVERIFY(file.open(QIODevice::ReadOnly));
    QStringList humidities;
    int cells = 0;
    while (!file.atEnd()) {
        const QString line = QString::fromUtf8(file.readLine()).trimmed();
        if (line.startsWith(QLatin1Char('#')) || line.isEmpty())
            continue;
        const QStringList parts = line.split(QLatin1Char(','));
        if (humidities.isEmpty()) {
            humidities = parts;
            continue;
        }
        QCOMPARE(parts.size(), humidities.size());
        const double t = (parts.first().toDouble() - 32.0) / 1.8;
        for (qsizetype i = 1; i < parts.size(); ++i, ++cells) {
            const double expected = parts.at(i).toDouble();
            const double emc = equilibriumMoisturePercent(t, humidities.at(i).toDouble() / 100.0);
            const QString where =
                QStringLiteral("%1 F, %2 %: %3").arg(parts.first(), humidities.at(i)).arg(emc);
            QVERIFY2(std::abs(emc - expected) <= 0.07, qPrintable(where));
        }
    }
    QCOMPARE(cells, 342);
}

// Values at 70 °F on a stove research site that cites Simpson 1998.
void TstEmc::otherPublishedValues()
{
    const double t = (70.0 - 32.0) / 1.8;
    const QVector<QPair<double, double>> values = {
        {0.25, 5.3}, {0.60, 11.1}, {0.84, 17.6}, {0.87, 19.0}};
    for (const auto &[humidity, expected] : values)
        QVERIFY(std::abs(equilibriumMoisturePercent(t, humidity) - expected) <= 0.2);
}

void TstEmc::quantities()
{
    const Moisture m = equilibriumMoisture(temperatureFromCelsius(20), Ratio::ofBase(650000));
    QVERIFY(std::abs(100.0 * dryFraction(m) - 11.996) < 0.002); // by hand from the formula
}

void TstEmc::heldToPossibleHumidity()
{
    QCOMPARE(equilibriumMoisturePercent(20, -0.3), 0.0);
    QCOMPARE(equilibriumMoisturePercent(20, 1.4), equilibriumMoisturePercent(20, 1.0));
}

RICKYARD_TEST(TstEmc)
#include "tst_emc.moc"
