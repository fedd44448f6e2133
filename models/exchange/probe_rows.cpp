#include "models/exchange/probe_rows.h"

#include "models/exchange/csv_reader.h"

#include <cctype>
#include <cmath>

namespace rickyard::exchange {

namespace {

constexpr qint64 kSecondsADay = 86400;
// A reading this much earlier than the one before is a logger's jitter, not the second run of
// a repeated hour.
constexpr qint64 kJitter = 60;

QDate dateOfDay(qint64 day)
{
    return QDate(1970, 1, 1).addDays(day);
}

QString textOfCell(std::string_view cell)
{
    return QString::fromUtf8(cell.data(), static_cast<qsizetype>(cell.size()));
}

} // namespace

void splitCells(std::string_view line, char separator, std::vector<std::string_view> &cells)
{
    cells.clear();
    std::size_t from = 0;
    for (;;) {
        std::size_t start = from;
        while (start < line.size() && line[start] == ' ')
            ++start;
        if (start < line.size() && line[start] == '"') {
            const std::size_t close = line.find('"', start + 1);
            if (close != std::string_view::npos) {
                cells.push_back(line.substr(start + 1, close - start - 1));
                const std::size_t next = line.find(separator, close);
                if (next == std::string_view::npos)
                    return;
                from = next + 1;
                continue;
            }
        }
        const std::size_t next = line.find(separator, from);
        if (next == std::string_view::npos) {
            cells.push_back(line.substr(from));
            return;
        }
        cells.push_back(line.substr(from, next - from));
        from = next + 1;
    }
}

ProbeRowReader::ProbeRowReader(const ProbeLogMapping &mapping, const QString &fileName)
    : m_mapping(mapping), m_file(fileName), m_pattern(mapping.timeFormat),
      m_clock(mapping.zone.toLatin1()), m_separator(mapping.separator.toLatin1()),
      m_decimal(mapping.decimal.toLatin1())
{
    for (const QString &mark : mapping.missing)
        m_missing.push_back(mark.trimmed().toLower().toStdString());
}

qsizetype ProbeRowReader::find(const QString &name, const QStringList &header, qint64 line,
                               Refusals &refused)
{
    qsizetype index = header.indexOf(name);
    if (m_mapping.headerLine == 0) {
        bool ok = false;
        index = name.toInt(&ok) - 1;
        index = ok ? index : -1;
    }
    if (index < 0)
        refused.add({m_file, line, 0, name, {}, QStringLiteral("a column of this name"), {}});
    return index;
}

bool ProbeRowReader::bind(std::string_view header, qint64 line, Refusals &refused)
{
    if (m_separator == 0)
        m_separator = detectSeparator(textOfCell(header)).toLatin1();
    splitCells(header, m_separator, m_cells);
    for (const std::string_view cell : m_cells)
        m_header << textOfCell(cell).trimmed();
    m_time = find(m_mapping.timeColumn, m_header, line, refused);
    if (!m_mapping.dateColumn.isEmpty())
        m_date = find(m_mapping.dateColumn, m_header, line, refused);
    for (const ProbeColumn &probe : m_mapping.probes)
        m_probes.push_back(find(probe.column, m_header, line, refused));
    return refused.isEmpty();
}

void ProbeRowReader::refuse(Refusals &refused, qint64 number, qsizetype column,
                            const QString &expected) const
{
    const std::size_t at = static_cast<std::size_t>(column);
    refused.add({m_file,
                 number,
                 static_cast<int>(column) + 1,
                 m_header.value(column),
                 at < m_cells.size() ? textOfCell(m_cells[at]) : QString(),
                 expected,
                 {}});
}

bool ProbeRowReader::isMissing(std::string_view cell) const
{
    cell = trimmedView(cell);
    for (const std::string &mark : m_missing)
        if (mark.size() == cell.size() &&
            std::equal(cell.begin(), cell.end(), mark.begin(), [](char a, char b) {
                return std::tolower(static_cast<unsigned char>(a)) == b;
            }))
            return true;
    return false;
}

bool ProbeRowReader::looksCut(std::string_view line)
{
    // Loggers that reserve room fill it with zero bytes.
    if (line.find('\0') != std::string_view::npos)
        return true;
    splitCells(line, m_separator, m_cells);
    return m_cells.size() < m_width ||
           (m_cells.size() == m_width && m_cells.back().size() < m_lastCell);
}

// The first reading lies on the day that brings it nearest to the start; each jump back by more
// than half a day is a midnight, each jump forward by more than that a row out of order across it.
qint64 ProbeRowReader::dayOf(qint64 secondOfDay)
{
    constexpr qint64 half = kSecondsADay / 2;
    if (!m_dayCount) {
        qint64 local = m_mapping.start->seconds();
        if (m_mapping.zoneKind == TimeZoneKind::FixedOffset)
            local += m_mapping.offsetSeconds;
        else if (m_mapping.zoneKind == TimeZoneKind::Zone)
            local += QTimeZone(m_mapping.zone.toLatin1())
                         .offsetFromUtc(QDateTime::fromSecsSinceEpoch(local, Qt::UTC));
        const auto down = [](qint64 value) {
            return value >= 0 ? value / kSecondsADay
                              : -((-value + kSecondsADay - 1) / kSecondsADay);
        };
        m_dayCount = down(local - secondOfDay + half);
    } else if (secondOfDay < m_secondBefore - half) {
        ++*m_dayCount;
    } else if (secondOfDay > m_secondBefore + half) {
        --*m_dayCount;
    }
    m_secondBefore = secondOfDay;
    return *m_dayCount;
}

// Nothing in the hour that the zone's clocks skip.
std::optional<qint64> ProbeRowReader::toUtc(qint64 day, qint64 secondOfDay, ProbeLogReport &report)
{
    const qint64 naive = day * kSecondsADay + secondOfDay;
    if (m_mapping.zoneKind == TimeZoneKind::Utc)
        return naive;
    if (m_mapping.zoneKind == TimeZoneKind::FixedOffset)
        return naive - m_mapping.offsetSeconds;
    if (m_offsetDay != day) {
        // Offsets a day before and after that agree hold for all of the day.
        const QTime noon(12, 0);
        const qint64 before = m_clock.resolve(dateOfDay(day - 1), noon).seconds;
        const qint64 after = m_clock.resolve(dateOfDay(day + 1), noon).seconds;
        m_offsetDay = day;
        m_offset.reset();
        if (after - before == 2 * kSecondsADay)
            m_offset = (day - 1) * kSecondsADay + kSecondsADay / 2 - before;
    }
    if (m_offset)
        return naive - *m_offset;
    const qint64 wholeDays = secondOfDay / kSecondsADay;
    const QTime time = QTime(0, 0).addSecs(static_cast<int>(secondOfDay % kSecondsADay));
    const ResolvedTime local = m_clock.resolve(dateOfDay(day + wholeDays), time);
    if (local.kind == LocalTime::Missing)
        return std::nullopt;
    if (local.kind == LocalTime::Unique)
        return local.seconds;
    ++report.ambiguousTimes;
    if (!m_before)
        return local.seconds;
    if (m_descending)
        return local.second <= *m_before + kJitter ? local.second : local.seconds;
    return local.seconds >= *m_before - kJitter ? local.seconds : local.second;
}

std::optional<qint64> ProbeRowReader::clockInstant(std::string_view cell, qint64 number,
                                                   Refusals &refused, ProbeLogReport &report)
{
    const auto reading = m_pattern.read(cell);
    if (!reading) {
        refuse(refused, number, m_time,
               m_mapping.timeFormat.isEmpty()
                   ? QStringLiteral("a time such as 2026-05-01T18:00:00")
                   : QString(QStringLiteral("a time in the style ") + m_mapping.timeFormat));
        return std::nullopt;
    }
    const qint64 day = reading->day ? *reading->day : dayOf(reading->secondOfDay);
    if (reading->offsetSeconds)
        return day * kSecondsADay + reading->secondOfDay - *reading->offsetSeconds;
    const auto second = toUtc(day, reading->secondOfDay, report);
    if (!second) {
        refuse(refused, number, m_time,
               QString(QStringLiteral("a time that exists: clocks in ") + m_mapping.zone +
                       QStringLiteral(" skip this one (if the log keeps standard time all year, "
                                      "choose a fixed offset from UTC)")));
        return std::nullopt;
    }
    m_descending = m_before && *second != *m_before ? *second < *m_before : m_descending;
    m_before = second;
    return second;
}

std::optional<qint64> ProbeRowReader::instant(qint64 number, Refusals &refused,
                                              ProbeLogReport &report)
{
    std::string_view cell = m_cells[static_cast<std::size_t>(m_time)];
    if (m_mapping.time == ProbeTime::Elapsed) {
        const auto elapsed = readElapsed(cell, m_decimal, m_mapping.elapsedScale);
        if (!elapsed || std::abs(*elapsed) > 1e9) {
            refuse(refused, number, m_time,
                   QStringLiteral("the time since the start, such as 90 or 0:01:30"));
            return std::nullopt;
        }
        return m_mapping.start->seconds() + static_cast<qint64>(std::floor(*elapsed + 1e-6));
    }
    if (m_date >= 0) {
        const std::string_view date = trimmedView(m_cells[static_cast<std::size_t>(m_date)]);
        m_joined.assign(date);
        m_joined += ' ';
        m_joined.append(trimmedView(cell));
        cell = m_joined;
    }
    return clockInstant(cell, number, refused, report);
}

bool ProbeRowReader::readReading(std::size_t probe, qint64 number, ProbeRow &row, Refusals &refused,
                                 ProbeLogReport &report)
{
    const std::string_view cell = m_cells[static_cast<std::size_t>(m_probes[probe])];
    row.milli[probe].reset();
    const auto value = readPlainNumber(cell, m_decimal);
    if (!value) {
        if (isMissing(cell)) {
            ++report.missing;
            return true;
        }
        refuse(refused, number, m_probes[probe],
               QStringLiteral("a temperature in %1 or a mark for missing")
                   .arg(m_mapping.fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C")));
        return false;
    }
    const double celsius = m_mapping.fahrenheit ? (*value - 32.0) * 5.0 / 9.0 : *value;
    if (celsius * 1000 < kColdestProbe || celsius * 1000 > kHottestProbe + 1) {
        ++report.impossible;
        return true;
    }
    row.milli[probe] = std::llround(celsius * 1000);
    return true;
}

bool ProbeRowReader::read(std::string_view line, qint64 number, ProbeRow &row, Refusals &refused,
                          ProbeLogReport &report)
{
    splitCells(line, m_separator, m_cells);
    std::size_t needed = static_cast<std::size_t>(std::max(m_time, m_date)) + 1;
    for (const qsizetype at : m_probes)
        needed = std::max(needed, static_cast<std::size_t>(at) + 1);
    if (m_cells.size() < needed) {
        refused.add(
            {m_file,
             number,
             0,
             {},
             cellsInWords(static_cast<qsizetype>(m_cells.size())),
             QString(QStringLiteral("at least ") + cellsInWords(static_cast<qsizetype>(needed))),
             {}});
        return false;
    }
    const auto second = instant(number, refused, report);
    if (!second)
        return false;
    row.second = *second;
    row.milli.resize(m_probes.size());
    bool good = true;
    for (std::size_t i = 0; i < m_probes.size(); ++i)
        good = readReading(i, number, row, refused, report) && good;
    m_width = m_cells.size();
    m_lastCell = m_cells.back().size();
    return good;
}

} // namespace rickyard::exchange
