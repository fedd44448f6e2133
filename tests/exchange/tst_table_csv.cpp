// Every table goes out as CSV and comes back with the same bits; what cannot come back is refused
// with its place in the file.
#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"
#include "models/exchange/table_csv.h"
#include "tests/support/registry.h"

#include <QRandomGenerator>
#include <QTest>

using namespace rickyard::domain;
using namespace rickyard::exchange;

namespace {

QString randomText(QRandomGenerator &random)
{
    static const QString letters = QString::fromUtf8("=+-@'\"\t\r\n,; aü°{}:1\uFF1D\U0001F525");
    QString text;
    for (int n = random.bounded(8); n > 0; --n) {
        qsizetype i = random.bounded(static_cast<int>(letters.size()));
        if (letters.at(i).isLowSurrogate())
            --i;
        text += letters.at(i);
        if (letters.at(i).isHighSurrogate())
            text += letters.at(i + 1);
    }
    return text;
}

qint64 randomInteger(QRandomGenerator &random, const FieldSpec &field)
{
    const bool isInt = field.kind == FieldKind::Count;
    const qint64 low = field.minimum.value_or(isInt ? -2'000'000'000 : -9'000'000'000'000'000);
    const qint64 high = field.maximum.value_or(isInt ? 2'000'000'000 : 9'000'000'000'000'000);
    const auto span = static_cast<quint64>(high - low) + 1;
    return low + static_cast<qint64>(random.generate64() % span);
}

Value randomValue(QRandomGenerator &random, const FieldSpec &field)
{
    const bool leaveOut = !field.required && random.bounded(3) == 0;
    switch (field.kind) {
    case FieldKind::Text:
    case FieldKind::LongText:
    case FieldKind::Typed: {
        const QString text = randomText(random);
        return field.required && text.trimmed().isEmpty() ? Value(QStringLiteral("=x")) : text;
    }
    case FieldKind::Choice:
        return field.choices.at(random.bounded(static_cast<int>(field.choices.size()))).key;
    case FieldKind::Flag:
        return qint64{random.bounded(2)};
    case FieldKind::Reference:
        return leaveOut ? Value() : Value(qint64{1 + random.bounded(1000)});
    case FieldKind::Count:
    case FieldKind::Quantity:
        return leaveOut ? Value() : Value(randomInteger(random, field));
    case FieldKind::Time: // 1700 to 2290
        return leaveOut ? Value() : Value(random.bounded(-8'500'000'000LL, 10'100'000'000LL));
    case FieldKind::Date:
        return leaveOut ? Value() : toValue(QDate(2000, 1, 1).addDays(random.bounded(20'000)));
    case FieldKind::Pieces: {
        PieceMoistures pieces;
        for (int n = field.required ? 1 + random.bounded(6) : random.bounded(6); n > 0; --n)
            pieces << Moisture::ofBase(random.bounded(250'000));
        return toValue(pieces);
    }
    case FieldKind::Stacks: {
        StackSizes stacks;
        for (int n = random.bounded(4); n > 0; --n)
            stacks << StackSize{Length::ofBase(randomInteger(random, field)),
                                Length::ofBase(randomInteger(random, field)),
                                Length::ofBase(randomInteger(random, field))};
        return toValue(stacks);
    }
    case FieldKind::Blob: {
        QByteArray bytes;
        for (int n = random.bounded(300); n > 0; --n)
            bytes.append(static_cast<char>(random.bounded(256)));
        return bytes;
    }
    }
    return {};
}

Row randomRow(QRandomGenerator &random, TableId table, RecordId id)
{
    Row row = emptyRow(table);
    row.id = id;
    const TableSpec &spec = specOf(table);
    for (int i = 0; i < spec.fields.size(); ++i)
        row.values[i] = randomValue(random, spec.fields.at(i));
    return row;
}

// Through the typed record, so that the rows are what a yard really holds.
QVector<Row> filled(Books &books, TableId table, int count, quint32 seed)
{
    QRandomGenerator random(seed);
    for (int i = 0; i < count; ++i)
        put(books, randomRow(random, table, 1 + i * 3));
    QVector<Row> rows;
    for (const RecordId id : idsOf(books, table))
        rows << *rowOf(books, table, id);
    return rows;
}

void addTables()
{
    QTest::addColumn<int>("table");
    for (const TableId table : tablesInOrder())
        QTest::newRow(qPrintable(specOf(table).key)) << static_cast<int>(table);
}

QByteArray supplierFile(const QByteArray &header, const QByteArray &row)
{
    return header + "\r\n" + row + "\r\n";
}

} // namespace

class TstTableCsv : public QObject
{
    Q_OBJECT

private slots:
    void everyTableComesBack_data() { addTables(); }
    void everyTableComesBack()
    {
        QFETCH(int, table);
        const auto id = static_cast<TableId>(table);
        Books books;
        const QVector<Row> rows = filled(books, id, 120, 7u + static_cast<quint32>(table));
        QCOMPARE(rows.size(), 120);
        const QByteArray bytes = exportTable(books, id);
        const auto back = importTable(bytes, id, QStringLiteral("t.csv"));
        QVERIFY2(back.ok(), qPrintable(back.message()));
        for (qsizetype i = 0; i < rows.size(); ++i)
            QVERIFY2(back->at(i) == rows.at(i), qPrintable(QStringLiteral("row %1").arg(i)));
        QCOMPARE(*back.operator->(), rows);
        Books again;
        for (const Row &row : *back.operator->())
            put(again, row);
        QCOMPARE(exportTable(again, id), bytes);
    }

    void emptyTableComesBack_data() { addTables(); }
    void emptyTableComesBack()
    {
        QFETCH(int, table);
        const auto id = static_cast<TableId>(table);
        const auto back = importTable(exportTable({}, id), id);
        QVERIFY2(back.ok(), qPrintable(back.message()));
        QVERIFY(back->isEmpty());
    }

    void headersNameTheBaseUnit()
    {
        const QByteArray header = exportTable({}, TableId::Feed).split('\r').first();
        QCOMPARE(header, QByteArray("id,cook,time,lot,pieces,weight [mg],note,typed"));
    }

    void otherUnitsAreTaken()
    {
        // 1 lb = 453.59237 g, exact (NIST Handbook 44, appendix C).
        const QByteArray file("cook,time,lot,weight [lb]\n3,2026-05-01T13:00:00-05:00,2,1\n");
        const auto rows = importTable(file, TableId::Feed);
        QVERIFY2(rows.ok(), qPrintable(rows.message()));
        const Feed feed = fromRow<Feed>(rows->first());
        QCOMPARE(feed.weight->base(), 453592); // whole milligrams
        QCOMPARE(feed.pieces, 1);              // the usual value of a column left out
        QCOMPARE(feed.id, 0);
        QCOMPARE(feed.time.seconds(), 1777658400);
    }

    void wetBasisIsConverted()
    {
        // M = u / (1 + u): 20 % wet basis is 25 % dry basis.
        const QByteArray file("lot,time,pieces [pct_wet]\n1,2026-05-01T18:00:00Z,20 50\n");
        const auto rows = importTable(file, TableId::MoistureReading);
        QVERIFY2(rows.ok(), qPrintable(rows.message()));
        QCOMPARE(textOf(valueOf(rows->first(), QStringLiteral("pieces"))),
                 QStringLiteral("25000 100000"));
    }

    void refused_data()
    {
        QTest::addColumn<QByteArray>("header");
        QTest::addColumn<QByteArray>("row");
        QTest::addColumn<QString>("field");
        QTest::addColumn<QString>("sentence");
        const QByteArray good("id,name,sells_by,lead_time [d],promised [pct_dry]");
        QTest::newRow("not a number")
            << good << QByteArray("1,Oak & Son,cord,soon,20") << "lead_time"
            << "s.csv, line 2, column 4 (lead_time [d]): found “soon”; expected a number of d.";
        QTest::newRow("out of range")
            << good << QByteArray("1,Oak & Son,cord,14,999") << "promised"
            << "s.csv, line 2, column 5 (promised [pct_dry]): found “999”; expected 250.00\u202f% "
               "dry at most.";
        QTest::newRow("unknown choice")
            << good << QByteArray("1,Oak & Son,barrow,14,20") << "sells_by"
            << "s.csv, line 2, column 3 (sells_by): found “barrow”; expected one of cord, "
               "half_cord, "
               "quarter_cord, eighth_cord, face_cord, cubic_foot, loose_cubic_foot, pound, bundle.";
        QTest::newRow("no name")
            << good << QByteArray("1,,cord,14,20") << "name"
            << "s.csv, line 2, column 2 (name): found nothing; expected a text; every record "
               "needs one.";
        QTest::newRow("bad id") << good << QByteArray("x,Oak,cord,14,20") << "id"
                                << "s.csv, line 2, column 1 (id): found “x”; expected a whole "
                                   "number from 1, or nothing for a new record.";
        QTest::newRow("short row") << good << QByteArray("1,Oak,cord") << ""
                                   << "s.csv, line 2: found “3 cells”; expected 5 cells, as in "
                                      "the header.";
        QTest::newRow("same id twice")
            << good << QByteArray("1,A,cord,1,2\r\n1,B,cord,1,2") << "id"
            << "s.csv, line 3, column 1 (id): found “1”; expected each id once; line 2 has it "
               "too.";
        QTest::newRow("no unit")
            << QByteArray("name,sells_by,lead_time") << QByteArray("A,cord,14") << "lead_time"
            << "s.csv, line 1, column 3 (lead_time): found “lead_time”; expected lead_time [unit] "
               "with one of these units: s, h, min, d.";
        QTest::newRow("missing column")
            << QByteArray("id,sells_by") << QByteArray("1,cord") << "name"
            << "s.csv, line 1, column name: found nothing; expected this column, which every one "
               "of the suppliers needs.";
        QTest::newRow("column twice") << QByteArray("name,name") << QByteArray("A,B") << "name"
                                      << "s.csv, line 1, column 2 (name): found “name”; expected "
                                         "each column once.";
        QTest::newRow("base unit is whole")
            << QByteArray("name,sells_by,lead_time [s]") << QByteArray("A,cord,1.5") << "lead_time"
            << "s.csv, line 2, column 3 (lead_time [s]): found “1.5”; expected a whole number of "
               "s.";
        QTest::newRow("open quote")
            << QByteArray("name,sells_by") << QByteArray("\"A,cord") << ""
            << "s.csv, line 2: expected well-formed text, but at character 1 there is a quote "
               "that is never closed; expected a closing quote.";
    }
    void refused()
    {
        QFETCH(QByteArray, header);
        QFETCH(QByteArray, row);
        const auto rows =
            importTable(supplierFile(header, row), TableId::Supplier, QStringLiteral("s.csv"));
        QVERIFY(!rows.ok());
        QCOMPARE(rows.problems().size(), 1);
        QTEST(rows.problems().first().field, "field");
        QTEST(rows.problems().first().message, "sentence");
    }

    void unknownColumnNamesTheKnownOnes()
    {
        const auto rows = importTable("name,sells_by,colour\nA,cord,red\n", TableId::Supplier);
        QVERIFY(!rows.ok());
        QVERIFY(rows.message().contains(QStringLiteral("lead_time [s]")));
    }

    void everyFaultIsNamedAtOnce()
    {
        QByteArray file("id,name,sells_by\n");
        for (int i = 0; i < 150; ++i)
            file += "0,,barrow\n";
        const TableRead read = readTable(file, TableId::Supplier, QStringLiteral("s.csv"));
        QCOMPARE(read.refused.count, 450);
        QCOMPARE(read.refused.list.size(), kMostRefusals);
        QVERIFY(read.rows.isEmpty());
        QVERIFY(read.refused.problems().last().message.contains(QStringLiteral("350 more")));
    }

    void wholeYardComesBackInAnyOrderOfFiles()
    {
        Books books;
        put(books, toRow(Yard{}));
        Supplier supplier;
        supplier.id = 4;
        supplier.name = QStringLiteral("=cmd");
        put(books, toRow(supplier));
        Species species;
        species.id = 2;
        species.name = QStringLiteral("post oak");
        species.basicGravity = Plain::ofBase(600000);
        put(books, toRow(species));
        Lot lot;
        lot.id = 9;
        lot.name = QStringLiteral("north rick");
        lot.species = 2;
        lot.supplier = 4;
        put(books, toRow(lot));
        Yard yard = books.yard();
        yard.name = QStringLiteral("Yard");
        put(books, toRow(yard));
        QVector<NamedFile> files = exportBooks(books);
        QCOMPARE(files.size(), kTableCount);
        std::reverse(files.begin(), files.end());
        const auto rows = importBooks(files);
        QVERIFY2(rows.ok(), qPrintable(rows.message()));
        Books again;
        QVector<TableId> order;
        for (const Row &row : *rows.operator->()) {
            put(again, row);
            order << row.table;
        }
        QVERIFY(std::is_sorted(order.begin(), order.end()));
        for (const TableId table : tablesInOrder())
            QCOMPARE(exportTable(again, table), exportTable(books, table));

        // A lot alone leads nowhere, unless the yard has its species and supplier.
        QVector<NamedFile> lots;
        for (const NamedFile &file : files)
            if (file.first == QLatin1String("lot.csv"))
                lots << file;
        const auto alone = importBooks(lots);
        QVERIFY(!alone.ok());
        QCOMPARE(alone.problems().size(), 2);
        QVERIFY2(alone.message().contains(QStringLiteral("lot.csv, line 2")),
                 qPrintable(alone.message()));
        QVERIFY(importBooks(lots, books).ok());
    }

    void foreignFileNameIsRefused()
    {
        const auto rows = importBooks({{QStringLiteral("notes.txt"), QByteArray("a\n")}});
        QVERIFY(!rows.ok());
        QVERIFY(rows.message().contains(QStringLiteral("notes.txt")));
    }
};

RICKYARD_TEST(TstTableCsv)
#include "tst_table_csv.moc"
