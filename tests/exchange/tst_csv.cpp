// The CSV reader and writer: RFC 4180 examples, a round-trip property, malformed files.
#include "models/exchange/csv_reader.h"
#include "models/exchange/csv_writer.h"
#include "tests/support/registry.h"

#include <QBuffer>
#include <QRandomGenerator>
#include <QTest>

using namespace rickyard::exchange;

namespace
{

QVector<QStringList> readAll(CsvReader &reader)
{
    QVector<QStringList> rows;
    CsvRow row;
    while (reader.next(row))
        rows.append(row.cells);
    return rows;
}

// Texts made of what breaks CSV and spreadsheets.
QString randomText(QRandomGenerator &random)
{
    static const QStringList bits = {
        QStringLiteral("="),  QStringLiteral("+"),    QStringLiteral("-"),
        QStringLiteral("@"),  QStringLiteral("\t"),   QStringLiteral("\r"),
        QStringLiteral("\n"), QStringLiteral("\r\n"), QStringLiteral("'"),
        QStringLiteral("\""), QStringLiteral(","),    QStringLiteral(";"),
        QStringLiteral(" "),  QStringLiteral("oak"),  QStringLiteral("ü°³"),
        QStringLiteral("1"),  QStringLiteral("|"),    QStringLiteral("\uFF1D")};
    QString text;
    for (int n = random.bounded(7); n > 0; --n)
        text += bits.at(random.bounded(static_cast<int>(bits.size())));
    return text;
}

} // namespace

