// Starter species against their reference table, starter tasks against the records' own rules.
#include "models/domain/records/books.h"
#include "models/domain/records/schema.h"
#include "models/domain/upkeep/contradictions.h"
#include "models/domain/upkeep/starter_tasks.h"
#include "models/domain/wood/starter_species.h"
#include "tests/support/registry.h"

#include <QFile>
#include <QSet>
#include <QTest>

using namespace rickyard::domain;

class TstStarters : public QObject
{
    Q_OBJECT

    // Required fields filled, numbers within the limits of the record's description.
    template <class R>
    static QString breaches(const R &record)
    {
        const Row row = toRow(record);
        const TableSpec &spec = specOf(row.table);
        QString text;
        for (int i = 0; i < spec.fields.size(); ++i) {
            const FieldSpec &f = spec.fields.at(i);
            const Value &v = row.values.at(i);
            const qint64 *n = std::get_if<qint64>(&v);
            if (f.required && (isMissing(v) || (f.kind == FieldKind::Text && textOf(v).isEmpty())))
                text += f.key + QStringLiteral(" missing; ");
            if (n != nullptr && ((f.minimum && *n < *f.minimum) || (f.maximum && *n > *f.maximum)))
                text += f.key + QStringLiteral(" out of range; ");
        }
        return text;
    }

private slots:
    // tests/data/reference/fia_species.csv: USDA Forest Service, FIADB REF_SPECIES table; shrinkage
    // of Wood Handbook FPL-GTR-190 (2010) table 4-3 or from memory, as the file says row by row.
    void speciesAgreeWithTheirTable()
    {
        QFile file(QStringLiteral(RICKYARD_TEST_DATA "/reference/fia_species.csv"));
        QVERIFY(file.open(QIODevice::ReadOnly | QIODevice::Text));
        QMap<QString, QStringList> rows;
        while (!file.atEnd()) {
            const QString line = QString::fromUtf8(file.readLine()).trimmed();
            if (!line.isEmpty() && line.at(0).isDigit())
                rows.insert(line.split(QLatin1Char(',')).at(2), line.split(QLatin1Char(',')));
        }
        const QVector<Species> species = starterSpecies();
        QCOMPARE(rows.size(), 28);
        QCOMPARE(species.size(), rows.size());
        for (const Species &s : species) {
            const QByteArray name = s.name.toUtf8();
            QVERIFY2(rows.contains(s.scientific), name);
            const QStringList row = rows.take(s.scientific);
            QVERIFY2(std::abs(number(s.basicGravity) - row.at(3).toDouble()) < 1e-9, name);
            QVERIFY2(std::abs(dryFraction(*s.green) * 100 - row.at(6).toDouble()) < 1e-6, name);
            QVERIFY2(s.shrinkage.has_value() == !row.at(8).isEmpty(), name);
            if (s.shrinkage)
                QVERIFY2(std::abs(fraction(*s.shrinkage) * 100 - row.at(8).toDouble()) < 1e-6,
                         name);
            QVERIFY2(s.source.contains(QStringLiteral("FIADB")), name);
            QVERIFY2((row.at(9) == QStringLiteral("no")) ==
                         s.source.contains(QStringLiteral("from memory")),
                     name);
            QVERIFY2((row.at(4) == QStringLiteral("24")) ==
                         s.source.contains(QStringLiteral("average of related")),
                     name);
            QCOMPARE(breaches(s), QString());
        }
        QVERIFY(rows.isEmpty());
    }

