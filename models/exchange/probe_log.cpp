#include "models/exchange/probe_log.h"

#include "models/exchange/foreign_values.h"
#include "models/exchange/line_source.h"
#include "models/exchange/probe_rows.h"

#include <QIODevice>

#include <algorithm>

namespace rickyard::exchange {

using domain::Instant;
using domain::TracePoint;

namespace {

// The readings of one probe while they come in; times are seconds since 1970.
class ProbeReadings
{
public:
    void add(qint64 second, qint64 milli, ProbeLogReport &report)
    {
        const TracePoint point{second, domain::Temperature::ofBase(milli)};
        if (m_points.isEmpty() || second > m_points.last().offset) {
            m_points.append(point);
        } else if (second == m_points.last().offset) {
            ++report.duplicates;
            m_points.last() = point;
        } else {
            m_sorted = false;
            m_points.append(point);
        }
    }
    // By time, the later of two in the file for one second.
    void settle(ProbeLogReport &report)
    {
        if (m_sorted)
            return;
        std::stable_sort(m_points.begin(), m_points.end(),
                         [](const auto &a, const auto &b) { return a.offset < b.offset; });
        qsizetype kept = 0;
        for (qsizetype i = 1; i < m_points.size(); ++i) {
            if (m_points.at(i).offset != m_points.at(kept).offset)
                ++kept;
            else
                ++report.duplicates;
            m_points[kept] = m_points.at(i);
        }
        if (!m_points.isEmpty())
            m_points.resize(kept + 1);
        m_sorted = true;
    }
    [[nodiscard]] qsizetype size() const { return m_points.size(); }
    QVector<TracePoint> take() { return std::move(m_points); }

private:
    QVector<TracePoint> m_points;
    bool m_sorted = true;
};

class ProbeRun
{
public:
    ProbeRun(QIODevice &device, const ProbeLogMapping &mapping, const QString &fileName)
        : m_device(device), m_mapping(mapping), m_file(fileName), m_lines(device),
          m_rows(mapping, fileName), m_readings(static_cast<std::size_t>(mapping.probes.size()))
    {
    }
    ProbeLog result;
    void go(const Progress &progress, const std::atomic_bool *cancel);

private:
    bool readHeader();
    bool takeLine(std::string_view line);
    bool store(const ProbeRow &row);
    bool tooMany(std::size_t probe);
    void finish();

