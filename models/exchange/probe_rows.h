// One line of a probe log as one instant and its readings: the inner part of probe_log.h.
#pragma once

#include "models/exchange/foreign_values.h"
#include "models/exchange/probe_log.h"
#include "models/exchange/time_pattern.h"

#include <string_view>
#include <vector>

namespace rickyard::exchange {

struct ProbeRow {
    qint64 second = 0; // since 1970
    std::vector<std::optional<qint64>> milli;
};

// The cells of one line. Quotes around a cell are taken off; a line break inside quotes is not
// known in logs and not read.
void splitCells(std::string_view line, char separator, std::vector<std::string_view> &cells);

class ProbeRowReader
{
public:
    ProbeRowReader(const ProbeLogMapping &mapping, const QString &fileName);
    // Finds the mapped columns; false when one is not there (said in `refused`).
    bool bind(std::string_view header, qint64 line, Refusals &refused);
    bool read(std::string_view line, qint64 number, ProbeRow &row, Refusals &refused,
              ProbeLogReport &report);
    // Fewer cells than the line before, or a last cell that is shorter than its predecessor: the
    // end of the file may have cut it.
    [[nodiscard]] bool looksCut(std::string_view line);

private:
    qsizetype find(const QString &name, const QStringList &header, qint64 line, Refusals &refused);
    std::optional<qint64> instant(qint64 number, Refusals &refused, ProbeLogReport &report);
    std::optional<qint64> clockInstant(std::string_view cell, qint64 number, Refusals &refused,
                                       ProbeLogReport &report);
    std::optional<qint64> toUtc(qint64 day, qint64 secondOfDay, ProbeLogReport &report);
    qint64 dayOf(qint64 secondOfDay);
    bool readReading(std::size_t probe, qint64 number, ProbeRow &row, Refusals &refused,
                     ProbeLogReport &report);
    void refuse(Refusals &refused, qint64 number, qsizetype column, const QString &expected) const;
    [[nodiscard]] bool isMissing(std::string_view cell) const;

    const ProbeLogMapping &m_mapping;
    QString m_file;
    TimePattern m_pattern;
    ZoneClock m_clock;
    char m_separator = 0;
    char m_decimal;
    QStringList m_header;
    std::vector<std::string> m_missing; // lower case
    qsizetype m_time = -1;
    qsizetype m_date = -1;
    std::vector<qsizetype> m_probes;
    std::vector<std::string_view> m_cells;
    std::string m_joined;       // date and time of two columns
    std::size_t m_width = 0;    // cells of the line before
    std::size_t m_lastCell = 0; // length of its last cell
    // The day whose offset is known, and the reading before.
    std::optional<qint64> m_offsetDay;
    std::optional<qint64> m_offset; // missing on a day with a clock change
    std::optional<qint64> m_before;
    bool m_descending = false;
    std::optional<qint64> m_dayCount; // TimeOfDay: the day of the reading before
    qint64 m_secondBefore = 0;
};

} // namespace rickyard::exchange
