#include "models/exchange/weather_row.h"

#include "models/domain/quantities/units.h"

namespace rickyard::exchange
{

using domain::FieldSpec;
using domain::Weather;

namespace
{

constexpr qint64 kEarliest = -5364662400; // 1800-01-01: before it there was no station to log
constexpr qint64 kLatest = 7258118400;    // 2200-01-01

QString rangeOf(const FieldSpec &spec, const domain::Unit &unit)
{
    const QLocale locale = QLocale::c();
    const auto shown = [&](qint64 base) { return domain::formatQuantity(base, unit, locale, 1); };
    if (spec.minimum && spec.maximum)
        return QString(QStringLiteral("a value from ") + shown(*spec.minimum) +
                       QStringLiteral(" to ") + shown(*spec.maximum));
    if (spec.minimum)
        return QString(shown(*spec.minimum) + QStringLiteral(" at least"));
    return spec.maximum ? QString(shown(*spec.maximum) + QStringLiteral(" at most"))
                        : QStringLiteral("a smaller value");
}

} // namespace

WeatherRowReader::WeatherRowReader(const WeatherMapping &mapping, const QString &fileName)
    : m_mapping(mapping), m_file(fileName), m_clock(mapping.zone.toLatin1())
{
    for (const QString &mark : mapping.missing) {
        m_missing.insert(mark.trimmed().toLower());
        if (const auto number = readNumber(mark, mapping.decimal))
            m_missingNumbers.append(*number);
    }
}

qsizetype WeatherRowReader::find(const QString &name, const QString &field, qint64 line,
                                 Refusals &refused)
{
    if (m_mapping.headerLine == 0) {
        bool ok = false;
        const int number = name.toInt(&ok);
        if (ok && number > 0)
            return number - 1;
    } else {
        const qsizetype index = m_header.indexOf(name);
        if (index >= 0 && m_header.indexOf(name, index + 1) < 0)
            return index;
        if (index >= 0) {
            refused.add({m_file, line, static_cast<int>(index) + 1, name, name,
                         QStringLiteral("each header once"), field});
            return -1;
        }
    }
    refused.add({m_file,
                 line,
                 0,
                 name,
                 {},
                 QString(QStringLiteral("a column of this name for ") + field),
                 field});
    return -1;
}

bool WeatherRowReader::bind(const QStringList &header, qint64 line, Refusals &refused)
{
    m_header = header;
    const qint64 before = refused.count;
    if (m_mapping.timeColumns == TimeColumns::One) {
        m_time = find(m_mapping.timeColumn, QStringLiteral("time"), line, refused);
    } else {
        for (const QString &name : {m_mapping.yearColumn, m_mapping.monthColumn,
                                    m_mapping.dayColumn, m_mapping.hourColumn})
            m_parts << find(name, QStringLiteral("time"), line, refused);
        if (!m_mapping.minuteColumn.isEmpty())
            m_parts << find(m_mapping.minuteColumn, QStringLiteral("time"), line, refused);
    }
    if (!m_mapping.placeColumn.isEmpty())
        m_place = find(m_mapping.placeColumn, QStringLiteral("place"), line, refused);
    const domain::TableSpec &table = domain::specOf(domain::TableId::Weather);
    for (const QuantityColumn &c : m_mapping.columns) {
        Column column{find(c.column, c.quantity, line, refused),
                      c.column,
                      c.quantity,
                      table.indexOf(c.quantity),
                      nullptr,
                      {}};
        column.spec = table.fields.at(column.field);
        column.unit = domain::findUnit(column.spec.dimension, c.unit);
        m_columns.append(column);
    }
    return refused.count == before;
}

bool WeatherRowReader::isMissing(const QString &cell) const
{
    if (m_missing.contains(cell.trimmed().toLower()))
        return true;
    if (m_missingNumbers.isEmpty())
        return false;
    const auto number = readNumber(cell, m_mapping.decimal); // -9999.0 is -9999
    return number && m_missingNumbers.contains(*number);
}

Refusal WeatherRowReader::refusal(const CsvRow &row, qsizetype index, const QString &field,
                                  const QString &expected) const
{
    return {m_file,
            row.line,
            static_cast<int>(index) + 1,
            index < m_header.size() ? m_header.at(index) : QString(),
            row.cells.value(index),
            expected,
            field};
}

bool WeatherRowReader::readQuantity(const CsvRow &row, const Column &column, domain::Row &record,
                                    Refusals &refused, WeatherReport &report) const
{
    if (column.index >= row.cells.size()) {
        refused.add(refusal(row, column.index, column.quantity, QStringLiteral("a cell")));
        return false;
    }
    const QString &cell = row.cells.at(column.index);
    if (isMissing(cell)) {
        ++report.missing[column.quantity];
        return true;
    }
    const auto value = readNumber(cell, m_mapping.decimal);
    if (!value) {
        refused.add(refusal(row, column.index, column.quantity,
                            QString(QStringLiteral("a number in ") + column.unit->key +
                                    QStringLiteral(" or a mark for missing"))));
        return false;
    }
    // Numbers far outside the integers would wrap round when they are rounded.
    const double base = *value * column.unit->scale + column.unit->offset;
    const FieldSpec &spec = column.spec;
    const bool low = spec.minimum && base < static_cast<double>(*spec.minimum) - 0.5;
    const bool high = spec.maximum && base > static_cast<double>(*spec.maximum) + 0.5;
    if (low || high || std::abs(base) > 9e15) {
        const Refusal out =
            refusal(row, column.index, column.quantity, rangeOf(spec, *column.unit));
        if (m_mapping.outOfRange == OutOfRange::Refuse) {
            refused.add(out);
            return false;
        }
        report.setMissing.add(out);
        ++report.missing[column.quantity];
        return true;
    }
    record.values[column.field] = domain::fromUnit(*value, *column.unit);
    return true;
}

std::optional<CivilTime> WeatherRowReader::timeFromParts(const CsvRow &row, Refusals &refused) const
{
    int parts[5] = {0, 0, 0, 0, 0};
    for (qsizetype i = 0; i < m_parts.size(); ++i) {
        bool ok = false;
        parts[i] = row.cells.value(m_parts.at(i)).trimmed().toInt(&ok);
        if (!ok) {
            refused.add(refusal(row, m_parts.at(i), QStringLiteral("time"),
                                QStringLiteral("a whole number")));
            return std::nullopt;
        }
    }
    CivilTime time{QDate(parts[0], parts[1], parts[2]), {}, {}};
    if (parts[3] == 24 && parts[4] == 0) {
        time.date = time.date.addDays(1);
        parts[3] = 0;
    }
    time.time = QTime(parts[3], parts[4]);
    if (time.date.isValid() && time.time.isValid())
        return time;
    Refusal wrong = refusal(row, m_parts.first(), QStringLiteral("time"),
                            QStringLiteral("a day of the calendar and an hour from 0 to 24"));
    wrong.value = QStringLiteral("%1-%2-%3 %4:%5")
                      .arg(parts[0])
                      .arg(parts[1])
                      .arg(parts[2])
                      .arg(parts[3])
                      .arg(parts[4]);
    refused.add(wrong);
    return std::nullopt;
}

std::optional<CivilTime> WeatherRowReader::civilTime(const CsvRow &row, Refusals &refused) const
{
    if (m_mapping.timeColumns == TimeColumns::Parts)
        return timeFromParts(row, refused);
    const QString cell = row.cells.value(m_time).trimmed();
    if (m_mapping.timeFormat.isEmpty()) {
        const auto time = readIsoTime(cell);
        if (!time)
            refused.add(refusal(row, m_time, QStringLiteral("time"),
                                QStringLiteral("a time such as 2026-05-01T18:00:00Z")));
        return time;
    }
    // Read as if in UTC, so that no hour of the machine's own zone is in the way.
    const QLocale locale = QLocale::c();
    const QDateTime read = locale.toDateTime(cell, m_mapping.timeFormat);
    const QDate date = locale.toDate(cell, m_mapping.timeFormat);
    const QTime time = locale.toTime(cell, m_mapping.timeFormat);
    if (date.isValid() && time.isValid())
        return CivilTime{date, time, {}};
    if (read.isValid())
        return CivilTime{read.date(), read.time(), {}};
    refused.add(refusal(row, m_time, QStringLiteral("time"),
                        QString(QStringLiteral("a time in the form ") + m_mapping.timeFormat)));
    return std::nullopt;
}

// The hour comes twice: it is the one that follows the row before, in the order of the file.
qint64 WeatherRowReader::byOrder(const ResolvedTime &local, const QString &place) const
{
    const auto before = m_before.constFind(place);
    if (before == m_before.constEnd())
        return local.seconds;
    if (before->descending)
        return before->seconds > local.second ? local.second : local.seconds;
    return before->seconds < local.seconds ? local.seconds : local.second;
}

void WeatherRowReader::remember(const QString &place, qint64 seconds)
{
    const auto before = m_before.constFind(place);
    const bool first = before == m_before.constEnd();
    const bool same = !first && before->seconds == seconds;
    const bool descending = !first && (same ? before->descending : seconds < before->seconds);
    m_before.insert(place, {seconds, descending});
}

std::optional<qint64> WeatherRowReader::instant(const CsvRow &row, const QString &place,
                                                Refusals &refused, WeatherReport &report)
{
    const auto civil = civilTime(row, refused);
    if (!civil)
        return std::nullopt;
    const qint64 naive = QDateTime(civil->date, civil->time, Qt::UTC).toSecsSinceEpoch();
    qint64 seconds = naive;
    if (civil->offsetSeconds) {
        seconds = naive - *civil->offsetSeconds;
    } else if (m_mapping.zoneKind == TimeZoneKind::FixedOffset) {
        seconds = naive - m_mapping.offsetSeconds;
    } else if (m_mapping.zoneKind == TimeZoneKind::Zone) {
        const ResolvedTime local = m_clock.resolve(civil->date, civil->time);
        if (local.kind == LocalTime::Missing) {
            refused.add(
                refusal(row, m_time >= 0 ? m_time : m_parts.value(3), QStringLiteral("time"),
                        QString(QStringLiteral("a time that exists: clocks in ") + m_mapping.zone +
                                QStringLiteral(" skip this one (if the file keeps "
                                               "standard time all year, choose a fixed "
                                               "offset from UTC)"))));
            return std::nullopt;
        }
        seconds = local.seconds;
        if (local.kind == LocalTime::Ambiguous) {
            ++report.ambiguousTimes;
            seconds = byOrder(local, place);
        }
    }
    if (seconds < kEarliest || seconds > kLatest) {
        refused.add(refusal(row, m_time >= 0 ? m_time : m_parts.value(0), QStringLiteral("time"),
                            QStringLiteral("a time between the years 1800 and 2200")));
        return std::nullopt;
    }
    remember(place, seconds);
    return seconds;
}

std::optional<Weather> WeatherRowReader::read(const CsvRow &row, Refusals &refused,
                                              WeatherReport &report)
{
    const QString place =
        m_place >= 0 ? row.cells.value(m_place).trimmed() : m_mapping.place.trimmed();
    if (place.isEmpty()) {
        refused.add(
            refusal(row, m_place, QStringLiteral("place"), QStringLiteral("the name of a place")));
    }
    const auto seconds = instant(row, place, refused, report);
    domain::Row record = domain::emptyRow(domain::TableId::Weather);
    for (const Column &column : std::as_const(m_columns))
        readQuantity(row, column, record, refused, report);
    if (!refused.isEmpty() || !seconds)
        return std::nullopt;
    Weather weather = domain::fromRow<Weather>(record);
    weather.place = place;
    weather.time = domain::Instant::ofSeconds(*seconds);
    weather.normal = m_mapping.asNormals;
    weather.source = m_mapping.source.isEmpty() ? m_file : m_mapping.source;
    return weather;
}

} // namespace rickyard::exchange