    // G12 = Gb / (1 - S12), S12 = S0 (1 - 12/30): FPL-GTR-190 ch. 4 (from memory), against the
    // table's own gravity at 12 %. Mesquite's published pair does not agree with itself.
    void gravityAndShrinkageAgreeWithGravityAtTwelve()
    {
        QFile file(QStringLiteral(RICKYARD_TEST_DATA "/reference/fia_species.csv"));
        QVERIFY(file.open(QIODevice::ReadOnly | QIODevice::Text));
        QMap<QString, double> at12;
        while (!file.atEnd()) {
            const QStringList row = QString::fromUtf8(file.readLine()).split(QLatin1Char(','));
            if (row.size() > 9 && row.at(0).at(0).isDigit())
                at12.insert(row.at(2), row.at(5).toDouble());
        }
        int checked = 0;
        for (const Species &s : starterSpecies()) {
            if (!s.shrinkage || s.scientific == QStringLiteral("Prosopis glandulosa"))
                continue;
            const double g12 =
                number(s.basicGravity) / (1 - fraction(*s.shrinkage) * (1 - 12.0 / 30.0));
            // The two gravities are rounded to 0.01 and come partly from different samples.
            QVERIFY2(std::abs(g12 - at12.value(s.scientific)) < 0.05, s.name.toUtf8());
            ++checked;
        }
        QVERIFY(checked > 20);
    }

    void resinousWoodsAreNeverBurned()
    {
        QSet<QString> names;
        QStringList never;
        for (const Species &s : starterSpecies()) {
            names.insert(s.name);
            QCOMPARE(s.neverBurn, !s.neverBurnReason.isEmpty());
            if (s.neverBurn)
                never << s.name;
        }
        QCOMPARE(names.size(), starterSpecies().size());
        QCOMPARE(
            never,
            QStringList({QStringLiteral("Eastern redcedar"), QStringLiteral("Loblolly pine"),
                         QStringLiteral("Shortleaf pine"), QStringLiteral("Eastern white pine")}));
        QVERIFY(neverBurnMaterials().size() >= 5);
    }

    void tasksForEveryPitThenTheRest()
    {
        Pit tom;
        tom.id = 1;
        Pit ruth;
        ruth.id = 2;
        Pit old;
        old.id = 3;
        old.retired = true;
        const QDate since(2026, 11, 1);
        const auto none = starterTasks({}, since);
        const auto one = starterTasks({tom}, since);
        const auto three = starterTasks({tom, ruth, old}, since);
        QVERIFY(one.size() >= 24);
        QCOMPARE(three.size() - one.size(), one.size() - none.size());
        for (const UpkeepTask &t : none)
            QVERIFY(!t.pit);
        QSet<QString> keys;
        for (const UpkeepTask &t : three) {
            QVERIFY2(t.pit.value_or(0) != old.id, t.name.toUtf8());
            keys.insert(t.name + QString::number(t.pit.value_or(0)));
            QCOMPARE(t.since, since);
            QVERIFY2(t.everyDays || t.everyCooks || t.everyAsh || t.occasion != Occasion::None,
                     t.name.toUtf8());
            QCOMPARE(t.id, 0);
            QVERIFY(!t.after);
            QVERIFY2(!t.tools.isEmpty() && !t.steps.isEmpty(), t.name.toUtf8());
            QVERIFY2(t.cautions.endsWith(authorityCaution()), t.name.toUtf8());
            QCOMPARE(breaches(t), QString());
        }
        QCOMPARE(keys.size(), three.size());
    }

