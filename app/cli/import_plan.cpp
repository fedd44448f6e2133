#include "app/cli/import_plan.h"

#include "models/domain/records/rules.h"
#include "models/exchange/csv_reader.h"

#include <QFileInfo>
#include <QSet>
#include <QTimeZone>

namespace rickyard::app {

using domain::Books;
using domain::Problem;
using domain::Row;
using domain::TableId;
using exchange::CsvReader;
using exchange::CsvRow;
using exchange::WeatherMapping;

namespace {

QStringList headerOfFile(const QByteArray &bytes)
{
    CsvReader reader(bytes);
    CsvRow row;
    return reader.next(row) ? row.cells : QStringList();
}

// Where a field stands in the file: "weight [lb]" is the field "weight".
int columnOf(const QStringList &header, const QString &field)
{
    for (int i = 0; i < header.size(); ++i)
        if (header.at(i).section(QStringLiteral(" ["), 0, 0).trimmed() == field)
            return i;
    return -1;
}

// The cell that a problem of the yard's rules is about.
QString cellAt(const QByteArray &bytes, qint64 line, int column)
{
    CsvReader reader(bytes);
    CsvRow row;
    while (reader.next(row))
        if (row.line == line)
            return row.cells.value(column);
    return {};
}

exchange::Refusal located(const QByteArray &bytes, const QString &fileName, qint64 line,
                          const Problem &problem)
{
    const QStringList header = headerOfFile(bytes);
    const int column = columnOf(header, problem.field);
    exchange::Refusal refusal;
    refusal.file = fileName;
    refusal.line = line;
    refusal.field = problem.field;
    refusal.expected = problem.message;
    if (column >= 0) {
        refusal.column = column + 1;
        refusal.name = header.at(column);
        refusal.value = cellAt(bytes, line, column);
    }
    return refusal;
}

// A row without an id is the same record when all its values are.
QByteArray fingerprint(const Row &row)
{
    QByteArray print;
    for (const domain::Value &value : row.values) {
        print += QByteArray::number(static_cast<int>(value.index())) + ':';
        if (const qint64 *number = std::get_if<qint64>(&value))
            print += QByteArray::number(*number);
        else if (const QString *text = std::get_if<QString>(&value))
            print += text->toUtf8();
        else if (const QByteArray *block = std::get_if<QByteArray>(&value))
            print += *block;
        print += '\0';
    }
    return print;
}

class Sorter
{
public:
    explicit Sorter(const Books &books) : m_books(books) {}

    void take(ImportPlan &plan, const Row &row)
    {
        const auto before = row.id == 0 ? std::nullopt : domain::rowOf(m_books, row.table, row.id);
        if ((before && *before == row) || (row.id == 0 && known(row))) {
            ++plan.same;
            return;
        }
        ++(before ? plan.changed : plan.added);
        plan.rows << row;
    }

private:
    bool known(const Row &row)
    {
        if (!m_read.contains(row.table)) {
            m_read.insert(row.table);
            for (domain::RecordId id : domain::idsOf(m_books, row.table))
                m_prints.insert(printOf(*domain::rowOf(m_books, row.table, id)));
        }
        return m_prints.contains(printOf(row));
    }
    static QByteArray printOf(const Row &row)
    {
        return QByteArray::number(static_cast<int>(row.table)) + '|' + fingerprint(row);
    }