class TstCsv : public QObject
{
    Q_OBJECT

private slots:
    // RFC 4180 section 2, rules 1 to 7.
    void rfcExamples_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QVector<QStringList>>("rows");
        const QStringList abc = {"aaa", "bbb", "ccc"};
        const QStringList xyz = {"zzz", "yyy", "xxx"};
        QTest::newRow("1 CRLF") << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")
                                << QVector<QStringList>{abc, xyz};
        QTest::newRow("2 no last line end")
            << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx") << QVector<QStringList>{abc, xyz};
        QTest::newRow("5 quotes") << QByteArray("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx")
                                  << QVector<QStringList>{abc, xyz};
        QTest::newRow("6 line break inside")
            << QByteArray("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx")
            << QVector<QStringList>{{"aaa", "b\r\nbb", "ccc"}, xyz};
        QTest::newRow("7 doubled quote") << QByteArray("\"aaa\",\"b\"\"bb\",\"ccc\"")
                                         << QVector<QStringList>{{"aaa", "b\"bb", "ccc"}};
        QTest::newRow("LF") << QByteArray("aaa,bbb,ccc\nzzz,yyy,xxx\n")
                            << QVector<QStringList>{abc, xyz};
        QTest::newRow("CR") << QByteArray("aaa,bbb,ccc\rzzz,yyy,xxx\r")
                            << QVector<QStringList>{abc, xyz};
        QTest::newRow("BOM") << QByteArray("\xEF\xBB\xBF"
                                           "aaa,bbb,ccc\n")
                             << QVector<QStringList>{abc};
        QTest::newRow("blank lines")
            << QByteArray("\n\naaa,bbb,ccc\n\nzzz,yyy,xxx\n\n") << QVector<QStringList>{abc, xyz};
        QTest::newRow("empty cells")
            << QByteArray(",,\n\"\",x,\n") << QVector<QStringList>{{"", "", ""}, {"", "x", ""}};
        QTest::newRow("empty file") << QByteArray() << QVector<QStringList>{};
    }
    void rfcExamples()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QVector<QStringList>, rows);
        CsvReader reader(bytes);
        QCOMPARE(readAll(reader), rows);
        QVERIFY(!reader.error());
        QVERIFY(reader.encodingNote().isEmpty());
    }

    void linesCountLineBreaksInCells()
    {
        CsvReader reader(QByteArray("a,b\n\"x\ny\nz\",1\n\nlast,2\n"));
        CsvRow row;
        QVERIFY(reader.next(row));
        QCOMPARE(row.line, 1);
        QVERIFY(reader.next(row));
        QCOMPARE(row.line, 2);
        QVERIFY(reader.next(row));
        QCOMPARE(row.line, 6);
        QVERIFY(!reader.next(row));
    }

    void widthMismatchIsSeen()
    {
        CsvReader reader(QByteArray("a,b,c\n1,2,3\n1,2\n1,2,3,4\n"));
        CsvRow row;
        QVector<bool> matches;
        while (reader.next(row))
            matches << row.widthMatches();
        QCOMPARE(matches, (QVector<bool>{true, true, false, false}));
        QCOMPARE(row.expectedCells, 3);
    }

    void malformed_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<qint64>("line");
        QTest::addColumn<qint64>("column");
        QTest::addColumn<QString>("word");
        QTest::newRow("never closed")
            << QByteArray("a,b\nx,\"open\nmore\n") << qint64{2} << qint64{3} << "never closed";
        QTest::newRow("after closing")
            << QByteArray("a,b\n\"x\"y,1\n") << qint64{2} << qint64{4} << "after a closing quote";
        QTest::newRow("quote inside")
            << QByteArray("a,b\n16\" oak,1\n") << qint64{2} << qint64{3} << "quote inside";
        QTest::newRow("zero byte")
            << QByteArray("a,b\nx,\0y\n", 8) << qint64{2} << qint64{0} << "zero byte";
        QTest::newRow("long cell") << QByteArray("a,b\n" + QByteArray(200, 'x') + ",1\n")
                                   << qint64{2} << qint64{201} << "longer than 100";
        QTest::newRow("long quoted cell") << QByteArray("a,b\n\"" + QByteArray(200, 'x') + "\",1\n")
                                          << qint64{2} << qint64{103} << "longer than 100";
        QTest::newRow("many cells")
            << QByteArray(QByteArray(60, ',') + "\n") << qint64{1} << qint64{52} << "more than 50";
    }
    void malformed()
    {
        QFETCH(QByteArray, bytes);
        CsvOptions options;
        options.longestCell = 100;
        options.mostCells = 50;
        CsvReader reader(bytes, options);
        readAll(reader);
        QVERIFY(reader.error().has_value());
        QTEST(reader.error()->line, "line");
        QTEST(reader.error()->column, "column");
        QFETCH(QString, word);
        QVERIFY2(reader.error()->message.contains(word), qPrintable(reader.error()->message));
    }

    void tooLarge()
    {
        QByteArray bytes("a,b\n1,2\n");
        QBuffer device(&bytes);
        QVERIFY(device.open(QIODevice::ReadOnly));
        CsvOptions options;
        options.mostBytes = 4;
        CsvReader reader(device, options);
        QVERIFY(reader.error().has_value());
        QVERIFY(reader.error()->message.contains(QStringLiteral("larger")));
    }

    void encodings()
    {
        CsvReader latin(QByteArray("place,t\nK\xF6ln,4\xB0\n"));
        QCOMPARE(readAll(latin).at(1), (QStringList{QString::fromUtf8("Köln"), "4°"}));
        QVERIFY(latin.encodingNote().contains(QStringLiteral("Latin-1")));
        const QString text = QStringLiteral("place\tt\nKöln\t4°\n");
        QByteArray wide("\xFF\xFE");
        for (const QChar c : text)
            wide.append(static_cast<char>(c.unicode() & 0xFF))
                .append(static_cast<char>(c.unicode() >> 8));
        CsvReader utf16(wide);
        QCOMPARE(readAll(utf16).at(1), (QStringList{QString::fromUtf8("Köln"), "4°"}));
    }

    void separators_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QChar>("separator");
        QTest::newRow("comma") << QByteArray("a,b,c\n1,2,3\n") << QChar(',');
        QTest::newRow("semicolon and decimal commas")
            << QByteArray("a;b;c\n1,5;2,5;3,5\n1;2,5;3\n") << QChar(';');
        QTest::newRow("tab") << QByteArray("a\tb\n1,5\t2\n") << QChar('\t');
        QTest::newRow("bar") << QByteArray("a|b|c\n1|2|3\n") << QChar('|');
        QTest::newRow("commas in quotes") << QByteArray("\"a,b,c\";d\n\"1,2\";3\n") << QChar(';');
        QTest::newRow("one column") << QByteArray("a\n1\n2\n") << QChar(',');
    }
    void separators()
    {
        QFETCH(QByteArray, bytes);
        CsvReader reader(bytes);
        QTEST(reader.separator(), "separator");
    }

    void formulasAreMadeSafe()
    {
        for (const char *text : {"=1+1", "+1", "-1", "@sum", "\tx", "\rx", "'=1", "'", "''"}) {
            const QString original = QString::fromUtf8(text);
            const QString safe = madeSafe(original);
            QVERIFY(safe.startsWith(QLatin1Char('\'')));
            QCOMPARE(safe.size(), original.size() + 1);
            QCOMPARE(restored(safe), original);
        }
        QCOMPARE(madeSafe(QStringLiteral("oak = good")), QStringLiteral("oak = good"));
        QCOMPARE(madeSafe(QString()), QString());
        // A foreign file's apostrophe is a letter like any other.
        QCOMPARE(restored(QStringLiteral("'tis oak")), QStringLiteral("'tis oak"));
    }

    void roundTrip()
    {
        QRandomGenerator random(20260501);
        for (int run = 0; run < 400; ++run) {
            const int width = 1 + random.bounded(5);
            QVector<QStringList> rows;
            CsvWriter writer;
            for (int r = random.bounded(6); r >= 0; --r) {
                QStringList row;
                QStringList safe;
                for (int c = 0; c < width; ++c) {
                    row << randomText(random);
                    safe << madeSafe(row.last());
                }
                rows.append(row);
                writer.row(safe);
            }
            CsvOptions options;
            options.separator = QLatin1Char(',');
            CsvReader reader(writer.bytes(), options);
            QVector<QStringList> back = readAll(reader);
            QVERIFY2(!reader.error(), writer.bytes().constData());
            for (QStringList &row : back)
                for (QString &cell : row) {
                    // Nothing in the file opens a formula.
                    QVERIFY(cell.isEmpty() || !QStringLiteral("=+-@\t\r").contains(cell.front()));
                    cell = restored(cell);
                }
            QCOMPARE(back, rows);
        }
    }
};

RICKYARD_TEST(TstCsv)
#include "tst_csv.moc"
