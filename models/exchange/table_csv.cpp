#include "models/exchange/table_csv.h"

#include "models/exchange/cell_codec.h"
#include "models/exchange/csv_reader.h"
#include "models/exchange/csv_writer.h"

#include <QSet>

namespace rickyard::exchange
{

using domain::Books;
using domain::FieldKind;
using domain::FieldSpec;
using domain::Outcome;
using domain::Row;
using domain::TableId;
using domain::TableSpec;

namespace
{

const QString kId = QStringLiteral("id");

// The columns of one file matched to the fields of one table.
class TableReader
{
public:
    TableReader(const QByteArray &bytes, TableId table, const QString &fileName)
        : m_spec(domain::specOf(table)), m_file(fileName), m_reader(bytes)
    {
    }
    TableRead go();

private:
    void readHeader();
    void bindColumn(const QString &header, int column, QSet<QString> &seen);
    void checkAllThere(const QSet<QString> &seen);
    void readRow(const CsvRow &csv);
    void readId(const CsvRow &csv, int column, Row &row);
    void refuse(qint64 line, int column, const QString &value, const QString &expected,
                const QString &field);

    const TableSpec &m_spec;
    QString m_file;
    CsvReader m_reader;
    QStringList m_header;
    QVector<CellCodec> m_codecs; // by column; the id's has no field
    qint64 m_headerLine = 1;
    QMap<domain::RecordId, qint64> m_ids; // id -> line
    TableRead m_read;
};

void TableReader::refuse(qint64 line, int column, const QString &value, const QString &expected,
                         const QString &field)
{
    m_read.refused.add({m_file, line, column, column > 0 ? m_header.value(column - 1) : QString(),
                        value, expected, field});
}

void TableReader::bindColumn(const QString &header, int column, QSet<QString> &seen)
{
    const HeaderCell cell = parseHeader(header);
    const bool isId = cell.key == kId;
    const int index = isId ? -1 : m_spec.indexOf(cell.key);
    CellCodec codec;
    if (!isId && index < 0) {
        refuse(m_headerLine, column, header,
               QString(QStringLiteral("a column of ") + m_spec.plural + QStringLiteral(": ") +
                       headersOf(m_spec).join(QStringLiteral(", "))),
               cell.key);
    } else if (seen.contains(cell.key)) {
        refuse(m_headerLine, column, header, QStringLiteral("each column once"), cell.key);
    } else if (!isId) {
        const QString expected = codec.bind(m_spec.fields.at(index), index, cell.unit);
        if (!expected.isEmpty())
            refuse(m_headerLine, column, header, expected, cell.key);
    } else if (!cell.unit.isEmpty()) {
        refuse(m_headerLine, column, header, kId, kId);
    }
    seen.insert(cell.key);
    m_codecs.append(codec);
}

void TableReader::checkAllThere(const QSet<QString> &seen)
{
    const Row empty = domain::emptyRow(m_spec.id);
    for (int i = 0; i < m_spec.fields.size(); ++i) {
        const FieldSpec &field = m_spec.fields.at(i);
        // A required field with a usual value may be left out; others would have to be made up.
        if (field.required && !seen.contains(field.key) && domain::isMissing(field.fallback))
            m_read.refused.add({m_file,
                                m_headerLine,
                                0,
                                headerOf(field),
                                {},
                                QString(QStringLiteral("this column, which every one of the ") +
                                        m_spec.plural + QStringLiteral(" needs")),
                                field.key});
    }
}

void TableReader::readHeader()
{
    CsvRow row;
    if (!m_reader.next(row)) {
        if (!m_reader.error())
            refuse(0, 0, {}, QStringLiteral("a row of headers"), {});
        return;
    }
    m_header = row.cells;
    m_headerLine = row.line;
    QSet<QString> seen;
    for (int i = 0; i < m_header.size(); ++i)
        bindColumn(m_header.at(i), i + 1, seen);
    checkAllThere(seen);
}

void TableReader::readId(const CsvRow &csv, int column, Row &row)
{
    const QString text = csv.cells.at(column).trimmed();
    if (text.isEmpty())
        return; // a new record
    bool ok = false;
    row.id = text.toLongLong(&ok);
    if (!ok || row.id <= 0) {
        refuse(csv.line, column + 1, text,
               QStringLiteral("a whole number from 1, or nothing for a new record"), kId);
        return;
    }
    if (m_ids.contains(row.id))
        refuse(csv.line, column + 1, text,
               QStringLiteral("each id once; line %1 has it too").arg(m_ids.value(row.id)), kId);
    m_ids.insert(row.id, csv.line);
}

void TableReader::readRow(const CsvRow &csv)
{
    if (!csv.widthMatches()) {
        refuse(csv.line, 0, QStringLiteral("%1 cells").arg(csv.cells.size()),
               QStringLiteral("%1 cells, as in the header").arg(csv.expectedCells), {});
        return;
    }
    Row row = domain::emptyRow(m_spec.id);
    for (int i = 0; i < m_codecs.size(); ++i) {
        const CellCodec &codec = m_codecs.at(i);
        if (codec.field == nullptr) {
            readId(csv, i, row);
            continue;
        }
        const QString expected = codec.read(csv.cells.at(i), row.values[codec.index]);
        if (!expected.isEmpty())
            refuse(csv.line, i + 1, csv.cells.at(i), expected, codec.field->key);
    }
    m_read.rows.append(row);
    m_read.lines.append(csv.line);
}

TableRead TableReader::go()
{
    readHeader();
    CsvRow row;
    while (m_read.refused.isEmpty() && m_reader.next(row)) {
        readRow(row);
        while (m_reader.next(row)) // all rows, so that every fault is named at once
            readRow(row);
    }
    if (const auto &error = m_reader.error())
        m_read.refused.add(
            {m_file,
             error->line,
             0,
             {},
             {},
             QString(QStringLiteral("well-formed text, but at character %1 there is ")
                         .arg(error->column) +
                     error->message),
             {}});
    if (!m_read.refused.isEmpty()) {
        m_read.rows.clear();
        m_read.lines.clear();
    }
    return m_read;
}

QString fileNameOf(TableId table)
{
    return QString(domain::specOf(table).key + QStringLiteral(".csv"));
}

// Every reference must lead to a row that comes along or to a record that is there.
void checkReferences(const QMap<TableId, TableRead> &reads, const Books &existing,
                     Refusals &refused)
{
    QMap<TableId, QSet<domain::RecordId>> known;
    for (auto it = reads.constBegin(); it != reads.constEnd(); ++it)
        for (const Row &row : it->rows)
            known[it.key()].insert(row.id);
    for (auto it = reads.constBegin(); it != reads.constEnd(); ++it) {
        const TableSpec &spec = domain::specOf(it.key());
        for (qsizetype r = 0; r < it->rows.size(); ++r) {
            const Row &row = it->rows.at(r);
            for (int i = 0; i < spec.fields.size(); ++i) {
                const FieldSpec &field = spec.fields.at(i);
                const domain::RecordId to = domain::integerOr(row.values.at(i), 0);
                if (field.kind != FieldKind::Reference || domain::isMissing(row.values.at(i)) ||
                    known.value(field.refersTo).contains(to) ||
                    domain::contains(existing, field.refersTo, to))
                    continue;
                refused.add({fileNameOf(it.key()), it->lines.at(r), 0, field.key,
                             QString::number(to),
                             QString(QStringLiteral("the id of one of the ") +
                                     domain::specOf(field.refersTo).plural),
                             field.key});
            }
        }
    }
}

} // namespace

QByteArray exportTable(const Books &books, TableId table)
{
    const TableSpec &spec = domain::specOf(table);
    CsvWriter writer;
    writer.row(headersOf(spec));
    for (const domain::RecordId id : domain::idsOf(books, table)) {
        const auto row = domain::rowOf(books, table, id);
        if (!row)
            continue;
        QStringList cells = {QString::number(id)};
        for (int i = 0; i < spec.fields.size(); ++i)
            cells << writtenCell(spec.fields.at(i), row->values.at(i));
        writer.row(cells);
    }
    return writer.bytes();
}

TableRead readTable(const QByteArray &bytes, TableId table, const QString &fileName)
{
    return TableReader(bytes, table, fileName).go();
}

Outcome<QVector<Row>> importTable(const QByteArray &bytes, TableId table, const QString &fileName)
{
    TableRead read = readTable(bytes, table, fileName);
    if (!read.refused.isEmpty())
        return read.refused.problems();
    return read.rows;
}

QVector<NamedFile> exportBooks(const Books &books)
{
    QVector<NamedFile> files;
    for (const TableId table : domain::tablesInOrder())
        files.append({fileNameOf(table), exportTable(books, table)});
    return files;
}

Outcome<QVector<Row>> importBooks(const QVector<NamedFile> &files, const Books &existing)
{
    Refusals refused;
    QMap<TableId, TableRead> reads; // sorted: parents before children
    for (const NamedFile &file : files) {
        const QString key = file.first.endsWith(QLatin1String(".csv"), Qt::CaseInsensitive)
                                ? file.first.chopped(4)
                                : QString();
        const auto table = domain::tableFromKey(key.toLower());
        if (!table || reads.contains(*table)) {
            refused.add({file.first,
                         0,
                         0,
                         {},
                         {},
                         table ? QStringLiteral("one file for each table")
                               : QStringLiteral("a file named after a table, such as lot.csv"),
                         {}});
            continue;
        }
        reads.insert(*table, readTable(file.second, *table, file.first));
        refused.add(reads[*table].refused);
    }
    if (refused.isEmpty())
        checkReferences(reads, existing, refused);
    if (!refused.isEmpty())
        return refused.problems();
    QVector<Row> rows;
    for (const TableRead &read : std::as_const(reads))
        rows += read.rows;
    return rows;
}

} // namespace rickyard::exchange