    // Figures of codes and city fire departments that must not drift: ash 96 h, closed metal can,
    // outside, 10 ft; extinguishers every 30 days and 12 months (NFPA 10 summaries).
    void cautionsAndCodeIntervals()
    {
        Pit tom;
        tom.id = 1;
        QMap<QString, UpkeepTask> byName;
        for (const UpkeepTask &t : starterTasks({tom}, QDate(2026, 11, 1)))
            byName.insert(t.name, t);
        const UpkeepTask ash = byName.value(QStringLiteral("Ash removal"));
        for (const char *words : {"as hot", "metal lid", "outside", "10 ft", "96 hours"})
            QVERIFY2(ash.cautions.contains(QString::fromUtf8(words)), words);
        QCOMPARE(hours(kAshCooling), 96.0);
        QCOMPARE(ash.occasion, Occasion::AfterCook);
        QVERIFY(ash.blocksLighting);
        const UpkeepTask look = byName.value(QStringLiteral("Extinguisher look"));
        QVERIFY(*look.everyDays <= 30);
        QCOMPARE(look.intervalFrom, IntervalSource::LocalCode);
        QVERIFY(*byName.value(QStringLiteral("Extinguisher service")).everyDays <= 365);
        QVERIFY(byName.value(QStringLiteral("Gasket renewal")).cureAfter.base() > 0);
        // NFPA 10 summaries: 6 years inside, 12 years dry chemical, 5 years water, CO2 and wet
        // chemical.
        const auto days = [&](const char *name) {
            return byName.value(QString::fromUtf8(name)).everyDays.value_or(0);
        };
        QCOMPARE(days("Extinguisher inside look, 6 years"), 6 * 365);
        QCOMPARE(days("Extinguisher pressure test, 5 years"), 5 * 365);
        QCOMPARE(days("Extinguisher pressure test, 12 years"), 12 * 365);
    }

    // No task contradicts itself, and those that wait for another name one that is there.
    void orderReadingsAndNoContradictions()
    {
        Books books;
        books.yards.insert(1, Yard());
        Pit tom;
        tom.id = 1;
        tom.plate = Length::rounded(0.25 * 25400);
        Pit ruth;
        ruth.id = 2;
        books.pits.insert(1, tom);
        books.pits.insert(2, ruth);
        const auto tasks = starterTasks({tom, ruth}, QDate(2026, 11, 1), 41);
        for (qsizetype i = 0; i < tasks.size(); ++i) {
            QCOMPARE(tasks.at(i).id, 41 + i);
            books.tasks.insert(tasks.at(i).id, tasks.at(i));
        }
        int waiting = 0;
        QSet<Occasion> occasions;
        QSet<IntervalSource> sources;
        QSet<ReadingKind> readings;
        for (const UpkeepTask &t : tasks) {
            const Problems problems = taskContradictions(books, t);
            QVERIFY2(problems.isEmpty(), (t.name + joined(problems)).toUtf8());
            occasions.insert(t.occasion);
            sources.insert(t.intervalFrom);
            readings.insert(t.reading);
            QVERIFY2(t.steps.count(QLatin1Char('\n')) < 8, t.name.toUtf8());
            if (!t.after)
                continue;
            ++waiting;
            QVERIFY2(books.tasks.contains(*t.after), t.name.toUtf8());
            QCOMPARE(books.tasks.value(*t.after).pit, t.pit);
            QVERIFY2(*t.after < t.id, t.name.toUtf8()); // they are put in one after the other
        }
        QVERIFY(waiting >= 10);
        QCOMPARE(occasions.size(), 5);
        QCOMPARE(sources.size(), 3); // code, practice, maker; own rules are the crew's
        QCOMPARE(readings.size(), 5);
        const auto find = [&](const char *name, RecordId pit) {
            for (const UpkeepTask &t : tasks)
                if (t.name == QString::fromUtf8(name) && t.pit.value_or(0) == pit)
                    return t;
            return UpkeepTask();
        };
        // Half the plate when new, where it is on record.
        QCOMPARE(number(*find("Firebox plate thickness", 1).readingLow), 0.125);
        QVERIFY(!find("Firebox plate thickness", 2).readingLow);
        QCOMPARE(find("Gasket test", 1).readingPoints, 8);
        // Extension services: food probes within 2 °F of 32 and of the boiling point.
        QCOMPARE(number(*find("Probes in ice water", 0).readingLow), 30.0);
        QCOMPARE(number(*find("Probes in ice water", 0).readingHigh), 34.0);
        QCOMPARE(number(*find("Probes in boiling water", 0).readingHigh), 214.0);
    }
};

RICKYARD_TEST(TstStarters)
#include "tst_starters.moc"