    QIODevice &m_device;
    const ProbeLogMapping &m_mapping;
    QString m_file;
    LineSource m_lines;
    ProbeRowReader m_rows;
    std::vector<ProbeReadings> m_readings;
    ProbeRow m_row;
    qint64 m_latest = std::numeric_limits<qint64>::min();
};

bool ProbeRun::readHeader()
{
    std::string_view line;
    for (int n = 0; n < m_mapping.headerLine; ++n) {
        if (!m_lines.next(line)) {
            result.refused.add({m_file, n + 1, 0, {}, {}, QStringLiteral("a row of headers"), {}});
            return false;
        }
    }
    return m_rows.bind(m_mapping.headerLine > 0 ? line : std::string_view(), m_lines.lineNumber(),
                       result.refused);
}

// One probe holds as many readings as a trace can keep.
bool ProbeRun::tooMany(std::size_t probe)
{
    m_readings[probe].settle(result.report);
    if (m_readings[probe].size() < domain::kMaxTracePoints)
        return false;
    result.refused.add({m_file,
                        m_lines.lineNumber(),
                        0,
                        {},
                        {},
                        QStringLiteral("at most %1 readings a probe; choose the hours of one cook")
                            .arg(domain::kMaxTracePoints),
                        {}});
    return true;
}

bool ProbeRun::store(const ProbeRow &row)
{
    if ((m_mapping.from && row.second < m_mapping.from->seconds()) ||
        (m_mapping.to && row.second > m_mapping.to->seconds())) {
        ++result.report.outside;
        return true;
    }
    if (row.second < m_latest)
        ++result.report.outOfOrder;
    m_latest = std::max(m_latest, row.second);
    for (std::size_t i = 0; i < m_readings.size(); ++i) {
        if (!row.milli[i])
            continue;
        if (m_readings[i].size() >= domain::kMaxTracePoints && tooMany(i))
            return false;
        m_readings[i].add(row.second, *row.milli[i], result.report);
    }
    return true;
}

// False when reading must end.
bool ProbeRun::takeLine(std::string_view line)
{
    if (trimmedView(line).empty())
        return true;
    if (!m_lines.lineEnded() && m_rows.looksCut(line)) {
        result.report.notes << QStringLiteral("The file ends in the middle of line %1; that line "
                                              "is left out.")
                                   .arg(m_lines.lineNumber());
        return true;
    }
    ++result.report.rowsRead;
    if (m_rows.read(line, m_lines.lineNumber(), m_row, result.refused, result.report))
        return store(m_row);
    // A file that is something else need not be read to its end to be refused.
    return !m_mapping.strict || result.refused.count < kMostRefusals;
}

void ProbeRun::finish()
{
    if (!m_lines.problem().isEmpty())
        result.refused.add({m_file,
                            m_lines.lineNumber() + 1,
                            0,
                            {},
                            {},
                            QString(QStringLiteral("readable text, but: ") + m_lines.problem()),
                            {}});
    if (m_lines.isUtf16())
        result.report.notes << QStringLiteral("The file is in UTF-16.");
    const bool refuse =
        !m_lines.problem().isEmpty() || (m_mapping.strict && !result.refused.isEmpty());
    if (refuse)
        return;
    QVector<ProbeSeries> series;
    std::optional<qint64> first;
    for (std::size_t i = 0; i < m_readings.size(); ++i) {
        m_readings[i].settle(result.report);
        series.append({m_mapping.probes.at(static_cast<qsizetype>(i)).probe, m_readings[i].take()});
        if (!series.last().points.isEmpty())
            first = first ? std::min(*first, series.last().points.first().offset)
                          : series.last().points.first().offset;
    }
    if (!first) {
        result.refused.add(
            {m_file,
             0,
             0,
             {},
             {},
             result.report.outside > 0
                 ? QStringLiteral("readings in the hours that were asked for; %1 rows lie outside")
                       .arg(result.report.outside)
                 : QStringLiteral("at least one reading"),
             {}});
        return;
    }
    for (ProbeSeries &one : series)
        for (TracePoint &point : one.points)
            point.offset -= *first;
    result.start = Instant::ofSeconds(*first);
    result.series = series;
    result.ok = true;
}

void ProbeRun::go(const Progress &progress, const std::atomic_bool *cancel)
{
    constexpr qint64 stride = 4096; // rows between two looks at the cancel flag
    for (const domain::Problem &problem : m_mapping.check())
        result.refused.add({m_file, 0, 0, QStringLiteral("mapping"), problem.field,
                            problem.message.chopped(1), problem.field});
    if (!result.refused.isEmpty() || !readHeader()) {
        if (!m_lines.problem().isEmpty())
            result.refused.add({m_file, 0, 0, {}, {}, m_lines.problem(), {}});
        return;
    }
    const qint64 size = m_device.size();
    std::string_view line;
    qint64 ticks = 0;
    while (m_lines.next(line)) {
        if (ticks++ % stride == 0) {
            if (cancel != nullptr && cancel->load()) {
                result.cancelled = true;
                return;
            }
            if (progress)
                progress(m_lines.bytesRead(), size);
        }
        if (!takeLine(line))
            break;
    }
    finish();
    if (progress)
        progress(size, size);
}

} // namespace

ProbeLog readProbeLog(QIODevice &device, const ProbeLogMapping &mapping, const QString &fileName,
                      const Progress &progress, const std::atomic_bool *cancel)
{
    ProbeRun run(device, mapping, fileName);
    run.go(progress, cancel);
    return run.result;
}

QStringList ProbeLogReport::lines() const
{
    QStringList text;
    text << QStringLiteral("%1 rows read.").arg(rowsRead);
    const auto say = [&text](qint64 count, const QString &words) {
        if (count > 0)
            text << QString(QString::number(count) + QLatin1Char(' ') + words);
    };
    say(outside, QStringLiteral("rows lie outside the hours asked for."));
    say(missing, QStringLiteral("cells hold no reading."));
    say(impossible, QStringLiteral("readings cannot be of a pit (below −60 °C or above 900 °F) "
                                   "and are left out."));
    say(duplicates, QStringLiteral("readings were not the last of their second and are left out."));
    say(outOfOrder, QStringLiteral("rows were out of order and have been sorted."));
    say(ambiguousTimes, QStringLiteral("times lie in the hour that a clock change repeats; the "
                                       "order of the rows tells first from second."));
    return text + notes;
}

domain::Problems ProbeLogMapping::check() const
{
    domain::Problems problems;
    const auto say = [&problems](const char *field, const QString &words) {
        problems.append({QLatin1String(field), words});
    };
    if (timeColumn.isEmpty())
        say("timeColumn", QStringLiteral("Choose the column with the times."));
    if (probes.isEmpty())
        say("probes", QStringLiteral("Choose at least one column with temperatures."));
    for (const ProbeColumn &probe : probes)
        if (probe.probe.trimmed().isEmpty())
            say("probes", QStringLiteral("Give every probe a name."));
    if (time != ProbeTime::Clock && !start)
        say("start", QStringLiteral("Say when the log began: the file holds no date."));
    const TimePattern pattern(timeFormat);
    if (time != ProbeTime::Elapsed &&
        (!pattern.isValid() || pattern.holdsDate() != (time == ProbeTime::Clock)))
        say("timeFormat", QStringLiteral("Write the time's style such as M/d/yyyy h:mm:ss AP."));
    if (zoneKind == TimeZoneKind::Zone && (zone.isEmpty() || !QTimeZone(zone.toLatin1()).isValid()))
        say("zone", QStringLiteral("Choose a time zone such as America/Chicago."));
    if (separator == decimal)
        say("separator", QStringLiteral("Cells cannot be split at the decimal sign."));
    return problems;
}

} // namespace rickyard::exchange
