// The clocks of a calendar file: what moment a time stands for, by the name of its zone. Inside
// models/exchange/ics only.
#pragma once

#include "models/exchange/ics/calendar_lines.h"
#include "models/exchange/ics/occurrence_search.h"

#include <QHash>
#include <QSet>

namespace rickyard::exchange {

// The yard's own clock, or that of any IANA zone.
ClockToUtc clockOf(const QByteArray &ianaZone);

class CalendarClocks
{
public:
    // Zones that are not understood are refused in `refused`.
    CalendarClocks(const QVector<CalendarBlock> &zones, const QString &yardZone,
                   const QString &fileName, Refusals &refused);

    // By the IANA name, also where a path or a Windows name stands for it; else by the file's own
    // VTIMEZONE; else the yard's clock, and the name is noted.
    ClockToUtc named(const QByteArray &tzid);
    [[nodiscard]] const ClockToUtc &yard() const { return m_yard; }
    [[nodiscard]] const QSet<QByteArray> &unknown() const { return m_unknown; }

private:
    ClockToUtc m_yard;
    QHash<QByteArray, ClockToUtc> m_own;   // by VTIMEZONE
    QHash<QByteArray, ClockToUtc> m_named; // found so far
    QSet<QByteArray> m_unknown;
};

} // namespace rickyard::exchange