    const Books &m_books;
    QSet<TableId> m_read;
    QSet<QByteArray> m_prints;
};

QString mappingWords(const WeatherMapping &mapping)
{
    QStringList parts;
    for (const exchange::QuantityColumn &c : mapping.columns)
        parts << QStringLiteral("%1 from \"%2\" in %3").arg(c.quantity, c.column, c.unit);
    QString time = mapping.timeColumns == exchange::TimeColumns::One
                       ? QStringLiteral("\"%1\"").arg(mapping.timeColumn)
                       : QStringLiteral("year, month, day and hour columns");
    time += mapping.zoneKind == exchange::TimeZoneKind::Zone
                ? QStringLiteral(" in %1").arg(mapping.zone)
            : mapping.zoneKind == exchange::TimeZoneKind::Utc
                ? QStringLiteral(" in UTC")
                : QStringLiteral(" at %1 s east of UTC").arg(mapping.offsetSeconds);
    const QString place = mapping.placeColumn.isEmpty()
                              ? QStringLiteral("\"%1\"").arg(mapping.place)
                              : QStringLiteral("from column \"%1\"").arg(mapping.placeColumn);
    return QStringLiteral("Time from %1; place %2; %3.")
        .arg(time, place,
             parts.isEmpty() ? QStringLiteral("no quantity was recognised")
                             : parts.join(QStringLiteral(", ")));
}

WeatherMapping mappingFor(const Books &books, const QByteArray &bytes, const QString &fileName,
                          const WeatherRequest &request, ImportPlan &plan)
{
    WeatherMapping mapping;
    if (request.profile) {
        mapping = *request.profile;
    } else {
        const exchange::MappingGuess guess = exchange::guessMapping(
            bytes, request.zone.isEmpty() ? books.yard().timeZone : request.zone);
        mapping = guess.mapping;
        plan.said << QStringLiteral("The columns were guessed; --profile FILE.json fixes them.");
        plan.said << guess.notes;
    }
    if (!request.place.isEmpty()) {
        mapping.place = request.place;
        mapping.placeColumn.clear();
    }
    if (mapping.place.trimmed().isEmpty() && mapping.placeColumn.isEmpty()) {
        mapping.place = QFileInfo(fileName).completeBaseName();
        plan.said << QStringLiteral("No place is named: \"%1\" was taken. --place NAME sets it.")
                         .arg(mapping.place);
    }
    if (request.impossibleIsMissing)
        mapping.outOfRange = exchange::OutOfRange::Missing;
    if (request.profile && !request.zone.isEmpty()) {
        mapping.zoneKind = exchange::TimeZoneKind::Zone;
        mapping.zone = request.zone;
    }
    plan.said << mappingWords(mapping);
    return mapping;
}

void takeWeather(const Books &books, const exchange::WeatherImport &read, const QString &fileName,
                 ImportPlan &plan)
{
    if (!read.ok) {
        plan.refused = read.refused.problems();
        if (plan.refused.isEmpty())
            plan.refused << Problem{{}, QStringLiteral("%1: no row could be taken.").arg(fileName)};
        return;
    }
    plan.said << read.report.lines();
    const exchange::WeatherMerge merge = exchange::mergeWeather(books, read.rows);
    for (const domain::Weather &w : merge.updated)
        plan.rows << domain::toRow(w);
    for (const domain::Weather &w : merge.fresh)
        plan.rows << domain::toRow(w);
    plan.changed = merge.updated.size();
    plan.added = merge.fresh.size();
    plan.same = merge.identical;
}

// METAR, ISD-Lite, local climatological data, EPW: no mapping is wanted.
exchange::WeatherImport readKnown(const Books &books, const QByteArray &bytes,
                                  const QString &fileName, const WeatherRequest &request,
                                  exchange::WeatherFormat format)
{
    exchange::WeatherReadOptions options;
    options.place = request.place;
    options.zone = request.zone.isEmpty() ? books.yard().timeZone : request.zone;
    options.about = request.about;
    options.asNormals = !request.realYear;
    options.outOfRange =
        request.impossibleIsMissing ? exchange::OutOfRange::Missing : exchange::OutOfRange::Refuse;
    return exchange::readWeatherAs(format, bytes, options, fileName);
}

} // namespace

bool isOwnTable(const QByteArray &bytes, TableId table)
{
    const QStringList header = headerOfFile(bytes.left(65536));
    int known = 0;
    for (const domain::FieldSpec &field : domain::specOf(table).fields)
        known += header.contains(exchange::headerOf(field)) ? 1 : 0;
    // Headers with our base units in them are nobody else's.
    return header.value(0) == QLatin1String("id") && known > 2;
}

ImportPlan planTable(const Books &books, TableId table, const QByteArray &bytes,
                     const QString &fileName)
{
    ImportPlan plan;
    const exchange::TableRead read = exchange::readTable(bytes, table, fileName);
    if (!read.refused.isEmpty()) {
        plan.refused = read.refused.problems();
        return plan;
    }
    exchange::Refusals refusals;
    Books after = books;
    Sorter sorter(books);
    for (qsizetype i = 0; i < read.rows.size(); ++i) {
        const qsizetype before = plan.rows.size();
        sorter.take(plan, read.rows.at(i));
        if (plan.rows.size() == before)
            continue;
        for (const Problem &problem : domain::check(after, read.rows.at(i)))
            refusals.add(located(bytes, fileName, read.lines.at(i), problem));
        if (read.rows.at(i).id != 0)
            domain::put(after, read.rows.at(i));
    }
    plan.refused = refusals.problems();
    return plan;
}

ImportPlan planBooks(const Books &books, const QVector<exchange::NamedFile> &files)
{
    ImportPlan plan;
    const auto rows = exchange::importBooks(files, books);
    if (!rows) {
        plan.refused = rows.problems();
        return plan;
    }
    Sorter sorter(books);
    for (const Row &row : rows.value())
        sorter.take(plan, row);
    return plan;
}

ImportPlan planWeather(const Books &books, const QByteArray &bytes, const QString &fileName,
                       const WeatherRequest &request)
{
    ImportPlan plan;
    if (!request.zone.isEmpty() && !QTimeZone(request.zone.toUtf8()).isValid()) {
        plan.refused << Problem{
            QStringLiteral("zone"),
            QStringLiteral("There is no time zone \"%1\". Write it as America/Chicago or UTC.")
                .arg(request.zone)};
        return plan;
    }
    const exchange::WeatherFormat format = request.format    ? *request.format
                                           : request.profile ? exchange::WeatherFormat::Mapped
                                                             : exchange::recogniseWeather(bytes);
    if (format != exchange::WeatherFormat::Mapped) {
        const exchange::WeatherImport known = readKnown(books, bytes, fileName, request, format);
        plan.said << exchange::introduction(format, known);
        if (format == exchange::WeatherFormat::Lcd)
            plan.said << QStringLiteral("Times are taken as the standard time of %1 all year; "
                                        "--zone says another.")
                             .arg(request.zone.isEmpty() ? books.yard().timeZone : request.zone);
        if (format == exchange::WeatherFormat::Metar && !known.ok && !request.about)
            plan.said << QStringLiteral("--about DATE says when reports without a date are from.");
        takeWeather(books, known, fileName, plan);
        return plan;
    }
    const WeatherMapping mapping = mappingFor(books, bytes, fileName, request, plan);
    const domain::Problems wrong = mapping.check();
    if (!wrong.isEmpty()) {
        for (const Problem &problem : wrong)
            plan.refused << Problem{problem.field,
                                    QStringLiteral("%1: %2").arg(fileName, problem.message)};
        return plan;
    }
    takeWeather(books, exchange::readWeather(bytes, mapping, fileName), fileName, plan);
    return plan;
}

} // namespace rickyard::app
